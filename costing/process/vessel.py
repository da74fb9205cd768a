"""Beams in a vessel: one bath after the other is filled, run and drained."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process.arithmetic import larger
from costing.process.box import Box, Dose, run_box
from costing.process.box_reactions import (
    DYE_OXIDISED,
    PEROXIDE_DECAY,
    USED_UP,
    react_share,
    react_taken,
    reductants_in,
)
from costing.process.fibre import acid_of, post_dissolved
from costing.process.mixing import WATER, post_power, send_to_drain, shared_out
from costing.process.postings import DRAIN, PROCESS, YARN, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, added
from costing.quantities import InputError
from costing.settings.material import Material
from costing.settings.vessel_steps import Extraction, VesselBath

NO_LIMIT = float("inf")


def box_of_bath(step: VesselBath, materials: Mapping[str, Material]) -> Box:
    """A bath as a box that holds nothing of its own: all of it leaves, on the yarn or to the drain.

    Parameters
    ----------
    step : VesselBath
        Settings.
    materials : mapping
        Code -> product of the mill's list.
    """
    doses = [Dose(materials[code], dose * materials[code].strength) for code, dose in step.products]
    return Box(
        step.name,
        tuple(doses),
        step.box_temperature,
        step.liquor_retained,
        1.0,
        step.liquor_ratio - step.liquor_retained,
        NO_LIMIT,
        0.0,
        0.0,
        0.0,
        step.power,
        step.heat_recovered,
        outlet="drained",
        time=step.bath_time,
    )


def run_bath(
    step: VesselBath, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Fill a bath around the yarn, run it and drain it.

    The liquor that the yarn has kept of the bath before is part of the fill. Dye that has exhausted and is
    not fixed stays loose on the yarn; a share of it comes off in each bath. Leaves out the heat of the vessel
    and its losses, and the fills of tanks beside it.

    Parameters
    ----------
    step : VesselBath
        Settings of the bath.
    yarn : YarnState
        The yarn as it comes.
    materials : mapping
        Code -> product of the mill's list.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The yarn with what it keeps of the liquor, and the lines.

    Raises
    ------
    InputError
        Yarn that brings more liquor than the bath holds.
    """
    if yarn.liquor > step.liquor_ratio:
        raise InputError(
            step.name,
            f"the yarn brings {yarn.liquor:.3g} L/kg of liquor into a bath of {step.liquor_ratio:.3g} L/kg; "
            "accepted is a liquor ratio above what the yarn brings",
        )
    book = Book(step.name)
    acid = acid_of(step.name, step.weight_loss, step.ash_share, step.caustic_neutralised)
    post_dissolved(book, step.weight_loss, step.ash_share, acid)
    off = shared_out(yarn.loose, step.loose_removed)
    loose = shared_out(yarn.loose, 1.0 - step.loose_removed)
    fixed, on_fibre = 0.0, {}
    if step.batch_dye_product:
        dye = materials[step.batch_dye_product]
        offered = (step.dye_offered or 0.0) * dye.strength
        book.feed(dye, "dye offered", offered)
        exhausted = offered * (step.dye_exhaustion or 0.0)
        fixed = exhausted * (step.dye_fixation or 0.0)
        book.move(dye.code, "stays on the yarn", fixed, PROCESS, YARN)
        on_fibre[dye.code] = exhausted - fixed

    box = box_of_bath(step, materials)
    given = [materials[step.batch_dye_product]] if step.batch_dye_product else []
    reductants = reductants_in([*given, *(dose.product for dose in box.doses)])

    def use_up(lines: Book, met: dict[str, float]) -> None:
        # What an earlier bath has left is only thinned here: there is no dye that takes it.
        for substance in reductants:
            react_share(lines, met, USED_UP[substance], 1.0 - step.reductant_left)
        react_taken(lines, met, DYE_OXIDISED, "hydrogen_peroxide", step.peroxide_taken)
        react_share(lines, met, PEROXIDE_DECAY, step.peroxide_broken_down)

    entering = replace(yarn, dissolved=added(yarn.dissolved, off))
    left = run_box(box, entering, around, book, "box temperature", use_up, on_fibre)
    return (
        replace(
            yarn,
            fibre=yarn.fibre - step.weight_loss,
            temperature=larger(step.box_temperature, around.water_temperature),
            liquor=step.liquor_retained,
            dissolved=left.dissolved,
            loose=added(loose, on_fibre),
            fixed=yarn.fixed + fixed,
            air_dry=False,
        ),
        book,
    )


def extract(
    step: Extraction, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Throw or suck liquor off the yarn.

    Parameters
    ----------
    step : Extraction
        Settings.
    yarn : YarnState
        The wet yarn.
    materials : mapping
        Not used; every kind of step takes the same arguments.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The leaving yarn, and the lines.

    Raises
    ------
    InputError
        Yarn that holds no more liquor than it is to leave with.
    """
    if yarn.liquor < step.extracted_to:
        raise InputError(
            step.name,
            f"extracted to is {step.extracted_to:.3g} L/kg, but the yarn arrives with {yarn.liquor:.3g} "
            "L/kg; accepted is less than it arrives with",
        )
    book = Book(step.name)
    kept = step.extracted_to / yarn.liquor
    send_to_drain(book, step.name, "extracted", shared_out(yarn.dissolved, 1.0 - kept))
    book.move(WATER, "extracted", yarn.liquor - step.extracted_to, PROCESS, DRAIN + step.name)
    post_power(book, step.power, around, step.extraction_time)
    return (
        replace(yarn, liquor=step.extracted_to, dissolved=shared_out(yarn.dissolved, kept)),
        book,
    )
