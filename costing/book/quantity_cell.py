"""One number with its unit, as a cell holds it, checked and in the house unit.

Cells of the book, cells of a formula and the command line read a quantity here and nowhere else, so the same
spelling is accepted and the same line refuses.
"""

from __future__ import annotations

import datetime
import re
from functools import lru_cache
from typing import Any, NamedTuple

from costing.book.lye_scale import (
    BY_MASS,
    BY_SHARE,
    SCALES,
    house_value,
    scale_named,
    scale_of,
    scale_range,
    scale_value,
)
from costing.quantities import UNITS, InputError, Quantity, check, label, quantity
from costing.quantities.checking import number_text
from costing.quantities.units import COUNTS, LONGEST_UNIT, canonical, convert, measure

# A ratio of amounts and a ratio of masses are both pure numbers; to a dyer they are not the same.
AMOUNT_RATIO = "mol/mol"
ROUNDING = 1e-9  # of the end of a range, for a conversion that is off in its last digit
YARN_COUNTS = ("tex", "Ne", "Nm", "den")
SHOWN_UNITS = 4
LONGEST = 40  # of a refused text, as it is shown
_ERROR = re.compile(r"#(?:N/A|GETTING_DATA|[^\W\d_]+(?:/0)?[!?])|Err:\d+")


class Measured(NamedTuple):
    """A quantity that was read.

    Attributes
    ----------
    number : float
        As it was given.
    unit : str
        In which it was given, in the spelling of the unit table.
    house : float
        In the house unit of the quantity, checked.
    """

    number: float
    unit: str
    house: float


def is_empty(value: Any) -> bool:
    """True for what stands for no value: nothing, or a text of blanks.

    Examples
    --------
    >>> is_empty(None), is_empty("  "), is_empty(0.0)
    (True, True, False)
    """
    return value is None or (isinstance(value, str) and not value.strip())


def is_error(value: object) -> bool:
    """True for the text of an error, as a spreadsheet program shows it.

    Examples
    --------
    >>> is_error("#DIV/0!"), is_error("#N/A"), is_error("Err:502"), is_error("# 7"), is_error(0.0)
    (True, True, True, False, False)
    """
    return isinstance(value, str) and _ERROR.fullmatch(value.strip()) is not None


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
    counts = YARN_COUNTS if UNITS[item.unit][0] in COUNTS else ()
    first = dict.fromkeys((item.usual, *counts))
    return (*first, *(unit for unit in UNITS if unit and unit not in first and fits(item, unit)))


def accepted_scales(name: str) -> tuple[str, ...]:
    """Scales beside the units, on which the strength of caustic lye may be told.

    Examples
    --------
    >>> accepted_scales("caustic_dosing"), accepted_scales("bath_indigo")
    (('°Bé', '°Tw', '% w/w'), ())
    """
    return tuple(scale for scale in SCALES if scale_of(name, scale))


def fits(item: Quantity, unit: str) -> bool:
    """True when a quantity may be given in a unit.

    A pure number takes no unit, so that ``300 %`` is not read as three boxes.

    Examples
    --------
    >>> fits(quantity("linear_density"), "Ne"), fits(quantity("boxes"), "%")
    (True, False)
    """
    if item.usual == "" or AMOUNT_RATIO in (item.usual, unit):
        return unit == item.usual
    dimensions = {UNITS[item.unit][0], measure(unit)[0]}
    return len(dimensions) == 1 or dimensions == COUNTS


@lru_cache(maxsize=4096)
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
    if unit in SCALES and name == BY_SHARE:
        return 0.0, scale_value(item, item.high / 100.0, unit)
    if unit in SCALES:
        low, high = (convert(end, item.usual, item.unit) for end in (item.low, item.high))
        return scale_range(low, high, unit)
    low, high = sorted((convert(item.low, item.usual, unit), convert(item.high, item.usual, unit)))
    return low, high


def unit_of(item: Quantity, text: str, where: str = "", called: str = "") -> str:
    """The unit that a text names, in the spelling of the unit table, fit to measure a quantity.

    Raises
    ------
    InputError
        An unknown unit, or one that measures something else.

    Examples
    --------
    >>> unit_of(quantity("areal_mass"), "oz / yd²")
    'oz/yd2'
    """
    what = called or label(item.name)
    if item.usual == "" and text not in ("", "1", "-"):
        raise InputError(
            where, f"{what} has the unit {text[:LONGEST]!r}; accepted is a pure number, without a unit"
        )
    if item.usual == "":
        return ""
    if scale := scale_of(item.name, text):
        return scale
    try:
        unit = canonical(text)
    except KeyError:
        said = f"has the unknown unit {text[:LONGEST_UNIT]!r}"
        if scale_named(text):
            said = f"has the unit {text!r}, which is for the strength of caustic lye alone"
    else:
        if fits(item, unit):
            return unit
        said = f"has the unit {text!r}, which measures something else"
    raise InputError(where, f"{what} {said}; accepted is {_examples(item)}")


