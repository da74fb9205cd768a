"""Day values around a long-term mean: lognormal, each day by itself.

An estimate from recipe and range is a long-term mean. A limit holds for one day, for a mean of days or for
one sample, so a mean just at a limit is above it on many days. The days are taken as lognormal and as
independent of each other; days that follow one another in a mill are alike, so a mean of days spreads more
than is worked out here. A coefficient of variation from your own log of analyses is better than any guess.
"""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import exp, holds, log, normal_deviation, normal_share, not_negative, where
from costing.quantities import InputError

SMALLEST = 1e-9  # a spread below it is taken as none
NOTHING = 1e-300  # stands for no load at all, of which there is no logarithm


def log_spread_of_variation(day_variation: Any) -> Any:
    """Standard deviation of the logarithm of day values, from their coefficient of variation.

    Parameters
    ----------
    day_variation : float
        Standard deviation of day values over their mean [fraction].

    Returns
    -------
    float
        Standard deviation of the natural logarithm [fraction].

    Notes
    -----
    ``s = sqrt(ln(1 + CV^2))``, of the lognormal distribution.

    Examples
    --------
    >>> round(log_spread_of_variation(0.5), 4)
    0.4724
    """
    return log(1.0 + day_variation**2) ** 0.5


def percentile_over_mean(percentile: Any, day_variation: Any) -> Any:
    """Value below which a share of the days lies, over the long-term mean: a peak factor.

    Parameters
    ----------
    percentile : float
        Share of the day values that lie below [fraction].
    day_variation : float
        Standard deviation of day values over their mean [fraction].

    Returns
    -------
    float
        High day over the mean [fraction].

    Notes
    -----
    ``exp(z s - s^2 / 2)``; z is the deviation of the normal distribution that ends the share.

    Examples
    --------
    The day that 95 of 100 days stay below is twice the mean:

    >>> [round(percentile_over_mean(0.95, spread), 3) for spread in (0.5, 0.8)]
    [1.945, 2.483]
    """
    spread = log_spread_of_variation(day_variation)
    return exp(normal_deviation(percentile) * spread - spread**2 / 2.0)


def variation_from_peak(peak_factor: Any, percentile: Any) -> Any:
    """Coefficient of variation of day values that makes a high day so many times the mean.

    Parameters
    ----------
    peak_factor : float
        High day over the long-term mean [fraction].
    percentile : float
        Share of the day values that lie below that day [fraction].

    Returns
    -------
    float
        Standard deviation of day values over their mean [fraction].

    Raises
    ------
    InputError
        A peak below the mean, or one that no lognormal spread makes.

    Notes
    -----
    ``s = z - sqrt(z^2 - 2 ln F)``, the smaller of two spreads, then ``CV = sqrt(exp(s^2) - 1)``.

    Examples
    --------
    A limit for one day that is twice the one for 30 days, as a day in a hundred:

    >>> round(variation_from_peak(2.0, 0.99), 3)
    0.328
    """
    end = normal_deviation(percentile)
    rest = end**2 - 2.0 * log(peak_factor)
    if not (holds(end > 0.0) and holds(peak_factor >= 1.0) and holds(rest >= 0.0)):
        raise InputError(
            "",
            "no spread of days makes that high day; accepted are a percentile above 50 % and a peak factor "
            "from 1 to exp(z^2 / 2): 3.87 for 95 %, 14.97 for 99 %",
        )
    spread = end - rest**0.5
    return not_negative(exp(spread**2) - 1.0) ** 0.5


def chance_above_limit(limit_share: Any, day_variation: Any) -> Any:
    """Chance that one day value is above a limit, from the long-term mean as a share of that limit.

    Parameters
    ----------
    limit_share : float
        Long-term mean over the limit [fraction].
    day_variation : float
        Standard deviation of day values over their mean [fraction].

    Returns
    -------
    float
        Chance [fraction].

    Notes
    -----
    ``Phi((ln(mean / limit) - s^2 / 2) / s)``. A mean at the limit is above it on somewhat less than half of
    the days: the median of a lognormal distribution lies below its mean.

    Examples
    --------
    >>> [round(chance_above_limit(share, 0.5), 3) for share in (0.5, 1.0, 1.5)]
    [0.044, 0.407, 0.733]
    """
    spread = log_spread_of_variation(day_variation)
    spread = where(spread > SMALLEST, spread, SMALLEST)
    share = where(limit_share > NOTHING, limit_share, NOTHING)
    return normal_share((log(share) - spread**2 / 2.0) / spread)


