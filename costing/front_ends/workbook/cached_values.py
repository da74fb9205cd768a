"""Put results behind the formulas of a workbook, so that a reader that calculates nothing shows them.

A formula that a library wrote has no result in the file, and whoever only reads the file sees an empty cell.
LibreOffice without the extension shows what stands here as well, but for array formulas, which it works out
anew and does not know.
"""

from __future__ import annotations

import contextlib
import datetime
import io
import math
import re
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple, Union
from xml.sax.saxutils import escape

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE
from openpyxl.utils.cell import coordinate_to_tuple, get_column_letter, rows_from_range
from openpyxl.utils.datetime import to_excel

from costing.front_ends.workbook.xml_parts import Token, sheet_parts, spliced, tokens, with_parts
from costing.quantities import InputError

Moment = Union[datetime.datetime, datetime.date, datetime.time, datetime.timedelta]
Value = Union[float, int, bool, str, Moment, None]
Place = tuple[int, int]  # row, column

ERRORS = ("#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A")
LONGEST_TEXT = 32_767  # that a cell holds

_SIZE = re.compile(rb"""(<dimension\s+ref=")([A-Z0-9:]+)""")
_KIND = re.compile(rb"""\st\s*=\s*(?:"[^"]*"|'[^']*')""")


class _Cell(NamedTuple):
    """Where a cell stands in the part of its sheet: its first tag, its end, and what is in it."""

    begin: int
    behind_tag: int
    end: int
    inside: list[tuple[Token, int]]  # formula or value: first tag, place behind the last one

    @property
    def formula(self) -> Token | None:
        """First tag of the formula."""
        return next((tag for tag, _ in self.inside if tag.name == "f"), None)


class _Row(NamedTuple):
    """Where a row stands in the part of its sheet, and its cells by column."""

    begin: int
    behind_tag: int
    end: int
    cells: dict[int, _Cell]


def formula_cells(content: bytes) -> dict[str, list[str]]:
    """Sheet -> cells that show the result of a formula, also those behind the first of an array formula.

    Raises
    ------
    InputError
        The file is damaged.
    """
    with _opened(content) as book:
        found = {}
        for title, name in sheet_parts(book).items():
            rows, _ = _rows_of(book.read(name))
            found[title] = [_name(place) for place in _formula_places(rows)]
        return found


def with_values(source: bytes | Path, values: Mapping[str, Mapping[str, Value]]) -> bytes:
    """A workbook with results behind its formulas, every other part and cell as it is.

    Parameters
    ----------
    source : bytes or Path
        The workbook, as a library writes it. Dates count from 1900.
    values : mapping
        Sheet -> cell -> result, of every cell of that sheet that shows the result of a formula; text that
        is the name of an error stands for the error, None for an empty text.

    Raises
    ------
    InputError
        A sheet that is not there, a cell without formula, a formula without result, or a result that no cell
        can hold; the file is damaged.
    """
    content = source if isinstance(source, bytes) else source.read_bytes()
    with _opened(content) as book:
        names = sheet_parts(book)
        changed = {}
        for title, results in values.items():
            if title not in names:
                raise InputError(title, f"is no sheet of the workbook; there are: {', '.join(names)}")
            part = book.read(names[title])
            changed[names[title]] = _filled_part(part, title, results)
    return with_parts(content, changed)


