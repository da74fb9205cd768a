"""What the dye lots take from the store: the ledger of each lot times its yarn, day by day."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple, Union

from costing.ledger.whole import Ledger, open_ledger
from costing.process.postings import STORE
from costing.purchasing.dye_lots import DyeLot, LeftOut, LotPlan
from costing.quantities import InputError
from costing.settings.material import YARN_ROLES
from costing.settings.mill import Enquiry, Mill

DAY, WEEK, MONTH = "day", "week", "month"
PERIODS = (DAY, WEEK, MONTH)

Uses = Mapping[str, float]  # product -> taken from the store [kg]
# From the enquiries of lots to what each takes, or why it is refused.
Explode = Callable[[Mill, Sequence[Enquiry]], list[Union[Uses, InputError]]]


class Need(NamedTuple):
    """What one lot takes of one product.

    Attributes
    ----------
    day : date
        On which it must be in store.
    material : str
        Its code.
    mass : float
        As delivered, of the strength that the price list has [kg].
    lot : str
        Which lot.
    """

    day: datetime.date
    material: str
    mass: float
    lot: str


class Requirement(NamedTuple):
    """What an order book takes from the store.

    Attributes
    ----------
    needs : list of Need
        By day.
    lots : list of DyeLot
        That were run through the ledger.
    left_out : list of LeftOut
        Lines that are in no total.
    """

    needs: list[Need]
    lots: list[DyeLot]
    left_out: list[LeftOut]


def from_store_per_kg(ledger: Ledger, mill: Mill) -> dict[str, float]:
    """What is taken of each product for a kilogram of saleable grey yarn, yarns left out.

    What stands in a bath that was taken over was taken by the lot that made it.

    Returns
    -------
    dict
        Code -> as delivered [kg/kg].
    """
    found: dict[str, float] = {}
    for _, material, _, _, amount, source, _ in ledger.postings:
        if source == STORE and material:
            found[material] = found.get(material, 0.0) + amount
    products = mill.materials
    return {
        code: amount
        for code, amount in found.items()
        if code in products and products[code].role not in YARN_ROLES
    }


def from_store(ledger: Ledger, mill: Mill) -> dict[str, float]:
    """What a lot takes of each product, code -> as delivered [kg]; as `from_store_per_kg`."""
    mass = ledger.plan.saleable_mass
    return {code: amount * mass for code, amount in from_store_per_kg(ledger, mill).items()}


def one_by_one(mill: Mill, enquiries: Sequence[Enquiry]) -> list[Uses | InputError]:
    """What each lot takes, one ledger after the other; see `costing.many.requirement` for many."""
    found: list[Uses | InputError] = []
    for enquiry in enquiries:
        try:
            found.append(from_store(open_ledger(mill, enquiry), mill))
        except InputError as error:
            found.append(error)
    return found


def requirement(mill: Mill, plan: LotPlan, explode: Explode = one_by_one) -> Requirement:
    """Run every lot through the ledger.

    Parameters
    ----------
    mill : Mill
        The book.
    plan : LotPlan
        Its lots.
    explode : callable, optional
        Gives what each lot takes.

    Returns
    -------
    Requirement
        A lot that is refused is left out, with all its orders.
    """
    needs: list[Need] = []
    lots: list[DyeLot] = []
    left_out = list(plan.left_out)
    for lot, taken in zip(plan.lots, explode(mill, [lot.enquiry for lot in plan.lots])):
        if isinstance(taken, InputError):
            left_out += [LeftOut(line, taken) for line in lot.orders]
            continue
        lots.append(lot)
        needs += [Need(lot.start, code, mass, lot.code) for code, mass in taken.items()]
    return Requirement(needs, lots, left_out)


def refuse_left_out(left_out: Sequence[LeftOut], most: int = 5) -> None:
    """Refuse a plan that lacks lines, so that no total is short without a word.

    Raises
    ------
    InputError
        Names the first lines, and why.
    """
    if not left_out:
        return
    told = [f"{item.line.where or item.line.code}: {item.error}" for item in left_out[:most]]
    more = f"; and {len(left_out) - most} more" if len(left_out) > most else ""
    raise InputError(
        "order book",
        f"{len(left_out)} of its lines cannot be planned: {'; '.join(told)}{more}; accepted is a book in "
        "which they can, or --without-refused, which leaves them out of every total and says so",
    )


def period_of(day: datetime.date, period: str) -> datetime.date:
    """First day of the period that a day is in; a week begins on Monday.

    Examples
    --------
    >>> period_of(datetime.date(2026, 11, 29), "week")
    datetime.date(2026, 11, 23)
    """
    if period == WEEK:
        return day - datetime.timedelta(days=day.weekday())
    return day.replace(day=1) if period == MONTH else day


def by_period(needs: Iterable[Need], period: str) -> dict[tuple[datetime.date, str], float]:
    """(First day of the period, product) -> what is taken in it [kg], by day and product."""
    found: dict[tuple[datetime.date, str], float] = {}
    begins: dict[datetime.date, datetime.date] = {}
    for day, material, mass, _ in needs:
        first = begins.get(day)
        if first is None:
            first = begins[day] = period_of(day, period)
        key = (first, material)
        found[key] = found.get(key, 0.0) + mass
    return dict(sorted(found.items()))
