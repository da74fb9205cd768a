"""A book handed over as blocks of cells is the book of the file, and is refused in the same words."""

from __future__ import annotations

import datetime
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl.utils import get_column_letter

from costing.book.cells import FIRST_DATE, LAST_DATE, date_of, text_of
from costing.book.sheet import Given, Sheet, column_letters
from costing.book.whole import mill_from_sheets
from costing.cost.quote import quote
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.book.blocks import Block, day_of, demo_blocks, sheets, with_cell

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def blocks() -> dict[str, Block]:
    return demo_blocks()


@pytest.fixture(scope="module")
def demo() -> Mill:
    return read_book(demo_book())


def place_of(mill: Mill, kind: str, code: str) -> str:
    """Cell of a code, without its sheet."""
    return mill.places[kind, code].rpartition("!")[2]


def test_the_book_is_the_same_from_the_file_and_from_blocks(blocks: dict[str, Block], demo: Mill) -> None:
    mill = mill_from_sheets(sheets(blocks))
    assert mill == demo
    assert len(mill.places) == len(demo.places) > 40
    assert mill.assumptions == demo.assumptions
    dates = {item.price_date for item in mill.materials.values()}
    assert all(isinstance(date, datetime.date) for date in dates)


def test_lists_none_and_whole_numbers_are_taken_too(blocks: dict[str, Block], demo: Mill) -> None:
    other = {
        title: Sheet.from_rows(
            title,
            [
                [
                    int(cell) if isinstance(cell, float) and cell.is_integer() else (cell or None)
                    for cell in row
                ]
                for row in rows
            ],
        )
        for title, rows in blocks.items()
    }
    assert mill_from_sheets(other) == demo


def test_a_block_may_begin_below_and_beside_the_first_cell(blocks: dict[str, Block], demo: Mill) -> None:
    moved = sheets(blocks)
    cut = tuple(row[1:] for row in blocks["Styles"][2:])
    moved["Styles"] = Sheet.from_rows("Styles", cut, first_row=3, first_column=2)
    assert mill_from_sheets(moved) == demo


def test_sheets_are_found_whatever_their_case_and_order(blocks: dict[str, Block], demo: Mill) -> None:
    shouted = {title.upper(): sheet for title, sheet in reversed(sheets(blocks).items())}
    assert mill_from_sheets(shouted) == demo


def test_a_quote_is_the_same(blocks: dict[str, Block], demo: Mill) -> None:
    prices = []
    for mill in (mill_from_sheets(sheets(blocks)), demo):
        assert mill.costs is not None
        ledger = open_ledger(mill, mill.enquiry("Q-05"))
        prices.append(quote(ledger, mill.materials, mill.costs).price_per_kg)
    assert prices[0] == prices[1] > 0


REFUSED: list[tuple[str, str, str, str, Any, str]] = [
    # sheet, kind, code, column of a table or "" for the code's own cell, value, words
    ("Materials", "material", "LYE-50", "F", "#REF!", "strength is the error value #REF!; accepted is 1 to"),
    ("Materials", "material", "LYE-50", "F", "Err:502", "strength is the error value Err:502"),
    ("Materials", "material", "LYE-50", "F", -2146826281, "strength is the error value #DIV/0!"),
    ("Materials", "material", "LYE-50", "F", float("nan"), "strength is nan %; accepted is 1 to 100 %"),
    ("Materials", "material", "LYE-50", "F", "50,0", "strength is the text '50,0', not a number"),
    ("Materials", "material", "LYE-50", "F", True, "strength is TRUE, not a number"),
    ("Materials", "material", "LYE-50", "F", "", "strength is empty; accepted is 1 to 100 %"),
    ("Materials", "material", "LYE-50", "F", object, "strength is \"<class 'object'>\", not a number"),
    ("Materials", "material", "LYE-50", "B", float("inf"), "description is the error value inf"),
    (
        "Materials",
        "material",
        "LYE-50",
        "B",
        object,
        "description is \"<class 'object'>\"; accepted is a text",
    ),
    ("Materials", "material", "LYE-50", "C", "#NAME?", "role is the error value #NAME?"),
    (
        "Materials",
        "material",
        "LYE-50",
        "X",
        45663.5,
        "price date is 45663.5, not a date; accepted is a real",
    ),
    (
        "Materials",
        "material",
        "LYE-50",
        "X",
        6012025.0,
        "not a date; accepted is a real date from 1990 to 2100",
    ),
    ("Materials", "material", "LYE-50", "X", "06.01.2025", "price date is '06.01.2025', not a date"),
    ("Materials", "material", "LYE-50", "X", True, "price date is True, not a date"),
    ("Enquiries", "enquiry", "Q-01", "F", -1.0, "order length is -1 m; accepted is 1 to"),
    ("Enquiries", "enquiry", "Q-01", "C", 7.0, "style '7' is not in the book; there are: D-1200"),
]


