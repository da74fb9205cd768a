"""Read the sheets Planning and Order book: what is ordered, and how orders are put together."""

from __future__ import annotations

from typing import Any

from costing.book.cells import date_of, value_of
from costing.book.layout import row_text, tables_of
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.quantities import InputError, folded, listed
from costing.settings.building import Entry, build
from costing.settings.mill import Mill
from costing.settings.order_book import CANCELLED, DONE, OPEN, OrderLine, Planning

PLANNING, ORDER_BOOK = "Planning", "Order book"
PLAN_FROM = "plan_from"
ROWS = (PLAN_FROM, "gather_time", "time_before_due", "bath_keeping_time")


def read_planning(sheet: Sheet, mill: Mill) -> Planning:
    """How lots are planned.

    Raises
    ------
    InputError
        The first cell that is refused, or a row that is not known.
    """
    (table,) = tables_of("planning")
    names = {folded(row_text(name)): name for name in ROWS}
    fixed: dict[str, Any] = {}
    entries: dict[str, Entry] = {}
    for row in refuse_twice(read_table(sheet, table), "row"):
        name, cell = names.get(folded(row.code)), row.cells["value"]
        if cell.is_empty:
            continue
        if name is None:
            accepted = listed(map(row_text, ROWS), row.code)
            raise InputError(
                row.where, f"the quantity {row.code!r} is unknown; accepted is one of: {accepted}"
            )
        if name == PLAN_FROM:
            fixed[name] = date_of(cell, row_text(name))
        else:
            entries[name] = Entry(value_of(name, cell, row.cells["unit"].value), cell.where)
    return build(Planning, PLANNING, Planning.GROUPS, entries, mill.assumptions, fixed)


def read_order_book(sheet: Sheet, mill: Mill) -> list[OrderLine]:
    """The orders, a line for each row.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("order_book")
    return refuse_repeated([_line(row, mill) for row in read_table(sheet, table)])


def refuse_repeated(lines: list[OrderLine]) -> list[OrderLine]:
    """The lines, where no two are the same in all; the lines of one order may differ in anything.

    Raises
    ------
    InputError
        A line stands there twice, as after an export that was pasted twice: it would be bought for twice.
    """
    seen: dict[OrderLine, str] = {}
    for line in lines:
        first = seen.setdefault(line._replace(where=""), line.where)
        if line.status not in (DONE, CANCELLED) and first != line.where:
            raise InputError(
                line.where,
                f"order {line.code!r} is as in {first} in all; accepted is each line once",
            )
    return lines


def planning_of(mill: Mill) -> Planning:
    """How the book plans its lots; with the usual values where it does not say.

    Raises
    ------
    InputError
        A cell of the sheet is refused.
    """
    return mill.kept(PLANNING) or build(Planning, PLANNING, Planning.GROUPS, {}, mill.assumptions)


def _line(row: TableRow, mill: Mill) -> OrderLine:
    enquiry = mill.enquiry_code(row.text("enquiry"), row.at("enquiry"))
    length, due = row.number("order_length", "order_length_unit"), row.date("due")
    if length is None:
        raise InputError(row.at("order_length"), "length is empty; accepted is what is still to be dyed")
    if due is None:
        raise InputError(row.at("due"), "due is empty; accepted is a date")
    return OrderLine(row.code, enquiry, length, due, row.text("order_status") or OPEN, row.where)
