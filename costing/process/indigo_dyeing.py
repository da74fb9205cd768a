"""Indigo in dip boxes with a sky after each dip."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process import liquor
from costing.process.arithmetic import larger, not_negative, smaller, where
from costing.process.bath_balance import (
    CAUSTIC_SURPLUS,
    LAST_SKY,
    REDUCTION,
    SECOND_REDUCTION,
    Feeds,
    steady_feeds,
    unchanged,
)
from costing.process.bath_brought import post_brought
from costing.process.bath_content import BUILD_UP
from costing.process.bath_fill import DyeLiquor
from costing.process.bath_lot import content_over_lot
from costing.process.bath_reactions import (
    AIRING,
    CARBONATION,
    DECAY,
    REVATTING,
    SULFITE_BY_AIR,
    SULFITE_OXIDATION,
    VATTING,
    WITHOUT_OXYGEN,
    oxidation_by_air,
)
from costing.process.chemistry import molar_mass
from costing.process.heating import heat_box
from costing.process.mixing import WATER, holdings, post_power, post_water
from costing.process.other_reduction import post_other_reduction, reduced_otherwise
from costing.process.postings import AIR, BATH, DRAIN, PROCESS, STORE, YARN, Book
from costing.process.reduction import (
    CAUSTIC_PER_CARBON_DIOXIDE,
    CAUSTIC_PER_HYDROSULFITE,
    HYDROSULFITE,
    INDIGO,
    SULFITE,
)
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.material import Material
from costing.settings.steps import IndigoDyeing

OVERFLOW = "bath overflow"
BLANKET = "keeps air off the dye boxes"
ON_PURPOSE = ("leuco_indigo", "sodium_hydrosulfite")  # held at their strength, lot by lot


def dye_indigo(
    step: IndigoDyeing, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run wetted yarn through the dip boxes.

    Dye, hydrosulfite and caustic stand at the recipe's strengths. Salts and what the yarn brings build
    up in the bath over the lot. Leaves out what a lot adds beside: fills, stops and dumps are in the
    ledger's lot effects.

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
    dye_liquor = DyeLiquor.of(step, materials)
    for cause, reduced in feeds.reduced_otherwise.items():
        again = cause == SECOND_REDUCTION
        post_other_reduction(book, step, cause, reduced, dye_liquor.other_reductant, again)
    _post_caustic(book, step, feeds, yarn, materials)
    _post_wetting_agent(book, step, feeds, yarn, materials[step.wetting_agent_product])
    brought = {
        name: amount - unchanged(amount, feeds.kept_liquor, yarn) for name, amount in yarn.dissolved.items()
    }
    post_brought(book, brought, materials[step.hydrosulfite_product], materials[step.caustic_product])
    # More hydrosulfite on the yarn than the bath takes stays on it.
    free = smaller(brought.get("sodium_hydrosulfite", 0.0), feeds.hydrosulfite_total)
    book.feed(materials[step.hydrosulfite_product], "comes with the yarn", -free)
    still_free = yarn.dissolved.get("sodium_hydrosulfite", 0.0) - free
    book.react("carbon dioxide in the skies", step.carbon_dioxide / molar_mass("carbon_dioxide"), CARBONATION)
    post_sulfite_oxidation(book, step)
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
        asked="bath temperature",
    )
    post_power(book, step.power, around)
    post_blanket(book, step, 1.0 / around.throughput)

    dye_behind = step.indigo_on_yarn / (1.0 - step.rinse_loss)
    book.react("airs on the yarn", dye_behind / INDIGO, AIRING)
    book.move("indigo", "stays on the yarn", step.indigo_on_yarn, PROCESS, YARN)
    loose = dict(yarn.loose)
    loose["indigo"] = loose.get("indigo", 0.0) + dye_behind - step.indigo_on_yarn

    stream = DRAIN + f"{step.name} overflow"
    held = holdings(yarn, book)
    held.pop("indigo", None)
    for substance in ON_PURPOSE:
        # What is left over without an overflow is rounding: all of it was aired or destroyed.
        left = held.pop(substance, 0.0)
        if substance == "sodium_hydrosulfite":
            left -= still_free
        book.move(substance, OVERFLOW, where(feeds.overflow > 0, left, 0.0), PROCESS, stream)
    passed = {name: unchanged(yarn.dissolved.get(name, 0.0), feeds.kept_liquor, yarn) for name in held}
    last_sky = _made_in_last_sky(step, feeds)
    mixed = {name: amount - passed[name] - last_sky.get(name, 0.0) for name, amount in held.items()}
    outflow = feeds.bath_on_yarn + feeds.overflow
    content = content_over_lot(mixed, outflow, dye_liquor, around.lot)
    dissolved = {}
    for substance, built_up in content.built_up.items():
        book.move(substance, BUILD_UP, built_up, PROCESS, BATH)
        leaving = mixed.get(substance, 0.0) - built_up
        over = leaving * feeds.overflow / outflow
        book.move(substance, OVERFLOW, over, PROCESS, stream)
        on_yarn = passed.get(substance, 0.0) + last_sky.get(substance, 0.0)
        dissolved[substance] = on_yarn + leaving - over
    if still_free:
        dissolved["sodium_hydrosulfite"] = still_free
    book.content, book.feeds = content, feeds
    book.move(WATER, OVERFLOW, feeds.overflow, PROCESS, stream)
    book.move(WATER, "evaporates in the skies", step.sky_evaporation, PROCESS, AIR)
    return (
        replace(
            yarn,
            temperature=larger(step.bath_temperature, around.water_temperature),
            liquor=step.pick_up_last,
            dissolved=dissolved,
            loose=loose,
            fixed=yarn.fixed + step.indigo_on_yarn,
            air_dry=False,
        ),
        book,
    )


def post_blanket(book: Book, step: IndigoDyeing, hours: float, cause: str = BLANKET) -> None:
    """Post the gas over the boxes as bought; what it spares is in the oxygen that surface and fall take."""
    if step.blanket_product:
        gas = (step.blanket_use or 0.0) * hours
        book.move(step.blanket_product, cause, gas, STORE, AIR, step.blanket_product)


def post_sulfite_oxidation(book: Book, step: IndigoDyeing) -> None:
    """Post the share of the sulfite that the book has made so far that air turns to sulfate."""
    sulfite = not_negative(book.held().get("sodium_sulfite", 0.0))
    book.react(SULFITE_BY_AIR, step.sulfite_oxidised * sulfite / SULFITE, SULFITE_OXIDATION)


def _made_in_last_sky(step: IndigoDyeing, feeds: Feeds) -> dict[str, float]:
    """What the last sky makes (above zero) and takes: it stays on the yarn and never sees the bath again."""
    book = Book("")
    lost = feeds.hydrosulfite[LAST_SKY]
    book.react("", lost / HYDROSULFITE, oxidation_by_air(step.hydrosulfite_per_oxygen))
    gas = step.carbon_dioxide / step.dips
    book.react("", gas / molar_mass("carbon_dioxide"), CARBONATION)
    post_sulfite_oxidation(book, step)
    made = book.held()
    made["sodium_hydroxide"] = made.get("sodium_hydroxide", 0.0) + feeds.caustic_lacking
    return made


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
        takes = CAUSTIC_PER_HYDROSULFITE * amount if cause != LAST_SKY else feeds.caustic_lacking
        book.feed(product, cause, takes)
    other, _ = reduced_otherwise(step, materials[step.indigo_product])
    for cause, reduced in feeds.reduced_otherwise.items():
        book.feed(product, cause, other.caustic_per_indigo * reduced)
    book.feed(product, DECAY, 0.5 * CAUSTIC_PER_HYDROSULFITE * feeds.hydrosulfite_decayed)
    book.feed(
        product,
        "carbon dioxide in the skies",
        CAUSTIC_PER_CARBON_DIOXIDE * step.carbon_dioxide * (1.0 - 1.0 / step.dips),
    )
    on_yarn = liquor.carried_by_liquor(feeds.bath_on_yarn, step.bath_caustic)
    book.feed(product, "carried out with the yarn", on_yarn)
    book.feed(product, OVERFLOW, liquor.carried_by_liquor(feeds.overflow, step.bath_caustic))
    indigo = materials[step.indigo_product]
    with_dye = indigo.alkali * feeds.indigo / indigo.strength
    brought = yarn.dissolved.get("sodium_hydroxide", 0.0)
    book.feed(product, "comes with the dye", -with_dye)
    book.feed(product, "comes with the yarn", -(brought - unchanged(brought, feeds.kept_liquor, yarn)))
    # More alkali than the bath loses: nothing is dosed, and the surplus leaves with the liquor.
    book.feed(product, CAUSTIC_SURPLUS, feeds.caustic_surplus)


def _post_wetting_agent(
    book: Book, step: IndigoDyeing, feeds: Feeds, yarn: YarnState, product: Material
) -> None:
    strength = step.bath_wetting_agent * product.strength
    key = product.substance or product.code
    on_yarn = liquor.carried_by_liquor(feeds.bath_on_yarn, strength)
    over = liquor.carried_by_liquor(feeds.overflow, strength)
    brought = yarn.dissolved.get(key, 0.0)
    mixed = brought - unchanged(brought, feeds.kept_liquor, yarn)
    book.feed(product, "carried out with the yarn", on_yarn)
    book.feed(product, OVERFLOW, over)
    book.feed(product, "comes with the yarn", -smaller(mixed, on_yarn + over))


def _post_feed_water(book: Book, step: IndigoDyeing, feeds: Feeds) -> None:
    """Water of the feeds: their volume less what products and reactions bring."""
    volume = feeds.feed_volume + feeds.make_up
    airing = step.indigo_on_yarn / (1.0 - step.rinse_loss) / INDIGO * molar_mass("water")
    from_main = volume - book.product_water - book.reaction_water - airing
    if from_main < 0:
        raise InputError(
            step.name,
            f"the products bring more water than the {volume:.3g} L/kg of feed holds; accepted is a stock "
            "vat or dosing liquor no stronger than its own products",
        )
    post_water(book, "stock vat, dosing and make-up", from_main)
