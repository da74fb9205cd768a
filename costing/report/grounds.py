"""Tables of what a result rests on: checks, defaults taken, cautions, sources, and the record of the run."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import costing
from costing.ledger.closure import gaps
from costing.quantities import QUANTITIES, label
from costing.quantities.units import from_house
from costing.reference_data import Default, cautions, fingerprint, materials
from costing.report.drain_remarks import slips_of_drain
from costing.report.table import Column, Result, Table, bought, costs_of, used_products
from costing.settings.mill import Mill
from costing.settings.snapshot import concerns

CLOSES = 1e-9  # largest gap of a balance that is rounding, relative to what moves
ROUNDING = 1e-12  # gaps that are not worth a figure
ALWAYS = ("mixing", "confined_space", "discharge")  # cautions that hold for every range
NO_CAUTION = "no caution in the book"
# How a typical value is told: see `default_row`.
OF_DEFAULT = tuple(
    Column(title)
    for title in ("Taken", "Low", "High", "Unit", "Contested", "Source", "Place in the source", "Note")
)


def checks(mill: Mill, results: Sequence[Result]) -> Table:
    """Warnings, unusual settings, and whether the balance closes."""
    columns = [Column("Enquiry"), Column("Kind"), Column("Where"), Column("What")]
    rows: list[list[Any]] = []
    largest = 0.0
    for item in results:
        code = item.enquiry.code
        rows += [[code, remark.kind, remark.where, remark.text] for remark in item.remarks]
        gap = max(gaps(item.ledger.lines, mill.materials).values(), default=0.0)
        largest = max(largest, gap)
        if gap > CLOSES:
            text = f"the balance does not close: {gap:.0e} of what moves is lost or made"
            rows.append([code, "warning", "ledger", text])
    rows += [["all", remark.kind, remark.where, remark.text] for remark in slips_of_drain(mill)]
    if largest <= CLOSES:
        # How far below depends on the order in which a Python adds up.
        gap_text = f"largest gap {largest:.0e}" if largest > ROUNDING else f"no gap above {ROUNDING:.0e}"
        text = f"every substance and element that enters leaves again; {gap_text} of what moves"
        rows.append(["all", "balance", "ledger", text])
    note = (
        "Warning: the figure may mislead. Unusual: outside the usual range. Balance: proof that the ledger "
        "loses nothing."
    )
    return Table("checks", "Checks", note, columns, rows)


def defaults_taken(mill: Mill, results: Sequence[Result]) -> Table:
    """Typical values taken because a cell of the book is empty, with their band and their source."""
    columns = [
        Column("Enquiries"),
        Column("Where"),
        Column("Setting"),
        *OF_DEFAULT,
    ]
    rows: list[list[Any]] = []
    rows += [[codes, owner, *default_row(row)] for owner, codes, row in _assumptions(mill, results)]
    note = (
        "The typical value, or that of the calibration that counts, taken where a cell of the book is empty. "
        "Type your own figure there instead."
    )
    return Table("defaults_taken", "Defaults taken", note, columns, rows)


def default_row(row: Default) -> list[Any]:
    """A typical value as it is told: setting, taken, low, high, unit, contested, source, place, note."""
    item = QUANTITIES[row.quantity]
    values = [_plain(from_house(value, item.usual, item.unit)) for value in (row.value, row.low, row.high)]
    contested = "measure your own" if row.contested else ""
    place = [row.source, row.locator, row.note]
    return [label(row.quantity), *values, item.usual, contested, *place]


def _plain(value: float) -> float:
    """The number that was typed into the table: without the last digits that a change of unit adds."""
    return float(f"{value:.12g}")


def _assumptions(mill: Mill, results: Sequence[Result]) -> Iterable[tuple[str, str, Default]]:
    """Owner, enquiries it concerns and default, of every assumption behind these results, once."""
    for taken in mill.assumptions:
        owner = taken.owner
        concerned = [item.enquiry.code for item in results if concerns(owner, item.enquiry)]
        if len(concerned) == len(results) > 1:
            yield owner, "all", mill.default_of(taken)
        elif concerned:
            more = f" and {len(concerned) - 4} more" if len(concerned) > 4 else ""
            yield owner, ", ".join(concerned[:4]) + more, mill.default_of(taken)


def cautions_of_use(mill: Mill, results: Sequence[Result]) -> Table:
    """Usual cautions for what these enquiries handle, and to whom they defer."""
    note = "Usual cautions only, for the materials that these quotes use. This is not a safety data sheet."
    return cautions_table(_cautions(mill, results), "safety", "Safety", note)


def cautions_table(found: Mapping[str, Sequence[str]], key: str, title: str, note: str) -> Table:
    """Cautions with the materials that call for each.

    Parameters
    ----------
    found : mapping
        As `cautions_by_material` finds them.
    key, title, note : str
        Of the table.
    """
    columns = [
        Column("Concerns"),
        Column("Materials"),
        Column("Caution"),
        Column("Comes first"),
        Column("Source"),
    ]
    rows: list[list[Any]] = []
    for name, codes in found.items():
        if name in cautions():
            row = cautions()[name]
            source = f"{row.source}: {row.locator}" if row.locator else row.source
            rows.append([row.name, ", ".join(codes), row.caution, row.defer, source])
        else:
            text = (
                "The book names no caution for these. Ask the supplier for the safety data sheet before use."
            )
            rows.append([name, ", ".join(codes), text, cautions()["general"].defer, ""])
    return Table(key, title, note, columns, rows)


def _cautions(mill: Mill, results: Sequence[Result]) -> dict[str, list[str]]:
    """Caution -> codes of the materials that call for it: general first, what holds everywhere last."""
    found = cautions_by_material(mill, used_products(mill, results))
    if any("steam" in bought(item) for item in results):
        found["steam"] = []
    return {**found, **{key: [] for key in ALWAYS}}


def cautions_by_material(mill: Mill, codes: Iterable[str]) -> dict[str, list[str]]:
    """Caution -> codes of the materials that call for it; the general one first."""
    of_substance = {form.substance: form.caution for form in materials().values() if form.substance}
    found: dict[str, list[str]] = {"general": []}
    for code in codes:
        product = mill.materials[code]
        key = (
            product.caution
            if product.caution in cautions()
            else of_substance.get(product.substance, NO_CAUTION)
        )
        found.setdefault(key, []).append(code)
    return found


def sources_cited(mill: Mill, results: Sequence[Result]) -> Table:
    """Every source behind the defaults taken and the cautions shown."""
    columns = [
        Column("Source"),
        Column("Title"),
        Column("Authors"),
        Column("Year"),
        Column("Kind"),
        Column("Opened"),
        Column("Where"),
        Column("Used for"),
    ]
    from costing.reference_data.source_list import (
        sources,  # its reader wants a younger Python than a cell has
    )

    uses: dict[str, dict[str, None]] = {}
    calibrated = {row.source for row in mill.calibrated.values()}
    for _, _, row in _assumptions(mill, results):
        if row.source in calibrated:  # the mill's own records, not a text
            continue
        uses.setdefault(row.source, {})[label(row.quantity)] = None
    for key in _cautions(mill, results):
        if key in cautions():
            found = cautions()[key]
            uses.setdefault(found.source, {})[f"caution: {found.name}"] = None
    rows: list[list[Any]] = []
    for key, used in sorted(uses.items()):
        entry = sources()[key]
        opened = "yes" if entry.opened else "no" if entry.is_publication else ""
        about = [entry.title, entry.authors, entry.year, entry.kind, opened, entry.where]
        rows.append([key, *about, ", ".join(used)])
    note = (
        "Behind the defaults taken and the cautions shown. Opened: no means that the text was not read, so "
        "that its values are from memory and to be verified."
    )
    return Table("sources", "Sources", note, columns, rows)


def run_record(mill: Mill, results: Sequence[Result]) -> Table:
    """What this run was made with."""
    costs = costs_of(mill)
    rows: list[list[Any]] = [
        ["version", costing.__version__],
        ["fingerprint of the reference tables", fingerprint()],
        ["worked out on", datetime.date.today()],
        ["enquiries", len(results)],
        ["mill currency", costs.currency],
        ["rounding of money", costs.money_rounding],
        ["date of the mill's prices", costs.price_date],
        ["offers and exchange rates as of", costs.day],
    ]
    dates = [date for code in used_products(mill, results) if (date := mill.materials[code].price_date)]
    if dates:
        rows.append(["oldest price of a material used", min(dates)])
    rates = {money: rate for money, rate in costs.exchange_rates.items() if money != costs.currency}
    rows += [[f"{costs.currency} for 1 {money}", rate] for money, rate in rates.items()]
    note = "The same book, version and tables give the same figures."
    return Table("run_record", "Record", note, [Column("What"), Column("Value")], rows)
