"""Tables of actual use against standard, rounded so that every row and every column adds up as shown."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any, NamedTuple

from costing.cost.money import rounded, shown_parts
from costing.purchasing.requirement import WEEK
from costing.purchasing.usage import Amounts, Comparison
from costing.purchasing.usage_parts import MATERIAL, NOT_BOOKED, Parted, parted
from costing.report.table import Column, Table, costs_of, decimals_of
from costing.settings.mill import Mill

STEP = 0.01
SIZE = Decimal(repr(STEP))
DIGITS = decimals_of(STEP)
MASS = 1  # decimals of a mass, and of per cents
EFFECTS = ("usage", "strength", "price")
PLAN = ("volume", "mix")
MOST_VALUES = 6  # of a field that stand beside each other
MOST_ROWS = 12  # that a screen shows of a long table
PLANNED, STANDARD, ACTUAL = "planned cost", "standard cost", "actual cost"
WHOLE = (PLANNED, STANDARD, ACTUAL)
# What a screen leaves out of long tables, to stand in 80 letters: the first table has it, or others tell it.
ON_BRIDGE = ("Volume", "Mix")
FROM_OTHERS = (("More", "kg"), ("Of standard", "%"))
ZERO = Decimal(0)
STANDARD_TOLD = (
    "The standard is an estimate: where a difference surprises, look at the records and at it first."
)
MEANS = {
    PLANNED: "what the plan would take, at standard prices",
    "volume": "more or less yarn made than planned, at the planned mix",
    "mix": "other enquiries made than planned",
    STANDARD: "what the ledger takes for what was made, at standard prices",
    "usage": "active part used beyond the standard",
    "strength": "batches weaker or stronger than the price list",
    "price": "paid more or less than the price list",
    ACTUAL: "what left the store, at the prices paid",
}


class Shown(NamedTuple):
    """One part in rounded money, that adds up: planned cost, volume, mix, standard cost and so on."""

    planned: Decimal
    volume: Decimal
    mix: Decimal
    standard: Decimal
    usage: Decimal
    strength: Decimal
    price: Decimal

    @property
    def over(self) -> Decimal:
        """More than the standard."""
        return self.usage + self.strength + self.price

    @property
    def bridge(self) -> list[Decimal]:
        """From planned cost to actual cost, in the order of `MEANS`."""
        return [*self, self.standard + self.over]


def _shares(parts: Sequence[Fraction], total: Decimal) -> list[Decimal]:
    """Parts of a rounded total, that add up to it; what is nothing stays nothing."""
    filled = [part for part in parts if part]
    shown = iter(shown_parts(filled, total, SIZE))
    return [next(shown) if part else ZERO for part in parts]


def shown_total(total: Amounts) -> Shown:
    """The sum of all in rounded money; the effects make up the differences of the rounded costs."""
    costs = (total.planned_cost, total.standard_cost, total.actual_cost)
    planned, standard, actual = (rounded(float(cost), STEP) for cost in costs)
    before = _shares([total.volume, total.mix], standard - planned)
    after = _shares([total.usage, total.strength, total.price], actual - standard)
    return Shown(planned, before[0], before[1], standard, after[0], after[1], after[2])


def shown_among(parts: Sequence[Amounts], whole: Shown) -> list[Shown]:
    """Parts of what is shown, in rounded money, so that each column adds up to it."""

    def column(name: str, total: Decimal) -> list[Decimal]:
        return _shares([getattr(part, name) for part in parts], total)

    standard = column("standard_cost", whole.standard)
    volume, mix = column("volume", whole.volume), column("mix", whole.mix)
    effects = [column(name, getattr(whole, name)) for name in EFFECTS]
    return [
        Shown(cost - more - other, more, other, cost, *rest)
        for cost, more, other, rest in zip(standard, volume, mix, zip(*effects))
    ]


class Report(NamedTuple):
    """A comparison with everything rounded once, so that no table says other than the next.

    Attributes
    ----------
    mill : Mill
        The book.
    found : Comparison
        What is shown.
    field : str
        By what.
    parted : Parted
        By that field.
    total : Shown
        The sum of all.
    materials : dict
        Material -> its money.
    lines : dict
        (Value of the field, material) -> its money.
    note : str
        What is in no total.
    """

    mill: Mill
    found: Comparison
    field: str
    parted: Parted
    total: Shown
    materials: Mapping[str, Shown]
    lines: Mapping[tuple[str, str], Shown]
    note: str

    @property
    def currency(self) -> str:
        """The mill's money."""
        return costs_of(self.mill).currency

    @property
    def remarks(self) -> list[str]:
        """What may mislead; first what is in no total."""
        left_out = [self.note.strip()] if self.note else []
        return [*left_out, *(remark.text for remark in self.found.remarks), *self.parted.remarks]


