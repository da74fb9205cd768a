"""What one cell argument means: a number, a text with its unit, or a block of number and unit.

Every spreadsheet program hands its cells over here, so the rule is the same in all of them:

- a number is in the usual unit of its argument;
- a text is a number with its unit, such as ``1.5 g/L``, with a decimal point;
- a block of two cells, one row or one column, is a number and beside or below it its unit;
- a block of one cell is that cell; an empty cell is an argument left out.

Anything else is refused in words. A number beside its unit is read as in the mill's book, by
`costing.book.quantity_cell`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any, Optional

from costing.book.quantity_cell import AMOUNT_RATIO as AMOUNT_RATIO
from costing.book.quantity_cell import LONGEST, is_error, measured
from costing.book.quantity_cell import is_empty as is_empty
from costing.book.quantity_cell import unit_of as unit_of
from costing.quantities import InputError, Quantity, label
from costing.quantities.checking import number_text

POINT = "; write the digits without groups, with a point as the decimal sign"

# The figure behind the number may be the 1 of a unit such as 1/cm, and nothing else.
_NUMBER = re.compile(r"([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)(?!\s*[\d.,'’](?!/))\s*(.*)")
_MORE_DIGITS = re.compile(r"[+-]?[\d.]+(?:[,'’]|\s+\d)")

Given = tuple[float, Optional[str]]


def cells_of(block: Any) -> list[list[Any]]:
    """Rows of a block; a list without rows is one row."""
    rows = list(block)
    if not any(isinstance(row, (list, tuple)) for row in rows):
        rows = [rows]
    return [list(row) if isinstance(row, (list, tuple)) else [row] for row in rows]


def single(cell: Any, what: str, where: str = "") -> Any:
    """The cell itself, or the one cell of a block of one.

    Parameters
    ----------
    cell : object
        What the program handed over.
    what : str
        The thing, for the error text.
    where : str, optional
        The formula, for the error text.

    Raises
    ------
    InputError
        A block of more cells.

    Examples
    --------
    >>> single((("caustic",),), "key")
    'caustic'
    """
    if not isinstance(cell, (list, tuple)):
        return cell
    rows = cells_of(cell)
    if [len(row) for row in rows] == [1]:
        return rows[0][0]
    raise InputError(where, f"{what} is {_size(rows)}; accepted is one cell")


def text_of(cell: Any, what: str, where: str = "") -> str:
    """The text of a cell, "" for an empty one.

    Raises
    ------
    InputError
        A number, a truth value or a block.

    Examples
    --------
    >>> text_of(" g/L ", "unit")
    'g/L'
    """
    found = single(cell, what, where)
    if is_empty(found):
        return ""
    if not isinstance(found, str) or is_error(found):
        raise InputError(where, f"{what} is {_shown(found)}; accepted is a text")
    return " ".join(found.split())


def given(item: Quantity, cell: Any, where: str = "") -> Given | None:
    """Number and unit of an argument; None when it is left out.

    Parameters
    ----------
    item : Quantity
        What the argument is.
    cell : object
        What the program handed over.
    where : str, optional
        The formula, for the error text.

    Returns
    -------
    tuple or None
        A number, and its unit in the spelling of the unit table or None for the usual one.

    Raises
    ------
    InputError
        A truth value, a text without a unit or with a decimal comma, an unknown or unlike unit, a
        block that is not a number and its unit.

    Examples
    --------
    >>> from costing.quantities import quantity
    >>> given(quantity("bath_indigo"), "1.5 g / L")
    (1.5, 'g/L')
    >>> given(quantity("bath_indigo"), ((1.5, "g/L"),))
    (1.5, 'g/L')
    >>> given(quantity("bath_indigo"), "1,5 g/L")
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: bath indigo is the text '1,5 g/L'; accepted is a number, \
or a text with its unit such as '1.5 g/L'; write the digits without groups, with a point as the decimal \
sign
    """
    if isinstance(cell, (list, tuple)):
        rows = cells_of(cell)
        if sorted((len(rows), *(len(row) for row in rows))) not in ([1, 1], [1, 2], [1, 1, 2]):
            raise InputError(
                where,
                f"{label(item.name)} is {_size(rows)}; accepted is one cell, or two cells side by side or "
                f"one below the other: the number and its unit",
            )
        cells = [found for row in rows for found in row]
        if len(cells) == 2:
            return _with_unit_cell(item, cells[0], cells[1], where)
        (cell,) = cells
    if is_empty(cell):
        return None
    if isinstance(cell, str):
        return _with_unit(item, cell, where)
    return measured(item, cell, item.usual, where).number, None


def tidy(unit: str) -> str:
    """A unit without needless blanks."""
    return " ".join(unit.split())


def _with_unit(item: Quantity, text: str, where: str) -> Given:
    """Number and unit of one text."""
    tidied = tidy(text)
    found = _NUMBER.fullmatch(tidied)
    if found is None or not found[2]:
        example = f"{number_text(_in_range(item))} {item.usual}"
        accepted = f"a number, or a text with its unit such as {example!r}" if item.usual else "a number"
        hint = POINT if _MORE_DIGITS.match(tidied) else ""
        got = f"the error value {tidied}" if is_error(text) else f"the text {text[:LONGEST]!r}"
        raise InputError(where, f"{label(item.name)} is {got}; accepted is {accepted}{hint}")
    number, unit, _ = measured(item, float(found[1]), found[2], where)
    return number, unit


def _with_unit_cell(item: Quantity, number: Any, unit: Any, where: str) -> Given | None:
    """Number and unit out of two neighbouring cells."""
    if is_empty(number):
        return None
    found = measured(item, number, unit, where)
    return found.number, found.unit


def _in_range(item: Quantity) -> float:
    """A number for an example that would be accepted."""
    return 1.5 if item.low <= 1.5 <= item.high and not item.whole else item.low or item.high


def _size(rows: Sequence[Sequence[Any]]) -> str:
    widths = {len(row) for row in rows}
    return f"a block of {len(rows)} x {max(widths, default=0)} cells"


def _shown(cell: Any) -> str:
    if isinstance(cell, bool):
        return str(cell).upper()
    if isinstance(cell, (int, float)):
        return f"the number {number_text(float(cell))}"
    if is_error(cell):
        return f"the error value {cell}"
    return f"the {type(cell).__name__} {str(cell)[:LONGEST]!r}"
