"""The live sheets in LibreOffice: the tables of the command line, refusals in words, files, documents."""

from __future__ import annotations

import functools
import re
from string import ascii_uppercase

import pytest
from openpyxl import load_workbook

from costing.formulas.opened_book import KEPT
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.formula_names import repair_names
from costing.front_ends.workbook.live_cells import ALL_WELL
from costing.front_ends.workbook.read import read_book
from tests.libreoffice.conftest import running
from tests.libreoffice.office import Office
from tests.live.live_tables import LIVE_SHEETS
from tests.live.open_books import (
    ARRAYS,
    BOOK,
    CHOICE,
    DARK,
    DRIVERS,
    DYEING,
    Live,
    Place,
    agree,
    opened,
    place,
    unit,
)
from tests.workbook.editing import column_cell, sheet_of, table_cell


def test_every_table_is_that_of_the_command_line(live: Live) -> None:
    assert live.well()
    agree(live, "Q-01", live.office.folder)
    assert not any(live.errors(title) for title in LIVE_SHEETS)


def test_it_works_for_an_ordinary_user_who_installed_the_extension(installed: Office) -> None:
    found = opened(installed, installed.folder)
    assert found.well()
    found.type(CHOICE, "Q-03")
    assert found.grid("Ledger")[8][0] == "Q-03" or "Q-03" in found.says("Ledger")
    found.close()


def test_native_cells_show_in_calc_what_stands_in_the_file(live: Live) -> None:
    kept = load_workbook(demo_book(), data_only=True)
    covered = {
        (placed.title, row, column)
        for placed in ARRAYS
        for row in range(placed.area[1], placed.area[3] + 1)
        for column in range(placed.area[0], placed.area[2] + 1)
    }
    compared = 0
    for title in LIVE_SHEETS:
        for row, cells in enumerate(live.grid(title), start=1):
            for column, cell in enumerate(cells, start=1):
                wanted = kept[title].cell(row, column).value
                if (title, row, column) in covered or wanted in (None, ""):
                    continue
                if isinstance(wanted, (int, float)):
                    assert cell == pytest.approx(wanted, rel=1e-9), f"{title} {row} {column}"
                else:
                    assert cell == wanted, f"{title} {row} {column}"
                compared += 1
    assert compared > 400


def test_another_enquiry_and_another_input_are_followed(live: Live) -> None:
    live.type(CHOICE, "Q-05")
    agree(live, "Q-05", live.office.folder)
    before = live.grid("Quotes")
    live.type(place(table_cell(BOOK, "Materials", "LYE-50", "Price")), 2.75)
    live.type(place(column_cell(BOOK, *DARK, "bath indigo", DYEING)), 2.1)
    live.type(place(table_cell(BOOK, "Enquiries", "Q-05", "Order length")), 12345.0)
    agree(live, "Q-05", live.office.folder)
    assert live.grid("Quotes") != before
    assert live.well()


@pytest.mark.parametrize("typed", ["q-05", "  Q-05 ", "Q-05   "])
def test_a_choice_in_small_letters_or_with_blanks_is_the_same_enquiry(live: Live, typed: str) -> None:
    live.type(CHOICE, typed)
    agree(live, "Q-05", live.office.folder)
    quote = live.grid("Quote")
    assert ["Q-05", 5.0] in [row[2:4] for row in quote]
    assert any("good practice" in str(row[2]) for row in quote)
    assert live.well()


def test_no_choice_shows_nothing_and_says_so(live: Live) -> None:
    for nothing in (None, "  "):
        live.type(CHOICE, nothing)
        for title in ("Quote", "Use", "Ledger", "Discharge", "Typical values"):
            assert live.errors(title), title
        assert not live.errors("Quotes")
        assert "no enquiry is chosen" in live.says("Quotes")


def test_an_emptied_cell_is_listed_among_the_typical_values(live: Live) -> None:
    kept = place(column_cell(BOOK, *DARK, "indigo on yarn", DYEING))
    before = live.grid("Typical values")
    live.type(place(column_cell(BOOK, "Ranges", "ROPE-A", "water temperature")), None)
    after = live.grid("Typical values")
    (new,) = [row for row in after if row[2] == "water temperature"]
    assert not [row for row in before if row[2] == "water temperature"]
    assert new[1] == "range ROPE-A"
    assert new[4] <= new[3] <= new[5]
    assert new[6] == "degC"
    assert new[8]
    assert kept.value is not None
    assert live.well()


