"""An estimate held against a limit, on the limit's own terms: share, range, chance of a value above it."""

from __future__ import annotations

import math
from typing import NamedTuple

from costing.effluent.day_values import (
    chance_above_limit,
    percentile_over_mean,
    variation_of_mean,
    variation_with_estimate,
)
from costing.effluent.limit_values import concentration_at_reference_flow
from costing.effluent.limits import Estimate, ValueEstimate
from costing.process.arithmetic import normal_deviation, normal_share
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.reference_data.discharge_limits import (
    AFTER_TREATMENT,
    AT_LEAST,
    AT_MOST,
    BEFORE_TREATMENT,
    COMPOSITE,
    LONG_TERM,
    MEAN_OF_DAYS,
    ONE_DAY,
    PER_DAY,
    PER_PRODUCT,
    VALUE,
)
from costing.settings.permit import DAILY, DENSITY, KILOGRAM, Limit

CAUTION = (
    "An estimate from recipe and range, no measurement. Only samples by the method that your permit names "
    "tell whether a limit is kept; check this limit against your permit."
)
HIGH = 0.95  # of the values lie below what is called a high one
LOW_END, HIGH_END = 0.05, 0.95  # of the band of the estimate itself
DAY = 24  # hours


class Comparison(NamedTuple):
    """An estimate beside a limit.

    Attributes
    ----------
    limit : Limit
        With its value.
    value, low, high : float
        What is held against the limit, and the band that holds nine of ten estimates, in the limit's unit.
    mean : float
        Long-term mean, in the limit's unit.
    share, share_low, share_high : float or None
        The same over the limit [fraction]; None of a range, of pH and of temperature.
    chance : float
        That one value of the limit's statistic lies on the wrong side; counts the spread of the estimate
        too [fraction].
    load, concentration, daily_load : float or None
        Long-term means [kg/kg, kg/L, kg/day]; None of a value that is no load.
    limit_load, limit_concentration, limit_daily_load : float or None
        What the limit comes to at this flow and production [kg/kg, kg/L, kg/day].
    meaning : str
        What is held against the limit.
    remarks : tuple of str
        What does not match between estimate and limit.
    """

    limit: Limit
    value: float
    low: float
    high: float
    mean: float
    share: float | None
    share_low: float | None
    share_high: float | None
    chance: float
    load: float | None
    concentration: float | None
    daily_load: float | None
    limit_load: float | None
    limit_concentration: float | None
    limit_daily_load: float | None
    meaning: str
    remarks: tuple[str, ...]

    @property
    def headroom(self) -> float | None:
        """What is left up to the limit, over the limit; below zero above it [fraction]."""
        return None if self.share is None else 1.0 - self.share

    @property
    def is_outside(self) -> bool:
        """Whether the estimate itself lies on the wrong side of the limit."""
        return _outside(self.limit, self.value)

    def words(self) -> str:
        """One line: share of the limit with its range, never more than an estimate."""
        if self.share is None or self.share_low is None or self.share_high is None:
            return self._words_of_value()
        span = f"(from {percent_text(self.share_low)} to {percent_text(self.share_high)})"
        if self.is_outside:
            return f"estimate, above the limit: {percent_text(self.share)} of it {span}"
        return f"estimate, {percent_text(self.share)} of the limit {span}"

    def _words_of_value(self) -> str:
        limit = self.limit
        unit = f" {limit.unit}" if limit.unit else ""
        if limit.value_to is not None:
            side = "outside" if self.is_outside else "within"
            what = f"{side} the range {limit.value:g} to {limit.value_to:g}{unit}"
        elif limit.direction == AT_LEAST:
            what = f"{'below' if self.is_outside else 'above'} the lower limit {limit.value:g}{unit}"
        else:
            what = f"{'above' if self.is_outside else 'below'} the limit {limit.value:g}{unit}"
        return f"estimate, {what}: {self.value:.3g}{unit} (from {self.low:.3g} to {self.high:.3g}{unit})"


