"""The commands that tell a range, a lot curve and what meets a target."""

from __future__ import annotations

import json
from typing import Any

import pytest
from click.testing import CliRunner

from costing.front_ends.command_line import main


def asked(*words: str) -> Any:
    return CliRunner().invoke(main, list(words))


def test_a_band_tells_cost_drivers_and_difference() -> None:
    done = asked("band", "-e", "Q-02", "-e", "B-01", "--draws", "300", "--json")
    assert done.exit_code == 0, done.output
    found = json.loads(done.output)
    assert list(found) == ["enquiries", "Q-02", "B-01"]
    assert list(found["enquiries"]) == ["band", "difference"]
    assert list(found["B-01"]) == ["drivers", "band_by_group"]
    shares = [row["Share of the spread [%]"] for row in found["B-01"]["drivers"]]
    assert shares == sorted(shares, reverse=True)
    assert 99.0 < sum(shares) <= 100.0 + 1e-9


def test_a_lot_curve_names_the_economic_lot() -> None:
    done = asked("lots", "-e", "Q-01", "--within", "5%", "--with", "12000")
    assert done.exit_code == 0, done.output
    assert "Minimum economic lot: 9,147 m" in " ".join(done.output.split())


def test_a_target_is_met_and_told_in_the_usual_unit() -> None:
    done = asked("target", "-e", "Q-01", "--cost", "2.25", "--change", "order length", "--to", "30km")
    assert done.exit_code == 0, done.output
    assert "meets the target" in done.output


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("target", "-e", "Q-01", "--change", "dips"), "accepted is one of the two"),
        (("target", "-e", "Q-01", "--change", "dip", "--cost", "2"), "is no number of enquiry Q-01"),
        (("target", "-e", "Q-01", "--change", "speed", "--cost", "-2"), "accepted is"),
        (("target", "-e", "Q-01", "--change", "speed", "--cost", "2", "--from", "3 L"), "unit"),
        (("lots", "-e", "Q-01", "--from", "9000", "--to", "4000"), "accepted is a longer end"),
        (("lots", "-e", "Q-01", "--within", "500 %"), "accepted is 0 to 100 %"),
        (("band", "-e", "Q-77"), "'Q-77' is not in the book"),
    ],
)
def test_what_makes_no_sense_is_refused_in_one_line(words: tuple[str, ...], message: str) -> None:
    done = asked(*words)
    assert done.exit_code == 2
    assert message in done.output
    assert "Traceback" not in done.output
