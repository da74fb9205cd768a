"""Every function called as Excel calls it, through xlwings' own converters."""

from __future__ import annotations

import datetime
import decimal
from typing import Any

import pytest

from costing.book.layout import sheet_names
from costing.formulas.book_functions import OPENED
from costing.formulas.cell_calls import called, reason
from costing.formulas.cell_function import ARRAY, BLOCK, NUMBER, VARARGS, CellFunction, Parameter
from costing.formulas.registry import OTHERS, cell_functions
from costing.front_ends.excel.adapter import FIRST_ERROR_CODE, cells, handed_back, method
from costing.quantities import InputError
from tests.book.blocks import demo_blocks, with_cell
from tests.excel.conftest import Excel, RefusedError

RELATIVE = 1e-12
LEFT_OUT = -2147352572  # what Windows sends for an argument that is left out
EMPTY = None
ERRORS = {
    "#NULL!": 2000,
    "#DIV/0!": 2007,
    "#VALUE!": 2015,
    "#REF!": 2023,
    "#NAME?": 2029,
    "#NUM!": 2036,
    "#N/A": 2042,
    "number 2045 of Excel": 2045,  # #SPILL!, which xlwings does not know
    "number 2050 of Excel": 2050,
}


def error(number: int) -> int:
    return FIRST_ERROR_CODE + number


def filled(function: CellFunction, arguments: tuple[Any, ...]) -> list[Any]:
    """Arguments as the generated VBA hands them over: all of them, an empty one where it is left out."""
    places = len([parameter for parameter in function.parameters if parameter.kind != VARARGS])
    return [*arguments, *[EMPTY] * (places - len(arguments))]


@pytest.fixture(scope="module")
def opened(excel: Excel) -> str:
    """The mark of the demo mill's book, opened here and by the functions that Excel calls."""
    blocks = demo_blocks()
    sheets = [blocks[name] for name in sheet_names()]
    mark = called("WARP_OPENED_BOOK", sheets)
    assert excel.call("WARP_OPENED_BOOK", sheets) == mark
    return str(mark)


def example(name: str, opened: str) -> tuple[Any, ...]:
    """Arguments of a call that works."""
    if name == "WARP_OPENED_BOOK":
        blocks = demo_blocks()
        return tuple(blocks[sheet] for sheet in sheet_names())
    return tuple(opened if cell == OPENED else cell for cell in cell_functions()[name].example)


def same(found: Any, expected: Any) -> None:
    if isinstance(expected, float):
        assert found == pytest.approx(expected, rel=RELATIVE, abs=0)
        assert isinstance(found, float)
    else:
        assert found == expected


@pytest.mark.parametrize("name", cell_functions())
def test_every_example_gives_what_python_gives(excel: Excel, opened: str, name: str) -> None:
    function = cell_functions()[name]
    arguments = example(name, opened)
    expected = called(name, arguments)
    found = excel.call(name, filled(function, arguments))
    if name == "WARP_PROGRAM_INTERPRETER":
        assert found.startswith("Python 3.")
        assert found.endswith("xlwings")
    elif function.result == ARRAY:
        assert len(found) == len(expected)
        for row, wanted in zip(found, expected, strict=True):
            assert len(row) == len(wanted) > 1
            for value, cell in zip(row, wanted, strict=True):
                same(value, float(cell) if isinstance(cell, int) else cell)
    else:
        same(found, expected)
        assert isinstance(found, float if function.result == NUMBER else str)
    assert excel.call("WARP_REASON_FOR", [name, *filled(function, arguments)]) == ""


@pytest.mark.parametrize("name", [name for name, function in cell_functions().items() if function.example])
def test_a_reference_gives_what_a_value_gives(excel: Excel, opened: str, name: str) -> None:
    function = cell_functions()[name]
    arguments = example(name, opened)
    blocks = tuple([[cell]] for cell in arguments)
    assert excel.call(name, filled(function, blocks)) == excel.call(name, filled(function, arguments))


@pytest.mark.parametrize(
    ("name", "arguments", "expected"),
    [
        ("WARP_CARRIED_BY_LIQUOR", (0.75, "2 g/L", EMPTY), 1.5),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0, "g/L"]], EMPTY), 1.5),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0], ["g/L"]], EMPTY), 1.5),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [2.0, "g/L"], EMPTY), 1.5),  # how {2,"g/L"} in a formula arrives
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0, "g/L"]], "%"), 0.15),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[0.002, "kg/L"]], [["kg/kg"]]), 0.0015),
        ("WARP_BONE_DRY_MASS", (EMPTY, EMPTY), 1 / 1.085),
        ("WARP_BONE_DRY_MASS", (LEFT_OUT, LEFT_OUT), 1 / 1.085),
        ("WARP_BONE_DRY_MASS", ("", ""), 1 / 1.085),
        ("WARP_BONE_DRY_MASS", ([[EMPTY, "%"]], EMPTY), 1 / 1.085),
        ("WARP_BONE_DRY_MASS", (0.0, "g/kg"), 1000.0),  # a 0 is no empty cell
        ("WARP_MOLAR_MASS", ("NaOH", "kg/mol"), 0.039997),
        ("WARP_CONVERTED_VALUE", (7.0, "Ne", "tex"), 0.45359237e6 / (7 * 840 * 0.9144)),
        (
            "WARP_PUBLISHED_LOW",
            ([["water_rope_usual"]], EMPTY),
            called("WARP_PUBLISHED_LOW", ["water_rope_usual"]),
        ),
    ],
)
def test_units_blocks_and_what_is_left_out(
    excel: Excel, name: str, arguments: tuple[Any, ...], expected: float
) -> None:
    same(excel.call(name, arguments), pytest.approx(expected, rel=RELATIVE))


