"""Beams in a vessel and cloth on a pad-steam range, by hand and against printed recipes."""

from __future__ import annotations

from typing import Any

import pytest

from costing.cost.quote import quote
from costing.ledger.whole import Ledger, open_ledger
from costing.quantities import InputError
from costing.settings.vessel_steps import VesselBath
from tests.example_mill import ROUTE, example_mill
from tests.process.test_boxes import moved, opened

DYEING = ("vessel dyeing", "bath")
RINSE = ("vessel rinse", "bath")
SOAPING = ("soaping", "bath")
EXTRACTION = ("extraction", "extraction")
STEAMING = ("steaming", "steaming")
PAD = ("dye pad", "dye box")
VESSEL = {"yarn_form": "beams in a vessel", "charge_mass": 500.0, "charge_time": 30.0}
ONE_SET = {"sets_side_by_side": 1}


def first_bath(ledger: Ledger) -> VesselBath:
    (step, _), *_ = ledger.run.entering
    assert isinstance(step, VesselBath)
    return step


def test_a_printed_exhaust_recipe_gives_its_printed_kilograms() -> None:
    """50 kg at 1:15: 750 L, 4.5 kg of black (9 %) at 6 g/L, 4.5 kg of flakes: sulfur-exhaust-recipe."""
    bath = {
        "liquor_ratio": 15.0,
        "batch_dye_product": "BLACK",
        "dye_offered": 9.0,
        "first_product": "SULFIDE",
        "first_on_yarn": 9.0,
    }
    ledger = opened(
        route=[DYEING], recipe={"vessel dyeing": bath}, whole_machine={**VESSEL, "charge_mass": 50.0}
    )
    charge, step = 50.0, "vessel dyeing"
    assert charge * ledger.used("BLACK") == pytest.approx(4.5)
    assert charge * ledger.used("SULFIDE") == pytest.approx(4.5)
    drained = moved(ledger, step, "water", destination="drain: vessel dyeing drained")
    kept = ledger.run.dyed_yarn_per_grey
    assert charge * (drained + first_bath(ledger).liquor_retained) == pytest.approx(750.0)
    assert kept > 3.0
    assert ledger.used("BLACK") / 15.0 == pytest.approx(0.006)


def test_each_bath_thins_what_the_drained_yarn_keeps() -> None:
    """2 L/kg kept of 10: a fifth of the salt is left behind each bath, 0.2 x 0.2 of it behind two rinses."""
    ledger = opened(
        route=[DYEING, RINSE, SOAPING],
        recipe={
            "vessel dyeing": {"liquor_ratio": 10.0, "first_product": "ASH", "first_dose": 20.0},
            "vessel rinse": {"liquor_ratio": 10.0},
            "soaping": {"liquor_ratio": 10.0},
        },
        machine={name: {"liquor_retained": 2.0} for name in ("vessel dyeing", "vessel rinse", "soaping")},
        whole_machine=VESSEL,
    )
    fed = moved(ledger, "vessel dyeing", "sodium_carbonate", source="store")
    assert fed == pytest.approx(10.0 * 0.020 * 0.99)
    left = moved(ledger, "take-off", "sodium_carbonate")
    assert left == pytest.approx(fed * 0.2 * 0.2 * 0.2, rel=1e-9)
    # each bath is filled up: 10 L/kg into dry yarn, 8 L/kg beside what it keeps
    assert moved(ledger, "vessel rinse", "water", source="store", material="water") == pytest.approx(8.0)


def test_dye_that_is_not_fixed_comes_off_bath_by_bath() -> None:
    """10 g/kg as 100 %: 8 exhaust, 6.8 stay fixed, 1.2 loose; half of what is left comes off in a bath."""
    dye = {"dye_offered": 100.0 / 30.0, "dye_exhaustion": 80.0, "dye_fixation": 85.0}
    ledger = opened(
        route=[DYEING, SOAPING],
        recipe={
            "vessel dyeing": {"batch_dye_product": "BLACK", **dye},
            "soaping": {"loose_removed": 50.0},
        },
        whole_machine=VESSEL,
    )
    assert moved(ledger, "vessel dyeing", "BLACK", destination="dyed yarn") == pytest.approx(0.0068)
    drained = sum(
        line.amount for line in ledger.run.lines if line.substance == "BLACK" and "drain" in line.destination
    )
    left = moved(ledger, "take-off", "BLACK")
    kept = (first_bath(ledger).liquor_retained / first_bath(ledger).liquor_ratio) ** 2
    # 0.6 g/kg still loose, and what the kept liquor holds of 2 and of 0.6 g/kg
    share = first_bath(ledger).liquor_retained / first_bath(ledger).liquor_ratio
    assert left == pytest.approx(0.0006 + 0.002 * kept + 0.0006 * share, rel=1e-9)
    assert drained + left == pytest.approx(0.0032, rel=1e-9)


