"""Logs as mills keep them, and files that are none: read right, or refused with their row."""

from __future__ import annotations

import datetime
import tracemalloc
import zipfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook

from costing.front_ends.production_log.reading import FORM, Log, read_log
from costing.front_ends.row_files import rows
from costing.front_ends.row_files.column_map import asked_columns, keep
from costing.quantities import InputError
from costing.report.drain_month import Ran
from tests.report.demo import demo_mill

GERMAN = "date=Datum, enquiry=Auftrag, amount=kg"


def log(path: Path, text: str | bytes, columns: str | None = None, skip: bool = False) -> Log:
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_log(path, demo_mill(), asked_columns(columns, path, FORM), skip)


def refusal(path: Path, text: str | bytes, columns: str | None = None) -> str:
    with pytest.raises(InputError) as caught:
        log(path, text, columns)
    assert "\n" not in str(caught.value)
    return str(caught.value)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "log.csv"


def book(path: Path, cells: Sequence[Sequence[Any]], more: bool = False) -> Path:
    workbook = Workbook()
    sheet: Any = workbook.active
    for row in cells:
        sheet.append(row)
    if more:
        workbook.create_sheet("Notes")
    workbook.save(path)
    return path


PLAIN = [
    Ran(datetime.date(2026, 10, 1), "Q-02", "PIT", 5200.5, 0.0),
    Ran(datetime.date(2026, 10, 2), "B-01", "PIT", 1600.0, 0.0),
]


@pytest.mark.parametrize(
    ("text", "columns"),
    [
        ("date,enquiry,amount,unit\n2026-10-01,Q-02,5200.5,kg\n2026-10-02,b-01,1.6,t\n", None),
        ("date,enquiry,amount\n2026-10-01,Q-02,5200.5 kg\n2026-10-02,B-01,1.6 t\n", None),
        ("\ufeffDatum;Auftrag;kg\n01.10.2026;Q-02;5.200,5\n02.10.2026;B-01;1600\n", GERMAN),
        (
            "Datum\tAuftrag\tkg\r\n01/10/2026\tQ-02\t5200,5\r\n13/10/2026\tQ-02\t0\r\n02/10/2026\tB-01\t1600,0\r\n",
            GERMAN,
        ),
        (
            'date,enquiry,"amount, kg"\n2026-10-01 06:00,Q-02,"5,200.5"\n2026-10-02 22:10,B-01,"1,600.0"\n',
            'amount="amount, kg"',
        ),
        ("date;enquiry;amount kg\n2026-10-01;Q-02;5 200,5\n\n2026-10-02;B-01;1'600,0\n", "amount=amount kg"),
        (
            "date,enquiry,point,amount,unit\n2026-10-01,Q-02,pit,5000.5,kg\n2026-10-01,Q-02,PIT,200,kg\n2026-10-02,B-01,PIT,1600,kg\n",
            None,
        ),
    ],
)
def test_the_same_production_from_files_of_many_kinds(path: Path, text: str, columns: str | None) -> None:
    if columns and '"' in columns:
        columns = columns.replace('"', "")
    assert log(path, text, columns).ran == PLAIN


def test_cloth_in_metres_and_yards_is_finished_cloth(path: Path) -> None:
    found = log(path, "date,enquiry,amount,unit\n2026-10-01,K-01,6000,m\n2026-10-02,K-01,1000,yd\n").ran
    assert [item.cloth for item in found] == pytest.approx([6000.0, 914.4])
    assert [item.yarn for item in found] == [0.0, 0.0]


def test_style_recipe_and_range_name_an_enquiry(path: Path) -> None:
    item = demo_mill().enquiries["Q-02"]
    same = [
        code
        for code, other in demo_mill().enquiries.items()
        if (other.style, other.recipe, other.range) == (item.style, item.recipe, item.range)
    ]
    text = f"date,style,recipe,range,amount\n2026-10-01,{item.style},{item.recipe},{item.range},5 t\n"
    if len(same) > 1:
        assert f"is of {', '.join(same)}" in refusal(path, text)
    else:
        assert log(path, text).ran[0].enquiry == "Q-02"
    assert "no enquiry of the book with this style" in refusal(path, text.replace(item.recipe, "NONE"))


