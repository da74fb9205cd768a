"""Charts of a purchase plan: stock against re-order point and safety stock, and the money by week."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import Any, NamedTuple

from openpyxl.chart import ScatterChart
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.data_source import AxDataSource, NumData, NumDataSource, NumRef, NumVal
from openpyxl.chart.legend import Legend
from openpyxl.chart.marker import Marker
from openpyxl.chart.series import SeriesLabel, XYSeries
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.utils import get_column_letter, quote_sheetname
from openpyxl.utils.datetime import to_excel

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_pages import CHARTED, chart_sheet
from costing.front_ends.workbook.results_sheets import Placed

PROJECTION, CHARTS = "Stock by day", "Stock charts"
DAY, STOCK, REORDER, SAFETY = 1, 2, 3, 4  # columns of the projection
LINES: tuple[tuple[int, str, str | None, int], ...] = (
    (STOCK, "Stock", None, 22225),
    (REORDER, "Re-order point", "lgDash", 12700),
    (SAFETY, "Safety stock", "sysDot", 12700),
)
LETTERS = 8.0
WIDTH, LINE, EDGES = 25.0, 0.62, 4.0  # of the bars by week [cm]
MOST_BARS = 26


class StockPlaces(NamedTuple):
    """Where the projection of one material stands."""

    material: str
    placed: Placed
    rows: range


def stock_charts(pen: Pen, placed: Mapping[str, Placed]) -> None:
    """A sheet with a chart for each material, those that run out first on top."""
    found = list(_places(placed[PROJECTION]))[:CHARTED]
    lines = [found[at : at + 2] for at in range(0, len(found), 2)]
    note = "At the listed strength, behind the need of each day. All numbers: sheet Stock by day."
    chart_sheet(pen, CHARTS, "Stock day by day", note, lines, draw=stock_chart)


def _places(placed: Placed) -> Iterator[StockPlaces]:
    rows = placed.table.rows
    for code, group in groupby(range(len(rows)), key=lambda row: rows[row][0]):
        numbers = list(group)
        yield StockPlaces(str(code), placed, range(numbers[0], numbers[-1] + 1))


def stock_chart(places: StockPlaces, width: float, height: float) -> ScatterChart:
    """Stock of one material against its re-order point and safety stock, told apart by their dashes.

    Parameters
    ----------
    places : StockPlaces
        Where its numbers stand.
    width, height : float
        Of the chart [cm].
    """
    chart = ScatterChart()
    chart.scatterStyle, chart.style = "lineMarker", None
    chart.width, chart.height = width, height  # type: ignore[assignment]  # in cm, whole or not
    chart.title = heading(f"{places.material}: stock", LETTERS + 3)
    chart.visible_cells_only = False
    for column, name, dashes, wide in LINES:
        series = XYSeries(tx=SeriesLabel(v=name))
        series.xVal = AxDataSource(numRef=_numbers(places, DAY))
        series.yVal = NumDataSource(numRef=_numbers(places, column))
        series.marker, series.smooth = Marker(symbol="none"), False
        line = LineProperties(solidFill=styles.DARK, w=wide, prstDash=dashes)  # type: ignore[arg-type]
        series.graphicalProperties = GraphicalProperties(ln=line)
        chart.series.append(series)
    across, along = chart.x_axis, chart.y_axis
    across.delete = along.delete = False
    across.scaling.min, across.scaling.max = (
        float(_serial(places.placed.table.rows[row][DAY])) for row in (places.rows[0], places.rows[-1])
    )
    across.number_format, across.numFmt.sourceLinked = "yyyy-mm-dd", False
    along.number_format, along.numFmt.sourceLinked = "#,##0", False
    along.scaling.min = 0.0
    along.title = heading("kg", LETTERS, bold=False)
    ruled = GraphicalProperties(ln=LineProperties(solidFill=styles.BAND))
    across.majorGridlines, along.majorGridlines = ChartLines(spPr=ruled), ChartLines(spPr=ruled)
    across.txPr = along.txPr = lettering(LETTERS)
    chart.legend = Legend()
    chart.legend.position, chart.legend.overlay = "b", False
    chart.legend.txPr = lettering(LETTERS)
    return chart


def _serial(value: Any) -> Any:
    return to_excel(value) if isinstance(value, datetime.date) else value  # type: ignore[no-untyped-call]


def _numbers(places: StockPlaces, column: int) -> NumRef:
    """Cells with the numbers that they hold, for viewers that do not look them up."""
    placed, letter = places.placed, get_column_letter(column + 1)
    top, bottom = placed.first + places.rows.start, placed.first + places.rows.stop - 1
    values = [_serial(placed.table.rows[row][column]) for row in places.rows]
    return NumRef(
        f=f"{quote_sheetname(placed.sheet.title)}!${letter}${top}:${letter}${bottom}",
        numCache=NumData(
            formatCode="General",
            ptCount=len(values),
            pt=[NumVal(idx=at, v=repr(float(value))) for at, value in enumerate(values)],
        ),
    )


def cash_chart(placed: Placed) -> Any:
    """A bar for each week, in parts for open and proposed orders; None where a price is missing."""
    rows = placed.table.rows[:MOST_BARS]
    if any(row[2] is None or row[3] is None for row in rows):
        return None
    series = [("open orders", 2), ("proposed orders", 3)]
    unit = placed.table.columns[4].unit
    bars = Bars("Money by week", unit, placed, range(len(rows)), 0, series, "#,##0", labelled=False)
    return bar_chart(bars, WIDTH, EDGES + LINE * len(rows), letters=9)
