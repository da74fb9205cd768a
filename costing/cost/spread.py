"""How far a number of an enquiry may be from what is taken for it, and which numbers move together."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple, Optional

from costing.process.arithmetic import larger, normal_deviation, smaller, where
from costing.quantities import QUANTITIES, InputError, label, shown
from costing.quantities.checking import LIMITS
from costing.reference_data import Default, defaults
from costing.settings.building import Assumption
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import (
    DEPTH,
    ENQUIRY,
    RANGE,
    STEP,
    STYLE,
    Place,
    inputs_of,
)
from costing.settings.mill import Enquiry, Mill

# What a mill runs high or low in one box it runs so in all of them: the same squeeze rolls, the same habits.
TOGETHER = {
    "pick_up": "pick-up of all boxes",
    "pick_up_last": "pick-up of all boxes",
    "exchange": "exchange in all boxes",
    "surface_heat_loss": "heat loss of all boxes",
    "heated_surface": "heated surface of all boxes",
    "power": "power of all boxes",
    "hydrosulfite_per_oxygen": "hydrosulfite per oxygen",
    "weight_loss": "what the scour dissolves",  # the more dissolves, the more acid of it takes caustic
    "caustic_neutralised": "what the scour dissolves",
}


# Who says how far a number may be off, the least known first.
KNOWN_FROM = GUESS, DERIVED, PUBLISHED, OWN = "guess", "derived", "published", "your own"


class Spread(NamedTuple):
    """What a number may be. House units.

    Attributes
    ----------
    place : Place
        Which number.
    typical : float
        What is taken for it: the most likely value.
    low, high : float
        Ends; of a standard deviation those that the number is accepted between.
    deviation : float or None
        Standard deviation, where that is what was given: then a normal distribution; else a triangle from low
        over typical to high.
    moves_with : str
        Numbers of one such name are high together and low together.
    grounds : str
        Where it comes from.
    known_from : str
        `OWN` where a row of the book gives the ends; else nobody typed the number, and its default is
        `PUBLISHED`, `DERIVED` from what is, or a `GUESS`.
    """

    place: Place
    typical: float
    low: float
    high: float
    deviation: Optional[float]  # noqa: UP045 read by an older Python
    moves_with: str
    grounds: str
    known_from: str = OWN

    def at(self, share: Any) -> Any:
        """The value that a share of all cases lies below: of one share, or of each in an array."""
        if self.deviation is not None:
            value = self.typical + self.deviation * normal_deviation(share)
            return smaller(larger(value, self.low), self.high)
        return triangle_quantile(share, self.low, self.typical, self.high)

    @property
    def mean(self) -> float:
        """Mean of the distribution."""
        return self.typical if self.deviation is not None else (self.low + self.typical + self.high) / 3.0

    @property
    def standard_deviation(self) -> float:
        """Standard deviation of the distribution."""
        if self.deviation is not None:
            return self.deviation
        return float(triangle_deviation(self.low, self.typical, self.high))


def triangle_quantile(share: Any, low: Any, typical: Any, high: Any) -> Any:
    """The value of a triangular distribution that a share of it lies below.

    Parameters
    ----------
    share : float
        From 0 to 1 [fraction].
    low, typical, high : float
        Ends and top of the triangle, all in one unit.

    Examples
    --------
    >>> triangle_quantile(0.5, 0.0, 1.0, 2.0)
    1.0

    References
    ----------
    jcgm-101, 6.4.5 (the symmetric case).
    """
    whole = high - low
    if not whole:
        return typical
    top = (typical - low) / whole
    left = low + (share * whole * (typical - low)) ** 0.5
    right = high - ((1.0 - share) * whole * (high - typical)) ** 0.5
    return where(share <= top, left, right)


def triangle_deviation(low: Any, typical: Any, high: Any) -> Any:
    """Standard deviation of a triangular distribution.

    Parameters
    ----------
    low, typical, high : float
        Ends and top of the triangle, all in one unit.

    Examples
    --------
    >>> round(triangle_deviation(-1.0, 0.0, 1.0) ** 2, 6)  # a sixth
    0.166667

    References
    ----------
    jcgm-100, 4.3.9 (the symmetric case).
    """
    products = low * typical + low * high + typical * high
    return ((low * low + typical * typical + high * high - products) / 18.0) ** 0.5


def given_spread(row: GivenSpread, place: Place, value: float) -> Spread:
    """The spread that a row gives a number.

    Raises
    ------
    InputError
        It reaches beyond what is accepted for the number, or the number lies outside its ends.
    """
    least, most = LIMITS[place.name]
    item, text = QUANTITIES[place.name], place_text(place)
    group = row.moves_with or text
    grounds = f"your own figure, {row.where}" if row.where else "your own figure"
    if row.deviation is not None:
        return Spread(place, value, least, most, row.deviation * abs(value), group, grounds)
    if row.low is not None and row.high is not None:
        low, high = row.low, row.high
        if not low <= value <= high:
            raise InputError(
                row.where,
                f"{text} is {shown(item, value)} in the book, and this row says {shown(item, low)} to "
                f"{shown(item, high)}; accepted are ends with the value of the book between them",
            )
    else:
        reach = (row.give_or_take or 0.0) * abs(value)
        low, high = value - reach, value + reach
    if low < least or high > most:
        raise InputError(
            row.where,
            f"{text} is {shown(item, value)}, and with this row {shown(item, low)} to {shown(item, high)}; "
            f"accepted is {shown(item, least)} to {shown(item, most)}",
        )
    return Spread(place, value, low, high, None, group, grounds)


def place_text(place: Place) -> str:
    """A place as people read it.

    Examples
    --------
    >>> place_text(Place(STEP, "first rinse", "pick_up")), place_text(Place(RANGE, "", "speed"))
    ('first rinse: pick up', 'speed')
    """
    return f"{place.code}: {label(place.name)}" if place.code else label(place.name)


def spreads_of(mill: Mill, enquiry: Enquiry) -> list[Spread]:
    """Every number that is not sure: rows of the sheet *How sure*, and defaults that were taken.

    A value that was typed is taken for sure unless a row says otherwise.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, and an enquiry of it.

    Returns
    -------
    list of Spread
        In the order of the inputs.

    Raises
    ------
    InputError
        The enquiry cannot be read, or a row reaches beyond what is accepted.
    """
    numbers = inputs_of(mill, enquiry)
    taken = _taken(mill, enquiry)
    found = []
    for place, value in numbers.items():
        if QUANTITIES[place.name].whole:
            continue
        row = row_for(mill.spreads, place, row_names(enquiry, place))
        if row is not None:
            found.append(given_spread(row, place, value))
        elif place in taken and value != 0.0:  # what a mill does not have is not unsure
            default = mill.default_of(taken[place])
            group = TOGETHER.get(place.name, default.key)
            low, high = min(default.low, value), max(default.high, value)
            known_from = _known_from(mill, taken[place], default)
            found.append(
                Spread(place, value, low, high, None, group, _grounds(mill, taken[place]), known_from)
            )
    return [spread for spread in found if spread.standard_deviation > 0.0]


def _grounds(mill: Mill, taken: Assumption) -> str:
    source = mill.default_of(taken).source
    return source if taken in mill.calibrated else f"default, {source}"


def _known_from(mill: Mill, taken: Assumption, default: Default) -> str:
    if taken in mill.calibrated:
        return OWN
    if default.source == DERIVED:
        return DERIVED
    return PUBLISHED if default.locator else GUESS  # only a publication has a place in it


def defaults_taken(mill: Mill, enquiry: Enquiry) -> dict[Place, str]:
    """Place -> key of the default that stands there, for what the book leaves empty."""
    return {place: taken.key for place, taken in _taken(mill, enquiry).items()}


def _taken(mill: Mill, enquiry: Enquiry) -> dict[Place, Assumption]:
    owners = {
        f"style {enquiry.style}": (STYLE, ""),
        f"enquiry {enquiry.code}": (ENQUIRY, ""),
        f"range {enquiry.range}": (RANGE, ""),
    }
    steps = mill.steps_of(mill.recipe(enquiry.recipe), mill.range(enquiry.range))
    for step in steps:
        owners[f"recipe {enquiry.recipe} on range {enquiry.range}, {step.name}"] = (STEP, step.name)
    owners.update({f"depth {code}": (DEPTH, code) for code in mill.depths})
    return {
        Place(*owners[taken.owner], defaults()[taken.key].quantity): taken
        for taken in mill.assumptions
        if taken.owner in owners
    }


def row_for(rows: Iterable[GivenSpread], place: Place, names: tuple[str, ...]) -> GivenSpread | None:
    """The row that speaks of a number: one that names it before one for all, the last of equals."""
    found = None
    for row in rows:
        if row.kind != place.kind or row.name != place.name or (row.code and row.code not in names):
            continue
        if found is None or row.code or not found.code:
            found = row
    return found


def row_names(enquiry: Enquiry, place: Place) -> tuple[str, ...]:
    """Codes by which a row may name a number."""
    own = {STYLE: enquiry.style, ENQUIRY: enquiry.code, RANGE: enquiry.range}
    return (place.code, own.get(place.kind, place.code))
