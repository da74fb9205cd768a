"""What the start, the stops and the waiting of a lot destroy in the dye bath, and what that leaves in it."""

from __future__ import annotations

from collections.abc import Mapping

from costing.process.arithmetic import not_negative, smaller
from costing.process.bath_content import BathContent, bath_content
from costing.process.bath_fill import DyeLiquor, content_of_liquor
from costing.process.bath_reactions import (
    DECAY,
    REVATTING,
    SULFITE_BY_AIR,
    SULFITE_OXIDATION,
    WITHOUT_OXYGEN,
    oxidation_by_air,
)
from costing.process.chemistry import molar_mass
from costing.process.hydrosulfite import hydrosulfite_of_stoppage
from costing.process.mixing import WATER
from costing.process.postings import Book
from costing.process.reduction import (
    CAUSTIC_PER_HYDROSULFITE,
    HYDROSULFITE,
    HYDROSULFITE_PER_INDIGO,
    HYDROSULFITE_PER_OXYGEN,
    OXYGEN_PER_INDIGO,
)
from costing.process.surroundings import Lot

AGEING = "ages until the next lot"
STOPPAGE = "stoppage"
RESTORED = "restores the standing bath"


def aged_hydrosulfite(liquor: DyeLiquor) -> float:
    """Free hydrosulfite of a bath that has waited for the next lot [kg/L]."""
    return liquor.step.bath_hydrosulfite * (1.0 - liquor.step.ageing_loss)


def post_start(book: Book, liquor: DyeLiquor, lot: Lot) -> None:
    """Hydrosulfite that a standing bath is given back, and that the oxygen of the fill water destroys."""
    step = liquor.step
    taken_over = step.bath_volume * step.bath_kept if lot.standing_bath else 0.0
    lost = taken_over * (step.bath_hydrosulfite - aged_hydrosulfite(liquor))
    book.feed(liquor.hydrosulfite, RESTORED, lost)
    oxygen = (step.bath_volume - taken_over) * step.fill_water_oxygen
    destroyed = step.hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * oxygen
    _destroy(book, liquor, "oxygen in the fill water", destroyed, _by_air(liquor))


def post_stops(book: Book, liquor: DyeLiquor, lot: Lot) -> None:
    """Hydrosulfite that the stops destroy, and dye that air oxidises once it is gone."""
    step = liquor.step
    flow = step.circulation_flow if lot.pumps_running else 0.0
    oxygen = step.surface_oxygen * step.bath_surface + step.circulation_oxygen * flow
    held = step.bath_volume * step.bath_hydrosulfite
    lost = hydrosulfite_of_stoppage(
        lot.stoppage_time,
        step.hydrosulfite_per_oxygen,
        step.surface_oxygen,
        step.bath_surface,
        step.circulation_oxygen,
        flow,
        step.decay_rate,
        step.bath_volume,
        step.bath_hydrosulfite,
    )
    rate_of_air = step.hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * oxygen
    rate = rate_of_air + step.decay_rate * held
    share_of_air = rate_of_air / rate if rate > 0 else 0.0
    _destroy(book, liquor, STOPPAGE, lot.stoppages * lost * share_of_air, _by_air(liquor))
    decayed = lot.stoppages * lost * (1.0 - share_of_air)
    _destroy(book, liquor, f"{STOPPAGE}: {DECAY}", decayed, WITHOUT_OXYGEN)
    left = not_negative(lot.stoppage_time - held / rate) if rate > 0 else 0.0
    oxidised = smaller(oxygen * left / OXYGEN_PER_INDIGO, step.bath_volume * step.bath_indigo)
    again = lot.stoppages * HYDROSULFITE_PER_INDIGO * oxidised
    _destroy(book, liquor, "dye oxidised in a long stoppage", again, REVATTING)


def post_ageing(book: Book, liquor: DyeLiquor, volume: float) -> None:
    """Hydrosulfite that a kept volume loses until the next lot, with the caustic that it takes."""
    lost = volume * (liquor.step.bath_hydrosulfite - aged_hydrosulfite(liquor))
    book.feed(liquor.caustic, AGEING, CAUSTIC_PER_HYDROSULFITE * lost)
    _react(book, liquor, AGEING, lost / HYDROSULFITE, _by_air(liquor))


def content_over_lot(mixed: Mapping[str, float], outflow: float, liquor: DyeLiquor, lot: Lot) -> BathContent:
    """What stands in the dye bath from the start of a lot to its end.

    Parameters
    ----------
    mixed : mapping
        Substance -> what the run feeds, makes and brings into the bath [kg/kg].
    outflow : float
        Bath that leaves, on the yarn and over the weir [L/kg].
    liquor : DyeLiquor
        The bath and its products.
    lot : Lot
        The lot.

    Returns
    -------
    BathContent
        Of the salts and of what the yarn brings; dye and hydrosulfite stand at their strengths.
    """
    start, stops, ageing = Book(""), Book(""), Book("")
    post_start(start, liquor, lot)
    post_stops(stops, liquor, lot)
    post_ageing(ageing, liquor, 1.0)
    return bath_content(
        mixed,
        content_of_liquor(liquor),
        outflow,
        liquor.step.bath_volume,
        lot.mass,
        liquor.step.bath_kept if lot.standing_bath else 0.0,
        _left_behind(start),
        _left_behind(stops),
        _left_behind(ageing),
    )


def _left_behind(book: Book) -> dict[str, float]:
    """What reactions leave in the bath: the caustic they take is fed, and water is no strength."""
    passing = ("sodium_hydrosulfite", "sodium_hydroxide", WATER)
    return {name: amount for name, amount in book.held().items() if name not in passing}


def _by_air(liquor: DyeLiquor) -> Mapping[str, float]:
    return oxidation_by_air(liquor.step.hydrosulfite_per_oxygen)


def _destroy(book: Book, liquor: DyeLiquor, cause: str, amount: float, reaction: Mapping[str, float]) -> None:
    """Hydrosulfite replaced, with the caustic that its loss takes."""
    book.feed(liquor.hydrosulfite, cause, amount)
    caustic = -reaction["sodium_hydroxide"] * molar_mass("sodium_hydroxide") / HYDROSULFITE
    book.feed(liquor.caustic, cause, caustic * amount)
    _react(book, liquor, cause, amount / HYDROSULFITE, reaction)


def _react(book: Book, liquor: DyeLiquor, cause: str, mol: float, reaction: Mapping[str, float]) -> None:
    """A reaction, and the share of its sulfite that air turns to sulfate."""
    book.react(cause, mol, reaction)
    sulfite = liquor.step.sulfite_oxidised * reaction["sodium_sulfite"] * mol
    book.react(SULFITE_BY_AIR, sulfite, SULFITE_OXIDATION)
