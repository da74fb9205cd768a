"""Range, drivers and lot curve in the results: their numbers, and charts of the cells that they name."""

from __future__ import annotations

import zipfile
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from openpyxl import load_workbook

from costing.front_ends.workbook.results import write_results
from costing.front_ends.workbook.results_range import DRAWS, RANGE_SHEETS
from costing.many import tables
from costing.many.lot_curve import lot_curve
from costing.many.quotes import COST
from tests.report.demo import demo_mill, demo_result

CODES = ("Q-01", "V-01")
ACROSS = 196  # characters across a page on its side at which ten points print at seven
CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("ranged") / "ranged.xlsx"
    write_results(found, demo_mill(), [demo_result(code) for code in CODES], ranged=True)
    return found


@pytest.fixture(scope="module")
def book(path: Path) -> Any:
    return load_workbook(path)


def rows(book: Any, sheet: str) -> list[tuple[Any, ...]]:
    return list(book[sheet].iter_rows(min_row=7, values_only=True))


def test_the_sheets_hold_what_the_commands_tell(book: Any) -> None:
    mill = demo_mill()
    for code in CODES:
        item = tables.ranged(mill, mill.enquiries[code], DRAWS)
        (cost,) = [row for row in rows(book, "Range") if row[:2] == (code, COST)]
        band = item.bands[COST]
        assert cost[2:6] == pytest.approx((item.first_order.typical, band.low, band.middle, band.high))
        first = next(row for row in rows(book, "Range and drivers") if row[0] == code)
        assert first[1] == item.first_order.drivers[0].name
        assert first[10] == pytest.approx(item.first_order.drivers[0].at_low - item.first_order.typical)
        curve = lot_curve(mill, mill.enquiries[code])
        (sizes,) = [row for row in rows(book, "Lot sizes") if row[0] == code]
        assert sizes[2:4] == pytest.approx((curve.reference, curve.reference_cost))
        assert sizes[5] == pytest.approx(curve.least)
        assert sizes[7] == mill.enquiries[code].order_length
        lengths = [row[1] for row in rows(book, "Lot curve") if row[0] == code]
        assert (lengths[0], lengths[-1]) == pytest.approx((curve.lengths[0], curve.lengths[-1]))


def test_the_sheet_of_drivers_prints_in_a_readable_size(book: Any) -> None:
    sheet = book["Range and drivers"]
    assert sheet.page_setup.orientation == "landscape"
    assert sum(item.width for item in sheet.column_dimensions.values()) <= ACROSS


def test_charts_show_the_cells_they_name(path: Path, book: Any) -> None:
    with zipfile.ZipFile(path) as packed:
        names = [name for name in packed.namelist() if name.startswith("xl/charts/chart")]
        parts = [ElementTree.fromstring(packed.read(name)) for name in names]
    found = {"Range and drivers": 0, "Lot curve": 0, "Lot sizes": 0}
    for part in parts:
        for place in part.iter(f"{CHART}numRef"):
            sheet, cells = (place.findtext(f"{CHART}f") or "").rsplit("!", 1)
            sheet = sheet.strip("'")
            if sheet not in found:
                continue
            found[sheet] += 1
            area = book[sheet][cells.replace("$", "")]
            values = [row[0].value for row in area] if isinstance(area, tuple) else [area.value]
            kept = [float(one.text or "") for one in place.iter(f"{CHART}v")]
            assert kept == pytest.approx([value or 0.0 for value in values])
    assert found == {"Range and drivers": 2 * 2, "Lot curve": 2 * 2, "Lot sizes": 2 * 2 * 3}


def test_without_being_asked_the_sheets_are_not_there(path: Path, book: Any, tmp_path: Path) -> None:
    assert set(RANGE_SHEETS) <= set(book.sheetnames)
    named = {cell.value for cell in book["Record"]["A"]}
    assert set(book.sheetnames) <= named
    plain = tmp_path / "plain.xlsx"
    write_results(plain, demo_mill(), [demo_result("Q-01")])
    assert not set(RANGE_SHEETS) & set(load_workbook(plain, read_only=True).sheetnames)
