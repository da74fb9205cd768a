"""Which value of one number of an enquiry brings its cost, or its price, to a target."""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from functools import lru_cache
from typing import NamedTuple

import numpy

from costing.cost.spread import place_text
from costing.many.lanes import Floats
from costing.many.quotes import Worked, many_quotes
from costing.quantities import QUANTITIES, InputError, listed, shown
from costing.quantities.checking import LIMITS
from costing.settings.inputs import Place, inputs_of
from costing.settings.mill import Enquiry, Mill

POINTS = 201
ROUNDS = 6  # each makes the bracket a fortieth of what it was
FINER = 41


class Answer(NamedTuple):
    """What a search has found.

    Attributes
    ----------
    place : Place
        The number that was changed.
    now : float
        What the book has [house unit].
    result_now : float
        What the book comes to.
    values : tuple of float
        All values within the bounds that meet the target, the one nearest to that of the book first; of a
        whole number those whose result is nearest to the target from below and from above [house unit].
    results : tuple of float
        What each of them comes to.
    least, most : float
        The smallest and largest result within the bounds; not a number where all of it is refused.
    at_least, at_most : float
        The values that give them.
    refused : tuple of (float, InputError)
        Values within the bounds that are refused, each with why.
    """

    place: Place
    now: float
    result_now: float
    values: tuple[float, ...]
    results: tuple[float, ...]
    least: float
    most: float
    at_least: float
    at_most: float
    refused: tuple[tuple[float, InputError], ...]


def place_named(mill: Mill, enquiry: Enquiry, text: str) -> Place:
    """The number of an enquiry that is meant by a text such as ``indigo dyeing: dips`` or ``power price``.

    Raises
    ------
    InputError
        None is meant, or several are.
    """
    return place_among(names_of(inputs_of(mill, enquiry)), enquiry.code, text)


class Names(NamedTuple):
    """Numbers of an enquiry by what they are called.

    Attributes
    ----------
    told : dict
        What is told in a list -> number.
    whole, ends : dict
        What a text is compared with -> what is told: the whole of it, and what stands behind the colon.
    """

    told: dict[str, Place]
    whole: dict[str, list[str]]
    ends: dict[str, list[str]]


def names_of(places: Iterable[Place]) -> Names:
    """What the numbers of an enquiry are called."""
    names = Names({place_text(place): place for place in places}, {}, {})
    for name in names.told:
        names.whole.setdefault(_folded(name), []).append(name)
        names.ends.setdefault(_folded(name.split(": ")[-1]), []).append(name)
    return names


def place_if_any(names: Names, text: str) -> Place | None:
    """The number that is meant by a text; None where none is meant, or several are."""
    found = _called(names, text)
    return names.told[found[0]] if len(found) == 1 else None


def place_among(names: Names, code: str, text: str) -> Place:
    """As `place_named`, of an enquiry whose names are at hand.

    Raises
    ------
    InputError
        As `place_named` does.
    """
    found = _called(names, text)
    if len(found) == 1:
        return names.told[found[0]]
    if found:
        raise InputError("", f"{text!r} is told of several; accepted is one of: {listed(found)}")
    raise InputError("", f"{text!r} is no number of enquiry {code}; there are: {listed(names.told, text)}")


def _called(names: Names, text: str) -> list[str]:
    """The names that a text may mean: those that are the whole text, else those that end in it."""
    wanted = _folded(text)
    return names.whole.get(wanted) or names.ends.get(wanted, [])


@lru_cache(maxsize=4096)
def _folded(text: str) -> str:
    return " ".join(text.replace("_", " ").replace("-", " ").casefold().split())


def search(
    mill: Mill,
    enquiry: Enquiry,
    place: Place,
    target: float,
    worked: Worked,
    name: Hashable,
    low: float | None = None,
    high: float | None = None,
) -> Answer:
    """Find every value of one number, within bounds, for which a result meets a target.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    place : Place
        The number to change.
    target : float
        What the result is to be.
    worked : callable
        What is worked out of each quote.
    name : hashable
        Which of it is the result.
    low, high : float, optional
        Bounds; from half to twice what the book has, where they are left out [house unit].

    Returns
    -------
    Answer
        Without values where no value within the bounds meets the target.

    Raises
    ------
    InputError
        Bounds that are not in their order or not accepted for the number, or every value is refused.

    Notes
    -----
    Looks at many values at once, then closer between two of which one is below the target and one above.
    A result that jumps over the target, as the cost does where one more set is needed, is found as a jump and
    not told as an answer.
    """
    now = inputs_of(mill, enquiry)[place]
    values = _values(place, now, low, high)
    results, refused = _results(mill, enquiry, place, values, worked, name)
    there = ~numpy.isnan(results)
    if not there.any():
        raise next(iter(refused.values()))
    told = tuple((float(values[case]), error) for case, error in sorted(refused.items()))
    lowest, highest = int(numpy.nanargmin(results)), int(numpy.nanargmax(results))
    found = (
        _nearest_whole(values[there], results[there], target)
        if QUANTITIES[place.name].whole
        else _crossings(mill, enquiry, place, values, results, target, worked, name)
    )
    found.sort(key=lambda pair: abs(pair[0] - now))
    ours = _results(mill, enquiry, place, numpy.array([now]), worked, name)[0][0]
    return Answer(
        place,
        now,
        float(ours),
        tuple(value for value, _ in found),
        tuple(result for _, result in found),
        float(results[lowest]),
        float(results[highest]),
        float(values[lowest]),
        float(values[highest]),
        told,
    )


