"""Sulfur salts and the oxygen that they meet: no more is oxidised than the oxygen allows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.effluent.oxidation import met, oxidised, oxygen_saturation, oxygen_taken_up
from costing.effluent.oxygen_demand import SULFUR_SPECIES, oxygen_demand_of_formula
from costing.process.chemistry import element_share
from costing.reference_data import substances

masses = st.dictionaries(st.sampled_from([*SULFUR_SPECIES, "sodium_sulfate"]), st.floats(0.0, 1.0))


def demand(amounts: dict[str, float]) -> float:
    return sum(
        amount * oxygen_demand_of_formula(substances()[name].formula)
        for name, amount in amounts.items()
        if name in SULFUR_SPECIES
    )


def held(amounts: dict[str, float], element: str) -> float:
    return sum(amount * element_share(name, element) for name, amount in amounts.items())


@given(masses, st.floats(0.0, 3.0), st.booleans())
def test_demand_falls_by_the_oxygen_used_and_elements_stay(
    amounts: dict[str, float], oxygen: float, biology: bool
) -> None:
    after = oxidised(amounts, oxygen, biology)
    assert 0.0 <= after.oxygen <= oxygen * (1.0 + 1e-12)
    assert demand(after.amounts) == pytest.approx(demand(amounts) - after.oxygen, abs=1e-9)
    for element in ("Na", "S"):
        assert held(after.amounts, element) == pytest.approx(held(amounts, element), rel=1e-9, abs=1e-12)
    assert all(amount >= -1e-12 for name, amount in after.amounts.items() if name != "water")


@given(masses, st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_twice_a_little_is_once_much(amounts: dict[str, float], first: float, second: float) -> None:
    """Oxygen in two goes leaves what it leaves in one: hydrosulfite goes before what it becomes."""
    once = oxidised(amounts, first + second).amounts
    then = oxidised(oxidised(amounts, first).amounts, second).amounts
    for name in SULFUR_SPECIES:
        assert then.get(name, 0.0) == pytest.approx(once.get(name, 0.0), abs=1e-9)


def test_a_litre_saturated_with_air_oxidises_41_mg_of_sulfite() -> None:
    """8.26 mg of oxygen over 0.1998 g/g of sulfite ion, 126.037 / 80.057 of its salt."""
    salt = 0.100e-3
    after = oxidised({"sodium_sulfite": salt}, 8.26e-6).amounts
    gone = (salt - after["sodium_sulfite"]) * 80.057 / 126.037
    assert gone == pytest.approx(41.3e-6, rel=2e-3)


@pytest.mark.parametrize(
    ("temperature", "printed"), [(0.0, 14.62), (10.0, 11.29), (20.0, 9.09), (25.0, 8.26), (30.0, 7.56)]
)
def test_oxygen_that_water_holds(temperature: float, printed: float) -> None:
    """oxygen-saturation-equation; the figures of the usual tables, from memory, to be verified."""
    assert 1e6 * oxygen_saturation(temperature) == pytest.approx(printed, abs=0.01)


def test_no_oxygen_is_taken_up_by_water_that_is_full() -> None:
    assert oxygen_taken_up(2.0, 8.26e-6, 8.0, dissolved_oxygen=9.0e-6) == 0.0


@given(masses, st.floats(0.0, 1.0))
def test_peroxide_takes_its_oxygen_off_the_demand(amounts: dict[str, float], peroxide: float) -> None:
    """One oxygen atom of each peroxide: 15.999 over 34.014."""
    after = met({**amounts, "hydrogen_peroxide": peroxide})
    used = (peroxide - after["hydrogen_peroxide"]) * 15.999 / 34.014
    assert demand(after) == pytest.approx(demand(amounts) - used, abs=1e-9)
    assert held(after, "S") == pytest.approx(held(amounts, "S"), rel=1e-9, abs=1e-12)
    salts = [name for name in SULFUR_SPECIES if name != "sodium_thiosulfate" and after.get(name, 0.0) > 1e-9]
    assert not salts or after["hydrogen_peroxide"] <= 1e-9


def test_oxygen_taken_up_by_hand() -> None:
    assert oxygen_taken_up(2.0, 8.26e-6, 8.0) == pytest.approx(2.0 * 8.26e-6 * 8.0)
    assert oxygen_taken_up(2.0, 8.26e-6, 8.0, 2.0e-6) == pytest.approx(2.0 * 6.26e-6 * 8.0)
