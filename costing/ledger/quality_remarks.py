"""What a clerk should know of the sets of an order, and of shares that no mill has."""

from __future__ import annotations

from functools import cache

from costing.ledger.shade_lots import shade_lots_of
from costing.ledger.whole import Ledger
from costing.quantities import label, quantity, shown
from costing.quantities.units import convert
from costing.reference_data import defaults
from costing.settings.mill import Mill
from costing.settings.quality import SHARES


def short_last_set(ledger: Ledger) -> str:
    """A sentence where the last set would be short; "" where it would not."""
    lots = shade_lots_of(ledger)
    if not lots.is_short:
        return ""
    unit, fewer = ledger.enquiry.order_unit, lots.sets - lots.together
    assert lots.order_of_fewer is not None
    return (
        f"{lots.sets:.0f} sets of {lots.length:,.0f} m; were the others full, at {lots.longest:,.0f} m, the "
        f"last would be {lots.last:,.0f} m. Up to {convert(lots.order_of_fewer, 'm', unit):,.0f} {unit} "
        f"ordered, {fewer:.0f} would do"
    )


@cache
def _usual_ends(name: str) -> tuple[float, float]:
    """What is usual of a share in any depth of shade [fraction]."""
    band = [item for key, item in defaults().items() if key.startswith(f"seconds.{name}.")]
    return min(item.low for item in band), max(item.high for item in band)


def unusual_shares(ledger: Ledger, mill: Mill) -> list[tuple[str, str, float, float, float, str]]:
    """Shares that are given and not usual: name, cell, value, low, high, and what is said of them."""
    found = []
    for name in SHARES:
        value = getattr(ledger.sorting, name)
        low, high = _usual_ends(name)
        if value == 0.0 or low <= value <= high:
            continue
        own = getattr(ledger.enquiry, name) is not None
        cell = (
            mill.cell_of("enquiry", ledger.enquiry.code, name)
            if own
            else mill.depths[ledger.sorting.depth].where
        )
        item = quantity(name)
        text = f"{label(name)} is {shown(item, value)}; usual is {shown(item, low)} to {shown(item, high)}"
        found.append((name, cell, value, low, high, text))
    return found