def report_of(mill: Mill, found: Comparison, field: str, note: str = "") -> Report:
    """Round a comparison once for all its tables.

    Parameters
    ----------
    mill : Mill
        The book.
    found : Comparison
        What is shown.
    field : str
        By what: one of `costing.purchasing.usage_parts.FIELDS`.
    note : str, optional
        What is in no total.
    """
    total = shown_total(found.total)
    by_material = {code: part for (_, code), part in parted(found, MATERIAL).parts.items()}
    codes = [code for code in found.materials if code in by_material]
    materials = dict(zip(codes, shown_among([by_material[code] for code in codes], total)))
    parts = parted(found, field)
    lines: dict[tuple[str, str], Shown] = {}
    for code in codes:
        keys = [key for key in parts.parts if key[1] == code]
        lines.update(zip(keys, shown_among([parts.parts[key] for key in keys], materials[code])))
    return Report(mill, found, field, parts, total, materials, lines, note)


def head_of(field: str) -> str:
    """Heading of the column of a field."""
    return "Week from" if field == WEEK else field.capitalize()


def bridge_table(report: Report) -> Table:
    """From planned or standard cost to actual cost, in all and by the field where it has few values."""
    values = report.parted.values
    shown: dict[str, Shown] = {"all": report.total}
    if report.field != MATERIAL and 1 < len(values) <= MOST_VALUES:
        shown.update({value: _sum_of(report, value) for value in values})
    names = [name for name in MEANS if report.found.has_plan or name not in (PLANNED, *PLAN)]
    bridges = [dict(zip(MEANS, one.bridge)) for one in shown.values()]
    standard = report.total.standard
    rows: list[list[Any]] = [
        [
            name,
            *(float(bridge[name]) for bridge in bridges),
            _per_cent(bridges[0][name], standard),
            MEANS[name],
        ]
        for name in names
    ]
    first, last = report.found.first, report.found.last
    days = f"{first}" if first == last else f"{first} to {last}"
    made = f"{float(report.found.made):,.0f} kg of saleable grey yarn made"
    if report.found.has_plan:
        made += f", {float(report.found.planned):,.0f} kg planned"
    of = "" if len(report.found.materials) != 1 else f" of {report.found.materials[0]}"
    return Table(
        "usage",
        f"Actual use{of} against standard, {days}",
        f"{report.note}{made}. Above 0 it cost more. The standard is what the ledger takes from the store in "
        "the lot that each enquiry asks for: smaller lots take more for first fills and dumps. No yarns. "
        f"Standard prices are those of {costs_of(report.mill).day}.",
        [
            Column("Cost and effects"),
            *(
                Column(name.capitalize() if name == "all" else name, report.currency, DIGITS)
                for name in shown
            ),
            Column("Of standard", "%", MASS),
            Column("What it is"),
        ],
        rows,
    )


def _sum_of(report: Report, value: str) -> Shown:
    found = [ZERO] * len(Shown._fields)
    for (of, _), line in report.lines.items():
        if of == value:
            found = [mine + more for mine, more in zip(found, line)]
    return Shown(*found)


def materials_table(report: Report, most: int = 0) -> Table:
    """What was used of each material beyond the standard, the largest difference first."""
    amounts = {code: part for (_, code), part in parted(report.found, MATERIAL).parts.items()}
    rows = [[code, *_cells(report, amounts[code], report.materials[code], code)] for code in report.materials]
    columns = [Column("Material"), *_columns(report)]
    note = f"{report.note}Largest difference first."
    return Table("usage_materials", "By material", note, columns, _ordered(report, rows, 1, most))


def lines_table(report: Report, most: int = 0) -> Table:
    """The same by the field and material."""
    parts = report.parted.parts
    rows = [
        [value, code, *_cells(report, parts[value, code], line, code)]
        for (value, code), line in report.lines.items()
    ]
    columns = [Column(head_of(report.field)), Column("Material"), *_columns(report)]
    note = f"{report.note}Largest difference first."
    if any(value == NOT_BOOKED for value in report.parted.values):
        note += f" What is not booked by {report.field} stands apart and is not shared out."
    title = f"By {report.field} and material"
    return Table(f"usage_by_{report.field}", title, note, columns, _ordered(report, rows, 2, most))


