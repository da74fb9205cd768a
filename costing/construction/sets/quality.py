"""Metres made and metres of first quality."""

from __future__ import annotations

from typing import Any


def first_quality_share(off_shade_share: Any, seconds_share: Any) -> Any:
    """Share of the metres made that are of first quality.

    Leaves out the metres lost at the start of each set: those are run and never counted as made.

    Parameters
    ----------
    off_shade_share : float
        Metres off shade, of the metres made [fraction].
    seconds_share : float
        Metres of second quality, of the metres made [fraction].

    Returns
    -------
    float
        Share [fraction].

    Notes
    -----
    ``1 - o - s``

    Examples
    --------
    >>> round(first_quality_share(off_shade_share=0.02, seconds_share=0.03), 4)
    0.95
    """
    return 1.0 - off_shade_share - seconds_share


def length_to_make(first_quality_length: Any, off_shade_share: Any, seconds_share: Any) -> Any:
    """Length to make so that enough of it is of first quality.

    Parameters
    ----------
    first_quality_length : float
        Length of first quality that is ordered [m].
    off_shade_share : float
        Metres off shade, of the metres made [fraction].
    seconds_share : float
        Metres of second quality, of the metres made [fraction].

    Returns
    -------
    float
        Length to make [m].

    Notes
    -----
    ``L_made = L_first / (1 - o - s)``

    Examples
    --------
    >>> round(length_to_make(9500.0, off_shade_share=0.02, seconds_share=0.03), 6)
    10000.0
    """
    return first_quality_length / first_quality_share(off_shade_share, seconds_share)
