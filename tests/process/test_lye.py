"""Lye by density: there and back, and nothing beyond the table."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import IAPWS97

from costing.process import lye
from costing.quantities import InputError

SHARES = st.floats(0.0, 0.5)


@given(SHARES)
def test_there_and_back(share: float) -> None:
    density = lye.lye_density_from_strength(share)
    assert lye.lye_strength_from_density(density) == pytest.approx(share, abs=1e-12)
    concentration = lye.lye_concentration_from_strength(share)
    assert lye.lye_strength_from_concentration(concentration) == pytest.approx(share, abs=1e-12)
    assert concentration == pytest.approx(density * share, rel=1e-12)


@given(SHARES, SHARES)
def test_more_caustic_is_denser(first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert lye.lye_density_from_strength(low) <= lye.lye_density_from_strength(high)


@given(st.floats(1.0, 1.9))
def test_scales_of_hydrometers_there_and_back(gravity: float) -> None:
    there = lye.baume_from_specific_gravity(gravity), lye.twaddell_from_specific_gravity(gravity)
    assert lye.specific_gravity_from_baume(there[0]) == pytest.approx(gravity, rel=1e-12)
    assert lye.specific_gravity_from_twaddell(there[1]) == pytest.approx(gravity, rel=1e-12)


def test_water_is_that_of_the_steam_tables() -> None:
    """By the reference library at 25 degC and at 60 degF, which are 288.7056 K."""
    assert lye.lye_density_from_strength(0.0) == pytest.approx(IAPWS97(T=298.15, P=0.1).rho / 1000, abs=5e-6)
    assert pytest.approx(IAPWS97(T=288.7056, P=0.101325).rho / 1000, abs=5e-6) == lye.WATER_AT_60_DEGF


def test_an_array_of_lyes() -> None:
    shares = np.array([0.0, 0.1, 0.22, 0.5])
    by_one = [lye.lye_density_from_strength(float(share)) for share in shares]
    assert lye.lye_density_from_strength(shares) == pytest.approx(by_one, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: lye.lye_density_from_strength(0.51), "lye strength .* accepted is 0 to 0.5"),
        (lambda: lye.lye_strength_from_density(0.99), "lye density .* accepted is 0.99705 to 1.5217"),
        (lambda: lye.lye_strength_from_concentration(0.8), "lye concentration .* accepted is 0 to 0.76085"),
    ],
)
def test_nothing_is_guessed_beyond_the_table(call: object, said: str) -> None:
    assert callable(call)
    with pytest.raises(InputError, match=said):
        call()
