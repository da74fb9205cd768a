"""What was used against what the ledger takes for what was made: volume, mix, usage, strength and price.

All sums are exact, so that the effects add up to the difference of the cost in fact and the cost in the plan.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from costing.cost.ordering import (
    mix_variance,
    price_variance,
    strength_variance,
    usage_variance,
    volume_variance,
)
from costing.cost.quote import material_price
from costing.purchasing.requirement import MONTH, WEEK, period_of
from costing.purchasing.standard_use import Standards
from costing.quantities import InputError
from costing.settings.material import YARN_ROLES
from costing.settings.mill import Mill
from costing.settings.records import IssueRecord, MadeRecord

NOTHING = Fraction(0)


class Amounts(NamedTuple):
    """What stands on both sides, exact; money is that of the mill.

    Attributes
    ----------
    planned, standard : Fraction
        What the ledger takes for what was planned, and for what was made [kg].
    issued, listed : Fraction
        What left the store, as delivered, and as it would be at the strength of the standard [kg].
    volume, mix, usage, strength, price : Fraction
        The effects: above zero, it cost more [money].
    planned_cost, standard_cost, actual_cost : Fraction
        In the plan, for what was made, and in fact [money].
    """

    planned: Fraction = NOTHING
    standard: Fraction = NOTHING
    issued: Fraction = NOTHING
    listed: Fraction = NOTHING
    volume: Fraction = NOTHING
    mix: Fraction = NOTHING
    usage: Fraction = NOTHING
    strength: Fraction = NOTHING
    price: Fraction = NOTHING
    planned_cost: Fraction = NOTHING
    standard_cost: Fraction = NOTHING
    actual_cost: Fraction = NOTHING

    def plus(self, other: Amounts) -> Amounts:
        """Both together."""
        return Amounts(*(mine + more for mine, more in zip(self, other)))

    @property
    def over(self) -> Fraction:
        """Cost in fact less the standard cost of what was made [money]."""
        return self.usage + self.strength + self.price


class Entry(NamedTuple):
    """Amounts of one material, and what they are booked by; the day is the first of its week and month."""

    material: str
    day: datetime.date
    tags: tuple[str, str, str]
    issued: bool
    amounts: Amounts


class Remark(NamedTuple):
    """What may mislead, and of which material; "" for all."""

    text: str
    material: str = ""


class Comparison(NamedTuple):
    """Actual use against the standard.

    Attributes
    ----------
    entries : list of Entry
        Issues, and what the ledger takes for production.
    materials : list of str
        That were issued or should have been, in the order of the price list.
    without_price : dict
        Material -> why it has no price: it is in no money.
    has_plan : bool
        Whether there is a plan; without it planned and made are the same.
    made, planned : Fraction
        Saleable grey yarn [kg].
    first, last : date
        Of all records.
    remarks : list of Remark
        What may mislead.
    """

    entries: list[Entry]
    materials: list[str]
    without_price: Mapping[str, InputError]
    has_plan: bool
    made: Fraction
    planned: Fraction
    first: datetime.date
    last: datetime.date
    remarks: list[Remark]

    def of(self, materials: Sequence[str]) -> Comparison:
        """The same of some materials."""
        return self._replace(
            entries=[entry for entry in self.entries if entry.material in materials],
            materials=[code for code in self.materials if code in materials],
            remarks=[remark for remark in self.remarks if remark.material in ("", *materials)],
        )

    @property
    def total(self) -> Amounts:
        """Of all materials: masses of unlike products are no sum to be shown."""
        return added(entry.amounts for entry in self.entries)


def added(amounts: Iterable[Amounts]) -> Amounts:
    """All together."""
    found = Amounts()
    for one in amounts:
        found = found.plus(one)
    return found


def compare(
    mill: Mill, standards: Standards, made: Sequence[MadeRecord], issues: Sequence[IssueRecord]
) -> Comparison:
    """Hold store issues against production.

    An issue without strength or price counts at those of the price list.

    Parameters
    ----------
    mill : Mill
        The book; its prices and strengths are the standard.
    standards : Standards
        Of that book.
    made, issues : sequence
        The records of a period.

    Raises
    ------
    InputError
        No production or no issue; one of them names what the book does not know, or has no standard.
    """
    if not made:
        raise InputError("production record", "holds nothing; accepted is one row or more")
    if not issues:
        raise InputError("store issues", "hold nothing; accepted is one row or more")
    remarks: list[Remark] = []
    batches = _batches(mill, issues)
    kept = {issue: m for issue, m in batches.items() if mill.materials[issue.material].role not in YARN_ROLES}
    yarns = {issue.material: None for issue in batches if issue not in kept}
    if yarns:
        remarks.append(Remark(f"issues of yarn are left out: {', '.join(yarns)}"))
    lots = _summed(made)
    taken = {code for key in lots for code, use in standards.of(key[0], key[1], key[4]).uses.items() if use}
    codes = taken | {issue.material for issue in kept}
    materials = [code for code in mill.materials if code in codes]
    prices, without = _prices(mill, materials)
    planned = sum((lot.planned for lot in lots.values()), NOTHING)
    has_plan = planned > 0
    entries = _of_production(standards, lots, prices, has_plan) + _of_issues(mill, kept, prices)
    days = [*(row.day for row in made), *(issue.day for issue in issues)]
    remarks += _plan_remarks(made, has_plan) + _missing(entries, materials) + _months_apart(made, kept)
    total = sum((lot.made for lot in lots.values()), NOTHING)
    return Comparison(entries, materials, without, has_plan, total, planned, min(days), max(days), remarks)


class _Lot(NamedTuple):
    """What was made and planned of one kind in one week [kg]."""

    made: Fraction
    planned: Fraction


# Enquiry, its range where another one was given, day, shift, and where it first stands.
_Made = tuple[str, str, datetime.date, str, str]


def _within(day: datetime.date) -> datetime.date:
    """The first day that is in the same week and in the same month: no table tells days apart."""
    return max(period_of(day, WEEK), period_of(day, MONTH))


def _summed(made: Iterable[MadeRecord]) -> dict[_Made, _Lot]:
    found: dict[_Made, _Lot] = {}
    first: dict[tuple[str, str], str] = {}
    for row in made:
        where = first.setdefault((row.enquiry, row.range), row.where)
        key = (row.enquiry, row.range, _within(row.day), row.shift, where)
        lot = found.get(key, _Lot(NOTHING, NOTHING))
        found[key] = _Lot(lot.made + Fraction(row.mass), lot.planned + Fraction(row.planned or 0))
    return found


def _batches(mill: Mill, issues: Iterable[IssueRecord]) -> dict[IssueRecord, Fraction]:
    """Mass of issues that are alike but for it [kg]."""
    codes: dict[str, str] = {}
    found: dict[IssueRecord, Fraction] = {}
    for issue in issues:
        code = codes.get(issue.material)
        if code is None:
            code = mill.material(issue.material, issue.where or "store issues").code
            codes[issue.material] = code
        alike = issue._replace(day=_within(issue.day), material=code, mass=0.0, where="")
        found[alike] = found.get(alike, NOTHING) + Fraction(issue.mass)
    return found


def _prices(mill: Mill, materials: Iterable[str]) -> tuple[dict[str, Fraction], dict[str, InputError]]:
    """The price of each material at the gate [money/kg], or why it has none."""
    if mill.costs is None:
        raise InputError("mill costs", "the book holds no mill costs")
    prices: dict[str, Fraction] = {}
    without: dict[str, InputError] = {}
    for code in materials:
        try:
            prices[code] = Fraction(material_price(code, mill.materials, mill.costs))
        except InputError as error:
            without[code] = error
    return prices, without


def _of_production(
    standards: Standards,
    lots: Mapping[_Made, _Lot],
    prices: Mapping[str, Fraction],
    has_plan: bool,
) -> list[Entry]:
    """What the ledger takes, with what volume and mix do to its cost."""
    made = sum((lot.made for lot in lots.values()), NOTHING)
    planned = sum((lot.planned for lot in lots.values()), NOTHING)
    found = []
    for (enquiry, range_, day, shift, where), lot in lots.items():
        standard = standards.of(enquiry, range_, where)
        to_make = lot.planned if has_plan else lot.made
        share = lot.planned / planned if has_plan else NOTHING
        for code, use in standard.uses.items():
            each, price = Fraction(use), prices.get(code, NOTHING)
            cost = each * price
            masses = Amounts(planned=to_make * each, standard=lot.made * each)
            amounts = masses._replace(
                volume=volume_variance(made, planned, share, cost) if has_plan else NOTHING,
                mix=mix_variance(lot.made, made, share, cost) if has_plan else NOTHING,
                usage=usage_variance(NOTHING, masses.standard, price),
                planned_cost=masses.planned * price,
                standard_cost=masses.standard * price,
            )
            found.append(Entry(code, day, (standard.range, standard.shade, shift), False, amounts))
    return found


def _of_issues(
    mill: Mill, issues: Mapping[IssueRecord, Fraction], prices: Mapping[str, Fraction]
) -> list[Entry]:
    """What left the store, with what its strength and its price do to the cost."""
    found = []
    for issue, mass in issues.items():
        code = issue.material
        standard, price = Fraction(mill.materials[code].strength), prices.get(code, NOTHING)
        strength = standard if issue.strength is None else Fraction(issue.strength)
        paid = price if issue.price is None or code not in prices else Fraction(issue.price)
        listed = mass * strength / standard
        amounts = Amounts(
            issued=mass,
            listed=listed,
            usage=usage_variance(listed, NOTHING, price),
            strength=strength_variance(mass, strength, standard, price),
            price=price_variance(paid, price, mass),
            actual_cost=mass * paid,
        )
        found.append(Entry(code, issue.day, (issue.range, issue.shade, issue.shift), True, amounts))
    return found


def _plan_remarks(made: Iterable[MadeRecord], has_plan: bool) -> list[Remark]:
    without = sum(row.planned is None for row in made)
    if not has_plan or not without:
        return []
    rows = "1 row" if without == 1 else f"{without} rows"
    return [Remark(f"{rows} of the production without a plan: counted as not planned")]


def _missing(entries: Iterable[Entry], materials: Iterable[str]) -> list[Remark]:
    """Materials that stand on one side alone."""
    taken = {entry.material: NOTHING for entry in entries if not entry.issued}
    issued = {entry.material: NOTHING for entry in entries if entry.issued}
    for entry in entries:
        if entry.issued:
            issued[entry.material] += entry.amounts.issued
        else:
            taken[entry.material] += entry.amounts.standard
    told = []
    for code in materials:
        if not issued.get(code) and taken.get(code):
            told.append(
                Remark(
                    f"{code}: standard {float(taken[code]):,.1f} kg, and nothing left the store: a missing "
                    "record is likelier than that none was used; its standard cost counts as saved",
                    code,
                )
            )
        elif issued.get(code) and not taken.get(code):
            told.append(
                Remark(
                    f"{code}: {float(issued[code]):,.1f} kg left the store, and nothing that was made takes "
                    "it: all of it counts as used beyond the standard",
                    code,
                )
            )
        if issued.get(code, NOTHING) < 0:
            told.append(Remark(f"{code}: more came back to the store than left it in this time", code))
    return told


def _months_apart(made: Iterable[MadeRecord], issues: Iterable[IssueRecord]) -> list[Remark]:
    """Months with production alone or issues alone."""
    ran = {f"{row.day:%Y-%m}" for row in made}
    left = {f"{issue.day:%Y-%m}" for issue in issues}
    told = []
    for what, other, mine, others in (
        ("production", "store issue", ran, left),
        ("store issues", "production", left, ran),
    ):
        if mine - others:
            months = ", ".join(sorted(mine - others))
            told.append(Remark(f"{months}: {what} and no {other}; compare whole months"))
    return told
