"""Draw the live sheet Checks: whether the book answers, and whether its figures hold together, in words."""

from __future__ import annotations

from collections.abc import Sequence

from openpyxl.worksheet.pagebreak import Break

from costing.book.layout import sheet_names
from costing.front_ends.workbook.live_areas import (
    CHOICE,
    CHOSEN,
    CODES,
    LAST_CELLS,
    LISTED,
    OPENED,
    RUNNING,
    VERDICT,
    absolute,
    area_name,
    beyond,
    block_of,
    name_cells,
)
from costing.front_ends.workbook.live_cells import ALL_WELL, WARNED, LiveBook, call
from costing.front_ends.workbook.live_chosen import Chosen
from costing.front_ends.workbook.live_discharge import ALL_STREAMS
from costing.front_ends.workbook.live_drivers import Drivers
from costing.front_ends.workbook.live_purchasing import MOST_MATERIALS, Purchasing
from costing.front_ends.workbook.live_quote import MOST_QUOTES
from costing.front_ends.workbook.live_results import total
from costing.front_ends.workbook.live_table import Live, head_heights
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import WHOLE, page, widths
from costing.front_ends.workbook.template_files import sheet_file
from costing.report.drain_live import DRAIN_TABLES
from costing.report.money import ALL_PARTS
from costing.report.table import FINISHED_METRE

OK = "ok"
MOST_REMARKS, PRINTED_REMARKS = 240, 96
LABEL, FOUND, EXPECTED, SAYS = 1, 2, 3, 4
WIDTHS = {"A": 52.0, "B": 20.0, "C": 25.0, "D": 104.0}
SIX_DECIMALS = "#,##0.000000"
NAMES = {"checks": "remarks"}
BALANCE, ALL_STEPS, ALL_OF_THEM = '"balance"', '"all steps"', f'"{ALL_STREAMS}"'
LEAST = "1E-9"  # largest difference that is rounding
SUMMED = (("Flow", "L"), ("COD, both", "g"), ("Sodium", "g"), ("Sulfur, all forms", "g"))


def filled_cells(area: str) -> str:
    """Number of cells of an area that hold anything: LibreOffice 7.4 counts others too by COUNTA.

    Examples
    --------
    >>> filled_cells("book_styles")
    'COUNTIF(book_styles,"<>")'
    """
    return f'COUNTIF({area},"<>")'


