"""The chart of the sheet Quote: one dark bar for each group, with its number, to read in black and white."""

from __future__ import annotations

from openpyxl.chart import BarChart, Reference
from openpyxl.chart.label import DataLabelList
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering

WIDTH, HEIGHT = 14.0, 9.6  # cm
NUMBER = "0.000"


def group_chart(sheet: Worksheet, text: str, names: int, values: int, first: int, last: int) -> BarChart:
    """Bars across, the first group on top, each with its number.

    Parameters
    ----------
    sheet : Worksheet
        Where names and values stand.
    text : str
        Title of the chart.
    names, values : int
        Their columns.
    first, last : int
        Their rows.
    """
    chart = BarChart()
    chart.type, chart.gapWidth = "bar", 40
    chart.width, chart.height = WIDTH, HEIGHT  # type: ignore[assignment]  # in cm, whole or not
    chart.title = heading(text, 10)
    chart.legend = None
    chart.add_data(Reference(sheet, min_col=values, min_row=first, max_row=last), titles_from_data=False)
    chart.set_categories(Reference(sheet, min_col=names, min_row=first, max_row=last))
    (series,) = chart.series
    series.graphicalProperties = GraphicalProperties(
        solidFill=styles.DARK, ln=LineProperties(solidFill=styles.INK)
    )
    series.invertIfNegative = False
    labels = DataLabelList()
    labels.showVal, labels.dLblPos, labels.numFmt = True, "outEnd", NUMBER
    labels.showSerName = labels.showCatName = labels.showLegendKey = labels.showPercent = False
    labels.txPr = lettering(8)
    series.dLbls = labels
    across, along = chart.x_axis, chart.y_axis
    across.delete = along.delete = False
    across.scaling.orientation = "maxMin"  # the first on top
    across.txPr = along.txPr = lettering(8)
    across.majorTickMark = "none"
    along.number_format, along.numFmt.sourceLinked = NUMBER, False
    along.majorGridlines = None
    along.crosses = "max"  # under the bars, as their order is turned
    return chart
