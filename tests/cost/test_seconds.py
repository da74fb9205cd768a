"""Metres off shade and of second quality: by hand, in which direction a cost must move, and many at once."""

from __future__ import annotations

from dataclasses import replace

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.cost.changes import USAGE
from costing.cost.difference import effects_of, lines_on, moves_between
from costing.cost.quote import SECONDS, Quote, basis_of, quote
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.shade_lots import shade_lots_of
from costing.ledger.whole import open_ledger
from costing.many.quotes import COST, many_quotes, ordered
from costing.quantities import InputError
from costing.report import TABLES, work_out
from costing.settings.inputs import DEPTH, Place, inputs_of, with_inputs
from costing.settings.mill import Enquiry, Mill
from costing.settings.quality import ShadeDepth, check_order, dye_on_yarn_of
from costing.settings.snapshot import from_text, restored, snapshot_of, to_text
from tests.example_mill import example_mill

MILL = read_book(demo_book())
METRE = "m of finished cloth"
LIGHT, DARK = (
    ShadeDepth("light", 0.8, 0.6, depth_up_to=0.02, off_shade_share=0.05, seconds_share=0.01),
    ShadeDepth("dark", 0.8, 0.6, off_shade_share=0.02, seconds_share=0.03),
)


def quoted(mill: Mill, enquiry: Enquiry) -> Quote:
    assert mill.costs is not None
    return quote(open_ledger(mill, enquiry), mill.materials, mill.costs)


def with_shares(code: str, off_shade: float | None, seconds: float | None) -> Enquiry:
    return replace(MILL.enquiries[code], off_shade_share=off_shade, seconds_share=seconds)


def with_depths(mill: Mill, *depths: ShadeDepth) -> Mill:
    return replace(mill, depths={depth.code: depth for depth in depths})


def test_a_metre_of_first_quality_by_hand() -> None:
    """9,500 m ordered: 10,000 m are made, 200 m bring 80 % and 300 m bring 60 % of what they cost.

    The value recovered is that of 160 and of 180 m, so 9,660 m are to be paid by 9,500 m.
    """
    mill = with_depths(MILL, DARK)
    plain = replace(MILL.enquiries["Q-03"], order_length=10000.0)
    asked = replace(plain, order_length=9500.0)
    made, sorted_ = quoted(MILL, plain), quoted(mill, asked)
    ledger = open_ledger(mill, asked)
    assert ledger.plan.finished_length == pytest.approx(10000.0, rel=1e-12)
    assert ledger.plan.saleable_mass == pytest.approx(open_ledger(MILL, plain).plan.saleable_mass)
    for basis in made.per:
        assert sorted_.cost_on(basis) == pytest.approx(made.cost_on(basis) * 9660 / 9500, rel=1e-12)
    assert sorted_.price_on(METRE) == pytest.approx(sorted_.cost_on(METRE) / (1 - made.margin))


@pytest.mark.parametrize("code", MILL.enquiries)
def test_shares_of_zero_change_nothing(code: str) -> None:
    if code != "L-01":
        empty = quoted(MILL, MILL.enquiries[code])
        zero = quoted(with_depths(MILL, replace(DARK, off_shade_share=0.0)), with_shares(code, 0.0, 0.0))
        assert zero == empty
        assert not [line for line in zero.lines if line.group == SECONDS]


@given(
    st.floats(0.0, 0.4),
    st.floats(0.0, 0.4),
    st.floats(0.0, 1.0),
    st.floats(0.0, 1.0),
    st.floats(0.0, 1.0),
    st.booleans(),
)
def test_more_of_them_never_make_first_quality_cheaper(
    off_shade: float, seconds: float, off_shade_value: float, seconds_value: float, part: float, cloth: bool
) -> None:
    """As long as they sell at their cost or below; in one set, so that only the sorting moves."""
    depth = ShadeDepth("any", off_shade_value, seconds_value)
    code = "P-01" if cloth else "Q-05"
    range_ = MILL.ranges[MILL.enquiries[code].range]
    mill = replace(
        with_depths(MILL, depth),
        ranges={**MILL.ranges, range_.code: replace(range_, leader_length=0.0, off_shade_length=0.0)},
    )
    fixed = replace(mill.enquiries[code], order_length=1e6)
    costs = []
    for share in (part, 1.0):
        asked = replace(fixed, off_shade_share=share * off_shade, seconds_share=seconds)
        asked = replace(asked, order_length=1e6 * (1.0 - share * off_shade - seconds))  # the same is made
        costs.append(quoted(mill, asked).cost_on(METRE))
    assert costs[1] >= costs[0] * (1 - 1e-12)


