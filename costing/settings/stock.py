"""What is in store and on order, and the terms on which each material is bought."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from typing import ClassVar

from costing.quantities import InputError
from costing.quantities.checking import number_text
from costing.settings.building import Assumption, check_fields

AS_NEEDED, FOR_A_TIME, ECONOMIC = "as needed", "for a time", "economic quantity"
HOURS_A_DAY = 24.0


@dataclass(frozen=True)
class StockBatch:
    """One batch in store.

    `stock_mass` is of the batch as it is, whose active part is `strength`. It may be used up to `expiry`,
    that day in; None where it keeps. `opened` is the day on which it was opened; None for closed packs.
    """

    material: str
    batch: str
    stock_mass: float
    strength: float
    expiry: datetime.date | None = None
    opened: datetime.date | None = None
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where or f"batch {self.batch}")


@dataclass(frozen=True)
class OpenOrder:
    """What was ordered before and has not come yet: `order_mass` as delivered, of the listed strength."""

    order: str
    material: str
    supplier: str
    order_mass: float
    arrival: datetime.date
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where or f"order {self.order}")


@dataclass(frozen=True)
class PurchaseTerms:
    """How one material is bought and kept.

    `supplier` is "" where the offer that counts says it. `need_spread` is the standard deviation of the use
    of a week, of the mean that the orders give. A closed pack keeps for `shelf_life` from its arrival, an
    opened one for `keeping_time`; None where it keeps. None of `storage_ceiling`: there is room.
    `order_charge` is in the mill's money.
    """

    GROUPS: ClassVar[tuple[str, ...]] = ("purchase",)

    material: str
    pack_kind: str
    pack_mass: float
    lead_time: float
    lead_time_spread: float
    service_level: float
    need_spread: float
    holding_rate: float
    payment_time: float
    supplier: str = ""
    minimum_order: float = 0.0
    order_charge: float = 0.0
    shelf_life: float | None = None
    keeping_time: float | None = None
    storage_ceiling: float | None = None
    order_rule: str = AS_NEEDED
    cover_time: float | None = None
    where: str = ""

    def __post_init__(self) -> None:
        where = self.where or f"purchase terms of {self.material}"
        check_fields(self, where)
        if self.order_rule == FOR_A_TIME and self.cover_time is None:
            raise InputError(
                where, f"cover time is empty beside the order rule {FOR_A_TIME}; accepted is 1 to 1000 day"
            )
        if self.order_rule == ECONOMIC and not self.order_charge:
            raise InputError(
                where,
                f"order charge is empty or 0 beside the order rule {ECONOMIC}, which then orders next to "
                "nothing at a time; accepted is what an order costs, or another rule",
            )

    @property
    def lead_days(self) -> int:
        """Whole days from the order to the product in store; a day begun counts."""
        return days_of(self.lead_time)

    @property
    def pack_named(self) -> str:
        """Kind and size of a pack."""
        return f"{self.pack_kind} of {number_text(self.pack_mass)} kg"


@dataclass
class Store:
    """What is in store and on order, and on which terms each material is bought."""

    batches: list[StockBatch] = field(default_factory=list)
    open_orders: list[OpenOrder] = field(default_factory=list)
    terms: dict[str, PurchaseTerms] = field(default_factory=dict)
    assumptions: dict[Assumption, None] = field(default_factory=dict)  # what the terms leave to the tables


def days_of(time: float) -> int:
    """Whole days of a time [h]; a day begun counts.

    Examples
    --------
    >>> days_of(48.0), days_of(49.0), days_of(0.0)
    (2, 3, 0)
    """
    return int(-(-round(time / HOURS_A_DAY, 6) // 1))
