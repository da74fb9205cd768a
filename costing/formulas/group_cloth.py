"""Spreadsheet formulas of cloth: crimp, ends, widths, lengths, mass per area and per metre."""

from __future__ import annotations

from costing.construction import cloth
from costing.formulas.formula import Formula

TITLE = "Cloth"

FORMULAS: tuple[Formula, ...] = (
    Formula(cloth.crimp_from_take_up, "crimp", {"take_up": 7.4}),
    Formula(cloth.take_up_from_crimp, "take_up", {"crimp": 8.0}),
    Formula(
        cloth.ends_from_density,
        "ends",
        {"ends_density": 24.8, "width": 166.0, "selvedge_ends": 40},
    ),
    Formula(
        cloth.whole_ends_from_density,
        "ends",
        {"ends_density": 24.8, "width": 166.0, "selvedge_ends": 40},
    ),
    Formula(cloth.cloth_width_from_reed_width, "cloth_width", {"reed_width": 171.0, "weft_crimp": 3.0}),
    Formula(cloth.reed_width_from_cloth_width, "reed_width", {"cloth_width": 166.0, "weft_crimp": 3.0}),
    Formula(
        cloth.warp_areal_mass,
        "warp_areal_mass",
        {"ends_density": 24.8, "linear_density": 84.4, "crimp": 8.0},
    ),
    Formula(
        cloth.weft_areal_mass,
        "weft_areal_mass",
        {"picks_density": 16.5, "linear_density": 84.4, "weft_crimp": 3.0},
    ),
    Formula(
        cloth.loom_state_areal_mass,
        "loom_state_areal_mass",
        {"warp_areal_mass": 226.0, "weft_areal_mass": 143.0, "size_add_on": 9.0},
    ),
    Formula(
        cloth.finished_areal_mass,
        "finished_areal_mass",
        {
            "loom_state_areal_mass": 389.0,
            "desize_loss": 5.0,
            "finishing_loss": 0.0,
            "finishing_add_on": 2.0,
            "shrinkage_length": 10.0,
            "shrinkage_width": 4.0,
        },
    ),
    Formula(cloth.areal_mass_in_ounces, "areal_mass_ounces", {"areal_mass": 400.0}),
    Formula(cloth.areal_mass_from_ounces, "areal_mass", {"areal_mass_ounces": 11.75}),
    Formula(
        cloth.warp_length_from_cloth_length,
        "warp_length",
        {"cloth_length": 10000.0, "crimp": 8.0, "warp_waste": 2.0},
    ),
    Formula(
        cloth.cloth_length_from_warp_length,
        "cloth_length",
        {"warp_length": 15000.0, "crimp": 8.0, "warp_waste": 2.0},
    ),
    Formula(
        cloth.loom_state_length_from_finished,
        "cloth_length",
        {"finished_length": 9000.0, "shrinkage_length": 10.0},
    ),
    Formula(
        cloth.finished_length_from_loom_state,
        "finished_length",
        {"cloth_length": 10000.0, "shrinkage_length": 10.0},
    ),
    Formula(
        cloth.finished_width_from_loom_state,
        "finished_width",
        {"cloth_width": 166.0, "shrinkage_width": 4.0},
    ),
    Formula(
        cloth.loom_state_width_from_finished,
        "cloth_width",
        {"finished_width": 159.0, "shrinkage_width": 4.0},
    ),
    Formula(
        cloth.warp_mass_per_metre,
        "warp_mass_per_metre",
        {"ends": 4200, "linear_density": 84.4, "crimp": 8.0, "warp_waste": 2.0},
    ),
    Formula(
        cloth.weft_mass_per_metre,
        "weft_mass_per_metre",
        {"picks_density": 16.5, "reed_width": 171.0, "linear_density": 84.4, "weft_waste": 3.0},
    ),
    Formula(
        cloth.warp_mass_per_finished_metre,
        "warp_mass_per_finished_metre",
        {"warp_mass_per_metre": 390.0, "shrinkage_length": 10.0},
    ),
    Formula(
        cloth.weft_mass_per_finished_metre,
        "weft_mass_per_finished_metre",
        {"weft_mass_per_metre": 245.0, "shrinkage_length": 10.0},
    ),
)
