"""The mill's own working of one quote: every input with its range, its words, its prices, its cost opened."""

from __future__ import annotations

import datetime
import hashlib
from collections.abc import Iterator
from dataclasses import fields
from typing import Any

import costing
from costing.cost.quote import FINISHED_METRE, ORDERED
from costing.cost.spread import defaults_taken, place_text, spreads_of
from costing.quantities import QUANTITIES, label
from costing.quantities.units import convert, from_house
from costing.reference_data import default, fingerprint
from costing.report.offer import offer_of
from costing.report.table import Column, Result, Table, costs_of, largest_first
from costing.settings.inputs import COSTS, ENQUIRY, MATERIAL, RANGE, STEP, STYLE, Place, inputs_of
from costing.settings.mill import Mill
from costing.settings.snapshot import snapshot_of, to_text

PIECE = 30_000  # letters of a cell
TYPED = "the book"
MARK, VERSION, TABLES_MARK = "mark of the snapshot", "version of the program", "mark of the reference tables"
OFFERED = "price before rounding"


def inputs_table(mill: Mill, result: Result) -> Table:
    """Every number that an enquiry rests on, with low, typical and high where it has a range."""
    enquiry = result.enquiry
    spreads = {spread.place: spread for spread in spreads_of(mill, enquiry)}
    taken = defaults_taken(mill, enquiry)
    columns = [
        Column("Of"),
        Column("Number"),
        Column("Value"),
        Column("Unit"),
        Column("Low"),
        Column("Typical"),
        Column("High"),
        Column("Taken from"),
        Column("Range from"),
        Column("Moves with"),
    ]
    rows: list[list[Any]] = []
    for place, value in inputs_of(mill, enquiry).items():
        item, spread, key = QUANTITIES[place.name], spreads.get(place), taken.get(place)
        low = typical = high = None
        if key is not None:
            row = default(key)
            low, typical, high = row.low, row.value, row.high
        if spread is not None:
            typical = spread.typical if typical is None else typical
            low, high = (
                (spread.low, spread.high)
                if spread.deviation is None
                else (
                    spread.at(0.05),
                    spread.at(0.95),
                )  # of a standard deviation, the ends that 9 of 10 keep to
            )
        numbers = [
            None if number is None else float(f"{from_house(number, item.usual, item.unit):.8g}")
            for number in (value, low, typical, high)
        ]
        where = f"default, {default(key).source}" if key is not None else _cell(mill, result, place) or TYPED
        rows.append(
            [
                f"{place.kind} {place.code}".strip(),
                label(place.name),
                numbers[0],
                item.usual,
                *numbers[1:],
                where,
                "" if spread is None else spread.grounds,
                "" if spread is None or spread.moves_with == place_text(place) else spread.moves_with,
            ]
        )
    note = (
        f"{len(rows)} numbers, {len(taken)} of them defaults that the book leaves empty, {len(spreads)} with "
        "a range; without low and high it is taken for sure. Of a standard deviation 9 of 10 lie between."
    )
    return Table("inputs", f"{enquiry.code}: inputs", note, columns, rows)


def _cell(mill: Mill, result: Result, place: Place) -> str:
    enquiry = result.enquiry
    owners = {STYLE: enquiry.style, ENQUIRY: enquiry.code, RANGE: enquiry.range, MATERIAL: place.code}
    if place.kind == STEP:
        return mill.cell_of_step(enquiry.recipe, enquiry.range, place.code, place.name)
    if place.kind == COSTS:
        return mill.cell_of("costs", "", place.name)
    return mill.cell_of(place.kind, owners[place.kind], place.name) if place.kind in owners else ""


def words_table(mill: Mill, result: Result) -> Table:
    """Every word that an enquiry rests on: route, products, and what is chosen from a list."""
    enquiry = result.enquiry
    recipe, range_ = mill.recipe(enquiry.recipe), mill.range(enquiry.range)
    owners: list[tuple[str, Any]] = [
        ("enquiry", enquiry),
        ("style", mill.style(enquiry.style)),
        ("recipe", recipe),
        ("range", range_),
    ]
    steps = mill.steps_of(recipe, range_)
    rows = [["recipe", "steps of the route", ", ".join(step.name for step in steps)]]
    for owner, thing in [*owners, *((f"step {step.name}", step) for step in steps)]:
        for field in fields(thing):
            word = getattr(thing, field.name)
            if isinstance(word, str) and word and field.name not in ("name", "order_unit"):
                rows.append([owner, label(field.name), word])
    columns = [Column("Of"), Column("What"), Column("Word")]
    note = "Words and codes as they are counted; what is left empty is left out."
    return Table("words", f"{enquiry.code}: words of the inputs", note, columns, rows)