@pytest.mark.parametrize("code", ["Q-05", "P-01", "V-01"])
def test_all_sums_of_a_quote_still_add_up(code: str) -> None:
    found = quoted(with_depths(MILL, LIGHT, DARK), MILL.enquiries[code])
    for columns in (("step",), ("material",), ("cause",), ("group",), ("step", "group")):
        assert sum(found.by(*columns).values()) == pytest.approx(found.cost_per_kg, rel=1e-12)
    for basis in found.per:
        told = float(sum(lines_on(found, basis).values()))
        assert told == pytest.approx(found.price_on(basis), rel=1e-12)
    assert found.by("group")[(SECONDS,)] > 0.0


def test_the_depth_of_all_dye_together_chooses_the_shares() -> None:
    """B-01 has 0.6 % of a sulfur dye and 1.6 % of indigo: together above 2 %."""
    mill = with_depths(MILL, LIGHT, DARK)
    found = {}
    for code in ("Q-06", "B-01"):
        ledger = open_ledger(mill, MILL.enquiries[code])
        found[code] = (round(dye_on_yarn_of(ledger.steps), 6), ledger.sorting.depth)
    assert found == {"Q-06": (0.018, "light"), "B-01": (0.022, "dark")}
    own = open_ledger(mill, with_shares("B-01", None, 0.0)).sorting
    assert (own.off_shade_share, own.seconds_share) == (0.02, 0.0)


def test_more_dye_than_any_depth_is_refused_where_shares_are_given() -> None:
    mill = with_depths(MILL, LIGHT)
    with pytest.raises(InputError, match=r"2\.4 % of dye on the yarn.*goes up to 2 %; accepted is a last"):
        open_ledger(mill, MILL.enquiries["Q-01"])
    silent = with_depths(MILL, replace(LIGHT, off_shade_share=None, seconds_share=None))
    assert quoted(silent, MILL.enquiries["Q-01"]) == quoted(MILL, MILL.enquiries["Q-01"])
    with pytest.raises(InputError, match="no depth of the sheet Quality"):
        open_ledger(with_depths(MILL), with_shares("Q-01", 0.01, None))


def test_bounds_rise_and_only_the_last_is_empty() -> None:
    check_order({"a": LIGHT, "b": DARK})
    with pytest.raises(InputError, match="'dark' is empty and 'light' stands below it"):
        check_order({"a": DARK, "b": LIGHT})
    with pytest.raises(InputError, match="accepted are bounds that rise"):
        check_order({"a": LIGHT, "b": replace(LIGHT, code="medium")})


def test_many_at_once_are_parted_by_their_depth_and_are_the_same() -> None:
    mill, enquiry = with_depths(MILL, LIGHT, DARK), MILL.enquiries["Q-06"]
    numbers = numpy.linspace(0.5, 1.5, 7)
    dye = Place("step", "indigo dyeing", "indigo_on_yarn")
    places = [place for place in inputs_of(mill, enquiry) if place.kind == DEPTH]
    assert [place.name for place in places] == [
        "off_shade_share",
        "off_shade_value",
        "seconds_share",
        "seconds_value",
    ]
    given = {place: inputs_of(mill, enquiry)[place] * numbers for place in (*places, dye)}
    found = many_quotes(mill, enquiry, given, ordered(basis_of(enquiry)))
    assert not found.refused
    for case in range(len(numbers)):
        alone = quoted(*with_inputs(mill, enquiry, {place: float(given[place][case]) for place in given}))
        assert found.values[COST][case] == pytest.approx(alone.cost_on(basis_of(enquiry)), rel=1e-12)