def _values(place: Place, now: float, low: float | None, high: float | None) -> Floats:
    """Values to look at first: whole numbers all of them, others in even steps."""
    item, (least, most) = QUANTITIES[place.name], LIMITS[place.name]
    first = max(least, now / 2.0) if low is None else low
    last = min(most, now * 2.0) if high is None else high
    for end in (first, last):
        if not least <= end <= most:
            raise InputError(
                "",
                f"{place_text(place)}: the bound {shown(item, end)} is not accepted; accepted is "
                f"{shown(item, least)} to {shown(item, most)}",
            )
    if not first < last:
        raise InputError(
            "",
            f"{place_text(place)}: the bounds are {shown(item, first)} and {shown(item, last)}; accepted is "
            "a lower bound below the upper one",
        )
    if item.whole:
        return numpy.arange(numpy.ceil(first), numpy.floor(last) + 1.0)
    return numpy.linspace(first, last, POINTS)


def _results(
    mill: Mill, enquiry: Enquiry, place: Place, values: Floats, worked: Worked, name: Hashable
) -> tuple[Floats, dict[int, InputError]]:
    if QUANTITIES[place.name].whole:  # a number of boxes or dips is one for a whole run of the ledger
        results, refused = numpy.full(len(values), numpy.nan), {}
        for case, value in enumerate(values):
            outcome = many_quotes(mill, enquiry, {place: numpy.array([value])}, worked)
            if outcome.refused:
                refused[case] = outcome.refused[0]
            else:
                results[case] = outcome.values[name][0]
        return results, refused
    outcome = many_quotes(mill, enquiry, {place: values}, worked)
    return outcome.values.get(name, numpy.full(len(values), numpy.nan)), outcome.refused


def _nearest_whole(values: Floats, results: Floats, target: float) -> list[tuple[float, float]]:
    """Whole numbers that come nearest to the target from below and from above, where it lies between."""
    if not results.min() <= target <= results.max():
        return []
    below, above = results <= target, results >= target
    cases = {
        int(numpy.flatnonzero(below)[numpy.argmax(results[below])]),
        int(numpy.flatnonzero(above)[numpy.argmin(results[above])]),
    }
    return [(float(values[case]), float(results[case])) for case in sorted(cases)]


def _crossings(
    mill: Mill,
    enquiry: Enquiry,
    place: Place,
    values: Floats,
    results: Floats,
    target: float,
    worked: Worked,
    name: Hashable,
) -> list[tuple[float, float]]:
    """Values at which the result meets the target, each from a bracket that is made ever narrower."""
    found = [(float(value), float(result)) for value, result in zip(values, results) if result == target]
    over = results > target
    for case in numpy.flatnonzero(over[1:] != over[:-1]):
        if numpy.isnan(results[case : case + 2]).any() or (results[case : case + 2] == target).any():
            continue
        ends = values[case], values[case + 1]
        for _ in range(ROUNDS):
            closer = numpy.linspace(*ends, FINER)
            there, _ = _results(mill, enquiry, place, closer, worked, name)
            sides = numpy.flatnonzero((there > target)[1:] != (there > target)[:-1])
            if not sides.size or numpy.isnan(there).any():
                break
            ends = closer[sides[0]], closer[sides[0] + 1]
        else:
            value, result = _between(ends, (there[sides[0]], there[sides[0] + 1]), target)
            if abs(there[sides[0] + 1] - there[sides[0]]) <= 1e-6 * abs(target):  # else it jumps over
                found.append((value, result))
    return found


def _between(ends: tuple[float, float], results: tuple[float, float], target: float) -> tuple[float, float]:
    """The value between two at which a straight line meets the target, and that target."""
    share = (target - results[0]) / (results[1] - results[0])
    return float(ends[0] + share * (ends[1] - ends[0])), target
