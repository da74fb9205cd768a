"""Read the sheets with a row for each thing. A column is found by its head, never by its place."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from costing.book.cells import LONGEST_CODE, LONGEST_TEXT, date_of, text_of
from costing.book.layout import MOST_STEPS, Column, Table, accepted_words
from costing.book.quantity_cell import read_number, read_quantity
from costing.book.sheet import Given, Sheet
from costing.quantities import CHOICES, InputError, folded, listed, meant
from costing.quantities.checking import check_choice

# Lists of codes are checked against the mill's own sheets, not against a list of words.
CODE_SHEETS = ("style_codes", "recipe_codes", "range_codes", "point_codes", "enquiry_codes")
MOST_WORDS = 40  # of a list that the user cannot lengthen: all of it
OWN_CODES = (*CODE_SHEETS, "route_codes", "currency_codes", "material_codes")


@dataclass(frozen=True)
class TableRow:
    """One filled row of a table."""

    cells: dict[str, Given]
    columns: dict[str, Column]
    code: str
    where: str

    def text(self, name: str) -> str:
        """A text, a code or a word of a list; "" where empty.

        Raises
        ------
        InputError
            Empty where it is needed, or not in the list.
        """
        column, cell = self.columns[name], self.cells[name]
        what = column.head.lower()
        text = text_of(cell, what, LONGEST_CODE if column.kind in ("code", "choice") else LONGEST_TEXT)
        if not text:
            if column.needed and column.list not in CODE_SHEETS:  # whose codes are told by who knows them
                raise InputError(cell.where, f"{what} is empty; accepted is {_accepted(column)}")
            return ""
        if column.kind == "offered":  # a list of the usual ones, whose reader knows what else will do
            return text
        if column.list in CHOICES:
            return check_choice(column.list, text, cell.where)
        if column.list and column.list not in OWN_CODES:
            known = meant(text, accepted_words(column.list))
            if known is None:
                raise InputError(cell.where, f"{what} is {text!r}; accepted is {_accepted(column, text)}")
            return known
        return text

    def whole(self, name: str, most: int = MOST_STEPS) -> int:
        """A whole number from 1 on.

        Raises
        ------
        InputError
            Anything else.
        """
        cell, what = self.cells[name], self.columns[name].head.lower()
        accepted = f"a whole number from 1 to {most}"
        number = read_number(cell.value, what, cell.where, accepted)
        if not 1 <= number <= most or number != int(number):
            raise InputError(cell.where, f"{what} is {number:g}; accepted is {accepted}")
        return int(number)

    def number(self, name: str, unit_name: str = "", unit: str = "", quantity: str = "") -> float | None:
        """A number in the house unit; None where empty.

        Parameters
        ----------
        name : str
            The column.
        unit_name : str, optional
            The column of its unit; "" for a unit that is given.
        unit : str, optional
            That unit.
        quantity : str, optional
            Name of the quantity, where it is not the column's own.

        Raises
        ------
        InputError
            Refused, or empty where it is needed.
        """
        column, cell = self.columns[name], self.cells[name]
        if cell.is_empty and not column.needed:
            return None
        given_unit = self.cells[unit_name].value if unit_name else unit
        return read_quantity(
            cell.value,
            given_unit,
            quantity or column.quantity,
            cell.where,
            called=column.head.lower(),
            shown_as_percent=cell.shown_as_percent,
        )

    def date(self, name: str) -> datetime.date | None:
        """A date; None where empty."""
        return date_of(self.cells[name], self.columns[name].head.lower())

    def at(self, name: str) -> str:
        """Sheet and cell of a column."""
        return self.cells[name].where


def _accepted(column: Column, near: str = "") -> str:
    if column.list in CHOICES:
        return f"one of: {listed(CHOICES[column.list])}"
    if column.list and column.list not in OWN_CODES and column.kind != "offered":
        return f"one of: {listed(accepted_words(column.list), near, most=MOST_WORDS)}"
    return column.meaning or "a text"


def read_table(sheet: Sheet, table: Table, others: Sequence[Table] = ()) -> Iterator[TableRow]:
    """The filled rows of a table.

    Parameters
    ----------
    sheet : Sheet
        The sheet.
    table : Table
        Its layout; the first column is the code.
    others : sequence of Table, optional
        The other tables of the sheet, where a table ends.

    Raises
    ------
    InputError
        A needed head is missing, a filled row has no code, or a formula has no result.
    """
    heads = [column.head for column in table.columns]
    head_row, places = sheet.find_heads(heads, [column.head for column in table.columns if not column.late])
    other_rows = [sheet.find_heads([c.head for c in other.columns], ())[0] for other in others]
    columns = {column.name: column for column in table.columns}
    first = table.columns[0]
    # What stands above the heads of the next table is no row of this one.
    above = {folded(text) for other in others for text in (other.heading, other.columns[0].meaning)}
    for row in sheet.rows_below(head_row, other_rows):
        if folded(sheet.text(row, places[first.head])) in above - {""}:
            continue
        cells = {
            name: sheet.given(row, places[column.head])
            if column.head in places
            else Given(None, f"{sheet.title}, row {row}")
            for name, column in columns.items()
        }
        filled: list[Any] = [cell for cell in cells.values() if not cell.is_empty]
        if not filled:
            continue
        code = text_of(cells[first.name], first.head.lower(), LONGEST_CODE)
        if not code:
            raise InputError(
                cells[first.name].where,
                f"{first.head.lower()} is empty, but {filled[0].where} holds {filled[0].value!r}; "
                f"accepted is {first.meaning or 'a code'}, or an empty row",
            )
        yield TableRow(cells, columns, code, cells[first.name].where)


def refuse_twice(rows: Iterable[TableRow], what: str) -> list[TableRow]:
    """The rows, after no code was found to stand twice."""
    seen: dict[str, str] = {}
    found = []
    for row in rows:
        key = folded(row.code)
        if key in seen:
            raise InputError(
                row.where,
                f"the {what} {row.code!r} stands twice, also in {seen[key]}; accepted is a code of its own "
                "for each",
            )
        seen[key] = row.where
        found.append(row)
    return found
