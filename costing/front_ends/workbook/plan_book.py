"""A workbook of the buyer: a sheet for each table, with its chart below it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.workbook.child import INVALID_TITLE_REGEX

from costing.front_ends.workbook.chart_parts import amend_chart
from costing.front_ends.workbook.results import check_replaced, midnight
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_sheets import HEAD, Form, Placed, body, frame, widths_of
from costing.front_ends.workbook.saving import save_whole
from costing.report import Table

NARROWEST, BESIDE = 120.0, 10.0  # width of a sheet, and of an empty column beside a narrow table
LONGEST_TITLE = 31  # letters of the name of a sheet
LETTERS = 2.3  # of a note of two lines, for each unit of width
PLAIN = Form()
ONE_PAGE = 45  # rows of a table and its chart that one page shows in letters that can be read

Draw = Callable[[Placed], Any]  # from a table on its sheet to a chart, or None


class PlanSheet(NamedTuple):
    """One sheet: its name, its table, how it is set out, and what draws its chart."""

    name: str
    table: Table
    form: Form = PLAIN
    draw: Draw | None = None


def write_plan(
    path: Path,
    title: str,
    sheets: Sequence[PlanSheet],
    overwrite: bool = False,
    charts: Callable[[Pen, Mapping[str, Placed]], None] | None = None,
) -> None:
    """Write the sheets to a new workbook, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to.
    title : str
        Of the file.
    sheets : sequence of PlanSheet
        In their order.
    overwrite : bool, optional
        True to replace an earlier workbook with the same sheets; no other file is ever replaced.
    charts : callable, optional
        Draws sheets of charts behind the others, from the tables by the names of their sheets.

    Raises
    ------
    InputError
        A file of that name is there, or the folder or the disk refuses it. What was there stays.
    """
    titles = _titles(sheets)
    check_replaced(path, overwrite, set(titles))
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    placed = {sheet.name: _draw(pen, sheet, title) for sheet, title in zip(sheets, titles)}
    if charts is not None:
        charts(pen, placed)
    book.properties.title = f"Denim warp costing: {title}"
    book.properties.creator = "costing"
    save_whole(book, path, overwrite=overwrite, date=midnight(), amend=amend_chart)


def _titles(sheets: Sequence[PlanSheet]) -> list[str]:
    """The names as a workbook takes them: a name may hold a code of the book, with any letter and length."""
    found: list[str] = []
    for sheet in sheets:
        plain = title = INVALID_TITLE_REGEX.sub("_", sheet.name).strip("' ")[:LONGEST_TITLE]
        count = 1
        while title.casefold() in (taken.casefold() for taken in found):
            count += 1
            title = f"{plain[: LONGEST_TITLE - len(str(count)) - 1]} {count}"
        found.append(title)
    return found


def _draw(pen: Pen, of: PlanSheet, title: str) -> Placed:
    """A sheet, never so narrow that its note is cut off."""
    wide = widths_of(of.table, of.form)
    while sum(wide) < max(NARROWEST, len(of.table.note) / LETTERS):
        wide.append(BESIDE)
    sheet = pen.book.create_sheet(title)
    frame(pen, sheet, of.table, of.form, wide)
    placed = body(pen, sheet, HEAD, of.table, of.form, wide)
    sheet.print_area = f"A1:{get_column_letter(len(wide))}{placed.last}"
    chart = of.draw(placed) if of.draw and of.table.rows else None
    if chart is not None:
        sheet.add_chart(chart, f"A{placed.last + 2}")
        rows = int(chart.height / 0.52) + 3  # [cm] of a row
        sheet.print_area = f"A1:{get_column_letter(len(wide))}{placed.last + rows}"
        if placed.last + rows <= ONE_PAGE:
            sheet.page_setup.fitToHeight = 1
    return placed