def test_calculated_sheets_are_protected_and_input_sheets_are_not(live: Live) -> None:
    kept_from = functools.partial(live.office.ask, "is_protected", live.document)
    for title in LIVE_SHEETS:
        assert kept_from(title, "A1")
        assert kept_from(title, "C12")
    for title in ("Enquiries", "Styles", "Recipes", "Ranges", "Routes", "Materials", "Mill costs"):
        assert not kept_from(title, "A1")
    assert not kept_from("Quote", CHOICE)
    live.type(CHOICE, "Q-02")
    assert live.well()


def test_more_enquiries_than_there_is_room_for_are_counted_in_words(live: Live) -> None:
    codes = list(read_book(demo_book()).enquiries)
    last = table_cell(BOOK, "Enquiries", codes[-1], "Code").row
    room = 60 - len(codes)
    live.copy_row("Enquiries", last, {last + number: f"X-{number}" for number in range(1, room + 1)})
    assert live.well()
    assert any(row[0] == f"X-{room}" for row in live.grid("Quotes"))
    live.copy_row("Enquiries", last, {last + room + 1: "X-61"})
    assert "the book holds at most 60 enquiries; 61 are given" in live.says()
    assert live.errors("Quotes")
    for title in ("Quotes", "Purchasing"):
        assert "the book holds at most 60 enquiries; 61 are given" in live.says(title)


def test_a_material_beyond_the_list_of_purchasing_is_counted_in_words(live: Live) -> None:
    first = table_cell(BOOK, "Materials", "INDIGO-94", "Code").row
    live.copy_row("Materials", first, {first + 109: "LAST-LISTED"})
    assert live.well()
    live.copy_row("Materials", first, {first + 110: "NOT-LISTED"})
    filled = len(read_book(demo_book()).materials) + 2
    told = f"Purchasing lists the first 110 rows of Materials; {filled} materials are filled in"
    assert told in live.says()
    assert "1 of the checks do not pass" in live.says("Quotes")


def test_more_rows_than_are_printed_are_counted_on_the_sheet(live: Live) -> None:
    assert "In print: the first 32 rows." in live.says("Quotes")
    last = table_cell(BOOK, "Enquiries", "Q-10", "Code").row
    live.copy_row("Enquiries", last, {last + number: f"Q-{10 + number}" for number in range(1, 24)})
    assert "In print: only the first 32 of 33 rows. For more, widen the print range" in live.says("Quotes")


def test_where_the_formulas_do_not_run_nothing_says_that_all_is_well() -> None:
    """Not on opening, when most cells show what stands in the file, and not after calculating anew."""
    for office in running("none"):
        found = opened(office, office.folder)
        for _ in range(2):
            for title in LIVE_SHEETS:
                assert ALL_WELL not in found.says(title), title
                assert "Not calculated: the formulas of this program do not run here" in found.says(title)
            assert found.errors("Quotes")
            office.ask("calculate", found.document)
        found.close()


def test_a_new_enquiry_in_the_next_free_row_is_quoted(live: Live) -> None:
    sheet = sheet_of(BOOK, "Enquiries")
    first = table_cell(BOOK, "Enquiries", "Q-10", "Code").row
    last = next(row for row in range(first, first + 60) if sheet.cell(row + 1, 1).value is None)
    for column in range(1, sheet.max_column + 1):
        value = "Q-11" if column == 1 else sheet.cell(last, column).value
        cell = sheet.cell(last + 1, column)
        if value is not None:
            live.type(Place("Enquiries", cell.coordinate, None), value)
    live.type(CHOICE, "Q-11")
    assert "Q-11" in live.says("Quotes")
    agree(live, "Q-11", live.office.folder)
    assert live.well()


