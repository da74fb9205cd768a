"""Density of caustic lye against its strength, at one temperature."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from costing.quantities import InputError
from costing.reference_data.table_files import cited, folder, rows

COLUMNS = ("mass_share", "density", "source", "locator", "note")


class LyeDensity(NamedTuple):
    """One row.

    Attributes
    ----------
    share : float
        NaOH in the lye, by mass [fraction].
    density : float
        At 25 degC [kg/L].
    source, locator : str
        Where it comes from.
    """

    share: float
    density: float
    source: str
    locator: str


def read_caustic_density(place: Path) -> tuple[LyeDensity, ...]:
    """Read the table of a folder.

    Raises
    ------
    InputError
        Fewer than two rows, or one that is not above the row before in strength and in density.
    """
    found: list[LyeDensity] = []
    for row in rows("caustic_density.csv", COLUMNS, place):
        item = LyeDensity(row.number("mass_share") / 100.0, row.number("density"), *cited(row, place))
        if found and not (item.share > found[-1].share and item.density > found[-1].density):
            raise InputError(
                row.where,
                f"mass_share is {100.0 * item.share:g} and density {item.density:g}; accepted are both above "
                "the row before",
            )
        found.append(item)
    if len(found) < 2:
        raise InputError("caustic_density.csv", f"has {len(found)} rows; accepted is two or more")
    return tuple(found)


@lru_cache
def caustic_density() -> tuple[LyeDensity, ...]:
    """The table, weakest lye first.

    Examples
    --------
    >>> caustic_density()[-1].share, caustic_density()[-1].density
    (0.5, 1.5217)
    """
    return read_caustic_density(folder())
