"""The range of a cost: against exact cases, and first order against draws."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import numpy
import pytest

from costing.cost.quote import basis_of
from costing.cost.spread import spreads_of
from costing.front_ends.workbook.read import read_book
from costing.many.band import band_of, draw_quotes, drawn, drivers_of
from costing.many.quotes import COST, ordered
from costing.many.tables import difference_table, ranged
from costing.many.use_band import ranged_use
from costing.quantities import InputError
from costing.report import work_out
from costing.settings.how_sure import GivenSpread
from costing.settings.inputs import MATERIAL, STEP
from costing.settings.mill import Mill

BOOK = Path(__file__).resolve().parents[2] / "workbook_template" / "mill_book.xlsx"
MILL = read_book(BOOK)
DRAWS = 4000


def with_rows(*rows: GivenSpread) -> Mill:
    """The demo's mill with these rows and no default that is unsure."""
    mill = replace(MILL, spreads=list(rows), assumptions={})
    mill._built = dict(MILL._built)
    return mill


def price_slopes(code: str) -> dict[str, float]:
    """Material -> what a metre takes of it as delivered, in the mill's money of its price: exact slopes."""
    enquiry = MILL.enquiries[code]
    result = work_out(MILL, enquiry)
    costs = MILL.costs
    assert costs is not None
    per = result.quote.per[basis_of(enquiry)]
    slopes: dict[str, float] = {}
    for line in result.quote.lines:
        if line.material in MILL.materials and line.group not in ("warp yarn", "weft yarn"):
            material = MILL.materials[line.material]
            rate = costs.exchange_rates.get(material.currency, 1.0)
            # overhead is a share of all that is not yarn
            amount = line.amount * rate * (1.0 + costs.overhead)
            slopes[line.material] = slopes.get(line.material, 0.0) + amount * per
    return slopes


@pytest.mark.parametrize("together", ["", "prices"])
def test_unsure_prices_alone_are_an_exact_case(together: str) -> None:
    """The cost is a straight line in each price: mean and deviation follow by the rules for sums."""
    slopes: dict[str, float] = price_slopes("Q-02")
    codes = sorted(slopes, key=lambda code: -slopes[code])[:4]
    mill = with_rows(
        *(GivenSpread(MATERIAL, code, "price", give_or_take=0.2, moves_with=together) for code in codes)
    )
    enquiry = MILL.enquiries["Q-02"]
    worked = ordered(basis_of(enquiry))
    first = drivers_of(mill, enquiry, worked, COST)
    parts = [slopes[code] * 0.2 * (MILL.materials[code].price or 0.0) / math.sqrt(6.0) for code in codes]
    exact = sum(parts) if together else math.sqrt(sum(part * part for part in parts))
    assert first.deviation == pytest.approx(exact, rel=1e-9)
    assert first.mean == pytest.approx(first.typical, rel=1e-12)  # even triangles
    band = band_of(draw_quotes(mill, enquiry, worked, DRAWS).values[COST])
    assert abs(band.mean - first.mean) < 4.0 * band.error
    assert band.deviation == pytest.approx(exact, rel=4.0 / math.sqrt(2.0 * DRAWS))


@pytest.mark.parametrize("code", ["Q-02", "B-01", "V-01", "P-01", "S-01"])
def test_draws_and_first_order_agree_where_the_cost_is_nearly_straight(code: str) -> None:
    enquiry = MILL.enquiries[code]
    worked = ordered(basis_of(enquiry))
    first = drivers_of(MILL, enquiry, worked, COST)
    band = band_of(draw_quotes(MILL, enquiry, worked, DRAWS).values[COST])
    assert abs(band.mean - first.mean) < 4.0 * band.error + 0.03 * band.deviation
    assert band.deviation == pytest.approx(first.deviation, rel=0.06)
    assert band.refused == 0


