"""Draw the live sheet Purchasing: what all enquiries take together of each bought thing."""

from __future__ import annotations

from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook.live_areas import LISTED, absolute
from costing.front_ends.workbook.live_cells import LiveBook
from costing.front_ends.workbook.live_table import Live, head_heights, widths_for
from costing.front_ends.workbook.results_sheets import number_format
from costing.front_ends.workbook.sheet_drawing import cells, put
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file
from costing.ledger.lot import RANGE_TIME
from costing.process.postings import POWER
from costing.report import Column

MOST_USES = 900  # rows of the list: 60 enquiries of a dozen bought things
MOST_MATERIALS, PRINTED_MATERIALS = 110, 46
UTILITIES = ("water", "steam", POWER, RANGE_TIME)
CODE, DESCRIPTION, NEEDED, UNIT, COUNT = 1, 2, 3, 4, 5
LIST = 7  # first column of the list
FRAME = {"A": 20.0, "B": 50.0, "C": 16.0, "D": 9.0, "E": 12.0, "F": 4.0}
HEADS = {CODE: "Material", DESCRIPTION: "Description", NEEDED: "Needed", UNIT: "Unit", COUNT: "Enquiries"}
WHOLE = Column("", "", 0)
MASS = Column("", "", 1)


class Purchasing(NamedTuple):
    """The list of all uses; the areas of sums, of their units, of the rows counted, and of the materials."""

    uses: Live
    sums: list[str]
    units: list[str]
    counts: list[str]
    materials: str


class _Sums:
    """The sums while they are drawn."""

    def __init__(self, live: LiveBook, sheet: Worksheet, uses: Live) -> None:
        self.live, self.sheet, self.uses = live, sheet, uses
        self.material, self.described = uses.place("Material"), uses.place("Description")
        self.needed, self.unit = uses.place("For the order"), uses.place("Unit of the order")
        self.rows = [row for row in uses.cells[2:] if row[0]]
        self.looked_up = self._looked_up()

    def _looked_up(self) -> str:
        """The materials of the list once more, as native texts: see `Live.is_text`."""
        column = self.uses.column + len(self.uses.table.columns)
        put(self.sheet, self.uses.row, column, "Material, to look up", "column head")
        put(self.sheet, self.uses.row + 1, column, None, "unit")
        for row in range(self.uses.first, self.uses.last + 1):
            text = f'{self.uses.letter(self.material)}{row}&""'
            shown = self.uses.cells[row - self.uses.row][self.material]
            self.live.formula(self.sheet, row, column, text, shown, "live line")
        letter = get_column_letter(column)
        self.sheet.column_dimensions[letter].width = 18.0
        return absolute(self.sheet, f"{letter}{self.uses.first}", f"{letter}{self.uses.last}")

    def heads(self, row: int, heading: str) -> int:
        for column in HEADS:
            put(self.sheet, row, column, heading if column == CODE else None, "section")
            style = "number head" if column in (NEEDED, COUNT) else "column head"
            put(self.sheet, row + 1, column, HEADS[column], style)
            side = "number" if column == NEEDED else "text"
            unit = self.live.look(self.sheet, row + 2, column, "unit", side=side)
            unit.value = "as delivered" if column == NEEDED else None
        self.sheet.row_dimensions[row].height = 18
        return row + 3

    def draw(self, row: int, code: str) -> None:
        """Sum, unit, description and number of enquiries of the code in the first column."""
        mine = [use for use in self.rows if code and use[self.material] == code]
        here = f"$A{row}"
        found, same = f"MATCH({here},{self.looked_up},0)", f"({self.looked_up}={here})"
        amount = sum(use[self.needed] for use in mine)
        self._cell(row, DESCRIPTION, self._first(here, found, self.described), self._of(mine, self.described))
        needed = f'IF({here}="","",SUMPRODUCT(--{same},{self.uses.range(self.needed)}))'
        self._cell(row, NEEDED, needed, float(amount) if code else "", MASS)
        self._cell(row, UNIT, self._first(here, found, self.unit), self._of(mine, self.unit))
        count = f'IF({here}="","",SUMPRODUCT(--{same}))'
        self._cell(row, COUNT, count, float(len(mine)) if code else "", WHOLE)

    def _first(self, here: str, found: str, place: int) -> str:
        """What the first row of the list with this code says in another column."""
        return f'IF(N($E{here[2:]})=0,"",INDEX({self.uses.range(place)},{found}))'

    @staticmethod
    def _of(mine: list[list[Any]], place: int) -> str:
        return str(mine[0][place]) if mine else ""

    def _cell(self, row: int, column: int, text: str, shown: Any, number: Column | None = None) -> None:
        style = "live number" if number else "live line"
        self.live.formula(
            self.sheet, row, column, text, shown, style, number_format(number) if number else ""
        )


def draw_purchasing(live: LiveBook) -> Purchasing:
    """Utilities and materials with their sums, and on the right the list that is summed."""
    text = sheet_file("live")["purchasing"]
    sheet, top = live.sheet("purchasing")
    top += 1  # below what is said of the print
    uses = live.table(sheet, top + 1, "use", MOST_USES, column=LIST, of_chosen=False)
    for column in range(LIST, LIST + len(uses.table.columns)):
        put(sheet, top, column, text["list"] if column == LIST else None, "section")
    sums = _Sums(live, sheet, uses)
    first = row = sums.heads(top, text["utilities"])
    for name in UTILITIES:
        put(sheet, row, CODE, name, "live line")
        sums.draw(row, name)
        row += 1
    rows = [(first, row - 1)]
    first = row = sums.heads(row + 1, text["materials"])
    codes = [*live.shown.mill.materials, *[""] * MOST_MATERIALS][:MOST_MATERIALS]
    for number, code in enumerate(codes, start=1):
        listed = f'IF({number}>ROWS({LISTED}),"",TRIM(INDEX({LISTED},{number})))'
        live.formula(sheet, row, CODE, listed, code, "live line")
        sums.draw(row, code)
        row += 1
    rows.append((first, row - 1))
    live.ruled(sheet, cells(CODE, uses.first, row - 1, COUNT), f"$A{uses.first}")
    wide = {**FRAME, **widths_for(uses, narrow=14.0, Description=56, Material=18, Group=14)}
    widths(sheet, wide)
    head_heights(uses, wide)
    materials = absolute(sheet, f"A{first}", f"A{row - 1}")
    count = len(live.shown.mill.materials)
    live.say_printed(sheet, (top - 2, 1), materials, count, PRINTED_MATERIALS, "materials")
    printed = cells(1, 1, first + PRINTED_MATERIALS - 1, COUNT)
    page(sheet, freeze=f"B{uses.first}", print_area=printed, landscape=False, one_page=True)
    needed, units, counts = (
        [absolute(sheet, f"{letter}{top}", f"{letter}{last}") for top, last in rows]
        for letter in map(get_column_letter, (NEEDED, UNIT, COUNT))
    )
    return Purchasing(uses, needed, units, counts, materials)
