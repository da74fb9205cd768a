"""The one branch that equations may take, the one question before they refuse, and functions of arrays."""

from __future__ import annotations

import math
from typing import Any, Callable, TypeVar

T = TypeVar("T")


def where(test: Any, yes: Any, no: Any) -> Any:
    """Choose by a test that is one truth value or an array of them.

    Parameters
    ----------
    test : bool or array of bool
        The test.
    yes, no : Any
        What to give where the test holds, and where it does not.

    Examples
    --------
    >>> where(2.0 > 1.0, "yes", "no")
    'yes'
    """
    if test is True or test is False:
        return yes if test else no
    if hasattr(test, "shape"):
        import numpy  # only an array caller pays for it

        return numpy.where(test, yes, no).view(type(test))
    return yes if test else no


def not_negative(value: T) -> T:
    """The value where it is above zero, else zero.

    Examples
    --------
    >>> not_negative(-0.2)
    0.0
    """
    number: Any = value
    kept: T = where(number > 0, number, number - number)  # the difference keeps the unit of a quantity
    return kept


def larger(one: T, other: T) -> T:
    """The larger of two, element by element of arrays.

    Examples
    --------
    >>> larger(2.0, 3.0)
    3.0
    """
    chosen: T = where(one > other, one, other)  # type: ignore[operator]
    return chosen


def smaller(one: T, other: T) -> T:
    """The smaller of two, element by element of arrays.

    Examples
    --------
    >>> smaller(2.0, 3.0)
    2.0
    """
    chosen: T = where(one < other, one, other)  # type: ignore[operator]
    return chosen


def is_nothing(amount: Any) -> bool:
    """Whether there is nothing at all: zero, or zero throughout an array.

    Examples
    --------
    >>> is_nothing(0.0)
    True
    """
    if amount.__class__ is float:  # asking a plain number for what arrays have takes longer than the answer
        return not amount
    return not (amount.any() if hasattr(amount, "any") else amount)


def holds(test: Any) -> bool:
    """Whether a test holds: one truth value, or an array of them, all of which must.

    Examples
    --------
    >>> holds(2.0 > 1.0)
    True
    """
    if test is True or test is False:
        return bool(test)
    return bool(test.all() if hasattr(test, "all") else test)


def expm1(value: Any) -> Any:
    """Power of e less one, of one number or of an array, exact near zero.

    Examples
    --------
    >>> expm1(0.0)
    0.0
    """
    return _by_name("expm1", value)


def anywhere(test: Any) -> bool:
    """Whether a test holds: one truth value, or an array of them, any of which may.

    Examples
    --------
    >>> anywhere(2.0 > 1.0)
    True
    """
    if test is True or test is False:
        return bool(test)
    return bool(test.any() if hasattr(test, "any") else test)


def log10(value: Any) -> Any:
    """Power of ten of one number or of an array.

    Examples
    --------
    >>> log10(1000.0)
    3.0
    """
    return _by_name("log10", value)


def exp(value: Any) -> Any:
    """Power of e of one number or of an array.

    Examples
    --------
    >>> exp(0.0)
    1.0
    """
    return _by_name("exp", value)


def log(value: Any) -> Any:
    """Natural logarithm of one number or of an array.

    Examples
    --------
    >>> log(1.0)
    0.0
    """
    return _by_name("log", value)


def normal_share(deviation: Any) -> Any:
    """Share of a normal distribution that lies below its mean and so many standard deviations.

    Examples
    --------
    >>> normal_share(0.0), round(normal_share(1.645), 4)
    (0.5, 0.95)
    """
    return _each(_normal_share, deviation)


def normal_deviation(share: Any) -> Any:
    """How many standard deviations above its mean a share of a normal distribution ends.

    Examples
    --------
    >>> round(normal_deviation(0.95), 4)
    1.6449
    """
    from statistics import NormalDist  # only what asks for it pays for it

    return _each(NormalDist().inv_cdf, share)


def _normal_share(deviation: float) -> float:
    return 0.5 * math.erfc(-deviation / math.sqrt(2.0))


def _by_name(name: str, value: Any) -> Any:
    """A function that the library of numbers and that of arrays both have."""
    if hasattr(value, "shape"):
        import numpy  # only an array caller pays for it

        return getattr(numpy, name)(value)
    return getattr(math, name)(float(value))


def _each(function: Callable[[float], float], value: Any) -> Any:
    """A function of one number, of a number or of each in an array."""
    if hasattr(value, "shape"):
        import numpy  # only an array caller pays for it

        return numpy.vectorize(function, otypes=[float])(value)
    return function(float(value))