def in_short(table: Table) -> Table:
    """A table of materials as it fits a screen; files have the columns that are left out."""
    titles = [(column.title, column.unit) for column in table.columns]
    kept = [at for at, title in enumerate(titles) if title[0] not in ON_BRIDGE and title not in FROM_OTHERS]
    rows = [[row[at] for at in kept] for row in table.rows]
    return table._replace(columns=[table.columns[at] for at in kept], rows=rows)


def _columns(report: Report) -> list[Column]:
    money = report.currency
    names = (*EFFECTS, *PLAN) if report.found.has_plan else EFFECTS
    shown = [Column(name.capitalize(), money, DIGITS) for name in names]
    return [
        Column("Standard", "kg", MASS),
        Column("Issued", "kg", MASS),
        Column("More", "kg", MASS),
        Column("More", "%", MASS),
        *shown[:3],
        Column("Over standard", money, DIGITS),
        Column("Of standard", "%", MASS),
        *shown[3:],
    ]


OVER = 7  # place of the difference among the cells behind the names


def _cells(report: Report, part: Amounts, shown: Shown, code: str) -> list[Any]:
    masses = [float(part.standard), float(part.issued), float(part.issued - part.standard)]
    share = float(100 * (part.issued - part.standard) / part.standard) if part.standard else None
    plan = [shown.volume, shown.mix] if report.found.has_plan else []
    money: list[Any] = [shown.usage, shown.strength, shown.price, shown.over]
    found: list[Any] = [*masses, share, *map(float, money), _per_cent(shown.over, shown.standard)]
    found += map(float, plan)
    if code in report.found.without_price:
        return [*found[:4], *[None] * (len(found) - 4)]
    return found


def _ordered(report: Report, rows: list[list[Any]], names: int, most: int) -> list[list[Any]]:
    """Rows by the size of their difference, the small ones together where there are too many, and the sum."""
    over = names + OVER
    ordered = sorted(rows, key=lambda row: -abs(row[over] or 0.0))
    if most and len(ordered) > most:
        rest = ordered[most - 1 :]
        ordered = [*ordered[: most - 1], _summed(f"{len(rest)} smaller", rest, names)]
    last = _summed("sum", rows, names)
    last[over + 1] = _per_cent(report.total.over, report.total.standard)
    return [*ordered, last]


def _summed(name: str, rows: Sequence[Sequence[Any]], names: int) -> list[Any]:
    """Money of some rows together; masses of unlike products are no sum."""
    found: list[Any] = [name, *[None] * (len(rows[0]) - 1)]
    for place in range(names + 4, len(rows[0])):
        if place != names + OVER + 1:
            found[place] = float(sum(Decimal(repr(row[place])).quantize(SIZE) for row in rows if row[place]))
    return found


def _per_cent(part: Decimal, of: Decimal) -> float | None:
    return float(100 * part / of) if of else None


def waterfall_table(report: Report) -> Table:
    """The bridge as a chart needs it: what stands below each bar, and the bar."""
    rows: list[list[Any]] = []
    at = ZERO
    bridge = dict(zip(MEANS, report.total.bridge))
    for name in [name for name in MEANS if report.found.has_plan or name not in (PLANNED, *PLAN)]:
        amount = bridge[name]
        if name in WHOLE:
            below, bar, at = ZERO, amount, amount
        else:
            below, bar, at = min(at, at + amount), abs(amount), at + amount
        kind = 0 if name in WHOLE else 1 if amount >= 0 else 2
        sign = "" if name in WHOLE else "+" if amount > 0 else ""
        bars = [float(bar) if place == kind else 0.0 for place in range(3)]
        rows.append([f"{name}, {sign}{amount:,.2f}", float(amount), float(below), *bars])
    money = report.currency
    titles = ("Amount", "Below the bar", "Cost", "More", "Less")
    return Table(
        "usage_waterfall",
        f"From {'planned' if report.found.has_plan else 'standard'} cost to actual cost",
        report.note.strip(),
        [Column("Cost and effects"), *(Column(title, money, DIGITS) for title in titles)],
        rows,
    )


def remarks_table(report: Report) -> Table:
    """What may mislead, a row for each."""
    return Table(
        "usage_remarks",
        "What to look at first",
        report.note.strip(),
        [Column("Remark")],
        [[text] for text in report.remarks],
    )
