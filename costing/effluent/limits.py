"""The estimate that is held against a limit of a permit.

An estimate from recipe and range is a long-term mean with a spread of its own. It is held against a limit on
the limit's own terms: as a load or as a concentration, for its statistic, at its point. It is never a finding
that a limit is kept: that takes samples, by the method that the permit names.
"""

from __future__ import annotations

from dataclasses import dataclass

from costing.quantities import InputError
from costing.reference_data.discharge_limits import POINTS
from costing.settings.permit import is_number


@dataclass(frozen=True)
class Estimate:
    """Long-term mean of a parameter.

    Attributes
    ----------
    parameter : str
        As the limit names it.
    load : float
        Mass for each mass of product [kg/kg].
    production : float
        Product of a day [kg/day].
    flow : float
        Effluent of a day [L/day].
    spread : float
        Standard deviation of the estimate itself, over it [fraction].
    day_variation : float
        Standard deviation of day values over their mean [fraction].
    grab_variation : float
        The same of short samples, days and hours together; below that of days, that of days counts, as behind
        an equalisation that holds the water of a day [fraction].
    point : str
        One of `POINTS`.
    form : str
        As what it is counted.
    """

    parameter: str
    load: float
    production: float
    flow: float
    spread: float
    day_variation: float
    grab_variation: float
    point: str
    form: str = ""

    def __post_init__(self) -> None:
        where = f"estimate of {self.parameter}"
        for name in ("load", "spread", "day_variation", "grab_variation"):
            number = getattr(self, name)
            if not (is_number(number) and 0.0 <= number <= 5.0):
                raise InputError(where, f"{name.replace('_', ' ')} is {number!r}; accepted is 0 to 5")
        for name in ("production", "flow"):
            number = getattr(self, name)
            if not (is_number(number) and number > 0.0):
                raise InputError(where, f"{name} is {number!r}; accepted is a number above 0")
        if self.point not in POINTS:
            raise InputError(where, f"point is {self.point!r}; accepted is one of: {', '.join(POINTS)}")

    @property
    def volume(self) -> float:
        """Effluent for each mass of product [L/kg]."""
        return self.flow / self.production

    @property
    def concentration(self) -> float:
        """Mean load over mean flow [kg/L]."""
        return self.load / self.volume

    @property
    def daily_load(self) -> float:
        """Mean load of a day [kg/day]."""
        return self.load * self.production


@dataclass(frozen=True)
class ValueEstimate:
    """A value that is no load: pH, temperature, colour.

    Attributes
    ----------
    parameter : str
        As the limit names it.
    value, low, high : float
        Estimate, and the band that holds nine of ten values.
    unit : str
        "" for a pure number such as pH.
    point : str
        One of `POINTS`.
    form : str
        As what it is counted.
    """

    parameter: str
    value: float
    low: float
    high: float
    unit: str
    point: str
    form: str = ""

    def __post_init__(self) -> None:
        where = f"estimate of {self.parameter}"
        numbers = (self.low, self.value, self.high)
        if not (all(map(is_number, numbers)) and self.low <= self.value <= self.high):
            raise InputError(
                where,
                f"low, value and high are {', '.join(map(str, numbers))}; accepted is low <= value <= high",
            )
        if self.point not in POINTS:
            raise InputError(where, f"point is {self.point!r}; accepted is one of: {', '.join(POINTS)}")
