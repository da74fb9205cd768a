"""Spreadsheet formulas of ropes, section beams and sets, and of the time a range takes over them."""

from __future__ import annotations

from costing.construction import sets
from costing.formulas.formula import Formula

TITLE = "Ropes, beams and sets"

FORMULAS: tuple[Formula, ...] = (
    Formula(sets.ropes_for_ends, "ropes", {"ends": 4157, "ends_per_rope": 350}),
    Formula(sets.ends_per_rope, "ends_per_rope", {"ends": 4157, "ropes": 12}),
    Formula(sets.ends_from_ropes, "ends", {"ropes": 12, "ends_per_rope": 350}),
    Formula(
        sets.rope_mass_per_metre,
        "rope_mass_per_metre",
        {"ends_per_rope": 350, "linear_density": 84.4},
    ),
    Formula(
        sets.warp_sheet_mass_per_metre,
        "warp_sheet_mass_per_metre",
        {"ends": 4200, "linear_density": 84.4},
    ),
    Formula(sets.set_mass, "set_mass", {"ends": 4200, "linear_density": 84.4, "set_length": 15000.0}),
    Formula(sets.sets_side_by_side, "sets_side_by_side", {"rope_places": 36, "ropes": 12}),
    Formula(sets.section_beams, "section_beams", {"ends": 4200, "creel_capacity": 640}),
    Formula(sets.subsets_of_beams, "subsets", {"section_beams": 30, "beams_per_subset": 15}),
    Formula(
        sets.throughput,
        "throughput",
        {"ends": 4200, "linear_density": 84.4, "speed": 25.0, "stretch": 2.0},
    ),
    Formula(sets.manned_throughput, "manned_throughput", {"throughput": 520.0, "efficiency": 85.0}),
    Formula(sets.run_time, "run_time", {"run_length": 15300.0, "speed": 25.0, "efficiency": 85.0}),
    Formula(sets.length_after_stretch, "warp_length", {"warp_length": 15000.0, "stretch": 2.0}),
    Formula(sets.length_before_stretch, "warp_length", {"warp_length": 15300.0, "stretch": 2.0}),
    Formula(
        sets.linear_density_after_stretch,
        "linear_density",
        {"linear_density": 84.4, "stretch": 2.0},
    ),
    Formula(
        sets.number_of_sets,
        "number_of_sets",
        {"warp_length": 45000.0, "set_length_max": 20000.0},
    ),
    Formula(
        sets.range_run_length,
        "run_length",
        {
            "warp_length": 45000.0,
            "number_of_sets": 3,
            "leader_length": 60.0,
            "off_shade_length": 120.0,
        },
    ),
    Formula(sets.first_quality_share, "first_quality", {"off_shade_share": 2.0, "seconds_share": 3.0}),
    Formula(
        sets.length_to_make,
        "made_length",
        {"first_quality_length": 9500.0, "off_shade_share": 2.0, "seconds_share": 3.0},
    ),
)