def read_number(value: object, what: str, where: str, accepted: str) -> float:
    """A plain number out of a cell; everything that only looks like one is refused.

    Parameters
    ----------
    value : object
        What the cell holds.
    what : str
        The thing, for the error text.
    where : str
        Sheet and cell, or formula.
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
    if is_empty(value):
        raise InputError(where, f"{what} is empty; {said}")
    if isinstance(value, bool):
        raise InputError(where, f"{what} is {str(value).upper()}, not a number; {said}")
    if isinstance(value, (datetime.date, datetime.time, datetime.timedelta)):
        raise InputError(where, f"{what} is the date or time {value}, not a number; {said}")
    if isinstance(value, str):
        text = value.strip()
        if is_error(text):
            raise InputError(where, f"{what} is the error value {text}; {said}")
        hint = ""
        if any(sign.isdigit() for sign in text):
            hint = "; type it again as a number, with your program's decimal sign"
        raise InputError(where, f"{what} is the text {text[:LONGEST]!r}, not a number; {said}{hint}")
    if not isinstance(value, (int, float)):
        raise InputError(where, f"{what} is {str(value)[:LONGEST]!r}, not a number; {said}")
    return float(value)


def measured(
    item: Quantity,
    value: object,
    unit_text: object,
    where: str = "",
    *,
    called: str = "",
    shown_as_percent: bool = False,
) -> Measured:
    """Read a number and its unit, checked.

    Parameters
    ----------
    item : Quantity
        What the number is.
    value : object
        What the number's cell holds.
    unit_text : object
        What the unit's cell holds.
    where : str, optional
        Sheet and cell of the number, or the formula.
    called : str, optional
        What to call it in an error text, where that is not the name of the quantity.
    shown_as_percent : bool, optional
        True for a cell that a spreadsheet program shows as a percentage: it shows 88 % and holds 0.88.

    Raises
    ------
    InputError
        Not a number, no unit, an unknown unit, one that measures something else, or out of range.

    Examples
    --------
    >>> measured(quantity("bath_indigo"), 1.5, "g / l")
    Measured(number=1.5, unit='g/L', house=0.0015)
    """
    what = called or label(item.name)
    text = _text(unit_text)
    if not text and item.usual:
        raise InputError(
            where, f"the unit of {what} is missing; accepted is {_examples(item)}{_unit_hint(item, value)}"
        )
    unit = unit_of(item, text, where, what)
    shown = text if unit else ""
    low, high = accepted_range(item.name, unit)
    whole = "a whole number from " if item.whole else ""
    accepted = f"{whole}{number_text(low)} to {number_text(high)} {shown}".rstrip()
    number = read_number(value, what, where, accepted)
    if shown_as_percent and unit in ("%", BY_MASS):
        number *= 100.0
    elif shown_as_percent and unit != "kg/kg":
        raise InputError(
            where,
            f"{what} is shown as {number_text(100 * number)} % beside the unit "
            f"{shown or 'of a pure number'}; accepted is {accepted}; clear the cell's percent format",
        )
    try:
        if not low - ROUNDING * abs(low) <= number <= high + ROUNDING * abs(high):
            raise ValueError("out of range")
        house = check(item.name, house_of(item, number, unit), where)
    except ValueError as error:  # an InputError is one
        given = f"{number_text(number)} {shown}".rstrip()
        raise InputError(
            where, f"{what} is {given}; accepted is {accepted}{_percent_hint(item, number, unit)}"
        ) from error
    return Measured(number, unit, house)


def house_of(item: Quantity, number: float, unit: str) -> float:
    """A number in a unit that `unit_of` gave, in the house unit of its quantity.

    Examples
    --------
    >>> round(house_of(quantity("caustic_dosing"), 26.0, "°Bé"), 4)
    0.2445
    """
    return house_value(item, number, unit) if unit in SCALES else convert(number, unit, item.unit)


def in_unit(item: Quantity, house: float, unit: str) -> float:
    """The other way round: in a unit that `unit_of` gave.

    Raises
    ------
    InputError
        A strength of lye outside its table.
    """
    return scale_value(item, house, unit) if unit in SCALES else convert(house, item.unit, unit)


def read_quantity(
    value: object,
    unit_text: object,
    quantity_name: str,
    where: str,
    *,
    called: str = "",
    shown_as_percent: bool = False,
) -> float:
    """Read a number and its unit into the house unit, checked; as `measured`, by the quantity's name.

    Raises
    ------
    InputError
        As `measured` does.

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
    return measured(item, value, unit_text, where, called=called, shown_as_percent=shown_as_percent).house


def _text(unit: object) -> str:
    """What the cell of a unit says; a spreadsheet program hands over a figure as a number."""
    if is_empty(unit):
        return ""
    if isinstance(unit, (int, float)) and not isinstance(unit, bool):
        return f"{unit:g}"
    return " ".join(str(unit).split())


def _examples(item: Quantity) -> str:
    return "for example " + ", ".join((*accepted_units(item.name)[:SHOWN_UNITS], *accepted_scales(item.name)))


def _unit_hint(item: Quantity, value: object) -> str:
    if item.usual != "%" or isinstance(value, bool) or not isinstance(value, (int, float)):
        return ""
    if 0 < value <= 1:
        return f"; write % beside {number_text(100.0 * value)}, or kg/kg beside {number_text(value)}"
    return f"; write % beside {number_text(value)}"


def _percent_hint(item: Quantity, number: float, unit: str) -> str:
    if unit == "%" and 0 < number <= 1 and item.low <= 100.0 * number <= item.high:
        return f"; the unit is already %, so type {number_text(100 * number)}, not {number_text(number)}"
    return ""
