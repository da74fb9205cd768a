"""The order book: what is ordered, by when, and how orders are put together for the ranges."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import ClassVar, NamedTuple, Optional

from costing.settings.building import check_fields

OPEN, RUNNING, FORECAST, DONE, CANCELLED = "open", "running", "forecast", "done", "cancelled"


class OrderLine(NamedTuple):
    """One line of the order book.

    Attributes
    ----------
    code : str
        Of the order; several lines may have it.
    enquiry : str
        Code of the enquiry that says style, recipe, range and how the lot is run.
    order_length : float
        Still to be dyed, in what the enquiry counts [m].
    due : date
        Day on which it must leave the mill.
    status : str
        A word of ``order_status``.
    where : str
        Sheet and row, or file and row.
    """

    code: str
    enquiry: str
    order_length: float
    due: datetime.date
    status: str = OPEN
    where: str = ""


@dataclass(frozen=True)
class Planning:
    """How orders are put together, and from which day on is planned; None for today. House units.

    Orders of one shade that are due within `gather_time` of the first of them are dyed together. A lot begins
    `time_before_due` before the first due day of its orders. A dye bath that stands longer than
    `bath_keeping_time` from the beginning of one lot to that of the next is dumped.
    """

    GROUPS: ClassVar[tuple[str, ...]] = ("planning",)

    gather_time: float
    time_before_due: float
    bath_keeping_time: float
    plan_from: Optional[datetime.date] = None  # noqa: UP045 read by an older Python

    def __post_init__(self) -> None:
        check_fields(self, "planning of lots")
