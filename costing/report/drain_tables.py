"""The tables of a collecting point, in reading order: one list for the screen, for JSON and for the report.

A table joins by one line in `POINT_TABLES`; a builder gives None where a point has nothing of its kind.
"""

from __future__ import annotations

from typing import Callable, Optional

from costing.report.drain_grounds import point_assumptions, point_cautions, point_sources
from costing.report.drain_peaks import peaks_table
from costing.report.drain_point import PointResult, condition_table, parameters_table, streams_table
from costing.report.table import Table
from costing.settings.mill import Mill

PointBuilder = Callable[[Mill, PointResult], Optional[Table]]


def _of_point(build: Callable[[PointResult], Table]) -> PointBuilder:
    """A table that needs the point alone."""
    return lambda mill, found: build(found)


# Every table of a point by its key, in reading order.
POINT_TABLES: dict[str, PointBuilder] = {
    "point_streams": _of_point(streams_table),
    "point_parameters": _of_point(parameters_table),
    "point_condition": _of_point(condition_table),
    "point_peaks": _of_point(peaks_table),
}

# What a report says at its end: on what it rests, and what to beware of.
POINT_GROUNDS: dict[str, PointBuilder] = {
    "point_assumptions": point_assumptions,
    "point_cautions": point_cautions,
    "point_sources": point_sources,
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
