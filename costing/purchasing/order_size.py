"""How many packs an order has: by rule, least order, shelf life and room; and the next price break."""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from costing.purchasing.deals import Deal, Deals
from costing.purchasing.reordering import best_of_breaks, cost_of_buying
from costing.purchasing.stock import DUST, life_of
from costing.settings.stock import ECONOMIC, FOR_A_TIME, HOURS_A_DAY, PurchaseTerms

CEILING, SHELF_LIFE = "storage ceiling", "shelf life"
TAKE_IT = "type it as the least order"
TRIES = 6  # of quantity and offer, each of which asks for the other
HOURS_A_YEAR = 365.25 * HOURS_A_DAY


class NextBreak(NamedTuple):
    """Whether it is worth going to the next price break.

    Attributes
    ----------
    mass : float
        What would be ordered, whole packs, as delivered [kg].
    price, supplier
        Then [money/kg], and from whom.
    money : float
        Of that order [money].
    cost_now, cost_then : float
        Of buying for a year at this order, and at the larger one [money/year].
    worth : bool
        Whether to go there.
    why : str
        The answer in a few words.
    """

    mass: float
    price: float
    supplier: str
    money: float
    cost_now: float
    cost_then: float
    worth: bool
    why: str


class Sized(NamedTuple):
    """An order as it comes out; no packs where nothing can be ordered."""

    packs: int
    deal: Deal
    told: list[str]
    conflicts: list[tuple[str, str]]
    next_break: NextBreak | None = None


class Asked(NamedTuple):
    """What is known on the day on which an order would arrive; masses at the listed strength [kg].

    Attributes
    ----------
    at : int
        The day.
    have, as_it_is : float
        In store and usable; and as it is, whatever its strength.
    wanted : float
        Need of the day, with what is owed.
    safety : float
        Safety stock.
    coming : float
        Comes from other orders within the time that one order covers.
    sizing : Sizing
        Needs to come.
    """

    at: int
    have: float
    as_it_is: float
    wanted: float
    safety: float
    coming: float
    sizing: Sizing

    @property
    def least(self) -> float:
        """What is missing to the safety stock [kg]."""
        return self.safety + self.wanted - self.have

    @property
    def short(self) -> float:
        """What is missing to the need of the day [kg]."""
        return max(self.wanted - self.have, 0.0)


class Sizing:
    """Needs of all days, for sums over some of them.

    Parameters
    ----------
    need : sequence of float
        Of each day [kg].
    daily : float
        Mean need, which is taken behind the last day [kg/day].
    """

    def __init__(self, need: Sequence[float], daily: float) -> None:
        self.daily = daily
        self._until = [0.0, *accumulate(need)]

    def on(self, at: int, have: float, as_it_is: float, wanted: float, safety: float, coming: float) -> Asked:
        """All that is known on a day."""
        return Asked(at, have, as_it_is, wanted, safety, coming, self)

    def after(self, at: int, days: int, beyond: bool) -> float:
        """Need of so many days behind a day; behind the last day that is known, the mean or nothing [kg]."""
        last = len(self._until) - 1
        end = min(at + 1 + days, last)
        known = self._until[max(end, 0)] - self._until[min(at + 1, last)]
        more = max(at + 1 + days - last, 0) if beyond else 0
        return max(known, 0.0) + more * self.daily


def size_order(
    terms: PurchaseTerms, asked: Asked, deals: Deals, placed: datetime.date, listed_strength: float
) -> Sized:
    """Packs of an order that arrives on a day.

    Parameters
    ----------
    terms : PurchaseTerms
        Of the material.
    asked : Asked
        What is known on that day.
    deals : Deals
        What is offered.
    placed : date
        On which it is ordered.
    listed_strength : float
        By which needs count [fraction].
    """
    wanted = max(asked.least, _by_rule(terms, asked, deals, placed, listed_strength))
    packs, deal = _packs(terms, wanted, deals, placed, listed_strength)
    pack = terms.pack_mass * deal.strength / listed_strength
    least = _whole_up(terms.minimum_order / terms.pack_mass)
    told: list[str] = []
    conflicts: list[tuple[str, str]] = []
    in_time, room = most_in_time(terms, asked, pack), most_in_room(terms, asked)
    if in_time is not None and packs > in_time:
        needed = _whole_up(asked.short / pack)
        cut = max(in_time, needed)
        if cut < max(least, 1):
            cut = max(least, needed, 1) if needed else 0
        if not cut:
            text = (
                f"in its life {in_time * terms.pack_mass:,.0f} kg of an order would be used; "
                f"{_least(terms)}; nothing is ordered for the safety stock alone"
            )
            return Sized(0, deal, told, [(SHELF_LIFE, text)])
        if cut > in_time:
            lost = cut * pack - max(in_time_mass(terms, asked), 0.0)
            ordered = f"{cut} x {terms.pack_named} are ordered"
            text = f"{ordered}; of it about {lost:,.0f} kg will not be used in time"
            conflicts = [(SHELF_LIFE, text)]
        if cut < packs:
            told.append(f"{packs} packs cut to {cut}: more would not be used within the shelf life")
        packs = cut
    if room is not None and packs > room:
        if room < max(least, 1):
            text = (
                f"room is left for {(terms.storage_ceiling or 0.0) - asked.as_it_is:,.0f} kg of the "
                f"ceiling of {terms.storage_ceiling:,.0f} kg; {_least(terms)}; "
                "nothing is ordered for this day"
            )
            return Sized(0, deal, told, [*conflicts, (CEILING, text)])
        told.append(f"{packs} packs cut to {room}: more has no room below the storage ceiling")
        packs = room
    mass = packs * terms.pack_mass
    final = deals.deal(terms.material, mass, placed, terms.supplier)
    ask = next_break(terms, asked, deals, placed, final, mass, listed_strength)
    return Sized(packs, final, told, conflicts, ask)


