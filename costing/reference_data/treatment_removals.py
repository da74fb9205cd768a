"""What a treatment step takes out of each parameter, as it is published."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError
from costing.reference_data.table_files import Row, cited, folder, rows

NAME = "treatment.csv"
COLUMNS = (*("key", "step", "kind", "what", "low", "typical", "high", "scale", "source", "locator", "note"),)
KINDS = ("equalisation", "coagulation", "electrocoagulation", "biology", "filter", "membrane")
WHAT = ("COD, organic", "BOD5", "suspended solids", "unfixed dye", "nitrogen", "dissolved salts")
SCALES = ("", "laboratory", "pilot", "mill")
FROM_MEMORY = "from-memory"
# Judgement: what a mill gets falls short of a laboratory or a pilot by 5 to 15 points.
SHORTFALL = (0.15, 0.10, 0.05)


class Removal(NamedTuple):
    """Removal of one parameter by one step.

    Attributes
    ----------
    step : str
        The step as people call it, with the water it was tried on.
    kind : str
        One of `KINDS`.
    what : str
        One of `WHAT`. Published colour counts for unfixed dye, conductivity for dissolved salts.
    low, typical, high : float
        As published [fraction].
    scale : str
        Where it was measured, "" where that is not known.
    source, locator, note : str
        Where it comes from, and what else a reader should know.
    """

    step: str
    kind: str
    what: str
    low: float
    typical: float
    high: float
    scale: str
    source: str
    locator: str
    note: str

    @property
    def remembered(self) -> bool:
        """True for a figure from memory, which nothing is worked out from."""
        return self.source == FROM_MEMORY

    @property
    def in_a_mill(self) -> tuple[float, float, float]:
        """Low, typical and high as a mill may expect them: less than a laboratory or a pilot gives.

        Examples
        --------
        >>> [round(share, 2) for share in treatment_removals()["activated sludge, denim"][0].in_a_mill]
        [0.74, 0.81, 0.88]
        """
        if self.scale not in ("laboratory", "pilot"):
            return self.low, self.typical, self.high
        low, typical, high = (
            max(0.0, value - less) for value, less in zip((self.low, self.typical, self.high), SHORTFALL)
        )
        return low, typical, high


def read_treatment_removals(place: Path) -> Mapping[str, tuple[Removal, ...]]:
    """Read the table of a folder.

    Parameters
    ----------
    place : Path
        Folder of the tables.

    Raises
    ------
    InputError
        At the first row that is refused, naming file and row.
    """
    found: dict[str, tuple[Removal, ...]] = {}
    for row in rows(NAME, COLUMNS, place):
        item = _removal(row, place)
        others = found.get(item.step, ())
        if any(other.kind != item.kind for other in others):
            raise InputError(row.where, f"kind is {item.kind!r}; accepted is {others[0].kind!r} as above")
        if any(other.what == item.what for other in others):
            raise InputError(row.where, f"{item.what} of {item.step} stands above already")
        found[item.step] = (*others, item)
    return MappingProxyType(found)


@lru_cache
def treatment_removals() -> Mapping[str, tuple[Removal, ...]]:
    """All figures, by step.

    Examples
    --------
    >>> [(item.what, item.typical) for item in treatment_removals()["moving-bed biofilm"]]
    [('COD, organic', 0.82), ('suspended solids', 0.73)]
    """
    return read_treatment_removals(folder())


def _removal(row: Row, place: Path) -> Removal:
    shares = []
    for column in ("low", "typical", "high"):
        percent = row.number(column)
        if not 0.0 <= percent <= 100.0:
            raise InputError(row.where, f"{column} is {percent:g} %; accepted is 0 to 100 %")
        shares.append(percent / 100.0)
    low, typical, high = shares
    if not low <= typical <= high:
        said = ", ".join(row.cells[column] for column in ("low", "typical", "high"))
        raise InputError(row.where, f"low, typical and high are {said} %; accepted is low <= typical <= high")
    return Removal(
        row.text("step"),
        row.one_of("kind", KINDS),
        row.one_of("what", WHAT),
        low,
        typical,
        high,
        row.one_of("scale", SCALES),
        *cited(row, place),
        row.cells["note"],
    )
