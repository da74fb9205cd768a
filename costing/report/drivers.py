"""What drives a result, as tables: a row for each driver, the strongest first, and how wide all make it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from costing.cost.drivers import Driver, FirstOrder
from costing.cost.quote import basis_of
from costing.cost.spread import KNOWN_FROM
from costing.quantities import QUANTITIES, shown
from costing.report.table import Column, Result, Table, fine_money
from costing.settings.inputs import inputs_of
from costing.settings.mill import Mill

SHOWN_DRIVERS = 15
ENDS = slice(4, 6)  # columns of a table of drivers: the result at the low end, and at the high end


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
    columns = driver_columns(what, unit, digits)
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


def driver_columns(what: str, unit: str, digits: int) -> list[Column]:
    """The columns of a table of drivers."""
    return [
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


def changes(row: Sequence[Any], typical: float) -> list[float | None]:
    """By how much a result changes at each end of a row of drivers; None where that is refused."""
    return [None if end is None else end - typical for end in row[ENDS]]


def change_columns(unit: str, digits: int) -> list[Column]:
    """The two columns of `changes`."""
    return [Column(f"Change at the {end} end", unit, digits) for end in ("low", "high")]


def cost_drivers(mill: Mill, results: Sequence[Result]) -> Table:
    """Every number with a range that an enquiry rests on, by what it does to the cost of a metre."""
    currency, digits = fine_money(mill)
    unit = f"{currency}/m"
    rows: list[list[Any]] = []
    for item in results:
        first = item.cost_drivers
        table = drivers_as_table(first, "", "cost", "", unit, digits, len(first.drivers))
        for driver, row in zip(first.drivers, table.rows):
            name, *numbers, grounds = row
            ends = changes(row, first.typical)
            rows.append([item.enquiry.code, name, _known_from(driver), *numbers, *ends, grounds])
    head, *heads, last = driver_columns("cost", unit, digits)
    ends_of = change_columns(unit, digits)
    columns = [Column("Enquiry"), head, Column("Known from"), *heads, *ends_of, last]
    note = (
        "One number at a time goes to its ends, everything else stays as in the book. What is not here is "
        "typed, and taken for sure until a row of the sheet How sure says how far it may be off."
    )
    return Table("cost_drivers", "What moves the cost", note, columns, rows)


def cost_spread(mill: Mill, results: Sequence[Result]) -> Table:
    """How sure the cost of a metre is by first order, and whose numbers make it so."""
    currency, digits = fine_money(mill)
    unit = f"{currency}/m"
    columns = [
        Column("Enquiry"),
        Column("Of a metre"),
        Column("Cost", unit, digits),
        Column("Low", "5 % lie below", digits),
        Column("High", "5 % lie above", digits),
        Column("Standard deviation", unit, digits),
        *[Column(f"Spread: {said}", "%", 1) for said in KNOWN_FROM],
        Column("Numbers", "with a range", 0),
        Column("Numbers", "in all", 0),
    ]
    rows: list[list[Any]] = []
    for item in results:
        first = item.cost_drivers
        shares = dict.fromkeys(KNOWN_FROM, 0.0)
        for driver in first.drivers:
            shares[_known_from(driver)] += 100.0 * driver.share
        rows.append(
            [
                *(item.enquiry.code, basis_of(item.enquiry)),
                *(first.typical, first.low, first.high, first.deviation),
                *shares.values(),
                float(sum(len(driver.spreads) for driver in first.drivers)),
                float(len(inputs_of(mill, item.enquiry))),
            ]
        )
    note = "By first order: nine of ten costs lie between low and high where inputs move it evenly."
    return Table("cost_spread", "How sure the cost is", note, columns, rows)


def _known_from(driver: Driver) -> str:
    """Of numbers that move together, the least known."""
    said = {spread.known_from for spread in driver.spreads}
    return next(word for word in KNOWN_FROM if word in said)


def _or_none(value: float) -> float | None:
    return None if math.isnan(value) else value