def chance_any_above_limit(exceedance_chance: Any, values_taken: Any) -> Any:
    """Chance that at least one of some values is above a limit, each value by itself.

    Leaves out that days that follow one another are alike, and that an estimate that is wrong is wrong on
    all days: both make it less than this.

    Parameters
    ----------
    exceedance_chance : float
        Chance that one value is above [fraction].
    values_taken : int
        Values, independent of each other.

    Returns
    -------
    float
        Chance [fraction].

    Notes
    -----
    ``1 - (1 - p)^n``

    Examples
    --------
    One day in a hundred, each day of a month:

    >>> round(chance_any_above_limit(0.01, 30), 3)
    0.26
    """
    return 1.0 - (1.0 - exceedance_chance) ** values_taken


def variation_of_mean(day_variation: Any, days_averaged: Any) -> Any:
    """Coefficient of variation of a mean of days, each day by itself.

    Leaves out that days that follow one another are alike: then the mean spreads more.

    Parameters
    ----------
    day_variation : float
        Standard deviation of day values over their mean [fraction].
    days_averaged : int
        Days of which the mean is taken, independent of each other.

    Returns
    -------
    float
        Standard deviation of such means over their mean [fraction].

    Notes
    -----
    ``CV / sqrt(n)``. The mean of lognormal days is taken as lognormal with this variation.

    Examples
    --------
    >>> round(variation_of_mean(0.6, 30), 4)
    0.1095
    """
    return day_variation / days_averaged**0.5


def day_peak_over_mean_peak(day_variation: Any, days_averaged: Any, percentile: Any) -> Any:
    """High day over the high mean of days, both at the same percentile: a day's limit over that of a mean.

    Parameters
    ----------
    day_variation : float
        Standard deviation of day values over their mean [fraction].
    days_averaged : int
        Days of which the mean is taken, independent of each other.
    percentile : float
        Share of the values that lie below, of days and of means alike [fraction].

    Returns
    -------
    float
        Ratio [fraction].

    Examples
    --------
    >>> round(day_peak_over_mean_peak(0.6, 30, 0.99), 2)
    2.43

    References
    ----------
    wisconsin-nr-106, NR 106.07, Table 1
    """
    of_mean = percentile_over_mean(percentile, variation_of_mean(day_variation, days_averaged))
    return percentile_over_mean(percentile, day_variation) / of_mean


def mean_for_chance(accepted_chance: Any, day_variation: Any) -> Any:
    """Long-term mean, as a share of a limit, at which one day value is above the limit by a given chance.

    Parameters
    ----------
    accepted_chance : float
        Chance of a value above the limit that is accepted [fraction].
    day_variation : float
        Standard deviation of day values over their mean [fraction].

    Returns
    -------
    float
        Long-term mean over the limit [fraction].

    Examples
    --------
    To be above on no more than one day in twenty:

    >>> round(mean_for_chance(0.05, 0.5), 3)
    0.514
    """
    return 1.0 / percentile_over_mean(1.0 - accepted_chance, day_variation)


def variation_with_estimate(day_variation: Any, estimate_spread: Any) -> Any:
    """Coefficient of variation of day values around an estimate that has a spread of its own.

    Parameters
    ----------
    day_variation : float
        Standard deviation of day values over their mean [fraction].
    estimate_spread : float
        Standard deviation of the estimate of that mean, over the estimate [fraction].

    Returns
    -------
    float
        Standard deviation of both together, over the estimate [fraction].

    Notes
    -----
    Spreads of logarithms add in quadrature, ``s^2 = s_1^2 + s_2^2``; in coefficients of variation
    ``(1 + CV_1^2)(1 + CV_2^2) - 1``, for small ones their own quadrature.

    Examples
    --------
    >>> round(variation_with_estimate(0.5, 0.2), 4)
    0.5477
    """
    return ((1.0 + day_variation**2) * (1.0 + estimate_spread**2) - 1.0) ** 0.5
