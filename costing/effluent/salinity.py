"""Dissolved salt and conductivity of a water, from its ions: no one factor turns one into the other."""

from __future__ import annotations

from typing import NamedTuple

from costing.effluent.composition import IONS
from costing.effluent.speciation import Speciation
from costing.process.chemistry import molar_mass_of_formula

# Bicarbonate leaves half of its carbon behind as carbonate when a sample is dried: CO3 of 2 HCO3.
LEFT_OF_BICARBONATE = 0.5 * molar_mass_of_formula("CO3") / molar_mass_of_formula("HCO3")


def salts_dried(water: Speciation) -> float:
    """Salt that stays when a water is dried; organic matter and silica come on top.

    Parameters
    ----------
    water : Speciation
        The water.

    Returns
    -------
    float
        Concentration [kg/L].
    """
    total = 0.0
    for ion, amount in water.ions.items():
        if IONS[ion].charge == 0.0 or ion == "H+":
            continue
        left = LEFT_OF_BICARBONATE if ion == "HCO3-" else 1.0
        total += left * amount * molar_mass_of_formula(IONS[ion].formula)
    return total


class Salt(NamedTuple):
    """Coefficients of the conductivity of one salt, temperature in degC, concentration in mol/kg."""

    first: tuple[float, float, float]
    second: tuple[float, float, float]
    slope: float
    multiple: float


# By the anion; the cation is sodium but for carbonate, which is of potassium.
# mccleskey-2011, as tabulated in an open chemistry data library.
SALTS: dict[str, Salt] = {
    "OH-": Salt((0.006936, 3.872, 148.3), (0.01018, 0.67421, 56.76), 0.2, 1.0),
    "SO4--": Salt((0.009501, 2.317, 66.58), (0.02388, 4.509, 135.5), 2.2, 2.0),
    "HCO3-": Salt((0.0126, 1.543, 52.09), (0.02793, 0.4556, 52.94), 1.1, 1.0),
    "CO3--": Salt((0.01145, 2.726, 68.62), (0.02438, 5.18, 81.12), 2.1, 2.0),  # of potassium, see below
    "Cl-": Salt((0.008967, 2.196, 67.03), (0.00726, 1.762, 44.55), 1.3, 1.0),
}
SODIUM = IONS["Na+"].conductivity
# The coefficients printed for soda ash give twice what its ions carry in thin solution; those of potash agree
# with its ions, so soda ash counts as potash with the other cation.
POTASSIUM = 73.5
CATIONS = {"CO3--": POTASSIUM}  # of the salts whose coefficients stand above, where it is not sodium


def conductivity_of_salt(salt: Salt, amount: float, temperature: float) -> float:
    """Conductivity of one salt in water.

    Parameters
    ----------
    salt : Salt
        Its coefficients.
    amount : float
        Of the salt [mol/kg].
    temperature : float
        [degC]

    Returns
    -------
    float
        For each mol in a litre [S cm2/mol].

    Examples
    --------
    >>> round(conductivity_of_salt(SALTS["Cl-"], 0.010, 25.0), 1)
    119.3

    References
    ----------
    mccleskey-2011
    """
    ideal = _square(salt.first, temperature)
    root = amount**0.5
    lost = _square(salt.second, temperature) * root / (1.0 + salt.slope * root)
    return float((ideal - lost) * salt.multiple)


def _square(factors: tuple[float, float, float], temperature: float) -> float:
    first, second, third = factors
    return first * temperature**2 + second * temperature + third


def conductivity(water: Speciation, temperature: float = 25.0) -> float:
    """Conductivity of a water whose cations are almost all sodium.

    Each anion is taken with its sodium at the ionic strength of the whole. An anion without coefficients
    counts as sulfate or chloride of as many charges, by their molar conductivities. Protons are left out: for
    a water of pH 4 and up. Expect 10 to 15 %.

    Parameters
    ----------
    water : Speciation
        The water.
    temperature : float, optional
        25 degC is what meters report [degC].

    Returns
    -------
    float
        [S/m]
    """
    total = 0.0
    for ion, amount in water.ions.items():
        charge = -IONS[ion].charge
        if charge <= 0.0 or amount <= 0.0:
            continue
        stands = ion if ion in SALTS else ("SO4--" if charge == 2.0 else "Cl-")
        # A salt of one cation and one anion has the ionic strength of its concentration, one of two a third.
        alike = water.ionic_strength / (1.0 if charge == 1.0 else 3.0)
        both = conductivity_of_salt(SALTS[stands], alike, temperature)
        own = charge * SODIUM + IONS[ion].conductivity
        total += amount * both * own / (charge * CATIONS.get(stands, SODIUM) + IONS[stands].conductivity)
    return 0.1 * total  # S cm2/mol x mol/L is 0.1 S/m
