"""A percentage that came a hundred times too small: possible, so it is counted, and asked about in Checks."""

from __future__ import annotations

from typing import Any

import pytest
from openpyxl.workbook import Workbook

from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.formulas.cell_calls import called, reason
from costing.front_ends.workbook.read import read_book
from costing.ledger.remarks import meant_share
from costing.quantities import QUANTITIES
from costing.reference_data import defaults
from costing.report import work_out
from tests.book.blocks import Block, demo_blocks, sheets, with_cell
from tests.workbook.editing import changed, column_cell, table_cell

BLOCKS = demo_blocks()
DYEING, SCOUR, RINSE = "indigo dyeing", "scour", "rinse after dyeing"


def in_column(title: str, code: str, quantity: str, step: str = "") -> str:
    block = BLOCKS[title]
    row = next(
        number for number, cells in enumerate(block, 1) if quantity in cells[:2] and step in ("", cells[0])
    )
    codes = next(cells for cells in block if code in cells)
    return f"{title}!{chr(65 + codes.index(code))}{row}"


def in_row(title: str, code: str, head: str) -> str:
    block = BLOCKS[title]
    row = next(number for number, cells in enumerate(block, 1) if code in cells)
    return f"{title}!{chr(65 + next(cells for cells in block if head in cells).index(head))}{row}"


def with_value(place: str, value: Any) -> dict[str, Block]:
    title, cell = place.split("!")
    return {**BLOCKS, title: with_cell(BLOCKS[title], cell, value)}


def remarked(place: str, value: Any, kind: str = "warning", code: str = "Q-01") -> list[str]:
    """Remarks at a cell, as the sheet Checks shows them and as the command line does."""
    blocks = with_value(place, value)
    book = called("WARP_OPENED_BOOK", [blocks[name] for name in sheet_names()])
    rows = called("WARP_RESULT_TABLE", [book, "checks", code])
    shown = [row[3] for row in rows if row[1] == kind and place in row[2]]
    mill = mill_from_sheets(sheets(blocks))
    remarks = work_out(mill, mill.enquiries[code]).remarks
    assert [item.text for item in remarks if item.kind == kind and place in item.where] == shown
    return shown


D1200, DARK, ROPE = ("Styles", "D-1200"), ("Recipes", "DARK-POWDER"), ("Ranges", "ROPE-A")
SLIPS: list[tuple[str, float, str]] = [
    (in_column(*D1200, "warp crimp"), 0.09, "warp crimp is 0.09 %; usual is 4 % to 14 %: did you mean 9 %?"),
    (in_column(*D1200, "weft crimp"), 0.06, "did you mean 6 %?"),
    (in_column(*D1200, "warp waste"), 0.02, "did you mean 2 %?"),
    (in_column(*D1200, "size add on"), 0.09, "did you mean 9 %?"),
    (in_column(*D1200, "shrinkage length"), 0.1, "did you mean 10 %?"),
    (in_column(*D1200, "finishing loss"), 0.005, "usual is 0 % to 3 %: did you mean 0.5 %?"),
    (in_column(*DARK, "indigo on yarn", DYEING), 0.05, "did you mean 5 %?"),
    (in_column(*DARK, "rinse loss", DYEING), 0.09, "did you mean 9 %?"),
    (
        in_column(*DARK, "recovery", DYEING),
        0.9,
        "usual is 80 % to 100 %: did you mean 90 %?",
    ),
    (
        in_column(*DARK, "moisture out", "drying"),
        0.08,
        "usual is 5 % to 10 %: did you mean 8 %?",
    ),
    (in_column(*ROPE, "sky destruction", DYEING), 0.9, "did you mean 90 %?"),
    (
        in_column(*ROPE, "bath kept", DYEING),
        0.95,
        "usual is 0 % to 100 %: did you mean 95 %?",
    ),
    (in_column(*ROPE, "steam losses"), 0.08, "did you mean 8 %?"),
    (in_column(*ROPE, "stretch"), 0.02, "stretch is 0.02 %; usual is 0 % to 3 %: did you mean 2 %?"),
    (
        in_row("Materials", "HYDRO-88", "Strength"),
        8.8,
        "usual is 75 to 88 % or 78 to 90 % or 80",
    ),
    (in_row("Materials", "HYDRO-88", "Strength"), 8.8, "strength is 8.8 %; "),
    (in_row("Materials", "INDIGO-94", "Strength"), 9.4, "did you mean 94 %?"),
    (in_row("Materials", "LYE-50", "Strength"), 5.0, "did you mean 50 %?"),
    (
        in_row("Materials", "WARP-7", "Strength"),
        1.0,
        "usual is 90 to 100 %: did you mean 100 %?",
    ),
    (in_row("Enquiries", "Q-09", "Margin"), 0.12, "the margin is 0.12 %: did you mean 12 %?"),
    (in_row("Enquiries", "Q-01", "Order length"), 8.0, "usual is 300 m to 300,000 m: did you mean 8 km?"),
    (
        in_row("Enquiries", "Q-01", "Order length"),
        8e6,
        "order length is 8,000,000 m; usual is 300",
    ),
]