def compare(limit: Limit, estimate: Estimate | ValueEstimate, percentile: float = HIGH) -> Comparison:
    """Hold an estimate against a limit.

    Against a long-term mean and a mean of days the long-term mean is held as it is; against one day and one
    sample, a high one. A concentration is taken to spread as the load does.

    Parameters
    ----------
    limit : Limit
        With a value.
    estimate : Estimate or ValueEstimate
        Of the same parameter.
    percentile : float, optional
        Share of days or samples that lie below the high one [fraction].

    Returns
    -------
    Comparison
        Figures, and the words for them.

    Raises
    ------
    InputError
        A limit without value, another parameter, another kind of estimate, another form.

    Examples
    --------
    25 kg/t of COD in 15 L/kg, known within a fifth, with days that spread by half:

    >>> from costing.reference_data.discharge_limits import limits_of
    >>> from costing.settings.permit import limit_of
    >>> cod = Estimate("COD", 0.025, 12000.0, 180000.0, 0.2, 0.5, 0.8, "after treatment")
    >>> day, month = (compare(limit_of(row), cod) for row in limits_of("us_410_g_bpt")[2:4])
    >>> day.words(), day.meaning
    ('estimate, 57 % of the limit (from 41 % to 78 %)', 'a high day: 95 of 100 lie below it')
    >>> month.words(), round(month.concentration * 1e6), round(month.limit_concentration * 1e6)
    ('estimate, 59 % of the limit (from 42 % to 80 %)', 1667, 2820)
    """
    if limit.value is None:
        raise InputError(limit.where, "has no value; type the value of your permit")
    if limit.parameter.casefold() != estimate.parameter.casefold():
        raise InputError(
            limit.where, f"the estimate is of {estimate.parameter}; accepted is one of {limit.parameter}"
        )
    if not 0.5 <= percentile < 1.0:
        raise InputError(limit.where, f"percentile is {percentile:g}; accepted is 0.5 and above, below 1")
    if isinstance(estimate, ValueEstimate):
        if limit.basis != VALUE:
            raise InputError(limit.where, f"is a {limit.basis}; accepted is an estimate of a load")
        return _compared_value(limit, limit.value, estimate)
    if limit.basis == VALUE:
        raise InputError(limit.where, "is the limit of a value; accepted is an estimate of that value")
    return _compared_load(limit, limit.value, estimate, percentile)


def _compared_load(limit: Limit, value: float, estimate: Estimate, percentile: float) -> Comparison:
    mean_load, volume = estimate.load, estimate.volume
    remarks = _remarks(limit, estimate)
    if limit.basis == PER_PRODUCT:
        mean, unit = mean_load, KILOGRAM
        limit_load = limit.read(value, unit)
    elif limit.basis == PER_DAY:
        mean, unit = estimate.daily_load, DAILY
        limit_load = limit.read(value, unit) / estimate.production
    else:
        mean, unit = estimate.concentration, DENSITY
        dilution = 1.0
        if limit.reference_flow is not None:
            dilution = concentration_at_reference_flow(1.0, volume, limit.reference_flow)
        if dilution > 1.0:
            mean *= dilution
            remarks.append(
                f"counted in the reference flow of {limit.reference_flow:g} L/kg; "
                f"the flow is {volume:.3g} L/kg"
            )
        limit_load = limit.read(value, unit) * volume / dilution
    variation = _variation(limit, estimate)
    peak = 1.0
    if limit.statistic not in (LONG_TERM, MEAN_OF_DAYS):
        peak = percentile_over_mean(percentile, variation)
    mean_share = mean / limit.read(value, unit)
    low, high = (percentile_over_mean(end, estimate.spread) for end in (LOW_END, HIGH_END))
    shown = convert(mean, unit, limit.unit)
    return Comparison(
        limit=limit,
        value=shown * peak,
        low=shown * peak * low,
        high=shown * peak * high,
        mean=shown,
        share=mean_share * peak,
        share_low=mean_share * peak * low,
        share_high=mean_share * peak * high,
        chance=chance_above_limit(mean_share, variation_with_estimate(variation, estimate.spread)),
        load=mean_load,
        concentration=estimate.concentration,
        daily_load=estimate.daily_load,
        limit_load=limit_load,
        limit_concentration=limit_load / volume,
        limit_daily_load=limit_load * estimate.production,
        meaning=_meaning(limit, percentile),
        remarks=tuple(remarks),
    )


