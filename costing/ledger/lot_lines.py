"""What every box posts for a lot: heat for a fill, what has built up, what is handed on or dumped."""

from __future__ import annotations

from collections.abc import Mapping

from costing.ledger.plan import Plan
from costing.process import steam
from costing.process.bath_content import BathContent
from costing.process.heating import check_steam_is_hotter, post_closed_steam
from costing.process.postings import BATH, DRAIN, PROCESS, Book

TAKEN_OVER = "taken over from the lot before"
HANDED_ON = "credit: bath kept for the next lot"


def post_built_up(book: Book, content: BathContent, plan: Plan) -> None:
    """What the run has left in the box, kilogram by kilogram of yarn."""
    for substance, amount in content.built_up.items():
        book.move(substance, "built up over the lot", amount * plan.grey_mass_dyed, BATH, PROCESS)


def post_salt(
    book: Book,
    cause: str,
    volume: float,
    content: Mapping[str, float],
    fill: Mapping[str, float],
    account: str,
) -> None:
    """What a used bath holds beyond a fresh one: salt, and what the yarn has brought."""
    for substance, strength in content.items():
        book.move(substance, cause, volume * (strength - fill.get(substance, 0.0)), account, PROCESS)


def send_bath_to_drain(book: Book, stream: str, cause: str) -> None:
    """Empty the box to the drain; what rounding leaves of a bath that was handed over is nothing."""
    held = book.held()
    size = sum(abs(amount) for amount in held.values())
    moved = sum(abs(amount) for _, _, _, _, amount, _, _ in book.postings)
    if size <= 1e-12 * moved:
        return  # all of it was handed over; what is left is rounding
    for substance, amount in held.items():
        book.move(substance, cause, amount, PROCESS, DRAIN + stream)


def post_heat_up(book: Book, cause: str, volume: float, temperature: float, plan: Plan) -> None:
    """Steam that warms a fill by a closed coil, once."""
    around = plan.around
    if temperature <= around.water_temperature:
        return
    check_steam_is_hotter(book.step, around, temperature)
    heat = steam.water_enthalpy(temperature) - steam.water_enthalpy(around.water_temperature)
    used = volume * steam.steam_for_heat(heat, around.steam_pressure)
    post_closed_steam(book, f"{cause}, heating up", used, around)
