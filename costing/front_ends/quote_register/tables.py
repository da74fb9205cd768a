"""Tables of the register: what it holds, and one saved quote with what becomes of it today."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import Any, NamedTuple

import costing
from costing.cost.money import rounded
from costing.cost.quote import Quote
from costing.front_ends.quote_register.record import Head, Kept, local_time, quote_of
from costing.quantities import InputError
from costing.reference_data import fingerprint
from costing.report import Column, Result, Table, work_out
from costing.report.table import decimals_of
from costing.settings.mill import Mill
from costing.settings.snapshot import restored

SAME = 1e-12  # relative: what another Python may add up otherwise
SHORT_NOTE = 40


class Reopened(NamedTuple):
    """A saved quote worked out anew from its snapshot.

    Attributes
    ----------
    kept : Kept
        As it was saved.
    quote : Quote
        As it was saved.
    mill, result : Mill and Result, or None
        Of today's program; None where that refuses it.
    refused : InputError or None
        Why it does.
    """

    kept: Kept
    quote: Quote
    mill: Mill | None
    result: Result | None
    refused: InputError | None

    @property
    def is_same(self) -> bool:
        """True where today's program gives every line as it was saved."""
        return self.result is not None and alike(self.quote, self.result.quote)

    @property
    def verdict(self) -> str:
        """What becomes of it today, in words."""
        if self.result is None:
            return f"cannot be worked out anew: {self.refused}"
        if self.quote == self.result.quote:
            return "worked out anew: the same to the last digit"
        if self.is_same:
            return "worked out anew: the same, but for the order in which the last digits were added up"
        head, now = self.kept.head, self.result.quote.price_on(self.kept.head.basis)
        return (
            f"worked out anew: price {rounded(now, head.rounding)} in place of "
            f"{rounded(head.price, head.rounding)} {head.currency} per {head.basis}, for the program or its "
            "tables have changed since"
        )


def alike(one: Quote, other: Quote) -> bool:
    """Whether two quotes have the same lines, with the same money but for the last digits."""
    if [line[:4] for line in one.lines] != [line[:4] for line in other.lines]:
        return False
    pairs = [
        *((mine.cost, its.cost) for mine, its in zip(one.lines, other.lines)),
        (one.price_per_kg, other.price_per_kg),
        *((one.per[basis], other.per.get(basis, 0.0)) for basis in one.per),
    ]
    return all(abs(mine - its) <= SAME * max(abs(mine), abs(its)) for mine, its in pairs)


def reopen(item: Kept) -> Reopened:
    """Work a saved quote out anew; ages of prices count from the day on which it was saved."""
    quote, _ = quote_of(item)
    day = datetime.datetime.fromisoformat(item.head.saved_at).astimezone().date()
    try:
        mill, enquiry = restored(item.document)
        result = work_out(mill, enquiry, day)
    except InputError as error:
        return Reopened(item, quote, None, None, error)
    return Reopened(item, quote, mill, result, None)


def heads_table(heads: Sequence[Head], brief: bool = False) -> Table:
    """A row for each revision.

    Parameters
    ----------
    heads : sequence of Head
        Of the register.
    brief : bool, optional
        True for what fits a screen.
    """
    digits = max((decimals_of(head.rounding) for head in heads), default=3)
    if brief:
        columns = [Column("Quote"), Column("Rev.", "", 0), Column("Saved"), Column("Customer")]
        columns += [Column("Style"), Column("Recipe"), Column("Ordered", "", 0), Column("")]
        columns += [Column("Price", "per m", digits), Column("Money"), Column("By"), Column("Note")]
        rows: list[list[Any]] = [
            [
                *(
                    head.code,
                    head.revision,
                    local_time(head.saved_at),
                    head.customer,
                    head.style,
                    head.recipe,
                ),
                *(head.ordered, head.ordered_unit, float(rounded(head.price, head.rounding)), head.currency),
                *(head.saved_by, _short(head.note)),
            ]
            for head in heads
        ]
    else:
        columns = [
            Column("Quote"),
            Column("Revision", "", 0),
            Column("Saved", "UTC"),
            *map(Column, ("By", "Customer", "Note", "Description", "Style", "Recipe", "Range")),
            Column("Ordered", "", 0),
            *map(Column, ("Unit", "Length of", "Money", "Basis")),
            Column("Cost", "on the basis", digits),
            Column("Price", "on the basis", digits),
            Column("Price", "per kg of grey yarn", digits),
            Column("Rounding", "", digits),
            *map(Column, ("Prices of", "Version", "Reference tables")),
        ]
        rows = [
            [
                *(*head[:2], _instant(head.saved_at), *head[3:15]),
                *(
                    float(rounded(value, head.rounding))
                    for value in (head.cost, head.price, head.price_per_kg)
                ),
                head.rounding,
                *(datetime.date.fromisoformat(head.price_date), *head[20:]),
            ]
            for head in heads
        ]
    note = "Price per metre of what is ordered. Nothing in the register is ever overwritten."
    return Table("register", "Register of quotes", note, columns, rows)


