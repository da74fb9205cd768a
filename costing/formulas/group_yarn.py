"""Spreadsheet formulas of yarn counts, length and mass."""

from __future__ import annotations

from costing.construction import counts
from costing.formulas.formula import Formula

TITLE = "Yarn"

FORMULAS: tuple[Formula, ...] = (
    Formula(counts.linear_density_from_english_count, "linear_density", {"english_count": 7.0}),
    Formula(counts.english_count_from_linear_density, "english_count", {"linear_density": 84.4}),
    Formula(counts.linear_density_from_metric_count, "linear_density", {"metric_count": 12.0}),
    Formula(counts.metric_count_from_linear_density, "metric_count", {"linear_density": 84.4}),
    Formula(counts.linear_density_from_denier, "linear_density", {"denier_count": 760.0}),
    Formula(counts.denier_from_linear_density, "denier_count", {"linear_density": 84.4}),
    Formula(
        counts.plied_linear_density,
        "linear_density",
        {"single_linear_density": 42.2, "ply": 2, "twist_contraction": 3.0},
    ),
    Formula(
        counts.core_spun_linear_density,
        "linear_density",
        {"single_linear_density": 37.0, "core_linear_density": 78.0, "draft": 3.5},
    ),
    Formula(
        counts.sized_linear_density,
        "sized_linear_density",
        {"linear_density": 84.4, "size_add_on": 9.0},
    ),
    Formula(counts.yarn_length_from_mass, "yarn_length", {"yarn_mass": 1000.0, "linear_density": 84.4}),
    Formula(
        counts.yarn_mass_from_length,
        "yarn_mass",
        {"yarn_length": 15000.0, "linear_density": 84.4},
    ),
    Formula(counts.bone_dry_mass, "bone_dry_mass", {"commercial_regain": 8.5}),
)
