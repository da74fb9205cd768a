"""Actual use against standard: each effect by hand, a textbook's case whole, and sums that are exact."""

import datetime
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.purchasing.standard_use import Standard, Standards, made_records
from costing.purchasing.usage import Amounts, Comparison, added, compare
from costing.purchasing.usage_parts import FIELDS, NOT_BOOKED, parted
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.records import IssueRecord, MadeRecord, MadeRow
from tests.example_mill import example_mill, material

DAY = datetime.date(2024, 12, 2)
MILL = example_mill()
PRICES = {"A": 70.0, "B": 80.0, "C": 90.0, "D": 1.5}
MILL.materials = {
    code: material(code, "", 0.5, "water", price, own_oxygen_demand=1.0) for code, price in PRICES.items()
}
BOOK = read_book(demo_book())


class Given(Standards):
    """Standards that are said."""

    def __init__(self, uses: dict[str, dict[str, float]], ranges: dict[str, str] | None = None) -> None:
        super().__init__(MILL)
        self._uses, self._ranges = uses, ranges or {}

    def of(self, enquiry: str, range_: str = "", where: str = "") -> Standard:
        """As said, on the range that is said."""
        return Standard(range_ or self._ranges.get(enquiry, "M"), "R", self._uses[enquiry], 0.4)


def made(code: str, mass: float, planned: float | None = None, shift: str = "", days: int = 0) -> MadeRecord:
    return MadeRecord(DAY + datetime.timedelta(days), code, mass, shift, planned=planned)


def effects(found: Amounts) -> list[float]:
    return [float(part) for part in found[4:9]]


def whole(found: Amounts) -> bool:
    """Whether the effects are the whole difference, exactly."""
    return found.actual_cost - found.planned_cost == sum(found[4:9], Fraction(0)) and (
        found.actual_cost - found.standard_cost == found.over
    )


def test_a_textbook_case_of_mix_yield_and_price() -> None:
    """mix-yield-chapter, exhibits 17.1 and 17.2: mix 3 250 F, yield 7 700 U, price 10 400 U, total 14 850 U.

    Apples of which 3200, 1920 and 1280 t were allowed and 3250, 2275 and 975 t used, at 70, 82 and 96 in
    place of 70, 80 and 90 a tonne.
    """
    masses = {"A": (3250.0, 3200.0, 70.0), "B": (2275.0, 1920.0, 82.0), "C": (975.0, 1280.0, 96.0)}
    found = compare(
        MILL,
        Given({code: {code: 1.0} for code in masses}),
        [made(code, mass, allowed) for code, (mass, allowed, _) in masses.items()],
        [IssueRecord(DAY, code, mass, price=price) for code, (mass, _, price) in masses.items()],
    )
    assert effects(found.total) == [7700.0, -3250.0, 0.0, 0.0, 10400.0]
    assert found.total.planned_cost == 492800
    assert found.total.actual_cost == 507650
    mixes = {code: float(part.mix) for (_, code), part in parted(found, "material").parts.items()}
    assert mixes == {"A": 0.0, "B": 26000.0, "C": -29250.0}


def test_usage_strength_and_price_by_hand() -> None:
    """800 kg made at 0.25 kg of D each: 200 kg at 1.5.

    300 kg of 40 % in place of 50 % hold as much as 240 kg: 40 kg too much, 60 kg for the strength; at 1.2 in
    place of 1.5 they cost 360 against 300: 60 - 90 + 90.
    """
    found = compare(
        MILL, Given({"Q": {"D": 0.25}}), [made("Q", 800.0)], [IssueRecord(DAY, "D", 300.0, 0.4, 1.2)]
    )
    assert [pytest.approx(part) for part in effects(found.total)] == [0.0, 0.0, 60.0, 90.0, -90.0]
    assert whole(found.total)


def test_without_strength_or_price_an_issue_counts_as_the_price_list_says() -> None:
    """10 % more than the standard, and nothing else; half of it came back."""
    issues = [IssueRecord(DAY, "D", 240.0), IssueRecord(DAY, "d", -20.0)]
    found = compare(MILL, Given({"Q": {"D": 0.25}}), [made("Q", 800.0)], issues)
    assert effects(found.total) == [0.0, 0.0, 30.0, 0.0, 0.0]


def test_what_stands_on_one_side_alone_is_told_and_counts() -> None:
    """A was taken and not issued; B was issued and nothing takes it."""
    uses = {"Q": {"A": 0.5, "D": 0.25}}
    issues = [IssueRecord(DAY, "B", 10.0), IssueRecord(DAY, "D", 25.0)]
    found = compare(MILL, Given(uses), [made("Q", 100.0)], issues)
    assert effects(found.total)[2] == -50.0 * 70.0 + 10.0 * 80.0
    told = " ".join(remark.text for remark in found.remarks)
    assert [remark.material for remark in found.of(["B"]).remarks] == ["B"]
    assert "A: standard 50.0 kg, and nothing left the store" in told
    assert "B: 10.0 kg left the store, and nothing that was made takes it" in told


