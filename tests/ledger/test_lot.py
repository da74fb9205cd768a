"""What the lot adds, worked out by hand."""

from __future__ import annotations

from typing import Any

import pytest

from costing.cost.quote import quote
from costing.ledger.whole import Ledger, open_ledger
from costing.process.postings import EARLIER_LOT, NEXT_LOT, STORE
from costing.settings.mill import Mill
from tests.example_mill import example_mill

ONE_SET = {"leader_length": 30.0, "off_shade_length": 50.0, "set_length_max": 200000.0}


def order(length: float, **more: Any) -> tuple[Mill, Ledger]:
    mill = example_mill(
        machine={"indigo dyeing": {"bath_volume": 12000.0, **more.pop("machine", {})}},
        recipe={"indigo dyeing": {"bath_indigo": 2.0, "bath_hydrosulfite": 2.0, **more.pop("recipe", {})}},
        whole_machine=ONE_SET,
        enquiry={"order_length": length, **more},
    )
    return mill, open_ledger(mill, mill.enquiries["E"])


def for_the_lot(ledger: Ledger, material: str, cause: str) -> float:
    """Delivered mass for the whole lot [kg]."""
    return ledger.plan.saleable_mass * sum(
        line.amount for line in ledger.lines if line.material == material and line.cause == cause
    )


def test_first_fill_of_a_new_bath() -> None:
    _, ledger = order(20000.0, bath_at_start="new fill", bath_at_end="dumped")
    assert for_the_lot(ledger, "INDIGO", "first fill") == pytest.approx(24.0 / 0.94, rel=1e-12)
    reducing = 24.0 * 174.096 / 262.268
    assert for_the_lot(ledger, "HYDRO", "first fill") == pytest.approx((24.0 + reducing) / 0.88, rel=1e-9)
    oxygen = 12.0 * 0.00826  # 12 m3 at 8.26 g/m3
    lost = 1.2 * oxygen * 174.096 / 31.998
    assert for_the_lot(ledger, "HYDRO", "oxygen in the fill water") == pytest.approx(lost / 0.88, rel=1e-9)


def test_a_dumped_bath_goes_down_the_drain_with_its_dye() -> None:
    _, ledger = order(20000.0, bath_at_start="new fill", bath_at_end="dumped")
    dumped = {
        line.substance: line.amount * ledger.plan.saleable_mass
        for line in ledger.lines
        if line.cause == "bath dumped"
    }
    assert dumped["leuco_indigo"] == pytest.approx(24.0 * 264.284 / 262.268, rel=1e-9)
    assert dumped["sodium_hydrosulfite"] == pytest.approx(24.0, rel=1e-9)
    assert dumped["water"] == pytest.approx(12000.0, rel=1e-9)


def test_a_standing_bath_costs_only_what_ageing_takes() -> None:
    """Taken over and handed over at the same worth: the lot pays for the hydrosulfite that ages."""
    _, ledger = order(20000.0, machine={"bath_kept": 100.0, "ageing_loss": 50.0}, stoppages=0)
    for material in ("INDIGO", "HYDRO", "LYE", "WET"):
        taken = sum(
            line.amount for line in ledger.lines if line.material == material and line.source == EARLIER_LOT
        )
        handed = sum(
            line.amount for line in ledger.lines if line.material == material and line.source == NEXT_LOT
        )
        assert taken > 0
        assert handed == pytest.approx(-taken, rel=1e-9), material
    assert for_the_lot(ledger, "HYDRO", "restores the standing bath") == pytest.approx(12.0 / 0.88, rel=1e-9)
    caustic = 2 * 39.997 / 174.096 * 12.0
    assert for_the_lot(ledger, "LYE", "ages until the next lot") == pytest.approx(caustic / 0.5, rel=1e-9)