@pytest.mark.parametrize(
    ("name", "arguments", "words"),
    [
        ("WARP_CARRIED_BY_LIQUOR", (0.75, "1,5 g/L", EMPTY), "point as the decimal sign"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, "2 g/m2", EMPTY), "measures something else"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, "2 stone", EMPTY), "unknown unit"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, -2.0, EMPTY), "accepted is 0 to 1000 g/L"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, EMPTY, EMPTY), "concentration is empty"),
        ("WARP_CARRIED_BY_LIQUOR", (LEFT_OUT, 2.0, EMPTY), "pick up is empty"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, True, EMPTY), "TRUE"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0, EMPTY]], EMPTY), "unit of concentration is missing"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0, 3.0]], EMPTY), "concentration"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0, 3.0], [1.0, 1.0]], EMPTY), "block of 2 x 2"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, [[2.0], [3.0], [4.0]], EMPTY), "block of 3 x 1"),
        ("WARP_CARRIED_BY_LIQUOR", (0.75, 2.0, 7.0), "unit of the result"),
        ("WARP_RESIDUE_AFTER_BOXES", (2.5, 80.0, EMPTY), "whole"),
        ("WARP_MOLAR_MASS", ("Xx", EMPTY), "formula"),
        ("WARP_CAUTION_FOR", ("nothing_known",), "nothing_known"),
        ("WARP_SUBLOTS_OF_SET", (EMPTY, 10000.0, EMPTY), "set length is empty"),
    ],
)
def test_bad_input_raises_and_the_reason_says_why(
    excel: Excel, name: str, arguments: tuple[Any, ...], words: str
) -> None:
    with pytest.raises(RefusedError, match=words) as refused:
        excel.call(name, arguments)
    assert excel.call("WARP_REASON_FOR", (name, *arguments)) == str(refused.value)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize("name", [name for name, function in cell_functions().items() if function.parameters])
def test_an_error_in_any_cell_is_an_error_in_the_result(excel: Excel, name: str) -> None:
    function = cell_functions()[name]
    arguments = filled(function, function.example)
    for place, parameter in enumerate(function.parameters):
        what = parameter.name.replace("_", " ")
        for said, number in list(ERRORS.items())[:: 1 if name == "WARP_BONE_DRY_MASS" else 4]:
            for bad in (error(number), [[error(number)]], [[1.0, error(number)]]):
                given = [*arguments[:place], bad, *arguments[place + 1 :]]
                if name == "WARP_REASON_FOR" and place:
                    found = excel.call(name, given)
                else:
                    with pytest.raises(RefusedError) as refused:
                        excel.call(name, given)
                    found = str(refused.value)
                    assert found.startswith(f"{name}: {what} ")
                    if name != "WARP_REASON_FOR":
                        assert excel.call("WARP_REASON_FOR", [name, *given]) == found
                assert f" the error {said}" in found


def test_a_book_with_an_error_in_a_cell_is_not_opened(excel: Excel) -> None:
    blocks = demo_blocks()
    sheets = [blocks[name] for name in sheet_names()]
    sheets[1] = with_cell(sheets[1], "B5", error(2007))
    with pytest.raises(RefusedError, match=r"holds the error #DIV/0! in its row 5, column 2; mend"):
        excel.call("WARP_OPENED_BOOK", sheets)


def test_the_reason_counts_what_was_typed(excel: Excel) -> None:
    for name in ("WARP_CARRIED_BY_LIQUOR", "WARP_MOLAR_MASS", "WARP_PROGRAM_VERSION"):
        arguments = ["NaOH", EMPTY, EMPTY, EMPTY]
        assert excel.call("WARP_REASON_FOR", (name, *arguments)) == reason(name, arguments) != ""
    with pytest.raises(RefusedError, match="name is empty"):
        excel.call("WARP_REASON_FOR", (EMPTY,))
    assert "is not a formula" in excel.call("WARP_REASON_FOR", ("WARP_NOTHING", 1.0))


@pytest.mark.parametrize("value", [decimal.Decimal("1.5"), datetime.datetime(2025, 1, 6), True])
def test_money_and_dates_as_excel_shows_them_are_refused(value: object) -> None:
    with pytest.raises(InputError, match="concentration is"):
        method("WARP_CARRIED_BY_LIQUOR")([[0.75]], [[value]])


def test_a_block_stays_a_block() -> None:
    block = CellFunction("WARP_X", print, (Parameter("book", "", BLOCK),), ARRAY, "", "", "", ())
    assert cells(block, ([[1.0]],)) == [((1.0,),)]
    assert cells(block, ([[1.0, None], ["a", True]],)) == [((1.0, ""), ("a", True))]
    with pytest.raises(InputError, match=r"book holds the error #REF! in its row 2, column 1"):
        cells(block, ([[1.0, None], ["#REF!", 2.0]],))


def test_rows_go_back_in_one_width() -> None:
    assert handed_back("WARP_X", ((1, "a"), (2.5,), (None, True))) == [[1.0, "a"], [2.5, None], [None, True]]
    with pytest.raises(InputError, match="not a number"):
        handed_back("WARP_X", ((1.0, float("nan")),))
    with pytest.raises(InputError, match="not a number"):
        handed_back("WARP_X", float("inf"))


def test_no_other_function_gives_anything_else(opened: str) -> None:
    for name, function in OTHERS.items():
        found = handed_back(name, called(name, example(name, opened)))
        assert isinstance(found, {"number": float, "text": str, "array": list}[function.result]), name
