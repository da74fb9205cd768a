"""Fit contested factors so that what the ledger says was taken meets what left the store.

A factor is a typical value that the book leaves to the tables, such as the rinse loss of indigo or the
oxygen that the surface of the dye boxes takes up. What a figure is off is counted as a share of what the
book's values predict, with the same noise for all figures unless a noise is given for each material. Some
periods, the last ones, take no part in the fit: they show whether it predicts better.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy
from numpy.typing import NDArray

from costing.many.bounded_fit import NEAR, Confidence, Predict, Solved, solve
from costing.many.factors import Factor
from costing.many.lanes import Floats
from costing.many.store_use import Observed, Uses, places_left_to_typical
from costing.many.told_factors import Group, settle
from costing.quantities import InputError
from costing.settings.mill import Mill

HELD_BACK = 0.25  # share of the periods
STILL = 1e-5  # of its use from bound to bound: a material that the factors do not move


Those = NDArray[numpy.bool_]


class Fitted(NamedTuple):
    """What became of a factor. House units.

    Attributes
    ----------
    factor : Factor
        Which.
    state : str
        Told, not told, or not told apart (`costing.many.told_factors`).
    taken : bool
        False where the value is that of the book, because it is not told.
    value, low, high : float
        What counts, and between what it lies together with all other factors.
    at_bound, beyond : bool
        True where the value is at a bound, and where all that the periods leave lies beyond it.
    """

    factor: Factor
    state: str
    taken: bool
    value: float
    low: float
    high: float
    at_bound: bool
    beyond: bool


class Calibration(NamedTuple):
    """A fit, and how it predicts.

    Attributes
    ----------
    data : Observed
        What it was fitted to.
    fitted : tuple of Fitted
        The factors.
    groups : tuple of Group
        Those that cannot be told apart, as shares of their bounds.
    sure : Confidence
        Noise and reach, of all factors that are asked for.
    given_noise : bool
        True where the noise was given.
    held : int
        How many periods, the last ones, took no part.
    counted : array of bool
        Materials that the factors move: the others took no part.
    before, after : array
        What is predicted with the values of the book and with those fitted, by period and material [kg].
    remarks : tuple of str
        What else is to be said.
    """

    data: Observed
    fitted: tuple[Fitted, ...]
    groups: tuple[Group, ...]
    sure: Confidence
    given_noise: bool
    held: int
    counted: Those
    before: Floats
    after: Floats
    remarks: tuple[str, ...]

    def error(self, predicted: Floats) -> Floats:
        """Mean size of what is predicted less what was issued, over what was issued, where held back.

        By material [fraction]; not a number where nothing was issued.
        """
        first = len(self.data.begins) - self.held
        issued, said = self.data.issued[first:], predicted[first:]
        there = issued > 0.0
        off = numpy.where(there, numpy.abs(said - issued) / numpy.where(there, issued, 1.0), 0.0)
        count = there.sum(axis=0)
        return numpy.where(count > 0, off.sum(axis=0) / numpy.maximum(count, 1), numpy.nan)


def held_back(periods: int) -> int:
    """How many periods are held back where nobody says: the last quarter, at least one.

    Examples
    --------
    >>> held_back(12), held_back(3)
    (3, 1)
    """
    return math.ceil(HELD_BACK * periods)


def calibrate(
    mill: Mill,
    data: Observed,
    factors: Sequence[Factor],
    held: int | None = None,
    picked: Sequence[Factor] = (),
    noise: Mapping[str, float] = {},
    uses: Uses | None = None,
) -> Calibration:
    """Fit factors to the first periods, and predict the last ones.

    Parameters
    ----------
    mill : Mill
        The mill's book, of which no calibration counts.
    data : Observed
        Production and store issues.
    factors : sequence of Factor
        What to fit.
    held : int, optional
        How many periods, the last ones, take no part; a quarter where it is left out.
    picked : sequence of Factor, optional
        Those to be fitted where they cannot be told apart from others, which then stay as in the book.
    noise : mapping, optional
        Material -> standard deviation of a figure as a share of it, of every material or of none [fraction].
    uses : Uses, optional
        What a kilogram takes; that of the mill's ledger where it is left out.

    Raises
    ------
    InputError
        Too few periods for the factors, or all of a group picked that cannot be told apart.
    """
    held = held_back(len(data.begins)) if held is None else held
    first = len(data.begins) - held
    if held < 1 or first < 1:
        raise InputError(
            "periods",
            f"{len(data.begins)} with {held} held back; accepted is one period or more to fit, and "
            "one held back: records of a longer time, or weeks in place of months",
        )
    uses = uses or uses_of(mill, data, factors)
    book = numpy.array([factor.book for factor in factors])
    low = numpy.array([factor.low for factor in factors])
    high = numpy.array([factor.high for factor in factors])

    def used(points: Floats) -> Floats:
        taken: Floats = numpy.einsum("pi,nim->npm", data.made, uses(points))
        return taken

    ends = numpy.vstack(
        [book, *(_swapped(book, place, end) for end in (low, high) for place in range(len(book)))]
    )
    spread = used(ends)
    before = spread[0]
    moved: Those = numpy.abs(spread[1:] - before).max(axis=(0, 1)) > STILL * before.max(axis=0)
    asked = _noise_of(data, noise)
    part = (before[:first] > 0.0) & moved
    said = [*data.remarks, *_left_out(data, before, moved)]
    count = int(part.sum())
    if count < len(factors) + (not noise):
        raise InputError(
            "periods",
            f"{count} figures of the store for {len(factors)} factors; accepted are more figures "
            "than factors: "
            "more periods, or fewer factors",
        )
    actual, scale = data.issued[:first][part], (before[:first] * asked)[part]

    def solved(free: Sequence[int]) -> Solved:
        where = list(free)
        predict = _predict(used, book, where, first, part)
        return solve(predict, actual, scale, book[where], low[where], high[where])

    width = high - low
    done = settle(solved, (book - low) / width, [factors.index(one) for one in picked], bool(noise))
    fitted = []
    for number, factor in enumerate(factors):
        taken = number in done.free
        share, *sides = (float(numbers[number]) for numbers in (done.values, done.low, done.high))
        value, least, most = (float(low[number] + part * width[number]) for part in (share, *sides))
        fitted.append(
            Fitted(
                factor,
                done.states[number],
                taken,
                value if taken else factor.book,
                least,
                most,
                taken and not NEAR < share < 1.0 - NEAR,
                bool(done.beyond[number]),
            )
        )
    after = used(numpy.array([[item.value for item in fitted]]))[0]
    return Calibration(
        data, tuple(fitted), done.groups, done.sure, bool(noise), held, moved, before, after, tuple(said)
    )


def uses_of(mill: Mill, data: Observed, factors: Sequence[Factor]) -> Uses:
    """What a kilogram takes by the mill's ledger, as these factors move it."""
    places = [
        {
            place: number
            for place, key in left.items()
            for number, factor in enumerate(factors)
            if factor.stands_at(place, key, item.range)
        }
        for item, left in zip(data.items, places_left_to_typical(mill, data.items), strict=True)
    ]
    return Uses(mill, data, places)


