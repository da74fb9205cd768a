"""The constants of the steam equations with their units, for running those equations on quantities."""

from __future__ import annotations

from collections.abc import Callable
from inspect import signature
from typing import Any

import pint

from costing.process.steam import HOUSE, Reducing

UNITS = Reducing(
    gas_constant="kJ/kg/kelvin",
    ice_point="degC",
    ice_point_absolute="delta_degC",
    water_pressure="bar",
    water_temperature="kelvin",
    steam_pressure="bar",
    steam_temperature="kelvin",
    boiling_pressure="bar",
    boiling_temperature="delta_degC",
    atmosphere="bar",
    hottest="degC",
    least_pressure="bar",
    most_pressure="bar",
    most_water_pressure="bar",
)


def constants_with_units(
    function: Callable[..., Any], registry: pint.UnitRegistry[float]
) -> dict[str, Reducing]:
    """What a function takes behind its bare star, with units."""
    if "reducing" not in signature(function).parameters:
        return {}
    numbers = zip(HOUSE, UNITS, strict=True)
    return {"reducing": Reducing(*(registry.Quantity(number, unit) for number, unit in numbers))}
