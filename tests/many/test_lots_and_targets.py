"""Lot curve and search for a target, against single quotes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy
import pytest

from costing.cost.quote import basis_of
from costing.front_ends.workbook.read import read_book
from costing.many.lot_curve import full_set, lot_curve, sharing
from costing.many.quotes import COST, PRICE, ordered
from costing.many.target import place_named, search
from costing.quantities import InputError
from costing.report import work_out
from costing.settings.inputs import ENQUIRY, Place, with_inputs
from costing.settings.mill import Enquiry

BOOK = Path(__file__).resolve().parents[2] / "workbook_template" / "mill_book.xlsx"
MILL = read_book(BOOK)


def alone(enquiry: Enquiry, length: float) -> float:
    asked = replace(enquiry, order_length=length)
    return work_out(MILL, asked).quote.cost_on(basis_of(enquiry))


@pytest.mark.parametrize("code", ["Q-01", "Q-03", "V-01", "P-01", "S-01"])
def test_the_curve_is_a_quote_at_each_length(code: str) -> None:
    enquiry = MILL.enquiries[code]
    curve = lot_curve(MILL, enquiry, points=30)
    for place in range(0, len(curve.lengths), 7):
        expected = alone(enquiry, float(curve.lengths[place]))
        assert curve.costs[place] == pytest.approx(expected, rel=1e-12)
    assert (numpy.diff(curve.lengths) > 0.0).all()


def test_the_curve_counts_sets_side_by_side_as_the_quote_does() -> None:
    enquiry = next(item for item in MILL.enquiries.values() if item.sets_side_by_side > 1.0)
    curve = lot_curve(MILL, enquiry, points=10)
    for length, sets in list(zip(curve.lengths.tolist(), curve.sets.tolist()))[::4]:
        assert sets == work_out(MILL, replace(enquiry, order_length=length)).ledger.plan.number_of_sets


@pytest.mark.parametrize("code", ["Q-01", "Q-03", "V-01", "P-01", "S-01"])
def test_a_full_set_is_one_set_and_a_metre_more_is_not(code: str) -> None:
    enquiry = MILL.enquiries[code]
    full = full_set(MILL, enquiry)

    def sets(length: float) -> float:
        return work_out(MILL, replace(enquiry, order_length=length)).ledger.plan.number_of_sets

    together = enquiry.sets_side_by_side
    assert sets(full * (1.0 - 1e-6)) == together
    assert sets(full * 1.001) > together


def test_no_order_above_the_economic_lot_is_dearer_than_said_and_the_one_below_is() -> None:
    enquiry = MILL.enquiries["Q-01"]
    curve = lot_curve(MILL, enquiry, tolerance=0.04)
    assert curve.least is not None
    limit = curve.reference_cost * 1.04
    above = curve.lengths >= curve.least
    assert (curve.costs[above] <= limit).all()
    assert curve.costs[~above][-1] > limit


def test_a_surcharge_makes_every_lot_worth_the_reference() -> None:
    curve = lot_curve(MILL, MILL.enquiries["Q-01"], points=20)
    covered = curve.costs - curve.surcharge()
    assert (covered <= curve.reference_cost * (1.0 + 1e-12)).all()


def test_sharing_is_the_quote_of_the_whole_lot() -> None:
    enquiry = MILL.enquiries["Q-01"]
    found = sharing(MILL, enquiry, 12000.0)
    assert found.alone == pytest.approx(alone(enquiry, enquiry.order_length), rel=1e-12)
    assert found.shared == pytest.approx(alone(enquiry, enquiry.order_length + 12000.0), rel=1e-12)
    assert found.shared < found.alone


def test_lengths_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(InputError, match="accepted is a longer end"):
        lot_curve(MILL, MILL.enquiries["Q-01"], 9000.0, 4000.0)


@pytest.mark.parametrize(
    ("text", "target", "low", "high"),
    [
        ("order length", 2.25, None, 30000.0),
        ("indigo dyeing: indigo on yarn", 2.36, 0.01, 0.06),
        ("steam price", 2.33, None, None),
        ("speed", 2.28, None, None),
    ],
)
def test_what_is_found_meets_the_target(
    text: str, target: float, low: float | None, high: float | None
) -> None:
    enquiry = MILL.enquiries["Q-01"]
    place = place_named(MILL, enquiry, text)
    answer = search(MILL, enquiry, place, target, ordered(basis_of(enquiry)), COST, low, high)
    assert answer.values
    for value in answer.values:
        mill, asked = with_inputs(MILL, enquiry, {place: value})
        assert work_out(mill, asked).quote.cost_on(basis_of(enquiry)) == pytest.approx(target, rel=1e-6)


def test_a_target_out_of_reach_has_no_answer_and_says_how_far_it_goes() -> None:
    enquiry = MILL.enquiries["Q-01"]
    place = place_named(MILL, enquiry, "steam price")
    answer = search(MILL, enquiry, place, 1.0, ordered(basis_of(enquiry)), COST)
    assert not answer.values
    assert 1.0 < answer.least < answer.most


def test_a_jump_over_the_target_is_no_answer() -> None:
    """One metre more than a full set costs a second set: nothing lies between."""
    enquiry = MILL.enquiries["Q-01"]
    full = full_set(MILL, enquiry)
    below, above = alone(enquiry, full * 0.9999), alone(enquiry, full * 1.0001)
    assert above > below
    answer = search(
        *(MILL, enquiry, Place(ENQUIRY, "", "order_length"), (below + above) / 2.0),
        *(ordered(basis_of(enquiry)), COST, full * 0.999, full * 1.001),
    )
    assert not answer.values
    assert answer.least < (below + above) / 2.0 < answer.most


def test_whole_numbers_are_tried_one_by_one_and_the_nearest_two_told() -> None:
    enquiry = MILL.enquiries["Q-01"]
    place = place_named(MILL, enquiry, "dips")
    answer = search(MILL, enquiry, place, 2.57, ordered(basis_of(enquiry)), PRICE, 3.0, 9.0)
    assert all(value == int(value) for value in answer.values)
    assert len(answer.values) in (0, 2)
    assert [value for value, _ in answer.refused] == [9.0]  # the range has eight boxes


@pytest.mark.parametrize(
    ("text", "message"),
    [("pick up", "told of several"), ("indigo on the moon", "is no number of enquiry Q-01")],
)
def test_a_number_that_is_not_clear_is_refused(text: str, message: str) -> None:
    with pytest.raises(InputError, match=message):
        place_named(MILL, MILL.enquiries["Q-01"], text)
