"""Files that are damaged, misleading or made to do harm: refused by row, or read right."""

from __future__ import annotations

import csv
import datetime
import os
import re
import tracemalloc
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.command_frame import tell
from costing.front_ends.formula_text import FORMULA_SIGNS
from costing.front_ends.order_file import OrderFile, read_orders
from costing.front_ends.row_files import rows as row_file
from costing.front_ends.workbook import sheet_reading
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.command_line.test_command_line import refused, run

HEADS = ["Order", "Enquiry", "Length", "Unit", "Due", "Status"]
HEADING = ",".join(HEADS) + "\n"
DAY = datetime.date(2025, 3, 3)
ROWS: list[list[Any]] = [["1", "Q-01", 5000, "m", DAY, "done"], ["2", "Q-01", 6000, "m", DAY, None]]
SHEET = "xl/worksheets/sheet1.xml"

Edit = Callable[[Worksheet], Any]


@pytest.fixture(scope="module")
def mill() -> Mill:
    return read_book(demo_book())


def text_file(folder: Path, rows: str, heading: str = HEADING, encoding: str = "utf-8") -> Path:
    path = folder / "orders.csv"
    path.write_bytes((heading + rows).encode(encoding))
    return path


def workbook(folder: Path, edit: Edit | None = None) -> Path:
    book = openpyxl.Workbook()
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    for row in (HEADS, *ROWS):
        sheet.append(row)
    if edit is not None:
        edit(sheet)
    path = folder / "orders.xlsx"
    book.save(path)
    return path


def with_part(path: Path, part: str, change: Callable[[bytes], bytes]) -> Path:
    """The workbook with a part changed by hand."""
    with zipfile.ZipFile(path) as book:
        parts = {entry.filename: book.read(entry) for entry in book.infolist()}
    changed = change(parts[part])
    assert changed != parts[part]
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as book:
        for name, content in {**parts, part: changed}.items():
            book.writestr(name, content)
    return path


def in_sheet(old: bytes, new: bytes) -> Callable[[Path], Path]:
    def change(path: Path) -> Path:
        return with_part(path, SHEET, lambda content: content.replace(old, new))

    return change


def read(path: Path, mill: Mill, **columns: str) -> OrderFile:
    return read_orders(path, mill, columns)


def said(path: Path, mill: Mill, **columns: str) -> str:
    with pytest.raises(InputError) as caught:
        read(path, mill, **columns)
    assert "\n" not in str(caught.value)
    return str(caught.value)


@pytest.mark.parametrize(
    ("rows", "heading", "expected"),
    [
        ("1,Q-01,2025-03-03,1,250\n", "Order,Enquiry,Due,Length [m]\n", "row 2: has 5 cells, the heading 4"),
        ("1,Q-01,5000,m,2025-03-03,,x\n", HEADING, "row 2: has 7 cells, the heading 6"),
        ("1,Q-01,5000\n", HEADING, "row 2: length has no unit"),
        ("1,Q-01,5000,m\n", HEADING, "row 2: due is empty"),
        (
            "1,Q-01,5000,m,2025-03-03,\n2,Q-01,1,m,03.03.2025,\n",
            HEADING,
            "row 3: due is '03.03.2025', in row 2",
        ),
        ("1,Q-01,5000,m,03.03.25,\n", HEADING, "row 2: due is '03.03.25'"),
        ("1,Q-01,5000,m,30.02.2025,\n", HEADING, "row 2: due is '30.02.2025', which is no day"),
        ("1,Q-01,5000,m,45719,\n", HEADING, "row 2: due is '45719'"),
        ("1,Q-01,1e3,m,2025-03-03,\n", HEADING, "row 2: unit is 'e3' and 'm'"),
        ("1,Q-01,NaN,m,2025-03-03,\n", HEADING, "row 2: length is 'NaN'"),
        ("1,Q-01,inf,m,2025-03-03,\n", HEADING, "row 2: length is 'inf'"),
        ("1,Q-01,-5,m,2025-03-03,\n", HEADING, "row 2: length is -5 m"),
        ("1,Q-01,,m,2025-03-03,\n", HEADING, "row 2: length is empty"),
        ("1,Q-01,1.250,m,2025-03-03,\n", HEADING, "no row tells whether its sign is decimal"),
        (
            '1,Q-01,1.5,m,2025-03-03,\n2,Q-01,"1,5",m,2025-03-03,\n',
            HEADING,
            "row 3: length is '1,5', a decimal comma",
        ),
        ("1,Q-01,50\x0000,m,2025-03-03,\n", HEADING, "is no plain text"),
        ("1,Q-01,5,m,2025-03-03,,7\n", HEADING.strip() + ",LENGTH\n", "'length' stands there 2 times"),
        ('1,Q-01,5000,m,2025-03-03,"' + "a\n" * 100_000, HEADING, "behind row 1: field larger"),
        (
            "1,Q-01,5,m,2025-03-03,\n" * 2,
            HEADING,
            "order '1' is as in orders.csv, row 2 in all",
        ),
        ("x" * 200_000, HEADING, "a line of more than 100,000 letters"),
    ],
)
def test_a_text_file_is_refused_by_row(
    tmp_path: Path, mill: Mill, rows: str, heading: str, expected: str
) -> None:
    assert expected in said(text_file(tmp_path, rows, heading), mill)


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "latin-1"])
def test_another_encoding_is_no_other_text(tmp_path: Path, mill: Mill, encoding: str) -> None:
    path = text_file(tmp_path, "ä,Q-01,5000,m,2025-03-03,\n", encoding=encoding)
    assert "accepted is a .csv file in UTF-8" in said(path, mill)


