"""Ropes, sets, section beams and sub-lots, and the time a range takes over them."""

from costing.construction.sets.quality import first_quality_share, length_to_make
from costing.construction.sets.ropes import (
    BeamPlan,
    beam_plan,
    ends_from_ropes,
    ends_per_rope,
    rope_mass_per_metre,
    ropes_for_ends,
    section_beams,
    set_mass,
    sets_side_by_side,
    subsets_of_beams,
    warp_sheet_mass_per_metre,
)
from costing.construction.sets.running import (
    length_after_stretch,
    length_before_stretch,
    linear_density_after_stretch,
    manned_throughput,
    number_of_sets,
    range_run_length,
    run_time,
    throughput,
)
from costing.construction.sets.tub import Sublot, sublots

__all__ = [
    "BeamPlan",
    "Sublot",
    "beam_plan",
    "ends_from_ropes",
    "ends_per_rope",
    "first_quality_share",
    "length_after_stretch",
    "length_before_stretch",
    "length_to_make",
    "linear_density_after_stretch",
    "manned_throughput",
    "number_of_sets",
    "range_run_length",
    "rope_mass_per_metre",
    "ropes_for_ends",
    "run_time",
    "section_beams",
    "set_mass",
    "sets_side_by_side",
    "sublots",
    "subsets_of_beams",
    "throughput",
    "warp_sheet_mass_per_metre",
]
