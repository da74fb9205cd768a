"""Find the tables and read their rows, so that a fault names the file and the row."""

from __future__ import annotations

import csv
import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from io import StringIO
from pathlib import Path
from typing import NamedTuple

from costing.quantities import InputError

SOURCES = "sources.toml"


@lru_cache
def folder() -> Path:
    """The folder of the tables: inside the installed package, else beside it in a clone.

    Raises
    ------
    InputError
        When neither exists.
    """
    package = Path(__file__).resolve().parents[1]
    for place in (package / "reference_tables", package.parent / "reference_tables"):
        if place.is_dir():
            return place
    raise InputError("reference_tables", f"the folder is missing; it belongs in {package}")


class Row(NamedTuple):
    """One row of a table, with the place it stands in.

    Attributes
    ----------
    cells : dict
        Column -> text, without blanks around it.
    where : str
        File and row, as a spreadsheet counts rows.
    """

    cells: dict[str, str]
    where: str

    def text(self, column: str) -> str:
        """The text of a column that must not be empty."""
        text = self.cells[column]
        if not text:
            raise InputError(self.where, f"{column} is empty; accepted is a text")
        return text

    def number(self, column: str) -> float:
        """The number of a column."""
        text = self.cells[column]
        try:
            value = float(text)
        except ValueError:
            raise InputError(self.where, f"{column} is {text!r}; accepted is a number") from None
        if not math.isfinite(value):
            raise InputError(self.where, f"{column} is {text!r}; accepted is a finite number")
        return value

    def one_of(self, column: str, accepted: Sequence[str]) -> str:
        """The word of a column, out of those accepted."""
        text = self.cells[column]
        if text not in accepted:
            raise InputError(self.where, f"{column} is {text!r}; accepted is one of: {', '.join(accepted)}")
        return text


def rows(name: str, columns: Sequence[str], place: Path) -> Iterator[Row]:
    """The rows of one table whose first column is a key that occurs once.

    Parameters
    ----------
    name : str
        File name.
    columns : sequence of str
        The columns that the first line must name, in their order.
    place : Path
        Folder of the tables.

    Raises
    ------
    InputError
        A missing file, other columns, a row that is too short or too long, a key that is empty or
        occurs twice.
    """
    found: dict[str, int] = {}
    lines = csv.reader(StringIO(_text(name, place), newline=""))
    header = next(lines, [])
    if header != list(columns):
        raise InputError(f"{name} row 1", f"columns are {','.join(header)}; accepted is {','.join(columns)}")
    for line in lines:
        where = f"{name} row {lines.line_num}"
        if len(line) != len(columns):
            raise InputError(where, f"has {len(line)} cells; accepted is {len(columns)}")
        row = Row(dict(zip(columns, (cell.strip() for cell in line))), where)
        key = row.text(columns[0])
        if key in found:
            raise InputError(where, f"{columns[0]} {key!r} stands in row {found[key]} already")
        found[key] = lines.line_num
        yield row


@lru_cache
def source_keys(place: Path) -> frozenset[str]:
    """The keys of all sources, read line by line.

    The road into a cell knows no reader of that format, and needs the keys only.

    Parameters
    ----------
    place : Path
        Folder of the tables.
    """
    lines = _text(SOURCES, place).splitlines()
    return frozenset(line.strip()[1:-1] for line in lines if line.startswith("["))


def cited(row: Row, place: Path, column: str = "source") -> tuple[str, str]:
    """The source and the locator of a row.

    Raises
    ------
    InputError
        When the source is not in the list of sources.
    """
    key = row.cells[column]
    if key not in source_keys(place):
        raise InputError(row.where, f"{column} is {key!r}; accepted is a key of {SOURCES}")
    return key, row.cells["locator"]


def fingerprint(place: Path | None = None) -> str:
    """A short mark of the content of all tables: one other byte, another mark.

    Line ends do not count, so a clone on any system gives the same mark.

    Parameters
    ----------
    place : Path, optional
        Folder of the tables; those of the package when left out.

    Examples
    --------
    >>> len(fingerprint())
    12
    """
    import hashlib  # a cell never asks for the mark, and need not wait for this

    mark = hashlib.sha256()
    for path in sorted((place or folder()).iterdir(), key=lambda item: item.name):
        if path.suffix in (".csv", ".toml"):
            content = path.read_bytes().replace(b"\r\n", b"\n")
            mark.update(f"{path.name} {len(content)}\n".encode() + content)
    return mark.hexdigest()[:12]


def _text(name: str, place: Path) -> str:
    try:
        return (place / name).read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        raise InputError(name, f"the table is missing; it belongs in {place}") from None
    except UnicodeDecodeError as error:
        raise InputError(name, f"is not UTF-8 text ({error.reason} at byte {error.start})") from None
