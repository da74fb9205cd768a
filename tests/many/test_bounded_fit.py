"""Least squares between bounds: against certified examples, plain linear algebra, and cases made by hand."""

from __future__ import annotations

import numpy
import pytest
from scipy.stats import chi2, f

from costing.many.bounded_fit import Predict, combination, confidence, solve, untold
from costing.many.lanes import Floats

# Statistical Reference Datasets of NIST, file Norris.dat (linear, ozone monitors): y and x, 36 observations;
# the file was read in a public copy.
NORRIS = numpy.array(
    [
        *((0.1, 0.2), (338.8, 337.4), (118.1, 118.2), (888.0, 884.6), (9.2, 10.1), (228.1, 226.5)),
        *((668.5, 666.3), (998.5, 996.3), (449.1, 448.6), (778.9, 777.0), (559.2, 558.2), (0.3, 0.4)),
        *((0.1, 0.6), (778.1, 775.5), (668.8, 666.9), (339.3, 338.0), (448.9, 447.5), (10.8, 11.6)),
        *((557.7, 556.0), (228.3, 228.1), (998.0, 995.8), (888.8, 887.6), (119.6, 120.2), (0.3, 0.3)),
        *((0.6, 0.3), (557.6, 556.8), (339.3, 339.1), (888.0, 887.2), (998.5, 999.0), (778.9, 779.0)),
        *((10.2, 11.1), (117.6, 118.3), (228.9, 229.2), (668.4, 669.1), (449.2, 448.9), (0.2, 0.5)),
    ]
)
# The same, file Misra1a.dat (nonlinear, y = b1 (1 - exp(-b2 x))), 14 observations.
MISRA = numpy.array(
    [
        *((10.07, 77.6), (14.73, 114.9), (17.94, 141.1), (23.93, 190.8), (29.61, 239.9), (35.18, 289.0)),
        *((40.02, 332.8), (44.82, 378.4), (50.76, 434.8), (55.05, 477.3), (61.01, 536.8), (66.40, 593.1)),
        *((75.47, 689.1), (81.78, 760.0)),
    ]
)


def straight(x: Floats) -> Predict:
    return lambda points: points[:, :1] + points[:, 1:] * x


def grown(x: Floats) -> Predict:
    return lambda points: points[:, :1] * (1.0 - numpy.exp(-points[:, 1:] * x))


@pytest.mark.parametrize(
    ("data", "model", "start", "low", "high", "values", "errors", "noise"),
    [
        (
            *(NORRIS, straight, (0.0, 1.2), (-10.0, 0.5), (10.0, 1.5)),
            *((-0.262323073774029, 1.00211681802045), (0.232818234301152, 0.429796848199937e-03)),
            0.884796396144373,
        ),
        (
            *(MISRA, grown, (250.0, 5e-4), (100.0, 1e-4), (600.0, 1e-3)),
            *((2.3894212918e02, 5.5015643181e-04), (2.7070075241e00, 7.2668688436e-06)),
            1.0187876330e-01,
        ),
    ],
)
def test_certified_values_and_standard_errors_come_out(
    data: Floats,
    model: object,
    start: object,
    low: object,
    high: object,
    values: object,
    errors: object,
    noise: float,
) -> None:
    y, x = data.T
    lower, upper = numpy.array(low, dtype=float), numpy.array(high, dtype=float)
    found = solve(model(x), y, numpy.ones(len(y)), numpy.array(start), lower, upper)  # type: ignore[operator]
    sure = confidence(found, given_noise=False)
    assert lower + found.shares * (upper - lower) == pytest.approx(values, rel=1e-7)
    assert sure.noise == pytest.approx(noise, rel=1e-7)
    assert sure.freedom == len(y) - 2
    # the ends are the standard errors times the root of 2 F
    half = (sure.high - sure.low) / 2.0 * (upper - lower)
    reach = numpy.sqrt(2.0 * f.ppf(0.95, 2, len(y) - 2))
    assert half / reach == pytest.approx(errors, rel=1e-5)


def linear(matrix: Floats) -> Predict:
    return lambda points: points @ matrix.T


