"""Low, typical and high of every setting that a mill may leave empty."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import QUANTITIES, InputError, check, label, shown
from costing.quantities.units import convert
from costing.reference_data.table_files import Row, cited, folder, rows

NAME = "defaults.csv"
COLUMNS = ("key", "quantity", "value", "unit", "low", "high", "contested", "source", "locator", "note")


class Default(NamedTuple):
    """One assumption with its band and its source.

    Attributes
    ----------
    key : str
        ``<group>.<quantity>``, or ``<group>.<quantity>.<at>`` for one point of several.
    quantity : str
        Name in the table of quantities.
    value, low, high : float
        Typical value and its band, in the house unit.
    contested : bool
        True where mills or books disagree, so that the value ought to be measured.
    source : str
        Key of ``sources.toml``.
    locator : str
        Where in the source; "" for the keys that are no publication.
    note : str
        What else a reader should know.
    """

    key: str
    quantity: str
    value: float
    low: float
    high: float
    contested: bool
    source: str
    locator: str
    note: str

    def text(self) -> str:
        """Name, value and band as people read them, in the usual unit.

        Examples
        --------
        >>> default("indigo.bath_hydrosulfite").text()
        'bath hydrosulfite 2 g/L (1 g/L to 4 g/L)'
        """
        value, low, high = (
            shown(QUANTITIES[self.quantity], item) for item in (self.value, self.low, self.high)
        )
        return f"{label(self.quantity)} {value} ({low} to {high})"


def read_defaults(place: Path) -> Mapping[str, Default]:
    """Read the table of a folder.

    Parameters
    ----------
    place : Path
        Folder of the tables.

    Raises
    ------
    InputError
        At the first row that is refused, naming file and row.
    """
    found: dict[str, Default] = {}
    for row in rows(NAME, COLUMNS, place):
        found[row.cells["key"]] = _default(row, place)
    return MappingProxyType(found)


@lru_cache
def defaults() -> Mapping[str, Default]:
    """All defaults by key.

    Examples
    --------
    >>> round(defaults()["indigo.bath_hydrosulfite"].value * 1000, 6)
    2.0
    """
    return read_defaults(folder())


def default(key: str) -> Default:
    """One default.

    Raises
    ------
    KeyError
        When no default has this key.

    Examples
    --------
    >>> found = default("indigo.hydrosulfite_per_oxygen")
    >>> found.low, found.value, found.high, found.source
    (1.0, 1.2, 2.0, 'tao-2008')
    """
    return defaults()[key]


def _default(row: Row, place: Path) -> Default:
    key, name = row.cells["key"], row.cells["quantity"]
    if name not in QUANTITIES:
        raise InputError(row.where, f"quantity is {name!r}; accepted is a name of the table of quantities")
    parts = key.split(".")
    if len(parts) not in (2, 3) or not parts[0].replace(" ", "_").isidentifier() or parts[1] != name:
        raise InputError(row.where, f"key is {key!r}; accepted is <group>.{name} or <group>.{name}.<at>")
    value, low, high = (_house(row, name, column) for column in ("value", "low", "high"))
    if not low <= value <= high:
        shown = f"{row.cells['low']}, {row.cells['value']}, {row.cells['high']} {row.cells['unit']}".rstrip()
        raise InputError(row.where, f"low, value and high are {shown}; accepted is low <= value <= high")
    contested = row.one_of("contested", ("yes", "no")) == "yes"
    source, locator = cited(row, place)
    return Default(key, name, value, low, high, contested, source, locator, row.cells["note"])


def _house(row: Row, name: str, column: str) -> float:
    number, unit, house = row.number(column), row.cells["unit"], QUANTITIES[name].unit
    try:
        value = convert(number, unit, house)
    except KeyError:
        raise InputError(row.where, f"unit is {unit!r}; accepted is a unit of the unit table") from None
    except ValueError as error:
        raise InputError(row.where, f"unit of {name} is {unit!r}: {error}") from None
    return check(name, value, f"{row.where}, {column}")
