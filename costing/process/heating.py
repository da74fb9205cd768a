"""Steam that holds a box at its temperature, posted to the book."""

from __future__ import annotations

from typing import NamedTuple

from costing.process import steam
from costing.process.arithmetic import not_negative, smaller
from costing.process.postings import AIR, CONDENSATE, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError

STEAM = "steam"
ROUNDING = 1e-9


class Exchange(NamedTuple):
    """Heat that the drain of a box gives to its feed. House units, per kilogram of grey yarn.

    Attributes
    ----------
    recovered : float
        Given to the feed [kJ/kg].
    held : float
        That the drain holds above the fresh water's temperature [kJ/kg].
    approach : float
        Least difference of temperature in an exchanger that does it in counter-current [K].
    """

    recovered: float
    held: float
    approach: float


def check_steam_is_hotter(
    step_name: str, around: Surroundings, temperature: float, asked: str = "temperature of the box"
) -> None:
    """Refuse steam that condenses no hotter than what it is to heat.

    Parameters
    ----------
    step_name : str
        Step that asks for the heat.
    around : Surroundings
        Of the run.
    temperature : float
        Temperature asked [degC].
    asked : str, optional
        What has this temperature, as people read it; the text begins with it.

    Raises
    ------
    InputError
        The steam condenses at the temperature asked, or below it.
    """
    condenses = steam.saturation_temperature(around.steam_pressure)
    if condenses <= temperature:
        raise InputError(
            step_name,
            f"{asked} is {temperature:.5g} degC, but the steam of {around.steam_pressure:.5g} bar absolute "
            f"condenses at {condenses:.5g} degC; accepted is a temperature below that, or a steam pressure "
            f"of more than {steam.saturation_pressure(temperature):.5g} bar absolute",
        )


def post_closed_steam(book: Book, cause: str, used: float, around: Surroundings) -> None:
    """Post steam that leaves as condensate, and its share of the losses of the steam net.

    Parameters
    ----------
    book : Book
        Takes the lines.
    cause : str
        What the steam is for.
    used : float
        Steam condensed [kg/kg].
    around : Surroundings
        Of the run.
    """
    book.move("water", cause, used, STORE, CONDENSATE, STEAM)
    post_steam_losses(book, used, around)


def post_steam_losses(book: Book, used: float, around: Surroundings) -> None:
    """Post what leaks, traps and start-up lose beside the steam used."""
    lost = used * around.steam_losses / (1.0 - around.steam_losses)
    book.move("water", "lost in the steam net", lost, STORE, AIR, STEAM)


def heat_box(
    book: Book,
    around: Surroundings,
    yarn: YarnState,
    temperature: float,
    feed: float,
    heated_surface: float,
    surface_heat_loss: float,
    direct: bool,
    asked: str,
    heat_recovered: float = 0.0,
    drained: float = 0.0,
) -> float:
    """Post the steam that holds a box at its temperature.

    Leaves out the walls of the box. A drain that gives heat back is that of the same box, as warm as the box,
    before any filter or evaporator; that of a vessel has waited in a tank for the next fill.

    Parameters
    ----------
    book : Book
        Takes the lines.
    around : Surroundings
        Of the run.
    yarn : YarnState
        The entering yarn.
    temperature : float
        Temperature of the box [degC].
    feed : float
        Liquor fed, condensate of live steam in it [L/kg].
    heated_surface : float
        Open surface of the box [m2].
    surface_heat_loss : float
        Heat lost by each area of it [kJ/h/m2].
    direct : bool
        True for live steam, False for a closed coil.
    asked : str
        Label of the setting that asks for the temperature, for the error text.
    heat_recovered : float, optional
        Share of the heat of the feed that drain water gives back through an exchanger [fraction].
    drained : float, optional
        What leaves the box by its drain [L/kg].

    Returns
    -------
    float
        Condensate that stays in the box [L/kg].

    Raises
    ------
    InputError
        Heat is needed, and the steam is no hotter than the box; or the drain does not hold the heat that it
        is to give back.

    Notes
    -----
    Heat ``q = V (h2 - h1) + yarn + surface``. Coil: ``m = q / (h_v - h_l)``. Live steam brings its own
    water, so it stands for part of the feed: ``m = q / (h_v - h1)``. With heat given back the feed enters
    with ``h1 + r (h2 - h1)`` in the place of ``h1``.
    """
    cold = around.water_temperature
    if temperature <= cold:
        return 0.0
    warm_enthalpy = steam.water_enthalpy(temperature)
    cold_enthalpy = steam.water_enthalpy(cold)
    gap = warm_enthalpy - cold_enthalpy
    cold_enthalpy = cold_enthalpy + heat_recovered * gap
    gain = not_negative(temperature - yarn.temperature)
    moisture = (yarn.regain_water + yarn.liquor) / yarn.fibre
    on_yarn = yarn.fibre * steam.yarn_heat(moisture, temperature - gain, temperature)
    surface = steam.bath_surface_heat(surface_heat_loss, heated_surface, around.throughput)
    for_water = feed * (warm_enthalpy - cold_enthalpy)
    heat = for_water + on_yarn + surface
    vapour = steam.saturated_steam_enthalpy(around.steam_pressure)
    live = heat / (vapour - cold_enthalpy) if direct and heat > 0.0 else 0.0
    if heat_recovered > 0.0:
        fresh = not_negative(feed - live)
        book.exchange = _exchange(book.step, heat_recovered, fresh, drained, gap, temperature - cold)
    if heat <= 0.0:
        return 0.0
    check_steam_is_hotter(book.step, around, temperature, asked)
    shares = (
        ("heats the feed", for_water / heat),
        ("heats the yarn", on_yarn / heat),
        ("lost at the surface", surface / heat),
    )
    if direct:
        for cause, share in shares:
            book.move("water", cause, live * share, STORE, PROCESS, STEAM)
        post_steam_losses(book, live, around)
        return live
    used = steam.steam_for_heat(heat, around.steam_pressure)
    for cause, share in shares:
        post_closed_steam(book, cause, used * share, around)
    return 0.0


def _exchange(
    step: str, heat_recovered: float, fresh: float, drained: float, gap: float, warmer: float
) -> Exchange:
    """Heat from drain to feed; refused where the drain does not hold it.

    Both are water here, so a share of the heat is a share of the difference of temperature: the feed comes to
    ``r`` of it, the drain goes down by ``r F / D`` of it.
    """
    drained = not_negative(drained)
    asked = heat_recovered * fresh
    if asked > drained * (1.0 + ROUNDING):
        most = 100.0 * drained / fresh
        raise InputError(
            step,
            f"heat recovered is {100.0 * heat_recovered:.3g} %, {asked * gap:.3g} kJ for each kg of yarn, "
            f"but the {drained:.3g} L/kg that drain hold {drained * gap:.3g} kJ above the temperature of the "
            f"fresh water; accepted is at most {most:.3g} %",
        )
    approach = warmer * smaller(1.0 - heat_recovered, 1.0 - asked / drained) if asked > 0.0 else warmer
    return Exchange(asked * gap, drained * gap, approach)
