"""What a lot adds to the steady state: fills, strengthening, stops, baths kept or dumped, cleaning.

All lines of this module are for the whole lot [kg, kWh, h]; `ledger.whole` spreads them over the
saleable yarn.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from costing.ledger.box_lot import BOXES, box_fill, size_fill
from costing.ledger.lot_lines import (
    HANDED_ON,
    TAKEN_OVER,
    post_built_up,
    post_heat_up,
    post_salt,
    send_bath_to_drain,
)
from costing.ledger.plan import Plan
from costing.ledger.route_run import Run
from costing.process.arithmetic import not_negative
from costing.process.bath_content import BathContent
from costing.process.bath_fill import DyeLiquor, post_dye, post_liquor
from costing.process.bath_lot import aged_hydrosulfite, post_ageing, post_start, post_stops
from costing.process.indigo_dyeing import post_blanket
from costing.process.mixing import WATER, post_water
from costing.process.postings import (
    DRAIN,
    EARLIER_LOT,
    NEXT_LOT,
    PROCESS,
    STORE,
    Book,
    Posting,
    balance,
)
from costing.process.washing import post_scour_liquor
from costing.settings.material import Material
from costing.settings.mill import Range
from costing.settings.rinse_step import Rinse
from costing.settings.sizing_step import Sizing
from costing.settings.steps import IndigoDyeing, Scour, Step

RANGE_TIME = "range time"
WORKED = "worked"
STRENGTHENED = "strengthening at the start"


def lot_lines(
    steps: Sequence[Step],
    materials: Mapping[str, Material],
    plan: Plan,
    range_: Range,
    run: Run,
) -> list[Posting]:
    """All that the lot adds, for the whole lot.

    Leaves out the fill of the rinse boxes and the steel of the boxes that is heated up.

    Parameters
    ----------
    steps : sequence of Step
        The route.
    materials : mapping
        Code -> product of the mill's list.
    plan : Plan
        Of the order.
    range_ : Range
        The machine.
    run : Run
        The route that the lot runs: what it leaves in the boxes.

    Returns
    -------
    list of Posting
        Amounts for the lot [kg, kWh, h].
    """
    lines: list[Posting] = []
    for number, step in enumerate(steps):
        if isinstance(step, IndigoDyeing):
            liquor = DyeLiquor.of(step, materials)
            content = run.contents[step.name]
            lines += _dye_bath(liquor, content, plan, _rinse_behind(steps[number:]))
        elif isinstance(step, Scour):
            lines += _scour_fill(step, materials, plan, run.contents[step.name])
        elif isinstance(step, Sizing):
            lines += size_fill(step, run.entering[number][1], materials, plan)
        elif step.KIND in BOXES:
            box = BOXES[step.KIND](step, run.entering[number][1], materials)
            lines += box_fill(box, plan, run.contents[step.name])
    lines += _cleaning(range_)
    lines += _time(plan)
    return lines


def _rinse_behind(steps: Sequence[Step]) -> str | None:
    return next((step.name for step in steps if isinstance(step, Rinse)), None)


def _dye_bath(bath: DyeLiquor, content: BathContent, plan: Plan, rinse: str | None) -> list[Posting]:
    step, lot = bath.step, plan.around.lot
    book = Book(step.name)
    standing = step.bath_kept if lot.standing_bath else 0.0
    kept = step.bath_kept if lot.kept_bath else 0.0
    aged = aged_hydrosulfite(bath)
    taken_over, handed_on = step.bath_volume * standing, step.bath_volume * kept
    new = step.bath_volume - taken_over

    post_liquor(book, bath, TAKEN_OVER, taken_over, aged, EARLIER_LOT)
    post_salt(book, TAKEN_OVER, taken_over, content.earlier, content.fill, EARLIER_LOT)
    post_liquor(book, bath, "first fill", new, step.bath_hydrosulfite)
    post_heat_up(book, "first fill", new, step.bath_temperature, plan)
    before = len(book.postings)
    post_start(book, bath, lot)
    post_stops(book, bath, lot)
    post_ageing(book, bath, handed_on)
    post_blanket(book, step, plan.stoppage_hours, "keeps air off the dye boxes in stoppages")
    # The bath stays as full as it was: water that is made, and that of the products, goes with the yarn.
    made = balance(book.postings[before:], PROCESS).get(WATER, 0.0)
    stream = DRAIN + (rinse or f"{step.name} overflow")
    book.move(WATER, "leaves with the yarn", made, PROCESS, stream)
    post_built_up(book, content, plan)
    _post_strengthening(book, bath, standing, kept)
    post_liquor(book, bath, HANDED_ON, -handed_on, aged, NEXT_LOT)
    post_salt(book, HANDED_ON, -handed_on, content.handed_on, content.fill, NEXT_LOT)
    send_bath_to_drain(book, f"{step.name} dump", "bath dumped")
    return book.postings


def _post_strengthening(book: Book, bath: DyeLiquor, standing: float, kept: float) -> None:
    """More dye and hydrosulfite at the start; the lot uses up its share, a kept bath hands on the rest."""
    step = bath.step
    indigo = step.bath_volume * not_negative((step.start_indigo or 0.0) - step.bath_indigo)
    free = step.bath_volume * not_negative((step.start_hydrosulfite or 0.0) - step.bath_hydrosulfite)
    left = 1.0 - step.start_recovered
    for cause, share, account in (
        ("strengthening taken over from the lot before", left * standing, EARLIER_LOT),
        (STRENGTHENED, 1.0 - left * standing, STORE),
        ("strengthening used up by the lot", -step.start_recovered, STORE),
        ("credit: strengthening kept for the next lot", -left * kept, NEXT_LOT),
    ):
        post_dye(book, bath, cause, indigo * share, free * share, 0.0, account)


def _scour_fill(
    step: Scour, materials: Mapping[str, Material], plan: Plan, content: BathContent
) -> list[Posting]:
    book = Book(step.name)
    post_scour_liquor(book, step, materials, "first fill", step.tank_volume)
    post_heat_up(book, "first fill", step.tank_volume, step.scour_temperature, plan)
    post_built_up(book, content, plan)
    send_bath_to_drain(book, f"{step.name} dump", "box dumped")
    return book.postings


def _cleaning(range_: Range) -> list[Posting]:
    book = Book("cleaning")
    post_water(book, "boxes and tanks", range_.cleaning_water)
    book.move(WATER, "boxes and tanks", range_.cleaning_water, PROCESS, DRAIN + "cleaning")
    return book.postings


def _time(plan: Plan) -> list[Posting]:
    book = Book("range")
    for cause, hours in (
        ("running", plan.run_hours),
        ("tying in, filling, cleaning", plan.changeover_hours),
        ("stoppages", plan.stoppage_hours),
    ):
        book.move(RANGE_TIME, cause, hours, STORE, WORKED, RANGE_TIME)
    return book.postings
