"""What an order book takes from the store as tables: by period, by week and group, and its dye lots."""

from __future__ import annotations

import datetime
from typing import Any

from costing.cost.quote import group_of
from costing.purchasing.dye_lots import KEPT, STANDING, too_long
from costing.purchasing.requirement import DAY, MONTH, WEEK, Requirement, by_period, period_of
from costing.report.table import Column, Table
from costing.settings.mill import Mill
from costing.settings.order_book import Planning

HOURS_A_DAY = 24.0
GROUPS = ("dye", "reductant", "caustic", "auxiliaries", "size")
HEADS = {DAY: "Day", WEEK: "Week from", MONTH: "Month"}
MASS = 1  # decimals of a mass
MOST_CODES = 4  # of orders in one remark


def period_name(day: datetime.date, period: str) -> str:
    """A period as it is told: a day or the Monday of a week as a date, a month by year and number.

    Examples
    --------
    >>> period_name(datetime.date(2027, 1, 1), "month")
    '2027-01'
    """
    return f"{day:%Y-%m}" if period == MONTH else day.isoformat()


def left_out_note(found: Requirement, skipped: int = 0) -> str:
    """What is in no total, in words; "" where all is."""
    told = []
    if found.left_out:
        metres = sum(item.line.order_length for item in found.left_out)
        told.append(f"{len(found.left_out)} refused orders of {metres:,.0f} m are in no total")
    if skipped:
        told.append(f"{skipped} rows of enquiries that the book does not know are in no total")
    return f"INCOMPLETE: {'; '.join(told)}. " if told else ""


def lots_note(found: Requirement, planning: Planning, day: datetime.date) -> str:
    """Lots that are planned later than their orders ask, and those too long to be true; "" where none is."""
    late = sum(1 for lot in found.lots if lot.late)
    lots = "1 lot" if late == 1 else f"{late} lots"
    told = [f"{lots} should have begun before {day}; planned on that day"] if late else []
    for lot in too_long(found.lots, planning):
        codes = ", ".join(dict.fromkeys(line.code for line in lot.orders[:MOST_CODES]))
        told.append(
            f"{lot.code} ({codes}) runs {lot.hours / HOURS_A_DAY:,.0f} days, longer than from its beginning "
            f"to the day it is due: {lot.enquiry.order_length:,.0f} m, is that right?"
        )
    return "\n".join(told)


def requirement_table(mill: Mill, found: Requirement, period: str, note: str = "") -> Table:
    """What is taken of each product in each period [kg]."""
    lots: dict[tuple[datetime.date, str], set[str]] = {}
    sums = by_period(found.needs, period)
    for need in found.needs:
        lots.setdefault((period_of(need.day, period), need.material), set()).add(need.lot)
    rows = [
        [period_name(day, period), code, mill.materials[code].description, mass, float(len(lots[day, code]))]
        for (day, code), mass in sums.items()
    ]
    return Table(
        "need",
        f"Requirement by {period}",
        f"{note}Taken on the day on which a lot begins, as delivered, of the strength that the sheet "
        "Materials has; first fills and what is dumped where the recipe changes are in it. Yarns are not.",
        [Column(HEADS[period]), Column("Material"), Column("Description"), *TAKEN],
        rows,
    )


TAKEN = [Column("Needed", "kg", MASS), Column("Lots", "", 0)]


def materials_table(mill: Mill, found: Requirement, note: str = "") -> Table:
    """What is taken of each product over the whole plan, and when first."""
    first: dict[str, datetime.date] = {}
    last: dict[str, datetime.date] = {}
    sums: dict[str, float] = {}
    for day, code, mass, _ in found.needs:
        sums[code] = sums.get(code, 0.0) + mass
        first[code] = min(day, first.get(code, day))
        last[code] = max(day, last.get(code, day))
    rows = [
        [code, mill.materials[code].description, sums[code], first[code], last[code]]
        for code in mill.materials
        if code in sums
    ]
    columns = [Column("Material"), Column("Description"), Column("Needed", "kg", MASS)]
    columns += [Column("First on"), Column("Last on")]
    return Table("need_materials", "Requirement of all orders", note.strip(), columns, rows)


def groups_table(mill: Mill, found: Requirement, period: str, note: str = "") -> Table:
    """What is taken in each period by group of products, for a chart."""
    rows: dict[datetime.date, list[float]] = {}
    for (day, code), mass in by_period(found.needs, period).items():
        row = rows.setdefault(day, [0.0] * len(GROUPS))
        row[GROUPS.index(group_of(mill.materials[code]))] += mass
    return Table(
        "need_groups",
        f"Requirement by {period} and group",
        f"{note}As delivered; a period in which no lot begins is left out.",
        [Column(HEADS[period]), *(Column(group, "kg", MASS) for group in GROUPS)],
        [[period_name(day, period), *row] for day, row in sorted(rows.items())],
    )


def lots_table(found: Requirement, planning: Planning, note: str = "") -> Table:
    """The dye lots, in the order in which they begin."""
    rows: list[list[Any]] = []
    for lot in found.lots:
        asked = lot.enquiry
        rows.append(
            [
                float(lot.number),
                lot.start,
                float(lot.late) or None,
                asked.range,
                asked.recipe,
                ", ".join(dict.fromkeys(line.code for line in lot.orders)),
                asked.order_length,
                asked.length_basis,
                "stands" if asked.bath_at_start == STANDING else "new",
                "kept" if asked.bath_at_end == KEPT else "dumped",
            ]
        )
    days = [getattr(planning, name) / HOURS_A_DAY for name in ("gather_time", "time_before_due")]
    keeps = planning.bath_keeping_time / HOURS_A_DAY
    return Table(
        "dye_lots",
        "Dye lots",
        f"{note}Orders of one shade and one warp due within {days[0]:g} days are one lot, which begins "
        f"{days[1]:g} days before the first is due. A dye bath is kept for the next lot of the same recipe "
        f"where that begins within {keeps:g} days. How full the range is in a week is not looked at.",
        [
            Column("Lot", "", 0),
            Column("Begins"),
            Column("Late", "days", 0),
            Column("Range"),
            Column("Recipe"),
            Column("Orders"),
            Column("Length", "m", 0),
            Column("Length of"),
            Column("Bath at start"),
            Column("Bath at end"),
        ],
        rows,
    )
