"""The first page of a drain report: what it is, limits at risk, and the figures that are asked for first."""

from __future__ import annotations

import datetime
from typing import Any, NamedTuple

from openpyxl.worksheet.worksheet import Worksheet

import costing
from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results import ESTIMATE
from costing.front_ends.workbook.results_cells import Look, Pen
from costing.front_ends.workbook.results_sheets import HEAD, Form, body, set_widths, title
from costing.quantities.units import convert
from costing.reference_data import fingerprint
from costing.report import Column, Table
from costing.report.drain_point import PointResult, band, spread_of
from costing.report.table import capital

# Parameters of the first page; all others stand on their sheet.
ASKED_FIRST = (
    "COD, both",
    "BOD5",
    "suspended solids",
    "unfixed dye",
    "dissolved solids",
    "sodium",
    "sulfate",
    "chloride",
    "total nitrogen",
    "sulfide, as S",
    "sulfite",
)
AT_RISK, CHANCE = 50.0, 5.0  # per cent of a limit, and of a chance, from which a limit is on this page
LIMIT = 100.0  # per cent of it that the high end of a band may reach without being on this page
MOST_LIMITS = 14
WIDE = [32.0, 10.0, 10.0, 12.0, 10.0, 10.0, 40.0]
PLAIN = Form(filtered=False)
SECTION, LINE = Look("section"), Look("live line")
OF_PERMIT = ("Limit", "Of the limit", "From", "To", "Headroom", "Chance of exceeding", "Largest part")


class About(NamedTuple):
    """Period, file, and what of the file is in no figure."""

    period: str
    source: str
    left_out: list[str]


def drain_summary(pen: Pen, found: PointResult, about: About, permit: Table | None) -> None:
    """Draw the first page, on one printed page.

    Parameters
    ----------
    pen : Pen
        Of the book.
    found : PointResult
        The point.
    about : About
        Period and file.
    permit : Table or None
        Limits beside their estimates, the largest share first.
    """
    sheet: Worksheet = pen.book.create_sheet("Summary")
    set_widths(sheet, WIDE)
    heading = f"Drain report of {found.point.code}: {about.period}"
    note = (
        "Worked out from recipe, range and production. From and to: nine in ten estimates of this kind are "
        "right within them."
    )
    title(pen, sheet, heading, note, ESTIMATE, WIDE)
    row = _about(pen, sheet, HEAD, found, about)
    row = _limits(pen, sheet, row + 1, permit)
    row = _section(pen, sheet, row + 1, "What leaves the point on a running day, before any treatment")
    placed = body(pen, sheet, row, _figures(found), PLAIN, WIDE)
    row = _section(pen, sheet, placed.last + 2, "How the water stands")
    body(pen, sheet, row, _condition(found), PLAIN, WIDE)
    styles.page(sheet, landscape=False)
    sheet.page_setup.fitToHeight = 1


def _section(pen: Pen, sheet: Worksheet, row: int, text: str) -> int:
    for column in range(1, len(WIDE) + 1):
        pen.write(sheet, row, column, text if column == 1 else None, SECTION)
    return row + 1


def _about(pen: Pen, sheet: Worksheet, row: int, found: PointResult, about: About) -> int:
    point = found.point
    made = f"{datetime.date.today():%Y-%m-%d}, version {costing.__version__}, tables {fingerprint()}"
    lines = [
        ("Point", f"{point.code} {point.description}".strip()),
        ("Period", about.period),
        ("From", about.source),
        ("Yarn of a running day", f"{found.yarn:,.0f} kg saleable grey yarn"),
        ("Cloth of a running day", f"{found.cloth:,.0f} m finished cloth"),
        ("Running days", f"{point.days_per_month:g} in a month"),
        ("Pit", f"{convert(point.pit_volume, 'L', 'm3'):,.0f} m3" if point.pit_volume else "none"),
        ("Worked out on", made),
    ]
    lines += [("Left out, and in no figure", text) for text in about.left_out[:MOST_LIMITS]]
    more = len(about.left_out) - MOST_LIMITS
    if more > 0:
        lines.append(("Left out", f"{more} more"))
    for name, value in lines:
        pen.write(sheet, row, 1, name, LINE)
        pen.write(sheet, row, 2, value, LINE)
        row += 1
    return row


