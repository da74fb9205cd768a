"""What the lot adds, worked out by hand."""

from __future__ import annotations

from typing import Any

import pytest
from scipy.integrate import solve_ivp

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
    # Salt that still stands in the bath of a short lot is not dried onto the yarn: the cans have that less.
    assert y1 == pytest.approx(y2 + slope * (x1 - x2), rel=1e-6)
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
    assert slope == pytest.approx(leaders * (endless - weft) + once, rel=1e-4)


ONCE = (
    "taken over from the lot before",
    "restores the standing bath",
    "first fill",
    "first fill, heating up",
    "oxygen in the fill water",
    "stoppage",
    "stoppage: decomposes without oxygen",
    "ages until the next lot",
    "strengthening taken over from the lot before",
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
    causes = ("stoppage", "stoppage: decomposes without oxygen")
    by_air, without = (for_the_lot(ledger, "HYDRO", cause) for cause in causes)
    assert by_air + without == pytest.approx(24.0 / 0.88, rel=1e-9)
    # Rates side by side: 20 g/m2/h on 12 m2 and 2 g/m3 in 40 m3/h, 1.2 mol a mol; 0.1 %/h of 24 kg.
    air = 1.2 * 174.096 / 31.998 * (0.020 * 12 + 0.002 * 40)
    assert without / by_air == pytest.approx(0.024 / air, rel=1e-9)
    for material, cause, reaction in (("LYE", causes[0], 2.0), ("LYE", causes[1], 1.0)):
        lye = for_the_lot(ledger, material, cause) * 0.5 / 39.997
        assert lye == pytest.approx(reaction * for_the_lot(ledger, "HYDRO", cause) * 0.88 / 174.096, rel=1e-9)
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


def stands(ledger: Ledger, step: str, cause: str) -> dict[str, float]:
    """What lines of a cause bring into the process, for the whole lot [kg]."""
    found: dict[str, float] = {}
    for line in ledger.lines:
        if line.step == step and line.cause == cause and line.destination == "process":
            found[line.substance] = found.get(line.substance, 0.0) + line.amount * ledger.plan.saleable_mass
    return found


@pytest.mark.parametrize("length", [2000.0, 20000.0, 400000.0])
def test_salt_builds_up_in_a_new_bath_as_a_stirred_tank_does(length: float) -> None:
    """The balance of one salt followed kilogram by kilogram, by a library that knows nothing of it."""
    _, ledger = order(length, bath_at_start="new fill", bath_at_end="dumped")
    (step,) = [item for item in ledger.steps if item.name == "indigo dyeing"]
    fed = ledger.run.feeds["indigo dyeing"]
    assert fed.overflow > 0.0
    mass = ledger.plan.grey_mass_dyed
    reduced = fed.hydrosulfite["reduces the dye"]
    # What goes into the last sky is on the yarn and does not come back; nothing dissolves back here.
    by_air = sum(fed.hydrosulfite.values()) - reduced
    by_air -= fed.hydrosulfite["carried into the last sky and the rinse"]
    to_sulfate = 2 / 1.2 - 1
    mol = 2 * reduced + (2 - to_sulfate) * by_air + fed.hydrosulfite_decayed
    per_air = 1.2 * 174.096 / 31.998  # hydrosulfite for oxygen
    # One stop of half an hour: 3 g/m2/h on 12 m2, 2 g/m3 in 40 m3/h, and 0.1 %/h of 24 kg.
    stop = 0.5 * (per_air * (0.003 * 12 + 0.002 * 40) * (2 - to_sulfate) + 0.001 * 24)
    start = per_air * 12 * 0.00826 * (2 - to_sulfate)  # 12 m3 at 8.26 g/m3 of oxygen
    still = 126.037 * (1 - step.sulfite_oxidised)  # type: ignore[union-attr]
    fill = (12000 * 0.002 / 262.268 * 2 + start / 174.096) * still  # two sulfites for each indigo reduced
    made = (mol + stop / mass) / 174.096 * still
    out = 0.75 + fed.overflow  # the last pick-up and the weir

    def climb(_: float, held: Any) -> Any:
        return made - out * held / 12000.0

    end = solve_ivp(climb, (0.0, mass), [fill], rtol=1e-11, atol=1e-11).y[0][-1]
    dumped = sum(
        line.amount * ledger.plan.saleable_mass
        for line in ledger.lines
        if line.cause == "bath dumped" and line.substance == "sodium_sulfite"
    )
    assert dumped == pytest.approx(end, rel=1e-7)
    assert dumped > 1.5 * fill or length < 5000.0


def test_scour_box_is_dumped_with_what_it_has_dissolved() -> None:
    """After 100 times its volume the box stands at what it dissolves over what it lets go."""
    _, ledger = order(60000.0)
    (dump,) = [
        line for line in ledger.lines if line.cause == "box dumped" and line.substance == "cotton_extract"
    ]
    acid = 2.0 * 194.139 / 39.997  # g of galacturonic acid that 2 g of caustic neutralise
    strength = (25.0 * 0.76 - acid) / 0.75  # g/L
    assert dump.amount * ledger.plan.saleable_mass == pytest.approx(1.5 * strength, rel=1e-3)


def test_lots_that_follow_each_other_hand_on_the_salt_they_took_over() -> None:
    _, ledger = order(
        5000.0, recipe={"start_indigo": 3.0, "start_hydrosulfite": 3.0, "start_recovered": 40.0}
    )
    moved: dict[tuple[str, str], float] = {}
    for line in ledger.lines:
        for account, sign in ((line.source, 1.0), (line.destination, -1.0)):
            if account in (EARLIER_LOT, NEXT_LOT):
                key = (account, line.substance)
                moved[key] = moved.get(key, 0.0) + sign * line.amount
    substances = {substance for _, substance in moved}
    assert {"sodium_sulfite", "sodium_sulfate", "cotton_extract", "indigo"} <= substances
    for substance in substances:
        taken, handed = moved.get((EARLIER_LOT, substance), 0.0), -moved.get((NEXT_LOT, substance), 0.0)
        assert taken == pytest.approx(handed, rel=1e-9, abs=1e-12), substance


def test_strengthening_that_the_lot_before_left_is_not_paid_again() -> None:
    """12 kg more than the steady 24 kg; 60 % of it is still there and 95 % of the bath is kept."""
    given = {"start_indigo": 3.0, "start_recovered": 40.0}
    _, fresh = order(20000.0, recipe=given, bath_at_start="new fill", bath_at_end="dumped")
    _, kept = order(20000.0, recipe=given)
    assert for_the_lot(fresh, "INDIGO", "strengthening at the start") == pytest.approx(12.0 / 0.94, rel=1e-12)
    again = 12.0 * (1 - 0.6 * 0.95) / 0.94
    assert for_the_lot(kept, "INDIGO", "strengthening at the start") == pytest.approx(again, rel=1e-12)
    used_up = for_the_lot(kept, "INDIGO", "strengthening used up by the lot")
    assert used_up == pytest.approx(-0.4 * 12.0 / 0.94, rel=1e-12)


@pytest.mark.parametrize("bath", ["new fill", "standing bath"])
def test_sulfite_that_air_turns_to_sulfate(bath: str) -> None:
    """Half of all that is ever made, fills and stops in; 7.88 g of it for a gram of oxygen."""
    end = "dumped" if bath == "new fill" else "kept for the next lot"
    _, half = order(20000.0, machine={"sulfite_oxidised": 50.0}, bath_at_start=bath, bath_at_end=end)
    sulfite = [line for line in half.lines if line.substance == "sodium_sulfite"]
    made = sum(line.amount for line in sulfite if line.source == "reaction")
    taken = sum(line.amount for line in sulfite if line.destination == "reaction")
    # A fill that is handed on turns its reactions back: made and taken change places.
    turned = sum(
        line.amount
        for line in sulfite
        if line.destination == "reaction" and line.cause == "credit: bath kept for the next lot"
    )
    back = sum(
        line.amount
        for line in sulfite
        if line.source == "reaction" and line.cause == "sulfite oxidised by air"
    )
    assert taken - turned - back == pytest.approx(0.5 * (made - turned - back), rel=1e-9)
    oxygen = sum(
        line.amount
        for line in half.lines
        if line.cause == "sulfite oxidised by air" and (line.substance, line.source) == ("oxygen", "air")
    )
    by_cause = sum(
        line.amount
        for line in half.lines
        if line.cause == "sulfite oxidised by air"
        and (line.substance, line.destination) == ("sodium_sulfite", "reaction")
    )
    assert by_cause / oxygen == pytest.approx(7.88, abs=0.005)
    _, all_ = order(20000.0, machine={"sulfite_oxidised": 100.0}, bath_at_start=bath, bath_at_end=end)
    drained = sum(
        line.amount
        for line in all_.lines
        if line.substance == "sodium_sulfite" and line.destination.startswith("drain")
    )
    assert drained == pytest.approx(0.0, abs=1e-12)
