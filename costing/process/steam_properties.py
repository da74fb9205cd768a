"""Boiling point and enthalpy of water and steam, by IAPWS-IF97, in bar absolute, degC and kJ/kg.

Holds from 0 to 350 degC, which is far beyond what a dyehouse boiler gives. Steam is dry and saturated.
"""

from __future__ import annotations

from functools import lru_cache, wraps
from typing import Any, Callable, TypeVar, cast

from costing.process.arithmetic import where
from costing.process.steam_reducing import HOUSE, Reducing
from costing.process.steam_tables import (
    saturation_pressure_ratio,
    saturation_temperature_ratio,
    steam_slope,
    water_slope,
)
from costing.quantities import InputError, label, quantity

Equation = TypeVar("Equation", bound=Callable[..., Any])


def remembered(equation: Equation) -> Equation:
    """Keep the answers to plain numbers: one quote asks for the same few enthalpies again and again."""
    kept = lru_cache(maxsize=512)(equation)

    @wraps(equation)
    def answer(*values: Any, reducing: Reducing = HOUSE, **named: Any) -> Any:
        if reducing is HOUSE and not named and all(type(value) is float for value in values):
            return kept(*values)  # an array cannot be kept, and 4 bar must not answer for 4
        return equation(*values, reducing=reducing, **named)

    return cast(Equation, answer)


def accept(good: Any, name: str, value: Any, said: str, *limits: Any) -> None:
    """Refuse a value of a named quantity, or an array of them, unless the test holds throughout.

    Raises
    ------
    InputError
        When the test fails; `said` tells what is accepted, with the limits put in.
    """
    if not (good.all() if hasattr(good, "all") else good):
        unit = quantity(name).unit
        accepted = said.format(*(_text(limit, unit) for limit in limits))
        raise InputError("", f"{label(name)} is {_text(value, unit)}, accepted is {accepted}")


def _text(value: Any, unit: str) -> str:
    if getattr(value, "ndim", 0):
        return f"{_text(value.min(), unit)} to {_text(value.max(), unit)}"
    return f"{value:.6g}" if hasattr(value, "units") else f"{value:.6g} {unit}".strip()


def _accept_between(name: str, value: Any, low: Any, high: Any) -> None:
    accept((low <= value) & (value <= high), name, value, "{} to {}", low, high)


def _absolute(temperature: Any, reducing: Reducing) -> Any:
    return temperature - reducing.ice_point + reducing.ice_point_absolute


def _region_1(temperature: Any, pressure: Any, reducing: Reducing) -> Any:
    ratio = reducing.water_temperature / _absolute(temperature, reducing)
    slope = water_slope(pressure / reducing.water_pressure, ratio)
    return reducing.gas_constant * reducing.water_temperature * slope


def _region_2(temperature: Any, pressure: Any, reducing: Reducing) -> Any:
    ratio = reducing.steam_temperature / _absolute(temperature, reducing)
    slope = steam_slope(pressure / reducing.steam_pressure, ratio)
    return reducing.gas_constant * reducing.steam_temperature * slope


def absolute_pressure(gauge_pressure: Any, atmospheric_pressure: Any = HOUSE.atmosphere) -> Any:
    """Absolute pressure of what a gauge reads.

    Parameters
    ----------
    gauge_pressure : float
        Pressure above the atmosphere [bar].
    atmospheric_pressure : float, optional
        Pressure of the air; less in a mill high up [bar].

    Returns
    -------
    float
        Absolute pressure [bar].

    Raises
    ------
    InputError
        A vacuum deeper than the air is heavy.

    Examples
    --------
    >>> absolute_pressure(4.0)
    5.01325
    """
    accept(
        gauge_pressure > -atmospheric_pressure,
        "gauge_pressure",
        gauge_pressure,
        "more than {}, which is no pressure at all",
        -atmospheric_pressure,
    )
    return gauge_pressure + atmospheric_pressure