@contextlib.contextmanager
def _opened(content: bytes) -> Iterator[zipfile.ZipFile]:
    """The zip of a workbook; what fails in it is a damaged file, in one line."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as book:
            yield book
    except InputError:
        raise
    except Exception as error:  # a damaged part fails in many ways
        raise InputError("workbook", "is damaged; accepted is an .xlsx workbook") from error


def _rows_of(part: bytes) -> tuple[dict[int, _Row], int]:
    """The rows of a sheet by number, and the place of the tag that ends them all."""
    rows: dict[int, _Row] = {}
    opened: dict[str, Token] = {}
    cells: dict[int, _Cell] = {}
    inside: list[tuple[Token, int]] = []
    end_of_rows = 0
    for token in tokens(part):
        if token.kind == "start":
            opened[token.name] = token
            if token.name == "row":
                cells = {}
            elif token.name == "c":
                inside = []
        elif token.kind == "end":
            tag = opened.get(token.name, token)
            if token.name in ("f", "v", "is"):
                inside.append((tag, token.end))
            elif token.name == "c":
                _, column = coordinate_to_tuple(tag.attributes["r"])
                cells[column] = _Cell(tag.begin, tag.end, token.end, inside)
            elif token.name == "row":
                if not part.startswith(b"<row", tag.begin):
                    raise InputError("workbook", "marks its tags; accepted is one as openpyxl writes it")
                rows[int(tag.attributes["r"])] = _Row(tag.begin, tag.end, token.end, cells)
            elif token.name == "sheetData":
                end_of_rows = token.begin
    return rows, end_of_rows


def _formula_places(rows: Mapping[int, _Row]) -> list[Place]:
    """The cells that show the result of a formula, row by row."""
    found = set()
    for number, row in rows.items():
        for column, cell in row.cells.items():
            if cell.formula is not None:
                found.add((number, column))
                if cell.formula.attributes.get("t") == "array":
                    found.update(_area(cell.formula.attributes["ref"]))
    return sorted(found)


def _area(reference: str) -> Iterator[Place]:
    for cells in rows_from_range(reference):
        yield from map(coordinate_to_tuple, cells)


def _filled_part(part: bytes, title: str, results: Mapping[str, Value]) -> bytes:
    """The part of a sheet with its results."""
    rows, end_of_rows = _rows_of(part)
    places = _formula_places(rows)
    given = {coordinate_to_tuple(name): value for name, value in results.items()}
    for place in given.keys() - set(places):
        raise InputError(f"{title}!{_name(place)}", "holds no formula; accepted are results of formulas")
    for place in places:
        if place not in given:
            raise InputError(f"{title}!{_name(place)}", "holds a formula and was given no result")
    by_row: dict[int, dict[int, bytes]] = {}
    for (number, column), value in given.items():
        by_row.setdefault(number, {})[column] = _stored(value, f"{title}!{_name((number, column))}")
    changes = _wider(part, places)
    for number, stored in sorted(by_row.items()):
        row = rows.get(number)
        if row is None:  # below the first cell of an array formula
            behind = min((other.begin for line, other in rows.items() if line > number), default=end_of_rows)
            row = _Row(behind, behind, behind, {})
        changes.append((row.begin, row.end, _filled_row(part, number, row, stored)))
    return spliced(part, changes)


def _filled_row(part: bytes, number: int, row: _Row, stored: Mapping[int, bytes]) -> bytes:
    """A row with results; `stored` has, by column, a tag of a cell with its kind, and the result."""
    start = part[row.begin : row.behind_tag].replace(b"/>", b">") or b'<row r="%d">' % number
    pieces = [start]
    for column in sorted({*row.cells, *stored}):
        cell = row.cells.get(column)
        if cell is None:
            pieces.append(b'<c r="%b"' % _name((number, column)).encode() + stored[column] + b"</c>")
        elif column in stored:
            pieces.append(_filled_cell(part, cell, stored[column]))
        else:
            pieces.append(part[cell.begin : cell.end])
    return b"".join([*pieces, b"</row>"])


def _filled_cell(part: bytes, cell: _Cell, stored: bytes) -> bytes:
    """A cell with its own tag and formula, and a result in place of what it had."""
    tag = _KIND.sub(b"", part[cell.begin : cell.behind_tag]).rstrip(b"/> ")
    formula = b"".join(part[inner.begin : end] for inner, end in cell.inside if inner.name == "f")
    kind, _, result = stored.partition(b">")
    return tag + kind + b">" + formula + result + b"</c>"


def _stored(value: Value, where: str) -> bytes:
    """The rest of the tag of a cell, and its result, as the file has them."""
    if isinstance(value, bool):
        return b' t="b"><v>%d</v>' % value
    if isinstance(value, (datetime.date, datetime.time, datetime.timedelta)):
        return _stored(float(to_excel(value)), where)  # type: ignore[no-untyped-call]
    if isinstance(value, int):
        return b"><v>%d</v>" % value
    if isinstance(value, float):
        if not math.isfinite(value):
            raise InputError(where, f"the result is {value}; accepted is a number that a cell can hold")
        return b"><v>%b</v>" % float.__repr__(value).removesuffix(".0").encode()
    text = value or ""
    if len(text) > LONGEST_TEXT or ILLEGAL_CHARACTERS_RE.search(text):
        raise InputError(where, f"the result is a text that no cell can hold: {text[:40]!r}")
    kind = b"e" if text in ERRORS else b"str"
    return b' t="%b"><v>%b</v>' % (kind, escape(text, {"\r": "&#13;"}).encode())


def _wider(part: bytes, places: Sequence[Place]) -> list[tuple[int, int, bytes]]:
    """What the sheet says of its size, with the places in it."""
    said = _SIZE.search(part)
    if said is None or not places:
        return []
    corners = [place for corner in said[2].decode().split(":") for place in [coordinate_to_tuple(corner)]]
    rows, columns = zip(*corners, *places)
    size = f"{_name((min(rows), min(columns)))}:{_name((max(rows), max(columns)))}"
    return [(said.start(2), said.end(2), size.encode())]


def _name(place: Place) -> str:
    row, column = place
    return f"{get_column_letter(column)}{row}"
