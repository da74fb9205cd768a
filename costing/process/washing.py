"""Scour and rinse: the wet steps without dye."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

from costing.process import liquor
from costing.process.arithmetic import larger, not_negative, smaller
from costing.process.bath_content import BUILD_UP, bath_content
from costing.process.box_reactions import react_all
from costing.process.chemistry import molar_mass
from costing.process.fibre import NEUTRALISATION, NEUTRALISED, acid_of, post_dissolved
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
from costing.process.postings import BATH, DRAIN, PROCESS, YARN, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.material import Material
from costing.settings.rinse_step import Rinse
from costing.settings.steps import Scour

RINSE_WATER = "rinse water"
RINSED_OFF = "rinsed off"
HOLDS_LEVEL = "holds the level"  # cause of the water that is added where a rinse gets too little


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
    brought = not_negative(yarn.dissolved.get("sodium_hydroxide", 0.0))
    # Without caustic in the box only what the yarn brings can neutralise its acids.
    neutralised = (
        smaller(step.caustic_neutralised, brought) if step.scour_caustic == 0.0 else step.caustic_neutralised
    )
    acid = acid_of(step.name, step.weight_loss, step.ash_share, step.caustic_neutralised)
    if step.caustic_neutralised > 0.0:
        acid *= neutralised / step.caustic_neutralised
    post_dissolved(book, step.weight_loss, step.ash_share, acid)
    carried_liquor = (("carried out with the yarn", step.pick_up), ("scour overflow", step.scour_overflow))
    caustic = materials[step.caustic_product]
    for cause, volume in carried_liquor:
        book.feed(caustic, cause, liquor.carried_by_liquor(volume, step.scour_caustic))
    book.feed(caustic, NEUTRALISED, neutralised)
    book.feed(caustic, "brought by the yarn", -smaller(brought, leaving * step.scour_caustic + neutralised))
    wanted: dict[str, float] = {}
    for product, strength in _agents(step, materials):
        for cause, volume in carried_liquor:
            book.feed(product, cause, liquor.carried_by_liquor(volume, strength))
        wanted[product.code] = wanted.get(product.code, 0.0) + leaving * strength
    for code, amount in wanted.items():
        product = materials[code]
        there = yarn.dissolved.get(product.substance or code, 0.0)
        book.feed(product, "brought by the yarn", -smaller(there, amount))
    book.react(NEUTRALISED, neutralised / molar_mass("sodium_hydroxide"), NEUTRALISATION)
    react_all(book, holdings(yarn, book))

    feed = leaving - yarn.liquor
    condensate = heat_box(
        book,
        around,
        yarn,
        step.scour_temperature,
        not_negative(feed),
        step.heated_surface,
        step.surface_heat_loss,
        around.direct_steam,
        "scour temperature",
        step.heat_recovered,
        step.scour_overflow,
    )
    _post_feed_water(book, step, yarn, feed, condensate)
    post_power(book, step.power, around)

    held = holdings(yarn, book)
    fill = content_of_scour(step, materials)
    content = bath_content(held, fill, leaving, step.tank_volume, around.lot.mass, 0.0)
    for substance, amount in content.built_up.items():
        book.move(substance, BUILD_UP, amount, PROCESS, BATH)
        held[substance] -= amount
    book.content = content
    over = step.scour_overflow / leaving
    stream = f"{step.name} overflow"
    send_to_drain(book, stream, "scour overflow", shared_out(held, over))
    book.move(WATER, "scour overflow", step.scour_overflow, PROCESS, DRAIN + stream)
    dissolved = shared_out(held, 1.0 - over)
    wetting_agent = materials[step.wetting_agent_product]
    key = wetting_agent.substance or wetting_agent.code
    kept = dissolved.get(key, 0.0) * step.wetting_agent_kept
    if kept:
        book.move(key, "stays on the yarn", kept, PROCESS, YARN)
        dissolved[key] -= kept
    return (
        replace(
            yarn,
            fibre=yarn.fibre - step.weight_loss,
            temperature=step.scour_temperature,
            liquor=step.pick_up,
            dissolved=dissolved,
            fixed=yarn.fixed + kept,
            air_dry=False,
        ),
        book,
    )


def _agents(step: Scour, materials: Mapping[str, Material]) -> list[tuple[Material, float]]:
    """Wetting agent and sequestrant, each with its active strength in the box [kg/L]."""
    wetting_agent = materials[step.wetting_agent_product]
    sequestrant = materials[step.sequestrant_product]
    return [
        (wetting_agent, step.scour_wetting_agent * wetting_agent.strength),
        (sequestrant, step.scour_sequestrant * sequestrant.strength),
    ]


def _post_feed_water(book: Book, step: Scour, yarn: YarnState, feed: float, condensate: float) -> None:
    """Water that makes up the scour liquor, less what yarn, steam, products and reactions bring."""
    from_main = feed - condensate - book.product_water - book.reaction_water
    if from_main < 0 and feed <= book.product_water + book.reaction_water:
        raise InputError(
            step.name,
            f"the yarn brings {yarn.liquor:.3g} L/kg of liquor and the box lets {feed + yarn.liquor:.3g} "
            "L/kg go: there is no room for what its products bring; accepted is more overflow, or a harder "
            "squeeze before the box",
        )
    if from_main < 0:
        raise InputError(
            step.name,
            f"live steam and products bring {feed - from_main:.3g} L/kg of water, more than the "
            f"{feed:.3g} L/kg that the box takes; accepted are coils, more overflow, less open surface",
        )
    post_water(book, "makes up the scour liquor", from_main)


def post_scour_liquor(
    book: Book, step: Scour, materials: Mapping[str, Material], cause: str, volume: float
) -> None:
    """Fill the box with fresh liquor."""
    water_before = book.product_water
    book.feed(materials[step.caustic_product], cause, volume * step.scour_caustic)
    for product, strength in _agents(step, materials):
        book.feed(product, cause, volume * strength)
    post_water(book, cause, volume - (book.product_water - water_before))


def content_of_scour(step: Scour, materials: Mapping[str, Material]) -> dict[str, float]:
    """What a litre of fresh scour liquor holds beside water [kg/L]."""
    book = Book("")
    post_scour_liquor(book, step, materials, "", 1.0)
    held = book.held()
    held.pop(WATER, None)
    return held


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
    flows = rinse_boxes(step, yarn, around, book)
    post_water(book, RINSE_WATER, flows.main_water)
    send_to_drain(book, step.name, RINSED_OFF, shared_out(yarn.dissolved, 1.0 - flows.residue))
    send_to_drain(book, step.name, "loose dye rinsed off", yarn.loose)
    book.move(WATER, RINSE_WATER, flows.drained, PROCESS, DRAIN + step.name)
    return behind_rinse(step, yarn, around, flows.residue), book


class RinseFlows(NamedTuple):
    """What runs through a row of rinse boxes.

    Attributes
    ----------
    residue : float
        Share of what was dissolved on the yarn that stays on it [fraction].
    main_water : float
        Rinse water from the main; live steam stands for the rest [L/kg].
    drained : float
        What leaves by the drain [L/kg].
    """

    residue: float
    main_water: float
    drained: float


def rinse_boxes(step: Rinse, yarn: YarnState, around: Surroundings, book: Book) -> RinseFlows:
    """Heat and drive the boxes and hold their level; rinse water and drain are for the caller to post.

    Parameters
    ----------
    step : Rinse
        Settings of the boxes.
    yarn : YarnState
        The entering yarn.
    around : Surroundings
        Of the run.
    book : Book
        Takes the lines.
    """
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
    make_up = not_negative(step.pick_up - yarn.liquor - water)
    condensate = heat_box(
        book,
        around,
        yarn,
        step.rinse_temperature,
        water + make_up,
        step.heated_surface,
        step.surface_heat_loss,
        around.direct_steam,
        "rinse temperature",
        step.heat_recovered,
        yarn.liquor + water + make_up - step.pick_up,
    )
    main_water = not_negative(water - condensate)  # live steam alone may bring more than the valve gives
    post_water(book, HOLDS_LEVEL, make_up)
    post_power(book, step.power, around)
    drained = yarn.liquor + main_water + condensate + make_up - step.pick_up
    return RinseFlows(residue, main_water, drained)


def behind_rinse(step: Rinse, yarn: YarnState, around: Surroundings, residue: float) -> YarnState:
    """The yarn as it leaves the last rinse box."""
    return replace(
        yarn,
        temperature=larger(step.rinse_temperature, around.water_temperature),
        liquor=step.pick_up,
        dissolved=shared_out(yarn.dissolved, residue),
        loose={},
        air_dry=False,
    )
