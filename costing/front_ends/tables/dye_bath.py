"""The dye bath at steady state: what the stock vat brings, what is dosed beside it, what overflows."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.front_ends.tables.table import Column, Result, Table
from costing.process.bath_balance import steady_feeds
from costing.process.bath_salt import salt_in_bath
from costing.settings.mill import Mill
from costing.settings.steps import IndigoDyeing


def dye_bath(mill: Mill, results: Sequence[Result]) -> Table:
    """Feeds of every dye bath, per kilogram of yarn that runs."""
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Indigo fed", "g/kg", 3),
        Column("Stock vat", "L/kg", 4),
        Column("Hydrosulfite fed", "g/kg", 3),
        Column("Hydrosulfite with the stock vat", "g/kg", 3),
        Column("Hydrosulfite dosed", "g/kg", 3),
        Column("Caustic fed", "g/kg", 3),
        Column("Caustic with stock vat and dye", "g/kg", 3),
        Column("Caustic dosed", "g/kg", 3),
        Column("Overflow", "L/kg", 4),
        Column("Make-up water", "L/kg", 4),
        Column("Sulfite and sulfate in the bath", "g/L", 1),
    ]
    rows: list[list[Any]] = []
    for item in results:
        for step, yarn in item.ledger.entering:
            if not isinstance(step, IndigoDyeing):
                continue
            feeds = steady_feeds(
                step, yarn, mill.materials[step.indigo_product], item.ledger.plan.around.throughput
            )
            made = [
                line
                for line in item.ledger.lines
                if line.step == step.name and line.source == "reaction" and line.cause in feeds.hydrosulfite
            ]
            sulfite, sulfate = (
                sum(line.amount for line in made if line.substance == salt)
                for salt in ("sodium_sulfite", "sodium_sulfate")
            )
            rows.append(
                [
                    item.enquiry.code,
                    step.name,
                    1000.0 * feeds.indigo,
                    feeds.stock_volume,
                    1000.0 * feeds.hydrosulfite_total,
                    1000.0 * feeds.hydrosulfite_in_stock,
                    1000.0 * feeds.hydrosulfite_dosed,
                    1000.0 * (feeds.caustic_in_stock + feeds.caustic_dosed),
                    1000.0 * feeds.caustic_in_stock,
                    1000.0 * feeds.caustic_dosed,
                    feeds.overflow,
                    feeds.make_up,
                    1000.0 * salt_in_bath(sulfite, sulfate, step.pick_up_last, feeds.overflow),
                ]
            )
    note = (
        "Per kg of yarn while the range runs, without fills and stops; as 100 %. Dosed: beside the stock vat."
    )
    return Table("dye_bath", "Dye bath", note, columns, rows)
