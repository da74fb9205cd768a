"""A sheet of the book as a grid of plain values: what a cell holds, where it is, where heads and rows are."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from costing.book.quantity_cell import is_empty
from costing.quantities import InputError, folded, listed

Place = tuple[int, int]  # row and column, counted from 1

# What Excel hands to a program for an error; the same numbers as the library xlwings translates.
EXCEL_ERRORS = {
    -2146826288: "#NULL!",
    -2146826281: "#DIV/0!",
    -2146826273: "#VALUE!",
    -2146826265: "#REF!",
    -2146826259: "#NAME?",
    -2146826252: "#NUM!",
    -2146826246: "#N/A",
}


class Given(NamedTuple):
    """What one cell holds.

    Attributes
    ----------
    value : object
        None for an empty cell or one that holds only blanks.
    where : str
        Sheet and cell.
    shown_as_percent : bool
        True where the spreadsheet program shows it as a percentage.
    serial_dates : bool
        True where a date comes as the number of its day.
    """

    value: Any
    where: str
    shown_as_percent: bool = False
    serial_dates: bool = False

    @property
    def is_empty(self) -> bool:
        """True where nothing was given."""
        return self.value is None


def column_letters(column: int) -> str:
    """The letters of a column.

    Examples
    --------
    >>> column_letters(1), column_letters(26), column_letters(27), column_letters(703)
    ('A', 'Z', 'AA', 'AAA')
    """
    letters = ""
    while column:
        column, place = divmod(column - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters


class Sheet:
    """A sheet of the book.

    Parameters
    ----------
    title : str
        Its name.
    cells : mapping
        (row, column) -> value: a number, a text, a truth value or a date. Empty cells may be left out.
    percents : collection, optional
        Places of cells that the spreadsheet program shows as a percentage.
    unsaved : collection, optional
        Places of formulas that were saved without their result.
    serial_dates : bool, optional
        True where a date comes as the number of its day.
    """

    def __init__(
        self,
        title: str,
        cells: Mapping[Place, Any],
        *,
        percents: Collection[Place] = (),
        unsaved: Collection[Place] = (),
        serial_dates: bool = False,
    ) -> None:
        self.title = title
        self._cells = {place: value for place, value in cells.items() if not is_empty(value)}
        self._percents = percents
        self._unsaved = unsaved
        self._serial_dates = serial_dates
        # Formatted but empty cells may reach a million rows down; only filled ones are looked at.
        filled = {*self._cells, *unsaved}
        self.rows = sorted({row for row, _ in filled})
        self.columns = sorted({column for _, column in filled})
        self._keys: dict[int, list[tuple[int, str]]] = {}
        for (row, column), value in sorted(self._cells.items(), key=lambda item: item[0]):
            if isinstance(value, str):
                self._keys.setdefault(row, []).append((column, folded(value)))

    @classmethod
    def from_rows(cls, title: str, rows: Any, first_row: int = 1, first_column: int = 1) -> Sheet:
        """A sheet out of a block of cells, as a spreadsheet program hands it to a formula.

        Of a cell is accepted: a number, whole or not, as int or float; a text; True or False; a date, or
        the whole number of its day, counted from 1899-12-30 as the programs do; nothing, or a text of
        blanks, for an empty cell. An error may come as its text (``#REF!``, ``Err:502``), as the number
        that Excel has for it, or as not-a-number; it is refused where it is read. How a cell is shown is
        not handed over: 88 % typed into a cell of the format percent arrives as 0.88.

        Parameters
        ----------
        title : str
            Name of the sheet.
        rows : sequence of sequences
            The cells, row by row; rows may be of unlike length.
        first_row, first_column : int, optional
            Where the block begins on the sheet, counted from 1.

        Raises
        ------
        InputError
            What is no block of cells.

        Examples
        --------
        >>> Sheet.from_rows("Styles", (("", "code"), (None, 1200.0)), first_row=3).given(4, 2)
        Given(value=1200.0, where='Styles!B4', shown_as_percent=False, serial_dates=True)
        """
        block = isinstance(rows, (list, tuple)) and all(isinstance(row, (list, tuple)) for row in rows)
        if not block:
            raise InputError(
                title,
                f"is {str(rows)[:40]!r}, not a block of cells; accepted is the range of the whole sheet",
            )
        cells = {
            (number, column): EXCEL_ERRORS.get(value, value) if type(value) is int else value
            for number, row in enumerate(rows, start=first_row)
            for column, value in enumerate(row, start=first_column)
            if value is not None and value != ""
        }
        return cls(title, cells, serial_dates=True)

    def where(self, row: int, column: int) -> str:
        """Sheet and cell."""
        return f"{self.title}!{column_letters(column)}{row}"

    def given(self, row: int, column: int) -> Given:
        """What a cell holds.

        Raises
        ------
        InputError
            A formula that was saved without its result.
        """
        place = row, column
        value = self._cells.get(place)
        if value is None and place in self._unsaved:
            raise InputError(
                self.where(row, column),
                "holds a formula that was saved without its result; accepted is a value: open the book "
                "in a spreadsheet program and save it once",
            )
        return Given(value, self.where(row, column), place in self._percents, self._serial_dates)

    def text(self, row: int, column: int) -> str:
        """What a cell of the frame says; "" where it is empty."""
        return str(self._cells.get((row, column), "")).strip()

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
        heads = {folded(head): head for head in wanted}
        best: tuple[int, dict[str, int]] = (0, {})
        for row, keys in self._keys.items():
            found: dict[str, int] = {}
            for column, key in keys:
                head = heads.get(key)
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
        """Filled rows of a table, down to the heads of the next one."""
        last = min((row for row in other_heads if row > head_row), default=None)
        return (row for row in self.rows if row > head_row and (last is None or row < last))


def find_sheets(sheets: Mapping[str, Sheet], wanted: Iterable[str]) -> dict[str, Sheet]:
    """The sheets of the book by the names wanted; case and blanks do not count.

    Raises
    ------
    InputError
        One is missing.
    """
    by_key = {folded(name): sheet for name, sheet in sheets.items()}
    found = {}
    for name in wanted:
        sheet = by_key.get(folded(name))
        if sheet is None:
            there = listed(sheets, most=40)
            raise InputError("", f"the sheet {name!r} is missing or was renamed; there are: {there}")
        found[name] = sheet
    return found
