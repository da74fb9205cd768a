"""Indigo in dip boxes with a sky after each dip."""

from __future__ import annotations

from collections.abc import Mapping

from costing.process import liquor
from costing.process.bath_balance import (
    CAUSTIC_SURPLUS,
    REDUCTION,
    SECOND_REDUCTION,
    Feeds,
    behind_last_box,
    steady_feeds,
    unchanged,
)
from costing.process.bath_salt import share_ending_half_as_sulfate
from costing.process.chemistry import molar_mass
from costing.process.heating import heat_box
from costing.process.mixing import WATER, holdings, post_power, post_water
from costing.process.postings import AIR, DRAIN, PROCESS, YARN, Book
from costing.process.reduction import (
    CAUSTIC_PER_CARBON_DIOXIDE,
    CAUSTIC_PER_HYDROSULFITE,
    HYDROSULFITE,
    INDIGO,
)
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.mill import Material
from costing.settings.steps import IndigoDyeing

VATTING = {
    "indigo": -1.0,
    "sodium_hydrosulfite": -1.0,
    "sodium_hydroxide": -2.0,
    "leuco_indigo": 1.0,
    "sodium_sulfite": 2.0,
}
# Air oxidises dye on the yarn, hydrosulfite reduces it again: the dye itself stays as it was.
REVATTING = {
    "sodium_hydrosulfite": -1.0,
    "oxygen": -0.5,
    "sodium_hydroxide": -2.0,
    "sodium_sulfite": 2.0,
    "water": 1.0,
}
WITHOUT_OXYGEN = {
    "sodium_hydrosulfite": -1.0,
    "sodium_hydroxide": -1.0,
    "sodium_thiosulfate": 0.5,
    "sodium_sulfite": 1.0,
    "water": 0.5,
}
AIRING = {"leuco_indigo": -1.0, "oxygen": -0.5, "indigo": 1.0, "water": 1.0}
CARBONATION = {"sodium_hydroxide": -2.0, "carbon_dioxide": -1.0, "sodium_carbonate": 1.0, "water": 1.0}

DECAY = "decomposes without oxygen"
OVERFLOW = "bath overflow"


def oxidation_by_air(hydrosulfite_per_oxygen: float) -> Mapping[str, float]:
    """Stoichiometry of one mol of hydrosulfite destroyed by air.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].

    Returns
    -------
    mapping
        Substance -> mol made (above zero) or taken (below zero).
    """
    sulfate = share_ending_half_as_sulfate(hydrosulfite_per_oxygen)
    return {
        "sodium_hydrosulfite": -1.0,
        "oxygen": -1.0 / hydrosulfite_per_oxygen,
        "sodium_hydroxide": -2.0,
        "sodium_sulfite": 2.0 - sulfate,
        "sodium_sulfate": sulfate,
        "water": 1.0,
    }


