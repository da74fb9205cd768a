"""A book that a spreadsheet program has saved is the same book."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from tests.workbook.editing import changed, column_cell, table_cell

SOFFICE = shutil.which("soffice")


def saved_by_the_program(path: Path, folder: Path) -> Path:
    assert SOFFICE is not None
    log = (folder / "log.txt").open("wb")
    with log:
        subprocess.run(
            [
                *(SOFFICE, "--headless", f"-env:UserInstallation={(folder / 'profile').as_uri()}"),
                *(
                    "--convert-to",
                    "xlsx:Calc MS Excel 2007 XML",
                    "--outdir",
                    str(folder / "saved"),
                    str(path),
                ),
            ],
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            check=True,
            timeout=180,
        )
    return folder / "saved" / path.name


@pytest.mark.skipif(SOFFICE is None, reason="LibreOffice is not installed")
def test_values_places_and_formulas_survive_libreoffice(tmp_path: Path) -> None:
    def edit(book: Workbook) -> None:
        column_cell(book, "Recipes", "DARK-POWDER", "bath indigo", "indigo dyeing").value = "=2+0.4"
        first = table_cell(book, "Enquiries", "Q-01", "Order length").coordinate
        table_cell(book, "Enquiries", "Q-02", "Order length").value = f"=5*{first}"

    saved = saved_by_the_program(changed(tmp_path, edit), tmp_path)
    assert read_book(saved) == read_book(demo_book())
