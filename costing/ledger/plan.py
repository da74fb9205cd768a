"""Lengths, masses and hours of one order on one range."""

from __future__ import annotations

from typing import NamedTuple

from costing.construction import cloth, counts, sets
from costing.process import steam
from costing.process.surroundings import Lot, Surroundings
from costing.quantities import InputError, quantity
from costing.settings.mill import Enquiry, Range
from costing.settings.style import Style

# Form of the warp -> what it is divided into, and where that runs.
FORMS = {"ropes": ("ropes", "rope places"), "sheet": ("section beams", "beam places")}


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
    loom_state_areal_mass: float
    finished_areal_mass: float


class Plan(NamedTuple):
    """What the range runs for one order. House units.

    Attributes
    ----------
    finished_length, loom_state_length, warp_length : float
        The same order in three lengths; the last with weaving waste in [m].
    ropes, ends_per_rope, number_of_sets : float
        Ropes of one set, ends in each, and sets run.
    set_length : float
        Saleable warp of one set [m].
    run_length : float
        What the range runs, leaders and off-shade metres in [m].
    saleable_mass, grey_mass_dyed : float
        Grey yarn in the saleable warp, and in all that is dyed [kg].
    beams : BeamPlan
        Section beams and subsets of the sets that run side by side.
    sublots : tuple of Sublot
        Lettered sub-lots of a set; none where the range splits none.
    run_hours, changeover_hours, stoppage_hours : float
        Manned time [h].
    around : Surroundings
        What every step needs to know of the range.
    """

    finished_length: float
    loom_state_length: float
    warp_length: float
    ropes: float
    ends_per_rope: float
    number_of_sets: float
    set_length: float
    run_length: float
    saleable_mass: float
    grey_mass_dyed: float
    run_hours: float
    changeover_hours: float
    stoppage_hours: float
    around: Surroundings
    beams: sets.BeamPlan
    sublots: tuple[sets.Sublot, ...]


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
    loom_state = cloth.loom_state_areal_mass(
        cloth.warp_areal_mass(ends / cloth_width, sets.linear_density_after_stretch(warp, stretch), crimp),
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
        weft_per_metre=cloth.weft_mass_per_metre(style.picks_density, reed_width, weft, style.weft_waste),
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


def plan_order(style: Style, fabric: ClothPlan, enquiry: Enquiry, range_: Range) -> Plan:
    """Work out what the range runs for an order.

    Parameters
    ----------
    style : Style
        The cloth.
    fabric : ClothPlan
        Of that style.
    enquiry : Enquiry
        Length ordered and how the lot is run.
    range_ : Range
        The machine.

    Returns
    -------
    Plan
        In house units.

    Raises
    ------
    InputError
        More ropes than the range has places for, or steam without pressure.
    """
    finished, loom_state, warp = _lengths(style, fabric, enquiry)
    ropes = sets.ropes_for_ends(fabric.ends, range_.ends_per_rope)
    together = enquiry.sets_side_by_side
    _check_form(range_, enquiry)
    if ropes * together > range_.rope_places:
        bundle, place = FORMS[range_.yarn_form]
        raise InputError(
            f"enquiry {enquiry.code}",
            f"style {style.code} has {fabric.ends:.0f} ends, that is {ropes:.0f} {bundle} of up to "
            f"{range_.ends_per_rope:.0f} ends, and {together:.0f} set(s) side by side need "
            f"{ropes * together:.0f} {place}; range {range_.code} has {range_.rope_places:.0f}",
        )
    number = together * sets.number_of_sets(warp / together, range_.set_length_max)
    set_length = warp / number
    lost = (range_.leader_length, range_.off_shade_length)
    run_length = sets.range_run_length(warp / together, number / together, *lost)
    per_metre = sets.warp_sheet_mass_per_metre(
        fabric.ends, sets.linear_density_after_stretch(fabric.linear_density, range_.stretch)
    )
    throughput = together * sets.throughput(fabric.ends, fabric.linear_density, range_.speed, range_.stretch)
    return Plan(
        finished_length=finished,
        loom_state_length=loom_state,
        warp_length=warp,
        ropes=ropes,
        ends_per_rope=sets.ends_per_rope(fabric.ends, ropes),
        number_of_sets=number,
        set_length=set_length,
        run_length=run_length,
        saleable_mass=warp * per_metre,
        grey_mass_dyed=together * run_length * per_metre,
        run_hours=sets.run_time(run_length, range_.speed, range_.efficiency),
        changeover_hours=range_.changeover_time,
        stoppage_hours=enquiry.stoppages * enquiry.stoppage_time,
        around=Surroundings(
            throughput,
            range_.water_temperature,
            _absolute_steam_pressure(range_),
            range_.steam_heating == "direct",
            range_.steam_losses,
            Lot(
                mass=together * run_length * per_metre,
                standing_bath=enquiry.bath_at_start == "standing bath",
                kept_bath=enquiry.bath_at_end == "kept for the next lot",
                stoppages=enquiry.stoppages,
                stoppage_time=enquiry.stoppage_time,
                pumps_running=enquiry.pumps_in_stoppage == "running",
            ),
        ),
        beams=sets.beam_plan(ropes * together, fabric.ends / ropes, together),
        sublots=_sublots(set_length, range_),
    )


def _check_form(range_: Range, enquiry: Enquiry) -> None:
    """Refuse sets side by side where the warp runs as one sheet."""
    if range_.yarn_form == "sheet" and enquiry.sets_side_by_side > 1:
        raise InputError(
            f"enquiry {enquiry.code}",
            f"sets side by side is {enquiry.sets_side_by_side:.0f}, but range {range_.code} runs one sheet; "
            "accepted is 1",
        )


def _absolute_steam_pressure(range_: Range) -> float:
    """Pressure of the steam [bar]; a setting of 0 is a pressure on a gauge, and none in absolute terms."""
    if range_.pressure_basis == "gauge":
        return float(steam.absolute_pressure(range_.steam_pressure, range_.atmospheric_pressure))
    least = quantity("pressure").low
    if range_.steam_pressure < least:
        raise InputError(
            f"range {range_.code}",
            f"steam pressure is {range_.steam_pressure:g} bar absolute, accepted is at least {least:g} bar; "
            "for a reading above the atmosphere the pressure basis is gauge",
        )
    return range_.steam_pressure


def _sublots(set_length: float, range_: Range) -> tuple[sets.Sublot, ...]:
    """Sub-lots of a set that is longer than one of them."""
    length = range_.sublot_length
    return () if length is None or set_length <= length else sets.sublots(set_length, length)


def _lengths(style: Style, fabric: ClothPlan, enquiry: Enquiry) -> tuple[float, float, float]:
    """Finished, loom-state and dyed warp length; the warp holds the weaving waste."""
    if enquiry.length_basis == "dyed warp":
        warp = enquiry.order_length
        loom_state = cloth.cloth_length_from_warp_length(warp, fabric.crimp, style.warp_waste)
        return cloth.finished_length_from_loom_state(loom_state, style.shrinkage_length), loom_state, warp
    loom_state = enquiry.order_length
    if enquiry.length_basis == "finished cloth":
        loom_state = cloth.loom_state_length_from_finished(enquiry.order_length, style.shrinkage_length)
    finished = cloth.finished_length_from_loom_state(loom_state, style.shrinkage_length)
    return (
        finished,
        loom_state,
        cloth.warp_length_from_cloth_length(loom_state, fabric.crimp, style.warp_waste),
    )
