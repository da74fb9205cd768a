"""Open a mill's book in a cell, and show one of its tables in a range of cells."""

from __future__ import annotations

import datetime
from typing import Any

from costing.book.cells import DAY_0
from costing.book.layout import LATE_SHEETS, sheet_names
from costing.book.quantity_cell import is_empty, is_error
from costing.book.sheet import EXCEL_ERRORS
from costing.formulas.cell_reading import cells_of, single, text_of
from costing.formulas.formula import PREFIX
from costing.formulas.opened_book import OpenedBook, kept_book, not_collecting, open_book
from costing.quantities import InputError, label, listed, meant
from costing.report import BOOK_TABLES, Table

MOST_ROWS = 100_000
HEADS = 2  # rows of titles and of units on top of a table
# What a row of a table is, where it is not a row of that table alone.
ROWS_OF = {"quotes": "enquiries", "key_figures": "enquiries"}


def opened_book(*sheets: Any) -> str:
    """Read the mill's book from its sheets; the other functions of this group take the text it gives."""
    where = PREFIX + "OPENED_BOOK"
    names = sheet_names()
    given = [*sheets, *[None] * (len(names) - len(sheets))]
    for name, block in zip(names, given):
        if name in LATE_SHEETS and block is None:
            continue  # a formula of a book that was made before there was such a sheet
        if _is_lost(block):
            raise InputError(
                where, f"the sheet {name!r} is missing or was renamed; accepted is its range from A1 on"
            )
    return open_book(given)


def _is_lost(block: Any) -> bool:
    """True for what is no range, and for a range of which the program has only errors left."""
    if not isinstance(block, (list, tuple)):
        return True
    filled = (cell for row in cells_of(block) for cell in row if not is_empty(cell))
    first = next(filled, None)
    return _error(first) and all(map(_error, filled))


def _error(cell: Any) -> bool:
    return is_error(EXCEL_ERRORS.get(cell, cell) if type(cell) is int else cell)


def result_table(book: Any = None, table: Any = None, enquiry: Any = None, rows: Any = None) -> Any:
    """One table of results with its heads: of one enquiry, or of all."""
    where = PREFIX + "RESULT_TABLE"
    asked = text_of(table, "table", where)
    key = meant(asked, BOOK_TABLES)
    if key is None:
        known = listed(BOOK_TABLES, most=len(BOOK_TABLES))
        raise InputError(where, f"table is {asked!r}; accepted is one of: {known}")
    opened, code = opened_of(book, where), text_of(enquiry, "enquiry", where)
    results = opened.results(code, where)
    with not_collecting():  # some tables take many quotes
        found = BOOK_TABLES[key](opened.mill, results)
    return _padded(cells_of_table(found), _rows(rows, where), key, where)


def cells_of_table(table: Table) -> list[list[Any]]:
    """A table as cells: titles, units, then its rows; a date as the number of its day, nothing as "".

    Examples
    --------
    >>> from costing.report import Column
    >>> cells_of_table(Table("t", "T", "", [Column("Day"), Column("Mass", "kg", 1)],
    ...                      [[datetime.date(2026, 1, 2), None]]))
    [['Day', 'Mass'], ['', 'kg'], [46024.0, '']]
    """
    heads = [[column.title for column in table.columns], [column.unit for column in table.columns]]
    return [*heads, *[[_cell(value) for value in row] for row in table.rows]]


def _cell(value: Any) -> Any:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime.date):
        return float((value - DAY_0).days)
    return float(value) if isinstance(value, (int, float)) else str(value)


def _padded(cells: list[list[Any]], rows: int | None, what: str, where: str) -> list[list[Any]]:
    """As many rows as the range has; a range too short is refused, so that no total can lack a row."""
    if rows is None:
        return cells
    if len(cells) > rows:
        raise InputError(
            where,
            f"the book holds at most {max(rows - HEADS, 0)} {ROWS_OF.get(what, f'rows of {label(what)}')}; "
            f"{len(cells) - HEADS} are given: take some out, or let `costing quote` write the results",
        )
    width = len(cells[0])
    return cells + [[""] * width for _ in range(rows - len(cells))]


def _rows(cell: Any, where: str) -> int | None:
    found = single(cell, "rows", where)
    if is_empty(found):
        return None
    if isinstance(found, bool) or not isinstance(found, (int, float)) or not 1 <= found <= MOST_ROWS:
        raise InputError(where, f"rows is {found!r}; accepted is a whole number from 1 to {MOST_ROWS}")
    return int(found)


def opened_of(book: Any, where: str) -> OpenedBook:
    """The book whose mark a cell holds."""
    return kept_book(text_of(book, "book", where), where)
