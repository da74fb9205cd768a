"""The sheets of the demo book as a spreadsheet program hands them to a formula: blocks of plain values."""

from __future__ import annotations

import datetime
from typing import Any

from openpyxl import load_workbook
from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.utils.datetime import to_excel

from costing.book.sheet import Sheet
from costing.front_ends.workbook.build import demo_book

Block = tuple[tuple[Any, ...], ...]


def day_of(date: datetime.date) -> float:
    """The number that a spreadsheet program has for a date."""
    return float(to_excel(date))  # type: ignore[no-untyped-call]


def handed_over(value: Any) -> Any:
    """A value of a file as a program hands it over: numbers as floats, dates as days, blanks as a text."""
    if value is None:
        return ""
    if isinstance(value, datetime.date):  # with its time of day or without
        return day_of(value)
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value


def demo_blocks() -> dict[str, Block]:
    """Title -> cells, of every sheet of the demo book."""
    book = load_workbook(demo_book(), data_only=True)
    return {
        sheet.title: tuple(
            tuple(handed_over(value) for value in row) for row in sheet.iter_rows(values_only=True)
        )
        for sheet in book.worksheets
    }


def with_cell(block: Block, place: str, value: Any) -> Block:
    """A block with another value in one cell."""
    row, column = coordinate_to_tuple(place)
    rows = [list(cells) for cells in block]
    rows[row - 1][column - 1] = value
    return tuple(tuple(cells) for cells in rows)


def sheets(blocks: dict[str, Block]) -> dict[str, Sheet]:
    return {title: Sheet.from_rows(title, rows) for title, rows in blocks.items()}
