"""Whole numbers of things: half a rope does not run.

A ratio of two floats that should be 10 may come out as 10.000000000000002, and the ceiling of that is
a rope too many. A ratio within one part in 10^9 above (below) a whole number therefore counts as that
number; 10,500 ends would have to be wrong by a hundred-thousandth of an end to be counted wrongly.
"""

from __future__ import annotations

from typing import Any

TOLERANCE = 1e-9  # relative; far above the noise of a float, far below anything that is counted


def whole_up(ratio: Any) -> Any:
    """Smallest whole number that is not below a ratio.

    Written with floor division, so that a float, an array and a dimensionless quantity all pass.

    Parameters
    ----------
    ratio : float
        What is counted, not negative [number].

    Returns
    -------
    float
        The number [whole number].

    Examples
    --------
    >>> whole_up(10.000000001), whole_up(10.001)
    (10.0, 11.0)
    """
    return -((-ratio * (1.0 - TOLERANCE)) // 1.0)


def whole_down(ratio: Any) -> Any:
    """Largest whole number that is not above a ratio.

    Parameters
    ----------
    ratio : float
        What is counted, not negative [number].

    Returns
    -------
    float
        The number [whole number].

    Examples
    --------
    >>> whole_down(2.9999999999), whole_down(2.999)
    (3.0, 2.0)
    """
    return (ratio * (1.0 + TOLERANCE)) // 1.0
