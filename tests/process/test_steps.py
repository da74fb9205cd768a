"""Steps at their edges: what is refused, what warns, what heat is for."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from costing.ledger.remarks import remarks
from costing.ledger.whole import EXTRA, Ledger, open_ledger
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.example_mill import ROUTE, example_mill


def opened(**given: Any) -> Ledger:
    mill = example_mill(**given)
    return open_ledger(mill, mill.enquiries["E"])


def texts(ledger: Ledger, kind: str) -> str:
    return "\n".join(remark.text for remark in remarks(ledger, Mill()) if remark.kind == kind)


def test_rinse_wants_its_water_once() -> None:
    for given, what in (({"rinse_water": None}, "both are empty"), ({"rinse_water_flow": 3.0}, "fill one")):
        mill = example_mill(recipe={"rinse after dyeing": given})
        if "rinse_water_flow" in given:
            both = mill.recipe_steps["R", "rinse after dyeing"]
            both["rinse_water"] = both["rinse_water_flow"]._replace(value=6.0)
        with pytest.raises(InputError, match=what):
            open_ledger(mill, mill.enquiries["E"])


def test_rinse_by_flow_is_rinse_by_mass() -> None:
    by_mass = opened(recipe={"rinse after dyeing": {"rinse_water": 6.0}})
    flow = 6.0 * by_mass.plan.around.throughput / 1000.0
    by_flow = opened(recipe={"rinse after dyeing": {"rinse_water_flow": flow}})
    assert by_flow.used("water") == pytest.approx(by_mass.used("water"), rel=1e-12)


def test_more_caustic_neutralised_than_the_yarn_dissolves_is_refused() -> None:
    with pytest.raises(InputError, match=r"caustic neutralised is 15 g/kg, .* weight loss of 2 %"):
        opened(recipe={"scour": {"caustic_neutralised": 15.0, "weight_loss": 2.0}})


def test_yarn_drier_than_it_is_to_leave_is_refused() -> None:
    with pytest.raises(InputError, match=r"moisture out is 12 %, but the yarn arrives with 8.5 %"):
        opened(route=[ROUTE[-1]], recipe={"drying": {"moisture_out": 12.0}})


def test_more_ropes_than_places_is_refused() -> None:
    with pytest.raises(InputError, match=r"11 ropes .* 4 set\(s\) side by side need 44 rope places.* has 36"):
        opened(enquiry={"sets_side_by_side": 4})


def test_over_reduced_stock_vat_warns_and_is_paid_for() -> None:
    lean = opened(recipe={"indigo dyeing": {"stock_hydrosulfite_ratio": 0.7}})
    rich = opened(recipe={"indigo dyeing": {"stock_hydrosulfite_ratio": 2.5}})
    assert "more hydrosulfite than the bath loses" in texts(rich, "warning")
    assert "more hydrosulfite than the bath loses" not in texts(lean, "warning")
    assert rich.used("HYDRO") > lean.used("HYDRO")


def test_dry_yarn_into_the_first_dip_warns_and_brings_its_air() -> None:
    dry = opened(route=ROUTE[2:])
    assert "brings its air into the first dip" in texts(dry, "warning")
    late = opened(route=[ROUTE[2], ROUTE[0]], recipe={"scour": {"scour_overflow": 0.5}})
    assert "brings its air into the first dip" in texts(late, "warning")
    rinsed = opened(route=[ROUTE[1], ROUTE[2]])
    assert "brings its air into the first dip" not in texts(rinsed, "warning")
    air = {
        ledger.recipe.code + str(len(ledger.steps)): sum(
            line.amount
            for line in ledger.lines
            if line.material == "HYDRO" and line.cause == "air in the yarn"
        )
        for ledger in (dry, opened())
    }
    dry_air, wet_air = air["R3"], air["R5"]
    assert dry_air == pytest.approx(10 * wet_air, rel=1e-9)  # 90 % is wetted out by default


def test_unusual_settings_are_named_with_the_usual() -> None:
    found = texts(opened(recipe={"indigo dyeing": {"bath_hydrosulfite": 8.0}}), "unusual")
    assert "bath hydrosulfite is 8 g/L; usual is 1 g/L to 4 g/L" in found


@pytest.mark.parametrize("heating", ["closed", "direct"])
def test_live_steam_replaces_water(heating: str) -> None:
    ledger = opened(whole_machine={"steam_heating": heating}, recipe={"scour": {"scour_temperature": 90.0}})
    condensed_in_box = sum(
        line.amount
        for line in ledger.lines
        if line.step == "scour"
        and line.material == "steam"
        and line.destination == "process"
        and line.cause != EXTRA
    )
    main = sum(
        line.amount
        for line in ledger.lines
        if line.step == "scour" and line.cause == "makes up the scour liquor"
    )
    closed = opened(whole_machine={"steam_heating": "closed"}, recipe={"scour": {"scour_temperature": 90.0}})
    main_closed = sum(
        line.amount
        for line in closed.lines
        if line.step == "scour" and line.cause == "makes up the scour liquor"
    )
    assert main + condensed_in_box == pytest.approx(main_closed, rel=1e-9)
    assert (condensed_in_box > 0) == (heating == "direct")


def test_gauge_pressure_is_one_bar_below_absolute() -> None:
    gauge = opened(whole_machine={"steam_pressure": 4.0, "pressure_basis": "gauge"})
    absolute = opened(whole_machine={"steam_pressure": 5.01325, "pressure_basis": "absolute"})
    assert gauge.used("steam") == pytest.approx(absolute.used("steam"), rel=1e-12)


def test_steam_per_water_evaporated_lies_between_floor_and_two() -> None:
    """Ideal floor 1.205 at 4 bar absolute from 25 degC, and the published upper end."""
    ledger = opened(
        whole_machine={"steam_pressure": 4.0, "pressure_basis": "absolute", "steam_losses": 0.0},
        machine={"drying": {"dryer_efficiency": 80.0}},
    )
    steam = sum(
        line.amount for line in ledger.lines if line.step == "drying" and line.cause == "dries the yarn"
    )
    water = sum(
        line.amount
        for line in ledger.lines
        if line.step == "drying" and line.cause == "evaporates on the cans"
    )
    assert 1.205 < steam / water < 2.0


ABSOLUTE = {"pressure_basis": "absolute"}


@pytest.mark.parametrize("heating", ["closed", "direct"])
@pytest.mark.parametrize(
    ("step", "setting", "asked"),
    [
        ("scour", {"scour_temperature": 90.0}, "scour temperature is 90 degC"),
        ("rinse after scour", {"rinse_temperature": 82.0}, "rinse temperature is 82 degC"),
        ("indigo dyeing", {"bath_temperature": 85.0}, "bath temperature is 85 degC"),
    ],
)
def test_steam_colder_than_the_box_is_refused(
    step: str, setting: dict[str, float], asked: str, heating: str
) -> None:
    """Steam of 0.5 bar condenses at 81.32 degC: IAPWS-IF97, as any steam table prints it."""
    kind = dict(ROUTE)[step]
    with pytest.raises(InputError) as refused:
        opened(
            route=[(step, kind)],
            recipe={step: setting},
            whole_machine={**ABSOLUTE, "steam_pressure": 0.5, "steam_heating": heating},
        )
    assert str(refused.value).startswith(
        f"{step}: {asked}, but the steam of 0.5 bar absolute condenses at 81.317 degC; accepted is a "
        "temperature below that, or a steam pressure of more than 0."
    )


def test_steam_just_hotter_than_the_box_is_accepted() -> None:
    cold = {**ABSOLUTE, "steam_pressure": 0.5}
    assert opened(route=ROUTE[:1], recipe={"scour": {"scour_temperature": 81.0}}, whole_machine=cold).lines
    cool = {"rinse_temperature": 15.0}  # colder than the water: no steam is asked for
    rinsed = opened(
        route=ROUTE[1:2],
        recipe={"rinse after scour": cool},
        whole_machine={**ABSOLUTE, "steam_pressure": 0.02},
    )
    assert rinsed.used("steam") == 0.0


def test_steam_colder_than_the_dried_yarn_is_refused() -> None:
    """1 bar gives 99.606 degC, 1.1 bar 102.29 degC, for yarn that leaves at 100 degC by default."""
    with pytest.raises(InputError) as refused:
        opened(route=ROUTE[-1:], whole_machine={**ABSOLUTE, "steam_pressure": 1.0})
    assert str(refused.value) == (
        "drying: yarn temperature out is 100 degC, but the steam of 1 bar absolute condenses at 99.606 degC; "
        "accepted is a temperature below that, or a steam pressure of more than 1.0142 bar absolute"
    )
    assert opened(route=ROUTE[-1:], whole_machine={**ABSOLUTE, "steam_pressure": 1.1}).used("steam") > 0


def test_second_scour_is_credited_with_what_the_first_leaves_on_the_yarn() -> None:
    """The yarn brings 0.75 L/kg of the same liquor: only what the box loses over that is bought."""
    twice = [("scour", "scour"), ("scour again", "scour"), *ROUTE[1:]]
    dry = {"weight_loss": 0.0, "caustic_neutralised": 0.0, "wetting_agent_kept": 0.0}
    given = {**dry, "scour_caustic": 20.0, "scour_wetting_agent": 4.0, "scour_sequestrant": 1.5}
    settings = {"scour": given, "scour again": {**given, "scour_overflow": 0.4}}
    ledger = opened(route=twice, recipe=settings, enquiry={"order_length": 4e6})
    bought = {
        material: sum(
            line.amount
            for line in ledger.lines
            if line.step == "scour again"
            and line.material == material
            and line.cause != EXTRA
            and line.cause != "first fill"
            and line.source == "store"
            and line.substance != "water"
        )
        for material in ("LYE", "WET", "SEQ")
    }
    # Grams per kilogram, 0.4 L/kg over the weir: 20 g/L caustic, 4 g/L of 60 %, 1.5 g/L of 40 %.
    for material, grams in (("LYE", 8.0), ("WET", 0.4 * 4 * 0.6), ("SEQ", 0.4 * 1.5 * 0.4)):
        assert bought[material] * 1000 == pytest.approx(grams, rel=2e-3), material


def test_two_scours_without_room_for_products_say_so() -> None:
    with pytest.raises(InputError, match=r"brings 0.75 L/kg of liquor and the box lets 0.75 L/kg go"):
        opened(
            route=[("scour", "scour"), ("scour again", "scour"), *ROUTE[1:]],
            recipe={"scour again": {"scour_caustic": 40.0}},
        )


def test_a_scour_without_caustic_buys_none() -> None:
    ledger = opened(recipe={"scour": {"scour_caustic": 0.0, "caustic_neutralised": 2.0}})
    assert not [line for line in ledger.lines if line.step == "scour" and line.material == "LYE"]


def test_what_the_cans_dried_on_dissolves_in_the_next_wet_box() -> None:
    plain = [("rinse after scour", "rinse")]
    again = [*ROUTE[:1], *ROUTE[-1:], *plain, ("last drying", "drying")]
    ledger = opened(route=again)
    salt = [line for line in ledger.lines if line.substance == "sodium_galacturonate"]
    assert any(line.destination.startswith("drain: rinse") for line in salt)


def test_dye_bath_is_credited_with_the_wetting_agent_that_the_yarn_brings() -> None:
    """The same agent in scour and bath: what the scour lends is not bought again."""
    for strength, paid in ((0.0, 0.0), (8.0, 1.0)):
        ledger = opened(
            route=[*ROUTE[:1], *ROUTE[2:]],
            recipe={
                "indigo dyeing": {"bath_wetting_agent": strength},
                "scour": {"wetting_agent_kept": 0.0},
            },
            machine={"scour": {"pick_up": 0.7}, "indigo dyeing": {"exchange": 100.0}},
        )
        (fed,) = [ledger.run.feeds["indigo dyeing"]]
        (credit,) = [
            line.amount
            for line in ledger.lines
            if (line.step, line.material, line.cause, line.substance)
            == ("indigo dyeing", "WET", "comes with the yarn", "WET")
        ] or [0.0]
        brought = 0.7 * 4.0 * 0.6 / 1000.0  # 0.7 L/kg of 4 g/L at 60 %
        needed = (fed.bath_on_yarn + fed.overflow) * strength * 0.6 / 1000.0
        assert credit == pytest.approx(-paid * min(brought, needed), rel=2e-3)


def test_remarks_that_a_practitioner_would_make() -> None:
    thirsty = opened(
        recipe={"rinse after dyeing": {"rinse_water": 0.2}}, machine={"rinse after dyeing": {"pick_up": 1.2}}
    )
    assert "the rinse gets less water than the yarn takes up" in texts(thirsty, "warning")
    short = opened(enquiry={"order_length": 60.0})
    assert "each set sells 73 m of warp and runs 80 m of leader" in texts(short, "warning")
    usual = texts(opened(), "warning")
    for words in ("gets less water", "each set sells"):
        assert words not in usual


def test_counts_cloth_and_stops_that_no_mill_has_are_unusual() -> None:
    mill = example_mill(enquiry={"stoppage_time": 30.0})
    mill.styles["S"] = dataclasses.replace(mill.styles["S"], warp_count=7e-6)
    ledger = open_ledger(mill, mill.enquiries["E"])
    said = texts(ledger, "unusual")
    assert "warp count is 84.4 Ne; usual is 4.5 to 20" in said
    assert "stoppage time is 30 h; usual is 0.1 h to 4 h" in said
    assert "count is" not in texts(opened(), "unusual")
    assert "finished cloth is" not in texts(opened(), "unusual")