def _variation(limit: Limit, estimate: Estimate) -> float:
    """Coefficient of variation of the values that the limit's statistic looks at."""
    if limit.statistic == LONG_TERM:
        return 0.0
    if limit.statistic == MEAN_OF_DAYS:
        return float(variation_of_mean(estimate.day_variation, limit.number))
    if limit.statistic == ONE_DAY or (limit.statistic == COMPOSITE and limit.number >= DAY):
        return estimate.day_variation
    return max(estimate.day_variation, estimate.grab_variation)


def _meaning(limit: Limit, percentile: float) -> str:
    if limit.statistic in (LONG_TERM, MEAN_OF_DAYS):
        return "the long-term mean"
    is_day = limit.statistic == ONE_DAY or (limit.statistic == COMPOSITE and limit.number >= DAY)
    return f"a high {'day' if is_day else 'sample'}: {percentile * 100:g} of 100 lie below it"


def _compared_value(limit: Limit, value: float, estimate: ValueEstimate) -> Comparison:
    try:
        numbers = [
            convert(number, estimate.unit, limit.unit)
            for number in (estimate.value, estimate.low, estimate.high)
        ]
    except (KeyError, ValueError):
        raise InputError(
            limit.where, f"the estimate is in {estimate.unit!r}; accepted is one in {limit.unit!r}"
        ) from None
    middle, low, high = numbers
    has_share = limit.direction == AT_MOST and not limit.is_additive
    return Comparison(
        limit=limit,
        value=middle,
        low=low,
        high=high,
        mean=middle,
        share=middle / value if has_share else None,
        share_low=low / value if has_share else None,
        share_high=high / value if has_share else None,
        chance=_chance_of_value(limit, middle, low, high),
        load=None,
        concentration=None,
        daily_load=None,
        limit_load=None,
        limit_concentration=None,
        limit_daily_load=None,
        meaning="the value itself",
        remarks=tuple(_remarks(limit, estimate)),
    )


def _chance_of_value(limit: Limit, middle: float, low: float, high: float) -> float:
    """Normal for pH and temperature, lognormal for what cannot be below zero; the band is nine in ten."""
    ends = [limit.value, limit.value_to]
    if not limit.is_additive and low > 0.0:
        middle, low, high = (math.log(number) for number in (middle, low, high))
        ends = [None if end is None else math.log(end) for end in ends]
    spread = max((high - low) / (2.0 * normal_deviation(HIGH_END)), 1e-9)
    below = [normal_share((end - middle) / spread) for end in ends if end is not None]
    if limit.value_to is not None:
        return float(1.0 - (below[1] - below[0]))
    return float(below[0] if limit.direction == AT_LEAST else 1.0 - below[0])


def _outside(limit: Limit, value: float) -> bool:
    if limit.value is None:
        return False
    if limit.value_to is not None:
        return not limit.value <= value <= limit.value_to
    return value < limit.value if limit.direction == AT_LEAST else value > limit.value


def _remarks(limit: Limit, estimate: Estimate | ValueEstimate) -> list[str]:
    """What a reader must know of a pair that does not match in all; refuses another chemical form."""
    found = []
    if limit.form != estimate.form:
        if limit.form.startswith("as ") and estimate.form.startswith("as "):
            raise InputError(
                limit.where, f"is counted {limit.form}, the estimate {estimate.form}; accepted is one form"
            )
        found.append(
            f"form of the limit: {limit.form or 'not said'}; of the estimate: {estimate.form or 'not said'}"
        )
    if limit.point != estimate.point:
        before = estimate.point == BEFORE_TREATMENT and limit.point == AFTER_TREATMENT
        found.append(
            f"the limit holds {limit.point}, the estimate is {estimate.point}"
            + (": it counts no removal by treatment" if before else "")
        )
    return found


def percent_text(share: float) -> str:
    """A share in per cent, with no more digits than an estimate has."""
    number = share * 100.0
    if number >= 1000.0:
        return f"{float(f'{number:.2g}'):,.0f} %"
    return f"{number:.1f} %" if 99.0 < number < 101.0 or 0.0 < number < 1.0 else f"{number:.0f} %"
