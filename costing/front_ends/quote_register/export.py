"""The register as a workbook or as CSV, in which no text is a formula."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from openpyxl.workbook import Workbook

from costing.front_ends.plain_table import write_csv
from costing.front_ends.quote_register.record import Head, Kept
from costing.front_ends.quote_register.tables import heads_table, lines_table
from costing.front_ends.workbook.results import check_replaced, midnight
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_long import LongSheets
from costing.front_ends.workbook.results_sheets import Form, table_sheet
from costing.front_ends.workbook.saving import save_whole
from costing.report import Table

SHEETS = {"Register", "Details", "Cost lines"}
REASONS = ("Effects", "Inputs that changed", "Lines that move")


def write_register(path: Path, heads: Sequence[Head], items: Sequence[Kept], overwrite: bool = False) -> None:
    """Write saved quotes to a new .xlsx, with their lines of cost, or to a .csv, without.

    Parameters
    ----------
    path : Path
        Where to; its ending says as what.
    heads : sequence of Head
        What the register holds of them.
    items : sequence of Kept
        The quotes themselves; a .csv needs none.
    overwrite : bool, optional
        True to replace an earlier file of the same sort.

    Raises
    ------
    InputError
        Another ending, a file of that name, or a folder or disk that refuses it.
    """
    if path.suffix.lower() == ".csv":
        write_csv(path, heads_table(heads), "register", overwrite)
        return
    check_replaced(path, overwrite, SHEETS)
    book, pen = _book("Denim warp costing: register of quotes")
    long_sheets = LongSheets(pen)
    table_sheet(pen, "Register", heads_table(heads, brief=True), Form(fixed_columns=2))
    table_sheet(pen, "Details", heads_table(heads), Form(fixed_columns=2))
    long_sheets.add("Cost lines", lines_table(items))
    save_whole(book, path, overwrite=overwrite, date=midnight(), amend=long_sheets.amend)


def write_reasons(path: Path, tables: Sequence[Table], overwrite: bool = False) -> None:
    """Write why two quotes differ to a new .xlsx.

    Parameters
    ----------
    path : Path
        Where to.
    tables : sequence of Table
        Effects, inputs and lines.
    overwrite : bool, optional
        True to replace an earlier file of the same sort.
    """
    check_replaced(path, overwrite, set(REASONS))
    book, pen = _book("Denim warp costing: why two quotes differ")
    for name, table in zip(REASONS, tables):
        table_sheet(pen, name, table)
    save_whole(book, path, overwrite=overwrite, date=midnight())


def _book(title: str) -> tuple[Workbook, Pen]:
    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.title, book.properties.creator = title, "costing"
    return book, Pen(book)
