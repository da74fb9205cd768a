"""The array formulas of a book, found by what its cells say, and what they must show."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.workbook import Workbook
from openpyxl.worksheet.formula import ArrayFormula

from costing.formulas.book_tables import cells_of_table
from costing.report import BOOK_TABLES, Result, work_out
from costing.settings.mill import Mill

CALL = re.compile(r'WARP_RESULT_TABLE\(opened_book,"(\w+)",(chosen_code|""),(\d+)\)')
WANTED = re.compile(r'=(?:IF\(UPPER\(TRIM\(drivers_wanted\)\)="NO","",(.+)\)|(.+))')  # may be turned off
LIVE_SHEETS = (
    "Quotes",
    "Quote",
    "Use",
    "Cost lines",
    "Ledger",
    "Discharge",
    "Typical values",
    "What moves the cost",
    "Purchasing",
    "Limits",
    "Mill discharge",
    "Mill streams",
    "Checks",
)


class Placed(NamedTuple):
    """An array formula of a book."""

    title: str
    area: tuple[int, int, int, int]  # first column, first row, last column, last row
    key: str
    of_chosen: bool
    rows: int


def array_formulas(book: Workbook) -> Iterator[Placed]:
    """Every array formula over several cells; each is a table of results."""
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if isinstance(cell.value, ArrayFormula) and ":" in cell.value.ref:
                    asked = WANTED.fullmatch(str(cell.value.text))
                    found = asked and CALL.fullmatch(asked[1] or asked[2])
                    assert found, f"{sheet.title}!{cell.coordinate}: {cell.value.text}"
                    (first_row, first), (last_row, last) = map(coordinate_to_tuple, cell.value.ref.split(":"))
                    area = first, first_row, last, last_row
                    yield Placed(sheet.title, area, found[1], found[2] != '""', int(found[3]))


def must_show(mill: Mill, placed: Placed, chosen: str, worked: dict[str, Result]) -> list[list[Any]]:
    """What the cells of an array formula must show, from the tables of the command line.

    `worked` keeps what was worked out of that mill for the tables before.
    """
    codes = [mill.enquiry(chosen).code] if placed.of_chosen else list(mill.enquiries)
    worked.update({code: work_out(mill, mill.enquiries[code]) for code in codes if code not in worked})
    table = BOOK_TABLES[placed.key](mill, [worked[code] for code in codes])
    cells = cells_of_table(table)
    return cells + [[""] * len(table.columns)] * (placed.rows - len(cells))


def shown(grid: list[list[Any]], area: tuple[int, int, int, int]) -> list[list[Any]]:
    """The cells of an area of a sheet."""
    first_column, first_row, last_column, last_row = area
    return [row[first_column - 1 : last_column] for row in grid[first_row - 1 : last_row]]
