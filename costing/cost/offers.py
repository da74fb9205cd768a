"""Which offer of a material counts on a day, and the mill with the prices and strengths of those."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from costing.cost.money import delivered_price, price_of_pure_substance
from costing.quantities.checking import number_text
from costing.settings.building import Entry
from costing.settings.drain import Drain
from costing.settings.material import Material
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import (
    ALWAYS,
    LISTED_STRENGTH,
    NO,
    ExchangeRate,
    MaterialOffers,
    Offer,
    first_rates,
    rates_on,
)

MOST_TOLD = 6  # offers that a refusal tells


class Standing(NamedTuple):
    """What an offer is on a day.

    Attributes
    ----------
    offer : Offer
        The offer.
    delivered, active : float or None
        Its price at the mill's gate, in the mill's money, as delivered and for the active part [money/kg];
        None where its money has no rate on that day.
    hindered : str
        Why it does not count; "" where it does.
    chosen : bool
        True for the one that is bought from.
    """

    offer: Offer
    delivered: float | None
    active: float | None
    hindered: str
    chosen: bool = False


def standings(listed: MaterialOffers, costs: MillCosts) -> list[Standing]:
    """What each offer of a material is on the day of the prices; one of them at most is chosen.

    Of the offers that are valid on that day those count whose break the usual purchase reaches; where no
    usual purchase is given, those of the smallest break. Of these the one with the lowest price of the active
    part at the gate is chosen, among those marked "always" where there are such. Where one that counts has
    no rate on that day none is chosen: it might be the cheapest.

    Parameters
    ----------
    listed : MaterialOffers
        Of one material.
    costs : MillCosts
        Whose day and rates count.
    """
    found = [_priced(offer, costs)._replace(hindered=_when(offer, costs.day)) for offer in listed.offers]
    breaks = [one.offer.from_quantity for one in found if not one.hindered]
    bought = listed.usual_purchase
    reach = min(breaks, default=0.0) if bought is None else bought
    for at, one in enumerate(found):
        if not one.hindered and one.offer.from_quantity > reach:
            told = "usual purchase is empty" if bought is None else f"usual purchase is {_mass(bought)}"
            found[at] = one._replace(hindered=f"from {_mass(one.offer.from_quantity)} on; {told}")
    counting = [at for at, one in enumerate(found) if not one.hindered]
    if all(found[at].active is not None for at in counting):
        first = [at for at in counting if found[at].offer.offer_counts == ALWAYS] or counting
        best = min(first, key=lambda at: found[at].active or 0.0, default=None)
        if best is not None:
            found[best] = found[best]._replace(chosen=True)
    return found


def _priced(offer: Offer, costs: MillCosts) -> Standing:
    currency = offer.currency or costs.currency
    rate = 1.0 if currency == costs.currency else costs.exchange_rates.get(currency)
    if rate is None:
        return Standing(offer, None, None, "")
    gate: float = delivered_price(offer.price, offer.freight, rate)
    return Standing(offer, gate, price_of_pure_substance(gate, offer.strength), "")


def _when(offer: Offer, day: datetime.date) -> str:
    """Why an offer does not count on a day whatever is bought; "" where it may."""
    if offer.offer_counts == NO:
        return "marked no"
    if offer.valid_from and day < offer.valid_from:
        return f"will be valid from {offer.valid_from}"
    if offer.valid_to and day > offer.valid_to:
        return f"was valid to {offer.valid_to}"
    return ""


def _mass(kilograms: float) -> str:
    return f"{number_text(kilograms)} kg"


def no_price(listed: MaterialOffers, found: Sequence[Standing], costs: MillCosts) -> str:
    """Why a material has no price on a day: each of its offers, and what is accepted."""
    told = [
        f"{one.offer.named} {one.hindered or f'is in {one.offer.currency}, which has no rate on that day'}"
        for one in found
        if one.hindered or one.active is None
    ]
    more = f"; and {len(told) - MOST_TOLD} more" if len(told) > MOST_TOLD else ""
    without_rate = any(not one.hindered for one in found)
    accepted = "a rate of that day or before" if without_rate else "an offer that is valid on that day"
    return (
        f"material {listed.listed.code!r} has no price on {costs.day}: {'; '.join(told[:MOST_TOLD])}{more}; "
        f"accepted is {accepted}"
    )


def costs_on(costs: MillCosts, rates: Sequence[ExchangeRate], day: datetime.date | None = None) -> MillCosts:
    """The same costs with the exchange rates of a day; of their own day where it is left out."""
    chosen = costs if day is None else replace(costs, prices_as_of=day)
    if not rates:
        return chosen
    return replace(chosen, exchange_rates={**rates_on(rates, chosen.day), costs.currency: 1.0})


def mill_on(mill: Mill, day: datetime.date | None = None) -> Mill:
    """The same mill with the offers and exchange rates of a day.

    Parameters
    ----------
    mill : Mill
        As it was read, or of another day.
    day : date, optional
        The day; that of the book where it is left out.

    Returns
    -------
    Mill
        A material none of whose offers counts has no price, and says why: what uses it is refused.
    """
    if mill.costs is None:
        return mill
    costs = costs_on(mill.costs, mill.rates, day)
    other = replace(
        mill,
        costs=costs,
        materials=dict(mill.materials),
        given=dict(mill.given),
        assumptions=dict(mill.assumptions),
        calibrated=dict(mill.calibrated),
        _built={},  # a dose of caustic may count on the strength of the product
    )
    if isinstance(mill._drain, Drain):
        other.keep_drain(replace(mill._drain))  # without what was worked out of it
    begin = first_rates(mill.rates)
    for code, item in mill.materials.items():
        late = begin.get(item.currency)
        if late is not None and code not in mill.offers:
            other.materials[code] = _of_late_money(item, costs, late)
    for code, listed in mill.offers.items():
        found = standings(listed, costs)
        chosen = next((one.offer for one in found if one.chosen), None)
        strength = listed.listed.strength if chosen is None else chosen.strength
        cell = mill.cell_of("material", code, LISTED_STRENGTH) if chosen is None else chosen.strength_where
        if chosen is None:
            other.materials[code] = replace(listed.listed, no_price=no_price(listed, found, costs))
        else:
            other.materials[code] = bought_from(listed.listed, chosen)
        entries = mill.given.get(("material", code), {})
        other.given["material", code] = {**entries, "strength": Entry(strength, cell)}
    return other


def _of_late_money(item: Material, costs: MillCosts, begin: datetime.date) -> Material:
    """A material whose price is refused on a day on which its money has no rate yet."""
    text = ""
    if item.price is not None and item.currency not in costs.exchange_rates:
        text = (
            f"the rates of {item.currency!r}, the currency of material {item.code!r}, begin on {begin}, "
            f"after {costs.day}; accepted is a rate of that day or before"
        )
    return item if item.no_price == text else replace(item, no_price=text)


def bought_from(listed: Material, offer: Offer) -> Material:
    """A material of the sheet Materials with price and strength of an offer.

    Raises
    ------
    InputError
        The strength of the offer does not go with what else the material holds.
    """
    return replace(
        listed,
        strength=offer.strength,
        price=offer.price,
        price_by=offer.price_by,
        freight=offer.freight,
        currency=offer.currency,
        price_date=offer.valid_from,
        supplier=offer.supplier,
        price_until=offer.valid_to,
    )