def test_an_unused_heading_that_is_a_formula_does_no_harm(tmp_path: Path, mill: Mill) -> None:
    path = text_file(tmp_path, "1,Q-01,5 000,m,2025-03-03,,=1+1\n", HEADING.strip() + ",=HYPERLINK(1)\n")
    assert [line.order_length for line in read(path, mill).lines] == [5000]


@pytest.mark.parametrize(
    ("edit", "expected"),
    [
        (
            lambda sheet: sheet.__setitem__("C3", "=2*3000"),
            "row 3: length is a formula that was saved without",
        ),
        (
            lambda sheet: sheet.__setitem__("F3", '="done"'),
            "row 3: status is a formula that was saved without",
        ),
        (lambda sheet: sheet.__setitem__("A3", "#REF!"), "row 3: order is the error '#REF!'"),
        (lambda sheet: sheet.merge_cells("F2:F3"), "row 3: status is merged with F2"),
        (lambda sheet: sheet.merge_cells("A2:A3"), "row 3: order is merged with A2"),
        (lambda sheet: sheet.merge_cells("E3:F3"), "row 3: status is merged with E3"),
        (lambda sheet: setattr(sheet.row_dimensions[3], "hidden", True), "row 3: is hidden"),
        (lambda sheet: sheet.__setitem__("E3", "45719"), "row 3: due is '45719'"),
        (lambda sheet: sheet.__setitem__("E3", datetime.time(3, 4)), "row 3: due is '03:04:00'"),
        (lambda sheet: sheet.__setitem__("C3", True), "row 3: length is 'True'"),
        (
            lambda sheet: setattr(sheet.parent.create_sheet("Old"), "sheet_state", "hidden"),
            "has 2 sheets; there are: Old, Sheet",
        ),
    ],
)
def test_a_sheet_is_refused_by_row(tmp_path: Path, mill: Mill, edit: Edit, expected: str) -> None:
    """What the eye sees there is not what the cells say, so nothing is taken for granted."""
    assert expected in said(workbook(tmp_path, edit), mill)


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        (in_sheet(b"<v>6000</v>", b"<v>1e999</v>"), "row 3: length is inf m"),
        (in_sheet(b"<v>6000</v>", b"<v>" + b"9" * 400 + b"</v>"), "row 3: length is '9999"),
        (in_sheet(b"<v>6000</v>", b"<v>NaN</v>"), "is damaged"),
        (
            lambda path: in_sheet(b"<v>6000</v>", b"<v>&x;</v>")(
                in_sheet(b"<worksheet", b'<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/hosts">]><worksheet')(
                    path
                )
            ),
            "is damaged",
        ),
        (
            in_sheet(
                b"</sheetData>", b'</sheetData><mergeCells><mergeCell ref="A9:XFD1048576"/></mergeCells>'
            ),
            "holds 17,179,738,112 merged cells",
        ),
        (
            lambda path: with_part(path, "xl/workbook.xml", lambda content: content + b" " * 210_000_000),
            "210 MB",
        ),
        (lambda path: path.write_bytes(path.read_bytes()[:2000]) and path, "is damaged"),
    ],
)
def test_a_workbook_made_to_do_harm_is_refused(
    tmp_path: Path, mill: Mill, change: Callable[[Path], Path], expected: str
) -> None:
    assert expected in said(change(workbook(tmp_path)), mill)


