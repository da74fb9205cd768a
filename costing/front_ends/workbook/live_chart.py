"""The charts of the live sheets: bars across that are told apart in black and white."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from openpyxl.chart import BarChart, Reference
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.label import DataLabelList
from openpyxl.chart.legend import Legend
from openpyxl.chart.series import SeriesLabel
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.drawing.spreadsheet_drawing import AnchorMarker, OneCellAnchor
from openpyxl.drawing.xdr import XDRPositiveSize2D
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering
from costing.front_ends.workbook.results_charts import fill_of
from costing.report.table import capital

LETTERS = 8  # points
CENTIMETRE = 360_000  # in the unit of the file
GAP = 100_000  # between a chart and the corner of its cell, in that unit


class Bars(NamedTuple):
    """What one chart shows.

    Attributes
    ----------
    title, axis : str
        Heading, and name of the axis of values with its unit.
    names : int
        Column of the names of the bars.
    series : sequence of (str, int)
        Name of a fill, and the column of the values; more than one are stacked.
    first, last : int
        Rows, the first one on top.
    number : str
        Number format of axis and labels.
    two_sided : bool
        Bars of both series from nothing to both sides.
    letters : float
        Their size [points].
    """

    title: str
    axis: str
    names: int
    series: Sequence[tuple[str, int]]
    first: int
    last: int
    number: str
    two_sided: bool = False
    letters: float = LETTERS


def add_chart(sheet: Worksheet, bars: Bars, place: tuple[int, int], width: float, height: float) -> None:
    """Draw bars across; one series has its numbers beside the bars, several have a legend.

    Parameters
    ----------
    sheet : Worksheet
        Where names and values stand.
    bars : Bars
        What is shown.
    place : (int, int)
        Row and column in whose corner it stands.
    width, height : float
        Of the chart [cm].
    """
    chart = BarChart()
    chart.type, chart.gapWidth = "bar", 40
    chart.title = heading(bars.title, bars.letters + 2)
    for name, column in bars.series:
        values = Reference(sheet, min_col=column, min_row=bars.first, max_row=bars.last)
        chart.add_data(values, titles_from_data=False)
        series = chart.series[-1]
        series.tx = SeriesLabel(v=capital(name.rpartition(", ")[2]))  # the title has the rest
        series.graphicalProperties = fill_of(name)
        series.invertIfNegative = False
    chart.set_categories(Reference(sheet, min_col=bars.names, min_row=bars.first, max_row=bars.last))
    chart.legend = None
    if len(bars.series) > 1:
        chart.grouping, chart.overlap = "clustered" if bars.two_sided else "stacked", 100
        chart.legend = Legend()
        chart.legend.position, chart.legend.overlay = "b" if bars.two_sided else "r", False
        chart.legend.txPr = lettering(bars.letters)
    else:
        chart.series[0].dLbls = _labels(bars.number, bars.letters)
    across, along = chart.x_axis, chart.y_axis
    across.delete = along.delete = False
    across.scaling.orientation = "maxMin"  # the first on top
    across.txPr = along.txPr = lettering(bars.letters)
    across.majorTickMark = "none"
    across.tickLblPos = "low"  # at the edge, also where a bar goes to the left
    along.title = heading(bars.axis, bars.letters, bold=False)
    along.number_format, along.numFmt.sourceLinked = bars.number, False
    along.majorGridlines = ChartLines(spPr=GraphicalProperties(ln=LineProperties(solidFill=styles.BAND)))
    along.crosses = "max"  # under the bars, as their order is turned
    chart.anchor = OneCellAnchor(  # type: ignore[assignment]  # a cell, or how far from it
        _from=AnchorMarker(row=place[0] - 1, rowOff=GAP, col=place[1] - 1, colOff=GAP),
        ext=XDRPositiveSize2D(round(width * CENTIMETRE), round(height * CENTIMETRE)),
    )
    sheet.add_chart(chart)


def _labels(number: str, letters: float) -> DataLabelList:
    """The number beside each bar, but beside none where the row is spare."""
    labels = DataLabelList()
    labels.showVal, labels.dLblPos, labels.numFmt = True, "outEnd", f"{number};-{number};"
    labels.showSerName = labels.showCatName = labels.showLegendKey = labels.showPercent = False
    labels.txPr = lettering(letters)
    return labels
