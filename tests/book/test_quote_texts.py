"""The sheet Quote texts is read, or refused with its cell."""

from __future__ import annotations

import pytest

from costing.book.quote_texts import SHEET, read_quote_texts
from costing.book.sheet import Sheet
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.report.demo import demo_mill

HEADS = ("Kind of text", "Text", "Enquiry")


def read(*rows: tuple[str, str, str]) -> Mill:
    mill = Mill()
    mill.enquiries = demo_mill().enquiries
    cells = {(4, at): head for at, head in enumerate(HEADS, start=1)}
    cells |= {
        (5 + down, at): text for down, row in enumerate(rows) for at, text in enumerate(row, start=1) if text
    }
    read_quote_texts(Sheet(SHEET, dict(cells)), mill)
    return mill


def test_rows_keep_kind_text_enquiry_and_cell() -> None:
    first, second = read(("mill", "ours", ""), ("payment", "now", "q-02")).quote_texts
    assert (first.kind, first.text, first.enquiry) == ("mill", "ours", "")
    assert (second.enquiry, second.where) == ("Q-02", "Quote texts!B6")


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (("mill", "ours", "Q-99"), "Quote texts!C5: enquiry 'Q-99' is not in the book"),
        (("mill", "", ""), "Quote texts!B5: text is empty"),
        (("recipe", "blue", ""), "Quote texts!A5: text kind is 'recipe'"),
        (("mill", "x" * 201, ""), "Quote texts!B5: text has 201 letters"),
    ],
)
def test_what_makes_no_sense_is_refused_with_its_cell(row: tuple[str, str, str], said: str) -> None:
    with pytest.raises(InputError) as told:
        read(row)
    assert said in str(told.value)


def test_the_demo_has_texts() -> None:
    assert {item.kind for item in demo_mill().quote_texts} >= {"mill", "payment", "delivery"}
