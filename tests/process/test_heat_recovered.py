"""Heat that a drain gives back: by hand, against a steam library, and never more than the drain holds."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from iapws import IAPWS97

from costing.ledger.remarks import remarks
from costing.ledger.whole import Ledger, open_ledger
from costing.process import steam
from costing.process.postings import CONDENSATE, DRAIN, STORE
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.example_mill import ROUTE, example_mill

SOME = settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
BOX = ("oxidation", "treatment")
BATHS = [("vessel dyeing", "bath"), ("vessel rinse", "bath")]
VESSEL = {"yarn_form": "beams in a vessel", "charge_mass": 500.0, "charge_time": 30.0}
RINSE = "rinse after scour"


def made(**asked: Any) -> tuple[Mill, Ledger]:
    mill = example_mill(**asked)
    return mill, open_ledger(mill, mill.enquiries["E"])


def rinsed(**asked: Any) -> tuple[Mill, Ledger]:
    """Sixty degrees with 6 L/kg in the rinse behind the scour, which squeezes to what the rinse does."""
    machine = {"scour": {"pick_up": 0.7}, RINSE: {"pick_up": 0.7, **asked.pop("machine", {})}}
    recipe = {RINSE: {"rinse_water": 6.0, "rinse_temperature": 60.0, **asked.pop("recipe", {})}}
    return made(route=ROUTE, machine=machine, recipe=recipe, **asked)


def water_enthalpy(celsius: float) -> float:
    """By the steam library [kJ/kg]."""
    return float(IAPWS97(T=celsius + 273.15, x=0).h)


def test_a_rinse_drains_what_it_is_fed_and_gives_back_half() -> None:
    """6 L/kg from 20 to 60 degC hold 6 x (251.2 - 83.9) = 1,004 kJ/kg; half of it comes back, 20 K apart."""
    mill, ledger = rinsed(machine={"heat_recovered": 50.0}, whole_machine={"steam_heating": "closed"})
    exchange = ledger.run.exchanges[RINSE]
    cold = ledger.plan.around.water_temperature
    held = 6.0 * (water_enthalpy(60.0) - water_enthalpy(cold))
    assert exchange.held == pytest.approx(held, rel=1e-3)
    assert exchange.recovered == pytest.approx(0.5 * held, rel=1e-3)
    assert exchange.approach == pytest.approx(0.5 * (60.0 - cold), rel=1e-9)
    assert not [remark for remark in remarks(ledger, mill) if "heat recovered" in remark.text]


def test_a_very_near_exchanger_is_warned_of() -> None:
    """95 % of 40 K leave 2 K between drain and water."""
    mill, ledger = rinsed(machine={"heat_recovered": 95.0}, whole_machine={"steam_heating": "closed"})
    near = 0.05 * (60.0 - ledger.plan.around.water_temperature)
    (said,) = [remark.text for remark in remarks(ledger, mill) if "heat recovered asks" in remark.text]
    assert f"comes within {near:.2g} K" in said
    assert "exchangers usually keep 5 K or more" in said


def treated(heat_recovered: float, box_overflow: float) -> Ledger:
    route = [*ROUTE[:4], BOX, ROUTE[4]]
    box = {
        "first_product": "PEROXIDE",
        "first_dose": 2.0,
        "box_temperature": 60.0,
        "box_overflow": box_overflow,
        "feed_ratio": 1000.0,
    }
    machine = {"pick_up": 0.8, "exchange": 100.0, "tank_volume": 1000.0, "heat_recovered": heat_recovered}
    before = {"rinse after dyeing": {"pick_up": 0.7}}
    return made(route=route, recipe={BOX[0]: box}, machine={BOX[0]: machine, **before})[1]


def test_a_box_that_hardly_overflows_has_none_to_give() -> None:
    """1 L/kg over, 0.8 + 1 - 0.7 = 1.1 L/kg fed: at most 90.9 %; 0.1 L/kg over, 0.2 fed: at most 50 %."""
    assert treated(90.0, 1.0).run.exchanges[BOX[0]].recovered > 0.0
    with pytest.raises(InputError) as refused:
        treated(95.0, 1.0)
    assert "heat recovered is 95 %" in refused.value.message
    assert "the 1 L/kg that drain hold" in refused.value.message
    assert refused.value.message.endswith("accepted is at most 90.9 %")
    assert refused.value.where == BOX[0]
    assert treated(50.0, 0.1).run.exchanges[BOX[0]].recovered > 0.0
    with pytest.raises(InputError, match="accepted is at most 50 %"):
        treated(51.0, 0.1)


def vessel(**heat: float) -> Ledger:
    baths: dict[str, dict[str, Any]] = {
        name: {"liquor_ratio": 10.0, "box_temperature": 60.0} for name, _ in BATHS
    }
    machine = {
        name: {"liquor_retained": 2.0, "heat_recovered": heat.get(name.split()[1], 0.0)} for name, _ in BATHS
    }
    return made(route=BATHS, recipe=baths, machine=machine, whole_machine=VESSEL)[1]


def test_baths_of_a_vessel_give_heat_back_too() -> None:
    """10 L/kg fill dry yarn and 8 drain, at most 80 %; the next bath is filled with the 8 that drain."""
    plain, saving = vessel(), vessel(dyeing=60.0, rinse=60.0)
    for step, fed in (("vessel dyeing", 10.0), ("vessel rinse", 8.0)):
        cold = plain.plan.around.water_temperature
        gap = water_enthalpy(60.0) - water_enthalpy(cold)
        exchange = saving.run.exchanges[step]
        assert exchange.recovered == pytest.approx(0.6 * fed * gap, rel=1e-3)
        assert exchange.held == pytest.approx(8.0 * gap, rel=1e-3)
        before, after = (_steam(ledger, step, "heats the feed") for ledger in (plain, saving))
        assert after == pytest.approx(0.4 * before, rel=1e-9)
    with pytest.raises(InputError, match="accepted is at most 80 %"):
        vessel(dyeing=81.0)


def _steam(ledger: Ledger, step: str, cause: str = "") -> float:
    return sum(
        line.amount
        for line in ledger.run.lines
        if line.step == step
        and line.material == "steam"
        and line.cause.startswith(cause)
        and line.cause != "lost in the steam net"
    )


@SOME
@given(
    water=st.floats(0.2, 20.0),
    temperature=st.floats(15.0, 95.0),
    share=st.floats(0.0, 95.0),
    squeezed=st.floats(0.5, 1.3),
    leaving=st.floats(0.5, 1.3),
    heating=st.sampled_from(["direct", "closed"]),
)
def test_the_heat_of_a_rinse_closes(
    water: float, temperature: float, share: float, squeezed: float, leaving: float, heating: str
) -> None:
    """Steam and drain bring what feed, yarn and surface take, and the drain holds its part of it."""
    try:
        _, ledger = made(
            route=ROUTE,
            recipe={RINSE: {"rinse_water": water, "rinse_temperature": temperature}},
            machine={
                "scour": {"pick_up": squeezed},
                RINSE: {"pick_up": leaving, "heat_recovered": share, "heated_surface": 4.0},
            },
            whole_machine={"steam_heating": heating},
        )
    except InputError:  # more than the drain holds
        assume(False)
    around = ledger.plan.around
    assume(temperature > around.water_temperature + 0.1)
    step, yarn = next(item for item in ledger.run.entering if item[0].name == RINSE)
    used = _steam(ledger, RINSE)
    vapour = float(IAPWS97(P=around.steam_pressure / 10.0, x=1).h)
    condensate = float(IAPWS97(P=around.steam_pressure / 10.0, x=0).h)
    cold, warm = water_enthalpy(around.water_temperature), water_enthalpy(temperature)
    feed = water + max(0.0, leaving - squeezed - water)
    assume(used < feed)
    from_steam = used * (vapour - (warm if heating == "direct" else condensate))
    fresh = feed - used if heating == "direct" else feed
    start = min(yarn.temperature, temperature)
    moisture = (yarn.regain_water + yarn.liquor) / yarn.fibre
    taken = (
        fresh * (warm - cold)
        + yarn.fibre * steam.yarn_heat(moisture, start, temperature)
        + steam.bath_surface_heat(step.surface_heat_loss, 4.0, around.throughput)  # type: ignore[union-attr]
    )
    exchange = ledger.run.exchanges.get(RINSE)
    back = exchange.recovered if exchange else 0.0
    assert from_steam + back == pytest.approx(taken, rel=1e-3)
    drained = sum(
        line.amount
        for line in ledger.run.lines
        if line.step == RINSE and line.substance == "water" and line.destination.startswith(DRAIN)
    )
    assert back <= drained * (warm - cold) * (1.0 + 1e-3)
    if exchange:
        assert exchange.held == pytest.approx(drained * (warm - cold), rel=1e-3)
        assert exchange.approach > -1e-9
    assert {line.source for line in ledger.run.lines if line.material == "steam"} == {STORE}
    assert heating == "direct" or any(line.destination == CONDENSATE for line in ledger.run.lines)
