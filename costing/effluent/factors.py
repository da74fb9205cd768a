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
from costing.process.chemistry import atoms, molar_mass, molar_mass_of_formula
from costing.process.fibre import ACID, EXTRACT
from costing.process.postings import GREY, PROCESS
from costing.reference_data import substances
from costing.settings.box_steps import Treatment
from costing.settings.mill import REDUCED_DYES, Material
from costing.settings.product_fields import DYE
from costing.settings.steps import IndigoDyeing, Scour
from costing.settings.vessel_steps import VesselBath

# Parameter, as limits and analyses name it -> its ion and the substances of the ledger that hold one each.
IONS = {
    "sulfate": ("SO4", ("sodium_sulfate",)),
    "sulfite": ("SO3", ("sodium_sulfite", "sodium_bisulfite")),
    "thiosulfate": ("S2O3", ("sodium_thiosulfate",)),
    "hydrosulfite": ("S2O4", ("sodium_hydrosulfite",)),
    "sulfide, as S": ("S", ("sodium_sulfide", "sodium_hydrosulfide")),
    "peroxide": ("H2O2", ("hydrogen_peroxide",)),
}

# Parameters that are an element, however it is bound.
ELEMENTS = {"sodium": "Na", "sulfur, all forms": "S", "nitrogen of dye and chemicals": "N"}

# Anions of strong acids: charge per mol of the salt. Sulfite and carbonate are weak and stay out.
STRONG_ANIONS = {
    "sodium_sulfate": 2.0,
    "sodium_thiosulfate": 2.0,
    "sodium_hydrosulfite": 2.0,
    "sodium_chloride": 1.0,
    "sodium_bromide": 1.0,
    "sodium_bromate": 1.0,
    "sulfuric_acid": 2.0,
}

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
)


class Factors:
    """Factors of one ledger: recoveries and demands are settings of its recipe and range.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    """

    def __init__(self, ledger: Ledger, materials: Mapping[str, Material]) -> None:
        self._materials = materials
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
                parts = _parts_of_substance(substance, self._recovery, self._dye_recovery)
            else:
                parts = _parts(substance, self.demand(substance).found, self._materials)
            self._known[substance] = parts
        return self._known[substance]

    def grounds(self, substance: str, parameter: str) -> str:
        """Where the factor of a substance for a parameter comes from, in words."""
        if parameter.startswith("COD"):
            return self.demand(substance).grounds
        if substance in substances():
            return f"formula {substances()[substance].formula}"
        if substance in self._materials:
            return self._materials[substance].where or f"material {substance}"
        return ""

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


@lru_cache(maxsize=512)
def _parts_of_substance(substance: str, recovery: float, dye_recovery: float) -> dict[str, float]:
    """What a substance of the table adds to each parameter: the same in every ledger with these shares."""
    return _parts(substance, demand_of_substance(substance, recovery, dye_recovery).found, {})


def _parts(substance: str, demand: float, materials: Mapping[str, Material]) -> dict[str, float]:
    inorganic = is_inorganic_sulfur(substance)
    parts = {
        "COD, organic": 0.0 if inorganic else demand,
        "COD, inorganic sulfur": demand if inorganic else 0.0,
        "COD, both": demand,
    }
    if substance in substances():
        parts.update(_parts_of_formula(substance))
    else:
        for parameter, element in ELEMENTS.items():
            parts[parameter] = content(substance, element, materials)
        product = materials.get(substance)
        parts["unfixed dye"] = 1.0 if product is not None and product.role == DYE else 0.0
    return {parameter: share for parameter, share in parts.items() if share}


@cache
def _parts_of_formula(substance: str) -> dict[str, float]:
    """What the formula of a substance alone says of it."""
    parts = {parameter: content(substance, element, {}) for parameter, element in ELEMENTS.items()}
    if is_inorganic_sulfur(substance) or substance == "sodium_sulfate":
        sulfate = molar_mass_of_formula("SO4") / molar_mass_of_formula("S")
        parts["sulfate, once all is oxidised"] = parts["sulfur, all forms"] * sulfate
    if is_dye(substance):
        parts["unfixed dye"] = molar_mass(REDUCED_DYES.get(substance, substance)) / molar_mass(substance)
    for parameter, (ion, holders) in IONS.items():
        if substance in holders:
            parts[parameter] = molar_mass_of_formula(ion) / molar_mass(substance)
    return parts


@cache
def alkalinity_of(substance: str) -> float:
    """Strong-ion difference that one kilogram of a substance brings: sodium less strong anions [mol/kg].

    Products without a formula count as neutral salts.
    """
    if substance not in substances():
        return 0.0
    sodium = atoms(substances()[substance].formula).get("Na", 0.0)
    return (sodium - STRONG_ANIONS.get(substance, 0.0)) / molar_mass(substance)
