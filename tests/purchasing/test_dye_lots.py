"""Dye lots of an order book, and what they take."""

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.many.requirement import together
from costing.process.postings import STORE
from costing.purchasing.dye_lots import DUMPED, KEPT, NEW_FILL, STANDING, plan_lots
from costing.purchasing.requirement import by_period, one_by_one, refuse_left_out, requirement
from costing.quantities import InputError
from costing.settings.material import YARN_ROLES
from costing.settings.mill import Mill
from costing.settings.order_book import OrderLine, Planning
from costing.settings.steps import IndigoDyeing

MILL = read_book(demo_book())
DAY = 24.0
PLANNING = Planning(gather_time=7 * DAY, time_before_due=28 * DAY, bath_keeping_time=3 * DAY)
MONDAY = datetime.date(2027, 1, 4)
FIRST = next(iter(MILL.enquiries))


def order(code: str, days: int, length: float = 5000.0, status: str = "open", due: str = "") -> OrderLine:
    """An order that is due so many days after the Monday."""
    return OrderLine(due or f"of {code}", code, length, MONDAY + datetime.timedelta(days=days), status)


def test_orders_of_one_shade_due_within_a_week_are_one_lot() -> None:
    """Due on day 0, 7 and 8 with a week to gather: the first two together, the third alone."""
    lots, _ = plan_lots(MILL, [order(FIRST, 8), order(FIRST, 0), order(FIRST, 7)], PLANNING)
    assert [len(lot.orders) for lot in lots] == [2, 1]
    assert lots[0].enquiry.order_length == pytest.approx(10000.0)
    assert lots[0].start == MONDAY - datetime.timedelta(days=28)
    assert [lot.number for lot in lots] == [1, 2]


def test_what_should_have_begun_begins_today_and_is_late() -> None:
    """Due in 10 days, 28 days before due: it should have begun 18 days ago."""
    (lot,), _ = plan_lots(MILL, [order(FIRST, 10)], PLANNING, today=MONDAY)
    assert (lot.start, lot.late) == (MONDAY, 18)


@pytest.mark.parametrize(("status", "counted"), [("open", 1), ("running", 1), ("done", 0), ("cancelled", 0)])
def test_what_is_done_or_cancelled_takes_nothing(status: str, counted: int) -> None:
    """An order that runs is counted with the metres that are left of it."""
    assert len(plan_lots(MILL, [order(FIRST, 0, status=status)], PLANNING).lots) == counted


def test_a_forecast_counts_where_it_is_asked_for() -> None:
    """And is left alone elsewhere."""
    lines = [order(FIRST, 0, status="forecast")]
    assert not plan_lots(MILL, lines, PLANNING).lots
    assert len(plan_lots(MILL, lines, PLANNING, forecast=True).lots) == 1


def two_recipes() -> tuple[str, str]:
    """Two enquiries of one range with two recipes."""
    for code, item in MILL.enquiries.items():
        for other, another in MILL.enquiries.items():
            if item.range == another.range and item.recipe != another.recipe:
                return code, other
    raise AssertionError("the demo has no such pair")


def test_a_bath_is_kept_for_the_same_recipe_and_dumped_where_it_changes() -> None:
    """Days 0, 8 of one recipe with 10 days to keep, then another recipe on day 9."""
    first, other = two_recipes()
    planning = replace(PLANNING, bath_keeping_time=10 * DAY)
    lots, _ = plan_lots(MILL, [order(first, 0), order(first, 8), order(other, 9)], planning)
    found = [(lot.enquiry.bath_at_start, lot.enquiry.bath_at_end) for lot in lots]
    own = MILL.enquiries[first].bath_at_start, MILL.enquiries[other].bath_at_end
    assert found == [(own[0], KEPT), (STANDING, DUMPED), (NEW_FILL, own[1])]


def test_a_bath_that_stood_too_long_is_dumped() -> None:
    """Eight days between two lots of one recipe, three days to keep."""
    lots, _ = plan_lots(MILL, [order(FIRST, 0), order(FIRST, 8)], PLANNING)
    assert (lots[0].enquiry.bath_at_end, lots[1].enquiry.bath_at_start) == (DUMPED, NEW_FILL)


def test_on_one_day_the_recipe_that_stands_goes_first() -> None:
    """Two recipes begin on one day: first the one of the lot before, whatever the order of the lines."""
    first, other = two_recipes()
    for lines in ([order(other, 8), order(first, 8)], [order(first, 8), order(other, 8)]):
        for before in (first, other):
            lots, _ = plan_lots(MILL, [order(before, 0), *lines], PLANNING)
            assert lots[1].enquiry.recipe == MILL.enquiries[before].recipe


