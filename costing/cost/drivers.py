"""Which uncertain numbers move a result, and how uncertain they make it: by first order."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Callable, NamedTuple

from costing.cost.spread import Spread, place_text
from costing.quantities import InputError
from costing.settings.inputs import Place

# From many sets of numbers the result of each, or why it is refused.
Evaluate = Callable[[Sequence[Mapping[Place, float]]], "list[float | InputError]"]

SIDE = 1.6448536269514722  # standard deviations: 5 % of a normal distribution lie beyond


class Driver(NamedTuple):
    """Numbers that move together, and what they do to the result.

    Attributes
    ----------
    name : str
        Of the number, or of what moves together.
    spreads : tuple of Spread
        The numbers.
    at_low, at_high : float
        The result with all of them at their low end and at their high end, everything else as it is; not a
        number where that is refused.
    deviation : float
        By how much a standard deviation of them moves the result, with its sign.
    share : float
        Of the variance of the result [fraction].
    """

    name: str
    spreads: tuple[Spread, ...]
    at_low: float
    at_high: float
    deviation: float
    share: float

    @property
    def swing(self) -> float:
        """Distance between the results at the two ends; of an end that is refused, from the middle."""
        return abs(self.at_high - self.at_low)


class FirstOrder(NamedTuple):
    """A result with its uncertainty by first order.

    Attributes
    ----------
    typical : float
        With every number as it is taken.
    mean, deviation : float
        Result at the means of all numbers, and its standard deviation.
    low, high : float
        A twentieth of all cases lies below, and a twentieth above, where the result is normal.
    drivers : tuple of Driver
        The largest first.
    """

    typical: float
    mean: float
    deviation: float
    low: float
    high: float
    drivers: tuple[Driver, ...]


def grouped(spreads: Sequence[Spread]) -> dict[str, tuple[Spread, ...]]:
    """Numbers by what they move with."""
    groups: dict[str, list[Spread]] = {}
    for spread in spreads:
        groups.setdefault(spread.moves_with, []).append(spread)
    return {name: tuple(items) for name, items in groups.items()}


def first_order(spreads: Sequence[Spread], evaluate: Evaluate) -> FirstOrder:
    """A result with its uncertainty, and what drives it.

    Leaves out what two numbers do together beyond what each does alone.

    Parameters
    ----------
    spreads : sequence of Spread
        What is not sure.
    evaluate : callable
        Takes sets of numbers, each of them what differs from the book; gives the result of each.

    Returns
    -------
    FirstOrder
        In the unit of the result.

    Raises
    ------
    InputError
        The result with the numbers as they are taken is refused, or the one at their means.

    Notes
    -----
    ``u^2 = sum z^2`` with ``z = (f(m + u_i) - f(m - u_i)) / 2`` for each group of numbers that move together,
    where ``m`` are the means and ``u_i`` the standard deviations. Where one side is refused, the step to the
    other side counts.

    References
    ----------
    jcgm-100, 5.1.3 note 2 (the differences) and 5.2.2 note 1 (numbers that move together).
    """
    groups = grouped(spreads)
    means = {spread.place: spread.mean for spread in spreads}
    cases: list[Mapping[Place, float]] = [{}, means]
    for items in groups.values():
        cases += [
            {spread.place: spread.low if spread.deviation is None else spread.at(0.05) for spread in items},
            {spread.place: spread.high if spread.deviation is None else spread.at(0.95) for spread in items},
            {**means, **{spread.place: spread.mean - spread.standard_deviation for spread in items}},
            {**means, **{spread.place: spread.mean + spread.standard_deviation for spread in items}},
        ]
    typical, mean, *others = evaluate(cases)
    for result in (typical, mean):
        if isinstance(result, InputError):
            raise result
    assert isinstance(typical, float)
    assert isinstance(mean, float)
    found = []
    for number, (name, items) in enumerate(groups.items()):
        low, high, down, up = (_number(result) for result in others[4 * number : 4 * number + 4])
        found.append((name, items, low, high, _step(down, mean, up)))
    variance = sum(step * step for *_, step in found)
    deviation = math.sqrt(variance)
    drivers = [
        Driver(_name(name, items), items, low, high, step, step * step / variance if variance else 0.0)
        for name, items, low, high, step in found
    ]
    drivers.sort(key=lambda driver: -abs(driver.deviation))
    reach = SIDE * deviation
    return FirstOrder(typical, mean, deviation, mean - reach, mean + reach, tuple(drivers))


def _number(result: float | InputError) -> float:
    return math.nan if isinstance(result, InputError) else result


def _step(down: float, mean: float, up: float) -> float:
    """Half the way from one side to the other; of a side that is refused the other counts."""
    if math.isnan(down):
        return 0.0 if math.isnan(up) else up - mean
    return mean - down if math.isnan(up) else (up - down) / 2.0


def _name(group: str, items: Sequence[Spread]) -> str:
    """Name of a driver: that of its number, or of what moves together."""
    if len(items) == 1:
        return place_text(items[0].place)
    if "." not in group or " " in group:  # not the key of a default
        return f"{group} ({len(items)})"
    names = dict.fromkeys(place_text(Place(item.place.kind, "", item.place.name)) for item in items)
    return f"{', '.join(names)} ({len(items)} steps)"
