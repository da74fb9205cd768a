"""The sheet How sure is read, or refused with its cell."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from costing.book.how_sure import SHEET
from costing.book.whole import mill_from_sheets
from costing.quantities import InputError
from costing.report import work_out
from costing.settings.mill import Mill
from tests.book.blocks import Block, demo_blocks, sheets

HEADS = (
    *("Kind", "Name", "Quantity", "Low", "High", "Unit"),
    *("Give or take", "Standard deviation", "Moves with", "Note"),
)


@cache
def demo() -> dict[str, Block]:
    return demo_blocks()


def read(*cells: Any) -> Mill:
    """The demo's mill with one row on the sheet, or without the sheet."""
    blocks = dict(demo())
    blocks[SHEET] = (HEADS, tuple(cells) + ("",) * (len(HEADS) - len(cells)))
    if not cells:
        del blocks[SHEET]
    return mill_from_sheets(sheets(blocks))


def test_ends_with_a_unit_and_a_name_in_the_users_spelling() -> None:
    (row,) = read("Step", "Indigo Dyeing", "Pick up", 0.65, 0.85, "L/kg").spreads
    assert (row.kind, row.code, row.name) == ("step", "indigo dyeing", "pick_up")
    assert (row.low, row.high) == (0.65, 0.85)


def test_a_share_of_the_number_for_all_of_a_kind() -> None:
    (row,) = read("material", "", "Price", "", "", "", 5.0, "", "one supplier").spreads
    assert (row.code, row.give_or_take, row.moves_with) == ("", 0.05, "one supplier")


@pytest.mark.parametrize(
    ("cells", "message"),
    [
        (("tank", "", "price"), r"kind is 'tank'; accepted is one of"),
        (("step", "boiler", "power", "", "", "", 5.0), r"step 'boiler' is not in the book"),
        (("step", "", "dips", "", "", "", 5.0), r"'dips' is no number of a step that may be unsure"),
        (("material", "", "colour", "", "", "", 5.0), r"'colour' is no number of a material"),
        (("material", "", "price"), r"none is filled; accepted is one of the three"),
        (("material", "", "price", 1.0, 2.0, "money/kg", 5.0), r"2 are filled; accepted is one"),
        (("step", "", "pick up", 0.9, "", "L/kg"), r"high is empty beside the other end"),
        (("step", "", "pick up", 0.9, 0.8, "L/kg"), r"low is above high"),
        (("step", "", "pick up", "0,7", 0.8, "L/kg"), r"low of pick up is the text '0,7', not a number"),
        (("step", "", "pick up", 0.7, 0.8, "degC"), r"'degC'"),
        (("material", "", "price", "", "", "", -5.0), r"give or take is -5 %"),
        (("material", "", "price", "", "", "", 500.0), r"give or take is 500 %"),
        (("material", "", "price", "", "", "", 0.06), r"is 0.06 %; .* type 6, not 0.06"),
        (("material", "", "price", "", "", "", "", 0.03), r"deviation is 0.03 %; .* type 3, not 0.03"),
        (("material", "", "", "", "", "", 5.0), r"quantity is empty"),
        (("mill costs", "boiler", "steam price", "", "", "", 5.0), r"accepted is an empty cell"),
    ],
)
def test_what_makes_no_sense_is_refused_with_its_cell(cells: Any, message: str) -> None:
    with pytest.raises(InputError, match=message) as told:
        read(*cells)
    assert "How sure!" in str(told.value)


@pytest.mark.parametrize(
    ("share", "meant", "way"),
    [(0.5, "50 %", "give or take"), (0.2, "20 %", "deviation"), (1.0, "", "give or take")],
)
def test_a_share_under_one_per_cent_is_asked_about(share: float, meant: str, way: str) -> None:
    """0.5 beside % is half a per cent, or a half: what the enquiry rests on it is told once."""
    filled = (share, "") if way == "give or take" else ("", share)
    mill = read("step", "indigo dyeing", "pick up", "", "", "", *filled)
    found = {
        code: [note for note in work_out(mill, mill.enquiries[code]).remarks if "did you mean" in note.text]
        for code in ("Q-01", "V-01")  # the second dyes no indigo
    }
    assert not found["V-01"]
    assert [note.kind for note in found["Q-01"]] == (["warning"] if meant else [])
    for note in found["Q-01"]:
        assert note.text.startswith(f"{way} is {share:g} %: did you mean {meant}?")
        assert "How sure!" in note.where


def test_a_book_without_the_sheet_is_read() -> None:
    assert read().spreads == []


def test_a_depth_of_shade_may_be_unsure() -> None:
    (row,) = read("depth of shade", "dark", "seconds share", "", "", "", 20.0).spreads
    assert (row.kind, row.code, row.name) == ("depth of shade", "dark", "seconds_share")


def test_a_book_without_the_sheet_of_quality_is_read_and_says_so() -> None:
    blocks = dict(demo())
    del blocks["Quality"]
    mill = mill_from_sheets(sheets(blocks))
    result = work_out(mill, mill.enquiries["Q-02"])
    assert any("all metres count as first quality" in note.text for note in result.remarks)
