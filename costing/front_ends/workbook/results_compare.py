"""The sheet that puts enquiries side by side, with charts of their cost by group."""

from __future__ import annotations

import math

from openpyxl.worksheet.pagebreak import Break

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_charts import bar_chart
from costing.front_ends.workbook.results_pages import CHARTED, YARN_GROUPS, cost_bars, scale
from costing.front_ends.workbook.results_sheets import (
    FIRST,
    HEAD,
    UNITS,
    Form,
    Placed,
    body,
    set_widths,
    title,
    widths_of,
)
from costing.report import Table
from costing.report.compare import BASES, OTHERS, PRICE, TEXT_COLUMNS
from costing.report.refused import quoted_rows

SHEET = "Compare"
PAGE_COLUMNS = TEXT_COLUMNS + 1 + 3 * OTHERS  # that one printed page shows in a readable size
CHART_WIDTH = 25.0  # [cm]
ROW = 0.53  # height of a row without a text that wraps [cm]
PLAIN = Form(filtered=False, total=PRICE)


def compare_sheet(pen: Pen, compared: Table, groups: Placed) -> None:
    """Figures of the enquiries beside each other, and below them two charts of cost by group.

    Parameters
    ----------
    pen : Pen
        Of the book.
    compared : Table
        Side by side, the first enquiry first.
    groups : Placed
        Cost by group, a row for each enquiry, where the charts find their numbers.
    """
    count = len(quoted_rows(groups.table))  # those that are refused stand behind them
    shown = min(count, CHARTED)
    across = TEXT_COLUMNS + 1 + OTHERS * (shown - 1)
    table = compared._replace(
        title=compared.title + (f", the first {shown} of {count} enquiries" if shown < count else ""),
        columns=compared.columns[:across],
        rows=[row[:across] for row in compared.rows],
    )
    sheet = pen.book.create_sheet(SHEET)
    wide = widths_of(table, PLAIN)
    set_widths(sheet, wide)
    title(pen, sheet, table.title, table.note, "", wide)
    placed = body(pen, sheet, HEAD, table, PLAIN, wide)
    row, height = placed.last + 2, 5.2 + 0.85 * shown
    for left_out in (0, YARN_GROUPS):
        chart = bar_chart(cost_bars(groups, range(shown), left_out), CHART_WIDTH, height, letters=10)
        if chart is not None:
            sheet.add_chart(chart, f"A{row}")
            row += math.ceil(height / ROW) + 1
    several = across > PAGE_COLUMNS
    styles.page(
        sheet,
        title_rows=f"{HEAD}:{UNITS}",
        title_columns="A:C" if several else "",
        freeze=f"D{FIRST}",
        pages_wide=math.ceil(across / PAGE_COLUMNS),
    )
    if not several:
        scale(sheet, wide)
        # A page for each basis, and one for the charts.
        for number in range(1, len(BASES) + 1):
            sheet.row_breaks.append(Break(id=FIRST - 1 + number * len(table.rows) // len(BASES)))
