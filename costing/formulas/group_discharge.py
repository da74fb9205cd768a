"""Discharge loads, concentrations and acid demand."""

from __future__ import annotations

from costing.effluent import loads
from costing.formulas.formula import Formula

TITLE = "Discharge"

FORMULAS: tuple[Formula, ...] = (
    Formula(loads.concentration_from_load, "effluent_concentration", {"load": 42.3, "effluent_volume": 15.0}),
    Formula(
        loads.load_from_concentration, "load", {"effluent_concentration": 800.0, "effluent_volume": 100.1}
    ),
    Formula(loads.load_per_metre_of_cloth, "load_per_metre", {"load": 10.0, "warp_mass_per_metre": 360.0}),
    Formula(loads.acid_for_alkalinity, "acid_demand", {"alkalinity": 25.0, "acid_per_charge": 49.036}),
    Formula(loads.oxygen_demand_of_load, "load", {"load": 2.0, "oxygen_demand": 1.952, "recovery": 90.0}),
)
