"""Oxygen demand against printed examples, and demand that reactions may not change."""

from __future__ import annotations

import pytest

from costing.effluent.oxygen_demand import oxygen_demand_of_formula
from costing.process.bath_reactions import AIRING, WITHOUT_OXYGEN, oxidation_by_air
from costing.process.chemistry import molar_mass
from costing.reference_data import substances


@pytest.mark.parametrize(
    ("formula", "to_nitrate", "printed", "digits", "source"),
    [
        ("C2H5NO2", True, 1.49, 2, "thod-encyclopedia, glycine"),
        ("C6H12O6", False, 1.07, 2, "thod-glucose"),
    ],
)
def test_printed_examples(formula: str, to_nitrate: bool, printed: float, digits: int, source: str) -> None:
    """The source is in the name of the case."""
    assert round(oxygen_demand_of_formula(formula, to_nitrate), digits) == printed


def test_sulfite_that_takes_up_oxygen() -> None:
    """sulfite-scavenging: 7.88 mg of sodium sulfite for 1 mg of oxygen."""
    assert 1.0 / oxygen_demand_of_formula("Na2SO3") == pytest.approx(7.88, abs=0.005)


@pytest.mark.parametrize(
    ("formula", "demand"),
    [
        ("C16H10N2O2", 1.952),
        ("C16H12N2O2", 1.998),
        ("Na2S2O4", 0.2757),
        ("Na2SO3", 0.1269),
        ("Na2S2O3", 0.4048),
        ("Na2S", 0.8200),
        ("NaHS", 1.1416),
        ("C2H4O2", 1.0657),
        ("C6H10O5", 1.184),
        ("C2H4O", 1.816),
        ("C27H56O8", 2.327),
        ("C12H25SO4Na", 1.997),
        ("C6H8O6", 0.908),
        ("Na2SO4", 0.0),
        ("NaOH", 0.0),
        ("Na2CO3", 0.0),
        ("CH4N2O", 0.0),
    ],
)
def test_demand_worked_by_hand(formula: str, demand: float) -> None:
    """Electrons lost on the way to CO2, H2O, sulfate and ammonium, four to an oxygen; worked on paper."""
    assert oxygen_demand_of_formula(formula) == pytest.approx(demand, abs=5e-4, rel=5e-4)


def test_only_oxygen_taken_up_lowers_the_demand() -> None:
    """Demand of what goes in, less the oxygen it takes, is the demand of what comes out."""
    for reaction in (WITHOUT_OXYGEN, AIRING, oxidation_by_air(1.2)):
        change = sum(
            number * molar_mass(substance) * oxygen_demand_of_formula(substances()[substance].formula)
            for substance, number in reaction.items()
            if substance != "oxygen"
        )
        taken = -reaction.get("oxygen", 0.0) * molar_mass("oxygen")
        assert change == pytest.approx(-taken, abs=1e-12)