def test_a_workbook_reads_as_the_text_does(tmp_path: Path) -> None:
    rows_of: list[list[Any]] = [
        ["date", "enquiry", "amount", "unit"],
        [datetime.date(2026, 10, 1), "Q-02", 5200.5, "kg"],
    ]
    rows_of += [[datetime.datetime(2026, 10, 2, 6), "B-01", 1600, "kg"]]
    found = book(tmp_path / "log.xlsx", rows_of)
    assert read_log(found, demo_mill(), {}).ran == PLAIN
    found = book(tmp_path / "two.xlsx", rows_of, more=True)
    with pytest.raises(InputError, match="has 2 sheets; there are: Notes, Sheet"):
        read_log(found, demo_mill(), {})
    assert read_log(found, demo_mill(), {"sheet": "sheet"}).ran == PLAIN


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "date,enquiry,amount\n2026-10-01,Q-02,5 t\n01.10.2026,Q-02,5 t\n",
            "row 3: date is '01.10.2026', in row 2",
        ),
        (
            "date,enquiry,amount\n13/10/2026,Q-02,5 t\n10/14/2026,Q-02,5 t\n",
            "row 3: date is '10/14/2026', month first",
        ),
        ("date,enquiry,amount\n01/10/2026,Q-02,5 t\n", "no row tells day from month"),
        ("date,enquiry,amount\n2026-02-30,Q-02,5 t\n", "row 2: date is '2026-02-30', which is no day"),
        ("date,enquiry,amount\n01.10.26,Q-02,5 t\n", "row 2: date is '01.10.26'; accepted is one such as"),
        ("date,enquiry,amount\n1026-10-01,Q-02,5 t\n", "accepted is 1990 to 2100"),
        ("date,enquiry,amount\n,Q-02,5 t\n", "row 2: date is empty"),
        ("date;enquiry;amount\n2026-10-01;Q-02;1.200 kg\n", "no row tells whether its sign is decimal"),
        (
            "date;enquiry;amount\n2026-10-01;Q-02;1.5 t\n2026-10-02;Q-02;1,5 t\n",
            "row 3: amount is '1,5 t', a decimal comma; row 2",
        ),
        ("date;enquiry;amount\n2026-10-01;Q-02;12.34,5 kg\n", "accepted is a number with a decimal comma"),
        ("date,enquiry,amount\n2026-10-01,Q-02,5\n", "row 2: the amount has no unit"),
        (
            "date,enquiry,amount\n2026-10-01,Q-02,5 L\n",
            "row 2: unit is 'L'; accepted is one such as kg, t, m or yd",
        ),
        ("date,enquiry,amount,unit\n2026-10-01,Q-02,5 t,kg\n", "unit is 't' and 'kg'"),
        ("date,enquiry,amount\n2026-10-01,Q-02,-5 t\n", "amount is -5 t; accepted is 0 and above"),
        ("date,enquiry,amount\n2026-10-01,Q-02,nan\n", "amount is 'nan'; accepted is a number"),
        ("date,enquiry,amount\n2026-10-01,Q-02,=1+1\n", "amount is '=1+1'; accepted is a number"),
        ("date,enquiry,amount\n2026-10-01,,5 t\n", "row 2: enquiry is empty"),
        ("date,enquiry,amount,point\n2026-10-01,Q-02,5 t,RIVER\n", "row 2: point is 'RIVER'; there are: PIT"),
        ("date,enquiry,amount\n", "holds no amount above 0"),
        ("date,enquiry,amount,amount\n2026-10-01,Q-02,5,6\n", "the heading 'amount' stands there 2 times"),
        ("Datum;Auftrag;kg\n", "no column for date, amount, enquiry"),
        ("", "is empty"),
        ('date,enquiry,amount\n2026-10-01,"Q-02,5 t\n', "cannot be read as CSV"),
        (b"date,enquiry,amount\n2026-10-01,\xe4,5 t\n", "is no text in UTF-8"),
        ("date,enquiry,amount\n".encode("utf-16"), "is no text in UTF-8"),
        (b"date,enquiry,amount\n\0\0\0", "is no plain text"),
        (b"PK\x03\x04 and no more", "is damaged"),
        (b"x" * 200_000, "has a line of more than 100,000 letters"),
    ],
)
def test_what_cannot_be_read_one_way_is_refused_with_its_row(
    path: Path, text: str | bytes, said: str
) -> None:
    assert said in refusal(path, text)


