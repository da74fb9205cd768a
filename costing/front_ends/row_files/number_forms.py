"""How a file writes its dates and numbers: told by all its cells together, or refused."""

from __future__ import annotations

import datetime
import re
from typing import Any

from costing.book.cells import FIRST_DATE, LAST_DATE
from costing.quantities import InputError

POINT, COMMA = "point", "comma"
DAY_FIRST, MONTH_FIRST = "day first", "month first"
OPTION = "--columns"  # that says how, where nothing is said
SHOWN = 60  # letters of a refused cell

_TIME = r"(?:[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?)?"
_YEAR_FIRST = re.compile(rf"(\d{{4}})([-/.])(\d{{1,2}})\2(\d{{1,2}}){_TIME}", re.ASCII)
_YEAR_LAST = re.compile(rf"(\d{{1,2}})([-/.])(\d{{1,2}})\2(\d{{4}}){_TIME}", re.ASCII)
_NUMBER = re.compile(r"([+-]?)(\d[\d.,'’\u00a0\u202f ]*)(.*)", re.ASCII | re.DOTALL)
_BLANKS = str.maketrans("", "", "'’\u00a0\u202f ")


def shown(value: Any) -> str:
    """A cell as it is told in a refusal: no control characters, and not without end; or "empty"."""
    text = "" if value is None else str(value).strip()
    if not text:
        return "empty"
    return repr(text if len(text) <= SHOWN else f"{text[:SHOWN]}...")


class DateForm:
    """The one form in which a file writes its dates.

    Parameters
    ----------
    order : str
        ``day first`` or ``month first`` where the user says so, else "".
    option : str, optional
        With which the user says so.
    """

    def __init__(self, order: str = "", option: str = OPTION) -> None:
        self._option = option
        self._form: tuple[str, str] | None = None
        self._first = ("", 0)  # the cell that told the form, and its row
        self._told: dict[str, tuple[str, int]] = {order: ("", 0)} if order else {}

    def look(self, value: Any, row: int, what: str = "date") -> None:
        """Take one cell into account.

        Raises
        ------
        InputError
            No date, or one of another form than those above it.
        """
        if isinstance(value, (datetime.datetime, datetime.date)):
            self._one_form(("a real date", ""), str(value), row, what)
            return
        text = str(value).strip() if isinstance(value, str) else ""
        if found := _YEAR_FIRST.fullmatch(text):
            self._one_form(("year first", found[2]), text, row, what)
        elif found := _YEAR_LAST.fullmatch(text):
            self._one_form(("year last", found[2]), text, row, what)
            self._look_at_order(int(found[1]), int(found[3]), text, row, what)
        else:
            raise InputError(
                f"row {row}", f"{what} is {shown(value)}; accepted is one such as 2026-10-05 or 05.10.2026"
            )

    def _one_form(self, form: tuple[str, str], text: str, row: int, what: str) -> None:
        if self._form is None:
            self._form, self._first = form, (text, row)
        elif self._form != form:
            raise InputError(
                f"row {row}",
                f"{what} is {shown(text)}, in row {self._first[1]} it is {shown(self._first[0])}; accepted "
                "is one form of date in a file",
            )

    def _look_at_order(self, first: int, second: int, text: str, row: int, what: str) -> None:
        order = DAY_FIRST if first > 12 else MONTH_FIRST if second > 12 else ""
        if order and order not in self._told:
            self._told[order] = (text, row)
        if len(self._told) > 1:
            other = next(held for name, held in self._told.items() if name != order)
            also = f"row {other[1]} has {shown(other[0])}" if other[1] else f"{self._option} says otherwise"
            raise InputError(
                f"row {row}", f"{what} is {shown(text)}, {order}; {also}; accepted is one order in a file"
            )

    def read(self, value: Any, row: int, what: str = "date") -> datetime.date:
        """The date of a cell, once all cells were looked at.

        Raises
        ------
        InputError
            No such day, a year out of range, or an order that no cell tells.
        """
        if isinstance(value, datetime.datetime):
            found = value.date()
        elif isinstance(value, datetime.date):
            found = value
        else:
            found = self._from_text(str(value).strip(), row, what)
        if not FIRST_DATE <= found <= LAST_DATE:
            raise InputError(
                f"row {row}", f"{what} is {found}; accepted is {FIRST_DATE.year} to {LAST_DATE.year}"
            )
        return found

    def _from_text(self, text: str, row: int, what: str) -> datetime.date:
        if parts := _YEAR_FIRST.fullmatch(text):
            year, month, day = int(parts[1]), int(parts[3]), int(parts[4])
        else:
            parts = _YEAR_LAST.fullmatch(text)
            assert parts is not None
            year, day, month = int(parts[4]), int(parts[1]), int(parts[3])
            order = next(iter(self._told), DAY_FIRST if parts[2] == "." else "")
            if not order:
                raise InputError(
                    f"row {row}",
                    f"{what} is {shown(text)}: no row tells day from month; accepted is "
                    f'{self._option} "... , dates={DAY_FIRST}" or "dates={MONTH_FIRST}"',
                )
            if order == MONTH_FIRST:
                day, month = month, day
        try:
            return datetime.date(year, month, day)
        except ValueError:
            raise InputError(f"row {row}", f"{what} is {shown(text)}, which is no day") from None