def saturation_temperature(pressure: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Temperature at which water boils, and steam condenses.

    Parameters
    ----------
    pressure : float
        Absolute pressure [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Temperature [degC].

    Raises
    ------
    InputError
        Outside 0.0061122 to 165.29 bar.

    Examples
    --------
    >>> round(saturation_temperature(4.0), 2)
    143.61

    References
    ----------
    iapws-if97, equation (31); if97-verification-values, table 36
    """
    _accept_between("pressure", pressure, reducing.least_pressure, reducing.most_pressure)
    ratio = saturation_temperature_ratio(pressure / reducing.boiling_pressure)
    return ratio * reducing.boiling_temperature - reducing.ice_point_absolute + reducing.ice_point


def saturation_pressure(temperature: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Absolute pressure at which water of a temperature boils.

    Parameters
    ----------
    temperature : float
        Temperature [degC].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Absolute pressure [bar].

    Raises
    ------
    InputError
        Outside 0 to 350 degC.

    Examples
    --------
    >>> round(saturation_pressure(100.0), 4)
    1.0142

    References
    ----------
    iapws-if97, equation (30); if97-verification-values, table 35
    """
    _accept_between("temperature", temperature, reducing.ice_point, reducing.hottest)
    absolute = _absolute(temperature, reducing)
    return reducing.boiling_pressure * saturation_pressure_ratio(absolute / reducing.boiling_temperature)


@remembered
def saturated_water_enthalpy(pressure: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Enthalpy of boiling water, which is that of condensate as it forms.

    Parameters
    ----------
    pressure : float
        Absolute pressure [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Enthalpy [kJ/kg].

    Raises
    ------
    InputError
        Outside 0.0061122 to 165.29 bar.

    Examples
    --------
    >>> round(saturated_water_enthalpy(4.0), 1)
    604.7

    References
    ----------
    iapws-if97, equations (7) and (31)
    """
    return _region_1(saturation_temperature(pressure, reducing=reducing), pressure, reducing)


@remembered
def saturated_steam_enthalpy(pressure: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Enthalpy of dry saturated steam.

    Leaves out the droplets of wet steam, which bring less.

    Parameters
    ----------
    pressure : float
        Absolute pressure [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Enthalpy [kJ/kg].

    Raises
    ------
    InputError
        Outside 0.0061122 to 165.29 bar.

    Examples
    --------
    >>> round(saturated_steam_enthalpy(4.0), 1)
    2738.1

    References
    ----------
    iapws-if97, equations (15) to (17) and (31)
    """
    return _region_2(saturation_temperature(pressure, reducing=reducing), pressure, reducing)


def evaporation_enthalpy(pressure: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Heat that dry saturated steam gives while it condenses.

    Parameters
    ----------
    pressure : float
        Absolute pressure [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Enthalpy of the steam less that of its condensate [kJ/kg].

    Raises
    ------
    InputError
        Outside 0.0061122 to 165.29 bar.

    Examples
    --------
    >>> round(evaporation_enthalpy(4.0), 1)
    2133.3

    References
    ----------
    iapws-if97, equations (7), (15) to (17) and (31)
    """
    steam = saturated_steam_enthalpy(pressure, reducing=reducing)
    return steam - saturated_water_enthalpy(pressure, reducing=reducing)


@remembered
def water_enthalpy(temperature: Any, pressure: Any = HOUSE.atmosphere, *, reducing: Reducing = HOUSE) -> Any:
    """Enthalpy of liquid water.

    Water hotter than its boiling point at the given pressure is taken at its own saturation pressure, since
    only a closed vessel keeps it liquid.

    Parameters
    ----------
    temperature : float
        Temperature [degC].
    pressure : float, optional
        Absolute pressure; it changes little, about 0.1 kJ/kg for each bar [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Enthalpy, zero near 0 degC [kJ/kg].

    Raises
    ------
    InputError
        Outside 0 to 350 degC, or above 1000 bar.

    Examples
    --------
    >>> round(water_enthalpy(60.0), 1), round(water_enthalpy(120.0), 1)
    (251.2, 503.8)

    References
    ----------
    iapws-if97, equation (7); if97-verification-values, table 5
    """
    boiling = saturation_pressure(temperature, reducing=reducing)
    most = reducing.most_water_pressure
    accept((0 * most < pressure) & (pressure <= most), "pressure", pressure, "more than 0, to {}", most)
    return _region_1(temperature, where(pressure < boiling, boiling, pressure), reducing)


@remembered
def vapour_enthalpy(temperature: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Enthalpy of the vapour that leaves boiling water of a temperature.

    Parameters
    ----------
    temperature : float
        Temperature [degC].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Enthalpy of dry saturated vapour [kJ/kg].

    Raises
    ------
    InputError
        Outside 0 to 350 degC.

    Examples
    --------
    >>> round(vapour_enthalpy(100.0), 1)
    2675.6

    References
    ----------
    iapws-if97, equations (15) to (17) and (30)
    """
    return _region_2(temperature, saturation_pressure(temperature, reducing=reducing), reducing)
