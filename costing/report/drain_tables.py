"""The tables of a collecting point, in reading order: one list for the screen, for JSON and for the report.

A table joins by one line in `POINT_TABLES`; a builder gives None where a point has nothing of its kind.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Callable, Optional

from costing.report.drain_against import OF_LIMIT
from costing.report.drain_charge import charge_table, reuse_table
from costing.report.drain_grounds import point_assumptions, point_cautions, point_sources
from costing.report.drain_peaks import peaks_table
from costing.report.drain_permit import permit_table
from costing.report.drain_point import PointResult, condition_table, parameters_table, streams_table
from costing.report.drain_remarks import point_remarks
from costing.report.drain_treatment import (
    acid_demand_table,
    treatment_remarks_table,
    treatment_sums_table,
    treatment_table,
)
from costing.report.table import Table
from costing.settings.mill import Mill

PointBuilder = Callable[[Mill, PointResult], Optional[Table]]


def _of_point(build: Callable[[PointResult], Table]) -> PointBuilder:
    """A table that needs the point alone."""
    return lambda mill, found: build(found)


# Every table of a point by its key, in reading order.
POINT_TABLES: dict[str, PointBuilder] = {
    "point_remarks": point_remarks,
    "point_streams": _of_point(streams_table),
    "point_parameters": _of_point(parameters_table),
    "point_condition": _of_point(condition_table),
    "point_peaks": _of_point(peaks_table),
    "point_acid_demand": acid_demand_table,
    "point_treatment": treatment_table,
    "point_treatment_sums": treatment_sums_table,
    "point_treatment_remarks": treatment_remarks_table,
    "point_reuse": reuse_table,
    "point_charge": charge_table,
    "permit": permit_table,
}

# What a report says at its end: on what it rests, and what to beware of.
POINT_GROUNDS: dict[str, PointBuilder] = {
    "point_assumptions": point_assumptions,
    "point_sources": point_sources,
    "point_cautions": point_cautions,
}


def point_tables(mill: Mill, found: PointResult) -> list[Table]:
    """Every table of a point that has rows, its grounds left out."""
    return _built(POINT_TABLES, mill, found)


def point_grounds(mill: Mill, found: PointResult) -> list[Table]:
    """Assumptions, cautions and sources of a point."""
    return _built(POINT_GROUNDS, mill, found)


def _built(builders: dict[str, PointBuilder], mill: Mill, found: PointResult) -> list[Table]:
    tables = (build(mill, found) for build in builders.values())
    return [table for table in tables if table is not None and table.rows]


# What a screen shows of a wide table: its columns by title.
SHORT = {
    "point_treatment_sums": ("Train", "What", "Unit", "Low", "Typical", "High", "Cost"),
    "point_reuse": (
        "Train",
        "Salt",
        "Fresh water",
        "Added",
        "In water taken",
        "At most back",
    ),
    "point_charge": (
        "Water of",
        "Collected",
        "COD to sewer",
        "Solids to sewer",
        "Sewer",
        "Both",
    ),
    "point_streams": ("Enquiry", "Stream", "Volume", "pH", "COD, organic", "Sodium", "Sulfide, as S"),
    "point_peaks": ("Enquiry", "Dump", "Volume of one", "One every", "COD: dump", "COD: where it enters"),
    "permit": ("Limit", "In words", "Chance of exceeding", "With what is planned"),
    "point_month": ("Parameter", "Runs to the point", "From", "To", "Highest day", "On"),
}


FEW = 2  # measurements that are named
FRESH = 5  # column of the parameters: as they come, before air changes them
OF_TREATMENT = ("Train", "Behind", "Removal", "Flow", "pH", "COD", "Dye", "Sodium", "Sulfate")


def in_short(table: Table) -> Table:
    """The columns of a table that a screen has room for; all of a table that is narrow."""
    if (
        table.key == "point_treatment"
    ):  # concentrations of what treatment is about; the loads are in the report
        places = [
            at
            for at, column in enumerate(table.columns)
            if column.unit != "kg/day" and column.title in OF_TREATMENT
        ]
    elif table.key == "point_parameters":
        last = len(table.columns) - 3  # behind it stand the ends of its band
        places = [0, 1, 3, *dict.fromkeys((FRESH, last)), last + 1, last + 2]
    elif table.key == "against_permit":  # of the chance and of what else there is to know tells the report
        shown = ("", "kg/day", "mg/L", OF_LIMIT)
        places = [at for at, column in enumerate(table.columns) if column.unit in shown][:-1]
    elif table.key in SHORT:
        places = [at for at, column in enumerate(table.columns) if column.title in SHORT[table.key]]
    else:
        return table
    columns = [table.columns[at] for at in places]
    return table._replace(columns=columns, rows=[[row[at] for at in places] for row in table.rows])


def measured_first(tables: Sequence[Table]) -> list[str]:
    """What would narrow the limits at risk, most of them first: one line for each of a few measurements.

    Parameters
    ----------
    tables : sequence of Table
        Of a point.
    """
    permit = next((table for table in tables if table.key == "permit"), None)
    if permit is None:
        return []
    places = {column.title: at for at, column in enumerate(permit.columns)}
    served: dict[str, list[str]] = {}
    for row in permit.rows:
        narrows = row[places["Would narrow it"]]
        if narrows and row[places["Would mend it"]]:
            served.setdefault(narrows, []).append(row[places["Limit"]].partition(":")[0])
    ordered = sorted(served.items(), key=lambda item: -len(item[1]))
    return [
        f"measure first, for {', '.join(dict.fromkeys(limits))}: {what}" for what, limits in ordered[:FEW]
    ]
