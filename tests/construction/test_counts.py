"""Counts against pint's own textile units, exact definitions, and properties that any yarn has."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.construction import counts
from costing.formulas.group_yarn import FORMULAS
from tests.construction.strategies import values
from tests.tools.make_unit_table import registry

UNITS = registry()
CALCULATE = {formula.function.__name__: formula.calculate for formula in FORMULAS}

POUND = 453.59237  # g, by definition
YARD = 0.9144  # m, by definition
HANK = 840 * YARD


def test_constants_follow_from_pound_yard_and_hank() -> None:
    tex = CALCULATE["linear_density_from_english_count"]
    one = {"english_count": 1.0}
    assert tex(one) == pytest.approx(POUND / HANK * 1000, rel=1e-12)
    assert tex(one, "den") == pytest.approx(POUND / HANK * 9000, rel=1e-12)
    assert tex(one, "Nm") == pytest.approx(HANK / POUND, rel=1e-12)


@pytest.mark.parametrize("count", [1.0, 4.5, 7.0, 9.25, 20.0, 60.0, 500.0])
def test_counts_agree_with_pint(count: float) -> None:
    with UNITS.context("textile"):  # pint's leave to turn length per mass into mass per length
        tex = UNITS.Quantity(count, "number_english").to("tex").magnitude
        metric = UNITS.Quantity(tex, "tex").to("number_meter").magnitude
        denier = UNITS.Quantity(tex, "tex").to("denier").magnitude
    assert CALCULATE["linear_density_from_english_count"]({"english_count": count}) == pytest.approx(
        tex, rel=1e-12
    )
    given_tex = {"linear_density": (tex, "tex")}
    assert CALCULATE["metric_count_from_linear_density"](given_tex) == pytest.approx(metric, rel=1e-12)
    assert CALCULATE["denier_from_linear_density"](given_tex) == pytest.approx(denier, rel=1e-12)
    assert CALCULATE["english_count_from_linear_density"](given_tex) == pytest.approx(count, rel=1e-12)


@given(values("english_count"))
def test_english_count_round_trip(count: float) -> None:
    there = counts.linear_density_from_english_count(count)
    assert counts.english_count_from_linear_density(there) == pytest.approx(count, rel=1e-12)


@given(values("metric_count"))
def test_metric_count_round_trip(count: float) -> None:
    there = counts.linear_density_from_metric_count(count)
    assert counts.metric_count_from_linear_density(there) == pytest.approx(count, rel=1e-12)


@given(values("denier_count"))
def test_denier_round_trip(count: float) -> None:
    assert counts.denier_from_linear_density(counts.linear_density_from_denier(count)) == count


@given(values("yarn_mass", low=0.001), values("linear_density"))
def test_length_and_mass_round_trip(mass: float, linear_density: float) -> None:
    length = counts.yarn_length_from_mass(mass, linear_density)
    assert counts.yarn_mass_from_length(length, linear_density) == pytest.approx(mass, rel=1e-12)


@given(values("single_linear_density"), st.integers(2, 6), values("twist_contraction"))
def test_twice_the_singles_twice_the_yarn(single: float, ply: int, contraction: float) -> None:
    once = counts.plied_linear_density(single, ply, contraction)
    assert counts.plied_linear_density(single, 2 * ply, contraction) == pytest.approx(2 * once, rel=1e-12)
    assert once >= ply * single


@given(values("single_linear_density"), values("twist_contraction"))
def test_a_single_yarn_is_as_spun(single: float, contraction: float) -> None:
    assert counts.plied_linear_density(single, 1, contraction) == single


def test_singles_and_plied_yarns_stand_side_by_side_in_an_array() -> None:
    tex = counts.plied_linear_density(29.5, np.array([1.0, 2.0, 3.0]), 0.03)
    assert tex == pytest.approx([29.5, 2 * 29.5 * 1.03, 3 * 29.5 * 1.03], rel=1e-12)


@given(values("linear_density"), values("size_add_on"), values("size_add_on"))
def test_more_size_more_mass(linear_density: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert (
        linear_density
        <= counts.sized_linear_density(linear_density, less)
        <= counts.sized_linear_density(linear_density, more)
    )


@given(values("single_linear_density"), values("core_linear_density"), values("draft"))
def test_core_adds_at_most_its_own_mass(sheath: float, core: float, draft: float) -> None:
    yarn = counts.core_spun_linear_density(sheath, core, draft)
    assert sheath < yarn <= (sheath + core) * (1 + 1e-12)


@given(values("commercial_regain"))
def test_dry_mass_and_its_moisture_make_the_nominal_mass(regain: float) -> None:
    dry = counts.bone_dry_mass(regain)
    assert dry * (1 + regain) == pytest.approx(1.0, rel=1e-12)
