"""One material day by day: stock, need and arrivals, and the orders that keep the safety stock."""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence

from costing.purchasing.deals import Deal, Deals
from costing.purchasing.material_plan import LEAST_TOLD, Conflict, MaterialPlan, Proposal, Shortage
from costing.purchasing.order_size import CEILING, Sizing, size_order
from costing.purchasing.reordering import reorder_point, safety_stock
from costing.purchasing.stock import NEVER, Expired, Lot, Stock, life_of, lot_of_batch
from costing.settings.stock import HOURS_A_DAY, OpenOrder, PurchaseTerms, StockBatch

WEEK = 7


def plan_material(
    material: str,
    need: Sequence[float],
    start: datetime.date,
    terms: PurchaseTerms | None,
    batches: Sequence[StockBatch],
    open_orders: Sequence[OpenOrder],
    deals: Deals,
    delay: int = 0,
    known: int | None = None,
) -> MaterialPlan:
    """Project one material and propose its orders.

    In the morning what has expired goes out and what was ordered comes in; then the need is drawn, after what
    is owed. Where the stock would then be below the safety stock, an order arrives in the morning of that
    day; one that would have to be placed before the first day is placed on it, and is late.

    Parameters
    ----------
    material : str
        Its code.
    need : sequence of float
        Of each day, as delivered at the listed strength [kg].
    start : date
        The first day: no order is placed before it.
    terms : PurchaseTerms or None
        None: nothing is ordered.
    batches, open_orders : sequence
        Of this material.
    deals : Deals
        What is offered.
    delay : int, optional
        Days by which everything comes later [day].
    known : int, optional
        Days whose need is known, over which the mean is taken [day]; all of them where it is left out. Behind
        them no need is no news: a longer plan of the same orders has the same safety stock.
    """
    run = _Run(material, need, start, terms, deals, delay, len(need) if known is None else known)
    for batch in batches:
        run.take_in(batch)
    for order in open_orders:
        run.expect(order)
    opening = run.stock.usable
    for day in range(len(need)):
        run.live(day)
    return run.plan(opening)


