"""The chart of a calibration: predicted against issued, and the line on which all would lie."""

from __future__ import annotations

import math
from typing import Any, Literal

from openpyxl.chart import ScatterChart
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.legend import Legend
from openpyxl.chart.marker import Marker
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.worksheet.pagebreak import Break

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering
from costing.front_ends.workbook.lot_chart import series_of
from costing.front_ends.workbook.results_sheets import Placed

LETTERS = 9.0
WIDTH, HEIGHT = 20.0, 13.0  # [cm]
FEW = 3  # rows with which the chart stands on the same page
ISSUED = 3  # column of the table
Shape = Literal["x", "circle"]
SHOWN: tuple[tuple[str, int, Shape], ...] = (("Predicted before", 4, "x"), ("Predicted after", 5, "circle"))


def predicted_chart(placed: Placed) -> Any:
    """Marks for before and after that differ by their shape, and a line through what was issued."""
    rows = range(len(placed.table.rows))
    low, high = _ends([number for row in placed.table.rows for number in row[ISSUED:]])
    chart = ScatterChart()
    chart.scatterStyle, chart.style = "lineMarker", None
    chart.width, chart.height = WIDTH, HEIGHT  # type: ignore[assignment]  # in cm, whole or not
    chart.title = heading("Predicted against issued", LETTERS + 3)
    chart.visible_cells_only = False
    line = series_of(placed, rows, (ISSUED, ISSUED), "As issued")
    line.marker, line.smooth = Marker(symbol="none"), False
    line.graphicalProperties = GraphicalProperties(ln=LineProperties(solidFill=styles.RULE, w=12700))
    chart.series.append(line)
    for name, column, shape in SHOWN:
        marks = series_of(placed, rows, (ISSUED, column), name)
        ink = GraphicalProperties(ln=LineProperties(solidFill=styles.INK))
        if shape == "circle":
            ink.solidFill = styles.INK
        marks.marker = Marker(symbol=shape, size=8, spPr=ink)
        marks.graphicalProperties = GraphicalProperties(ln=LineProperties(noFill=True))
        chart.series.append(marks)
    ruled = GraphicalProperties(ln=LineProperties(solidFill=styles.BAND))
    for axis, text in ((chart.x_axis, "issued by the store, kg"), (chart.y_axis, "predicted, kg")):
        axis.delete = False
        axis.title = heading(text, LETTERS, bold=False)
        axis.number_format, axis.numFmt.sourceLinked = "#,##0", False
        axis.majorGridlines, axis.txPr = ChartLines(spPr=ruled), lettering(LETTERS)
        axis.crosses, axis.scaling.min, axis.scaling.max = "min", low, high
    chart.legend = Legend()
    chart.legend.position, chart.legend.overlay = "b", False
    chart.legend.txPr = lettering(LETTERS)
    if len(rows) > FEW:
        placed.sheet.row_breaks.append(Break(id=placed.last))
    return chart


def _ends(numbers: list[float]) -> tuple[float, float]:
    """Round ends of both axes, so that the line stands at half a right angle.

    Examples
    --------
    >>> _ends([1361.3, 2963.3])
    (1000.0, 3000.0)
    """
    least, most = min(numbers), max(numbers)
    step = 10.0 ** math.floor(math.log10((most - least) or most or 1.0)) / 2.0
    return step * math.floor(least / step), step * math.ceil(most / step)
