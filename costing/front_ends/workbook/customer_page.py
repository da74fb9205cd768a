"""The page for the customer: one A4 sheet in a file of its own, with nothing in it but what it shows."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import Any, NamedTuple

from openpyxl.workbook import Workbook
from openpyxl.worksheet.header_footer import HeaderFooterItem
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results_cells import Look, Pen
from costing.front_ends.workbook.results_sheets import set_widths
from costing.front_ends.workbook.saving import workbook_bytes
from costing.front_ends.workbook.sheet_drawing import height_for
from costing.report.offer import Offer

SHEET = "Quote"
WIDTHS = (24.0, 14.0, 14.0, 20.0, 20.0)  # of A4 upright
TITLE, SECTION, LINE, TEXT = Look("sheet title"), Look("section"), Look("strong text"), Look("text")
HEAD, NUMBER_HEAD = Look("column head"), Look("number head")


class Page(NamedTuple):
    """What the customer reads.

    Attributes
    ----------
    mill : sequence of str
        Name, address and contact, a line each.
    facts : sequence of (str, str or date)
        Number, date, end of validity, customer.
    article, description : str
        Code of the style, and what it is.
    cloth : sequence of (str, str)
        Counts, threads, width, mass.
    offer : Offer
        Length, price, value.
    digits : int
        Decimals of the price.
    terms : sequence of (str, str)
        Heading and text.
    closing : sequence of str
        Lines at the end.
    """

    mill: Sequence[str]
    facts: Sequence[tuple[str, str | datetime.date]]
    article: str
    description: str
    cloth: Sequence[tuple[str, str]]
    offer: Offer
    digits: int
    terms: Sequence[tuple[str, str]]
    closing: Sequence[str]


def customer_book(page: Page, date: datetime.datetime) -> bytes:
    """The file of the page.

    Parameters
    ----------
    page : Page
        What it shows.
    date : datetime.datetime
        That the file says it was made on.
    """
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    sheet: Worksheet = book.create_sheet(SHEET)
    set_widths(sheet, WIDTHS)
    row = _head(pen, sheet, page)
    row = _cloth(pen, sheet, row, page)
    row = _price(pen, sheet, row, page)
    row = _terms(pen, sheet, row, page)
    last = f"{'ABCDE'[len(WIDTHS) - 1]}{row - 1}"
    styles.page(sheet, landscape=False, one_page=True, print_area=f"A1:{last}")
    sheet.oddFooter = HeaderFooterItem(
        left=styles._footer_part(""),
        center=styles._footer_part(""),
        right=styles._footer_part("page &P of &N"),
    )
    book.properties.title = SHEET
    book.properties.creator = page.mill[0] if page.mill else ""
    return workbook_bytes(book, date=date)


def _head(pen: Pen, sheet: Worksheet, page: Page) -> int:
    row = 1
    for text in page.mill:
        pen.write(sheet, row, 1, text, Look("intro line") if row > 1 else Look("subtitle"))
        row += 1
    row += 1
    pen.write(sheet, row, 1, SHEET, TITLE)
    sheet.row_dimensions[row].height = 30
    row += 1
    for what, value in page.facts:
        _line(pen, sheet, row, what, value)
        row += 1
    return row + 1


def _cloth(pen: Pen, sheet: Worksheet, row: int, page: Page) -> int:
    row = _section(pen, sheet, row, "Cloth")
    for what, value in (("Article", page.article), ("Description", page.description), *page.cloth):
        if value:
            _line(pen, sheet, row, what, value)
            row += 1
    return row + 1


def _price(pen: Pen, sheet: Worksheet, row: int, page: Page) -> int:
    offer = page.offer
    row = _section(pen, sheet, row, "Price")
    heads = (
        "Article",
        "Length",
        "Unit",
        f"Price, {offer.currency} per {offer.unit}",
        f"Value, {offer.currency}",
    )
    for column, head in enumerate(heads, start=1):
        pen.write(sheet, row, column, head, NUMBER_HEAD if column in (2, 4, 5) else HEAD)
    sheet.row_dimensions[row].height = 18
    whole = offer.length == int(offer.length)
    decimals = max(page.digits, 2)
    cells: tuple[tuple[Any, Look], ...] = (
        (page.article, Look("total text")),
        (offer.length, Look("total number", styles.WHOLE if whole else styles.ONE_DECIMAL)),
        (offer.unit, Look("total text")),
        (float(offer.price), Look("total number", f"#,##0.{'0' * decimals}")),
        (float(offer.value), Look("total number", styles.TWO_DECIMALS)),
    )
    for column, (value, look) in enumerate(cells, start=1):
        pen.write(sheet, row + 1, column, value, look)
    sheet.row_dimensions[row + 1].height = 20
    said = f"Length and price count {offer.counted_on}. The value is the price shown times the length."
    pen.write(sheet, row + 2, 1, said, Look("intro line"))
    return row + 4


def _terms(pen: Pen, sheet: Worksheet, row: int, page: Page) -> int:
    if page.terms:
        row = _section(pen, sheet, row, "Terms")
    before = ""
    for what, text in page.terms:
        _line(pen, sheet, row, what if what != before else "", text)
        before = what
        row += 1
    row += bool(page.terms)
    for text in page.closing:
        pen.write(sheet, row, 1, text, TEXT)
        _wrap(sheet, row, 1, text)
        row += 1
    return row


def _section(pen: Pen, sheet: Worksheet, row: int, text: str) -> int:
    for column in range(1, len(WIDTHS) + 1):
        pen.write(sheet, row, column, text if column == 1 else None, SECTION)
    sheet.row_dimensions[row].height = 18
    return row + 1


def _line(pen: Pen, sheet: Worksheet, row: int, what: str, value: str | datetime.date) -> None:
    """A name, and beside it a text over the other columns, as high as it needs."""
    text = value if isinstance(value, str) else f"{value:%Y-%m-%d}"
    pen.write(sheet, row, 1, what, LINE)
    pen.write(sheet, row, 2, text, TEXT)
    _wrap(sheet, row, 2, text)


def _wrap(sheet: Worksheet, row: int, column: int, text: str) -> None:
    sheet.merge_cells(start_row=row, start_column=column, end_row=row, end_column=len(WIDTHS))
    sheet.row_dimensions[row].height = max(16.0, height_for((text, 0.95 * sum(WIDTHS[column - 1 :]))))
