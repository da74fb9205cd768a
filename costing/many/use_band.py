"""The range of what an enquiry uses of a product, of water, steam or power."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from typing import Any, NamedTuple

from costing.cost.drivers import FirstOrder
from costing.cost.quote import Quote
from costing.many.band import DRAWS, SEED, Band, band_of, draw_quotes, drivers_of
from costing.many.quotes import Worked
from costing.quantities import InputError, listed, meant
from costing.report import Column, Table
from costing.report.drivers import drivers_as_table
from costing.report.table import NOT_USED, priced
from costing.settings.mill import Enquiry, Mill

AMOUNT = "amount"
# Unit of a bought thing -> unit per kilogram of yarn, how many of them one is, and decimals.
SHOWN = {"kg": ("g/kg", 1000.0, 3), "L": ("L/kg", 1.0, 3), "kWh": ("kWh/kg", 1.0, 4), "h": ("h/t", 1000.0, 3)}


class RangedUse(NamedTuple):
    """What an enquiry uses of one thing, with its range.

    Attributes
    ----------
    enquiry : Enquiry
        Which.
    what, unit : str
        The thing as the quote calls it, and its unit per kilogram of saleable grey yarn.
    digits : int
        Decimals to show.
    band : Band
        In that unit.
    first_order : FirstOrder
        In that unit.
    """

    enquiry: Enquiry
    what: str
    unit: str
    digits: int
    band: Band
    first_order: FirstOrder


def ranged_use(mill: Mill, enquiry: Enquiry, what: str, draws: int = DRAWS, seed: int = SEED) -> RangedUse:
    """Draw what an enquiry uses of one thing, per kilogram of saleable grey yarn.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, with costs, and an enquiry of it.
    what : str
        Code of a product, water, steam or electric energy.
    draws, seed : int, optional
        How many, and what they start from.

    Raises
    ------
    InputError
        The enquiry is refused or does not use it, or every draw is refused.
    """
    _, quoted, _, _ = priced(mill, enquiry)
    units = {line.material: line.unit for line in quoted.lines if line.group not in NOT_USED}
    known = {name: unit for name, unit in units.items() if unit in SHOWN}
    found = meant(what, known)
    if found is None:
        raise InputError(
            "", f"{what!r} is nothing that enquiry {enquiry.code} uses; there are: {listed(known, what)}"
        )
    unit, times, digits = SHOWN[known[found]]
    worked = _amount_of(found, times)
    band = band_of(draw_quotes(mill, enquiry, worked, draws, seed).values[AMOUNT])
    return RangedUse(enquiry, found, unit, digits, band, drivers_of(mill, enquiry, worked, AMOUNT))


def _amount_of(material: str, times: float) -> Worked:
    def worked(quoted: Quote) -> Mapping[Hashable, Any]:
        return {AMOUNT: times * sum(line.amount for line in quoted.lines if line.material == material)}

    return worked


def use_tables(item: RangedUse) -> list[Table]:
    """The range of a use, and what drives it."""
    band, first, digits = item.band, item.first_order, item.digits
    columns = [
        Column("Enquiry"),
        Column("Use of"),
        Column("As in the book", item.unit, digits),
        Column("Low", "5 % lie below", digits),
        Column("Middle", "half", digits),
        Column("High", "5 % lie above", digits),
        Column("Standard deviation", item.unit, digits),
        Column("Low", "by first order", digits),
        Column("High", "by first order", digits),
        Column("Refused", "draws", 0),
    ]
    row = [
        *(item.enquiry.code, item.what, first.typical, band.low, band.middle, band.high, band.deviation),
        *(first.low, first.high, float(band.refused)),
    ]
    title = f"{item.enquiry.code}: what drives the use of {item.what}"
    return [
        Table("use_band", "Range of a use", "Per kg of saleable grey yarn, as delivered.", columns, [row]),
        drivers_as_table(first, title, "use", f"Use of {item.what}", item.unit, digits),
    ]
