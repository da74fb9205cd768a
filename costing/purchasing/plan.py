"""All materials of a mill: what to order and when, what runs out, what expires, and the money by week."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from costing.purchasing.deals import Deals
from costing.purchasing.material_plan import MaterialPlan, Proposal
from costing.purchasing.proposals import plan_material
from costing.purchasing.requirement import Need
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.stock import HOURS_A_DAY, OpenOrder, PurchaseTerms, StockBatch, Store

WEEK = 7
MOST_DAYS = 3660  # ten years
LEAST_KNOWN = 28  # days over which a mean need is taken, where orders end sooner [day]


class Payment(NamedTuple):
    """Money that goes out.

    Attributes
    ----------
    day : date
        On which it is paid.
    material : str
        For what.
    money : float or None
        In the mill's money [money]; None where there is no price.
    proposed : bool
        True for an order that is proposed, False for one that was placed before.
    """

    day: datetime.date
    material: str
    money: float | None
    proposed: bool


class PurchasePlan(NamedTuple):
    """What was planned.

    Attributes
    ----------
    start : date
        The first day.
    days : int
        That were planned [day].
    delay : int
        By which everything comes later [day].
    materials : list of MaterialPlan
        Those that are needed, in store, on order, or have terms; by code.
    """

    start: datetime.date
    days: int
    delay: int
    materials: list[MaterialPlan]

    @property
    def end(self) -> datetime.date:
        """The last day."""
        return self.start + datetime.timedelta(days=self.days - 1)

    @property
    def proposals(self) -> list[Proposal]:
        """All of them, by the day on which they are placed."""
        every = (one for item in self.materials for one in item.proposals)
        return sorted(every, key=lambda one: (one.placed, one.material, one.arrival))

    @property
    def without_terms(self) -> list[MaterialPlan]:
        """Materials that are needed and cannot be ordered, as the book has no terms of purchase for them."""
        return [item for item in self.materials if item.terms is None and item.needed > 0.0]

    def payments(self) -> Iterator[Payment]:
        """What is paid for orders that come within the days planned."""
        for item in self.materials:
            time = round(item.terms.payment_time / HOURS_A_DAY) if item.terms else 0
            for order, arrival, deal in item.open_orders:
                money = None if deal.price is None else deal.price * order.order_mass
                if arrival <= self.end:
                    yield Payment(arrival + datetime.timedelta(days=time), item.material, money, False)
            for one in item.proposals:
                yield Payment(one.paid, one.material, one.money, True)


def monday_of(day: datetime.date) -> datetime.date:
    """The Monday of the ISO week of a day.

    Examples
    --------
    >>> monday_of(datetime.date(2026, 11, 29))
    datetime.date(2026, 11, 23)
    """
    return day - datetime.timedelta(days=day.weekday())


def iso_week(day: datetime.date) -> str:
    """The ISO week of a day, which may be of another year than the day.

    Examples
    --------
    >>> iso_week(datetime.date(2027, 1, 1))
    '2026-W53'
    """
    year, week, _ = day.isocalendar()
    return f"{year}-W{week:02d}"


def plan_purchases(
    mill: Mill,
    store: Store,
    needs: Iterable[Need],
    start: datetime.date,
    weeks: int,
    delay: int = 0,
) -> PurchasePlan:
    """Project all materials and propose their orders.

    Parameters
    ----------
    mill : Mill
        With materials, offers and costs.
    store : Store
        Stock, open orders and terms.
    needs : iterable of Need
        What the dye lots take; a need of a day before the first one is one of that day.
    start : date
        The first day.
    weeks : int
        To plan; longer where the longest lead time is, so that an order of today still comes.
    delay : int, optional
        Days by which all deliveries come later [day].

    Raises
    ------
    InputError
        Weeks or delay that make no sense; a supplier of the terms who offers nothing of the material.
    """
    if not 1 <= weeks <= MOST_DAYS // WEEK:
        raise InputError("weeks", f"is {weeks}; accepted is a whole number from 1 to {MOST_DAYS // WEEK}")
    if not 0 <= delay <= MOST_DAYS:
        raise InputError("delay", f"is {delay} days; accepted is 0 to {MOST_DAYS}")
    deals = Deals(mill)
    lead = max((terms.lead_days for terms in store.terms.values()), default=0)
    days = max(weeks * WEEK, lead + delay + 1)
    per_day: dict[str, list[float]] = {}
    for day, material, mass, _ in needs:
        at = max((day - start).days, 0)
        if at < days:
            row = per_day.get(material)
            if row is None:
                row = per_day[material] = [0.0] * days
            row[at] += mass
    batches: dict[str, list[StockBatch]] = {}
    for batch in store.batches:
        batches.setdefault(batch.material, []).append(batch)
    orders: dict[str, list[OpenOrder]] = {}
    for order in store.open_orders:
        orders.setdefault(order.material, []).append(order)
    last = max((at for row in per_day.values() for at, mass in enumerate(row) if mass), default=0)
    known = max(last + 1, min(LEAST_KNOWN, days))
    found = []
    for code in sorted({*per_day, *batches, *orders, *store.terms}):
        terms = store.terms.get(code)
        need: Sequence[float] = per_day.get(code) or [0.0] * days
        found.append(
            plan_material(
                code,
                need,
                start,
                _with_known_supplier(terms, deals),
                batches.get(code, ()),
                orders.get(code, ()),
                deals,
                delay,
                known,
            )
        )
    return PurchasePlan(start, days, delay, found)


def _with_known_supplier(terms: PurchaseTerms | None, deals: Deals) -> PurchaseTerms | None:
    if terms is None or not terms.supplier:
        return terms
    known = deals.known_supplier(terms.material, terms.supplier, terms.where)
    if known == terms.supplier:
        return terms
    return replace(terms, supplier=known)
