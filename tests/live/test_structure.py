"""The live sheets as they are built: names, array formulas, calls, results behind them, looks."""

from __future__ import annotations

import io
import re
from typing import Any

import pandas
import pytest
from openpyxl import load_workbook
from openpyxl.formula import Tokenizer
from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.workbook import Workbook
from openpyxl.worksheet.formula import ArrayFormula

from costing.book.layout import beside_names, sheet_names
from costing.cost.quote import GROUPS
from costing.formulas.cell_calls import called
from costing.formulas.cell_function import VARARGS
from costing.formulas.registry import cell_functions
from costing.front_ends.workbook.build import demo_book, fresh_book, fresh_book_bytes
from costing.front_ends.workbook.cached_values import formula_cells
from costing.front_ends.workbook.live_areas import LAST_CELLS, area_name, block_of
from costing.front_ends.workbook.live_cells import ALL_WELL, WARNED, call
from costing.front_ends.workbook.read import read_book
from costing.report import Result
from tests.live.live_tables import LIVE_SHEETS, array_formulas, must_show, shown

CHOSEN = "Q-01"
FUNCTION = re.compile(r"([A-Z][A-Z0-9_.]*)\($")


@pytest.fixture(scope="module")
def book() -> Workbook:
    return load_workbook(demo_book())


@pytest.fixture(scope="module")
def values() -> Workbook:
    return load_workbook(demo_book(), data_only=True)


def formulas(book: Workbook) -> list[tuple[str, str]]:
    """Place and text of every formula."""
    return [
        (f"{sheet.title}!{cell.coordinate}", str(getattr(cell.value, "text", cell.value)))
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    ]


def test_the_sheets_stand_in_the_order_of_reading(book: Workbook) -> None:
    assert book.sheetnames == [
        *("About", *sheet_names(), *beside_names()),
        *LIVE_SHEETS,
        *("Safety", "Formulas", "Sources", "Lists"),
    ]


def test_names_are_plain_ranges(book: Workbook) -> None:
    for name, defined in book.defined_names.items():
        assert re.fullmatch(r"'[\w ]+'!\$[A-Z]+\$\d+(:\$[A-Z]+\$\d+)?", defined.attr_text), name
    for title in sheet_names():
        assert book.defined_names[area_name(title)].attr_text == (
            f"'{title}'!$A$1:" + re.sub(r"([A-Z]+)(\d+)", r"$\1$\2", LAST_CELLS[title])
        )


def test_there_is_room_in_every_area_for_what_is_drawn(book: Workbook) -> None:
    for title in sheet_names():
        row, column = coordinate_to_tuple(LAST_CELLS[title])
        assert book[title].max_column < column
        assert book[title].max_row + 10 < row


def test_one_cell_opens_the_book_and_the_others_ask_it(book: Workbook) -> None:
    opening = [(place, text) for place, text in formulas(book) if text.startswith("=WARP_OPENED_BOOK(")]
    areas = ",".join(area_name(title) for title in sheet_names())
    assert [text for _, text in opening] == [f"=WARP_OPENED_BOOK({areas})"]
    place = book.defined_names["opened_book"].attr_text.replace("$", "").replace("'", "")
    assert opening[0][0] == place


def test_every_call_is_one_of_the_registry_with_as_many_arguments_as_it_takes(book: Workbook) -> None:
    seen = set()
    for place, text in formulas(book):
        stack: list[list[Any]] = []
        for token in Tokenizer(text).items:
            if token.type == "FUNC" and token.subtype == "OPEN":
                found = FUNCTION.fullmatch(token.value)
                assert found, f"{place}: {token.value}"
                stack.append([found[1], 0, True])
                continue
            if token.type == "PAREN":
                stack.append(["", 0, True]) if token.subtype == "OPEN" else stack.pop()
            elif token.type == "FUNC":
                name, commas, empty = stack.pop()
                if name.startswith("WARP_"):
                    count = 0 if empty else commas + 1
                    parameters = cell_functions()[name].parameters
                    least = sum(not item.optional for item in parameters)
                    many = bool(parameters) and parameters[-1].kind == VARARGS
                    assert least <= count <= (count if many else len(parameters)), f"{place}: {name}"
                    seen.add(name)
            elif token.type == "SEP" and stack:
                stack[-1][1] += 1
            if stack and token.type != "WHITE-SPACE":
                stack[-1][2] = False
        assert not stack, place
    assert seen >= {"WARP_OPENED_BOOK", "WARP_RESULT_TABLE", "WARP_REASON_FOR", "WARP_COST_ON"}


