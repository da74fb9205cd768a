"""Enquiries that were refused while others were quoted: they stand in every table, without a number."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from costing.quantities import InputError
from costing.report.table import Table

REFUSED = "refused"
EVERY, EVERY_QUOTED = "all", "all quoted"


class NoNumber(str):
    """What stands where a number would be; a file writes it as an error, so that no sum passes over it."""


NO_NUMBER = NoNumber(REFUSED)


class Refused(NamedTuple):
    """An enquiry that cannot be quoted: its code, and why."""

    code: str
    error: InputError


def with_refused(tables: Sequence[Table], refused: Sequence[Refused]) -> list[Table]:
    """The same tables, with a row for each refused enquiry behind the others.

    Parameters
    ----------
    tables : sequence of Table
        Of the enquiries that are quoted.
    refused : sequence of Refused
        The others.
    """
    return [_with_rows(table, refused) for table in tables] if refused else list(tables)


def quoted_rows(table: Table) -> list[int]:
    """Places of the rows that are of no refused enquiry."""
    return [at for at, row in enumerate(table.rows) if not any(isinstance(cell, NoNumber) for cell in row)]


def _with_rows(table: Table, refused: Sequence[Refused]) -> Table:
    codes = ", ".join(item.code for item in refused)
    if table.key == "run_record":
        return table._replace(rows=[*table.rows, ["enquiries refused, not in this file", codes]])
    first = table.columns[0].title
    rows = [
        [EVERY_QUOTED, *row[1:]] if first.startswith("Enquir") and row[0] == EVERY else row
        for row in table.rows
    ]
    if first != "Enquiry":
        note = f"{table.note} Refused, and not in here: {codes}.".strip()
        return table._replace(note=note, rows=rows)
    if table.key == "checks":
        above = [[item.code, REFUSED, *reason] for item in refused for reason in item.error.told()]
        return table._replace(rows=[*above, *rows])
    numbers = [
        column.digits is not None or any(isinstance(row[at], (int, float)) for row in rows)
        for at, column in enumerate(table.columns)
    ]
    for item in refused:
        row: list[Any] = [NO_NUMBER if number else None for number in numbers]
        row[:2] = [item.code, REFUSED if not numbers[1] else NO_NUMBER]
        rows.append(row)
    return table._replace(rows=rows)
