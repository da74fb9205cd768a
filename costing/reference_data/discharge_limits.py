"""Limits of discharge regulations: presets from texts that were read, and empty forms for the others.

A preset is a start for a mill's own permit table, never a limit by itself: the permit says what holds.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from costing.quantities import InputError
from costing.quantities.units import canonical
from costing.reference_data.table_files import Row, cited, folder, rows

NAME = "limits.csv"
COLUMNS = (
    *(
        "key",
        "preset",
        "regulation",
        "edition",
        "parameter",
        "form",
        "direction",
        "value",
        "value_to",
        "unit",
    ),
    *("basis", "statistic", "number", "per", "point", "adds_to", "source", "locator", "note"),
)

PER_PRODUCT, PER_DAY, CONCENTRATION, VALUE = "load per product", "load per day", "concentration", "value"
BASES = (PER_PRODUCT, PER_DAY, CONCENTRATION, VALUE)

AT_MOST, AT_LEAST, BETWEEN = "at most", "at least", "between"
DIRECTIONS = (AT_MOST, AT_LEAST, BETWEEN)

ONE_DAY, MEAN_OF_DAYS, LONG_TERM = "any one day", "mean of days", "long-term mean"
COMPOSITE, GRAB, AT_ALL_TIMES = "composite of hours", "grab sample", "at all times"
STATISTICS = (ONE_DAY, MEAN_OF_DAYS, LONG_TERM, COMPOSITE, GRAB, AT_ALL_TIMES)
NUMBERED = (MEAN_OF_DAYS, COMPOSITE)

BEFORE_TREATMENT, AFTER_TREATMENT = "before treatment", "after treatment"
BEFORE_MIXING, WHERE_IT_ARISES, INTO_A_SEWER = "before mixing", "where it arises", "into a sewer"
POINTS = (BEFORE_TREATMENT, AFTER_TREATMENT, BEFORE_MIXING, WHERE_IT_ARISES, INTO_A_SEWER)

VERIFY = "verify with your permit"


class LimitRow(NamedTuple):
    """One limit of a regulation, as printed; without a value it is a form to fill in.

    Attributes
    ----------
    key : str
        Preset, parameter and statistic.
    preset : str
        Rows that belong together have the same.
    regulation, edition : str
        Its name, and which text was read.
    parameter, form : str
        What is limited, and as what it is counted.
    direction : str
        One of `DIRECTIONS`.
    value, value_to : float or None
        In `unit`; the second only of a range.
    unit : str
        As printed; "" for a pure number such as pH.
    basis, statistic, point : str
        One of `BASES`, of `STATISTICS` and of `POINTS`; a form may have no statistic.
    number : int
        Days of the mean or hours of the composite; 0 of other statistics.
    per : str
        What a load is counted for.
    adds_to : str
        Preset to which this value is added; "" for most.
    source, locator, note : str
        Where it stands; what else a reader should know.
    """

    key: str
    preset: str
    regulation: str
    edition: str
    parameter: str
    form: str
    direction: str
    value: float | None
    value_to: float | None
    unit: str
    basis: str
    statistic: str
    number: int
    per: str
    point: str
    adds_to: str
    source: str
    locator: str
    note: str

    def text(self) -> str:
        """The limit in words, with edition and section, and the reminder that the permit holds.

        Examples
        --------
        >>> limit_rows()["us_410_g_nsps.cod.30_days"].text()[:76]
        'COD: at most 21.9 kg/t, mean of 30 days, after treatment; US 40 CFR 410, sub'
        """
        what = f"{self.parameter} {self.form}".rstrip()
        parts = (
            f"{what}: {self.value_text()}",
            self.statistic_text(),
            self.point,
        )
        told = ", ".join(filter(None, parts))
        where = ", ".join(filter(None, (self.regulation, self.locator, self.edition)))
        return "; ".join(filter(None, (told, where, self.note, VERIFY)))

    def value_text(self) -> str:
        """Direction, number and unit."""
        if self.value is None:
            return f"no value here [{self.unit}]" if self.unit else "no value here"
        number = f"{self.direction} {self.value:g}"
        if self.value_to is not None:
            number += f" and {self.value_to:g}"
        return f"{number} {self.unit}".rstrip()

    def statistic_text(self) -> str:
        """The statistic with its number of days or hours."""
        return worded_statistic(self.statistic, self.number)


def worded_statistic(statistic: str, number: int) -> str:
    """A statistic with its number of days or hours.

    Examples
    --------
    >>> worded_statistic("mean of days", 30), worded_statistic("composite of hours", 2)
    ('mean of 30 days', 'composite of 2 hours')
    """
    return statistic.replace(" of ", f" of {number} ") if number else statistic


def read_limits(place: Path) -> Mapping[str, LimitRow]:
    """Read the limits of a folder.

    Raises
    ------
    InputError
        At the first row that is refused, naming file and row.
    """
    found: dict[str, LimitRow] = {}
    for row in rows(NAME, COLUMNS, place):
        found[row.cells["key"]] = item = _limit(row, place)
        if item.adds_to and not any(
            other.preset == item.adds_to and _same_kind(other, item) for other in found.values()
        ):
            raise InputError(
                row.where,
                f"adds_to is {item.adds_to!r}, which has no {item.parameter}, "
                f"{item.statistic_text()}, above; accepted is the name of a preset that has",
            )
    return MappingProxyType(found)


@lru_cache
def limit_rows() -> Mapping[str, LimitRow]:
    """All limits and forms by key, as printed.

    Examples
    --------
    >>> limit_rows()["de_annex_38.colour_at_620_nm.2_hours"].value
    3.0
    """
    return read_limits(folder())


@lru_cache
def presets() -> Mapping[str, str]:
    """Name of a preset -> its regulation.

    Examples
    --------
    >>> presets()["us_410_g_bpt"]
    'US 40 CFR 410, subpart G, stock and yarn finishing, BPT'
    """
    return MappingProxyType({row.preset: row.regulation for row in limit_rows().values()})


@lru_cache
def limits_of(preset: str) -> tuple[LimitRow, ...]:
    """The limits that hold under a preset: what it adds to another one is added up, the rest is that one's.

    Raises
    ------
    KeyError
        When there is no such preset.

    Examples
    --------
    A complex finish on a natural fibre is allowed 60 and 20 kg/t on one day:

    >>> [row.value for row in limits_of("us_410_d_bpt_b") if row.parameter == "COD"]
    [80.0, 40.0]
    """
    own = [row for row in limit_rows().values() if row.preset == preset]
    if not own:
        raise KeyError(preset)
    base = own[0].adds_to
    if not base:
        return tuple(own)
    return tuple(_added(row, own) for row in limits_of(base))


def _added(row: LimitRow, additions: list[LimitRow]) -> LimitRow:
    for item in additions:
        if _same_kind(item, row):
            assert row.value is not None  # the reader saw to both
            assert item.value is not None
            return item._replace(
                value=row.value + item.value,
                adds_to="",
                locator=f"{row.locator} and {item.locator}",
                note=f"{row.value:g} + {item.value:g} {row.unit}; {item.note}",
            )
    return row._replace(preset=additions[0].preset, regulation=additions[0].regulation)


def _same_kind(one: LimitRow, other: LimitRow) -> bool:
    return all(
        getattr(one, name) == getattr(other, name)
        for name in ("parameter", "form", "unit", "basis", "statistic", "number", "point", "direction")
    )


def _limit(row: Row, place: Path) -> LimitRow:
    cells = row.cells
    value = row.number("value") if cells["value"] else None
    value_to = row.number("value_to") if cells["value_to"] else None
    direction = row.one_of("direction", DIRECTIONS)
    if (value_to is not None) != (direction == BETWEEN and value is not None):
        raise InputError(row.where, "value_to is filled or empty; accepted is a number where a range has one")
    if value is not None and (value <= 0.0 or (value_to is not None and value_to <= value)):
        raise InputError(row.where, "accepted is a value above 0, and value_to above value")
    if cells["adds_to"] and value is None:
        raise InputError(row.where, "value is empty beside adds_to; accepted is a number")
    statistic = row.one_of("statistic", STATISTICS if value is not None else ("", *STATISTICS))
    number = row.number("number") if cells["number"] else 0.0
    if (number > 0.0) != (statistic in NUMBERED) or number != int(number):
        raise InputError(
            row.where,
            f"number is {cells['number']!r}; accepted is a whole number for {' and '.join(NUMBERED)}, "
            "else nothing",
        )
    try:
        canonical(cells["unit"])
    except KeyError:
        raise InputError(
            row.where, f"unit is {cells['unit']!r}; accepted is a unit of the unit table"
        ) from None
    source, locator = cited(row, place)
    return LimitRow(
        key=row.text("key"),
        preset=row.text("preset"),
        regulation=row.text("regulation"),
        edition=cells["edition"],
        parameter=row.text("parameter"),
        form=cells["form"],
        direction=direction,
        value=value,
        value_to=value_to,
        unit=cells["unit"],
        basis=row.one_of("basis", BASES),
        statistic=statistic,
        number=int(number),
        per=cells["per"],
        point=row.one_of("point", POINTS),
        adds_to=cells["adds_to"],
        source=source,
        locator=locator,
        note=cells["note"],
    )
