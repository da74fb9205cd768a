"""The range of a result: many draws of all that is not sure."""

from __future__ import annotations

import math
import zlib
from collections.abc import Hashable, Mapping, Sequence
from typing import NamedTuple

import numpy

from costing.cost.drivers import FirstOrder, first_order, grouped
from costing.cost.spread import Spread, spreads_of
from costing.many.lanes import Floats
from costing.many.quotes import Outcome, Worked, many_quotes
from costing.quantities import InputError
from costing.settings.inputs import Place, inputs_of
from costing.settings.mill import Enquiry, Mill

DRAWS = 10_000
SEED = 1
LOW, HIGH = 0.05, 0.95


class Band(NamedTuple):
    """What a result may be.

    Attributes
    ----------
    draws, refused : int
        Draws that were made, and those among them that are refused and do not count.
    mean, deviation : float
        Mean and standard deviation.
    low, middle, high : float
        5 %, half and 95 % of the draws lie below.
    error : float
        Standard error of the mean, from the number of draws.
    """

    draws: int
    refused: int
    mean: float
    deviation: float
    low: float
    middle: float
    high: float
    error: float


def drawn(spreads: Sequence[Spread], draws: int, seed: int = SEED) -> dict[Place, Floats]:
    """Draw numbers; what moves together is high together and low together.

    A group has a stream of random numbers of its own, made of the seed and its name: so two enquiries that
    share a group share its draws, and their difference is not blurred by it.

    Parameters
    ----------
    spreads : sequence of Spread
        What is not sure.
    draws : int
        How many.
    seed : int, optional
        The same seed gives the same draws.

    Returns
    -------
    dict
        Place -> numbers, in the house unit.
    """
    found: dict[Place, Floats] = {}
    for name, items in grouped(spreads).items():
        random = numpy.random.default_rng([seed, zlib.crc32(name.encode())])
        share = random.random(draws)
        for spread in items:
            found[spread.place] = numpy.asarray(spread.at(share), dtype=float)
    return found


def band_of(numbers: Floats) -> Band:
    """Mean, spread and ends of what was drawn; what is not a number was refused.

    Raises
    ------
    InputError
        All of it was refused.
    """
    there = numbers[~numpy.isnan(numbers)]
    if not there.size:
        raise InputError("", f"all {numbers.size:,} draws are refused; accepted is a narrower band")
    low, middle, high = (float(value) for value in numpy.quantile(there, (LOW, 0.5, HIGH)))
    deviation = float(there.std(ddof=1)) if there.size > 1 else 0.0
    return Band(
        numbers.size,
        numbers.size - there.size,
        float(there.mean()),
        deviation,
        low,
        middle,
        high,
        deviation / math.sqrt(there.size),
    )


def draw_quotes(
    mill: Mill, enquiry: Enquiry, worked: Worked, draws: int = DRAWS, seed: int = SEED
) -> Outcome:
    """Quote an enquiry with many draws of all that is not sure.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    worked : callable
        What is wanted of each quote.
    draws, seed : int, optional
        How many, and what they start from.

    Returns
    -------
    Outcome
        One number for each draw.
    """
    given = drawn(spreads_of(mill, enquiry), draws, seed)
    return many_quotes(mill, enquiry, given, worked, each=False, size=draws)


def drivers_of(mill: Mill, enquiry: Enquiry, worked: Worked, name: Hashable) -> FirstOrder:
    """What drives a result of an enquiry, by first order.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    worked : callable
        What is worked out of each quote.
    name : hashable
        Which of it.

    Raises
    ------
    InputError
        The enquiry is refused.
    """

    def evaluate(cases: Sequence[Mapping[Place, float]]) -> list[float | InputError]:
        return evaluated(mill, enquiry, cases, worked, name)

    return first_order(spreads_of(mill, enquiry), evaluate)


def evaluated(
    mill: Mill, enquiry: Enquiry, cases: Sequence[Mapping[Place, float]], worked: Worked, name: Hashable
) -> list[float | InputError]:
    """A result for sets of numbers, or why it is refused; what a set leaves out is as in the book."""
    numbers = inputs_of(mill, enquiry)
    places = dict.fromkeys(place for case in cases for place in case)
    given = {
        place: numpy.array([case.get(place, numbers.get(place, math.nan)) for case in cases], dtype=float)
        for place in places
    }
    outcome = many_quotes(mill, enquiry, given, worked, size=len(cases))
    return [
        outcome.refused[case] if case in outcome.refused else float(outcome.values[name][case])
        for case in range(len(cases))
    ]