@pytest.mark.parametrize(("sheet", "kind", "code", "column", "value", "words"), REFUSED, ids=str)
def test_a_refusal_names_the_cell(
    blocks: dict[str, Block],
    demo: Mill,
    sheet: str,
    kind: str,
    code: str,
    column: str,
    value: Any,
    words: str,
) -> None:
    place = column + place_of(demo, kind, code)[1:]
    changed = {**blocks, sheet: with_cell(blocks[sheet], place, value)}
    with pytest.raises(InputError) as caught:
        mill_from_sheets(sheets(changed))
    assert caught.value.where == f"{sheet}!{place}"
    assert words in caught.value.message
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("unit", [2.0, "#REF!", "stone"])
def test_a_refused_unit_names_the_cell_of_its_number(blocks: dict[str, Block], demo: Mill, unit: Any) -> None:
    row = place_of(demo, "material", "LYE-50")[1:]
    changed = {**blocks, "Materials": with_cell(blocks["Materials"], f"G{row}", unit)}
    with pytest.raises(InputError, match=f"Materials!F{row}: strength has the unknown unit"):
        mill_from_sheets(sheets(changed))


def test_a_missing_sheet_and_what_is_no_block_are_refused(blocks: dict[str, Block]) -> None:
    left = {title: block for title, block in blocks.items() if title != "Routes"}
    with pytest.raises(InputError, match="'Routes' is missing or was renamed; there are: About, Enq"):
        mill_from_sheets(sheets(left))
    with pytest.raises(InputError, match="there are: none"):
        mill_from_sheets({})
    for rows in (3.0, "Styles", None, (1.0, 2.0)):
        with pytest.raises(InputError, match=r"Styles: is .*, not a block of cells; accepted is the range"):
            Sheet.from_rows("Styles", rows)


def test_an_empty_block_is_an_empty_sheet(blocks: dict[str, Block]) -> None:
    for rows in ((), ((),), (("", None), ())):
        with pytest.raises(InputError, match="Mill costs: the column 'Currency' is missing"):
            mill_from_sheets(sheets({**blocks, "Mill costs": rows}))


@given(date=st.dates(FIRST_DATE, LAST_DATE))
def test_a_day_is_its_date_only_where_a_program_hands_it_over(date: datetime.date) -> None:
    day = day_of(date)
    assert date_of(Given(day, "A1", serial_dates=True), "date") == date
    assert date_of(Given(date, "A1", serial_dates=True), "date") == date
    with pytest.raises(InputError, match="not a date"):
        date_of(Given(day, "A1"), "date")


@pytest.mark.parametrize("date", [datetime.date(1989, 12, 31), datetime.date(2101, 1, 1)])
def test_a_day_of_another_century_is_no_date(date: datetime.date) -> None:
    with pytest.raises(InputError, match="not a date"):
        date_of(Given(day_of(date), "A1", serial_dates=True), "date")


def test_columns_have_the_letters_of_the_programs() -> None:
    for column in (*range(1, 800), 16384):
        assert column_letters(column) == get_column_letter(column)


@pytest.mark.parametrize(("value", "text"), [(1200.0, "1200"), (7, "7"), (0.5, "0.5"), ("  a  b ", "a b")])
def test_a_code_is_read_as_it_is_shown(value: Any, text: str) -> None:
    assert text_of(Given(value, "Styles!I5"), "code") == text


# Refuses what a spreadsheet program's own Python need not have; `tomllib` is younger than it may be.
WITHOUT = """
import json, sys
class Blocker:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in {"openpyxl", "pint", "pandas", "numpy", "tomllib"}:
            raise ImportError(name + " is refused")
sys.meta_path.insert(0, Blocker())
"""
READ = """
from costing.book.sheet import Sheet
from costing.book.whole import mill_from_sheets
import costing.book.places
blocks = json.load(sys.stdin)
mill = mill_from_sheets({title: Sheet.from_rows(title, rows) for title, rows in blocks.items()})
print(json.dumps([[kind, code, place] for (kind, code), place in mill.places.items()]))
"""


def run(program: str, handed: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-B", "-c", WITHOUT + program],
        cwd=ROOT,
        input=handed,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


def test_the_book_is_read_without_any_library(blocks: dict[str, Block], demo: Mill) -> None:
    done = run(READ, json.dumps(blocks))
    assert done.returncode == 0, done.stderr
    assert {(kind, code): place for kind, code, place in json.loads(done.stdout)} == demo.places


@pytest.mark.parametrize("library", ["openpyxl", "pint", "tomllib"])
def test_a_library_would_be_refused(library: str) -> None:
    assert f"{library} is refused" in run(f"import {library}").stderr
