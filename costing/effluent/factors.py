"""What one kilogram of each substance adds to each parameter of an effluent, and where that comes from."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache

from costing.effluent.oxygen_demand import (
    NO_DEMAND,
    Demand,
    demand_of_product,
    demand_of_substance,
    is_dye,
    is_inorganic_sulfur,
)
from costing.ledger.closure import content
from costing.ledger.whole import Ledger
from costing.process.chemistry import molar_mass, molar_mass_of_formula
from costing.process.fibre import ACID, EXTRACT
from costing.process.postings import GREY, PROCESS
from costing.reference_data import substances
from costing.settings.box_steps import Treatment
from costing.settings.building import build
from costing.settings.discharge_point import DischargePoint
from costing.settings.material import REDUCED_DYES, Material
from costing.settings.product_fields import DYE
from costing.settings.steps import IndigoDyeing, Scour
from costing.settings.vessel_steps import VesselBath

# Parameter, as limits and analyses name it -> its ion and the substances of the ledger that hold one each.
IONS = {
    "sulfate": ("SO4", ("sodium_sulfate", "sulfuric_acid")),
    "sulfite": ("SO3", ("sodium_sulfite", "sodium_bisulfite")),
    "thiosulfate": ("S2O3", ("sodium_thiosulfate",)),
    "hydrosulfite": ("S2O4", ("sodium_hydrosulfite",)),
    "sulfide, as S": ("S", ("sodium_sulfide", "sodium_hydrosulfide")),
    "peroxide": ("H2O2", ("hydrogen_peroxide",)),
}

# Parameters that are an element, however it is bound.
ELEMENTS = {"sodium": "Na", "sulfur, all forms": "S", "nitrogen of dye and chemicals": "N"}

# The setting of the point that says which share of a COD shows in the BOD5, by role or by substance.
BOD_BY_ROLE = {"dye": "bod_of_dye", "wetting agent": "bod_of_surfactant", "size": "bod_of_size"}
BOD_BY_SUBSTANCE = {
    "indigo": "bod_of_dye",
    "leuco_indigo": "bod_of_dye",
    EXTRACT: "bod_of_extract",
    ACID: "bod_of_extract",
    "sodium_galacturonate": "bod_of_extract",
    "acetic_acid": "bod_of_acid",
    "sodium_acetate": "bod_of_acid",
    "glucose": "bod_of_acid",
    "sodium_gluconate": "bod_of_acid",
}
SUSPENDED_BY_ROLE = {"dye": "suspended_dye", "size": "suspended_size"}
SUSPENDED_BY_SUBSTANCE = {"indigo": "suspended_indigo", "leuco_indigo": "suspended_indigo"}

OFF_COTTON = (EXTRACT, ACID, "sodium_galacturonate")

# What does not stay when a water is dried, and what stays as something else.
LEAVE_WHEN_DRIED = (
    "water",
    "acetic_acid",
    "hydrogen_peroxide",
    "carbon_dioxide",
    "hydrogen_sulfide",
    "oxygen",
)
SODA_OF_BICARBONATE = 0.5 * molar_mass("sodium_carbonate") / molar_mass("sodium_bicarbonate")

PARAMETERS = (
    "COD, organic",
    "COD, inorganic sulfur",
    "COD, both",
    "unfixed dye",
    "sodium",
    "sulfate",
    "sulfite",
    "thiosulfate",
    "hydrosulfite",
    "sulfide, as S",
    "peroxide",
    "sulfate, once all is oxidised",
    "sulfur, all forms",
    "nitrogen of dye and chemicals",
    "BOD5",
    "suspended solids",
    "dissolved solids",
    "chloride",
    "total nitrogen",
    "surfactants",
    "size",
    "matter off the cotton",
)


@cache
def typical_point() -> DischargePoint:
    """A collecting point of typical values, for a book that has none."""
    named = {"code": "typical", "description": "typical values of the tables"}
    return build(DischargePoint, "typical point", DischargePoint.GROUPS, {}, {}, named)


class Factors:
    """Factors of one ledger: recoveries and demands are settings of its recipe and range.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    point : DischargePoint, optional
        Whose shares of BOD5 and solids count; typical ones where none is given.
    """

    def __init__(
        self, ledger: Ledger, materials: Mapping[str, Material], point: DischargePoint | None = None
    ) -> None:
        self._materials = materials
        self._point = point or typical_point()
        self._recovery = ledger.range.recovery
        self._dye_recovery = next(
            (step.recovery for step in ledger.steps if isinstance(step, IndigoDyeing)), self._recovery
        )
        self._extract = self._demand_of_extract(ledger)
        self._known: dict[str, dict[str, float]] = {}

    def demand(self, substance: str) -> Demand:
        """Oxygen demand of a kilogram of a substance, or of a product without formula."""
        if substance == EXTRACT:
            return self._extract
        if substance in substances():
            return demand_of_substance(substance, self._recovery, self._dye_recovery)
        if substance in self._materials:
            return demand_of_product(self._materials[substance], self._recovery)
        return NO_DEMAND

    def of(self, substance: str) -> dict[str, float]:
        """What one kilogram of a substance, or of a product without formula, adds to each parameter.

        Parameters
        ----------
        substance : str
            Key in ``substances.csv``, what the scour dissolves, or the code of a product.

        Returns
        -------
        dict
            Parameter -> mass; parameters to which it adds nothing are left out [kg/kg].
        """
        if substance not in self._known:
            if substance in substances() and substance != EXTRACT:
                parts = _parts_of_substance(substance, self._recovery, self._dye_recovery, self._point)
            else:
                parts = _parts(substance, self.demand(substance).found, self._materials, self._point)
            self._known[substance] = parts
        return self._known[substance]

    def grounds(self, substance: str, parameter: str) -> str:
        """Where the factor of a substance for a parameter comes from, in words."""
        if parameter.startswith("COD"):
            return self.demand(substance).grounds
        told = self._told(substance)
        if parameter == "BOD5":
            return (
                f"{self.demand(substance).grounds}; share in five days: point.{self._bod_setting(substance)}"
            )
        if parameter in ("suspended solids", "dissolved solids"):
            name = _suspended_setting(substance, self._role(substance))
            return f"{told}; share of solids: point.{name}" if name else told
        if parameter == "total nitrogen" and substance == EXTRACT:
            return "point.extract_nitrogen"
        return told

    def _role(self, substance: str) -> str:
        return self._materials[substance].role if substance in self._materials else ""

    def _bod_setting(self, substance: str) -> str:
        if is_inorganic_sulfur(substance):
            return "immediate_demand"
        return _bod_setting(substance, self._role(substance))

    def _told(self, substance: str) -> str:
        """What a factor rests on where no setting plays a part."""
        if substance in substances():
            return f"formula {substances()[substance].formula}"
        if substance in self._materials:
            return self._materials[substance].where or f"material {substance}"
        return "what the scour dissolves" if substance in OFF_COTTON else "inert matter of products"

    def _demand_of_extract(self, ledger: Ledger) -> Demand:
        """Demand of what the scour dissolves beside the pectic acid, which has a formula of its own.

        The setting counts all organic matter dissolved; what the acid part of it takes is taken off.
        """
        rates = {
            step.name: step.oxygen_demand
            for step in ledger.steps
            if isinstance(step, (Scour, Treatment, VesselBath))
        }
        asked = extract = acid = 0.0
        for step, _, substance, _, amount, source, destination in ledger.run.postings:
            if source == GREY and destination == PROCESS and substance in (EXTRACT, ACID):
                asked += amount * rates[step]
                extract += amount if substance == EXTRACT else 0.0
                acid += amount if substance == ACID else 0.0
        if extract <= 0.0:
            return NO_DEMAND
        own = demand_of_substance(ACID, self._recovery, self._dye_recovery).found
        return Demand(
            max(0.0, asked - acid * own) / extract,
            1.0,
            "scour.oxygen_demand on all organic matter dissolved, less its pectic acid, over the rest",
        )


def typical_factors(substance: str, point: DischargePoint) -> dict[str, float]:
    """What one kilogram of a substance without a recovery adds to each parameter [kg/kg]."""
    return _parts_of_substance(substance, 1.0, 1.0, point)


@lru_cache(maxsize=512)
def _parts_of_substance(
    substance: str, recovery: float, dye_recovery: float, point: DischargePoint
) -> dict[str, float]:
    """What a substance of the table adds to each parameter: the same in every ledger with these shares."""
    return _parts(substance, demand_of_substance(substance, recovery, dye_recovery).found, {}, point)


def _parts(
    substance: str, demand: float, materials: Mapping[str, Material], point: DischargePoint
) -> dict[str, float]:
    inorganic = is_inorganic_sulfur(substance)
    product = materials.get(substance)
    role = product.role if product is not None else ""
    parts = {
        "COD, organic": 0.0 if inorganic else demand,
        "COD, inorganic sulfur": demand if inorganic else 0.0,
        "COD, both": demand,
        "BOD5": demand * getattr(point, "immediate_demand" if inorganic else _bod_setting(substance, role)),
    }
    if substance in substances():
        parts.update(_parts_of_formula(substance))
    else:
        for parameter, element in ELEMENTS.items():
            parts[parameter] = content(substance, element, materials)
        parts["unfixed dye"] = 1.0 if role == DYE else 0.0
        parts["surfactants"] = 1.0 if role == "wetting agent" else 0.0
        parts["size"] = 1.0 if role == "size" else 0.0
    parts["total nitrogen"] = parts["nitrogen of dye and chemicals"]
    if substance in OFF_COTTON:
        parts["matter off the cotton"] = 1.0
    if substance == EXTRACT:
        parts["total nitrogen"] = point.extract_nitrogen
    held_back = _suspended_setting(substance, role)
    suspended = getattr(point, held_back) if held_back else 0.0
    parts["suspended solids"] = suspended
    if substance not in LEAVE_WHEN_DRIED:
        left = SODA_OF_BICARBONATE if substance == "sodium_bicarbonate" else 1.0
        parts["dissolved solids"] = (1.0 - suspended) * left
    return {parameter: share for parameter, share in parts.items() if share}


def _bod_setting(substance: str, role: str) -> str:
    return BOD_BY_SUBSTANCE.get(substance) or BOD_BY_ROLE.get(role, "bod_of_other")


def _suspended_setting(substance: str, role: str) -> str:
    """Setting that says which share a filter holds back; "" where all is dissolved."""
    return SUSPENDED_BY_SUBSTANCE.get(substance) or SUSPENDED_BY_ROLE.get(role, "")


@cache
def _parts_of_formula(substance: str) -> dict[str, float]:
    """What the formula of a substance alone says of it."""
    parts = {parameter: content(substance, element, {}) for parameter, element in ELEMENTS.items()}
    if is_inorganic_sulfur(substance) or substance in IONS["sulfate"][1]:
        sulfate = molar_mass_of_formula("SO4") / molar_mass_of_formula("S")
        parts["sulfate, once all is oxidised"] = parts["sulfur, all forms"] * sulfate
    if is_dye(substance):
        parts["unfixed dye"] = molar_mass(REDUCED_DYES.get(substance, substance)) / molar_mass(substance)
    parts["chloride"] = content(substance, "Cl", {})
    for parameter, (ion, holders) in IONS.items():
        if substance in holders:
            parts[parameter] = molar_mass_of_formula(ion) / molar_mass(substance)
    return parts
