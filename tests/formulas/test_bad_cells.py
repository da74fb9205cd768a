"""Every bad input of the book's file, typed in a cell: refused and named by its cell, and nothing answers."""

from __future__ import annotations

import io
from typing import Any

import pytest
from openpyxl import load_workbook

from costing.book.layout import sheet_names
from costing.formulas.cell_calls import called, reason
from costing.quantities import InputError
from tests.book.blocks import Block, handed_over
from tests.workbook.editing import Edit, without_live_sheets
from tests.workbook.test_bad_input import AT_QUOTING, AT_READING

# What a formula is not handed: how a cell is shown, and what stood behind a value.
NOT_HANDED_OVER = ("formula without a result", "formula in a code", "percent format beside g/L")
# A program hands a date over as the number of its day, and a number beside a date's cell may be one.
OTHER_WORDS = {
    "date": ["Recipes!I", "bath indigo is 45749 g/L; accepted is 0.05 to 30 g/L"],
    "sheet missing": ["the sheet 'Materials' is missing or was renamed", "accepted is its range from A1 on"],
}
TAKEN = ("number for a date",)
SINGLE = (("WARP_PRICE_ON", ["Q-02"]), ("WARP_USE_OF_ORDER", ["water", "Q-02"]))


def blocks_after(edit: Edit) -> list[Any]:
    book = load_workbook(io.BytesIO(without_live_sheets()))
    edit(book)
    return [
        tuple(tuple(handed_over(value) for value in row) for row in book[name].iter_rows(values_only=True))
        if name in book.sheetnames
        else "#REF!"
        for name in sheet_names()
    ]


def cases(which: list[tuple[str, Edit, list[str]]]) -> list[Any]:
    return [
        pytest.param(edit, OTHER_WORDS.get(name, words), id=name)
        for name, edit, words in which
        if name not in (*NOT_HANDED_OVER, *TAKEN)
    ]


@pytest.mark.parametrize(("edit", "words"), cases(AT_READING))
def test_a_book_that_is_refused_as_a_file_is_refused_as_cells(edit: Edit, words: list[str]) -> None:
    blocks = blocks_after(edit)
    with pytest.raises(InputError) as refused:
        called("WARP_OPENED_BOOK", blocks)
    said = reason("WARP_OPENED_BOOK", blocks)
    assert said == str(refused.value)
    assert "\n" not in said
    for text in words:
        assert text in said
    for name, arguments in SINGLE:  # what asks the cell of the book asks an error
        assert "is the error value #VALUE!" in reason(name, ["#VALUE!", *arguments])


@pytest.mark.parametrize(("edit", "words"), cases(AT_QUOTING))
def test_an_enquiry_that_cannot_be_quoted_poisons_the_tables_of_all(edit: Edit, words: list[str]) -> None:
    book = called("WARP_OPENED_BOOK", blocks_after(edit))
    for table in ("quotes", "use", "checks"):
        said = reason("WARP_RESULT_TABLE", [book, table])
        for text in words:
            assert text in said
    for name, arguments in SINGLE:
        mine = [argument.replace("Q-02", "Q-01") for argument in arguments]
        assert reason(name, [book, *mine])


MORE: dict[str, tuple[str, str, str, Any, list[str]]] = {
    # sheet, a text of the row, a head of the column, value, words
    "88 beside kg/kg": (
        "Materials",
        "HYDRO-88",
        "Strength unit",
        "kg/kg",
        ["is 88 kg/kg", "0.01 to 1"],
    ),
    "0.88 beside %": ("Materials", "HYDRO-88", "Strength", 0.88, ["0.88 %", "so type 88, not 0.88"]),
    "negative price": ("Materials", "HYDRO-90", "Price", -1.4, ["price is -1.4", "0 to"]),
    "not a number": ("Materials", "HYDRO-90", "Price", float("nan"), ["price is nan"]),
    "infinite": ("Materials", "HYDRO-90", "Price", float("inf"), ["price is inf"]),
    "error": ("Materials", "HYDRO-90", "Price", "#DIV/0!", ["price is the error value #DIV/0!"]),
    "error of Excel": ("Materials", "HYDRO-90", "Price", -2146826246, ["price is the error value #N/A"]),
    "decimal comma": (
        "Materials",
        "HYDRO-90",
        "Price",
        "1,5",
        ["the text '1,5'", "your program's dec"],
    ),
    "text": ("Enquiries", "Q-01", "Order length", "long", ["order length is the text 'long', not a number"]),
    "date": ("Enquiries", "Q-01", "Sets side by side", 46143.0, ["46143", "a whole number from 1 to 20"]),
    "error in a code": ("Enquiries", "Q-01", "Style", "#REF!", ["style is the error value #REF!"]),
    "number as a code": (
        "Enquiries",
        "Q-01",
        "Recipe",
        12.0,
        ["recipe '12' is not in the book; there"],
    ),
    "truth as a code": ("Enquiries", "Q-01", "Range", True, ["range is TRUE; accepted is a text"]),
    "empty and needed": ("Enquiries", "Q-01", "Order length", "", ["order length is empty"]),
}


@pytest.mark.parametrize("name", MORE)
def test_more_that_only_a_cell_can_hold(name: str) -> None:
    title, row_text, head, value, words = MORE[name]
    blocks: list[Block] = blocks_after(lambda book: None)
    place = list(sheet_names()).index(title)
    rows = [list(cells) for cells in blocks[place]]
    row = next(number for number, cells in enumerate(rows) if row_text in cells)
    column = next(cells for cells in rows if head in cells).index(head)
    rows[row][column] = value
    changed = [*blocks[:place], tuple(map(tuple, rows)), *blocks[place + 1 :]]
    said = reason("WARP_OPENED_BOOK", changed)
    beside = column - ("unit" in head)  # a unit is refused at its number
    assert said.startswith(f"{title}!{chr(65 + beside)}{row + 1}: ")
    for text in words:
        assert text in said
