"""The report of a collecting point: a workbook to print, what matters first, what it rests on last."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.chart_parts import amend_chart
from costing.front_ends.workbook.drain_charts import limit_chart, load_charts
from costing.front_ends.workbook.drain_summary import About, drain_summary
from costing.front_ends.workbook.results import DEFER, ESTIMATE, check_replaced, midnight
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_sheets import HEAD, Form, body, frame, widths_of
from costing.front_ends.workbook.saving import save_whole
from costing.report import Table
from costing.report.drain import ESTIMATE as SAID
from costing.report.drain_point import PointResult
from costing.report.drain_tables import point_grounds
from costing.report.table import capital
from costing.settings.mill import Mill

PERMIT, STREAMS, PARAMETERS = "permit", "point_streams", "point_parameters"
OWN_SHEETS = {"Summary", "Streams", "Parameters", "Cautions"}


class Part(NamedTuple):
    """A sheet with some columns of a table that is too wide for one: its name, its own note, the columns."""

    name: str
    note: str
    titles: tuple[str, ...]


SHARED = {
    PERMIT: (
        Part(
            "Permit",
            "Limits at risk first; what is not estimated comes last. From and to: nine in ten estimates of "
            "this kind are right within them. Only samples by the method that your permit names tell "
            "whether a limit is kept.",
            (
                *("Limit", "In words", "Held against it", "Of the limit", "From", "To", "Headroom"),
                "Chance of exceeding",
            ),
        ),
        Part(
            "Permit, figures",
            "Load and concentration are long-term means, with what the limit comes to at this flow and "
            "production. Check each limit against your permit.",
            (
                *("Limit", "Estimate", "Limit unit", "Load", "Limit as load", "Concentration"),
                *("Limit as concentration", "Remarks", "Reference", "Cell"),
            ),
        ),
        Part(
            "Permit, planned",
            "The same estimate with the stages that the sheet Treatment calls planned, all of them built as "
            "they stand there: what the permit would read, to choose and size a stage.",
            (
                *("Limit", "Of the limit", "In words", "Of the limit, planned", "With what is planned"),
                *("Chance of exceeding", "Chance, planned"),
            ),
        ),
        Part(
            "Permit, what to do",
            "What is behind the largest part, what touches it, and what would make the estimate surer. Any "
            "change of treatment is for a competent or licensed person.",
            ("Limit", "Of the limit", "Largest part", "Would mend it", "Would narrow it"),
        ),
    )
}
# A table with the same figures in two units beside each other: a sheet for each unit.
BY_UNIT = {"point_treatment": {"Treatment": "kg/day", "Treatment, mg per L": "mg/L"}}
NAMES = {
    "point_month": "Month",
    "point_days": "Days",
    "point_ran": "What ran",
    "point_peaks": "Dumps",
    "point_assumptions": "Assumptions",
}
WORDY = Form(
    alert=ESTIMATE,
    filtered=False,
    widths={
        **{"Limit": 38, "In words": 60, "Held against it": 34, "Remarks": 46, "Reference": 22},
        **{"Largest part": 40, "Would mend it": 64, "Would narrow it": 40, "With what is planned": 54},
    },
)
FORMS = {
    PERMIT: WORDY,
    "against_permit": Form(alert=ESTIMATE, filtered=False, widths={"Limit": 38, "To know": 34}),
    STREAMS: Form(alert=ESTIMATE, fixed_columns=2),
    "point_cautions": Form(
        alert=DEFER,
        filtered=False,
        text="row text",
        widths={"Concerns": 24, "Caution": 66, "Comes first": 50, "Source": 20},
    ),
    "point_sources": Form(widths={"Title": 36, "Authors": 24, "Where": 36}, text="row text"),
    "point_assumptions": Form(widths={"Meaning": 40, "Note": 44, "Contested": 12, "Place in the source": 22}),
}
OTHERS = Form(alert=ESTIMATE, fixed_columns=1)
LONGEST_NAME = 31  # of a sheet
LETTERS = 2.3  # of a note of two lines, for each unit of width
NARROWEST, BESIDE = 120.0, 10.0  # width of a sheet, and of an empty column beside a narrow table


class Report(NamedTuple):
    """What a report is made of.

    Attributes
    ----------
    mill : Mill
        The book, with what ran as its plan.
    found : PointResult
        The point.
    tables : list of Table
        In reading order; those of a month first.
    period : str
        What it is of, in words.
    source : str
        Name of the book or of the log.
    left_out : list of str
        What of the log is in no figure.
    """

    mill: Mill
    found: PointResult
    tables: list[Table]
    period: str
    source: str
    left_out: list[str]


def write_report(path: Path, report: Report, overwrite: bool = False) -> None:
    """Write the report to a new workbook, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to.
    report : Report
        What it holds.
    overwrite : bool, optional
        True to replace an earlier report; no other file is ever replaced.

    Raises
    ------
    InputError
        A file of that name is there, or the folder or the disk refuses it. What was there stays.
    """
    check_replaced(path, overwrite, OWN_SHEETS)
    save_whole(report_book(report), path, overwrite=overwrite, date=midnight(), amend=amend_chart)


def report_book(report: Report) -> Workbook:
    """The workbook of a report."""
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    found = report.found
    permit = next((table for table in report.tables if table.key == PERMIT), None)
    drain_summary(pen, found, About(report.period, report.source, report.left_out), permit)
    for table in report.tables:
        draw_sheets(pen, table)
        if table.key == PERMIT:
            limit_chart(pen, table, ESTIMATE)
        if table.key == STREAMS:
            load_charts(pen, found, ESTIMATE)
    for table in point_grounds(report.mill, found):
        draw_sheets(pen, table)
    book.active = 0
    book.properties.title = f"Denim warp costing: drain report of {found.point.code}"
    book.properties.creator = "costing"
    return book


def draw_sheets(pen: Pen, table: Table) -> None:
    """A table on its sheet, or on those that share its columns."""
    form = FORMS.get(table.key, OTHERS)
    for part in SHARED.get(table.key, ()):
        if not set(part.titles) <= {column.title for column in table.columns}:
            continue  # of a point without planned stages
        places = [at for at, column in enumerate(table.columns) if column.title in part.titles]
        _sheet(pen, part.name, _kept(table, places)._replace(note=part.note), form)
    units = BY_UNIT.get(table.key, {})
    for name, unit in units.items():
        others = [other for other in units.values() if other != unit]
        places = [at for at, column in enumerate(table.columns) if column.unit not in others]
        _sheet(pen, name, _kept(table, places), form)
    if table.key not in SHARED and not units:
        _sheet(pen, _sheet_name(table.key), table, form)


def _sheet(pen: Pen, name: str, table: Table, form: Form) -> None:
    """A sheet for a table, never so narrow that its note is cut off; the alert says once what it is not."""
    table = table._replace(note=table.note.replace(SAID, "").strip())
    wide = widths_of(table, form)
    while sum(wide) < max(NARROWEST, len(table.note) / LETTERS):
        wide.append(BESIDE)
    sheet = pen.book.create_sheet(name)
    frame(pen, sheet, table, form, wide)
    placed = body(pen, sheet, HEAD, table, form, wide)
    sheet.print_area = f"A1:{get_column_letter(len(wide))}{placed.last}"  # a note beside a narrow table too


def _kept(table: Table, places: Sequence[int]) -> Table:
    """Some columns of a table, in their own order."""
    columns = [table.columns[at] for at in places]
    return table._replace(columns=columns, rows=[[row[at] for at in places] for row in table.rows])


def _sheet_name(key: str) -> str:
    """Name of the sheet of a table.

    Examples
    --------
    >>> _sheet_name("point_days"), _sheet_name("point_acid_demand")
    ('Days', 'Acid demand')
    """
    name = NAMES.get(key) or capital(key.removeprefix("point_").replace("_", " "))
    return name[:LONGEST_NAME]
