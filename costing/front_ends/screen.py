"""Tables on the screen and as JSON."""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from costing.report import Table
from costing.report.refused import NoNumber

HYPHEN = re.compile(
    r"(?<=[a-z]{2}-)(?=\w)"
)  # behind a hyphen between words; never a sign, a date or an exponent

_STEERING = re.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]")


def show(table: Table) -> None:
    """Print a table, as wide as the terminal allows."""
    import rich.console  # slow to import: only a command that prints a table pays for it

    console = rich.console.Console(highlight=False, markup=False)
    edges = True
    wide = _widths(table, console.width - 2)
    needed = sum(wide) + len(wide) + 1
    if needed > console.width:  # then no letter of room for the edges
        edges = False
        wide = _widths(table, console.width)
        needed = sum(wide) + len(wide) - 1
    if needed > console.width:  # the terminal breaks the lines: a number that is cut would read as another
        console = rich.console.Console(highlight=False, markup=False, width=needed)
    console.print(_grid(table, wide, edges))
    if not edges:
        console.print()


def _widths(table: Table, room: int) -> list[int]:
    """Width of each column: what it likes, or where room is short as little as keeps every word whole.

    Headings of numbers are folded first, then the widest texts; names, codes and numbers stay whole. Where
    that is not enough, a word is folded behind its hyphens.
    """
    room -= len(table.columns) - 1
    found = _fitted(table, room, str.split)
    return found if sum(found) <= room else _fitted(table, room, _pieces)


def _fitted(table: Table, room: int, pieces_of: Callable[[str], list[str]]) -> list[int]:
    likes, least = [], []
    for place, column in enumerate(table.columns):
        texts = [column.title, column.unit, *(as_text(row[place], column.digits) for row in table.rows)]
        likes.append(max(len(line) for text in texts for line in text.split("\n")))
        least.append(max(len(piece) for text in texts for piece in pieces_of(text) or [""]))
    if sum(likes) > room:
        likes = [
            small if column.digits is not None else like
            for column, like, small in zip(table.columns, likes, least)
        ]
    while sum(likes) > room and likes != least:
        widest = max(range(len(likes)), key=lambda place: (likes[place] > least[place], likes[place]))
        likes[widest] -= 1
    return likes


def _pieces(text: str) -> list[str]:
    """What of a text stands on one line at least: its words, and of words with hyphens the parts."""
    return [piece for word in text.split() for piece in HYPHEN.split(word)]


def _folded(text: str, width: int) -> str:
    """A text with a new line behind the hyphens of each word that is wider than its column."""
    return re.sub(r"\S+", lambda word: _in_parts(word[0]) if len(word[0]) > width else word[0], text)


def _in_parts(word: str) -> str:
    return "\n".join(HYPHEN.split(word))


def _grid(table: Table, wide: Sequence[int], edges: bool) -> Any:
    """The table for a screen, in columns of these widths."""
    import rich.box
    import rich.table

    apart = "" if edges else "\n"  # without edges no empty line parts the table from its title and note
    grid = rich.table.Table(
        title=printable(table.title) + apart,
        caption=apart + printable(table.note),
        box=rich.box.SIMPLE_HEAD,
        padding=(0, 0),
        pad_edge=False,
        show_edge=edges,
        title_justify="left",
        caption_justify="left",
    )
    for column, width in zip(table.columns, wide):
        heading = f"{column.title}\n{column.unit}" if column.unit else column.title
        justify: Any = "left" if column.digits is None else "right"
        grid.add_column(heading, justify=justify, overflow="fold", width=width)
    for row in table.rows:
        texts = [as_text(cell, column.digits) for cell, column in zip(row, table.columns)]
        grid.add_row(*[_folded(text, width) for text, width in zip(texts, wide)])
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
    return printable(str(cell))


def printable(text: str) -> str:
    """A text for a screen: a sign that would steer the terminal is shown as one that is unknown.

    Examples
    --------
    >>> printable("RED" + chr(27) + "[2J")
    'RED\ufffd[2J'
    """
    return _STEERING.sub("\ufffd", text)


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
