"""Refuse what makes no sense, in words that name the thing, the value and what is accepted."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, Callable

from costing.quantities.quantity import Quantity
from costing.quantities.table import CHOICES, QUANTITIES, quantity
from costing.quantities.units import from_house, to_house
from costing.quantities.wording import listed, meant

MOST_NAMED = 6  # further places that one line names
SEVERAL = "a value of several"  # so an array is refused, which tells no number
MOST_TOLD = 12  # refusals that are told with a line each


class InputError(ValueError):
    """A refused input: one line that says where, what came and what is accepted.

    Parameters
    ----------
    where : str
        Sheet and cell, file, option or setting; "" when only the name is known.
    message : str
        The thing, the value it got with its unit, and what is accepted.
    more : sequence of InputError, optional
        What else is refused beside it, to be told at once.
    """

    def __init__(self, where: str, message: str, more: Sequence[InputError] = ()) -> None:
        self.where = where
        self.message = message
        self.more = tuple(more)
        said = f"{where}: {message}" if where else message
        if more:
            said += f"; and {len(more)} more: {', '.join(error.where for error in more[:MOST_NAMED])}"
            said += ", ..." * (len(more) > MOST_NAMED)
        super().__init__(said)

    def __reduce__(self) -> tuple[Any, ...]:
        """So that another process gets it whole."""
        return InputError, (self.where, self.message, self.more)

    def at(self, place: Callable[[InputError], str]) -> InputError:
        """The same refusal with the places that a function gives, of all that is refused."""
        return InputError(place(self), self.message, [error.at(place) for error in self.more])

    def told(self) -> list[tuple[str, str]]:
        """Place and message of what is refused, the first ones, and how many there are beside them."""
        every = [(error.where, error.message) for error in (self, *self.more)]
        left = len(every) - MOST_TOLD
        return every if left <= 0 else [*every[:MOST_TOLD], ("", f"and {left} more")]


def refuse_all(errors: Sequence[InputError]) -> None:
    """Refuse for several reasons at once; without any nothing happens.

    Raises
    ------
    InputError
        The first, which has the others with it.
    """
    if errors:
        first, *others = [one for error in errors for one in (error, *error.more)]
        raise InputError(first.where, first.message, others)


def label(name: str) -> str:
    """The name as people read it."""
    return name.replace("_", " ")


def number_text(value: float) -> str:
    """A number without needless digits."""
    return f"{value:,.0f}" if 1e5 <= abs(value) < 1e15 else f"{value:.6g}"


def shown(item: Quantity, value: float) -> str:
    """A house-unit value in the usual unit, with its unit.

    Examples
    --------
    >>> shown(quantity("bath_indigo"), 0.002)
    '2 g/L'
    """
    usual = from_house(value, item.usual, item.unit)
    return f"{number_text(usual)} {item.usual}".strip()


def describe(item: Quantity) -> str:
    """What is accepted, in the usual unit.

    Examples
    --------
    >>> describe(quantity("strength"))
    '1 to 100 %'
    """
    kind = "a whole number from " if item.whole else ""
    return f"{kind}{number_text(item.low)} to {number_text(item.high)} {item.usual}".strip()


def check(name: str, value: object, where: str = "") -> float:
    """Check a house-unit value against the range declared for its name.

    Parameters
    ----------
    name : str
        A name of the table.
    value : object
        What came, in the house unit.
    where : str
        Where it came from.

    Returns
    -------
    float
        The value.

    Raises
    ------
    InputError
        Text, a truth value, nothing, not a number, infinite, out of range or not whole.

    Examples
    --------
    >>> check("strength", 0.88)
    0.88
    >>> check("strength", 88.0)
    Traceback (most recent call last):
    ...
    costing.quantities.checking.InputError: strength is 8800 %, accepted is 1 to 100 %; type 88 % or 0.88
    """
    low, high = LIMITS[name]
    if type(value) is float and low <= value <= high and not QUANTITIES[name].whole:
        return value  # the common case, many times for each quote
    item = quantity(name)
    said = f"accepted is {describe(item)}"
    if value is None or value == "":
        raise InputError(where, f"{label(name)} is empty; {said}")
    if hasattr(value, "shape"):
        checked: float = _check_array(name, value, where)
        return checked
    if isinstance(value, (bool, str)) or not isinstance(value, (int, float)):
        raise InputError(where, f"{label(name)} is {value!r}, not a number; {said}")
    number = float(value)
    if math.isnan(number) or math.isinf(number):
        raise InputError(where, f"{label(name)} is not a finite number ({number}); {said}")
    if not low <= number <= high:
        hint = ""
        if item.unit == "" and item.usual == "%" and 1 < number <= 100:
            hint = f"; type {number_text(number)} % or {number_text(number / 100)}"
        raise InputError(where, f"{label(name)} is {shown(item, number)}, {said}{hint}")
    if item.whole and number != round(number):
        raise InputError(where, f"{label(name)} is {shown(item, number)}; {said}")
    return number


def _check_array(name: str, values: Any, where: str) -> Any:
    """Check an array of house-unit values: all of them are accepted, or they are refused together."""
    low, high = LIMITS[name]
    item = quantity(name)
    good = (low <= values) & (values <= high)
    if item.whole:
        good = good & (values == values // 1.0)
    if not good:
        raise InputError(where, f"{label(name)}: {SEVERAL} is not accepted; accepted is {describe(item)}")
    return values


def _house_limits(item: Quantity) -> tuple[float, float]:
    """Accepted range in the house unit, each limit widened by its own rounding."""
    low = to_house(item.low - 1e-9 * abs(item.low), item.usual, item.unit)
    return low, to_house(item.high + 1e-9 * abs(item.high), item.usual, item.unit)


LIMITS = {name: _house_limits(item) for name, item in QUANTITIES.items()}


def check_choice(name: str, value: object, where: str = "") -> str:
    """Check a word against the list declared for its name; case and blanks do not count.

    Raises
    ------
    InputError
        When the word is not in the list.

    Examples
    --------
    >>> check_choice("width_basis", " Reed")
    'reed'
    """
    accepted = CHOICES[name]
    found = meant(value, accepted) if isinstance(value, str) else None
    if found is None:
        got = "empty" if value in (None, "") else repr(value)
        near = value if isinstance(value, str) else ""
        raise InputError(where, f"{label(name)} is {got}; accepted is one of: {listed(accepted, near)}")
    return found
