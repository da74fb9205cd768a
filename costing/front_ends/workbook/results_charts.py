"""Charts of the results: stacked bars that are told apart in black and white, by pattern and by number."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from openpyxl.chart import BarChart
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.data_source import (
    AxDataSource,
    NumData,
    NumDataSource,
    NumRef,
    NumVal,
    StrData,
    StrRef,
    StrVal,
)
from openpyxl.chart.label import DataLabel, DataLabelList
from openpyxl.chart.legend import Legend
from openpyxl.chart.series import Series, SeriesLabel
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.colors import ColorChoice
from openpyxl.drawing.fill import PatternFillProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.utils import get_column_letter, quote_sheetname

from costing.front_ends.fills import FILLS
from costing.front_ends.workbook import styles
from costing.front_ends.workbook.chart_parts import heading, lettering
from costing.front_ends.workbook.results_sheets import Placed

LABELLED = 0.09  # smallest part of the longest bar that has room for its number


class Bars(NamedTuple):
    """What one chart shows.

    Attributes
    ----------
    title, axis : str
        Heading, and name of the axis of values with its unit.
    placed : Placed
        The table behind it.
    rows : range
        Rows of the table, counted from 0, one bar each.
    names : int
        Column of the table with the names of the bars, counted from 0.
    series : list of (str, int)
        Name of a fill, and the column of the table.
    number : str
        Number format of axis and labels.
    labelled : bool
        With its number on each part that has room for it.
    """

    title: str
    axis: str
    placed: Placed
    rows: range
    names: int
    series: list[tuple[str, int]]
    number: str
    labelled: bool = True


def bar_chart(bars: Bars, width: float, height: float, letters: float = 8) -> BarChart | None:
    """A chart of stacked bars, first row on top; None where all is zero.

    Parameters
    ----------
    bars : Bars
        What it shows.
    width, height : float
        Of the chart [cm].
    letters : float, optional
        Size of the names of the bars, in points.
    """
    rows = bars.placed.table.rows
    values = {column: [float(rows[row][column]) for row in bars.rows] for _, column in bars.series}
    shown = [(name, column) for name, column in bars.series if any(values[column])]
    if not shown:
        return None
    longest = max(sum(values[column][place] for _, column in shown) for place in range(len(bars.rows)))
    chart = BarChart()
    chart.type, chart.grouping, chart.overlap, chart.gapWidth = "bar", "stacked", 100, 45
    chart.width, chart.height = width, height  # type: ignore[assignment]  # in cm, whole or not
    chart.title = heading(bars.title, letters + 3)
    chart.visible_cells_only = False  # a filter on the table does not empty the chart
    _axes(chart, bars, letters)
    for name, column in shown:
        series = _series(bars, name, column, values[column])
        if bars.labelled:
            series.dLbls = _labels(values[column], LABELLED * longest, bars.number, letters - 1)
        chart.series.append(series)
    if len(shown) > 1:
        chart.legend = Legend()
        chart.legend.position, chart.legend.overlay = "r", False
        chart.legend.txPr = lettering(letters)
    else:
        chart.legend = None
    return chart


def _axes(chart: BarChart, bars: Bars, letters: float) -> None:
    names, numbers = chart.x_axis, chart.y_axis
    names.delete = numbers.delete = False
    names.scaling.orientation = "maxMin"  # the first row on top
    names.txPr = numbers.txPr = lettering(letters)
    names.graphicalProperties = GraphicalProperties(ln=LineProperties(solidFill=styles.RULE))
    names.majorTickMark = "none"
    numbers.title = heading(bars.axis, letters, bold=False)
    numbers.number_format, numbers.numFmt.sourceLinked = bars.number, False
    numbers.majorGridlines = ChartLines(spPr=GraphicalProperties(ln=LineProperties(solidFill=styles.BAND)))
    numbers.crosses = "max"  # under the bars, as their order is turned


def _series(bars: Bars, name: str, column: int, values: Sequence[float]) -> Series:
    rows = bars.placed.table.rows
    labels = [str(rows[row][bars.names]) for row in bars.rows]
    series = Series(
        tx=SeriesLabel(v=name[:1].upper() + name[1:]),
        cat=AxDataSource(
            strRef=StrRef(
                f=_place(bars, bars.names),
                strCache=StrData(
                    ptCount=len(labels), pt=[StrVal(idx=at, v=text) for at, text in enumerate(labels)]
                ),
            )
        ),
        val=NumDataSource(
            numRef=NumRef(
                f=_place(bars, column),
                numCache=NumData(
                    formatCode=bars.number,
                    ptCount=len(values),
                    pt=[NumVal(idx=at, v=repr(value)) for at, value in enumerate(values)],
                ),
            )
        ),
    )
    series.graphicalProperties = fill_of(name)
    series.invertIfNegative = False
    return series


def _place(bars: Bars, column: int) -> str:
    sheet, first, letter = bars.placed.sheet, bars.placed.first, get_column_letter(column + 1)
    top, bottom = first + bars.rows.start, first + bars.rows.stop - 1
    return f"{quote_sheetname(sheet.title)}!${letter}${top}:${letter}${bottom}"


def fill_of(name: str) -> GraphicalProperties:
    """The fill of a series by the name of what it shows."""
    look = FILLS[name]
    if not look.colour:
        return GraphicalProperties(noFill=True, ln=LineProperties(noFill=True))
    found = GraphicalProperties(ln=LineProperties(solidFill=styles.INK, w=6350))
    if look.pattern:
        ink, paper = (ColorChoice(srgbClr=colour) for colour in (look.colour, "FFFFFF"))  # type: ignore[arg-type]
        found.pattFill = PatternFillProperties(prst=look.pattern, fgClr=ink, bgClr=paper)
    else:
        found.solidFill = look.colour
    return found


def _labels(values: Sequence[float], smallest: float, number: str, letters: float) -> DataLabelList:
    """The number on each part that has room for it, on white, so that a pattern does not cover it."""
    found = DataLabelList(dLbl=[])
    for at, value in enumerate(values):
        if value >= smallest:
            found.dLbl.append(
                DataLabel(
                    idx=at,
                    numFmt=number,
                    spPr=GraphicalProperties(solidFill="FFFFFF"),
                    txPr=lettering(letters),
                    dLblPos="ctr",
                    showVal=True,
                    showLegendKey=False,
                    showCatName=False,
                    showSerName=False,
                    showPercent=False,
                    showBubbleSize=False,
                )
            )
    found.showVal = found.showLegendKey = found.showCatName = found.showSerName = False
    found.showPercent = found.showBubbleSize = False
    return found
