"""Draw the live sheets of the drain: permit beside estimates, and what leaves the collecting points."""

from __future__ import annotations

from typing import NamedTuple

from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_chart import Bars, add_chart
from costing.front_ends.workbook.live_table import Live, head_heights, widths_for
from costing.front_ends.workbook.sheet_drawing import put, section
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file

MOST_LIMITS, PRINTED_LIMITS, CHARTED = 60, 18, 10
# Room for three points, and for a month that runs twenty enquiries.
MOST_CONDITIONS, MOST_PARAMETERS, MOST_STREAMS = 15, 75, 240
PRINTED_PARAMETERS, PRINTED_STREAMS = 30, 36
SECTION = 11  # columns of a band
CHART_ROWS, CHART = 18, (25.0, 8.6)  # rows that the chart covers; width and height [cm]
LIMITS = {"Limit": 56.0, "Estimate": 11.0, "Limit unit": 10.0, "Point": 10.0}
LIMITS |= {"Largest part": 60.0, "Would narrow it": 60.0, "Would mend it": 90.0}
DISCHARGE = {"Point": 10.0, "Parameter": 30.0, "Enquiry": 10.0, "Stream": 26.0}
LAST_PRINTED = "Limit as concentration"


class DrainSheets(NamedTuple):
    """The tables of the three sheets."""

    permit: Live
    condition: Live
    parameters: Live
    streams: Live


def draw_drain(live: LiveBook) -> DrainSheets:
    """The three sheets."""
    return DrainSheets(_permit(live), *_discharge(live), _streams(live))


def _permit(live: LiveBook) -> Live:
    text = sheet_file("live")["limits"]
    sheet, top = live.sheet("limits")
    put(sheet, top + 1, 1, text["estimate"], "estimate")
    at = top + 3
    table = live.table(sheet, at + CHART_ROWS, "drain_permit", MOST_LIMITS, of_chosen=False)
    share, name = (table.column + table.place(title) for title in ("Of the limit", "Limit"))
    title, axis = text["shares"]
    bars = Bars(title, axis, name, [("flow", share)], table.first, table.first + CHARTED - 1, "0")
    add_chart(sheet, bars, (at, 1), *CHART)
    wide = widths_for(table, narrow=11.0, **LIMITS)
    widths(sheet, wide)
    head_heights(table, wide)
    live.say_printed(sheet, (top, 1), table.range(0), table.filled, PRINTED_LIMITS, "limits")
    page(
        sheet,
        freeze=f"C{top + 1}",
        print_area=table.printed(PRINTED_LIMITS, LAST_PRINTED),
        one_page=True,
    )
    return table


def _discharge(live: LiveBook) -> tuple[Live, Live]:
    text = sheet_file("live")["points"]
    sheet, top = live.sheet("points")
    put(sheet, top + 1, 1, text["estimate"], "estimate")
    section(sheet, top + 3, text["condition"], SECTION)
    condition = live.table(sheet, top + 4, "drain_condition", MOST_CONDITIONS, of_chosen=False)
    row = condition.last + 2
    section(sheet, row, text["parameters"], SECTION)
    parameters = live.table(sheet, row + 1, "drain_parameters", MOST_PARAMETERS, of_chosen=False)
    wide = widths_for(parameters, narrow=13.0, **DISCHARGE)
    widths(sheet, wide)
    for table in (condition, parameters):
        head_heights(table, wide)
    live.say_printed(sheet, (top, 1), parameters.range(0), parameters.filled, PRINTED_PARAMETERS)
    page(sheet, freeze=f"C{top + 1}", print_area=parameters.printed(PRINTED_PARAMETERS))
    return condition, parameters


def _streams(live: LiveBook) -> Live:
    sheet, top = live.sheet("streams")
    put(sheet, top + 1, 1, sheet_file("live")["points"]["estimate"], "estimate")
    table = live.table(sheet, top + 3, "drain_streams", MOST_STREAMS, of_chosen=False)
    wide = widths_for(table, narrow=11.0, **DISCHARGE)
    widths(sheet, wide)
    head_heights(table, wide)
    live.say_printed(sheet, (top, 1), table.range(0), table.filled, PRINTED_STREAMS)
    page(
        sheet,
        title_rows=f"{table.row}:{table.row + 1}",
        freeze=f"D{table.first}",
        print_area=table.printed(PRINTED_STREAMS),
    )
    return table
