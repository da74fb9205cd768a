"""What a rinse gives back, worked by hand; and heat that drain water gives back."""

from __future__ import annotations

from typing import Any

import pytest

from costing.ledger.remarks import remarks
from costing.ledger.whole import Ledger, open_ledger
from costing.process import steam
from costing.process.postings import DRAIN, Line
from costing.process.recovering_rinse import rinse_and_recover
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.recovering_rinse_step import RecoveringRinse
from tests.example_mill import MATERIALS, ROUTE, example_mill

PRODUCTS = {item.code: item for item in MATERIALS}
COLD = Surroundings(1000.0, 20.0, 5.0, False, 0.0)
# One box, full exchange, 4 L/kg of water to 1 L/kg of liquor on the yarn: a fifth of it is left.
YARN = YarnState(
    0.92, 0.08, 20.0, liquor=1.0, dissolved={"sodium_hydroxide": 0.2, "inert": 0.001}, loose={"indigo": 0.002}
)
BOXES: dict[str, Any] = {
    "name": "rinse",
    "rinse_temperature": 20.0,
    "boxes": 1.0,
    "rinse_feed": "counter-current",
    "exchange": 1.0,
    "pick_up": 1.0,
    "heated_surface": 0.0,
    "surface_heat_loss": 0.0,
    "power": 0.0,
    "rinse_water": 4.0,
}


def rinsed(yarn: YarnState = YARN, **more: Any) -> list[Line]:
    return rinse_and_recover(RecoveringRinse(**{**BOXES, **more}), yarn, PRODUCTS, COLD)[1].lines


def drained(lines: list[Line], substance: str) -> float:
    return sum(
        line.amount for line in lines if line.substance == substance and line.destination == DRAIN + "rinse"
    )


def bought(lines: list[Line], material: str, substance: str) -> float:
    return sum(
        line.amount
        for line in lines
        if line.source == "store" and (line.material, line.substance) == (material, substance)
    )


def test_reused_water_takes_nothing_with_it() -> None:
    """Half of 4 L/kg: main 2, drain 4 - 2 = 2 L/kg, and all 0.8 x 200 = 160 g/kg of caustic in the drain.

    The filter passes 2 L/kg at 1 kWh/m3: 0.002 kWh/kg.
    """
    lines = rinsed(water_reused=0.5, reuse_energy=0.001)
    assert bought(lines, "water", "water") == pytest.approx(2.0)
    assert drained(lines, "water") == pytest.approx(2.0)
    assert drained(lines, "sodium_hydroxide") == pytest.approx(0.160)
    assert bought(lines, "electric energy", "electric energy") == pytest.approx(0.002)


def test_the_evaporator_drives_off_the_water_that_the_lye_does_not_hold() -> None:
    """80 % of 160 g/kg are 128 g/kg of caustic, as lye of 50 % with 128 g/kg of water.

    80 % of 4 L/kg go in, 3.2 - 0.128 = 3.072 kg/kg are driven off, with 0.42 x 3.072 = 1.29024 kg of steam.
    Left for the drain are 32 g/kg of caustic and 4 - 0.128 = 3.872 L/kg of water.
    """
    lines = rinsed(recovered_caustic_product="LYE", caustic_recovered=0.8, recovery_steam=0.42)
    assert bought(lines, "LYE", "sodium_hydroxide") == pytest.approx(-0.128)
    assert bought(lines, "LYE", "water") == pytest.approx(-0.128)
    assert bought(lines, "steam", "water") == pytest.approx(1.29024)
    assert drained(lines, "sodium_hydroxide") == pytest.approx(0.032)
    assert drained(lines, "water") == pytest.approx(3.872)


def test_a_filter_in_front_makes_the_lye_stronger_and_the_evaporator_cheaper() -> None:
    """75 % of the water is used again: of 1 L/kg of drain 0.8 - 0.128 = 0.672 kg/kg is driven off."""
    lines = rinsed(
        water_reused=0.75, recovered_caustic_product="LYE", caustic_recovered=0.8, recovery_steam=0.42
    )
    assert bought(lines, "steam", "water") == pytest.approx(0.42 * 0.672)
    assert drained(lines, "water") == pytest.approx(1.0 - 0.128)


def test_returned_dye_saves_powder_with_what_it_holds_beside() -> None:
    """80 % of 2 g/kg are 1.6 g/kg, or 1.7021 g of powder of 94 % with 0.1021 g beside the dye.

    0.8 x 1 g/kg of the like is rinsed off, so it lacks in the drain; the filter passes all 4 L/kg.
    """
    lines = rinsed(returned_dye_product="INDIGO", dye_returned=0.8, reuse_energy=0.001)
    assert bought(lines, "INDIGO", "indigo") == pytest.approx(-0.0016)
    assert bought(lines, "INDIGO", "inert") == pytest.approx(-0.0001021, abs=1e-7)
    assert drained(lines, "indigo") == pytest.approx(0.0004)
    assert drained(lines, "inert") == pytest.approx(0.0008 - 0.0001021, abs=1e-7)
    assert bought(lines, "electric energy", "electric energy") == pytest.approx(0.004)


