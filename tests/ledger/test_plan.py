"""Yarns and cloth of a style, and the plan of an order, by hand."""

from __future__ import annotations

import dataclasses

import pytest

from costing.ledger.plan_cloth import plan_cloth
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from tests.example_mill import example_mill

# 1 lb = 453.59237 g over a hank of 840 yd = 768.096 m
TEX_OF_NE_1 = 453.59237 / 768.096 * 1000


def test_only_the_plied_yarn_takes_the_twist_contraction() -> None:
    """Single warp Ne 7 and weft 2/Ne 20 with 3 %: 84.3630 tex as spun, and 2 x 29.52706 x 1.03 tex."""
    style = dataclasses.replace(
        example_mill().styles["S"],
        warp_count=TEX_OF_NE_1 / 7 * 1e-6,
        warp_ply=1.0,
        weft_count=TEX_OF_NE_1 / 20 * 1e-6,
        weft_ply=2.0,
        twist_contraction=0.03,
        picks_density=1800.0,
        width=1.60,
        width_basis="reed",
        weft_waste=0.05,
        weft_crimp=0.0,
    )
    fabric = plan_cloth(style)
    assert fabric.linear_density * 1e6 == pytest.approx(84.3630, abs=5e-5)
    # 1800 picks of 1.60 m make 2880 m of weft in a metre of cloth, of 0.95 of the weft bought:
    # 2880 m x 60.82574 tex / 0.95 = 184.398 g
    assert fabric.weft_per_metre * 1e3 == pytest.approx(184.398, abs=5e-4)


def test_the_same_cloth_of_single_yarns_takes_none() -> None:
    single = dataclasses.replace(example_mill().styles["S"], warp_ply=1.0, weft_ply=1.0)
    assert plan_cloth(dataclasses.replace(single, twist_contraction=0.05)) == plan_cloth(single)


@pytest.mark.parametrize("pressure", [0.0, 0.01])
def test_steam_without_pressure_is_refused_at_its_range(pressure: float) -> None:
    mill = example_mill(whole_machine={"steam_pressure": pressure, "pressure_basis": "absolute"})
    with pytest.raises(InputError) as refused:
        open_ledger(mill, mill.enquiries["E"])
    assert str(refused.value) == (
        f"range M: steam pressure is {pressure:g} bar absolute, accepted is at least 0.02 bar; for a "
        "reading above the atmosphere the pressure basis is gauge"
    )


def test_the_same_reading_of_a_gauge_is_steam_of_the_atmosphere() -> None:
    mill = example_mill(
        whole_machine={"steam_pressure": 0.0, "pressure_basis": "gauge"},
        machine={"drying": {"yarn_temperature_out": 95.0}},
    )
    assert open_ledger(mill, mill.enquiries["E"]).plan.around.steam_pressure == pytest.approx(1.01325)


def test_an_order_of_dyed_warp_holds_the_weaving_waste() -> None:
    """10,000 m of warp, 2 % waste, 8 % crimp on the cloth, 10 % shrinkage: 9,074.07 m and 8,166.67 m."""
    mill = example_mill(enquiry={"order_length": 10000.0, "length_basis": "dyed warp"})
    plan = open_ledger(mill, mill.enquiries["E"]).plan
    assert plan.warp_length == 10000.0
    assert plan.loom_state_length == pytest.approx(9074.0741, abs=1e-4)
    assert plan.finished_length == pytest.approx(8166.6667, abs=1e-4)


def test_take_up_counts_on_the_warp() -> None:
    """8 % of the warp taken up: a metre of cloth holds 1/0.92 m of warp, 8.6957 % on the cloth."""
    style = example_mill().styles["S"]
    on_warp = dataclasses.replace(style, crimp_basis="warp length")
    assert plan_cloth(style).crimp == pytest.approx(0.08, abs=1e-12)
    assert plan_cloth(on_warp).crimp == pytest.approx(0.0869565, abs=1e-7)


def test_a_reed_width_is_wider_than_the_cloth() -> None:
    """1.72 m in the reed, 3 % weft crimp: 1.72/1.03 = 1.66990 m of cloth; ends counted in the reed stay."""
    style = dataclasses.replace(example_mill().styles["S"], width=1.72, width_basis="reed", weft_crimp=0.03)
    fabric = plan_cloth(style)
    assert fabric.reed_width == 1.72
    assert fabric.cloth_width == pytest.approx(1.669903, abs=1e-6)
    # 2450 ends/m x 1.72 m + 48 = 4262 ends of 84.36 tex over 1.66990 m, 8 % crimp and 9 % size; weft 1650
    # picks/m of 98.42 tex with 3 % crimp: 253.460 + 167.265 = 420.725 g/m2
    warp = 4262 / 1.669903 * 0.08436 * 1.08 * 1.09
    weft = 1650 * 0.09842 * 1.03
    assert fabric.loom_state_areal_mass * 1000 == pytest.approx(warp + weft, rel=1e-6)
