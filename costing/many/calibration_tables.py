"""A calibration as tables and sentences: what was found, what was not, and whether it predicts better."""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterator
from typing import Any

import numpy

from costing.many.calibration import Calibration, Fitted
from costing.many.store_use import period_text, places_left_to_typical
from costing.many.told_factors import ALONE, TOLD, Group
from costing.quantities import QUANTITIES, label
from costing.quantities.units import convert
from costing.report import Column, Table
from costing.settings.mill import Mill

FIT, HELD = "fit", "held back"
DIGITS = 4  # of a value that goes on the sheet


def usual(quantity: str, value: float) -> float:
    """A number in the unit that people use, to as many digits as it is worth."""
    item = QUANTITIES[quantity]
    return float(f"{convert(value, item.unit, item.usual):.{DIGITS}g}")


def factors_table(found: Calibration) -> Table:
    """Each factor with its value before and after, its ends and what became of it."""
    columns = [
        *(Column(title) for title in ("Factor", "Unit", "In the book", "Calibrated", "Low", "High")),
        Column("What the periods say"),
    ]
    rows: list[list[Any]] = []
    for place, item in enumerate(found.fitted):
        quantity = item.factor.quantity
        numbers = [usual(quantity, number) for number in (item.factor.book, item.value, item.low, item.high)]
        if not item.taken:
            numbers[1] = None  # type: ignore[call-overload]
        rows.append([item.factor.text, QUANTITIES[quantity].usual, *numbers, _verdict(found, place, item)])
    noise = "as given" if found.given_noise else f"{100.0 * found.sure.noise:.3g} % of a figure, from the fit"
    note = (
        f"Low and high: 95 % confidence for all factors together, {found.sure.reach:.3g} "
        "standard errors. Noise "
        f"of the store: {noise}. A factor that is not told stays as in the book."
    )
    return Table("calibrated_factors", "Calibration", note, columns, rows)


def _verdict(found: Calibration, place: int, item: Fitted) -> str:
    if item.state == TOLD:
        if item.beyond:
            return "at its bound: these periods ask for a value beyond it"
        return "told; at its bound" if item.at_bound else "told"
    if item.state == ALONE:
        return "these periods do not tell it"
    others = [
        found.fitted[other].factor.text
        for group in found.groups
        if place in group.members
        for other in group.members
        if other != place
    ]
    told = " and ".join(dict.fromkeys(others))
    if item.taken:
        return f"fitted with {told} as in the book: they cannot be told apart"
    return f"cannot be told apart from {told}"


def sentences(found: Calibration) -> list[str]:
    """What is to be said beside the tables."""
    return [
        *(text for group in found.groups for text in _of_group(found, group)),
        *_judged(found),
        *found.remarks,
    ]


def _of_group(found: Calibration, group: Group) -> Iterator[str]:
    items = [found.fitted[place].factor for place in group.members]
    names = " and ".join(item.text for item in items)
    yield f"{names} move together in these periods: they cannot be told apart"
    if group.sum is not None:
        widths = [usual(item.quantity, item.high) - usual(item.quantity, item.low) for item in items]
        slopes = [weight / width for weight, width in zip(group.sum.weights, widths, strict=True)]
        start = sum(slope * usual(item.quantity, item.low) for slope, item in zip(slopes, items, strict=True))
        terms = [items[0].text]
        for slope, item in zip(slopes[1:], items[1:], strict=True):
            share = slope / slopes[0]
            terms.append(f"{'+' if share > 0.0 else '-'} {abs(share):.3g} x {item.text}")
        value = (group.sum.value + start) / slopes[0]
        off = abs(group.sum.give_or_take / slopes[0])
        units = ", ".join(QUANTITIES[item.quantity].usual for item in items)
        yield f"what is told is {' '.join(terms)} = {value:.4g}, give or take {off:.2g} (in {units})"
    either = [
        f"{item.text} {usual(item.quantity, item.low + share * (item.high - item.low)):g} "
        f"{QUANTITIES[item.quantity].usual}"
        for item, share in zip(items, group.either, strict=True)
    ]
    yield f"either would do, with the others as in the book: {'; or '.join(either)}"


