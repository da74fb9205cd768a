"""What a material costs at the gate when so much of it is ordered on a day, and from whom it then comes."""

from __future__ import annotations

import datetime
from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from costing.cost.money import delivered_price
from costing.cost.offers import costs_on, no_price, standings
from costing.quantities import InputError, listed, meant
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts


class Deal(NamedTuple):
    """A purchase as it would be made.

    Attributes
    ----------
    supplier : str
        "" where the book does not say.
    price : float or None
        At the gate, in the mill's money [money/kg]; None where there is none.
    strength : float
        Of what comes [fraction].
    from_quantity : float
        Purchase from which the price holds [kg].
    why : str
        Why there is no price; "" where there is one.
    """

    supplier: str
    price: float | None
    strength: float
    from_quantity: float = 0.0
    why: str = ""


class _Steps(NamedTuple):
    """What counts at each quantity from which another price holds, on days on which nothing changes."""

    quantities: list[float]
    deals: list[Deal]


class Deals:
    """The offers of a mill, asked by material, quantity, day and supplier.

    A plan asks many times. So the days are parted where an offer or a rate begins or ends, and the offers of
    each part are compared once for each of their quantities.

    Parameters
    ----------
    mill : Mill
        With costs.
    """

    def __init__(self, mill: Mill) -> None:
        if mill.costs is None:
            raise InputError("mill costs", "the book holds no mill costs")
        self._mill = mill
        self._costs: MillCosts = mill.costs
        self._changes: dict[str, list[datetime.date]] = {}
        self._steps: dict[tuple[str, int, str], _Steps] = {}

    def strength(self, material: str) -> float:
        """The strength that a need of a material counts by [fraction]."""
        return self._mill.material(material).strength

    def deal(self, material: str, mass: float, day: datetime.date, supplier: str = "") -> Deal:
        """The offer that counts for so much on a day.

        Parameters
        ----------
        material : str
            Its code.
        mass : float
            Ordered at once, as delivered [kg].
        day : date
            Of the order.
        supplier : str, optional
            The only one that is asked.
        """
        steps = self._steps_of(material, day, supplier)
        place = bisect_right(steps.quantities, mass)
        return steps.deals[place - 1] if place else self._made(material, mass, day, supplier)

    def breaks(self, material: str, day: datetime.date, supplier: str = "") -> list[Deal]:
        """What counts at each quantity from which another price holds, the smallest quantity first."""
        return [one for one in self._steps_of(material, day, supplier).deals if one.price is not None]

    def _steps_of(self, material: str, day: datetime.date, supplier: str) -> _Steps:
        if material not in self._changes:
            self._changes[material] = self._changes_of(material)
        key = material, bisect_right(self._changes[material], day), supplier
        found = self._steps.get(key)
        if found is None:
            offers = self._mill.offers.get(material)
            quantities = sorted({one.from_quantity for one in offers.offers}) if offers else [0.0]
            made = [
                self._made(material, least, day, supplier)._replace(from_quantity=least)
                for least in quantities
            ]
            found = self._steps[key] = _Steps(quantities, made)
        return found

    def _changes_of(self, material: str) -> list[datetime.date]:
        """Days from which an offer or a rate is another one than on the day before."""
        days = {rate.since for rate in self._mill.rates}
        for offer in self._mill.offers[material].offers if material in self._mill.offers else ():
            days |= {offer.valid_from, offer.valid_to and offer.valid_to + datetime.timedelta(days=1)}
        return sorted(day for day in days if day)

    def _made(self, material: str, mass: float, day: datetime.date, supplier: str) -> Deal:
        offered = material in self._mill.offers
        return (self._offered if offered else self._listed)(material, mass, day, supplier)

    def suppliers(self, material: str) -> Iterator[str]:
        """Who offers a material."""
        if material in self._mill.offers:
            yield from dict.fromkeys(offer.supplier for offer in self._mill.offers[material].offers)

    def spelled(self, material: str, supplier: str) -> str:
        """A supplier as the offers of a material spell it; as it is where none is his."""
        return meant(supplier, list(self.suppliers(material))) or supplier

    def known_supplier(self, material: str, supplier: str, where: str) -> str:
        """The same, of a supplier who must have an offer where the material has offers.

        Raises
        ------
        InputError
            None of the offers of the material is his.
        """
        known = list(self.suppliers(material))
        found = self.spelled(material, supplier)
        if not supplier or not known or found in known:
            return found
        raise InputError(
            where,
            f"supplier {supplier!r} has no offer of {material!r}; accepted is one of: "
            f"{listed(known, supplier)}",
        )

    def _offered(self, material: str, mass: float, day: datetime.date, supplier: str) -> Deal:
        offers, costs = self._mill.offers[material], costs_on(self._costs, self._mill.rates, day)
        if supplier:
            offers = offers._replace(offers=tuple(one for one in offers.offers if one.supplier == supplier))
        if not offers.offers:
            why = f"supplier {supplier!r} has no offer of {material!r}"
            return Deal(supplier, None, self.strength(material), 0.0, why)
        found = standings(offers._replace(usual_purchase=mass), costs)
        chosen = next((one for one in found if one.chosen), None)
        if chosen is None:
            why = no_price(offers, found, costs)
            return Deal(supplier, None, self.strength(material), 0.0, why)
        offer = chosen.offer
        return Deal(offer.supplier, chosen.delivered, offer.strength, offer.from_quantity)

    def _listed(self, material: str, mass: float, day: datetime.date, supplier: str) -> Deal:
        item, costs = self._mill.material(material), costs_on(self._costs, self._mill.rates, day)
        if item.price is None:
            why = item.no_price or f"material {material!r} has no price in the book"
            return Deal(supplier, None, item.strength, 0.0, why)
        currency = item.currency or costs.currency
        rate = 1.0 if currency == costs.currency else costs.exchange_rates.get(currency)
        if rate is None:
            why = f"material {material!r} is in {currency}, which has no rate on {day}"
            return Deal(supplier, None, item.strength, 0.0, why)
        gate: float = delivered_price(item.price, item.freight, rate)
        return Deal(supplier or item.supplier, gate, item.strength)
