"""Two drains side by side: load and concentration of each parameter, condition, share of each limit."""

from __future__ import annotations

from typing import Any, NamedTuple

from costing.effluent.factors import PARAMETERS
from costing.effluent.limit_comparison import Comparison
from costing.effluent.pit import Standing
from costing.quantities.units import convert
from costing.report.drain import ESTIMATE
from costing.report.drain_permit import shown_unit
from costing.report.drain_point import SMALLEST, PointResult
from costing.report.drain_treatment import ESTIMATE as OF_TREATMENT
from costing.report.permit_estimates import Held, held_against
from costing.report.table import Column, Table, capital
from costing.settings.mill import Mill

BEFORE, AFTER, CHANGE = "Before", "After", "Change"
OF_LIMIT, CHANCE = "% of limit", "% chance"
FRESH, RAW, BEHIND_TREATMENT = "fresh", "as it leaves the point", "behind the treatment"
CHANGING = "What air changes on the way, as it comes: so it stands where no air gets in, or the blower stops."
SURER = (
    "What both have in common, such as the share of a dye that is fixed, is off in both alike, so the change "
    "is surer than either figure."
)


class Side(NamedTuple):
    """One of two drains.

    Attributes
    ----------
    name : str
        Of the book, the point or the month.
    mill : Mill
        The book.
    found : PointResult
        The point.
    """

    name: str
    mill: Mill
    found: PointResult


class Waters(NamedTuple):
    """A water of a running day: its volume [L] and loads [kg]."""

    volume: float
    loads: dict[str, float]


def against_tables(before: Side, after: Side) -> list[Table]:
    """Every table of a change, in reading order; without limits the last is left out.

    Parameters
    ----------
    before, after : Side
        The two drains.
    """
    fresh = _loads_table("against_fresh", FRESH, _fresh(before.found), _fresh(after.found), before, after)
    raw = _loads_table("against", RAW, _raw(before.found), _raw(after.found), before, after)
    changing = {name for side in (before, after) for name in _changing(side.found)}
    of_them = [row for row in fresh.rows if row[0] in changing]
    tables = [raw, _condition_table(before, after)]
    if of_them:
        tables.insert(0, fresh._replace(rows=of_them, note=f"{CHANGING} {fresh.note}"))
    treated = _treated(before.found), _treated(after.found)
    if any(held is not None for held in treated):
        tables.append(_loads_table("against_treated", BEHIND_TREATMENT, *treated, before, after))
    limits = _limits_table(before, after)
    return [*tables, limits] if limits.rows else tables


def _title(what: str, before: Side, after: Side) -> str:
    return f"{what}: {after.name} against {before.name}"


def _four(unit: str, of: str, digits: int) -> list[Column]:
    """Before, after, the difference and what it is of the first."""
    return [
        Column(BEFORE, unit, digits),
        Column(AFTER, unit, digits),
        Column(CHANGE, unit, digits),
        Column(CHANGE, f"% of {of}", 0),
    ]


def _change(before: float | None, after: float | None) -> list[float | None]:
    if before is None or after is None:
        return [before, after, None, None]
    change = after - before
    return [before, after, change, 100.0 * change / before if before else None]


def _loads_table(
    key: str, place: str, one: Waters | None, other: Waters | None, before: Side, after: Side
) -> Table:
    columns = [Column("Parameter"), *_four("kg/day", "load", 2), *_four("mg/L", "mg/L", 1)]
    flows = [None if held is None else convert(held.volume, "L", "m3") for held in (one, other)]
    rows: list[list[Any]] = [["Flow, m3", *_change(*flows), *[None] * 4]]
    for name in PARAMETERS:
        loads = [None if held is None else held.loads.get(name, 0.0) for held in (one, other)]
        if any(load is not None and abs(load) > SMALLEST for load in loads):
            dense = [_dense(held, name) for held in (one, other)]
            rows.append([capital(name), *_change(*loads), *_change(*dense)])
    note = (
        f"Loads of a day: {before.found.yarn:,.0f} kg of yarn before, {after.found.yarn:,.0f} kg after. "
        "Less water with the same load is a stronger water: a permit may hold both. "
        f"{SURER} {ESTIMATE if place != BEHIND_TREATMENT else OF_TREATMENT}"
    )
    return Table(key, _title(f"Load and concentration {place}", before, after), note, columns, rows)


def _dense(held: Waters | None, name: str) -> float | None:
    if held is None or held.volume <= 0.0:
        return None
    return convert(held.loads.get(name, 0.0) / held.volume, "kg/L", "mg/L")


def _fresh(found: PointResult) -> Waters:
    stream = found.places[0].stream
    return Waters(stream.volume, stream.loads)


