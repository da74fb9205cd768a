"""Spreadsheet formulas of size: add-on, strength of box and feed, what to cook."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import sizing

TITLE = "Size"

FORMULAS: tuple[Formula, ...] = (
    Formula(sizing.size_add_on_from_pick_up, "size_add_on", {"size_pick_up": 110.0, "size_solids": 8.5}),
    Formula(sizing.size_pick_up_from_add_on, "size_pick_up", {"size_add_on": 9.0, "size_solids": 8.5}),
    Formula(sizing.size_solids_for_add_on, "size_solids", {"size_add_on": 9.0, "size_pick_up": 110.0}),
    Formula(sizing.size_liquor_taken, "size_liquor", {"size_pick_up": 110.0, "density": 1.03}),
    Formula(
        sizing.size_add_on_wet_in,
        "size_add_on",
        {"pick_up_out": 1.2, "exchange": 95.0, "size_box_strength": 80.0},
    ),
    Formula(
        sizing.size_box_strength_wet_in,
        "size_box_strength",
        {"size_add_on": 9.0, "pick_up_out": 1.2, "exchange": 95.0},
    ),
    Formula(
        sizing.size_feed_strength_wet_in,
        "size_feed_strength",
        {"size_add_on": 9.0, "pick_up_in": 0.6, "pick_up_out": 1.2},
    ),
    Formula(
        sizing.size_liquor_to_cook,
        "solution_volume",
        {"yarn_mass": 4500.0, "size_liquor": 1.07, "size_loss": 4.0, "size_box_volume": 600.0},
    ),
    Formula(sizing.size_for_order, "pure_mass", {"yarn_mass": 4500.0, "size_add_on": 9.0, "size_loss": 4.0}),
    Formula(
        sizing.size_per_metre_of_warp,
        "warp_size_per_metre",
        {"ends": 4200, "linear_density": 84.4, "size_add_on": 9.0},
    ),
    Formula(
        sizing.size_add_on_from_weighing,
        "size_add_on",
        {"sized_mass": 10.9, "desized_mass": 9.7, "blank_loss": 3.0},
    ),
)
