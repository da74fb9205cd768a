"""Oxygen demand from the formula of a substance."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from costing.process.chemistry import atoms, molar_mass_of_formula
from costing.reference_data import substances
from costing.settings.material import REDUCED_DYES, Material

SULFUR_SPECIES = (
    "sodium_hydrosulfite",
    "sodium_sulfite",
    "sodium_bisulfite",
    "sodium_thiosulfate",
    "sodium_sulfide",
    "sodium_hydrosulfide",
)


@cache
def oxygen_demand_of_formula(formula: str, nitrogen_to_nitrate: bool = False) -> float:
    """Oxygen that full oxidation takes.

    Carbon goes to carbon dioxide, sulfur to sulfate, chlorine to chloride.

    Parameters
    ----------
    formula : str
        Element symbols and numbers.
    nitrogen_to_nitrate : bool, optional
        False as in the dichromate test, which leaves nitrogen as ammonium.

    Returns
    -------
    float
        Oxygen per mass of substance [kg/kg].

    Notes
    -----
    ``16 (2c + (h - x - 3n)/2 + 3s + a/2 - o) / M`` with ammonium; ``+ 4n`` more oxygen atoms to nitrate.

    Examples
    --------
    >>> round(oxygen_demand_of_formula("C2H5NO2", nitrogen_to_nitrate=True), 4)
    1.4919
    >>> round(oxygen_demand_of_formula("Na2S2O4"), 4)
    0.2757

    References
    ----------
    oecd-301, annex on theoretical oxygen demand
    """
    count = atoms(formula)
    nitrogen = count.get("N", 0.0)
    oxygen_atoms = (
        2.0 * count.get("C", 0.0)
        + 0.5 * (count.get("H", 0.0) - count.get("Cl", 0.0) - 3.0 * nitrogen)
        + 3.0 * count.get("S", 0.0)
        + 0.5 * (count.get("Na", 0.0) + count.get("K", 0.0))
        - count.get("O", 0.0)
    )
    if nitrogen_to_nitrate:
        oxygen_atoms += 4.0 * nitrogen
    return oxygen_atoms * molar_mass_of_formula("O") / molar_mass_of_formula(formula)


def is_inorganic_sulfur(substance: str) -> bool:
    """True for sulfite, hydrosulfite, sulfide and their kin, whose demand oxygen or time takes away."""
    return substance in SULFUR_SPECIES


def is_dye(substance: str) -> bool:
    """True for a dye of the table, as such or reduced."""
    return substance in substances() and substances()[REDUCED_DYES.get(substance, substance)].role == "dye"


class Demand(NamedTuple):
    """Oxygen demand of one kilogram of a substance, as the dichromate test finds it.

    Attributes
    ----------
    theory : float
        Oxygen that full oxidation takes, or the figure given for a product without formula [kg/kg].
    recovery : float
        Share of it that the test finds [fraction].
    grounds : str
        Where both come from.
    """

    theory: float
    recovery: float
    grounds: str

    @property
    def found(self) -> float:
        """What the test finds [kg/kg]."""
        return self.theory * self.recovery


NO_DEMAND = Demand(0.0, 1.0, "nothing to oxidise")


def demand_of_substance(key: str, recovery: float, dye_recovery: float) -> Demand:
    """Demand of a substance of the table, from its formula.

    Parameters
    ----------
    key : str
        Key in ``substances.csv``.
    recovery, dye_recovery : float
        Share that the test finds of organic matter, and of dye [fraction].

    Examples
    --------
    >>> round(demand_of_substance("indigo", 0.97, 0.90).found, 4)
    1.7569
    """
    formula = substances()[key].formula
    theory = max(0.0, oxygen_demand_of_formula(formula))
    if theory == 0.0:
        return NO_DEMAND
    if is_inorganic_sulfur(key):
        return Demand(theory, 1.0, f"formula {formula}, sulfur to sulfate")
    if is_dye(key):
        return Demand(theory, dye_recovery, f"formula {formula}; share found: indigo.recovery")
    return Demand(theory, recovery, f"formula {formula}; share found: general.recovery")


def demand_of_product(material: Material, recovery: float) -> Demand:
    """Demand of a product without formula, as its row of the price list gives it."""
    if material.own_oxygen_demand == 0.0:
        return NO_DEMAND
    where = material.where or f"material {material.code}"
    return Demand(material.own_oxygen_demand, recovery, f"{where}; share found: general.recovery")
