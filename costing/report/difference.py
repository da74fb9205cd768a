"""Tables of why two quotes differ: effects, the inputs behind them, and the lines of cost that move."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any, NamedTuple

from costing.cost.changes import CLOTH, LOT, PRICE, PROGRAM, RECIPE, USAGE, Change
from costing.cost.difference import Effect, LineName, Move, effects_of, together
from costing.cost.money import rounded, shown_parts
from costing.cost.quote import FINISHED_METRE, ORDERED, Quote
from costing.quantities import QUANTITIES
from costing.quantities.units import from_house
from costing.report.table import GREY_KG, Column, Table, capital, decimals_of, priced
from costing.settings.mill import Enquiry, Mill
from costing.settings.snapshot import Document

ORDER_TOLD = (
    "Exchanged from the top down: prices count on the use after the change, all else at prices before."
)
HOLDS = {
    CLOTH: "yarns, ends, picks, widths, crimps, shrinkage",
    LOT: "length, sets, baths at start and end, stops",
    RECIPE: "route, products, settings",
    USAGE: "range, strengths, factors, wastes, seconds",
    PRICE: "prices, rates of exchange, charges, overhead, margin",
    PROGRAM: "another version of the program or of its tables",
}
TOGETHER = "cannot be parted: one is refused without the other"
MOST_ROWS = 15  # that a screen shows of a long table
EMPTY = "empty"


class Side(NamedTuple):
    """One of two quotes that are compared: its name, its snapshot, and its result.

    Attributes
    ----------
    name : str
        As people read it.
    document : dict
        Of its inputs.
    quote : Quote
        As it was saved.
    """

    name: str
    document: Document
    quote: Quote


class Shown(NamedTuple):
    """Effects on one basis, rounded so that they add up.

    Attributes
    ----------
    prices : tuple of Decimal
        Before and after.
    groups : list of Effect
        Each kind of input once.
    amounts : list of Decimal
        Of each group: they add up to the difference of the prices.
    moves : list of Decimal
        Of each move: those of a group add up to it.
    lines : list of dict
        Of each group, its lines: they add up to it.
    """

    prices: tuple[Decimal, Decimal]
    groups: list[Effect]
    amounts: list[Decimal]
    moves: list[Decimal]
    lines: list[dict[LineName, Decimal]]


def quote_alone(mill: Mill, enquiry: Enquiry) -> Quote:
    """The quote of an enquiry, without remarks and streams."""
    return priced(mill, enquiry)[1]


def basis_of_both(before: Document, after: Document) -> str:
    """A metre of what both quotes are for; of finished cloth where they are for two things."""
    asked = {document["enquiry"]["length_basis"] for document in (before, after)}
    return ORDERED.get(asked.pop(), FINISHED_METRE) if len(asked) == 1 else FINISHED_METRE


def shown(effects: Sequence[Effect], prices: tuple[float, float], step: Decimal) -> Shown:
    """Round effects so that they add up to the difference of two rounded prices.

    Parameters
    ----------
    effects : sequence of Effect
        Of the moves, in their order.
    prices : tuple of float
        Before and after, on the basis of the effects.
    step : Decimal
        Step of the rounding.
    """
    before, after = (rounded(price, float(step)) for price in prices)
    groups = together(effects)
    amounts = shown_parts([group.amount for group in groups], after - before, step)
    moves = [Decimal(0)] * len(effects)
    lines = []
    for group, amount in zip(groups, amounts):
        places = [place for place, effect in enumerate(effects) if effect.groups == group.groups]
        for place, part in zip(
            places, shown_parts([effects[place].amount for place in places], amount, step)
        ):
            moves[place] = part
        lines.append(dict(zip(group.lines, shown_parts(list(group.lines.values()), amount, step))))
    return Shown((before, after), groups, amounts, moves, lines)


def difference_tables(
    before: Side, after: Side, path: tuple[Quote, Sequence[Move]], step: Decimal, brief: bool = False
) -> list[Table]:
    """Why a quote is not another: the effects, the inputs that changed, the lines that moved.

    Parameters
    ----------
    before, after : Side
        The quotes.
    path : tuple
        The first quote, and the moves that lead to the other.
    step : Decimal
        Step of the rounding.
    brief : bool, optional
        True for tables that fit a screen.
    """
    first, moves = path
    bases = (basis_of_both(before.document, after.document), GREY_KG)
    effects = [effects_of(first, moves, basis) for basis in bases]
    found = [
        shown(each, (before.quote.price_on(basis), after.quote.price_on(basis)), step)
        for each, basis in zip(effects, bases)
    ]
    money = before.quote.currency
    digits = decimals_of(float(step))
    columns = [Column("Difference", f"{money}/m", digits), Column("Difference", f"{money}/kg", digits)]
    products = {
        item["code"]: item["currency"] or money
        for side in (before, after)
        for item in side.document["materials"]
    }
    per = f"Price, per {bases[0]} and per kg of grey yarn without its weft."
    return [
        _effects(before, after, found, columns, per),
        _inputs(moves, effects[0], found, columns, {"": money, **products}, brief),
        _lines(found, columns, brief),
    ]


def _effects(before: Side, after: Side, found: Sequence[Shown], columns: Sequence[Column], per: str) -> Table:
    """The two prices, with what leads from the one to the other between them."""
    money = [column._replace(title="Price") for column in columns]
    rows: list[list[Any]] = [[before.name, *(float(each.prices[0]) for each in found), None, ""]]
    for place, group in enumerate(found[0].groups):
        amounts = [float(each.amounts[place]) for each in found]
        what = HOLDS[group.groups[0]] if len(group.groups) == 1 else TOGETHER
        rows.append([capital(f"{named(group.groups)} effect"), *amounts, len(group.changes), what])
    rows.append([after.name, *(float(each.prices[1]) for each in found), None, ""])
    rows.append(["difference", *(float(each.prices[1] - each.prices[0]) for each in found), None, ""])
    title = f"From {before.name} to {after.name}"
    heads = [Column("What"), *money, Column("Inputs changed", "", 0), Column("Of")]
    return Table("effects", title, f"{per} {ORDER_TOLD}", heads, rows)


def named(groups: Sequence[str]) -> str:
    """Kinds of input, as people read them."""
    return " and ".join(groups)


def _inputs(
    moves: Sequence[Move],
    effects: Sequence[Effect],
    found: Sequence[Shown],
    columns: Sequence[Column],
    money: Mapping[str, str],
    brief: bool,
) -> Table:
    """Each input that changed, with what it does; those that changed together stand under the first."""
    rank = {group.groups: place for place, group in enumerate(found[0].groups)}
    order = sorted(range(len(moves)), key=lambda at: (rank[moves[at].groups], -abs(effects[at].amount)))
    if brief and len(order) > MOST_ROWS:
        order = sorted(order, key=lambda at: -abs(effects[at].amount))[:MOST_ROWS]
        order.sort(key=lambda at: (rank[moves[at].groups], -abs(effects[at].amount)))
    rows: list[list[Any]] = []
    for at in order:
        for number, change in enumerate(moves[at].changes or [None]):
            amounts = [None, None] if number else [float(each.moves[at]) for each in found]
            told = ["", "", "", "", ""] if change is None else _told(change, money)
            rows.append([capital(named(moves[at].groups)), *told, *amounts])
    left = len(moves) - len(order)
    if left:
        rest = [float(sum(each.moves) - sum(each.moves[at] for at in order)) for each in found]
        rows.append([f"{left} more", *[None] * 5, *rest])
    heads = [Column(title) for title in ("Effect", "Where", "Input", "Before", "After", "Unit")]
    note = "Each with what it adds to the price, largest first; together they add up to the effects."
    return Table("inputs_changed", "Inputs that changed", note, [*heads, *columns], rows)


def _told(change: Change, money: Mapping[str, str]) -> list[Any]:
    """Where, input, before, after and unit of a change, in the usual unit."""
    if change.quantity not in QUANTITIES:
        values = [EMPTY if value in (None, "") else value for value in (change.before, change.after)]
        return [change.where, change.name, *values, ""]
    item = QUANTITIES[change.quantity]
    values = [
        EMPTY if value is None else float(f"{from_house(value, item.usual, item.unit):.12g}")
        for value in (change.before, change.after)
    ]
    unit = item.usual.replace("money", money.get(change.where, money[""]))
    return [change.where, change.name, *values, unit]


def _lines(found: Sequence[Shown], columns: Sequence[Column], brief: bool) -> Table:
    """Each line of cost that moves, by effect, step, material and cause."""
    rows: list[list[Any]] = []
    per_metre = found[0]
    for place, group in enumerate(per_metre.groups):
        keys = dict.fromkeys(key for each in found for key in each.lines[place])
        ordered = sorted(keys, key=lambda key: -abs(group.lines.get(key, Fraction(0))))
        for key in ordered:
            step, material, cause, kind = key
            amounts = [each.lines[place].get(key, Decimal(0)) for each in found]
            rows.append([capital(named(group.groups)), step, material, cause, kind, *amounts])
    if brief and len(rows) > MOST_ROWS:
        largest = sorted(range(len(rows)), key=lambda at: -max(map(abs, rows[at][-2:])))[:MOST_ROWS]
        rest = [sum(row[-2 + which] for at, row in enumerate(rows) if at not in largest) for which in (0, 1)]
        count = len(rows) - MOST_ROWS
        rows = [rows[at] for at in sorted(largest)]
        rows.append([f"{count} more", *[None] * 4, *rest])
    rows = [[*row[:-2], *map(float, row[-2:])] for row in rows]
    heads = [Column(title) for title in ("Effect", "Step", "Material", "Cause", "Group")]
    note = "Each with what it adds to the price, largest first; together they add up to the effects."
    return Table("lines_moved", "Lines of cost that move", note, [*heads, *columns], rows)