def test_the_builder_refuses_a_call_that_cannot_be() -> None:
    with pytest.raises(ValueError, match="WARP_COST_ON takes 4 arguments, not 5"):
        call("WARP_COST_ON", "1", "2", "3", "4", "5")
    with pytest.raises(KeyError):
        call("WARP_COST_OF", "1")


def test_every_table_is_one_array_formula_as_large_as_it_says(book: Workbook) -> None:
    mill = read_book(demo_book())
    found, worked = list(array_formulas(book)), dict[str, Result]()
    assert {placed.key for placed in found} >= {
        *("quotes", "cost_by_step", "cost_by_group", "key_figures", "checks", "use", "cost_lines"),
        *("ledger", "discharge_loads", "discharge_concentrations"),
    }
    for placed in found:
        first_column, first_row, last_column, last_row = placed.area
        table = must_show(mill, placed, CHOSEN, worked)
        assert last_row - first_row + 1 == placed.rows == len(table)
        assert last_column - first_column + 1 == len(table[0])
    rows = {placed.key: placed.rows for placed in found}
    assert rows["quotes"] >= 42
    assert rows["ledger"] >= 902


def test_what_stands_behind_the_tables_is_what_the_command_line_gives(
    book: Workbook, values: Workbook
) -> None:
    """But for the remarks, which count the age of prices from another day."""
    mill, worked = read_book(demo_book()), dict[str, Result]()
    for placed in array_formulas(book):
        if placed.key == "checks":
            continue
        grid = [list(row) for row in values[placed.title].iter_rows(values_only=True)]
        for mine, other in zip(
            shown(grid, placed.area), must_show(mill, placed, CHOSEN, worked), strict=True
        ):
            for cell, wanted in zip(mine, other, strict=True):
                if isinstance(wanted, float):
                    assert cell == pytest.approx(wanted, rel=1e-9, abs=1e-12)
                else:
                    assert (cell or "") == wanted


def test_the_mark_in_the_file_is_the_one_that_a_cell_gives(book: Workbook, values: Workbook) -> None:
    mark = called("WARP_OPENED_BOOK", [block_of(book[title]) for title in sheet_names()])
    title, place = book.defined_names["opened_book"].attr_text.replace("$", "").replace("'", "").split("!")
    assert values[title][place].value == mark


def test_every_check_passes_in_the_demo(values: Workbook) -> None:
    for title in LIVE_SHEETS:
        cells = [cell.value for row in values[title].iter_rows(max_row=6) for cell in row]
        # The demo has warnings: it says so in words and by a mark, not by a colour alone.
        assert any(str(cell).startswith(f"{WARNED} {ALL_WELL} with ") for cell in cells), title
    says = [values["Checks"].cell(row, 4).value for row in range(11, 46)]
    assert says.count("ok") >= 25
    assert not [text for text in says if text not in ("ok", "Reason", None)]


def test_a_program_that_calculates_nothing_sees_the_numbers(values: Workbook) -> None:
    """In the file every cell with a formula has a result, and pandas reads them as numbers."""
    for title, cells in formula_cells(demo_book().read_bytes()).items():
        if title in LIVE_SHEETS:
            assert any(isinstance(values[title][cell].value, (int, float)) for cell in cells)
    frame = pandas.read_excel(demo_book(), sheet_name="Quotes", header=None)
    row = frame.index[frame[0] == "Q-02"][0]
    costs = frame.loc[row, 8:14].astype(float)
    assert (costs > 0).all()
    assert len(costs) == 7