def _swapped(values: Floats, place: int, end: Floats) -> Floats:
    found = values.copy()
    found[place] = end[place]
    return found


def _noise_of(data: Observed, noise: Mapping[str, float]) -> Floats:
    """A noise for each material, or one for each where none is given."""
    missing = [code for code in data.materials if code not in noise]
    if noise and missing:
        raise InputError(
            "--noise", f"is not given for {', '.join(missing)}; accepted is all materials or none"
        )
    return numpy.array([noise.get(code, 1.0) for code in data.materials])


def _left_out(data: Observed, before: Floats, moved: Those) -> list[str]:
    told = [f"{code} is not moved by these factors: it took no part" for code in _named(data, ~moved)]
    odd = ((before == 0.0) & (data.issued > 0.0)).any(axis=0)
    return told + [
        f"{code} was issued in a period in which nothing was made that takes it: that figure took no part"
        for code in _named(data, odd)
    ]


def _named(data: Observed, those: Those) -> list[str]:
    return [code for code, there in zip(data.materials, those, strict=True) if there]


def _predict(used: Predict, book: Floats, where: list[int], first: int, part: Those) -> Predict:
    def predict(points: Floats) -> Floats:
        whole = numpy.tile(book, (len(points), 1))
        whole[:, where] = points
        return used(whole)[:, :first][:, part]

    return predict
