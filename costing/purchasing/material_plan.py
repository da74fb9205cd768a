"""What a plan of one material tells: orders, shortages, terms against each other, and the projection."""

from __future__ import annotations

import datetime
from typing import NamedTuple

from costing.purchasing.deals import Deal
from costing.purchasing.order_size import NextBreak
from costing.purchasing.stock import Expired
from costing.settings.stock import OpenOrder, PurchaseTerms

LEAST_TOLD = 1e-6  # [kg] less is no shortage


class Proposal(NamedTuple):
    """An order that should be placed.

    Attributes
    ----------
    material, supplier : str
        What, and from whom; "" where the book does not say.
    placed, arrival : date
        On which it is ordered, and comes.
    wanted : date
        On which the stock would be below the safety stock without it.
    packs, pack_kind : int, str
        Whole packs, and what they are.
    mass : float
        As delivered [kg].
    counted : float
        At the listed strength [kg].
    price : float or None
        At the gate [money/kg].
    money : float or None
        With the charge for an order [money].
    no_price : str
        Why there is no price.
    paid : date
        When it is paid.
    late : bool
        True where even an order of today comes after `wanted`.
    told : tuple of str
        What was cut, and why.
    next_break : NextBreak or None
        Whether the next price break is worth it.
    """

    material: str
    supplier: str
    placed: datetime.date
    arrival: datetime.date
    wanted: datetime.date
    packs: int
    pack_kind: str
    mass: float
    counted: float
    price: float | None
    money: float | None
    no_price: str
    paid: datetime.date
    late: bool
    told: tuple[str, ...] = ()
    next_break: NextBreak | None = None


class Shortage(NamedTuple):
    """Days on which a need is not met; it is met first when goods come.

    Attributes
    ----------
    material : str
        Of what.
    first, last : date
        Days on which something is owed, both in.
    most : float
        Owed at a time, at the listed strength [kg].
    met : bool
        False where it is still owed at the end.
    """

    material: str
    first: datetime.date
    last: datetime.date
    most: float
    met: bool


class Conflict(NamedTuple):
    """Terms that do not go together, so that an order is not as it should be, or is not placed.

    Attributes
    ----------
    material, kind : str
        Of what; and which term.
    first : date
        On which it shows first.
    days : int
        On how many days it shows.
    text : str
        What stands against what, on the first day.
    """

    material: str
    kind: str
    first: datetime.date
    days: int
    text: str


class MaterialPlan(NamedTuple):
    """The projection of one material.

    Attributes
    ----------
    material : str
        Its code.
    terms : PurchaseTerms or None
        None where the book has none: then nothing is ordered.
    start : date
        The first day.
    left : list of float
        In store behind the need of each day, at the listed strength [kg].
    opening, arrived, used, needed, owed : float
        In store and usable or not on the first morning; came; was drawn; was needed; is still owed [kg].
    use_rate : float
        Mean need [kg/h].
    safety, reorder : float
        Safety stock and re-order point [kg].
    proposals, shortages, expired, conflicts
        What is told of it.
    open_orders : list of (OpenOrder, date, Deal)
        What was ordered before, on which day it comes, and its price of the first day.
    most, most_on : float, date
        The largest stock as it is, expired batches in until they go out, and the first day of it [kg].
    """

    material: str
    terms: PurchaseTerms | None
    start: datetime.date
    left: list[float]
    opening: float
    arrived: float
    used: float
    needed: float
    owed: float
    use_rate: float
    safety: float
    reorder: float
    proposals: list[Proposal]
    shortages: list[Shortage]
    expired: list[Expired]
    conflicts: list[Conflict]
    open_orders: list[tuple[OpenOrder, datetime.date, Deal]]
    most: float
    most_on: datetime.date

    @property
    def runs_out(self) -> datetime.date | None:
        """The first day on which a need is not met."""
        return self.shortages[0].first if self.shortages else None

    @property
    def below_safety(self) -> datetime.date | None:
        """The first day that ends below the safety stock."""
        day = next((at for at, left in enumerate(self.left) if left < self.safety - LEAST_TOLD), None)
        return None if day is None else self.start + datetime.timedelta(days=day)
