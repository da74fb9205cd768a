"""What a lot adds to the steady state: fills, strengthening, stops, baths kept or dumped, cleaning.

All lines of this module are for the whole lot [kg, kWh, h]; `ledger.whole` spreads them over the
saleable yarn.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from costing.ledger.plan import Plan
from costing.process import steam
from costing.process.heating import post_closed_steam
from costing.process.hydrosulfite import hydrosulfite_of_stoppage
from costing.process.indigo_dyeing import REVATTING, VATTING, oxidation_by_air
from costing.process.mixing import WATER, post_water
from costing.process.postings import (
    DRAIN,
    EARLIER_LOT,
    NEXT_LOT,
    PROCESS,
    STORE,
    Book,
    Line,
    balance,
)
from costing.process.reduction import (
    CAUSTIC_PER_HYDROSULFITE,
    HYDROSULFITE,
    HYDROSULFITE_PER_INDIGO,
    HYDROSULFITE_PER_OXYGEN,
    INDIGO,
    OXYGEN_PER_INDIGO,
)
from costing.settings.mill import Enquiry, Material, Range
from costing.settings.steps import IndigoDyeing, Rinse, Scour, Step

RANGE_TIME = "range time"
WORKED = "worked"
AGEING = "ages until the next lot"
STOPPAGE = "stoppage"


class Bath(NamedTuple):
    """The common dye liquor and its products."""

    step: IndigoDyeing
    indigo: Material
    hydrosulfite: Material
    caustic: Material
    wetting_agent: Material

    @property
    def powder_share(self) -> float:
        """1 where the dye must still be reduced, 0 where it comes reduced."""
        return 0.0 if self.indigo.is_reduced_dye else 1.0


def lot_lines(
    steps: Sequence[Step], materials: Mapping[str, Material], plan: Plan, enquiry: Enquiry, range_: Range
) -> list[Line]:
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
    enquiry : Enquiry
        How the lot is run.
    range_ : Range
        The machine.

    Returns
    -------
    list of Line
        Amounts for the lot [kg, kWh, h].
    """
    lines: list[Line] = []
    for number, step in enumerate(steps):
        if isinstance(step, IndigoDyeing):
            bath = Bath(
                step,
                materials[step.indigo_product],
                materials[step.hydrosulfite_product],
                materials[step.caustic_product],
                materials[step.wetting_agent_product],
            )
            lines += _dye_bath(bath, plan, enquiry, _rinse_behind(steps[number:]))
        elif isinstance(step, Scour):
            lines += _scour_fill(step, materials, plan)
    lines += _cleaning(range_)
    lines += _time(plan)
    return lines


def _rinse_behind(steps: Sequence[Step]) -> str | None:
    return next((step.name for step in steps if isinstance(step, Rinse)), None)


def _fill(book: Book, bath: Bath, cause: str, volume: float, account: str, hydrosulfite: float) -> None:
    """Bring a volume of ready bath into the process, from the store or with another lot.

    A volume below zero hands the same bath over: every line of its making is turned back.
    """
    step = bath.step
    indigo = volume * step.bath_indigo
    reducing = HYDROSULFITE_PER_INDIGO * indigo * bath.powder_share
    free = volume * hydrosulfite
    caustic = CAUSTIC_PER_HYDROSULFITE * reducing + volume * step.bath_caustic
    with_dye = bath.indigo.alkali * indigo / bath.indigo.strength
    first = len(book.lines)
    water_before = book.product_water
    book.feed(bath.indigo, cause, indigo)
    book.feed(bath.hydrosulfite, cause, reducing + free)
    book.feed(bath.caustic, cause, caustic - with_dye)
    book.feed(bath.wetting_agent, cause, volume * step.bath_wetting_agent * bath.wetting_agent.strength)
    post_water(book, cause, volume - (book.product_water - water_before))
    _from_account(book, first, account)
    book.react(cause, indigo / INDIGO * bath.powder_share, VATTING)


