"""Spreadsheet formulas of oxygen in water, of gas that acid sets free, of salt and of air at a workplace."""

from __future__ import annotations

from costing.effluent import exposure, oxidation, strength_ratios, weak_acids
from costing.formulas.formula import Formula

TITLE = "Oxygen, gas and salt"

READ = {"effluent_temperature": 25.0, "ionic_strength": 0.0}

FORMULAS: tuple[Formula, ...] = (
    Formula(oxidation.oxygen_saturation, "oxygen_saturation", {"effluent_temperature": 25.0}),
    Formula(
        oxidation.oxygen_taken_up,
        "oxygen_taken_up",
        {"oxygen_transfer": 2.0, "oxygen_saturation": 8.26, "residence_time": 8.0, "dissolved_oxygen": 0.0},
    ),
    Formula(strength_ratios.sulfite_for_oxygen, "effluent_concentration", {"dissolved_oxygen": 8.26}),
    Formula(exposure.hydrogen_sulfide_share, "substance_share", {"acidity": 7.0, **READ}),
    Formula(exposure.sulfur_dioxide_share, "substance_share", {"acidity": 4.0, **READ}),
    Formula(exposure.sulfite_ion_share, "substance_share", {"acidity": 7.0, **READ}),
    Formula(weak_acids.activity_exponent, "activity_exponent", {"ionic_strength": 0.025, "ion_charge": 1.0}),
    Formula(
        strength_ratios.degraded_share,
        "substance_share",
        {"biochemical_demand": 400.0, "chemical_demand": 1200.0},
    ),
    Formula(
        strength_ratios.solids_over_conductivity,
        "solids_ratio",
        {"dissolved_solids": 1000.0, "conductivity": 1413.0},
    ),
    Formula(
        exposure.exposure_of_mixture,
        "exposure",
        {
            "first_exposure": 500.0,
            "first_limit": 1000.0,
            "second_exposure": 45.0,
            "second_limit": 200.0,
            "third_exposure": 40.0,
            "third_limit": 200.0,
        },
    ),
    Formula(
        exposure.mean_exposure,
        "exposure",
        {
            "first_exposure": 150.0,
            "first_time": 2.0,
            "second_exposure": 75.0,
            "second_time": 2.0,
            "third_exposure": 50.0,
            "third_time": 4.0,
            "shift": 8.0,
        },
    ),
)
