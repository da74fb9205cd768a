"""Lettered sub-lots of a long set, by where they lie in the tub."""

from __future__ import annotations

from typing import NamedTuple

from costing.construction.whole_numbers import whole_up
from costing.quantities import check

ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


class Sublot(NamedTuple):
    """One part of a set that is kept and shaded apart.

    Attributes
    ----------
    letter : str
        A from the top of the tub; AA follows Z.
    position : str
        "top", "middle" or "bottom".
    length : float
        Length [m].
    """

    letter: str
    position: str
    length: float


def sublots(set_length: float, sublot_length: float) -> tuple[Sublot, ...]:
    """Split a long set in sub-lots from the top, the middle and the bottom of the tub.

    A dyed rope is piled in its tub as it comes: what was laid down last lies on top and comes out first.
    Sub-lot A is therefore the last to be dyed.

    Parameters
    ----------
    set_length : float
        Length of the set [m].
    sublot_length : float
        Length of each sub-lot; the last one, at the bottom, takes the remainder [m].

    Returns
    -------
    tuple of Sublot
        From the top to the bottom. A set no longer than one sub-lot is one sub-lot, "top".

    Raises
    ------
    InputError
        A length that is refused.

    Examples
    --------
    >>> for part in sublots(set_length=25000.0, sublot_length=10000.0):
    ...     print(part.letter, part.position, part.length)
    A top 10000.0
    B middle 10000.0
    C bottom 5000.0
    """
    check("set_length", set_length)
    check("sublot_length", sublot_length)
    number = int(whole_up(set_length / sublot_length))
    last = set_length - (number - 1) * sublot_length
    return tuple(
        Sublot(
            letter=_letter(index),
            position="top" if index == 0 else "bottom" if index == number - 1 else "middle",
            length=last if index == number - 1 else sublot_length,
        )
        for index in range(number)
    )


def _letter(index: int) -> str:
    """A to Z, then AA to AZ, BA and on, as columns of a sheet are named."""
    text = ""
    index += 1
    while index:
        index, place = divmod(index - 1, len(ALPHABET))
        text = ALPHABET[place] + text
    return text