@pytest.mark.parametrize(("place", "value", "words"), SLIPS, ids=[str(item) for item in SLIPS])
def test_a_share_of_a_hundredth_is_asked_about_at_its_cell(place: str, value: float, words: str) -> None:
    (text,) = remarked(place, value, code="Q-09" if "Enquiries!P" in place else "Q-01")
    assert words in text


def test_the_caustic_in_a_reduced_dye_is_asked_about() -> None:
    place = in_row("Materials", "INDIGO-REDUCED-40", "Alkali")
    (text,) = remarked(place, 0.0006, code="Q-06")
    assert text == "the caustic in it is 0.06 %; usual is about 6 %: did you mean 6 %?"


@pytest.mark.parametrize(
    ("place", "value"),
    [
        (in_column(*D1200, "warp crimp"), 9.0),
        (in_column(*D1200, "finishing loss"), 0.0),
        (in_column(*D1200, "finishing loss"), 0.05),
        (in_row("Materials", "HYDRO-88", "Strength"), 85.0),
        (in_row("Enquiries", "Q-01", "Order length"), 8000.0),
    ],
)
def test_what_is_usual_is_not_asked_about(place: str, value: float) -> None:
    assert remarked(place, value) == []
    assert remarked(place, value, "unusual") == []


@pytest.mark.parametrize(
    ("place", "value", "words"),
    [
        (
            in_row("Materials", "LYE-50", "Strength"),
            33.0,
            "strength is 33 %; usual is 48 to 51 % or 98 to 99 %",
        ),
        (
            in_row("Enquiries", "Q-01", "Order length"),
            150.0,
            "order length is 150 m; usual is 300 m to 300,000 m",
        ),
        (in_column(*D1200, "warp crimp"), 2.0, "warp crimp is 2 %; usual is 4 % to 14 %"),
    ],
)
def test_what_is_only_unusual_is_said_without_a_guess(place: str, value: float, words: str) -> None:
    assert remarked(place, value, "unusual") == [words]
    assert remarked(place, value) == []


@pytest.mark.parametrize(
    ("place", "value", "words"),
    [
        (in_row("Materials", "HYDRO-88", "Strength"), 0.88, "the unit is already %, so type 88, not 0.88"),
        (in_row("Materials", "HYDRO-88", "Strength"), 880.0, "strength is 880 %; accepted is 1 to 100 %"),
        (in_column(*D1200, "warp crimp"), 900.0, "warp crimp is 900 %; accepted is 0 to 60 %"),
        (in_column(*DARK, "indigo on yarn", DYEING), 0.02, "so type 2, not 0.02"),
        (in_column(*ROPE, "exchange", RINSE), 0.55, "so type 55, not 0.55"),
    ],
)
def test_what_cannot_be_is_refused(place: str, value: float, words: str) -> None:
    said = reason("WARP_OPENED_BOOK", [with_value(place, value)[name] for name in sheet_names()])
    assert said.startswith(f"{place}: ")
    assert words in said


def test_a_percent_cell_of_the_file_is_read_as_it_is_shown(tmp_path: Any) -> None:
    """The file says how a cell is shown; the cells that a formula is handed do not."""

    def edit(book: Workbook) -> None:
        crimp = column_cell(book, *D1200, "warp crimp")
        strength = table_cell(book, "Materials", "HYDRO-88", "Strength")
        crimp.value, crimp.number_format = 0.09, "0%"
        strength.value, strength.number_format = 0.88, "0.0%"

    mill = read_book(changed(tmp_path, edit))
    assert mill.styles["D-1200"].warp_crimp == pytest.approx(0.09)
    assert mill.materials["HYDRO-88"].strength == pytest.approx(0.88)
    assert not [item for item in work_out(mill, mill.enquiries["Q-01"]).remarks if "mean" in item.text]


SHARES = [row for row in defaults().values() if QUANTITIES[row.quantity].usual == "%"]


@pytest.mark.parametrize("row", SHARES, ids=lambda row: row.key)
def test_no_usual_share_looks_like_a_slip_and_its_hundredth_does(row: Any) -> None:
    for share in (row.low, row.value, row.high):
        assert meant_share(share, row.low, row.high) is None
        if share > 0.0:
            assert meant_share(share / 100.0, row.low, row.high) == pytest.approx(share)
        if share > 0.0 and row.low > 0.0:
            assert meant_share(share * 100.0, row.low, row.high) == pytest.approx(share)


@pytest.mark.parametrize("code", ["P-03", "V-03"])
def test_what_is_usual_of_ropes_is_not_asked_of_cloth_and_vessels(code: str) -> None:
    mill = mill_from_sheets(sheets(BLOCKS))
    told = [item.text for item in work_out(mill, mill.enquiries[code]).remarks]
    assert not [text for text in told if text.startswith(("speed is", "leader length is"))]
