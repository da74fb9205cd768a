"""Weighted least squares of a few factors between bounds: values, their joint confidence, what is not told.

All factors are counted as shares of the way from their lower to their upper bound, so that a width says how
much of what is thinkable is left open. Where the confidence comes from: the Jacobian at the solution and the
noise of the residuals, that is the first order of a nonlinear model.

References
----------
Seber and Wild, Nonlinear Regression, Wiley 1989, chapter 5 (linear approximation of confidence regions; from
memory). Belsley, Kuh and Welsch, Regression Diagnostics, Wiley 1980, chapter 3 (columns of one length and
their singular values; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy
from scipy.optimize import least_squares
from scipy.stats import chi2, f

from costing.many.lanes import Floats
from costing.quantities import InputError

STEP = 1e-4  # of the derivatives, as a share of the bounds
NEAR = 1e-3  # share of the bounds that counts as at the bound
SETTLED = 1e-8
MOST_STEPS = 200
RANK = 1e-6  # singular values of columns of one length that are rounding
COVERED = 0.5  # give or take half of the bounds leaves all of them open
LINKED = 0.1  # share of an untold direction from which two factors take part in it

# Points, one row each -> what is predicted, one row for each point.
Predict = Callable[[Floats], Floats]


class Solved(NamedTuple):
    """Where the sum of squares is least between the bounds.

    Attributes
    ----------
    shares : array
        Factors, as shares of their bounds.
    residuals : array
        Predicted less actual, over the scale.
    jacobian : array
        Of the residuals, by factor as a share of its bounds.
    """

    shares: Floats
    residuals: Floats
    jacobian: Floats


class Confidence(NamedTuple):
    """How sure factors are, all of them together and any sum of them.

    Attributes
    ----------
    noise : float
        Standard deviation of a residual.
    freedom : int
        Residuals less factors; 0 where the noise is given.
    reach : float
        Standard errors from the middle to the ends.
    low, high : array
        Ends as shares of the bounds, within them.
    beyond : array of bool
        True where all that the residuals leave lies outside the bounds.
    """

    noise: float
    freedom: int
    reach: float
    low: Floats
    high: Floats
    beyond: Floats


def solve(
    predict: Predict, actual: Floats, scale: Floats, start: Floats, low: Floats, high: Floats
) -> Solved:
    """Least squares between bounds.

    Parameters
    ----------
    predict : callable
        What is predicted at several points.
    actual, scale : array
        What was found, and what a residual is divided by.
    start, low, high : array
        First values and bounds of the factors, in their own unit.

    Raises
    ------
    InputError
        It does not settle.

    Examples
    --------
    >>> line = lambda points: points[:, :1] * numpy.array([[1.0, 2.0, 3.0]])
    >>> one = numpy.ones(3)
    >>> found = solve(line, numpy.array([2.0, 4.0, 6.0]), one, one[:1], 0.0 * one[:1], 8.0 * one[:1])
    >>> [round(float(share), 6) for share in found.shares]
    [0.25]
    """
    width = high - low
    count = len(low)
    kept: dict[bytes, tuple[Floats, Floats]] = {}

    def at(shares: Floats) -> tuple[Floats, Floats]:
        """Residuals and their derivatives: one run for a point and its neighbours."""
        key = shares.tobytes()
        if key not in kept:
            below = numpy.maximum(shares - STEP, 0.0)
            above = numpy.minimum(shares + STEP, 1.0)
            points = numpy.tile(shares, (2 * count + 1, 1))
            points[1 : count + 1][numpy.diag_indices(count)] = below
            points[count + 1 :][numpy.diag_indices(count)] = above
            found = (predict(low + points * width) - actual) / scale
            slope = (found[count + 1 :] - found[1 : count + 1]) / (above - below)[:, None]
            kept[key] = found[0], slope.T
        return kept[key]

    begin = numpy.clip((start - low) / width, 0.0, 1.0)
    done = least_squares(
        lambda shares: at(shares)[0],
        begin,
        jac=lambda shares: at(shares)[1],
        bounds=(0.0, 1.0),
        xtol=SETTLED,
        ftol=SETTLED,
        gtol=SETTLED,
        max_nfev=MOST_STEPS,
    )
    if done.status <= 0:
        raise InputError(
            "", f"the fit does not settle in {MOST_STEPS} steps; accepted is a fit of fewer factors"
        )
    shares = numpy.where(done.x < NEAR / 100.0, 0.0, numpy.where(done.x > 1.0 - NEAR / 100.0, 1.0, done.x))
    residuals, jacobian = at(shares)
    return Solved(shares, residuals, jacobian)


def confidence(solved: Solved, given_noise: bool, level: float = 0.95) -> Confidence:
    """Ends between which the factors lie, all of them together with a level of confidence.

    The region of all factors is an ellipsoid about the least squares without bounds; the ends are its shadow
    on each factor, so they hold for all factors and any sum of them at once. A shadow is as wide as the
    square root of k F standard errors for k factors (of chi squared, where the noise is given). A bound cuts
    it.

    Parameters
    ----------
    solved : Solved
        The solution.
    given_noise : bool
        True where the scale of the residuals is their noise; else it is estimated from them.
    level : float, optional
        Share of cases in which all factors lie between their ends [fraction].

    References
    ----------
    Scheffe, The Analysis of Variance, Wiley 1959, section 3.5 (from memory).
    """
    shares, residuals, jacobian = solved
    left, singular, right = numpy.linalg.svd(jacobian, full_matrices=False)
    there = singular > RANK * singular.max(initial=0.0)
    rank = int(there.sum())
    freedom = 0 if given_noise else len(residuals) - rank
    along = left[:, there].T @ residuals  # what the bounds alone keep from being fitted; nothing inside them
    left_over = max(float(residuals @ residuals - along @ along), 0.0)
    noise = 1.0 if given_noise else math.sqrt(left_over / freedom)
    square = chi2.ppf(level, rank) if given_noise else rank * f.ppf(level, rank, freedom)
    reach = float(numpy.sqrt(square)) if rank else 0.0
    back = right[there].T / singular[there]
    middle = shares - back @ along  # as if there were no bounds
    open_share = numpy.sqrt(numpy.clip(1.0 - (right[there] ** 2).sum(axis=0), 0.0, 1.0))
    open_share[open_share < numpy.sqrt(RANK)] = 0.0
    half = reach * noise * numpy.sqrt((back**2).sum(axis=1)) + open_share
    low, high = middle - half, middle + half
    beyond = (low > 1.0) | (high < 0.0)
    return Confidence(
        noise,
        freedom,
        reach,
        numpy.clip(numpy.minimum(low, shares), 0.0, 1.0),
        numpy.clip(numpy.maximum(high, shares), 0.0, 1.0),
        beyond,
    )


class Untold(NamedTuple):
    """What the residuals do not tell.

    Attributes
    ----------
    alone : list of int
        Factors that hardly move what is predicted, or not at all.
    together : list of list of int
        Factors that move it in the same way.
    lengths : array
        How far each factor moves the residuals, from one bound to the other.
    shape : array
        Share of each pair of factors in the directions that are not told.
    """

    alone: list[int]
    together: list[list[int]]
    lengths: Floats
    shape: Floats


def untold(solved: Solved, sure: Confidence) -> Untold:
    """Factors whose values the residuals leave open, alone or with others.

    A factor is not told where it alone, all others known, would be open over all of its bounds. Of the others
    the columns of the Jacobian are brought to one length; where a direction of theirs has so small a singular
    value that it leaves a factor open over all of its bounds, the factors that take part in it cannot be told
    apart.
    """
    jacobian = solved.jacobian
    count = jacobian.shape[1]
    lengths = numpy.linalg.norm(jacobian, axis=0)
    blur = sure.reach * sure.noise
    dull = lengths <= numpy.maximum(RANK * lengths.max(initial=0.0), blur / COVERED)
    shape = numpy.zeros((count, count))
    bright = numpy.flatnonzero(~dull)
    if bright.size:
        _, singular, right = numpy.linalg.svd(jacobian[:, bright] / lengths[bright], full_matrices=False)
        with numpy.errstate(divide="ignore"):
            open_ = blur * numpy.abs(right) / (singular[:, None] * lengths[bright])
        dim = (singular <= RANK) | (open_.max(axis=1) >= COVERED)
        shape[numpy.ix_(bright, bright)] = right[dim].T @ right[dim]
    return Untold(list(map(int, numpy.flatnonzero(dull))), _linked(shape), lengths, shape)


def _linked(shape: Floats) -> list[list[int]]:
    """Groups of factors that share a direction that is not told."""
    waiting = [number for number in range(len(shape)) if shape[number, number] >= LINKED]
    groups = []
    while waiting:
        group, edge = [], [waiting.pop(0)]
        while edge:
            one = edge.pop()
            group.append(one)
            near = [other for other in waiting if abs(shape[one, other]) >= LINKED]
            edge += near
            waiting = [other for other in waiting if other not in near]
        groups.append(sorted(group))
    return groups


class Combination(NamedTuple):
    """The sum of some factors that is told where each of them is not.

    Attributes
    ----------
    weights : array
        Of each factor of the group, as a share of its bounds.
    value, give_or_take : float
        The sum of weights times shares.
    """

    weights: Floats
    value: float
    give_or_take: float


def combination(solved: Solved, sure: Confidence, open_: Untold, group: Sequence[int]) -> Combination | None:
    """What is told of a group that cannot be told apart; None where that is not one sum."""
    values, directions = numpy.linalg.eigh(open_.shape[numpy.ix_(group, group)])
    if (values < COVERED).sum() != 1:
        return None
    weights = directions[:, 0] * open_.lengths[list(group)]
    whole = numpy.zeros(len(solved.shares))
    whole[list(group)] = weights
    _, singular, right = numpy.linalg.svd(solved.jacobian, full_matrices=False)
    there = singular > RANK * singular.max()
    parts = (right[there] @ whole) / singular[there]
    error = sure.reach * sure.noise * float(numpy.sqrt(parts @ parts))
    return Combination(weights, float(whole @ solved.shares), error)