def test_charges_and_hours_of_a_vessel() -> None:
    """Whole charges of 500 kg; two baths of 60 min and 30 min to load are 2.5 h for each."""
    ledger = opened(
        route=[DYEING, RINSE],
        recipe={"vessel dyeing": {"bath_time": 60.0}, "vessel rinse": {"bath_time": 60.0}},
        machine={"vessel dyeing": {"power": 30.0}, "vessel rinse": {"power": 0.0}},
        whole_machine=VESSEL,
    )
    charges = -(-ledger.plan.grey_mass_dyed // 500.0)
    assert ledger.plan.number_of_sets == charges
    assert ledger.plan.run_hours == pytest.approx(2.5 * charges)
    energy = sum(line.amount for line in ledger.run.lines if line.destination == "motors and lights")
    assert energy * ledger.plan.grey_mass_dyed == pytest.approx(30.0 * charges)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"whole_machine": {"yarn_form": "beams in a vessel"}}, "charge mass is empty; a range of the form"),
        ({"whole_machine": VESSEL, "enquiry": {"sets_side_by_side": 2}}, "runs one charge after the other"),
        (
            {"recipe": {"vessel dyeing": {"liquor_ratio": 2.0}}},
            "liquor ratio is 2 L/kg and the yarn keeps 2.2 L/kg",
        ),
        (
            {"recipe": {"vessel dyeing": {"first_product": "ASH", "first_dose": 1.0, "first_on_yarn": 1.0}}},
            "first product, first dose and first on yarn: accepted is a product with either its dose",
        ),
        (
            {"recipe": {"vessel dyeing": {"dye_offered": 1.0}}},
            "batch dye product and dye offered: one is empty",
        ),
    ],
)
def test_vessels_that_make_no_sense_are_refused(given: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError, match=words):
        opened(**{"route": [DYEING], "whole_machine": VESSEL, **given})


def test_extraction_throws_its_share_of_the_liquor_off() -> None:
    ledger = opened(
        route=[DYEING, EXTRACTION],
        recipe={"vessel dyeing": {"first_product": "ASH", "first_dose": 10.0}},
        machine={"vessel dyeing": {"liquor_retained": 2.0}, "extraction": {"extracted_to": 0.5}},
        whole_machine=VESSEL,
    )
    assert moved(ledger, "extraction", "water", cause="extracted") == pytest.approx(1.5)
    kept = moved(ledger, "take-off", "sodium_carbonate")
    assert kept == pytest.approx(moved(ledger, "extraction", "sodium_carbonate") / 3.0)
    with pytest.raises(InputError, match=r"extracted to is 1 L/kg, but the yarn arrives with 0.75 L/kg"):
        opened(route=[*ROUTE[:2], EXTRACTION], machine={"extraction": {"extracted_to": 1.0}})


def test_steam_condenses_on_the_goods() -> None:
    """From 20 to 100 degC, dry cloth of 0.92 kg and 0.785 L/kg of water: (1.3 x 0.92 + 4.19 x 0.785) x 80 kJ.

    Dry saturated steam of 5.013 bar absolute gives 2748.2 - 419.1 kJ/kg (steam tables of IAPWS-IF97).
    """
    ledger = opened(
        route=[ROUTE[1], STEAMING],
        recipe={
            "steaming": {"steaming_temperature": 100.0},
            "rinse after scour": {"rinse_temperature": 20.0},
        },
        machine={"rinse after scour": {"pick_up": 0.7}, "steaming": {"vented_steam": 0.0}},
    )
    condensed = moved(ledger, "steaming", "water", cause="heats the goods")
    moisture = 0.7 + 1.0 - 0.9216590
    heat = (1.3 * 0.9216590 + 4.19 * moisture) * 80.0
    assert condensed == pytest.approx(heat / (2748.2 - 419.1), rel=0.01)


