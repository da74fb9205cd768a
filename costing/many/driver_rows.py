"""What drives a result, as a table: a row for each driver, the strongest first."""

from __future__ import annotations

import math
from typing import Any

from costing.cost.drivers import Driver, FirstOrder
from costing.quantities import QUANTITIES, shown
from costing.report import Column, Table

SHOWN_DRIVERS = 15


def drivers_as_table(
    first: FirstOrder, title: str, what: str, named: str, unit: str, digits: int, most: int = SHOWN_DRIVERS
) -> Table:
    """The drivers of any result.

    Parameters
    ----------
    first : FirstOrder
        The result with its drivers.
    title : str
        Of the table.
    what, named : str
        What the result is, in a word and in full.
    unit : str
        Of the result.
    digits : int
        Decimals to show.
    most : int, optional
        How many drivers are shown.
    """
    columns = [
        Column("Driver"),
        Column("Low end"),
        Column("As in the book"),
        Column("High end"),
        Column(f"{what.capitalize()} at the low end", unit, digits),
        Column(f"{what.capitalize()} at the high end", unit, digits),
        Column(f"Moves the {what} by", "1 standard deviation", digits),
        Column("Share of the spread", "%", 1),
        Column("Grounds"),
    ]
    rows = [_row(driver) for driver in first.drivers[:most]]
    left = first.drivers[most:]
    note = (
        f"{named}, {first.typical:.{digits}f} {unit} as in the book. One driver at a time goes to its ends, "
        "everything else stays. The first is what to measure first."
    )
    if left:
        share = 100.0 * sum(driver.share for driver in left)
        note += f" {len(left)} more drivers make {share:.1f} % of the spread together."
    return Table("drivers", title, note, columns, rows)


def _row(driver: Driver) -> list[Any]:
    spread = driver.spreads[0]
    quantity = QUANTITIES[spread.place.name]
    alike = all((item.low, item.high) == (spread.low, spread.high) for item in driver.spreads)
    low, typical, high = (
        (shown(quantity, value) for value in (spread.low, spread.typical, spread.high))
        if alike and spread.deviation is None
        else ("", shown(quantity, spread.typical) if alike else "", "")
    )
    grounds = dict.fromkeys(item.grounds for item in driver.spreads)
    return [
        driver.name,
        low,
        typical,
        high,
        _or_none(driver.at_low),
        _or_none(driver.at_high),
        driver.deviation,
        100.0 * driver.share,
        "; ".join(grounds),
    ]


def _or_none(value: float) -> float | None:
    return None if math.isnan(value) else value