def test_what_is_not_booked_by_a_field_is_never_shared_out() -> None:
    """D is booked by range, A is not: A stands apart with its standard; 5 kg of D stand apart without."""
    uses = {"Q": {"A": 0.5, "D": 0.25}, "P": {"A": 0.5, "D": 0.25}}
    issues = [
        *(IssueRecord(DAY, "A", 120.0), IssueRecord(DAY, "D", 30.0, range="M")),
        *(IssueRecord(DAY, "D", 25.0, range="N"), IssueRecord(DAY, "D", 5.0)),
    ]
    standards = Given(uses, {"Q": "M", "P": "N"})
    found = compare(MILL, standards, [made("Q", 100.0), made("P", 100.0)], issues)
    by_range = parted(found, "range")
    masses = {key: (float(part.standard), float(part.issued)) for key, part in by_range.parts.items()}
    assert masses == {
        (NOT_BOOKED, "A"): (100.0, 120.0),
        ("M", "D"): (25.0, 30.0),
        ("N", "D"): (25.0, 25.0),
        (NOT_BOOKED, "D"): (0.0, 5.0),
    }
    assert by_range.remarks == [
        "not booked by range: A",
        "D: 5.0 of 60.0 kg not booked by range: its lines show too little use",
    ]
    assert parted(found, "shift").values == [NOT_BOOKED]


amounts = st.floats(0.0, 1e6, allow_nan=False)
tags = st.sampled_from(["", "M", "N"])
made_rows = st.builds(
    MadeRecord,
    st.dates(datetime.date(2024, 1, 1), datetime.date(2024, 12, 31)),
    st.sampled_from(["Q", "P"]),
    amounts,
    st.sampled_from(["", "early", "night"]),
    tags,
    st.none() | amounts,
)
issue_rows = st.builds(
    IssueRecord,
    st.dates(datetime.date(2024, 1, 1), datetime.date(2024, 12, 31)),
    st.sampled_from(sorted(PRICES)),
    st.floats(-1e6, 1e6, allow_nan=False),
    st.none() | st.floats(0.01, 1.0),
    st.none() | st.floats(0.0, 1e4),
    tags,
    st.sampled_from(["", "R"]),
    st.sampled_from(["", "early", "night"]),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(made_rows, min_size=1, max_size=8), st.lists(issue_rows, min_size=1, max_size=12))
def test_the_effects_add_up_exactly_whatever_was_booked(
    rows: list[MadeRecord], issues: list[IssueRecord]
) -> None:
    """In all, by every field, and the parts of a field to all."""
    uses = {"Q": {"A": 0.1, "D": 1 / 3}, "P": {"B": 0.7, "D": 0.21}}
    found = compare(MILL, Given(uses), rows, issues)
    assert whole(found.total)
    for field in FIELDS:
        parts = parted(found, field).parts
        assert all(map(whole, parts.values()))
        assert added(parts.values()) == found.total


def test_the_standard_is_what_the_ledger_takes_from_the_store() -> None:
    """Cloth counts by the yarn in a metre of it, a plan likewise; by the ledger of Q-05 itself."""
    ledger = open_ledger(BOOK, BOOK.enquiries["Q-05"])
    standards = Standards(BOOK)
    rows = [MadeRow(DAY, "Q-05", cloth=1000.0, planned=2000.0)]
    ((row,), left_out) = made_records(standards, rows)
    metres = ledger.plan.saleable_mass / BOOK.enquiries["Q-05"].order_length
    assert not left_out
    assert row.mass == pytest.approx(1000.0 * metres, rel=1e-9)
    assert row.planned == pytest.approx(2.0 * row.mass)
    uses = standards.of("Q-05").uses
    assert uses == pytest.approx({code: ledger.used(code) for code in uses})
    assert "FLAKE-98" in uses
    assert "WARP-7" not in uses


def held(mill: Mill, material_code: str) -> Comparison:
    return compare(mill, Given({"Q": {"D": 0.25}}), [made("Q", 1.0)], [IssueRecord(DAY, material_code, 1.0)])


def test_a_material_without_price_is_in_no_money_and_told() -> None:
    """D has a price, N has none: the kilograms of N stand, its money is nothing and it is named."""
    MILL.materials["N"] = material("N", "", 0.5, "water", 1.0)
    object.__setattr__(MILL.materials["N"], "price", None)
    try:
        found = held(MILL, "N")
    finally:
        del MILL.materials["N"]
    assert "has no price" in str(found.without_price["N"])
    assert found.of(["N"]).total.issued == 1
    assert not any(found.of(["N"]).total[4:])


def test_what_the_book_does_not_know_is_refused_with_its_row() -> None:
    """A material and an enquiry."""
    with pytest.raises(InputError, match="material 'X' is not in the book"):
        held(MILL, "X")
    ((row, error),) = made_records(Standards(BOOK), [MadeRow(DAY, "Q-99", yarn=1.0, where="row 7")]).left_out
    assert row.enquiry == "Q-99"
    assert str(error).startswith("row 7: Q-99 has no standard: ")
