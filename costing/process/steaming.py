"""A steamer: live steam heats the goods and condenses on them, the rest is blown off."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from costing.process import steam
from costing.process.arithmetic import larger, not_negative
from costing.process.heating import STEAM, check_steam_is_hotter, post_steam_losses
from costing.process.mixing import post_power
from costing.process.postings import AIR, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.settings.material import Material
from costing.settings.steamer_step import Steaming


def steam_goods(
    step: Steaming, yarn: YarnState, materials: Mapping[str, Material], around: Surroundings
) -> tuple[YarnState, Book]:
    """Run yarn or cloth through a steamer.

    Leaves out what reacts in it: the steps in front of it say what is fixed and what breaks down.

    Parameters
    ----------
    step : Steaming
        Settings of the steamer.
    yarn : YarnState
        The entering goods.
    materials : mapping
        Not used; every kind of step takes the same arguments.
    around : Surroundings
        Of the run.

    Returns
    -------
    YarnState, Book
        The leaving goods, wetter by what has condensed, and the lines.

    Raises
    ------
    InputError
        Steam no hotter than the steamer.
    """
    book = Book(step.name)
    check_steam_is_hotter(step.name, around, step.steaming_temperature, "steaming temperature")
    gain = not_negative(step.steaming_temperature - yarn.temperature)
    moisture = (yarn.regain_water + yarn.liquor) / yarn.fibre
    heat = yarn.fibre * steam.yarn_heat(moisture, step.steaming_temperature - gain, step.steaming_temperature)
    vapour = steam.saturated_steam_enthalpy(around.steam_pressure)
    condensed = heat / (vapour - steam.water_enthalpy(step.steaming_temperature))
    vented = step.vented_steam / around.throughput
    book.move("water", "heats the goods", condensed, STORE, PROCESS, STEAM)
    book.move("water", "blown off", vented, STORE, AIR, STEAM)
    post_steam_losses(book, condensed + vented, around)
    post_power(book, step.power, around)
    return (
        replace(
            yarn,
            temperature=larger(yarn.temperature, step.steaming_temperature),
            liquor=yarn.liquor + condensed,
            air_dry=False,
        ),
        book,
    )
