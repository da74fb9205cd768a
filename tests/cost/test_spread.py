"""Spreads of single numbers, against a library of distributions."""

from __future__ import annotations

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from costing.cost.spread import (
    Spread,
    given_spread,
    place_text,
    row_for,
    spreads_of,
    triangle_deviation,
    triangle_quantile,
)
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.report import work_out
from costing.report.drivers import cost_drivers
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import MATERIAL, STEP, Place

PICK_UP = Place(STEP, "rinse", "pick_up")


@given(st.floats(-5.0, 5.0), st.floats(0.01, 10.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_triangle_is_that_of_the_library(low: float, width: float, top: float, share: float) -> None:
    typical, high = low + top * width, low + width
    other = stats.triang(top, loc=low, scale=width)
    assert triangle_quantile(share, low, typical, high) == pytest.approx(other.ppf(share), abs=1e-9)
    assert triangle_deviation(low, typical, high) == pytest.approx(other.std(), abs=1e-9)
    assert Spread(PICK_UP, typical, low, high, None, "", "").mean == pytest.approx(other.mean(), abs=1e-9)


def test_a_standard_deviation_is_a_normal_distribution() -> None:
    spread = Spread(PICK_UP, 0.75, 0.0, 10.0, 0.03, "", "")
    other = stats.norm(0.75, 0.03)
    shares = numpy.array([0.001, 0.05, 0.5, 0.9])
    assert spread.at(shares) == pytest.approx(other.ppf(shares), rel=1e-9)


def test_a_normal_distribution_stays_within_what_is_accepted() -> None:
    spread = Spread(PICK_UP, 0.9, 0.0, 1.0, 0.2, "", "")
    assert spread.at(0.999) == 1.0


def test_a_row_reaches_as_far_as_it_says() -> None:
    found = given_spread(GivenSpread(STEP, "", "pick_up", give_or_take=0.1), PICK_UP, 0.8)
    assert (found.low, found.typical, found.high) == pytest.approx((0.72, 0.8, 0.88))


@pytest.mark.parametrize(
    ("row", "message"),
    [
        (GivenSpread(STEP, "", "pick_up", low=0.5, high=0.6, where="How sure!A9"), r"0.75 L/kg in the book"),
        (GivenSpread(STEP, "", "heat_recovered", give_or_take=0.9), r"accepted is 0 % to"),
    ],
)
def test_ends_that_make_no_sense_are_refused(row: GivenSpread, message: str) -> None:
    with pytest.raises(InputError, match=message):
        given_spread(row, Place(STEP, "rinse", row.name), 0.75)


def test_who_knows_how_far_a_number_may_be_off() -> None:
    """A guess of the table, one with a publication, and the mill itself; of a group the least known."""
    mill = read_book(demo_book())
    enquiry = mill.enquiries["Q-02"]
    found = {place_text(spread.place): spread.known_from for spread in spreads_of(mill, enquiry)}
    asked = ("indigo dyeing: sky destruction", "indigo dyeing: hydrosulfite per oxygen", "efficiency")
    assert [found[name] for name in (*asked, "atmospheric pressure")] == [
        *("guess", "published", "your own", "derived")
    ]
    together = next(row for row in cost_drivers(mill, [work_out(mill, enquiry)]).rows if "scour d" in row[1])
    assert together[2] == "guess"
    assert together[-1] == "default, common-practice; default, derived"


def test_a_row_that_names_a_product_comes_before_one_for_all() -> None:
    every, named = GivenSpread(MATERIAL, "", "price", give_or_take=0.1), GivenSpread(MATERIAL, "LYE", "price")
    place = Place(MATERIAL, "LYE", "price")
    assert row_for([every, named], place, ("LYE",)) is named
    assert row_for([named, every], place, ("LYE",)) is named
    assert row_for([named, every], Place(MATERIAL, "WET", "price"), ("WET",)) is every
    assert row_for([named], Place(MATERIAL, "WET", "price"), ("WET",)) is None
