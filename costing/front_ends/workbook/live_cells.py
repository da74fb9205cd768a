"""Formulas of the live sheets: each is checked against the registry, drawn, and kept with its result.

A table is one array formula over an explicit range, the only form that every spreadsheet program shows alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from typing import Any

from openpyxl.cell.cell import Cell
from openpyxl.formatting.rule import Rule
from openpyxl.styles import Border, Font
from openpyxl.styles.cell_style import StyleArray
from openpyxl.styles.differential import DifferentialStyle
from openpyxl.workbook import Workbook
from openpyxl.worksheet.formula import ArrayFormula
from openpyxl.worksheet.worksheet import Worksheet

from costing.formulas.cell_function import VARARGS
from costing.formulas.registry import cell_functions
from costing.front_ends.workbook import results_sheets
from costing.front_ends.workbook.live_areas import CHOSEN, VERDICT
from costing.front_ends.workbook.live_results import BookResults, filled_up
from costing.front_ends.workbook.live_table import HEADS, Live
from costing.front_ends.workbook.results_sheets import UNIT_OF_NUMBER, UNIT_OF_TEXT, is_numeric
from costing.front_ends.workbook.sheet_drawing import cells, protect, put
from costing.front_ends.workbook.styles import ALERT, INK, REFUSED, fill, line
from costing.front_ends.workbook.template_files import sheet_file

SAID_TO = "K"  # column to which the verdict is marked, as its words run over their neighbours
ABOVE_ARROWS = ", above arrows"
ALL_WELL = "All checks pass,"
WARNED = "(!)"  # in front of it where there are warnings: to be seen without colour


def call(name: str, *arguments: str) -> str:
    """A call of one of our functions, with arguments as they are typed.

    Examples
    --------
    >>> call("WARP_MOLAR_MASS", '"NaOH"')
    'WARP_MOLAR_MASS("NaOH")'
    """
    parameters = cell_functions()[name].parameters
    needed = sum(not item.optional for item in parameters)
    many = bool(parameters) and parameters[-1].kind == VARARGS
    if not needed <= len(arguments) <= (255 if many else len(parameters)):
        raise ValueError(f"{name} takes {len(parameters)} arguments, not {len(arguments)}")
    return f"{name}({','.join(arguments)})"


class LiveBook:
    """Draws live formulas and keeps what they show.

    Parameters
    ----------
    book : Workbook
        Takes the sheets.
    shown : BookResults
        The filled demo: its results stand behind the formulas, and its tables give columns and widths.
    """

    def __init__(self, book: Workbook, shown: BookResults) -> None:
        self.book = book
        self.shown = shown
        self.results: dict[str, dict[str, Any]] = {}
        self._looks: dict[tuple[str, str, str], StyleArray] = {}

    def sheet(self, key: str) -> tuple[Worksheet, int]:
        """A new sheet with its title, its intro and the verdict of the checks; and its first free row.

        It is protected, without a password: a number typed over a formula would be wrong from then on.
        """
        text = sheet_file("live")[key]
        sheet: Worksheet = self.book.create_sheet(text["sheet"])
        protect(sheet)
        put(sheet, 1, 1, text["title"], "sheet title")
        sheet.row_dimensions[1].height = 28
        row = 2
        for words in text["intro"]:
            put(sheet, row, 1, words, "intro line")
            sheet.row_dimensions[row].height = 15
            row += 1
        if text.get("verdict", True):
            self.formula(sheet, row, 1, VERDICT, self.verdict, "intro line", on_opening=True)
            self.mark(sheet, f"A{row}:{SAID_TO}{row}", f'ISERROR(FIND("{ALL_WELL}",$A{row}))')
            row += 1
        return sheet, row + 1

    def repeat_chosen(self, sheet: Worksheet, row: int) -> None:
        """Which enquiry a sheet shows."""
        put(sheet, row, 1, sheet_file("live")["quote"]["choose"], "live line")
        self.formula(sheet, row, 2, CHOSEN, self.shown.chosen, "strong text")

    @property
    def verdict(self) -> str:
        """What the checks of the demo say; the tests see that they do."""
        kinds = [row[1] for row in self.shown.table("checks", of_chosen=False).rows]
        text, warnings = sheet_file("live")["checks"], kinds.count("warning")
        if not warnings:
            return f"{ALL_WELL} {text['well']}"
        before, behind = text["warned"]
        return f"{WARNED} {ALL_WELL} {before} {warnings} {behind}"

    def formula(
        self,
        sheet: Worksheet,
        row: int,
        column: int,
        text: str,
        shown: Any,
        style: str,
        number: str = "",
        *,
        on_opening: bool = False,
    ) -> Cell:
        """A formula in one cell, with what it shows in the demo.

        On opening a file LibreOffice works out array formulas alone. So what says whether our formulas run is
        one, of one cell: where they do not, its result in the file would say that all is well.
        """
        cell = self.look(sheet, row, column, style, number)
        cell.value = ArrayFormula(cell.coordinate, f"={text}") if on_opening else f"={text}"
        self._keep(cell, shown)
        return cell

    def array(
        self, sheet: Worksheet, row: int, column: int, text: str, shown: Sequence[Sequence[Any]]
    ) -> None:
        """An array formula over as many rows and columns as it shows."""
        area = cells(column, row, row + len(shown) - 1, column + len(shown[0]) - 1)
        sheet.cell(row, column).value = ArrayFormula(area, f"={text}")
        for down, values in enumerate(shown):
            for across, value in enumerate(values):
                self._keep(sheet.cell(row + down, column + across), value)

    def _keep(self, cell: Any, shown: Any) -> None:
        # Twelve digits: the last ones depend on how a Python adds up.
        kept = float(f"{shown:.12g}") if isinstance(shown, float) else shown
        self.results.setdefault(cell.parent.title, {})[cell.coordinate] = kept

    def look(
        self, sheet: Worksheet, row: int, column: int, style: str, number: str = "", side: str = ""
    ) -> Cell:
        """A cell in a named style, with another number format or alignment where one is given."""
        cell = sheet.cell(row, column)
        assert isinstance(cell, Cell)
        key = style, number, side
        if key not in self._looks:
            pattern = Cell(sheet, 1, 1)
            pattern.style = style
            if number:
                pattern.number_format = number
            if side:
                layout = copy(UNIT_OF_NUMBER if side.startswith("number") else UNIT_OF_TEXT)
                layout.vertical = "top" if side.endswith(ABOVE_ARROWS) else "center"
                pattern.alignment = layout
            self._looks[key] = copy(pattern._style)  # type: ignore[attr-defined]
        cell._style = copy(self._looks[key])  # type: ignore[attr-defined]
        return cell

    def table(
        self,
        sheet: Worksheet,
        row: int,
        key: str,
        room: int,
        *,
        column: int = 1,
        of_chosen: bool = True,
        total: str = "",
        filtered: bool = False,
        unless: str = "",
    ) -> Live:
        """A table: one array formula with titles, units and room for so many rows.

        Parameters
        ----------
        sheet, row, column
            Where its first title stands.
        key : str
            One of `costing.report.BOOK_TABLES`.
        room : int
            Rows below the heads.
        of_chosen : bool, optional
            False for all enquiries.
        total : str, optional
            Word in the second column that marks a row of totals.
        filtered : bool, optional
            True where the arrows of a filter stand below the units.
        unless : str, optional
            While this condition holds, the table is empty and nothing is worked out for it.
        """
        table = self.shown.table(key, of_chosen=of_chosen)
        shown = filled_up(table, room + HEADS)
        for across, item in enumerate(table.columns):
            numeric = is_numeric(table, across)
            self.look(sheet, row, column + across, "number head" if numeric else "column head")
            side = ("number" if numeric else "text") + (ABOVE_ARROWS if filtered else "")
            self.look(sheet, row + 1, column + across, "unit", side=side)
            style = "live number" if numeric else "live line"
            number = results_sheets.number_format(item) if numeric else ""
            for down in range(room):
                self.look(sheet, row + HEADS + down, column + across, style, number)
        live = Live(sheet, row, column, table, shown, of_chosen)
        text = call("WARP_RESULT_TABLE", *live.arguments)
        self.array(sheet, row, column, f'IF({unless},"",{text})' if unless else text, shown)
        self._rule(live, total)
        return live

    def _rule(self, live: Live, total: str) -> None:
        """Draw the rules of a table as far down as it has rows."""
        first, second = (f"${live.letter(place)}{live.first}" for place in (0, 1))
        area = cells(live.column, live.first, live.last, live.column + len(live.table.columns) - 1)
        if total:
            bold = DifferentialStyle(
                font=Font(bold=True), border=Border(top=line("thin", INK), bottom=line("thin", INK))
            )
            rule = Rule(type="expression", formula=[f'{second}&""="{total}"'], dxf=bold, stopIfTrue=True)
            live.sheet.conditional_formatting.add(area, rule)
        self.ruled(live.sheet, area, first)

    def say_printed(
        self,
        sheet: Worksheet,
        place: tuple[int, int],
        rows: str,
        last: int,
        most: int,
        counted: str = "rows",
    ) -> None:
        """Say how many rows of a table are printed, and mark it where the table has more.

        A print range that grows with a table is not known to every program, and one over all the room of a
        table prints empty pages.

        Parameters
        ----------
        sheet : Worksheet
            Of the table.
        place : (int, int)
            Row and column where it is said.
        rows : str
            The first column of the table, all its room.
        last : int
            Number of the last filled row of it in the demo.
        most : int
            How many rows are printed.
        counted : str, optional
            What the rows are.
        """
        words = sheet_file("live")["printed"]
        if last > most:
            raise ValueError(f"{sheet.title} prints {most} rows, and the demo has {last}")
        found = f"SUMPRODUCT(MAX((LEN({rows})>0)*(ROW({rows})-MIN(ROW({rows}))+1)))"
        enough, more = f"{words['enough']} {most} {counted}.", f"{words['more']} {most} {words['of']} "
        text = f'IF({found}<={most},"{enough}","{more}"&{found}&" {counted}. {words["widen"]}")'
        cell = self.formula(sheet, *place, f'IFERROR({text},"")', enough, "intro line")
        here = f"{cell.column_letter}{cell.row}"
        self.mark(sheet, f"{here}:{SAID_TO}{cell.row}", f'LEFT(${here},{len(more)})="{more}"')

    def ruled(self, sheet: Worksheet, area: str, first: str) -> None:
        """Draw a rule below each row of an area in which a cell holds something."""
        look = DifferentialStyle(border=Border(bottom=line("hair")))
        sheet.conditional_formatting.add(area, Rule(type="expression", formula=[f"LEN({first})>0"], dxf=look))

    def mark(self, sheet: Worksheet, area: str, condition: str) -> None:
        """Make cells bold, on another ground, while a condition holds: what they say must not be missed."""
        look = DifferentialStyle(font=Font(bold=True, color=f"FF{REFUSED}"), fill=fill(ALERT))
        sheet.conditional_formatting.add(area, Rule(type="expression", formula=[condition], dxf=look))