def test_a_kept_quote_keeps_its_shares_and_tells_what_they_did() -> None:
    mill, enquiry = with_depths(MILL, LIGHT, DARK), MILL.enquiries["Q-05"]
    kept = [from_text(to_text(snapshot_of(one, enquiry))) for one in (MILL, mill)]
    assert quoted(*restored(kept[1])) == quoted(mill, enquiry)
    first, moves = moves_between(kept[0], kept[1], quoted)
    assert [move.groups for move in moves] == [(USAGE,)]
    (effect,) = effects_of(first, moves, METRE)
    dearer = quoted(mill, enquiry).price_on(METRE) - first.price_on(METRE)
    assert float(effect.amount) == pytest.approx(dearer, rel=1e-9)
    assert {change.name for change in effect.changes} >= {"off shade share", "seconds share"}


def lots_of(mill: Mill, enquiry: Enquiry) -> dict[str, object]:
    table = TABLES["shade_lots"](mill, [work_out(mill, enquiry)])
    return dict(zip([column.title for column in table.columns], table.rows[0]))


def test_an_order_just_short_enough_needs_one_set_fewer() -> None:
    found = lots_of(MILL, MILL.enquiries["S-01"])
    fewer = found["Order for fewer sets"]
    assert found["Sets"] == 4
    assert isinstance(fewer, float)
    for length, sets in ((fewer, 3), (fewer + 1.0, 4)):
        assert lots_of(MILL, replace(MILL.enquiries["S-01"], order_length=length))["Sets"] == sets


def test_one_set_more_costs_what_a_shorter_longest_set_makes_it_cost() -> None:
    """S-01 runs 4 sets of 12,110 m; a range that takes no more than 10,000 m needs 5."""
    enquiry = MILL.enquiries["S-01"]
    range_ = MILL.ranges[enquiry.range]
    shorter = replace(MILL, ranges={**MILL.ranges, range_.code: replace(range_, set_length_max=10000.0)})
    shorter._built = {}
    assert open_ledger(shorter, enquiry).plan.number_of_sets == 5
    dearer = quoted(shorter, enquiry).cost_on(METRE) - quoted(MILL, enquiry).cost_on(METRE)
    assert dearer > 0.0
    assert lots_of(MILL, enquiry)["One set more for each place"] == pytest.approx(dearer, rel=1e-9)


def test_a_short_last_set_and_odd_shares_are_told() -> None:
    texts = [remark.text for remark in work_out(MILL, MILL.enquiries["S-01"]).remarks]
    assert any("4 sets of 12,110 m" in text and "39,636 m ordered, 3 would do" in text for text in texts)
    assert not any("would do" in remark.text for remark in work_out(MILL, MILL.enquiries["Q-02"]).remarks)
    slip = work_out(MILL, with_shares("Q-02", 0.0002, 0.3)).remarks
    told = {remark.kind: remark.text for remark in slip if "share is" in remark.text}
    assert "did you mean 2 %?" in told["warning"]
    assert "usual is 1 % to 8 %" in told["unusual"]


def test_a_mill_without_depths_counts_nothing() -> None:
    mill = example_mill()
    assert not mill.depths
    assert open_ledger(mill, mill.enquiries["E"]).sorting.first_quality == 1.0


@pytest.mark.parametrize(("sets", "last"), [(0.4, 0.4), (1.0, 1.0), (1.2, 0.2), (2.75, 0.75)])
def test_the_last_set_is_what_the_full_ones_before_it_leave(sets: float, last: float) -> None:
    """Orders of so many full sets: a last one of a fifth is short, one of three quarters is not."""
    enquiry = replace(MILL.enquiries["Q-01"], sets_side_by_side=1.0)
    full = shade_lots_of(open_ledger(MILL, enquiry)).order_of_one
    lots = shade_lots_of(open_ledger(MILL, replace(enquiry, order_length=sets * full * (1.0 - 1e-12))))
    assert lots.last / lots.longest == pytest.approx(last, rel=1e-9)
    assert lots.is_short == (sets == 1.2)
