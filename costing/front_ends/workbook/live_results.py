"""What the formulas of a book give, worked out from the book's own sheets before it is written."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from openpyxl.workbook import Workbook

import costing
from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.formulas.book_tables import cells_of_table
from costing.formulas.opened_book import mark_of
from costing.front_ends.workbook.file_sheets import sheets_of
from costing.front_ends.workbook.live_areas import block_of
from costing.front_ends.workbook.saving import DATE
from costing.quantities import InputError
from costing.reference_data import fingerprint
from costing.report import BOOK_TABLES, Table, work_out


class BookResults:
    """All results of a filled book, as on the date that its file says it was made.

    Parameters
    ----------
    book : Workbook
        With its input sheets.
    """

    def __init__(self, book: Workbook) -> None:
        self.mill = mill_from_sheets(sheets_of(book, None))
        # A remark on old prices counts from the day: the same file must come out on every day.
        self.results = {
            code: work_out(self.mill, enquiry, DATE.date()) for code, enquiry in self.mill.enquiries.items()
        }
        self.mark = mark_of([block_of(book[title]) for title in sheet_names()])
        self.chosen = next(iter(self.results))
        self.version, self.fingerprint = costing.__version__, fingerprint()

    def table(self, key: str, *, of_chosen: bool) -> Table:
        """A table of the chosen enquiry, or of all."""
        found = [self.results[self.chosen]] if of_chosen else list(self.results.values())
        return BOOK_TABLES[key](self.mill, found)

    def cost_on(self, basis: str) -> float:
        """Cost of the chosen enquiry on a basis, not rounded."""
        return self.results[self.chosen].quote.cost_on(basis)


def filled_up(table: Table, rows: int) -> list[list[Any]]:
    """A table as cells, with its heads, as an array formula over so many rows shows it.

    Raises
    ------
    InputError
        The table is longer.
    """
    cells = cells_of_table(table)
    if len(cells) > rows:
        raise InputError(table.title, f"has {len(cells)} rows with its heads; the sheet has room for {rows}")
    return cells + [[""] * len(table.columns) for _ in range(rows - len(cells))]


def total(values: Sequence[Any]) -> float:
    """The sum of the numbers, as a spreadsheet program adds a range up: texts are no part of it."""
    return sum(value for value in values if isinstance(value, float))
