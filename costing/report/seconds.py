"""Tables of quality: what metres not of first quality cost, and the sets of an order as shade lots."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.cost.quote import SECONDS, quote
from costing.ledger.plan_running import VESSEL
from costing.ledger.shade_lots import ShadeLots, made_of, shade_lots_of
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.table import FINISHED_METRE, Column, Result, Table, costs_of, decimals_of
from costing.settings.inputs import ENQUIRY, RANGE, Place, with_inputs
from costing.settings.mill import Mill

LITTLE = 1e-6  # by which a set may be longer than its share, so that no rounding makes one set more


def seconds(mill: Mill, results: Sequence[Result]) -> Table:
    """Metres made, sorted, and the cost of one of first quality."""
    currency = costs_of(mill).currency
    columns = [
        Column("Enquiry"),
        Column("Depth of shade"),
        Column("Dye on yarn", "%", 2),
        Column("Off shade", "% of metres made", 2),
        Column("Second quality", "% of metres made", 2),
        Column("First quality", "m of finished cloth", 0),
        Column("Off shade", "m of finished cloth", 0),
        Column("Second quality", "m of finished cloth", 0),
        Column("Made", "m of finished cloth", 0),
        Column("Lost at the start of sets", "m run, not in what is made", 0),
        Column("Cost of a metre made", f"{currency} per m", 4),
        Column("Not of first quality", f"{currency} per m", 4),
        Column("Brought back", f"{currency} per m", 4),
        Column("Cost of first quality", f"{currency} per m", 4),
    ]
    rows: list[list[Any]] = []
    for item in results:
        sorting, plan, per = item.ledger.sorting, item.ledger.plan, item.quote.per[FINISHED_METRE]
        lines = [line.cost for line in item.quote.lines if line.group == SECONDS]
        lost = 0.0 if item.ledger.range.yarn_form == VESSEL else item.ledger.range.off_shade_length
        rows.append(
            [
                item.enquiry.code,
                sorting.depth,
                100.0 * sorting.dye_on_yarn,
                100.0 * sorting.off_shade_share,
                100.0 * sorting.seconds_share,
                plan.finished_length * sorting.first_quality,
                plan.finished_length * sorting.off_shade_share,
                plan.finished_length * sorting.seconds_share,
                plan.finished_length,
                plan.number_of_sets * lost,
                (item.quote.cost_per_kg - sum(lines)) * per,
                sum(cost for cost in lines if cost > 0.0) * per,
                sum(cost for cost in lines if cost < 0.0) * per,
                item.quote.cost_per_kg * per,
            ]
        )
    note = (
        "Cost of first quality = (cost of all metres made - what the others bring back) / metres of first "
        "quality. Metres lost at the start of each set are dyed too, and paid already by all that is made."
    )
    return Table("seconds", "Seconds and off-shade", note, columns, rows)


def told(mill: Mill, results: Sequence[Result]) -> list[str]:
    """A sentence for each enquiry that makes more than is ordered of first quality."""
    costs, found = costs_of(mill), []
    for item in results:
        sorting, plan = item.ledger.sorting, item.ledger.plan
        if sorting.first_quality == 1.0:
            continue
        more = sum(line.cost for line in item.quote.lines if line.group == SECONDS)
        metre = more * item.quote.per[FINISHED_METRE]
        found.append(
            f"{item.enquiry.code}: {plan.finished_length:,.0f} m are made for "
            f"{plan.finished_length * sorting.first_quality:,.0f} m of first quality; {SECONDS} cost "
            f"{metre:.{decimals_of(costs.money_rounding)}f} {costs.currency} of each of these"
        )
    return found


def shade_lots(mill: Mill, results: Sequence[Result]) -> Table:
    """The sets of each order: how many, how long, what one set fewer asks and what one more costs."""
    currency = costs_of(mill).currency
    columns = [
        Column("Enquiry"),
        Column("Sets", "", 0),
        Column("Sets side by side", "", 0),
        Column("Sets are of"),
        Column("Length of a set", "m", 0),
        Column("Longest set", "m", 0),
        Column("First quality of a set", "m", 0),
        Column("Off shade of a set", "m", 0),
        Column("Second quality of a set", "m", 0),
        Column("One set would do"),
        Column("Last set, the others full", "m", 0),
        Column("Order for fewer sets", "up to, as ordered", 0),
        Column("Unit"),
        Column("As one set", f"{currency} per m more", 4),
        Column("One set more for each place", f"{currency} per m more", 4),
    ]
    rows: list[list[Any]] = []
    for item in results:
        lots, sorting = shade_lots_of(item.ledger), item.ledger.sorting
        fewer, unit = lots.order_of_fewer, item.enquiry.order_unit
        rows.append(
            [
                item.enquiry.code,
                lots.sets,
                lots.together,
                made_of(item.ledger),
                lots.length,
                lots.longest,
                lots.length * sorting.first_quality,
                lots.length * sorting.off_shade_share,
                lots.length * sorting.seconds_share,
                "yes" if lots.one_would_do else "no",
                lots.last,
                None if fewer is None else convert(fewer, "m", unit),
                unit,
                _as_one(mill, item, lots),
                _one_more(mill, item, lots),
            ]
        )
    note = (
        "Each set is a shade lot of its own. The plan shares an order out in sets of one length, as few as "
        "the longest set allows. Sets side by side run together; one more is then one more for each of them. "
        "Costs are per m of finished cloth of first quality."
    )
    return Table("shade_lots", "Shade lots", note, columns, rows)


def _as_one(mill: Mill, item: Result, lots: ShadeLots) -> float | None:
    """What a metre costs more where the order runs as one set; None where it does, or cannot."""
    if lots.sets == 1.0 or not lots.one_would_do:
        return None
    return _dearer(mill, item, Place(ENQUIRY, "", "sets_side_by_side"), 1.0)


def _one_more(mill: Mill, item: Result, lots: ShadeLots) -> float | None:
    """What a metre costs more with one set more; None where sets would be shorter than a range may have."""
    name = "charge_mass" if item.ledger.range.yarn_form == VESSEL else "set_length_max"
    runs = lots.sets / lots.together
    share = lots.length / lots.longest * runs / (runs + 1.0) * (1.0 + LITTLE)
    return _dearer(mill, item, Place(RANGE, "", name), getattr(item.ledger.range, name) * share)


def _dearer(mill: Mill, item: Result, place: Place, number: float) -> float | None:
    """What a metre of first quality costs more with another number in a place; None where that is refused."""
    try:
        changed, asked = with_inputs(mill, item.enquiry, {place: number})
        ledger = open_ledger(changed, asked)
    except InputError:
        return None
    found = quote(ledger, changed.materials, costs_of(changed), item.effluent)
    return found.cost_on(FINISHED_METRE) - item.quote.cost_on(FINISHED_METRE)
