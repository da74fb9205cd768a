"""The built book: the same from the same files, with every input marked, checked and printable."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.cell.cell import Cell
from openpyxl.utils import get_column_letter, range_boundaries
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.layout import Column, beside_names, sheet_names
from costing.book.sheet_table import SHEETS
from costing.front_ends.workbook import build_sheet_table
from costing.front_ends.workbook.build import demo_book, fresh_book, write_fresh_book
from costing.front_ends.workbook.build_tables import STEP_LISTS
from costing.front_ends.workbook.layout import (
    ROWS,
    column_sheet,
    meaning_of,
    table_sheet,
    word_lists,
)
from costing.front_ends.workbook.live_areas import (
    CHOICE,
    CHOSEN,
    DRIVERS_WANTED,
    LISTED,
    OPENED,
    RUNNING,
    VERDICT,
    area_name,
)
from costing.front_ends.workbook.read import read_book
from costing.front_ends.workbook.styles import INPUT, named_styles
from costing.front_ends.workbook.template_files import template_folder
from costing.quantities import CHOICES, QUANTITIES, InputError
from costing.reference_data import cautions
from costing.settings.mill import Enquiry, Range
from costing.settings.steps import STEP_KINDS
from costing.settings.style import Style

INPUT_SHEETS = sheet_names()

# Sheets that print on one page however long they are.
ONE_PAGE = ("Purchasing", "Limits", "Quote texts")
# Characters across a page of A4 at which a text of 10 points prints at 7: found by printing.
UPRIGHT, ACROSS = 133, 196
OF_THE_OFFICER = ("Enquiries", "Discharge plan", "Treatment", "Permit", "Discharge", "Mill discharge")
OF_THE_CLERK = (
    "Styles",
    "Recipes",
    "Ranges",
    "Materials",
    "Offers",
    "Quotes",
    "Quote",
    "Cost lines",
    "Ledger",
)
OF_ALL = ("Routes", "Mill costs", "Discharge points", "Quality", "Use", "Formulas", "Lists")


@pytest.mark.parametrize("title", OF_THE_OFFICER + OF_THE_CLERK + OF_ALL)
def test_what_is_handed_on_prints_in_a_readable_size(book: Workbook, title: str) -> None:
    sheet = book[title]
    room = UPRIGHT if sheet.page_setup.orientation == "portrait" else ACROSS
    _, _, repeated, _ = range_boundaries(sheet.print_title_cols or "$A:$A")
    again = range(1, int(repeated or 0) + 1) if sheet.print_title_cols else range(0)

    def wide(columns: range) -> float:
        return sum(sheet.column_dimensions[get_column_letter(at)].width for at in columns)

    for area in (sheet.print_area or sheet.dimensions).split(","):
        first, _, last, _ = (int(end or 0) for end in range_boundaries(area.rpartition("!")[2]))
        pages, taken = 1, wide(again) if first > len(again) else 0.0
        for column in range(first, last + 1):
            width = wide(range(column, column + 1))
            if taken + width > room:  # a column is not cut: it goes to the next page
                pages, taken = pages + 1, wide(again)
            taken += width
        assert pages <= (sheet.page_setup.fitToWidth or 1), area


def test_a_page_ends_between_two_tables(book: Workbook) -> None:
    for title in ("Treatment", "Permit"):
        areas = [area.rpartition("!")[2].replace("$", "") for area in book[title].print_area.split(",")]
        tops = [int(range_boundaries(area)[1] or 0) for area in areas]
        assert len(tops) == 2
        assert all(book[title].cell(top, 1).style == "section" for top in tops[1:])
        assert range_boundaries(areas[-1])[3] == book[title].max_row


def test_nothing_of_the_quote_is_left_out_in_print(book: Workbook) -> None:
    """The two halves of a strip lie side by side, and the strips hold every row that says something."""
    sheet = book["Quote"]
    bounds = [range_boundaries(area.rpartition("!")[2]) for area in sheet.print_area.split(",")]
    printed = {
        (row, column)
        for left, top, right, bottom in bounds
        for row in range(int(top or 0), int(bottom or 0) + 1)
        for column in range(int(left or 0), int(right or 0) + 1)
    }
    filled = {(cell.row, cell.column) for row in sheet.iter_rows() for cell in row if cell.value is not None}
    assert filled <= printed


@pytest.fixture(scope="module")
def book() -> Workbook:
    return load_workbook(demo_book())


def given_cells(sheet: Worksheet) -> Iterator[Cell]:
    for row in sheet.iter_rows():
        for cell in row:
            if isinstance(cell, Cell) and not cell.protection.locked:
                yield cell


def parts(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        return {entry.filename: archive.read(entry) for entry in archive.infolist()}


def test_the_committed_book_is_what_its_files_give_today(tmp_path: Path) -> None:
    path = tmp_path / "mill_book.xlsx"
    write_fresh_book(path)
    made, kept = parts(path), parts(template_folder() / "mill_book.xlsx")
    assert made.keys() == kept.keys()
    differing = [name for name, content in made.items() if content != kept[name]]
    assert differing == [], "run python -m costing.front_ends.workbook.build"


def test_the_reader_has_what_the_sheet_files_say_today() -> None:
    for name, text in build_sheet_table.texts().items():
        assert (build_sheet_table.BOOK / name).read_text(encoding="utf-8") == text
    assert list(build_sheet_table.OF_COLUMN) == [item.name for item in fields(Column)]
    assert set(build_sheet_table.SHEETS) == set(SHEETS)


def test_the_same_book_is_the_same_file(tmp_path: Path) -> None:
    for name in ("a.xlsx", "b.xlsx"):
        write_fresh_book(tmp_path / name)
    assert (tmp_path / "a.xlsx").read_bytes() == (tmp_path / "b.xlsx").read_bytes()


def test_the_files_of_the_sheets_give_every_setting_a_row_once() -> None:
    styles = [row.name for row in column_sheet("styles").rows]
    assert sorted(styles) == sorted(
        item.name for item in fields(Style) if item.name not in ("code", "description")
    )
    by_step: dict[str, set[str]] = {}
    for name in ("recipes", "ranges"):
        rows = [(row.part, row.name) for row in column_sheet(name).rows]
        assert len(rows) == len(set(rows))
        for part, row in rows:
            by_step.setdefault(part, set()).add(row)
    assert {item.name for item in fields(Range)} - {"code", "description"} == by_step.pop("general") - {
        "route"
    }
    for step, names in by_step.items():
        kind = next(k for k in STEP_KINDS.values() if set(k.RECIPE) | set(k.RANGE) == names)
        assert {item.name for item in fields(kind)} - {"name"} == names, step


def test_an_enquiry_has_a_column_for_every_field() -> None:
    columns = {column.name for column in table_sheet("enquiries").tables[0].columns if column.kind != "unit"}
    assert columns | {"order_unit"} == {item.name for item in fields(Enquiry)}  # the unit of the length


def test_every_row_has_a_meaning() -> None:
    assert all(row.meaning for name in ROWS for row in column_sheet(name).rows)
    assert all(meaning_of(name) for name in CHOICES if name in ("rinse_feed", "width_basis", "crimp_basis"))


def test_styles_have_names_of_their_own() -> None:
    of_the_program = {
        "normal",
        "title",
        "total",
        "note",
        "input",
        "output",
        "calculation",
        "good",
        "bad",
        "neutral",
    }
    names = [style.name.lower() for style in named_styles()]
    assert len(names) == len(set(names))
    assert not set(names) & of_the_program
    assert all(style.font.name == "Calibri" and style.font.size >= 9 for style in named_styles())


def test_an_input_is_recognised_without_colour(book: Workbook) -> None:
    """Light fill, border all round and unlocked go together; nothing else has a border all round."""
    seen = 0
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                edges = cell.border
                boxed = all(
                    side and side.style for side in (edges.left, edges.right, edges.top, edges.bottom)
                )
                filled = cell.fill.fill_type == "solid" and cell.fill.start_color.rgb == f"FF{INPUT}"
                assert boxed == filled == (not cell.protection.locked), f"{sheet.title}!{cell.coordinate}"
                seen += boxed
    assert seen > 2000


def test_nothing_is_merged_and_no_input_sheet_is_calculated(book: Workbook) -> None:
    for sheet in book.worksheets:
        assert not sheet.merged_cells.ranges
    for title in INPUT_SHEETS:
        assert all(cell.data_type != "f" for row in book[title].iter_rows() for cell in row)


def test_every_sheet_is_set_up_for_print(book: Workbook) -> None:
    for sheet in book.worksheets:
        assert sheet.page_setup.paperSize == 9
        assert sheet.sheet_properties.pageSetUpPr is not None
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.page_setup.fitToWidth in (1, 2, 3, 4, 5)
        assert sheet.page_setup.fitToHeight == (1 if sheet.title in ONE_PAGE else 0)
        assert sheet.oddFooter is not None
        assert sheet.oddFooter.center is not None
        assert sheet.oddFooter.right is not None
        assert sheet.oddFooter.center.text == "&A"
        assert "&P" in str(sheet.oddFooter.right.text)
    for title in ("Enquiries", "Styles", "Recipes", "Ranges", "Materials", "Safety", "Sources"):
        assert book[title].freeze_panes
        assert book[title].print_title_rows


def test_numbers_and_lists_of_the_inputs_are_checked(book: Workbook) -> None:
    """Every cell to type in has a rule, but for codes and texts, which are free."""
    for title in INPUT_SHEETS:
        sheet = book[title]
        rules = sheet.data_validations.dataValidation
        ruled = {place for rule in rules for area in rule.sqref.ranges for place in area.cells}
        for cell in given_cells(sheet):
            if cell.style in ("given number", "given choice", "given date"):
                assert (cell.row, cell.column) in ruled, f"{title}!{cell.coordinate} has no rule"


def test_a_rule_holds_in_the_unit_that_stands_beside_it(book: Workbook) -> None:
    sheet = book["Recipes"]
    row = next(r for r in range(1, sheet.max_row + 1) if sheet.cell(r, 2).value == "bath indigo")
    (rule,) = [r for r in sheet.data_validations.dataValidation if f"I{row}" in r.sqref]
    item = QUANTITIES["bath_indigo"]
    assert rule.formula1 == f'IF($C{row}="g/L",{item.low:g},-1E+300)'
    assert rule.formula2 == f'IF($C{row}="g/L",{item.high:g},1E+300)'
    assert rule.error == "bath indigo: Accepted is 0.05 to 30 g/L."


def test_a_strength_of_lye_may_be_typed_with_its_scale(book: Workbook) -> None:
    sheet = book["Recipes"]
    row = next(r for r in range(1, sheet.max_row + 1) if sheet.cell(r, 2).value == "caustic dosing")
    (rule,) = [r for r in sheet.data_validations.dataValidation if f"I{row}" in r.sqref]
    assert rule.type == "custom"
    assert rule.formula1.startswith(f"OR(ISTEXT(I{row}),AND(I{row}>=IF(")
    (units,) = [r for r in sheet.data_validations.dataValidation if f"C{row}" in r.sqref]
    assert units.formula1.startswith('"g/L,°Bé,°Tw,% w/w,')


def test_every_list_that_a_rule_uses_is_defined_and_filled(book: Workbook) -> None:
    used = {
        rule.formula1
        for title in (*INPUT_SHEETS, *beside_names())
        for rule in book[title].data_validations.dataValidation
        if rule.type == "list" and not rule.formula1.startswith('"')
    }
    others = {
        *(area_name(title) for title in INPUT_SHEETS),
        *(OPENED, CHOICE, CHOSEN, RUNNING, VERDICT, LISTED, DRIVERS_WANTED),
        *STEP_LISTS,  # of the rule that greys the cells of other routes
    }
    assert used == set(book.defined_names) - others
    for name in used:
        (place,) = book.defined_names[name].destinations
        area = [cell.value for row in book[place[0]][place[1]] for cell in row]
        assert any(area), name
    for name, words in word_lists().items():
        (place,) = book.defined_names[name].destinations
        assert [cell.value for row in book[place[0]][place[1]] for cell in row] == words


def test_lists_of_units_are_short_enough(book: Workbook) -> None:
    for title in INPUT_SHEETS:
        for rule in book[title].data_validations.dataValidation:
            assert len(rule.formula1 or "") <= 255
            assert len(rule.error or "") <= 225
            assert len(rule.errorTitle or "") <= 32


def test_what_is_contested_is_marked(book: Workbook) -> None:
    marked = {
        (row.part, row.name): any(item.contested for item in row.defaults)
        for name in ("recipes", "ranges")
        for row in column_sheet(name).rows
        if row.defaults
    }
    assert any(marked.values())
    for title in ("Recipes", "Ranges"):
        for row in book[title].iter_rows(min_row=5, max_col=8):
            key = (row[0].value, str(row[1].value).replace(" ", "_"))
            if key in marked and row[7].value:
                assert str(row[7].value).startswith("contested: ") == marked[key]


def test_every_caution_and_source_is_on_its_sheet(book: Workbook) -> None:
    safety = " ".join(str(cell.value) for row in book["Safety"].iter_rows() for cell in row)
    for item in cautions().values():
        assert item.caution in safety
        assert item.defer in safety
    keys = {book["Sources"].cell(row, 1).value for row in range(1, book["Sources"].max_row + 1)}
    used = {item.source for name in ROWS for row in column_sheet(name).rows for item in row.defaults}
    assert used <= keys


def test_about_names_every_sheet(book: Workbook) -> None:
    said = {cell.value for row in book["About"].iter_rows() for cell in row}
    assert set(book.sheetnames) - {"About"} <= said


def test_an_empty_book_holds_the_frame_and_asks_for_the_rest(tmp_path: Path) -> None:
    path = tmp_path / "empty.xlsx"
    write_fresh_book(path, demo=False)
    empty = load_workbook(path)
    full = load_workbook(demo_book())
    assert empty.sheetnames == full.sheetnames
    for title in ("Styles", "Recipes", "Ranges", "Enquiries", "Materials"):
        left = [cell.value for cell in given_cells(empty[title]) if cell.value is not None]
        units = [cell.value for cell in given_cells(full[title]) if cell.column_letter == "C" and cell.value]
        assert set(left) <= set(units)
    with pytest.raises(InputError, match=r"empty\.xlsx, Mill costs!B\d+: currency is empty"):
        read_book(path)


def test_an_empty_book_does_not_call_itself_a_demo() -> None:
    for demo in (True, False):
        texts = [
            str(cell.value)
            for sheet in fresh_book(demo).worksheets
            for row in sheet.iter_rows()
            for cell in row
            if cell.value is not None
        ]
        assert any("demo" in text or "invented" in text for text in texts) == demo
