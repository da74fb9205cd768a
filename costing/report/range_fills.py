"""What a box holds when it is filled, what a standing bath is given at the start, and what a stop takes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from costing.ledger.box_lot import BOXES
from costing.ledger.lot import STRENGTHENED
from costing.ledger.whole import Ledger
from costing.process.bath_fill import DyeLiquor, post_liquor
from costing.process.bath_lot import RESTORED, post_stops
from costing.process.box import post_fill
from costing.process.postings import POWER, Book
from costing.process.surroundings import Lot
from costing.process.washing import post_scour_liquor
from costing.process.yarn import YarnState
from costing.report.range_feeds import taken
from costing.settings.material import Material
from costing.settings.steps import IndigoDyeing, Scour, Step


class Fill(NamedTuple):
    """Fresh liquor of one box.

    Attributes
    ----------
    step : str
        The box.
    litre : dict
        Code -> product as delivered, and water, in a litre [kg/L].
    volume : float
        Of the box [L].
    new : float
        Of it that this lot fills; the rest is taken over from the lot before [L].
    """

    step: str
    litre: dict[str, float]
    volume: float
    new: float


def fills(ledger: Ledger, materials: Mapping[str, Material]) -> list[Fill]:
    """Fresh liquor of every box that is filled with more than water.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    """
    found = []
    standing = ledger.plan.around.lot.standing_bath
    for step, yarn in ledger.run.entering:
        made = _fresh(step, yarn, materials)
        if made is not None:
            litre, volume, kept = made
            found.append(Fill(step.name, litre, volume, volume * (1.0 - (kept if standing else 0.0))))
    return found


def _fresh(
    step: Step, yarn: YarnState, materials: Mapping[str, Material]
) -> tuple[dict[str, float], float, float] | None:
    """A litre of fresh liquor, the volume of the box, the share of it handed on; None without a liquor."""
    book = Book(step.name)
    if isinstance(step, IndigoDyeing):
        post_liquor(book, DyeLiquor.of(step, materials), "", 1.0, step.bath_hydrosulfite)
        return _weighed(taken(book.postings)), step.bath_volume, step.bath_kept
    if isinstance(step, Scour):
        post_scour_liquor(book, step, materials, "", 1.0)
        return taken(book.postings), step.tank_volume, 0.0
    # The size box is filled from the kettle: what goes into that is a table of its own.
    if step.KIND in BOXES:
        box = BOXES[step.KIND](step, yarn, materials)
        post_fill(book, box, "", 1.0)
        return taken(book.postings), box.volume, box.kept
    return None


def _weighed(amounts: dict[str, float]) -> dict[str, float]:
    """Products and water; the power of a cell that reduces the dye is no product."""
    return {code: amount for code, amount in amounts.items() if code != POWER}


def given_at_start(ledger: Ledger) -> list[tuple[str, str, dict[str, float]]]:
    """Box, why, and products as delivered [kg] that a lot is given before it starts, fresh liquor apart."""
    found = []
    mass = ledger.plan.saleable_mass
    for step in ledger.steps:
        for cause in (STRENGTHENED, RESTORED):
            of_cause = (item for item in ledger.postings if (item[0], item[3]) == (step.name, cause))
            amounts = _weighed(taken(of_cause))
            if any(amounts.values()):
                found.append((step.name, cause, {code: amount * mass for code, amount in amounts.items()}))
    return found


def after_stop(
    ledger: Ledger, materials: Mapping[str, Material], hours: float, pumps_running: bool
) -> dict[str, dict[str, float]]:
    """What brings each dye bath back after one stop: box -> product as delivered [kg].

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    hours : float
        Length of the stop [h].
    pumps_running : bool
        True where the circulation runs on.
    """
    lot = Lot(stoppages=1.0, stoppage_time=hours, pumps_running=pumps_running)
    found = {}
    for step in ledger.steps:
        if isinstance(step, IndigoDyeing):
            book = Book(step.name)
            post_stops(book, DyeLiquor.of(step, materials), lot)
            found[step.name] = taken(book.postings)
    return found
