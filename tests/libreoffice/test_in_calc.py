"""The formulas typed in cells of a headless LibreOffice Calc."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook

from costing.formulas.cell_calls import reason
from costing.formulas.cell_function import ARRAY, NUMBER, TEXT
from costing.formulas.functions import HEAVY
from costing.formulas.registry import FORMULAS, LOOK_UPS, OF_BOOK, cell_functions
from tests.libreoffice.office import Office, call_text

VALUE_ERROR = 519
RELATIVE = 1e-12


@pytest.fixture
def sheet(bundled: Office) -> Iterator[int]:
    document: int = bundled.ask("new")
    yield document
    bundled.ask("close", document)


def typed(office: Office, document: int, cells: dict[str, Any], *addresses: str) -> list[dict[str, Any]]:
    """Fill cells, and read those asked for."""
    office.ask("fill", document, cells)
    found: list[dict[str, Any]] = office.ask("read", document, addresses)
    return found


def number(office: Office, document: int, address: str, sheet: int = 0) -> float:
    (cell,) = office.ask("read", document, [address], sheet)
    assert cell["error"] == 0, cell
    return float(cell["value"])


def test_every_formula_gives_what_python_gives(either: Office) -> None:
    document = either.ask("new")
    names = list(FORMULAS)
    cells = {
        f"A{row}": call_text(name, cell_functions()[name].example) for row, name in enumerate(names, start=1)
    }
    found = typed(either, document, cells, *cells)
    either.ask("close", document)
    for name, cell in zip(names, found, strict=True):
        assert cell["error"] == 0, (name, cell)
        formula = FORMULAS[name]
        assert cell["value"] == pytest.approx(formula.calculate(formula.example), rel=RELATIVE, abs=0), name


def test_every_other_function_gives_what_python_gives(either: Office) -> None:
    document = either.ask("new")
    for name, function in LOOK_UPS.items():
        text = call_text(name, function.example)
        expected = function.function(*function.example)
        if function.result == ARRAY:
            area = f"A1:{'ABCDE'[len(expected[0]) - 1]}{len(expected)}"
            assert either.ask("array", document, area, text) == [list(row) for row in expected], name
            continue
        (cell,) = typed(either, document, {"G1": text}, "G1")
        assert cell["error"] == 0, (name, cell)
        if function.result == NUMBER:
            assert cell["value"] == pytest.approx(expected, rel=RELATIVE, abs=0), name
        elif name != "WARP_PROGRAM_INTERPRETER":  # LibreOffice runs a Python of its own
            assert function.result == TEXT
            assert cell["text"] == expected, name
    either.ask("close", document)


def test_no_large_library_is_loaded_into_libreoffice(bundled: Office, sheet: int) -> None:
    (cell,) = typed(bundled, sheet, {"A1": "=WARP_PROGRAM_INTERPRETER()"}, "A1")
    assert cell["text"].startswith("Python 3.")
    assert cell["text"].endswith("loaded beside it: nothing")
    assert not [name for name in HEAVY if name in cell["text"]]


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ('=WARP_CARRIED_BY_LIQUOR(0.75;"2 g/L")', 1.5),
        ('=WARP_CARRIED_BY_LIQUOR("0.75 L/kg";" 2  g / L ")', 1.5),
        ('=WARP_CARRIED_BY_LIQUOR(0.75;"2e-3 kg/L")', 1.5),
        ('=WARP_CARRIED_BY_LIQUOR(0.75;2;"%")', 0.15),
        ("=WARP_CARRIED_BY_LIQUOR(0.75;A1:B1)", 1.5),
        ("=WARP_CARRIED_BY_LIQUOR(0.75;C1:C2)", 1.5),
        ("=WARP_CARRIED_BY_LIQUOR(0.75;A1)", 1500.0 / 1000.0),
        ("=WARP_CARRIED_BY_LIQUOR(0.75;A1:B1;B2)", 1.5),
        ("=WARP_CARRIED_BY_LIQUOR(0.75;A1:B1;B3)", 0.0015),
        ('=WARP_DELIVERED_FROM_PURE(66.4;"88 %")', 66.4 / 0.88),
        ('=WARP_DELIVERED_FROM_PURE(66.4;"88%";"lb")', 66.4 / 0.88 / 0.45359237),
        ('=WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT("7 Ne")', 0.45359237e6 / (7 * 840 * 0.9144)),
        ('=WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT("84.4 tex")', 84.4),
        ("=WARP_BONE_DRY_MASS()", 1 / 1.085),
        ("=WARP_BONE_DRY_MASS(B2:B2)", 1 / 1.085),
        ('=WARP_BONE_DRY_MASS("0 %")', 1.0),
        ('=WARP_BONE_DRY_MASS(;"g/kg")', 1000 / 1.085),
        ('=WARP_MOLAR_MASS("NaOH";"kg/mol")', 0.039997),
        ('=SUM(WARP_CARRIED_BY_LIQUOR(0.75;2);WARP_CARRIED_BY_LIQUOR(0.75;"2 g/L"))', 3.0),
    ],
)
def test_units_blocks_and_what_is_left_out(
    bundled: Office, sheet: int, formula: str, expected: float
) -> None:
    cells = {"A1": 2.0, "B1": "g/L", "C1": 0.002, "C2": "kg/L", "B3": "kg/kg", "D1": formula}
    bundled.ask("fill", sheet, cells)
    assert number(bundled, sheet, "D1") == pytest.approx(expected, rel=RELATIVE)


BAD_CALLS = [  # name, arguments as typed, words of the reason
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"1,5 g/L"', "point as the decimal sign"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"1 500 g/L"', "digits without groups"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"2"', "is the text '2'"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"much"', "is the text 'much'"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"2 g/m2"', "which measures something else"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;"2 stone"', "unknown unit 'stone'"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75", "concentration is empty"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;", "concentration is empty"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;Z1:Z2", "concentration is empty"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;A1:B1", "unit of concentration is missing"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;A1:C1", "a block of 1 x 3 cells"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;-1", "is -1 g/L; accepted is 0 to 1000 g/L"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;5000", "is 5000 g/L; accepted is 0 to 1000 g/L"),
    ("WARP_CARRIED_BY_LIQUOR", "0;2", "pick up is 0 L/kg"),
    ("WARP_CARRIED_BY_LIQUOR", 'A2;"2 g/L"', "pick up is the text 'n/a'"),
    ("WARP_CARRIED_BY_LIQUOR", '0.75;2;"tex"', "which measures something else"),
    ("WARP_CARRIED_BY_LIQUOR", "0.75;2;7", "unit of the result is the number 7"),
    ("WARP_DELIVERED_FROM_PURE", "66.4;0.88", "strength is 0.88 %"),
    ("WARP_DELIVERED_FROM_PURE", "66.4;120", "strength is 120 %"),
    ("WARP_RESIDUE_AFTER_BOXES", "2.5;55", "a whole number"),
    ("WARP_RESIDUE_AFTER_BOXES", '"300 %";55', "a pure number, without a unit"),
    ("WARP_BONE_DRY_MASS", "0", "0 or its cell is empty"),
    ("WARP_BONE_DRY_MASS", "Z1", "0 or its cell is empty"),
    ("WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT", '"0 tex"', "is 0 tex"),
    ("WARP_DEFAULT_TYPICAL", '"indigo.nothing"', "which the table does not have"),
    ("WARP_CAUTION_FOR", '"soap"', "which the table does not have"),
    ("WARP_MOLAR_MASS", '"Xx2"', "atomic weight is not known"),
    ("WARP_CONVERTED_VALUE", '1;"g/L";"tex"', "cannot be read as"),
    ("WARP_SUBLOTS_OF_SET", "25000", "sublot length is empty"),
]


def test_a_refused_call_poisons_the_sum_and_its_reason_is_named(bundled: Office, sheet: int) -> None:
    cells: dict[str, Any] = {"A1": 2.0, "C1": "g/L", "A2": "n/a", "D1": 10.0}
    for row, (name, arguments, _) in enumerate(BAD_CALLS, start=11):
        cells[f"E{row}"] = f"={name}({arguments})"
        cells[f"F{row}"] = f'=WARP_REASON_FOR("{name}";{arguments})'
        cells[f"G{row}"] = f"=SUM(D1;E{row})"
    bundled.ask("fill", sheet, cells)
    for row, (name, arguments, words) in enumerate(BAD_CALLS, start=11):
        call, why, total = bundled.ask("read", sheet, [f"E{row}", f"F{row}", f"G{row}"])
        assert call["error"] == VALUE_ERROR, (name, arguments, call)
        assert total["error"] == VALUE_ERROR, (name, arguments, total)
        assert why["error"] == 0, (name, arguments, why)
        assert words in why["text"], (name, arguments, why["text"])
        assert why["text"].startswith(name), why["text"]


def test_the_reason_of_a_call_that_works_is_empty(bundled: Office, sheet: int) -> None:
    for name, function in cell_functions().items():
        if name in OF_BOOK:
            continue
        example = [name, *function.example]
        (cell,) = typed(bundled, sheet, {"A1": call_text("WARP_REASON_FOR", example)}, "A1")
        assert (cell["error"], cell["text"]) == (0, ""), (name, cell)


def test_an_error_in_an_argument_is_passed_on(bundled: Office, sheet: int) -> None:
    cells = {"A1": "=1/0", "B1": "=WARP_CARRIED_BY_LIQUOR(0.75;A1)"}
    (cell,) = typed(bundled, sheet, cells, "B1")
    assert cell["text"] == "#DIV/0!"


def test_too_many_arguments_are_an_error(bundled: Office, sheet: int) -> None:
    (cell,) = typed(bundled, sheet, {"A1": '=WARP_CARRIED_BY_LIQUOR(0.75;2;"%";1)'}, "A1")
    assert cell["error"] != 0
    assert "got 4 arguments" in reason("WARP_CARRIED_BY_LIQUOR", [0.75, 2.0, "%", 1.0])


def test_the_wizard_shows_every_function_in_words(installed: Office) -> None:
    found = {entry["name"]: entry for entry in installed.ask("described")}
    assert set(found) == set(cell_functions())
    for name, function in cell_functions().items():
        entry = found[name]
        assert function.help.rstrip(".") in entry["help"], name
        assert function.gives in entry["help"], name
        assert [item["help"] for item in entry["arguments"]] == [item.help for item in function.parameters]


@pytest.mark.parametrize("suffix", [".ods", ".xlsx"])
def test_names_resolve_after_saving_and_opening_again(bundled: Office, suffix: str) -> None:
    path = str(bundled.folder / f"round{suffix}")
    first = bundled.ask("new")
    cells = {"A1": 0.75, "B1": 2.0, "C1": "=WARP_CARRIED_BY_LIQUOR(A1;B1)", "D1": "=WARP_PROGRAM_VERSION()"}
    bundled.ask("fill", first, cells)
    bundled.ask("save", first, path)
    bundled.ask("close", first)
    second = bundled.ask("open", path)
    assert number(bundled, second, "C1") == 1.5
    bundled.ask("fill", second, {"B1": 4.0})
    assert number(bundled, second, "C1") == 3.0
    bundled.ask("calculate", second)
    assert number(bundled, second, "C1") == 3.0
    bundled.ask("close", second)


def plain_names(path: Path) -> None:
    """An .xlsx file as another program writes it: plain names, and no results."""
    book = Workbook()
    page = book.worksheets[0]
    page["A1"], page["B1"] = 0.75, 2.0
    page["C1"] = "=WARP_CARRIED_BY_LIQUOR(A1,B1)"
    page["C2"] = '=IF(ISERROR(C1),WARP_REASON_FOR("WARP_CARRIED_BY_LIQUOR",A1,B1),"")'
    page["C3"] = '=SUM(C1,warp_carried_by_liquor(A1,"4 g/L"))'
    book.save(path)


def test_plain_names_in_a_file_resolve_when_it_is_opened(either: Office) -> None:
    path = either.folder / "plain.xlsx"
    plain_names(path)
    path.chmod(0o644)
    document = either.ask("open", str(path))
    state = either.ask("state", document)
    assert number(either, document, "C1") == 1.5
    assert number(either, document, "C3") == 4.5
    either.ask("fill", document, {"A1": 5.0})
    call, why, total = either.ask("read", document, ["C1", "C2", "C3"])
    either.ask("close", document)
    assert state == {"modified": False, "undo": [], "names": []}
    assert call["error"] == total["error"] == VALUE_ERROR
    assert "pick up is 5 L/kg" in why["text"]


def test_two_documents_undo_and_a_copied_sheet_are_never_stale(bundled: Office) -> None:
    path = str(bundled.folder / "kept.ods")
    cells = {"A1": 0.75, "B1": 2.0, "C1": "=WARP_CARRIED_BY_LIQUOR(A1;B1)"}
    first, second = bundled.ask("new"), bundled.ask("new")
    for document in (first, second):
        bundled.ask("fill", document, cells)
    bundled.ask("fill", first, {"B1": 4.0})
    assert (number(bundled, first, "C1"), number(bundled, second, "C1")) == (3.0, 1.5)
    bundled.ask("undo", first)
    assert number(bundled, first, "C1") == 1.5
    bundled.ask("redo", first)
    assert number(bundled, first, "C1") == 3.0

    bundled.ask("save", first, path)
    bundled.ask("copy_sheet", first, second)
    assert number(bundled, second, "C1", 0) == 3.0
    bundled.ask("close", first)
    bundled.ask("fill", second, {"B1": 6.0}, 0)
    assert (number(bundled, second, "C1", 0), number(bundled, second, "C1", 1)) == (4.5, 1.5)

    again = bundled.ask("open", path)
    bundled.ask("fill", again, {"B1": 8.0})
    assert number(bundled, again, "C1") == 6.0
    bundled.ask("close", again)
    again = bundled.ask("open", path)  # what was not saved is gone
    assert number(bundled, again, "C1") == 3.0
    bundled.ask("calculate", again)
    assert number(bundled, again, "C1") == 3.0
    bundled.ask("close", again)
    bundled.ask("close", second)


def test_two_profiles_side_by_side(bundled: Office, installed: Office) -> None:
    for office, pick_up in ((bundled, 0.75), (installed, 0.5)):
        document = office.ask("new")
        office.ask("fill", document, {"A1": pick_up, "B1": "=WARP_CARRIED_BY_LIQUOR(A1;2)"})
        assert number(office, document, "B1") == 2 * pick_up
        office.ask("close", document)
