"""What the tables share that open a figure of a collecting point line by line."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any, NamedTuple

from costing.effluent.discharge import Stream
from costing.report.drain_point import PointResult, production_of_day, streams_at
from costing.report.table import Result
from costing.settings.mill import Mill

BRIEF = 25  # lines that a screen shows; the others are one line
NOTHING = 1e-12  # of the largest line: what a sum that ends at zero leaves of rounding


class Ran(NamedTuple):
    """A row of the plan: enquiry, saleable grey yarn of a day [kg], streams per kilogram of it."""

    enquiry: str
    mass: float
    streams: list[Stream]


def ran_to(mill: Mill, found: PointResult, result: Callable[[str], Result]) -> list[Ran]:
    """What runs to a point, row by row of the plan."""
    given = []
    for row in mill.drain.production:
        if row.point == found.point.code:
            one = result(row.enquiry)
            streams = streams_at(one, found.point)
            given.append(Ran(row.enquiry, production_of_day(row, one)[0], streams))
    return given


def above_rounding(rows: Sequence[list[Any]], numbers: Iterable[int]) -> list[list[Any]]:
    """The rows in which one of some numbers is more than what rounding leaves of the largest of its column.

    Examples
    --------
    >>> above_rounding([["a", 2.0], ["b", 1e-14]], [1])
    [['a', 2.0]]
    """
    largest = {place: max((abs(row[place]) for row in rows), default=0.0) for place in numbers}
    return [row for row in rows if any(abs(row[at]) > NOTHING * most for at, most in largest.items())]


def brief_lines(rows: list[list[Any]], texts: int, summed: Iterable[int]) -> list[list[Any]]:
    """The largest lines, the others as one, and the sum.

    Parameters
    ----------
    rows : list
        Largest first, the sum last.
    texts : int
        How many texts a row begins with.
    summed : iterable of int
        Places of the numbers that add up.
    """
    *lines, total = rows
    small = lines[BRIEF:]
    if len(small) < 2:
        return rows
    rest: list[Any] = [f"{len(small)} others", *[""] * (texts - 1), *[None] * (len(total) - texts)]
    for place in summed:
        rest[place] = sum(row[place] for row in small)
    return [*lines[:BRIEF], rest, total]
