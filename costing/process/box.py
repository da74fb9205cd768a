"""One box of one liquor: how much of it leaves, what it is fed, what stands in it.

The yarn brings liquor, the box replaces a share of it, the squeeze leaves the pick-up on the yarn. What is
dosed is dosed for each litre of bath that leaves, less what the yarn brings of the same.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Callable, NamedTuple

from costing.process.arithmetic import is_nothing, larger, not_negative, smaller
from costing.process.bath_content import BUILD_UP, NOTHING, bath_content
from costing.process.box_reactions import react_all
from costing.process.heating import heat_box
from costing.process.mixing import WATER, holdings, post_power, post_water, shared_out
from costing.process.postings import BATH, DRAIN, PROCESS, STORE, Book
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, added
from costing.quantities import InputError
from costing.settings.material import Material

OVERFLOW = "overflow"
CARRIED = "carried out with the yarn"
ROUNDING = 1e-12  # L/kg

Reactions = Callable[[Book, dict[str, float]], None]


class Dose(NamedTuple):
    """A product of the liquor.

    Attributes
    ----------
    product : Material
        As bought.
    strength : float
        Of it as 100 % substance [kg/L].
    extra_uptake : float
        What the fibre draws beyond the liquor it carries, of what that liquor carries [fraction].
    """

    product: Material
    strength: float
    extra_uptake: float = 0.0

    @property
    def key(self) -> str:
        """Substance, or the product's code where it has no formula."""
        return self.product.substance or self.product.code


class Box(NamedTuple):
    """A box, whatever is in it. House units.

    Attributes
    ----------
    name : str
        Of the step.
    doses : tuple of Dose
        What makes the liquor.
    temperature : float
        [degC]
    pick_up : float
        Liquor on the leaving yarn [L/kg].
    exchange : float
        Share of the entering liquor that the box replaces [fraction].
    least_overflow : float
        Overflow that the recipe asks for [L/kg].
    feed_ratio : float
        Strength of what is fed over the strength of the bath.
    volume : float
        Liquor in the box; 0 where a bath is filled and drained around each charge [L].
    heated_surface, surface_heat_loss, power : float
        [m2, kJ/h/m2, kW]
    heat_recovered : float
        Share of the heat of the feed that drain water gives back [fraction].
    kept : float
        Share of the liquor that the next lot takes over, where the lot keeps its baths [fraction].
    outlet : str
        What the part that does not leave on the yarn is called.
    time : float or None
        How long a bath of a vessel takes; None where the range runs on [h].
    """

    name: str
    doses: tuple[Dose, ...]
    temperature: float
    pick_up: float
    exchange: float
    least_overflow: float
    feed_ratio: float
    volume: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    heat_recovered: float = 0.0
    kept: float = 0.0
    outlet: str = OVERFLOW
    time: float | None = None


class Flows(NamedTuple):
    """Liquor through a box [L/kg].

    Attributes
    ----------
    kept_liquor : float
        Entering liquor that leaves on the yarn as it came.
    bath_on_yarn : float
        Bath that leaves with the yarn.
    overflow : float
        Bath that leaves over the weir.
    feed : float
        Liquor fed, make-up water in it.
    """

    kept_liquor: float
    bath_on_yarn: float
    overflow: float
    feed: float

    @property
    def leaving(self) -> float:
        """Bath that leaves, with the yarn and over the weir [L/kg]."""
        return self.bath_on_yarn + self.overflow


def flows_of(box: Box, yarn: YarnState) -> Flows:
    """Volumes of a box under level control.

    Parameters
    ----------
    box : Box
        The box.
    yarn : YarnState
        The entering yarn.

    Returns
    -------
    Flows
        In L/kg.

    Notes
    -----
    What leaves, ``B + V``, needs a feed of ``(B + V) / n`` at ``n`` times its strength, and the level asks
    ``w_in + F = w_out + V``: so ``V = (w_in - w_out + B/n) / (1 - 1/n)``, and no less than the recipe asks.

    Examples
    --------
    Wet yarn into a box fed at ten times its strength: about a ninth of what is carried out overflows.

    >>> from costing.process.yarn import YarnState
    >>> box = Box("softener", (), 40.0, 0.75, 1.0, 0.0, 10.0, 800.0, 0.0, 0.0, 0.0)
    >>> round(flows_of(box, YarnState(0.92, 0.08, 20.0, liquor=0.75)).overflow, 4)
    0.0833
    """
    kept = (1.0 - box.exchange) * smaller(yarn.liquor, box.pick_up)
    on_yarn = box.pick_up - kept
    weak = 1.0 / box.feed_ratio
    least = (yarn.liquor - box.pick_up + on_yarn * weak) / (1.0 - weak)
    overflow = larger(box.least_overflow, least)
    return Flows(kept, on_yarn, overflow, box.pick_up + overflow - yarn.liquor)


class Left(NamedTuple):
    """What a box leaves on the yarn. House units, per kilogram of grey yarn.

    Attributes
    ----------
    dissolved : dict
        Substance -> what leaves in the yarn's liquor [kg/kg].
    drawn : dict
        Substance -> what the fibre has drawn beyond its liquor, still in the process account [kg/kg].
    """

    dissolved: dict[str, float]
    drawn: dict[str, float]


