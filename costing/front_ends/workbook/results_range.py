"""Sheets of the results that are worked out many times over: range and drivers, and the lot curve."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import groupby
from typing import Any, NamedTuple

from openpyxl.chart import BarChart

from costing.front_ends.workbook.lot_chart import HIGHEST, LotPlaces, lot_chart
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_pages import CHARTED, chart_sheet
from costing.front_ends.workbook.results_sheets import Form, Placed, table_sheet
from costing.many.lot_curve import LotCurve, lot_curve
from costing.many.tables import Ranged, band_table, driver_table, lot_table, ranged
from costing.quantities import InputError
from costing.report import Column, Result, Table, costs_of
from costing.report.drivers import change_columns, changes
from costing.report.table import fine_money
from costing.settings.mill import Enquiry, Mill

DRAWS = 2000  # for each enquiry: a range to two digits, in a third of a second
DRIVERS = 10
POINTS = 100  # of a curve, told in rows
SHARE = 7  # column of a table of drivers of one enquiry
NAME, LOW, HIGH = 1, 10, 11  # columns of the table of drivers
END = 12.0  # width of a column of what a driver may be
DRIVERS_FORM = Form(
    2, widths={"Driver": 32, "Low end": END, "As in the book": END, "High end": END, "Grounds": 34}
)
RANGE_SHEETS = {
    "Range": "how sure cost and price of each enquiry are: range by draws, and by first order",
    "Range and drivers": "what moves the cost of each enquiry, the strongest first",
    "Driver charts": "a chart for each enquiry: change of the cost at the ends of each driver",
    "Lot sizes": "full set, minimum economic lot, and what the order itself bears for its lot",
    "Lot curve": "cost and price of a metre against the length of the order",
    "Lot charts": "a chart for each enquiry: cost of a metre against the length of the order",
}


class Ranges(NamedTuple):
    """Ranges and lot curves of the enquiries that have them, and why others have none."""

    items: list[Ranged]
    curves: list[tuple[Enquiry, LotCurve]]
    refused: list[str]


def ranges_of(mill: Mill, results: Sequence[Result], draws: int = DRAWS) -> Ranges:
    """Draw the range and the lot curve of each enquiry; one that is refused takes away no other.

    Parameters
    ----------
    mill, results
        The mill's book, and enquiries of it.
    draws : int, optional
        For each enquiry.
    """
    found = Ranges([], [], [])
    for item in results:
        try:
            found.items.append(ranged(mill, item.enquiry, draws))
        except InputError as error:
            found.refused.append(f"{item.enquiry.code}, range: {error}")
        try:
            found.curves.append((item.enquiry, lot_curve(mill, item.enquiry)))
        except InputError as error:
            found.refused.append(f"{item.enquiry.code}, lot curve: {error}")
    return found


def range_sheets(pen: Pen, mill: Mill, ranges: Ranges) -> None:
    """Sheets and charts of range, drivers and lot curve.

    Parameters
    ----------
    pen : Pen
        Of the book.
    mill : Mill
        The mill's book.
    ranges : Ranges
        Of its enquiries.
    """
    alert = f"Refused: {'; '.join(ranges.refused)}" if ranges.refused else ""
    unit = f"{costs_of(mill).currency}/m"
    if ranges.items:
        table_sheet(pen, "Range", _short(band_table(mill, ranges.items)), Form(fixed_columns=2, alert=alert))
        drivers = table_sheet(pen, "Range and drivers", drivers_of_all(mill, ranges.items), DRIVERS_FORM)
        _driver_charts(pen, drivers, unit)
    if ranges.curves:
        facts = table_sheet(pen, "Lot sizes", lot_sizes(mill, ranges.curves), Form(alert=alert))
        curve = table_sheet(pen, "Lot curve", lots_of_all(mill, ranges.curves))
        _lot_charts(pen, facts, curve, unit)


def _short(table: Table) -> Table:
    """The table of ranges with the note of all enquiries in place of a line for each."""
    first, *_, last = table.note.split(". ")
    return table._replace(note=f"{first}. {last}")


def drivers_of_all(mill: Mill, items: Sequence[Ranged]) -> Table:
    """The strongest drivers of each enquiry, and by how much the cost changes at their ends."""
    rows: list[list[Any]] = []
    for item in items:
        table = driver_table(mill, item, DRIVERS)
        for row in (row for row in table.rows if row[SHARE]):
            rows.append([item.enquiry.code, *row, *changes(row, item.first_order.typical)])
    currency, digits = fine_money(mill)
    note = (
        f"The {DRIVERS} strongest of each enquiry. One driver at a time goes to its ends, everything else "
        "stays as in the book. An end without a number is refused."
    )
    columns = [Column("Enquiry"), *table.columns, *change_columns(f"{currency}/m", digits)]
    return Table("drivers", "What drives the cost", note, columns, rows)


def _driver_charts(pen: Pen, placed: Placed, unit: str) -> None:
    found = []
    for code, group in groupby(range(len(placed.table.rows)), key=lambda row: placed.table.rows[row][0]):
        rows = list(group)
        series = [("low end", LOW), ("high end", HIGH)]
        title = f"{code}: change of the cost at each end"
        span = range(rows[0], rows[-1] + 1)
        found.append(Bars(title, unit, placed, span, NAME, series, "0.000", labelled=False))
    lines = [found[at : at + 2] for at in range(0, min(len(found), CHARTED), 2)]
    note = "To the right dearer, to the left cheaper than the book. All numbers: sheet Range and drivers."
    chart_sheet(pen, "Driver charts", "What drives the cost", note, lines, draw=two_sided)


def two_sided(bars: Bars, width: float, height: float) -> BarChart | None:
    """Bars to both sides of nothing, the names at the left edge of the chart."""
    chart = bar_chart(bars, width, height)
    if chart is not None:
        chart.grouping, chart.overlap = "clustered", 100
        chart.x_axis.tickLblPos = "low"
        assert chart.legend is not None or len(chart.series) == 1
        if chart.legend is not None:
            chart.legend.position = "b"
    return chart


def lot_sizes(mill: Mill, curves: Sequence[tuple[Enquiry, LotCurve]]) -> Table:
    """Full set, minimum economic lot and the order itself, a row for each enquiry."""
    costs = costs_of(mill)
    currency, digits = fine_money(mill)
    unit = f"{currency}/m"
    columns = [
        Column("Enquiry"),
        Column("Length counts"),
        Column("Full set or charge", "m", 0),
        Column("Cost of it", unit, digits),
        Column("Economic is up to", unit, digits),
        Column("Minimum economic lot", "m", 0),
        Column("Cost of it", unit, digits),
        Column("The order", "m", 0),
        Column("Cost of it", unit, digits),
        Column("Surcharge for its lot", unit, digits),
        Column("Surcharge on the order", costs.currency, 0),
    ]
    rows: list[list[Any]] = []
    for enquiry, curve in curves:
        own = curve.cost_at(enquiry.order_length)
        added = max(own - curve.reference_cost, 0.0)
        rows.append(
            [
                enquiry.code,
                enquiry.length_basis,
                curve.reference,
                curve.reference_cost,
                curve.reference_cost * (1.0 + curve.tolerance),
                curve.least,
                None if curve.least is None else curve.cost_at(curve.least),
                enquiry.order_length,
                None if math.isnan(own) else own,
                None if math.isnan(own) else added,
                None if math.isnan(own) else added * enquiry.order_length,
            ]
        )
    tolerance = curves[0][1].tolerance
    note = (
        f"From the minimum economic lot on no order costs more than {100.0 * tolerance:g} % above a full "
        "set. The surcharge is what a metre of the order costs above it."
    )
    return Table("lot_sizes", "Lot sizes", note, columns, rows)


def lots_of_all(mill: Mill, curves: Sequence[tuple[Enquiry, LotCurve]]) -> Table:
    """Points of the lot curve of each enquiry."""
    rows: list[list[Any]] = []
    for enquiry, curve in curves:
        table = lot_table(mill, enquiry, curve, POINTS)
        rows += [[enquiry.code, *row] for row in table.rows]
    note = "Cost jumps where one more set or charge is needed. A length without a cost is refused."
    return Table(
        "lot_curve", "Cost against length of the order", note, [Column("Enquiry"), *table.columns], rows
    )


def _lot_charts(pen: Pen, facts: Placed, curve: Placed, unit: str) -> None:
    places = []
    groups = groupby(range(len(curve.table.rows)), key=lambda row: curve.table.rows[row][0])
    for at, (code, group) in enumerate(groups):
        rows = list(group)
        places.append(LotPlaces(str(code), facts, at, curve, range(rows[0], rows[-1] + 1), unit))
    lines = [places[at : at + 2] for at in range(0, min(len(places), CHARTED), 2)]
    note = (
        "A step of the lower scale is ten times the one before. Costs above "
        f"{HIGHEST:g} times that of a full set are on the sheet Lot curve alone."
    )
    chart_sheet(pen, "Lot charts", "Cost against length of the order", note, lines, draw=lot_chart)
