"""Text that looks like a formula stays text; a file is written whole or not at all."""

from __future__ import annotations

import datetime
import errno
import os
import resource
import shutil
import subprocess
import time
import zipfile
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.results import OWN_SHEETS, sheet_names, write_results
from costing.quantities import InputError
from tests.workbook_results.conftest import Written
from tests.workbook_results.written import HOSTILE, example_results, sheet, write

SOFFICE = shutil.which("soffice")
FULL = OSError(errno.ENOSPC, "No space left on device")


@pytest.mark.parametrize("name", ["Summary", "Use", "Cost lines", "Ledger"])
def test_codes_that_look_like_formulas_stay_text(book: Workbook, name: str) -> None:
    page = book[name]
    found = {cell.value: cell for cell in page["A"][6:] if cell.value in HOSTILE}
    assert set(found) == set(HOSTILE)
    for code, cell in found.items():
        assert cell.data_type == "s"
        assert cell.quotePrefix is code.startswith(("=", "+", "-", "@"))


def test_descriptions_that_look_like_formulas_stay_text(book: Workbook) -> None:
    page = book["Key figures"]
    cells = {page.cell(row, 1).value: page.cell(row, 2) for row in range(7, 7 + len(HOSTILE))}
    for code, text in HOSTILE.items():
        assert cells[code].value == text.replace("\x07", "")
        assert cells[code].data_type == "s"


@pytest.mark.skipif(SOFFICE is None, reason="LibreOffice is not installed")
def test_a_spreadsheet_program_reads_the_same(written: Written, tmp_path: Path) -> None:
    """LibreOffice opens the file, evaluates nothing, and gives back the same texts and numbers."""
    assert SOFFICE is not None
    with (tmp_path / "log.txt").open("wb") as log:
        subprocess.run(
            [
                *(SOFFICE, "--headless", f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"),
                *("--convert-to", "xlsx:Calc MS Excel 2007 XML"),
                *("--outdir", str(tmp_path / "saved"), str(written.path)),
            ],
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            check=True,
            timeout=180,
        )
    again = tmp_path / "saved" / written.path.name
    for name in ("Key figures", "Cost lines"):
        before, after = sheet(written.path, name), sheet(again, name)
        assert list(before["Enquiry"]) == list(after["Enquiry"])
        for column in before.columns:
            if before[column].dtype == "float64":
                assert (before[column] - after[column].astype(float)).abs().max() < 1e-9, column
            else:
                assert before[column].fillna("").equals(after[column].fillna("")), column


@pytest.mark.parametrize(
    "target",
    ["openpyxl.worksheet._writer.NamedTemporaryFile", "os.fsync", "os.replace", "pathlib.Path.replace"],
)
@pytest.mark.parametrize("there", [False, True])
def test_a_full_disk_leaves_nothing_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, target: str, there: bool
) -> None:
    mill, results = example_results(1)
    path = tmp_path / "results.xlsx"
    if there:
        write_results(path, mill, results)
    before = path.read_bytes() if there else b""

    def refuse(*_: Any, **__: Any) -> None:
        raise FULL

    monkeypatch.setattr(target, refuse)
    with pytest.raises(InputError, match="No space left") as caught:
        write_results(path, mill, results, overwrite=there)
    assert str(path) in str(caught.value)
    assert "\n" not in str(caught.value)
    assert [item.name for item in tmp_path.iterdir()] == (["results.xlsx"] if there else [])
    assert (path.read_bytes() if there else b"") == before


def test_a_disk_that_really_is_full(tmp_path: Path) -> None:
    mill, results = example_results(1)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (2000, limits[1]))
    try:
        with pytest.raises(InputError, match="could not be written"):
            write_results(tmp_path / "results.xlsx", mill, results)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("no such folder/results.xlsx", "could not be written"),
        ("results.xls", "must end in .xlsx"),
        ("results", "must end in .xlsx"),
        ("folder.xlsx", "folder"),
    ],
)
def test_a_bad_target_is_refused(tmp_path: Path, name: str, said: str) -> None:
    mill, results = example_results(1)
    (tmp_path / "folder.xlsx").mkdir()
    with pytest.raises(InputError, match=said) as caught:
        write_results(tmp_path / name, mill, results, overwrite=True)
    assert "\n" not in str(caught.value)
    assert [item.name for item in tmp_path.iterdir()] == ["folder.xlsx"]


def test_an_existing_file_is_refused_and_kept(tmp_path: Path) -> None:
    path, mill, results = write(tmp_path, 1)
    before = path.read_bytes()
    with pytest.raises(InputError, match="is there already"):
        write_results(path, mill, results)
    assert path.read_bytes() == before
    write_results(path, mill, results, overwrite=True)
    assert sheet_names(path) >= OWN_SHEETS


def test_only_earlier_results_are_ever_replaced(tmp_path: Path) -> None:
    mill, results = example_results(1)
    book = tmp_path / "mill_book.xlsx"
    book.write_bytes(demo_book().read_bytes())
    notes = tmp_path / "notes.xlsx"
    notes.write_bytes(b"not even a workbook")
    for path in (book, notes):
        before = path.read_bytes()
        with pytest.raises(InputError, match="holds no earlier results"):
            write_results(path, mill, results, overwrite=True)
        assert path.read_bytes() == before


def test_no_results_are_refused(tmp_path: Path) -> None:
    mill, _ = example_results(1)
    with pytest.raises(InputError, match="no enquiry"):
        write_results(tmp_path / "results.xlsx", mill, [])
    assert not list(tmp_path.iterdir())


def test_the_same_results_give_the_same_bytes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    mill, results = example_results(2)
    noon = datetime.datetime(2030, 6, 1, 12).timestamp()
    for name, moment in (("one.xlsx", noon), ("two.xlsx", noon + 3661.0)):
        monkeypatch.setattr(time, "time", lambda moment=moment: moment)
        write_results(tmp_path / name, mill, results)
    assert (tmp_path / "one.xlsx").read_bytes() == (tmp_path / "two.xlsx").read_bytes()


def test_the_file_says_the_day_on_which_it_was_made(book: Workbook) -> None:
    record = {row[0].value: row[1].value for row in book["Record"].iter_rows(min_row=7, max_col=2)}
    today = record["worked out on"]
    assert isinstance(today, datetime.datetime)
    assert book.properties.created == book.properties.modified == today
    assert record["mill currency"] == "EUR"
    assert record["date of the mill's prices"] == datetime.datetime(2026, 1, 15)


def test_a_new_file_is_readable_as_any_other(written: Written) -> None:
    plain = written.path.parent / "plain"
    plain.write_bytes(b"")
    assert os.stat(written.path).st_mode == os.stat(plain).st_mode


def test_fifty_enquiries_take_seconds(tmp_path: Path) -> None:
    """Measured at 4 to 5 s of one core; the bound only catches a writer that became slow."""
    mill, results = example_results(50)
    start = time.process_time()
    write_results(tmp_path / "results.xlsx", mill, results)
    assert time.process_time() - start < 20.0
    with zipfile.ZipFile(tmp_path / "results.xlsx") as parts:
        rows = [parts.read(name).count(b"<row ") for name in parts.namelist() if "/sheet" in name]
    assert max(rows) >= sum(len(item.ledger.lines) for item in results)
