"""Tables of the drain: every basis agrees with the ledger, and nothing is not zero."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from costing.effluent.factors import PARAMETERS
from costing.report.drain import (
    discharge_by_parameter,
    discharge_concentrations,
    discharge_loads,
    discharge_of,
)
from tests.report.demo import CODES, demo_result

IN_GRAMS = {"g": 1000.0, "mmol": 1000.0, "L": 1.0}
IN_WHOLE = {"kg": 1.0, "mol": 1.0, "m3": 0.001}


def amounts(code: str) -> dict[tuple[str, str], float]:
    """Amount of each parameter in each stream, per kilogram in kg, L or mol, by the stream itself."""
    found = {}
    for stream in demo_result(code).streams:
        found[stream.name, "Flow"] = stream.flow
        found[stream.name, "Alkalinity, estimate"] = stream.alkalinity
        for name in PARAMETERS:
            found[stream.name, name[:1].upper() + name[1:]] = stream.loads[name]
    return found


@pytest.mark.parametrize("code", CODES)
def test_every_parameter_stands_on_every_basis(code: str) -> None:
    """Bases from the plan: the order in kg and m, and its hours on the range."""
    result = demo_result(code)
    plan = result.ledger.plan
    hours = plan.run_hours + plan.changeover_hours + plan.stoppage_hours
    exact = amounts(code)
    rows = discharge_by_parameter([result]).rows
    assert {(row[1], row[2]) for row in rows} == set(exact)
    for _, stream, name, per_kg, per_metre, small, order, day, large, dense, unit in rows:
        amount = exact[stream, name]
        assert per_kg == pytest.approx(IN_GRAMS[small] * amount, rel=1e-12)
        assert per_metre * plan.finished_length == pytest.approx(
            IN_GRAMS[small] * amount * plan.saleable_mass, rel=1e-12
        )
        assert order == pytest.approx(IN_WHOLE[large] * amount * plan.saleable_mass, rel=1e-12)
        assert day * hours / 24.0 == pytest.approx(order, rel=1e-12)
        if name == "Flow":
            assert (small, large, dense, unit) == ("L", "m3", None, None)
        else:
            scale = {"mg/L": 1e6, "mmol/L": 1e3}[unit]
            assert dense == pytest.approx(scale * amount / exact[stream, "Flow"], rel=1e-12)


@pytest.mark.parametrize("code", CODES)
def test_wide_and_long_tables_agree(code: str) -> None:
    result = demo_result(code)
    loads, dense = discharge_loads([result]), discharge_concentrations([result])
    for place, stream in enumerate(result.streams):
        rows = discharge_of(result, stream).rows
        assert [column.title for column in loads.columns[2:]] == [row[0] for row in rows]
        assert loads.rows[place][2:] == [row[1] for row in rows]
        assert dense.rows[place][3:] == [row[7] for row in rows[1:]]


def test_a_stream_without_flow_has_no_concentration() -> None:
    """Salt that leaves without water reads nothing in mg/L: an empty cell, and no zero."""
    result = demo_result("Q-01")
    dry = dataclasses.replace(result)
    vars(dry)["streams"] = [result.streams[0]._replace(flow=0.0), *result.streams[1:]]
    empty, *others = discharge_concentrations([dry]).rows
    assert empty[3:] == [None] * (len(PARAMETERS) + 1)
    assert all(isinstance(value, float) for row in others for value in row[3:])
    by_parameter: list[list[Any]] = discharge_by_parameter([dry]).rows[: len(PARAMETERS) + 2]
    assert {row[9] for row in by_parameter} == {None}
    assert all(isinstance(row[3], float) for row in by_parameter)


def test_the_reader_is_told_what_cannot_be_measured_so() -> None:
    result = demo_result("Q-01")
    for table in (discharge_loads([result]), discharge_concentrations([result])):
        assert "Alkalinity, estimate" in [column.title for column in table.columns]
        for words in ("not a measurement", "that have a formula", "counted in full", "ends as sulfate"):
            assert words in table.note
