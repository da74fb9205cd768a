"""Draw the live sheet What moves the cost: the inputs of the chosen enquiry, ranked by their effect."""

from __future__ import annotations

from typing import NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook.input_rules import add_list
from costing.front_ends.workbook.live_areas import DRIVERS_WANTED, absolute, name_cells
from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_chart import Bars, add_chart
from costing.front_ends.workbook.live_table import HEADS, Live, head_heights, widths_for
from costing.front_ends.workbook.sheet_drawing import put, section
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file
from costing.report import PART_TABLES
from costing.report.money import ALL_PARTS, MOST_PARTS

MOST_DRIVERS, PRINTED_DRIVERS, CHARTED = 200, 36, 12
SECTION, NAMES = 13, 14  # columns of a band, and the one of the names in the chart
LETTERS = 10  # of the chart, which is printed smaller [points]
WANTED = 4  # column of the cell that is typed in; its name stands in the one before
CHART_ROWS, CHART = 25, (36.0, 12.5)  # rows that the chart covers; width and height [cm]
PARTS_CHART, PART = 5, (20.3, 6.9)  # column of the charts of parts; width and height [cm]
LAST_PRINTED = "Change at the high end"
WIDE = {"Driver": 42.0, "Known from": 13.0, "Grounds": 70.0}
OFF = f'UPPER(TRIM({DRIVERS_WANTED}))="NO"'


class Drivers(NamedTuple):
    """The tables of the sheet: how sure the cost is, its dearest parts, and each number that moves it."""

    spread: Live
    steps: Live
    materials: Live
    causes: Live
    drivers: Live


def draw_drivers(live: LiveBook) -> Drivers:
    """How sure the cost is, the chart of the strongest numbers, and all of them.

    All of it takes some hundred quotes, so one who types fast may turn it off.
    """
    text = sheet_file("live")["drivers"]
    sheet, top = live.sheet("drivers")
    top += 1  # below what is said of the print
    live.repeat_chosen(sheet, top)
    put(sheet, top, WANTED - 1, text["wanted"], "strong text")
    wanted = put(sheet, top, WANTED, "yes", "given choice")
    name_cells(live.book, DRIVERS_WANTED, absolute(sheet, wanted.coordinate))
    add_list(sheet, wanted.coordinate, '"yes,no"', "calculate")
    says = live.formula(
        sheet, top, WANTED + 1, f'IF({OFF},"{text["off"]}","{text["on"]}")', text["on"], "live line"
    )
    live.mark(sheet, f"{says.coordinate}:K{top}", OFF)
    section(sheet, top + 2, text["spread"], SECTION)
    spread = live.table(sheet, top + 3, "cost_spread", 1, unless=OFF)
    at = spread.last + 2
    second = at + CHART_ROWS
    (steps, materials, causes), row = _parts(live, sheet, second)
    section(sheet, row, text["drivers"], SECTION)
    drivers = live.table(sheet, row + 1, "cost_drivers", MOST_DRIVERS, unless=OFF)
    _chart(live, drivers, at)
    wide = widths_for(drivers, narrow=12.5, **WIDE)
    widths(sheet, {**wide, get_column_letter(NAMES): WIDE["Driver"]})
    for table in (spread, steps, materials, causes, drivers):
        head_heights(table, wide)
    live.say_printed(sheet, (top - 2, 1), drivers.range(0), drivers.filled, PRINTED_DRIVERS)
    for start in (second, drivers.row - 1):
        sheet.row_breaks.append(Break(id=start - 1))
    page(sheet, freeze=f"C{top + 1}", print_area=drivers.printed(PRINTED_DRIVERS, LAST_PRINTED))
    return Drivers(spread, steps, materials, causes, drivers)


def _parts(live: LiveBook, sheet: Worksheet, row: int) -> tuple[list[Live], int]:
    """The dearest steps, materials and causes, each with its chart; and the next free row."""
    tables = []
    words = sheet_file("live")["drivers"]
    title, axis = words["parts"]
    for key in PART_TABLES:
        heading = f"{live.shown.table(key, of_chosen=True).title}; {words['all_parts']}"
        section(sheet, row, heading, SECTION)
        table = live.table(sheet, row + 1, key, MOST_PARTS + 2, total=ALL_PARTS)
        what = table.table.columns[1].title.lower()
        name, cost = table.column + 1, table.column + table.place("Cost")
        rows = table.first + 1, table.last  # below that of all
        bars = Bars(f"{title} {what}", axis, name, [("cost", cost)], *rows, "0.000", letters=LETTERS)
        add_chart(sheet, bars, (row + 1, PARTS_CHART), *PART)
        tables.append(table)
        row = table.last + 2
    return tables, row


def _chart(live: LiveBook, drivers: Live, row: int) -> None:
    """Bars to both sides, named with where the number is known from: beside the table, and not printed."""
    text = sheet_file("live")["drivers"]
    name, known, low, high = (
        drivers.place(title)
        for title in ("Driver", "Known from", "Change at the low end", "Change at the high end")
    )
    put(drivers.sheet, drivers.row, NAMES, text["names"], "column head")
    put(drivers.sheet, drivers.row + 1, NAMES, None, "unit")
    rows = range(drivers.first, drivers.first + CHARTED)
    for at, values in zip(rows, drivers.cells[HEADS:], strict=False):
        mine, grounds = (f"{drivers.letter(place)}{at}" for place in (name, known))
        shown = f"{values[name]} ({values[known]})" if values[name] else ""
        words = f'IF(LEN({mine})=0,"",{mine}&" ("&{grounds}&")")'
        live.formula(drivers.sheet, at, NAMES, words, shown, "live line")
    ends = [(end, drivers.column + place) for end, place in (("low end", low), ("high end", high))]
    title, axis = text["chart"]
    bars = Bars(title, axis, NAMES, ends, rows[0], rows[-1], "0.000", two_sided=True, letters=LETTERS)
    add_chart(drivers.sheet, bars, (row, 1), *CHART)
