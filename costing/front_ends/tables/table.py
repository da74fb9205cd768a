"""The results as plain tables: one source for the screen, for JSON and for the results workbook."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import Any, NamedTuple

import costing
from costing.cost.money import rounded
from costing.cost.quote import GROUPS, Quote, quote
from costing.effluent.discharge import PARAMETERS, Stream, streams
from costing.ledger.remarks import Remark, remarks
from costing.ledger.whole import Ledger, is_bought, open_ledger
from costing.process.postings import POWER
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.reference_data import default, fingerprint
from costing.settings.mill import Enquiry, Mill, MillCosts


class Column(NamedTuple):
    """One column of a table.

    Attributes
    ----------
    title, unit : str
        Heading, and the unit under it.
    digits : int or None
        Decimals to show; None for text and whole numbers.
    """

    title: str
    unit: str = ""
    digits: int | None = None


class Table(NamedTuple):
    """A titled table.

    Attributes
    ----------
    key, title, note : str
        Short name, heading, and one line under the heading.
    columns : list of Column
        Its columns.
    rows : list of list
        Text, numbers, dates or None.
    """

    key: str
    title: str
    note: str
    columns: list[Column]
    rows: list[list[Any]]


class Result(NamedTuple):
    """All that is known of one enquiry."""

    enquiry: Enquiry
    ledger: Ledger
    quote: Quote
    streams: list[Stream]
    remarks: list[Remark]


def costs_of(mill: Mill) -> MillCosts:
    """The mill's costs.

    Raises
    ------
    InputError
        When the book has none.
    """
    if mill.costs is None:
        raise InputError("mill costs", "the book holds no mill costs")
    return mill.costs


def work_out(mill: Mill, enquiry: Enquiry) -> Result:
    """Run, price and discharge one enquiry.

    Raises
    ------
    InputError
        From any setting, step or price that is refused.
    """
    ledger = open_ledger(mill, enquiry)
    return Result(
        enquiry,
        ledger,
        quote(ledger, mill.materials, costs_of(mill)),
        streams(ledger, mill.materials),
        remarks(ledger),
    )


def all_tables(mill: Mill, results: Sequence[Result]) -> list[Table]:
    """Every table of a run, in reading order."""
    return [
        quotes(mill, results),
        cost_by_group(mill, results),
        cost_by_step(mill, results),
        use(mill, results),
        discharge_loads(results),
        discharge_concentrations(results),
        order_plan(results),
        checks(mill, results),
        cost_lines(mill, results),
        ledger_lines(results),
        run_record(mill),
    ]


def headline(mill: Mill, results: Sequence[Result]) -> Table:
    """The few columns that fit a screen."""
    costs = costs_of(mill)
    digits = decimals_of(costs.money_rounding)
    per_kg, per_metre, per_yard = "kg of grey yarn", "m of finished cloth", "yd of finished cloth"
    columns = [
        Column("Enquiry"),
        Column("Style"),
        Column("Recipe"),
        Column("Finished cloth", "m", 0),
        Column("Cost", f"{costs.currency}/kg", digits),
        Column("Cost", f"{costs.currency}/m", digits),
        Column("Price", f"{costs.currency}/m", digits),
        Column("Price", f"{costs.currency}/yd", digits),
        Column("Water", "L/kg", 1),
        Column("COD", "g/kg", 1),
    ]
    rows = []
    for item in results:
        offer = item.quote
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.style,
                item.enquiry.recipe,
                item.ledger.plan.finished_length,
                float(rounded(offer.cost_per_kg * offer.per[per_kg], costs.money_rounding)),
                float(rounded(offer.cost_per_kg * offer.per[per_metre], costs.money_rounding)),
                float(rounded(offer.price_per_kg * offer.per[per_metre], costs.money_rounding)),
                float(rounded(offer.price_per_kg * offer.per[per_yard], costs.money_rounding)),
                item.ledger.used("water"),
                1000.0 * item.streams[-1].loads["COD, both"],
            ]
        )
    note = "Per kg of grey warp yarn; per metre and yard of finished cloth. Discharge is an estimate."
    return Table("headline", "Quotes", note, columns, rows)


def quotes(mill: Mill, results: Sequence[Result]) -> Table:
    """One row for each enquiry: cost and price on every basis, rounded to the mill's step."""
    costs = costs_of(mill)
    digits = decimals_of(costs.money_rounding)
    bases = list(results[0].quote.per) if results else []
    columns = [
        Column("Enquiry"),
        Column("Description"),
        Column("Style"),
        Column("Recipe"),
        Column("Range"),
        Column("Finished cloth", "m", 0),
    ]
    columns += [Column("Cost", f"{costs.currency} per {basis}", digits) for basis in bases]
    columns += [Column("Margin", "% of price", 1)]
    columns += [Column("Price", f"{costs.currency} per {basis}", digits) for basis in bases]
    columns += [Column("Order value", costs.currency, digits), Column("Not priced")]
    rows = []
    for item in results:
        step = costs.money_rounding
        offer = item.quote
        price_per_metre = rounded(offer.price_per_kg * offer.per["m of finished cloth"], step)
        rows.append(
            [
                item.enquiry.code,
                item.enquiry.description,
                item.enquiry.style,
                item.enquiry.recipe,
                item.enquiry.range,
                item.ledger.plan.finished_length,
                *[float(rounded(offer.cost_per_kg * offer.per[basis], step)) for basis in bases],
                100.0 * offer.margin,
                *[float(rounded(offer.price_per_kg * offer.per[basis], step)) for basis in bases],
                float(rounded(float(price_per_metre) * item.ledger.plan.finished_length, step)),
                ", ".join(offer.not_priced),
            ]
        )
    note = (
        f"Money in {costs.currency}, rounded to {costs.money_rounding:g} at the end only; prices of "
        f"{costs.price_date:%Y-%m-%d}. Price = cost / (1 - margin)."
    )
    return Table("quotes", "Quotes", note, columns, rows)


