"""Small moves that every sheet of the book is drawn with."""

from __future__ import annotations

import datetime
import textwrap
from collections.abc import Sequence

from openpyxl.cell.cell import Cell
from openpyxl.utils import get_column_letter, quote_sheetname
from openpyxl.workbook import Workbook
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.worksheet import Worksheet

CellValue = str | float | int | bool | datetime.date | None

LINE_HEIGHT = 13.5
CHARACTERS_PER_WIDTH = 1.25  # of Calibri 10, for each unit of column width
PADDING = 2.0  # of the cell's own edges and its indent, in units of column width


def put(sheet: Worksheet, row: int, column: int, value: CellValue, style: str) -> Cell:
    """Write one cell in one of the named styles."""
    cell = sheet.cell(row, column)
    assert isinstance(cell, Cell)
    cell.value = value
    cell.style = style
    return cell


def section(sheet: Worksheet, row: int, heading: str, columns: int) -> None:
    """A band with a heading over so many columns from the first on."""
    for column in range(1, columns + 1):
        put(sheet, row, column, heading if column == 1 else None, "section")
    sheet.row_dimensions[row].height = 18


DEMO_LINE = "demo: "  # in front of a line that only the filled demo shows


def head_of_sheet(sheet: Worksheet, title: str, intro: Sequence[str], demo: bool = False) -> int:
    """Title and introduction; gives the first row that is free."""
    intro = [line.removeprefix(DEMO_LINE) for line in intro if demo or not line.startswith(DEMO_LINE)]
    put(sheet, 1, 1, title, "sheet title")
    sheet.row_dimensions[1].height = 28
    for number, text in enumerate(intro, start=2):
        put(sheet, number, 1, text, "intro line")
        sheet.row_dimensions[number].height = 15
    return len(intro) + 2


def height_for(*texts: tuple[str, float]) -> float:
    """Height of a row that holds each text wrapped in its column width."""
    lines = 1
    for text, width in texts:
        room = max(1, int((width - PADDING) * CHARACTERS_PER_WIDTH))
        lines = max(lines, sum(len(textwrap.wrap(part, room)) or 1 for part in text.split("\n")))
    return LINE_HEIGHT * lines + 3


def protect(sheet: Worksheet) -> None:
    """Let no locked cell be typed over; no password. Widths, heights and filters may still be changed."""
    allowed = sheet.protection
    allowed.sheet = True
    allowed.formatColumns = allowed.formatRows = allowed.autoFilter = False  # False: not kept from it


def cells(column: int, first: int, last: int, last_column: int = 0) -> str:
    """A range in one column, or up to a last column, without signs of dollar."""
    return f"{get_column_letter(column)}{first}:{get_column_letter(last_column or column)}{last}"


def define_name(
    book: Workbook, name: str, sheet: Worksheet, column: int, first: int, last: int, last_column: int = 0
) -> None:
    """Give a range a name that the whole book knows."""
    start, end = get_column_letter(column), get_column_letter(last_column or column)
    place = f"{quote_sheetname(sheet.title)}!${start}${first}:${end}${last}"
    book.defined_names[name] = DefinedName(name, attr_text=place)