def test_steam_that_is_blown_off_counts_by_the_hour() -> None:
    """180 kg/h, whatever the range runs: 180 over its kilograms an hour, and the net loses a tenth on top."""
    ledger = opened(
        route=[ROUTE[1], STEAMING],
        machine={"steaming": {"vented_steam": 180.0}},
        whole_machine={"steam_losses": 10.0},
    )
    blown = moved(ledger, "steaming", "water", cause="blown off")
    assert blown * ledger.plan.around.throughput == pytest.approx(180.0)
    condensed = moved(ledger, "steaming", "water", cause="heats the goods")
    lost = moved(ledger, "steaming", "water", cause="lost in the steam net")
    assert lost == pytest.approx((blown + condensed) / 9.0)


CLOTH = {"yarn_form": "cloth", "leader_length": 0.0, "off_shade_length": 0.0}
BLACK = {"dye_on_yarn": 3.0, "extra_uptake": 0.0, "dye_fixation": 65.0}


def test_cloth_takes_its_dye_by_the_metre() -> None:
    """Per metre of loom-state cloth: its warp and its weft, each with what the pad puts on."""
    mill = example_mill(
        route=[PAD, ROUTE[1]],
        recipe={"dye pad": BLACK},
        whole_machine=CLOTH,
        enquiry={"length_basis": "loom-state cloth", **ONE_SET},
    )
    ledger = open_ledger(mill, mill.enquiries["E"])
    fabric = ledger.fabric
    per_metre = fabric.warp_on_cloth + fabric.weft_on_cloth
    assert ledger.plan.saleable_mass == pytest.approx(20000.0 * per_metre)
    # 84.36 tex, stretched by 1 % as the range stretches warp, 8 % crimp; the weft without its 3 % of waste
    ends = round(2450.0 * 1.66 + 48)
    assert fabric.warp_on_cloth == pytest.approx(ends * 84.36e-6 / 1.01 * 1.08, rel=0.02)
    assert fabric.weft_on_cloth == pytest.approx(fabric.weft_per_metre * 0.97)
    assert mill.costs is not None
    offer = quote(ledger, mill.materials, mill.costs)
    # warp and weft are bought with what the loom wastes, and the weft is not charged a second time
    by_group = offer.by("group")
    warp = fabric.warp_on_cloth / per_metre / 0.98 * 2.4
    weft = fabric.weft_on_cloth / per_metre / 0.97 * 2.2
    assert by_group["warp yarn",] == pytest.approx(warp, rel=1e-3)
    assert by_group["weft yarn",] == pytest.approx(weft, rel=1e-3)
    assert offer.weft_per_kg == 0.0


@pytest.mark.parametrize(
    ("order", "words"),
    [
        ({"length_basis": "dyed warp"}, "length basis is 'dyed warp', but range M dyes cloth"),
        ({"sets_side_by_side": 2}, "sets side by side is 2, but range M runs one cloth"),
    ],
)
def test_cloth_refuses_what_is_of_a_warp(order: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError, match=words):
        opened(route=[PAD], recipe={"dye pad": BLACK}, whole_machine=CLOTH, enquiry=order)


@pytest.mark.parametrize("form", ["ropes", "sheet", "beams in a vessel"])
def test_the_warp_of_a_metre_is_that_of_its_cloth(form: str) -> None:
    """What the range dyes, weaving waste off, is what stands in the cloth; stretch has made it finer."""
    machine = {**VESSEL, "yarn_form": form, "stretch": 2.0}
    ledger = opened(route=[("drying", "drying")], whole_machine=machine, enquiry=ONE_SET)
    warp = ledger.saleable_warp_per_metre * (1.0 - ledger.style.warp_waste)
    assert warp == pytest.approx(ledger.fabric.warp_on_cloth, rel=1e-12)


def test_a_rinse_thins_sulfide_and_destroys_none() -> None:
    bath = {"liquor_ratio": 10.0, "first_product": "SULFIDE", "first_dose": 10.0}
    ledger = opened(
        route=[DYEING, RINSE],
        recipe={"vessel dyeing": bath, "vessel rinse": {"liquor_ratio": 10.0}},
        whole_machine=VESSEL,
    )
    assert moved(ledger, "vessel dyeing", "sodium_sulfide", destination="reaction") > 0.0
    assert moved(ledger, "vessel rinse", "sodium_sulfide", destination="reaction") == 0.0
