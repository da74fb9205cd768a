"""Day values against the lognormal distribution of another library and a printed table."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import lognorm, norm

from costing.effluent import day_values
from costing.process.arithmetic import normal_deviation, normal_share
from costing.quantities import InputError

variations = st.floats(0.01, 3.0)
shares = st.floats(0.001, 0.999)

# wisconsin-nr-106, NR 106.07, Table 1: days of the mean, then coefficient of variation -> factors.
DAYS = (1, 2, 3, 4, 8, 12, 16, 20, 24, 30)
PRINTED = {
    0.1: (1.00, 1.07, 1.10, 1.12, 1.16, 1.17, 1.18, 1.19, 1.20, 1.20),
    0.2: (1.00, 1.13, 1.20, 1.24, 1.32, 1.36, 1.39, 1.40, 1.41, 1.43),
    0.3: (1.00, 1.19, 1.29, 1.36, 1.49, 1.56, 1.60, 1.63, 1.65, 1.67),
    0.4: (1.00, 1.24, 1.37, 1.46, 1.66, 1.75, 1.81, 1.86, 1.89, 1.93),
    0.5: (1.00, 1.28, 1.45, 1.56, 1.81, 1.94, 2.02, 2.08, 2.13, 2.18),
    0.6: (1.00, 1.31, 1.51, 1.64, 1.95, 2.12, 2.23, 2.30, 2.36, 2.43),
    0.8: (1.00, 1.35, 1.59, 1.76, 2.19, 2.42, 2.58, 2.70, 2.79, 2.89),
    1.0: (1.00, 1.37, 1.63, 1.83, 2.34, 2.64, 2.85, 3.01, 3.13, 3.27),
    1.5: (1.00, 1.34, 1.61, 1.83, 2.46, 2.88, 3.18, 3.42, 3.61, 3.85),
    1.8: (1.00, 1.31, 1.57, 1.78, 2.43, 2.87, 3.21, 3.48, 3.70, 3.98),
}


def days(variation: float) -> Any:
    """Day values with mean 1: the standard deviation is then the coefficient of variation."""
    spread = np.sqrt(np.log1p(variation**2))
    found = lognorm(s=spread, scale=np.exp(-(spread**2) / 2.0))
    assert found.mean() == pytest.approx(1.0)
    assert found.std() == pytest.approx(variation)
    return found


@given(variations, shares)
def test_percentile_is_that_of_another_library(variation: float, share: float) -> None:
    expected = days(variation).ppf(share)
    assert day_values.percentile_over_mean(share, variation) == pytest.approx(expected, rel=1e-9)


@given(variations, st.floats(0.01, 20.0))
def test_chance_is_that_of_another_library(variation: float, limit: float) -> None:
    expected = days(variation).sf(limit)
    assert day_values.chance_above_limit(1.0 / limit, variation) == pytest.approx(
        expected, rel=1e-6, abs=1e-15
    )


@given(st.floats(-8.0, 8.0), st.floats(1e-6, 1.0 - 1e-6))
def test_the_normal_distribution_is_that_of_another_library(deviation: float, share: float) -> None:
    assert normal_share(deviation) == pytest.approx(norm.cdf(deviation), rel=1e-12)
    assert normal_deviation(share) == pytest.approx(norm.ppf(share), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("variation", PRINTED)
def test_a_days_peak_over_that_of_a_mean_is_as_printed(variation: float) -> None:
    found = [day_values.day_peak_over_mean_peak(variation, count, 0.99) for count in DAYS]
    assert found == pytest.approx(PRINTED[variation], abs=0.00501)


@given(variations, st.floats(0.01, 0.5))
def test_the_mean_for_a_chance_has_that_chance(variation: float, chance: float) -> None:
    mean = day_values.mean_for_chance(chance, variation)
    assert day_values.chance_above_limit(mean, variation) == pytest.approx(chance, rel=1e-9)


@given(st.floats(0.01, 1.0), st.floats(0.9, 0.999))
def test_variation_to_peak_and_back(variation: float, percentile: float) -> None:
    peak = day_values.percentile_over_mean(percentile, variation)
    assert day_values.variation_from_peak(peak, percentile) == pytest.approx(variation, rel=1e-5)


@pytest.mark.parametrize(("peak", "percentile"), [(4.0, 0.95), (0.9, 0.95), (1.5, 0.5), (1.5, 0.3)])
def test_a_peak_that_no_spread_makes_is_refused(peak: float, percentile: float) -> None:
    with pytest.raises(InputError, match="no spread of days"):
        day_values.variation_from_peak(peak, percentile)


@given(variations, st.floats(0.0, 100.0), st.floats(0.0, 100.0))
def test_more_load_never_lowers_the_chance(variation: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    chances = [day_values.chance_above_limit(share, variation) for share in (low, high)]
    assert 0.0 <= chances[0] <= chances[1] <= 1.0


def test_the_ends_are_no_error() -> None:
    assert day_values.chance_above_limit(0.0, 0.5) == 0.0
    assert day_values.chance_above_limit(0.99, 0.0) == 0.0
    assert day_values.chance_above_limit(1.01, 0.0) == 1.0
    assert day_values.percentile_over_mean(0.95, 0.0) == 1.0
    assert day_values.variation_with_estimate(0.0, 0.0) == 0.0


@given(st.floats(0.0, 0.1), st.floats(0.0, 0.1))
def test_small_spreads_add_in_quadrature(days_spread: float, estimate: float) -> None:
    together = day_values.variation_with_estimate(days_spread, estimate)
    assert together == pytest.approx(np.hypot(days_spread, estimate), rel=0.003, abs=1e-7)


def test_spread_of_means_is_that_of_drawn_days() -> None:
    drawn = days(0.6).rvs(size=(40000, 4), random_state=20250106).mean(axis=1)
    assert day_values.variation_of_mean(0.6, 4) == pytest.approx(drawn.std() / drawn.mean(), rel=0.02)


@pytest.mark.parametrize(
    ("function", "rows"),
    [
        (day_values.percentile_over_mean, ((0.95, 0.3), (0.95, 0.6), (0.99, 0.0))),
        (day_values.chance_above_limit, ((0.0, 0.5), (0.6, 0.5), (1.2, 0.0))),
        (day_values.variation_from_peak, ((1.2, 0.95), (1.5, 0.99), (2.0, 0.99))),
        (day_values.mean_for_chance, ((0.01, 0.3), (0.05, 0.6), (0.1, 0.9))),
    ],
)
def test_equations_run_on_arrays(function: Callable[..., Any], rows: Any) -> None:
    found = function(*np.array(rows).T)
    assert found.tolist() == pytest.approx([function(*row) for row in rows], rel=1e-12)
