"""The chart of a lot curve in the results: a line, and marks for lot and order that differ by their shape."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from openpyxl.chart import ScatterChart
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.data_source import AxDataSource, NumData, NumDataSource, NumRef, NumVal
from openpyxl.chart.legend import Legend
from openpyxl.chart.marker import Marker
from openpyxl.chart.series import SeriesLabel, XYSeries
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.utils import get_column_letter, quote_sheetname

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering
from costing.front_ends.workbook.results_sheets import Placed

LETTERS = 8.0
HIGHEST = 2.5  # of the cost of a full set: dearer points are in the table alone
LENGTH, COST = 1, 3  # columns of the points of a curve
FULL, LOT, ORDER = (2, 3), (5, 6), (7, 8)  # columns of length and cost in the table of lot sizes
Shape = Literal["circle", "diamond", "triangle"]
MARKS: tuple[tuple[str, tuple[int, int], Shape], ...] = (
    ("Full set or charge", FULL, "circle"),
    ("Minimum economic lot", LOT, "triangle"),
    ("The order", ORDER, "diamond"),
)


class LotPlaces(NamedTuple):
    """Where the numbers of one curve stand.

    Attributes
    ----------
    code : str
        The enquiry.
    facts : Placed
        The table of lot sizes.
    row : int
        Of the enquiry in it, counted from 0.
    curve : Placed
        The table of points.
    rows : range
        Of the enquiry in it.
    unit : str
        Of the cost.
    """

    code: str
    facts: Placed
    row: int
    curve: Placed
    rows: range
    unit: str


def lot_chart(places: LotPlaces, width: float, height: float) -> ScatterChart | None:
    """Cost against length, on a scale of ratios, with full set, economic lot and order marked.

    Parameters
    ----------
    places : LotPlaces
        Where its numbers stand.
    width, height : float
        Of the chart [cm].
    """
    rows = [row for row in places.rows if places.curve.table.rows[row][COST] is not None]
    if not rows or rows != list(range(rows[0], rows[-1] + 1)):
        return None  # a curve with a gap in it would be joined over the gap
    chart = ScatterChart()
    chart.scatterStyle, chart.style = "lineMarker", None
    chart.width, chart.height = width, height  # type: ignore[assignment]  # in cm, whole or not
    chart.title = heading(f"{places.code}: cost of a metre against the order", LETTERS + 3)
    chart.visible_cells_only = False
    line = series_of(places.curve, range(rows[0], rows[-1] + 1), (LENGTH, COST), "Cost of a metre")
    line.marker, line.smooth = Marker(symbol="none"), False
    line.graphicalProperties = GraphicalProperties(ln=LineProperties(solidFill=styles.DARK, w=19050))
    chart.series.append(line)
    for name, columns, shape in MARKS:
        if None in (places.facts.table.rows[places.row][column] for column in columns):
            continue
        mark = series_of(places.facts, range(places.row, places.row + 1), columns, name)
        ink = GraphicalProperties(solidFill=styles.INK, ln=LineProperties(solidFill=styles.INK))
        mark.marker = Marker(symbol=shape, size=9, spPr=ink)
        mark.graphicalProperties = GraphicalProperties(ln=LineProperties(noFill=True))
        chart.series.append(mark)
    across, along = chart.x_axis, chart.y_axis
    across.delete = along.delete = False
    across.scaling.logBase = 10.0
    lengths = [places.curve.table.rows[row][LENGTH] for row in rows]
    across.scaling.min, across.scaling.max = _decade(lengths[0], -1), _decade(lengths[-1], 1)
    across.title, along.title = (
        heading(text, LETTERS, bold=False)
        for text in ("m ordered", f"{places.unit}, as the enquiry counts it")
    )
    across.number_format, across.numFmt.sourceLinked = "#,##0", False
    along.number_format, along.numFmt.sourceLinked = "0.00", False
    along.crosses = "min"
    costs = [places.curve.table.rows[row][COST] for row in rows]
    full = places.facts.table.rows[places.row][FULL[1]]
    along.scaling.min = math.floor(2.0 * min(*costs, full)) / 2.0
    along.scaling.max = math.ceil(2.0 * min(max(*costs, full), HIGHEST * full)) / 2.0
    ruled = GraphicalProperties(ln=LineProperties(solidFill=styles.BAND))
    across.majorGridlines, along.majorGridlines = ChartLines(spPr=ruled), ChartLines(spPr=ruled)
    across.txPr = along.txPr = lettering(LETTERS)
    chart.legend = Legend()
    chart.legend.position, chart.legend.overlay = "b", False
    chart.legend.txPr = lettering(LETTERS)
    return chart


def _decade(length: float, side: int) -> float:
    """The nearest 1, 2 or 5 times a power of ten that lies below a length, or above it."""
    steps = [times * 10.0**power for power in range(9) for times in (1.0, 2.0, 5.0)]
    if side < 0:
        return max((step for step in steps if step <= length), default=steps[0])
    return min((step for step in steps if step >= length), default=steps[-1])


def series_of(placed: Placed, rows: range, columns: tuple[int, int], name: str) -> XYSeries:
    """Cells of two columns as a series of a chart."""
    series = XYSeries(tx=SeriesLabel(v=name))
    (across, along) = (_numbers(placed, rows, column) for column in columns)
    series.xVal, series.yVal = AxDataSource(numRef=across), NumDataSource(numRef=along)
    return series


def _numbers(placed: Placed, rows: range, column: int) -> NumRef:
    """Cells with the numbers that they hold, for viewers that do not look them up."""
    letter = get_column_letter(column + 1)
    top, bottom = placed.first + rows.start, placed.first + rows.stop - 1
    values = [placed.table.rows[row][column] for row in rows]
    return NumRef(
        f=f"{quote_sheetname(placed.sheet.title)}!${letter}${top}:${letter}${bottom}",
        numCache=NumData(
            formatCode="General",
            ptCount=len(values),
            pt=[NumVal(idx=at, v=repr(float(value))) for at, value in enumerate(values)],
        ),
    )