def _limits(pen: Pen, sheet: Worksheet, row: int, permit: Table | None) -> int:
    """Limits at risk, the largest share first; in one line where there is none."""
    row = _section(pen, sheet, row, "Limits at risk")
    risky = None if permit is None else at_risk(permit)
    if risky is not None and risky.rows:
        return body(pen, sheet, row, risky, PLAIN, WIDE).last + 1
    text = "No limit is typed for this point on the sheet Permit."
    if permit is not None:
        text = (
            f"No estimate is at {AT_RISK:g} % of its limit, reaches it with its band or has {CHANCE:g} % to "
            "exceed it. See the sheet Permit for all, and for what is not estimated."
        )
    pen.write(sheet, row, 1, text, LINE)
    return row + 1


def at_risk(permit: Table) -> Table:
    """The rows of a permit that come near their limit, and what is behind the largest part."""
    titles = [column.title for column in permit.columns]
    places = [titles.index(name) for name in OF_PERMIT]
    share, high, chance = (titles.index(name) for name in ("Of the limit", "To", "Chance of exceeding"))
    rows: list[list[Any]] = [
        [*[row[at] for at in places[:-1]], _first_part(row[places[-1]])]
        for row in permit.rows
        if (row[share] or 0.0) >= AT_RISK or (row[high] or 0.0) >= LIMIT or (row[chance] or 0.0) >= CHANCE
    ]
    columns = [permit.columns[at] for at in places]
    return permit._replace(columns=columns, rows=rows[:MOST_LIMITS])


def _first_part(text: str | None) -> str | None:
    """The first of several parts that are told."""
    first, _, others = (text or "").partition(";")
    return f"{first}; ..." if others else text


def _figures(found: PointResult) -> Table:
    place = found.leaving
    volume = convert(place.stream.volume, "L", "m3")
    days = found.point.days_per_month
    columns = [
        Column("Parameter"),
        Column("Load", "kg/day", 1),
        Column("Load", "kg/month", 0),
        Column("Concentration", "mg/L", 0),
        Column("From", "mg/L", 0),
        Column("To", "mg/L", 0),
        Column("Most of it from"),
    ]
    low, high = band(volume, found.point.flow_spread)
    told = f"from {low:,.0f} to {high:,.0f} m3 a day"
    rows: list[list[Any]] = [["Flow, m3", volume, volume * days, None, None, None, told]]
    for name in ASKED_FIRST:
        load = place.stream.loads.get(name, 0.0)
        dense = convert(place.concentration(name), "kg/L", "mg/L")
        spread = (spread_of(found.point, name) ** 2 + found.point.flow_spread**2) ** 0.5
        rows.append([capital(name), load, load * days, dense, *band(dense, spread), _largest(found, name)])
    return Table("summary", "", "", columns, rows)


def _largest(found: PointResult, parameter: str) -> str:
    """The stream that brings most of a parameter, and its share of all that runs in; or that none is left."""
    total = sum(item.loads.get(parameter, 0.0) for item in found.streams)
    if total <= 0.0:
        return ""
    stream = max(found.streams, key=lambda item: item.loads.get(parameter, 0.0))
    name = f"{stream.enquiry} {stream.name}".strip()
    if found.leaving.stream.loads.get(parameter, 0.0) <= 0.0:
        return f"none left; ran in with {name}"
    return f"{name}, {100.0 * stream.loads.get(parameter, 0.0) / total:.0f} %"


def _condition(found: PointResult) -> Table:
    places = found.places
    columns = [Column(""), *(Column(capital(place.place), "", 1) for place in places)]
    acidity = [place.closed.acidity if place.closed else None for place in places]
    sulfide = [convert(place.concentration("sulfide, as S"), "kg/L", "mg/L") for place in places]
    rows: list[list[Any]] = [
        ["Temperature, °C", *[place.stream.temperature for place in places]],
        ["pH", *acidity],
        ["Conductivity at 25 °C, mS/cm", *[10.0 * place.conductivity for place in places]],
        ["Sulfide as S, mg/L", *sulfide],
    ]
    return Table("condition", "", "", columns, rows)