def _judged(found: Calibration) -> Iterator[str]:
    before, after = found.error(found.before), found.error(found.after)
    worse = [
        code
        for code, one, other, moved in zip(found.data.materials, before, after, found.counted, strict=True)
        if moved and not other < one and not math.isnan(other)
    ]
    if not any(item.taken for item in found.fitted):
        yield "nothing is told: there is no calibration to apply"
    elif worse:
        yield f"no better on the periods held back: {', '.join(worse)}"
    else:
        yield "nearer on the periods held back for every material that the factors move"


def error_table(found: Calibration) -> Table:
    """How far each material is off on the periods held back, before and after."""
    columns = [
        Column("Material"),
        Column("Off before", "%", 2),
        Column("Off after", "%", 2),
        Column("Nearer"),
    ]
    rows: list[list[Any]] = []
    numbers = zip(
        found.data.materials, found.error(found.before), found.error(found.after), found.counted, strict=True
    )
    for code, before, after, moved in numbers:
        if math.isnan(before):
            rows.append([code, None, None, "not issued in these periods"])
        else:
            nearer = _nearer(before, after) if moved else "not moved"
            rows.append([code, 100.0 * float(before), 100.0 * float(after), nearer])
    periods = ", ".join(_periods(found)[len(found.data.begins) - found.held :])
    note = (
        "Mean size of predicted less issued, as a share of what was issued, over what was held back: "
        f"{periods}."
    )
    return Table("calibration_error", "Periods held back", note, columns, rows)


def _nearer(before: float, after: float) -> str:
    if math.isclose(before, after, rel_tol=1e-9):
        return "the same"
    return "yes" if after < before else "no"


def predicted_table(found: Calibration) -> Table:
    """What was issued in each period beside what is predicted, before and after."""
    columns = [
        Column("Period"),
        Column("Part"),
        Column("Material"),
        Column("Issued", "kg", 1),
        Column("Predicted before", "kg", 1),
        Column("Predicted after", "kg", 1),
    ]
    first = len(found.data.begins) - found.held
    rows: list[list[Any]] = []
    for column, code in enumerate(found.data.materials):
        for row, period in enumerate(_periods(found)):
            three = (numbers[row, column] for numbers in (found.data.issued, found.before, found.after))
            rows.append([period, HELD if row >= first else FIT, code, *map(float, three)])
    note = "As delivered, at the listed strength. Periods held back took no part in the fit."
    return Table("predicted_use", "Predicted against issued", note, columns, rows)


def _periods(found: Calibration) -> list[str]:
    return [period_text(day, found.data.period) for day in found.data.begins]


SHEET_HEADS = (*("Calibration", "Date", "Range", "Step", "Quantity", "Value", "Low", "High", "Unit", "Note"),)


def sheet_rows(mill: Mill, found: Calibration, name: str, day: datetime.date) -> Table:
    """Rows of the sheet *Calibrations*: one for each step of each range that was made and takes the value."""
    periods = _periods(found)
    before, after = (float(numpy.nanmean(found.error(side))) for side in (found.before, found.after))
    note = (
        f"fitted to {periods[0]} to {periods[-found.held - 1]}; {found.held} held back: "
        f"{100 * before:.2g} % off "
        f"before, {100 * after:.2g} % after"
    )
    rows: list[list[Any]] = []
    left = places_left_to_typical(mill, found.data.items)
    for item in found.fitted:
        if not item.taken:
            continue
        factor, unit = item.factor, QUANTITIES[item.factor.quantity].usual
        places = dict.fromkeys(
            (one.range, place.code)
            for one, places in zip(found.data.items, left, strict=True)
            for place, key in places.items()
            if factor.stands_at(place, key, one.range)
        )
        value, low, high = (usual(factor.quantity, number) for number in (item.value, item.low, item.high))
        for range_, step in places:
            rows.append([name, day, range_, step, label(factor.quantity), value, low, high, unit, note])
    columns = [Column(head) for head in SHEET_HEADS]
    text = "Paste these rows on the sheet Calibrations, and name the calibration on the sheet Mill costs."
    return Table("calibration_rows", "Rows to paste", text, columns, rows)


def without_note(rows: Table) -> Table:
    """The rows of the sheet for a screen, which has no room for the note."""
    return rows._replace(columns=rows.columns[:-1], rows=[row[:-1] for row in rows.rows])
