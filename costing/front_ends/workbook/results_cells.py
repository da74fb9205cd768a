"""Cells of the results: each value with its look, and text that stays text whatever it begins with."""

from __future__ import annotations

from copy import copy
from typing import Any, NamedTuple

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, Cell
from openpyxl.styles import Alignment, NamedStyle
from openpyxl.styles.cell_style import StyleArray
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.formula_text import FORMULA_SIGNS
from costing.front_ends.workbook import styles
from costing.report.refused import NoNumber

NOT_AVAILABLE = "#N/A"  # the error that makes a sum over it an error
ALERT_GOES_ON = "alert goes on"  # the fill of an alert, for the cells that its text runs over


class Look(NamedTuple):
    """How a cell looks.

    Attributes
    ----------
    style : str
        One of the named styles.
    number : str
        Number format, where it is not the style's own.
    layout : Alignment or None
        Alignment, where it is not the style's own.
    """

    style: str
    number: str = ""
    layout: Alignment | None = None


class Pen:
    """Writes cells, and finds each look only once, because a ledger has many cells.

    Parameters
    ----------
    book : Workbook
        Takes the named styles.
    """

    def __init__(self, book: Workbook) -> None:
        self.book = book
        self._styles: dict[tuple[Look, bool], StyleArray] = {}
        styles.add_styles(book)
        book.add_named_style(NamedStyle(name=ALERT_GOES_ON, fill=styles.fill(styles.ALERT)))

    def write(self, sheet: Worksheet, row: int, column: int, value: Any, look: Look) -> Cell:
        """Write a text, a number, a date or nothing."""
        cell = sheet.cell(row, column)
        assert isinstance(cell, Cell)
        if isinstance(value, NoNumber):
            cell.value, cell.data_type = NOT_AVAILABLE, "e"
        elif isinstance(value, str) and value:
            cell.value = ILLEGAL_CHARACTERS_RE.sub("", value)
            cell.data_type = "s"  # a text that begins with = is no formula, and "#N/A" is no error
        elif value != "":
            cell.value = value
        # Last, because a date brings a number format of its own.
        cell._style = copy(self._style(sheet, look, is_quoted(value)))  # type: ignore[attr-defined]
        return cell

    def style_number(self, sheet: Worksheet, look: Look, quoted: bool) -> int:
        """Number under which the file knows a look, for rows that are written without cells."""
        cell = Cell(sheet, 1, 1)  # of no place on the sheet
        cell._style = self._style(sheet, look, quoted)  # type: ignore[attr-defined]
        return int(cell.style_id)

    def _style(self, sheet: Worksheet, look: Look, quoted: bool) -> StyleArray:
        key = look, quoted
        if key not in self._styles:
            cell = Cell(sheet, 1, 1)
            cell.style = look.style
            if look.number:
                cell.number_format = look.number
            if look.layout:
                cell.alignment = look.layout
            if quoted:
                cell.quotePrefix = True
            self._styles[key] = copy(cell._style)  # type: ignore[attr-defined]
        return self._styles[key]


def is_quoted(value: Any) -> bool:
    """Whether a value is text that a spreadsheet program would take for a formula, were it typed.

    Examples
    --------
    >>> is_quoted("=1+1"), is_quoted("-"), is_quoted("E-101"), is_quoted(-1.0)
    (True, True, False, False)
    """
    return isinstance(value, str) and value.startswith(FORMULA_SIGNS)
