"""One function as a cell calls it: an equation with units, or a look-up beside the equations."""

from __future__ import annotations

from typing import Any, Callable, NamedTuple

ANY, BLOCK, VARARGS = "any", "block", "varargs"
NUMBER, TEXT, ARRAY = "number", "text", "array"


class Parameter(NamedTuple):
    """One argument.

    Attributes
    ----------
    name : str
        In small letters and underscores.
    help : str
        What it is, with unit and range where it has them.
    kind : str
        "any": a number, a text, or a block of number and unit; "block": a block of cells; "varargs":
        as many as there are, of the kind "any". Only the last argument may be "varargs".
    optional : bool
        True where it may be left out; behind it all may be left out.
    default : float or None
        Of an argument of an equation that may be left out, in the house unit.
    """

    name: str
    help: str
    kind: str = ANY
    optional: bool = False
    default: float | None = None


class CellFunction(NamedTuple):
    """A function that a cell can call.

    Attributes
    ----------
    name : str
        The name in a cell.
    function : callable
        Takes the cells in order, as a program hands them over, and gives a float, a text or rows.
    parameters : tuple of Parameter
        What it takes.
    result : str
        "number", "text" or "array".
    gives : str
        What the result is, with its unit.
    group : str
        Title of the group it is listed in.
    help : str
        One line.
    example : tuple
        Cells of a call that works.
    """

    name: str
    function: Callable[..., Any]
    parameters: tuple[Parameter, ...]
    result: str
    gives: str
    group: str
    help: str
    example: tuple[Any, ...]
