"""A box or a pad of dye of any class but indigo: bottom, top or the whole shade."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError, label
from costing.settings.box_steps import BOX_RANGE, PLACES, check_doses, in_places
from costing.settings.building import check_fields

DYE_BOX_PLACES = PLACES[:3]


@dataclass(frozen=True)
class DyeBox:
    """A box of dye with what its class asks for: reductant, caustic, soda, salt, urea, auxiliaries."""

    KIND: ClassVar[str] = "dye box"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "dye_product",
        "reductant_product",
        "caustic_product",
        "wetting_agent_product",
        "dye_on_yarn",
        "dye_fixation",
        "extra_uptake",
        "reductant_ratio",
        "bath_reductant",
        "bath_caustic",
        "bath_wetting_agent",
        *(f"{place}_{what}" for place in DYE_BOX_PLACES for what in ("product", "dose")),
        "bath_temperature",
        "box_overflow",
        "feed_ratio",
    )
    RANGE: ClassVar[tuple[str, ...]] = (*BOX_RANGE, "reductant_left", "bath_kept")
    # A default that is taken only where the product is named.
    ONLY_WITH: ClassVar[dict[str, tuple[str, str]]] = {
        "reductant_ratio": ("reductant_product", ""),
        "bath_reductant": ("reductant_product", ""),
        "bath_caustic": ("caustic_product", ""),
        "bath_wetting_agent": ("wetting_agent_product", ""),
    }

    name: str
    dye_product: str
    dye_on_yarn: float
    dye_fixation: float
    extra_uptake: float
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
    reductant_product: str = ""
    caustic_product: str = ""
    wetting_agent_product: str = ""
    reductant_ratio: float | None = None
    bath_reductant: float | None = None
    bath_caustic: float | None = None
    bath_wetting_agent: float | None = None
    first_product: str = ""
    second_product: str = ""
    third_product: str = ""
    first_dose: float | None = None
    second_dose: float | None = None
    third_dose: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        for strength, (product, _) in self.ONLY_WITH.items():
            if getattr(self, strength) and not getattr(self, product):
                raise InputError(
                    self.name,
                    f"{label(strength)} is given and {label(product)} is empty; accepted is both filled or "
                    "both empty",
                )
        check_doses(self, self.name, DYE_BOX_PLACES)

    @property
    def products(self) -> list[tuple[str, float]]:
        """Code and dose as delivered of each product beside the four that have rows of their own [kg/L]."""
        return in_places(self, "dose", DYE_BOX_PLACES)
