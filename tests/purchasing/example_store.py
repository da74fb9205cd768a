"""A store of one product, and a mill whose price list has it, for the tests of purchasing."""

from __future__ import annotations

import dataclasses
import datetime
from typing import Any

from costing.purchasing.deals import Deals
from costing.purchasing.material_plan import MaterialPlan
from costing.purchasing.proposals import plan_material
from costing.settings.material import Material
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import MaterialOffers, Offer
from costing.settings.stock import OpenOrder, PurchaseTerms, StockBatch

START = datetime.date(2026, 1, 5)  # a Monday
CODE = "HYDRO-88"
DAY = 24.0  # [h]
YEAR = 365.25 * DAY

LISTED = Material(
    code=CODE,
    description="hydrosulfite, invented",
    role="reductant",
    substance="sodium_hydrosulfite",
    strength=0.88,
    remainder="inert",
    density=1.0,
    alkali=0.0,
    own_oxygen_demand=0.0,
    own_sodium=0.0,
    own_sulfur=0.0,
    own_nitrogen=0.0,
    price=2.0,
)
COSTS = MillCosts(
    currency="EUR",
    price_date=START,
    water_price=1.0,
    steam_price=0.03,
    power_price=0.1,
    effluent_charge=1.0,
    overhead=0.0,
    margin=0.0,
    money_rounding=0.01,
)
# No spread of anything: no safety stock, so that each rule stands alone.
TERMS = PurchaseTerms(
    material=CODE,
    pack_kind="drum",
    pack_mass=50.0,
    lead_time=3 * DAY,
    lead_time_spread=0.0,
    service_level=0.95,
    need_spread=0.0,
    holding_rate=0.2 / YEAR,
    payment_time=30 * DAY,
)


def on(day: int) -> datetime.date:
    """A day, counted from the first one."""
    return START + datetime.timedelta(days=day)


def mill_with(*offers: Offer, price: float | None = 2.0) -> Mill:
    """A mill with this product at one price, or with offers of it."""
    item = dataclasses.replace(LISTED, price=None if offers else price)
    mill = Mill(costs=COSTS, materials={CODE: item})
    if offers:
        mill.offers[CODE] = MaterialOffers(item, offers)
    return mill


def offer(price: float, least: float = 0.0, **more: Any) -> Offer:
    """An offer from a quantity on."""
    given: dict[str, Any] = {
        "material": CODE,
        "supplier": "supplier N",
        "price": price,
        "freight": 0.0,
        "price_by": "kg",
        "currency": "EUR",
        "price_terms": "delivered",
        "strength": 0.88,
        "from_quantity": least,
    }
    return Offer(**{**given, **more})


def batch(mass: float, expiry: int | None = None, name: str = "B1", **more: Any) -> StockBatch:
    """A batch in store; its last day is counted from the first one."""
    given = {"strength": 0.88, "expiry": None if expiry is None else on(expiry), **more}
    return StockBatch(CODE, name, mass, **given)


def coming(mass: float, day: int, name: str = "P1") -> OpenOrder:
    """An order that was placed before."""
    return OpenOrder(name, CODE, "supplier N", mass, on(day))


def planned(
    need: list[float],
    batches: tuple[StockBatch, ...] = (),
    open_orders: tuple[OpenOrder, ...] = (),
    mill: Mill | None = None,
    delay: int = 0,
    ordered: bool = True,
    **terms: Any,
) -> MaterialPlan:
    """The plan of that product with some of its terms changed; without terms where nothing is ordered."""
    own = dataclasses.replace(TERMS, **terms) if ordered else None
    return plan_material(CODE, need, START, own, batches, open_orders, Deals(mill or mill_with()), delay)
