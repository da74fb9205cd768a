"""Salt in a loop of water against the loop run round by round, and the sewer's charge."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.effluent.charge import Tier, charge_by_strength, charge_in_tiers
from costing.effluent.reuse import concentrate_flow, concentrate_strength, largest_reuse, salt_in_loop
from costing.quantities import InputError

salt = st.floats(1e-6, 0.05)
share = st.floats(0.0, 0.95)
whole = st.floats(0.0, 1.0)


def rounds(added: float, reuse: float, rejection: float, fresh: float) -> float:
    """The loop as it runs: what leaves the range comes back in part, again and again."""
    effluent = fresh + added
    for _ in range(2000):
        taken = reuse * (1.0 - rejection) * effluent + (1.0 - reuse) * fresh
        effluent = taken + added
    return effluent


@given(salt, share, whole, st.floats(0.0, 0.005))
def test_the_loop_settles_where_its_rounds_do(
    added: float, reuse: float, rejection: float, fresh: float
) -> None:
    closed = salt_in_loop(added, reuse, rejection, fresh)
    assert closed == pytest.approx(rounds(added, reuse, rejection, fresh), rel=1e-9)


@given(salt, share, share, whole, st.floats(0.0, 0.005))
def test_more_reuse_of_water_as_salt_as_the_fresh_never_lowers_the_salt(
    added: float, first: float, second: float, rejection: float, fresh: float
) -> None:
    less, more = sorted((first, second))
    at_less, at_more = (salt_in_loop(added, reuse, rejection, fresh) for reuse in (less, more))
    if (1.0 - rejection) * at_less >= fresh:  # what comes back is no cleaner than the fresh
        assert at_more >= at_less * (1.0 - 1e-12)


@given(st.floats(1e-5, 0.02), salt, whole, st.floats(0.05, 0.95), st.floats(0.0, 0.005))
def test_largest_reuse_keeps_the_ceiling_and_no_less(
    ceiling: float, added: float, rejection: float, recovery: float, fresh: float
) -> None:
    reuse = largest_reuse(ceiling, added, rejection, recovery, fresh)
    assert 0.0 <= reuse <= recovery
    if fresh >= ceiling:
        assert reuse == 0.0
        return

    def taken(at: float) -> float:
        return float(salt_in_loop(added, at, rejection, fresh) - added)

    assert taken(reuse) <= ceiling * (1.0 + 1e-9) + 1e-12
    if reuse < recovery * (1.0 - 1e-9):
        assert taken(min(recovery, reuse * 1.01 + 1e-4)) > ceiling * (1.0 - 1e-9)


@given(salt, whole, st.floats(0.05, 0.95))
def test_salt_of_the_feed_is_in_water_and_concentrate(feed: float, rejection: float, recovery: float) -> None:
    flow = 1000.0
    passed = recovery * flow * feed * (1.0 - rejection)
    kept = concentrate_flow(flow, recovery) * concentrate_strength(feed, rejection, recovery)
    assert passed + kept == pytest.approx(flow * feed, rel=1e-9)


def test_a_stronger_effluent_never_costs_less() -> None:
    rates = (0.31, 0.35, 0.23, 0.27)
    weak = charge_by_strength(*rates, 260e-6, 240e-6, 260e-6, 240e-6)
    assert weak == pytest.approx(sum(rates))
    assert charge_by_strength(*rates, 300e-6, 240e-6, 260e-6, 240e-6) > weak
    assert charge_by_strength(*rates, 260e-6, 300e-6, 260e-6, 240e-6) > weak
    assert charge_by_strength(*rates, 0.0, 0.0, 260e-6, 240e-6) == pytest.approx(0.66)


def test_tiers_by_hand() -> None:
    tiers = (Tier(1000.0, 0.5), Tier(3000.0, 0.8), Tier(math.inf, 1.0))
    assert charge_in_tiers(0.0, tiers) == 0.0
    assert charge_in_tiers(1000.0, tiers) == 500.0
    assert charge_in_tiers(4000.0, tiers) == 500.0 + 1600.0 + 1000.0
    assert charge_in_tiers(100.0, tiers, minimum=75.0) == 75.0


@pytest.mark.parametrize(
    ("volume", "tiers", "minimum", "said"),
    [
        (-1.0, (Tier(10.0, 1.0),), 0.0, "volume is -1"),
        (math.nan, (Tier(10.0, 1.0),), 0.0, "volume is nan"),
        (1.0, (Tier(10.0, -1.0),), 0.0, "rate is -1"),
        (1.0, (Tier(10.0, 1.0),), -5.0, "minimum is -5"),
        (1.0, (Tier(10.0, 1.0), Tier(10.0, 2.0)), 0.0, "not above 10 L"),
        (11.0, (Tier(10.0, 1.0),), 0.0, "the bands end at 10 L"),
    ],
)
def test_tiers_that_make_no_sense_are_refused(
    volume: float, tiers: tuple[Tier, ...], minimum: float, said: str
) -> None:
    with pytest.raises(InputError, match=said):
        charge_in_tiers(volume, tiers, minimum)
