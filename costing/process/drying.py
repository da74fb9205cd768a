"""Drying cans."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process import steam
from costing.process.box_reactions import PEROXIDE_DECAY, react_share
from costing.process.heating import check_steam_is_hotter, post_closed_steam
from costing.process.mixing import WATER, post_power
from costing.process.postings import AIR, PROCESS, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, added
from costing.quantities import InputError, label
from costing.settings.material import Material
from costing.settings.steps import Drying


def dry(
    step: Drying, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Dry wet yarn on steam cans.

    Everything dissolved in the liquor stays on the yarn, but peroxide, which breaks down on hot cans.

    Parameters
    ----------
    step : Drying
        Settings of the cans.
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

    Raises
    ------
    InputError
        The yarn comes drier than it is to leave, or the steam is no hotter than the yarn that leaves.
    """
    book = Book(step.name)
    yarn = _without_peroxide(book, yarn)
    solid = dry_mass(yarn)
    arriving = (yarn.regain_water + yarn.liquor) / solid
    if arriving < step.moisture_out:
        raise InputError(
            step.name,
            f"moisture out is {100 * step.moisture_out:.3g} %, but the yarn arrives with "
            f"{100 * arriving:.3g} %; accepted is less than it arrives with",
        )
    check_steam_is_hotter(step.name, around, step.yarn_temperature_out, label("yarn_temperature_out"))
    evaporated = (arriving - step.moisture_out) * solid
    heat = solid * steam.drying_heat(
        moisture_in=arriving,
        moisture_out=step.moisture_out,
        temperature_in=yarn.temperature,
        yarn_temperature_out=step.yarn_temperature_out,
        heat_capacity_fibre=step.heat_capacity_fibre,
        heat_capacity_water=step.heat_capacity_water,
    )
    used = steam.drying_steam(heat, around.steam_pressure, step.dryer_efficiency)
    book.move(WATER, "evaporates on the cans", evaporated, PROCESS, AIR)
    post_closed_steam(book, "dries the yarn", used, around)
    post_power(book, step.power, around)
    return (
        replace(
            yarn,
            regain_water=step.moisture_out * solid,
            temperature=step.yarn_temperature_out,
            liquor=0.0,
            dissolved={},
            dried_on=added(yarn.dried_on, yarn.dissolved),
            air_dry=True,
        ),
        book,
    )


def _without_peroxide(book: Book, yarn: YarnState) -> YarnState:
    """The yarn with what its peroxide turns into: water, and oxygen for the air."""
    if yarn.dissolved.get("hydrogen_peroxide", 0.0) <= 0.0:
        return yarn
    left = dict(yarn.dissolved)
    react_share(book, left, PEROXIDE_DECAY, 1.0)
    left.pop("oxygen", None)
    made = left.pop(WATER, 0.0)
    return replace(yarn, dissolved=left, liquor=yarn.liquor + made)


def dry_mass(yarn: YarnState) -> float:
    """Cotton, dye and everything dissolved in the liquor, without water [kg/kg]."""
    solids = (yarn.dissolved, yarn.loose, yarn.dried_on)
    return yarn.fibre + yarn.fixed + sum(sum(amounts.values()) for amounts in solids)
