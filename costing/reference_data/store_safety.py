"""What the store should know of a substance: number and class of transport, and what stands apart from what.

The rules of transport are those of one country and one year. They are a guide to what is dangerous beside
what, and no permission: `STORE_DEFERS` says who comes first, and goes with every text.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError
from costing.reference_data.materials_and_cautions import REMAINDERS, read_substances
from costing.reference_data.table_files import Row, cited, folder, rows

ENTRIES = (
    "transport_entries.csv",
    (
        *("key", "substance", "remainder", "counted", "over", "from", "below", "to", "form"),
        *("un_number", "name", "hazard_class", "subsidiary", "packing_group", "source", "locator", "note"),
    ),
)
SEGREGATION = (
    "segregation.csv",
    ("key", "first_class", "second_class", "mark", "source", "locator", "note"),
)
APART = ("keep_apart.csv", ("key", "first", "second", "why", "source", "locator", "note"))

ACTIVE, WATER = "active", "water"
LIQUID, SOLID = "liquid", "solid"
NEVER, PARTED, FREE = "X", "O", "none"
CORROSIVE, CORROSIVE_LIQUID = "8", "8 liquid"  # the table of segregation counts only liquids of class 8

STORE_DEFERS = (
    "General guide only. Local regulation, the supplier's current safety data sheet and the mill's own "
    "licence come first, and the advice of a competent person."
)
DECIMALS = 9  # of a share of mass, so that 1 - 0.7 is 30 % and not a little more


class TransportEntry(NamedTuple):
    """One entry of the table of dangerous goods, for a substance within bounds of strength.

    Attributes
    ----------
    key, substance : str
        Its key, and that of the substance.
    remainder : str
        "water" or "inert" where the entry is for products whose rest is that; "" for both.
    counted : str
        What the bounds hold for: the ``active`` part, or the ``water`` of crystals.
    low, high : float or None
        Bounds [fraction of the delivered mass]; None without one.
    over_low, below_high : bool
        True where the bound itself lies outside.
    form : str
        ``liquid`` or ``solid``.
    un_number, name, hazard_class, subsidiary, packing_group : str
        As printed. Without a number there is no entry by the name of the substance; another one may hold.
    source, locator, note : str
        Where it stands, with the words there.
    """

    key: str
    substance: str
    remainder: str
    counted: str
    low: float | None
    over_low: bool
    high: float | None
    below_high: bool
    form: str
    un_number: str
    name: str
    hazard_class: str
    subsidiary: str
    packing_group: str
    source: str
    locator: str
    note: str

    def holds(self, share: float) -> bool:
        """True where a share of the delivered mass [fraction] lies within the bounds."""
        value = round(share, DECIMALS)
        if self.low is not None and (value < self.low or (self.over_low and value == self.low)):
            return False
        return self.high is None or value < self.high or (value == self.high and not self.below_high)

    @property
    def class_text(self) -> str:
        """The class with its subsidiary one.

        Examples
        --------
        >>> transport_entry("hydrogen_peroxide", 0.35, "water").class_text
        '5.1 (8)'
        """
        return f"{self.hazard_class} ({self.subsidiary})" if self.subsidiary else self.hazard_class


class Segregation(NamedTuple):
    """What a table says of two classes: ``X`` never together, ``O`` parted, ``none`` nothing said."""

    first: str
    second: str
    mark: str
    source: str
    locator: str
    note: str


class ApartRule(NamedTuple):
    """A reason of chemistry why two sorts of product stand apart."""

    key: str
    first: str
    second: str
    why: str
    source: str
    locator: str
    note: str


def read_transport_entries(place: Path) -> Mapping[str, tuple[TransportEntry, ...]]:
    """Read the entries of a folder: substance -> its entries.

    Raises
    ------
    InputError
        An unknown substance, source or word, two bounds at one end, or bounds that leave nothing.
    """
    known = list(read_substances(place))
    name, columns = ENTRIES
    found: dict[str, tuple[TransportEntry, ...]] = {}
    for row in rows(name, columns, place):
        entry = _entry(row, known, place)
        found[entry.substance] = (*found.get(entry.substance, ()), entry)
    return MappingProxyType(found)


def read_segregation(place: Path) -> Mapping[frozenset[str], Segregation]:
    """Read the pairs of classes of a folder.

    Raises
    ------
    InputError
        An unknown mark or source, or a pair that stands twice.
    """
    name, columns = SEGREGATION
    found: dict[frozenset[str], Segregation] = {}
    for row in rows(name, columns, place):
        source, locator = cited(row, place)
        mark = row.one_of("mark", (NEVER, PARTED, FREE))
        first, second = row.text("first_class"), row.text("second_class")
        pair = frozenset((first, second))
        if pair in found:
            raise InputError(row.where, f"{first} and {second} stand twice; accepted is each pair once")
        found[pair] = Segregation(first, second, mark, source, locator, row.cells["note"])
    return MappingProxyType(found)


def read_apart_rules(place: Path) -> tuple[ApartRule, ...]:
    """Read the reasons of chemistry of a folder."""
    name, columns = APART
    found = []
    for row in rows(name, columns, place):
        source, locator = cited(row, place)
        key, first, second, why = (row.text(column) for column in columns[:4])
        found.append(ApartRule(key, first, second, why, source, locator, row.cells["note"]))
    return tuple(found)


@lru_cache
def transport_entries() -> Mapping[str, tuple[TransportEntry, ...]]:
    """All entries by substance."""
    return read_transport_entries(folder())


@lru_cache
def segregation() -> Mapping[frozenset[str], Segregation]:
    """All pairs of classes that the table marks or leaves blank."""
    return read_segregation(folder())


@lru_cache
def apart_rules() -> tuple[ApartRule, ...]:
    """All reasons of chemistry."""
    return read_apart_rules(folder())


def transport_entry(
    substance: str, strength: float, remainder: str, beside: float = 0.0
) -> TransportEntry | None:
    """The entry of a product that holds one substance; None where the table here has none.

    Parameters
    ----------
    substance : str
        Key of the substance; "" for a product without a formula, which has no entry.
    strength : float
        Active part of the delivered mass [fraction].
    remainder : str
        What the rest is: "water" or "inert" matter.
    beside : float
        Caustic and sulfide that come with it, of the delivered mass [fraction].

    Examples
    --------
    >>> transport_entry("sodium_sulfide", 0.60, "water").un_number
    'UN1849'
    >>> transport_entry("indigo", 0.95, "inert") is None
    True
    """
    water = 1.0 - strength - beside if remainder == "water" else 0.0
    for entry in transport_entries().get(substance, ()):
        share = water if entry.counted == WATER else strength
        if entry.remainder in ("", remainder) and entry.holds(share):
            return entry
    return None


def _entry(row: Row, known: list[str], place: Path) -> TransportEntry:
    source, locator = cited(row, place)
    low, over_low = _bound(row, "over", "from")
    high, below_high = _bound(row, "below", "to")
    if low is not None and high is not None and low >= high:
        raise InputError(
            row.where, f"the bounds are {100 * low:g} and {100 * high:g} %; accepted is low < high"
        )
    if row.cells["un_number"]:
        row.text("hazard_class")
        row.text("packing_group")
    return TransportEntry(
        key=row.text("key"),
        substance=row.one_of("substance", known),
        remainder=row.one_of("remainder", ("", *REMAINDERS)),
        counted=row.one_of("counted", (ACTIVE, WATER)),
        low=low,
        over_low=over_low,
        high=high,
        below_high=below_high,
        form=row.one_of("form", (LIQUID, SOLID)),
        un_number=row.cells["un_number"],
        name=row.text("name"),
        hazard_class=row.cells["hazard_class"],
        subsidiary=row.cells["subsidiary"],
        packing_group=row.cells["packing_group"],
        source=source,
        locator=locator,
        note=row.cells["note"],
    )


def _bound(row: Row, outside: str, inside: str) -> tuple[float | None, bool]:
    """A bound [fraction], and True where it lies outside itself."""
    filled = [column for column in (outside, inside) if row.cells[column]]
    if not filled:
        return None, False
    if len(filled) > 1:
        raise InputError(row.where, f"{outside} and {inside} are filled; accepted is one of them")
    percent = row.number(filled[0])
    if not 0.0 < percent < 100.0:
        raise InputError(row.where, f"{filled[0]} is {percent:g} %; accepted is between 0 and 100 %")
    return round(percent / 100.0, DECIMALS), filled[0] == outside
