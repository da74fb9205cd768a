"""Orders at price breaks against a search of all sizes; safety stock against draws of use and lead time."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.purchasing.reordering import (
    best_of_breaks,
    best_order,
    cost_of_buying,
    economic_order,
    reorder_point,
    safety_stock,
)

rates = st.floats(0.01, 100.0)
charges = st.floats(1.0, 500.0)
holdings = st.floats(1e-6, 1e-4)
prices = st.floats(0.1, 50.0)
SIZES = np.geomspace(0.1, 1e7, 2000)


@given(
    rates,
    charges,
    holdings,
    st.lists(st.tuples(st.floats(1.0, 1e5), st.floats(0.5, 1.0)), max_size=4),
    prices,
)
def test_no_size_is_cheaper_than_the_best_order(
    rate: float, charge: float, holding: float, breaks: list[tuple[float, float]], price: float
) -> None:
    steps = [(0.0, price)]
    for least, share in sorted(dict(breaks).items()):
        steps.append((least, steps[-1][1] * share))
    mass, cost = best_of_breaks(rate, steps, charge, holding)
    own = [price for least, price in steps if least <= mass][-1]
    assert cost == pytest.approx(cost_of_buying(rate, mass, own, charge, holding))
    for at, (least, price) in enumerate(steps):
        end = steps[at + 1][0] if at + 1 < len(steps) else np.inf
        sizes = np.append(SIZES[(least <= SIZES) & (end > SIZES)], least or 1.0)
        assert cost <= cost_of_buying(rate, sizes[sizes < end], price, charge, holding).min(
            initial=np.inf
        ) * (1.0 + 1e-9)


@given(rates, charges, holdings, prices, st.floats(1.0, 1e5), st.floats(0.3, 1.0))
def test_the_formula_for_one_break_is_that_for_many(
    rate: float, charge: float, holding: float, price: float, least: float, share: float
) -> None:
    many, _ = best_of_breaks(rate, [(0.0, price), (least, price * share)], charge, holding)
    one = best_order(rate, price, least, price * share, charge, holding)
    costs = [
        cost_of_buying(rate, mass, price * share if mass >= least else price, charge, holding)
        for mass in (many, one)
    ]
    assert costs[0] == pytest.approx(costs[1], rel=1e-12)


def test_at_the_economic_order_ordering_costs_what_holding_does() -> None:
    mass = economic_order(2.0, 1.5, 60.0, 2e-5)
    assert 2.0 * 60.0 / mass == pytest.approx(1.5 * 2e-5 * mass / 2.0)


def test_the_stock_lasts_as_often_as_the_service_level_says() -> None:
    """A hundred thousand lead times, each with the use of its days, drawn with a seed."""
    draws = np.random.default_rng(7)
    lead = draws.normal(21.0, 4.0, 100_000)
    used = draws.normal(30.0 * lead, 12.0 * np.sqrt(lead))
    safety = safety_stock(0.95, 30.0 / 24.0, 12.0, 24.0, 21.0 * 24.0, 4.0 * 24.0)
    level = reorder_point(30.0 / 24.0, 21.0 * 24.0, safety)
    assert np.mean(used <= level) == pytest.approx(0.95, abs=0.004)
