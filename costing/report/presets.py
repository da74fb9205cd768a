"""Limits of regulations as tables, added up over products, and as rows of the sheet Permit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.reference_data.discharge_limits import (
    PER_PRODUCT,
    VERIFY,
    limit_rows,
    limits_of,
    presets,
)
from costing.report.table import Column, Table
from costing.settings.permit import Limit, allowance, limit_of

VERIFY_ALL = "What holds is your permit: verify each limit with it. No figure here is advice on what holds."


def names() -> list[str]:
    """Names of the presets and forms."""
    return list(presets())


def presets_table() -> Table:
    """Every preset and form: what it is, which edition was read, how many limits it has."""
    rows: list[list[Any]] = []
    for name, regulation in presets().items():
        own = [row for row in limit_rows().values() if row.preset == name]
        filled = sum(row.value is not None for row in limits_of(name))
        kind = "values read" if filled else "form to fill in"
        rows.append([name, regulation, own[0].edition, kind, float(len(limits_of(name)))])
    columns = [
        Column("Name"),
        Column("Regulation"),
        Column("Edition"),
        Column("What it has"),
        Column("Limits", "", 0),
    ]
    return Table("presets", "Regulations", f"Each: {VERIFY}. {VERIFY_ALL}", columns, rows)


def limits_of_presets(names: Sequence[str], productions: Sequence[float] = ()) -> list[Limit]:
    """The limits of presets; with a production for each, loads of product become loads of a day.

    Limits alike are added up over the presets. What is no load for each mass of product stays as it is.

    Parameters
    ----------
    names : sequence of str
        Of presets.
    productions : sequence of float, optional
        Product that each counts [kg/day].

    Examples
    --------
    8 t of yarn a day:

    >>> [limit.text() for limit in limits_of_presets(["us_410_g_bpt"], [8000.0])][3]
    'COD: at most 338.4 kg/day, mean of 30 days, after treatment'
    """
    blocks: dict[tuple[Any, ...], list[tuple[Limit, float]]] = {}
    for place, name in enumerate(names):
        production = productions[place] if productions else 0.0
        for row in limits_of(name):
            limit = limit_of(row)
            blocks.setdefault(_like(limit), []).append((limit, production))
    found = []
    for alike in blocks.values():
        first = alike[0][0]
        adds_up = bool(productions) and first.basis == PER_PRODUCT and first.value is not None
        found += [allowance(alike)] if adds_up else [limit for limit, _ in alike[:1]]
    return found


def _like(limit: Limit) -> tuple[Any, ...]:
    """What is alike in limits that are added up; a limit that is none of a load has its value in it."""
    values = () if limit.basis == PER_PRODUCT else (limit.value, limit.value_to)
    shape = (limit.parameter, limit.form, limit.statistic, limit.number, limit.point, limit.direction)
    return (*shape, limit.basis, limit.unit, *values)


def limits_table(names: Sequence[str], found: Sequence[Limit], brief: bool = False) -> Table:
    """Limits in words, with where they stand.

    Parameters
    ----------
    names : sequence of str
        The presets.
    found : sequence of Limit
        Their limits.
    brief : bool, optional
        For a screen: regulation and edition stand once, above the rows, which name the section only.
    """
    columns = [
        Column("Parameter"),
        Column("Limit"),
        Column("Unit"),
        Column("Kind"),
        Column("Statistic and point"),
        Column("Section" if brief else "Reference"),
    ]
    firsts = [row for name in names for row in limits_of(name)[:1]]
    headings = [text for row in firsts for text in (row.regulation, row.edition)]
    rows: list[list[Any]] = []
    for limit in found:
        what, _, said = limit.text().partition(": ")
        value, _, rest = said.partition(", ")
        if limit.value is None:
            value, rest = "type your own", said.partition(", ")[2]
        bare = value[: -len(limit.unit)].rstrip() if limit.unit and value.endswith(limit.unit) else value
        reference = limit.reference
        if brief:
            for text in (*headings, VERIFY):
                reference = reference.replace(text, "") if text else reference
            reference = " ".join(part.strip() for part in reference.split(";") if part.strip())
        rows.append([what, bare, limit.unit or None, limit.basis, rest, reference])
    parts = (part.strip() for name in names for row in limits_of(name) for part in row.note.split(";"))
    notes = dict.fromkeys(part for part in parts if part)
    note = "; ".join([*notes, f"each: {VERIFY}. {VERIFY_ALL}"])
    editions = dict.fromkeys(text for text in headings if text)
    return Table("limits", f"{', '.join(names)}: {', '.join(editions)}", note, columns, rows)


def permit_row(point: str, limit: Limit) -> dict[str, Any]:
    """A limit as a row of the sheet Permit: head -> cell.

    Parameters
    ----------
    point : str
        Code of the point.
    limit : Limit
        The limit.
    """
    flow = limit.reference_flow
    return {
        "Point": point,
        "Parameter": limit.parameter,
        "Limit is": limit.direction,
        "Value": _number(limit.value),
        "Value to": _number(limit.value_to),
        "Limit unit": limit.unit,
        "Kind": limit.basis,
        "Statistic": limit.statistic,
        "Days or hours": limit.number or "",
        "Holds": limit.point,
        "Form": limit.form,
        "Reference flow, L/kg": _number(flow),
        "Reference": limit.reference,
    }


def _number(value: float | None) -> float | str:
    return "" if value is None else float(f"{value:.12g}")
