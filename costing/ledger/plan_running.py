"""How a range runs an order: as ropes, as a sheet, as charges of a vessel, or as cloth."""

from __future__ import annotations

from typing import NamedTuple

from costing.construction import sets
from costing.construction.whole_numbers import whole_up
from costing.ledger.plan_cloth import ClothPlan
from costing.quantities import InputError, label
from costing.settings.mill import Enquiry, Range
from costing.settings.style import Style

ROPES, SHEET, VESSEL, CLOTH = "ropes", "sheet", "beams in a vessel", "cloth"

# Form of the warp -> what it is divided into, and where that runs.
PARTS = {ROPES: ("ropes", "rope places"), SHEET: ("section beams", "beam places")}


class Lengths(NamedTuple):
    """Warp and loom-state cloth of an order [m]."""

    warp: float
    loom_state: float


class Running(NamedTuple):
    """What the range runs, whatever its form. House units.

    Attributes
    ----------
    ropes : float
        Ropes or section beams of one set.
    number, length : float
        Sets or charges, and the saleable metres of each [m].
    run_length : float
        What runs, leaders and off-shade metres in [m].
    saleable_mass, dyed_mass : float
        Grey yarn or cloth that is sold, and that is dyed [kg].
    hours : float
        Running [h].
    throughput : float
        While it runs [kg/h].
    charge_mass : float
        One charge of a vessel; 0 where the range runs on [kg].
    """

    ropes: float
    number: float
    length: float
    run_length: float
    saleable_mass: float
    dyed_mass: float
    hours: float
    throughput: float
    charge_mass: float = 0.0


def run_form(
    style: Style,
    fabric: ClothPlan,
    enquiry: Enquiry,
    range_: Range,
    lengths: Lengths,
    bath_hours: float,
) -> Running:
    """Work out what a range of any form runs for an order.

    Parameters
    ----------
    style, fabric, enquiry, range_
        As for `plan_order`.
    lengths : Lengths
        Of the order.
    bath_hours : float
        Hours that the baths of one charge of a vessel take, together [h].

    Raises
    ------
    InputError
        What the form does not take: too many ropes, sets side by side, a length of dyed warp.
    """
    if range_.yarn_form in (ROPES, SHEET):
        return _run_warp(style, fabric, enquiry, range_, lengths.warp)
    if range_.yarn_form == VESSEL:
        return _run_charges(fabric, enquiry, range_, lengths.warp, bath_hours)
    return _run_cloth(fabric, enquiry, range_, lengths.loom_state)


def _run_warp(style: Style, fabric: ClothPlan, enquiry: Enquiry, range_: Range, warp: float) -> Running:
    ropes = sets.ropes_for_ends(fabric.ends, range_.ends_per_rope)
    together = enquiry.sets_side_by_side
    if range_.yarn_form == SHEET:
        _check_one_set(enquiry, range_, "one sheet")
    if ropes * together > range_.rope_places:
        part, place = PARTS[range_.yarn_form]
        raise InputError(
            f"enquiry {enquiry.code}",
            f"style {style.code} has {fabric.ends:.0f} ends, that is {ropes:.0f} {part} of up to "
            f"{range_.ends_per_rope:.0f} ends, and {together:.0f} set(s) side by side need "
            f"{ropes * together:.0f} {place}; range {range_.code} has {range_.rope_places:.0f}",
        )
    number = together * sets.number_of_sets(warp / together, range_.set_length_max)
    lost = (range_.leader_length, range_.off_shade_length)
    run_length = sets.range_run_length(warp / together, number / together, *lost)
    per_metre = _warp_per_metre(fabric, range_)
    return Running(
        ropes,
        number,
        warp / number,
        run_length,
        warp * per_metre,
        together * run_length * per_metre,
        sets.run_time(run_length, range_.speed, range_.efficiency),
        together * sets.throughput(fabric.ends, fabric.linear_density, range_.speed, range_.stretch),
    )


def _run_charges(
    fabric: ClothPlan, enquiry: Enquiry, range_: Range, warp: float, bath_hours: float
) -> Running:
    """Whole charges; one that is not full is taken to run at the same liquor ratio."""
    _check_one_set(enquiry, range_, "one charge after the other")
    for name in ("charge_mass", "charge_time"):
        if getattr(range_, name) is None:
            raise InputError(
                f"range {range_.code}", f"{label(name)} is empty; a range of the form {VESSEL!r} needs it"
            )
    assert range_.charge_mass is not None
    assert range_.charge_time is not None
    if bath_hours + range_.charge_time <= 0.0:
        raise InputError(f"range {range_.code}", "a charge takes 0 h; accepted is a time above that")
    mass = warp * _warp_per_metre(fabric, range_)
    number = whole_up(mass / range_.charge_mass)
    hours = number * (bath_hours + range_.charge_time)
    beams = sets.ropes_for_ends(fabric.ends, range_.ends_per_rope)
    return Running(beams, number, warp / number, warp, mass, mass, hours, mass / hours, mass / number)


def _warp_per_metre(fabric: ClothPlan, range_: Range) -> float:
    """Mass of a metre of the warp as it leaves the range, as the cloth counts it [kg/m]."""
    stretched = sets.linear_density_after_stretch(fabric.linear_density, range_.stretch)
    mass: float = sets.warp_sheet_mass_per_metre(fabric.ends, stretched)
    return mass


def _run_cloth(fabric: ClothPlan, enquiry: Enquiry, range_: Range, loom_state: float) -> Running:
    _check_one_set(enquiry, range_, "one cloth")
    if enquiry.length_basis == "dyed warp":
        raise InputError(
            f"enquiry {enquiry.code}",
            f"length basis is 'dyed warp', but range {range_.code} dyes cloth; accepted is finished cloth or "
            "loom-state cloth",
        )
    per_metre = fabric.warp_on_cloth + fabric.weft_on_cloth
    number = sets.number_of_sets(loom_state, range_.set_length_max)
    lost = (range_.leader_length, range_.off_shade_length)
    run_length = sets.range_run_length(loom_state, number, *lost)
    return Running(
        sets.ropes_for_ends(fabric.ends, range_.ends_per_rope),
        number,
        loom_state / number,
        run_length,
        loom_state * per_metre,
        run_length * per_metre,
        sets.run_time(run_length, range_.speed, range_.efficiency),
        per_metre * range_.speed,
    )


def _check_one_set(enquiry: Enquiry, range_: Range, what: str) -> None:
    if enquiry.sets_side_by_side > 1:
        raise InputError(
            f"enquiry {enquiry.code}",
            f"sets side by side is {enquiry.sets_side_by_side:.0f}, but range {range_.code} runs {what}; "
            "accepted is 1",
        )
