"""Numbers of many cases side by side, one lane for each case.

All equations and balances of the rooms below are written for one case, with a branch here and there that asks
whether there is any liquor, or which of two flows is the larger. `Lanes` lets that same code run on an
array: where all lanes answer a branch alike it goes on, where they do not it stops with `PartedError`, and
`run_parted` runs the two parts one after the other. So no case has code of its own, and every lane comes to
what it would come to alone.
"""

from __future__ import annotations

from typing import Any, Self

import numpy
from numpy.typing import NDArray

Floats = NDArray[numpy.float64]


class PartedError(Exception):
    """A branch that some lanes take and others do not.

    Parameters
    ----------
    taken : array of bool
        Which lanes take it.
    """

    def __init__(self, taken: NDArray[numpy.bool_]) -> None:
        self.taken = taken
        super().__init__(f"{taken.sum()} of {taken.size} lanes take a branch")


class Lanes(numpy.ndarray[Any, Any]):
    """An array of one number for each lane, which answers a branch only where all lanes agree.

    `told` counts how often the number of a lane stood in a text for all of them.
    """

    told = 0

    def __bool__(self) -> bool:
        """Whether all lanes are true, or none; else `PartedError`."""
        there = numpy.count_nonzero(self)
        if there == 0:
            return False
        if there == self.size:
            return True
        raise PartedError(self.view(numpy.ndarray).astype(bool))

    def all(self, *axes: Any, **named: Any) -> Any:
        """Whether all lanes are true; where some are and some are not, `PartedError`."""
        return bool(self)

    def any(self, *axes: Any, **named: Any) -> Any:
        """Whether any lane is true; the first one mostly is, and then no other is asked."""
        return bool(self.item(0)) or numpy.count_nonzero(self) > 0

    def __format__(self, form: str) -> str:
        """The first lane stands for all: what refuses many cases is told again for each of them alone."""
        Lanes.told += 1
        return format(self.flat[0].item(), form)

    # A sum that is carried on must not change the array that it began with.
    def __iadd__(self, other: Any) -> Self:  # type: ignore[misc]
        return self + other  # type: ignore[no-any-return]

    def __isub__(self, other: Any) -> Self:  # type: ignore[override,misc]
        return self - other  # type: ignore[no-any-return]

    def __imul__(self, other: Any) -> Self:  # type: ignore[misc]
        return self * other  # type: ignore[no-any-return]

    def __itruediv__(self, other: Any) -> Self:  # type: ignore[override,misc]
        return self / other  # type: ignore[no-any-return]
