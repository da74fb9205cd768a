"""What LibreOffice calls, without anything of LibreOffice in it.

LibreOffice hands over a number, a text or a block of rows; nothing for an argument that is left out; and
the number 0 for a reference to one empty cell, which cannot be told from a 0. So an argument whose default
is another number takes no plain 0. In a block of two cells an empty cell is an empty text, and is seen. A
truth value arrives as the number 0 or 1.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Callable

from costing.formulas.cell_calls import caller, full_name, reason
from costing.formulas.cell_reading import text_of
from costing.formulas.functions import reason_for
from costing.formulas.registry import OTHERS
from costing.quantities import InputError


def method(name: str) -> Callable[..., Any]:
    """The method under the name of a formula.

    Examples
    --------
    >>> method("WARP_CARRIED_BY_LIQUOR")(0.75, ((2.0, "g/L"),), None)
    1.5
    >>> method("WARP_MOLAR_MASS")("NaOH", 0.0)
    39.997
    """
    if name not in OTHERS:
        return caller(name, empty_is_zero=True)
    function = OTHERS[name].function
    if function is reason_for:
        return why
    return lambda *cells: function(*_left_out(name, cells))


def why(name: Any, cells: Sequence[Any] = ()) -> str:
    """The reason behind an error; LibreOffice hands over all arguments but the first as one.

    Examples
    --------
    >>> why("WARP_CARRIED_BY_LIQUOR", (0.75, "2 g/m2"))[:69]
    "WARP_CARRIED_BY_LIQUOR: concentration has the unit 'g/m2', which meas"
    >>> why("WARP_CARRIED_BY_LIQUOR", (0.75, "2 g/L"))
    ''
    """
    wanted = full_name(text_of(name, "name"))
    if not wanted:
        raise InputError("", "name is empty; accepted is the name of a formula")
    given = _left_out(wanted, cells) if wanted in OTHERS else cells
    return reason(wanted, given, empty_is_zero=True)


def _left_out(name: str, cells: Sequence[Any]) -> list[Any]:
    """The cells, with nothing in place of the 0 of an empty cell that may be left out."""
    optional = [parameter.optional for parameter in OTHERS[name].parameters]
    known = [None if may_be and cell == 0.0 else cell for may_be, cell in zip(optional, cells)]
    return [*known, *cells[len(known) :]]
