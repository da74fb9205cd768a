"""Threads in the cloth: crimp and take-up, ends, widths in the reed and in the cloth.

Two habits of mills hide an error of several per cent, so both are spelled out here:

* *Crimp* is taken on the cloth length, *take-up* on the warp length. 8 % of one is not 8 % of the other.
* A pick is as long as the warp is wide in the reed. Take the reed width and no weft crimp, or the cloth
  width and the weft crimp: never both. A density of ends belongs to the width it was counted on.
"""

from __future__ import annotations

from typing import Any

from costing.construction.whole_numbers import whole_up


def crimp_from_take_up(take_up: Any) -> Any:
    """Crimp on the cloth length from take-up on the warp length.

    Parameters
    ----------
    take_up : float
        Share of the warp length that weaving takes up [fraction].

    Returns
    -------
    float
        Yarn length over cloth length, less one [fraction].

    Notes
    -----
    ``c = t / (1 - t)``

    Examples
    --------
    >>> round(crimp_from_take_up(0.08), 4)
    0.087

    References
    ----------
    crimp-page, problem 1
    """
    return take_up / (1.0 - take_up)


def take_up_from_crimp(crimp: Any) -> Any:
    """Take-up on the warp length from crimp on the cloth length.

    Parameters
    ----------
    crimp : float
        Yarn length over cloth length, less one [fraction].

    Returns
    -------
    float
        Share of the warp length that weaving takes up [fraction].

    Notes
    -----
    ``t = c / (1 + c)``

    Examples
    --------
    >>> round(take_up_from_crimp(0.08), 4)
    0.0741

    References
    ----------
    crimp-page, problem 1
    """
    return crimp / (1.0 + crimp)


def ends_from_density(ends_density: Any, width: Any, selvedge_ends: Any = 0.0) -> Any:
    """Ends over the full width, as calculated, with its fraction.

    Leaves out rounding: `whole_ends_from_density` rounds up to ends that can be warped.

    Parameters
    ----------
    ends_density : float
        Ends per length of width, counted on the same basis as the width [1/m].
    width : float
        Width of the cloth or in the reed [m].
    selvedge_ends : float, optional
        Extra ends of both selvedges together [whole number].

    Returns
    -------
    float
        Ends [number].

    Notes
    -----
    ``N = E W + N_s``

    Examples
    --------
    >>> round(ends_from_density(ends_density=2480.0, width=1.66, selvedge_ends=40), 1)
    4156.8

    References
    ----------
    taylor-cotton-weaving, p. 245
    """
    return ends_density * width + selvedge_ends


def whole_ends_from_density(ends_density: Any, width: Any, selvedge_ends: Any = 0.0) -> Any:
    """Ends over the full width, rounded up to whole ends.

    Parameters
    ----------
    ends_density : float
        Ends per length of width, counted on the same basis as the width [1/m].
    width : float
        Width of the cloth or in the reed [m].
    selvedge_ends : float, optional
        Extra ends of both selvedges together [whole number].

    Returns
    -------
    float
        Whole ends [whole number].

    Notes
    -----
    ``N = ceil(E W + N_s)``

    Examples
    --------
    >>> whole_ends_from_density(ends_density=2480.0, width=1.66, selvedge_ends=40)
    4157.0

    References
    ----------
    taylor-cotton-weaving, p. 245
    """
    return whole_up(ends_from_density(ends_density, width, selvedge_ends))


def cloth_width_from_reed_width(reed_width: Any, weft_crimp: Any) -> Any:
    """Width of the loom-state cloth from the width in the reed.

    Parameters
    ----------
    reed_width : float
        Width of the warp in the reed, which is the length of one pick [m].
    weft_crimp : float
        Weft crimp, of the cloth width [fraction].

    Returns
    -------
    float
        Width of the cloth [m].

    Notes
    -----
    ``W_cloth = W_reed / (1 + c_2)``

    Examples
    --------
    >>> round(cloth_width_from_reed_width(reed_width=1.71, weft_crimp=0.03), 3)
    1.66
    """
    return reed_width / (1.0 + weft_crimp)


def reed_width_from_cloth_width(cloth_width: Any, weft_crimp: Any) -> Any:
    """Width in the reed, and so the length of one pick, from the width of the loom-state cloth.

    Parameters
    ----------
    cloth_width : float
        Width of the cloth [m].
    weft_crimp : float
        Weft crimp, of the cloth width [fraction].

    Returns
    -------
    float
        Width of the warp in the reed [m].

    Notes
    -----
    ``W_reed = W_cloth (1 + c_2)``

    Examples
    --------
    >>> round(reed_width_from_cloth_width(cloth_width=1.66, weft_crimp=0.03), 4)
    1.7098

    References
    ----------
    denier-page, worked problem
    """
    return cloth_width * (1.0 + weft_crimp)
