"""Many quotes at once are the quotes one after the other."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy
import pytest

from costing.cost.quote import basis_of
from costing.front_ends.workbook.read import read_book
from costing.many.lanes import Lanes, PartedError
from costing.many.quotes import COST, PRICE, many_quotes, ordered
from costing.quantities import QUANTITIES
from costing.quantities.checking import LIMITS
from costing.report import work_out
from costing.settings.inputs import COSTS, ENQUIRY, MATERIAL, STEP, STYLE, Place, inputs_of, with_inputs
from costing.settings.mill import Mill

BOOK = Path(__file__).resolve().parents[2] / "workbook_template" / "mill_book.xlsx"
MILL = read_book(BOOK)
CASES = 12


def alone(mill: Mill, code: str, values: dict[Place, float]) -> tuple[float, float]:
    changed, asked = with_inputs(mill, mill.enquiries[code], values)
    quoted = work_out(changed, asked).quote
    return quoted.cost_on(basis_of(asked)), quoted.price_on(basis_of(asked))


def moved(code: str, width: float) -> dict[Place, Any]:
    """Every number of an enquiry, moved at random in each of some cases; none of them leaves its range."""
    random = numpy.random.default_rng(7)
    given = {}
    for place, value in inputs_of(MILL, MILL.enquiries[code]).items():
        if QUANTITIES[place.name].whole or "share" in place.name:
            continue  # shares of one size make a whole: none of them can be moved alone
        numbers = value * numpy.exp(width * random.standard_normal(CASES))
        given[place] = numpy.clip(numbers, *LIMITS[place.name])
    return given


@pytest.mark.parametrize("code", MILL.enquiries)
@pytest.mark.parametrize("width", [0.01, 0.15])
def test_every_demo_quote_with_all_its_numbers_moved_is_what_it_is_alone(code: str, width: float) -> None:
    given = moved(code, width)
    enquiry = MILL.enquiries[code]
    found = many_quotes(MILL, enquiry, given, ordered(basis_of(enquiry)))
    for case in range(CASES):
        values = {place: float(numbers[case]) for place, numbers in given.items()}
        if case in found.refused:
            with pytest.raises(type(found.refused[case]), match=r".") as told:
                alone(MILL, code, values)
            assert str(told.value) == str(found.refused[case])
            assert numpy.isnan(found.values[COST][case]) if found.values else True
        else:
            cost, price = alone(MILL, code, values)
            assert found.values[COST][case] == pytest.approx(cost, rel=1e-12)
            assert found.values[PRICE][case] == pytest.approx(price, rel=1e-12)
    if width == 0.01:
        assert len(found.refused) < CASES  # else nothing was compared


def test_a_refused_case_is_told_its_own_number_and_takes_no_other_with_it() -> None:
    enquiry = MILL.enquiries["Q-01"]
    place = next(place for place in inputs_of(MILL, enquiry) if place.name == "exchange")
    given = {place: numpy.array([0.3, 1.3, 0.4, 1.4])}
    found = many_quotes(MILL, enquiry, given, ordered(basis_of(enquiry)))
    assert sorted(found.refused) == [1, 3]
    assert "130 %" in str(found.refused[1])
    assert "140 %" in str(found.refused[3])
    assert numpy.isnan(found.values[COST][[1, 3]]).all()
    assert (found.values[COST][[0, 2]] > 0.0).all()


def test_cases_part_where_some_take_a_branch() -> None:
    place = Place(ENQUIRY, "", "order_length")
    enquiry = MILL.enquiries["Q-01"]
    warm = Place("range", "", "water_temperature")
    given = {place: numpy.array([4e3, 5e3, 6e3]), warm: numpy.array([15.0, 39.0, 52.0])}
    found = many_quotes(MILL, enquiry, given, ordered(basis_of(enquiry)))
    assert found.runs > 1
    assert not found.refused


def test_lanes_that_agree_answer_and_others_part() -> None:
    numbers = numpy.array([1.0, 2.0, 3.0]).view(Lanes)
    assert numbers > 0.0
    assert not numbers > 5.0
    with pytest.raises(PartedError) as parted:
        bool(numbers > 1.5)
    assert parted.value.taken.tolist() == [False, True, True]


def test_a_sum_that_is_carried_on_leaves_what_it_began_with() -> None:
    first = numpy.array([1.0, 2.0]).view(Lanes)
    total = first
    total += 1.0
    assert first.tolist() == [1.0, 2.0]
    assert total.tolist() == [2.0, 3.0]


def test_a_place_that_is_not_of_the_enquiry_is_refused() -> None:
    from costing.quantities import InputError

    with pytest.raises(InputError, match="'softener' is no part of enquiry Q-01"):
        with_inputs(MILL, MILL.enquiries["Q-01"], {Place(STEP, "softener", "power"): 1.0})


def test_the_book_itself_stays_as_it_was() -> None:
    enquiry = MILL.enquiries["Q-01"]
    before = inputs_of(MILL, enquiry)
    twice = {
        place: 2.0 * before[place]
        for place in before
        if place.kind in (COSTS, MATERIAL) and "price" in place.name
    }
    twice[Place(STYLE, "", "ends_density")] = before[Place(STYLE, "", "ends_density")] * 0.9
    changed, asked = with_inputs(MILL, enquiry, twice)
    assert inputs_of(MILL, enquiry) == before
    after = inputs_of(changed, asked)
    assert {place for place in before if after[place] != before[place]} == {
        p for p in twice if before[p] != 0.0
    }
