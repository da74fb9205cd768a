"""Lye by density: there and back, and nothing beyond the table."""

from __future__ import annotations

import math

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


def by_model(share: float, celsius: float = 25.0) -> float:
    """Density of lye by the model of all published densities (caustic-density-model) [kg/L]."""
    c = (319.020509469838, 528.592358475315, -0.102197896602724, 0.000350420706415566, 765.970470238438)
    apparent = (
        (c[0] * share + c[1]) * math.exp(1e-6 * (celsius + c[4]) ** 2) / (share + c[2] + c[3] * celsius)
    )
    water = float(IAPWS97(T=celsius + 273.15, P=0.101325).rho)
    return 1e-3 / ((1.0 - share) / water + share / apparent)


# Specific gravity at 60 degF of lye of 18 to 26 % by mass (caustic-density-60f).
AT_60_DEGF = (1.2013, 1.2124, 1.2234, 1.2344, 1.2454, 1.2563, 1.2672, 1.2781, 1.2889)


def test_the_table_against_a_model_of_all_published_densities() -> None:
    """Within 0.0015 kg/L up to 40 %; beyond, the model falls off from every table."""
    for percent in range(0, 41):
        assert lye.lye_density_from_strength(percent / 100) == pytest.approx(
            by_model(percent / 100), abs=1.6e-3
        )
    assert lye.lye_density_from_strength(0.5) == pytest.approx(by_model(0.5), abs=6e-3)


def test_a_straight_line_will_do_where_two_tables_meet() -> None:
    """Neither the model nor a table by each per cent bends by more than 0.0001 kg/L from 20 to 24 %."""
    low, high = by_model(0.20), by_model(0.24)
    for step in range(5):
        line = low + (high - low) * step / 4
        assert by_model(0.20 + step / 100) == pytest.approx(line, abs=1e-4)
        row = AT_60_DEGF[2] + (AT_60_DEGF[6] - AT_60_DEGF[2]) * step / 4
        assert AT_60_DEGF[2 + step] == pytest.approx(row, abs=1e-4)


def test_a_table_by_each_per_cent_at_another_temperature() -> None:
    """60 degF is 9.44 K below 25 degC; each makes lye of about 20 % lighter by 0.00056 kg/L (both tables)."""
    for percent, gravity in enumerate(AT_60_DEGF, start=18):
        density = gravity * lye.WATER_AT_60_DEGF - 9.44 * 0.00056
        assert lye.lye_density_from_strength(percent / 100) == pytest.approx(density, abs=1.5e-3)
