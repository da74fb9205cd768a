"""Read an order book that another system of the mill writes: every row is one order."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from costing.book.order_book import refuse_repeated
from costing.front_ends.row_files.column_map import RowForm
from costing.front_ends.row_files.reading import EnquiryFinder, LeftOut, Rows, of_file
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.order_book import OPEN, OrderLine

FORM = RowForm(
    "order book",
    ("order", "enquiry", "style", "recipe", "range", "length", "unit", "due", "status"),
    ((("length",),), (("due",),), (("enquiry",), ("style",))),
    {"length": ("m",)},
    "order=Auftrag, style=Artikel, length=Meter [m], due=Termin",
)
MOST_ORDERS = 1_000_000


class OrderFile(NamedTuple):
    """Orders of a file, and what it names that the book does not know."""

    lines: list[OrderLine]
    left_out: list[LeftOut]


def read_orders(path: Path, mill: Mill, columns: Mapping[str, str], skip_unknown: bool = False) -> OrderFile:
    """Read orders.

    Parameters
    ----------
    path : Path
        A .csv or .xlsx file.
    mill : Mill
        The book, whose enquiries the rows name, or their style alone where one enquiry has it.
    columns : mapping
        Column -> heading, as `asked_columns` gives it.
    skip_unknown : bool, optional
        True to leave out rows of enquiries that the book does not know, and tell them.

    Raises
    ------
    InputError
        The first row that is refused, or all enquiries that the book does not know.
    """
    lines: list[OrderLine] = []
    try:
        rows = Rows(path, columns, FORM, dates=("due",))
        enquiries = EnquiryFinder(mill)
        for row in rows:
            where = f"row {row.number}"
            length = rows.quantity(row, "length", "order_length")
            due = rows.date(row, "due")
            status = rows.choice(row, "status", "order_status", OPEN)
            code = enquiries.code(rows, row)
            if code:
                name = rows.text(row, "order") or where
                lines.append(OrderLine(name, code, length, due, status, f"{path.name}, {where}"))
            if len(lines) > MOST_ORDERS:
                raise InputError(
                    path.name, f"holds more than {MOST_ORDERS:,} orders; accepted is a part of it"
                )
    except InputError as error:
        raise of_file(path, error) from error
    if not skip_unknown:
        enquiries.refuse_unknown(path)
    if not lines:
        raise InputError(path.name, "holds no order; accepted is one row or more")
    return OrderFile(refuse_repeated(lines), list(enquiries.unknown.values()))