def dye_indigo(
    step: IndigoDyeing, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run wetted yarn through the dip boxes at steady state.

    Leaves out what a lot adds: fills, stops and dumps are in the ledger's lot effects.

    Parameters
    ----------
    step : IndigoDyeing
        Settings of the boxes.
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
        Feeds without a steady state, or a stock vat that its own products would flood.
    """
    book = Book(step.name)
    feeds = steady_feeds(step, yarn, materials[step.indigo_product], around.throughput)
    _post_dye(book, step, feeds, materials[step.indigo_product])
    _post_hydrosulfite(book, step, feeds, materials[step.hydrosulfite_product])
    _post_caustic(book, step, feeds, yarn, materials)
    _post_wetting_agent(book, step, feeds, yarn, materials[step.wetting_agent_product])
    book.react("carbon dioxide in the skies", step.carbon_dioxide / molar_mass("carbon_dioxide"), CARBONATION)
    _post_feed_water(book, step, feeds)
    heat_box(
        book,
        around,
        yarn,
        step.bath_temperature,
        feeds.feed_volume + feeds.make_up,
        0.0,
        0.0,
        direct=False,
    )
    post_power(book, step.power, around)

    dye_behind = step.indigo_on_yarn / (1.0 - step.rinse_loss)
    book.react("airs on the yarn", dye_behind / INDIGO, AIRING)
    book.move("indigo", "stays on the yarn", step.indigo_on_yarn, PROCESS, YARN)
    loose = dict(yarn.loose)
    loose["indigo"] = loose.get("indigo", 0.0) + dye_behind - step.indigo_on_yarn

    held = holdings(yarn, book)
    stream = DRAIN + f"{step.name} overflow"
    dissolved = {}
    for substance, amount in held.items():
        if substance == "indigo":
            continue
        if substance in ("leuco_indigo", "sodium_hydrosulfite"):
            # What is left over without an overflow is rounding: all of it was aired or destroyed.
            on_yarn, over = 0.0, amount if feeds.overflow > 0 else 0.0
        else:
            on_yarn, over = behind_last_box(amount, yarn.dissolved.get(substance, 0.0), feeds, step, yarn)
        book.move(substance, OVERFLOW, over, PROCESS, stream)
        if on_yarn != 0.0:
            dissolved[substance] = on_yarn
    book.move(WATER, OVERFLOW, feeds.overflow, PROCESS, stream)
    book.move(WATER, "evaporates in the skies", step.sky_evaporation, PROCESS, AIR)
    return (
        YarnState(
            fibre=yarn.fibre,
            regain_water=yarn.regain_water,
            temperature=max(step.bath_temperature, around.water_temperature),
            liquor=step.pick_up_last,
            dissolved=dissolved,
            loose=loose,
            dried_on=dict(yarn.dried_on),
            fixed=yarn.fixed + step.indigo_on_yarn,
            air_dry=False,
        ),
        book,
    )


def _post_dye(book: Book, step: IndigoDyeing, feeds: Feeds, indigo: Material) -> None:
    applied = step.indigo_on_yarn / (1.0 - step.rinse_loss)
    book.feed(indigo, "stays on the yarn", step.indigo_on_yarn)
    book.feed(indigo, "lost in rinsing", applied - step.indigo_on_yarn)
    book.feed(indigo, OVERFLOW, feeds.indigo - applied)


def _post_hydrosulfite(book: Book, step: IndigoDyeing, feeds: Feeds, product: Material) -> None:
    by_air = oxidation_by_air(step.hydrosulfite_per_oxygen)
    for cause, amount in feeds.hydrosulfite.items():
        reaction = {REDUCTION: VATTING, SECOND_REDUCTION: REVATTING}.get(cause, by_air)
        book.feed(product, cause, amount)
        book.react(cause, amount / HYDROSULFITE, reaction)
    book.feed(product, DECAY, feeds.hydrosulfite_decayed)
    book.react(DECAY, feeds.hydrosulfite_decayed / HYDROSULFITE, WITHOUT_OXYGEN)
    book.feed(product, OVERFLOW, feeds.hydrosulfite_overflow)


def _post_caustic(
    book: Book, step: IndigoDyeing, feeds: Feeds, yarn: YarnState, materials: Mapping[str, Material]
) -> None:
    """Caustic by the cause that takes it, less what the yarn and the dye itself bring."""
    product = materials[step.caustic_product]
    for cause, amount in feeds.hydrosulfite.items():
        book.feed(product, cause, CAUSTIC_PER_HYDROSULFITE * amount)
    book.feed(product, DECAY, 0.5 * CAUSTIC_PER_HYDROSULFITE * feeds.hydrosulfite_decayed)
    book.feed(
        product,
        "carbon dioxide in the skies",
        CAUSTIC_PER_CARBON_DIOXIDE * step.carbon_dioxide,
    )
    on_yarn = liquor.carried_by_liquor(step.pick_up_last * (1.0 - feeds.kept_in), step.bath_caustic)
    book.feed(product, "carried out with the yarn", on_yarn)
    book.feed(product, OVERFLOW, liquor.carried_by_liquor(feeds.overflow, step.bath_caustic))
    indigo = materials[step.indigo_product]
    with_dye = indigo.alkali * feeds.indigo / indigo.strength
    brought = yarn.dissolved.get("sodium_hydroxide", 0.0)
    book.feed(product, "comes with the dye", -with_dye)
    book.feed(product, "comes with the yarn", -(brought - unchanged(brought, feeds.kept_in, step, yarn)))
    # More alkali than the bath loses: nothing is dosed, and the surplus leaves with the liquor.
    book.feed(product, CAUSTIC_SURPLUS, feeds.caustic_surplus)


def _post_wetting_agent(
    book: Book, step: IndigoDyeing, feeds: Feeds, yarn: YarnState, product: Material
) -> None:
    strength = step.bath_wetting_agent * product.strength
    key = product.substance or product.code
    on_yarn = liquor.carried_by_liquor(step.pick_up_last * (1.0 - feeds.kept_in), strength)
    over = liquor.carried_by_liquor(feeds.overflow, strength)
    brought = yarn.dissolved.get(key, 0.0)
    mixed = brought - unchanged(brought, feeds.kept_in, step, yarn)
    book.feed(product, "carried out with the yarn", on_yarn)
    book.feed(product, OVERFLOW, over)
    book.feed(product, "comes with the yarn", -min(mixed, on_yarn + over))


def _post_feed_water(book: Book, step: IndigoDyeing, feeds: Feeds) -> None:
    """Water of the feeds: their volume less what products and reactions bring."""
    volume = feeds.feed_volume + feeds.make_up
    airing = step.indigo_on_yarn / (1.0 - step.rinse_loss) / INDIGO * molar_mass("water")
    from_main = volume - book.product_water - book.reaction_water() - airing
    if from_main < 0:
        raise InputError(
            step.name,
            f"the products bring more water than the {volume:.3g} L/kg of feed holds; accepted is a stock "
            "vat or dosing liquor no stronger than its own products",
        )
    post_water(book, "stock vat, dosing and make-up", from_main)
