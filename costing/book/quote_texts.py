"""Read the sheet Quote texts: what the page for the customer says beside the price."""

from __future__ import annotations

from costing.book.layout import tables_of
from costing.book.sheet import Sheet
from costing.book.tables import read_table
from costing.quantities import InputError, listed, meant
from costing.settings.mill import Mill
from costing.settings.quote_texts import QuoteText

SHEET = "Quote texts"


def read_quote_texts(sheet: Sheet, mill: Mill) -> None:
    """Read the rows into the mill, whose enquiries are read already.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("quote_texts")
    for row in read_table(sheet, table):
        known = [*mill.enquiries, *(code for kind, code in mill.refused if kind == "enquiry")]
        code = row.text("enquiry")
        found = meant(code, known) if code else ""
        if found is None:
            raise InputError(
                row.at("enquiry"),
                f"enquiry {code!r} is not in the book; accepted is one of: {listed(known, code)}",
            )
        mill.quote_texts.append(QuoteText(row.text("text_kind"), row.text("text"), found, row.at("text")))
