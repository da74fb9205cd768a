"""What moves the cost in LibreOffice: turned off and on, and refused alone."""

from __future__ import annotations

from string import ascii_uppercase

from tests.live.open_books import BOOK, DRIVERS, Live, place
from tests.workbook.editing import table_cell


def test_what_moves_the_cost_can_be_turned_off_and_is_refused_alone(live: Live) -> None:
    """Off it is empty, says so, and all is well; a row that reaches too far is named, and quotes stay."""
    title = DRIVERS.sheet
    before = live.grid(title)
    (top,) = [row for row in before if "material prices (8)" in row[:2]]
    assert top[2] == "your own"
    assert top[13] == "material prices (8) (your own)"
    for word in ("no", " NO "):
        live.type(DRIVERS, word)
        assert "No: this sheet is turned off and shows nothing." in live.says(title)
        assert "material prices" not in str(live.grid(title))
        assert not live.errors(title)
        assert live.well()
    live.type(DRIVERS, "yes")
    assert live.grid(title) == before
    share = place(table_cell(BOOK, "How sure", "efficiency", "Give or take"))
    live.type(share, 60.0)
    assert live.errors(title)
    assert f"How sure!A{share.cell.strip(ascii_uppercase)}" in live.says()
    assert not live.errors("Quotes")
    live.type(share, share.value)
    assert live.grid(title) == before
    assert live.well()
