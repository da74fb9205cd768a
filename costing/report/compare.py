"""Enquiries side by side: what each costs, takes and sends to the drain, and how far it is from the first."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any, NamedTuple

from costing.cost.quote import GROUPS
from costing.effluent.discharge import Stream
from costing.ledger.lot import RANGE_TIME
from costing.process.chemistry import atoms
from costing.process.postings import POWER
from costing.quantities.units import convert
from costing.reference_data import substances
from costing.report.table import (
    FINISHED_METRE,
    GREY_KG,
    Column,
    Result,
    Table,
    active_parts,
    bought,
    capital,
    costs_of,
)
from costing.settings.mill import Mill
from costing.settings.product_fields import DYE, REDUCTANTS
from costing.settings.sizing_step import Sizing

OF_COST, OF_USE, OF_DRAIN = "cost", "use", "drain"
BASES = {"m": FINISHED_METRE, "kg": GREY_KG}  # short name of a basis -> basis of a quote
ALL_COST, PRICE = "All cost", "Price"
TEXT_COLUMNS = 3  # in front of the numbers
DIGITS = 3
OTHERS = 3  # columns of each enquiry behind the first
HYDROSULFITE = "sodium_hydrosulfite"
NO_BASIS = ("mg/L", "m3")  # units of figures that are the same per kilogram and per metre
GRAMS = convert(1.0, "kg", "g")
MILLIGRAMS_PER_LITRE = convert(1.0, "kg/L", "mg/L")
CARBONATES = ("sodium_carbonate", "sodium_bicarbonate")
LOADS = (
    ("sodium to the drain", "sodium"),
    ("sulfate to the drain", "sulfate"),
    ("sulfate to the drain, once all is oxidised", "sulfate, once all is oxidised"),
    ("sulfide to the drain, as S", "sulfide, as S"),
    ("unfixed dye to the drain", "unfixed dye"),
    ("COD, organic", "COD, organic"),
    ("COD, inorganic sulfur", "COD, inorganic sulfur"),
)


class Figure(NamedTuple):
    """One figure of an enquiry.

    Attributes
    ----------
    about : str
        Cost, use or drain.
    name, unit : str
        What it is, and the unit of its amount.
    per_kg : float
        Amount per kilogram of saleable grey yarn; the amount itself where it is on no basis.
    on_basis : bool
        False for what is the same per kilogram and per metre: a concentration, a whole order.
    """

    about: str
    name: str
    unit: str
    per_kg: float
    on_basis: bool = True


def figures(mill: Mill, result: Result) -> list[Figure]:
    """Cost by group without price, use and drain of one enquiry, per kilogram of saleable grey yarn."""
    currency, sums, amounts = costs_of(mill).currency, result.quote.by("group"), bought(result)
    pure, drain = active_parts(mill, amounts), result.streams[-1]
    dyes: dict[str, list[str]] = {
        item.dye_class: [] for item in mill.materials.values() if item.role == DYE and not item.substance
    }
    for code in pure:
        if code in mill.materials and mill.materials[code].dye_class in dyes:
            dyes[mill.materials[code].dye_class].append(code)
    found = [Figure(OF_COST, group, currency, sums.get((group,), 0.0)) for group in GROUPS]
    found += [
        Figure(OF_USE, "water", "L", amounts.get("water", 0.0)),
        Figure(OF_USE, "steam", "kg", amounts.get("steam", 0.0)),
        Figure(OF_USE, "power", "kWh", amounts.get(POWER, 0.0)),
        Figure(OF_USE, "range time", "h/1000", 1000.0 * amounts.get(RANGE_TIME, 0.0)),
    ]
    for name, held in (
        ("indigo, as 100 %", ["indigo"]),
        *((f"{dye_class} dye, active part", codes) for dye_class, codes in dyes.items()),
        ("hydrosulfite, as 100 %", [HYDROSULFITE]),
        ("other reductants, as 100 %", [key for key in REDUCTANTS if key != HYDROSULFITE]),
        ("caustic, as 100 %", ["sodium_hydroxide"]),
    ):
        found.append(Figure(OF_USE, name, "g", GRAMS * sum(pure.get(key, 0.0) for key in held)))
    found.append(Figure(OF_DRAIN, "flow to the drain", "L", drain.flow))
    found += [Figure(OF_DRAIN, name, "g", GRAMS * drain.loads[load]) for name, load in LOADS]
    found.append(Figure(OF_DRAIN, "salt to the drain", "g", GRAMS * salt(drain)))
    reads = MILLIGRAMS_PER_LITRE * drain.concentration("COD, both")
    found.append(Figure(OF_DRAIN, "COD, both, over all streams", "mg/L", reads, False))
    whole = convert(amounts.get("water", 0.0) * result.ledger.plan.saleable_mass, "L", "m3")
    found.append(Figure(OF_USE, "water for the order", "m3", whole, False))
    return found


def salt(stream: Stream) -> float:
    """Inorganic sodium salts in a stream: what holds sodium and no carbon but carbonate, caustic left out.

    Leaves out what of the caustic becomes salt once the water is neutralised.

    Parameters
    ----------
    stream : Stream
        What drains, per kilogram of saleable grey yarn.

    Returns
    -------
    float
        Salt, without crystal water [kg/kg].
    """
    return sum(line.amount for line in stream.lines if _is_salt(line.substance))


@cache
def _is_salt(substance: str) -> bool:
    known = substances().get(substance)
    if known is None or substance == "sodium_hydroxide":
        return False
    held = atoms(known.formula)
    return "Na" in held and ("C" not in held or substance in CARBONATES)


def compare(mill: Mill, results: Sequence[Result]) -> Table:
    """Every figure of every enquiry, per kilogram and per metre, and its distance from the first enquiry.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    results : sequence of Result
        The first is what the others are compared with.
    """
    columns = [Column("About"), Column("Figure"), Column("Unit")]
    for place, item in enumerate(results):
        code = item.enquiry.code
        columns.append(Column(code, "", DIGITS))
        if place:
            columns += [Column(code, "difference", DIGITS), Column(code, "%", 1)]
    rows: list[list[Any]] = []
    found = [figures(mill, item) for item in results]
    for short, basis in BASES.items() if results else ():
        per = [item.quote.per[basis] for item in results]
        for about, title, unit, values, scaled in _on_basis(mill, results, found, per, basis):
            shown = f"h per 1000 {short}" if unit == "h/1000" else f"{unit}/{short}" if scaled else unit
            rows.append([about, title, shown, *_side_by_side(values)])
    first = f" Differences are from {results[0].enquiry.code}." if results else ""
    sized = {any(isinstance(step, Sizing) for step in item.ledger.steps) for item in results}
    if len(sized) > 1:
        first += " Size is in the cost of routes with a size box alone: add what sizing the others costs."
    note = (
        "Per kg of saleable grey warp, per m of finished cloth; cost and price per kg without the weft."
        f"{first} Discharge is an estimate."
    )
    return Table("compare", "Side by side", note, columns, rows)


def _on_basis(
    mill: Mill, results: Sequence[Result], found: list[list[Figure]], per: list[float], basis: str
) -> list[tuple[str, str, str, list[float], bool]]:
    """About, title, unit and the values of all enquiries: groups, their sum and the price, then the rest."""
    currency = costs_of(mill).currency
    rows = []
    for alike in zip(*found):
        about, name, unit, _, scaled = alike[0]
        values = [figure.per_kg * (kg if scaled else 1.0) for figure, kg in zip(alike, per)]
        if about == OF_COST and basis == GREY_KG and name == "weft yarn":
            values = [0.0] * len(values)  # a kilogram of warp has no weft in it
        rows.append((about, capital(name), unit, values, scaled))
    of_cost = [row for row in rows if row[0] == OF_COST]
    totals = [
        (OF_COST, ALL_COST, currency, [item.quote.cost_on(basis) for item in results], True),
        (OF_COST, PRICE, currency, [item.quote.price_on(basis) for item in results], True),
    ]
    return [*of_cost, *totals, *rows[len(of_cost) :]]


def _side_by_side(values: Sequence[float]) -> list[float | None]:
    """The first value, and each other with its difference and its difference in percent."""
    first = values[0]
    cells: list[float | None] = [first]
    for value in values[1:]:
        share = 100.0 * (value - first) / abs(first) if first else None
        cells += [value, value - first, share]
    return cells


def in_short(table: Table) -> Table:
    """The side-by-side table for a screen: money per metre, the rest per kilogram, no row of noughts."""
    money, other = "/m", ("/kg", " kg", *NO_BASIS)
    rows: list[list[Any]] = []
    for about, *rest in table.rows:
        unit = rest[1]
        wanted = unit.endswith(money) if about == OF_COST else unit.endswith(other)
        if wanted and any(rest[2:]) and rest not in rows:  # what is on no basis stands with each
            rows.append(rest)
    note = f"{table.note} Per kg for money, per m for the rest: --json or --out."
    return Table(table.key, table.title, note, table.columns[1:], rows)


def against_the_first(table: Table) -> Table:
    """A row for each enquiry, with its price and a few figures, and how far the price is from the first.

    Parameters
    ----------
    table : Table
        The side-by-side table.
    """
    currency = next(row[2] for row in table.rows if row[1] == PRICE).split("/")[0]
    columns = [
        Column("Enquiry"),
        Column("Cost", f"{currency}/m", DIGITS),
        Column("Price", f"{currency}/m", DIGITS),
        Column("Difference", f"{currency}/m", DIGITS),
        Column("Difference", "%", 1),
        Column("Water", "L/kg", 1),
        Column("Steam", "kg/kg", 2),
        Column("Sodium", "g/kg", 1),
        Column("COD", "g/kg", 1),
    ]
    found = {(row[1], row[2].rpartition("/")[2]): row[TEXT_COLUMNS:] for row in table.rows}
    rows: list[list[Any]] = []
    for place, code in enumerate(_codes(table)):
        at = max(0, 1 + OTHERS * (place - 1))
        price = found[PRICE, "m"]
        rows.append(
            [
                code,
                found[ALL_COST, "m"][at],
                price[at],
                *(price[at + 1 : at + OTHERS] if place else [None, None]),
                found["Water", "kg"][at],
                found["Steam", "kg"][at],
                found["Sodium to the drain", "kg"][at],
                found["COD, organic", "kg"][at] + found["COD, inorganic sulfur", "kg"][at],
            ]
        )
    note = "Money per m of finished cloth, the rest per kg of grey warp. Differences are from the first row."
    return Table("against_the_first", "Against the first", note, columns, rows)


def _codes(table: Table) -> list[str]:
    """Enquiries of the side-by-side table, the first of them first."""
    return list(dict.fromkeys(column.title for column in table.columns[TEXT_COLUMNS:]))
