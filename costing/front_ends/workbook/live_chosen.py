"""Draw the live sheets of the chosen enquiry: Use, Cost lines, Ledger, Discharge and Typical values."""

from __future__ import annotations

from typing import NamedTuple

from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_discharge import draw_discharge
from costing.front_ends.workbook.live_results import total
from costing.front_ends.workbook.live_table import Live, head_heights, widths_for
from costing.front_ends.workbook.results_sheets import number_format
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file

MOST_MATERIALS, MOST_COST_LINES, MOST_POSTINGS, MOST_DEFAULTS = 40, 400, 1600, 200
PRINTED_MATERIALS, PRINTED_COST_LINES, PRINTED_POSTINGS, PRINTED_DEFAULTS = 26, 140, 680, 56
PRINTED_OF_DEFAULTS = "Source"  # its last printed column: the long texts behind it are for the screen


COST_LINES = {"Step": 20.0, "Material": 16.0, "Cause": 34.0, "Group": 13.0, "Amount": 13.0, "Cost": 15.0}
LEDGER = {"Step": 20.0, "Material": 16.0, "Substance": 22.0, "Cause": 34.0, "Amount": 15.0}
LEDGER |= {"From": 21.0, "To": 28.0}
DEFAULTS = {"Where": 50.0, "Setting": 24.0, "Contested": 18.0, "Source": 24.0}
DEFAULTS |= {"Place in the source": 58.0, "Note": 100.0}


class Chosen(NamedTuple):
    """The tables of the chosen enquiry."""

    use: Live
    cost_lines: Live
    ledger: Live
    loads: Live
    concentrations: Live
    typical_values: Live


def draw_chosen(live: LiveBook) -> Chosen:
    """The five sheets."""
    return Chosen(
        _one_table(
            live, "use", MOST_MATERIALS, PRINTED_MATERIALS, {"Description": 56, "Group": 14, "Material": 18}
        ),
        _one_table(live, "cost_lines", MOST_COST_LINES, PRINTED_COST_LINES, COST_LINES),
        _one_table(live, "ledger", MOST_POSTINGS, PRINTED_POSTINGS, LEDGER),
        *draw_discharge(live),
        _one_table(live, "defaults_taken", MOST_DEFAULTS, PRINTED_DEFAULTS, DEFAULTS, fixed="D"),
    )


def _one_table(
    live: LiveBook, key: str, room: int, printed: int, wide: dict[str, float], *, fixed: str = "C"
) -> Live:
    """A sheet with one table, and the sums of its columns of cost above it."""
    sheet, top = live.sheet(key)
    top += 1  # below what is said of the print
    live.repeat_chosen(sheet, top)
    table = live.table(sheet, top + 2, key, room, filtered=True)
    places = [place for place, item in enumerate(table.table.columns) if item.title == "Cost"]
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
    found = widths_for(table, narrow=10.0, **wide)
    widths(sheet, found)
    head_heights(table, found)
    sheet.auto_filter.ref = f"A{table.row + 1}:{table.letter(len(table.table.columns) - 1)}{table.last}"
    if any(column.unit for column in table.table.columns):
        sheet.row_dimensions[table.row + 1].height += 15  # the arrows stand below the units
    live.say_printed(sheet, (top - 2, 1), table.range(0), table.filled, printed)
    page(
        sheet,
        title_rows=f"{table.row}:{table.row + 1}",
        freeze=f"{fixed}{table.first}",
        print_area=table.printed(printed, PRINTED_OF_DEFAULTS if key == "defaults_taken" else ""),
    )
    return table