def cost_by_group(mill: Mill, results: Sequence[Result]) -> Table:
    """Cost per metre of finished cloth, one column for each group."""
    currency = costs_of(mill).currency
    columns = [Column("Enquiry")]
    columns += [Column(group.capitalize(), f"{currency} per m", 4) for group in GROUPS]
    columns += [Column("All", f"{currency} per m", 4)]
    rows = []
    for item in results:
        sums = item.quote.by("group")
        per = item.quote.per["m of finished cloth"]
        rows.append(
            [
                item.enquiry.code,
                *[sums.get((group,), 0.0) * per for group in GROUPS],
                item.quote.cost_per_kg * per,
            ]
        )
    return Table("cost_by_group", "Cost by group", "Per metre of finished cloth.", columns, rows)


def cost_by_step(mill: Mill, results: Sequence[Result]) -> Table:
    """Cost per metre of finished cloth, one row for each enquiry and step."""
    currency = costs_of(mill).currency
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Cost", f"{currency} per kg of grey yarn", 4),
        Column("Cost", f"{currency} per m of finished cloth", 4),
        Column("Share", "%", 1),
    ]
    rows = []
    for item in results:
        per = item.quote.per["m of finished cloth"]
        for (step,), cost in item.quote.by("step").items():
            rows.append([item.enquiry.code, step, cost, cost * per, 100.0 * cost / item.quote.cost_per_kg])
    return Table("cost_by_step", "Cost by step", "Steps in the order of the route.", columns, rows)


