"""Orders: enough packs and not one more, and two variances that make up the whole."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.cost import ordering

masses = st.floats(0.0, 1e6)
prices = st.floats(0.0, 1e3)


@given(masses, masses, st.floats(0.1, 1000.0))
def test_packs_are_enough_and_one_less_is_not(needed: float, stock: float, pack: float) -> None:
    packs = ordering.packs_to_order(needed, stock, pack)
    assert packs == round(packs) >= 0
    slack = 1e-8 * (needed + stock + pack)
    assert stock + ordering.mass_of_packs(packs, pack) >= needed - slack
    if packs:
        assert stock + ordering.mass_of_packs(packs - 1.0, pack) < needed + slack


@given(prices, prices, masses, masses)
def test_price_and_usage_make_up_the_whole_variance(
    actual_price: float, standard_price: float, actual: float, standard: float
) -> None:
    parts = ordering.price_variance(actual_price, standard_price, actual) + ordering.usage_variance(
        actual, standard, standard_price
    )
    cost, standard_cost = actual_price * actual, standard_price * standard
    largest = cost + standard_cost + actual * standard_price + 1.0
    assert parts == pytest.approx(cost - standard_cost, rel=1e-9, abs=1e-9 * largest)


@given(st.integers(0, 100), st.integers(1, 100))
def test_the_break_price_holds_from_the_break_on(packs: int, break_packs: int) -> None:
    cost = ordering.cost_of_order(float(packs), 50.0, 1.2, float(break_packs), 1.1, 60.0)
    price = 1.1 if packs >= break_packs else 1.2
    assert cost == pytest.approx(packs * 50.0 * price + 60.0, rel=1e-12)


def test_an_order_at_its_last_day_is_neither_early_nor_late() -> None:
    reach = ordering.stock_reach(np.array([240.0, 480.0]), 1.0)
    assert ordering.time_left_to_order(reach, 240.0).tolist() == [0.0, 240.0]
