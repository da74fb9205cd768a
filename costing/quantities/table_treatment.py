"""Treatment of the effluent, water that comes back, and what the sewer charges."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

TREATMENT = (
    Q("concentration_before", "kg/L", "mg/L", 1e-6, 1e6, "concentration before the treatment step"),
    Q("concentration_after", "kg/L", "mg/L", 0.0, 1e6, "concentration behind the treatment step"),
    Q("removal", "", "%", 0.0, 100.0, "share of a parameter that treatment takes out"),
    Q("first_removal", "", "%", 0.0, 100.0, "removal of the first treatment step"),
    Q("second_removal", "", "%", 0.0, 100.0, "removal of the second treatment step"),
    Q("third_removal", "", "%", 0.0, 100.0, "removal of the third treatment step"),
    Q("fourth_removal", "", "%", 0.0, 100.0, "removal of the fourth treatment step"),
    Q("residence_time", "h", "h", 0.1, 1000.0, "volume of the tank over the flow"),
    Q("peak_left", "", "%", 0.0, 100.0, "peak behind the tank over the peak before it"),
    Q("demand_removed", "kg/h", "kg/day", 0.0, 1e6, "organic COD that biology removes"),
    Q("sulfur_demand", "kg/h", "kg/day", 0.0, 1e6, "COD of sulfite, hydrosulfite, thiosulfate and sulfide"),
    Q("sludge_yield", "kg/kg", "kg/kg", 0.0, 0.6, "volatile solids that grow for each mass of COD removed"),
    Q("volatile_share", "", "%", 30.0, 100.0, "volatile part of the solids of biology"),
    Q("coagulant_dose", "kg/L", "mg/L", 0.0, 20000.0, "coagulant in each volume of water"),
    Q("coagulant_used", "kg/h", "kg/day", 0.0, 1e6, "coagulant used"),
    Q("crystal_water", "", "", 0.0, 18.0, "mol of water of crystals in each mol of alum"),
    Q("dry_sludge", "kg/h", "kg/day", 0.0, 1e6, "dry solids of the sludge"),
    Q("cake_dryness", "", "%", 1.0, 95.0, "dry solids in the cake of the press"),
    Q("sludge_cake", "kg/h", "kg/day", 0.0, 1e7, "sludge as it leaves the press"),
    Q("oxygen_needed", "kg/h", "kg/day", 0.0, 1e6, "oxygen that biology takes"),
    Q("salt_added", "kg/L", "mg/L", 0.0, 3e5, "salt that range and treatment add to each volume of water"),
    Q("fresh_salt", "kg/L", "mg/L", 0.0, 1e5, "salt in the fresh water"),
    Q("salt_ceiling", "kg/L", "mg/L", 1.0, 3e5, "salt that the water taken by the range may hold"),
    Q("reuse_share", "", "%", 0.0, 99.0, "share of the water taken by the range that is treated water"),
    Q("membrane_rejection", "", "%", 0.0, 100.0, "share of the concentration that the membrane holds back"),
    Q("water_recovery", "", "%", 1.0, 99.0, "share of its feed that a membrane gives as treated water"),
    Q("reception_charge", "money/L", "money/m3", 0.0, 1e4, "sewer charge for taking in and conveying"),
    Q("volume_charge", "money/L", "money/m3", 0.0, 1e4, "sewer charge for treatment by volume alone"),
    Q("biology_charge", "money/L", "money/m3", 0.0, 1e4, "charge for biology at the reference strength"),
    Q("sludge_charge", "money/L", "money/m3", 0.0, 1e4, "charge for sludge at the reference strength"),
    Q("settled_demand", "kg/L", "mg/L", 0.0, 1e6, "oxygen demand of the effluent once settled"),
    Q("settleable_solids", "kg/L", "mg/L", 0.0, 1e6, "suspended solids of the effluent"),
    Q("reference_demand", "kg/L", "mg/L", 1.0, 1e5, "oxygen demand of ordinary sewage once settled"),
    Q("reference_solids", "kg/L", "mg/L", 1.0, 1e5, "suspended solids of ordinary sewage"),
)
