"""The pH of a water against a root finder of another library, and acid that brings it where it was to go."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from costing.effluent import acidity, neutralising
from costing.effluent.loads import SULFURIC_ACID_PER_CHARGE
from costing.formulas.group_acidity import FORMULAS
from costing.quantities import InputError

CALCULATE = {formula.function.__name__: formula.calculate for formula in FORMULAS}

# The constants once more, as constants of mass action, and the balance written in protons.
WATER: float = 10.0**-13.995
FIRST: float = 10.0**-6.352
SECOND: float = 10.0**-10.329
SULFITE: tuple[float, float] = (10.0**-1.860, 10.0**-7.205)
SULFIDE: float = 10.0**-6.994
ACETATE: float = 10.0**-4.757
HENRY: float = 10.0**-1.468

amounts = st.floats(0.0, 0.5)


def charge(
    protons: float, carbonate: float, sulfite: float, sulfide: float, acetate: float, strong: float
) -> float:
    ions = strong + protons - WATER / protons
    for total, first, second in ((carbonate, FIRST, SECOND), (sulfite, *SULFITE)):
        below = protons**2 + first * protons + first * second
        ions -= total * (first * protons + 2 * first * second) / below
    return ions - sulfide * SULFIDE / (protons + SULFIDE) - acetate * ACETATE / (protons + ACETATE)


@given(st.floats(-0.5, 2.0), amounts, amounts, amounts, amounts)
def test_ph_is_that_of_another_solver(
    strong: float, carbonate: float, sulfite: float, sulfide: float, acetate: float
) -> None:
    weak = (carbonate, sulfite, sulfide, acetate)
    expected = brentq(lambda ph: charge(10.0**-ph, *weak, strong), -2.0, 16.0, xtol=1e-13, rtol=1e-14)
    assert acidity.ph_from_strong_ions(strong, *weak) == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize("strong", [0.0, 0.001, 0.025, 0.5])
@pytest.mark.parametrize("pressure", [3.0e-4, 4.2e-4, 0.1])
def test_ph_under_a_gas_is_that_of_another_solver(strong: float, pressure: float) -> None:
    dissolved = HENRY * pressure / 1.01325

    def balance(ph: float) -> float:
        protons: float = 10.0**-ph
        bicarbonate = FIRST * dissolved / protons
        return strong + protons - WATER / protons - bicarbonate - 2 * SECOND * bicarbonate / protons

    expected = brentq(balance, 0.0, 14.0, xtol=1e-13)
    assert acidity.ph_under_carbon_dioxide(strong, pressure) == pytest.approx(expected, abs=1e-9)


@given(st.floats(0.0, 14.0), amounts, amounts, amounts, amounts)
def test_alkalinity_of_a_ph_and_back(
    ph: float, carbonate: float, sulfite: float, sulfide: float, acetate: float
) -> None:
    weak = (carbonate, sulfite, sulfide, acetate)
    strong = acidity.alkalinity_at_ph(ph, *weak)
    # Near neutral a rounding of a large difference is worth more protons than there are.
    assert acidity.ph_from_strong_ions(strong, *weak) == pytest.approx(ph, abs=1e-7)


@given(st.floats(0.0, 0.2))
def test_caustic_to_ph_and_back(caustic: float) -> None:
    ph = acidity.ph_from_free_caustic(caustic)
    assert acidity.free_caustic_from_ph(ph) == pytest.approx(caustic, rel=1e-9, abs=1e-12)
    amount = caustic / acidity.CAUSTIC
    assert acidity.ph_from_strong_ions(amount) == pytest.approx(ph, abs=1e-12)


def test_more_alkali_more_ph_and_more_acid() -> None:
    rising = np.linspace(-0.01, 0.1, 200)
    assert np.all(np.diff(acidity.ph_from_strong_ions(rising, 0.002, 0.005)) > 0)
    assert np.all(np.diff(neutralising.acid_to_reach_ph(rising + 0.05, 7.0, 0.002, 0.005)) > 0)


weaker = st.floats(0.0, 0.1)


@given(st.floats(0.21, 1.0), st.floats(6.0, 12.0), weaker, weaker, weaker)
def test_each_acid_brings_the_water_to_the_ph(
    strong: float, target: float, carbonate: float, sulfite: float, acetate: float
) -> None:
    weak = (carbonate, sulfite, acetate)
    if acidity.alkalinity_at_ph(target, carbonate, sulfite, 0.0, acetate) > strong:
        return
    sulfuric = neutralising.acid_to_reach_ph(strong, target, *weak) / SULFURIC_ACID_PER_CHARGE
    reached = acidity.ph_from_strong_ions(strong - sulfuric, carbonate, sulfite, 0.0, acetate)
    assert reached == pytest.approx(target, abs=1e-6)
    acetic = neutralising.acetic_acid_to_reach_ph(strong, target, *weak) / neutralising.ACETIC_ACID
    reached = acidity.ph_from_strong_ions(strong, carbonate, sulfite, 0.0, acetate + acetic)
    assert reached == pytest.approx(target, abs=1e-6)
    gas = neutralising.carbon_dioxide_to_reach_ph(strong, target, *weak) / neutralising.CARBON_DIOXIDE
    reached = acidity.ph_from_strong_ions(strong, carbonate + gas, sulfite, 0.0, acetate)
    assert reached == pytest.approx(target, abs=1e-6)


def test_acid_is_not_given_for_a_ph_that_sets_gas_free() -> None:
    for name in ("acid_to_reach_ph", "acetic_acid_to_reach_ph", "carbon_dioxide_to_reach_ph"):
        with pytest.raises(InputError, match="target acidity is 4, accepted is 6 to 12"):
            CALCULATE[name]({"alkalinity": 25, "target_acidity": 4})


def test_nothing_is_added_to_a_water_below_the_ph() -> None:
    for name in ("acid_to_reach_ph", "acetic_acid_to_reach_ph", "carbon_dioxide_to_reach_ph"):
        assert CALCULATE[name]({"alkalinity": 5, "target_acidity": 9, "total_carbonate": 25}) == 0.0


def test_the_molar_volume_follows_from_the_gas_constant() -> None:
    assert pytest.approx(8.314462618 * 298.15 / 101.325, abs=5e-5) == neutralising.MOLAR_VOLUME
