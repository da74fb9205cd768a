"""The module that xlwings loads: one function for each formula, under the name that a cell calls.

It is named to xlwings by its full name, ``costing.front_ends.excel.functions``: the package is installed, so
nothing has to lie beside a workbook. Importing it needs xlwings; nothing else in the package imports it.

Every argument is asked for as a block of rows, with errors as their text (`costing.front_ends.excel.adapter`
says why), and an argument that may be left out is nothing when it is. A refused call raises; the module that
`costing.front_ends.excel.build` writes turns that into a real error in the cell.
"""

from __future__ import annotations

from inspect import Parameter as Argument
from inspect import Signature
from typing import Any, Callable

import xlwings as xw

from costing.formulas.cell_function import VARARGS, CellFunction, Parameter
from costing.formulas.registry import cell_functions
from costing.front_ends.excel.adapter import method
from costing.front_ends.excel.wording import CATEGORY, argument_help, function_help


def registered(function: CellFunction) -> Callable[..., Any]:
    """A formula as a function that xlwings knows."""
    found = method(function.name)

    def in_a_cell(*blocks: Any) -> Any:
        return found(*blocks)

    in_a_cell.__name__ = in_a_cell.__qualname__ = function.name
    in_a_cell.__doc__ = function_help(function)
    # xlwings reads names, defaults and the star from the signature, and no types, which it would convert to.
    in_a_cell.__annotations__ = {}
    in_a_cell.__signature__ = Signature(  # type: ignore[attr-defined]
        [argument(parameter) for parameter in function.parameters]
    )
    for parameter in function.parameters:
        options = {"doc": argument_help(parameter), "ndim": 2, "err_to_str": True}
        in_a_cell = xw.arg(parameter.name, **options)(in_a_cell)
    return xw.func(category=CATEGORY)(in_a_cell)


def argument(parameter: Parameter) -> Argument:
    """An argument as Python writes it."""
    if parameter.kind == VARARGS:
        return Argument(parameter.name, Argument.VAR_POSITIONAL)
    default = None if parameter.optional else Argument.empty
    return Argument(parameter.name, Argument.POSITIONAL_OR_KEYWORD, default=default)


globals().update({name: registered(function) for name, function in cell_functions().items()})
