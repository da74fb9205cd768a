"""What the mill weaves: yarns, cloth, crimps, wastes and shrinkage."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from costing.settings.building import check_fields


@dataclass(frozen=True)
class Style:
    """One cloth, in house units; `warp_yarn` and `weft_yarn` are codes of the price list or ""."""

    GROUPS: ClassVar[tuple[str, ...]] = ("cloth", "yarn")

    code: str
    description: str
    warp_count: float
    warp_ply: float
    weft_count: float
    weft_ply: float
    twist_contraction: float
    width: float
    width_basis: str
    ends_density: float
    selvedge_ends: float
    picks_density: float
    warp_crimp: float
    crimp_basis: str
    weft_crimp: float
    warp_waste: float
    weft_waste: float
    size_add_on: float
    shrinkage_length: float
    shrinkage_width: float
    desize_loss: float
    finishing_loss: float
    finishing_add_on: float
    warp_yarn: str = ""
    weft_yarn: str = ""

    def __post_init__(self) -> None:
        check_fields(self, f"style {self.code}")
