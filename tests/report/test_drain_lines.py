"""An opened figure of the drain: its lines, its factors, its streams, and the reactions behind it."""

from __future__ import annotations

from typing import Any

import pytest

from costing.process.postings import PROCESS, REACTION
from costing.reference_data import substances
from costing.report import Table
from costing.report.drain import FIGURES
from costing.report.drain_lines import opened
from tests.report.demo import CODES, demo_result

IN_SHOWN = {"flow": 1.0}  # the others are shown in g or mmol
PASSED_ON = (
    "unfixed dye",
    "sodium",
    "sulfate, once all is oxidised",
    "sulfur, all forms",
    "nitrogen of dye and chemicals",
)


def rows_of(table: Table) -> list[dict[str, Any]]:
    return [dict(zip([column.title for column in table.columns], row)) for row in table.rows]


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("name", FIGURES)
def test_lines_add_up_to_each_stream_and_to_all(code: str, name: str) -> None:
    result = demo_result(code)
    for stream in result.streams:
        only = None if stream.name == "all streams" else stream.name
        lines = rows_of(opened(result, FIGURES[name], None, only)[0])
        load = {"flow": stream.flow, "alkalinity": stream.alkalinity}.get(name) or stream.loads.get(name, 0.0)
        exact = IN_SHOWN.get(name, 1000.0) * load
        assert lines[-1]["Result"] == pytest.approx(exact, rel=1e-9, abs=1e-15)
        assert sum(row["Result"] for row in lines[:-1]) == pytest.approx(exact, rel=1e-9, abs=1e-15)
        assert {row["Stream"] for row in lines[:-1]} <= ({only} if only else {s.name for s in result.streams})


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("name", FIGURES)
def test_every_line_carries_its_factor_and_where_it_comes_from(code: str, name: str) -> None:
    lines = rows_of(opened(demo_result(code), FIGURES[name], None, None)[0])[:-1]
    # only sulfur dyeing brings sulfide; none of these routes has an oxidising box, salt or a size box
    absent = ("peroxide", "chloride", "size")
    assert lines or name in absent or (name == "sulfide, as S" and code != "B-01")
    for row in lines:
        found = row.get("Found", 100.0) / 100.0
        assert row["Result"] == pytest.approx(row["Amount"] * row["Factor"] * found, rel=1e-12)
        assert all(row[head] for head in ("Step", "Stream", "Substance", "Cause", "Factor from"))
        key = row["Substance"].replace(" ", "_")
        if key in substances() and name != "flow":
            assert substances()[key].formula in row["Factor from"]
    assert not lines or ("Found" in lines[0]) == name.startswith("COD")


def test_factors_are_those_of_the_molar_masses() -> None:
    """Sulfite ion 80.057 in 126.037 of its salt; two charges in it; oxygen 15.999 / 126.037."""
    for name, factor in (
        ("sulfite", 80.057 / 126.037),
        ("alkalinity", 2000.0 / 126.037),
        ("COD, both", 15.999 / 126.037),
    ):
        lines = rows_of(opened(demo_result("Q-01"), FIGURES[name], None, None)[0])[:-1]
        found = {row["Factor"] for row in lines if row["Substance"] == "sodium sulfite"}
        assert list(found) == pytest.approx([factor], rel=1e-5)


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("name", FIGURES)
def test_a_screen_shows_the_same_in_narrower_tables(code: str, name: str) -> None:
    whole, made = (rows_of(table) for table in opened(demo_result(code), FIGURES[name], None, None))
    narrow, factors, made_too = (
        rows_of(table) for table in opened(demo_result(code), FIGURES[name], None, None, brief=True)
    )
    known = {row["Substance"]: row for row in factors}
    assert made == made_too
    assert [{**row, **known[row["Substance"]]} for row in narrow[:-1]] == whole[:-1]


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize(
    ("name", "salt", "share"),
    [("sulfite", "sodium_sulfite", 80.057 / 126.037), ("sulfate", "sodium_sulfate", 96.056 / 142.036)],
)
def test_what_is_made_leaves_with_the_drain_or_stays_on_the_yarn(
    code: str, name: str, salt: str, share: float
) -> None:
    """These salts are not bought: what reactions make of them is all that leaves."""
    result = demo_result(code)
    made = rows_of(opened(result, FIGURES[name], None, None)[1])
    left = sum(
        line.amount * (1.0 if line.source == PROCESS else -1.0)
        for line in result.ledger.lines
        if line.substance == salt and (line.source == PROCESS) != (line.destination == PROCESS)
        if REACTION not in (line.source, line.destination)
    )
    assert made[-1]["Net"] == pytest.approx(1000.0 * left * share, rel=1e-5)
    assert made[-1]["Net"] == pytest.approx(made[-1]["Made"] - made[-1]["Taken"], rel=1e-12)
    assert made[0]["Made"] == max(row["Made"] for row in made[:-1])
    assert "carried into sky 3" in {row["Cause"] for row in made[:-1]}


@pytest.mark.parametrize("code", CODES)
def test_the_demand_of_sulfur_falls_by_the_oxygen_of_the_air(code: str) -> None:
    """In a sky hydrosulfite meets oxygen alone: what its demand loses is that oxygen, gram for gram."""
    result = demo_result(code)
    made = rows_of(opened(result, FIGURES["COD, inorganic sulfur"], None, None)[1])
    skies = [row for row in made[:-1] if row["Cause"].startswith("carried into sky")]
    assert len(skies) >= 3
    for row in skies:
        oxygen = sum(
            line.amount
            for line in result.ledger.lines
            if (line.step, line.cause) == (row["Step"], row["Cause"])
            and line.substance == "oxygen"
            and line.destination == REACTION
        )
        assert -row["Net"] == pytest.approx(1000.0 * oxygen, rel=1e-9)


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("name", PASSED_ON)
def test_no_reaction_makes_an_element(code: str, name: str) -> None:
    made = opened(demo_result(code), FIGURES[name], None, None)[1]
    assert made.rows == [["sum", None, 0.0, 0.0, 0.0]]
    assert "No reaction makes" in made.note


def test_a_step_is_not_a_stream() -> None:
    """Lines that the lot adds keep their own step, whatever stream they leave with."""
    result = demo_result("Q-01")
    rinse = "rinse after dyeing"
    of_step = rows_of(opened(result, FIGURES["flow"], rinse, None)[0])
    of_stream = rows_of(opened(result, FIGURES["flow"], None, rinse)[0])
    assert {row["Step"] for row in of_step[:-1]} == {rinse}
    assert {row["Step"] for row in of_stream[:-1]} == {rinse, "indigo dyeing"}
