"""Lengths, masses and hours of one order on one range."""

from __future__ import annotations

from typing import NamedTuple

from costing.construction import cloth, sets
from costing.ledger.plan_cloth import ClothPlan
from costing.ledger.plan_running import Lengths, run_form
from costing.process import steam
from costing.process.surroundings import Lot, Surroundings
from costing.quantities import InputError, quantity
from costing.settings.mill import Enquiry, Range
from costing.settings.quality import Sorting
from costing.settings.style import Style


class Plan(NamedTuple):
    """What the range runs for one order. House units.

    Attributes
    ----------
    finished_length, loom_state_length, warp_length : float
        What is made for the order, of all qualities, in three lengths; the last with weaving waste in [m].
    ropes, ends_per_rope, number_of_sets : float
        Ropes of one set, ends in each, and sets run.
    set_length : float
        Saleable warp of one set [m].
    run_length : float
        What the range runs, leaders and off-shade metres in [m].
    saleable_mass, grey_mass_dyed : float
        Grey yarn in the saleable warp, and in all that is dyed [kg].
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


def plan_order(
    style: Style,
    fabric: ClothPlan,
    enquiry: Enquiry,
    range_: Range,
    bath_hours: float = 0.0,
    sorting: Sorting | None = None,
) -> Plan:
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
    bath_hours : float, optional
        Hours that the baths of one charge of a vessel take, together [h].
    sorting : Sorting, optional
        What of the metres made is not of first quality: so much more is made than is ordered.

    Returns
    -------
    Plan
        In house units.

    Raises
    ------
    InputError
        More ropes than the range has places for, or steam without pressure.
    """
    finished, loom_state, warp = lengths_to_make(
        style, fabric, enquiry, 1.0 if sorting is None else sorting.first_quality
    )
    running = run_form(style, fabric, enquiry, range_, Lengths(warp, loom_state), bath_hours)
    return Plan(
        finished_length=finished,
        loom_state_length=loom_state,
        warp_length=warp,
        ropes=running.ropes,
        ends_per_rope=sets.ends_per_rope(fabric.ends, running.ropes),
        number_of_sets=running.number,
        set_length=running.length,
        run_length=running.run_length,
        saleable_mass=running.saleable_mass,
        grey_mass_dyed=running.dyed_mass,
        run_hours=running.hours,
        changeover_hours=range_.changeover_time,
        stoppage_hours=enquiry.stoppages * enquiry.stoppage_time,
        around=Surroundings(
            running.throughput,
            range_.water_temperature,
            _absolute_steam_pressure(range_),
            range_.steam_heating == "direct",
            range_.steam_losses,
            Lot(
                mass=running.dyed_mass,
                standing_bath=enquiry.bath_at_start == "standing bath",
                kept_bath=enquiry.bath_at_end == "kept for the next lot",
                stoppages=enquiry.stoppages,
                stoppage_time=enquiry.stoppage_time,
                pumps_running=enquiry.pumps_in_stoppage == "running",
            ),
            running.charge_mass,
        ),
    )


def _absolute_steam_pressure(range_: Range) -> float:
    """Pressure of the steam [bar]; a setting of 0 is a pressure on a gauge, and none in absolute terms."""
    if range_.pressure_basis == "gauge":
        pressure: float = steam.absolute_pressure(range_.steam_pressure, range_.atmospheric_pressure)
        return pressure
    least = quantity("pressure").low
    if range_.steam_pressure < least:
        raise InputError(
            f"range {range_.code}",
            f"steam pressure is {range_.steam_pressure:g} bar absolute, accepted is at least {least:g} bar; "
            "for a reading above the atmosphere the pressure basis is gauge",
        )
    return range_.steam_pressure


def beams_of(plan: Plan, fabric: ClothPlan, enquiry: Enquiry) -> sets.BeamPlan:
    """Section beams and subsets of the sets that run side by side."""
    together = enquiry.sets_side_by_side
    return sets.beam_plan(plan.ropes * together, fabric.ends / plan.ropes, together)


def sublots_of(plan: Plan, range_: Range) -> tuple[sets.Sublot, ...]:
    """Lettered sub-lots of a set that is longer than one of them; none where the range splits none."""
    length = range_.sublot_length
    return () if length is None or plan.set_length <= length else sets.sublots(plan.set_length, length)


def lengths_to_make(
    style: Style, fabric: ClothPlan, enquiry: Enquiry, first_quality: float
) -> tuple[float, float, float]:
    """Finished, loom-state and dyed warp length to make; the warp holds the weaving waste."""
    made = enquiry.order_length / first_quality
    if enquiry.length_basis == "dyed warp":
        warp = made
        loom_state = cloth.cloth_length_from_warp_length(warp, fabric.crimp, style.warp_waste)
        return cloth.finished_length_from_loom_state(loom_state, style.shrinkage_length), loom_state, warp
    loom_state = made
    if enquiry.length_basis == "finished cloth":
        loom_state = cloth.loom_state_length_from_finished(made, style.shrinkage_length)
    finished = cloth.finished_length_from_loom_state(loom_state, style.shrinkage_length)
    return (
        finished,
        loom_state,
        cloth.warp_length_from_cloth_length(loom_state, fabric.crimp, style.warp_waste),
    )
