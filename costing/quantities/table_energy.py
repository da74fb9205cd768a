"""Heat, steam and power."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

ENERGY = (
    Q("pressure", "bar", "bar", 0.02, 100.0, "steam pressure, absolute"),
    Q("gauge_pressure", "bar", "bar", -0.9, 50.0, "steam pressure above the atmosphere, as a gauge reads"),
    Q("steam_pressure", "bar", "bar", 0.0, 50.0, "steam pressure on the stated pressure basis"),
    Q("atmospheric_pressure", "bar", "bar", 0.5, 1.1, "pressure of the air"),
    Q("temperature", "degC", "degC", 0.0, 350.0, "temperature"),
    Q("temperature_in", "degC", "degC", 0.0, 180.0, "temperature at the start"),
    Q("temperature_out", "degC", "degC", 0.0, 180.0, "temperature at the end"),
    Q("water_temperature", "degC", "degC", 1.0, 60.0, "temperature of the mill's water"),
    Q("bath_temperature", "degC", "degC", 5.0, 99.0, "temperature of the bath"),
    Q("rinse_temperature", "degC", "degC", 1.0, 98.0, "temperature of the rinse water"),
    Q("scour_temperature", "degC", "degC", 5.0, 99.0, "temperature of the scour box"),
    Q("yarn_temperature_out", "degC", "degC", 40.0, 180.0, "temperature of the yarn behind the cans"),
    Q("vapour_temperature", "degC", "degC", 20.0, 180.0, "temperature of the vapour that leaves the yarn"),
    Q("enthalpy", "kJ/kg", "kJ/kg", 0.0, 4000.0, "enthalpy"),
    Q("liquid_enthalpy", "kJ/kg", "kJ/kg", 0.0, 2000.0, "enthalpy of the water"),
    Q("steam_enthalpy", "kJ/kg", "kJ/kg", 2000.0, 3500.0, "enthalpy of the steam"),
    Q(
        "vapour_enthalpy",
        "kJ/kg",
        "kJ/kg",
        2000.0,
        3500.0,
        "enthalpy of the water vapour that leaves the yarn",
    ),
    Q("heat", "kJ/kg", "kJ/kg", 0.0, 1e5, "heat"),
    Q("steam_use", "kg/kg", "kg/kg", 0.0, 100.0, "steam used"),
    Q("heat_capacity_fibre", "kJ/kg/K", "kJ/kg/K", 0.5, 2.5, "heat capacity of dry cotton"),
    Q("heat_capacity_water", "kJ/kg/K", "kJ/kg/K", 4.0, 4.4, "heat capacity of water"),
    Q("moisture_in", "kg/kg", "kg/kg", 0.0, 3.0, "water on the yarn that enters the cans, of the dry yarn"),
    Q("moisture_out", "kg/kg", "%", 0.0, 40.0, "water on the yarn that leaves the cans, of the dry yarn"),
    Q(
        "dryer_efficiency",
        "",
        "%",
        20.0,
        100.0,
        "heat that reaches the yarn, of the heat of the steam condensed",
    ),
    Q("steam_losses", "", "%", 0.0, 60.0, "leaks, traps and start-up of the steam net, of the steam used"),
    Q("evaporated", "kg/kg", "kg/kg", 0.0, 10.0, "water evaporated"),
    Q("steam_per_evaporated", "kg/kg", "kg/kg", 0.0, 20.0, "steam per water evaporated"),
    Q("surface_heat_loss", "kJ/h/m2", "kW/m2", 0.0, 20.0, "heat lost by each area of open bath"),
    Q("heated_surface", "m2", "m2", 0.0, 300.0, "open surface of the heated box"),
    Q("power", "kW", "kW", 0.0, 5000.0, "electric power taken while running"),
    Q("water_mass", "kg/kg", "kg/kg", 0.0, 200.0, "water heated"),
)
