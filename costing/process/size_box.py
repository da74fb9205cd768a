"""Sizing in line: the size box, dry-in or wet-in, and what is cooked for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

from costing.process.arithmetic import larger
from costing.process.drying import dry_mass
from costing.process.heating import heat_box
from costing.process.mixing import WATER, post_power, post_water
from costing.process.postings import DRAIN, PROCESS, YARN, Book
from costing.process.sizing import size_box_strength_wet_in, size_feed_strength_wet_in
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.material import Material
from costing.settings.sizing_step import Sizing

LOST = "cooked and lost"


class SizeLiquor(NamedTuple):
    """What is cooked for one kilogram of grey yarn.

    Attributes
    ----------
    dry_size : float
        Dry size that the warp takes [kg/kg].
    box_strength, feed_strength : float
        Dry size in each litre of the box, and of what is fed [kg/L].
    feed : float
        Size liquor fed to the box [L/kg].
    """

    dry_size: float
    box_strength: float
    feed_strength: float
    feed: float


def size_liquor(step: Sizing, yarn: YarnState) -> SizeLiquor:
    """Strengths and feed of the size box for the yarn that enters it.

    Parameters
    ----------
    step : Sizing
        Settings.
    yarn : YarnState
        The entering yarn; with liquor on it the box runs wet-in.

    Raises
    ------
    InputError
        A warp that leaves with no more liquor than it brings.
    """
    dry = dry_mass(yarn)
    dry_size = step.size_add_on * dry
    if step.pick_up <= yarn.liquor:
        raise InputError(
            step.name,
            f"the warp leaves the size box with {step.pick_up:.3g} L/kg and brings {yarn.liquor:.3g} L/kg: "
            "no size can be fed; accepted is more liquor out than in: squeeze or dry it before the size box",
        )
    exchange = step.exchange if yarn.liquor > 0.0 else 1.0
    feed = step.pick_up - yarn.liquor
    return SizeLiquor(
        dry_size,
        size_box_strength_wet_in(dry_size, step.pick_up, exchange),
        size_feed_strength_wet_in(dry_size, yarn.liquor, step.pick_up),
        feed,
    )


def post_size(
    book: Book, step: Sizing, materials: Mapping[str, Material], cause: str, dry_size: float
) -> None:
    """Feed dry size by the shares of its products.

    Parameters
    ----------
    book : Book
        Takes the lines.
    step : Sizing
        Settings: products and their shares of the dry size.
    materials : mapping
        Code -> product of the mill's list.
    cause : str
        Why.
    dry_size : float
        All products together, as 100 % [kg].
    """
    for code, share in step.products:
        book.feed(materials[code], cause, dry_size * share)


def size(
    step: Sizing, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run the warp through the size box.

    What the warp brings stays on it: the box neither overflows nor takes anything off. Live steam cooks the
    liquor. Leaves out heat above the temperature of the box, as of a pressure cooker, and what size sheds
    in the loom.

    Parameters
    ----------
    step : Sizing
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
        The sized warp, and the lines.

    Raises
    ------
    InputError
        A warp that leaves with no more liquor than it brings; more water from products and live steam than
        the liquor holds.
    """
    book = Book(step.name)
    liquor = size_liquor(step, yarn)
    cooked = 1.0 / (1.0 - step.size_loss)
    post_size(book, step, materials, "stays on the warp", liquor.dry_size)
    post_size(book, step, materials, LOST, liquor.dry_size * (cooked - 1.0))
    water = liquor.feed * step.size_density - liquor.dry_size
    condensate = heat_box(
        book,
        around,
        yarn,
        step.box_temperature,
        water * cooked,
        step.heated_surface,
        step.surface_heat_loss,
        direct=True,
        asked="box temperature",
    )
    from_main = water * cooked - condensate - book.product_water
    if from_main < 0.0:
        raise InputError(
            step.name,
            f"products and live steam bring {water * cooked - from_main:.3g} L/kg of water, more than the "
            f"{max(0.0, water * cooked):.3g} L/kg of the size liquor; accepted is a higher pick-up, less "
            "add-on, or a drier warp in front of the box",
        )
    post_water(book, "cooks the size", from_main)
    post_power(book, step.power, around)
    drain = DRAIN + f"{step.name} losses"
    for code, share in step.products:
        product = materials[code]
        key = product.substance or code
        book.move(key, LOST, liquor.dry_size * share * (cooked - 1.0), PROCESS, drain)
        book.move(key, "stays on the warp", liquor.dry_size * share, PROCESS, YARN)
    inert = book.held().get("inert", 0.0)
    book.move("inert", LOST, inert * step.size_loss, PROCESS, drain)
    book.move("inert", "stays on the warp", inert * (1.0 - step.size_loss), PROCESS, YARN)
    book.move(WATER, LOST, water * (cooked - 1.0), PROCESS, drain)
    return (
        replace(
            yarn,
            temperature=larger(step.box_temperature, around.water_temperature),
            liquor=yarn.liquor + water,
            fixed=yarn.fixed + liquor.dry_size,
            air_dry=False,
        ),
        book,
    )
