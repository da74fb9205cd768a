"""A step in one box of one liquor: treatments of any kind, and what every such box says."""

from __future__ import annotations

from collections.abc import Sequence
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


def in_places(step: object, what: str, places: Sequence[str] = PLACES) -> list[tuple[str, float]]:
    """Product and its dose or share, of each of the places that is filled."""
    given = ((getattr(step, f"{place}_product"), getattr(step, f"{place}_{what}")) for place in places)
    return [(product, value) for product, value in given if product]


def check_doses(step: object, name: str, places: Sequence[str] = PLACES) -> None:
    """Refuse a product without its dose, and a dose without its product."""
    for place in places:
        product, dose = getattr(step, f"{place}_product"), getattr(step, f"{place}_dose")
        if bool(product) != (dose is not None):
            what = f"{place} product is {product!r}" if product else f"{place} dose is given"
            other = "dose" if product else "product"
            raise InputError(
                name, f"{what} and {place} {other} is empty; accepted is both filled or both empty"
            )


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
        "peroxide_taken",
        "peroxide_broken_down",
        "reductant_left",
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
    peroxide_taken: float
    peroxide_broken_down: float
    reductant_left: float
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
        check_doses(self, self.name)
        if not self.products:
            raise InputError(
                self.name, "no product and no dose is given; accepted is at least one of five with its dose"
            )

    @property
    def products(self) -> list[tuple[str, float]]:
        """Code and dose of each product given, in g/L of the house unit [kg/L]."""
        return in_places(self, "dose")
