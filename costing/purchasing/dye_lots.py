"""Dye lots from the order book: orders of one shade and one warp that are due close together are one."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Any, NamedTuple, Optional

from costing.construction import sets
from costing.ledger.plan import lengths_to_make
from costing.ledger.plan_cloth import plan_cloth
from costing.ledger.plan_running import CLOTH, VESSEL
from costing.quantities import InputError
from costing.settings.fitting import check_fits
from costing.settings.mill import Enquiry, Mill
from costing.settings.order_book import CANCELLED, DONE, FORECAST, OrderLine, Planning
from costing.settings.quality import sorting_of

NEW_FILL, STANDING = "new fill", "standing bath"
KEPT, DUMPED = "kept for the next lot", "dumped"
HOURS_A_DAY = 24.0


class DyeLot(NamedTuple):
    """Orders that are dyed together.

    Attributes
    ----------
    number : int
        From 1 on, in the order in which the lots begin.
    enquiry : Enquiry
        That of the first order, with the length of all, and with the baths that it finds and leaves.
    orders : tuple of OrderLine
        By due date.
    start : date
        Day on which its goods must be in store.
    late : int
        Days that it begins later than its first order asks [day].
    hours : float
        That it runs, at the speed and efficiency of its range; 0 in a vessel [h].
    """

    number: int
    enquiry: Enquiry
    orders: tuple[OrderLine, ...]
    start: datetime.date
    late: int = 0
    hours: float = 0.0

    @property
    def code(self) -> str:
        """Its name in lists."""
        return f"lot {self.number}"


class LeftOut(NamedTuple):
    """A line of the order book that cannot be planned, and why."""

    line: OrderLine
    error: InputError


class LotPlan(NamedTuple):
    """The lots of an order book, and what could not be planned."""

    lots: list[DyeLot]
    left_out: list[LeftOut]


class _Shade(NamedTuple):
    """What orders share that may be dyed together, and warp to dye for one metre ordered [m/m]."""

    key: tuple[Any, ...]
    warp: float


def counts(line: OrderLine, forecast: bool) -> bool:
    """Whether a line is still to be dyed; of a forecast, where that is asked for."""
    return line.status not in (DONE, CANCELLED) and (forecast or line.status != FORECAST)


def plan_lots(
    mill: Mill,
    lines: Iterable[OrderLine],
    planning: Planning,
    today: Optional[datetime.date] = None,  # noqa: UP045 read by an older Python
    forecast: bool = False,
) -> LotPlan:
    """Put the orders together and say which baths each lot finds and leaves.

    A lot finds the bath of the lot before it on its range where that has the same recipe and began no longer
    ago than a bath keeps, and leaves its own likewise. What the first lot of a range finds, and the last one
    leaves, is as its enquiry says. The range itself is not planned: two lots may begin on one day.

    Parameters
    ----------
    mill : Mill
        The book that the lines name.
    lines : iterable of OrderLine
        The order book, in any order.
    planning : Planning
        How orders are put together.
    today : date, optional
        No lot begins before it; what should have begun is late.
    forecast : bool, optional
        True to plan forecasts like orders.

    Returns
    -------
    LotPlan
        By the day on which they begin.
    """
    shades: dict[str, Any] = {}
    of_shade: dict[tuple[Any, ...], list[OrderLine]] = {}
    left_out: list[LeftOut] = []
    for line in lines:
        if not counts(line, forecast):
            continue
        shade = shades.get(line.enquiry)
        if shade is None:
            shade = shades[line.enquiry] = _shade(mill, line.enquiry)
        if isinstance(shade, InputError):
            left_out.append(LeftOut(line, shade))
        else:
            of_shade.setdefault(shade.key, []).append(line)
    before = datetime.timedelta(hours=planning.time_before_due)
    begun: list[DyeLot] = []
    for orders in of_shade.values():
        for together in _gathered(orders, planning.gather_time / HOURS_A_DAY):
            start = together[0].due - before
            late = max((today - start).days, 0) if today else 0
            asked = _together(mill, together, shades)
            start += datetime.timedelta(days=late)
            hours = _hours(mill, asked, together, shades)
            begun.append(DyeLot(0, asked, tuple(together), start, late, hours))
    return LotPlan(_with_baths(begun, planning), left_out)


def _shade(mill: Mill, code: str) -> Any:
    """What an enquiry may share with others; or why it cannot be planned."""
    try:
        enquiry = mill.enquiry(code)
        style, recipe, range_ = (
            mill.style(enquiry.style),
            mill.recipe(enquiry.recipe),
            mill.range(enquiry.range),
        )
        check_fits(mill, recipe, range_)
        sorting = sorting_of(enquiry, mill.steps_of(recipe, range_), mill.depths)
    except InputError as error:
        return error
    fabric = plan_cloth(style, range_.stretch)
    _, loom_state, warp = lengths_to_make(style, fabric, enquiry, sorting.first_quality)
    cloth = range_.yarn_form == CLOTH
    same_yarn = (style.code,) if cloth else (style.warp_yarn, fabric.linear_density, fabric.ends)
    same_lot = (
        enquiry.sets_side_by_side,
        enquiry.stoppages,
        enquiry.stoppage_time,
        enquiry.pumps_in_stoppage,
    )
    key = (range_.code, recipe.code, same_yarn, same_lot)
    return _Shade(key, (loom_state if cloth else warp) / enquiry.order_length)


def _gathered(orders: Sequence[OrderLine], days: float) -> Iterator[list[OrderLine]]:
    """Orders of one shade in lots: each holds what is due within so many days of its first order."""
    lot: list[OrderLine] = []
    for line in sorted(orders, key=lambda line: line.due):
        if lot and (line.due - lot[0].due).days > days:
            yield lot
            lot = []
        lot.append(line)
    if lot:
        yield lot


def _together(mill: Mill, orders: Sequence[OrderLine], shades: dict[str, _Shade]) -> Enquiry:
    """The enquiry of the first order, with a length that takes as much warp as all of them."""
    first = mill.enquiry(orders[0].enquiry)
    own = shades[orders[0].enquiry].warp
    ratios = {code: shades[code].warp / own for code in {line.enquiry for line in orders}}
    return replace(first, order_length=sum(line.order_length * ratios[line.enquiry] for line in orders))


def _hours(mill: Mill, lot: Enquiry, orders: Sequence[OrderLine], shades: dict[str, _Shade]) -> float:
    """How long a lot runs [h]."""
    range_ = mill.range(lot.range)
    if range_.yarn_form == VESSEL:
        return 0.0
    warp = lot.order_length * shades[orders[0].enquiry].warp
    hours: float = sets.run_time(warp / lot.sets_side_by_side, range_.speed, range_.efficiency)
    return hours


def too_long(lots: Iterable[DyeLot], planning: Planning) -> list[DyeLot]:
    """Lots that run longer than the time from their beginning to the day on which they are due."""
    return [lot for lot in lots if lot.hours > planning.time_before_due > 0.0]


def _with_baths(lots: Iterable[DyeLot], planning: Planning) -> list[DyeLot]:
    """The lots by day, numbered, each with the bath that it finds and the bath that it leaves."""
    found: list[DyeLot] = []
    for _, of_range in groupby(
        sorted(lots, key=lambda lot: (lot.enquiry.range, lot.start)), key=lambda lot: lot.enquiry.range
    ):
        row = list(_one_shade_after_the_other(of_range))
        for place, lot in enumerate(row):
            finds, leaves = lot.enquiry.bath_at_start, lot.enquiry.bath_at_end
            if place:
                finds = STANDING if _shares_bath(row[place - 1], lot, planning) else NEW_FILL
            if place + 1 < len(row):
                leaves = KEPT if _shares_bath(lot, row[place + 1], planning) else DUMPED
            found.append(lot._replace(enquiry=replace(lot.enquiry, bath_at_start=finds, bath_at_end=leaves)))
    found.sort(key=lambda lot: (lot.start, lot.enquiry.range))
    return [lot._replace(number=number) for number, lot in enumerate(found, start=1)]


def _one_shade_after_the_other(lots: Iterable[DyeLot]) -> Iterator[DyeLot]:
    """Lots by day; of one day, those first that go on with the recipe that stands in the boxes."""
    stands = ""
    for _, of_day in groupby(lots, key=lambda lot: lot.start):
        last = ""
        for lot in sorted(of_day, key=lambda lot: (lot.enquiry.recipe != stands, lot.enquiry.recipe)):
            last = lot.enquiry.recipe
            yield lot
        stands = last


def _shares_bath(lot: DyeLot, after: DyeLot, planning: Planning) -> bool:
    between = (after.start - lot.start).days
    return lot.enquiry.recipe == after.enquiry.recipe and between <= (
        planning.bath_keeping_time / HOURS_A_DAY
    )