def _changing(found: PointResult) -> list[str]:
    """Parameters of which air makes something else on the way, as the table names them."""
    came, left = found.places[0].stream.loads, found.leaving.stream.loads
    return [
        capital(name)
        for name in PARAMETERS
        if abs(left.get(name, 0.0) - came.get(name, 0.0)) > 1e-6 * abs(came.get(name, 0.0))
    ]


def _raw(found: PointResult) -> Waters:
    stream = found.leaving.stream
    return Waters(stream.volume, stream.loads)


def _treated(found: PointResult) -> Waters | None:
    if found.train is None:
        return None
    last = found.train.typical[-1]
    return Waters(last.flow.water.volume, last.loads)


def _condition_table(before: Side, after: Side) -> Table:
    columns = [
        Column("What"),
        Column("At"),
        Column(BEFORE, "", 2),
        Column(AFTER, "", 2),
        Column(CHANGE, "", 2),
    ]
    rows: list[list[Any]] = []
    for when, one, other in (
        ("fresh", before.found.places[0], after.found.places[0]),
        ("as it leaves", before.found.leaving, after.found.leaving),
    ):
        for what, value in _conditions(one).items():
            new = _conditions(other)[what]
            change = None if value is None or new is None else new - value
            rows.append([what, when, value, new, change])
    note = f"pH from the ions of all streams together, never a mean. {ESTIMATE}"
    return Table("against_condition", _title("Condition", before, after), note, columns, rows)


def _conditions(place: Standing) -> dict[str, float | None]:
    closed = place.closed
    return {
        "pH": closed.acidity if closed else None,
        "Temperature, °C": place.stream.temperature if closed else None,
        "Conductivity at 25 °C, mS/cm": 10.0 * place.conductivity if closed else None,
    }


def _limits_table(before: Side, after: Side) -> Table:
    columns = [
        Column("Limit"),
        Column(BEFORE, "kg/day", 2),
        Column(AFTER, "kg/day", 2),
        Column(BEFORE, "mg/L", 1),
        Column(AFTER, "mg/L", 1),
        Column(BEFORE, OF_LIMIT, 0),
        Column(AFTER, OF_LIMIT, 0),
        Column("From", "% after", 0),
        Column("To", "% after", 0),
        Column(CHANGE, OF_LIMIT, 0),
        Column(BEFORE, CHANCE, 1),
        Column(AFTER, CHANCE, 1),
        Column("To know"),
    ]
    one, other = _by_limit(before), _by_limit(after)
    rows = [_limit_row(text, one.get(text), other.get(text)) for text in dict.fromkeys([*other, *one])]
    note = (
        "Loads and concentrations are long-term means; the share of each limit is on its own terms. From and "
        "to: nine in ten estimates of this kind are right within them. Chance: of exceeding. "
        f"{SURER}"
    )
    return Table("against_permit", _title("Limits", before, after), note, columns, rows)


def _by_limit(side: Side) -> dict[str, Held]:
    drain = side.mill.drain
    held = held_against(side.found, drain.limits, drain.supplier_figures)
    return {shown_unit(item.row.limit.text()): item for item in held}


def _limit_row(limit: str, one: Held | None, other: Held | None) -> list[Any]:
    first, second = (None if item is None else item.comparison for item in (one, other))
    missing = [_why_not(one), _why_not(other)]
    told = [f"{when.lower()}: {text}" for text, when in zip(missing, (BEFORE, AFTER)) if text]
    if len(told) > 1 and missing[0] == missing[1]:
        told = missing[:1]
    shares = [_percent(item, "share") for item in (first, second)]
    change = None if shares[0] is None or shares[1] is None else shares[1] - shares[0]
    without = [None if item is None else _percent(item.without_air, "share") for item in (one, other)]
    if not told and without[0] is not None and without[1] is not None:
        told = [f"without air {without[0]:,.0f} % before, {without[1]:,.0f} % after"]
    if not told and change is None and first is not None and second is not None:
        told = [f"{_value(first)} before, {_value(second)} after"]
    return [
        limit,
        *(None if item is None else item.daily_load for item in (first, second)),
        *(_milligrams(item) for item in (first, second)),
        *shares,
        *(_percent(second, name) for name in ("share_low", "share_high")),
        change,
        *(_percent(item, "chance") for item in (first, second)),
        "; ".join(told) or None,
    ]


def _why_not(item: Held | None) -> str:
    """Why nothing is held against a limit; "" where something is."""
    if item is None:
        return "no such limit"
    return f"not estimated, {item.missing}" if item.comparison is None else ""


def _value(found: Comparison) -> str:
    return shown_unit(f"{found.value:.3g} {found.limit.unit}".strip())


def _percent(found: Comparison | None, name: str) -> float | None:
    share = None if found is None else getattr(found, name)
    return None if share is None else 100.0 * share


def _milligrams(found: Comparison | None) -> float | None:
    dense = None if found is None else found.concentration
    return None if dense is None else convert(dense, "kg/L", "mg/L")
