"""Spreadsheet formulas of effluent treatment: removal, sludge, water that comes back, the sewer's charge."""

from __future__ import annotations

from costing.effluent import charge, removal, reuse, sludge
from costing.formulas.formula import Formula

TITLE = "Treatment of the effluent"

FORMULAS: tuple[Formula, ...] = (
    Formula(
        removal.removal_from_concentrations,
        "removal",
        {"concentration_before": 892.0, "concentration_after": 856.0},
    ),
    Formula(
        removal.removal_in_series,
        "removal",
        {"first_removal": 64.0, "second_removal": 62.0, "third_removal": 0.0, "fourth_removal": 0.0},
    ),
    Formula(removal.peak_behind_tank, "peak_left", {"dump_time": 60.0, "residence_time": 12.0}),
    Formula(
        sludge.biological_sludge,
        "dry_sludge",
        {"demand_removed": 300.0, "sludge_yield": 0.25, "volatile_share": 75.0},
    ),
    Formula(
        sludge.biology_oxygen,
        "oxygen_needed",
        {"demand_removed": 300.0, "sludge_yield": 0.25, "sulfur_demand": 50.0},
    ),
    Formula(sludge.alum_sludge, "dry_sludge", {"coagulant_used": 100.0, "crystal_water": 14.3}),
    Formula(sludge.ferric_sludge, "dry_sludge", {"coagulant_used": 100.0}),
    Formula(sludge.alum_alkalinity, "alkalinity", {"coagulant_dose": 300.0, "crystal_water": 14.3}),
    Formula(sludge.ferric_alkalinity, "alkalinity", {"coagulant_dose": 300.0}),
    Formula(sludge.wet_cake, "sludge_cake", {"dry_sludge": 100.0, "cake_dryness": 20.0}),
    Formula(
        reuse.salt_in_loop,
        "effluent_concentration",
        {"salt_added": 3000.0, "reuse_share": 50.0, "membrane_rejection": 90.0, "fresh_salt": 300.0},
    ),
    Formula(
        reuse.largest_reuse,
        "reuse_share",
        {
            "salt_ceiling": 1000.0,
            "salt_added": 3000.0,
            "membrane_rejection": 60.0,
            "water_recovery": 75.0,
            "fresh_salt": 300.0,
        },
    ),
    Formula(reuse.concentrate_flow, "flow_per_day", {"flow_per_day": 500.0, "water_recovery": 75.0}),
    Formula(
        reuse.concentrate_strength,
        "effluent_concentration",
        {"effluent_concentration": 4000.0, "membrane_rejection": 60.0, "water_recovery": 75.0},
    ),
    Formula(
        charge.charge_by_strength,
        "effluent_charge",
        {
            "reception_charge": 0.31,
            "volume_charge": 0.35,
            "biology_charge": 0.23,
            "sludge_charge": 0.27,
            "settled_demand": 1300.0,
            "settleable_solids": 120.0,
            "reference_demand": 260.0,
            "reference_solids": 240.0,
        },
    ),
)
