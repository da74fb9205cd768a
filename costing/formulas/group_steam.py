"""Spreadsheet formulas of steam: properties, heating baths, drying."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import steam

TITLE = "Steam and heat"

STEAM = {"pressure": 4.0}
VAPOUR = {"vapour_temperature": 100.0}
HEAT_CAPACITIES = {"heat_capacity_fibre": 1.3, "heat_capacity_water": 4.19}
HEATING = {"water_mass": 1.0, "temperature_in": 15.0, "temperature_out": 60.0, **STEAM}

FORMULAS: tuple[Formula, ...] = (
    Formula(steam.absolute_pressure, "pressure", {"gauge_pressure": 4.0, "atmospheric_pressure": 1.01325}),
    Formula(steam.saturation_temperature, "temperature", STEAM),
    Formula(steam.saturation_pressure, "pressure", {"temperature": 143.6}),
    Formula(steam.saturated_water_enthalpy, "liquid_enthalpy", STEAM),
    Formula(steam.saturated_steam_enthalpy, "steam_enthalpy", STEAM),
    Formula(steam.evaporation_enthalpy, "enthalpy", STEAM),
    Formula(steam.water_enthalpy, "liquid_enthalpy", {"temperature": 60.0, "pressure": 1.01325}),
    Formula(steam.vapour_enthalpy, "vapour_enthalpy", {"temperature": 100.0}),
    Formula(steam.steam_for_heat, "steam_use", {"heat": 1000.0, **STEAM}),
    Formula(steam.heating_steam_direct, "steam_use", HEATING),
    Formula(steam.heating_steam_closed, "steam_use", HEATING),
    Formula(
        steam.bath_surface_heat,
        "heat",
        {"surface_heat_loss": 8.0, "heated_surface": 2.0, "throughput": 1000.0},
    ),
    Formula(
        steam.yarn_heat,
        "heat",
        {"moisture_in": 0.7, "temperature_in": 25.0, "temperature_out": 60.0, **HEAT_CAPACITIES},
    ),
    Formula(
        steam.drying_heat,
        "heat",
        {
            "moisture_in": 0.7,
            "moisture_out": 8.0,
            "temperature_in": 25.0,
            "yarn_temperature_out": 100.0,
            **HEAT_CAPACITIES,
            **VAPOUR,
        },
    ),
    Formula(steam.drying_steam, "steam_use", {"heat": 1716.4, **STEAM, "dryer_efficiency": 80.0}),
    Formula(
        steam.steam_per_water_evaporated, "steam_per_evaporated", {"steam_use": 0.93, "evaporated": 0.62}
    ),
    Formula(
        steam.ideal_steam_per_water_evaporated,
        "steam_per_evaporated",
        {**STEAM, "temperature_in": 25.0, **VAPOUR},
    ),
)
