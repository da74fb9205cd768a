"""Sulfur dye: the reactions balance, and peroxide brings the oxygen that the sulfide demands."""

from __future__ import annotations

from collections import Counter

import pytest

from costing.effluent.oxygen_demand import oxygen_demand_of_formula
from costing.process import sulfide_oxidation, sulfur_dye
from costing.process.chemistry import atoms, molar_mass_of_formula

REACTIONS = [
    ({"NaHS": 1, "NaOH": 1}, {"Na2S": 1, "H2O": 1}),
    ({"Na2S": 1, "H2O2": 4}, {"Na2SO4": 1, "H2O": 4}),
    ({"Na2S": 1, "H2O2": 1}, {"S": 1, "NaOH": 2}),
]


def count(side: dict[str, int]) -> dict[str, float]:
    found: Counter[str] = Counter()
    for formula, times in side.items():
        for element, number in atoms(formula).items():
            found[element] += int(times * number)
    return dict(found)


@pytest.mark.parametrize(("left", "right"), REACTIONS)
def test_reactions_balance(left: dict[str, int], right: dict[str, int]) -> None:
    assert count(left) == count(right)


def test_peroxide_to_sulfate_brings_the_oxygen_demand_of_the_sulfide() -> None:
    oxygen_of_peroxide = molar_mass_of_formula("O") / molar_mass_of_formula("H2O2")
    brought = sulfide_oxidation.peroxide_for_sulfide_to_sulfate(1.0) * oxygen_of_peroxide
    assert brought == pytest.approx(oxygen_demand_of_formula("Na2S"), rel=1e-12)


def test_peroxide_to_sulfur_leaves_the_oxygen_demand_of_the_sulfur() -> None:
    oxygen_of_peroxide = molar_mass_of_formula("O") / molar_mass_of_formula("H2O2")
    brought = sulfide_oxidation.peroxide_for_sulfide_to_sulfur(1.0) * oxygen_of_peroxide
    left = sulfide_oxidation.sulfide_as_sulfur(1.0) * oxygen_demand_of_formula("S")
    assert brought + left == pytest.approx(oxygen_demand_of_formula("Na2S"), rel=1e-12)


def test_hydrosulfide_with_its_caustic_is_the_sulfide_and_its_water() -> None:
    hydrosulfide = sulfur_dye.hydrosulfide_for_sulfide(1.0)
    assert sulfur_dye.sulfide_from_hydrosulfide(hydrosulfide) == pytest.approx(1.0, rel=1e-12)
    water = molar_mass_of_formula("H2O") / molar_mass_of_formula("Na2S")
    both = hydrosulfide + sulfur_dye.caustic_for_hydrosulfide(hydrosulfide)
    assert both == pytest.approx(1.0 + water, rel=1e-12)


def test_a_box_fed_by_its_bath_strength_gives_the_depth_back() -> None:
    feed = sulfur_dye.dye_feed_for_depth(0.07, 0.65)
    strength = sulfur_dye.dye_bath_strength(feed, 0.75, 0.2)
    assert sulfur_dye.dye_feed_of_box(0.6, 0.0, 0.75, strength, 0.2) == pytest.approx(feed, rel=1e-12)