def _from_account(book: Book, first: int, account: str) -> None:
    """Turn feeds from the store, from a line on, into feeds from another account."""
    book.lines[first:] = [
        line._replace(source=account) if line.source == STORE else line for line in book.lines[first:]
    ]


def _destroy(book: Book, bath: Bath, cause: str, amount: float, reaction: Mapping[str, float]) -> None:
    """Hydrosulfite replaced, with the caustic that its loss takes."""
    book.feed(bath.hydrosulfite, cause, amount)
    book.feed(bath.caustic, cause, CAUSTIC_PER_HYDROSULFITE * amount)
    book.react(cause, amount / HYDROSULFITE, reaction)


def _dye_bath(bath: Bath, plan: Plan, enquiry: Enquiry, rinse: str | None) -> list[Line]:
    step = bath.step
    book = Book(step.name)
    by_air = oxidation_by_air(step.hydrosulfite_per_oxygen)
    standing = step.bath_kept if enquiry.bath_at_start == "standing bath" else 0.0
    aged = step.bath_hydrosulfite * (1.0 - step.ageing_loss)
    new = step.bath_volume * (1.0 - standing)

    _fill(book, bath, "taken over from the lot before", step.bath_volume * standing, EARLIER_LOT, aged)
    book.feed(
        bath.hydrosulfite,
        "restores the standing bath",
        step.bath_volume * standing * (step.bath_hydrosulfite - aged),
    )
    _fill(book, bath, "first fill", new, STORE, step.bath_hydrosulfite)
    _post_heat_up(book, "first fill", new, step.bath_temperature, plan)

    rinse_stream = DRAIN + (rinse or f"{step.name} overflow")
    before = len(book.lines)
    dissolved_oxygen = new * step.fill_water_oxygen
    _destroy(
        book,
        bath,
        "oxygen in the fill water",
        step.hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * dissolved_oxygen,
        by_air,
    )
    _post_stoppages(book, bath, enquiry, by_air)
    kept = step.bath_kept if enquiry.bath_at_end == "kept for the next lot" else 0.0
    lost = step.bath_volume * kept * (step.bath_hydrosulfite - aged)
    book.feed(bath.caustic, AGEING, CAUSTIC_PER_HYDROSULFITE * lost)
    book.react(AGEING, lost / HYDROSULFITE, by_air)
    # Salt and water made by these reactions leave with the yarn, as those of the run do.
    made = balance(book.lines[before:], PROCESS)
    made.pop("sodium_hydrosulfite", None)
    for substance, amount in made.items():
        book.move(substance, "leaves with the yarn", amount, PROCESS, rinse_stream)
    _post_strengthening(book, bath, kept)
    _fill(book, bath, "credit: bath kept for the next lot", -step.bath_volume * kept, NEXT_LOT, aged)
    _send_bath_to_drain(book, f"{step.name} dump", "bath dumped")
    return book.lines


def _post_stoppages(book: Book, bath: Bath, enquiry: Enquiry, by_air: Mapping[str, float]) -> None:
    step = bath.step
    flow = step.circulation_flow if enquiry.pumps_in_stoppage == "running" else 0.0
    oxygen = step.surface_oxygen * step.bath_surface + step.circulation_oxygen * flow
    held = step.bath_volume * step.bath_hydrosulfite
    lost = hydrosulfite_of_stoppage(
        enquiry.stoppage_time,
        step.hydrosulfite_per_oxygen,
        step.surface_oxygen,
        step.bath_surface,
        step.circulation_oxygen,
        flow,
        step.decay_rate,
        step.bath_volume,
        step.bath_hydrosulfite,
    )
    _destroy(book, bath, STOPPAGE, enquiry.stoppages * lost, by_air)
    rate = step.hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * oxygen + step.decay_rate * held
    left = max(0.0, enquiry.stoppage_time - held / rate) if rate > 0 else 0.0
    oxidised = min(oxygen * left / OXYGEN_PER_INDIGO, step.bath_volume * step.bath_indigo)
    _destroy(
        book,
        bath,
        "dye oxidised in a long stoppage",
        enquiry.stoppages * HYDROSULFITE_PER_INDIGO * oxidised,
        REVATTING,
    )


