"""Make a checked setting from what a sheet, a file or a cell holds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import MISSING, fields
from typing import Any, NamedTuple, TypeVar

from costing.quantities import CHOICES, QUANTITIES, InputError, check
from costing.quantities.checking import check_choice, label
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


def default_key(groups: Sequence[str], name: str) -> str:
    """Key of the default of a field, or "" where the table has none."""
    return next((f"{group}.{name}" for group in groups if f"{group}.{name}" in defaults()), "")


def check_fields(item: Any, where: str = "") -> None:
    """Check every field of a frozen dataclass against the quantity or choice of its name.

    Raises
    ------
    InputError
        At the first field that is refused.
    """
    for field in fields(item):
        value = getattr(item, field.name)
        if field.name in QUANTITIES:
            if value is None and field.default is None:
                continue
            check(field.name, value, where)
        elif field.name in CHOICES:
            check_choice(field.name, value, where)


def build(
    kind: type[T],
    owner: str,
    groups: Sequence[str],
    entries: Mapping[str, Entry],
    assumptions: list[Assumption],
    fixed: Mapping[str, Any] = {},
) -> T:
    """Build a setting, taking the table's typical value where a cell is empty and a default exists.

    Parameters
    ----------
    kind : type
        The frozen dataclass.
    owner : str
        What is being built, for the error text.
    groups : sequence of str
        First parts of the keys of its defaults in ``defaults.csv``, the first that has one counts.
    entries : mapping
        Field -> what was given.
    assumptions : list
        Takes one `Assumption` for every default used.
    fixed : mapping, optional
        Fields that are already checked.

    Raises
    ------
    InputError
        A field is missing and has no default, or is refused.
    """
    table = defaults()
    values: dict[str, Any] = dict(fixed)
    for field in fields(kind):  # type: ignore[arg-type]
        name = field.name
        if name in values:
            continue
        entry = entries.get(name, Entry(None, ""))
        where = entry.where or owner
        if entry.value is None or entry.value == "":
            key = default_key(groups, name)
            if key:
                values[name] = table[key].value
                assumptions.append(Assumption(owner, key))
            elif field.default is not MISSING:
                values[name] = field.default
            elif name in QUANTITIES:
                check(name, None, where)
            else:
                accepted = f"; accepted is one of: {', '.join(CHOICES[name])}" if name in CHOICES else ""
                raise InputError(where, f"{label(name)} is empty{accepted}")
        elif name in QUANTITIES:
            values[name] = check(name, entry.value, where)
        elif name in CHOICES:
            values[name] = check_choice(name, entry.value, where)
        elif isinstance(entry.value, str):
            values[name] = entry.value.strip()
        else:
            values[name] = str(entry.value)
    return kind(**values)
