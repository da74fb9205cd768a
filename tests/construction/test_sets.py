"""Ropes, beams, sets and sub-lots: whole numbers stay whole, and no metre or kilogram is lost."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.construction import sets
from costing.construction.whole_numbers import TOLERANCE, whole_down, whole_up
from costing.quantities import InputError
from tests.construction.strategies import values

YARD = 0.9144


def test_thirty_ropes_of_350_ends() -> None:
    """Common practice, no source."""
    assert sets.beam_plan(ropes=30, ends_per_rope=350, subsets=2) == sets.BeamPlan(
        ends=10500, section_beams=30, subsets=2, beams_per_subset=15, ends_per_subset=5250
    )
    assert sets.ropes_for_ends(10500, 350) == 30


def test_set_of_30000_yards_makes_three_sublots() -> None:
    """Common practice, no source."""
    parts = sets.sublots(30000 * YARD, 10000 * YARD)
    assert [(part.letter, part.position) for part in parts] == [
        ("A", "top"),
        ("B", "middle"),
        ("C", "bottom"),
    ]
    assert [part.length / YARD for part in parts] == pytest.approx([10000, 10000, 10000], rel=1e-12)


@pytest.mark.parametrize(
    ("set_length", "expected"),
    [
        (5000.0, [("A", "top", 5000.0)]),
        (10000.0, [("A", "top", 10000.0)]),
        (20000.0, [("A", "top", 10000.0), ("B", "bottom", 10000.0)]),
        (20001.0, [("A", "top", 10000.0), ("B", "middle", 10000.0), ("C", "bottom", 1.0)]),
    ],
)
def test_last_sublot_takes_the_remainder(set_length: float, expected: list[tuple[str, str, float]]) -> None:
    assert sets.sublots(set_length, 10000.0) == tuple(expected)


def test_letters_go_on_after_z() -> None:
    letters = [part.letter for part in sets.sublots(703.0, 1.0)]
    assert letters[:2] == ["A", "B"]
    assert letters[25:28] == ["Z", "AA", "AB"]
    assert letters[51:53] == ["AZ", "BA"]
    assert letters[701:] == ["ZZ", "AAA"]
    assert len(set(letters)) == len(letters)


@given(values("set_length", high=100000), values("sublot_length", low=100))
def test_sublots_add_up_to_the_set(set_length: float, sublot_length: float) -> None:
    parts = sets.sublots(set_length, sublot_length)
    assert math.fsum(part.length for part in parts) == pytest.approx(set_length, rel=1e-12)
    assert all(0 < part.length <= sublot_length * (1 + 1e-6) for part in parts)
    assert parts[0].position == "top"
    assert all(part.position == "middle" for part in parts[1:-1])
    assert len(parts) == 1 or parts[-1].position == "bottom"


@pytest.mark.parametrize(
    ("set_length", "sublot_length", "message"),
    [
        (0.0, 10000.0, "set length is 0 m, accepted is 1 to 200,000 m"),
        (10000.0, 0.0, "sublot length is 0 m, accepted is 1 to 200,000 m"),
        (float("nan"), 10000.0, "set length is not a finite number"),
        (10000.0, float("inf"), "sublot length is not a finite number"),
    ],
)
def test_sublots_refuse(set_length: float, sublot_length: float, message: str) -> None:
    with pytest.raises(InputError, match=message):
        sets.sublots(set_length, sublot_length)


@pytest.mark.parametrize(
    ("ropes", "ends", "subsets", "message"),
    [
        (30, 350, 4, "subsets is 4; 30 section beams, .* share out equally in 1, 2, 3, 5, 6, 10, 15, 30"),
        (30.5, 350, 1, "ropes is 30.5; accepted is a whole number from 1 to 200"),
        (0, 350, 1, "ropes is 0, accepted is a whole number from 1 to 200"),
        (30, 0, 1, "ends per rope is 0, accepted is 1 to 1000"),
        (30, 350, 0, "subsets is 0, accepted is a whole number from 1 to 50"),
    ],
)
def test_beam_plan_refuses(ropes: float, ends: float, subsets: float, message: str) -> None:
    with pytest.raises(InputError, match=message):
        sets.beam_plan(ropes, ends, subsets)


@given(values("ropes"), values("ends_per_rope"), values("subsets"))
def test_beams_hold_all_ends(ropes: float, ends: float, subsets: float) -> None:
    if ropes % subsets:
        with pytest.raises(InputError, match="share out equally"):
            sets.beam_plan(ropes, ends, subsets)
        return
    plan = sets.beam_plan(ropes, ends, subsets)
    assert plan.section_beams == ropes == plan.subsets * plan.beams_per_subset
    assert plan.ends == pytest.approx(ropes * ends, rel=1e-12)
    assert plan.subsets * plan.ends_per_subset == pytest.approx(plan.ends, rel=1e-12)


def test_noise_of_a_float_makes_no_rope() -> None:
    noisy = 0.3 / 0.1 + 1e-15  # a little above or below 3
    assert math.ceil(10.000000001) == 11  # what the guard is for
    assert whole_up(10.000000001) == 10
    assert whole_up(noisy) == whole_down(noisy) == 3
    assert whole_down(2.9999999999) == 3
    assert whole_up(10.0001) == 11
    assert whole_down(9.9999) == 9


@given(st.integers(1, 30000), st.floats(1e-3, 1e3))
def test_exact_multiples_are_counted_exactly(number: int, part: float) -> None:
    assert whole_up(number * part / part) == number
    assert whole_down(number * part / part) == number


@given(values("ends"), values("ends_per_rope"))
def test_ropes_hold_all_ends_and_none_is_spare(ends: float, per_rope: float) -> None:
    ropes = sets.ropes_for_ends(ends, per_rope)
    assert ropes * per_rope >= ends * (1 - 2 * TOLERANCE)
    assert (ropes - 1) * per_rope < ends
    assert sets.ends_from_ropes(ropes, sets.ends_per_rope(ends, ropes)) == pytest.approx(ends, rel=1e-12)


@given(values("rope_places"), values("ropes"))
def test_sets_side_by_side_fit_the_range(places: float, ropes: float) -> None:
    together = sets.sets_side_by_side(places, ropes)
    assert together * ropes <= places < (together + 1) * ropes


@given(values("ends", high=15000), values("linear_density"), values("set_length"))
def test_twice_the_ends_or_length_twice_the_set(ends: float, linear_density: float, length: float) -> None:
    once = sets.set_mass(ends, linear_density, length)
    assert sets.set_mass(2 * ends, linear_density, length) == pytest.approx(2 * once, rel=1e-12)
    assert sets.set_mass(ends, linear_density, 2 * length) == pytest.approx(2 * once, rel=1e-12)
    assert sets.warp_sheet_mass_per_metre(ends, linear_density) * length == pytest.approx(once, rel=1e-12)


@given(
    values("ends"),
    values("linear_density"),
    values("set_length"),
    values("speed"),
    values("stretch"),
    values("efficiency"),
)
def test_hours_times_kilograms_an_hour_are_the_set(
    ends: float, linear_density: float, length: float, speed: float, stretch: float, efficiency: float
) -> None:
    """The range delivers stretched metres; the grey yarn in them is what was fed."""
    delivered = sets.length_after_stretch(length, stretch)
    running = sets.throughput(ends, linear_density, speed, stretch)
    manned = sets.manned_throughput(running, efficiency)
    grey = sets.set_mass(ends, linear_density, length)
    assert running * sets.run_time(delivered, speed, 1.0) == pytest.approx(grey, rel=1e-12)
    assert manned * sets.run_time(delivered, speed, efficiency) == pytest.approx(grey, rel=1e-12)
    stretched = sets.linear_density_after_stretch(linear_density, stretch)
    assert sets.set_mass(ends, stretched, delivered) == pytest.approx(grey, rel=1e-12)
    assert sets.length_before_stretch(delivered, stretch) == pytest.approx(length, rel=1e-12)


def test_three_zones_of_stretch_multiply() -> None:
    """GATE, Textile Engineering and Fibre Science, 2010, question 34 (web copy of the paper): 106.11 m."""
    length = 100.0
    for zone in (0.03, 0.02, 0.01):
        length = sets.length_after_stretch(length, zone)
    assert length == pytest.approx(106.11, abs=0.005)


@given(
    values("warp_length", low=1.0, high=1e6),
    values("set_length_max"),
    values("leader_length"),
    values("off_shade_length"),
)
def test_a_run_is_its_sets_and_what_each_loses(
    warp: float, longest: float, leader: float, off_shade: float
) -> None:
    number = sets.number_of_sets(warp, longest)
    run = sets.range_run_length(warp, number, leader, off_shade)
    each = warp / number
    assert each <= longest * (1 + 2 * TOLERANCE)
    assert run == pytest.approx(number * (each + leader + off_shade), rel=1e-9)
    assert run >= warp


def test_a_small_order_loses_a_larger_share() -> None:
    def share(warp: float) -> float:
        return float(sets.range_run_length(warp, sets.number_of_sets(warp, 20000.0), 60.0, 120.0)) / warp

    assert share(3000.0) == pytest.approx(1.06)
    assert share(60000.0) == pytest.approx(1.009)
