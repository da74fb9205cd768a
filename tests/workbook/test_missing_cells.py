"""What is missing of a recipe or an enquiry is told at once, and a recipe on the wrong range is refused."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner
from openpyxl.workbook import Workbook

from costing.front_ends.command_line import main
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from tests.workbook.editing import cell_with, changed, column_cell, in_row, sheet_of, table_cell

GONE = (
    ("indigo dyeing", "indigo on yarn"),
    ("indigo dyeing", "indigo product"),
    ("scour", "caustic product"),
)


def lines(path: Path, *options: str) -> list[str]:
    done = CliRunner().invoke(main, ["quote", str(path), "-e", "Q-01", *options])
    assert done.exit_code == 2, done.output
    return done.stderr.splitlines()


def test_all_missing_cells_of_a_recipe_are_told_at_once(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        for step, quantity in GONE:
            column_cell(book, "Recipes", "DARK-POWDER", quantity, step).value = None

    said = lines(changed(tmp_path, edit))
    assert len(said) == len(GONE)
    for _, quantity in GONE:
        (line,) = [text for text in said if f"{quantity} is empty" in text]
        assert line.startswith("refused: my_mill.xlsx, Recipes!")
        assert "accepted is" in line


def test_all_missing_cells_of_an_enquiry_are_told_at_once(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        for head in ("Style", "Order length", "Range"):
            table_cell(book, "Enquiries", "Q-01", head).value = None

    said = lines(changed(tmp_path, edit))
    assert len(said) == 3
    for what in ("style is empty", "order length is empty", "range is empty"):
        assert sum(what in line for line in said) == 1


def test_the_first_of_very_many_are_told_with_how_many_more(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Recipes")
        column = cell_with(sheet, "DARK-POWDER").column
        for row in range(cell_with(sheet, "scour").row, sheet.max_row + 1):
            sheet.cell(row, column).value = None

    mill = read_book(changed(tmp_path, edit))
    with pytest.raises(InputError) as caught:
        open_ledger(mill, mill.enquiry("Q-01"))
    assert "\n" not in str(caught.value)
    assert len(caught.value.more) >= 4
    few = InputError("a", "b", [InputError("c", "d")] * 30).told()
    assert few[-1] == ("", "and 19 more")


def new_step(book: Workbook) -> None:
    """A rinse more in the route of Q-01, and no rows for it."""
    routes = sheet_of(book, "Routes")
    row = cell_with(routes, "drying", column=2).row
    routes.cell(row, cell_with(routes, "No.").column).value = 6
    last = cell_with(routes, "Route of the step").row + 10
    added: tuple[str | int, ...] = ("rope indigo", "caustic bath", 5, "dye box")
    for column, value in enumerate(added, start=1):
        routes.cell(last, column).value = value


def test_a_new_step_without_rows_is_told_where_it_was_added(tmp_path: Path) -> None:
    said = lines(changed(tmp_path, new_step))
    assert said
    assert all(line.startswith("refused: my_mill.xlsx, Routes!B") for line in said)
    assert any("no rows on the sheet Recipes" in line for line in said)
    for line in said:
        assert "'caustic bath'" in line
        assert "kind 'dye box'" in line
        assert "copy those of sulfur dyeing" in line


def test_a_vessel_recipe_on_a_rope_range_is_refused_with_the_ranges_that_do(tmp_path: Path) -> None:
    mill = read_book(changed(tmp_path, in_row("Enquiries", "V-01", "Range", "ROPE-A")))
    with pytest.raises(
        InputError, match="of a vessel, and ROPE-A runs ropes; accepted is one that"
    ) as caught:
        open_ledger(mill, mill.enquiry("V-01"))
    assert str(caught.value).endswith("has them all: VESSEL-D")


def test_a_range_without_a_step_is_refused_with_the_ranges_that_have_it(tmp_path: Path) -> None:
    mill = read_book(changed(tmp_path, in_row("Enquiries", "S-01", "Range", "ROPE-A")))
    with pytest.raises(InputError, match=r"ROPE-A has no cell filled for the step.* accepted is one that"):
        open_ledger(mill, mill.enquiry("S-01"))
