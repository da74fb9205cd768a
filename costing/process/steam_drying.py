"""Steam that dries yarn on cans.

Leaks, traps and start-up of the steam net come on top.
"""

from __future__ import annotations

from typing import Any

from costing.process.steam_heating import steam_for_heat, yarn_heat
from costing.process.steam_properties import (
    accept,
    evaporation_enthalpy,
    saturation_pressure,
    vapour_enthalpy,
    water_enthalpy,
)
from costing.process.steam_reducing import HOUSE, Reducing


def drying_heat(
    moisture_in: Any,
    moisture_out: Any,
    temperature_in: Any,
    yarn_temperature_out: Any,
    heat_capacity_fibre: Any = 1.3,
    heat_capacity_water: Any = 4.19,
    vapour_temperature: Any = 100.0,
    *,
    reducing: Reducing = HOUSE,
) -> Any:
    """Heat that dries yarn: water evaporated, and the yarn with what water it keeps warmed up.

    Leaves out the heat that frees the last, bound water of cotton, and what the dryer loses.

    Parameters
    ----------
    moisture_in : float
        Water on the entering yarn, of the dry yarn [kg/kg].
    moisture_out : float
        Water on the leaving yarn, of the dry yarn [kg/kg].
    temperature_in : float
        Temperature of the entering yarn [degC].
    yarn_temperature_out : float
        Temperature of the leaving yarn [degC].
    heat_capacity_fibre : float, optional
        Heat capacity of dry cotton [kJ/kg/K].
    heat_capacity_water : float, optional
        Heat capacity of water [kJ/kg/K].
    vapour_temperature : float, optional
        Temperature at which the vapour leaves [degC].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Heat per mass of dry yarn [kJ/kg].

    Raises
    ------
    InputError
        Yarn that is to leave wetter than it comes; a temperature outside 0 to 350 degC.

    Notes
    -----
    ``q = (w1 - w2) (h_v(T_v) - h_l(T1)) + (c_f + w2 c_w) (T2 - T1)``

    Examples
    --------
    >>> round(drying_heat(0.7, 0.08, 25.0, 100.0), 1)
    1716.4

    References
    ----------
    morton-hearle, table 6.1: dry cotton 1.22 to 1.35 kJ/kg/K, the value inside the range is judgement
    """
    accept(
        moisture_out <= moisture_in,
        "moisture_out",
        moisture_out,
        "at most {}, which is on the yarn that enters",
        moisture_in,
    )
    cold = water_enthalpy(temperature_in, reducing.atmosphere, reducing=reducing)
    for_water = (moisture_in - moisture_out) * (vapour_enthalpy(vapour_temperature, reducing=reducing) - cold)
    return for_water + yarn_heat(
        moisture_out, temperature_in, yarn_temperature_out, heat_capacity_fibre, heat_capacity_water
    )


def drying_steam(heat: Any, pressure: Any, dryer_efficiency: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Steam that drying cans condense to dry yarn.

    Parameters
    ----------
    heat : float
        Heat that the yarn takes, per mass of yarn [kJ/kg].
    pressure : float
        Absolute pressure of the steam in the cans [bar].
    dryer_efficiency : float
        Heat that reaches the yarn, of the heat of the steam condensed [fraction].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Steam per mass of yarn [kg/kg].

    Raises
    ------
    InputError
        Pressure outside 0.0061122 to 165.29 bar.

    Notes
    -----
    ``m = q / (eta (h_v(p) - h_l(p)))``

    Examples
    --------
    >>> round(drying_steam(1716.4, 4.0, 0.8), 4)
    1.0057
    """
    return steam_for_heat(heat, pressure, reducing=reducing) / dryer_efficiency


def steam_per_water_evaporated(steam_use: Any, evaporated: Any) -> Any:
    """Steam for each kilogram of water evaporated, the figure by which dryers are compared.

    Parameters
    ----------
    steam_use : float
        Steam per mass of yarn [kg/kg].
    evaporated : float
        Water evaporated per mass of yarn [kg/kg].

    Returns
    -------
    float
        Steam per mass of water [kg/kg].

    Examples
    --------
    >>> round(steam_per_water_evaporated(0.93, 0.62), 3)
    1.5
    """
    return steam_use / evaporated


def ideal_steam_per_water_evaporated(
    pressure: Any, temperature_in: Any, vapour_temperature: Any = 100.0, *, reducing: Reducing = HOUSE
) -> Any:
    """Least steam for each kilogram of water: the floor that no can dryer goes below.

    No losses, no yarn to warm; dry steam in, saturated condensate out, nothing recovered.

    Parameters
    ----------
    pressure : float
        Absolute pressure of the steam in the cans [bar].
    temperature_in : float
        Temperature of the water on the entering yarn [degC].
    vapour_temperature : float, optional
        Temperature at which the vapour leaves [degC].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Steam per mass of water [kg/kg].

    Raises
    ------
    InputError
        Steam no hotter than the vapour; a value out of the range of IF97.

    Notes
    -----
    ``(h_v(T_v) - h_l(T1)) / (h_v(p) - h_l(p))``

    Examples
    --------
    >>> round(ideal_steam_per_water_evaporated(4.0, 25.0), 3)
    1.205
    """
    least = saturation_pressure(vapour_temperature, reducing=reducing)
    accept(pressure > least, "pressure", pressure, "more than {}, to be hotter than the vapour", least)
    cold = water_enthalpy(temperature_in, reducing.atmosphere, reducing=reducing)
    needed = vapour_enthalpy(vapour_temperature, reducing=reducing) - cold
    return needed / evaporation_enthalpy(pressure, reducing=reducing)
