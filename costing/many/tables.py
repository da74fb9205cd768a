"""The range of a result, what drives it, the lot curve and a search for a target, as plain tables."""

from __future__ import annotations

import math
from collections.abc import Hashable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

import numpy

from costing.cost.drivers import FirstOrder
from costing.cost.quote import GROUPS, Quote, basis_of
from costing.cost.spread import place_text
from costing.many.band import DRAWS, SEED, Band, band_of, draw_quotes, drivers_of
from costing.many.lanes import Floats
from costing.many.lot_curve import LotCurve, Sharing
from costing.many.quotes import COST, PRICE, Worked
from costing.many.target import Answer
from costing.quantities import QUANTITIES, shown
from costing.quantities.units import from_house
from costing.report import Column, Table
from costing.report.drivers import SHOWN_DRIVERS, drivers_as_table
from costing.report.table import fine_money
from costing.settings.inputs import inputs_of
from costing.settings.mill import Enquiry, Mill

NO_NUMBER = "refused"


class Ranged(NamedTuple):
    """An enquiry with the range of its cost and price.

    Attributes
    ----------
    enquiry : Enquiry
        Which.
    basis : str
        What money is told on.
    numbers : dict
        Cost, price and ("group", group of cost) -> one number for each draw.
    bands : dict
        The same -> its band.
    first_order : FirstOrder
        Of the cost.
    unsure, inputs : int
        Numbers with a range, of all numbers that the enquiry rests on.
    """

    enquiry: Enquiry
    basis: str
    numbers: Mapping[Hashable, Floats]
    bands: Mapping[Hashable, Band]
    first_order: FirstOrder
    unsure: int
    inputs: int


def cost_price_groups(basis: str) -> Worked:
    """Cost, price and the cost of each group on a basis."""

    def worked(quoted: Quote) -> Mapping[Hashable, Any]:
        per = quoted.per[basis]
        found: dict[Hashable, Any] = {COST: quoted.cost_on(basis), PRICE: quoted.price_on(basis)}
        found.update({("group", group): cost * per for (group,), cost in quoted.by("group").items()})
        return found

    return worked


def ranged(mill: Mill, enquiry: Enquiry, draws: int = DRAWS, seed: int = SEED) -> Ranged:
    """Draw the cost and the price of an enquiry, and tell what drives the cost.

    Raises
    ------
    InputError
        The enquiry is refused, or every draw is.
    """
    basis = basis_of(enquiry)
    worked = cost_price_groups(basis)
    first = drivers_of(mill, enquiry, worked, COST)
    numbers = draw_quotes(mill, enquiry, worked, draws, seed).values
    bands = {name: band_of(drawn) for name, drawn in numbers.items()}
    unsure = sum(len(driver.spreads) for driver in first.drivers)
    return Ranged(enquiry, basis, numbers, bands, first, unsure, len(inputs_of(mill, enquiry)))


def band_table(mill: Mill, results: Sequence[Ranged]) -> Table:
    """Cost and price of each enquiry with their range, and the range by first order beside it."""
    currency, digits = fine_money(mill)
    unit = f"{currency}/m"
    columns = [
        Column("Enquiry"),
        Column("Of a metre"),
        Column("As in the book", unit, digits),
        Column("Low", "5 % lie below", digits),
        Column("Middle", "half", digits),
        Column("High", "5 % lie above", digits),
        Column("Mean", unit, digits),
        Column("Standard deviation", unit, digits),
        Column("Low", "by first order", digits),
        Column("High", "by first order", digits),
        Column("Refused", "draws", 0),
    ]
    rows = []
    for item in results:
        first = item.first_order
        for what in (COST, PRICE):
            band = item.bands[what]
            on_cost = what == COST
            # The margin is a share of the price, so the price is the cost times one number.
            times = 1.0 if on_cost else band.mean / item.bands[COST].mean
            rows.append(
                [
                    item.enquiry.code,
                    what,
                    first.typical * times,
                    band.low,
                    band.middle,
                    band.high,
                    band.mean,
                    band.deviation,
                    first.low * times,
                    first.high * times,
                    float(band.refused),
                ]
            )
    note = " ".join(_band_notes(results))
    return Table("band", "Range of cost and price", note, columns, rows)


