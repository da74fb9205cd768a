"""Results that LibreOffice works out for a book, and what is seen of them without the extension."""

from __future__ import annotations

import io
import shutil
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.formula import ArrayFormula

from costing.formulas.registry import FORMULAS, cell_functions
from costing.front_ends import calculated, programs
from costing.front_ends.calculated import calculated_by_libreoffice
from costing.front_ends.workbook.cached_values import Value, formula_cells, with_values
from costing.quantities import InputError
from tests.libreoffice.conftest import running
from tests.libreoffice.office import Office, call_text, is_there

FIFTEEN_DIGITS = 1e-14  # as many as LibreOffice writes into an .xlsx file
WRONG = -999.0

needs_libreoffice = pytest.mark.skipif(
    not is_there(), reason="LibreOffice with its Python bridge is not installed"
)


@pytest.fixture(scope="module")
def without_extension() -> Iterator[Office]:
    yield from running("none")


def made() -> bytes:
    book = Workbook()
    page = book.worksheets[0]
    page.title = "Quote"
    page["A1"], page["A2"], page["B2"] = 0.75, 2.0, "g/L"
    page["C1"] = "=WARP_CARRIED_BY_LIQUOR(A1,A2:B2)"
    page["C2"] = "=SUM(C1,1)"
    page["C3"] = "=SUM(A1:A2)"
    page["C4"] = '=IF(C1>1,"dear","")'
    page["C5"] = '=IF(C1<1,"dear","")'
    page["C6"] = "=C1>1"
    page["C7"] = '=WARP_CARRIED_BY_LIQUOR(A1,"much")'
    page["C8"] = '=WARP_REASON_FOR("WARP_CARRIED_BY_LIQUOR",A1,"much")'
    page["E1"] = ArrayFormula("E1:F6", "=WARP_HYDROSULFITE_BY_DIP(6,80,90,2)")
    page["G1"] = "=SUM(F1:F6)"
    book.create_sheet("Second")["A1"] = "=Quote!C2*2"
    raw = io.BytesIO()
    book.save(raw)
    return raw.getvalue()


def expected() -> dict[str, dict[str, Value]]:
    dips = cell_functions()["WARP_HYDROSULFITE_BY_DIP"].function(6.0, 80.0, 90.0, 2.0)
    reason = cell_functions()["WARP_REASON_FOR"].function("WARP_CARRIED_BY_LIQUOR", 0.75, "much")
    found: dict[str, Value] = {
        "C1": 1.5,
        "C2": 2.5,
        "C3": 2.75,
        "C4": "dear",
        "C5": None,
        "C6": True,
        "C7": "#VALUE!",
        "C8": reason,
        "G1": sum(row[1] for row in dips),
    }
    for row, (dip, concentration) in enumerate(dips, start=1):
        found[f"E{row}"], found[f"F{row}"] = dip, concentration
    return {"Quote": found, "Second": {"A1": 5.0}}


def check(found: dict[str, dict[str, Value]]) -> None:
    wanted = expected()
    assert {title: set(cells) for title, cells in found.items()} == {
        title: set(cells) for title, cells in wanted.items()
    }
    for title, cells in wanted.items():
        for address, value in cells.items():
            if isinstance(value, float):
                assert found[title][address] == pytest.approx(value, rel=FIFTEEN_DIGITS), address
            else:
                assert found[title][address] == value, address


