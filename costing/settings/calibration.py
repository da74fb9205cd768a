"""Calibrations: values that the mill's own records gave for what the tables would else say."""

from __future__ import annotations

import datetime
from collections.abc import Container, Iterable
from dataclasses import dataclass
from typing import Optional

from costing.quantities import InputError, check, label
from costing.reference_data import Default
from costing.settings.building import Assumption, default_key


@dataclass(frozen=True)
class CalibratedFactor:
    """One value of a calibration, in place of a typical value. House units.

    `range` and `step` say where it counts, "" everywhere; `low` and `high` are between what it lies.
    """

    calibration: str
    calibration_date: datetime.date
    range: str
    step: str
    quantity: str
    value: float
    low: float
    high: float
    note: str = ""
    where: str = ""

    def __post_init__(self) -> None:
        for number in (self.value, self.low, self.high):
            check(self.quantity, number, self.where)
        if not self.low <= self.value <= self.high:
            raise InputError(
                self.where,
                f"{label(self.quantity)} of calibration {self.calibration!r} does not lie between its "
                "low and "
                "high; accepted is low, value and high in rising order",
            )

    @property
    def source(self) -> str:
        """Where a value comes from, as people read it."""
        return f"calibration {self.calibration} of {self.calibration_date}"

    def in_place_of(self, row: Default) -> Default:
        """A typical value with this one and its ends and source in place of its own."""
        return row._replace(
            value=self.value,
            low=self.low,
            high=self.high,
            contested=False,
            source=self.source,
            locator=self.where,
            note=self.note,
        )

    def counts_for(self, range_: str, step: str, quantity: str) -> bool:
        """Whether it speaks of a number of a step on a range."""
        return quantity == self.quantity and self.range in ("", range_) and self.step in ("", step)


def factor_for(
    rows: Iterable[CalibratedFactor], range_: str, step: str, quantity: str
) -> Optional[CalibratedFactor]:  # noqa: UP045 read by an older Python
    """The row that speaks of a number: one that names the step before one for all, then one of the range."""
    found = [row for row in rows if row.counts_for(range_, step, quantity)]
    return max(found, key=lambda row: (row.step != "", row.range != ""), default=None)


def calibrated_of(
    rows: Iterable[CalibratedFactor],
    name: str,
    assumptions: Container[Assumption],
    owner: str,
    groups: tuple[str, ...],
    range_: str,
    step: str,
) -> dict[Assumption, CalibratedFactor]:
    """Defaults that a step took on a range -> the row of a calibration that counts in place of each.

    Parameters
    ----------
    rows : iterable of CalibratedFactor
        Of all calibrations.
    name : str
        Of the one that counts.
    assumptions : container of Assumption
        Defaults that were taken.
    owner, groups
        As of `costing.settings.building.build`.
    range_, step : str
        Code and name.
    """
    counting = [row for row in rows if row.calibration == name]
    found = {}
    for quantity in dict.fromkeys(row.quantity for row in counting):
        taken = Assumption(owner, default_key(groups, quantity))
        row = factor_for(counting, range_, step, quantity)
        if row is not None and taken in assumptions:
            found[taken] = row
    return found