class CheckSheet:
    """The sheet Checks while it is drawn.

    Parameters
    ----------
    live : LiveBook
        Draws.
    tables : sequence of Live
        Every table of the live sheets, in the order of the sheets.
    """

    def __init__(self, live: LiveBook, tables: Sequence[Live]) -> None:
        self.live = live
        self.tables = tables
        self.text = sheet_file("live")["checks"]
        self.sheet, self.row = live.sheet("checks")
        self.said: list[str] = []

    def draw(self, steps: Live, chosen: Chosen, drivers: Drivers, purchasing: Purchasing) -> Live:
        """All of it; gives the table of the remarks."""
        overall = self.row = self.row + 1
        put(self.sheet, overall, LABEL, self.text["overall"], "strong text")
        self.row += 2
        opened = self._opened_book()
        first = self._answers(opened)
        self._sums(steps, chosen, drivers, purchasing)
        self.sheet.row_breaks.append(Break(id=self.row - 1))
        self._areas()
        remarks = self._remarks()
        self.row = first + len(self.tables) + 2
        self._answer(remarks)
        self._overall(overall, remarks)
        widths(self.sheet, WIDTHS)
        head_heights(remarks, WIDTHS)
        note = overall - 2, LABEL
        self.live.say_printed(self.sheet, note, remarks.range(0), remarks.filled, PRINTED_REMARKS, "remarks")
        page(self.sheet, freeze=f"A{overall + 1}", print_area=remarks.printed(PRINTED_REMARKS))
        return remarks

    def _section(self, *heads: str) -> None:
        for column, head in enumerate([*heads, "", "", ""][:SAYS], start=1):
            style = "number head" if column in (FOUND, EXPECTED) and head else "section"
            put(self.sheet, self.row, column, head or None, "section" if len(heads) == 1 else style)
        self.sheet.row_dimensions[self.row].height = 18
        self.row += 1

    def _says(self, text: str, shown: str = OK, *, on_opening: bool = False) -> None:
        """What a check says; it passes when it says ok."""
        cell = self.live.formula(self.sheet, self.row, SAYS, text, shown, "live line", on_opening=on_opening)
        self.live.mark(self.sheet, cell.coordinate, f'${cell.coordinate}<>"{OK}"')
        self.said.append(cell.coordinate)
        self.live.ruled(self.sheet, f"A{self.row}:D{self.row}", f"$A{self.row}")
        self.row += 1

    def _opened_book(self) -> int:
        """The cell that opens the book, and what calculates it; gives its row."""
        self._section(self.text["book"])
        opened = self.row
        areas = [area_name(title) for title in sheet_names()]
        rows = (
            ("mark of all cells that were read", call("WARP_OPENED_BOOK", *areas), self.live.shown.mark),
            ("version of the formulas", call("WARP_PROGRAM_VERSION"), self.live.shown.version),
            (
                "fingerprint of the reference tables",
                call("WARP_TABLES_FINGERPRINT"),
                self.live.shown.fingerprint,
            ),
        )
        for label, text, shown in rows:
            put(self.sheet, self.row, LABEL, label, "live line")
            of_program = text != rows[0][1]  # the book is read when it is first asked
            self.live.formula(self.sheet, self.row, SAYS, text, shown, "live line", on_opening=of_program)
            self.row += 1
        name_cells(self.live.book, RUNNING, absolute(self.sheet, f"D{opened + 1}"))
        name_cells(self.live.book, OPENED, absolute(self.sheet, f"D{opened}"))
        put(self.sheet, self.row, LABEL, self.text["mend"], "intro line")
        self.row += 2
        return opened

    def _answers(self, opened: int) -> int:
        """Whether the book is read and every table is worked out, and why not; gives the first row."""
        self._section(self.text["answers"], "", "", "Reason")
        put(self.sheet, self.row - 1, SAYS, "Reason", "section")
        first = self.row
        put(self.sheet, self.row, LABEL, "the formulas of this program run", "live line")
        self._says(f'IF(ISERROR({RUNNING}),"{self.text["missing"]}","{OK}")', on_opening=True)
        put(self.sheet, self.row, LABEL, "the input sheets are read", "live line")
        areas = [area_name(title) for title in sheet_names()]
        why = call("WARP_REASON_FOR", '"WARP_OPENED_BOOK"', *areas)
        # No array formula: in one, LibreOffice would ask for the reason once for each cell of the areas.
        self._says(f'IF(ISERROR({OPENED}),IFERROR({why},"{self.text["error"]}"),"{OK}")')
        for table in self.tables:
            self._answer(table)
        self.row += 2  # one for the remarks, which stand at the end of this sheet
        return first

    def _answer(self, table: Live) -> None:
        of_drain = table.key in DRAIN_TABLES
        whose = "of the chosen enquiry" if table.of_chosen else "of all enquiries"
        whose = "of the discharge plan" if of_drain else whose
        put(
            self.sheet,
            self.row,
            LABEL,
            f"{NAMES.get(table.key, table.table.title.lower())} {whose}",
            "live line",
        )
        corner = absolute(table.sheet, f"{table.letter(0)}{table.row}")
        why = call("WARP_REASON_FOR", '"WARP_RESULT_TABLE"', *table.arguments)
        why = f'IFERROR({why},"{self.text["not_read"]}")'
        if not table.of_chosen and not of_drain:
            most, of, given = self.text["too_many"]
            count = filled_cells(CODES)
            why = f'IF({count}>{MOST_QUOTES},"{most} {MOST_QUOTES} {of} "&{count}&" {given}",{why})'
        self._says(f'IF(ISERROR({corner}),{why},"{OK}")', on_opening=True)

    def _sums(self, steps: Live, chosen: Chosen, drivers: Drivers, purchasing: Purchasing) -> None:
        self._section(self.text["sums"], "Found", "Expected", "")
        quotes = self.tables[0]
        codes = [row[0] for row in quotes.cells[2:]]
        filled = float(sum(bool(code) for code in codes))
        self._compare(
            "rows of Quotes, and enquiries filled in",
            f"SUMPRODUCT(--(LEN({quotes.range(0)})>0))",
            filled,
            filled_cells(CODES),
            float(len(self.live.shown.mill.enquiries)),
            WHOLE,
        )
        place = chosen.cost_lines.place("Cost", "m of finished")
        self._compare(
            f"sum of the cost lines, and cost per {FINISHED_METRE}",
            f"SUM({chosen.cost_lines.range(place)})",
            total(chosen.cost_lines.values(place)),
            call("WARP_COST_ON", OPENED, CHOSEN, f'"{FINISHED_METRE}"'),
            self.live.shown.cost_on(FINISHED_METRE),
        )
        self._parts("sum of the steps, and all steps", steps, steps.place("Cost", "kg"), ALL_STEPS)
        for title, unit in SUMMED:
            place = chosen.loads.place(title)
            self._parts(f"{title} of the streams, and of all, {unit}/kg", chosen.loads, place, ALL_OF_THEM)
        share = drivers.drivers.place("Share of the spread")
        parts = [place for place, item in enumerate(drivers.spread.table.columns) if item.unit == "%"]
        self._compare(
            "shares of what moves the cost, and by where it is known from, %",
            f"SUM({drivers.drivers.range(share)})",
            total(drivers.drivers.values(share)),
            f"SUM({','.join(drivers.spread.range(place) for place in parts)})",
            sum(total(drivers.spread.values(place)) for place in parts),
        )
        for table in (drivers.steps, drivers.materials, drivers.causes):
            what = table.table.title.partition(",")[0].lower()
            self._parts(f"{what}, parts and all but yarns", table, table.place("Cost"), f'"{ALL_PARTS}"')
        self._purchasing(purchasing)
        remarks = next(table for table in self.tables if table.key == "checks")
        kinds = remarks.values(1)
        self._compare(
            "balance of the chosen enquiry closes (1 is yes)",
            f"SUMPRODUCT(--{remarks.is_text(1, BALANCE)})",
            float(kinds.count("balance")),
            "1",
            1.0,
            WHOLE,
        )
        self.row += 1

    def _purchasing(self, purchasing: Purchasing) -> None:
        """Rows and amounts on Purchasing, by unit, against its list; and that it lists every material."""
        uses = purchasing.uses
        needed, units = uses.place("For the order"), uses.place("Unit of the order")
        listed = float(sum(bool(row) for row in uses.values(0)))
        self._compare(
            "rows of the list of Purchasing, and counted there",
            f"SUM({','.join(purchasing.counts)})",
            listed,
            f"SUMPRODUCT(--(LEN({uses.range(0)})>0))",
            listed,
            WHOLE,
        )
        for unit in dict.fromkeys(filter(None, uses.values(units))):
            word = f'"{unit}"'
            found = "+".join(
                f'SUMPRODUCT(--({area}&""={word}),{amounts})'
                for area, amounts in zip(purchasing.units, purchasing.sums)
            )
            all_of_it = f"SUMPRODUCT(--{uses.is_text(units, word)},{uses.range(needed)})"
            shown = total([row[needed] for row in uses.cells[2:] if row[units] == unit])
            self._compare(f"{unit} needed on Purchasing, and in its list", found, shown, all_of_it, shown)
        codes = float(len(self.live.shown.mill.materials))
        most, of, given = self.text["not_listed"]
        count, here = filled_cells(LISTED), purchasing.materials
        self._compare(
            "materials on Purchasing, and filled in",
            f"SUMPRODUCT(--(LEN({here})>0))",
            codes,
            count,
            codes,
            WHOLE,
            f'"{most} {MOST_MATERIALS} {of} "&{count}&" {given}"',
        )

    def _parts(self, label: str, table: Live, place: int, word: str) -> None:
        """The rows of a table against its row of totals."""
        names, values = table.values(1), table.values(place)
        whole = total([value for name, value in zip(names, values) if f'"{name}"' == word])
        of_all = f"SUMPRODUCT(--{table.is_text(1, word)},{table.range(place)})"
        parts = f"SUM({table.range(place)})-{of_all}"
        self._compare(label, parts, total(values) - whole, of_all, whole)

    def _compare(
        self,
        label: str,
        found: str,
        is_found: float,
        expected: str,
        is_expected: float,
        number: str = SIX_DECIMALS,
        said: str = "",
    ) -> None:
        """Two numbers that must agree, and what is said where they do not: else, by how much they differ."""
        put(self.sheet, self.row, LABEL, label, "live line")
        self.live.formula(self.sheet, self.row, FOUND, found, is_found, "live number", number)
        self.live.formula(self.sheet, self.row, EXPECTED, expected, is_expected, "live number", number)
        here, other = f"$B{self.row}", f"$C{self.row}"
        close = f"ABS({here}-{other})<={LEAST}*MAX(1,ABS({other}))"
        alike = abs(is_found - is_expected) <= float(LEAST) * max(1.0, abs(is_expected))
        shown = OK if alike else f"{self.text['differs']} {is_found - is_expected:.12g}"
        differs = said or f'"{self.text["differs"]} "&({here}-{other})'
        self._says(f'IFERROR(IF({close},"{OK}",{differs}),"{self.text["refused"]}")', shown)

    def _areas(self) -> None:
        """What is filled of each input sheet, what is an error, and what is filled where nobody reads."""
        self._section(self.text["areas"], "Filled", "Errors", "")
        for title in sheet_names():
            area = area_name(title)
            put(self.sheet, self.row, LABEL, title, "live line")
            filled = float(sum(value != "" for row in block_of(self.live.book[title]) for value in row))
            errors = f"SUMPRODUCT(--ISERROR({area}))"
            self.live.formula(self.sheet, self.row, FOUND, filled_cells(area), filled, "live number", WHOLE)
            self.live.formula(self.sheet, self.row, EXPECTED, errors, 0.0, "live number", WHOLE)
            row = f"SUMPRODUCT(MAX(ISERROR({area})*ROW({area})))"
            column = f"SUMPRODUCT(MAX(ISERROR({area})*(ROW({area})={row})*COLUMN({area})))"
            place = f'"{title}!"&ADDRESS({row},{column},4)'
            outside = "+".join(filled_cells(cells) for cells in beyond(title))
            said = (
                f'IF($C{self.row}>0,"{self.text["holds_error"]} "&{place},'
                f'IF({outside}>0,"{self.text["beyond"]} {LAST_CELLS[title]}","{OK}"))'
            )
            self._says(f'IFERROR({said},"{self.text["lost"]}")')
        self.row += 1

    def _overall(self, row: int, remarks: Live) -> None:
        """One line for all checks, which every live sheet repeats."""
        says = [f"${place[0]}${place[1:]}" for place in self.said]
        bad = "+".join(f'({place}<>"{OK}")' for place in says)
        why = ""
        for place in reversed([*says[: len(self.tables) + 2], says[-1]]):
            why = f'IF({place}<>"{OK}"," "&{place},{why or chr(34) * 2})'
        kinds = f"{remarks.letter(1)}{remarks.first}:{remarks.letter(1)}{remarks.last}"
        warnings = f'SUMPRODUCT(--({kinds}&""="warning"))'
        before, behind = self.text["warned"]
        warned = f'"{WARNED} {ALL_WELL} {before} "&{warnings}&" {behind}"'
        well = f'IF({warnings}=0,"{ALL_WELL} {self.text["well"]}",{warned})'
        unchosen = f'IF(TRIM({CHOICE})=""," {self.text["unchosen"]}",{why})'
        text = f'IF({bad}=0,{well},({bad})&" {self.text["ill"]}"&{unchosen})'
        text = f'IF(ISERROR({RUNNING}),"{self.text["not_running"]}",{text})'
        cell = self.live.formula(
            self.sheet, row, SAYS, text, self.live.verdict, "strong text", on_opening=True
        )
        self.live.mark(self.sheet, cell.coordinate, f'ISERROR(FIND("{ALL_WELL}",${cell.coordinate}))')
        self.sheet.row_dimensions[row].height = 30  # of two lines
        name_cells(self.live.book, VERDICT, absolute(self.sheet, cell.coordinate))

    def _remarks(self) -> Live:
        self._section(self.text["remarks"])
        remarks = self.live.table(self.sheet, self.row, "checks", MOST_REMARKS, of_chosen=False)
        kinds = f"{remarks.letter(0)}{remarks.first}:{remarks.letter(3)}{remarks.last}"
        self.live.mark(self.sheet, kinds, f'${remarks.letter(1)}{remarks.first}="warning"')
        return remarks
