"""Which numbers a calibration fits: typical values that steps take because the book leaves them empty."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from costing.many.store_use import Observed, places_left_to_typical
from costing.quantities import QUANTITIES, InputError, label, listed, meant
from costing.quantities.checking import LIMITS, shown
from costing.reference_data import defaults
from costing.settings.inputs import Place
from costing.settings.mill import Mill

# What mills disagree on most, and what moves hydrosulfite, caustic and indigo.
USUAL = ("indigo.rinse_loss", "indigo.sky_destruction", "indigo.surface_oxygen", "indigo.exchange")


class Factor(NamedTuple):
    """One number to be fitted. House units.

    Attributes
    ----------
    key : str
        Of the typical value that it stands for.
    step, range : str
        Where; "" is every step, every range, that takes it.
    book, low, high : float
        What counts without a calibration, and between what it may lie.
    """

    key: str
    step: str
    range: str
    book: float
    low: float
    high: float

    @property
    def quantity(self) -> str:
        """Name of the quantity."""
        return defaults()[self.key].quantity

    @property
    def text(self) -> str:
        """As people read it."""
        where = f"{self.step or self.key.split('.')[0]}: {label(self.quantity)}"
        return f"{where} on {self.range}" if self.range else where

    def stands_at(self, place: Place, key: str, range_: str) -> bool:
        """Whether it is what a place of a range takes."""
        return key == self.key and self.step in ("", place.code) and self.range in ("", range_)


def factors_named(
    mill: Mill,
    data: Observed,
    names: Sequence[str] = (),
    bounds: Mapping[str, tuple[float, float]] = {},
    range_: str = "",
) -> tuple[list[Factor], list[str]]:
    """The factors that are asked for, or the usual ones; and what is to be said of those left out.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    data : Observed
        What was made.
    names : sequence of str, optional
        Such as ``surface oxygen`` or ``rinse after dyeing: exchange``.
    bounds : mapping, optional
        Name -> lower and upper bound, in the house unit; else those of the typical value.
    range_ : str, optional
        Code of the one range whose factors are meant.

    Raises
    ------
    InputError
        A name that is not left to the typical value anywhere, or bounds that are none.
    """
    known = _by_name(mill, data, range_)
    wanted = dict.fromkeys(_known(known, name, "--factor") for name in names)
    said = []
    if not names:
        wanted = {key: None for key in ((key, "") for key in USUAL) if key in known.values()}
        said = [
            f"{key.replace('.', ': ').replace('_', ' ')} stands in the book wherever something was "
            "made, and a "
            "figure that is typed stays: not fitted"
            for key in USUAL
            if (key, "") not in known.values()
        ]
    if not wanted:
        raise InputError(
            "--factor", f"the book types all of the usual ones; accepted is {listed(known, most=12)}"
        )
    given = {_known(known, name, "--bounds"): ends for name, ends in bounds.items()}
    other = next((key for key in given if key not in wanted), None)
    if other is not None:
        raise InputError("--bounds", f"{other[0]} is not fitted; accepted is a factor that is")
    return [_factor(key, step, range_, given.get((key, step))) for key, step in wanted], said


def quantity_named(mill: Mill, data: Observed, name: str, option: str) -> str:
    """The quantity of the factor that a name means.

    Raises
    ------
    InputError
        A name that is not left to the typical value anywhere.
    """
    return defaults()[_known(_by_name(mill, data, ""), name, option)[0]].quantity


def _by_name(mill: Mill, data: Observed, range_: str) -> dict[str, tuple[str, str]]:
    """What a factor may be called -> key of its typical value, and the one step that is meant or ""."""
    known: dict[str, tuple[str, str]] = {}
    for item, places in zip(data.items, places_left_to_typical(mill, data.items), strict=True):
        for place, key in places.items():
            if range_ in ("", item.range) and not QUANTITIES[place.name].whole:
                known[f"{key.split('.')[0]}: {label(place.name)}"] = key, ""
                known[f"{place.code}: {label(place.name)}"] = key, place.code
    for name in sorted({text.split(": ")[-1] for text in known}):
        keys = {key for text, (key, _) in known.items() if text.split(": ")[-1] == name}
        if len(keys) == 1:  # else the name alone could mean several
            known[name] = keys.pop(), ""
    return known


def _known(known: Mapping[str, tuple[str, str]], name: str, option: str) -> tuple[str, str]:
    found = meant(name, known)
    if found is None:
        raise InputError(
            option,
            f"{name!r} is nothing that a step of what was made leaves to the typical value; there are: "
            f"{listed(known, name, most=12)}",
        )
    return known[found]


def _factor(key: str, step: str, range_: str, ends: tuple[float, float] | None) -> Factor:
    row = defaults()[key]
    low, high = ends or (row.low, row.high)
    factor = Factor(key, step, range_, row.value, low, high)
    least, most = LIMITS[row.quantity]
    if not least <= low <= row.value <= high <= most or low == high:
        item = QUANTITIES[row.quantity]
        raise InputError(
            "--bounds",
            f"{factor.text}: {shown(item, low)} to {shown(item, high)}; accepted are two ends within "
            f"{shown(item, least)} to {shown(item, most)}, with the typical value "
            f"{shown(item, row.value)} between",
        )
    return factor
