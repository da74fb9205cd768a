"""What the class of a dye asks for, and the sulfide that comes with a dye sold reduced."""

from __future__ import annotations

from typing import Any

import pytest

from costing.effluent.discharge import streams as streams
from costing.ledger.closure import gaps
from costing.ledger.remarks import remarks
from costing.quantities import InputError
from costing.settings.building import Assumption
from costing.settings.dye_box_step import DyeBox
from tests.example_mill import ROUTE, example_mill
from tests.process.test_boxes import PRODUCTS, moved, opened, warnings
from tests.process.test_vessel_and_cloth import VESSEL

PAD, CHEMICALS, RINSE = ("dye pad", "dye box"), ("chemical pad", "treatment"), ROUTE[1]
BATH = ("vessel dyeing", "bath")
DRY = {"pick_up": 0.7, "exchange": 100.0}
BARE: dict[str, Any] = {
    "reductant_product": None,
    "caustic_product": None,
    "wetting_agent_product": None,
    "dye_on_yarn": 2.0,
    "extra_uptake": 0.0,
}
SODA = {"first_product": "ASH", "first_dose": 20.0}
REDUCING = {"first_product": "HYDRO", "first_dose": 40.0, "second_product": "LYE", "second_dose": 80.0}


def of_pad(**recipe: Any) -> dict[str, Any]:
    return {"route": [PAD, RINSE], "recipe": {"dye pad": {**BARE, **recipe}}, "machine": {"dye pad": DRY}}


def test_a_pad_of_dye_soda_salt_and_urea_by_hand() -> None:
    """20 g/kg at 80 % are 25 g/kg in 0.7 L/kg; 20 and 60 and 50 g/L as delivered in the same 0.7 L/kg."""
    liquor = {**SODA, "second_product": "SALT", "second_dose": 60.0}
    ledger = opened(
        **of_pad(dye_product="REACTIVE", dye_fixation=80.0, **liquor, third_product="UREA", third_dose=50.0)
    )
    for substance, amount in (
        ("REACTIVE", 0.025),
        ("sodium_carbonate", 0.7 * 0.020 * 0.99),
        ("sodium_chloride", 0.7 * 0.060 * 0.99),
        ("urea", 0.7 * 0.050 * 0.99),
    ):
        assert moved(ledger, "dye pad", substance, source="store") == pytest.approx(amount, rel=1e-9)
    assert moved(ledger, "dye pad", "REACTIVE", destination="dyed yarn") == pytest.approx(0.020, rel=1e-9)
    assert "class" not in warnings(ledger)
    assert "alkali" not in warnings(ledger)


@pytest.mark.parametrize("dye", ["REACTIVE", "DIRECT"])
def test_a_reductant_in_one_bath_with_a_dye_that_it_destroys_is_refused(dye: str) -> None:
    with pytest.raises(InputError) as refused:
        opened(**of_pad(dye_product=dye, reductant_product="HYDRO", bath_reductant=5.0))
    assert str(refused.value).startswith(
        "test, reductant_product: reductant product is 'HYDRO', a reductant, in"
    )
    assert f"{dye.lower()} dye '{dye}'" in str(refused.value)
    bath = {"batch_dye_product": dye, "dye_offered": 2.0, "first_product": "SULFIDE", "first_dose": 2.0}
    with pytest.raises(InputError, match="test, first_product: first product is 'SULFIDE', a reductant"):
        opened(route=[BATH], recipe={"vessel dyeing": bath}, whole_machine=VESSEL)


def test_a_vat_dye_that_nothing_reduces_is_refused() -> None:
    alone = of_pad(dye_product="VAT")
    said = r"test, dye_product: dye product is 'VAT', a vat dye, and no reductant meets it here or behind it"
    with pytest.raises(InputError, match=said):
        opened(**alone)
    too_late = {
        **alone,
        "route": [PAD, RINSE, CHEMICALS],
        "recipe": {**alone["recipe"], "chemical pad": REDUCING},
    }
    with pytest.raises(InputError, match=said):
        opened(**too_late)
    opened(**{**too_late, "route": [PAD, ROUTE[4], CHEMICALS, RINSE]})  # padded, dried, reduced, rinsed


