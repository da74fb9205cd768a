"""What Excel calls, without anything of Excel or xlwings in it.

Every argument arrives as a block of rows, also that of one cell; nothing for an argument that is left out.
An empty cell is nothing, a number is a float whatever the decimal sign on the screen, a truth value is one.
So an empty cell is seen, unlike in LibreOffice. A number that Excel shows as money or as a date is refused
where it arrives as such; the VBA module of `costing.front_ends.excel.vba` hands over the plain number.

An error in a cell, such as #DIV/0!, would arrive as nothing, as if the cell were empty, and a default would
take its place. The functions ask for its text instead and refuse it, wherever in a block it stands. An error
that xlwings has no text for arrives as a whole number of Excel's own range of codes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, Callable

from costing.book.quantity_cell import is_error
from costing.formulas.cell_calls import caller, full_name, reason
from costing.formulas.cell_function import BLOCK, CellFunction, Parameter
from costing.formulas.cell_reading import cells_of, text_of
from costing.formulas.functions import reason_for
from costing.formulas.registry import cell_functions
from costing.quantities import InputError, label

FIRST_ERROR_CODE = -2146828288  # hexadecimal 800A0000, to which an error of Excel adds its number
ERROR_CODES = range(FIRST_ERROR_CODE, FIRST_ERROR_CODE + 0x10000)
MEND = "mend that cell first"


def method(name: str) -> Callable[..., Any]:
    """The function under the name of a formula; a refused call raises `InputError`.

    Examples
    --------
    >>> method("WARP_CARRIED_BY_LIQUOR")([[0.75]], [[2.0, "g/L"]], None)
    1.5
    >>> method("WARP_CARRIED_BY_LIQUOR")([[0.75]], [["#DIV/0!"]])
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: WARP_CARRIED_BY_LIQUOR: concentration is the error #DIV/0!; \
mend that cell first
    """
    function = cell_functions()[name]
    if function.function is reason_for:
        return why
    called = caller(name)

    def given_cells(*blocks: Any) -> Any:
        return handed_back(name, called(*cells(function, blocks)))

    return given_cells


def why(name: Any = None, *blocks: Any) -> str:
    """The reason behind an error, also where that is an error in a cell that was handed over.

    Examples
    --------
    >>> why([["WARP_CARRIED_BY_LIQUOR"]], [[0.75]], [["2 g/m2"]])[:69]
    "WARP_CARRIED_BY_LIQUOR: concentration has the unit 'g/m2', which meas"
    >>> why([["carried_by_liquor"]], [[0.75]], [["2 g/L"]])
    ''
    >>> why([["carried_by_liquor"]], [[0.75]], [["#N/A"]])
    'WARP_CARRIED_BY_LIQUOR: concentration is the error #N/A; mend that cell first'
    """
    asked = cell_functions()["WARP_REASON_FOR"]
    wanted = full_name(text_of(cells(asked, (name,))[0], "name", asked.name))
    if not wanted:
        raise InputError(asked.name, "name is empty; accepted is the name of a formula")
    try:
        given = cells(cell_functions().get(wanted, asked), blocks)
    except InputError as error:
        return str(error)
    return reason(wanted, given)


def cells(function: CellFunction, blocks: Sequence[Any]) -> list[Any]:
    """The arguments as every program hands them over.

    Raises
    ------
    InputError
        An error in a cell.

    Examples
    --------
    >>> cells(cell_functions()["WARP_CARRIED_BY_LIQUOR"], ([[0.75]], [[2.0], ["g/L"]], [[None]], None))
    [0.75, ((2.0,), ('g/L',)), None, None]
    """
    parameters = function.parameters or (Parameter("argument", ""),)
    return [
        _cell(function.name, parameters[min(place, len(parameters) - 1)], block)
        for place, block in enumerate(blocks)
    ]


def handed_back(name: str, result: Any) -> Any:
    """A result as xlwings takes it: one value, or a list of rows of the same length.

    Raises
    ------
    InputError
        A number that is none, which xlwings would write as an empty text.
    """
    if not isinstance(result, (list, tuple)):
        return _value(name, result)
    rows = [[_value(name, value) for value in row] for row in cells_of(result)]
    width = max((len(row) for row in rows), default=0)
    return [row + [None] * (width - len(row)) for row in rows]


def _cell(name: str, parameter: Parameter, block: Any) -> Any:
    if not isinstance(block, (list, tuple)):
        return _without_error(name, parameter, block)
    rows = tuple(tuple(row) for row in cells_of(block))
    alone = [len(row) for row in rows] == [1]
    for row, cells_of_row in enumerate(rows, start=1):
        for column, cell in enumerate(cells_of_row, start=1):
            _without_error(name, parameter, cell, "" if alone else f" in its row {row}, column {column}")
    if parameter.kind == BLOCK:  # as LibreOffice hands it over, so that a book has one mark in both
        return tuple(tuple("" if cell is None else cell for cell in row) for row in rows)
    return rows[0][0] if alone else rows


def _without_error(name: str, parameter: Parameter, cell: Any, place: str = "") -> Any:
    code = isinstance(cell, int) and cell in ERROR_CODES
    if code or is_error(cell):
        said = f"number {cell - FIRST_ERROR_CODE} of Excel" if code else cell.strip()
        raise InputError(
            name, f"{label(parameter.name)} {'holds' if place else 'is'} the error {said}{place}; {MEND}"
        )
    return cell


def _value(name: str, value: Any) -> Any:
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        if not math.isfinite(value):
            raise InputError(name, "the result is not a number")
        return float(value)
    return value