def test_order_and_decimal_sign_may_be_said(path: Path) -> None:
    text = "date;enquiry;amount\n01/10/2026;Q-02;5.200 kg\n"
    day = log(path, text, "dates=day first, decimal=comma").ran[0]
    month = log(path, text, "dates=month first, decimal=point").ran[0]
    assert (day.date, day.yarn) == (datetime.date(2026, 10, 1), 5200.0)
    assert (month.date, month.yarn) == (datetime.date(2026, 1, 10), 5.2)
    assert "month first" in refusal(path, text.replace("01/10", "10/13"), "dates=day first, decimal=comma")


def test_unknown_enquiries_are_all_told_with_their_rows_and_left_out_only_when_asked(path: Path) -> None:
    unknown = ("2026-10-01,X-9,1 t", "2026-10-02,X-9,1 t", "2026-10-02,'=cmd()',1 t")
    text = "\n".join(["date,enquiry,amount", "2026-10-01,Q-02,5 t", *unknown, ""])
    said = refusal(path, text)
    assert "2 not known: 'X-9' (row 3 and 1 more): not in the book" in said
    assert "(row 5): not in the book" in said
    found = log(path, text, skip=True)
    assert [item.enquiry for item in found.ran] == ["Q-02"]
    assert [item.rows for item in found.left_out] == [2, 1]


def test_control_characters_do_not_reach_the_screen(path: Path) -> None:
    assert "\x1b" not in refusal(path, "date,enquiry,amount\n2026-10-01,\x1b[2Jx,5 t\n")


def test_a_file_without_end_is_refused_and_does_not_fill_the_memory(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(rows, "MOST_ROWS", 20_000)
    text = "date,enquiry,amount\n" + "2026-10-01,Q-02,5 t\n" * 20_000
    assert len(log(path, text).ran) == 1
    tracemalloc.start()
    try:
        path.write_text(text + "2026-10-01,Q-02,5 t\n")
        with pytest.raises(
            InputError, match="holds more than 20,000 rows; accepted is a file for each month"
        ):
            read_log(path, demo_mill(), {})
        assert tracemalloc.get_traced_memory()[1] < 5_000_000
    finally:
        tracemalloc.stop()


def test_a_packed_bomb_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    bomb = tmp_path / "bomb.xlsx"
    with zipfile.ZipFile(bomb, "w", zipfile.ZIP_DEFLATED) as parts:
        parts.writestr("xl/workbook.xml", "<workbook/>")
        parts.writestr("xl/worksheets/sheet1.xml", b"0" * 210_000_000)
    with pytest.raises(InputError, match="210 MB in 2 parts once unpacked"):
        read_log(bomb, demo_mill(), {})


def test_columns_are_kept_beside_the_log_and_read_again(path: Path) -> None:
    text = "Datum;Auftrag;kg\n01.10.2026;Q-02;5.200,5\n02.10.2026;B-01;1600\n"
    path.write_text(text)
    kept = keep(asked_columns(GERMAN, path, FORM), path, FORM)
    assert kept.name == "log.columns.toml"
    assert log(path, text).ran == PLAIN
    with pytest.raises(InputError, match="is there already"):
        keep(asked_columns(GERMAN, path, FORM), path, FORM)
    kept.write_text("columns = 3")
    assert "has no table" in refusal(path, text)
    kept.write_text("[columns")
    assert "cannot be read as TOML" in refusal(path, text)


@pytest.mark.parametrize(
    ("columns", "said"),
    [
        ("datum=Datum", "'datum' is no column; there are: date"),
        ("date", "'date' names no column"),
        ("date=A, date=B", "date is given twice"),
        ("decimal=dot", "decimal is 'dot'; accepted is point or comma"),
        ("date=Tag", "no column 'Tag'; there are: date, enquiry, amount"),
    ],
)
def test_columns_that_make_no_sense_are_refused(path: Path, columns: str, said: str) -> None:
    assert said in refusal(path, "date,enquiry,amount\n2026-10-01,Q-02,5 t\n", columns)


def test_a_title_above_the_headings_is_refused_in_words(path: Path) -> None:
    told = refusal(path, "October\nDatum;Auftrag;kg\n01.10.2026;Q-02;100\n", GERMAN)
    assert "accepted is a first row with the headings, no title above them" in told


def test_a_unit_in_front_of_the_heading_counts_too(path: Path) -> None:
    columns = GERMAN.replace("amount=kg", "amount=kg Garn")
    held = log(path, "Datum;Auftrag;kg Garn\n13.10.2026;Q-02;100\n", columns)
    assert len(held.ran) == 1
