"""What was made and what left the store, period by period, and what that takes by the ledger."""

from __future__ import annotations

import datetime
import math
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any, NamedTuple

import numpy

from costing.cost.spread import defaults_taken
from costing.ledger.whole import open_ledger
from costing.many.lanes import Floats
from costing.many.quotes import run_parted
from costing.purchasing.requirement import MONTH, period_of
from costing.quantities import InputError
from costing.settings.inputs import Place, with_inputs
from costing.settings.material import YARN_ROLES
from costing.settings.mill import Enquiry, Mill
from costing.settings.records import IssueRecord, MadeRecord


class Observed(NamedTuple):
    """Production and store issues of some periods.

    Attributes
    ----------
    period : str
        Week or month.
    begins : tuple of date
        First day of each period, in order.
    items : tuple of Enquiry
        What was made, each on its range.
    materials : tuple of str
        What was issued and is taken by something that was made.
    made : array
        Saleable grey yarn, a row for each period and a column for each item [kg].
    issued : array
        As delivered at the listed strength, a row for each period and a column for each material [kg].
    remarks : tuple of str
        What was left out, and what may mislead.
    """

    period: str
    begins: tuple[datetime.date, ...]
    items: tuple[Enquiry, ...]
    materials: tuple[str, ...]
    made: Floats
    issued: Floats
    remarks: tuple[str, ...]


def observed(
    mill: Mill, made: Iterable[MadeRecord], issues: Iterable[IssueRecord], period: str = MONTH
) -> Observed:
    """Sum records by period, with what the ledger knows of.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    made, issues : iterable
        The records; a batch with an assay of its own counts as that mass at the listed strength.
    period : str, optional
        Week or month.

    Raises
    ------
    InputError
        An unknown code, a mass that is no mass, a period with production alone or with issues alone, or
        nothing issued that the production takes.
    """
    by_item: dict[Enquiry, dict[datetime.date, float]] = {}
    for row in made:
        item = mill.enquiry(row.enquiry, "production record")
        if row.range:
            item = replace(item, range=mill.range(row.range, "production record").code)
        _check_mass(row.mass, f"production record of {row.day}, {item.code}", least=0.0)
        _add(by_item.setdefault(item, {}), period_of(row.day, period), row.mass)
    by_material: dict[str, dict[datetime.date, float]] = {}
    for issue in issues:
        product = mill.material(issue.material, "store issues")
        _check_mass(issue.mass, f"store issue of {issue.day}, {product.code}")
        share = 1.0 if issue.strength is None else issue.strength / product.strength
        _add(by_material.setdefault(product.code, {}), period_of(issue.day, period), issue.mass * share)
    begins = tuple(sorted(set().union(*by_item.values())))
    _check_periods(begins, set().union(*by_material.values()), period)
    items = tuple(by_item)
    taken = [set(_used(mill, item)) for item in items]
    yarns = {code for code, item in mill.materials.items() if item.role in YARN_ROLES}
    known = [code for code in mill.materials if code in by_material and any(code in one for one in taken)]
    materials = tuple(code for code in known if code not in yarns)
    if not materials:
        raise InputError(
            "store issues", "nothing that was made takes what was issued; accepted is a material of it"
        )
    remarks = [
        f"{code} was issued, and nothing that was made takes it: left out"
        for code in by_material
        if code not in known
    ]
    for code in materials:
        takers = [item for item, one in zip(items, taken, strict=True) if code in one]
        used = {day for item in takers for day, mass in by_item[item].items() if mass > 0.0}
        without = [day for day in begins if day in used and day not in by_material[code]]
        if without:
            told = ", ".join(period_text(day, period) for day in without)
            remarks.append(
                f"{code} was not issued in {told}, though what was made takes it: counts as nothing"
            )
    found = Observed(
        period,
        begins,
        items,
        materials,
        _grid(begins, [by_item[item] for item in items]),
        _grid(begins, [by_material[code] for code in materials]),
        tuple(remarks),
    )
    if (found.issued < 0.0).any():
        row_, column = (int(place[0]) for place in numpy.nonzero(found.issued < 0.0))
        raise InputError(
            "store issues",
            f"{materials[column]} in {period_text(begins[row_], period)} comes to "
            f"{found.issued[row_, column]:g} kg; "
            "accepted is a sum of 0 kg or more: what came back belongs to the period in which it left",
        )
    return found


