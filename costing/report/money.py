"""Tables of money: quotes, cost by group and by step, and the priced lines behind them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.cost.money import rounded
from costing.cost.quote import GROUPS, WEFT, basis_of
from costing.report.offer import offer_of
from costing.report.table import (
    FINISHED_METRE,
    FINISHED_YARD,
    GREY_KG,
    Builder,
    Column,
    Result,
    Table,
    capital,
    costs_of,
    decimals_of,
)
from costing.settings.mill import Mill

SCOPE = "Yarn, dyeing and size where the route has a size box: weaving and finishing are not in."
ALL_STEPS = "all steps"
ALL_PARTS, MOST_PARTS = "all but yarns", 9  # of a ranking, which puts all others into one row
YARNS = ("warp yarn", "weft yarn")


def headline(mill: Mill, results: Sequence[Result]) -> Table:
    """The few columns that fit a screen."""
    costs = costs_of(mill)
    digits, step = decimals_of(costs.money_rounding), costs.money_rounding
    columns = [
        Column("Enquiry"),
        Column("Style"),
        Column("Recipe"),
        Column("Length", "m", 0),
        Column("Cost", f"{costs.currency}/kg", digits),
        Column("Cost", f"{costs.currency}/m", digits),
        Column("Price", f"{costs.currency}/m", digits),
        Column("Price", f"{costs.currency}/yd", digits),
        Column("Water", "L/kg", 1),
        Column("COD", "g/kg", 0),
    ]
    rows = []
    for item in results:
        offer = item.quote
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.style,
                item.enquiry.recipe,
                item.ledger.plan.finished_length * item.ledger.sorting.first_quality,
                float(rounded(offer.cost_on(GREY_KG), step)),
                float(rounded(offer.cost_on(FINISHED_METRE), step)),
                float(rounded(offer.price_on(FINISHED_METRE), step)),
                float(rounded(offer.price_on(FINISHED_YARD), step)),
                item.ledger.used("water"),
                1000.0 * item.streams[-1].loads["COD, both"],
            ]
        )
    note = f"Per kg of grey warp, without weft; per metre and yard of finished cloth. {SCOPE}"
    return Table("headline", "Quotes", note, columns, rows)


def quotes(mill: Mill, results: Sequence[Result]) -> Table:
    """One row for each enquiry: cost and price on every basis, rounded to the mill's step."""
    costs = costs_of(mill)
    digits, step = decimals_of(costs.money_rounding), costs.money_rounding
    bases = list(results[0].quote.per) if results else []
    columns = [
        Column("Enquiry"),
        Column("Description"),
        Column("Style"),
        Column("Recipe"),
        Column("Range"),
        Column("Ordered", "", 0),
        Column("Unit"),
        Column("Length of"),
    ]
    columns += [Column("Cost", f"{costs.currency} per {basis}", digits) for basis in bases]
    columns += [Column("Margin", "% of price", 1)]
    columns += [Column("Price", f"{costs.currency} per {basis}", digits) for basis in bases]
    columns += [
        Column("Order value", costs.currency, min(digits, 2)),
        Column("Not priced"),
        Column("Warnings", "", 0),
    ]
    rows = []
    for item in results:
        offer, enquiry = item.quote, item.enquiry
        offered = offer_of(mill, item)
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.description,
                item.enquiry.style,
                item.enquiry.recipe,
                item.enquiry.range,
                offered.length,
                offered.unit,
                enquiry.length_basis,
                *[float(rounded(offer.cost_on(basis), step)) for basis in bases],
                100.0 * offer.margin,
                *[float(rounded(offer.price_on(basis), step)) for basis in bases],
                float(offered.value),
                ", ".join(offer.not_priced),
                sum(remark.kind == "warning" for remark in item.remarks),
            ]
        )
    note = (
        f"Money in {costs.currency}, rounded to {costs.money_rounding:g} at the end only; prices of "
        f"{costs.day:%Y-%m-%d}. Price = cost / (1 - margin). Per kg and per m of dyed "
        f"warp without weft. {SCOPE}"
    )
    return Table("quotes", "Quotes", note, columns, rows)


def cost_by_group(mill: Mill, results: Sequence[Result]) -> Table:
    """Cost per metre of finished cloth, one column for each group."""
    columns = [Column("Enquiry"), Column("Description"), *_group_columns(mill)]
    columns.append(Column("All", f"{costs_of(mill).currency} per m", 4))
    rows: list[list[Any]] = []
    for item in results:
        per, sums = item.quote.per[FINISHED_METRE], item.quote.by("group")
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.description,
                *[sums.get((group,), 0.0) * per for group in GROUPS],
                item.quote.cost_per_kg * per,
            ]
        )
    return Table("cost_by_group", "Cost by group", "Per metre of finished cloth.", columns, rows)


