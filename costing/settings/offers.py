"""What suppliers offer, until when, and what money of other countries was worth on a day."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from costing.quantities import InputError
from costing.settings.building import check_fields

if TYPE_CHECKING:
    from costing.settings.material import Material

DELIVERED, EX_WORKS = "delivered", "ex works"
CHEAPEST, ALWAYS, NO = "cheapest", "always", "no"
LISTED_STRENGTH = "listed_strength"  # the strength of the sheet Materials, where an offer counts with its own


@dataclass(frozen=True)
class Offer:
    """One supplier's price of one product.

    `price` and `freight` are in the money of `currency`, for each mass as delivered, `price_by` is the unit
    they were given for; a delivered price has no freight beside it. The offer holds for a purchase of
    `from_quantity` or more, from `valid_from` to `valid_to`, both days in; None leaves that side open.
    `offer_counts` says whether it is one among others, the one that is bought from whatever others cost, or
    kept for the record alone.
    """

    material: str
    supplier: str
    price: float
    freight: float
    price_by: str
    currency: str
    price_terms: str
    strength: float
    from_quantity: float
    valid_from: datetime.date | None = None
    valid_to: datetime.date | None = None
    offer_counts: str = CHEAPEST
    note: str = ""
    where: str = ""
    strength_where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where)
        if self.valid_from and self.valid_to and self.valid_to < self.valid_from:
            raise InputError(
                self.where,
                f"valid to is {self.valid_to}, before valid from, {self.valid_from}; accepted is that day or "
                "a later one",
            )

    @property
    def named(self) -> str:
        """Supplier and cell."""
        return f"{self.supplier} ({self.where})" if self.where else self.supplier


class MaterialOffers(NamedTuple):
    """A product as the sheet Materials has it, and all that is offered of it.

    Attributes
    ----------
    listed : Material
        With the strength of that sheet and no price.
    offers : tuple of Offer
        In the order of the sheet Offers.
    usual_purchase : float or None
        How much the mill buys at a time [kg]; None where that is not said.
    """

    listed: Material
    offers: tuple[Offer, ...]
    usual_purchase: float | None = None


class ExchangeRate(NamedTuple):
    """What one of another money was worth from a day on.

    Attributes
    ----------
    currency : str
        The other money.
    rate : float
        Money of the mill for one of it.
    since : date or None
        The day; None for a rate that holds where no dated one does.
    """

    currency: str
    rate: float
    since: datetime.date | None = None


def rates_on(rates: Iterable[ExchangeRate], day: datetime.date) -> dict[str, float]:
    """Currency -> its rate on a day: the latest on or before it, else the one without a date.

    Parameters
    ----------
    rates : iterable of ExchangeRate
        Several may be of one currency.
    day : date
        A currency whose rates all begin later is left out.

    Examples
    --------
    >>> rates_on([ExchangeRate("USD", 0.9, datetime.date(2026, 1, 1)), ExchangeRate("USD", 0.95)],
    ...          datetime.date(2025, 12, 31))
    {'USD': 0.95}
    """
    found: dict[str, tuple[datetime.date, float]] = {}
    for currency, rate, since in rates:
        begins = since or datetime.date.min
        if begins <= day and (currency not in found or begins >= found[currency][0]):
            found[currency] = begins, rate
    return {currency: rate for currency, (_, rate) in found.items()}


def first_rates(rates: Iterable[ExchangeRate]) -> Mapping[str, datetime.date]:
    """Currency -> the day on which its rates begin."""
    found: dict[str, datetime.date] = {}
    for currency, _, since in rates:
        begins = since or datetime.date.min
        found[currency] = min(begins, found.get(currency, begins))
    return found
