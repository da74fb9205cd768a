"""The pages that are no plain table: the summary, the sheets of charts and the record."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import groupby
from typing import Any

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.hyperlink import Hyperlink
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.worksheet import Worksheet

from costing.cost.quote import GROUPS
from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results_cells import Look, Pen
from costing.front_ends.workbook.results_charts import Bars, bar_chart
from costing.front_ends.workbook.results_sheets import (
    FIRST,
    HEAD,
    Form,
    Placed,
    body,
    set_widths,
    table_sheet,
    title,
    widths_of,
)
from costing.report import Column, Table
from costing.report.refused import quoted_rows

CHARTED = 40  # enquiries with charts of their own: more make a slow file that nobody prints
ONE_PAGE, TWO_PAGES = 7, 14  # enquiries that one and two printed pages show in a readable size
PRINTED_WIDTH = 10.69  # of A4 on its side between the margins [inches]
YARN_GROUPS = 2  # the first groups; a chart of the dyeing leaves them out

CHART_WIDTH, CHART_HEIGHT = 13.6, 7.2  # two beside each other and two below each other fill A4 [cm]
CHART_COLUMNS, CHART_ROWS, ROWS_OF_A_PAGE = 8, 15, 2
COLUMN_WIDTH = 8.9
SUMMARY_CHART_WIDTH = 34.0

PLAIN = Form(filtered=False)
SECTION, TEXT = Look("section"), Look("result text")


def summary_sheet(pen: Pen, quotes: Table, groups: Table) -> None:
    """One page to be sent upstairs: cost and price on every basis, cost by group, and a chart.

    With many enquiries the chart goes to a second page; with very many, groups and chart are left to
    their own sheets, so that the quotes can repeat their heads on every page.
    """
    sheet = pen.book.create_sheet("Summary")
    offers, count = cost_and_price(quotes), len(quotes.rows)
    wide = widths_of(offers, PLAIN)
    wide[1:] = [max(26.0, wide[1]), *[max(11.0, width) for width in wide[2:]]]
    set_widths(sheet, wide)
    quoted = quoted_rows(quotes)
    warnings, left = sum(quotes.rows[at][-1] for at in quoted), [row[0] for row in quotes.rows][len(quoted) :]
    alert = (
        f"{warnings} warning{'s' if warnings > 1 else ''}: read the sheet Checks first." if warnings else ""
    )
    if left:
        alert = f"Refused, and in no figure: {', '.join(left)}. The sheet Checks says why. {alert}".strip()
    title(pen, sheet, quotes.title, quotes.note, alert, wide)
    above = body(pen, sheet, HEAD, offers, PLAIN, wide)
    if count > TWO_PAGES:
        styles.page(sheet, title_rows=f"{HEAD}:{HEAD + 1}", freeze=f"B{FIRST}")
        return
    row = above.last + 2
    pen.write(sheet, row, 1, f"{groups.title}, per metre of finished cloth", SECTION)
    for column in range(2, len(groups.columns) + 1):
        pen.write(sheet, row, column, None, SECTION)
    below = body(pen, sheet, row + 1, groups, PLAIN, wide)
    chart = bar_chart(
        cost_bars(below, range(len(quoted))), SUMMARY_CHART_WIDTH, 5.2 + 0.85 * count, letters=11
    )
    if chart is not None:
        sheet.add_chart(chart, f"A{below.last + 2 + (count > ONE_PAGE)}")  # behind the break between pages
    styles.page(sheet, freeze=f"B{FIRST}")
    if count <= ONE_PAGE:
        sheet.page_setup.fitToHeight = 1
    else:
        sheet.row_breaks.append(Break(id=below.last + 1))
        scale(sheet, wide)


def cost_bars(placed: Placed, rows: range, left_out: int = 0) -> Bars:
    """A bar for each enquiry of a table of cost by group, without so many groups at the start.

    Parameters
    ----------
    placed : Placed
        The table.
    rows : range
        Of the table, counted from 0.
    left_out : int, optional
        0, or the number of the yarns.
    """
    axis = f"{_currency(placed.table)} per m of finished cloth"
    name = "Cost by group, without the yarns" if left_out else "Cost by group"
    number = "0.000" if left_out else "0.00"
    return Bars(name, axis, placed, rows, 0, _group_series(placed.table)[left_out:], number)


def scale(sheet: Worksheet, wide: Sequence[float]) -> None:
    """Scale a page to its width by number: breaks between pages count only where nothing is fitted."""
    sheet.sheet_properties.pageSetUpPr.fitToPage = False  # type: ignore[union-attr]
    inches = sum(int(7 * width + 5) for width in wide) / 96.0
    sheet.page_setup.scale = min(100, int(98.0 * PRINTED_WIDTH / inches))


def cost_and_price(quotes: Table) -> Table:
    """The quotes with a row for the cost and a row for the price of each enquiry."""
    places: dict[str, list[int]] = {}
    for at, column in enumerate(quotes.columns):
        places.setdefault(column.title, []).append(at)
    cost, price = places["Cost"], places["Price"]
    (margin,), (value,), (warnings,) = places["Margin"], places["Order value"], places["Warnings"]
    bases = []
    for at in cost:
        unit, basis = quotes.columns[at].unit.split(" per ", 1)
        bases.append(Column(f"Per {basis}", unit, quotes.columns[at].digits))
    last = [quotes.columns[at] for at in (margin, value, warnings)]
    about = quotes.columns[: cost[0]]
    rows: list[list[Any]] = []
    for row in quotes.rows:
        given = row[: cost[0]]
        rows.append([*given, "cost", *[row[at] for at in cost], None, None, row[warnings]])
        again = [row[0], *[None] * (len(given) - 1)]
        rows.append([*again, "price", *[row[at] for at in price], row[margin], row[value], None])
    return Table("summary", quotes.title, quotes.note, [*about, Column("Money"), *bases, *last], rows)


def cost_charts(pen: Pen, steps: Placed) -> None:
    """A chart for each enquiry: what its steps cost without the yarn, stacked by group."""
    table = steps.table
    series = _group_series(table)
    found = []
    for code, rows in blocks(table):
        of_yarn = sum(any(table.rows[row][column] for _, column in series[:YARN_GROUPS]) for row in rows[:-1])
        dyeing = rows[of_yarn:-1]  # the yarns stand first, the sum of all steps last
        axis = f"{_currency(table)} per m of finished cloth"
        name = f"{code}: dyeing by step, without the yarns"
        found.append(Bars(name, axis, steps, dyeing, 1, series[YARN_GROUPS:], "0.000"))
    lines = [found[at : at + 2] for at in range(0, len(found), 2)]
    note = "Groups are stacked in the order of the legend. The yarns and all numbers: sheet Cost by step."
    chart_sheet(pen, "Cost charts", f"Cost by step{_left_out(_count(table))}", note, lines)


def discharge_charts(pen: Pen, loads: Placed, alert: str) -> None:
    """Two charts for each enquiry: oxygen demand, organic and inorganic apart, and flow."""
    table = loads.table
    titles = [column.title for column in table.columns]
    demand = [(name, titles.index(name)) for name in ("COD, organic", "COD, inorganic sulfur")]
    flow = [("flow", titles.index("Flow"))]
    lines = []
    for code, rows in blocks(table):
        streams = rows[:-1]  # the sum of all streams stands last
        lines.append(
            [
                Bars(f"{code}: COD by stream", "g per kg of grey yarn", loads, streams, 1, demand, "0.0"),
                Bars(f"{code}: flow by stream", "L per kg of grey yarn", loads, streams, 1, flow, "0.0"),
            ]
        )
    note = "A bar for each stream. COD of sulfur salts is shown apart: a test finds some or all of it."
    chart_sheet(pen, "Discharge charts", f"Discharge{_left_out(_count(table))}", note, lines, alert)


def blocks(table: Table) -> list[tuple[str, range]]:
    """Enquiry and its rows, for each enquiry that gets charts of its own."""
    found = []
    for code, group in groupby(quoted_rows(table), key=lambda row: str(table.rows[row][0])):
        rows = list(group)
        found.append((code, range(rows[0], rows[-1] + 1)))
    return found[:CHARTED]


def chart_sheet(
    pen: Pen,
    name: str,
    heading: str,
    note: str,
    lines: Sequence[Sequence[Any]],
    alert: str = "",
    draw: Callable[[Any, float, float], Any] = bar_chart,
) -> None:
    """A sheet of charts, two beside each other and two below each other on a page.

    Parameters
    ----------
    pen, name, heading, note, alert
        Of the sheet.
    lines : sequence of sequence
        What each chart shows, as `draw` takes it.
    draw : callable, optional
        Takes that, width and height, and gives a chart, or None for an empty place.
    """
    sheet = pen.book.create_sheet(name)
    wide = [COLUMN_WIDTH] * (2 * CHART_COLUMNS)
    set_widths(sheet, wide)
    title(pen, sheet, heading, note, alert, wide)
    for number, line in enumerate(lines):
        row = HEAD + 1 + number * CHART_ROWS
        for place, bars in enumerate(line):
            chart = draw(bars, CHART_WIDTH, CHART_HEIGHT)
            if chart is not None:
                sheet.add_chart(chart, f"{get_column_letter(1 + place * CHART_COLUMNS)}{row}")
        if (number + 1) % ROWS_OF_A_PAGE == 0 and number + 1 < len(lines):
            sheet.row_breaks.append(Break(id=row + CHART_ROWS - 2))  # in the gap between two charts
    styles.page(sheet, title_rows=f"1:{HEAD}", freeze=f"A{HEAD}")
    scale(sheet, wide)


def record_sheet(pen: Pen, record: Table, more: Mapping[str, str] = {}) -> None:
    """What the run was made with, and what each sheet holds; `more` of sheets that not every file has."""
    holds = {**HOLDS, **more}
    form = Form(filtered=False, widths={"Value": 72}, widest=72)
    placed = table_sheet(pen, "Record", record, form)
    sheet, row = placed.sheet, placed.last + 3
    pen.write(sheet, row - 1, 1, "Sheets of this file", SECTION)
    pen.write(sheet, row - 1, 2, None, SECTION)
    for name in pen.book.sheetnames:
        cell = pen.write(sheet, row, 1, name, TEXT)
        cell.hyperlink = Hyperlink(ref=cell.coordinate, location=f"'{name}'!A1")
        pen.write(sheet, row, 2, holds[name], TEXT)
        row += 1
    set_widths(sheet, [40.0, 72.0])
    sheet.page_setup.orientation = "portrait"
    sheet.page_setup.fitToHeight = 1


HOLDS = {
    "Summary": "cost and price of each enquiry on every basis, and cost by group",
    "Key figures": "dye, chemicals, water, steam, power and discharge per kg of yarn",
    "Cost by group": "cost per metre of finished cloth, a column for each group",
    "Compare": "every figure of the enquiries beside each other, with their distance from the first; a chart",
    "Seconds": "metres off shade and of second quality, and the cost of a metre of first quality",
    "Shade lots": "the sets of each order: one more, one fewer, what is short",
    "Cost by step": "cost of each step, opened into groups",
    "Cost charts": "a chart for each enquiry: steps and groups without the yarns",
    "Use": "what each enquiry takes of every material: per kg, per metre, for the order",
    "Dye bath": "what the stock vat brings, what is dosed beside it, what overflows",
    "Discharge loads": "flow and load of each stream",
    "Discharge concentrations": "what each stream reads in mg/L before any treatment",
    "Discharge by parameter": "each parameter per kg, per metre, for the order, per day and per litre",
    "Discharge charts": "two charts for each enquiry: COD and flow by stream",
    "Cloth": "ends, counts, widths and masses",
    "Order": "ropes, beams, sets, sub-lots, lengths, masses and hours",
    "Checks": "warnings, unusual settings, and the balance",
    "Defaults taken": "typical values taken for empty cells, with low, high and source",
    "Cost lines": "every priced line: step, material, cause; they add up to the cost",
    "Prices": "the offers of what is used on the day of the prices: which one counts, and why not the others",
    "Ledger": "every posting, from account to account; cost, use and discharge are its sums",
    "Safety": "usual cautions for the materials used, and what comes first",
    "Sources": "the sources behind defaults and cautions",
    "Record": "version, tables, prices and date of this run",
}


def _group_series(table: Table) -> list[tuple[str, int]]:
    """Groups with their columns in a table of costs."""
    titles = [column.title.lower() for column in table.columns]
    return [(group, titles.index(group)) for group in GROUPS]


def _currency(table: Table) -> str:
    return table.columns[_group_series(table)[0][1]].unit.split(" ")[0]


def _count(table: Table) -> int:
    return len({row[0] for row in table.rows})


def _left_out(count: int) -> str:
    return f", the first {CHARTED} of {count} enquiries" if count > CHARTED else ""
