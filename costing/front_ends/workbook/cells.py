"""One sheet as the reader sees it: what a cell holds, where it is, and where the heads and rows are."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.quantity_cell import is_error, read_quantity
from costing.quantities import CHOICES, QUANTITIES, InputError
from costing.quantities.checking import check_choice

LONGEST_TEXT = 200
LONGEST_CODE = 60


class Given(NamedTuple):
    """What one cell holds.

    Attributes
    ----------
    value : object
        As the file holds it; None for an empty cell or one that holds only blanks.
    where : str
        Sheet and cell.
    shown_as_percent : bool
        True where the spreadsheet program shows it as a percentage.
    """

    value: Any
    where: str
    shown_as_percent: bool = False

    @property
    def is_empty(self) -> bool:
        """True where nothing was given."""
        return self.value is None


def key_of(text: object) -> str:
    """A text as it is compared: case, blanks and underscores do not count.

    Examples
    --------
    >>> key_of("  Bath_indigo ") == key_of("bath  indigo")
    True
    """
    return " ".join(str(text).replace("_", " ").split()).casefold()


class Sheet:
    """A sheet of the book.

    Parameters
    ----------
    values : Worksheet
        With the values of the cells.
    formulas : Worksheet or None
        With their formulas.
    """

    def __init__(self, values: Worksheet, formulas: Worksheet | None) -> None:
        self.title = values.title
        self._values = values
        self._formulas = formulas
        # Formatted but empty cells may reach a million rows down; only filled ones are looked at.
        filled = [
            (row, column)
            for sheet in (values, formulas)
            if sheet is not None
            for (row, column), cell in sheet._cells.items()
            if cell.value is not None
        ]
        self.last_row = max((row for row, _ in filled), default=0)
        self.last_column = max((column for _, column in filled), default=0)

    def where(self, row: int, column: int) -> str:
        """Sheet and cell."""
        return f"{self.title}!{get_column_letter(column)}{row}"

    def given(self, row: int, column: int) -> Given:
        """What a cell holds.

        Raises
        ------
        InputError
            A formula that was saved without its result.
        """
        cell = self._values.cell(row, column)
        value: Any = cell.value
        if isinstance(value, str) and not value.strip():
            value = None
        if value is None and self._formulas is not None:
            formula = self._formulas.cell(row, column)
            if formula.data_type == "f":
                raise InputError(
                    self.where(row, column),
                    "holds a formula that was saved without its result; accepted is a value: open the book "
                    "in a spreadsheet program and save it once",
                )
        return Given(value, self.where(row, column), "%" in str(cell.number_format or ""))

    def text(self, row: int, column: int) -> str:
        """What a cell of the frame says; "" where it is empty."""
        value = self._values.cell(row, column).value
        return "" if value is None else str(value).strip()

    def find_heads(self, wanted: Sequence[str], needed: Iterable[str]) -> tuple[int, dict[str, int]]:
        """Find the row of the heads of a table.

        Parameters
        ----------
        wanted : sequence of str
            Heads that the table may have.
        needed : iterable of str
            Heads that it must have.

        Returns
        -------
        int, dict
            The row, and head -> column.

        Raises
        ------
        InputError
            A needed head is nowhere, or a head stands twice.
        """
        keys = {key_of(head): head for head in wanted}
        best: tuple[int, dict[str, int]] = (0, {})
        for row in range(1, self.last_row + 1):
            found: dict[str, int] = {}
            for column in range(1, self.last_column + 1):
                head = keys.get(key_of(self.text(row, column)))
                if head is None:
                    continue
                if head in found and len(found) > 1:
                    raise InputError(
                        self.where(row, column),
                        f"the head {head!r} stands twice, also in {self.where(row, found[head])}; "
                        "accepted is once",
                    )
                found.setdefault(head, column)
            if len(found) > len(best[1]):
                best = row, found
        missing = [head for head in needed if head not in best[1]]
        if missing:
            place = f"{self.title}, row {best[0]}" if best[0] else self.title
            raise InputError(
                place, f"the column {missing[0]!r} is missing; accepted are the heads: {', '.join(wanted)}"
            )
        return best

    def rows_below(self, head_row: int, other_heads: Iterable[int] = ()) -> Iterator[int]:
        """Rows of a table, down to the heads of the next one."""
        last = min((row for row in other_heads if row > head_row), default=self.last_row + 1)
        yield from range(head_row + 1, last)


def find_sheets(values: Workbook, formulas: Workbook | None, wanted: Iterable[str]) -> Mapping[str, Sheet]:
    """The sheets of the book by name.

    Raises
    ------
    InputError
        One is missing.
    """
    titles = {key_of(title): title for title in values.sheetnames}
    found = {}
    for name in wanted:
        title = titles.get(key_of(name))
        if title is None or not isinstance(values[title], Worksheet):
            there = ", ".join(values.sheetnames)
            raise InputError("", f"the sheet {name!r} is missing; there are: {there}")
        found[name] = Sheet(values[title], formulas[title] if formulas is not None else None)
    return found


def text_of(cell: Given, what: str, longest: int = LONGEST_TEXT) -> str:
    """A code or a text; "" where nothing was given. A whole number is taken as its digits.

    Raises
    ------
    InputError
        An error value, a truth value, a date, or a text that is too long.

    Examples
    --------
    >>> text_of(Given(1200.0, "Styles!I5"), "code")
    '1200'
    """
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, bool):
        raise InputError(cell.where, f"{what} is {str(value).upper()}; accepted is a text")
    if isinstance(value, (datetime.date, datetime.time, datetime.timedelta)):
        raise InputError(cell.where, f"{what} is the date or time {value}; accepted is a text")
    if isinstance(value, float) and value == int(value):
        value = int(value)
    text = " ".join(str(value).split())
    if is_error(text):
        raise InputError(cell.where, f"{what} is the error value {text}; accepted is a text")
    if len(text) > longest:
        raise InputError(cell.where, f"{what} has {len(text)} letters; accepted are up to {longest}")
    return text


def date_of(cell: Given, what: str) -> datetime.date | None:
    """A date; None where nothing was given.

    Raises
    ------
    InputError
        Anything but a date.
    """
    value = cell.value
    if value is None:
        return None
    if isinstance(value, datetime.datetime):
        return value.date()
    if isinstance(value, datetime.date):
        return value
    raise InputError(
        cell.where,
        f"{what} is {value!r}, not a date; accepted is a real date, such as 2025-01-31 typed in a date cell",
    )


def value_of(name: str, cell: Given, unit: object, called: str = "") -> Any:
    """What a cell means: a checked number in the house unit, a checked word, or a text; None where empty."""
    if cell.is_empty:
        return None
    if name in CHOICES:
        return check_choice(name, text_of(cell, called or key_of(name)), cell.where)
    if name in QUANTITIES:
        return read_quantity(
            cell.value, unit, name, cell.where, called=called, shown_as_percent=cell.shown_as_percent
        )
    return text_of(cell, called or key_of(name), LONGEST_CODE)
