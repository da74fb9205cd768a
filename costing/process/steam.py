"""Steam of a dyehouse in one place: its properties, what heating takes and what drying takes."""

from __future__ import annotations

from costing.process.steam_drying import (
    drying_heat,
    drying_steam,
    ideal_steam_per_water_evaporated,
    steam_per_water_evaporated,
)
from costing.process.steam_heating import (
    bath_surface_heat,
    heating_steam_closed,
    heating_steam_direct,
    steam_for_heat,
    yarn_heat,
)
from costing.process.steam_properties import (
    absolute_pressure,
    evaporation_enthalpy,
    saturated_steam_enthalpy,
    saturated_water_enthalpy,
    saturation_pressure,
    saturation_temperature,
    vapour_enthalpy,
    water_enthalpy,
)
from costing.process.steam_reducing import HOUSE, Reducing

__all__ = [
    "HOUSE",
    "Reducing",
    "absolute_pressure",
    "bath_surface_heat",
    "drying_heat",
    "drying_steam",
    "evaporation_enthalpy",
    "heating_steam_closed",
    "heating_steam_direct",
    "ideal_steam_per_water_evaporated",
    "saturated_steam_enthalpy",
    "saturated_water_enthalpy",
    "saturation_pressure",
    "saturation_temperature",
    "steam_for_heat",
    "steam_per_water_evaporated",
    "vapour_enthalpy",
    "water_enthalpy",
    "yarn_heat",
]
