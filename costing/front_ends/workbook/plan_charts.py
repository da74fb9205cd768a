"""Charts of the buyer: what a period takes by group of products, and from standard cost to actual cost."""

from __future__ import annotations

from typing import Any

from costing.front_ends.waterfall_axis import axis_of
from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_sheets import Placed

WIDTH = 25.0  # [cm]
LINE, EDGES = 0.62, 4.0  # height of a bar, and of what stands around them [cm]
WATERFALL_EDGES = 2.4  # without a legend, so that table and chart are one page [cm]
MOST_BARS = 26


def groups_chart(placed: Placed) -> Any:
    """A bar for each period, the first ones where there are many, in parts for the groups of products."""
    rows = range(min(len(placed.table.rows), MOST_BARS))
    series = [(column.title, at) for at, column in enumerate(placed.table.columns) if at]
    bars = Bars("Taken from the store", "kg, as delivered", placed, rows, 0, series, "#,##0", labelled=False)
    return bar_chart(bars, WIDTH, EDGES + LINE * len(rows), letters=9)


def waterfall_chart(placed: Placed) -> Any:
    """From the first cost to the last, each effect from where the one before it ends.

    Stacked bars with one below them that is not seen; None where a bar would be below 0.
    """
    axis = axis_of(placed.table)
    if axis is None:
        return None
    rows = range(len(placed.table.rows))
    series = [(column.title.lower(), at) for at, column in enumerate(placed.table.columns) if at > 1]
    bars = Bars(placed.table.title, axis.title, placed, rows, 0, series, "#,##0", labelled=False)
    chart = bar_chart(bars, WIDTH, WATERFALL_EDGES + LINE * len(rows), letters=10)
    if chart is not None:
        chart.y_axis.scaling.min = axis.begin
        chart.legend = None  # each name has its sign; programs disagree on how to leave out one entry
    return chart
