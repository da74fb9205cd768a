"""Molar masses and ratios against a formula-mass library and printed figures."""

from __future__ import annotations

import molmass
import pytest

from costing.process import reduction
from costing.process.bath_reactions import (
    AIRING,
    CARBONATION,
    REVATTING,
    VATTING,
    WITHOUT_OXYGEN,
    oxidation_by_air,
)
from costing.process.chemistry import atoms, element_share, molar_mass, molar_mass_of_formula
from costing.process.fibre import NEUTRALISATION
from costing.reference_data import substances


@pytest.mark.parametrize("substance", list(substances()))
def test_molar_mass_against_a_library(substance: str) -> None:
    """The library has sulfur at 32.0648, the abridged table of 2021 has 32.06: 1.4e-4 in the sulfides."""
    formula = substances()[substance].formula
    assert molar_mass(substance) * 1000 == pytest.approx(molmass.Formula(formula).mass, rel=1.5e-4)


def test_hydrates_count_their_water() -> None:
    assert atoms("Na2S.9H2O") == {"Na": 2.0, "S": 1.0, "H": 18.0, "O": 9.0}
    assert molar_mass_of_formula("Na2S.9H2O") * 1000 == pytest.approx(240.18, abs=0.01)


@pytest.mark.parametrize("text", ["", "NaOH)", "Xx2", "na", "Na2S.", "2"])
def test_what_is_no_formula_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"formula|atomic weight"):
        molar_mass_of_formula(text)


@pytest.mark.parametrize(("element", "share"), [("Na", 0.2641), ("S", 0.3683)], ids=["sodium", "sulfur"])
def test_elements_in_hydrosulfite(element: str, share: float) -> None:
    """2 x 22.990 / 174.096 and 2 x 32.06 / 174.096."""
    assert element_share("sodium_hydrosulfite", element) == pytest.approx(share, abs=5e-5)


def test_ratios_of_vatting() -> None:
    """By hand from the atomic weights: 174.096 / 262.268, 2 x 39.997 / 174.096, 2 x 39.997 / 44.009."""
    assert pytest.approx(0.6638, abs=5e-5) == reduction.HYDROSULFITE_PER_INDIGO
    assert pytest.approx(0.4595, abs=5e-5) == reduction.CAUSTIC_PER_HYDROSULFITE
    assert pytest.approx(1.8177, abs=5e-5) == reduction.CAUSTIC_PER_CARBON_DIOXIDE
    assert pytest.approx(5.441, abs=5e-4) == reduction.HYDROSULFITE_PER_OXYGEN
    assert pytest.approx(0.0610, abs=5e-5) == reduction.OXYGEN_PER_INDIGO


REACTIONS = {
    "vatting": VATTING,
    "revatting": REVATTING,
    "without oxygen": WITHOUT_OXYGEN,
    "airing": AIRING,
    "carbonation": CARBONATION,
    "neutralisation": NEUTRALISATION,
    **{f"air, {ratio}": oxidation_by_air(ratio) for ratio in (1.0, 1.2, 1.7, 2.0)},
}


@pytest.mark.parametrize("name", list(REACTIONS))
def test_every_reaction_balances_in_atoms(name: str) -> None:
    sums: dict[str, float] = {}
    for substance, number in REACTIONS[name].items():
        for element, count in atoms(substances()[substance].formula).items():
            sums[element] = sums.get(element, 0.0) + number * count
    assert all(abs(value) < 1e-12 for value in sums.values()), sums


def test_electrons_balance_in_vatting_and_airing() -> None:
    """Dithionite gives two electrons; indigo takes two. Oxygen takes four."""
    assert VATTING["sodium_sulfite"] == 2 * -VATTING["sodium_hydrosulfite"]  # S(III) to S(IV), twice
    assert AIRING["leuco_indigo"] * 2 == AIRING["oxygen"] * 4
    for ratio in (1.0, 1.2, 2.0):
        reaction = oxidation_by_air(ratio)
        given = reaction["sodium_sulfite"] * 1 + reaction["sodium_sulfate"] * 3  # from S(III)
        assert given == pytest.approx(-4 * reaction["oxygen"])
