"""A book that is open in LibreOffice: typed in, read, and held against the tables of the command line."""

from __future__ import annotations

import datetime
import io
import itertools
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from openpyxl import load_workbook
from openpyxl.cell.cell import Cell

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.live_cells import ALL_WELL
from costing.front_ends.workbook.read import read_book
from costing.report import Result
from tests.libreoffice.office import Office
from tests.live.live_tables import LIVE_SHEETS, array_formulas, must_show, shown
from tests.workbook.editing import row_of, sheet_of, without_live_sheets

DYEING = "indigo dyeing"
DARK = ("Recipes", "DARK-POWDER")
BOOK = load_workbook(io.BytesIO(without_live_sheets()))
ARRAYS = list(array_formulas(load_workbook(demo_book())))
NAMES = load_workbook(demo_book()).defined_names
CHOICE, WANTED = (
    NAMES[name].attr_text.split("!")[1].replace("$", "") for name in ("chosen_enquiry", "drivers_wanted")
)


class Place(NamedTuple):
    """A cell of an input sheet, and what it holds in the demo."""

    sheet: str
    cell: str
    value: Any


def place(cell: Cell) -> Place:
    return Place(cell.parent.title, cell.coordinate, cell.value)


DRIVERS = Place("What moves the cost", WANTED, "yes")


def plain(value: Any) -> Any:
    """A date as the number that a cell holds."""
    return (value - datetime.datetime(1899, 12, 30)).days if isinstance(value, datetime.datetime) else value


def unit(title: str, quantity: str, step: str) -> Place:
    sheet = sheet_of(BOOK, title)
    found = sheet.cell(row_of(sheet, quantity, step), 3)
    assert isinstance(found, Cell)
    return place(found)


class Live:
    """An open book."""

    def __init__(self, office: Office, path: Path) -> None:
        self.office, self.path = office, path
        self.document = office.ask("open", str(path))

    def type(self, cell: Place | str, value: Any) -> None:
        where = cell if isinstance(cell, Place) else Place("Quote", cell, None)
        self.office.ask("fill", self.document, {where.cell: value}, where.sheet)

    def copy_row(self, title: str, row: int, others: dict[int, str]) -> None:
        """Type a row once more, into other rows, each with a code of its own in the first column."""
        filled = [cell for cell in sheet_of(BOOK, title)[row] if cell.value is not None and cell.column > 1]
        cells = {f"A{other}": code for other, code in others.items()}
        cells |= {f"{cell.column_letter}{other}": plain(cell.value) for other in others for cell in filled}
        self.office.ask("fill", self.document, cells, title)

    def grid(self, title: str) -> list[list[Any]]:
        cells: list[list[Any]] = self.office.ask("grid", self.document, title)["cells"]
        return cells

    def errors(self, title: str) -> set[tuple[int, int]]:
        """Rows and columns, counted from 0, of the cells that are errors."""
        areas = self.office.ask("grid", self.document, title)["errors"]
        return {
            found
            for (first_row, first_column), (last_row, last_column) in areas
            for found in itertools.product(
                range(first_row, last_row + 1), range(first_column, last_column + 1)
            )
        }

    def says(self, title: str = "Checks") -> str:
        """All that a sheet says in its first rows, on one line."""
        return " | ".join(str(cell) for row in self.grid(title)[:80] for cell in row if cell)

    def well(self) -> bool:
        return all(ALL_WELL in self.says(title) for title in LIVE_SHEETS)

    def saved(self, path: Path) -> Path:
        self.office.ask("save", self.document, str(path))
        return path

    def close(self) -> None:
        self.office.ask("close", self.document)


def opened(office: Office, folder: Path, name: str = "book.xlsx") -> Live:
    path = folder / name
    path.write_bytes(demo_book().read_bytes())
    path.chmod(0o644)
    return Live(office, path)


def agree(live: Live, chosen: str, folder: Path) -> None:
    """Every table of the live sheets is that of the command line for the book as it is saved now."""
    mill = read_book(live.saved(folder / "saved.xlsx"))
    grids = {title: live.grid(title) for title in LIVE_SHEETS}
    worked: dict[str, Result] = {}
    for placed in ARRAYS:
        expected = must_show(mill, placed, chosen, worked)
        for mine, other in zip(shown(grids[placed.title], placed.area), expected, strict=True):
            for cell, wanted in zip(mine, other, strict=True):
                if isinstance(wanted, float):
                    assert cell == pytest.approx(wanted, rel=1e-9, abs=1e-12), placed
                else:
                    assert cell == wanted, placed
