"""One box of chemicals: oxidation, fixing, soaping, softening, causticising, bleach liquor."""

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
from costing.process.mixing import WATER
from costing.process.postings import PROCESS, YARN, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, added
from costing.settings.box_steps import Treatment
from costing.settings.material import Material


def box_of_treatment(step: Treatment, materials: Mapping[str, Material]) -> Box:
    """The box of a treatment with its products.

    Parameters
    ----------
    step : Treatment
        Settings.
    materials : mapping
        Code -> product of the mill's list.
    """
    doses = []
    for code, dose in step.products:
        product = materials[code]
        pure = dose if step.dose_basis == "100 %" else dose * product.strength
        doses.append(Dose(product, pure, 0.0 if product.substance else step.auxiliary_uptake))
    return Box(
        step.name,
        tuple(doses),
        step.box_temperature,
        step.pick_up,
        step.exchange,
        step.box_overflow,
        step.feed_ratio,
        step.tank_volume,
        step.heated_surface,
        step.surface_heat_loss,
        step.power,
        step.heat_recovered,
    )


def treat(
    step: Treatment, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run yarn through one box of chemicals.

    What meets in the box reacts to the end: see `box_reactions`. Leaves out the heat of reaction and of
    dilution, and what the fibre takes of alkali.

    Parameters
    ----------
    step : Treatment
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
    acid = acid_of(step.name, step.weight_loss, step.ash_share, step.caustic_neutralised)
    post_dissolved(book, step.weight_loss, step.ash_share, acid)
    left = run_box(box_of_treatment(step, materials), yarn, around, book, "box temperature")
    for substance, amount in left.drawn.items():
        book.move(substance, "stays on the yarn", amount, PROCESS, YARN)
    # What reacts behind the box leaves its water in the yarn's liquor: peroxide, and the reductant of a
    # chemical pad, which has a dye on the yarn to reduce.
    behind, on_yarn = Book(step.name), dict(left.dissolved)
    for substance in reductants_in(materials[code] for code, _ in step.products):
        react_share(behind, on_yarn, USED_UP[substance], 1.0 - step.reductant_left)
    react_taken(behind, on_yarn, DYE_OXIDISED, "hydrogen_peroxide", step.peroxide_taken)
    react_share(behind, on_yarn, PEROXIDE_DECAY, step.peroxide_broken_down)
    book.postings += behind.postings
    changed = behind.held()
    made = changed.pop(WATER, 0.0)
    return (
        replace(
            yarn,
            fibre=yarn.fibre - step.weight_loss,
            temperature=larger(step.box_temperature, around.water_temperature),
            liquor=step.pick_up + made,
            dissolved=added(left.dissolved, changed),
            fixed=yarn.fixed + sum(left.drawn.values()),
            air_dry=False,
        ),
        book,
    )