BAD = {
    "a unit that measures something else": (unit("Recipes", "bath indigo", DYEING), "bar", "bath indigo"),
    "a unit that nobody knows": (unit("Styles", "warp count", ""), "NeX", "warp count"),
    "an empty cell that is needed": (
        place(column_cell(BOOK, "Styles", "D-1200", "warp count")),
        None,
        "warp count is empty",
    ),
    "an empty setting of a step": (
        place(column_cell(BOOK, *DARK, "indigo on yarn", DYEING)),
        None,
        "indigo on yarn is empty",
    ),
    "0.88 for 88 %": (place(table_cell(BOOK, "Materials", "HYDRO-88", "Strength")), 0.88, "strength is 0.88"),
    "a negative price": (place(table_cell(BOOK, "Materials", "LYE-50", "Price")), -1.0, "price is -1"),
    "88 without its unit": (
        place(table_cell(BOOK, "Materials", "HYDRO-88", "Strength unit")),
        None,
        "the unit of strength is missing",
    ),
    "a decimal comma in a text": (
        place(column_cell(BOOK, *DARK, "bath indigo", DYEING)),
        "2,4",
        "bath indigo is the text '2,4'",
    ),
    "the day of a date": (
        place(column_cell(BOOK, *DARK, "bath indigo", DYEING)),
        46143.0,
        "bath indigo is 46143 g/L",
    ),
    "a text for a number": (place(column_cell(BOOK, *DARK, "bath indigo", DYEING)), "two", "bath indigo"),
    "a style that is not there": (place(table_cell(BOOK, "Enquiries", "Q-02", "Style")), "D-9999", "D-9999"),
    "a code twice": (place(table_cell(BOOK, "Enquiries", "Q-02", "Code")), "Q-01", "stands twice"),
    "an error": (place(column_cell(BOOK, *DARK, "bath indigo", DYEING)), "=1/0", "hold an error"),
}


@pytest.mark.parametrize("bad", BAD)
def test_what_makes_no_sense_poisons_all_and_is_named(live: Live, bad: str) -> None:
    cell, value, said = BAD[bad]
    live.type(cell, value)
    for placed in ARRAYS:
        first_column, first_row, last_column, last_row = placed.area
        wrong = live.errors(placed.title)
        assert (first_row - 1, first_column - 1) in wrong
        assert (last_row - 1, last_column - 1) in wrong
    quotes = live.grid("Quotes")
    (total,) = [
        (row, column + 4)
        for row, cells in enumerate(quotes)
        for column, text in enumerate(cells)
        if text == "sum of the order values"
    ]
    assert total in live.errors("Quotes")
    checks = live.says()
    assert said in checks
    # A unit is refused at the first number of its row, or at itself.
    letters = "[A-Z]+" if "unit" in bad else cell.cell.rstrip("0123456789")
    assert re.search(rf"{cell.sheet}!{letters}{cell.cell.strip(ascii_uppercase)}\b", checks)
    assert "of the checks do not pass" in checks
    for title in LIVE_SHEETS:
        assert ALL_WELL not in live.says(title)
        assert "of the checks do not pass" in live.says(title)
    live.type(cell, cell.value)
    assert live.well()


def test_an_enquiry_that_cannot_be_run_is_refused_by_its_cell(live: Live) -> None:
    """The book is read, and the table of all quotes is refused; another enquiry can still be looked at."""
    needed = place(column_cell(BOOK, "Recipes", "LIGHT-PASTE", "indigo on yarn", DYEING))
    live.type(needed, None)
    assert live.errors("Quotes")
    assert live.errors("Purchasing")
    assert not live.errors("Ledger")
    assert f"Recipes!{needed.cell}" in live.says()
    assert "of the checks do not pass" in live.says("Quote")


def test_an_enquiry_that_is_not_there_is_refused(live: Live) -> None:
    live.type(CHOICE, "Q-99")
    assert "'Q-99'" in live.says()
    assert not live.errors("Quotes")
    for title in ("Quote", "Use", "Ledger", "Discharge"):
        assert live.errors(title)
    assert "of the checks do not pass" in live.says("Quotes")


def test_cells_beyond_the_areas_are_not_silently_left_out(live: Live) -> None:
    live.type(Place("Styles", "AH12", None), 7.0)
    assert "cells are filled beyond the last one that is read, AF60" in live.says()
    assert "1 of the checks do not pass" in live.says("Quotes")


def test_a_balance_that_does_not_add_up_is_seen(live: Live) -> None:
    """A number typed over a formula of Purchasing: the sums no longer agree."""
    row = next(n for n, cells in enumerate(live.grid("Purchasing"), start=1) if cells[0] == "HYDRO-88")
    live.type(Place("Purchasing", f"C{row}", None), 1.0)
    assert "differs by" in live.says()
    assert "1 of the checks do not pass" in live.says("Quote")


