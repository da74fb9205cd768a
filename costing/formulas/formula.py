"""One registered formula: an equation with a name, a result and an example."""

from __future__ import annotations

import inspect
import math
from collections.abc import Mapping
from functools import cache
from typing import Any, Callable, NamedTuple

from costing.book.lye_scale import house_value, scale_of, scale_value
from costing.quantities import InputError, Quantity, check, from_house, label, quantity, to_house
from costing.quantities.units import canonical, convert

PREFIX = "WARP_"


class Formula(NamedTuple):
    """An equation as the spreadsheet and the command line see it.

    Attributes
    ----------
    function : callable
        The equation, in house units.
    result : str
        Name of the quantity that it gives.
    example : mapping
        Argument -> number in the argument's usual unit; a run that a dyer would recognise.
    """

    function: Callable[..., Any]
    result: str
    example: Mapping[str, float]

    @property
    def name(self) -> str:
        """The name in a cell: the prefix and the function's name in capitals."""
        return PREFIX + self.function.__name__.upper()

    @property
    def help(self) -> str:
        """First line of the function's docstring."""
        return inspect.getdoc(self.function).split("\n", 1)[0]  # type: ignore[union-attr]

    @property
    def arguments(self) -> list[Quantity]:
        """The quantities that the arguments are, in order."""
        return [quantity(name) for name in parameters(self.function)]

    @property
    def defaults(self) -> dict[str, float]:
        """Arguments that may be left out, in house units."""
        return {
            name: parameter.default
            for name, parameter in parameters(self.function).items()
            if parameter.default is not inspect.Parameter.empty
        }

    def calculate(self, values: Mapping[str, Any], result_unit: str | None = None) -> float:
        """Calculate from values in the usual units.

        Parameters
        ----------
        values : mapping
            Argument -> a number in its usual unit, or a pair (number, unit).
        result_unit : str, optional
            Unit of the answer; the result's usual unit when left out.

        Returns
        -------
        float
            The answer in `result_unit`.

        Raises
        ------
        InputError
            An unknown, missing, out-of-range or unlike argument; an unknown or unlike unit.
        """
        house = {}
        for item in self.arguments:
            given = values.get(item.name)
            if given is None or given == "":
                if item.name not in self.defaults:
                    check(item.name, None, self.name)
                continue
            house[item.name] = self._house_value(item, given)
        unknown = [name for name in values if name not in {item.name for item in self.arguments}]
        if unknown:
            accepted = ", ".join(item.name for item in self.arguments)
            raise InputError(self.name, f"{unknown[0]} is not an argument; accepted are: {accepted}")
        answer = quantity(self.result)
        try:
            value = self.function(**house)
        except InputError as error:
            raise InputError(self.name, str(error)) from error
        except (ArithmeticError, ValueError) as error:
            raise InputError(self.name, f"cannot be calculated with these values ({error})") from error
        if not math.isfinite(value):
            raise InputError(self.name, f"cannot be calculated with these values (it gives {value})")
        if result_unit is None:
            return from_house(value, answer.usual, answer.unit)
        if scale := scale_of(answer.name, result_unit):
            return self._on_scale(scale_value, answer, value, scale)
        return self._converted(label(answer.name), value, answer.unit, result_unit)

    def _house_value(self, item: Quantity, given: Any) -> float:
        number, unit = given if isinstance(given, tuple) else (given, item.usual)
        if isinstance(number, bool) or not isinstance(number, (int, float)):
            check(item.name, number, self.name)
        if unit == item.usual:
            return check(item.name, to_house(number, item.usual, item.unit), self.name)
        if scale := scale_of(item.name, unit):
            return check(item.name, self._on_scale(house_value, item, number, scale), self.name)
        return check(item.name, self._converted(label(item.name), number, unit, item.unit), self.name)

    def _on_scale(
        self, of: Callable[[Quantity, float, str], float], item: Quantity, value: float, scale: str
    ) -> float:
        try:
            return of(item, value, scale)
        except InputError as error:
            raise InputError(self.name, error.message) from error

    def _converted(self, what: str, number: float, unit: str, target: str) -> float:
        try:
            canonical(unit)
            return convert(number, unit, target)
        except KeyError:
            raise InputError(self.name, f"{what}: the unit {unit!r} is not known") from None
        except ValueError as error:
            raise InputError(self.name, f"{what}: {error}") from None


@cache
def parameters(function: Callable[..., Any]) -> dict[str, inspect.Parameter]:
    """Arguments of an equation: all but what follows a bare star, which is for tests with units."""
    return {
        name: parameter
        for name, parameter in inspect.signature(function).parameters.items()
        if parameter.kind is not inspect.Parameter.KEYWORD_ONLY
    }