class NumberForm:
    """The decimal sign of a file.

    Parameters
    ----------
    sign : str
        ``point`` or ``comma`` where the user says so, else "".
    option : str, optional
        With which the user says so.
    """

    def __init__(self, sign: str = "", option: str = OPTION) -> None:
        self._option = option
        self._told: dict[str, tuple[str, int]] = {sign: ("", 0)} if sign else {}

    def look(self, value: Any, row: int, what: str = "amount") -> None:
        """Take one cell into account.

        Raises
        ------
        InputError
            Another decimal sign than in the cells above it.
        """
        if not isinstance(value, str) or not ("." in value or "," in value):
            return
        found = _NUMBER.fullmatch(value.strip())
        if found is None:
            return
        sign = _sign_of(found[2].translate(_BLANKS).rstrip(".,"))
        if sign and sign not in self._told:
            self._told[sign] = (value, row)
        if len(self._told) > 1:
            other, held = next((name, held) for name, held in self._told.items() if name != sign)
            also = f"row {held[1]} has {shown(held[0])}, a decimal {other}" if held[1] else f"it is {other}"
            raise InputError(
                f"row {row}",
                f"{what} is {shown(value)}, a decimal {sign}; {also}; accepted is one decimal sign in a file",
            )

    def read(self, value: Any, row: int, what: str = "amount") -> tuple[float, str]:
        """Number and unit of a cell, once all cells were looked at.

        Raises
        ------
        InputError
            No number, or one that may be read in two ways.
        """
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            try:
                return float(value), ""
            except OverflowError:  # a whole number of hundreds of digits
                raise InputError(f"row {row}", f"{what} is {shown(value)}; accepted is a number") from None
        found = _NUMBER.fullmatch(value.strip()) if isinstance(value, str) else None
        if found is None:
            raise InputError(f"row {row}", f"{what} is {shown(value)}; accepted is a number")
        digits, unit = found[2].strip(), found[3].strip()
        sign = next(iter(self._told), "")
        if not sign and ("." in digits or "," in digits):
            raise InputError(
                f"row {row}",
                f"{what} is {shown(value)}: no row tells whether its sign is decimal; accepted is "
                f'{self._option} "... , decimal={POINT}" or "decimal={COMMA}"',
            )
        mark, group = (".", ",") if sign != COMMA else (",", ".")
        if digits.isdigit():
            return float(f"{found[1]}{digits}"), unit
        whole, _, rest = digits.partition(mark)
        parts = re.split(rf"[{group}'’\u00a0\u202f ]", whole)
        right = len(parts) == 1 or (0 < len(parts[0]) <= 3 and all(len(part) == 3 for part in parts[1:]))
        if not right or (mark in digits and not rest) or not (rest or "0").isdigit() or not all(parts):
            raise InputError(
                f"row {row}", f"{what} is {shown(value)}; accepted is a number with a decimal {sign or POINT}"
            )
        return float(f"{found[1]}{''.join(parts)}.{rest or 0}"), unit


def _sign_of(digits: str) -> str:
    """The decimal sign that a number tells by itself; "" where it has none, or may be read in two ways.

    Examples
    --------
    >>> [_sign_of(text) for text in ("1.5", "1,25", "1.234,5", "1,234,567", "1.200", "1200")]
    ['point', 'comma', 'comma', 'point', '', '']
    """
    points, commas = digits.count("."), digits.count(",")
    if points and commas:
        return POINT if digits.rfind(".") > digits.rfind(",") else COMMA
    if not points and not commas:
        return ""
    here, other = (POINT, COMMA) if points else (COMMA, POINT)
    if points + commas > 1:
        return other
    whole, rest = re.split("[.,]", digits)
    return "" if len(rest) == 3 and 1 <= len(whole) <= 3 and not whole.startswith("0") else here