def _band_notes(results: Sequence[Ranged]) -> Iterator[str]:
    first = results[0]
    yield (
        f"{first.bands[COST].draws:,} draws of everything that has a range: defaults between their low and "
        "high end, most likely at the typical value, and the rows of the sheet How sure."
    )
    for item in results:
        yield (
            f"{item.enquiry.code}, {item.basis}: {item.unsure} of {item.inputs} numbers have a range; the "
            "others are taken as they are typed."
        )
    if not any("your own" in spread for item in results for spread in _grounds(item)):
        yield "No row of the sheet How sure counts here: what is typed, prices too, is taken for sure."
    yield "First order is the check: both agree where the cost follows its inputs along straight lines."


def _grounds(item: Ranged) -> Iterator[str]:
    return (spread.grounds for driver in item.first_order.drivers for spread in driver.spreads)


def group_band_table(mill: Mill, item: Ranged) -> Table:
    """Range of each group of cost of one enquiry."""
    currency, digits = fine_money(mill)
    columns = [
        Column("Group of cost"),
        Column("Low", "5 % lie below", digits),
        Column("Mean", f"{currency}/m", digits),
        Column("High", "5 % lie above", digits),
        Column("Standard deviation", f"{currency}/m", digits),
    ]
    rows = []
    for group in GROUPS:
        band = item.bands.get(("group", group))
        if band is not None:
            rows.append([group, band.low, band.mean, band.high, band.deviation])
    return Table(
        "band_by_group",
        f"{item.enquiry.code}: range of each group of cost",
        f"On a {item.basis}. Means add up to that of the cost; ends do not, since not all are low at once.",
        columns,
        rows,
    )


def driver_table(mill: Mill, item: Ranged, most: int = SHOWN_DRIVERS) -> Table:
    """What moves the cost of one enquiry, the strongest first."""
    currency, digits = fine_money(mill)
    title = f"{item.enquiry.code}: what drives the cost"
    return drivers_as_table(
        item.first_order, title, "cost", f"Cost of a {item.basis}", f"{currency}/m", digits, most
    )


def _or_none(value: float) -> float | None:
    return None if math.isnan(value) else value


def difference_table(mill: Mill, results: Sequence[Ranged]) -> Table:
    """Cost of each enquiry against the first, and whether the difference is more than what is not sure.

    Numbers that move together in both have the same draws, so what both do not know does not count.
    """
    currency, digits = fine_money(mill)
    first, *others = results
    columns = [
        Column("Enquiry"),
        Column("Against"),
        Column("Difference", f"{currency}/m", digits),
        Column("Low", "5 % lie below", digits),
        Column("High", "5 % lie above", digits),
        Column("Dearer in", "% of the draws", 1),
        Column("So"),
    ]
    rows = []
    for item in others:
        apart = item.numbers[COST] - first.numbers[COST]
        band = band_of(apart)
        dearer = 100.0 * float(numpy.mean(apart[~numpy.isnan(apart)] > 0.0))
        said = "cannot be told apart: the sign of the difference is not sure"
        if band.low > 0.0:
            said = "dearer, beyond what is not sure"
        elif band.high < 0.0:
            said = "cheaper, beyond what is not sure"
        if item.basis != first.basis:
            said = f"not to be compared: {item.basis} against {first.basis}"
        middle = item.first_order.typical - first.first_order.typical
        rows.append([item.enquiry.code, first.enquiry.code, middle, band.low, band.high, dearer, said])
    return Table(
        "difference",
        "Difference of cost, with its range",
        "What both enquiries share, such as one squeeze or one price, is drawn once for both.",
        columns,
        rows,
    )


def lot_table(mill: Mill, enquiry: Enquiry, curve: LotCurve, lines: int = 24) -> Table:
    """Cost against length of order, at round steps of the curve."""
    currency, digits = fine_money(mill)
    unit = f"{currency}/m"
    columns = [
        Column("Order", "m", 0),
        Column("Sets or charges", "", 0),
        Column("Cost", unit, digits),
        Column("Price", unit, digits),
        Column("Surcharge for the lot", unit, digits),
        Column("Surcharge", "% of the cost of a full set", 1),
    ]
    places = sorted(set(numpy.linspace(0, len(curve.lengths) - 1, lines).round().astype(int).tolist()))
    added = curve.surcharge()
    rows = [
        [
            float(curve.lengths[place]),
            float(curve.sets[place]),
            _or_none(float(curve.costs[place])),
            _or_none(float(curve.prices[place])),
            _or_none(float(added[place])),
            _or_none(100.0 * float(added[place]) / curve.reference_cost),
        ]
        for place in places
    ]
    return Table(
        "lots",
        f"{enquiry.code}: cost against length of the order",
        lot_words(mill, enquiry, curve),
        columns,
        rows,
    )


