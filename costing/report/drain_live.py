"""Tables of all collecting points of a book, for its live sheets: the same columns in every book."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Callable

from costing.effluent.factors import typical_point
from costing.effluent.pit import standings
from costing.report.drain_permit import COLUMNS as OF_PERMIT
from costing.report.drain_point import PointResult, work_out_point
from costing.report.drain_tables import POINT_TABLES
from costing.report.table import Column, Result, Table, work_out
from costing.settings.mill import Mill

POINT = Column("Point")
# Columns of a permit that a sheet has room for; the report shows all.
OF_LIVE_PERMIT = (
    "Limit",
    "Estimate",
    "Limit unit",
    "Of the limit",
    "From",
    "To",
    "Chance of exceeding",
    "Load",
    "Limit as load",
    "Concentration",
    "Limit as concentration",
    "Largest part",
    "Would narrow it",
    "Would mend it",
)


def points_of(mill: Mill, results: Sequence[Result]) -> list[PointResult]:
    """Every point to which the plan leads something; worked out once for a book.

    Parameters
    ----------
    mill : Mill
        The book.
    results : sequence of Result
        Of its enquiries, as far as they are worked out.

    Raises
    ------
    InputError
        A cell of the drain's sheets is refused, or an enquiry of the plan.
    """
    drain = mill.drain
    known = {item.enquiry.code: item for item in results}

    def result(code: str) -> Result:
        if code not in known:
            known[code] = work_out(mill, mill.enquiry(code))
        return known[code]

    used = {row.point for row in drain.production} | {flow.point for flow in drain.other_flows}
    for code in drain.points:
        if code in used and code not in drain.worked_out:
            drain.worked_out[code] = work_out_point(mill, code, result)
    return [drain.worked_out[code] for code in drain.points if code in used]


def _columns(mill: Mill, key: str) -> list[Column]:
    """Columns of a table of a point with a pit, whatever the book holds."""
    if key == "permit":
        return [column for column in OF_PERMIT if column.title in OF_LIVE_PERMIT]
    point = replace(typical_point(), pit_volume=1.0)
    empty = POINT_TABLES[key](mill, PointResult(point, [], standings(point, []), 0.0, 0.0))
    assert empty is not None
    return empty.columns


def of_all_points(key: str, title: str) -> Callable[[Mill, Sequence[Result]], Table]:
    """A table of a point, of all points one below the other.

    Parameters
    ----------
    key : str
        One of `POINT_TABLES`.
    title : str
        Heading.
    """

    def build(mill: Mill, results: Sequence[Result]) -> Table:
        columns = _columns(mill, key)
        rows: list[list[Any]] = []
        note = ""
        for found in points_of(mill, results):
            table = POINT_TABLES[key](mill, found)
            if table is None:
                continue
            note = table.note
            places = {(item.title, item.unit): at for at, item in enumerate(table.columns)}
            wanted = [places.get((item.title, item.unit)) for item in columns]
            rows += [
                [found.point.code, *(None if at is None else row[at] for at in wanted)] for row in table.rows
            ]
        return Table(f"drain_{key.replace('point_', '')}", title, note, [POINT, *columns], rows)

    return build


DRAIN_TABLES = {
    "drain_permit": of_all_points("permit", "Permit"),
    "drain_condition": of_all_points("point_condition", "Condition of the water"),
    "drain_parameters": of_all_points("point_parameters", "Parameters"),
    "drain_streams": of_all_points("point_streams", "Streams"),
}
"""By their key, in the order of the sheets."""
