"""Which factors a fit tells: what it does not tell stays as in the book, and the rest is fitted again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from costing.many.bounded_fit import (
    Combination,
    Confidence,
    Solved,
    combination,
    confidence,
    untold,
)
from costing.many.lanes import Floats

TOLD, ALONE, TOGETHER = "told", "not told", "not told apart"

# Numbers of the factors that are free -> the fit with all others as in the book.
Fit = Callable[[Sequence[int]], Solved]


class Group(NamedTuple):
    """Factors that cannot be told apart, counted as shares of their bounds.

    Attributes
    ----------
    members : tuple of int
        Numbers of the factors.
    sum : Combination or None
        What is told of them.
    either : tuple of float
        For each, what would do with the others of the group as in the book.
    """

    members: tuple[int, ...]
    sum: Combination | None
    either: tuple[float, ...]


class Settled(NamedTuple):
    """What became of all factors, counted as shares of their bounds.

    Attributes
    ----------
    states : list of str
        Told, not told, or not told apart.
    free : list of int
        Numbers of those that were fitted in the end: all that are told, and what was picked of a group.
    values, low, high : array
        What counts, and between what it lies.
    beyond : array of bool
        True where all that is left lies outside the bounds.
    groups : tuple of Group
        Those that cannot be told apart.
    sure : Confidence
        Of the fit of all factors.
    """

    states: list[str]
    free: list[int]
    values: Floats
    low: Floats
    high: Floats
    beyond: Floats
    groups: tuple[Group, ...]
    sure: Confidence


def _covers(sure: Confidence, number: int) -> bool:
    """Whether the ends of a factor are its bounds."""
    return bool(sure.low[number] <= 0.0 and sure.high[number] >= 1.0)


def settle(fit: Fit, book: Floats, picked: Sequence[int], given_noise: bool) -> Settled:
    """Fit all factors, hold what is not told as in the book, and fit the rest again until all of it is told.

    The ends of a factor are those of the fit of all, so they do not take for granted what is held; only
    those of a factor that is picked out of a group are given for the others as they stand in the book.

    Parameters
    ----------
    fit : callable
        Fits some of the factors.
    book : array
        What stands in the book.
    picked : sequence of int
        Those that are fitted where they cannot be told apart from others, which are held for it.
    given_noise : bool
        As of `confidence`.
    """
    count = len(book)
    states = [TOLD] * count
    groups: list[Group] = []
    free = list(range(count))
    solved = fit(free)
    whole = sure = confidence(solved, given_noise)
    while free:
        open_ = untold(solved, sure)
        held = {free[number] for number in open_.alone}
        for group in open_.together:
            members = tuple(free[number] for number in group)
            others = [number for number in free if number not in held | set(members)]
            either = tuple(float(fit([number, *others]).shares[0]) for number in members)
            groups.append(Group(members, combination(solved, sure, open_, group), either))
            for number in members:
                states[number] = TOGETHER
            kept = [number for number in members if number in picked][:1]
            held.update(number for number in members if number not in kept)
        if not held:  # ends that cover the bounds say nothing
            held = {number for number in free if states[number] == TOLD and _covers(whole, number)}
        if not held:
            break
        for number in held:
            states[number] = ALONE if states[number] == TOLD else states[number]
        free = [number for number in free if number not in held]
        if free:
            solved = fit(free)
            sure = confidence(solved, given_noise)
    values, low, high, beyond = book.copy(), whole.low.copy(), whole.high.copy(), whole.beyond.copy()
    for place, number in enumerate(free):
        value = values[number] = solved.shares[place]
        if states[number] == TOGETHER:
            low[number], high[number], beyond[number] = sure.low[place], sure.high[place], sure.beyond[place]
        low[number], high[number] = min(low[number], value), max(high[number], value)
    return Settled(states, free, values, low, high, beyond, tuple(groups), whole)