def test_short_and_long_orders_differ_by_the_lot_alone() -> None:
    """Cost per kilogram is a + b / mass: three lengths of one set lie on one straight line."""
    points = []
    for length in (3000.0, 10000.0, 60000.0):
        mill, ledger = order(length)
        assert mill.costs is not None
        assert ledger.plan.number_of_sets == 1
        offer = quote(ledger, mill.materials, mill.costs)
        points.append((1.0 / ledger.plan.saleable_mass, offer.cost_per_kg))
    (x0, y0), (x1, y1), (x2, y2) = points
    slope = (y0 - y2) / (x0 - x2)
    assert y1 == pytest.approx(y2 + slope * (x1 - x2), rel=1e-9)
    assert y0 > y1 > y2
    # The slope is the lot: leaders at the cost of the endless run without its weft, and what is done once.
    mill, ledger = order(3000.0)
    assert mill.costs is not None
    offer = quote(ledger, mill.materials, mill.costs)
    weft = offer.by("group")["weft yarn",]
    leaders = ledger.plan.grey_mass_dyed - ledger.plan.saleable_mass
    endless = y2 - slope * x2
    once = (
        (1.0 + mill.costs.overhead)
        * ledger.plan.saleable_mass
        * sum(line.cost for line in offer.lines if line.cause in ONCE or line.step == "cleaning")
    )
    # Heating up a fill loses steam in the net as a run does: 8 % of what the boiler gives, by default.
    heated = sum(line.cost for line in offer.lines if line.cause == "first fill, heating up")
    assert heated > 0
    once += (1.0 + mill.costs.overhead) * ledger.plan.saleable_mass * heated * (0.08 / 0.92)
    # Water that the lot's reactions make goes to the rinse water, where the quote cannot tell it apart.
    made = sum(
        line.amount * ledger.plan.saleable_mass
        for line in ledger.lines
        if line.cause == "leaves with the yarn" and line.substance == "water"
    )
    once += (1.0 + mill.costs.overhead) * made * mill.costs.effluent_charge
    assert once > 0
    assert slope == pytest.approx(leaders * (endless - weft) + once, rel=1e-9)


ONCE = (
    "taken over from the lot before",
    "restores the standing bath",
    "first fill",
    "first fill, heating up",
    "oxygen in the fill water",
    "stoppage",
    "ages until the next lot",
    "strengthening at the start",
    "strengthening used up by the lot",
    "credit: bath kept for the next lot",
    "tying in, filling, cleaning",
    "stoppages",
    "scour dump",
    "indigo dyeing dump",
)


def test_long_stoppage_oxidises_the_dye_after_the_hydrosulfite() -> None:
    _, ledger = order(20000.0, stoppages=1, stoppage_time=100.0, machine={"surface_oxygen": 20.0})
    assert for_the_lot(ledger, "HYDRO", "stoppage") == pytest.approx(24.0 / 0.88, rel=1e-9)
    again = for_the_lot(ledger, "HYDRO", "dye oxidised in a long stoppage")
    assert 0 < again <= 24.0 * 174.096 / 262.268 / 0.88 + 1e-9


def test_strengthening_is_used_up_by_the_lot() -> None:
    _, ledger = order(20000.0, recipe={"start_indigo": 3.0, "start_recovered": 100.0})
    start = for_the_lot(ledger, "INDIGO", "strengthening at the start")
    assert start == pytest.approx(12.0 / 0.94, rel=1e-12)
    assert for_the_lot(ledger, "INDIGO", "strengthening used up by the lot") == pytest.approx(
        -start, rel=1e-12
    )


def test_leaders_and_off_shade_metres_are_dyed_and_not_sold() -> None:
    _, ledger = order(20000.0)
    share = 80.0 / ledger.plan.warp_length
    extra = sum(
        line.amount
        for line in ledger.lines
        if line.material == "INDIGO" and line.cause == "leader and off-shade metres"
    )
    run = sum(
        line.amount
        for line in ledger.lines
        if line.material == "INDIGO"
        and line.source == STORE
        and line.cause in ("stays on the yarn", "lost in rinsing", "bath overflow")
    )
    assert extra == pytest.approx(share * run, rel=1e-9)
