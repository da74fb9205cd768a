"""List every function of a cell, say what one takes, and calculate it from the command line."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

from costing.book.quantity_cell import read_quantity
from costing.formulas.cell_calls import called, full_name
from costing.formulas.cell_formula import RESULT_UNIT
from costing.formulas.cell_function import ARRAY, VARARGS, CellFunction
from costing.formulas.registry import FORMULAS, LOOK_UPS, OF_BOOK, cell_functions, find
from costing.quantities import InputError, describe, label, listed, meant, quantity
from costing.report import Column, Table


def formula_table(word: str | None, brief: bool = False) -> Table:
    """The functions of a cell, or those whose name, group or help holds a word; `brief` to fit a screen."""
    rows: list[list[Any]] = []
    for name, function in cell_functions().items():
        if word and word.lower() not in f"{name} {function.group} {function.help}".lower():
            continue
        takes = ", ".join(
            parameter.name for parameter in function.parameters if parameter.name != "result_unit"
        )
        rows.append([function.group, name, takes, _gives(name, function), function.help])
    if not rows:
        raise InputError("list", f"no formula holds {word!r}; `costing list` shows all")
    columns = [Column("Group"), Column("Name"), Column("Takes"), Column("Gives"), Column("What it is")]
    if brief:
        columns = [columns[1], columns[3], columns[4]]
        rows = [[row[1], row[3], row[4]] for row in rows]
    return Table("formulas", "Formulas", "costing calculate NAME shows units and ranges.", columns, rows)


def _gives(name: str, function: CellFunction) -> str:
    """Unit of the answer, or what it is where it is no number."""
    return quantity(FORMULAS[name].result).usual if name in FORMULAS else function.gives


def calculated(name: str, values: Iterable[str], unit: str | None, as_json: bool) -> str:
    """Text of a calculated function, or of what it takes when no value is given.

    Raises
    ------
    InputError
        An unknown function, argument or unit, or a value that is refused.
    """
    full = full_name(name)
    if full in OF_BOOK:
        raise InputError(
            full,
            "asks a book that cells have opened; on the command line `costing quote` and `costing ledger` do",
        )
    if full in LOOK_UPS:
        return _looked_up(full, list(values), unit, as_json)
    formula = find(name)
    given: dict[str, tuple[float, str]] = {}
    for argument, value, text in _pairs(values, [item.name for item in formula.arguments]):
        number, _, unit_text = value.partition(" ")
        item = quantity(argument)
        house = read_quantity(_number(number, text), unit_text.strip() or item.usual, argument, text)
        given[argument] = (house, item.unit)
    if not given:
        return _signature(formula.name)
    result = formula.calculate(given, unit)
    shown = unit if unit is not None else quantity(formula.result).usual
    if as_json:
        return json.dumps({"formula": formula.name, "result": result, "unit": shown})
    return f"{result:.10g} {shown}".rstrip()


def _pairs(values: Iterable[str], names: list[str]) -> Iterable[tuple[str, str, str]]:
    """Argument, its value and the whole text, of each ARGUMENT=VALUE."""
    for text in values:
        typed, sign, value = text.partition("=")
        if not sign:
            raise InputError(text, 'accepted is ARGUMENT=VALUE, as pick_up=0.75 or "concentration=1.5 g/L"')
        argument = meant(typed, names)
        if argument is None:
            accepted = listed(names, typed, most=len(names))
            raise InputError(text, f"{typed.strip()!r} is not an argument; accepted are: {accepted}")
        yield argument, value.strip(), text


def _looked_up(name: str, values: list[str], unit: str | None, as_json: bool) -> str:
    """Answer of a look-up, whose arguments are texts or numbers."""
    function = LOOK_UPS[name]
    names = [parameter.name for parameter in function.parameters]
    if function.parameters and function.parameters[-1].kind == VARARGS:
        raise InputError(name, "is for cells; on the command line a refusal is printed as it is")
    needed = [parameter.name for parameter in function.parameters if not parameter.optional]
    if needed and not values:
        return _signature(name)
    given = {argument: _cell(value) for argument, value, _ in _pairs(values, names)}
    if unit is not None:
        if RESULT_UNIT not in names:
            raise InputError("--in", f"{name} gives {function.gives}, which has no other unit")
        given[RESULT_UNIT] = unit
    result = called(name, [given.get(argument) for argument in names])
    if as_json:
        return json.dumps({"formula": name, "result": result, "unit": unit or ""})
    if function.result == ARRAY:
        return "\n".join("  ".join(_shown(cell) for cell in row) for row in result)
    return _shown(result)


def _shown(value: Any) -> str:
    return f"{value:.10g}" if isinstance(value, float) else str(value)


def _cell(text: str) -> Any:
    """A number where the text is one, else the text."""
    try:
        return float(text)
    except ValueError:
        return text


def _number(text: str, where: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise InputError(
            where, f"{text!r} is not a number; accepted is a number with a decimal point"
        ) from None


def _signature(name: str) -> str:
    """What a function takes and gives, with an example to copy."""
    function = cell_functions()[name]
    lines = [name, f"  {function.help}", ""]
    if name in LOOK_UPS:
        for parameter in function.parameters:
            left_out = " (may be left out)" if parameter.optional else ""
            lines.append(f"  {parameter.name}: {parameter.help}{left_out}")
        lines.append(f"  gives {function.gives}")
        example = " ".join(
            f'"{parameter.name}={_shown(cell)}"'
            for parameter, cell in zip(function.parameters, function.example)
            if cell is not None
        )
        return "\n".join([*lines, "", f"  costing calculate {name.lower()} {example}"])
    formula = FORMULAS[name]
    for item in formula.arguments:
        left_out = " (may be left out)" if item.name in formula.defaults else ""
        lines.append(f"  {item.name}: {item.help}; {describe(item)}{left_out}")
    answer = quantity(formula.result)
    lines.append(f"  gives {label(answer.name)}, {answer.usual or 'a pure number'}")
    example = " ".join(f'"{key}={value:g} {quantity(key).usual}"' for key, value in formula.example.items())
    return "\n".join([*lines, "", f"  costing calculate {formula.function.__name__} {example}"])
