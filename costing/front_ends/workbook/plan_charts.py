"""Charts of the buyer: what a period takes, by group of products."""

from __future__ import annotations

from typing import Any

from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_sheets import Placed

WIDTH = 25.0  # [cm]
LINE, EDGES = 0.62, 4.0  # height of a bar, and of what stands around them [cm]
MOST_BARS = 26


def groups_chart(placed: Placed) -> Any:
    """A bar for each period, the first ones where there are many, in parts for the groups of products."""
    rows = range(min(len(placed.table.rows), MOST_BARS))
    series = [(column.title, at) for at, column in enumerate(placed.table.columns) if at]
    bars = Bars("Taken from the store", "kg, as delivered", placed, rows, 0, series, "#,##0", labelled=False)
    return bar_chart(bars, WIDTH, EDGES + LINE * len(rows), letters=9)
