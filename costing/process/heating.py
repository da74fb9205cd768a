"""Steam that holds a box at its temperature, posted to the book."""

from __future__ import annotations

from costing.process import steam
from costing.process.postings import AIR, CONDENSATE, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState
from costing.quantities import InputError

STEAM = "steam"


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
    condenses = float(steam.saturation_temperature(around.steam_pressure))
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
) -> float:
    """Post the steam that holds a box at its temperature.

    Leaves out the walls of the box. Whether the drain holds the heat that it is to give back is not asked.

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

    Returns
    -------
    float
        Condensate that stays in the box [L/kg].

    Raises
    ------
    InputError
        Heat is needed, and the steam is no hotter than the box.

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
    cold_enthalpy += heat_recovered * (warm_enthalpy - cold_enthalpy)
    gain = max(0.0, temperature - yarn.temperature)
    moisture = (yarn.regain_water + yarn.liquor) / yarn.fibre
    on_yarn = yarn.fibre * steam.yarn_heat(moisture, temperature - gain, temperature)
    surface = steam.bath_surface_heat(surface_heat_loss, heated_surface, around.throughput)
    for_water = feed * (warm_enthalpy - cold_enthalpy)
    heat = for_water + on_yarn + surface
    if heat <= 0.0:
        return 0.0
    check_steam_is_hotter(book.step, around, temperature, asked)
    shares = (
        ("heats the feed", for_water / heat),
        ("heats the yarn", on_yarn / heat),
        ("lost at the surface", surface / heat),
    )
    vapour = steam.saturated_steam_enthalpy(around.steam_pressure)
    if direct:
        used = float(heat / (vapour - cold_enthalpy))
        for cause, share in shares:
            book.move("water", cause, used * share, STORE, PROCESS, STEAM)
        post_steam_losses(book, used, around)
        return used
    used = float(steam.steam_for_heat(heat, around.steam_pressure))
    for cause, share in shares:
        post_closed_steam(book, cause, used * share, around)
    return 0.0
