"""Make a checked setting from what a sheet, a file or a cell holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import MISSING, fields
from functools import cache
from typing import Any, NamedTuple, TypeVar

from costing.quantities import CHOICES, QUANTITIES, InputError, check, listed, quantity
from costing.quantities.checking import check_choice, describe, label, refuse_all
from costing.reference_data import defaults

T = TypeVar("T")


class Entry(NamedTuple):
    """One value with the place it came from.

    Attributes
    ----------
    value : object
        Number in the house unit, word, code, or None where the cell is empty.
    where : str
        Sheet and cell, or the name of the file or argument.
    """

    value: Any
    where: str = ""


class Assumption(NamedTuple):
    """A default taken because nothing was given."""

    owner: str
    key: str


@cache
def default_key(groups: tuple[str, ...], name: str) -> str:
    """Key of the default of a field, or "" where the table has none."""
    return next((f"{group}.{name}" for group in groups if f"{group}.{name}" in defaults()), "")


def check_fields(item: Any, where: str = "") -> None:
    """Check every field of a frozen dataclass against the quantity or choice of its name.

    Raises
    ------
    InputError
        At the first field that is refused.
    """
    for name, default, kind in _plan(type(item)):  # type: ignore[arg-type]
        if kind == "number":
            value = getattr(item, name)
            if value is not None or default is not None:
                check(name, value, where)
        elif kind == "choice":
            check_choice(name, getattr(item, name), where)


@cache
def _plan(kind: type) -> tuple[tuple[str, Any, str], ...]:
    """Name, default and sort of each field of a dataclass: number, choice or text."""

    def sort(name: str) -> str:
        return "number" if name in QUANTITIES else "choice" if name in CHOICES else "text"

    return tuple((field.name, field.default, sort(field.name)) for field in fields(kind))


def _counts(kind: type, name: str, values: Mapping[str, Any]) -> bool:
    """True where a default is to be taken: always, or only where another field has a word or is filled."""
    if name not in getattr(kind, "ONLY_WITH", {}):
        return True
    other, word = kind.ONLY_WITH[name]  # type: ignore[attr-defined]
    given = values.get(other)  # which may be missing itself
    return bool(given == word if word else given)


EMPTY = Entry(None, "")


@contextmanager
def at_its_cell(entries: Mapping[str, Entry], owner: str) -> Iterator[None]:
    """Give what a setting refuses the cell of the row that its sentence begins with, else its owner.

    Parameters
    ----------
    entries : mapping
        Field -> what was given.
    owner : str
        What is being built.
    """

    def cell(error: InputError) -> str:
        rows = [name for name in entries if error.message.startswith(label(name))]
        return entries[max(rows, key=len)].where or owner if rows else owner

    try:
        yield
    except InputError as error:
        raise error.at(cell) from error


def build(
    kind: type[T],
    owner: str,
    groups: tuple[str, ...],
    entries: Mapping[str, Entry],
    assumptions: dict[Assumption, None],
    fixed: Mapping[str, Any] = {},
) -> T:
    """Build a setting, taking the table's typical value where a cell is empty and a default exists.

    Parameters
    ----------
    kind : type
        The frozen dataclass.
    owner : str
        What is being built, for the error text.
    groups : tuple of str
        First parts of the keys of its defaults in ``defaults.csv``, the first that has one counts.
    entries : mapping
        Field -> what was given.
    assumptions : dict
        Takes one `Assumption` for every default used, in order and each once.
    fixed : mapping, optional
        Fields that are already checked.

    Raises
    ------
    InputError
        Fields are missing and have no default, all of them at once, or one is refused.
    """
    values, missing = given_values(kind, owner, groups, entries, assumptions, fixed)
    refuse_all(list(missing.values()))
    return kind(**values)


def given_values(
    kind: type,
    owner: str,
    groups: tuple[str, ...],
    entries: Mapping[str, Entry],
    assumptions: dict[Assumption, None],
    fixed: Mapping[str, Any] = {},
) -> tuple[dict[str, Any], dict[str, InputError]]:
    """The checked values of a setting, and the refusal of each field that is missing.

    Parameters
    ----------
    kind, owner, groups, entries, assumptions, fixed
        As of `build`.

    Raises
    ------
    InputError
        What is given is refused.
    """
    table = defaults()
    missing: dict[str, InputError] = {}
    values: dict[str, Any] = dict(fixed)
    for name, default, sort in _plan(kind):
        if name in values:
            continue
        entry = entries.get(name, EMPTY)
        where = entry.where or owner
        if entry.value is None or entry.value == "":
            key = default_key(groups, name)
            if key and _counts(kind, name, values):
                values[name] = table[key].value
                assumptions[Assumption(owner, key)] = None
            elif default is not MISSING:
                values[name] = default
            elif sort == "number":
                missing[name] = InputError(
                    where, f"{label(name)} is empty; accepted is {describe(quantity(name))}"
                )
            else:
                accepted = f"one of: {listed(CHOICES[name])}" if sort == "choice" else "a code of the book"
                missing[name] = InputError(where, f"{label(name)} is empty; accepted is {accepted}")
        elif sort == "number":
            values[name] = check(name, entry.value, where)
        elif sort == "choice":
            values[name] = check_choice(name, entry.value, where)
        elif isinstance(entry.value, str):
            values[name] = entry.value.strip()
        else:
            values[name] = str(entry.value)
    return values, missing
