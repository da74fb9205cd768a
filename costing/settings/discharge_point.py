"""A collecting point of the drain and what runs to it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from costing.settings.building import check_fields


@dataclass(frozen=True)
class DischargePoint:
    """One pit or outfall: the water the mill takes, drain and pit, and how loads are counted. House units."""

    GROUPS: ClassVar[tuple[str, ...]] = ("point",)

    code: str
    description: str
    mains_alkalinity: float
    mains_chloride: float
    mains_sulfate: float
    air_temperature: float
    cooled: float
    drain_time: float
    drain_transfer: float
    pit_volume: float
    pit_transfer: float
    dump_time: float
    days_per_month: float
    pit_acidity: float
    bod_of_dye: float
    bod_of_surfactant: float
    bod_of_size: float
    bod_of_extract: float
    bod_of_acid: float
    bod_of_other: float
    immediate_demand: float
    suspended_indigo: float
    suspended_dye: float
    suspended_size: float
    lint: float
    extract_nitrogen: float
    flow_spread: float
    dye_spread: float
    salt_spread: float
    sulfur_spread: float
    demand_spread: float
    bod_spread: float
    solids_spread: float
    other_spread: float
    day_variation: float
    grab_variation: float

    def __post_init__(self) -> None:
        check_fields(self, f"discharge point {self.code}")


@dataclass(frozen=True)
class Production:
    """What of an enquiry runs to a point on a running day, as the mean of a month.

    Attributes
    ----------
    enquiry, point : str
        Codes of the book.
    yarn_per_day, cloth_per_day : float or None
        Saleable grey yarn, or finished cloth: one of the two [kg/h, m/h of 24 hours].
    where : str
        Sheet and cell.
    """

    enquiry: str
    point: str
    yarn_per_day: float | None = None
    cloth_per_day: float | None = None
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where)

    def yarn(self, per_metre: float) -> float:
        """Saleable grey yarn, at so much in a metre of finished cloth [kg/h of 24 hours]."""
        if self.yarn_per_day is not None:
            return self.yarn_per_day
        return (self.cloth_per_day or 0.0) * per_metre


@dataclass(frozen=True)
class OtherFlow:
    """A flow that no enquiry tells: cleaning, sanitary, cooling, softener.

    Attributes
    ----------
    name, point : str
        What it is, and where it runs to.
    flow_per_day : float
        [L/h of 24 hours]
    effluent_temperature : float or None
        None counts as the water taken in [degC].
    acidity : float or None
        None counts as the water taken in.
    concentrations : mapping
        Parameter -> concentration [kg/L].
    where : str
        Sheet and cell.
    """

    name: str
    point: str
    flow_per_day: float
    effluent_temperature: float | None = None
    acidity: float | None = None
    concentrations: Mapping[str, float] = field(default_factory=dict)
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where)
