"""Scour and rinse: the wet steps without dye."""

from __future__ import annotations

from collections.abc import Mapping

from costing.process import liquor
from costing.process.chemistry import molar_mass
from costing.process.heating import heat_box
from costing.process.liquor import rinse_residue_counter_current, rinse_residue_separate_feeds
from costing.process.mixing import (
    WATER,
    holdings,
    post_power,
    post_water,
    send_to_drain,
    shared_out,
)
from costing.process.postings import DRAIN, GREY, PROCESS, YARN, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.mill import Material
from costing.settings.steps import Rinse, Scour

ACID = "galacturonic_acid"  # stands for the pectic acids of the fibre
EXTRACT = "cotton_extract"  # the rest of the organic matter that the scour dissolves

NEUTRALISATION = {
    ACID: -1.0,
    "sodium_hydroxide": -1.0,
    "sodium_galacturonate": 1.0,
    "water": 1.0,
}


def scour(
    step: Scour, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run grey yarn through the scour box.

    The box is held at its concentrations; whatever the yarn brings is mixed in and counts towards
    them. Leaves out the heat of neutralisation.

    Parameters
    ----------
    step : Scour
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
        More caustic neutralised than the dissolved matter can neutralise.
    """
    book = Book(step.name)
    leaving = step.pick_up + step.scour_overflow
    organic = step.weight_loss * (1.0 - step.ash_share)
    acid = step.caustic_neutralised * molar_mass(ACID) / molar_mass("sodium_hydroxide")
    if acid > organic:
        raise InputError(
            step.name,
            f"caustic neutralised is {1000 * step.caustic_neutralised:g} g/kg, more than the acids of a "
            f"weight loss of {100 * step.weight_loss:g} % can take; accepted is up to "
            f"{1000 * organic * molar_mass('sodium_hydroxide') / molar_mass('galacturonic_acid'):.3g} g/kg",
        )
    # The entry posted all dry matter as cotton; the part that dissolves is posted for what it is.
    book.move("cotton", "dissolved by the scour", step.weight_loss, PROCESS, GREY)
    book.move(ACID, "dissolved by the scour", acid, GREY, PROCESS)
    book.move(EXTRACT, "dissolved by the scour", organic - acid, GREY, PROCESS)
    book.move("cotton_ash", "dissolved by the scour", step.weight_loss - organic, GREY, PROCESS)

    carried_liquor = (("carried out with the yarn", step.pick_up), ("scour overflow", step.scour_overflow))
    caustic = materials[step.caustic_product]
    brought = yarn.dissolved.get("sodium_hydroxide", 0.0)
    for cause, volume in carried_liquor:
        book.feed(caustic, cause, liquor.carried_by_liquor(volume, step.scour_caustic))
    book.feed(caustic, "neutralised by the yarn's acids", step.caustic_neutralised)
    needed = leaving * step.scour_caustic + step.caustic_neutralised
    book.feed(caustic, "brought by the yarn", -min(brought, needed))
    for code, strength in (
        (step.wetting_agent_product, step.scour_wetting_agent),
        (step.sequestrant_product, step.scour_sequestrant),
    ):
        product = materials[code]
        for cause, volume in carried_liquor:
            book.feed(product, cause, liquor.carried_by_liquor(volume, strength * product.strength))
    book.react(
        "neutralised by the yarn's acids",
        step.caustic_neutralised / molar_mass("sodium_hydroxide"),
        NEUTRALISATION,
    )

    feed = leaving - yarn.liquor
    condensate = heat_box(
        book,
        around,
        yarn,
        step.scour_temperature,
        feed,
        step.heated_surface,
        step.surface_heat_loss,
        around.direct_steam,
    )
    main_water = feed - condensate - book.product_water - book.reaction_water()
    if main_water < 0:
        raise InputError(
            step.name,
            f"live steam and products bring {feed - main_water:.3g} L/kg of water, more than the "
            f"{feed:.3g} L/kg that the box takes; accepted are coils, more overflow, less open surface",
        )
    post_water(book, "makes up the scour liquor", main_water)
    post_power(book, step.power, around)

    held = holdings(yarn, book)
    held.pop("cotton", None)
    wetting_agent = materials[step.wetting_agent_product]
    key = wetting_agent.substance or wetting_agent.code
    kept = held.get(key, 0.0) * step.wetting_agent_kept * step.pick_up / leaving
    book.move(key, "stays on the yarn", kept, PROCESS, YARN)
    held[key] = held.get(key, 0.0) - kept
    over = step.scour_overflow / leaving
    stream = f"{step.name} overflow"
    send_to_drain(book, stream, "scour overflow", shared_out(held, over))
    book.move(WATER, "scour overflow", step.scour_overflow, PROCESS, DRAIN + stream)
    return (
        YarnState(
            fibre=yarn.fibre - step.weight_loss,
            regain_water=yarn.regain_water,
            temperature=step.scour_temperature,
            liquor=step.pick_up,
            dissolved=shared_out(held, 1.0 - over),
            loose=dict(yarn.loose),
            dried_on=dict(yarn.dried_on),
            fixed=yarn.fixed + kept,
            air_dry=False,
        ),
        book,
    )


def rinse(
    step: Rinse, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run wet yarn through a row of rinse boxes.

    Loose dye leaves in full here: the recipe's rinse loss says how much there is. Dissolved matter
    leaves by the exchange of liquors.

    Parameters
    ----------
    step : Rinse
        Settings of the boxes.
    yarn : YarnState
        The entering yarn.
    materials : mapping
        Not used; every kind of step takes the same arguments.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The leaving yarn, and the lines.
    """
    book = Book(step.name)
    water = step.rinse_water
    if water is None:
        assert step.rinse_water_flow is not None
        water = step.rinse_water_flow / around.throughput
    residue_of = (
        rinse_residue_counter_current
        if step.rinse_feed == "counter-current"
        else rinse_residue_separate_feeds
    )
    residue = residue_of(water, step.pick_up, step.boxes, step.exchange)
    make_up = max(0.0, step.pick_up - yarn.liquor - water)
    condensate = heat_box(
        book,
        around,
        yarn,
        step.rinse_temperature,
        water + make_up,
        step.heated_surface,
        step.surface_heat_loss,
        around.direct_steam,
    )
    main_water = max(0.0, water - condensate)  # live steam alone may bring more than the valve gives
    post_water(book, "rinse water", main_water)
    post_water(book, "holds the level", make_up)
    drained = yarn.liquor + main_water + condensate + make_up - step.pick_up
    post_power(book, step.power, around)
    stream = step.name
    send_to_drain(book, stream, "rinsed off", shared_out(yarn.dissolved, 1.0 - residue))
    send_to_drain(book, stream, "loose dye rinsed off", yarn.loose)
    book.move(WATER, "rinse water", drained, PROCESS, DRAIN + stream)
    return (
        YarnState(
            fibre=yarn.fibre,
            regain_water=yarn.regain_water,
            temperature=max(step.rinse_temperature, around.water_temperature),
            liquor=step.pick_up,
            dissolved=shared_out(yarn.dissolved, residue),
            dried_on=dict(yarn.dried_on),
            fixed=yarn.fixed,
            air_dry=False,
        ),
        book,
    )
