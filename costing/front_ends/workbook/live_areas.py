"""The areas of the input sheets that the live formulas read, and the names by which formulas call them.

A defined name is a plain range, never a formula: not every spreadsheet program reads a call in a name.
"""

from __future__ import annotations

import datetime
from typing import Any

from openpyxl.utils import get_column_letter, quote_sheetname
from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.workbook import Workbook
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.cells import DAY_0
from costing.book.layout import sheet_names, tables_of
from costing.book.sheet import column_letters

# Last cell that is read of each sheet: more columns and rows than are drawn, so that a mill can add its own.
LAST_CELLS = {
    "Enquiries": "X80",
    "Styles": "AF60",
    "Recipes": "AT700",
    "Ranges": "X360",
    "Routes": "H280",
    "Materials": "AC120",
    "Mill costs": "H60",
    "How sure": "L120",
    "Quote texts": "F80",
    "Discharge points": "Z60",
    "Discharge plan": "P80",
    "Treatment": "T90",
    "Permit": "P160",
    "Quality": "P40",
    "Offers": "T320",
    "Calibrations": "L160",
}
BEYOND_ROW, BEYOND_COLUMN = 5000, 200  # how far is looked for cells that nobody reads

OPENED = "opened_book"
CHOICE = "chosen_enquiry"  # the cell that is typed in
CHOSEN = "chosen_code"  # the same as the sheet Enquiries writes it, which all formulas read
DRIVERS_WANTED = "drivers_wanted"  # yes or no: whether the sheet What moves the cost is calculated
RUNNING = "program_version"  # an error where our formulas do not run
VERDICT = "checks_verdict"
CODES = "enquiry_codes"
LISTED = "materials_listed"


def area_name(title: str) -> str:
    """The defined name of the area of a sheet.

    Examples
    --------
    >>> area_name("Mill costs")
    'book_mill_costs'
    """
    return "book_" + title.lower().replace(" ", "_")


def absolute(sheet: Worksheet, first: str, last: str = "") -> str:
    """A cell or a range of a sheet, with its name and signs of dollar."""
    corners = [coordinate_to_tuple(place) for place in (first, last) if place]
    cells = ":".join(f"${get_column_letter(column)}${row}" for row, column in corners)
    return f"{quote_sheetname(sheet.title)}!{cells}"


def name_cells(book: Workbook, name: str, place: str) -> None:
    """Give a range a name that the whole book knows."""
    book.defined_names[name] = DefinedName(name, attr_text=place)


def name_areas(book: Workbook) -> None:
    """Name the area of each input sheet, and the codes of enquiries and materials in theirs."""
    for title in sheet_names():
        name_cells(book, area_name(title), absolute(book[title], "A1", LAST_CELLS[title]))
    for name, title in ((CODES, "Enquiries"), (LISTED, "Materials")):
        sheet, (table,) = book[title], tables_of(title.lower())
        heads = next(row for row in range(1, 30) if sheet.cell(row, 1).value == table.columns[0].head)
        last, _ = coordinate_to_tuple(LAST_CELLS[title])
        name_cells(book, name, absolute(sheet, f"A{heads + 1}", f"A{last}"))


def beyond(title: str) -> tuple[str, str]:
    """The cells right of the area of a sheet, and those below it, as far as is looked.

    Examples
    --------
    >>> beyond("Routes")
    ("'Routes'!$I$1:$GR$5000", "'Routes'!$A$281:$H$5000")
    """
    row, column = coordinate_to_tuple(LAST_CELLS[title])
    sheet = quote_sheetname(title)
    last = column_letters(column)
    right = f"{sheet}!${column_letters(column + 1)}$1:${column_letters(BEYOND_COLUMN)}${BEYOND_ROW}"
    return right, f"{sheet}!$A${row + 1}:${last}${BEYOND_ROW}"


def block_of(sheet: Worksheet) -> tuple[tuple[Any, ...], ...]:
    """The cells of an area as a spreadsheet program hands them to a formula."""
    last_row, last_column = coordinate_to_tuple(LAST_CELLS[sheet.title])
    filled = {place: _handed_over(cell.value) for place, cell in sheet._cells.items()}
    rows, columns = range(1, last_row + 1), range(1, last_column + 1)
    return tuple(tuple(filled.get((row, column), "") for column in columns) for row in rows)


def _handed_over(value: Any) -> Any:
    if value is None:
        return ""
    if isinstance(value, datetime.datetime):
        value = value.date()
    if isinstance(value, datetime.date):
        return float((value - DAY_0).days)
    return float(value) if isinstance(value, (int, float)) else value
