"""What a cell of the book means: a text, a date, a checked number or a word of a list."""

from __future__ import annotations

import datetime
import math
import re
from typing import Any

from costing.book.lye_scale import concentration, scale_named
from costing.book.quantity_cell import accepted_scales, is_error, measured, read_quantity
from costing.book.sheet import Given
from costing.quantities import CHOICES, QUANTITIES, InputError, folded, quantity
from costing.quantities.checking import check_choice, number_text
from costing.settings.lye_dose import DOSES, LyeStrength

# A number with a decimal point, and what stands behind it.
_NUMBER_AND_SCALE = re.compile(r"([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*([^\d\s.,].*)")

LONGEST_TEXT = 200
LONGEST_CODE = 60
DAY_0 = datetime.date(1899, 12, 30)
FIRST_DATE, LAST_DATE = datetime.date(1990, 1, 1), datetime.date(2100, 12, 31)


def text_of(cell: Given, what: str, longest: int = LONGEST_TEXT) -> str:
    """A code or a text; "" where nothing was given. A whole number is taken as its digits.

    Raises
    ------
    InputError
        An error value, a truth value, a date, what is no value at all, or a text that is too long.

    Examples
    --------
    >>> text_of(Given(1200.0, "Styles!I5"), "code")
    '1200'
    """
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, bool):
        raise InputError(cell.where, f"{what} is {str(value).upper()}; accepted is a text")
    if isinstance(value, (datetime.date, datetime.time, datetime.timedelta)):
        raise InputError(cell.where, f"{what} is the date or time {value}; accepted is a text")
    text = " ".join(str(value).split())
    if is_error(text) or (isinstance(value, float) and not math.isfinite(value)):
        raise InputError(cell.where, f"{what} is the error value {text}; accepted is a text")
    if not isinstance(value, (str, int, float)):
        raise InputError(cell.where, f"{what} is {text[:LONGEST_CODE]!r}; accepted is a text")
    if isinstance(value, float) and value == int(value):
        text = str(int(value))
    if len(text) > longest:
        raise InputError(cell.where, f"{what} has {len(text)} letters; accepted are up to {longest}")
    return text


def date_of(cell: Given, what: str) -> datetime.date | None:
    """A date; None where nothing was given.

    A whole number is a date only where the cell comes from a spreadsheet program, which hands a date over
    as the number of its day.

    Raises
    ------
    InputError
        Anything but a date.

    Examples
    --------
    >>> date_of(Given(45663.0, "Materials!U5", serial_dates=True), "price date")
    datetime.date(2025, 1, 6)
    """
    value = cell.value
    if value is None:
        return None
    if isinstance(value, datetime.datetime):
        return value.date()
    if isinstance(value, datetime.date):
        return value
    if cell.serial_dates and isinstance(value, (int, float)) and not isinstance(value, bool):
        first, last = ((date - DAY_0).days for date in (FIRST_DATE, LAST_DATE))
        if first <= value <= last and value == int(value):
            return DAY_0 + datetime.timedelta(days=int(value))
    years = f" from {FIRST_DATE.year} to {LAST_DATE.year}" if cell.serial_dates else ""
    raise InputError(
        cell.where,
        f"{what} is {value!r}, not a date; accepted is a real date{years}, such as 2025-01-31 typed in a "
        "date cell",
    )


def value_of(name: str, cell: Given, unit: object) -> Any:
    """What a cell means: a checked number in the house unit, a checked word, or a text; None where empty."""
    if cell.is_empty:
        return None
    if name in CHOICES:
        return check_choice(name, text_of(cell, folded(name)), cell.where)
    if name in QUANTITIES:
        lye = _on_lye_scale(name, cell, unit)
        if lye is not None:
            return lye
        return read_quantity(cell.value, unit, name, cell.where, shown_as_percent=cell.shown_as_percent)
    return text_of(cell, folded(name), LONGEST_CODE)


def _on_lye_scale(name: str, cell: Given, unit: object) -> Any:
    """A strength of lye, typed with its scale in the cell or beside a unit that is one; None where it is not.

    The unit of a row is that of every recipe, so ``26 °Bé`` may stand in the cell of one. Of a dose the
    product is not known here: it is told as `LyeStrength`.
    """
    if name not in DOSES and not accepted_scales(name):
        return None
    value, scale = cell.value, scale_named(str(unit or ""))
    if isinstance(value, str) and (found := _NUMBER_AND_SCALE.fullmatch(value.strip())):
        value, scale = float(found[1]), scale_named(found[2])
    if not scale:
        return None
    of = quantity("lye_concentration") if name in DOSES else quantity(name)
    read = measured(of, value, scale, cell.where, called=folded(name), shown_as_percent=cell.shown_as_percent)
    if name not in DOSES:
        return read.house
    return LyeStrength(concentration(read.number, scale), f"{number_text(read.number)} {scale}")