def cost_opened(mill: Mill, result: Result, by: str) -> Table:
    """Cost of an enquiry by material or by cause, largest first."""
    currency, per = costs_of(mill).currency, result.quote.per[FINISHED_METRE]
    columns = [
        Column("Material" if by == "material" else "Cause"),
        Column("Cost", f"{currency} per m of finished cloth", 4),
        Column("Share", "%", 1),
    ]
    rows: list[list[Any]] = [
        [name, cost * per, 100.0 * cost / result.quote.cost_per_kg]
        for (name,), cost in result.quote.by(by).items()
    ]
    note = "Largest first; the lines add up to the sum. Below zero is a credit."
    return largest_first(f"cost_by_{by}", f"{result.enquiry.code}: cost by {by}", note, columns, rows, (1, 2))


def prices_used(mill: Mill, result: Result) -> Table:
    """Every price that was counted, as of the mill's gate, with the date of its list."""
    costs = costs_of(mill)
    columns = [
        Column("What"),
        Column("Description"),
        Column("Price", f"{costs.currency} per unit", 4),
        Column("Unit"),
        Column("Date of the price"),
    ]
    rows: list[list[Any]] = []
    counted = {(line.material, line.unit_price, line.unit): None for line in result.quote.lines}
    for material, price, unit in counted:
        if unit == "money":
            continue  # the overhead is a share, among the inputs
        product = mill.materials.get(material)
        date = costs.price_date if product is None else product.price_date or costs.price_date
        rows.append([material, "" if product is None else product.description, price, unit, date])
    note = (
        "With freight and exchange rate, in the mill's money. A price without a date has that of Mill costs."
    )
    return Table("prices", f"{result.enquiry.code}: prices counted", note, columns, rows)


def mark_of(text: str) -> str:
    """A short mark of a text: another text, another mark."""
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def snapshot_table(mill: Mill, result: Result) -> Table:
    """All that a quote rests on, as one text in pieces that a cell can hold; it makes the quote again."""
    text = to_text(snapshot_of(mill, result.enquiry))
    pieces = [text[at : at + PIECE] for at in range(0, len(text), PIECE)]
    rows: list[list[Any]] = [[float(number), piece] for number, piece in enumerate(pieces, start=1)]
    note = (
        f"Joined in their order the pieces are one JSON text with the mark {mark_of(text)}: do not edit it."
    )
    columns = [Column("Piece", "", 0), Column("Text")]
    return Table("snapshot", "Snapshot of the inputs", note, columns, rows)


def facts_of_quote(mill: Mill, result: Result, said: dict[str, Any]) -> Table:
    """What was offered, by which cost and margin, and what the figures were made with.

    Parameters
    ----------
    mill, result
        The book, and the enquiry of it.
    said : dict
        What stands on the customer's page: what -> text, number or date.
    """
    return Table(
        "offer",
        "Quote and working",
        "For the mill only: recipe, cost and margin. The customer's page is a file of its own.",
        [Column("What"), Column("Value")],
        [*([what, value] for what, value in said.items()), *_money_facts(mill, result)],
    )


def _money_facts(mill: Mill, result: Result) -> Iterator[list[Any]]:
    enquiry, offer, costs = result.enquiry, offer_of(mill, result), costs_of(mill)
    unit = f"{offer.currency} per {offer.unit} of {offer.counted_on}"
    cost = result.quote.cost_on(ORDERED[enquiry.length_basis]) * convert(1.0, offer.unit, "m")
    yield ["enquiry, recipe, range", f"{enquiry.code}, {enquiry.recipe}, {enquiry.range}"]
    yield [f"cost, {unit}", cost]
    yield ["margin, % of the price", 100.0 * result.quote.margin]
    yield [f"{OFFERED}, {unit}", offer.exact]
    yield [f"price offered, {unit}", float(offer.price)]
    yield [f"value of the order, {offer.currency}", float(offer.value)]
    yield ["date of the mill's prices", costs.price_date]
    yield ["worked out on", datetime.date.today()]
    yield [VERSION, costing.__version__]
    yield [TABLES_MARK, fingerprint()]
    yield [MARK, mark_of(to_text(snapshot_of(mill, enquiry)))]
