"""Dye of any class but indigo in a box or a pad: bottom, top or the whole shade."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process.arithmetic import larger
from costing.process.box import Box, Dose, flows_of, run_box
from costing.process.box_reactions import USED_UP, react_share, reductants_in
from costing.process.postings import PROCESS, YARN, Book
from costing.process.sulfur_dye import dye_bath_strength, dye_feed_for_depth
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.settings.dye_box_step import DyeBox
from costing.settings.material import Material


def box_of_dye(step: DyeBox, yarn: YarnState, materials: Mapping[str, Material]) -> Box:
    """The box of a dye, with the strengths that the depth asks for.

    Parameters
    ----------
    step : DyeBox
        Settings.
    yarn : YarnState
        The entering yarn: how wet it is sets how much bath it carries out.
    materials : mapping
        Code -> product of the mill's list.
    """
    empty = Box(
        step.name,
        (Dose(materials[step.dye_product], 0.0),),
        step.bath_temperature,
        step.pick_up,
        step.exchange,
        step.box_overflow,
        step.feed_ratio,
        step.tank_volume,
        step.heated_surface,
        step.surface_heat_loss,
        step.power,
        step.heat_recovered,
        step.bath_kept,
    )
    flows = flows_of(empty, yarn)
    applied = dye_feed_for_depth(step.dye_on_yarn, step.dye_fixation)
    strength = dye_bath_strength(applied, flows.bath_on_yarn, step.extra_uptake)
    fed = applied + flows.overflow * strength
    doses = [Dose(materials[step.dye_product], strength, step.extra_uptake)]
    if step.reductant_product:
        reductant = (step.bath_reductant or 0.0) + (step.reductant_ratio or 0.0) * fed / flows.leaving
        doses.append(Dose(materials[step.reductant_product], reductant))
    if step.caustic_product:
        doses.append(Dose(materials[step.caustic_product], step.bath_caustic or 0.0))
    as_delivered = [(step.wetting_agent_product, step.bath_wetting_agent or 0.0), *step.products]
    doses += [Dose(materials[code], dose * materials[code].strength) for code, dose in as_delivered if code]
    return empty._replace(doses=tuple(doses))


def dye_in_box(
    step: DyeBox, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run yarn through a box of dye, and air it where a reductant has reduced the dye.

    The dye has no formula: it is counted as the mill's list counts it, and what of a reductant it takes is
    a setting. The reductant that is used up or aired ends as thiosulfate, sulfate, sulfite or gluconate; the
    share that is left stays as it is until an oxidising box, the rinse or the drain. Leaves out how much
    the next box strips of the dye, and what alkali a reactive dye takes when it bonds.

    Parameters
    ----------
    step : DyeBox
        Settings of the box.
    yarn : YarnState
        The entering yarn.
    materials : mapping
        Code -> product of the mill's list.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The leaving yarn, and the lines.

    Raises
    ------
    InputError
        Products that bring more water than the box takes.
    """
    book = Book(step.name)
    dye, box = materials[step.dye_product], box_of_dye(step, yarn, materials)
    reductants = reductants_in(dose.product for dose in box.doses)

    def use_up(lines: Book, met: dict[str, float]) -> None:
        for substance in reductants:
            react_share(lines, met, USED_UP[substance], 1.0 - step.reductant_left)

    left = run_box(box, yarn, around, book, "bath temperature", use_up)
    applied = left.dissolved.pop(dye.code, 0.0) + left.drawn.get(dye.code, 0.0)
    fixed = applied * step.dye_fixation
    book.move(dye.code, "stays on the yarn", fixed, PROCESS, YARN)
    loose = dict(yarn.loose)
    loose[dye.code] = loose.get(dye.code, 0.0) + applied - fixed
    return (
        replace(
            yarn,
            temperature=larger(step.bath_temperature, around.water_temperature),
            liquor=step.pick_up,
            dissolved=left.dissolved,
            loose=loose,
            fixed=yarn.fixed + fixed,
            air_dry=False,
        ),
        book,
    )
