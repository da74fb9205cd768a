"""Steps of a vessel that dyes beams batch by batch: baths that are filled and drained, and extraction."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError, check
from costing.settings.box_steps import PLACES
from costing.settings.building import check_fields


@dataclass(frozen=True)
class VesselBath:
    """One bath of a vessel: filled, run, drained. With a dye or without."""

    KIND: ClassVar[str] = "bath"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "liquor_ratio",
        "bath_time",
        "batch_dye_product",
        "dye_offered",
        "dye_exhaustion",
        "dye_fixation",
        *(f"{place}_{what}" for place in PLACES for what in ("product", "dose", "on_yarn")),
        "box_temperature",
        "loose_removed",
        "peroxide_taken",
        "peroxide_broken_down",
        "reductant_left",
        "weight_loss",
        "ash_share",
        "caustic_neutralised",
        "oxygen_demand",
    )
    RANGE: ClassVar[tuple[str, ...]] = ("liquor_retained", "heat_recovered", "power")

    name: str
    liquor_ratio: float
    bath_time: float
    box_temperature: float
    loose_removed: float
    peroxide_taken: float
    peroxide_broken_down: float
    reductant_left: float
    weight_loss: float
    ash_share: float
    caustic_neutralised: float
    oxygen_demand: float
    liquor_retained: float
    power: float
    heat_recovered: float = 0.0
    batch_dye_product: str = ""
    dye_offered: float | None = None
    dye_exhaustion: float | None = None
    dye_fixation: float | None = None
    first_product: str = ""
    second_product: str = ""
    third_product: str = ""
    fourth_product: str = ""
    fifth_product: str = ""
    first_dose: float | None = None
    second_dose: float | None = None
    third_dose: float | None = None
    fourth_dose: float | None = None
    fifth_dose: float | None = None
    first_on_yarn: float | None = None
    second_on_yarn: float | None = None
    third_on_yarn: float | None = None
    fourth_on_yarn: float | None = None
    fifth_on_yarn: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        if bool(self.batch_dye_product) != (self.dye_offered is not None):
            raise InputError(
                self.name,
                "batch dye product and dye offered: one is empty; accepted is both filled or both empty",
            )
        if self.batch_dye_product:
            for name in ("dye_exhaustion", "dye_fixation"):
                check(name, getattr(self, name), self.name)
        if self.liquor_ratio <= self.liquor_retained:
            raise InputError(
                self.name,
                f"liquor ratio is {self.liquor_ratio:.3g} L/kg and the yarn keeps {self.liquor_retained:.3g} "
                "L/kg when the bath is drained; accepted is a liquor ratio above that",
            )
        for place in PLACES:
            given = [getattr(self, f"{place}_{what}") is not None for what in ("dose", "on_yarn")]
            if sum(given) != bool(getattr(self, f"{place}_product")):
                raise InputError(
                    self.name,
                    f"{place} product, {place} dose and {place} on yarn: accepted is a product with either "
                    "its dose in g/L or its share of the yarn, or all three empty",
                )

    @property
    def products(self) -> list[tuple[str, float]]:
        """Code and dose as delivered of each product given [kg/L]."""
        found = []
        for place in PLACES:
            code, dose = getattr(self, f"{place}_product"), getattr(self, f"{place}_dose")
            if code:
                on_yarn = getattr(self, f"{place}_on_yarn")
                found.append((code, dose if dose is not None else on_yarn / self.liquor_ratio))
        return found


@dataclass(frozen=True)
class Extraction:
    """Liquor thrown or sucked off the yarn before it is dried."""

    KIND: ClassVar[str] = "extraction"
    RECIPE: ClassVar[tuple[str, ...]] = ()
    RANGE: ClassVar[tuple[str, ...]] = ("extracted_to", "extraction_time", "power")

    name: str
    extracted_to: float
    extraction_time: float
    power: float

    def __post_init__(self) -> None:
        check_fields(self, self.name)


def bath_hours(steps: Sequence[object]) -> float:
    """Hours that the baths of one charge and its extraction take, together [h]."""
    baths = sum(step.bath_time for step in steps if isinstance(step, VesselBath))
    return baths + sum(step.extraction_time for step in steps if isinstance(step, Extraction))
