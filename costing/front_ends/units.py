"""Numbers with a unit as people type them, read with pint into the house unit.

Pint knows far more units than the small table of the formula cells, and it knows that a count in Ne or
Nm is the reciprocal of one in tex. It is loaded at the first use only: that costs about half a second.
"""

from __future__ import annotations

import datetime
import re
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from costing.quantities import UNITS, InputError, Quantity, check, label, quantity
from costing.quantities.checking import number_text
from costing.quantities.units import ALIASES, COUNTS

if TYPE_CHECKING:
    import pint

LONGEST_UNIT = 30
# A ratio of amounts and a ratio of masses are both pure numbers to pint; to a dyer they are not the same.
AMOUNT_RATIO = "mol/mol"
ROUNDING = 1e-9  # of the end of a range, for a conversion that is off in its last digit
YARN_COUNTS = ("tex", "Ne", "Nm", "den")
ERROR_VALUES = ("#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA")
_POWER = re.compile(r"(?<=[A-Za-z])(?=[23])")
_LIKE_A_UNIT = re.compile(r"[A-Za-zµ°%0-9²³/*^().\- ]+")


class UnknownUnitError(ValueError):
    """A text that is not a unit."""


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[Any]:
    """Pint's registry, made at the first use, with money as one more dimension."""
    from pint import UnitRegistry

    units: pint.UnitRegistry[Any] = UnitRegistry()
    units.define("money = [money]")
    return units


@lru_cache(maxsize=512)
def parse_unit(text: str) -> pint.Unit:
    """The unit that a text means.

    Raises
    ------
    UnknownUnitError
        When it means none.

    Examples
    --------
    >>> str(parse_unit("m3/h"))
    'meter ** 3 / hour'
    >>> str(parse_unit("ends/cm"))
    '1 / centimeter'
    """
    written = text.strip()
    written = ALIASES.get(written, written)
    if len(written) > LONGEST_UNIT or (written and not _LIKE_A_UNIT.fullmatch(written)):
        raise UnknownUnitError(text)
    try:
        return registry().Unit(_POWER.sub("**", written))
    except Exception as error:  # pint raises many kinds for a text that is no unit
        raise UnknownUnitError(text) from error


def convert(value: float, unit: str, target: str) -> float:
    """Convert a number from one unit to another.

    Raises
    ------
    UnknownUnitError
        A text that is not a unit.
    ValueError
        Two units that measure different things, or a count of zero.

    Examples
    --------
    >>> round(convert(7.0, "Ne", "tex"), 4)
    84.363
    >>> round(convert(12.0, "oz/yd2", "g/m2"), 2)
    406.87
    """
    from pint import DimensionalityError

    given = registry().Quantity(value, parse_unit(unit))
    try:
        return float(given.to(parse_unit(target), "textile").magnitude)
    except (DimensionalityError, ZeroDivisionError) as error:
        raise ValueError(str(error)) from error


@lru_cache(maxsize=512)
def accepted_units(name: str) -> tuple[str, ...]:
    """Units of the unit table in which a quantity may be given, the usual one first.

    Examples
    --------
    >>> accepted_units("warp_count")[:4]
    ('tex', 'Ne', 'Nm', 'den')
    >>> accepted_units("dips")
    ('',)
    """
    item = quantity(name)
    if item.usual == "":
        return ("",)
    if item.usual == AMOUNT_RATIO:
        return (AMOUNT_RATIO,)
    dimension = UNITS[item.unit][0]
    if dimension in COUNTS:
        first: tuple[str, ...] = (item.usual, *(unit for unit in YARN_COUNTS if unit != item.usual))
        dimensions = COUNTS
    else:
        first, dimensions = (item.usual,), {dimension}
    left_out = {"", AMOUNT_RATIO, *first}
    return first + tuple(unit for unit, row in UNITS.items() if row[0] in dimensions and unit not in left_out)


def accepted_range(name: str, unit: str) -> tuple[float, float]:
    """What is accepted of a quantity, in a unit that can measure it.

    Examples
    --------
    >>> accepted_range("strength", "%")
    (1.0, 100.0)
    >>> [round(end, 3) for end in accepted_range("warp_count", "Ne")]
    [0.591, 590.541]
    """
    item = quantity(name)
    if unit == item.usual:
        return item.low, item.high
    low, high = sorted((convert(item.low, item.usual, unit), convert(item.high, item.usual, unit)))
    return low, high