class _Run:
    """One run through the days of one material."""

    def __init__(
        self,
        material: str,
        need: Sequence[float],
        start: datetime.date,
        terms: PurchaseTerms | None,
        deals: Deals,
        delay: int,
        known: int,
    ) -> None:
        self.material, self.need, self.start = material, need, start
        self.terms, self.deals, self.delay = terms, deals, delay
        self.ordinal = start.toordinal()
        self.strength = deals.strength(material)
        self.stock = Stock(material, life_of(terms.keeping_time) if terms else None)
        self.coming: dict[int, list[Lot]] = {}
        self.use_rate = math.fsum(need) / (known * HOURS_A_DAY) if need else 0.0
        self.safety = self._safety()
        self.owed = self.used = self.arrived = 0.0
        self.below: int | None = None  # day from which the stock is below the safety stock
        self.left: list[float] = []
        self.most, self.most_at = 0.0, 0
        self.proposals: list[Proposal] = []
        self.shortages: list[Shortage] = []
        self.expired: list[Expired] = []
        self.conflicts: dict[str, Conflict] = {}
        self.open_orders: list[tuple[OpenOrder, datetime.date, Deal]] = []
        self.sizing = Sizing(need[:known], self.use_rate * HOURS_A_DAY) if terms else None

    def _safety(self) -> float:
        terms = self.terms
        if terms is None or not self.use_rate:
            return 0.0
        week = WEEK * HOURS_A_DAY
        spread = terms.need_spread * self.use_rate * week
        found: float = safety_stock(
            terms.service_level, self.use_rate, spread, week, terms.lead_time, terms.lead_time_spread
        )
        return found

    def day(self, at: int) -> datetime.date:
        return datetime.date.fromordinal(self.ordinal + at)

    def take_in(self, batch: StockBatch) -> None:
        terms = self.terms
        deal = self.deals.deal(self.material, batch.stock_mass, self.start, terms.supplier if terms else "")
        keeping = life_of(terms.keeping_time) if terms else None
        pack = terms.pack_mass if terms else batch.stock_mass
        self.stock.put(lot_of_batch(batch, self.strength, pack, keeping, deal.price))
        self._note_most(0)

    def expect(self, order: OpenOrder) -> None:
        """Note an order that was placed before; one whose day is past is counted on the first day."""
        at = max((order.arrival - self.start).days, 0) + self.delay
        supplier = self.deals.spelled(self.material, order.supplier)
        deal = self.deals.deal(self.material, order.order_mass, self.start, supplier)
        self.open_orders.append((order, self.day(at), deal))
        pack = self.terms.pack_mass if self.terms else order.order_mass
        lot = Lot(f"order {order.order}", order.order_mass, self._expiry(at), pack, 1.0, deal.price)
        self.coming.setdefault(at, []).append(lot)

    def _expiry(self, at: int) -> int:
        life = life_of(self.terms.shelf_life) if self.terms else None
        return NEVER if life is None else self.ordinal + at + life

    def live(self, at: int) -> None:
        """One day."""
        day = self.ordinal + at
        self.expired += self.stock.take_out_expired(day)
        for lot in self.coming.pop(at, ()):
            self._arrive(lot, at)
            self._check_ceiling(at, lot)
        wanted = self.need[at] + self.owed
        if self.terms is not None:
            self._keep_safe(at, wanted)
        drawn = self.stock.draw(day, wanted)
        self.used += drawn
        self.owed = wanted - drawn
        self.left.append(self.stock.usable)
        self._note_shortage(at)

    def _arrive(self, lot: Lot, at: int) -> None:
        self.arrived += lot.mass
        self.stock.put(lot)
        self._note_most(at)

    def _note_most(self, at: int) -> None:
        """Note the largest stock; it only grows when something comes in."""
        held = self.stock.as_it_is
        if held > self.most + LEAST_TOLD:
            self.most, self.most_at = held, at

    def _check_ceiling(self, at: int, lot: Lot) -> None:
        ceiling = self.terms.storage_ceiling if self.terms else None
        if ceiling is not None and self.stock.as_it_is > ceiling + LEAST_TOLD:
            held = self.stock.as_it_is
            text = f"with {lot.batch} {held:,.0f} kg are in store; the ceiling is {ceiling:,.0f} kg"
            self._conflict(at, CEILING, text)

    def _conflict(self, at: int, kind: str, text: str) -> None:
        known = self.conflicts.get(kind)
        self.conflicts[kind] = (
            Conflict(self.material, kind, self.day(at), 1, text)
            if known is None
            else known._replace(days=known.days + 1)
        )

    def _keep_safe(self, at: int, wanted: float) -> None:
        """Let an order come this morning where the stock would else end below the safety stock."""
        assert self.terms is not None
        assert self.sizing is not None
        have = self.stock.usable
        if have - wanted >= self.safety - LEAST_TOLD:
            self.below = None
            return
        if self.below is None:
            self.below = at
        lead = self.terms.lead_days + self.delay
        if at < lead:
            return
        placed = self.day(at - lead)
        found = size_order(
            self.terms,
            self.sizing.on(at, have, self.stock.as_it_is, wanted, self.safety, self._coming_within(at)),
            self.deals,
            placed,
            self.strength,
        )
        for kind, text in found.conflicts:
            self._conflict(at, kind, text)
        if not found.packs:
            return
        deal, mass = found.deal, found.packs * self.terms.pack_mass
        counted = mass * deal.strength / self.strength
        arrival = self.day(at)
        self.proposals.append(
            Proposal(
                self.material,
                deal.supplier,
                placed,
                arrival,
                self.day(self.below),
                found.packs,
                self.terms.pack_kind,
                mass,
                counted,
                deal.price,
                None if deal.price is None else deal.price * mass + self.terms.order_charge,
                deal.why,
                arrival + datetime.timedelta(days=round(self.terms.payment_time / HOURS_A_DAY)),
                at == lead and self.below < at,
                tuple(found.told),
                found.next_break,
            )
        )
        share = deal.strength / self.strength
        name = f"order placed {placed}"
        pack = self.terms.pack_mass * share
        self._arrive(Lot(name, counted, self._expiry(at), pack, 1.0 / share, deal.price), at)
        self.below = None

    def _coming_within(self, at: int) -> float:
        """What was ordered before and comes within the time that one order covers [kg]."""
        assert self.terms is not None
        days = round((self.terms.cover_time or 0.0) / HOURS_A_DAY)
        return math.fsum(
            lot.mass for day, lots in self.coming.items() if at < day < at + days for lot in lots
        )

    def _note_shortage(self, at: int) -> None:
        today, before = self.day(at), self.shortages[-1] if self.shortages else None
        going_on = before is not None and not before.met
        if self.owed > LEAST_TOLD:
            if going_on:
                assert before is not None
                self.shortages[-1] = before._replace(last=today, most=max(before.most, self.owed))
            else:
                self.shortages.append(Shortage(self.material, today, today, self.owed, False))
        elif going_on:
            assert before is not None
            self.shortages[-1] = before._replace(met=True)

    def plan(self, opening: float) -> MaterialPlan:
        lead = self.terms.lead_time if self.terms else 0.0
        return MaterialPlan(
            self.material,
            self.terms,
            self.start,
            self.left,
            opening,
            self.arrived,
            self.used,
            math.fsum(self.need),
            self.owed,
            self.use_rate,
            self.safety,
            float(reorder_point(self.use_rate, lead, self.safety)),
            self.proposals,
            self.shortages,
            self.expired,
            list(self.conflicts.values()),
            self.open_orders,
            self.most,
            self.day(self.most_at),
        )