def _post_strengthening(book: Book, bath: Bath, kept: float) -> None:
    """More dye and hydrosulfite at the start; the lot uses up its share, a kept bath hands on the rest."""
    step = bath.step
    indigo = step.bath_volume * max(0.0, (step.start_indigo or 0.0) - step.bath_indigo)
    free = step.bath_volume * max(0.0, (step.start_hydrosulfite or 0.0) - step.bath_hydrosulfite)
    left = 1.0 - step.start_recovered
    for cause, share, account in (
        ("strengthening at the start", 1.0, STORE),
        ("strengthening used up by the lot", -step.start_recovered, STORE),
        ("credit: strengthening kept for the next lot", -left * kept, NEXT_LOT),
    ):
        first = len(book.lines)
        reducing = HYDROSULFITE_PER_INDIGO * indigo * bath.powder_share * share
        book.feed(bath.indigo, cause, indigo * share)
        book.feed(bath.hydrosulfite, cause, free * share + reducing)
        alkali = bath.indigo.alkali * indigo / bath.indigo.strength * share
        book.feed(bath.caustic, cause, CAUSTIC_PER_HYDROSULFITE * reducing - alkali)
        _from_account(book, first, account)
        book.react(cause, indigo / INDIGO * bath.powder_share * share, VATTING)


def _scour_fill(step: Scour, materials: Mapping[str, Material], plan: Plan) -> list[Line]:
    book = Book(step.name)
    for code, strength in (
        (step.caustic_product, step.scour_caustic),
        (
            step.wetting_agent_product,
            step.scour_wetting_agent * materials[step.wetting_agent_product].strength,
        ),
        (step.sequestrant_product, step.scour_sequestrant * materials[step.sequestrant_product].strength),
    ):
        book.feed(materials[code], "first fill", step.tank_volume * strength)
    post_water(book, "first fill", step.tank_volume - book.product_water)
    _post_heat_up(book, "first fill", step.tank_volume, step.scour_temperature, plan)
    _send_bath_to_drain(book, f"{step.name} dump", "box dumped")
    return book.lines


def _send_bath_to_drain(book: Book, stream: str, cause: str) -> None:
    held = balance(book.lines, PROCESS)
    size = sum(abs(amount) for amount in held.values())
    moved = sum(abs(line.amount) for line in book.lines)
    if size <= 1e-12 * moved:
        return  # all of it was handed over; what is left is rounding
    for substance, amount in held.items():
        book.move(substance, cause, amount, PROCESS, DRAIN + stream)


def _post_heat_up(book: Book, cause: str, volume: float, temperature: float, plan: Plan) -> None:
    """Steam that warms a fill by a closed coil, once."""
    around = plan.around
    if temperature <= around.water_temperature:
        return
    heat = steam.water_enthalpy(temperature) - steam.water_enthalpy(around.water_temperature)
    used = volume * float(steam.steam_for_heat(heat, around.steam_pressure))
    post_closed_steam(book, f"{cause}, heating up", used, around)


def _cleaning(range_: Range) -> list[Line]:
    book = Book("cleaning")
    post_water(book, "boxes and tanks", range_.cleaning_water)
    book.move(WATER, "boxes and tanks", range_.cleaning_water, PROCESS, DRAIN + "cleaning")
    return book.lines


def _time(plan: Plan) -> list[Line]:
    book = Book("range")
    for cause, hours in (
        ("running", plan.run_hours),
        ("tying in, filling, cleaning", plan.changeover_hours),
        ("stoppages", plan.stoppage_hours),
    ):
        book.move(RANGE_TIME, cause, hours, STORE, WORKED, RANGE_TIME)
    return book.lines
