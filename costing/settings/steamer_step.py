"""A steamer behind a pad."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.settings.building import check_fields


@dataclass(frozen=True)
class Steaming:
    """A steamer of a pad-steam range."""

    KIND: ClassVar[str] = "steaming"
    RECIPE: ClassVar[tuple[str, ...]] = ("steaming_temperature",)
    RANGE: ClassVar[tuple[str, ...]] = ("vented_steam", "power")

    name: str
    steaming_temperature: float
    vented_steam: float
    power: float

    def __post_init__(self) -> None:
        check_fields(self, self.name)