def lot_words(mill: Mill, enquiry: Enquiry, curve: LotCurve) -> str:
    """What a lot curve says, in a few sentences."""
    currency, digits = fine_money(mill)
    said = [
        f"A metre as the enquiry counts it ({enquiry.length_basis}). One full set or charge is "
        f"{curve.reference:,.0f} m at {curve.reference_cost:.{digits}f} {currency}/m."
    ]
    if curve.least is None:
        said.append(
            f"No length of the curve stays within {100 * curve.tolerance:g} % of that: every one of them "
            "bears a surcharge somewhere above it."
        )
    else:
        said.append(
            f"Minimum economic lot: {curve.least:,.0f} m; from there on no order costs more than "
            f"{100 * curve.tolerance:g} % above it."
        )
    own = curve.cost_at(enquiry.order_length)
    if not math.isnan(own):
        over = 100.0 * (own / curve.reference_cost - 1.0)
        said.append(f"The order itself, {enquiry.order_length:,.0f} m: {own:.{digits}f}, {over:+.1f} %.")
    if curve.refused:
        length, error = curve.refused[0]
        said.append(f"{len(curve.refused)} lengths are refused, the first {length:,.0f} m: {error}")
    return " ".join(said)


def sharing_table(mill: Mill, enquiry: Enquiry, shared: Sharing) -> Table:
    """What an order saves that runs in one lot with others of its shade."""
    currency, digits = fine_money(mill)
    saved = shared.alone - shared.shared
    return Table(
        "sharing",
        f"{enquiry.code}: in one lot with {shared.others:,.0f} m of the same shade",
        "All of it is taken to be of the same style. What is saved is for the clerk to share out.",
        [
            Column("Cost alone", f"{currency}/m", digits),
            Column("Cost in the shared lot", f"{currency}/m", digits),
            Column("Saved", f"{currency}/m", digits),
            Column("Saved on the order", currency, 0),
        ],
        [[shared.alone, shared.shared, saved, saved * enquiry.order_length]],
    )


def target_table(mill: Mill, enquiry: Enquiry, answer: Answer, target: float, what: str) -> Table:
    """What a search for a target has found."""
    currency, digits = fine_money(mill)
    item = QUANTITIES[answer.place.name]
    columns = [
        Column("Where"),
        Column(place_text(answer.place), item.usual, 4),
        Column(what, f"{currency}/m", digits),
    ]

    def usual(value: float) -> float:
        return float(from_house(value, item.usual, item.unit))

    rows: list[list[Any]] = [["as in the book", usual(answer.now), answer.result_now]]
    rows += [
        ["meets the target" if not item.whole else "nearest whole number", usual(value), result]
        for value, result in zip(answer.values, answer.results)
    ]
    rows += [
        ["lowest within the bounds", usual(answer.at_least), answer.least],
        ["highest within the bounds", usual(answer.at_most), answer.most],
    ]
    return Table(
        "target", f"{enquiry.code}: {what} of {target:g}", target_words(answer, target), columns, rows
    )


def target_words(answer: Answer, target: float) -> str:
    """What a search says, in a sentence or two."""
    said = []
    if answer.values:
        said.append("A cost is no shade: whether the recipe still gives the shade, trials must show.")
    elif answer.least <= target <= answer.most:
        said.append("No value meets it: the result jumps over the target, as where one more set is needed.")
    else:
        side = "below" if target < answer.least else "above"
        said.append(f"No value within the bounds meets it: the target lies {side} all that they reach.")
    if answer.refused:
        value, error = answer.refused[0]
        item = QUANTITIES[answer.place.name]
        said.append(f"{len(answer.refused)} values are refused, the first {shown(item, value)}: {error}")
    return " ".join(said)