@pytest.mark.parametrize(("limit", "what"), [("MOST_CELLS", "cells"), ("MOST_TAGS", "tags")])
def test_what_would_fill_the_memory_is_counted_first(
    tmp_path: Path, mill: Mill, monkeypatch: pytest.MonkeyPatch, limit: str, what: str
) -> None:
    monkeypatch.setattr(sheet_reading, limit, 10)
    assert f"up to 10 {what} are read" in said(workbook(tmp_path), mill)


def test_what_no_cell_needs_is_not_read(tmp_path: Path, mill: Mill) -> None:
    """A link over all cells of a sheet, a cell far out, macros, and another name space for the same."""
    link = b'</sheetData><hyperlinks><hyperlink ref="A9:XFD1048576" location="A1"/></hyperlinks>'
    path = in_sheet(b"</sheetData>", link)(workbook(tmp_path, lambda sheet: sheet.__setitem__("XFD3", "x")))
    with_part(
        path,
        "[Content_Types].xml",
        lambda content: content.replace(
            b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
            b"application/vnd.ms-excel.sheet.macroEnabled.main+xml",
        ),
    )
    with_part(
        path,
        "xl/workbook.xml",
        lambda content: content.replace(
            b"http://schemas.openxmlformats.org/spreadsheetml/2006/main",
            b"http://purl.oclc.org/ooxml/spreadsheetml/main",
        ),
    )
    with zipfile.ZipFile(path, "a") as book:
        book.writestr("xl/vbaProject.bin", b"\xd0\xcf\x11\xe0")
    assert [line.order_length for line in read(path, mill).lines] == [5000, 6000]


def test_a_saved_result_is_read_and_its_formula_is_not(tmp_path: Path, mill: Mill) -> None:
    """Of a link to another file too; an empty text is a result."""
    path = in_sheet(b"<v>6000</v>", b"<f>[1]Sheet1!A1</f><v>6500</v>")(workbook(tmp_path))
    found = read(
        in_sheet(b"</row></sheetData>", b'<c r="F3" t="str"><f>""</f><v></v></c></row></sheetData>')(path),
        mill,
    )
    assert [(line.order_length, line.status) for line in found.lines] == [(5000, "done"), (6500, "open")]


def test_both_calendars_of_workbooks(tmp_path: Path, mill: Mill) -> None:
    path = workbook(tmp_path, lambda sheet: setattr(sheet.parent, "epoch", CALENDAR_MAC_1904))
    assert {line.due for line in read(path, mill).lines} == {DAY}


