"""Copies of the demo book with one thing changed, found by what its cells say and not by the reader."""

from __future__ import annotations

import functools
import io
from collections.abc import Callable
from pathlib import Path
from typing import Any

from openpyxl import load_workbook
from openpyxl.cell.cell import Cell
from openpyxl.formatting.formatting import ConditionalFormattingList
from openpyxl.workbook import Workbook
from openpyxl.worksheet.datavalidation import DataValidationList
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook.build import demo_book

Edit = Callable[[Workbook], None]


@functools.cache
def without_live_sheets() -> bytes:
    """The input sheets of the demo book, without what takes long to copy and the reader leaves alone.

    That are the live sheets, and the marks and rules of the cells.
    """
    book = load_workbook(demo_book())
    for sheet in book.worksheets:
        if any(cell.data_type == "f" for row in sheet.iter_rows() for cell in row):
            book.remove(sheet)
            continue
        sheet.conditional_formatting = ConditionalFormattingList()
        sheet.data_validations = DataValidationList()
    content = io.BytesIO()
    book.save(content)
    return content.getvalue()


def changed(folder: Path, edit: Edit) -> Path:
    """A copy of the input sheets of the demo book after an edit."""
    book = load_workbook(io.BytesIO(without_live_sheets()))
    edit(book)
    path = folder / "my_mill.xlsx"
    book.save(path)
    return path


def sheet_of(book: Workbook, title: str) -> Worksheet:
    sheet = book[title]
    assert isinstance(sheet, Worksheet)
    return sheet


def cell_with(sheet: Worksheet, text: str, row: int = 0, column: int = 0) -> Cell:
    """The first cell that says a text, in a row or a column where one is given."""
    for cells in sheet.iter_rows(min_row=row or 1, max_row=row or sheet.max_row):
        for cell in cells:
            if cell.value == text and (not column or cell.column == column):
                assert isinstance(cell, Cell)
                return cell
    raise AssertionError(f"no cell of {sheet.title} says {text!r}")


def row_of(sheet: Worksheet, quantity: str, step: str = "") -> int:
    """The row of a quantity, of a step where one is given."""
    for row in range(1, sheet.max_row + 1):
        if sheet.cell(row, 2).value == quantity and step in ("", sheet.cell(row, 1).value):
            return row
    raise AssertionError(f"no row {step!r} {quantity!r} on {sheet.title}")


def column_cell(book: Workbook, title: str, code: str, quantity: str, step: str = "") -> Cell:
    """A cell of Styles, Recipes or Ranges."""
    sheet = sheet_of(book, title)
    found = sheet.cell(row_of(sheet, quantity, step), cell_with(sheet, code).column)
    assert isinstance(found, Cell)
    return found


def table_cell(book: Workbook, title: str, code: str, head: str) -> Cell:
    """A cell of Materials or Enquiries."""
    sheet = sheet_of(book, title)
    found = sheet.cell(cell_with(sheet, code).row, cell_with(sheet, head).column)
    assert isinstance(found, Cell)
    return found


def in_column(title: str, code: str, quantity: str, value: Any, step: str = "") -> Edit:
    """Sets a cell of Styles, Recipes or Ranges."""

    def edit(book: Workbook) -> None:
        column_cell(book, title, code, quantity, step).value = value

    return edit


def in_row(title: str, code: str, head: str, value: Any) -> Edit:
    """Sets a cell of Materials or Enquiries."""

    def edit(book: Workbook) -> None:
        table_cell(book, title, code, head).value = value

    return edit


def unit_of(title: str, quantity: str, value: Any, step: str = "") -> Edit:
    """Sets the unit of a row of Styles, Recipes or Ranges."""

    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        sheet.cell(row_of(sheet, quantity, step), 3).value = value

    return edit


def text_replaced(title: str, old: str, new: Any) -> Edit:
    """Writes something else over the first cell that says a text."""

    def edit(book: Workbook) -> None:
        cell_with(sheet_of(book, title), old).value = new

    return edit