def _instant(saved_at: str) -> str:
    """A time of the register as it is written down, without the mark of its zone."""
    return saved_at[:19].replace("T", " ")


def _short(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= SHORT_NOTE else f"{line[: SHORT_NOTE - 3]}..."


def kept_tables(opened: Reopened) -> list[Table]:
    """A saved quote: what is known of it, its cost and price on every basis, its lines."""
    item, quote = opened.kept, opened.quote
    head = item.head
    _, remarks = quote_of(item)
    warnings = [f"{remark.where}: {remark.text}" for remark in remarks if remark.kind == "warning"]
    defaults = item.document.get("defaults", [])
    rows: list[list[Any]] = [
        ["quote", item.name],
        ["saved", f"{local_time(head.saved_at)}{f' by {head.saved_by}' if head.saved_by else ''}"],
        ["customer", head.customer],
        ["note", head.note],
        ["description", head.description],
        ["style", head.style],
        ["recipe", head.recipe],
        ["range", head.range],
        ["ordered", f"{head.ordered:,.0f} {head.ordered_unit} of {head.length_basis}"],
        ["prices of", head.price_date],
        ["version", _today(head.version, costing.__version__)],
        ["fingerprint of the reference tables", _today(head.tables, fingerprint())],
        ["typical values taken", len(defaults)],
        *[["warning when saved", text] for text in warnings],
        ["today", opened.verdict],
    ]
    record = Table(
        "kept", item.name, "", [Column("What"), Column("Value")], [row for row in rows if row[1] != ""]
    )
    digits, money = decimals_of(head.rounding), head.currency
    bases = [
        [
            f"per {basis}",
            *(float(rounded(of(basis), head.rounding)) for of in (quote.cost_on, quote.price_on)),
        ]
        for basis in quote.per
    ]
    prices = Table(
        "prices",
        "Cost and price as saved",
        f"Margin {100 * quote.margin:g} % of the price. Per kg and per m of warp without the weft.",
        [Column("Basis"), Column("Cost", money, digits), Column("Price", money, digits)],
        bases,
    )
    columns = [Column(title) for title in ("Step", "Material", "Cause", "Group")]
    columns += [Column("Amount", "per kg", 6), Column("Unit"), Column("Unit price", money, 4)]
    columns += [Column("Cost", f"{money} per kg", 5)]
    lines = Table(
        "cost_lines",
        "Lines of cost as saved",
        "Per kg of grey yarn.",
        columns,
        [list(line) for line in quote.lines],
    )
    return [record, prices, lines]


def _today(saved: str, now: str) -> str:
    return saved if saved == now else f"{saved} (today {now})"


def lines_table(items: Sequence[Kept]) -> Table:
    """The lines of cost of many saved quotes."""
    columns = [Column("Quote"), Column("Revision", "", 0)]
    columns += [Column(title) for title in ("Step", "Material", "Cause", "Group")]
    columns += [Column("Amount", "per kg", 6), Column("Unit"), Column("Unit price", "", 4)]
    columns += [Column("Cost", "per kg", 5), Column("Money")]
    rows = [
        [item.head.code, item.head.revision, *line, quote.currency]
        for item in items
        for quote in [quote_of(item)[0]]
        for line in quote.lines
    ]
    return Table("cost_lines", "Lines of cost", "Per kg of grey yarn, as saved.", columns, rows)
