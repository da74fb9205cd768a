"""A rinse whose water, dye or caustic is won back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.quantities import InputError, label
from costing.settings.rinse_step import Rinse


@dataclass(frozen=True)
class RecoveringRinse(Rinse):
    """A rinse with a filter or an evaporator behind its drain."""

    KIND: ClassVar[str] = "recovering rinse"
    RECIPE: ClassVar[tuple[str, ...]] = (
        *Rinse.RECIPE,
        "returned_dye_product",
        "recovered_caustic_product",
    )
    RANGE: ClassVar[tuple[str, ...]] = (
        *Rinse.RANGE,
        "water_reused",
        "reuse_energy",
        "dye_returned",
        "caustic_recovered",
        "recovery_steam",
    )
    # Naming the product that is credited switches a recovery on.
    ONLY_WITH: ClassVar[dict[str, tuple[str, str]]] = {
        "dye_returned": ("returned_dye_product", ""),
        "caustic_recovered": ("recovered_caustic_product", ""),
        "recovery_steam": ("recovered_caustic_product", ""),
    }

    water_reused: float = 0.0
    reuse_energy: float = 0.0
    returned_dye_product: str = ""
    dye_returned: float | None = None
    recovered_caustic_product: str = ""
    caustic_recovered: float | None = None
    recovery_steam: float | None = None

    def __post_init__(self) -> None:
        super().__post_init__()
        for share, product in (
            ("dye_returned", "returned_dye_product"),
            ("caustic_recovered", "recovered_caustic_product"),
        ):
            given = getattr(self, share) or 0.0
            if given > 0.0 and not getattr(self, product):
                raise InputError(
                    self.name,
                    f"{label(share)} is {100.0 * given:g} % and {label(product)} is empty; "
                    "accepted is the code of the material that is saved, or 0 %",
                )
