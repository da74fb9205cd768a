"""Substances with a formula, usual commercial forms, cautions and published ranges."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import QUANTITIES, UNITS, InputError, check, to_house
from costing.reference_data.table_files import Row, cited, folder, rows

SUBSTANCES = ("substances.csv", ("key", "name", "formula", "role", "note"))
MATERIALS = (
    "materials.csv",
    (
        *("key", "name", "substance", "role", "dye_class", "strength", "strength_low", "strength_high"),
        *(
            "remainder",
            "density",
            "alkali",
            "sulfide",
            "own_oxygen_demand",
            "own_sodium",
            "own_sulfur",
            "own_nitrogen",
        ),
        *("caution", "source", "locator", "note"),
    ),
)
CAUTIONS = ("cautions.csv", ("key", "name", "caution", "defer", "source", "locator", "note"))
RANGES = ("published_ranges.csv", ("key", "what", "low", "high", "unit", "source", "locator", "note"))
REMAINDERS = ("water", "inert")


class Substance(NamedTuple):
    """A pure substance; its molar mass follows from its formula."""

    key: str
    name: str
    formula: str
    role: str
    note: str


class CommercialForm(NamedTuple):
    """A product as it is usually sold: a starting row for a mill's own list.

    Attributes
    ----------
    key, name, role : str
        What it is and what it is for.
    dye_class : str
        Class of a dye; "" for anything else.
    substance : str
        Key of the active substance, or "" where it has no formula; then the ``own_`` figures hold for
        the active part.
    strength, strength_low, strength_high : float
        Active part of the delivered mass [fraction]; reduced dye is counted as indigo.
    remainder : str
        What the rest is: "water" or "inert" matter.
    density : float or None
        Density of a liquid [kg/L]; None for a solid.
    alkali : float
        Caustic that comes with the product, of the delivered mass [kg/kg].
    sulfide : float
        Sulfide, as its sulfur, that comes with the product, of the delivered mass [kg/kg].
    own_oxygen_demand, own_sodium, own_sulfur, own_nitrogen : float or None
        In the active part [kg/kg]; None where the substance says it.
    caution : str
        Key of the caution.
    source, locator, note : str
        Where the strength and the density come from.
    """

    key: str
    name: str
    substance: str
    role: str
    strength: float
    strength_low: float
    strength_high: float
    remainder: str
    density: float | None
    alkali: float
    dye_class: str
    sulfide: float
    own_oxygen_demand: float | None
    own_sodium: float | None
    own_sulfur: float | None
    own_nitrogen: float | None
    caution: str
    source: str
    locator: str
    note: str


class Caution(NamedTuple):
    """The usual caution for a group of materials, and to whom it defers."""

    key: str
    name: str
    caution: str
    defer: str
    source: str
    locator: str
    note: str


class PublishedRange(NamedTuple):
    """A range to compare a result with, in the unit in which it is given.

    It counts as published only where its source is a publication.
    """

    key: str
    what: str
    low: float
    high: float
    unit: str
    source: str
    locator: str
    note: str


def read_substances(place: Path) -> Mapping[str, Substance]:
    """Read the substances of a folder."""
    name, columns = SUBSTANCES
    found = {
        row.cells["key"]: Substance(
            row.text("key"), row.text("name"), row.text("formula"), row.text("role"), row.cells["note"]
        )
        for row in rows(name, columns, place)
    }
    return MappingProxyType(found)


def read_materials(place: Path) -> Mapping[str, CommercialForm]:
    """Read the commercial forms of a folder.

    Raises
    ------
    InputError
        An unknown substance, caution or source, or a figure that is refused.
    """
    known, warned = read_substances(place), read_cautions(place)
    name, columns = MATERIALS
    found: dict[str, CommercialForm] = {}
    for row in rows(name, columns, place):
        if row.cells["substance"]:
            row.one_of("substance", list(known))
        row.one_of("caution", list(warned))
        found[row.cells["key"]] = _form(row, place)
    return MappingProxyType(found)


def read_cautions(place: Path) -> Mapping[str, Caution]:
    """Read the cautions of a folder."""
    name, columns = CAUTIONS
    found: dict[str, Caution] = {}
    for row in rows(name, columns, place):
        source, locator = cited(row, place)
        key, title, caution, defer = (row.text(column) for column in columns[:4])
        found[key] = Caution(key, title, caution, defer, source, locator, row.cells["note"])
    return MappingProxyType(found)


def read_published_ranges(place: Path) -> Mapping[str, PublishedRange]:
    """Read the ranges of a folder.

    Raises
    ------
    InputError
        An unknown unit or source, or a low end above the high end.
    """
    name, columns = RANGES
    found: dict[str, PublishedRange] = {}
    for row in rows(name, columns, place):
        low, high, unit = row.number("low"), row.number("high"), row.cells["unit"]
        if low > high:
            raise InputError(row.where, f"low is {low:g}, above high, {high:g}; accepted is low <= high")
        if unit not in UNITS:
            raise InputError(row.where, f"unit is {unit!r}; accepted is a unit of the unit table")
        source, locator = cited(row, place)
        key, what = row.text("key"), row.text("what")
        found[key] = PublishedRange(key, what, low, high, unit, source, locator, row.cells["note"])
    return MappingProxyType(found)


@lru_cache
def substances() -> Mapping[str, Substance]:
    """All substances by key.

    Examples
    --------
    >>> substances()["sodium_hydrosulfite"].formula
    'Na2S2O4'
    """
    return read_substances(folder())


@lru_cache
def materials() -> Mapping[str, CommercialForm]:
    """All commercial forms by key.

    Examples
    --------
    >>> lye = materials()["caustic_lye_50"]
    >>> lye.strength, lye.density
    (0.5, 1.515)
    """
    return read_materials(folder())


@lru_cache
def cautions() -> Mapping[str, Caution]:
    """All cautions by key.

    Examples
    --------
    >>> "never water to powder" in cautions()["hydrosulfite"].caution
    True
    """
    return read_cautions(folder())


@lru_cache
def published_ranges() -> Mapping[str, PublishedRange]:
    """All ranges by key.

    Examples
    --------
    >>> usual = published_ranges()["water_rope_usual"]
    >>> usual.low, usual.high, usual.unit
    (15.0, 20.0, 'L/kg')
    """
    return read_published_ranges(folder())


def _form(row: Row, place: Path) -> CommercialForm:
    low, strength, high = (_strength(row, column) for column in ("strength_low", "strength", "strength_high"))
    if not low <= strength <= high:
        raise InputError(
            row.where,
            f"strength is {row.cells['strength']} %, outside {row.cells['strength_low']} to "
            f"{row.cells['strength_high']} %; accepted is strength_low <= strength <= strength_high",
        )
    source, locator = cited(row, place)
    own_oxygen_demand = _own(row, "own_oxygen_demand")
    if own_oxygen_demand is not None:
        check("own_oxygen_demand", own_oxygen_demand, row.where)
    return CommercialForm(
        key=row.text("key"),
        name=row.text("name"),
        substance=row.cells["substance"],
        role=row.text("role"),
        strength=strength,
        strength_low=low,
        strength_high=high,
        remainder=row.one_of("remainder", REMAINDERS),
        density=check("density", row.number("density"), row.where) if row.cells["density"] else None,
        alkali=_share(row, "alkali"),
        dye_class=row.cells["dye_class"],
        sulfide=_own(row, "sulfide") or 0.0,
        own_oxygen_demand=own_oxygen_demand,
        own_sodium=_own(row, "own_sodium"),
        own_sulfur=_own(row, "own_sulfur"),
        own_nitrogen=_own(row, "own_nitrogen"),
        caution=row.cells["caution"],
        source=source,
        locator=locator,
        note=row.cells["note"],
    )


def _strength(row: Row, column: str) -> float:
    item = QUANTITIES["strength"]
    return check(item.name, to_house(row.number(column), item.usual, item.unit), f"{row.where}, {column}")


def _own(row: Row, column: str) -> float | None:
    if row.cells["substance"]:
        if row.cells[column]:
            raise InputError(row.where, f"{column} is filled beside a substance, whose formula says it")
        return None
    return row.number(column) if column == "own_oxygen_demand" else _share(row, column)


def _share(row: Row, column: str) -> float:
    value = row.number(column)
    if not 0.0 <= value <= 1.0:
        raise InputError(row.where, f"{column} is {value:g} kg/kg; accepted is 0 to 1 kg/kg")
    return value
