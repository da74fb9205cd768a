"""Size: the balance of the wet-in box closes, and what cannot be is refused in words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.formulas.group_size import FORMULAS
from costing.process import sizing
from costing.quantities import InputError

CALCULATE = {formula.function.__name__: formula.calculate for formula in FORMULAS}


@given(
    st.floats(0.01, 0.2), st.floats(0.0, 1.0), st.floats(0.05, 1.0), st.floats(0.05, 1.0), st.floats(0.0, 0.3)
)
def test_the_size_fed_to_a_wet_in_box_is_the_size_on_the_warp(
    add_on: float, pick_up_in: float, more: float, exchange: float, loss: float
) -> None:
    pick_up_out = pick_up_in + more
    box = sizing.size_box_strength_wet_in(add_on, pick_up_out, exchange)
    assert sizing.size_add_on_wet_in(pick_up_out, exchange, box) == pytest.approx(add_on, rel=1e-12)
    feed = sizing.size_feed_strength_wet_in(add_on, pick_up_in, pick_up_out)
    cooked = sizing.size_liquor_to_cook(1000.0, pick_up_out - pick_up_in, loss)
    assert feed * cooked == pytest.approx(sizing.size_for_order(1000.0, add_on, loss), rel=1e-9)


def test_dry_in_and_back() -> None:
    solids = sizing.size_solids_for_add_on(0.09, 1.1)
    assert sizing.size_add_on_from_pick_up(1.1, solids) == pytest.approx(0.09, rel=1e-12)
    assert sizing.size_pick_up_from_add_on(0.09, solids) == pytest.approx(1.1, rel=1e-12)


def test_a_box_that_cannot_be_fed_is_refused() -> None:
    with pytest.raises(
        InputError, match=r"pick up out is 0.6 L/kg and pick up in 0.7 L/kg.*more out than in"
    ):
        CALCULATE["size_feed_strength_wet_in"]({"size_add_on": 9, "pick_up_in": 0.7, "pick_up_out": 0.6})


def test_a_sample_heavier_without_its_size_is_refused() -> None:
    with pytest.raises(InputError, match=r"weighs 0.97 of its unsized mass.*accepted is"):
        CALCULATE["size_add_on_from_weighing"]({"sized_mass": 10, "desized_mass": 10, "blank_loss": 3})