def test_the_reductant_of_a_chemical_pad_is_used_up_on_the_dye() -> None:
    """0.7 L/kg of 40 g/L at 88 %: three quarters reduce the dye, then air: 2 NaOH of 40.0 for 174.10."""
    recipe = {"dye pad": {**BARE, "dye_product": "VAT"}, "chemical pad": {**REDUCING, "reductant_left": 25.0}}
    ledger = opened(
        route=[PAD, ROUTE[4], CHEMICALS, RINSE], recipe=recipe, machine={"dye pad": DRY, "chemical pad": DRY}
    )
    fed = moved(ledger, "chemical pad", "sodium_hydrosulfite", source="store")
    used = moved(ledger, "chemical pad", "sodium_hydrosulfite", destination="reaction")
    caustic = moved(ledger, "chemical pad", "sodium_hydroxide", destination="reaction")
    assert fed == pytest.approx(0.7 * 0.040 * 0.88, rel=1e-9)
    assert used == pytest.approx(0.75 * fed, rel=1e-9)
    assert caustic / used == pytest.approx(2 * 39.997 / 174.10, rel=1e-4)


def test_a_sulfur_dye_without_a_reductant_is_told_unless_it_brings_sulfide() -> None:
    assert "no reductant meets the sulfur dye BLACK" in warnings(opened(**of_pad(dye_product="BLACK")))
    assert "no reductant" not in warnings(opened(**of_pad(dye_product="BLACK-REDUCED")))


def test_sulfide_of_a_dye_sold_reduced_reaches_the_drain() -> None:
    """5 % of sodium sulfide in a product of 30 % dye: a sixth of the dye; 40 % of it is left."""
    ledger = opened(**of_pad(dye_product="BLACK-REDUCED", dye_fixation=100.0))
    brought = moved(ledger, "dye pad", "sodium_sulfide", source="store")
    assert brought == pytest.approx(0.020 * 0.05 / 0.30, rel=1e-9)
    (rinsed,) = [stream for stream in streams(ledger, PRODUCTS) if stream.name == RINSE[0]]
    (arriving,) = [yarn for step, yarn in ledger.run.entering if step.name == RINSE[0]]
    # the liquor of the first fill has not reduced anything yet
    assert arriving.dissolved["sodium_sulfide"] == pytest.approx(0.40 * brought, rel=0.05)
    left = arriving.dissolved["sodium_sulfide"] * 32.06 / 78.040
    assert 0.85 * left < rinsed.loads["sulfide, as S"] < left  # the rest stays on the yarn
    assert max(gaps(ledger.lines, PRODUCTS).values()) < 1e-9


def test_a_reactive_dye_without_alkali_is_told() -> None:
    assert "no alkali meets the reactive dye REACTIVE" in warnings(opened(**of_pad(dye_product="REACTIVE")))
    behind = of_pad(dye_product="REACTIVE")
    behind["recipe"]["chemical pad"] = SODA
    assert "no alkali" not in warnings(opened(**{**behind, "route": [PAD, CHEMICALS, RINSE]}))


def test_hydrosulfite_without_caustic_is_told() -> None:
    with_hydro = {"dye_product": "VAT", "reductant_product": "HYDRO"}
    assert "fed without caustic: it reduces VAT only in caustic" in warnings(opened(**of_pad(**with_hydro)))
    lye = {"caustic_product": "LYE", "bath_caustic": 30.0}
    assert "without caustic" not in warnings(opened(**of_pad(**with_hydro, **lye)))


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"bath_caustic": 5.0}, "bath caustic is given and caustic product is empty"),
        ({"bath_reductant": 5.0}, "bath reductant is given and reductant product is empty"),
        ({"first_product": "ASH"}, "first product is 'ASH' and first dose is empty"),
    ],
)
def test_a_strength_without_its_product_is_refused(given: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError, match=words):
        opened(**of_pad(dye_product="DIRECT", **given))


@pytest.mark.parametrize(
    ("dye", "low", "high"), [("VAT", 0.80, 0.95), ("REACTIVE", 0.60, 0.90), ("DIRECT", 0.70, 0.95)]
)
def test_what_is_fixed_where_nothing_is_given_is_in_its_class(dye: str, low: float, high: float) -> None:
    """epa-bmp-1996: vat 80 to 95 %, reactive 60 to 90 %, direct 70 to 95 % of the dye offered."""
    reduced = {"reductant_product": "HYDRO"} if dye == "VAT" else {}
    given = of_pad(dye_product=dye, **reduced)
    mill = example_mill(**given)
    step, _ = mill.steps_of(mill.recipes["R"], mill.ranges["M"])
    assert isinstance(step, DyeBox)
    assert low <= step.dye_fixation <= high
    owner = "recipe R on range M, dye pad"
    assert Assumption(owner, f"{dye.lower()} dye box.dye_fixation") in mill.assumptions
    in_vessel = {"batch_dye_product": dye, "dye_offered": 2.0}
    if reduced:
        in_vessel |= {"first_product": "HYDRO", "first_dose": 5.0}
    ledger = opened(route=[BATH], recipe={"vessel dyeing": in_vessel}, whole_machine=VESSEL)
    stays = moved(ledger, "vessel dyeing", dye, destination="dyed yarn")
    assert low <= stays / moved(ledger, "vessel dyeing", dye, source="store") <= high