def test_more_rows_than_are_read(tmp_path: Path, mill: Mill, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(row_file, "MOST_ROWS", 10)
    assert "more than 10 rows" in said(text_file(tmp_path, "1,Q-01,5,m,2025-03-03,\n" * 11), mill)


def test_what_is_no_file_is_not_waited_for(tmp_path: Path, mill: Mill) -> None:
    """A pipe without a writer, a device without end, a folder, a link to itself; as rows and as the book."""
    pipe, folder, loop = tmp_path / "pipe.xlsx", tmp_path / "folder.csv", tmp_path / "loop.csv"
    os.mkfifo(pipe)
    folder.mkdir()
    loop.symlink_to(loop)
    for path, expected in (
        (pipe, "is a pipe or a device"),
        (Path("/dev/zero"), "is a pipe or a device"),
        (folder, "is a folder"),
        (loop, "cannot be read"),
    ):
        assert expected in said(path, mill)
        assert expected in refused("need", str(path))
    assert "holds no earlier results" in refused("need", "--out", str(pipe), "--overwrite")
    pipe.rename(tmp_path / "pipe.csv")
    assert "holds no earlier" in refused("need", "--out", str(tmp_path / "pipe.csv"), "--overwrite")


def test_the_longest_name_of_a_file(tmp_path: Path, mill: Mill) -> None:
    """The name of a lock beside it would be too long."""
    path = text_file(tmp_path, "1,Q-01,5,m,2025-03-03,\n").rename(tmp_path / ("o" * 251 + ".csv"))
    assert len(read(path, mill).lines) == 1


def test_a_refusal_does_not_steer_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    tell(InputError("row 1", "there are: \x1b[2Jred\r\u202e; accepted"))
    assert capsys.readouterr().err == "refused: row 1: there are: \ufffd[2Jred\ufffd\ufffd; accepted\n"


def test_two_files_of_orders_are_not_one(tmp_path: Path) -> None:
    """The last one would count alone."""
    path = str(text_file(tmp_path, "1,Q-01,5,m,2025-03-03,\n2,Q-01,6,m,2025-03-03,\n"))
    for command, option in (
        ("need", "--orders"),
        ("purchase", "--orders"),
        ("usage", "--production"),
        ("calibrate", "--issues"),
    ):
        done = run(command, option, path, option, path)
        assert done.exit_code == 2
        assert f"'{option}': is given 2 times; accepted is once" in done.stderr


EVIL = {
    "INDIGO-94": '=HYPERLINK("http://x.example","pay")',
    "HYDRO-88": "+88/2",
    "LYE-50": "$\\frac{1$/[x]:*?",  # no picture takes it for mathematics, no sheet for a wrong name
    "supplier I": "@SUM(1+1)",
    "W-0807": "-2+3",
    "P-2041": "\uff1d1+1",
    "1001": "=1001",
    "Q-01": "=Q/1",
    "ROPE-A": "=cmd|' /C calc'!A0",
}


@pytest.fixture(scope="module")
def evil_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo book, with names that a spreadsheet program would take for formulas."""
    book = openpyxl.load_workbook(demo_book())
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.value in EVIL and cell.data_type == "s":
                    cell.value = EVIL[str(cell.value)]
                    cell.data_type = "s"
    path = tmp_path_factory.mktemp("evil") / "book.xlsx"
    book.save(path)
    return path


@pytest.mark.parametrize(
    ("command", "options"),
    [("need", ()), ("purchase", ()), ("usage", ()), ("calibrate", ("--period", "week", "--hold-back", "1"))],
)
def test_no_name_is_a_formula_in_what_is_written(
    tmp_path: Path, evil_book: Path, command: str, options: tuple[str, ...]
) -> None:
    """Text with its mark in every cell; nothing dropped."""
    out, picture = tmp_path / "out.xlsx", tmp_path / "out.png"
    drawn = () if command == "need" else ("--picture", str(picture))
    done = run(command, str(evil_book), *options, "--out", str(out), *drawn)
    assert done.exit_code == 0, done.output
    book = openpyxl.load_workbook(out)
    cells = [cell for sheet in book.worksheets for row in sheet.iter_rows() for cell in row]
    texts = [(str(cell.value), cell) for cell in cells if isinstance(cell.value, str)]
    assert {cell.data_type for _, cell in texts} == {"s"}
    assert all(cell.quotePrefix for text, cell in texts if text.startswith(FORMULA_SIGNS))
    found = {evil for evil in EVIL.values() if any(evil in text for text, _ in texts)}
    assert found >= EXPECTED[command]
    assert run(command, str(evil_book), *options, "--out", str(tmp_path / "out.csv")).exit_code == 0
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as stream:
        written = [cell for row in csv.reader(stream) for cell in row]
    assert not [cell for cell in written if cell.startswith(FORMULA_SIGNS) and not NUMBER.fullmatch(cell)]
    if command in ("need", "purchase"):
        assert {f"'{EVIL['INDIGO-94']}", f"'{EVIL['HYDRO-88']}"} <= set(written)


NUMBER = re.compile(r"[+-]?[\d.]+(e[+-]?\d+)?")
MATERIALS = {EVIL[code] for code in ("INDIGO-94", "HYDRO-88", "LYE-50")}
EXPECTED = {
    "need": MATERIALS | {EVIL["1001"], EVIL["ROPE-A"]},
    "purchase": MATERIALS | {EVIL["supplier I"], EVIL["W-0807"], EVIL["P-2041"]},
    "usage": MATERIALS | {EVIL["ROPE-A"]},
    "calibrate": {EVIL["INDIGO-94"], EVIL["LYE-50"]},
}


def test_a_part_that_is_larger_than_the_file_says_is_not_unpacked(tmp_path: Path, mill: Mill) -> None:
    """60 MB that say they are 1000 bytes."""
    path = with_part(workbook(tmp_path), SHEET, lambda content: b"<row/>" * 10_000_000)
    size, told = (number.to_bytes(4, "little") for number in (60_000_000, 1000))
    path.write_bytes(path.read_bytes().replace(size, told))
    tracemalloc.start()
    try:
        assert "is damaged" in said(path, mill)
        assert tracemalloc.get_traced_memory()[1] < 10_000_000
    finally:
        tracemalloc.stop()
