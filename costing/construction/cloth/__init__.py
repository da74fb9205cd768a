"""Cloth from its construction: threads, mass per area, lengths and the yarn that a metre takes."""

from costing.construction.cloth.areal_mass import (
    areal_mass_from_ounces,
    areal_mass_in_ounces,
    finished_areal_mass,
    loom_state_areal_mass,
    warp_areal_mass,
    weft_areal_mass,
)
from costing.construction.cloth.lengths import (
    cloth_length_from_warp_length,
    finished_length_from_loom_state,
    finished_width_from_loom_state,
    loom_state_length_from_finished,
    loom_state_width_from_finished,
    warp_length_from_cloth_length,
    warp_mass_per_finished_metre,
    warp_mass_per_metre,
    weft_mass_per_finished_metre,
    weft_mass_per_metre,
)
from costing.construction.cloth.threads import (
    cloth_width_from_reed_width,
    crimp_from_take_up,
    ends_from_density,
    reed_width_from_cloth_width,
    take_up_from_crimp,
    whole_ends_from_density,
)

__all__ = [
    "areal_mass_from_ounces",
    "areal_mass_in_ounces",
    "cloth_length_from_warp_length",
    "cloth_width_from_reed_width",
    "crimp_from_take_up",
    "ends_from_density",
    "finished_areal_mass",
    "finished_length_from_loom_state",
    "finished_width_from_loom_state",
    "loom_state_areal_mass",
    "loom_state_length_from_finished",
    "loom_state_width_from_finished",
    "reed_width_from_cloth_width",
    "take_up_from_crimp",
    "warp_areal_mass",
    "warp_length_from_cloth_length",
    "warp_mass_per_finished_metre",
    "warp_mass_per_metre",
    "weft_areal_mass",
    "weft_mass_per_finished_metre",
    "weft_mass_per_metre",
    "whole_ends_from_density",
]
