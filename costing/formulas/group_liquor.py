"""Liquors, strength and rinsing."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import liquor, strength

TITLE = "Liquors, strength and rinsing"

RINSE = {"rinse_water": 3.0, "pick_up": 0.75, "boxes": 3, "exchange": 55}
VOLUMES = {"pick_up_in": 0.7, "feed_volume": 0.3, "pick_up_last": 0.75, "sky_evaporation": 0.05}

FORMULAS: tuple[Formula, ...] = (
    Formula(liquor.carried_by_liquor, "carried", {"pick_up": 0.75, "concentration": 2.0}),
    Formula(liquor.bath_strength_for_add_on, "concentration", {"carried": 20.0, "pick_up": 0.8}),
    Formula(
        liquor.impregnation_use,
        "carried",
        {"pick_up_in": 0.6, "concentration_in": 0.0, "pick_up_out": 0.8, "concentration_out": 30.0},
    ),
    Formula(liquor.overflow_volume, "overflow", VOLUMES),
    Formula(liquor.make_up_volume, "make_up_water", {**VOLUMES, "pick_up_in": 0.5, "feed_volume": 0.2}),
    Formula(
        liquor.concentration_after_box,
        "concentration_out",
        {"concentration_in": 0.0, "concentration": 2.0, "exchange": 80},
    ),
    Formula(liquor.residue_after_boxes, "residue", {"boxes": 3, "exchange": 55}),
    Formula(liquor.rinse_residue_counter_current, "residue", RINSE),
    Formula(liquor.rinse_residue_separate_feeds, "residue", RINSE),
    Formula(strength.delivered_from_pure, "delivered_mass", {"pure_mass": 66.4, "strength": 88}),
    Formula(strength.volume_from_mass, "solution_volume", {"delivered_mass": 100.0, "density": 1.515}),
    Formula(strength.strength_per_volume, "concentration", {"strength": 50, "density": 1.515}),
    Formula(strength.strength_by_mass, "strength", {"concentration": 757.5, "density": 1.515}),
    Formula(liquor.tank_turnover_time, "turnover_time", {"tank_volume": 360.0, "flow": 80.0}),
)
