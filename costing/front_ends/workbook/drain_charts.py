"""Charts of a drain report: limits with their band, and loads by stream."""

from __future__ import annotations

import math
from typing import Any

from openpyxl.chart.axis import ChartLines
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties

from costing.effluent.arriving import Arriving
from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_pages import chart_sheet
from costing.front_ends.workbook.results_sheets import (
    HEAD,
    Form,
    body,
    set_widths,
    table_sheet,
    title,
    widths_of,
)
from costing.quantities.units import convert
from costing.report import Column, Table
from costing.report.drain_point import PointResult
from costing.report.table import capital

CUT = 300.0  # per cent of a limit: a longer bar would flatten the others
PARTS = ("up to the low end", "from there to the estimate", "from the estimate to the high end")
CHART_WIDTH = 25.0  # [cm]
LONGEST_LABEL = 48  # letters of a limit beside its bar
STREAMS = 12  # with bars of their own
LOADS = ("COD, organic", "COD, inorganic sulfur", "suspended solids", "sodium")
FLOW = "flow"


def limit_chart(pen: Pen, permit: Table, alert: str) -> None:
    """A bar for each limit of which an estimate has a share, with the band of the estimate.

    Parameters
    ----------
    pen : Pen
        Of the book.
    permit : Table
        Limits beside their estimates.
    alert : str
        The line that must not be overlooked.
    """
    table = limit_shares(permit)
    if not table.rows:
        return
    form = Form(filtered=False, widths={"Limit": 60})
    sheet = pen.book.create_sheet("Limit chart")
    wide = widths_of(table, form)
    set_widths(sheet, wide)
    title(pen, sheet, table.title, table.note, alert, wide)
    placed = body(pen, sheet, HEAD, table, form, wide)
    series = [(name, 4 + at) for at, name in enumerate(PARTS)]
    rows = range(len(table.rows))
    bars = Bars("Estimate over the limit", "per cent of the limit", placed, rows, 0, series, "0", False)
    chart = bar_chart(bars, CHART_WIDTH, 4.0 + 0.75 * len(table.rows), letters=9)
    if chart is not None:
        longest = max(sum(row[4:7]) for row in table.rows)
        numbers = chart.y_axis
        numbers.majorUnit, numbers.scaling.min = 100.0, 0.0
        numbers.scaling.max = 100.0 * max(1, math.ceil(longest / 100.0))
        numbers.majorGridlines = ChartLines(spPr=GraphicalProperties(ln=LineProperties(solidFill=styles.INK)))
        chart.legend.position = "b"
        sheet.add_chart(chart, f"A{placed.last + 2}")
    styles.page(sheet)
    sheet.page_setup.fitToHeight = 1


def limit_shares(permit: Table) -> Table:
    """Share of each limit with its band, and the three parts of its bar [%]."""
    titles = [column.title for column in permit.columns]
    asked = [titles.index(name) for name in ("Limit", "From", "Of the limit", "To")]
    columns = [Column("Limit"), *(Column(name, "% of the limit", 0) for name in ("From", "Estimate", "To"))]
    columns += [Column(f"Bar {name}", "%", 0) for name in PARTS]
    rows: list[list[Any]] = []
    for row in permit.rows:
        name, *shares = (row[at] for at in asked)
        if None not in shares:
            low, middle, high = (min(CUT, share) for share in shares)
            rows.append([_label(str(name)), *shares, low, middle - low, high - middle])
    note = (
        f"The limit is the line at 100 %. A bar is cut at {CUT:g} %; its numbers are not. pH, temperature "
        "and what is not estimated have no share: see the sheet Permit."
    )
    return Table("limit_shares", "Share of each limit", note, columns, rows)


def _label(text: str) -> str:
    """A limit beside its bar: without where it holds, and not too long.

    Examples
    --------
    >>> _label("COD: at most 600 mg/L, composite of 24 hours, after treatment")
    'COD: at most 600 mg/L, composite of 24 hours'
    """
    short = text.rpartition(",")[0] if text.count(",") > 1 else text
    return short if len(short) <= LONGEST_LABEL else f"{short[: LONGEST_LABEL - 3]}..."


def load_charts(pen: Pen, found: PointResult, alert: str) -> None:
    """What each stream brings: COD, suspended solids, sodium, flow; the numbers on a sheet of their own."""
    table = loads_by_stream(found)
    placed = table_sheet(pen, "Loads by stream", table, Form(alert=alert))
    titles = [column.title for column in table.columns]
    rows = range(len(table.rows))

    def bars(heading: str, unit: str, names: tuple[str, ...]) -> Bars:
        series = [(name, titles.index(capital(name))) for name in names]
        return Bars(heading, unit, placed, rows, 0, series, "0.0")

    lines = [
        [bars("COD", "kg a day", LOADS[:2]), bars("Suspended solids", "kg a day", LOADS[2:3])],
        [bars("Sodium", "kg a day", LOADS[3:]), bars("Flow", "m3 a day", (FLOW,))],
    ]
    note = (
        "A bar for each stream, largest COD first. COD of sulfur salts apart: a test finds some or all of it."
    )
    chart_sheet(pen, "Load charts", f"What each stream brings to {found.point.code}", note, lines, alert)


def loads_by_stream(found: PointResult) -> Table:
    """The streams with the largest COD, and all others as one."""
    columns = [Column("Stream"), *(Column(capital(name), "kg/day", 2) for name in LOADS)]
    columns.append(Column(capital(FLOW), "m3/day", 2))
    order = sorted(found.streams, key=lambda item: -item.loads.get("COD, both", 0.0))
    single = order if len(order) <= STREAMS + 1 else order[:STREAMS]
    rows: list[list[Any]] = [[f"{item.enquiry} {item.name}".strip(), *_numbers([item])] for item in single]
    others = order[len(single) :]
    if others:
        rows.append([f"{len(others)} others", *_numbers(others)])
    note = "On a running day, as each leaves the machine. Largest COD first."
    return Table("loads_by_stream", f"Loads by stream to {found.point.code}", note, columns, rows)


def _numbers(streams: list[Arriving]) -> list[float]:
    loads = [sum(max(0.0, item.loads.get(name, 0.0)) for item in streams) for name in LOADS]
    return [*loads, convert(sum(item.volume for item in streams), "L", "m3")]