def test_a_weighted_linear_case_is_that_of_linear_algebra() -> None:
    """Rows divided by their scale: the normal equations of the weighted case."""
    random = numpy.random.default_rng(3)
    matrix, scale = random.random((20, 3)), 0.5 + random.random(20)
    actual = matrix @ (0.3, 0.5, 0.6) + 0.01 * scale * random.standard_normal(20)
    zero, one = numpy.zeros(3), numpy.ones(3)
    found = solve(linear(matrix), actual, scale, 0.5 * one, zero, one)
    expected = numpy.linalg.lstsq(matrix / scale[:, None], actual / scale, rcond=None)[0]
    assert found.shares == pytest.approx(expected, abs=1e-8)
    # a noise that is given: chi squared in place of F
    known = solve(linear(matrix), actual, 0.01 * scale, 0.5 * one, zero, one)
    sure = confidence(known, given_noise=True)
    covariance = numpy.linalg.inv((matrix / scale[:, None]).T @ (matrix / scale[:, None])) * 0.01**2
    reach = numpy.sqrt(chi2.ppf(0.95, 3) * numpy.diag(covariance))
    assert (sure.high - sure.low) / 2.0 == pytest.approx(reach, rel=1e-6)


def test_two_columns_in_step_are_named_and_only_their_sum_is_told() -> None:
    matrix = numpy.array([[1.0, 2.0, 0.0], [2.0, 4.0, 1.0], [3.0, 6.0, 0.0], [1.0, 2.0, 3.0]])
    zero, one = numpy.zeros(3), numpy.ones(3)
    actual = matrix @ (0.4, 0.3, 0.2) + (1e-4, -1e-4, 1e-4, -1e-4)
    found = solve(linear(matrix), actual, one.repeat(4)[:4], 0.5 * one, zero, one)
    sure = confidence(found, given_noise=False)
    open_ = untold(found, sure)
    assert (open_.alone, open_.together) == ([], [[0, 1]])
    sum_ = combination(found, sure, open_, [0, 1])
    assert sum_ is not None
    assert sum_.weights[1] / sum_.weights[0] == pytest.approx(2.0)
    assert sum_.value / sum_.weights[0] == pytest.approx(0.4 + 2.0 * 0.3, abs=1e-3)
    assert 0.0 < sum_.give_or_take / abs(sum_.weights[0]) < 0.01
    # the third is told all the same; the two are open over much of their bounds
    assert sure.high[2] - sure.low[2] < 0.01
    assert min(sure.high[0] - sure.low[0], sure.high[1] - sure.low[1]) > 0.5


def test_a_column_of_nothing_is_told_by_nothing() -> None:
    matrix = numpy.array([[1.0, 0.0], [2.0, 0.0], [3.0, 0.0]])
    one = numpy.ones(2)
    found = solve(linear(matrix), numpy.array([0.51, 1.0, 1.5]), numpy.ones(3), 0.5 * one, 0.0 * one, one)
    sure = confidence(found, given_noise=False)
    assert untold(found, sure).alone == [1]
    assert (sure.low[1], sure.high[1]) == (0.0, 1.0)


def test_noise_alone_can_hide_a_factor_and_part_a_pair() -> None:
    """The same columns are told with little noise, and not with much."""
    random = numpy.random.default_rng(5)
    first = 1.0 + random.random(12)
    matrix = numpy.stack([first, first + 0.02 * random.standard_normal(12), 0.05 * random.random(12)], axis=1)
    one = numpy.ones(3)
    for noise, alone, together in ((1e-5, [], []), (0.05, [2], [[0, 1]])):
        actual = matrix @ (0.5, 0.5, 0.5) + noise * random.standard_normal(12)
        found = solve(linear(matrix), actual, numpy.full(12, noise), 0.4 * one, 0.0 * one, one)
        open_ = untold(found, confidence(found, given_noise=True))
        assert (open_.alone, open_.together) == (alone, together)


def test_at_a_bound_the_ends_are_those_without_it_cut() -> None:
    matrix = numpy.array([[1.0], [1.0], [1.0], [1.0]])
    one = numpy.ones(1)
    actual = numpy.array([1.01, 0.99, 1.03, 1.01])  # mean 1.01, above the bound
    found = solve(linear(matrix), actual, numpy.ones(4), 0.5 * one, 0.0 * one, one)
    sure = confidence(found, given_noise=False)
    assert (float(found.shares[0]), float(sure.high[0])) == (1.0, 1.0)
    assert not sure.beyond[0]
    assert sure.low[0] < 1.0
    assert confidence(solve(linear(matrix), actual + 0.5, numpy.ones(4), one, 0.0 * one, one), False).beyond[
        0
    ]
