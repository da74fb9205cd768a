"""Which column of a log is what: said by the user, kept beside the log, or named as we name it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import tomllib

from costing.front_ends.production_log.number_forms import COMMA, DAY_FIRST, MONTH_FIRST, POINT, shown
from costing.front_ends.whole_file import write_whole
from costing.quantities import InputError, folded, listed, meant
from costing.quantities.units import measure

OPTION = "--columns"
COLUMNS = ("date", "enquiry", "style", "recipe", "range", "amount", "unit", "point")
WORDS = {"decimal": (POINT, COMMA), "dates": (DAY_FIRST, MONTH_FIRST)}
SHEET = "sheet"
ACCEPTED = (*COLUMNS, *WORDS, SHEET)
LARGEST_TOML = 100_000


class Placed(NamedTuple):
    """Where the columns of a log stand.

    Attributes
    ----------
    at : dict
        Column -> its place, counted from 0.
    unit : str
        Of the amounts, where the heading says it; "" where a column or the cells do.
    """

    at: dict[str, int]
    unit: str


def asked_columns(text: str | None, log: Path) -> dict[str, str]:
    """The map that the user gives, else the one kept beside the log, else none.

    Raises
    ------
    InputError
        A word that is no column, one that is given twice, or a file that is no such map.

    Examples
    --------
    >>> asked_columns("date=Datum, enquiry=Auftrag, amount=kg", Path("log.csv"))
    {'date': 'Datum', 'enquiry': 'Auftrag', 'amount': 'kg'}
    """
    if text is None:
        return _kept(kept_beside(log))
    found: dict[str, str] = {}
    for part in re.split(r",(?=\s*[a-z]+\s*=)", text):
        name, sign, value = part.partition("=")
        if not sign or not value.strip():
            raise InputError(OPTION, f"{shown(part.strip())} names no column; accepted is such as date=Datum")
        key = _key(name, OPTION)
        if key in found:
            raise InputError(OPTION, f"{key} is given twice; accepted is once")
        found[key] = value.strip()
    return _checked(found, OPTION)


def kept_beside(log: Path) -> Path:
    """The file that keeps the columns of a log."""
    return log.with_name(f"{log.stem}.columns.toml")


def keep(columns: Mapping[str, str], log: Path, overwrite: bool = False) -> Path:
    """Write the columns beside their log."""
    path = kept_beside(log)
    lines = [f"{name} = {json.dumps(value, ensure_ascii=False)}" for name, value in columns.items()]
    text = "\n".join(["# Columns of the production log beside this file.", "", "[columns]", *lines, ""])
    write_whole(
        lambda: text.encode(), path, what="a map of columns", suffixes=(".toml",), overwrite=overwrite
    )
    return path


def _kept(path: Path) -> dict[str, str]:
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
    return _checked({_key(name, path.name): value for name, value in table.items()}, path.name)


def _key(name: str, where: str) -> str:
    key = meant(name.strip(), ACCEPTED)
    if key is None:
        raise InputError(
            where, f"{shown(name.strip())} is no column; there are: {listed(ACCEPTED, name, most=12)}"
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


def place_columns(heading: Sequence[Any], columns: Mapping[str, str]) -> Placed:
    """Find the columns in the heading of a log.

    Parameters
    ----------
    heading : sequence
        Cells of the first row.
    columns : mapping
        As the user names them; others are looked for by our names.

    Raises
    ------
    InputError
        A column that is not there, or is there twice.
    """
    titles = [folded(cell) if isinstance(cell, str) else "" for cell in heading]
    there = listed([str(cell).strip() for cell in heading if isinstance(cell, str) and cell.strip()], most=20)
    at: dict[str, int] = {}
    for name in COLUMNS:
        title = folded(columns.get(name, name))
        count = titles.count(title)
        if count > 1:
            raise InputError(
                "row 1", f"the heading {shown(title)} stands there {count} times; accepted is once"
            )
        if count:
            at[name] = titles.index(title)
        elif name in columns:
            raise InputError(
                "row 1",
                f"no column {shown(columns[name])}; there are: {there}; accepted is a first row with the "
                "headings, no title above them",
            )
    by_parts = all(name in at for name in ("style", "recipe", "range"))
    missing = [name for name in ("date", "amount") if name not in at]
    if "enquiry" not in at and not by_parts:
        missing.append("enquiry (or style, recipe and range)")
    if missing:
        raise InputError(
            "row 1",
            f"no column for {', '.join(missing)}; there are: {there}; accepted is {OPTION} "
            '"date=Datum, enquiry=Auftrag, amount=kg" with your headings',
        )
    return Placed(at, _unit_of_heading(str(heading[at["amount"]])))


def _unit_of_heading(title: str) -> str:
    """The unit at the end of a heading, else at its start; "" where there is none.

    Examples
    --------
    >>> [_unit_of_heading(text) for text in ("kg", "Menge [t]", "length, m", "kg yarn", "Menge")]
    ['kg', 't', 'm', 'kg', '']
    """
    words = [word for word in re.split(r"[\s,;:()\[\]_/]+", title) if word]
    ends = [words[-1], words[0]] if words else []
    return next((word for word in ends if is_amount(word)), "")


def is_amount(unit: str) -> bool:
    """Whether a unit is one of mass or of length."""
    return _dimension(unit) in (_dimension("kg"), _dimension("m"))


def is_mass(unit: str) -> bool:
    """Whether a unit is one of mass."""
    return _dimension(unit) == _dimension("kg")


def _dimension(unit: str) -> str | None:
    try:
        return measure(unit)[0]
    except KeyError:
        return None
