"""What is fed to each box while the range runs: the liquors, what is weighed for them, and fresh water.

The amounts are those of the ledger's running lines. Their split into stock vat, dosing liquors and feed
liquors is that of the steps that made them. A litre of liquor counts as a kilogram of water, as in the
balance.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from costing.ledger.box_lot import BOXES
from costing.ledger.whole import Ledger
from costing.process.box import flows_of
from costing.process.mixing import WATER
from costing.process.other_reduction import reduced_otherwise
from costing.process.postings import STORE, Book, Posting
from costing.process.size_box import size_liquor
from costing.process.yarn import YarnState
from costing.reference_data import substances
from costing.settings.box_steps import Treatment
from costing.settings.dye_box_step import DyeBox
from costing.settings.material import Material
from costing.settings.rinse_step import Rinse
from costing.settings.sizing_step import Sizing
from costing.settings.steps import IndigoDyeing, Step

NOUGHT = 1e-12  # kg/kg: less is rounding
FULL = 0.99  # products that fill so much of a liquor are it: there is no room for water
STOCK, HYDROSULFITE, CAUSTIC = "stock vat", "hydrosulfite dosing", "caustic dosing"
FEED, SIZE, DELIVERED = "feed liquor", "size liquor", "as delivered"
FRESH = "fresh water"
# Roles of substances that are dosed from a line of their own: not to stand strong in one tank with others.
APART = ("oxidant", "acid")


class Feed(NamedTuple):
    """One feed of one box, per kilogram of grey yarn that runs.

    Attributes
    ----------
    step, name : str
        Box, and which of its feeds.
    products : dict
        Code -> product as delivered in it [kg/kg].
    water : float
        Fresh water in it [L/kg].
    volume : float or None
        Of the feed; None for a product that is weighed in [L/kg].
    mixed : bool
        True for a liquor that is made up in a tank.
    """

    step: str
    name: str
    products: dict[str, float]
    water: float
    volume: float | None
    mixed: bool


def taken(postings: Iterable[Posting]) -> dict[str, float]:
    """What postings take from the store, by material and as delivered [kg, L or kWh, per kg or in all]."""
    found: dict[str, float] = {}
    for _, material, _, _, amount, source, _ in postings:
        if material and source == STORE:
            found[material] = found.get(material, 0.0) + amount
    return found


def running_feeds(ledger: Ledger, materials: Mapping[str, Material]) -> list[Feed]:
    """Every feed of every box, in the order of the route.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    """
    found: list[Feed] = []
    for step, yarn in ledger.run.entering:
        amounts = taken(posting for posting in ledger.run.postings if posting[0] == step.name)
        feeds = _liquors(step, yarn, amounts, ledger, materials)
        water = amounts.get(WATER, 0.0) - sum(feed.water for feed in feeds)
        found += feeds
        if water > NOUGHT:
            found.append(Feed(step.name, _valve(step), {}, water, water, False))
    return found


def _liquors(
    step: Step,
    yarn: YarnState,
    amounts: Mapping[str, float],
    ledger: Ledger,
    materials: Mapping[str, Material],
) -> list[Feed]:
    """Every feed of a box but its water valve."""
    products = {code: amount for code, amount in amounts.items() if code in materials and amount > NOUGHT}
    if isinstance(step, IndigoDyeing):
        return _dye_bath(step, products, ledger, materials)
    if isinstance(step, Sizing):
        volume = size_liquor(step, yarn).feed / (1.0 - step.size_loss)
        return [Feed(step.name, SIZE, products, amounts.get(WATER, 0.0), volume, True)]
    if isinstance(step, (Treatment, DyeBox)) and _in_one_tank(products, materials):
        box = BOXES[step.KIND](step, yarn, materials)
        volume = flows_of(box, yarn).leaving / box.feed_ratio
        return [_made_up(step.name, FEED, products, volume, materials, amounts.get(WATER, 0.0))]
    return [_alone(step.name, code, amount, materials) for code, amount in products.items()]


def _in_one_tank(products: Mapping[str, float], materials: Mapping[str, Material]) -> bool:
    """True for products that may stand together, strong, in one feed tank."""
    held = [materials[code].substance for code in products]
    return bool(held) and not any(name and substances()[name].role in APART for name in held)


def _dye_bath(
    step: IndigoDyeing, products: dict[str, float], ledger: Ledger, materials: Mapping[str, Material]
) -> list[Feed]:
    """Stock vat, the two dosing liquors beside it, and what is left: the wetting agent."""
    feeds = ledger.run.feeds[step.name]
    rest = dict(products)
    stock: dict[str, float] = {}
    other, _ = reduced_otherwise(step, materials[step.indigo_product])
    for code, pure in (
        (step.indigo_product, feeds.indigo),
        (step.hydrosulfite_product, feeds.hydrosulfite_in_stock),
        (step.caustic_product, step.stock_caustic_ratio * feeds.indigo),
        (step.other_reductant_product, other.product_per_indigo * sum(feeds.reduced_otherwise.values())),
    ):
        if pure > NOUGHT:
            amount = pure / materials[code].strength
            stock[code] = amount
            rest[code] = rest.get(code, 0.0) - amount
    found = [_made_up(step.name, STOCK, stock, feeds.stock_volume, materials)]
    for name, code, strength in (
        (HYDROSULFITE, step.hydrosulfite_product, step.hydrosulfite_dosing),
        (CAUSTIC, step.caustic_product, step.caustic_dosing),
    ):
        amount = rest.pop(code, 0.0)
        if amount > NOUGHT:
            volume = amount * materials[code].strength / strength
            found.append(_made_up(step.name, name, {code: amount}, volume, materials))
    return [
        *found,
        *(_alone(step.name, code, amount, materials) for code, amount in rest.items() if amount > NOUGHT),
    ]


def _alone(step: str, code: str, amount: float, materials: Mapping[str, Material]) -> Feed:
    """A product fed as it is delivered: pumped where it is wet, weighed in where it is dry."""
    product = materials[code]
    volume = amount / product.density if product.remainder == WATER else None
    return Feed(step, DELIVERED, {code: amount}, 0.0, volume, False)


def _made_up(
    step: str,
    name: str,
    products: dict[str, float],
    volume: float,
    materials: Mapping[str, Material],
    most_water: float | None = None,
) -> Feed:
    """A liquor of products and water; without water where the products as delivered are it."""
    water = volume - water_in(products, materials)
    if most_water is not None:
        water = min(water, most_water)
    delivered = sum(amount / materials[code].density for code, amount in products.items())
    if water <= 0.0 or delivered >= FULL * volume:
        return Feed(step, name, products, 0.0, delivered, True)
    return Feed(step, name, products, water, volume, True)


def water_in(products: Mapping[str, float], materials: Mapping[str, Material]) -> float:
    """Water that products bring in their drums [L/kg]."""
    book = Book("")
    for code, amount in products.items():
        book.feed(materials[code], "", amount * materials[code].strength)
    return book.product_water


def _valve(step: Step) -> str:
    """Name of the water of a box."""
    if isinstance(step, Rinse):
        if step.boxes > 1.0:
            boxes = f"{step.boxes:.0f} boxes"
            counter = step.rinse_feed == "counter-current"
            return f"rinse water, last of {boxes}" if counter else f"rinse water, {boxes} together"
        return "rinse water"
    return FRESH