def test_what_is_unusual_of_a_dye_is_judged_by_its_class() -> None:
    given = of_pad(dye_product="REACTIVE", dye_fixation=95.0, **SODA)
    mill = example_mill(**given)
    told = [remark.text for remark in remarks(opened(**given), mill) if "fixation" in remark.text]
    assert told == ["dye fixation is 95 %; usual is 50 % to 90 %"]


def test_glucose_has_typical_values_of_its_own() -> None:
    """Those of the other reductants are of sulfide: 30 g/L of glucose and 25 g/L of caustic, not 5 and 5."""
    by_default = {"reductant_ratio": None, "bath_reductant": None, "bath_caustic": None}
    for product, expected in (("GLUCOSE", (0.030, 0.025)), ("SULFIDE", (0.005, 0.005))):
        recipe = {
            "dye_product": "BLACK",
            "reductant_product": product,
            "caustic_product": "LYE",
            **by_default,
        }
        ledger = opened(**of_pad(**recipe))
        (box,) = [step for step in ledger.steps if isinstance(step, DyeBox)]
        assert (box.bath_reductant, box.bath_caustic) == pytest.approx(expected)
        assert box.reductant_ratio == 0.0


@pytest.mark.parametrize(("taken", "left"), [(0.0, 1.5), (0.5, 1.0), (9.0, 0.0)])
def test_what_the_dye_takes_of_peroxide_is_not_left(taken: float, left: float) -> None:
    """5 g/L in 0.3 L/kg on dry yarn are 1.5 g/kg; the dye takes 0, 0.5 or all of it."""
    dose = {"first_product": "PEROXIDE", "first_dose": 5.0, "dose_basis": "100 %", "peroxide_taken": taken}
    ledger = opened(
        route=[CHEMICALS, RINSE],
        recipe={"chemical pad": dose},
        machine={"chemical pad": {"pick_up": 0.3, "exchange": 100.0}},
    )
    (rinse,) = [yarn for step, yarn in ledger.run.entering if step.name == RINSE[0]]
    assert 1000.0 * rinse.dissolved.get("hydrogen_peroxide", 0.0) == pytest.approx(left, abs=1e-9)
    used = moved(ledger, "chemical pad", "hydrogen_peroxide", cause="oxidises the dye in place of air")
    assert 1000.0 * used == pytest.approx(1.5 - left, abs=1e-9)
    assert max(gaps(ledger.lines, example_mill().materials).values()) < 1e-9


def in_three_steps(dye: str, grams: float = 40.0) -> dict[str, Any]:
    pads = {"dye pad": DRY, "chemical pad": DRY}
    recipe = {"dye pad": {**BARE, "dye_product": dye}, "chemical pad": {**REDUCING, "first_dose": grams}}
    return {"route": [PAD, ROUTE[4], CHEMICALS, RINSE], "recipe": recipe, "machine": pads}


@pytest.mark.parametrize("dye", ["REACTIVE", "DIRECT"])
def test_a_reductant_behind_a_dye_that_it_strips_is_told(dye: str) -> None:
    said = f"HYDRO, a reductant, meets the {dye.lower()} dye {dye} on the yarn"
    assert said in warnings(opened(**in_three_steps(dye)))
    assert "on the yarn" not in warnings(opened(**in_three_steps("VAT")))


@pytest.mark.parametrize(("grams", "told"), [(12.0, True), (20.0, False)])
def test_less_hydrosulfite_than_dissolves_the_vat_dye_is_told(grams: float, told: bool) -> None:
    """0.7 L/kg at 88 %: 12 g/L are 7.4 g/kg, 20 g/L 12.3; the dye takes 8.3 to 9.9 g/kg.

    20 g/kg fixed of 80 to 95 % are 21 to 25 g/kg of dye, which take 174.1/442.4 = 0.394 of it.
    """
    found = warnings(opened(**in_three_steps("VAT", grams)))
    assert ("g/kg of the vat dye VAT: less than the 0.39 g for each g" in found) is told


def test_what_a_step_refuses_as_a_whole_is_told_where_it_was_typed() -> None:
    with pytest.raises(InputError) as refused:
        opened(**of_pad(dye_product="DIRECT", bath_caustic=5.0))
    assert str(refused.value).startswith("test, bath_caustic: bath caustic is given and caustic product")
