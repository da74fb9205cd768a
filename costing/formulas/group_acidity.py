"""Spreadsheet formulas of pH: from caustic or strong ions, and acid or carbon dioxide that brings it down."""

from __future__ import annotations

from costing.effluent import acidity, neutralising
from costing.formulas.formula import Formula

TITLE = "pH and acid"

READ = {"effluent_temperature": 25.0, "ionic_strength": 0.0}
WATER = {"water_constant": 13.995}
CLOSED = {"total_carbonate": 2.0, "total_sulfite": 5.0, "total_sulfide": 0.0, "total_acetate": 1.0, **READ}
TREATED = {
    "alkalinity": 25.0,
    "target_acidity": 8.5,
    "total_carbonate": 2.0,
    "total_sulfite": 5.0,
    "total_acetate": 1.0,
    **READ,
}

FORMULAS: tuple[Formula, ...] = (
    Formula(
        acidity.amount_concentration,
        "amount_concentration",
        {"effluent_concentration": 1000.0, "molar_mass": 39.997},
    ),
    Formula(acidity.ph_from_free_caustic, "acidity", {"free_caustic": 1.0, **WATER}),
    Formula(acidity.free_caustic_from_ph, "free_caustic", {"acidity": 12.0, **WATER}),
    Formula(acidity.alkalinity_at_ph, "alkalinity", {"acidity": 10.5, **CLOSED}),
    Formula(acidity.ph_from_strong_ions, "acidity", {"alkalinity": 25.0, **CLOSED}),
    Formula(
        acidity.ph_under_carbon_dioxide,
        "acidity",
        {"alkalinity": 25.0, "carbon_dioxide_pressure": 0.1, **READ},
    ),
    Formula(neutralising.acid_to_reach_ph, "acid_demand", {**TREATED, "acid_per_charge": 49.036}),
    Formula(neutralising.acetic_acid_to_reach_ph, "acid_demand", TREATED),
    Formula(neutralising.carbon_dioxide_to_reach_ph, "carbon_dioxide_demand", TREATED),
    Formula(
        neutralising.flue_gas_for_carbon_dioxide,
        "flue_gas",
        {"carbon_dioxide_demand": 1.1, "gas_carbon_dioxide": 10.0, "gas_uptake": 50.0},
    ),
    Formula(neutralising.sulfate_from_acid, "effluent_concentration", {"acid_demand": 1.226}),
)