def test_what_is_not_there_is_not_given_back() -> None:
    clean = YarnState(0.92, 0.08, 20.0, liquor=1.0, loose={"indigo": 0.002})
    lines = rinsed(clean, returned_dye_product="INDIGO", dye_returned=1.0)
    assert bought(lines, "INDIGO", "inert") == 0.0
    lye = rinsed(clean, recovered_caustic_product="LYE", caustic_recovered=1.0, recovery_steam=1.0)
    assert not [line for line in lye if line.material in ("LYE", "steam")]


def test_a_share_without_its_product_is_refused() -> None:
    with pytest.raises(InputError) as refused:
        rinsed(dye_returned=0.5)
    assert str(refused.value) == (
        "rinse: dye returned is 50 % and returned dye product is empty; accepted is the code of the material "
        "that is saved, or 0 %"
    )


def opened(route: list[tuple[str, str]] | None = None, **given: Any) -> Ledger:
    mill = example_mill(route=route, **given)
    return open_ledger(mill, mill.enquiries["E"])


RECOVERING = [*ROUTE[:3], ("rinse after dyeing", "recovering rinse"), ROUTE[4]]


def test_without_recovery_it_is_a_rinse() -> None:
    plain, recovering = opened(), opened(RECOVERING)
    assert recovering.lines == plain.lines


def test_a_credit_beyond_what_is_bought_is_remarked() -> None:
    def said(**recipe: Any) -> str:
        ledger = opened(RECOVERING, recipe=recipe_of(**recipe))
        return "\n".join(remark.text for remark in remarks(ledger, Mill()))

    def recipe_of(dye: str = "INDIGO", **rinse: Any) -> dict[str, dict[str, Any]]:
        return {"indigo dyeing": {"indigo_product": dye}, "rinse after dyeing": rinse}

    assert "won back" not in said(returned_dye_product="INDIGO")
    assert "more PASTE is won back than the route takes" in said(returned_dye_product="PASTE")
    assert "which is fed reduced dye" in said(dye="READY", returned_dye_product="INDIGO")


def feed_steam(ledger: Ledger, step: str) -> float:
    return sum(
        line.amount for line in ledger.run.lines if (line.step, line.cause) == (step, "heats the feed")
    )


@pytest.mark.parametrize(
    ("step", "recipe"),
    [
        ("rinse after dyeing", {"rinse_temperature": 60.0}),
        ("scour", {"scour_temperature": 90.0, "scour_overflow": 1.0}),
    ],
)
def test_heat_given_back_is_taken_off_the_feed_alone(step: str, recipe: dict[str, float]) -> None:
    """40 % of the heat of the feed comes from the drain: six tenths of its steam are left."""
    cold, warm = (opened(recipe={step: recipe}, machine={step: {"heat_recovered": r}}) for r in (0.0, 40.0))
    assert feed_steam(warm, step) == pytest.approx(0.6 * feed_steam(cold, step), rel=1e-12)
    assert feed_steam(cold, step) > 0.0
    for cause in ("heats the yarn", "lost at the surface"):
        kept = [
            sum(x.amount for x in item.run.lines if (x.step, x.cause) == (step, cause))
            for item in (cold, warm)
        ]
        assert kept[0] == pytest.approx(kept[1], rel=1e-12)


def test_live_steam_into_water_warmed_by_the_drain_keeps_the_heat_balance() -> None:
    """In: the main's water, half as warm as it is to be, and the steam; out: 6 L/kg at 60 degC.

    The yarn is at 60 degC already and no surface loses heat, so nothing else takes part.
    """
    around = COLD._replace(direct_steam=True)
    step = RecoveringRinse(**{**BOXES, "rinse_water": 6.0, "rinse_temperature": 60.0, "heat_recovered": 0.5})
    warm = YarnState(0.92, 0.08, 60.0, liquor=1.0)
    lines = rinse_and_recover(step, warm, PRODUCTS, around)[1].lines
    live, main = bought(lines, "steam", "water"), bought(lines, "water", "water")
    assert live + main == pytest.approx(6.0, rel=1e-12)
    h1, h2, vapour = (
        84.0,
        251.2,
        2748.1,
    )  # kJ/kg: water of 20 and 60 degC, dry steam of 5 bar, any steam table
    assert main * (h1 + 0.5 * (h2 - h1)) + live * vapour == pytest.approx(6.0 * h2, rel=1e-4)
    assert steam.saturated_steam_enthalpy(5.0) == pytest.approx(vapour, abs=0.1)
