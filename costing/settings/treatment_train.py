"""What treats the water of a collecting point, what the sewer charges for it, and what running that costs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from costing.quantities import InputError, label
from costing.settings.building import check_fields

BUILT, PLANNED = "built", "planned"


@dataclass(frozen=True)
class TrainStage:
    """A stage of the train behind a point.

    Attributes
    ----------
    point : str
        Code of the point.
    number : int
        Place in the order of the flow.
    step : str
        A step of ``treatment.csv``, or one of the two neutralisations.
    stands : str
        built, or planned: a planned one is worked out beside what is built, and changes no charge.
    settings : mapping
        Quantity -> value in its house unit.
    own_removal : mapping
        What (as in ``treatment.csv``) -> removal that the mill measured [fraction].
    where : str
        Sheet and cell.
    """

    point: str
    number: int
    step: str
    stands: str = BUILT
    settings: Mapping[str, float] = field(default_factory=dict)
    own_removal: Mapping[str, float] = field(default_factory=dict)
    where: str = ""


@dataclass(frozen=True)
class SewerCharge:
    """What is due for each volume that leaves a point: one price, or terms by strength. House units.

    Terms by strength are those of `costing.effluent.charge.charge_by_strength`. `minimum_charge` is due in a
    month in any case. `treatment_charge` is what the mill's own treatment costs for each volume collected; it
    is taken as typed, never worked out.
    """

    PLAIN: ClassVar[str] = "effluent_charge"
    TERMS: ClassVar[tuple[str, ...]] = (
        "reception_charge",
        "volume_charge",
        "biology_charge",
        "sludge_charge",
        "reference_demand",
        "reference_solids",
    )

    point: str
    effluent_charge: float | None = None
    reception_charge: float | None = None
    volume_charge: float | None = None
    biology_charge: float | None = None
    sludge_charge: float | None = None
    reference_demand: float | None = None
    reference_solids: float | None = None
    minimum_charge: float = 0.0
    treatment_charge: float = 0.0
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where)
        given = [name for name in self.TERMS if getattr(self, name) is not None]
        if self.effluent_charge is not None and given:
            raise InputError(
                self.where,
                f"both {label(self.PLAIN)} and {label(given[0])} are filled; accepted is one price for each "
                "volume, or the terms by strength",
            )
        missing = [name for name in self.TERMS if name not in given]
        if self.effluent_charge is None and missing:
            what = ", ".join(map(label, missing))
            raise InputError(
                self.where,
                f"{what} empty; accepted is {label(self.PLAIN)} alone, or all six terms by strength (0 for "
                "what is not charged)",
            )

    @property
    def by_strength(self) -> bool:
        """True where dirtier water costs more."""
        return self.effluent_charge is None


@dataclass(frozen=True)
class TreatmentPrices:
    """Prices of running a train, and the water that comes back from it. House units.

    Attributes
    ----------
    point : str
        Code of the point.
    acid_price, carbon_dioxide_price, coagulant_price : float or None
        Of the pure acid and gas, and of the coagulant as dosed [money/kg].
    cake_price : float or None
        Of carting the cake of the press away [money/kg].
    aeration_power : float or None
        Power for each oxygen that biology takes [kWh/kg].
    treatment_power : float or None
        All other power for each volume [kWh/L].
    cake_dryness : float or None
        [fraction]
    returned_share : float
        Treated water that goes back to the range [fraction].
    salt_ceiling : float or None
        Dissolved solids that the water taken by the range may hold [kg/L].
    where : str
        Sheet and cell.
    """

    point: str
    acid_price: float | None = None
    carbon_dioxide_price: float | None = None
    coagulant_price: float | None = None
    cake_price: float | None = None
    aeration_power: float | None = None
    treatment_power: float | None = None
    cake_dryness: float | None = None
    returned_share: float = 0.0
    salt_ceiling: float | None = None
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where)
