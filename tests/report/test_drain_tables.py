"""Tables of a collecting point: dumps by hand, and every figure opened into lines that add up to it."""

from __future__ import annotations

import math

import pytest

from costing.effluent.factors import PARAMETERS
from costing.effluent.ion_loads import STRONG, WEAK
from costing.process.chemistry import molar_mass_of_formula
from costing.quantities import InputError
from costing.report import Table
from costing.report.drain_point import PointResult, work_out_point
from costing.report.drain_tables import point_grounds, point_tables
from costing.report.drain_why import why
from costing.report.point_lines import BRIEF
from tests.report.demo import demo_mill, demo_result


@pytest.fixture(scope="module")
def found() -> PointResult:
    return work_out_point(demo_mill(), "PIT", demo_result)


def named(table: Table) -> list[dict[str, object]]:
    return [dict(zip((column.title for column in table.columns), row)) for row in table.rows]


@pytest.mark.parametrize("name", PARAMETERS)
def test_the_lines_of_a_parameter_add_up_to_what_leaves(found: PointResult, name: str) -> None:
    lines, factors = why(demo_mill(), found, name, demo_result)
    load = found.leaving.stream.loads.get(name, 0.0)
    largest = max((abs(row[-1]) for row in lines.rows), default=0.0)
    assert lines.rows[-1][-1] == pytest.approx(load, rel=1e-9, abs=1e-9 * largest)
    if load:
        assert factors.rows


def test_the_lines_of_the_flow_add_up_to_it(found: PointResult) -> None:
    lines, _ = why(demo_mill(), found, "flow", demo_result)
    assert lines.rows[-1][-1] == pytest.approx(found.leaving.stream.volume / 1000.0)
    assert lines.columns[-1].unit == "m3/day"


def test_a_line_names_step_substance_cause_and_the_source_of_its_factor(found: PointResult) -> None:
    lines, factors = why(demo_mill(), found, "BOD5", demo_result)
    first = named(lines)[0]
    assert all(first[what] for what in ("Step", "Substance", "Cause"))
    told = {row["Substance"]: row["Given by"] for row in named(factors)}
    assert "point.bod_of_extract: typical 40 %" in str(told["cotton extract"])


def test_the_ions_of_a_ph_balance_and_the_lines_add_up_to_them(found: PointResult) -> None:
    """Each number of the tables against the water itself, and pH and activity by hand from the ions shown."""
    places, ions, acids, lines = why(demo_mill(), found, "pH", demo_result)
    water, closed = found.leaving.stream.water, found.leaving.closed
    assert closed is not None
    told = {str(row["Ion"]): row for row in named(ions)}
    held = [row for row in told.values() if row["Sort"] != "sum"]
    charges = [float(str(row["Charge of it"])) for row in held]
    assert sum(charges) == pytest.approx(0.0, abs=1e-6 * max(charges))
    strength = sum(float(str(row["Concentration"])) * float(str(row["Charge"])) ** 2 for row in held) / 2.0
    root = (strength / 1000.0) ** 0.5
    coefficient = 10.0 ** (-0.509 * (root / (1.0 + root) - 0.3 * root**2))
    assert told["H+"]["Activity coefficient"] == pytest.approx(coefficient, rel=1e-6)
    protons = float(str(told["H+"]["Concentration"])) / 1000.0
    assert places.rows[-1][1] == pytest.approx(-math.log10(protons * coefficient))
    volume = found.leaving.stream.volume
    for row in named(acids):
        field = {"other organic acids": "carboxylate"}.get(str(row["Weak acid"]), str(row["Weak acid"]))
        assert row["All of it"] == pytest.approx(1000.0 * getattr(water.weak, field) / volume)
    total = lines.rows[-1][5:]
    assert total[0] == pytest.approx(water.strong_difference, rel=1e-9)
    for title, amount in zip([column.title for column in lines.columns[6:]], total[1:]):
        field = {"Other organic acids": "carboxylate"}.get(title, title.lower())
        assert amount == pytest.approx(getattr(water.weak, field), rel=1e-9, abs=1e-6)