@needs_libreoffice
def test_every_result_is_worked_out(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    content = made()
    path.write_bytes(content)
    check(calculated_by_libreoffice(path))
    assert path.read_bytes() == content
    assert [entry.name for entry in tmp_path.iterdir()] == ["book.xlsx"]


@needs_libreoffice
def test_results_that_the_book_holds_are_not_believed(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    wrong = {title: dict.fromkeys(cells, WRONG) for title, cells in formula_cells(made()).items()}
    path.write_bytes(with_values(made(), wrong))
    check(calculated_by_libreoffice(path))


@needs_libreoffice
def test_every_formula_of_a_number_as_python_gives_it(tmp_path: Path) -> None:
    book = Workbook()
    page = book.worksheets[0]
    wanted = {}
    for row, name in enumerate(FORMULAS, start=1):
        function = cell_functions()[name]
        page[f"A{row}"] = call_text(name, function.example).replace(";", ",")
        wanted[f"A{row}"] = function.function(*function.example)
    assert len(wanted) > 60
    path = tmp_path / "book.xlsx"
    book.save(path)
    found = calculated_by_libreoffice(path)["Sheet"]
    assert found == {address: pytest.approx(value, rel=FIFTEEN_DIGITS) for address, value in wanted.items()}


def test_without_the_extension_results_are_seen_but_for_arrays(
    without_extension: Office, tmp_path: Path
) -> None:
    """As they stand in the file, until somebody calculates anew; an error is worked out at once."""
    path = tmp_path / "live.xlsx"
    path.write_bytes(with_values(made(), expected()))
    cells = [address for address in expected()["Quote"] if address[0] == "C"]
    document = without_extension.ask("open", str(path))
    found = without_extension.ask("read", document, cells)
    arrays = without_extension.ask("read", document, ["E1", "F6"])
    total = without_extension.ask("read", document, ["G1"])
    without_extension.ask("close", document)
    for address, cell in zip(cells, found, strict=True):
        value = expected()["Quote"][address]
        if isinstance(value, (float, bool)):
            assert cell["value"] == pytest.approx(float(value), rel=FIFTEEN_DIGITS), address
        else:
            assert cell["text"] == ("#NAME?" if value == "#VALUE!" else value or ""), address
    assert {cell["text"] for cell in arrays} == {"#NAME?"}
    assert total[0]["value"] == pytest.approx(expected()["Quote"]["G1"], rel=FIFTEEN_DIGITS)


def test_with_the_extension_wrong_results_are_replaced_where_a_formula_of_ours_feeds_them(
    bundled: Office, tmp_path: Path
) -> None:
    path = tmp_path / "wrong.xlsx"
    wrong = {title: dict.fromkeys(cells, WRONG) for title, cells in formula_cells(made()).items()}
    path.write_bytes(with_values(made(), wrong))
    document = bundled.ask("open", str(path))
    found = bundled.ask("read", document, ["C1", "C2", "F1", "G1"])
    bundled.ask("close", document)
    wanted = expected()["Quote"]
    for address, cell in zip(("C1", "C2", "F1", "G1"), found, strict=True):
        assert cell["value"] == pytest.approx(wanted[address], rel=FIFTEEN_DIGITS), address


def fake(folder: Path, program: str) -> Path:
    path = folder / "soffice"
    path.write_text(f"#!/bin/sh\n{program}\n", encoding="utf-8")
    path.chmod(path.stat().st_mode | stat.S_IXUSR)
    return path


@pytest.mark.parametrize(
    ("program", "said"),
    [
        ("sleep 60 & sleep 60", "LibreOffice has not answered"),
        ("echo 'source file could not be loaded'", "gave no workbook: source file could not be loaded"),
        ("exit 3", "gave no workbook: 3"),
    ],
)
def test_a_libreoffice_that_fails_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, program: str, said: str
) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(made())
    monkeypatch.setattr(calculated, "libreoffice", lambda: fake(tmp_path, program))
    with pytest.raises(InputError) as caught:
        calculated_by_libreoffice(path, seconds=0.5)
    assert said in str(caught.value)
    assert "\n" not in str(caught.value)


def test_without_libreoffice_it_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(InputError, match="LibreOffice: is not installed"):
        calculated_by_libreoffice(tmp_path / "book.xlsx")


@needs_libreoffice
def test_also_from_within_a_virtual_environment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    python = tmp_path / "venv" / "bin" / "python3"
    python.parent.mkdir(parents=True)
    (tmp_path / "venv" / "pyvenv.cfg").write_text("home = /usr/bin\n", encoding="utf-8")
    system = shutil.which("python3", path="/usr/bin")
    assert system is not None
    python.symlink_to(system)
    monkeypatch.setenv("PATH", f"{python.parent}:/usr/bin:/bin")
    monkeypatch.setenv("VIRTUAL_ENV", str(tmp_path / "venv"))
    assert programs.disturbing_python() == python
    path = tmp_path / "book.xlsx"
    path.write_bytes(made())
    check(calculated_by_libreoffice(path))