def test_lengths_on_two_bases_add_up_as_warp() -> None:
    """9,000 m of dyed warp and an order of cloth that takes as much warp: one lot of twice the warp."""
    one = replace(MILL.enquiries[FIRST], code="W", length_basis="dyed warp", order_length=9000.0)
    two = replace(MILL.enquiries[FIRST], code="C", length_basis="loom-state cloth", order_length=1000.0)
    mill = replace(MILL, enquiries={"W": one, "C": two})
    per_metre = open_ledger(mill, two).plan.warp_length / 1000.0
    first = open_ledger(mill, one).plan.warp_length
    lines = [order("W", 0, 9000.0), order("C", 1, first / per_metre)]
    (lot,), _ = plan_lots(mill, lines, PLANNING)
    assert open_ledger(mill, lot.enquiry).plan.warp_length == pytest.approx(2.0 * first, rel=1e-12)


def test_requirement_is_the_ledger_times_the_yarn() -> None:
    """Against the lines of the ledger, read by name; no yarn, and nothing that another lot has paid."""
    plan = plan_lots(MILL, [order(code, 0) for code in MILL.enquiries], PLANNING)
    found = requirement(MILL, plan)
    assert not found.left_out
    for lot in found.lots:
        ledger = open_ledger(MILL, lot.enquiry)
        bought = ledger.select(lambda line: line.source == STORE)
        for need in (need for need in found.needs if need.lot == lot.code):
            per_kg = sum(line.amount for line in bought if line.material == need.material)
            assert need.mass == pytest.approx(per_kg * ledger.plan.saleable_mass, rel=1e-12)
            assert MILL.materials[need.material].role not in YARN_ROLES


def test_a_standing_bath_is_not_bought_twice() -> None:
    """Two lots that share a bath take one fill less than two that do not."""
    lines = [order(FIRST, 0), order(FIRST, 8)]
    apart = requirement(MILL, plan_lots(MILL, lines, PLANNING))
    shared = requirement(MILL, plan_lots(MILL, lines, replace(PLANNING, bath_keeping_time=9 * DAY)))
    indigo = next(need.material for need in apart.needs if need.material.startswith("INDIGO"))
    both = [sum(need.mass for need in one.needs if need.material == indigo) for one in (apart, shared)]
    steps = open_ledger(MILL, MILL.enquiries[FIRST]).steps
    step = next(step for step in steps if isinstance(step, IndigoDyeing))
    fill = step.bath_volume * step.bath_kept * step.bath_indigo / MILL.materials[indigo].strength
    assert both[0] - both[1] == pytest.approx(fill, rel=0.05)


@settings(max_examples=12, deadline=None)
@given(
    st.lists(
        st.tuples(st.sampled_from(list(MILL.enquiries)), st.integers(0, 40), st.floats(200.0, 60000.0)),
        min_size=1,
        max_size=12,
    )
)
def test_lots_over_arrays_take_what_they_take_alone(drawn: list[tuple[str, int, float]]) -> None:
    """Any order book: the same products, the same masses; every order is in one lot."""
    plan = plan_lots(MILL, [order(code, day, length) for code, day, length in drawn], PLANNING)
    assert sum(len(lot.orders) for lot in plan.lots) + len(plan.left_out) == len(drawn)
    asked = [lot.enquiry for lot in plan.lots]
    for alone, among in zip(one_by_one(MILL, asked), together(MILL, asked), strict=True):
        if isinstance(alone, InputError):
            assert str(alone) == str(among)
            continue
        assert not isinstance(among, InputError)
        some = {code: mass for code, mass in among.items() if mass or code in alone}
        assert some == pytest.approx(dict(alone), rel=1e-12, abs=1e-12)


def test_a_line_that_cannot_be_planned_is_refused_by_name() -> None:
    """With its place in the order book; the other lines stay."""
    lines = [order(FIRST, 0), order("Q-99", 1)._replace(where="orders.csv, row 7")]
    plan = plan_lots(MILL, lines, PLANNING)
    assert len(plan.lots) == 1
    with pytest.raises(InputError, match=r"1 of its lines .*orders\.csv, row 7.*Q-99.*--without-refused"):
        refuse_left_out(requirement(MILL, plan).left_out)


def test_a_lot_that_the_range_cannot_run_takes_all_its_orders_along() -> None:
    """Both orders of it are named, none is in a total."""
    broken = replace(MILL.ranges[MILL.enquiries[FIRST].range], rope_places=1.0)
    mill: Mill = replace(MILL, ranges={**MILL.ranges, broken.code: broken})
    found = requirement(mill, plan_lots(mill, [order(FIRST, 0), order(FIRST, 1)], PLANNING))
    assert len(found.left_out) == 2
    assert not found.needs


def test_periods() -> None:
    """By hand: a lot of a Monday is of its own week, that of the next Tuesday of the next."""
    lots = plan_lots(MILL, [order(FIRST, 28), order(FIRST, 36), order(FIRST, 70)], PLANNING)
    needs = requirement(MILL, lots).needs
    weeks = {day for day, _ in by_period(needs, "week")}
    assert weeks == {MONDAY, MONDAY + datetime.timedelta(days=7), MONDAY + datetime.timedelta(days=42)}
    assert {day for day, _ in by_period(needs, "month")} == {
        datetime.date(2027, 1, 1),
        datetime.date(2027, 2, 1),
    }
    assert sum(by_period(needs, "month").values()) == pytest.approx(sum(need.mass for need in needs))
