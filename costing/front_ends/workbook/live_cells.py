"""Formulas of the live sheets: each is checked against the registry, drawn, and kept with its result.

A table is one array formula over an explicit range, the only form that every spreadsheet program shows alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from typing import Any, NamedTuple

from openpyxl.cell.cell import Cell
from openpyxl.formatting.rule import Rule
from openpyxl.styles import Border, Font
from openpyxl.styles.cell_style import StyleArray
from openpyxl.styles.differential import DifferentialStyle
from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.formula import ArrayFormula
from openpyxl.worksheet.worksheet import Worksheet

from costing.formulas.cell_function import VARARGS
from costing.formulas.registry import cell_functions
from costing.front_ends.workbook import results_sheets
from costing.front_ends.workbook.live_areas import CHOSEN, OPENED, VERDICT, absolute
from costing.front_ends.workbook.live_results import BookResults, filled_up
from costing.front_ends.workbook.results_sheets import UNIT_OF_NUMBER, UNIT_OF_TEXT, is_numeric
from costing.front_ends.workbook.sheet_drawing import cells, height_for, put
from costing.front_ends.workbook.styles import ALERT, INK, REFUSED, fill, line
from costing.front_ends.workbook.template_files import sheet_file
from costing.report import Table

HEADS = 2  # rows of titles and of units on top of a table
SAID_TO = "K"  # column to which the verdict is marked, as its words run over their neighbours
ALL_WELL = "All checks pass."


class Live(NamedTuple):
    """A table on a sheet: where its array formula stands, and what it shows.

    Attributes
    ----------
    sheet : Worksheet
        Where it stands.
    row, column : int
        Of its first title.
    table : Table
        What it shows in the demo.
    cells : list of list
        The same as cells, titles and units in front, filled up to the last row of the range.
    of_chosen : bool
        False where it is of all enquiries.
    """

    sheet: Worksheet
    row: int
    column: int
    table: Table
    cells: list[list[Any]]
    of_chosen: bool

    @property
    def key(self) -> str:
        """Key of the table."""
        return self.table.key

    @property
    def arguments(self) -> tuple[str, ...]:
        """What the function behind it takes."""
        whose = CHOSEN if self.of_chosen else '""'
        return OPENED, f'"{self.key}"', whose, str(len(self.cells))

    @property
    def first(self) -> int:
        """First row below the heads."""
        return self.row + HEADS

    @property
    def last(self) -> int:
        """Last row of the range."""
        return self.row + len(self.cells) - 1

    def place(self, title: str, unit: str = "") -> int:
        """Place of a column, counted from 0, by its title and a part of its unit."""
        return next(
            place
            for place, column in enumerate(self.table.columns)
            if column.title == title and unit in column.unit
        )

    def letter(self, place: int) -> str:
        """Letters of a column."""
        return get_column_letter(self.column + place)

    def range(self, place: int) -> str:
        """The cells of a column below the heads."""
        letter = self.letter(place)
        return absolute(self.sheet, f"{letter}{self.first}", f"{letter}{self.last}")

    def is_text(self, place: int, other: str) -> str:
        """Which cells of a column say a text, for SUMPRODUCT.

        LibreOffice does not find a text that an add-in gave in an array, neither by = nor by MATCH, unless a
        text is put behind it.
        """
        return f'({self.range(place)}&""={other})'

    def number_of(self, place: int, other: str) -> str:
        """Number of the last row of a column that says a text, counted from the first below the heads."""
        return f"SUMPRODUCT(MAX({self.is_text(place, other)}*(ROW({self.range(place)})-{self.first - 1})))"

    def values(self, place: int) -> list[Any]:
        """What these cells show in the demo."""
        return [row[place] for row in self.cells[HEADS:]]


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
        """A new sheet with its title, its intro and the verdict of the checks; and its first free row."""
        text = sheet_file("live")[key]
        sheet: Worksheet = self.book.create_sheet(text["sheet"])
        put(sheet, 1, 1, text["title"], "sheet title")
        sheet.row_dimensions[1].height = 28
        row = 2
        for words in text["intro"]:
            put(sheet, row, 1, words, "intro line")
            sheet.row_dimensions[row].height = 15
            row += 1
        if text.get("verdict", True):
            self.formula(sheet, row, 1, VERDICT, self.verdict, "intro line")
            self.mark(sheet, f"A{row}:{SAID_TO}{row}", f'LEFT($A{row},{len(ALL_WELL)})<>"{ALL_WELL}"')
            row += 1
        return sheet, row + 1

    @property
    def verdict(self) -> str:
        """What the checks of the demo say; the tests see that they do."""
        kinds = [row[1] for row in self.shown.table("checks", of_chosen=False).rows]
        before, behind = sheet_file("live")["checks"]["well"]
        return f"{ALL_WELL} {before}{kinds.count('warning')}{behind}"

    def formula(
        self, sheet: Worksheet, row: int, column: int, text: str, shown: Any, style: str, number: str = ""
    ) -> Cell:
        """A formula in one cell, with what it shows in the demo."""
        cell = self.look(sheet, row, column, style, number)
        cell.value = f"={text}"
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
                pattern.alignment = UNIT_OF_NUMBER if side == "number" else UNIT_OF_TEXT
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
    ) -> Live:
        """A table: one array formula with titles, units and room for so many rows.

        Parameters
        ----------
        sheet, row, column
            Where its first title stands.
        key : str
            One of `costing.report.TABLES`.
        room : int
            Rows below the heads.
        of_chosen : bool, optional
            False for all enquiries.
        total : str, optional
            Word in the second column that marks a row of totals.
        """
        table = self.shown.table(key, of_chosen=of_chosen)
        shown = filled_up(table, room + HEADS)
        for across, item in enumerate(table.columns):
            numeric = is_numeric(table, across)
            self.look(sheet, row, column + across, "number head" if numeric else "column head")
            self.look(sheet, row + 1, column + across, "unit", side="number" if numeric else "text")
            style = "live number" if numeric else "live line"
            number = results_sheets.number_format(item) if numeric else ""
            for down in range(room):
                self.look(sheet, row + HEADS + down, column + across, style, number)
        live = Live(sheet, row, column, table, shown, of_chosen)
        self.array(sheet, row, column, call("WARP_RESULT_TABLE", *live.arguments), shown)
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

    def ruled(self, sheet: Worksheet, area: str, first: str) -> None:
        """Draw a rule below each row of an area in which a cell holds something."""
        look = DifferentialStyle(border=Border(bottom=line("hair")))
        sheet.conditional_formatting.add(area, Rule(type="expression", formula=[f"LEN({first})>0"], dxf=look))

    def mark(self, sheet: Worksheet, area: str, condition: str) -> None:
        """Make cells bold, on another ground, while a condition holds: what they say must not be missed."""
        look = DifferentialStyle(font=Font(bold=True, color=f"FF{REFUSED}"), fill=fill(ALERT))
        sheet.conditional_formatting.add(area, Rule(type="expression", formula=[condition], dxf=look))


def widths_for(live: Live, narrow: float = 9.0, **wide: float) -> dict[str, float]:
    """Width of each column of a table, by letter, with room for more than the demo holds.

    Parameters
    ----------
    live : Live
        The table.
    narrow : float, optional
        Narrowest column.
    wide : float
        Width of columns by title.
    """
    given = {title.replace("_", " "): width for title, width in wide.items()}
    found = results_sheets.widths_of(live.table, results_sheets.Form())
    return {
        live.letter(place): given.get(column.title, max(narrow, width))
        for place, (column, width) in enumerate(zip(live.table.columns, found, strict=True))
    }


def head_heights(live: Live, widths: dict[str, float]) -> None:
    """Height of the rows of titles and units, in columns of these widths."""
    wide = [widths[live.letter(place)] for place in range(len(live.table.columns))]
    titles = ((item.title, width * 0.95) for item, width in zip(live.table.columns, wide))  # bold is wider
    units = ((item.unit, width) for item, width in zip(live.table.columns, wide))
    live.sheet.row_dimensions[live.row].height = height_for(*titles)
    live.sheet.row_dimensions[live.row + 1].height = height_for(*units)