@pytest.mark.parametrize("suffix", [".ods", ".xlsx"])
def test_a_saved_book_shows_the_same_and_still_follows(live: Live, suffix: str) -> None:
    folder = live.office.folder
    live.type(CHOICE, "Q-04")
    live.type(place(table_cell(BOOK, "Materials", "LYE-50", "Price")), 2.0)
    before = {title: live.grid(title) for title in LIVE_SHEETS}
    path = live.saved(folder / f"again{suffix}")
    if suffix == ".xlsx":
        repair_names(path, in_place=True)
    again = Live(live.office, path)
    assert {title: again.grid(title) for title in LIVE_SHEETS} == before
    again.type(CHOICE, "Q-02")  # asks the book that the mark in the file names
    agree(again, "Q-02", folder)
    assert again.well()
    again.close()


def test_a_book_that_an_earlier_session_saved_is_opened_anew(bundled: Office, installed: Office) -> None:
    first = opened(installed, installed.folder)
    path = first.saved(installed.folder / "earlier.ods")
    first.close()
    other = bundled.folder / "earlier.ods"
    other.write_bytes(path.read_bytes())
    again = Live(bundled, other)
    again.type(CHOICE, "Q-07")
    agree(again, "Q-07", bundled.folder)
    state = bundled.ask("state", again.document)
    again.close()
    assert "Ledger" not in state["undo"]


def test_opening_leaves_no_trace(bundled: Office) -> None:
    found = opened(bundled, bundled.folder)
    state = bundled.ask("state", found.document)
    found.close()
    assert (state["modified"], state["undo"]) == (False, [])


def test_two_books_reload_and_undo_are_never_stale(bundled: Office) -> None:
    one, two = opened(bundled, bundled.folder, "one.xlsx"), opened(bundled, bundled.folder, "two.xlsx")
    before = one.grid("Quotes")
    price = place(table_cell(BOOK, "Materials", "INDIGO-94", "Price"))
    one.type(price, 9.9)
    dearer = one.grid("Quotes")
    assert dearer != before
    assert two.grid("Quotes") == before
    bundled.ask("undo", one.document)
    assert one.grid("Quotes") == before
    bundled.ask("redo", one.document)
    assert one.grid("Quotes") == dearer
    two.type(CHOICE, "Q-06")
    agree(two, "Q-06", bundled.folder)
    one.close()
    again = Live(bundled, bundled.folder / "one.xlsx")
    assert again.grid("Quotes") == before
    again.close()
    two.close()


def test_a_sheet_copied_to_another_document_asks_no_other_book(bundled: Office, live: Live) -> None:
    target = bundled.ask("new")
    bundled.ask("copy_sheet", live.document, target, "Quotes")
    bundled.ask("calculate", target)
    grid = bundled.ask("grid", target, "Quotes")
    bundled.ask("close", target)
    kept = live.grid("Quotes")
    placed = next(found for found in ARRAYS if found.title == "Quotes")
    first = placed.area[1] - 1
    assert grid["errors"] or grid["cells"][first:] == kept[first:]


def test_a_book_that_is_no_longer_kept_is_refused_and_read_anew_on_request(bundled: Office) -> None:
    """While one document lies idle, another one goes through more states than are kept."""
    idle, busy = opened(bundled, bundled.folder, "idle.xlsx"), opened(bundled, bundled.folder, "busy.xlsx")
    price = place(table_cell(BOOK, "Materials", "INDIGO-94", "Price"))
    busy.type(DRIVERS, "no")  # some hundred quotes for each state
    for step in range(KEPT + 1):
        busy.type(price, 7.0 + step / 100)
        assert busy.well()  # what nobody looks at is not calculated
    idle.type(CHOICE, "Q-04")
    assert idle.errors("Use")
    assert "calculate the whole document anew" in idle.says()
    assert not any(ALL_WELL in idle.says(title) for title in LIVE_SHEETS)
    bundled.ask("calculate", idle.document)
    agree(idle, "Q-04", bundled.folder)
    assert idle.well()
    idle.close()
    busy.close()


def test_many_states_of_one_book_do_not_wear_it_out(live: Live) -> None:
    """More states than are kept: the book of the last one is always there, and each has its own quote."""
    price = place(table_cell(BOOK, "Materials", "INDIGO-94", "Price"))
    totals = []
    live.type(DRIVERS, "no")  # some hundred quotes for each state
    for step in range(KEPT + 6):
        live.type(price, 7.0 + step / 10)
        totals.append(next(row[8] for row in live.grid("Quotes") if row[0] == "Q-01"))
    live.type(DRIVERS, "yes")
    assert totals == sorted(totals)
    assert len(set(totals)) > KEPT
    agree(live, "Q-01", live.office.folder)
    assert live.well()
