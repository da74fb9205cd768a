"""What the next price break of each material would save, per kilogram and per metre of an order."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Any

from costing.cost.offers import mill_on
from costing.cost.price_breaks import NextBreak, next_break, taken_by_order
from costing.cost.quote import ORDERED
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.table import Column, Result, Table, costs_of, decimals_of, priced
from costing.settings.mill import Mill

OF_ENQUIRY = 6  # columns that an enquiry fills


def breaks_ahead(mill: Mill) -> dict[str, NextBreak]:
    """Material -> its next price break, of those that have one which is cheaper on the day of the prices."""
    found = {code: next_break(listed, costs_of(mill)) for code, listed in mill.offers.items()}
    return {code: ahead for code, ahead in found.items() if ahead is not None}


def price_breaks(
    mill: Mill, results: Sequence[Result], codes: Collection[str] | None = None, most_only: bool = False
) -> Table:
    """Materials with a next price break that is cheaper, and what it saves on each enquiry that takes them.

    Parameters
    ----------
    mill : Mill
        With the prices of the day.
    results : sequence of Result
        Enquiries, worked out with those prices.
    codes : collection of str, optional
        Materials; all with such a break where left out.
    most_only : bool, optional
        True for the enquiry alone on whose length each material saves most.
    """
    costs = costs_of(mill)
    money, digits = costs.currency, decimals_of(costs.money_rounding)
    columns = [
        Column("Material"),
        Column("Usual purchase", "kg", 0),
        Column("Supplier now"),
        Column("From", "kg", 0),
        Column("Next from", "kg", 0),
        Column("Supplier next"),
        Column("Saved", f"{money}/kg", 4),
        Column("Share", "%", 1),
        Column("Enquiry"),
        Column("Unit"),
        Column("Takes", "kg", 0),
        Column("Orders in it", "", 1),
        Column("Saved", f"{money}/unit", digits + 1),
        Column("On the order", money, 0),
    ]
    rows: list[list[Any]] = []
    for code, ahead in breaks_ahead(mill).items():
        if codes is not None and code not in codes:
            continue
        listed = mill.offers[code]
        bought = [code, listed.usual_purchase, ahead.now.offer.supplier, ahead.now.offer.from_quantity]
        then = [ahead.from_quantity, ahead.then.offer.supplier, ahead.saved, 100.0 * ahead.saved_share]
        orders = _orders(mill, code, ahead.from_quantity, results)
        for order in orders[: 1 if most_only else None] or [[None] * OF_ENQUIRY]:
            rows.append([*bought, *then, *order])
    which = "The enquiry is the one whose length it makes cheapest by most. " if most_only else ""
    note = (
        "A price break counts by the usual purchase of the sheet Materials; empty there, the smallest does. "
        f"Saved is for the same active part. {which}Orders in it: how many of that order one such purchase "
        "lasts for. Money and room for a larger stock, and what spoils in it, are not counted."
    )
    return Table("price_breaks", "Next price break", note, columns, rows)


def _orders(mill: Mill, code: str, quantity: float, results: Sequence[Result]) -> list[list[Any]]:
    """What buying a material by the next break does to each enquiry that takes it, the most saved first."""
    other = replace(mill, offers={**mill.offers, code: mill.offers[code]._replace(usual_purchase=quantity)})
    other = mill_on(other)
    rows: list[list[Any]] = []
    for item in results:
        taken = taken_by_order(item.quote, item.ledger.plan.saleable_mass, code)
        if not taken > 0.0:
            continue
        unit, basis = item.enquiry.order_unit, ORDERED[item.enquiry.length_basis]
        saved = whole = None
        try:
            offer = priced(other, item.enquiry)[1]
        except InputError:
            pass  # the strength of the other offer makes no bath of it: nothing to be saved there
        else:
            metre = item.quote.cost_on(basis) - offer.cost_on(basis)
            saved, whole = metre * convert(1.0, unit, "m"), metre * item.enquiry.order_length
        rows.append([item.enquiry.code, unit, taken, quantity / taken, saved, whole])
    return sorted(rows, key=lambda row: -(row[4] or 0.0))
