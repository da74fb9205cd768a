"""Read the sheet How sure: how far numbers of the book may be from the truth."""

from __future__ import annotations

from dataclasses import fields
from functools import lru_cache
from typing import Any

from costing.book.layout import tables_of
from costing.book.quantity_cell import read_quantity
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table
from costing.quantities import QUANTITIES, InputError, label, listed, meant
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import COSTS, DEPTH, ENQUIRY, EXCHANGE, MATERIAL, RANGE, STEP, STYLE
from costing.settings.material import Material
from costing.settings.mill import Enquiry, Mill, Range
from costing.settings.mill_costs import MillCosts
from costing.settings.quality import ShadeDepth
from costing.settings.steps import STEP_KINDS
from costing.settings.style import Style

SHEET = "How sure"
SETTINGS: dict[str, tuple[Any, ...]] = {
    STYLE: (Style,),
    ENQUIRY: (Enquiry,),
    RANGE: (Range,),
    STEP: tuple(STEP_KINDS.values()),
    MATERIAL: (Material,),
    COSTS: (MillCosts,),
    DEPTH: (ShadeDepth,),
}
LEAST = 0.002  # share of a number; less is a share typed where its per cent is asked


@lru_cache(maxsize=16)
def quantities_of(kind: str) -> dict[str, str]:
    """Label -> name of every number of a kind that may be unsure: a whole number of boxes is not.

    Examples
    --------
    >>> quantities_of("exchange rate")
    {'exchange rate': 'exchange_rate'}
    """
    if kind == EXCHANGE:
        return {"exchange rate": "exchange_rate"}
    names = dict.fromkeys(field.name for setting in SETTINGS[kind] for field in fields(setting))
    return {label(name): name for name in names if name in QUANTITIES and not QUANTITIES[name].whole}


def read_how_sure(sheet: Sheet, mill: Mill) -> None:
    """Read the rows into the mill, all else of which is read already.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("how_sure")
    mill.spreads.extend(_row(row, mill) for row in read_table(sheet, table))


def _row(row: TableRow, mill: Mill) -> GivenSpread:
    kind = row.text("input_kind")
    known, text = quantities_of(kind), row.text("quantity")
    found = meant(text, known)
    if found is None:
        raise InputError(
            row.at("quantity"),
            f"{text!r} is no number of a {kind} that may be unsure; there are: {listed(known, text)}",
        )
    low, high = (_end(row, side, known[found]) for side in ("low", "high"))
    give_or_take = row.number("give_or_take", unit="%")
    deviation = row.number("deviation", unit="%")
    if (low is None) != (high is None):
        empty = "low" if low is None else "high"
        raise InputError(row.at(empty), f"{empty} is empty beside the other end; accepted is both filled")
    for name, share in (("give_or_take", give_or_take), ("deviation", deviation)):
        if share is not None and 0.0 < share < LEAST:
            typed = 100.0 * share
            raise InputError(
                row.at(name),
                f"{label(name)} is {typed:.3g} %; accepted is {100.0 * LEAST:g} to 100 %; the unit is "
                f"already %, so type {100.0 * typed:.3g}, not {typed:.3g}; what is known better needs no row",
            )
    ways = sum(way is not None for way in (low, give_or_take, deviation))
    if ways != 1:
        said = "none is filled" if not ways else f"{ways} are filled"
        raise InputError(
            row.where, f"low and high, give or take, standard deviation: {said}; accepted is one of the three"
        )
    if low is not None and high is not None and low > high:
        raise InputError(row.at("low"), "low is above high; accepted is the lower end first")
    moves_with, owner = row.text("moves_with"), _owner(row, kind, mill)
    return GivenSpread(kind, owner, known[found], low, high, give_or_take, deviation, moves_with, row.where)


def _owner(row: TableRow, kind: str, mill: Mill) -> str:
    """Step, code or currency as the book spells it; "" for all of the kind."""
    text = row.text("owner")
    if not text:
        return ""
    there: dict[str, Any] = {
        STYLE: mill.styles,
        ENQUIRY: mill.enquiries,
        RANGE: mill.ranges,
        STEP: {name: None for route in mill.routes.values() for name, _ in route},
        MATERIAL: mill.materials,
        COSTS: {},
        DEPTH: mill.depths,
        EXCHANGE: {rate.currency: None for rate in mill.rates},
    }
    known = [*there[kind], *(code for sort, code in mill.refused if sort == kind)]
    found = meant(text, known)
    if found is None:
        accepted = f"one of: {listed(known, text)}" if known else "an empty cell"
        raise InputError(row.at("owner"), f"{kind} {text!r} is not in the book; accepted is {accepted}")
    return found


def _end(row: TableRow, side: str, name: str) -> float | None:
    """One end in the house unit; None where empty."""
    cell = row.cells[side]
    if cell.is_empty:
        return None
    unit, called = row.cells["unit"].value, f"{side} of {label(name)}"
    percent = cell.shown_as_percent
    return read_quantity(cell.value, unit, name, cell.where, called=called, shown_as_percent=percent)
