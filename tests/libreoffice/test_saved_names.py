"""A book that LibreOffice has saved gets its plain names back, and calculates as before."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.formula import ArrayFormula

from costing.front_ends.workbook.formula_names import repair_names
from tests.libreoffice.conftest import running
from tests.libreoffice.office import Office

FORMULAS = {
    "C1": "=WARP_CARRIED_BY_LIQUOR(A1,B1)",
    "C2": '=SUM(C1,WARP_CARRIED_BY_LIQUOR(A1,"4 g/L"))',
    "C3": '=IF(C1>0,"WARP.WARP_MOLAR_MASS(1)",WARP_REASON_FOR("WARP_CARRIED_BY_LIQUOR",A1,B1))',
    "C4": '=WARP_MOLAR_MASS("NaOH")+WARP_MOLAR_MASS("H2O")',
    "C5": "=SUM(A1:B1)",
}
ARRAY = ("D1:E6", "=WARP_HYDROSULFITE_BY_DIP(6,80,90,2)")
AREA = [f"{column}{row}" for row in range(1, 7) for column in "CDE"]
SPACE = re.compile(r"(?<=,) ")


@pytest.fixture(scope="module")
def without_extension() -> Iterator[Office]:
    yield from running("none")


def written(path: Path) -> Path:
    book = Workbook()
    page = book.worksheets[0]
    page["A1"], page["B1"] = 0.75, 2.0
    for address, formula in FORMULAS.items():
        page[address] = formula
    page["D1"] = ArrayFormula(*ARRAY)
    book.save(path)
    path.chmod(0o644)
    return path


def values(office: Office, path: Path) -> list[tuple[float, str, int]]:
    document = office.ask("open", str(path))
    office.ask("calculate", document)
    found = office.ask("read", document, AREA)
    office.ask("close", document)
    return [(cell["value"], cell["text"], cell["error"]) for cell in found]


def saved(office: Office, path: Path) -> Path:
    document = office.ask("open", str(path))
    target = path.with_name("saved.xlsx")
    office.ask("save", document, str(target))
    office.ask("close", document)
    return target


def formulas(path: Path) -> dict[str, str]:
    page = load_workbook(io.BytesIO(path.read_bytes())).worksheets[0]
    found = {address: page[address].value for address in FORMULAS}
    return {address: SPACE.sub("", formula) for address, formula in found.items()}


@pytest.mark.parametrize("suffix", [".xlsx", ".ods"])
def test_names_saved_by_libreoffice_become_plain_and_calculate(
    bundled: Office, tmp_path: Path, suffix: str
) -> None:
    path = written(tmp_path / "plain.xlsx")
    expected = values(bundled, path)
    assert [error for *_, error in expected] == [0] * len(AREA)
    office_file = tmp_path / f"round{suffix}"
    document = bundled.ask("open", str(path))
    bundled.ask("save", document, str(office_file))
    bundled.ask("close", document)
    file = saved(bundled, office_file)  # .ods -> .xlsx, or .xlsx once more

    done = repair_names(file, tmp_path / "repaired.xlsx")
    repaired = done.written
    assert repaired is not None
    assert formulas(repaired) == FORMULAS
    page = load_workbook(io.BytesIO(repaired.read_bytes())).worksheets[0]
    assert (page["D1"].value.ref, page["D1"].value.text) == ARRAY
    with zipfile.ZipFile(file) as book:
        if b"WARP.WARP_CARRIED" in book.read("xl/worksheets/sheet1.xml"):  # LibreOffice before version 25
            assert done.changed == {"Sheet": 5}
    assert values(bundled, repaired) == expected
    assert repair_names(repaired).changed == {}


def test_names_saved_without_the_extension(
    bundled: Office, without_extension: Office, tmp_path: Path
) -> None:
    path = written(tmp_path / "plain.xlsx")
    expected = values(bundled, path)
    file = saved(without_extension, path)
    with zipfile.ZipFile(file) as book:
        assert b"warp_carried_by_liquor" in book.read("xl/worksheets/sheet1.xml")
    repaired = repair_names(file, tmp_path / "repaired.xlsx").written
    assert repaired is not None
    assert formulas(repaired) == FORMULAS
    assert values(bundled, repaired) == expected


def test_a_path_of_an_add_in_on_its_way_through_libreoffice(bundled: Office, tmp_path: Path) -> None:
    """Calc reads the mark behind the path of an add-in as the operator of an intersection."""
    path = tmp_path / "path.xlsx"
    book = Workbook()
    page = book.worksheets[0]
    for row, add_in in enumerate(("[1]!", r"'C:\the mill\warp.xlam'!", "warp.xlam!"), start=1):
        page[f"A{row}"] = f'={add_in}WARP_MOLAR_MASS("NaOH")'
    book.save(path)
    repaired = repair_names(saved(bundled, path), tmp_path / "repaired.xlsx").written
    assert repaired is not None
    page = load_workbook(io.BytesIO(repaired.read_bytes())).worksheets[0]
    assert [page[f"A{row}"].value for row in (1, 2, 3)] == ['=WARP_MOLAR_MASS("NaOH")'] * 3
    document = bundled.ask("open", str(repaired))
    bundled.ask("calculate", document)
    found = bundled.ask("read", document, ["A1", "A2", "A3"])
    bundled.ask("close", document)
    assert [cell["value"] for cell in found] == pytest.approx([39.997] * 3)
