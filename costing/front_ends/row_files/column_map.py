"""Which column of a file is what: said by the user, kept beside the file, or named as we name it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import tomllib

from costing.front_ends.row_files.number_forms import COMMA, DAY_FIRST, MONTH_FIRST, OPTION, POINT, shown
from costing.front_ends.whole_file import write_whole
from costing.quantities import InputError, folded, listed, meant
from costing.quantities.units import measure

WORDS = {"decimal": (POINT, COMMA), "dates": (DAY_FIRST, MONTH_FIRST)}
SHEET = "sheet"
LARGEST_TOML = 100_000


class RowForm(NamedTuple):
    """What the rows of a kind of file hold.

    Attributes
    ----------
    what : str
        The kind of file.
    columns : tuple of str
        Our names of its columns.
    needed : tuple
        What must be there: for each a tuple of ways, each way the columns that it takes.
    measured : dict
        Column of amounts -> house units of what they may be; a heading may end in such a unit.
    example : str
        A map of columns, to be shown.
    option : str
        That gives the map on the command line.
    """

    what: str
    columns: tuple[str, ...]
    needed: tuple[tuple[tuple[str, ...], ...], ...]
    measured: Mapping[str, tuple[str, ...]]
    example: str
    option: str = OPTION

    @property
    def accepted(self) -> tuple[str, ...]:
        """Every word that a map of columns may give a meaning."""
        return (*self.columns, *WORDS, SHEET)


class Placed(NamedTuple):
    """Where the columns of a file stand.

    Attributes
    ----------
    at : dict
        Column -> its place, counted from 0.
    units : dict
        Column of amounts -> its unit, where the heading says it; "" where a column or the cells do.
    """

    at: dict[str, int]
    units: dict[str, str]


def asked_columns(text: str | None, path: Path, form: RowForm) -> dict[str, str]:
    """The map that the user gives, else the one kept beside the file, else none.

    Raises
    ------
    InputError
        A word that is no column, one that is given twice, or a file that is no such map.

    Examples
    --------
    >>> form = RowForm("a log", ("date", "amount"), ((("date",),), (("amount",),)), {}, "date=Datum")
    >>> asked_columns("date=Datum, amount=kg", Path("log.csv"), form)
    {'date': 'Datum', 'amount': 'kg'}
    """
    if text is None:
        return _kept(kept_beside(path), form)
    found: dict[str, str] = {}
    for part in re.split(r",(?=\s*[a-z]+\s*=)", text):
        name, sign, value = part.partition("=")
        if not sign or not value.strip():
            raise InputError(
                form.option, f"{shown(part.strip())} names no column; accepted is such as {form.example}"
            )
        key = _key(name, form.option, form)
        if key in found:
            raise InputError(form.option, f"{key} is given twice; accepted is once")
        found[key] = value.strip()
    return _checked(found, form.option)


def kept_beside(path: Path) -> Path:
    """The file that keeps the columns of another."""
    return path.with_name(f"{path.stem}.columns.toml")


def keep(columns: Mapping[str, str], of: Path, form: RowForm, overwrite: bool = False) -> Path:
    """Write the columns beside their file."""
    path = kept_beside(of)
    lines = [f"{name} = {json.dumps(value, ensure_ascii=False)}" for name, value in columns.items()]
    text = "\n".join([f"# Columns of the {form.what} beside this file.", "", "[columns]", *lines, ""])
    write_whole(
        lambda: text.encode(), path, what="a map of columns", suffixes=(".toml",), overwrite=overwrite
    )
    return path


def _kept(path: Path, form: RowForm) -> dict[str, str]:
    if not path.is_file():
        return {}
    try:
        if path.stat().st_size > LARGEST_TOML:
            raise InputError(path.name, f"is longer than {LARGEST_TOML} bytes; accepted is a map of columns")
        table = tomllib.loads(path.read_text("utf-8")).get("columns")
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise InputError(path.name, f"cannot be read as TOML: {error}") from error
    if not isinstance(table, dict) or not all(isinstance(value, str) for value in table.values()):
        raise InputError(path.name, 'has no table [columns] of texts; accepted is such as date = "Datum"')
    return _checked({_key(name, path.name, form): value for name, value in table.items()}, path.name)


def _key(name: str, where: str, form: RowForm) -> str:
    key = meant(name.strip(), form.accepted)
    if key is None:
        raise InputError(
            where, f"{shown(name.strip())} is no column; there are: {listed(form.accepted, name, most=20)}"
        )
    return key


def _checked(found: dict[str, str], where: str) -> dict[str, str]:
    for name, words in WORDS.items():
        if name in found:
            word = meant(found[name], words)
            if word is None:
                raise InputError(where, f"{name} is {shown(found[name])}; accepted is {' or '.join(words)}")
            found[name] = word
    return found


def place_columns(heading: Sequence[Any], columns: Mapping[str, str], form: RowForm) -> Placed:
    """Find the columns in the heading of a file.

    Parameters
    ----------
    heading : sequence
        Cells of the first row.
    columns : mapping
        As the user names them; others are looked for by our names.
    form : RowForm
        What the file is to hold.

    Raises
    ------
    InputError
        A column that is not there, or is there twice.
    """
    titles = [folded(cell) if isinstance(cell, str) else "" for cell in heading]
    there = listed([str(cell).strip() for cell in heading if isinstance(cell, str) and cell.strip()], most=20)
    at: dict[str, int] = {}
    for name in form.columns:
        title = folded(columns.get(name, name))
        found = [place for place, held in enumerate(titles) if held == title]
        if not found and name in form.measured and name not in columns:
            found = [place for place, held in enumerate(titles) if _is_with_unit(held, name, form)]
        if len(found) > 1:
            raise InputError(
                "row 1", f"the heading {shown(title)} stands there {len(found)} times; accepted is once"
            )
        if found:
            at[name] = found[0]
        elif name in columns:
            raise InputError(
                "row 1",
                f"no column {shown(columns[name])}; there are: {there}; accepted is a first row with the "
                "headings, no title above them",
            )
    missing = [_ways(ways) for ways in form.needed if not any(all(map(at.__contains__, way)) for way in ways)]
    if missing:
        raise InputError(
            "row 1",
            f"no column for {', '.join(missing)}; there are: {there}; accepted is {form.option} "
            f'"{form.example}" with your headings',
        )
    units = {
        name: _unit_of_heading(str(heading[at[name]]), form.measured[name])
        for name in form.measured
        if name in at
    }
    return Placed(at, units)


def _ways(ways: Sequence[Sequence[str]]) -> str:
    """The first way, and in brackets the others."""
    told = [" and ".join([", ".join(way[:-1]), way[-1]]) if len(way) > 1 else way[0] for way in ways]
    return f"{told[0]} (or {' or '.join(told[1:])})" if told[1:] else told[0]


def _is_with_unit(title: str, name: str, form: RowForm) -> bool:
    """Whether a heading is our name with a unit behind it, as ``length [m]``."""
    rest = title.removeprefix(name)
    return rest != title and folded(_unit_of_heading(rest, form.measured[name])) == rest.strip(" ,;:()[]_/")


def _unit_of_heading(title: str, house_units: Sequence[str]) -> str:
    """The unit at the end of a heading, else at its start; "" where there is none.

    Examples
    --------
    >>> [_unit_of_heading(text, ("kg", "m")) for text in ("kg", "Menge [t]", "length, m", "kg yarn", "Menge")]
    ['kg', 't', 'm', 'kg', '']
    """
    ends: list[str] = []
    for signs in (r"[\s,;:()\[\]_]+", r"[\s,;:()\[\]_/]+"):  # a unit may have a / of its own
        words = [word for word in re.split(signs, title) if word]
        ends += [words[-1], words[0]] if words else []
    return next((word for word in ends if measures(word, house_units)), "")


def measures(unit: str, house_units: Sequence[str]) -> bool:
    """Whether a unit measures what one of the house units measures."""
    try:
        return measure(unit)[0] in [measure(house)[0] for house in house_units]
    except KeyError:
        return False