@pytest.mark.parametrize("code", ["Q-02", "Q-07", "B-01", "T-01", "K-01", "S-01", "V-03", "N-01"])
def test_one_quote_after_the_other_gives_the_drivers_of_many_at_once(code: str) -> None:
    """What a cell shows without arrays is what the command gives with them."""
    result = work_out(MILL, MILL.enquiries[code])
    first = drivers_of(MILL, result.enquiry, ordered(basis_of(result.enquiry)), COST)
    alone = result.cost_drivers
    assert [driver.name for driver in alone.drivers] == [driver.name for driver in first.drivers]
    for one, many in zip(alone.drivers, first.drivers, strict=True):
        assert one[2:] == pytest.approx(many[2:], rel=1e-9, abs=1e-12, nan_ok=True)
    assert alone[:5] == pytest.approx(first[:5], rel=1e-12)


def test_the_same_seed_gives_the_same_draws_and_another_seed_others() -> None:
    spreads = spreads_of(MILL, MILL.enquiries["Q-02"])
    one, again, other = drawn(spreads, 50, 1), drawn(spreads, 50, 1), drawn(spreads, 50, 2)
    assert all((one[place] == again[place]).all() for place in one)
    assert any((one[place] != other[place]).any() for place in one)


def test_boxes_that_move_together_have_one_draw() -> None:
    spreads = [
        spread for spread in spreads_of(MILL, MILL.enquiries["B-01"]) if spread.place.name == "exchange"
    ]
    assert len(spreads) > 1
    numbers = [drawn(spreads, 20)[spread.place] for spread in spreads]
    ranks = [numpy.argsort(drawing).tolist() for drawing in numbers]
    assert all(rank == ranks[0] for rank in ranks)


def test_drawn_numbers_lie_between_their_ends() -> None:
    for spread in spreads_of(MILL, MILL.enquiries["T-01"]):
        numbers = drawn([spread], 500)[spread.place]
        assert spread.low <= numbers.min() <= numbers.max() <= spread.high
        assert abs(numbers.mean() - spread.mean) < 5.0 * spread.standard_deviation / math.sqrt(500)


def test_an_enquiry_against_itself_differs_by_nothing_and_is_not_called_dearer() -> None:
    item = ranged(MILL, MILL.enquiries["Q-02"], 200)
    (row,) = difference_table(MILL, [item, item]).rows
    assert row[2:5] == [0.0, 0.0, 0.0]
    assert "cannot be told apart" in row[-1]


def test_without_anything_unsure_a_cost_has_no_width() -> None:
    mill = with_rows()
    band = band_of(
        draw_quotes(mill, mill.enquiries["Q-02"], ordered("m of finished cloth"), 100).values[COST]
    )
    assert band.deviation == pytest.approx(0.0, abs=1e-12)
    assert band.low == pytest.approx(band.high, rel=1e-12)


def test_draws_that_are_refused_are_counted_and_all_of_them_are_an_error() -> None:
    # where the scour is to take more caustic than its acids can, a draw cannot run
    row = GivenSpread(STEP, "scour", "caustic_neutralised", deviation=0.9)
    mill = with_rows(row)
    band = band_of(
        draw_quotes(mill, mill.enquiries["Q-02"], ordered("m of finished cloth"), 400).values[COST]
    )
    assert 0 < band.refused < 400
    with pytest.raises(InputError, match="all 3 draws are refused"):
        band_of(numpy.full(3, numpy.nan))


def test_the_use_of_a_product_has_a_range_of_its_own() -> None:
    enquiry = MILL.enquiries["Q-02"]
    found = ranged_use(MILL, enquiry, "hydro-88", DRAWS)
    used = 1000.0 * work_out(MILL, enquiry).ledger.used("HYDRO-88")
    assert found.first_order.typical == pytest.approx(used, rel=1e-12)
    assert found.band.low < found.band.middle < found.band.high
    assert found.band.deviation == pytest.approx(found.first_order.deviation, rel=0.06)
    assert found.unit == "g/kg"
    prices = {"price", "steam_price"}
    moved = [driver for driver in found.first_order.drivers if driver.deviation]
    assert not any(spread.place.name in prices for driver in moved for spread in driver.spreads)
    with pytest.raises(InputError, match="'chalk' is nothing that enquiry Q-02 uses"):
        ranged_use(MILL, enquiry, "chalk", DRAWS)