def read_number(value: object, what: str, where: str, accepted: str) -> float:
    """A plain number out of a cell; everything that only looks like one is refused.

    Parameters
    ----------
    value : object
        What the cell holds.
    what : str
        The thing, for the error text.
    where : str
        Sheet and cell.
    accepted : str
        What is accepted, for the error text.

    Raises
    ------
    InputError
        Nothing, text, an error value, a truth value or a date.

    Examples
    --------
    >>> read_number("1,5", "bath indigo", "Recipes!J12", "0.05 to 30 g/L")
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: Recipes!J12: bath indigo is the text '1,5', not a number; \
accepted is 0.05 to 30 g/L; type it again as a number, with your program's decimal sign
    """
    said = f"accepted is {accepted}"
    if value is None or (isinstance(value, str) and not value.strip()):
        raise InputError(where, f"{what} is empty; {said}")
    if isinstance(value, bool):
        raise InputError(where, f"{what} is {str(value).upper()}, not a number; {said}")
    if isinstance(value, (datetime.date, datetime.time, datetime.timedelta)):
        raise InputError(where, f"{what} is the date or time {value}, not a number; {said}")
    if isinstance(value, str):
        text = value.strip()
        if text in ERROR_VALUES:
            raise InputError(where, f"{what} is the error value {text}; {said}")
        hint = ""
        if any(sign.isdigit() for sign in text):
            hint = "; type it again as a number, with your program's decimal sign"
        raise InputError(where, f"{what} is the text {text[:40]!r}, not a number; {said}{hint}")
    if not isinstance(value, (int, float)):
        raise InputError(where, f"{what} is {value!r}, not a number; {said}")
    return float(value)


def read_quantity(
    value: object,
    unit_text: object,
    quantity_name: str,
    where: str,
    *,
    called: str = "",
    shown_as_percent: bool = False,
) -> float:
    """Read a number and its unit into the house unit, checked.

    Parameters
    ----------
    value : object
        What the number's cell holds.
    unit_text : object
        What the unit's cell holds.
    quantity_name : str
        A name of the table of quantities.
    where : str
        Sheet and cell of the number.
    called : str, optional
        What to call it in an error text, where that is not the name of the quantity.
    shown_as_percent : bool, optional
        True for a cell that a spreadsheet program shows as a percentage: it shows 88 % and holds 0.88.

    Returns
    -------
    float
        In the house unit of the quantity.

    Raises
    ------
    InputError
        Not a number, no unit, an unknown unit, one that measures something else, or out of range.

    Examples
    --------
    >>> read_quantity(1.5, "g/L", "bath_indigo", "Recipes!J12")
    0.0015
    >>> read_quantity(0.88, "%", "strength", "Materials!E9")
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: Materials!E9: strength is 0.88 %; accepted is 1 to 100 %; \
the unit is already %, so type 88, not 0.88
    """
    item = quantity(quantity_name)
    what = called or label(quantity_name)
    unit = _unit_text(unit_text, item, what, value, where)
    accepted = _accepted(item, unit)
    number = read_number(value, what, where, accepted)
    if shown_as_percent and unit == "%":
        number *= 100.0
    elif shown_as_percent and unit != "kg/kg":
        raise InputError(
            where,
            f"{what} is shown as {number_text(100 * number)} % beside the unit {unit or 'of a pure number'}; "
            f"accepted is {accepted}; clear the cell's percent format",
        )
    low, high = accepted_range(quantity_name, unit)
    try:
        if not low - ROUNDING * abs(low) <= number <= high + ROUNDING * abs(high):
            raise ValueError("out of range")
        return check(quantity_name, convert(number, unit, item.unit) if unit else number, where)
    except ValueError as error:  # an InputError is one
        raise InputError(
            where,
            f"{what} is {number_text(number)} {unit}".rstrip()
            + f"; accepted is {accepted}{_hint(item, number, unit)}",
        ) from error


def _unit_text(given: object, item: Quantity, what: str, value: object, where: str) -> str:
    """The unit, after it has been found fit for the quantity."""
    text = "" if given is None else str(given).strip()
    examples = "accepted is for example " + ", ".join(accepted_units(item.name)[:4])
    if item.usual == "":
        if text not in ("", "1", "-"):
            raise InputError(
                where, f"{what} has the unit {text!r}; accepted is an empty unit cell, it is a pure number"
            )
        return ""
    if not text:
        hint = ""
        if item.usual == "%" and isinstance(value, (int, float)) and not isinstance(value, bool):
            hint = f"; write % beside {number_text(value)}"
            if 0 < value <= 1:
                hint = f"; write % beside {number_text(100.0 * value)}, or kg/kg beside {number_text(value)}"
        raise InputError(where, f"the unit of {what} is missing; {examples}{hint}")
    try:
        found = parse_unit(text)
    except UnknownUnitError:
        raise InputError(where, f"{what} has the unknown unit {text[:LONGEST_UNIT]!r}; {examples}") from None
    same_kind = (text == AMOUNT_RATIO) == (item.usual == AMOUNT_RATIO)
    if not same_kind or not found.is_compatible_with(parse_unit(item.unit), "textile"):
        raise InputError(where, f"{what} has the unit {text!r}, which measures something else; {examples}")
    return text


def _accepted(item: Quantity, unit: str) -> str:
    low, high = accepted_range(item.name, unit)
    whole = "a whole number from " if item.whole else ""
    return f"{whole}{number_text(low)} to {number_text(high)} {unit}".rstrip()


def _hint(item: Quantity, number: float, unit: str) -> str:
    if unit == "%" and 0 < number <= 1 and item.low <= 100.0 * number <= item.high:
        return f"; the unit is already %, so type {number_text(100 * number)}, not {number_text(number)}"
    return ""
