"""Rows and columns may be inserted, deleted and moved: they are found by what they say."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.reference_data import default
from costing.settings.building import Assumption
from costing.settings.mill import Mill
from tests.workbook.editing import (
    cell_with,
    changed,
    column_cell,
    row_of,
    sheet_of,
    table_cell,
    unit_of,
)


@pytest.fixture(scope="module")
def demo() -> Mill:
    return read_book(demo_book())


def values(mill: Mill) -> dict[str, Any]:
    """A mill without its places."""
    return {
        "materials": {code: {**vars(item), "where": ""} for code, item in mill.materials.items()},
        "others": [mill.styles, mill.recipes, mill.ranges, mill.routes, mill.enquiries, mill.costs],
        "steps": {
            key: {name: entry.value for name, entry in step.items()}
            for steps in (mill.recipe_steps, mill.range_steps)
            for key, step in steps.items()
        },
    }


def rows_shuffled(title: str) -> Any:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        first = row_of(sheet, "code")
        rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=first)]
        formats = [[cell.number_format for cell in row] for row in sheet.iter_rows(min_row=first)]
        order = list(range(len(rows)))
        random.Random(7).shuffle(order)
        assert order != list(range(len(rows)))
        for place, source in enumerate(order, start=first):
            for column, value in enumerate(rows[source], start=1):
                sheet.cell(place, column).value = value
                sheet.cell(place, column).number_format = formats[source][column - 1]

    return edit


def column_inserted(title: str, before: str, head: str = "") -> Any:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        place = cell_with(sheet, before)
        column = place.column
        sheet.insert_cols(column)
        sheet.cell(place.row, column).value = head or None
        if head:
            sheet.cell(place.row + 5, column).value = "ask the laboratory"

    return edit


def row_inserted(title: str, before: str) -> Any:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        sheet.insert_rows(cell_with(sheet, before).row)

    return edit


def note_in_the_last_cell(book: Workbook) -> None:
    sheet_of(book, "Recipes")["XFD1048576"] = "ask the laboratory"


def sheets_reversed(book: Workbook) -> None:
    book._sheets.reverse()  # type: ignore[attr-defined]


def styles_sorted_the_other_way(book: Workbook) -> None:
    sheet = sheet_of(book, "Materials")
    head = cell_with(sheet, "Code").row
    rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=head + 1)]
    rows.sort(key=lambda row: str(row[0] or ""), reverse=True)
    for number, row in enumerate(rows, start=head + 1):
        for column, value in enumerate(row, start=1):
            sheet.cell(number, column).value = value


def routes_shuffled(book: Workbook) -> None:
    sheet = sheet_of(book, "Routes")
    head = cell_with(sheet, "Route of the step").row
    rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=head + 1, max_row=head + 9)]
    for number, row in enumerate(reversed(rows), start=head + 1):
        for column, value in enumerate(row, start=1):
            sheet.cell(number, column).value = value


MOVES = {
    "recipe rows in another order": rows_shuffled("Recipes"),
    "range rows in another order": rows_shuffled("Ranges"),
    "style rows in another order": rows_shuffled("Styles"),
    "a column before the first style": column_inserted("Styles", "D-1200"),
    "a column of notes on the recipes": column_inserted("Recipes", "Source", "Our notes"),
    "a column of notes on the materials": column_inserted("Materials", "Role", "Store place"),
    "a column before the unit": column_inserted("Ranges", "Unit"),
    "a row between the steps": row_inserted("Recipes", "indigo dyeing"),
    "a row above the heads": row_inserted("Materials", "Code"),
    "a row above the second table": row_inserted("Routes", "Steps of each route"),
    "a row between heading and heads": row_inserted("Routes", "Route of the step"),
    "a row between costs": row_inserted("Mill costs", "power price"),
    "a row between enquiries": row_inserted("Enquiries", "Q-04"),
    "sheets in another order": sheets_reversed,
    "a note in the last cell of all": note_in_the_last_cell,
    "materials in another order": styles_sorted_the_other_way,
    "steps in another order": routes_shuffled,
}


@pytest.mark.parametrize("move", MOVES)
def test_a_book_reads_the_same_after(tmp_path: Path, demo: Mill, move: str) -> None:
    assert values(read_book(changed(tmp_path, MOVES[move]))) == values(demo)


def test_case_and_blanks_of_a_label_do_not_count(tmp_path: Path, demo: Mill) -> None:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Recipes")
        cell_with(sheet, "bath indigo").value = "  Bath  Indigo "
        cell_with(sheet, "indigo dyeing").value = "Indigo Dyeing"

    assert values(read_book(changed(tmp_path, edit))) == values(demo)


def test_a_style_is_added_in_the_next_empty_column(tmp_path: Path, demo: Mill) -> None:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Styles")
        source = cell_with(sheet, "D-1200").column
        target = cell_with(sheet, "D-1300-P").column + 1
        for row in range(row_of(sheet, "code"), sheet.max_row + 1):
            sheet.cell(row, target).value = sheet.cell(row, source).value
        sheet.cell(row_of(sheet, "code"), target).value = 4711
        sheet.cell(row_of(sheet, "warp count"), target).value = 8

    mill = read_book(changed(tmp_path, edit))
    assert len(mill.styles) == len(demo.styles) + 1
    assert mill.style("4711").warp_count == pytest.approx(demo.style("D-1200").warp_count * 7 / 8)


def test_a_row_emptied_of_its_values_takes_the_typical_one(tmp_path: Path) -> None:
    """An empty cell is a choice; a row that is gone is an accident and refused."""

    def edit(book: Workbook) -> None:
        column_cell(book, "Styles", "D-1350", "weft crimp").value = None

    mill = read_book(changed(tmp_path, edit))
    assert mill.style("D-1350").weft_crimp == default("cloth.weft_crimp").value
    assert Assumption("style D-1350", "cloth.weft_crimp") in mill.assumptions


def test_the_typical_crimp_does_not_stand_in_for_a_take_up(tmp_path: Path, demo: Mill) -> None:
    """It counts on the cloth length; the style of the demo that gives a take-up must keep its own."""

    def edit(book: Workbook) -> None:
        for code in demo.styles:
            column_cell(book, "Styles", code, "warp crimp").value = None

    with pytest.raises(InputError, match="beside the basis warp length; accepted is your own figure"):
        read_book(changed(tmp_path, edit))


def test_another_unit_gives_the_same_value(tmp_path: Path, demo: Mill) -> None:
    def edit(book: Workbook) -> None:
        unit_of("Styles", "warp count", "Nm")(book)
        unit_of("Recipes", "bath indigo", "kg/m3", "indigo dyeing")(book)
        unit_of("Ranges", "steam pressure", "kPa")(book)
        for code in demo.styles:
            cell = column_cell(book, "Styles", code, "warp count")
            cell.value = float(str(cell.value)) * 1.69336181735156
        for code in demo.ranges:
            cell = column_cell(book, "Ranges", code, "steam pressure")
            cell.value = float(str(cell.value)) * 100

    mill = read_book(changed(tmp_path, edit))
    assert mill.style("D-1200").warp_count == pytest.approx(demo.style("D-1200").warp_count, rel=1e-12)
    assert mill.range("ROPE-B").steam_pressure == pytest.approx(4.5)
    read, given = (book.recipe_steps["DARK-POWDER", "indigo dyeing"]["bath_indigo"] for book in (mill, demo))
    assert read.value == pytest.approx(given.value)


def test_a_percent_cell_is_read_as_it_is_shown(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        cell = table_cell(book, "Materials", "HYDRO-88", "Strength")
        cell.value, cell.number_format = 0.87, "0.0%"

    assert read_book(changed(tmp_path, edit)).material("HYDRO-88").strength == pytest.approx(0.87)


def test_a_step_of_ones_own_takes_its_rows(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        routes = sheet_of(book, "Routes")
        row = cell_with(routes, "drying", column=2).row
        routes.cell(row, cell_with(routes, "No.").column).value = 6
        last = cell_with(routes, "Route of the step").row + 10
        added: tuple[str | int, ...] = ("rope indigo", "second rinse", 5, "rinse")
        for column, value in enumerate(added, start=1):
            routes.cell(last, column).value = value
        for title in ("Recipes", "Ranges"):
            sheet = sheet_of(book, title)
            for number in range(1, sheet.max_row + 1):
                if sheet.cell(number, 1).value == "rinse after dyeing":
                    copied = sheet.max_row + 1
                    for column in range(1, sheet.max_column + 1):
                        sheet.cell(copied, column).value = sheet.cell(number, column).value
                    sheet.cell(copied, 1).value = "second rinse"

    mill = read_book(changed(tmp_path, edit))
    assert [name for name, _ in mill.route("rope indigo")][-2:] == ["second rinse", "drying"]
    steps = mill.steps_of(mill.recipe("DARK-POWDER"), mill.range("ROPE-A"))
    assert vars(steps[4]) == {**vars(steps[3]), "name": "second rinse"}


def test_a_code_typed_as_a_number_is_the_same_code(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        cell_with(sheet_of(book, "Styles"), "D-1200").value = 1200
        for (cell,) in sheet_of(book, "Enquiries").iter_rows(min_col=3, max_col=3):
            cell.value = "1200" if cell.value == "D-1200" else cell.value

    assert read_book(changed(tmp_path, edit)).enquiry("Q-01").style == "1200"
