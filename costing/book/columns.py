"""Read the sheets with a column for each style, recipe or range.

A row is found by the texts in its columns Step and Quantity, never by its place.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from costing.book.cells import LONGEST_CODE, text_of, value_of
from costing.book.layout import (
    GENERAL,
    HIGH,
    LOW,
    MEANING,
    QUANTITY,
    SOURCE,
    TYPICAL,
    UNIT,
    row_text,
)
from costing.book.sheet import Given, Sheet
from costing.quantities import InputError, folded, listed
from costing.settings.building import Entry

HEADS = (QUANTITY, UNIT, MEANING, LOW, TYPICAL, HIGH, SOURCE)


class Filled(NamedTuple):
    """One filled column: its code, what it is, and where."""

    code: str
    description: str
    where: str
    column: int


class ColumnReader:
    """Reads one sheet by rows and columns.

    Parameters
    ----------
    sheet : Sheet
        The sheet.
    kind : str
        What a column is: style, recipe or range.
    part_head : str
        Head of the first column: Step, or Part where it only groups the rows.
    wanted : mapping
        Part -> names of its rows, of all rows that the sheet may have.
    """

    def __init__(self, sheet: Sheet, kind: str, part_head: str, wanted: Mapping[str, Iterable[str]]) -> None:
        self.sheet = sheet
        self.kind = kind
        self.wanted = wanted
        self._by_part = part_head == "Step"
        needed = [QUANTITY, UNIT] + ([part_head] if self._by_part else [])
        self._head_row, self._heads = sheet.find_heads((part_head, *HEADS), needed)
        self._part_column = self._heads.get(part_head, 0)
        self._wanted = {
            self._key(part, row_text(name)): (part, name) for part, names in wanted.items() for name in names
        }
        self._parts = {folded(part): part for part in wanted}
        self._rows = self._find_rows()
        self.columns = self._find_columns()
        self._refuse_unknown_rows()

    def _key(self, part: str, quantity: str) -> tuple[str, str]:
        return (folded(part) if self._by_part else "", folded(quantity))

    def _find_rows(self) -> dict[tuple[str, str], int]:
        found: dict[tuple[str, str], int] = {}
        for row in self.sheet.rows_below(self._head_row):
            quantity = self.sheet.text(row, self._heads[QUANTITY])
            if not quantity:
                continue
            part = self.sheet.text(row, self._part_column) if self._by_part else ""
            key = self._key(part, quantity)
            if key in found:
                raise InputError(
                    self.sheet.where(row, self._heads[QUANTITY]),
                    f"the row {self._named(part, quantity)} stands twice, also in row {found[key]}; "
                    "accepted is once",
                )
            found[key] = row
        return found

    def _named(self, part: str, quantity: str) -> str:
        return f"{part!r} {quantity!r}" if self._by_part else repr(quantity)

    def _row(self, part: str, name: str) -> int:
        return self._rows.get(self._key(part, row_text(name)), 0)

    def _find_columns(self) -> list[Filled]:
        codes = self._row(GENERAL, "code")
        if not codes:
            raise InputError(
                self.sheet.title,
                f"the row {self._named(GENERAL, 'code')} is missing; accepted is one with the codes",
            )
        described = self._row(GENERAL, "description")
        found: list[Filled] = []
        seen: dict[str, str] = {}
        for column in self.sheet.columns:
            if column in self._heads.values():
                continue
            cell = self.sheet.given(codes, column)
            code = text_of(cell, "code", LONGEST_CODE)
            if not code:
                self._refuse_values_without_code(column, cell)
                continue
            if folded(code) in seen:
                raise InputError(
                    cell.where,
                    f"the code {code!r} stands twice, also in {seen[folded(code)]}; accepted is a code "
                    f"of its own for each {self.kind}",
                )
            seen[folded(code)] = cell.where
            text = text_of(self.sheet.given(described, column), "description") if described else ""
            found.append(Filled(code, text, cell.where, column))
        return found

    def _refuse_values_without_code(self, column: int, cell: Given) -> None:
        head = folded(self.sheet.text(self._head_row, column))
        if head not in ("", self.kind):
            return  # a column of notes
        for row in self._rows.values():
            given = self.sheet.given(row, column)
            if not given.is_empty:
                raise InputError(
                    cell.where,
                    f"the code of a {self.kind} is empty, but {given.where} holds {given.value!r}; "
                    "accepted is a code, or an empty column",
                )

    def _refuse_unknown_rows(self) -> None:
        """A row that nothing reads, but that holds values, is a row misspelt."""
        known = {*self._wanted, self._key(GENERAL, "code"), self._key(GENERAL, "description")}
        for (part, _), row in ((key, row) for key, row in self._rows.items() if key not in known):
            given = next(
                (cell for item in self.columns if not (cell := self.sheet.given(row, item.column)).is_empty),
                None,
            )
            if given is None:
                continue
            quantity = self.sheet.text(row, self._heads[QUANTITY])
            if self._by_part and part not in self._parts:
                step = self.sheet.text(row, self._part_column)
                raise InputError(
                    self.sheet.where(row, self._part_column),
                    f"the step {step!r} is in no route; accepted is one of: "
                    f"{listed(self._parts.values(), step)}",
                )
            names = [row_text(name) for key, (_, name) in self._wanted.items() if key[0] == part]
            raise InputError(
                self.sheet.where(row, self._heads[QUANTITY]),
                f"the quantity {quantity!r} is not one of this {'step' if self._by_part else 'sheet'}; "
                f"accepted is one of: {listed(names, quantity)}",
            )

    def entry(self, item: Filled, part: str, name: str) -> Entry:
        """What a column says of a quantity, in the house unit.

        Raises
        ------
        InputError
            From the cell that is refused, and where the row is missing. An empty cell is not refused: whoever
            needs it asks. Nor is a step without any row: a route may have been given a new one.
        """
        row = self._row(part, name)
        if not row and self.has(part):
            # An empty cell is a choice, a row that is gone an accident: it would turn into a typical value.
            raise InputError(
                self.sheet.title,
                f"the row {self._named(part, row_text(name))} is missing; accepted is the row, with an empty "
                "cell where the typical value will do",
            )
        if not row:
            return Entry(None, f"{self.sheet.title}, no row {self._named(part, row_text(name))}")
        cell = self.sheet.given(row, item.column)
        unit = self.sheet.given(row, self._heads[UNIT])
        return Entry(value_of(name, cell, unit.value), cell.where)

    def has(self, part: str) -> bool:
        """True where the sheet has rows of a part: then it has to have all of them."""
        return not self._by_part or any(key[0] == folded(part) for key in self._rows)

    def entries(self, item: Filled, part: str, names: Iterable[str]) -> dict[str, Entry]:
        """What a column says of several quantities."""
        return {name: self.entry(item, part, name) for name in names}
