"""Draw the live sheets of the chosen enquiry: Use, Cost lines, Ledger and Discharge."""

from __future__ import annotations

from typing import NamedTuple

from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook.live_areas import CHOSEN
from costing.front_ends.workbook.live_cells import Live, LiveBook, head_heights, widths_for
from costing.front_ends.workbook.live_results import total
from costing.front_ends.workbook.results_sheets import number_format
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file

MOST_MATERIALS, MOST_COST_LINES, MOST_POSTINGS, MOST_STREAMS = 40, 300, 900, 18
ALL_STREAMS = "all streams"


class Chosen(NamedTuple):
    """The tables of the chosen enquiry."""

    use: Live
    cost_lines: Live
    ledger: Live
    loads: Live
    concentrations: Live


def draw_chosen(live: LiveBook) -> Chosen:
    """The four sheets."""
    use = _one_table(live, "use", MOST_MATERIALS, "Cost", Description=56, Group=14, Material=18)
    lines = _one_table(
        live, "cost_lines", MOST_COST_LINES, "Cost", Step=22, Material=18, Cause=28, Group=14, Cost=17
    )
    ledger = _one_table(
        live, "ledger", MOST_POSTINGS, "", Step=22, Material=18, Substance=24, Cause=28, From=26, To=26
    )
    return Chosen(use, lines, ledger, *_discharge(live))


def _one_table(live: LiveBook, key: str, room: int, summed: str, **wide: float) -> Live:
    """A sheet with one table, and the sums of its columns of a title above it."""
    sheet, top = live.sheet(key)
    _repeat_chosen(live, sheet, top)
    table = live.table(sheet, top + 2, key, room)
    places = [place for place, item in enumerate(table.table.columns) if item.title == summed]
    for place in places:
        column = table.table.columns[place]
        live.formula(
            sheet,
            top + 1,
            table.column + place,
            f"SUM({table.range(place)})",
            total(table.values(place)),
            "total number",
            number_format(column),
        )
    if places:
        put(sheet, top + 1, table.column + places[0] - 2, sheet_file("live")[key]["sum"], "live line")
    found = widths_for(table, narrow=12.0, **wide)
    widths(sheet, found)
    head_heights(table, found)
    sheet.auto_filter.ref = f"A{table.row + 1}:{table.letter(len(table.table.columns) - 1)}{table.last}"
    sheet.row_dimensions[table.row + 1].height += 15  # the arrows stand below the units
    page(sheet, title_rows=f"{table.row}:{table.row + 1}", freeze=f"C{table.first}")
    return table


def _repeat_chosen(live: LiveBook, sheet: Worksheet, row: int) -> None:
    """Which enquiry a sheet shows."""
    put(sheet, row, 1, sheet_file("live")["quote"]["choose"], "live line")
    live.formula(sheet, row, 2, CHOSEN, live.shown.chosen, "strong text")


def _discharge(live: LiveBook) -> tuple[Live, Live]:
    """Loads, and below them concentrations, a row for each stream."""
    text = sheet_file("live")["discharge"]
    sheet, top = live.sheet("discharge")
    _repeat_chosen(live, sheet, top)
    put(sheet, top + 1, 1, text["estimate"], "estimate")
    tables = []
    row = top + 3
    for key, heading in (("discharge_loads", "loads"), ("discharge_concentrations", "concentrations")):
        for column in range(1, 17):
            put(sheet, row, column, text[heading] if column == 1 else None, "section")
        sheet.row_dimensions[row].height = 18
        table = live.table(sheet, row + 1, key, MOST_STREAMS, total=ALL_STREAMS)
        tables.append(table)
        row = table.last + 2
    loads, concentrations = tables
    wide = widths_for(loads, narrow=11.5, Stream=26)
    widths(sheet, wide)
    for table in tables:
        head_heights(table, wide)
    page(sheet, freeze=f"C{top + 1}")
    return loads, concentrations
