"""Sulfur dye in a box with a sky behind it: bottom, top or the whole shade."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process.box import Box, Dose, flows_of, run_box
from costing.process.box_reactions import USED_UP, react_share
from costing.process.postings import PROCESS, YARN, Book
from costing.process.sulfur_dye import dye_bath_strength, dye_feed_for_depth
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.settings.box_steps import SulfurDyeing
from costing.settings.mill import Material

# Caustic has made sulfide of a part of this reductant before it reduces the dye.
FORMS = {"sodium_hydrosulfide": ("sodium_hydrosulfide", "sodium_sulfide")}


def box_of_sulfur_dye(step: SulfurDyeing, yarn: YarnState, materials: Mapping[str, Material]) -> Box:
    """The box of a sulfur dyeing, with the strengths that the depth asks for.

    Parameters
    ----------
    step : SulfurDyeing
        Settings.
    yarn : YarnState
        The entering yarn: how wet it is sets how much bath it carries out.
    materials : mapping
        Code -> product of the mill's list.
    """
    empty = Box(
        step.name,
        (Dose(materials[step.sulfur_dye_product], 0.0),),
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
    reductant = step.bath_reductant + step.reductant_ratio * fed / flows.leaving
    wetting_agent = materials[step.wetting_agent_product]
    doses = [
        Dose(materials[step.sulfur_dye_product], strength, step.extra_uptake),
        Dose(materials[step.reductant_product], reductant),
        Dose(materials[step.caustic_product], step.bath_caustic),
        Dose(wetting_agent, step.bath_wetting_agent * wetting_agent.strength),
    ]
    if step.other_product:
        other = materials[step.other_product]
        doses.append(Dose(other, (step.other_dose or 0.0) * other.strength))
    return empty._replace(doses=tuple(doses))


def dye_sulfur(
    step: SulfurDyeing, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run yarn through a box of reduced sulfur dye and air it.

    The dye has no formula: it is counted as the mill's list counts it, and what of a reductant it takes is
    a setting. The reductant that is used up or aired ends as thiosulfate, sulfate, sulfite or gluconate; the
    share that is left stays as it is until an oxidising box, the rinse or the drain. Leaves out how much
    the next box strips of dye that has been aired.

    Parameters
    ----------
    step : SulfurDyeing
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
    dye, reductant = materials[step.sulfur_dye_product], materials[step.reductant_product]

    def use_up(lines: Book, met: dict[str, float]) -> None:
        for name in FORMS.get(reductant.substance, (reductant.substance,)):
            react_share(lines, met, USED_UP[name], 1.0 - step.reductant_left)

    left = run_box(box_of_sulfur_dye(step, yarn, materials), yarn, around, book, "bath temperature", use_up)
    applied = left.dissolved.pop(dye.code, 0.0) + left.drawn.get(dye.code, 0.0)
    fixed = applied * step.dye_fixation
    book.move(dye.code, "stays on the yarn", fixed, PROCESS, YARN)
    loose = dict(yarn.loose)
    loose[dye.code] = loose.get(dye.code, 0.0) + applied - fixed
    return (
        replace(
            yarn,
            temperature=max(step.bath_temperature, around.water_temperature),
            liquor=step.pick_up,
            dissolved=left.dissolved,
            loose=loose,
            fixed=yarn.fixed + fixed,
            air_dry=False,
        ),
        book,
    )
