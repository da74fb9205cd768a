"""Reduction chemistry of the indigo bath."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import bath_salt, hydrosulfite, other_reduction, reduction

TITLE = "Reduction chemistry"

OXYGEN = {"hydrosulfite_per_oxygen": 1.2}
LEUCO = {"acidity": 11.5, "first_acid_constant": 7.97, "second_acid_constant": 12.68}
BATH = {"bath_volume": 10000.0, "bath_hydrosulfite": 2.0}

FORMULAS: tuple[Formula, ...] = (
    Formula(
        reduction.indigo_feed_of_bath,
        "indigo_feed",
        {"indigo_on_yarn": 2.0, "rinse_loss": 8, "overflow": 0.2, "bath_indigo": 2.0},
    ),
    Formula(
        reduction.indigo_feed_from_volumes,
        "indigo_feed",
        {
            "indigo_on_yarn": 2.0,
            "rinse_loss": 8,
            "bath_indigo": 2.0,
            "stock_indigo": 90.0,
            "pick_up_in": 0.75,
            "pick_up_last": 0.75,
            "sky_evaporation": 0.05,
            "other_feeds": 0.05,
        },
    ),
    Formula(
        hydrosulfite.hydrosulfite_for_reduction, "hydrosulfite_use", {"indigo_feed": 22.0, "prereduced": 0}
    ),
    Formula(
        hydrosulfite.hydrosulfite_for_second_reduction,
        "hydrosulfite_use",
        {"indigo_feed": 22.0, "redissolved": 10},
    ),
    Formula(
        hydrosulfite.hydrosulfite_carried_out,
        "hydrosulfite_use",
        {
            "dips": 6,
            "pick_up": 0.7,
            "pick_up_last": 0.7,
            "exchange": 100,
            "sky_destruction": 100,
            "bath_hydrosulfite": 2.0,
        },
    ),
    Formula(
        hydrosulfite.hydrosulfite_at_bath_surface,
        "hydrosulfite_use",
        {**OXYGEN, "surface_oxygen": 3.0, "bath_surface": 12.0, "throughput": 1000.0},
    ),
    Formula(
        hydrosulfite.hydrosulfite_in_circulation,
        "hydrosulfite_use",
        {**OXYGEN, "circulation_oxygen": 2.0, "circulation_flow": 40.0, "throughput": 1000.0},
    ),
    Formula(
        hydrosulfite.hydrosulfite_by_entrained_air,
        "hydrosulfite_use",
        {**OXYGEN, "entrained_air": 2.0, "oxygen_in_air": 0.274, "wetted_out": 90},
    ),
    Formula(
        hydrosulfite.hydrosulfite_by_decay,
        "hydrosulfite_use",
        {"decay_rate": 1.0, **BATH, "throughput": 1000.0},
    ),
    Formula(
        hydrosulfite.hydrosulfite_of_stoppage,
        "lot_amount",
        {
            "stoppage_time": 2.0,
            **OXYGEN,
            "surface_oxygen": 3.0,
            "bath_surface": 12.0,
            "circulation_oxygen": 2.0,
            "circulation_flow": 40.0,
            "decay_rate": 1.0,
            **BATH,
        },
    ),
    Formula(
        bath_salt.caustic_feed_of_bath,
        "caustic_use",
        {
            "hydrosulfite_use": 24.6,
            "hydrosulfite_overflow": 0.4,
            "hydrosulfite_decayed": 0.2,
            "pick_up_last": 0.75,
            "overflow": 0.2,
            "bath_caustic": 1.5,
            "carbon_dioxide": 0.3,
            "caustic_carried_in": 1.0,
        },
    ),
    Formula(bath_salt.share_ending_half_as_sulfate, "route_share", OXYGEN),
    Formula(
        bath_salt.sulfite_from_hydrosulfite,
        "sulfite_formed",
        {"hydrosulfite_reduced": 14.6, "hydrosulfite_oxidised": 9.0, **OXYGEN},
    ),
    Formula(bath_salt.sulfate_from_hydrosulfite, "sulfate_formed", {"hydrosulfite_oxidised": 9.0, **OXYGEN}),
    Formula(
        bath_salt.salt_in_bath,
        "salt_concentration",
        {"sulfite_formed": 30.0, "sulfate_formed": 5.0, "pick_up_last": 0.75, "overflow": 0.2},
    ),
    Formula(
        other_reduction.electrolysis_energy_of_indigo,
        "electrolysis_energy",
        {"cell_voltage": 4.0, "current_efficiency": 70},
    ),
    Formula(reduction.leuco_acid_share, "leuco_share", LEUCO),
    Formula(reduction.leuco_single_salt_share, "leuco_share", LEUCO),
)
