"""The permit of a collecting point beside the estimates: share of each limit, chance, what would mend it."""

from __future__ import annotations

from typing import Any

from costing.effluent.limit_comparison import CAUTION, percent_text
from costing.quantities.units import convert
from costing.report.drain_point import PointResult
from costing.report.permit_estimates import Held, held_against
from costing.report.permit_mending import behind, is_at_risk, mending, narrowing
from costing.report.table import Column, Table
from costing.settings.mill import Mill

COLUMNS = [
    Column("Limit"),
    Column("In words"),
    Column("Held against it"),
    Column("Estimate"),
    Column("Limit unit"),
    Column("Of the limit", "%", 0),
    Column("From", "%", 0),
    Column("To", "%", 0),
    Column("Headroom", "%", 0),
    Column("Chance of exceeding", "%", 1),
    Column("Load", "kg/day", 3),
    Column("Limit as load", "kg/day", 3),
    Column("Concentration", "mg/L", 3),
    Column("Limit as concentration", "mg/L", 3),
    Column("Largest part"),
    Column("Would narrow it"),
    Column("Would mend it"),
    Column("Remarks"),
    Column("Reference"),
    Column("Cell"),
]
# Of a point with planned stages: the same limits with those stages too.
PLANNED_COLUMNS = [
    Column("With what is planned"),
    Column("Of the limit, planned", "%", 0),
    Column("Chance, planned", "%", 1),
]
OUTSIDE = 1000.0  # a range that is left comes before every share
NOTE = (
    "Limits at risk first, then by the share of the limit; what is not estimated comes last. Load and "
    "concentration are long-term means, with what the limit comes to at this flow and production. From and "
    "to: nine in ten estimates of this kind are right within them; low and high cases of oxygen, of the COD "
    "test and of treatment widen them and count alike in the chance. "
)


def permit_table(mill: Mill, found: PointResult) -> Table | None:
    """Every limit of a point with its estimate on the limit's own terms; None where the book has none.

    Parameters
    ----------
    mill : Mill
        The book.
    found : PointResult
        The point.
    """
    drain = mill.drain
    held = held_against(found, drain.limits, drain.supplier_figures)
    if not held:
        return None
    order = sorted(range(len(held)), key=lambda at: _rank(held[at]))
    rows = [_row(found, held[at], mill) for at in order]
    columns = COLUMNS
    planned = found.with_planned()
    if planned is not None:
        columns = [*COLUMNS, *PLANNED_COLUMNS]
        with_it = held_against(planned, drain.limits, drain.supplier_figures)
        rows = [[*row, *_planned(with_it[at], planned)] for row, at in zip(rows, order)]
    return Table("permit", f"Permit of {found.point.code}", NOTE + CAUTION, columns, rows)


def _rank(item: Held) -> tuple[int, float]:
    """Limits at risk first, each by its share; a range or a temperature stands by its chance."""
    found = item.comparison
    if found is None:
        return 2, 0.0
    group = 0 if is_at_risk(found) else 1
    if found.share is not None:
        return group, -found.share
    return group, -OUTSIDE if found.is_outside else -found.chance


def _row(found: PointResult, item: Held, mill: Mill) -> list[Any]:
    limit, comparison = item.row.limit, item.comparison
    unit = limit.unit.replace("degC", "°C")
    told: list[Any] = [shown_unit(limit.text())]
    last = [limit.reference or None, item.row.where or None]
    if comparison is None:
        told += [words_of(item), None, None, unit]
        narrow = item.missing if limit.value is None else None
        return [*told, *[None] * 10, narrow, None, "; ".join(item.remarks) or None, *last]
    figures = mill.drain.supplier_figures
    return [
        *told,
        words_of(item),
        comparison.meaning,
        float(f"{comparison.value:.3g}"),
        unit or None,
        *map(_percent, (comparison.share, comparison.share_low, comparison.share_high, comparison.headroom)),
        _percent(comparison.chance),
        comparison.daily_load,
        comparison.limit_daily_load,
        _dense(comparison.concentration),
        _dense(comparison.limit_concentration),
        behind(found, item, figures) or None,
        narrowing(found, item, mill.drain),
        mending(found, item) or None,
        "; ".join([*comparison.remarks, *item.remarks]) or None,
        *last,
    ]


def _planned(item: Held, planned: PointResult) -> list[Any]:
    """What is held against a limit once all that is planned is built; why not, where nothing is."""
    found = item.comparison
    if found is None:
        return ["not estimated", None, None]
    if planned.treatment.refused:
        return [f"the planned train is refused: {planned.treatment.refused}", None, None]
    return [words_of(item), _percent(found.share), _percent(found.chance)]


def words_of(item: Held) -> str:
    """What is held against a limit in words; where air takes all of it, also what it is without air."""
    found = item.comparison
    if found is None:
        return f"not estimated: {item.missing}"
    if found.share is None or found.high > 0.0:
        return shown_unit(found.words())
    without = item.without_air
    if without is None or without.share is None:
        return "estimate, 0 % of the limit; no band is given: none runs to this point"
    return (
        "estimate, 0 % of the limit as long as air is blown in; no band is given. If aeration stops: "
        f"{percent_text(without.share)} of it (from {percent_text(without.share_low or 0.0)} to "
        f"{percent_text(without.share_high or 0.0)})"
    )


def shown_unit(text: str) -> str:
    """A text with its unit of temperature as people write it."""
    return text.replace("degC", "°C")


def _percent(share: float | None) -> float | None:
    return None if share is None else 100.0 * share


def _dense(concentration: float | None) -> float | None:
    return None if concentration is None else convert(concentration, "kg/L", "mg/L")
