"""The dye bath against its balance written out anew and solved by a general root finder."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from scipy.optimize import brentq

from costing.process.bath_balance import steady_feeds
from costing.process.yarn import YarnState
from costing.quantities import InputError
from costing.settings.steps import IndigoDyeing
from tests.example_mill import MATERIALS, example_mill
from tests.ledger.strategies import INDIGO_MACHINE, INDIGO_RECIPE

INDIGO = {item.code: item for item in MATERIALS}

# Molar masses in g/mol from the atomic weights H 1.008, C 12.011, N 14.007, O 15.999, Na 22.990, S 32.06.
M_INDIGO = 16 * 12.011 + 10 * 1.008 + 2 * 14.007 + 2 * 15.999
M_HYDROSULFITE = 2 * 22.990 + 2 * 32.06 + 4 * 15.999
M_CAUSTIC = 22.990 + 15.999 + 1.008
M_OXYGEN = 2 * 15.999
M_CARBON_DIOXIDE = 12.011 + 2 * 15.999


def dyeing_step(recipe: dict[str, Any], machine: dict[str, Any]) -> IndigoDyeing:
    mill = example_mill({"indigo dyeing": recipe}, {"indigo dyeing": machine})
    steps = mill.steps_of(mill.recipes["R"], mill.ranges["M"])
    return next(step for step in steps if isinstance(step, IndigoDyeing))


def totals(step: IndigoDyeing, overflow: float, liquor: float, caustic_in: float, throughput: float) -> Any:
    """Feeds of the whole bath for a given overflow, written out as a balance sheet would."""
    dye = INDIGO[step.indigo_product]
    indigo = step.indigo_on_yarn / (1 - step.rinse_loss) + overflow * step.bath_indigo
    per_oxygen = step.hydrosulfite_per_oxygen * M_HYDROSULFITE / M_OXYGEN
    entering, carried = 0.0, 0.0
    for dip in range(int(step.dips)):
        leaving = (1 - step.exchange) * entering + step.exchange * step.bath_hydrosulfite
        last = dip == int(step.dips) - 1
        last_sky = step.pick_up_last * leaving
        carried += last_sky if last else step.pick_up * step.sky_destruction * leaving
        entering = (1 - step.sky_destruction) * leaving
    oxygen = (
        step.surface_oxygen * step.bath_surface / throughput
        + step.circulation_oxygen * step.circulation_flow / throughput
        + step.entrained_air * step.oxygen_in_air * (1 - step.wetted_out)
    )
    powder = dye.substance != "leuco_indigo"
    # For each indigo: one of hydrosulfite and two of caustic, or what reduces it otherwise and its caustic.
    share = (step.other_reduction_share or 0.0) if powder and step.other_reduction != "none" else 0.0
    otherwise = share * (1 + step.redissolved) * indigo
    its_caustic = {"glucose": 1, "thiourea dioxide": 2}.get(step.other_reduction, 0) * M_CAUSTIC / M_INDIGO
    by_hydrosulfite = ((1 if powder else 0) + step.redissolved) * (1 - share) * indigo
    decayed = step.decay_rate * step.bath_volume * step.bath_hydrosulfite / throughput
    overflowed = overflow * step.bath_hydrosulfite
    hydrosulfite = (
        by_hydrosulfite * M_HYDROSULFITE / M_INDIGO + carried + per_oxygen * oxygen + decayed + overflowed
    )
    in_stock = step.stock_hydrosulfite_ratio * indigo
    hydrosulfite = max(hydrosulfite, in_stock)
    old, on_yarn = liquor, liquor  # what the yarn brought, followed squeeze by squeeze
    for dip in range(int(step.dips)):
        leaving = step.pick_up_last if dip == int(step.dips) - 1 else step.pick_up
        old *= (1 - step.exchange) * min(1.0, leaving / on_yarn)
        on_yarn = leaving
    # Into the last sky the liquor goes as it is in the bath; what it takes there it takes from the yarn.
    alkali, gas = 2 * M_CAUSTIC / M_HYDROSULFITE, 2 * M_CAUSTIC / M_CARBON_DIOXIDE * step.carbon_dioxide
    on_yarn = (step.pick_up_last - old) * step.bath_caustic
    lacking = max(0.0, alkali * last_sky + gas / step.dips - on_yarn)
    caustic = (
        alkali * (hydrosulfite - overflowed - last_sky - 0.5 * decayed)
        + on_yarn
        + overflow * step.bath_caustic
        + gas * (step.dips - 1) / step.dips
        + lacking
        + its_caustic * otherwise
        - caustic_in * (1 - old / liquor)
    )
    caustic_in_stock = (step.stock_caustic_ratio + dye.alkali / dye.strength) * indigo
    volume = (
        indigo / step.stock_indigo
        + (hydrosulfite - in_stock) / step.hydrosulfite_dosing
        + max(0.0, caustic - caustic_in_stock) / step.caustic_dosing
    )
    surplus = liquor + volume - step.pick_up_last - step.sky_evaporation
    return indigo, hydrosulfite, caustic, volume, surplus


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(INDIGO_RECIPE, INDIGO_MACHINE)
def test_feeds_solve_the_whole_balance(recipe: dict[str, Any], machine: dict[str, Any]) -> None:
    throughput, liquor, caustic_in = 800.0, 0.7, 0.0015
    try:
        step = dyeing_step(recipe, machine)
        yarn = YarnState(0.9, 0.08, 25.0, liquor, {"sodium_hydroxide": caustic_in}, air_dry=False)
        feeds = steady_feeds(step, yarn, INDIGO[step.indigo_product], throughput)
    except InputError:
        assume(False)
        raise
    if totals(step, 0.0, liquor, caustic_in, throughput)[4] <= 0:
        overflow = 0.0
    else:
        overflow = float(
            brentq(lambda x: totals(step, x, liquor, caustic_in, throughput)[4] - x, 0.0, 100.0, xtol=1e-15)
        )
    indigo, hydrosulfite, caustic, volume, surplus = totals(step, overflow, liquor, caustic_in, throughput)
    assert feeds.overflow == pytest.approx(overflow, rel=1e-9, abs=1e-12)
    assert feeds.indigo == pytest.approx(indigo, rel=1e-9)
    assert feeds.hydrosulfite_total == pytest.approx(hydrosulfite, rel=1e-9)
    assert feeds.caustic == pytest.approx(caustic, rel=1e-9, abs=1e-12)
    assert feeds.feed_volume == pytest.approx(volume, rel=1e-9)
    assert feeds.make_up == pytest.approx(max(0.0, -surplus) if overflow == 0 else 0.0, abs=1e-9)


def test_feed_without_a_steady_state_is_refused() -> None:
    step = dyeing_step(
        {"bath_indigo": 3.0, "stock_indigo": 5.0, "bath_hydrosulfite": 4.9, "hydrosulfite_dosing": 5.0}, {}
    )
    yarn = YarnState(0.9, 0.08, 25.0, 0.7, {}, air_dry=False)
    with pytest.raises(InputError, match="feeds are too thin"):
        steady_feeds(step, yarn, INDIGO["INDIGO"], 800.0)


def test_a_stock_vat_barely_stronger_than_the_bath_is_refused() -> None:
    with pytest.raises(InputError, match="stock indigo is 6 g/L against 5 g/L"):
        dyeing_step({"bath_indigo": 5.0, "stock_indigo": 6.0}, {})


def test_more_dips_than_boxes_is_refused() -> None:
    with pytest.raises(InputError, match="dips is 9, more than the range has; accepted is 1 to 8"):
        dyeing_step({"dips": 9}, {"boxes": 8})
