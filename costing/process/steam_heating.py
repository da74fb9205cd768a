"""Steam that heats water, baths and yarn.

Leaks, traps and start-up of the steam net come on top; so does what the walls of a machine lose.
"""

from __future__ import annotations

from typing import Any

from costing.process.steam_properties import (
    accept,
    evaporation_enthalpy,
    saturated_steam_enthalpy,
    saturation_temperature,
    water_enthalpy,
)
from costing.process.steam_reducing import HOUSE, Reducing


def steam_for_heat(heat: Any, pressure: Any, *, reducing: Reducing = HOUSE) -> Any:
    """Steam that gives a heat through a wall and leaves as saturated condensate.

    Parameters
    ----------
    heat : float
        Heat per mass of yarn [kJ/kg].
    pressure : float
        Absolute pressure of the steam [bar].
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
    ``m = q / (h_v(p) - h_l(p))``

    Examples
    --------
    >>> round(steam_for_heat(1000.0, 4.0), 4)
    0.4688
    """
    return heat / evaporation_enthalpy(pressure, reducing=reducing)


def heating_steam_direct(
    water_mass: Any, temperature_in: Any, temperature_out: Any, pressure: Any, *, reducing: Reducing = HOUSE
) -> Any:
    """Live steam blown into water to heat it.

    The steam stays in the bath as water on top of the mass that is heated.

    Parameters
    ----------
    water_mass : float
        Water heated per mass of yarn [kg/kg].
    temperature_in : float
        Temperature of the water before [degC].
    temperature_out : float
        Temperature of the bath after [degC].
    pressure : float
        Absolute pressure of the steam [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Steam per mass of yarn [kg/kg].

    Raises
    ------
    InputError
        An end colder than the start or hotter than the steam; a value out of the range of IF97.

    Notes
    -----
    ``m = w (h_l(T2) - h_l(T1)) / (h_v(p) - h_l(T2))``

    Examples
    --------
    >>> round(heating_steam_direct(1.0, 15.0, 60.0, 4.0), 4)
    0.0757
    """
    _accept_heating(temperature_in, temperature_out, pressure, reducing)
    warm = water_enthalpy(temperature_out, reducing.atmosphere, reducing=reducing)
    cold = water_enthalpy(temperature_in, reducing.atmosphere, reducing=reducing)
    return water_mass * (warm - cold) / (saturated_steam_enthalpy(pressure, reducing=reducing) - warm)


def heating_steam_closed(
    water_mass: Any, temperature_in: Any, temperature_out: Any, pressure: Any, *, reducing: Reducing = HOUSE
) -> Any:
    """Steam that heats water through a closed coil and leaves as saturated condensate.

    Parameters
    ----------
    water_mass : float
        Water heated per mass of yarn [kg/kg].
    temperature_in : float
        Temperature of the water before [degC].
    temperature_out : float
        Temperature of the water after [degC].
    pressure : float
        Absolute pressure of the steam [bar].
    reducing : Reducing, optional
        Constants with units.

    Returns
    -------
    float
        Steam per mass of yarn [kg/kg].

    Raises
    ------
    InputError
        An end colder than the start or hotter than the steam; a value out of the range of IF97.

    Notes
    -----
    ``m = w (h_l(T2) - h_l(T1)) / (h_v(p) - h_l(p))``

    Examples
    --------
    >>> round(heating_steam_closed(1.0, 15.0, 60.0, 4.0), 4)
    0.0882
    """
    _accept_heating(temperature_in, temperature_out, pressure, reducing)
    warm = water_enthalpy(temperature_out, reducing.atmosphere, reducing=reducing)
    cold = water_enthalpy(temperature_in, reducing.atmosphere, reducing=reducing)
    return steam_for_heat(water_mass * (warm - cold), pressure, reducing=reducing)


def _accept_heating(temperature_in: Any, temperature_out: Any, pressure: Any, reducing: Reducing) -> None:
    hottest = saturation_temperature(pressure, reducing=reducing)
    accept(
        (temperature_in <= temperature_out) & (temperature_out <= hottest),
        "temperature_out",
        temperature_out,
        "{}, where it starts, to {}, where the steam condenses",
        temperature_in,
        hottest,
    )


def bath_surface_heat(surface_heat_loss: Any, heated_surface: Any, throughput: Any) -> Any:
    """Heat that an open bath loses at its surface, spread over the yarn that runs through it.

    Leaves out the walls of the box.

    Parameters
    ----------
    surface_heat_loss : float
        Heat lost by each area of open bath [kJ/h/m2].
    heated_surface : float
        Open surface [m2].
    throughput : float
        Yarn through the range while it runs [kg/h].

    Returns
    -------
    float
        Heat per mass of yarn [kJ/kg].

    Examples
    --------
    8 kW/m2, which is 28 800 kJ/h/m2, over 2 m2 and 1000 kg/h:

    >>> bath_surface_heat(28800.0, 2.0, 1000.0)
    57.6
    """
    return surface_heat_loss * heated_surface / throughput


def yarn_heat(
    moisture_in: Any,
    temperature_in: Any,
    temperature_out: Any,
    heat_capacity_fibre: Any = 1.3,
    heat_capacity_water: Any = 4.19,
) -> Any:
    """Heat that warms yarn and the water on it.

    Leaves out the heat of wetting of dry cotton. Negative where the yarn gives heat to a colder bath.

    Parameters
    ----------
    moisture_in : float
        Water on the yarn, of the dry yarn [kg/kg].
    temperature_in : float
        Temperature of the yarn before [degC].
    temperature_out : float
        Temperature of the yarn after [degC].
    heat_capacity_fibre : float, optional
        Heat capacity of dry cotton [kJ/kg/K].
    heat_capacity_water : float, optional
        Heat capacity of water [kJ/kg/K].

    Returns
    -------
    float
        Heat per mass of dry yarn [kJ/kg].

    Notes
    -----
    ``q = (c_f + w c_w) (T2 - T1)``

    Examples
    --------
    >>> round(yarn_heat(0.7, 25.0, 60.0), 3)
    148.155

    References
    ----------
    morton-hearle, table 6.1: dry cotton 1.22 to 1.35 kJ/kg/K, the value inside the range is judgement
    """
    return (heat_capacity_fibre + moisture_in * heat_capacity_water) * (temperature_out - temperature_in)