def _by_rule(
    terms: PurchaseTerms, asked: Asked, deals: Deals, placed: datetime.date, listed_strength: float
) -> float:
    """What the order rule asks for, at the listed strength [kg]."""
    if terms.order_rule == FOR_A_TIME:
        days = max(round((terms.cover_time or 0.0) / HOURS_A_DAY) - 1, 0)  # the day itself is one of them
        return asked.least + asked.sizing.after(asked.at, days, beyond=False) - asked.coming
    if terms.order_rule == ECONOMIC and asked.sizing.daily:
        steps = [
            (one.from_quantity * one.strength / listed_strength, one.price * listed_strength / one.strength)
            for one in deals.breaks(terms.material, placed, terms.supplier)
            if one.price
        ]
        if steps:
            rate = asked.sizing.daily / HOURS_A_DAY
            return best_of_breaks(rate, steps, terms.order_charge, terms.holding_rate)[0]
    return 0.0


def _packs(
    terms: PurchaseTerms, wanted: float, deals: Deals, placed: datetime.date, listed_strength: float
) -> tuple[int, Deal]:
    """Whole packs for what is wanted, and the offer that counts for so many."""
    least = max(_whole_up(terms.minimum_order / terms.pack_mass), 1)
    mass = max(wanted, terms.pack_mass)
    packs, deal = least, deals.deal(terms.material, mass, placed, terms.supplier)
    for _ in range(TRIES):
        packs = max(_whole_up(wanted * listed_strength / deal.strength / terms.pack_mass), least)
        again = deals.deal(terms.material, packs * terms.pack_mass, placed, terms.supplier)
        if again.strength == deal.strength:
            return packs, again
        deal = again
    return packs, deal


def in_time_mass(terms: PurchaseTerms, asked: Asked) -> float:
    """What is used of an order before it expires, when what is in store goes first [kg]."""
    days = life_of(terms.shelf_life) or 0
    return asked.wanted + asked.sizing.after(asked.at, days, beyond=True) - asked.have


def most_in_time(terms: PurchaseTerms, asked: Asked, pack: float) -> int | None:
    """Whole packs that are used before they expire; None where the product keeps."""
    if terms.shelf_life is None:
        return None
    return max(math.floor(in_time_mass(terms, asked) / pack + DUST), 0)


def most_in_room(terms: PurchaseTerms, asked: Asked) -> int | None:
    """Whole packs that have room below the storage ceiling; None where there is none."""
    if terms.storage_ceiling is None:
        return None
    return max(math.floor((terms.storage_ceiling - asked.as_it_is) / terms.pack_mass + DUST), 0)


def next_break(
    terms: PurchaseTerms,
    asked: Asked,
    deals: Deals,
    placed: datetime.date,
    now: Deal,
    mass: float,
    listed_strength: float,
) -> NextBreak | None:
    """Compare an order with one that reaches the next lower price; None where there is none.

    Parameters
    ----------
    terms, asked, deals, placed, listed_strength
        As of `size_order`.
    now : Deal
        What counts for the order.
    mass : float
        Of the order, as delivered [kg].
    """
    daily = asked.sizing.daily
    if not now.price or not daily:
        return None
    of_active = now.price / now.strength
    for then in deals.breaks(terms.material, placed, terms.supplier):
        if then.from_quantity <= mass or not then.price or then.price / then.strength >= of_active:
            continue
        packs = _whole_up(then.from_quantity / terms.pack_mass)
        costs = []
        for deal, ordered in ((now, mass), (then, packs * terms.pack_mass)):
            share = deal.strength / listed_strength
            assert deal.price is not None
            rate = cost_of_buying(
                daily / HOURS_A_DAY,
                ordered * share,
                deal.price / share,
                terms.order_charge,
                terms.holding_rate,
            )
            costs.append(float(rate) * HOURS_A_YEAR)
        pack = terms.pack_mass * then.strength / listed_strength
        in_time, room = most_in_time(terms, asked, pack), most_in_room(terms, asked)
        saved = costs[0] - costs[1]
        if room is not None and packs > room:
            worth, why = False, f"no: over the storage ceiling of {terms.storage_ceiling:,.0f} kg"
        elif in_time is not None and packs > in_time:
            lost = (packs - in_time) * terms.pack_mass
            worth, why = False, f"no: about {lost:,.0f} kg would not be used within the shelf life"
        elif saved > 0.0:
            worth, why = True, f"yes: saves {saved:,.0f} a year, holding counted; {TAKE_IT}"
        else:
            worth, why = False, f"no: costs {-saved:,.0f} more a year, holding counted"
        ordered = packs * terms.pack_mass
        money = ordered * then.price + terms.order_charge
        return NextBreak(ordered, then.price, then.supplier, money, costs[0], costs[1], worth, why)
    return None


def _least(terms: PurchaseTerms) -> str:
    """The smallest order, in words."""
    if terms.minimum_order > terms.pack_mass:
        return f"the least order is {terms.minimum_order:,.0f} kg in {terms.pack_named}"
    return f"the least order is a {terms.pack_named}"


def _whole_up(count: float) -> int:
    """The next whole number; what misses one by its last digits is one."""
    return math.ceil(count - DUST)
