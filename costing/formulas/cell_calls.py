"""How a cell calls a formula: the one place that the spreadsheet programs and the tests share.

Arguments come in the registered order. Each is a number in the argument's usual unit, a text with its
unit, or a block of two cells that hold number and unit (`costing.formulas.cell_reading` has the rule). An
argument that may be left out takes its default when it is left out or its cell is empty. The last argument
of every equation is the unit wanted for the result. A refused call raises `InputError`; `reason` gives its
one line.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any, Callable

from costing.formulas.cell_formula import compiled
from costing.formulas.cell_function import VARARGS, CellFunction
from costing.formulas.formula import PREFIX
from costing.formulas.registry import FORMULAS, OTHERS
from costing.quantities import InputError

NAMES = (*FORMULAS, *OTHERS)


@cache
def caller(name: str, *, empty_is_zero: bool = False) -> Callable[..., Any]:
    """What a cell calls under a name.

    Parameters
    ----------
    name : str
        The full name, in capitals.
    empty_is_zero : bool, optional
        As in `costing.formulas.cell_formula.compiled`; it makes no difference to what is no equation.

    Raises
    ------
    InputError
        When there is no such function, with the nearest names.
    """
    if name in OTHERS:
        return OTHERS[name].function
    if name not in FORMULAS:
        import difflib  # only a wrong name pays for it

        near = difflib.get_close_matches(name, NAMES, n=3, cutoff=0.5)
        hint = f"; near are: {', '.join(near)}" if near else ""
        raise InputError("", f"{name[:60]!r} is not a formula{hint}")
    return compiled(FORMULAS[name], empty_is_zero=empty_is_zero)


def called(name: str, arguments: Sequence[Any], *, empty_is_zero: bool = False) -> Any:
    """Call any function as a cell does.

    Raises
    ------
    InputError
        No such function, too many arguments, or one that is refused.

    Examples
    --------
    >>> called("WARP_DEFAULT_SOURCE", ["scour.scour_overflow"])[:31]
    'scour overflow 0 L/kg (0 L/kg t'
    """
    full = full_name(name)
    function = caller(full, empty_is_zero=empty_is_zero)
    if full in OTHERS:
        _check_number_of(OTHERS[full], arguments)
    return function(*arguments)


def call(name: str, arguments: Sequence[Any]) -> float:
    """Calculate an equation, or another function that gives a number, as a cell does.

    Parameters
    ----------
    name : str
        In any case, with or without the prefix.
    arguments : sequence
        The cells in order.

    Returns
    -------
    float
        In the unit asked for, else in the usual one.

    Raises
    ------
    InputError
        No such formula, an argument that is refused, or a function that gives no number.

    Examples
    --------
    >>> call("WARP_CARRIED_BY_LIQUOR", [0.75, "2 g/L"])
    1.5
    >>> call("WARP_BONE_DRY_MASS", [None, "g/kg"]) == 1000 * call("WARP_BONE_DRY_MASS", ["8.5 %"])
    True
    """
    found = called(name, arguments)
    if not isinstance(found, float):
        raise InputError(full_name(name), "gives no number")
    return found


def reason(name: str, arguments: Sequence[Any], *, empty_is_zero: bool = False) -> str:
    """Why a call is refused, in one line; "" where it is not.

    Examples
    --------
    >>> reason("WARP_CARRIED_BY_LIQUOR", [0.75, "2 g/L"])
    ''
    >>> reason("WARP_CARRIED_BY_LIQUOR", [0.75])
    'WARP_CARRIED_BY_LIQUOR: concentration is empty; accepted is 0 to 1000 g/L'
    """
    try:
        called(name, arguments, empty_is_zero=empty_is_zero)
    except InputError as error:
        return " ".join(str(error).split())
    return ""


def full_name(name: str) -> str:
    """The name in capitals and with its prefix.

    Examples
    --------
    >>> full_name("molar_mass"), full_name("warp_mass_per_finished_metre")
    ('WARP_MOLAR_MASS', 'WARP_WARP_MASS_PER_FINISHED_METRE')
    """
    wanted = name.strip().upper()
    if wanted not in NAMES and PREFIX + wanted in NAMES:
        return PREFIX + wanted
    return wanted


def _check_number_of(function: CellFunction, arguments: Sequence[Any]) -> None:
    names = [parameter.name for parameter in function.parameters]
    varargs = bool(function.parameters) and function.parameters[-1].kind == VARARGS
    if len(arguments) > len(names) and not varargs:
        accepted = ", ".join(names) or "none"
        raise InputError(function.name, f"got {len(arguments)} arguments; accepted are: {accepted}")
