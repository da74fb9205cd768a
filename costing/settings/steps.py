"""The kinds of step and what each needs to know, from the recipe and from the range.

A route is a list of named steps of these kinds. Each dataclass says which fields the recipe gives
and which the range gives; sheets and readers are made from those lists.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Union, get_args

from costing.quantities import InputError, label
from costing.settings.box_steps import Treatment
from costing.settings.building import check_fields
from costing.settings.dye_box_step import DyeBox
from costing.settings.recovering_rinse_step import RecoveringRinse
from costing.settings.rinse_step import Rinse
from costing.settings.sizing_step import Sizing
from costing.settings.steamer_step import Steaming
from costing.settings.vessel_steps import Extraction, VesselBath


@dataclass(frozen=True)
class Scour:
    """One box of caustic, wetting agent and sequestrant for grey yarn."""

    KIND: ClassVar[str] = "scour"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "caustic_product",
        "wetting_agent_product",
        "sequestrant_product",
        "scour_caustic",
        "scour_wetting_agent",
        "scour_sequestrant",
        "scour_temperature",
        "scour_overflow",
        "weight_loss",
        "ash_share",
        "caustic_neutralised",
        "oxygen_demand",
        "wetting_agent_kept",
    )
    RANGE: ClassVar[tuple[str, ...]] = (
        "pick_up",
        "tank_volume",
        "heated_surface",
        "surface_heat_loss",
        "heat_recovered",
        "power",
    )

    name: str
    caustic_product: str
    wetting_agent_product: str
    sequestrant_product: str
    scour_caustic: float
    scour_wetting_agent: float
    scour_sequestrant: float
    scour_temperature: float
    scour_overflow: float
    weight_loss: float
    ash_share: float
    caustic_neutralised: float
    oxygen_demand: float
    wetting_agent_kept: float
    pick_up: float
    tank_volume: float
    heated_surface: float
    surface_heat_loss: float
    power: float
    heat_recovered: float = 0.0

    def __post_init__(self) -> None:
        check_fields(self, self.name)


ELECTROLYSIS = "electrolysis"
NO_OTHER = "none"


@dataclass(frozen=True)
class IndigoDyeing:
    """Dip boxes in one common liquor, with a sky after each dip."""

    KIND: ClassVar[str] = "indigo"
    RECIPE: ClassVar[tuple[str, ...]] = (
        "indigo_product",
        "hydrosulfite_product",
        "caustic_product",
        "wetting_agent_product",
        "indigo_on_yarn",
        "dips",
        "bath_indigo",
        "bath_hydrosulfite",
        "bath_caustic",
        "bath_wetting_agent",
        "bath_temperature",
        "stock_indigo",
        "stock_hydrosulfite_ratio",
        "stock_caustic_ratio",
        "hydrosulfite_dosing",
        "caustic_dosing",
        "rinse_loss",
        "redissolved",
        "recovery",
        "start_indigo",
        "start_hydrosulfite",
        "start_recovered",
        "other_reduction",
        "other_reduction_share",
        "other_reductant_product",
        "electrolysis_energy",
    )
    # A default that is taken only where another row says so.
    ONLY_WITH: ClassVar[dict[str, tuple[str, str]]] = {
        "electrolysis_energy": ("other_reduction", ELECTROLYSIS),
    }
    RANGE: ClassVar[tuple[str, ...]] = (
        "boxes",
        "bath_volume",
        "bath_surface",
        "pick_up",
        "pick_up_last",
        "exchange",
        "sky_evaporation",
        "sky_destruction",
        "hydrosulfite_per_oxygen",
        "surface_oxygen",
        "circulation_flow",
        "circulation_oxygen",
        "entrained_air",
        "oxygen_in_air",
        "wetted_out",
        "decay_rate",
        "carbon_dioxide",
        "sulfite_oxidised",
        "ageing_loss",
        "bath_kept",
        "fill_water_oxygen",
        "blanket_product",
        "blanket_use",
        "power",
    )

    name: str
    indigo_product: str
    hydrosulfite_product: str
    caustic_product: str
    wetting_agent_product: str
    indigo_on_yarn: float
    dips: float
    bath_indigo: float
    bath_hydrosulfite: float
    bath_caustic: float
    bath_wetting_agent: float
    bath_temperature: float
    stock_indigo: float
    stock_hydrosulfite_ratio: float
    stock_caustic_ratio: float
    hydrosulfite_dosing: float
    caustic_dosing: float
    rinse_loss: float
    redissolved: float
    recovery: float
    start_recovered: float
    boxes: float
    bath_volume: float
    bath_surface: float
    pick_up: float
    pick_up_last: float
    exchange: float
    sky_evaporation: float
    sky_destruction: float
    hydrosulfite_per_oxygen: float
    surface_oxygen: float
    circulation_flow: float
    circulation_oxygen: float
    entrained_air: float
    oxygen_in_air: float
    wetted_out: float
    decay_rate: float
    carbon_dioxide: float
    sulfite_oxidised: float
    ageing_loss: float
    bath_kept: float
    fill_water_oxygen: float
    power: float
    start_indigo: float | None = None
    start_hydrosulfite: float | None = None
    other_reduction: str = NO_OTHER
    other_reduction_share: float | None = None
    other_reductant_product: str = ""
    electrolysis_energy: float | None = None
    blanket_product: str = ""
    blanket_use: float | None = None

    def __post_init__(self) -> None:
        check_fields(self, self.name)
        self._check_other_reduction()
        if bool(self.blanket_product) != (self.blanket_use is not None):
            raise InputError(
                self.name,
                "blanket product and blanket use: one is empty; accepted is both filled or both empty",
            )
        if self.dips > self.boxes:
            raise InputError(
                self.name,
                f"dips is {self.dips:.0f}, more than the range has; accepted is 1 to {self.boxes:.0f}",
            )
        if self.stock_indigo <= 1.5 * self.bath_indigo:
            raise InputError(
                self.name,
                f"stock indigo is {1000 * self.stock_indigo:g} g/L against {1000 * self.bath_indigo:g} g/L "
                "in the bath; accepted is a stock vat at least half as strong again as the bath",
            )

    def _check_other_reduction(self) -> None:
        """Refuse another reduction that does not say all it needs."""
        if self.other_reduction == NO_OTHER:
            return
        wanted = "electrolysis_energy" if self.other_reduction == ELECTROLYSIS else "other_reductant_product"
        for name in ("other_reduction_share", wanted):
            if getattr(self, name) in (None, ""):
                raise InputError(
                    self.name,
                    f"other reduction is {self.other_reduction!r} and {label(name)} is empty; accepted is "
                    "both filled, or the other reduction 'none'",
                )


@dataclass(frozen=True)
class Drying:
    """Drying cans."""

    KIND: ClassVar[str] = "drying"
    RECIPE: ClassVar[tuple[str, ...]] = ("moisture_out",)
    RANGE: ClassVar[tuple[str, ...]] = (
        "yarn_temperature_out",
        "dryer_efficiency",
        "heat_capacity_fibre",
        "heat_capacity_water",
        "power",
    )

    name: str
    moisture_out: float
    yarn_temperature_out: float
    dryer_efficiency: float
    heat_capacity_fibre: float
    heat_capacity_water: float
    power: float

    def __post_init__(self) -> None:
        check_fields(self, self.name)


Step = Union[
    Scour,
    Rinse,
    RecoveringRinse,
    IndigoDyeing,
    DyeBox,
    Treatment,
    Sizing,
    VesselBath,
    Extraction,
    Steaming,
    Drying,
]

STEP_KINDS: dict[str, type[Step]] = {kind.KIND: kind for kind in get_args(Step)}
