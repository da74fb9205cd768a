"""Whether the next price break of a material is worth buying: which one counts, and what the next saves."""

from __future__ import annotations

from typing import NamedTuple

from costing.cost.offers import Standing, standings
from costing.cost.quote import Quote
from costing.ledger.remarks import Remark, located
from costing.quantities.checking import number_text
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import MaterialOffers

USUAL_PURCHASE = "usual_purchase"


class NextBreak(NamedTuple):
    """The price break that counts, and the next one at which the active part is cheaper.

    Attributes
    ----------
    now, then : Standing
        What is bought from now, and what would be from the next break on.
    from_quantity : float
        The next break [kg].
    """

    now: Standing
    then: Standing
    from_quantity: float

    @property
    def saved(self) -> float:
        """Of a kilogram as it is bought now, for the same active part [money/kg]."""
        return price_saved(self.now.active or 0.0, self.then.active or 0.0, self.now.offer.strength)

    @property
    def saved_share(self) -> float:
        """Of the price [fraction]."""
        return 1.0 - (self.then.active or 0.0) / (self.now.active or 1.0)


def price_saved(price_before: float, price_after: float, strength: float) -> float:
    """What a kilogram as it is bought now would be cheaper, for the same active part.

    Parameters
    ----------
    price_before, price_after : float
        Of the active part [money/kg].
    strength : float
        Of what is bought now [fraction].

    Returns
    -------
    float
        [money/kg]

    Examples
    --------
    Hydrosulfite of 88 % at 1.48, and of 85 % at 1.36 from a larger purchase:

    >>> round(price_saved(1.48 / 0.88, 1.36 / 0.85, 0.88), 3)
    0.072
    """
    return (price_before - price_after) * strength


def next_break(listed: MaterialOffers, costs: MillCosts) -> NextBreak | None:
    """The next price break that makes a material cheaper on the day of the prices; None where none does.

    Parameters
    ----------
    listed : MaterialOffers
        Of one material.
    costs : MillCosts
        Whose day and rates count.
    """
    largest = max((offer.from_quantity for offer in listed.offers), default=0.0)
    if largest <= (listed.usual_purchase or 0.0):
        return None
    now = _chosen(listed, costs)
    if now is None or now.active is None:
        return None
    reach = now.offer.from_quantity if listed.usual_purchase is None else listed.usual_purchase
    for quantity in sorted({offer.from_quantity for offer in listed.offers}):
        if quantity > reach:
            then = _chosen(listed._replace(usual_purchase=quantity), costs)
            if then is not None and then.active is not None and then.active < now.active:
                return NextBreak(now, then, quantity)
    return None


def _chosen(listed: MaterialOffers, costs: MillCosts) -> Standing | None:
    return next((one for one in standings(listed, costs) if one.chosen), None)


def taken_by_order(offer: Quote, saleable_mass: float, code: str) -> float:
    """What an order takes of a material, as delivered [kg]."""
    return saleable_mass * sum(line.amount for line in offer.lines if line.material == code)


def break_remarks(offer: Quote, saleable_mass: float, mill: Mill) -> list[Remark]:
    """Say which price break was taken where the book does not, or where the order alone reaches the next.

    The size of an order chooses no break: the mill buys for more orders than one. So this is for the clerk.

    Parameters
    ----------
    offer : Quote
        The quote.
    saleable_mass : float
        Grey yarn of the order that `offer` counts by [kg].
    mill : Mill
        The book with the offers.
    """
    found: list[Remark] = []
    if mill.costs is None:
        return found
    for code in dict.fromkeys(line.material for line in offer.lines):
        ahead = next_break(mill.offers[code], mill.costs) if code in mill.offers else None
        if ahead is None:
            continue
        usual, taken = mill.offers[code].usual_purchase, taken_by_order(offer, saleable_mass, code)
        if usual is not None and taken < ahead.from_quantity:
            continue
        least = ahead.now.offer.from_quantity
        told = f"usual purchase is {_kg(usual or 0.0)}"
        if usual is None:
            counts = f"from {_kg(least)} on" if least else "any purchase"
            told = f"usual purchase is empty: the smallest break counts, {counts}"
        text = (
            f"{told}; from {_kg(ahead.from_quantity)} on the active part costs "
            f"{100 * ahead.saved_share:.3g} % less; this order takes {_kg(float(f'{taken:.3g}'))}"
        )
        where = located(f"material {code}", mill.cell_of("material", code, USUAL_PURCHASE))
        found.append(Remark("note", where, text))
    return found


def _kg(mass: float) -> str:
    return f"{number_text(mass)} kg"