def period_text(begin: datetime.date, period: str) -> str:
    """A period as people read it.

    Examples
    --------
    >>> period_text(datetime.date(2026, 3, 1), "month"), period_text(datetime.date(2026, 3, 2), "week")
    ('2026-03', '2026-W10')
    """
    return f"{begin:%Y-%m}" if period == MONTH else f"{begin:%G-W%V}"


def _add(sums: dict[datetime.date, float], day: datetime.date, mass: float) -> None:
    sums[day] = sums.get(day, 0.0) + mass


def _check_mass(mass: float, where: str, least: float = -math.inf) -> None:
    if not math.isfinite(mass) or mass < least:
        accepted = "a mass in kg" if least < 0.0 else "a mass in kg, 0 or more"
        raise InputError(where, f"mass is {mass:g} kg; accepted is {accepted}")


def _check_periods(made: Sequence[datetime.date], issued: set[datetime.date], period: str) -> None:
    """Refuse a period of which one half is missing: what was made must stand beside what it took."""
    if not made:
        raise InputError("production record", "holds nothing; accepted is one row or more")
    for what, other, days in (
        ("production", "store issues", set(made) - issued),
        ("store issues", "production", issued - set(made)),
    ):
        if days:
            told = ", ".join(period_text(day, period) for day in sorted(days))
            raise InputError("", f"{told} has {what} and no {other}; accepted are periods that have both")


def _grid(begins: Sequence[datetime.date], columns: Sequence[Mapping[datetime.date, float]]) -> Floats:
    return numpy.array([[column.get(day, 0.0) for column in columns] for day in begins])


def _used(mill: Mill, item: Enquiry) -> dict[str, float]:
    ledger = open_ledger(mill, item)
    codes = dict.fromkeys(line.material for line in ledger.lines if line.material in mill.materials)
    return {code: amount for code in codes if (amount := ledger.used(code)) > 0.0}


class Uses:
    """What a kilogram of each item takes of each material, for values of some factors.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    data : Observed
        Items and materials.
    places : sequence of mapping
        For each item, place -> number of the factor that stands there.
    """

    def __init__(self, mill: Mill, data: Observed, places: Sequence[Mapping[Place, int]]) -> None:
        self.mill, self.data, self.places = mill, data, places

    def __call__(self, points: Floats) -> Floats:
        """Uses as delivered [kg/kg], by point, item and material.

        Raises
        ------
        InputError
            An item is refused with these values.
        """
        return numpy.stack(
            [
                self._of(item, places, points)
                for item, places in zip(self.data.items, self.places, strict=True)
            ],
            axis=1,
        )

    def _of(self, item: Enquiry, places: Mapping[Place, int], points: Floats) -> Floats:
        def work(values: Mapping[Place, Any]) -> Mapping[Hashable, Any]:
            ledger = open_ledger(*with_inputs(self.mill, item, values))
            return {code: ledger.used(code) for code in self.data.materials}

        given = {place: points[:, column] for place, column in places.items()}
        alike = not places  # no factor stands there: one run is all
        outcome = run_parted(work, given, 1 if alike else len(points))
        for error in outcome.refused.values():
            raise error.at(lambda one: f"{item.code}, {one.where}" if one.where else item.code)
        found = numpy.stack([outcome.values[code] for code in self.data.materials], axis=1)
        return numpy.repeat(found, len(points), axis=0) if alike else found


def places_left_to_typical(mill: Mill, items: Iterable[Enquiry]) -> list[dict[Place, str]]:
    """For each item, the numbers of its steps that the book leaves empty -> key of the typical value."""
    return [
        {place: key for place, key in defaults_taken(mill, item).items() if place.kind == "step"}
        for item in items
    ]