def test_only_the_two_choices_can_be_typed_in(book: Workbook) -> None:
    unlocked = [
        f"{title}!{cell.coordinate}"
        for title in (*LIVE_SHEETS, "Formulas")
        for row in book[title].iter_rows()
        for cell in row
        if not cell.protection.locked
    ]
    assert [f"'{place.replace('!', chr(39) + '!')}" for place in unlocked] == [
        book.defined_names[name].attr_text.replace("$", "") for name in ("chosen_enquiry", "drivers_wanted")
    ]


def test_calculated_sheets_are_protected_without_a_password(book: Workbook) -> None:
    for sheet in book.worksheets:
        assert sheet.protection.sheet == (sheet.title in LIVE_SHEETS), sheet.title
        assert sheet.protection.password is None
        if sheet.protection.sheet:
            # An attribute of 0 leaves it to the user.
            assert not sheet.protection.formatColumns
            assert not sheet.protection.autoFilter
            assert not sheet.protection.selectLockedCells


def test_what_says_that_all_is_well_is_worked_out_on_opening(book: Workbook) -> None:
    """By an array formula, of one cell, that asks whether our formulas run."""
    for title in LIVE_SHEETS:
        says = [
            cell.value
            for row in book[title].iter_rows(max_row=8)
            for cell in row
            if isinstance(cell.value, ArrayFormula) and ":" not in cell.value.ref
        ]
        (said,) = [
            text for text in (str(formula.text) for formula in says) if "verdict" in text or "IF(" in text
        ]
        assert said == "=checks_verdict" or said.startswith("=IF(ISERROR(program_version),"), title
    running = book.defined_names["program_version"].attr_text.replace("$", "").replace("'", "").split("!")
    formula = book[running[0]][running[1]].value
    assert isinstance(formula, ArrayFormula)
    assert formula.text == "=WARP_PROGRAM_VERSION()"


PRINTED = {
    "Quotes": ("B", 32),
    "Use": ("A", 26),
    "Cost lines": ("A", 140),
    "Ledger": ("A", 680),
    "Typical values": ("A", 56),
    "What moves the cost": ("A", 36),
    "Purchasing": ("A", 46),
    "Checks": ("A", 96),
}


@pytest.mark.parametrize("title", PRINTED)
def test_the_print_range_holds_the_demo_and_is_told_on_the_sheet(
    values: Workbook, book: Workbook, title: str
) -> None:
    column, rows = PRINTED[title]
    says = [str(values[title][f"{column}{row}"].value) for row in range(2, 10)]
    assert any(said.startswith(f"In print: the first {rows} ") for said in says)
    area = book[title].print_area.replace("$", "").replace("'", "").rpartition("!")[2]
    last = coordinate_to_tuple(area.split(":")[1])[0]
    filled = max(row for row in range(1, last + 200) if values[title].cell(row, 1).value)
    assert 0 <= last - filled <= rows


def drawn(book: Workbook, title: str) -> list[Any]:
    """The charts of a sheet."""
    charts: list[Any] = book[title]._charts  # type: ignore[attr-defined]  # no other way to see them
    return charts


def test_every_chart_names_its_values_with_their_unit(book: Workbook) -> None:
    charts = [(title, chart) for title in LIVE_SHEETS for chart in drawn(book, title)]
    titles = sorted(title for title, _ in charts)
    assert titles == ["Discharge", "Discharge", "Limits", "Quote", *["What moves the cost"] * 4]
    for title, chart in charts:
        axis = chart.y_axis.title.tx.rich.p[0].r[0].t
        assert " per " in axis or axis.startswith("% of "), title
        fills = [series.graphicalProperties for series in chart.series]
        assert len({str(fill.pattFill or fill.solidFill) for fill in fills}) == len(fills)


def test_the_streams_beside_the_charts_add_up(values: Workbook) -> None:
    sheet = values["Discharge"]
    head = next(row for row in range(1, 20) if sheet.cell(row, 1).value == "Stream")
    rows = [[cell.value for cell in row[:7]] for row in sheet.iter_rows(min_row=head + 2, max_row=head + 11)]
    *streams, whole = rows
    assert whole[0] == "all streams"
    for column in (2, 3, 4, 5, 6):
        parts = [value for row in streams if isinstance(value := row[column], (int, float))]
        assert sum(parts) == pytest.approx(whole[column], rel=1e-9)
    assert whole[6] == 1


