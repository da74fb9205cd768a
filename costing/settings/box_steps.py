"""Steps in one box of one liquor: treatments of any kind, and sulfur dye."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError
from costing.settings.building import check_fields

PLACES = ("first", "second", "third", "fourth", "fifth")

BOX_RANGE = (
    "pick_up",
    "exchange",
    "tank_volume",
    "heated_surface",
    "surface_heat_loss",
    "heat_recovered",
    "power",
)


def in_places(step: object, what: str) -> list[tuple[str, float]]:
    """Product and its dose or share, of each of the five places that is filled."""
    given = ((getattr(step, f"{place}_product"), getattr(step, f"{place}_{what}")) for place in PLACES)
    return [(product, value) for product, value in given if product]


@dataclass(frozen=True)
class Treatment:
    """A box of up to five products: oxidation, fixing, soap, softener, caustic, acid, bleach liquor."""

    KIND: ClassVar[str] = "treatment"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "dose_basis",
        *(f"{place}_{what}" for place in PLACES for what in ("product", "dose")),
        "box_temperature",
        "box_overflow",
        "auxiliary_uptake",
        "peroxide_broken_down",
        "feed_ratio",
        "weight_loss",
        "ash_share",
        "caustic_neutralised",
        "oxygen_demand",
    )
    RANGE: ClassVar[tuple[str, ...]] = BOX_RANGE

    name: str
    box_temperature: float
    box_overflow: float
    auxiliary_uptake: float
    peroxide_broken_down: float
    feed_ratio: float
    weight_loss: float
    ash_share: float
    caustic_neutralised: float
    oxygen_demand: float
    pick_up: float
    exchange: float
    tank_volume: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    heat_recovered: float = 0.0
    dose_basis: str = "as delivered"
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

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        for place in PLACES:
            product, dose = getattr(self, f"{place}_product"), getattr(self, f"{place}_dose")
            if bool(product) != (dose is not None):
                what = f"{place} product is {product!r}" if product else f"{place} dose is given"
                other = "dose" if product else "product"
                raise InputError(
                    self.name,
                    f"{what} and {place} {other} is empty; accepted is both filled or both empty",
                )
        if not self.products:
            raise InputError(
                self.name, "no product and no dose is given; accepted is at least one of five with its dose"
            )

    @property
    def products(self) -> list[tuple[str, float]]:
        """Code and dose of each product given, in g/L of the house unit [kg/L]."""
        return in_places(self, "dose")


@dataclass(frozen=True)
class SulfurDyeing:
    """A box of reduced sulfur dye with a sky behind it: bottom, top or the whole shade."""

    KIND: ClassVar[str] = "sulfur"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "sulfur_dye_product",
        "reductant_product",
        "caustic_product",
        "wetting_agent_product",
        "other_product",
        "dye_on_yarn",
        "dye_fixation",
        "extra_uptake",
        "reductant_ratio",
        "bath_reductant",
        "bath_caustic",
        "bath_wetting_agent",
        "other_dose",
        "bath_temperature",
        "box_overflow",
        "feed_ratio",
    )
    RANGE: ClassVar[tuple[str, ...]] = (*BOX_RANGE, "reductant_left", "bath_kept")

    name: str
    sulfur_dye_product: str
    reductant_product: str
    caustic_product: str
    wetting_agent_product: str
    dye_on_yarn: float
    dye_fixation: float
    extra_uptake: float
    reductant_ratio: float
    bath_reductant: float
    bath_caustic: float
    bath_wetting_agent: float
    bath_temperature: float
    box_overflow: float
    feed_ratio: float
    pick_up: float
    exchange: float
    tank_volume: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    reductant_left: float
    bath_kept: float
    heat_recovered: float = 0.0
    other_product: str = ""
    other_dose: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        if bool(self.other_product) != (self.other_dose is not None):
            raise InputError(
                self.name,
                "other product and other dose: one is empty; accepted is both filled or both empty",
            )
