"""pH, ionic strength and ions of a water at its temperature, with activities."""

from __future__ import annotations

from typing import NamedTuple

from costing.effluent.acidity import ATMOSPHERE, Weak, ph_of_charge, ph_under_gas
from costing.effluent.composition import IONS, Water
from costing.effluent.weak_acids import Constants, constants_at, ions_per_acid

ROUNDS = 6  # the ionic strength moves the pH by a tenth, and the pH the ionic strength by less
AIR = 4.2e-4 * ATMOSPHERE  # bar of carbon dioxide: 420 ppm of one atmosphere


class Speciation(NamedTuple):
    """A water as it stands.

    Attributes
    ----------
    acidity : float
        pH.
    ionic_strength : float
        [mol/L]
    ions : dict
        Ion, or uncharged part of a weak acid -> concentration [mol/L].
    """

    acidity: float
    ionic_strength: float
    ions: dict[str, float]


def speciation(water: Water, carbon_dioxide_pressure: float | None = None) -> Speciation:
    """Find the pH of a water and the ions it holds.

    Parameters
    ----------
    water : Water
        The water; its temperature counts.
    carbon_dioxide_pressure : float, optional
        Of the gas with which it is at rest: `AIR` for a long open basin. Left out, the water keeps the
        carbonate it has, as in a covered pipe: so it reads when it is discharged [bar].

    Returns
    -------
    Speciation
        pH and ions. Ion pairs are left out.

    Examples
    --------
    Caustic of 1 g/L in a closed pipe, after days in air, and under flue gas:

    >>> from costing.effluent.composition import water_of
    >>> water = water_of({"sodium_hydroxide": 0.001}, 1.0, 25.0)
    >>> [round(speciation(water, gas).acidity, 1) for gas in (None, AIR, 0.1)]
    [12.3, 9.4, 7.2]
    """
    strong = {ion: amount / water.volume for ion, amount in water.strong.items()}
    difference = water.strong_difference / water.volume
    weak = Weak(*(amount / water.volume for amount in water.weak))
    strength = 0.0
    for _ in range(ROUNDS):
        constants = constants_at(water.temperature, strength)
        if carbon_dioxide_pressure is None:
            acidity = ph_of_charge(difference, weak, constants)
        else:
            gas = carbon_dioxide_pressure / ATMOSPHERE
            acidity = ph_under_gas(difference, weak, gas, constants)
            weak = weak._replace(carbonate=_dissolved(acidity, gas, constants))
        ions = {**strong, **_weak_ions(acidity, weak, constants)}
        found = 0.5 * sum(amount * IONS[ion].charge ** 2 for ion, amount in ions.items())
        if abs(found - strength) <= 1e-9 * found:
            break
        strength = found
    return Speciation(acidity, strength, ions)


def _dissolved(acidity: float, gas: float, constants: Constants) -> float:
    """Carbonate of a water at rest with a gas."""
    once, twice = ions_per_acid(acidity, constants.carbonic)
    return float(10.0**constants.solubility * gas * (1.0 + once + twice))


# Weak acid -> its parts, with no, one and two protons given.
PARTS = {
    "carbonate": ("CO2", "HCO3-", "CO3--"),
    "sulfite": ("SO2", "HSO3-", "SO3--"),
    "sulfide": ("H2S", "HS-"),
    "acetate": ("acetic acid", "acetate-"),
    "carboxylate": ("sugar acid", "sugar acid-"),
}


def _weak_ions(acidity: float, weak: Weak, constants: Constants) -> dict[str, float]:
    ions = {"OH-": 10.0 ** (acidity - constants.water), "H+": 10.0 ** (-acidity - constants.protons)}
    two = {"carbonate": constants.carbonic, "sulfite": constants.sulfurous}
    one = {"sulfide": constants.sulfide, "acetate": constants.acetic, "carboxylate": constants.carboxylic}
    for name, parts in PARTS.items():
        whole = getattr(weak, name)
        if whole <= 0.0:
            continue
        if name in two:
            ratios = [1.0, *ions_per_acid(acidity, two[name])]
        else:
            ratios = [1.0, 10.0 ** (acidity - one[name])]
        for part, ratio in zip(parts, ratios):
            ions[part] = whole * ratio / sum(ratios)
    return ions