def use(mill: Mill, results: Sequence[Result]) -> Table:
    """What each enquiry takes of every bought thing, as delivered."""
    columns = [
        Column("Enquiry"),
        Column("Material"),
        Column("Description"),
        Column("Per kg of grey yarn", "", 4),
        Column("Per m of finished cloth", "", 4),
        Column("For the order", "", 1),
        Column("Unit of these"),
    ]
    rows: list[list[Any]] = []
    for item in results:
        codes = dict.fromkeys(line.material for line in item.ledger.lines if is_bought(line))
        per = item.quote.per["m of finished cloth"]
        for code in codes:
            amount = item.ledger.used(code)
            material = mill.materials.get(code)
            small, large = _units_of_use(code)
            scale = 1000.0 if small == "g" else 1.0
            rows.append(
                [
                    item.enquiry.code,
                    code,
                    material.description if material else "",
                    amount * scale,
                    amount * scale * per,
                    amount * item.ledger.plan.saleable_mass,
                    f"{small} per kg, {small} per m, {large} for the order",
                ]
            )
    note = "As delivered: pure substance over strength. Fills, stops, leaders and off-shade metres are in."
    return Table("use", "Use of materials", note, columns, rows)


def _units_of_use(code: str) -> tuple[str, str]:
    return {"water": ("L", "L"), "steam": ("kg", "kg"), POWER: ("kWh", "kWh"), "range time": ("h", "h")}.get(
        code, ("g", "kg")
    )


def discharge_loads(results: Sequence[Result]) -> Table:
    """Flow and loads by stream."""
    columns = [Column("Enquiry"), Column("Stream"), Column("Flow", "L/kg", 3)]
    columns += [Column(_capital(name), "g/kg", 3) for name in PARAMETERS]
    columns += [Column("Alkalinity", "mmol/kg", 1)]
    columns += [Column("COD, both", "g per m of finished cloth", 3)]
    rows = []
    for item in results:
        per = item.quote.per["m of finished cloth"]
        for stream in item.streams:
            rows.append(
                [
                    item.enquiry.code,
                    stream.name,
                    stream.flow,
                    *[1000.0 * stream.loads[name] for name in PARAMETERS],
                    1000.0 * stream.alkalinity,
                    1000.0 * stream.loads["COD, both"] * per,
                ]
            )
    return Table("discharge_loads", "Discharge, loads", DISCHARGE_NOTE, columns, rows)


def discharge_concentrations(results: Sequence[Result]) -> Table:
    """Concentrations by stream, as it leaves, before any treatment."""
    columns = [Column("Enquiry"), Column("Stream"), Column("Flow", "L/kg", 3)]
    columns += [Column(_capital(name), "mg/L", 0) for name in PARAMETERS]
    columns += [Column("Alkalinity", "mmol/L", 1)]
    rows = []
    for item in results:
        for stream in item.streams:
            rows.append(
                [
                    item.enquiry.code,
                    stream.name,
                    stream.flow,
                    *[1e6 * stream.concentration(name) for name in PARAMETERS],
                    1000.0 * stream.alkalinity_concentration,
                ]
            )
    return Table("discharge_concentrations", "Discharge, concentrations", DISCHARGE_NOTE, columns, rows)


DISCHARGE_NOTE = (
    "Estimate of the raw discharge from recipe and range: not a measurement of compliance. "
    "COD reads between its organic part alone and both parts. Alkalinity is the strong-ion difference."
)


def order_plan(results: Sequence[Result]) -> Table:
    """Cloth, ropes, lengths, masses and hours of each enquiry."""
    columns = [
        Column("Enquiry"),
        Column("Ends", "", 0),
        Column("Warp", "tex", 1),
        Column("Warp", "Ne", 2),
        Column("Loom-state cloth", "g/m2", 0),
        Column("Finished cloth", "g/m2", 0),
        Column("Finished cloth", "oz/yd2", 2),
        Column("Finished width", "cm", 1),
        Column("Grey warp", "g per m of finished cloth", 1),
        Column("Ropes of a set", "", 0),
        Column("Ends per rope", "", 1),
        Column("Sets", "", 0),
        Column("Warp sold of a set", "m", 0),
        Column("Range runs", "m", 0),
        Column("Saleable grey yarn", "kg", 0),
        Column("Dyed grey yarn", "kg", 0),
        Column("Throughput", "kg/h", 0),
        Column("Running", "h", 1),
        Column("Changeover", "h", 1),
        Column("Stoppages", "h", 1),
    ]
    rows = []
    for item in results:
        cloth, plan = item.ledger.fabric, item.ledger.plan
        per = item.quote.per["m of finished cloth"]
        rows.append(
            [
                item.enquiry.code,
                cloth.ends,
                1e6 * cloth.linear_density,
                convert(cloth.linear_density, "kg/m", "Ne"),
                1000.0 * cloth.loom_state_areal_mass,
                1000.0 * cloth.finished_areal_mass,
                convert(cloth.finished_areal_mass, "kg/m2", "oz/yd2"),
                100.0 * cloth.finished_width,
                1000.0 * per,
                plan.ropes,
                plan.ends_per_rope,
                plan.number_of_sets,
                plan.set_length,
                plan.run_length,
                plan.saleable_mass,
                plan.dyed_mass,
                plan.around.throughput,
                plan.run_hours,
                plan.changeover_hours,
                plan.stoppage_hours,
            ]
        )
    return Table(
        "order_plan", "Cloth and order", "What the style is, and what the range runs for it.", columns, rows
    )


