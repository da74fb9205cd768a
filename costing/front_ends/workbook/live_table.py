"""A table on a live sheet: where its array formula stands, how others find its cells, and its widths."""

from __future__ import annotations

from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import results_sheets
from costing.front_ends.workbook.live_areas import CHOSEN, OPENED, absolute
from costing.front_ends.workbook.sheet_drawing import LINE_HEIGHT
from costing.report import Table

HEADS = 2  # rows of titles and of units on top of a table


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

    @property
    def filled(self) -> int:
        """How many rows the demo fills."""
        return len(self.table.rows)

    def printed(self, rows: int, last: str = "") -> str:
        """The cells of its sheet down to a row of it and up to a column, left out: its last one."""
        place = self.place(last) if last else len(self.table.columns) - 1
        return f"A1:{self.letter(place)}{self.first + rows - 1}"

    def values(self, place: int) -> list[Any]:
        """What these cells show in the demo."""
        return [row[place] for row in self.cells[HEADS:]]


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
    titles = [(item.title, width / 1.08) for item, width in zip(live.table.columns, wide)]  # bold is wider
    units = [(item.unit, width) for item, width in zip(live.table.columns, wide)]
    for row, texts in ((live.row, titles), (live.row + 1, units)):
        live.sheet.row_dimensions[row].height = LINE_HEIGHT * results_sheets.lines_of(texts) + 4
