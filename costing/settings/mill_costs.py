"""What the mill pays beside its materials: water, steam, power, drain, overhead; the money it counts in."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from costing.settings.building import check_fields


@dataclass(frozen=True)
class MillCosts:
    """Prices that are not of a material, and how money is shown.

    The prices are those of `prices_as_of`, or of `price_date` where that is None; `exchange_rates` are those
    of that day.
    """

    currency: str
    price_date: datetime.date
    water_price: float
    steam_price: float
    power_price: float
    effluent_charge: float
    overhead: float
    margin: float
    money_rounding: float
    exchange_rates: Mapping[str, float] = field(default_factory=dict)
    prices_as_of: datetime.date | None = None

    def __post_init__(self) -> None:
        check_fields(self, "mill costs")

    @property
    def day(self) -> datetime.date:
        """The day whose prices and rates count."""
        return self.prices_as_of or self.price_date
