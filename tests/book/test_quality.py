"""The sheet Quality, and the shares of an enquiry: what they give, and what is refused by its cell."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.settings.quality import Sorting
from tests.workbook.editing import Edit, changed, table_cell


def at(code: str, head: str, value: object, sheet: str = "Quality") -> Edit:
    def edit(book: Workbook) -> None:
        table_cell(book, sheet, code, head).value = value  # type: ignore[assignment]

    return edit


def both(*edits: Edit) -> Edit:
    def edit(book: Workbook) -> None:
        for one in edits:
            one(book)

    return edit


def test_shares_of_the_depth_and_of_the_enquiry(tmp_path: Path) -> None:
    edit = both(
        at("dark", "Off shade, %", 4),
        at("dark", "Second quality, %", 5),
        at("dark", "Off shade brings, %", None),
        at("Q-02", "Second quality, %", 2, "Enquiries"),
    )
    mill = read_book(changed(tmp_path, edit))
    found = {code: open_ledger(mill, mill.enquiries[code]).sorting for code in ("Q-01", "Q-02", "Q-06")}
    assert found["Q-01"] == Sorting(pytest.approx(0.024), "dark", 0.04, 0.05, 0.75, 0.6)  # type: ignore[arg-type]
    assert found["Q-02"].seconds_share == pytest.approx(0.02)
    assert (found["Q-06"].depth, found["Q-06"].first_quality) == ("medium", 1.0)
    assert any(taken.key == "seconds.off_shade_value" for taken in mill.assumptions)


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (at("dark", "Off shade, %", 60), r"Quality!D\d+: off shade, % is 60 %[,;] accepted is 0 to 40 %"),
        (at("dark", "Off shade brings, %", "much"), r"Quality!H\d+: .*the text 'much'"),
        (at("medium", "Dye on yarn up to, %", 1), r"Quality!A\d+: the depth 'medium' goes up to 1 %"),
        (at("medium", "Dye on yarn up to, %", None), r"'medium' is empty and 'dark' stands below it"),
        (at("medium", "Depth of shade", "dark"), r"the depth 'dark' stands twice"),
        (at("Q-02", "Off shade, %", -1, "Enquiries"), r"Enquiries!R\d+: off shade, % is -1 %"),
    ],
)
def test_what_makes_no_sense_is_refused_by_its_cell(tmp_path: Path, edit: Edit, said: str) -> None:
    with pytest.raises(InputError, match=said):
        read_book(changed(tmp_path, edit))
