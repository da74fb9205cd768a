"""The mill's full working of one quote: a workbook that is not for the customer."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from openpyxl import load_workbook
from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results import sheet_names
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_sheets import (
    FIRST,
    HEAD,
    UNITS,
    Form,
    Placed,
    body,
    frame,
    widths_of,
)
from costing.front_ends.workbook.saving import workbook_bytes
from costing.front_ends.workbook.sheet_drawing import CHARACTERS_PER_WIDTH
from costing.quantities import InputError
from costing.report import Table
from costing.report.working import MARK, mark_of

ALERT = "For the mill only: it holds recipe, cost and margin. The customer's page is a file of its own."
TITLE = "Denim warp costing: working of a quote"
SHEETS = {
    "offer": "Quote and working",
    "inputs": "Inputs",
    "words": "Words",
    "cost_by_step": "Cost by step",
    "cost_by_material": "Cost by material",
    "cost_by_cause": "Cost by cause",
    "band": "Range",
    "band_by_group": "Range by group",
    "drivers": "Drivers",
    "lots": "Lot curve",
    "prices": "Prices",
    "checks": "Remarks",
    "defaults_taken": "Defaults taken",
    "sources": "Sources",
    "snapshot": "Snapshot",
}
OWN_SHEETS = {"Quote and working", "Inputs", "Snapshot"}
WIDEST = 60.0
ONE_PAGE = 195.0  # width, in characters, that a page across shows in letters of 7 pt
WHOLE, DECIMALS = (
    "#,##0",
    "#,##0.0#####",
)  # of the first sheet, whose figures have no unit of their own column
NOTE_ROOM = 1.15  # of half a note: lines break at words
FORMS = {
    "offer": Form(alert=ALERT, filtered=False, widest=70.0),
    "inputs": Form(fixed_columns=2, widths={"Range from": 34.0}),
    "cost_by_step": Form(fixed_columns=2, total="all steps"),
    "checks": Form(widest=110.0),
    "defaults_taken": Form(
        fixed_columns=3, widest=WIDEST, widths={"Where": 34.0, "Place in the source": 30.0}
    ),
    "snapshot": Form(filtered=False, text="row text", widths={"Text": 110.0}),
}


def working_book(tables: Sequence[Table], date: datetime.datetime) -> bytes:
    """The file of the working.

    Parameters
    ----------
    tables : sequence of Table
        What it shows, by the keys of `SHEETS`.
    date : datetime.datetime
        That the file says it was made on.
    """
    found = {table.key: table for table in tables}
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    for key, name in SHEETS.items():
        if key in found:
            form = FORMS.get(key, Form(widest=WIDEST))
            placed = _sheet(pen, name, found[key], replace(form, alert=form.alert or ALERT))
            if key == "snapshot":  # a row as high as its text would be longer than any page
                for row in range(placed.first, placed.last + 1):
                    placed.sheet.row_dimensions[row].height = 60
                placed.sheet.print_area = f"A1:B{HEAD - 1}"  # a text for a program: not cut off on paper
            if key == "offer":
                for row in range(placed.first, placed.last + 1):
                    cell = placed.sheet.cell(row, 2)
                    if isinstance(cell.value, float):
                        cell.number_format = WHOLE if cell.value.is_integer() else DECIMALS
    book.properties.title = TITLE
    book.properties.creator = "costing"
    return workbook_bytes(book, date=date)


def _sheet(pen: Pen, name: str, table: Table, form: Form) -> Placed:
    """A sheet for a table, at least so wide that its note has room in the two lines above the alert."""
    sheet: Worksheet = pen.book.create_sheet(name)
    wide = widths_of(table, form)
    needed = NOTE_ROOM * max(len(table.note) / 2.0, len(form.alert)) / CHARACTERS_PER_WIDTH
    wide = [width * max(1.0, needed / sum(wide)) for width in wide]
    frame(pen, sheet, table, form, wide)
    if sum(wide) > ONE_PAGE:
        fixed, last = get_column_letter(form.fixed_columns), get_column_letter(len(wide))
        styles.page(
            sheet,
            title_rows=f"{HEAD}:{UNITS}",
            title_columns=f"A:{fixed}",
            pages_wide=2,
            print_area=f"A{HEAD}:{last}{UNITS + len(table.rows)}",
            heading=f"{table.title}: for the mill only",  # a title would be cut off on the second page
        )
    return body(pen, sheet, HEAD, table, form, wide)


def kept_in(path: Path) -> tuple[dict[str, Any], str]:
    """What a working says was offered, and the snapshot that it was worked out from.

    Parameters
    ----------
    path : Path
        Of a working that `working_book` has written.

    Returns
    -------
    (dict, str)
        What -> value, as its first sheet has them; the snapshot as JSON.

    Raises
    ------
    InputError
        The file is none, or its snapshot was changed.
    """
    if not sheet_names(path) >= OWN_SHEETS:
        raise InputError(
            str(path), "is no working of a quote; accepted is a file that costing document wrote"
        )
    book = load_workbook(path, read_only=True, data_only=True)
    try:
        first, last = (
            list(book[SHEETS[key]].iter_rows(min_row=FIRST, max_col=2, values_only=True))
            for key in ("offer", "snapshot")
        )
    finally:
        book.close()
    facts = {str(what): value for what, value in first if what is not None}
    text = "".join(str(piece) for _, piece in last if piece is not None)
    if facts.get(MARK) != mark_of(text):
        raise InputError(str(path), f"its {MARK} is not that of its snapshot: one of them was changed")
    return facts, text
