"""Rinse equations against the linear balance they come from, solved box by box."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.process.liquor import (
    residue_after_boxes,
    rinse_residue_counter_current,
    rinse_residue_separate_feeds,
)

WATER = st.floats(0.0, 40.0)
PICK_UP = st.floats(0.3, 1.5)
BOXES = st.integers(1, 8)
EXCHANGE = st.floats(0.05, 1.0)


def solved_counter_current(water: float, pick_up: float, boxes: int, exchange: float) -> float:
    """Unknowns: concentration on the yarn behind each box, and in each box."""
    size = 2 * boxes
    matrix, known = np.zeros((size, size)), np.zeros(size)
    for box in range(boxes):
        # exchange: y_out - (1 - eps) y_in - eps x = 0
        matrix[box, box] = 1.0
        matrix[box, boxes + box] = -exchange
        if box:
            matrix[box, box - 1] = -(1.0 - exchange)
        else:
            known[box] = 1.0 - exchange
        # box: what the yarn and the water from behind bring is what both take away
        row = boxes + box
        matrix[row, box] = pick_up
        matrix[row, boxes + box] = water
        if box:
            matrix[row, box - 1] = -pick_up
        else:
            known[row] = pick_up
        if box + 1 < boxes:
            matrix[row, boxes + box + 1] = -water
    return float(np.linalg.solve(matrix, known)[boxes - 1])


@given(st.floats(0.05, 40.0), PICK_UP, BOXES, EXCHANGE)
def test_counter_current_solves_the_balance(
    water: float, pick_up: float, boxes: int, exchange: float
) -> None:
    formula = rinse_residue_counter_current(water, pick_up, boxes, exchange)
    assert formula == pytest.approx(
        solved_counter_current(water, pick_up, boxes, exchange), rel=1e-8, abs=1e-12
    )


@given(WATER, PICK_UP, BOXES, EXCHANGE)
def test_separate_feeds_are_single_boxes_one_after_the_other(
    water: float, pick_up: float, boxes: int, exchange: float
) -> None:
    one = rinse_residue_counter_current(water / boxes, pick_up, 1, exchange)
    assert rinse_residue_separate_feeds(water, pick_up, boxes, exchange) == pytest.approx(
        one**boxes, rel=1e-9
    )


@given(WATER, PICK_UP, BOXES, EXCHANGE)
def test_no_water_beats_the_floor_and_more_water_never_leaves_more(
    water: float, pick_up: float, boxes: int, exchange: float
) -> None:
    for residue in (rinse_residue_counter_current, rinse_residue_separate_feeds):
        left = residue(water, pick_up, boxes, exchange)
        assert residue_after_boxes(boxes, exchange) - 1e-12 <= left <= 1.0 + 1e-12
        assert residue(1.1 * water + 0.1, pick_up, boxes, exchange) <= left + 1e-12


@given(st.floats(0.05, 40.0), PICK_UP, BOXES, EXCHANGE)
def test_counter_current_is_never_worse_than_separate_feeds(
    water: float, pick_up: float, boxes: int, exchange: float
) -> None:
    against = rinse_residue_counter_current(water, pick_up, boxes, exchange)
    assert against <= rinse_residue_separate_feeds(water, pick_up, boxes, exchange) + 1e-12
