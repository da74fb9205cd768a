"""An order in kilometres, yards or feet is the order in metres, from a cell and from the file."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from costing.book.layout import sheet_names
from costing.formulas.cell_calls import called, reason
from costing.front_ends.workbook.read import read_book
from costing.report import TABLES, work_out
from tests.book.blocks import demo_blocks, with_cell
from tests.workbook.editing import changed, table_cell

BLOCKS = demo_blocks()
ROW = next(number for number, cells in enumerate(BLOCKS["Enquiries"], 1) if "Q-01" in cells)


def opened(length: Any, unit: str) -> str:
    sheet = with_cell(with_cell(BLOCKS["Enquiries"], f"F{ROW}", length), f"G{ROW}", unit)
    blocks = {**BLOCKS, "Enquiries": sheet}
    return str(called("WARP_OPENED_BOOK", [blocks[name] for name in sheet_names()]))


def quoted(table: list[list[Any]]) -> dict[str, Any]:
    return dict(zip(table[0], table[2]))


@pytest.mark.parametrize(
    ("length", "unit", "metres", "priced_by"),
    [
        (8.0, "km", 8000.0, "km"),
        (8.0, "kilometres", 8000.0, "km"),
        (10000.0, "yd", 9144.0, "yd"),
        (30000.0, "feet", 9144.0, "ft"),
        (800000.0, "cm", 8000.0, "m"),
    ],
)
def test_a_length_means_the_same_in_every_unit(
    length: float, unit: str, metres: float, priced_by: str, tmp_path: Path
) -> None:
    book, same = opened(length, unit), opened(metres, "m")
    for name in ("m of finished cloth", "kg of dyed yarn"):
        assert called("WARP_PRICE_ON", [book, "Q-01", name]) == pytest.approx(
            called("WARP_PRICE_ON", [same, "Q-01", name]), rel=1e-12
        )
    here, there = (quoted(called("WARP_RESULT_TABLE", [found, "quotes", "Q-01"])) for found in (book, same))
    assert (here["Unit"], there["Unit"]) == (priced_by, "m")
    assert here["Order value"] == pytest.approx(there["Order value"], rel=1e-3)  # rounded by unit

    def edit(sheets: Workbook) -> None:
        table_cell(sheets, "Enquiries", "Q-01", "Order length").value = length
        table_cell(sheets, "Enquiries", "Q-01", "Order length").offset(column=1).value = unit

    mill = read_book(changed(tmp_path, edit))
    assert mill.enquiries["Q-01"].order_length == pytest.approx(metres, rel=1e-12)
    (row,) = TABLES["quotes"](mill, [work_out(mill, mill.enquiries["Q-01"])]).rows
    assert here["Order value"] in row


@pytest.mark.parametrize("unit", ["kg", "L", "km2", "miles"])
def test_what_is_no_length_is_refused(unit: str) -> None:
    sheet = with_cell(BLOCKS["Enquiries"], f"G{ROW}", unit)
    said = reason("WARP_OPENED_BOOK", [{**BLOCKS, "Enquiries": sheet}[name] for name in sheet_names()])
    assert said.startswith(f"Enquiries!F{ROW}: order length has the un")
    assert "for example m, " in said
