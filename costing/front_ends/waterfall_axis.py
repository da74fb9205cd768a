"""Where the axis of a waterfall begins: small effects beside large costs would not be seen from 0 on."""

from __future__ import annotations

import math
from typing import NamedTuple

from costing.report import Table

BELOW = 2  # first of the columns: below the bar, cost, more, less
ROOM = 0.25  # below the lowest bar, as a share of what is between the lowest and the highest


class Axis(NamedTuple):
    """Its begin, and what stands beside it."""

    begin: float
    title: str


def axis_of(table: Table) -> Axis | None:
    """The axis of a waterfall; None where a bar would be below 0.

    It begins at a round number below the lowest bar, which is said beside it, and at 0 where the effects are
    large.

    Parameters
    ----------
    table : Table
        Of the waterfall: name, amount, below the bar, cost, more, less.
    """
    lowest = min(row[BELOW] if not row[BELOW + 1] else row[BELOW + 1] for row in table.rows)
    highest = max(sum(row[BELOW:]) for row in table.rows)
    if min(row[BELOW] for row in table.rows) < 0.0 or lowest < 0.0 or highest <= 0.0:
        return None
    money, between = table.columns[1].unit, highest - lowest
    begin = 0.0
    if 0.0 < between < 0.5 * lowest:
        step = 10.0 ** math.floor(math.log10(between))
        begin = math.floor((lowest - ROOM * between) / step) * step
    return Axis(begin, f"{money}; the axis begins at {begin:,.10g}" if begin else money)