def test_sums_of_purchasing_are_of_one_unit_each(book: Workbook, values: Workbook) -> None:
    labels = [str(cell.value) for cell in values["Checks"]["A"]]
    for unit in ("kg", "L", "kWh", "h"):
        row = labels.index(f"{unit} needed on Purchasing, and in its list") + 1
        assert f'"{unit}"' in str(book["Checks"][f"B{row}"].value)
        assert values["Checks"][f"B{row}"].value > 0


def test_what_the_input_sheets_promise_is_there(book: Workbook) -> None:
    said = {
        title: " ".join(str(book[title].cell(row, 1).value) for row in range(2, 5)) for title in sheet_names()
    }
    assert "the sheet Typical values lists it" in said["Styles"]
    assert "shows it at once" in said["Enquiries"]
    assert "rounded price" in said["Enquiries"]
    assert "rounded" in str(book["Quotes"]["A2"].value)


def test_numbers_fit_their_columns(book: Workbook, values: Workbook) -> None:
    for title in LIVE_SHEETS:
        for row in values[title].iter_rows():
            for cell in row:
                if isinstance(cell.value, (int, float)):
                    number = book[title][cell.coordinate].number_format
                    decimals = len(re.sub(r"[^0]", "", number.partition(";")[0].partition(".")[2]))
                    text = f"{cell.value:,.{decimals}f}"
                    width = book[title].column_dimensions[cell.column_letter].width
                    assert len(text) + 1 <= width, f"{title}!{cell.coordinate}: {text}"


def test_number_formats_are_of_no_locale(book: Workbook) -> None:
    formats = {cell.number_format for title in LIVE_SHEETS for row in book[title].iter_rows() for cell in row}
    assert not [number for number in formats if "[" in number or "€" in number or "$" in number]


def test_an_empty_book_has_the_formulas_and_no_results(tmp_path: Any) -> None:
    content = fresh_book_bytes(demo=False)
    path = tmp_path / "empty.xlsx"
    path.write_bytes(content)
    empty = load_workbook(path)
    full = {place for place, _ in formulas(load_workbook(demo_book()))}
    assert {place for place, _ in formulas(empty)} == full
    shown_values = load_workbook(io.BytesIO(content), data_only=True)
    for title in LIVE_SHEETS:
        for cell in formula_cells(content)[title]:
            assert shown_values[title][cell].value is None
    assert "Q-01" not in str([cell.value for row in empty["Quote"].iter_rows(max_row=8) for cell in row])


def test_every_function_is_on_its_sheet(book: Workbook) -> None:
    names = [cell.value for cell in book["Formulas"]["A"]]
    assert [name for name in names if name in cell_functions()] == list(cell_functions())
    assert all(cell.data_type != "f" for row in book["Formulas"].iter_rows() for cell in row)


def test_building_in_memory_and_in_a_file_is_the_same(book: Workbook) -> None:
    assert formulas(fresh_book()) == formulas(book)
    assert isinstance(fresh_book()["Quotes"]["A7"].value, (ArrayFormula, str, type(None)))


def test_the_groups_of_the_quote_make_a_whole(values: Workbook) -> None:
    """Each share is of all groups together: the row All is 100 %, and the others add up to it."""
    sheet = values["Quote"]
    (head,) = [cell for row in sheet.iter_rows() for cell in row if cell.value == "Group"]
    (share,) = [cell for cell in sheet[head.row] if cell.value == "Share"]
    rows = range(head.row + 1, head.row + 2 + len(GROUPS))
    named: dict[str, Any] = {
        str(sheet.cell(row, head.column).value): sheet.cell(row, share.column).value for row in rows
    }
    assert list(named) == [*(group[:1].upper() + group[1:] for group in GROUPS), "All"]
    assert named.pop("All") == pytest.approx(1.0)
    assert sum(named.values()) == pytest.approx(1.0)
    assert all(0.0 <= found < 1.0 for found in named.values())
