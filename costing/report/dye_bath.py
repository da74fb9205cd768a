"""The dye bath at steady state: what the stock vat brings, what is dosed beside it, what overflows."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.report.table import Column, Result, Table
from costing.settings.steps import IndigoDyeing

SALTS = ("sodium_sulfite", "sodium_sulfate")


def dye_bath(results: Sequence[Result]) -> Table:
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
        Column("Sulfite and sulfate in the bath, start of the lot", "g/L", 1),
        Column("Sulfite and sulfate in the bath, end of the lot", "g/L", 1),
    ]
    rows: list[list[Any]] = []
    for item in results:
        for step, _ in item.ledger.run.entering:
            if not isinstance(step, IndigoDyeing):
                continue
            feeds = item.ledger.run.feeds[step.name]
            content = item.ledger.run.contents[step.name]
            start, end = (
                sum(strengths.get(salt, 0.0) for salt in SALTS) for strengths in (content.start, content.end)
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
                    1000.0 * start,
                    1000.0 * end,
                ]
            )
    note = (
        "Per kg of yarn while the range runs, without fills and stops; as 100 %. Dosed: beside the stock vat."
    )
    return Table("dye_bath", "Dye bath", note, columns, rows)
