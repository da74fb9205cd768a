"""How a box hands on what it holds: with the yarn and over the weir."""

from __future__ import annotations

from costing.process.fibre import COTTON
from costing.process.postings import DRAIN, MOTORS, POWER, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, added

WATER = "water"


def post_water(book: Book, cause: str, volume: float, source: str = STORE) -> None:
    """Post water, from the mill's main or with another lot; one litre is one kilogram."""
    book.move(WATER, cause, volume, source, PROCESS, WATER)


def post_power(book: Book, power: float, around: Surroundings, bath_time: float | None = None) -> None:
    """Post the electric energy of drives, pumps and fans while the range runs.

    A bath of a vessel takes its own time for each charge.
    """
    per_power = 1.0 / around.throughput
    if bath_time is not None and around.charge_mass > 0.0:
        per_power = bath_time / around.charge_mass
    book.move(POWER, "drives, pumps and fans", power * per_power, STORE, MOTORS, POWER)


def holdings(yarn: YarnState, book: Book) -> dict[str, float]:
    """What is in the box beside water and fibre: brought by the yarn's liquor, fed and made here."""
    held = added(yarn.dissolved, book.held())
    held.pop(WATER, None)
    held.pop(COTTON, None)
    return held


def send_to_drain(book: Book, stream: str, cause: str, amounts: dict[str, float]) -> None:
    """Post amounts to a named stream."""
    for substance, amount in amounts.items():
        book.move(substance, cause, amount, PROCESS, DRAIN + stream)


def shared_out(held: dict[str, float], share: float) -> dict[str, float]:
    """The same share of every amount."""
    return {substance: amount * share for substance, amount in held.items()}
