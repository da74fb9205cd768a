"""Tables on the screen and as JSON."""

from __future__ import annotations

import datetime
import json
from collections.abc import Mapping, Sequence
from typing import Any

from costing.report import Table
from costing.report.refused import NoNumber


def show(table: Table) -> None:
    """Print a table, as wide as the terminal allows."""
    import rich.console  # slow to import: only a command that prints a table pays for it

    console = rich.console.Console(highlight=False, markup=False)
    wide = _widths(table, console.width)
    needed = sum(wide) + len(wide) + 1
    if needed > console.width:  # the terminal breaks the lines: a number that is cut would read as another
        console = rich.console.Console(highlight=False, markup=False, width=needed)
    console.print(_grid(table, wide))


def _widths(table: Table, room: int) -> list[int]:
    """Width of each column: what it likes, or where room is short as little as keeps every word whole.

    Headings of numbers are folded first, then the widest texts; names, codes and numbers stay whole.
    """
    likes, least = [], []
    for place, column in enumerate(table.columns):
        texts = [column.title, column.unit, *(as_text(row[place], column.digits) for row in table.rows)]
        likes.append(max(len(line) for text in texts for line in text.split("\n")))
        least.append(max(len(word) for text in texts for word in text.split() or [""]))
    room -= len(likes) + 1
    if sum(likes) > room:
        likes = [
            small if column.digits is not None else like
            for column, like, small in zip(table.columns, likes, least)
        ]
    while sum(likes) > room and likes != least:
        widest = max(range(len(likes)), key=lambda place: (likes[place] > least[place], likes[place]))
        likes[widest] -= 1
    return likes


def _grid(table: Table, wide: Sequence[int]) -> Any:
    """The table for a screen, in columns of these widths."""
    import rich.box
    import rich.table

    grid = rich.table.Table(
        title=table.title,
        caption=table.note,
        box=rich.box.SIMPLE_HEAD,
        padding=(0, 0),
        pad_edge=False,
        title_justify="left",
        caption_justify="left",
    )
    for column, width in zip(table.columns, wide):
        heading = f"{column.title}\n{column.unit}" if column.unit else column.title
        justify: Any = "left" if column.digits is None else "right"
        grid.add_column(heading, justify=justify, overflow="fold", width=width)
    for row in table.rows:
        grid.add_row(*[as_text(cell, table.columns[place].digits) for place, cell in enumerate(row)])
    return grid


def as_text(cell: Any, digits: int | None = None) -> str:
    """One cell as text.

    Examples
    --------
    >>> as_text(1.23456, 2), as_text(None), as_text(None, 2), as_text("scour")
    ('1.23', '', '–', 'scour')
    """
    if isinstance(cell, NoNumber):
        return "–"  # its row says that it is refused
    if cell is None:
        return "" if digits is None else "–"  # no number is not zero
    if isinstance(cell, float):
        return f"{cell:z,.{digits}f}" if digits is not None else f"{cell:g}"
    return str(cell)


def to_json(tables: Sequence[Table]) -> str:
    """Tables as JSON: key -> list of rows, each heading with its unit.

    Numbers stand in full; nothing is rounded but money, which the quote itself rounds.
    """
    return _json(_document(tables))


def documents_to_json(documents: Mapping[str, Sequence[Table]]) -> str:
    """Tables of several things as JSON: name -> key -> list of rows."""
    return _json({name: _document(tables) for name, tables in documents.items()})


def _document(tables: Sequence[Table]) -> dict[str, Any]:
    return {table.key: [dict(zip(headings(table), row)) for row in table.rows] for table in tables}


def _json(document: dict[str, Any]) -> str:
    return json.dumps(document, indent=1, default=_plain, ensure_ascii=False)


def headings(table: Table) -> list[str]:
    """One name for each column, with its unit where it has one."""
    return [f"{column.title} [{column.unit}]" if column.unit else column.title for column in table.columns]


def _plain(value: Any) -> str:
    if isinstance(value, (datetime.date, datetime.datetime)):
        return value.isoformat()
    raise TypeError(f"{value!r} has no JSON form")