def test_on_a_screen_small_lines_are_one_and_the_sum_stays(found: PointResult) -> None:
    whole, short = (why(demo_mill(), found, "COD", demo_result, brief)[0] for brief in (False, True))
    assert len(short.rows) == BRIEF + 2 < len(whole.rows)
    assert sum(row[-1] for row in short.rows[:-1]) == pytest.approx(whole.rows[-1][-1])


def test_what_is_no_parameter_is_refused_with_those_there_are(found: PointResult) -> None:
    with pytest.raises(InputError, match=r"'arsenic' is no parameter of the drain; there are: .*sodium"):
        why(demo_mill(), found, "arsenic", demo_result)


def test_a_dump_by_hand(found: PointResult) -> None:
    """Scour dump of Q-02: a square pulse of half an hour on the steady flow, into a full pit."""
    table = next(table for table in point_tables(demo_mill(), found) if table.key == "point_peaks")
    row = next(row for row in table.rows if row[:2] == ["Q-02", "scour dump"])
    dump = next(item for item in found.streams if item.enquiry == "Q-02" and item.name == "scour dump")
    steady = [item for item in found.streams if not item.dumps]
    hours = found.point.dump_time
    one = dump.volume / dump.dumps
    flow = one / hours + sum(item.volume for item in steady) / 24.0
    load = dump.loads["COD, both"] / dump.dumps / hours
    entering = (load + sum(item.loads.get("COD, both", 0.0) for item in steady) / 24.0) / flow
    whole = sum(item.volume for item in found.streams)
    mean = found.places[0].stream.loads["COD, both"] / whole  # peroxide has met what is with it
    behind = mean + (entering - mean) * (1.0 - math.exp(-hours * flow / found.point.pit_volume))
    assert row[2] == pytest.approx(one / 1000.0)
    assert row[3] == pytest.approx(1.0 / dump.dumps)
    assert row[4] == pytest.approx(flow / (whole / 24.0))
    assert row[6:9] == pytest.approx(
        [1e6 * dump.loads["COD, both"] / dump.volume, 1e6 * entering, 1e6 * behind]
    )


def test_the_grounds_say_what_was_taken_and_what_is_contested(found: PointResult) -> None:
    taken, sources, cautions = point_grounds(demo_mill(), found)
    keys = {key for owner, key in demo_mill().drain.assumptions if owner == "discharge point PIT"}
    assert len(taken.rows) == len(keys) > 20
    assert {row["Contested"] for row in named(taken)} == {"", "measure your own"}
    told = " ".join(str(row["Caution"]) for row in named(cautions))
    assert "Acid and sulfide: hydrogen sulfide" in told
    assert "No entry without a permit" in told
    assert {row["Source"] for row in named(taken)} <= {row["Source"] for row in named(sources)}


def test_sulfur_and_its_ions_are_as_much_as_the_loads_say(found: PointResult) -> None:
    for place in found.places:
        water, loads = place.stream.water, place.stream.loads
        for ion, (parameter, formula, atoms, _) in STRONG.items():
            if atoms:
                held = water.strong.get(ion, 0.0) * molar_mass_of_formula(formula)
                assert held == pytest.approx(loads.get(parameter, 0.0), rel=1e-9), (place.place, parameter)
        for name, (parameter, formula, _, _) in WEAK.items():
            held = getattr(water.weak, name) * molar_mass_of_formula(formula)
            assert held == pytest.approx(loads.get(parameter, 0.0), rel=1e-9), (place.place, parameter)
    first, last = found.places[0].stream.loads, found.leaving.stream.loads
    for parameter in ("sulfur, all forms", "sulfate, once all is oxidised"):
        ran_in = sum(stream.loads.get(parameter, 0.0) for stream in found.streams)
        assert first[parameter] == pytest.approx(ran_in, rel=1e-9)
        assert last[parameter] == pytest.approx(ran_in, rel=1e-9)