def run_box(
    box: Box,
    yarn: YarnState,
    around: Surroundings,
    book: Book,
    asked: str,
    own_reactions: Reactions | None = None,
    on_fibre: Mapping[str, float] = NOTHING,
) -> Left:
    """Dose, heat and water a box, let react what meets in it, and send its overflow to the drain.

    A coil heats it: live steam would thin its liquor.

    Parameters
    ----------
    box : Box
        The box.
    yarn : YarnState
        The entering yarn.
    around : Surroundings
        Of the run.
    book : Book
        Takes the lines, and what stands in the box.
    asked : str
        Label of the setting that asks for the temperature, for the error text.
    own_reactions : callable, optional
        Posts what the step alone knows of: takes the book and what has met in the box.
    on_fibre : mapping, optional
        Substance -> what this step has fed and the fibre holds: it never mixes with the liquor [kg/kg].

    Returns
    -------
    Left
        What leaves with the yarn.

    Raises
    ------
    InputError
        Products that bring more water than the box takes.
    """
    flows = flows_of(box, yarn)
    passed = shared_out(yarn.dissolved, flows.kept_liquor / yarn.liquor if yarn.liquor > 0 else 0.0)
    drawn = _dose(box, yarn, flows, passed, book)

    apart = added(added(passed, drawn), dict(on_fibre))

    def met() -> dict[str, float]:
        held = holdings(yarn, book)
        return {name: amount - apart.get(name, 0.0) for name, amount in held.items()}

    react_all(book, met())
    if own_reactions is not None:
        own_reactions(book, met())
        react_all(book, met())
    heat_box(
        book,
        around,
        yarn,
        box.temperature,
        flows.feed,
        box.heated_surface,
        box.surface_heat_loss,
        direct=False,  # live steam would thin the liquor
        asked=asked,
        heat_recovered=box.heat_recovered,
        drained=flows.overflow,
    )
    _post_water(box, flows, book)
    post_power(book, box.power, around, box.time)
    mixed = met()
    built_up = dict.fromkeys(mixed, 0.0)
    if box.volume > 0.0:
        kept = box.kept if around.lot.standing_bath else 0.0
        book.content = bath_content(
            mixed, content_of_fill(box), flows.leaving, box.volume, around.lot.mass, kept
        )
        built_up = book.content.built_up
    stream = f"{box.name} {box.outlet}"
    dissolved = dict(passed)
    over = flows.overflow / flows.leaving
    for substance, stays in built_up.items():
        book.move(substance, BUILD_UP, stays, PROCESS, BATH)
        leaving = mixed.get(substance, 0.0) - stays
        book.move(substance, OVERFLOW, leaving * over, PROCESS, DRAIN + stream)
        dissolved[substance] = dissolved.get(substance, 0.0) + leaving * (1.0 - over)
    book.move(WATER, OVERFLOW, flows.overflow, PROCESS, DRAIN + stream)
    return Left(dissolved, drawn)


def _dose(
    box: Box, yarn: YarnState, flows: Flows, passed: Mapping[str, float], book: Book
) -> dict[str, float]:
    """Feed each product for the bath that leaves, less what the yarn brings of it; what the fibre draws."""
    drawn: dict[str, float] = {}
    there = {name: not_negative(amount - passed[name]) for name, amount in yarn.dissolved.items()}
    for dose in box.doses:
        wanted = flows.leaving * dose.strength
        for cause, volume in ((CARRIED, flows.bath_on_yarn), (OVERFLOW, flows.overflow)):
            book.feed(dose.product, cause, volume * dose.strength)
        brought = smaller(there.get(dose.key, 0.0), wanted)
        there[dose.key] = there.get(dose.key, 0.0) - brought
        book.feed(dose.product, "comes with the yarn", -brought)
        extra = flows.bath_on_yarn * dose.strength * dose.extra_uptake
        book.feed(dose.product, "drawn by the fibre", extra)
        if not is_nothing(extra):
            drawn[dose.key] = drawn.get(dose.key, 0.0) + extra
    return drawn


def _post_water(box: Box, flows: Flows, book: Book) -> None:
    """Water of the feed, less what products and reactions bring."""
    from_main = flows.feed - book.product_water - book.reaction_water
    if from_main < -ROUNDING:
        raise InputError(
            box.name,
            f"the products bring {flows.feed - from_main:.3g} L/kg of water, more than the "
            f"{max(0.0, flows.feed):.3g} L/kg that the box takes; accepted are a feed closer to the strength "
            "of the bath, more overflow, or a harder squeeze in front of the box",
        )
    post_water(book, "makes up the liquor", from_main)


def post_fill(book: Book, box: Box, cause: str, volume: float, account: str = STORE) -> None:
    """Fill a box with fresh liquor, in which what meets reacts.

    Parameters
    ----------
    book : Book
        Takes the lines.
    box : Box
        The box.
    cause : str
        Why.
    volume : float
        Volume; below zero hands the same liquor over [L].
    account : str, optional
        Where it comes from.
    """
    fresh = Book(book.step)
    for dose in box.doses:
        fresh.feed(dose.product, cause, dose.strength)
    post_water(fresh, cause, 1.0 - fresh.product_water)
    met = fresh.held()
    met.pop(WATER)
    react_all(fresh, met)
    for _, material, substance, _, amount, source, destination in fresh.postings:
        giver = account if source == STORE else source
        book.move(substance, cause, volume * amount, giver, destination, material)


def content_of_fill(box: Box) -> dict[str, float]:
    """What a litre of fresh liquor holds beside water [kg/L]."""
    book = Book("")
    post_fill(book, box, "", 1.0)
    held = book.held()
    held.pop(WATER, None)
    return held
