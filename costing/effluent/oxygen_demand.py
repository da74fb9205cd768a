"""Oxygen demand from the formula of a substance."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from costing.process.chemistry import atoms, molar_mass_of_formula
from costing.reference_data import default, substances
from costing.settings.mill import REDUCED_DYES, Material

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


def found_demand(substance: str, materials: Mapping[str, Material]) -> float:
    """Oxygen demand that the dichromate test finds of a substance or a product without formula.

    Parameters
    ----------
    substance : str
        Key in ``substances.csv``, ``cotton_extract``, or the code of a product.
    materials : mapping
        Code -> product of the mill's list.

    Returns
    -------
    float
        Oxygen per mass [kg/kg]; 0 for what has no known demand.
    """
    if substance == "cotton_extract":
        return default("scour.oxygen_demand").value
    if substance in substances():
        theory = max(0.0, oxygen_demand_of_formula(substances()[substance].formula))
        if is_inorganic_sulfur(substance):
            return theory
        return theory * default("indigo.recovery" if is_dye(substance) else "general.recovery").value
    if substance in materials:
        return materials[substance].own_oxygen_demand * default("general.recovery").value
    return 0.0
