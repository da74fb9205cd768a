"""What to order and when, what runs out, what expires, and the money by week, as tables."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from typing import Any

from costing.cost.money import rounded
from costing.purchasing.material_plan import MaterialPlan, Proposal, Shortage
from costing.purchasing.plan import PurchasePlan, iso_week, monday_of
from costing.quantities import QUANTITIES, label, shown
from costing.quantities.units import from_house
from costing.reference_data import defaults
from costing.report.table import Column, Table, costs_of
from costing.settings.building import Assumption
from costing.settings.mill import Mill
from costing.settings.stock import Store

DAY, WEEK = datetime.timedelta(days=1), datetime.timedelta(days=7)
CENT = 0.01
LEAST_LOST = 0.05  # [kg] less is the last digit of a sum
HOURS_A_WEEK = 168.0
MASS = 0  # decimals of a mass
REMARK = "Remark"
# Columns of the orders that a screen leaves out, to stand in 80 letters; files have them all.
NOT_ON_SCREEN = ("At listed strength", "Price", "Paid on", "Wanted on", "Mean of a week", REMARK)


def in_short(table: Table) -> Table:
    """A table as it fits a screen; remarks are lines of their own there."""
    kept = [at for at, column in enumerate(table.columns) if column.title not in NOT_ON_SCREEN]
    rows = [[row[at] for at in kept] for row in table.rows]
    return table._replace(columns=[table.columns[at] for at in kept], rows=rows)


def remarks_of(table: Table) -> list[str]:
    """What is to be said of the orders of a table, a line for each that has a remark."""
    if not table.columns or table.columns[-1].title != REMARK:
        return []
    placed = "" if table.key == "open_orders" else ", order on "
    return [f"{row[0]}{placed and placed + str(row[2])}: {row[-1]}" for row in table.rows if row[-1]]


def empty_store_note(store: Store) -> str:
    """What the plan takes for nothing because its sheet holds no row; "" where all hold some."""
    told = "" if store.batches else "The sheet Stock holds no row: the store counts as empty. "
    if not store.terms:
        told += "The sheet Purchase terms holds no row: nothing is ordered. "
    return told


def orders_table(
    mill: Mill, plan: PurchasePlan, proposals: Iterable[Proposal], key: str, title: str, note: str
) -> Table:
    """Orders that should be placed, a row each."""
    shortages = {item.material: item.shortages for item in plan.materials}
    money = costs_of(mill).currency
    columns = [
        Column("Material"),
        Column("Supplier"),
        Column("Order on"),
        Column("Arrives"),
        Column("Packs", "", 0),
        Column("Pack"),
        Column("Mass", "kg", MASS),
        Column("At listed strength", "kg", MASS),
        Column("Price", f"{money}/kg", 4),
        Column("Money", money, 0),
        Column("Paid on"),
        Column("Wanted on"),
        Column(REMARK),
    ]
    rows = [
        [
            one.material,
            one.supplier,
            one.placed,
            one.arrival,
            one.packs,
            f"{one.pack_kind}, {one.mass / one.packs:g} kg",
            one.mass,
            one.counted,
            one.price,
            None if one.money is None else float(rounded(one.money, CENT)),
            one.paid,
            one.wanted,
            _remark(one, shortages[one.material]),
        ]
        for one in proposals
    ]
    return Table(key, title, note, columns, rows)


def _remark(one: Proposal, shortages: Iterable[Shortage]) -> str:
    told = []
    if one.late:
        before = [_owed(other, one.arrival) for other in shortages if other.first < one.arrival]
        until = "; ".join(before) or f"no need is short before it comes on {one.arrival}"
        told.append(f"LATE: the safety stock wants it on {one.wanted}; {until}")
    told += one.told
    if one.next_break is not None and one.next_break.worth:
        told.append(f"price break at {one.next_break.mass:,.0f} kg: {one.next_break.why}")
    if one.no_price:
        told.append(f"NO PRICE: {one.no_price}")
    return "; ".join(told)


def _owed(short: Shortage, arrival: datetime.date) -> str:
    """A shortage before an order comes; one that something else ends before that has its last day too."""
    until = "on" if short.last + DAY >= arrival else f"to {short.last}"
    return f"{short.most:,.0f} kg are owed from {short.first} {until}"


def order_tables(mill: Mill, plan: PurchasePlan, note: str = "") -> list[Table]:
    """What to order this week, and in the weeks after it."""
    end = monday_of(plan.start) + WEEK
    now = [one for one in plan.proposals if one.placed < end]
    later = [one for one in plan.proposals if one.placed >= end]
    delay = f"Everything comes {plan.delay} days later than it should. " if plan.delay else ""
    return [
        orders_table(
            mill,
            plan,
            now,
            "order_now",
            f"To order in the week of {plan.start} ({iso_week(plan.start)})",
            f"{note}{delay}{_sum_of(mill, now)}",
        ),
        orders_table(
            mill,
            plan,
            later,
            "order_later",
            f"To order later, up to {plan.end}",
            f"{note}{_sum_of(mill, later)}",
        ),
    ]


def _sum_of(mill: Mill, proposals: list[Proposal]) -> str:
    """The money of some orders; no sum where one of them has no price."""
    if not proposals:
        return "Nothing."
    lacking = sum(one.money is None for one in proposals)
    if lacking:
        return f"No sum: {lacking} of {len(proposals)} orders have no price on their day."
    total = sum(one.money or 0.0 for one in proposals)
    return f"Together {total:,.0f} {costs_of(mill).currency}, freight and order charges in."


def open_orders_table(mill: Mill, plan: PurchasePlan, note: str = "") -> Table:
    """What was ordered before: the day on which it is counted, its money, and what to ask the supplier."""
    money = costs_of(mill).currency
    columns = [
        Column("Order"),
        Column("Material"),
        Column("Supplier"),
        Column("Mass", "kg", MASS),
        Column("Named for"),
        Column("Counted on"),
        Column("Money", money, 0),
        Column(REMARK),
    ]
    rows: list[list[Any]] = []
    for item in plan.materials:
        for order, day, deal in item.open_orders:
            told = [f"OVERDUE since {order.arrival}: ask the supplier"] if order.arrival < plan.start else []
            told += [f"NO PRICE: {deal.why}"] if deal.why else []
            value = None if deal.price is None else float(rounded(deal.price * order.order_mass, CENT))
            names = [order.order, item.material, order.supplier]
            rows.append([*names, order.order_mass, order.arrival, day, value, "; ".join(told)])
    text = f"Money at the prices of {plan.start}." if rows else "Nothing is on order."
    return Table("open_orders", "Open orders", f"{note}{text}", columns, rows)


def run_out_table(plan: PurchasePlan, note: str = "") -> Table:
    """Needs that are not met, the first day first."""
    columns = [
        Column("Material"),
        Column("Runs out on"),
        Column("Up to"),
        Column("Owed at most", "kg", MASS + 1),
        Column("Then"),
    ]
    found = sorted((one for item in plan.materials for one in item.shortages), key=lambda one: one.first)
    terms = {item.material: item.terms for item in plan.materials}
    rows: list[list[Any]] = []
    for one in found:
        then = "met by what comes" if one.met else "still owed at the end"
        if terms[one.material] is None:
            then += "; no purchase terms, so nothing is ordered"
        rows.append([one.material, one.first, one.last, one.most, then])
    text = "A need that is not met is owed, and met first when goods come." if rows else "Nothing runs out."
    return Table("runs_out", "Runs out", f"{note}{text}", columns, rows)


def expiring_table(mill: Mill, plan: PurchasePlan, note: str = "") -> Table:
    """What will not have been used by its last day."""
    money = costs_of(mill).currency
    columns = [
        Column("Material"),
        Column("Batch"),
        Column("Last day"),
        Column("Unused", "kg", MASS + 1),
        Column("Money", money, 0),
        Column("What"),
    ]
    found = sorted((one for item in plan.materials for one in item.expired), key=lambda one: one.last_day)
    rows = [
        [
            one.material,
            one.batch,
            one.last_day,
            one.mass,
            one.money,
            "opened pack" if one.opened else "closed",
        ]
        for one in found
        if one.mass >= LEAST_LOST
    ]
    values = [one.money for one in found]
    total = "" if None in values or not rows else f" Together {sum(filter(None, values)):,.0f} {money}."
    text = "At today's price; use it first, sell it or titrate it." if rows else "Nothing expires unused."
    return Table("expires", "Expires unused", f"{note}{text}{total}", columns, rows)


def conflicts_table(plan: PurchasePlan, note: str = "") -> Table:
    """Terms that stand against each other."""
    columns = [Column("Material"), Column("Term"), Column("From"), Column("Days", "", 0), Column("What")]
    found = sorted((one for item in plan.materials for one in item.conflicts), key=lambda one: one.first)
    rows = [[one.material, one.kind, one.first, float(one.days), one.text] for one in found]
    text = "No order breaks a storage ceiling. Mend the terms, or order by hand." if rows else "None."
    return Table("conflicts", "Terms that do not go together", f"{note}{text}", columns, rows)


def cash_table(mill: Mill, plan: PurchasePlan, note: str = "") -> Table:
    """Money that goes out by ISO week; no number where a price is missing."""
    money = costs_of(mill).currency
    weeks: dict[datetime.date, list[float | None]] = {}
    for one in plan.payments():
        row = weeks.setdefault(monday_of(one.day), [0.0, 0.0])
        known = row[one.proposed]
        row[one.proposed] = None if known is None or one.money is None else known + one.money
    rows: list[list[Any]] = []
    if weeks:
        day, last = min(weeks), max(weeks)
        while day <= last:
            placed, proposed = weeks.get(day, [0.0, 0.0])
            total = None if placed is None or proposed is None else placed + proposed
            rows.append([iso_week(day), day, placed, proposed, total])
            day += WEEK
    columns = [
        Column("Week"),
        Column("From"),
        *(Column(head, money, 0) for head in ("Open orders", "Proposed orders", "Together")),
    ]
    text = (
        f"Arrival and payment time, freight in, in {money}, at the rates of the day of the order. Open "
        f"orders at the prices of {plan.start}. Of what arrives up to {plan.end}. No number: an order has "
        "no price."
    )
    return Table("cash", "Money by week", f"{note}{text}", columns, rows)


def breaks_table(mill: Mill, plan: PurchasePlan, note: str = "") -> Table:
    """The next price break of each material, asked at its first order that has one."""
    money = costs_of(mill).currency
    columns = [
        Column("Material"),
        Column("Order on"),
        Column("Order", "kg", MASS),
        Column("Price", f"{money}/kg", 4),
        Column("Next break", "kg", MASS),
        Column("Price then", f"{money}/kg", 4),
        Column("Money then", money, 0),
        Column("Buying now", f"{money}/year", 0),
        Column("Buying then", f"{money}/year", 0),
        Column("Worth it"),
    ]
    rows = []
    for item in plan.materials:
        first = next((one for one in item.proposals if one.next_break is not None), None)
        if first is None or first.next_break is None:
            continue
        then = first.next_break
        numbers = [first.mass, first.price, then.mass, then.price, then.money, then.cost_now, then.cost_then]
        rows.append([item.material, first.placed, *numbers, then.why])
    text = "Buying a year: price, order charges and holding half an order on the mean, at the mean need."
    return Table("breaks", "Next price break", f"{note}{text}", columns, rows)


def stock_table(plan: PurchasePlan, note: str = "") -> Table:
    """Each material in one row: need, safety stock, re-order point, and where the stock goes."""
    columns = [
        Column("Material"),
        *(
            Column(head, "kg", MASS)
            for head in ("In store", "On order", "Needed", "Mean of a week", "Safety stock", "Re-order point")
        ),
        Column("Lead time", "day", 0),
        Column("Lowest", "kg", MASS),
        Column("On"),
        Column("Below safety from"),
    ]
    rows: list[list[Any]] = []
    for item in plan.materials:
        at = min(range(len(item.left)), key=item.left.__getitem__)
        rows.append(
            [
                item.material,
                item.opening,
                sum(order.order_mass for order, _, _ in item.open_orders),
                item.needed,
                item.use_rate * HOURS_A_WEEK,
                item.safety if item.terms else None,
                item.reorder if item.terms else None,
                float(item.terms.lead_days) if item.terms else None,
                item.left[at],
                item.start + datetime.timedelta(days=at),
                item.below_safety if item.terms else None,
            ]
        )
    text = (
        f"{plan.start} to {plan.end}, at the listed strength. The re-order point is the need of a lead time "
        "and the safety stock; the plan orders by the needs of each day."
    )
    return Table("stock", "Stock and need", f"{note}{text}", columns, rows)


def projection_table(plan: PurchasePlan, note: str = "") -> Table:
    """Stock behind the need of each day, material after material, with what it is held against."""
    columns = [
        Column("Material"),
        Column("Day"),
        *(Column(head, "kg", 1) for head in ("Stock", "Re-order point", "Safety stock")),
    ]
    rows = [
        [item.material, item.start + datetime.timedelta(days=at), left, item.reorder, item.safety]
        for item in drawn(plan)
        for at, left in enumerate(item.left)
    ]
    return Table("projection", "Stock day by day", f"{note}Behind the need of each day.", columns, rows)


def drawn(plan: PurchasePlan) -> list[MaterialPlan]:
    """Materials that have a projection worth a look: needed or in store; those below safety first."""
    shown_ones = [item for item in plan.materials if item.needed or any(item.left)]
    far = plan.end + WEEK
    return sorted(shown_ones, key=lambda item: (item.runs_out or far, item.below_safety or far))


def taken_table(assumptions: Mapping[Assumption, None]) -> Table:
    """Typical values that the terms take because a cell is empty."""
    columns = [
        Column("Setting"),
        Column("Typical"),
        Column("Low to high"),
        Column("Materials"),
        Column("Source"),
    ]
    of_key: dict[str, list[str]] = {}
    for taken in assumptions:
        of_key.setdefault(taken.key, []).append(taken.owner.partition(", ")[2])
    rows: list[list[Any]] = []
    for key, owners in of_key.items():
        found = defaults()[key]
        item = QUANTITIES[found.quantity]
        low, high = (from_house(number, item.usual, item.unit) for number in (found.low, found.high))
        band = f"{low:.4g} to {high:.4g} {item.usual}"
        rows.append([label(found.quantity), shown(item, found.value), band, ", ".join(owners), found.source])
    note = "Type your own on the sheet Purchase terms; judgement is no source."
    return Table("terms_taken", "Typical values taken", note, columns, rows)


def all_tables(
    mill: Mill, plan: PurchasePlan, assumptions: Mapping[Assumption, None], note: str = ""
) -> list[Table]:
    """All of them but the projection, in the order in which they are read.

    Who asks for a delay asks what runs out, so that comes first then.
    """
    orders = [*order_tables(mill, plan, note), open_orders_table(mill, plan, note)]
    runs_out = run_out_table(plan, note)
    return [
        *([runs_out, *orders] if plan.delay else [*orders, runs_out]),
        expiring_table(mill, plan, note),
        conflicts_table(plan, note),
        breaks_table(mill, plan, note),
        cash_table(mill, plan, note),
        stock_table(plan, note),
        taken_table(assumptions),
    ]
