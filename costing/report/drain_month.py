"""A month at a collecting point, from what ran on each of its days."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterable
from copy import copy
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from costing.effluent.arriving import DAY
from costing.effluent.factors import PARAMETERS
from costing.quantities import InputError, listed
from costing.quantities.units import convert
from costing.report.drain import ESTIMATE
from costing.report.drain_point import IN_SHORT, PointResult, band, spread_of, work_out_point
from costing.report.table import Column, Result, Table, capital
from costing.settings.discharge_point import Production
from costing.settings.mill import Mill

FLOW = "Flow: m3"
_MONTH = re.compile(r"(\d{4})-(0[1-9]|1[0-2])")


class Ran(NamedTuple):
    """What ran of an enquiry on a day: saleable grey yarn [kg], finished cloth [m], or both."""

    date: datetime.date
    enquiry: str
    point: str
    yarn: float
    cloth: float


@dataclass(frozen=True)
class Month:
    """What ran to one point in one month.

    Attributes
    ----------
    name : str
        Such as 2026-10.
    ran : list of Ran
        In the order of days.
    mean : Mill
        The book with the mean running day of this month as its plan.
    days : dict
        Date -> the point on this day, each by itself.
    """

    name: str
    ran: list[Ran]
    mean: Mill
    days: dict[datetime.date, PointResult]


def month_named(ran: Iterable[Ran], wanted: str) -> str:
    """The month that is asked for, or the only one of the log.

    Raises
    ------
    InputError
        No month, or one that the log does not hold; more than one where none is asked for.
    """
    months = sorted({item.date.isoformat()[:7] for item in ran})
    if wanted and not _MONTH.fullmatch(wanted):
        raise InputError("--month", f"{wanted!r} is no month; accepted is such as 2026-10")
    if wanted and wanted not in months:
        raise InputError("--month", f"nothing ran in {wanted}; there are: {listed(months, wanted)}")
    if not wanted and len(months) != 1:
        raise InputError("--month", f"the log holds {listed(months)}; accepted is one of them")
    return wanted or months[0]


def work_out_month(
    mill: Mill, code: str, ran: Iterable[Ran], wanted: str, result: Callable[[str], Result]
) -> Month:
    """Run each day of a month.

    Parameters
    ----------
    mill : Mill
        The book.
    code : str
        Of the point; "" for the first.
    ran : iterable of Ran
        Of a log.
    wanted : str
        The month, such as 2026-10; "" for the only one.
    result : callable
        Gives the result of an enquiry by its code.

    Raises
    ------
    InputError
        No such month or point, or nothing of it ran to the point.
    """
    held = list(ran)
    name = month_named(held, wanted)
    point = mill.drain.point(code)
    own = sorted(item for item in held if item.point == point.code and item.date.isoformat()[:7] == name)
    if not own:
        raise InputError("--point", f"nothing ran to {point.code} in {name}; accepted is another point")
    by_day: dict[datetime.date, list[Ran]] = {}
    for item in own:
        by_day.setdefault(item.date, []).append(item)
    days = {
        date: work_out_point(_planned(mill, point.code, items, 1, f"log, {date}"), point.code, result)
        for date, items in by_day.items()
    }
    return Month(name, own, _planned(mill, point.code, own, len(days), f"log, {name}"), days)


def _planned(mill: Mill, code: str, ran: Iterable[Ran], days: int, where: str) -> Mill:
    """The same book, with what ran spread over so many running days as the plan of a point."""
    sums: dict[str, list[float]] = {}
    for item in ran:
        held = sums.setdefault(item.enquiry, [0.0, 0.0])
        held[0] += item.yarn
        held[1] += item.cloth
    rows = []
    for enquiry, (yarn, cloth) in sums.items():
        told = f"{where}, {enquiry}"
        if yarn:
            rows.append(Production(enquiry, code, yarn_per_day=yarn / days / DAY, where=told))
        if cloth:
            rows.append(Production(enquiry, code, cloth_per_day=cloth / days / DAY, where=told))
    drain = mill.drain
    points = {**drain.points, code: replace(drain.points[code], days_per_month=float(days))}
    others = [row for row in drain.production if row.point != code]
    planned = copy(mill)
    planned.keep_drain(replace(drain, points=points, production=[*others, *rows]))
    return planned


def month_tables(month: Month, found: PointResult) -> list[Table]:
    """The month's totals, its days one by one, and what ran.

    Parameters
    ----------
    month : Month
        The month.
    found : PointResult
        Its mean running day.
    """
    return [month_table(month, found), days_table(month, found), ran_table(month, found)]


def month_table(month: Month, found: PointResult) -> Table:
    """Every parameter: its month as it runs to the point, its highest day, and what leaves."""
    columns = [
        Column("Parameter"),
        Column("Runs to the point", "kg/month", 0),
        Column("From", "kg/month", 0),
        Column("To", "kg/month", 0),
        Column("Mean running day", "kg/day", 2),
        Column("Highest day", "kg/day", 2),
        Column("On"),
        Column("Leaves the point", "kg/month", 0),
    ]
    count = len(month.days)
    flows = {date: convert(day.places[0].stream.volume, "L", "m3") for date, day in month.days.items()}
    peak = max(flows, key=lambda date: flows[date])
    total = sum(flows.values())
    ends = band(total, found.point.flow_spread)
    rows: list[list[Any]] = [[FLOW, total, *ends, total / count, flows[peak], peak, total]]
    for name in PARAMETERS:
        loads = {date: day.places[0].stream.loads.get(name, 0.0) for date, day in month.days.items()}
        peak = max(loads, key=lambda date: loads[date])
        total = sum(loads.values())
        ends = band(total, spread_of(found.point, name))
        left = found.leaving.stream.loads.get(name, 0.0) * count
        shown = peak if total else None
        rows.append([capital(name), total, *ends, total / count, loads[peak], shown, max(0.0, left)])
    note = (
        f"{count} running days in the log; the month is the sum of the days. From and to: nine in ten "
        f"estimates of this kind are right within them. What leaves: by the mean running day. {ESTIMATE}"
    )
    return Table("point_month", f"{found.point.code} in {month.name}", note, columns, rows)


def days_table(month: Month, found: PointResult) -> Table:
    """A row for each running day."""
    columns = [
        Column("Day"),
        Column("Yarn", "kg", 0),
        Column("Cloth", "m", 0),
        Column("Flow", "m3", 1),
        *(Column(title, "kg", 1) for title in IN_SHORT.values()),
        *(Column(title, "mg/L", 0) for title in IN_SHORT.values()),
        Column("pH where it enters", "", 1),
        Column("Peak"),
    ]
    rows: list[list[Any]] = []
    for date, day in month.days.items():
        fresh = day.places[0]
        loads = [fresh.stream.loads.get(name, 0.0) for name in IN_SHORT]
        dense = [convert(fresh.concentration(name), "kg/L", "mg/L") for name in IN_SHORT]
        acidity = day.places[1].closed.acidity if day.places[1].closed else None
        volume = convert(fresh.stream.volume, "L", "m3")
        rows.append([date, day.yarn, day.cloth, volume, *loads, *dense, acidity, ""])
    peaks = {3: "flow", 4: "COD", 5: "sulfide"}
    for column, title in peaks.items():
        highest = max(rows, key=lambda row: row[column])
        if highest[column]:
            highest[-1] = f"{highest[-1]}, {title}".lstrip(", ")
    acid = [row[8] for row in rows if row[8] is not None]
    span = f"pH from {min(acid):.1f} to {max(acid):.1f}. " if acid else ""
    note = (
        f"As it runs to the point, each day by itself, other flows of the sheet Discharge plan in it. {span}"
        f"Peak: the highest day of the month. {ESTIMATE}"
    )
    return Table("point_days", f"Days of {month.name} at {found.point.code}", note, columns, rows)


def ran_table(month: Month, found: PointResult) -> Table:
    """What the log holds of each enquiry."""
    columns = [
        Column("Enquiry"),
        Column("Days", "", 0),
        Column("Yarn", "kg", 0),
        Column("Cloth", "m", 0),
        Column("First day"),
        Column("Last day"),
    ]
    rows: list[list[Any]] = []
    for code in dict.fromkeys(item.enquiry for item in month.ran):
        own = [item for item in month.ran if item.enquiry == code]
        dates = sorted({item.date for item in own})
        yarn, cloth = sum(item.yarn for item in own), sum(item.cloth for item in own)
        rows.append([code, len(dates), yarn or None, cloth or None, dates[0], dates[-1]])
    note = "As the log counts it: yarn is saleable grey yarn, cloth is finished cloth."
    return Table("point_ran", f"What ran to {found.point.code} in {month.name}", note, columns, rows)
