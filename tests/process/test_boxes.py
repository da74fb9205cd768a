"""Boxes of one liquor, sulfur dye and size, by hand; and the reactions that run in them."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.ledger.remarks import remarks
from costing.ledger.whole import Ledger, open_ledger
from costing.process.bath_brought import MET
from costing.process.box import Box, Dose, Flows, flows_of, post_fill
from costing.process.box_reactions import MEETING, PEROXIDE_DECAY, USED_UP, react_all
from costing.process.chemistry import atoms
from costing.process.drying import dry_mass
from costing.process.postings import PROCESS, Book, balance
from costing.process.size_box import size_liquor
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.reference_data import substances
from costing.settings.sizing_step import Sizing
from tests.example_mill import MATERIALS, ROUTE, example_mill

PRODUCTS = {item.code: item for item in MATERIALS}
SULFUR = ("sulfur bottom", "dye box")
OXIDATION = ("oxidation", "treatment")
SOFTENER = ("softener", "treatment")
SIZE = ("size box", "size")
LAST = ("drying after size", "drying")
OXIDISED = {
    "first_product": "PEROXIDE",
    "first_dose": 5.0,
    "second_product": "ACETIC",
    "second_dose": 3.0,
}


def opened(**settings: Any) -> Ledger:
    mill = example_mill(**settings)
    return open_ledger(mill, mill.enquiries["E"])


def moved(ledger: Ledger, step: str, substance: str, **more: str) -> float:
    """What the run moves of a substance in a step, of lines with the source, destination or cause named."""
    return sum(
        line.amount
        for line in ledger.run.lines
        if line.step == step
        and line.substance == substance
        and all(getattr(line, name) == text for name, text in more.items())
    )


def warnings(ledger: Ledger) -> str:
    return "\n".join(remark.text for remark in remarks(ledger, example_mill()) if remark.kind == "warning")


@pytest.mark.parametrize(
    "stoichiometry",
    [
        *(reaction.stoichiometry for reaction in (*MEETING, *USED_UP.values(), PEROXIDE_DECAY)),
        *(reaction for _, reaction in MET.values()),
    ],
    ids=lambda stoichiometry: " + ".join(name for name, mol in stoichiometry.items() if mol < 0),
)
def test_every_atom_of_a_reaction_is_found_again(stoichiometry: dict[str, float]) -> None:
    count: dict[str, float] = {}
    for name, mol in stoichiometry.items():
        for element, number in atoms(substances()[name].formula).items():
            count[element] = count.get(element, 0.0) + mol * number
    assert {element: number for element, number in count.items() if abs(number) > 1e-12} == {}


@pytest.mark.parametrize(
    ("there", "taken", "each"),
    [
        # 4 x 34.014 / 78.04 and 39.997 / 56.06: four peroxide to a sulfide, one caustic to a hydrosulfide
        ({"sodium_sulfide": 0.001, "hydrogen_peroxide": 1.0}, "hydrogen_peroxide", 1.7434),
        ({"sodium_hydrosulfide": 0.001, "sodium_hydroxide": 1.0}, "sodium_hydroxide", 0.7135),
        # 39.997 / 60.05: one caustic to an acetic acid
        ({"acetic_acid": 0.001, "sodium_hydroxide": 1.0}, "sodium_hydroxide", 0.6660),
    ],
)
def test_what_meets_reacts_to_the_end(there: dict[str, float], taken: str, each: float) -> None:
    book = Book("box")
    react_all(book, there)
    first = next(iter(there))
    left = {name: there.get(name, 0.0) + amount for name, amount in book.held().items()}
    assert left[first] == pytest.approx(0.0, abs=1e-15)
    assert (there[taken] - left[taken]) / there[first] == pytest.approx(each, abs=5e-5)


@given(st.dictionaries(st.sampled_from([*substances()]), st.floats(0.0, 0.1), max_size=8))
def test_reactions_end_and_leave_nothing_below_zero(there: dict[str, float]) -> None:
    book = Book("box")
    dissolved = {name: amount for name, amount in there.items() if name not in ("water", "oxygen")}
    react_all(book, dissolved)
    for name, amount in book.held().items():
        if name not in ("water", "carbon_dioxide", "hydrogen_sulfide"):
            assert dissolved.get(name, 0.0) + amount >= -1e-15, name
    again = Book("box")
    react_all(again, {name: dissolved.get(name, 0.0) + book.held().get(name, 0.0) for name in substances()})
    assert sum(abs(line.amount) for line in again.lines) < 1e-12


def wet_box(**given: Any) -> Box:
    settings = {"pick_up": 0.75, "exchange": 1.0, "least_overflow": 0.0, "feed_ratio": 10.0, **given}
    doses = (Dose(PRODUCTS["SOFT"], 0.005),)
    return Box(
        "box", doses, 40.0, volume=800.0, heated_surface=0.0, surface_heat_loss=0.0, power=0.0, **settings
    )


@pytest.mark.parametrize(
    ("given", "liquor", "expected"),
    [
        # dry yarn takes all that is fed along
        ({}, 0.0, Flows(0.0, 0.75, 0.0, 0.75)),
        # 0.75 L/kg leave at a tenth of the strength of the feed: V = (0.075 + 0.1 V), so V = 0.075 / 0.9
        ({}, 0.75, Flows(0.0, 0.75, 0.075 / 0.9, 0.075 / 0.9)),
        # a quarter of the liquor stays: 0.5625 L/kg of bath leave, V = 0.05625 / 0.9 = 0.0625
        ({"exchange": 0.75}, 0.75, Flows(0.1875, 0.5625, 0.0625, 0.0625)),
        # wetter in than out: 0.25 L/kg too much, V = (0.25 + 0.075) / 0.9
        ({}, 1.0, Flows(0.0, 0.75, 0.325 / 0.9, 0.075 / 0.9 - 0.25 + 0.25 / 0.9)),
        # and with a quarter of what stays: no more stays than leaves, 0.1875; V = (0.25 + 0.05625) / 0.9
        ({"exchange": 0.75}, 1.0, Flows(0.1875, 0.5625, 0.30625 / 0.9, 0.30625 / 0.9 - 0.25)),
        ({"least_overflow": 0.5}, 0.75, Flows(0.0, 0.75, 0.5, 0.5)),
    ],
)
def test_volumes_of_a_box_by_hand(given: dict[str, float], liquor: float, expected: Flows) -> None:
    yarn = YarnState(0.92, 0.08, 20.0, liquor=liquor)
    assert flows_of(wet_box(**given), yarn) == pytest.approx(expected, abs=1e-12)


@given(st.floats(0.0, 1.5), st.floats(0.05, 1.0), st.floats(1.5, 100.0), st.floats(0.0, 1.0))
def test_the_feed_carries_what_leaves_and_holds_the_level(
    liquor: float, exchange: float, ratio: float, least: float
) -> None:
    box = wet_box(exchange=exchange, feed_ratio=ratio, least_overflow=least)
    flows = flows_of(box, YarnState(0.92, 0.08, 20.0, liquor=liquor))
    assert liquor + flows.feed == pytest.approx(box.pick_up + flows.overflow, rel=1e-12)
    assert flows.feed * ratio >= flows.leaving * (1.0 - 1e-12)
    assert flows.overflow >= least


def test_a_fill_is_a_litre_for_a_litre() -> None:
    book = Book("box")
    post_fill(book, wet_box(), "first fill", 800.0)
    held = balance(book.lines, PROCESS)
    assert held == pytest.approx({"SOFT": 4.0, "water": 800.0})


DRY_IN = {"pick_up": 0.75, "exchange": 90.0}
BOTTOM = {
    "dye_on_yarn": 2.0,
    "dye_fixation": 65.0,
    "extra_uptake": 30.0,
    "bath_reductant": 4.0,
    "reductant_ratio": 0.5,
}


def test_a_sulfur_box_on_dry_yarn_by_hand() -> None:
    """20 g/kg of dye fixed are 30.769 g/kg applied: 23.669 in 0.75 L/kg of 31.558 g/L, 30 % more drawn."""
    ledger = opened(
        route=[SULFUR, ROUTE[1]],
        recipe={"sulfur bottom": BOTTOM},
        machine={"sulfur bottom": {**DRY_IN, "reductant_left": 40.0}},
    )
    step = "sulfur bottom"
    assert moved(ledger, step, "BLACK", cause="carried out with the yarn") == pytest.approx(
        0.0236686, rel=1e-5
    )
    assert moved(ledger, step, "BLACK", cause="drawn by the fibre") == pytest.approx(0.0071006, rel=1e-5)
    assert moved(ledger, step, "BLACK", destination="dyed yarn") == pytest.approx(0.020, rel=1e-12)
    # what is not fixed is rinsed off: 30.769 - 20
    assert moved(ledger, "rinse after scour", "BLACK") == pytest.approx(0.0107692, rel=1e-5)
    # sulfide: 0.75 L/kg x 4 g/L and half of the dye, 3 + 15.385 g/kg; 60 % of it is used up and aired
    assert moved(ledger, step, "sodium_sulfide", source="store") == pytest.approx(0.0183846, rel=1e-5)
    used = moved(ledger, step, "sodium_sulfide", destination="reaction")
    assert used == pytest.approx(0.6 * 0.0183846, rel=1e-5)
    # 158.10 / (2 x 78.04) of thiosulfate for each sulfide
    made = moved(ledger, step, "sodium_thiosulfate", source="reaction")
    assert made / used == pytest.approx(1.0129, abs=5e-4)


def test_dye_that_overflows_has_its_reductant() -> None:
    """Half a kilogram of sulfide for each kilogram of dye matter that is fed, wherever it goes."""
    ledger = opened(
        route=[ROUTE[1], SULFUR],
        recipe={"sulfur bottom": {**BOTTOM, "bath_reductant": 0.0, "box_overflow": 0.4}},
        machine={"sulfur bottom": {"pick_up": 0.75, "exchange": 90.0}},
    )
    step = "sulfur bottom"
    dye, over = (moved(ledger, step, "BLACK", source="store", **more) for more in ({}, {"cause": "overflow"}))
    assert over > 0.3 * dye
    assert moved(ledger, step, "sodium_sulfide", source="store") == pytest.approx(0.5 * dye, rel=1e-9)


def test_a_printed_black_bath_gives_the_printed_depth() -> None:
    """150 g/L of solubilised dye in the box and 6 to 8 % on the yarn: rope-sulfur-black; 60 to 70 % fixed."""
    ledger = opened(
        route=[SULFUR],
        recipe={"sulfur bottom": {**BOTTOM, "dye_on_yarn": 7.3, "extra_uptake": 0.0, "dye_fixation": 65.0}},
        machine={"sulfur bottom": DRY_IN},
    )
    carried = moved(ledger, "sulfur bottom", "BLACK", cause="carried out with the yarn")
    assert carried / 0.75 == pytest.approx(0.150, abs=0.001)


def test_caustic_makes_sulfide_of_hydrosulfide() -> None:
    ledger = opened(
        route=[SULFUR],
        recipe={
            "sulfur bottom": {**BOTTOM, "reductant_product": "HYDROSULFIDE", "bath_caustic": 40.0},
        },
        machine={"sulfur bottom": {**DRY_IN, "reductant_left": 100.0}},
    )
    fed = moved(ledger, "sulfur bottom", "sodium_hydrosulfide", source="store")
    taken = moved(ledger, "sulfur bottom", "sodium_hydroxide", destination="reaction")
    assert taken / fed == pytest.approx(0.7135, abs=5e-5)


def test_an_oxidising_box_takes_the_sulfide_that_is_left() -> None:
    """1.7434 kg of peroxide for each kilogram of sulfide that comes into the box, and no gas."""
    ledger = opened(
        route=[SULFUR, OXIDATION],
        recipe={"sulfur bottom": BOTTOM, "oxidation": {**OXIDISED, "first_dose": 60.0}},
    )
    sulfide = moved(ledger, "oxidation", "sodium_sulfide", destination="reaction")
    assert sulfide > 0.001
    by_sulfide = sum(
        line.amount
        for line in ledger.run.lines
        if line.step == "oxidation"
        and line.substance == "hydrogen_peroxide"
        and line.destination == "reaction"
    )
    assert by_sulfide == pytest.approx(1.7434 * sulfide, rel=1e-4)
    assert moved(ledger, "oxidation", "hydrogen_sulfide") == 0.0


def test_acid_on_sulfide_is_told_as_the_gas_it_makes() -> None:
    acid = {"first_product": "ACETIC", "first_dose": 60.0}
    ledger = opened(route=[SULFUR, OXIDATION], recipe={"sulfur bottom": BOTTOM, "oxidation": acid})
    assert "would set free" in warnings(ledger)
    rinsed = opened(
        route=[SULFUR, ROUTE[1], OXIDATION], recipe={"sulfur bottom": BOTTOM, "oxidation": OXIDISED}
    )
    assert "would set free" not in warnings(rinsed)


def test_peroxide_on_the_yarn_costs_hydrosulfite_in_the_dye_bath() -> None:
    """One hydrosulfite, 174.10, for each peroxide, 34.01, that mixes with the bath."""
    route = [OXIDATION, ROUTE[2]]
    recipe = {"oxidation": {"first_product": "PEROXIDE", "first_dose": 10.0}}
    ledger = opened(route=route, recipe=recipe, machine={"indigo dyeing": {"exchange": 100.0}})
    extra = moved(
        *(ledger, "indigo dyeing", "sodium_hydrosulfite"),
        cause="destroyed by oxidant on the yarn",
        source="store",
    )
    carried = dict(ledger.run.entering)[ledger.steps[1]].dissolved["hydrogen_peroxide"]
    assert extra / carried == pytest.approx(174.096 / 34.014, rel=1e-4)
    assert "oxidant on the yarn destroys" in warnings(ledger)


def test_hydrosulfite_on_the_yarn_is_dosed_less() -> None:
    recipe = {"sulfur bottom": {**BOTTOM, "reductant_product": "HYDRO", "bath_caustic": 20.0}}
    ledger = opened(
        route=[SULFUR, ROUTE[2]], recipe=recipe, machine={"sulfur bottom": {"reductant_left": 50.0}}
    )
    saved = moved(ledger, "indigo dyeing", "sodium_hydrosulfite", cause="comes with the yarn")
    carried = dict(ledger.run.entering)[ledger.steps[1]].dissolved["sodium_hydrosulfite"]
    assert saved == pytest.approx(-carried, rel=0.01)


def test_a_softener_that_draws_stays_on_the_yarn() -> None:
    ledger = opened(
        route=[*ROUTE[:4], SOFTENER, ROUTE[4]],
        recipe={"softener": {"first_product": "SOFT", "first_dose": 20.0, "auxiliary_uptake": 50.0}},
        machine={"softener": {"pick_up": 0.75, "exchange": 100.0}},
    )
    # 20 g/L of 25 % in 0.75 L/kg: 3.75 g/kg in the liquor, half as much again drawn
    assert moved(ledger, "softener", "SOFT", cause="stays on the yarn") == pytest.approx(0.001875, rel=1e-9)


@pytest.mark.parametrize("wet", [False, True])
def test_a_size_box_by_hand(wet: bool) -> None:
    """Wet-in: 0.6 L/kg in, 1.2 out, 9 %: 75 g/L in the box and 150 g/L fed, of the dry warp."""
    yarn = YarnState(1.0, 0.0, 20.0, liquor=0.6 if wet else 0.0)
    step = Sizing(
        name="size box",
        size_add_on=0.09,
        first_product="STARCH",
        first_share=1.0,
        box_temperature=90.0,
        size_loss=0.04,
        size_density=1.0,
        pick_up=1.2,
        exchange=1.0,
        size_box_volume=500.0,
        heated_surface=0.0,
        surface_heat_loss=0.0,
        power=0.0,
    )
    found = size_liquor(step, yarn)
    assert dry_mass(yarn) == 1.0
    assert found.box_strength == pytest.approx(0.075)
    assert found.feed_strength == pytest.approx(0.15 if wet else 0.075)


SIZED = {"size_add_on": 9.0, "first_product": "STARCH", "first_share": 100.0}


def test_size_adds_its_mass_and_the_cans_behind_it_dry_its_water() -> None:
    """1.1 L/kg of 1.03 kg/L hold 1.133 kg, of it 9 % of the dry warp: the rest is water to evaporate."""
    plain = opened(route=ROUTE)
    sized = opened(
        route=[*ROUTE, SIZE, LAST], recipe={"size box": SIZED}, machine={"size box": {"pick_up": 1.1}}
    )
    dry = dry_mass(dict(sized.run.entering)[sized.steps[5]])
    size = moved(sized, "size box", "STARCH", destination="dyed yarn")
    assert size == pytest.approx(0.09 * dry, rel=1e-12)
    assert sized.dyed_yarn_per_grey > plain.dyed_yarn_per_grey + 0.08
    water = 1.1 * 1.03 - size
    evaporated = moved(sized, "drying after size", "water", destination="air", cause="evaporates on the cans")
    assert evaporated == pytest.approx(water, abs=0.02)


def test_size_lost_is_cooked_and_drained() -> None:
    ledger = opened(route=[*ROUTE, SIZE, LAST], recipe={"size box": {**SIZED, "size_loss": 5.0}})
    taken = moved(ledger, "size box", "STARCH", source="store")
    lost = sum(
        line.amount
        for line in ledger.run.lines
        if line.substance == "STARCH" and line.destination == "drain: size box losses"
    )
    assert lost / taken == pytest.approx(0.05, rel=1e-9)


@pytest.mark.parametrize(
    ("recipe", "words"),
    [
        ({"size box": {**SIZED, "first_share": 80.0}}, "come to 80 % together; accepted is 100 %"),
        ({"size box": {**SIZED, "second_share": 5.0}}, "second share is given and second product is empty"),
    ],
)
def test_shares_of_size_that_make_no_whole_are_refused(recipe: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError, match=words):
        opened(route=[*ROUTE, SIZE, LAST], recipe=recipe)


def test_a_warp_as_wet_as_it_leaves_takes_no_size() -> None:
    with pytest.raises(InputError, match=r"leaves the size box with 0.8 L/kg and brings 0.9 L/kg: no size"):
        opened(
            route=[*ROUTE[:4], SIZE, LAST],
            recipe={"size box": SIZED},
            machine={"size box": {"pick_up": 0.8}, "rinse after dyeing": {"pick_up": 0.9}},
        )


@pytest.mark.parametrize(
    ("recipe", "words"),
    [
        ({"first_product": "PEROXIDE"}, "first product is 'PEROXIDE' and first dose is empty"),
        ({"first_dose": 5.0}, "first dose is given and first product is empty"),
        ({}, "no product and no dose is given"),
        ({"first_product": "INDIGO", "first_dose": 5.0}, "first product is 'INDIGO', which holds indigo"),
        ({"first_product": "BLACK", "first_dose": 5.0}, "first product is 'BLACK'"),
    ],
)
def test_treatments_that_make_no_sense_are_refused(recipe: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError, match=words):
        opened(route=[OXIDATION], recipe={"oxidation": recipe})


def test_a_feed_too_strong_for_its_products_is_refused() -> None:
    """A liquid of 30 % in a bath of 60 g/L cannot be fed at ten times that strength to wet yarn."""
    with pytest.raises(InputError, match=r"the products bring .* more than the .* that the box takes"):
        opened(
            route=[ROUTE[1], SULFUR],
            recipe={"sulfur bottom": {**BOTTOM, "dye_on_yarn": 4.0, "feed_ratio": 40.0}},
        )


def test_a_deep_shade_in_two_dips_is_told() -> None:
    deep = opened(recipe={"indigo dyeing": {"indigo_on_yarn": 2.4, "dips": 2}})
    assert "2.4 % of indigo in 2 dip(s) is 1.2 % for each" in warnings(deep)
    assert "for each" not in warnings(opened(recipe={"indigo dyeing": {"indigo_on_yarn": 2.4, "dips": 7}}))


def test_unfixed_sulfur_dye_that_nothing_rinses_is_told() -> None:
    ledger = opened(route=[SULFUR, ROUTE[4]], recipe={"sulfur bottom": BOTTOM})
    assert "of unfixed dye BLACK stays on the yarn" in warnings(ledger)


def test_sets_side_by_side_are_refused_on_a_sheet() -> None:
    with pytest.raises(InputError, match="sets side by side is 2, but range M runs one sheet; accepted is 1"):
        opened(whole_machine={"yarn_form": "sheet"}, enquiry={"sets_side_by_side": 2})
    with pytest.raises(InputError, match=r"section beams .* need 11 beam places; range M has 8"):
        opened(whole_machine={"yarn_form": "sheet", "rope_places": 8})


def test_oxidant_and_reductant_in_one_box_are_told() -> None:
    pair = {"first_product": "PEROXIDE", "first_dose": 5.0, "second_product": "SULFIDE", "second_dose": 2.0}
    said = warnings(opened(route=[OXIDATION], recipe={"oxidation": pair}))
    assert "hydrogen peroxide and sodium sulfide are dosed into one box" in said
    assert "dosed into one box" not in warnings(opened(route=[OXIDATION], recipe={"oxidation": OXIDISED}))


def test_sulfide_that_comes_into_acid_is_told_even_beside_peroxide() -> None:
    ledger = opened(route=[SULFUR, OXIDATION], recipe={"sulfur bottom": BOTTOM, "oxidation": OXIDISED})
    assert "the yarn brings sulfide into a box with acid" in warnings(ledger)


def test_a_bottom_that_is_not_rinsed_is_told() -> None:
    route = [ROUTE[0], SULFUR, ROUTE[2]]
    assert "of loose sulfur dye comes into the indigo bath" in warnings(
        opened(route=route, recipe={"sulfur bottom": BOTTOM})
    )
    rinsed = [ROUTE[0], SULFUR, ROUTE[1], ROUTE[2]]
    assert "loose sulfur dye" not in warnings(opened(route=rinsed, recipe={"sulfur bottom": BOTTOM}))


def test_acids_of_grey_yarn_take_caustic_in_any_box() -> None:
    """2 g/kg of caustic: 194.139 / 39.997 of it in pectic acid that becomes its salt."""
    grey = {"first_product": "LYE", "first_dose": 100.0, "weight_loss": 3.0, "caustic_neutralised": 2.0}
    ledger = opened(route=[OXIDATION], recipe={"oxidation": grey})
    taken = moved(ledger, "oxidation", "sodium_hydroxide", destination="reaction")
    assert taken == pytest.approx(0.002, rel=1e-9)
    acid = moved(ledger, "oxidation", "galacturonic_acid", source="grey yarn")
    assert acid == pytest.approx(0.002 * 194.139 / 39.997, rel=1e-4)
    with pytest.raises(InputError, match=r"caustic neutralised is 15 g/kg, more than the acids of a"):
        opened(route=[OXIDATION], recipe={"oxidation": {**grey, "caustic_neutralised": 15.0}})


def test_peroxide_breaks_down_on_the_cans() -> None:
    """Half an oxygen, 15.999 of 34.014, for the air; none is left on the yarn."""
    ledger = opened(route=[OXIDATION, ROUTE[4]], recipe={"oxidation": OXIDISED})
    gone = moved(ledger, "drying", "hydrogen_peroxide", destination="reaction")
    oxygen = moved(ledger, "drying", "oxygen", destination="air")
    assert oxygen / gone == pytest.approx(15.999 / 34.014, rel=1e-4)
    assert moved(ledger, "take-off", "hydrogen_peroxide") == 0.0