def checks(mill: Mill, results: Sequence[Result]) -> Table:
    """Warnings, unusual settings, and defaults taken because a cell was empty."""
    columns = [Column("Enquiry"), Column("Kind"), Column("Where"), Column("What")]
    rows: list[list[Any]] = []
    for item in results:
        rows += [[item.enquiry.code, note.kind, note.where, note.text] for note in item.remarks]
        rows += [
            [item.enquiry.code, "not priced", "style " + item.enquiry.style, f"no {name} in the price list"]
            for name in item.quote.not_priced
        ]
    for owner, key in dict.fromkeys(mill.assumptions):
        row = default(key)
        contested = "; contested, measure your own" if row.contested else ""
        rows.append(["all", "default taken", owner, f"{row.text()}; source: {row.source}{contested}"])
    note = "A default is taken where a cell of the book is empty; type your own figure to replace it."
    return Table("checks", "Checks", note, columns, rows)


def cost_lines(mill: Mill, results: Sequence[Result]) -> Table:
    """Every priced line: step, material, cause."""
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
    rows = []
    for item in results:
        per = item.quote.per["m of finished cloth"]
        for line in item.quote.lines:
            rows.append(
                [
                    item.enquiry.code,
                    line.step,
                    line.material,
                    line.cause,
                    line.group,
                    line.amount,
                    line.unit,
                    line.unit_price,
                    line.cost,
                    line.cost * per,
                ]
            )
    return Table(
        "cost_lines", "Cost lines", "All lines of every quote; they add up to its cost.", columns, rows
    )


def ledger_lines(results: Sequence[Result]) -> Table:
    """Every posting."""
    columns = [
        Column("Enquiry"),
        Column("Step"),
        Column("Material"),
        Column("Substance"),
        Column("Cause"),
        Column("Amount", "kg, kWh or h per kg of grey yarn", 8),
        Column("From"),
        Column("To"),
    ]
    rows = [
        [
            item.enquiry.code,
            line.step,
            line.material,
            line.substance.replace("_", " "),
            line.cause,
            line.amount,
            line.source,
            line.destination,
        ]
        for item in results
        for line in item.ledger.lines
    ]
    note = "Double entry: every amount leaves one account and enters another; per kg of saleable grey yarn."
    return Table("ledger", "Ledger", note, columns, rows)


def run_record(mill: Mill) -> Table:
    """What this run was made with."""
    costs = costs_of(mill)
    rows: list[list[Any]] = [
        ["version", costing.__version__],
        ["fingerprint of the reference tables", fingerprint()],
        ["mill currency", costs.currency],
        ["date of the mill's prices", costs.price_date],
        ["worked out on", datetime.date.today()],
    ]
    return Table("run_record", "Record", "Keep this with the quote.", [Column("What"), Column("Value")], rows)


def decimals_of(step: float) -> int:
    """Decimals that a rounding step needs.

    Examples
    --------
    >>> decimals_of(0.001), decimals_of(5.0)
    (3, 0)
    """
    text = f"{step:.10f}".rstrip("0")
    return len(text.split(".")[1]) if "." in text else 0


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
