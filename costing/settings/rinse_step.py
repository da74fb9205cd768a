"""The rinse boxes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError
from costing.settings.building import check_fields


@dataclass(frozen=True)
class Rinse:
    """A row of rinse boxes with fresh water, in counter-current or fed each on its own."""

    KIND: ClassVar[str] = "rinse"
    RECIPE: ClassVar[tuple[str, ...]] = ("rinse_water", "rinse_water_flow", "rinse_temperature")
    RANGE: ClassVar[tuple[str, ...]] = (
        "boxes",
        "rinse_feed",
        "exchange",
        "pick_up",
        "heated_surface",
        "surface_heat_loss",
        "heat_recovered",
        "power",
    )

    name: str
    rinse_temperature: float
    boxes: float
    rinse_feed: str
    exchange: float
    pick_up: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    heat_recovered: float = 0.0
    rinse_water: float | None = None
    rinse_water_flow: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        given = [value for value in (self.rinse_water, self.rinse_water_flow) if value is not None]
        if len(given) != 1:
            what = "both are filled" if given else "both are empty"
            raise InputError(
                self.name, f"rinse water and rinse water flow: {what}; fill one, in L/kg or in m3/h, not both"
            )
