"""The sheet Calibrations: read or refused with its cell, and what the one that counts does to a quote."""

from __future__ import annotations

import datetime
from functools import cache
from typing import Any

import pytest

from costing.book.calibrations import SHEET
from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.cost.offers import mill_on
from costing.cost.spread import spreads_of
from costing.formulas.cell_calls import called
from costing.quantities import InputError
from costing.report import TABLES, work_out
from costing.settings.inputs import STEP, Place, inputs_of
from costing.settings.mill import Mill
from costing.settings.snapshot import from_text, restored, snapshot_of, to_text
from tests.book.blocks import Block, day_of, demo_blocks, sheets, with_cell

HEADS = (
    *("Calibration", "Date", "Range", "Step", "Quantity"),
    *("Value", "Low", "High", "Unit", "Note"),
)
DAY = day_of(datetime.date(2026, 11, 29))
ROW = ("AUTUMN", DAY, "ROPE-A", "Indigo dyeing", "Surface oxygen", 6.0, 5.0, 7.5, "g/m2/h", "ten months")
OXYGEN = Place(STEP, "indigo dyeing", "surface_oxygen")


@cache
def demo() -> dict[str, Block]:
    return demo_blocks()


def read(*rows: Any, counts: str = "AUTUMN") -> Mill:
    """The demo's mill with these rows on the sheet, or without the sheet, and the name of what counts."""
    blocks = dict(demo())
    blocks[SHEET] = (HEADS, *rows)
    if not rows:
        del blocks[SHEET]
    place = next(n for n, cells in enumerate(blocks["Mill costs"], 1) if cells[0] == "calibration")
    blocks["Mill costs"] = with_cell(blocks["Mill costs"], f"B{place}", counts)
    return mill_from_sheets(sheets(blocks))


def oxygen(mill: Mill, code: str) -> float:
    return inputs_of(mill, mill.enquiry(code))[OXYGEN]


def test_the_calibration_that_counts_goes_in_place_of_the_typical_value_and_says_so() -> None:
    mill = read(ROW, counts="autumn")
    assert oxygen(mill, "Q-01") == pytest.approx(0.006)  # ropes, left empty
    assert oxygen(mill, "S-01") == pytest.approx(0.003)  # the sheet range, of which it does not speak
    result = work_out(mill, mill.enquiry("Q-01"))
    table = TABLES["defaults_taken"](mill, [result])
    (row,) = [row for row in table.rows if row[2] == "surface oxygen"]
    assert row[3:7] == [6.0, 5.0, 7.5, "g/m2/h"]
    assert "calibration AUTUMN of 2026-11-29" in row
    assert "ten months" in row
    assert not any("calibration" in str(row[0]) for row in TABLES["sources"](mill, [result]).rows)
    (spread,) = [one for one in spreads_of(mill, mill.enquiry("Q-01")) if one.place == OXYGEN]
    assert (spread.low, spread.typical, spread.high) == pytest.approx((0.005, 0.006, 0.0075))
    assert spread.grounds == "calibration AUTUMN of 2026-11-29"


def test_none_counts_where_none_is_named_and_a_typed_figure_stays() -> None:
    assert oxygen(read(ROW, counts=""), "Q-01") == pytest.approx(0.003)
    rinse = ("AUTUMN", DAY, "all", "", "rinse loss", 15.0, "", "", "%", "")
    mill = read(ROW, rinse)
    typed = inputs_of(mill, mill.enquiry("Q-01"))[Place(STEP, "indigo dyeing", "rinse_loss")]
    assert typed == inputs_of(read(ROW, counts=""), mill.enquiry("Q-01"))[OXYGEN._replace(name="rinse_loss")]


def test_a_row_of_the_range_or_step_speaks_before_one_for_all() -> None:
    for_all = ("AUTUMN", DAY, "", "all", "surface oxygen", 2.0, "", "", "g/m2/h", "")
    for rows in ((for_all, ROW), (ROW, for_all)):
        mill = read(*rows)
        assert (oxygen(mill, "Q-01"), oxygen(mill, "S-01")) == pytest.approx((0.006, 0.002))


def test_prices_of_another_day_and_no_calibration_are_worked_out_anew() -> None:
    mill = read(ROW)
    oxygen(mill, "Q-01")
    assert oxygen(mill_on(mill), "Q-01") == pytest.approx(0.006)
    assert oxygen(mill.without_calibration(), "Q-01") == pytest.approx(0.003)
    assert oxygen(mill, "Q-01") == pytest.approx(0.006)


def test_a_kept_quote_keeps_value_and_source_of_its_calibration() -> None:
    mill = read(ROW)
    enquiry = mill.enquiry("Q-01")
    before = work_out(mill, enquiry)
    text = to_text(snapshot_of(mill, enquiry))
    other, asked = restored(from_text(text))
    after = work_out(other, asked)
    assert after.quote == before.quote
    assert to_text(snapshot_of(other, asked)) == text
    table = TABLES["defaults_taken"](other, [after])
    assert [row[3:6] for row in table.rows if "calibration AUTUMN of 2026-11-29" in row] == [[6.0, 5.0, 7.5]]
    assert snapshot_of(mill, mill.enquiry("S-01"))["calibrated"] == []


@pytest.mark.parametrize(
    ("place", "value", "told"),
    [
        (1, "", "date is empty"),
        (2, "ROPE-Z", "range 'ROPE-Z' is not in the book; accepted is all or one of"),
        (3, "boiling", "step 'boiling' is not in the book"),
        (4, "dips", "'dips' is no number of the step 'indigo dyeing' that has a typical value"),
        (4, "", "quantity is empty"),
        (5, "", "value is empty"),
        (5, 60.0, "surface oxygen of calibration 'AUTUMN' does not lie between its low and high"),
        (6, -1.0, "low of surface oxygen is -1"),
        (8, "kg", "'kg'"),
        (5, "six", "value of surface oxygen is the text 'six'"),
    ],
)
def test_what_makes_no_sense_is_refused_with_its_cell(place: int, value: Any, told: str) -> None:
    with pytest.raises(InputError, match=told) as refused:
        read((*ROW[:place], value, *ROW[place + 1 :]))
    assert "Calibrations!" in str(refused.value)


def test_two_rows_for_one_number_and_two_dates_of_one_name_are_refused() -> None:
    with pytest.raises(InputError, match="stands twice for the same range and step, also in Calibrations!A2"):
        read(ROW, ROW)
    with pytest.raises(InputError, match="of 2026-11-30 here and of 2026-11-29 in Calibrations!A2"):
        read(ROW, ("autumn", DAY + 1, "", "", "rinse loss", 10.0, "", "", "%", ""))


def test_an_unknown_name_is_refused_with_what_there_is() -> None:
    with pytest.raises(InputError, match=r"Mill costs!B\d+: calibration 'SPRING' .* there are: AUTUMN"):
        read(ROW, counts="SPRING")
    with pytest.raises(InputError, match="the sheet Calibrations has none"):
        read(counts="SPRING")


def test_a_book_and_a_formula_from_before_there_were_calibrations_keep_working() -> None:
    assert oxygen(read(counts=""), "Q-01") == pytest.approx(0.003)
    blocks = [block for title, block in demo().items() if title in sheet_names() and title != SHEET]
    assert str(called("WARP_OPENED_BOOK", blocks)).startswith("book ")
