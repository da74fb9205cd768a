"""Two drains side by side: clean water with the same production thins what leaves and takes no load away."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costing.report import Table
from costing.report.drain_against import Side, against_tables
from costing.report.drain_point import work_out_point
from costing.settings.discharge_point import OtherFlow
from costing.settings.mill import Mill
from tests.report.demo import demo_mill, demo_result

ADDED = 100_000.0  # L a day


def thinned() -> Mill:
    mill = replace(demo_mill())
    clean = OtherFlow("cooling water", "PIT", ADDED / 24.0)
    mill.keep_drain(replace(mill.drain, other_flows=[*mill.drain.other_flows, clean]))
    return mill


@pytest.fixture(scope="module")
def tables() -> dict[str, Table]:
    sides = [
        Side(name, mill, work_out_point(mill, "PIT", demo_result))
        for name, mill in (("as it is", demo_mill()), ("thinned", thinned()))
    ]
    return {table.key: table for table in against_tables(*sides)}


def test_water_is_added_and_no_load_of_the_recipe_changes(tables: dict[str, Table]) -> None:
    before = work_out_point(demo_mill(), "PIT", demo_result).leaving.stream
    rows = {row[0]: row[1:] for row in tables["against"].rows}
    flow, whole = before.volume / 1000.0, (before.volume + ADDED) / 1000.0
    assert rows["Flow, m3"][:4] == pytest.approx([flow, whole, 100.0, 10000.0 / flow])
    size = before.loads["unfixed dye"]
    assert rows["Unfixed dye"][:4] == pytest.approx([size, size, 0.0, 0.0], abs=1e-9)
    dense, thin = 1000.0 * size / flow, 1000.0 * size / whole
    assert rows["Unfixed dye"][4:] == pytest.approx([dense, thin, thin - dense, 100.0 * (thin / dense - 1.0)])


def test_a_limit_of_a_load_stays_and_one_of_a_concentration_falls(tables: dict[str, Table]) -> None:
    rows = {row[0]: row[1:] for row in tables["against_permit"].rows}
    load = next(row for limit, row in rows.items() if limit.startswith("COD: at most 550 kg/day"))
    dense = next(row for limit, row in rows.items() if limit.startswith("COD: at most 600 mg/L"))
    # Of the concentration the spread of the flow is counted too, and it is the same before and after.
    ratio = tables["against_treated"].rows[0][1] / tables["against_treated"].rows[0][2]
    assert load[5] == pytest.approx(load[4], rel=0.01)
    assert dense[5] == pytest.approx(dense[4] * ratio, rel=0.01)
    assert dense[8] == pytest.approx(dense[5] - dense[4])
