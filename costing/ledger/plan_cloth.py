"""Yarns and cloth of one style."""

from __future__ import annotations

from typing import NamedTuple

from costing.construction import cloth, counts, sets
from costing.settings.style import Style


class ClothPlan(NamedTuple):
    """What one metre of a style is made of. House units.

    Attributes
    ----------
    ends : float
        Warp ends, selvedges in.
    linear_density : float
        Warp yarn as it runs [kg/m].
    crimp : float
        Of the cloth length [fraction].
    cloth_width, reed_width, finished_width : float
        Widths [m].
    weft_per_metre : float
        Weft yarn bought per metre of loom-state cloth, waste in [kg/m].
    warp_on_cloth, weft_on_cloth : float
        Warp and weft yarn that stand in a metre of loom-state cloth, waste and size out [kg/m].
    loom_state_areal_mass, finished_areal_mass : float
        Mass per area [kg/m2].
    """

    ends: float
    linear_density: float
    crimp: float
    cloth_width: float
    reed_width: float
    finished_width: float
    weft_per_metre: float
    warp_on_cloth: float
    weft_on_cloth: float
    loom_state_areal_mass: float
    finished_areal_mass: float


def plan_cloth(style: Style, stretch: float = 0.0) -> ClothPlan:
    """Work out the yarns and the cloth of a style.

    Parameters
    ----------
    style : Style
        Of the mill's book.
    stretch : float, optional
        Gain of length on the range, which makes the warp finer in the cloth [fraction].

    Returns
    -------
    ClothPlan
        In house units.
    """
    warp = counts.plied_linear_density(style.warp_count, style.warp_ply, style.twist_contraction)
    weft = counts.plied_linear_density(style.weft_count, style.weft_ply, style.twist_contraction)
    crimp = (
        style.warp_crimp
        if style.crimp_basis == "cloth length"
        else cloth.crimp_from_take_up(style.warp_crimp)
    )
    if style.width_basis == "reed":
        reed_width = style.width
        cloth_width = cloth.cloth_width_from_reed_width(style.width, style.weft_crimp)
    else:
        cloth_width = style.width
        reed_width = cloth.reed_width_from_cloth_width(style.width, style.weft_crimp)
    ends = cloth.whole_ends_from_density(style.ends_density, style.width, style.selvedge_ends)
    running_warp = sets.linear_density_after_stretch(warp, stretch)
    weft_per_metre = cloth.weft_mass_per_metre(style.picks_density, reed_width, weft, style.weft_waste)
    loom_state = cloth.loom_state_areal_mass(
        cloth.warp_areal_mass(ends / cloth_width, running_warp, crimp),
        cloth.weft_areal_mass(style.picks_density, weft, style.weft_crimp),
        style.size_add_on,
    )
    return ClothPlan(
        ends=ends,
        linear_density=warp,
        crimp=crimp,
        cloth_width=cloth_width,
        reed_width=reed_width,
        finished_width=cloth.finished_width_from_loom_state(cloth_width, style.shrinkage_width),
        weft_per_metre=weft_per_metre,
        warp_on_cloth=ends * running_warp * (1.0 + crimp),
        weft_on_cloth=weft_per_metre * (1.0 - style.weft_waste),
        loom_state_areal_mass=loom_state,
        finished_areal_mass=cloth.finished_areal_mass(
            loom_state,
            style.desize_loss,
            style.finishing_loss,
            style.finishing_add_on,
            style.shrinkage_length,
            style.shrinkage_width,
        ),
    )
