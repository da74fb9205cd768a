"""The size box of a sheet range."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError
from costing.settings.box_steps import PLACES, in_places
from costing.settings.building import check_fields

WHOLE = 1e-6  # by which shares that make a whole may miss it


@dataclass(frozen=True)
class Sizing:
    """A size box, with up to five products in the dry size."""

    KIND: ClassVar[str] = "size"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "size_add_on",
        *(f"{place}_{what}" for place in PLACES for what in ("product", "share")),
        "box_temperature",
        "size_loss",
        "size_density",
    )
    RANGE: ClassVar[tuple[str, ...]] = (
        "pick_up",
        "exchange",
        "size_box_volume",
        "heated_surface",
        "surface_heat_loss",
        "power",
    )

    name: str
    size_add_on: float
    first_product: str
    box_temperature: float
    size_loss: float
    size_density: float
    pick_up: float
    exchange: float
    size_box_volume: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    second_product: str = ""
    third_product: str = ""
    fourth_product: str = ""
    fifth_product: str = ""
    first_share: float | None = None
    second_share: float | None = None
    third_share: float | None = None
    fourth_share: float | None = None
    fifth_share: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        for place in PLACES:
            product, share = getattr(self, f"{place}_product"), getattr(self, f"{place}_share")
            if bool(product) != (share is not None):
                what, lacks = ("product", "share") if product else ("share", "product")
                raise InputError(
                    self.name,
                    f"{place} {what} is given and {place} {lacks} is empty; accepted is both or none",
                )
        together = sum(share for _, share in self.products)
        if abs(together - 1.0) > WHOLE:
            raise InputError(
                self.name,
                f"the shares of the dry size come to {100 * together:.6g} % together; accepted is 100 %",
            )

    @property
    def products(self) -> list[tuple[str, float]]:
        """Code and share of the dry size of each product given [fraction]."""
        return in_places(self, "share")