def cost_by_step(mill: Mill, results: Sequence[Result]) -> Table:
    """One row for each enquiry and step, opened into groups, and one for all its steps."""
    currency = costs_of(mill).currency
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Cost", f"{currency} per kg of grey yarn", 4),
        Column("Cost", f"{currency} per m of finished cloth", 4),
        Column("Share", "%", 1),
        *_group_columns(mill),
    ]
    rows: list[list[Any]] = []
    for item in results:
        offer, per = item.quote, item.quote.per[FINISHED_METRE]
        opened, steps = offer.by("step", "group"), offer.by("step")
        of_yarn = {line.step for line in offer.lines if line.group in YARNS}
        for (step,), cost in sorted(steps.items(), key=lambda entry: entry[0][0] not in of_yarn):
            parts = [opened.get((step, group), 0.0) * per for group in GROUPS]
            rows.append([item.enquiry.code, step, cost, cost * per, 100 * cost / offer.cost_per_kg, *parts])
        sums = offer.by("group")
        parts = [sums.get((group,), 0.0) * per for group in GROUPS]
        total = offer.cost_per_kg
        rows.append([item.enquiry.code, ALL_STEPS, total, total * per, 100.0, *parts])
    note = (
        "Yarns first, then the steps in the order of the route; groups per metre of finished cloth. The step "
        "range is its time, mill the overhead, sorting what is not of first quality."
    )
    return Table("cost_by_step", "Cost by step", note, columns, rows)


def parts_of(what: str) -> Builder:
    """Builds the table of the dearest steps, materials or causes of a metre as it is ordered, yarns left out.

    Parameters
    ----------
    what : str
        A field of the lines of a quote: step, material or cause.
    """

    def build(mill: Mill, results: Sequence[Result]) -> Table:
        unit = f"{costs_of(mill).currency}/m"
        columns = [Column("Enquiry"), Column(capital(what)), Column("Cost", unit, 4), Column("Share", "%", 1)]
        rows: list[list[Any]] = []
        for item in results:
            per, costs = item.quote.per[basis_of(item.enquiry)], dict[str, float]()
            for line in item.quote.lines:
                if line.group not in YARNS and line.step != WEFT:
                    name = getattr(line, what)
                    costs[name] = costs.get(name, 0.0) + line.cost * per
            ranked = sorted(costs.items(), key=lambda part: -abs(part[1]))
            parts, others = ranked[:MOST_PARTS], ranked[MOST_PARTS:]
            if others:
                parts.append((f"{len(others)} more", sum(cost for _, cost in others)))
            whole = sum(costs.values())
            for name, cost in [(ALL_PARTS, whole), *parts]:
                rows.append([item.enquiry.code, name, cost, 100.0 * cost / whole if whole else None])
        note = "Per metre as it is ordered, the dearest first; below zero is a credit."
        return Table(f"cost_of_{what}s", f"Cost by {what}, yarns left out", note, columns, rows)

    return build


def _group_columns(mill: Mill) -> list[Column]:
    return [Column(capital(group), f"{costs_of(mill).currency} per m", 4) for group in GROUPS]


def cost_lines(mill: Mill, results: Sequence[Result]) -> Table:
    """Every priced line, one for each step, material and cause."""
    currency = costs_of(mill).currency
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Material"),
        Column("Cause"),
        Column("Group"),
        Column("Amount", "per kg of grey yarn", 6),
        Column("Unit"),
        Column("Price", f"{currency} per unit", 4),
        Column("Cost", f"{currency} per kg of grey yarn", 6),
        Column("Cost", f"{currency} per m of finished cloth", 6),
    ]
    rows: list[list[Any]] = []
    for item in results:
        per = item.quote.per[FINISHED_METRE]
        for line in item.quote.lines:
            unit = currency if line.unit == "money" else line.unit
            where = [item.enquiry.code, line.step, line.material, line.cause, line.group]
            rows.append([*where, line.amount, unit, line.unit_price, line.cost, line.cost * per])
    note = "All priced lines of every quote, as delivered; they add up to its cost. Below zero is a credit."
    return Table("cost_lines", "Cost lines", note, columns, rows)
