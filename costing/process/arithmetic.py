"""The one branch that equations may take, and the one question before they refuse."""

from __future__ import annotations

import math
from typing import Any


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
    if hasattr(test, "shape"):
        import numpy  # only an array caller pays for it

        return numpy.where(test, yes, no)
    return yes if test else no


def not_negative(value: Any) -> Any:
    """The value where it is above zero, else zero.

    Examples
    --------
    >>> not_negative(-0.2)
    0.0
    """
    return where(value > 0, value, value - value)  # the difference keeps the unit of a quantity


def holds(test: Any) -> bool:
    """Whether a test holds: one truth value, or an array of them, all of which must.

    Examples
    --------
    >>> holds(2.0 > 1.0)
    True
    """
    return bool(test.all() if hasattr(test, "all") else test)


def log10(value: Any) -> Any:
    """Power of ten of one number or of an array.

    Examples
    --------
    >>> log10(1000.0)
    3.0
    """
    if hasattr(value, "shape"):
        import numpy  # only an array caller pays for it

        return numpy.log10(value)
    return math.log10(value)
