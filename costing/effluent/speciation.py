"""pH, ionic strength and ions of a water at its temperature, with activities."""

from __future__ import annotations

from functools import partial
from typing import Callable, NamedTuple

from costing.effluent.acidity import ATMOSPHERE, HIGHEST, LOWEST, Weak, charge_at_ph, gas_charge
from costing.effluent.composition import IONS, Water
from costing.effluent.weak_acids import Constants, constants_at, ions_per_acid

ROUNDS = 6  # the ionic strength moves the pH by a tenth, and the pH the ionic strength by less
SAME = 1e-8  # of an ionic strength: the pH is then the same to the ninth digit
NARROW = 0.1  # pH
FINE = 1e-11  # pH
MOST_CHORDS = 60
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
    gas = None if carbon_dioxide_pressure is None else carbon_dioxide_pressure / ATMOSPHERE
    strength = 0.0
    acidity: float | None = None
    for _ in range(ROUNDS):
        constants = constants_at(water.temperature, strength)
        acidity = _root(partial(_surplus, difference, weak, gas, constants), acidity)
        if gas is not None:
            weak = weak._replace(carbonate=_dissolved(acidity, gas, constants))
        ions = {**strong, **_weak_ions(acidity, weak, constants)}
        found = 0.5 * sum(amount * IONS[ion].charge ** 2 for ion, amount in ions.items())
        if abs(found - strength) <= SAME * found:
            break
        strength = found
    assert acidity is not None
    return Speciation(acidity, strength, ions)


def _surplus(difference: float, weak: Weak, gas: float | None, constants: Constants, acidity: float) -> float:
    """Charge of the strong ions that is not balanced at a pH; it falls with the pH."""
    if gas is None:
        return difference - float(charge_at_ph(acidity, weak, constants))
    return difference - float(gas_charge(acidity, weak, gas, constants))


def _root(surplus: Callable[[float], float], near: float | None) -> float:
    """Where a surplus comes to zero: the answer of `acidity`, in a quarter of its steps.

    Starts from a narrow bracket around a pH that is near, or halves the whole scale until it is narrow; then
    draws chords. An end that stays twice is halved in weight, so that the other one moves too.
    """
    low, high = LOWEST, HIGHEST
    if near is not None and surplus(near - NARROW) > 0.0 > surplus(near + NARROW):
        low, high = near - NARROW, near + NARROW
    while high - low > 2.0 * NARROW:
        middle = 0.5 * (low + high)
        low, high = (middle, high) if surplus(middle) > 0.0 else (low, middle)
    above, below = surplus(low), surplus(high)
    stayed = 0
    for _ in range(MOST_CHORDS):
        chord = low + (high - low) * above / (above - below) if above > below else 0.5 * (low + high)
        found = surplus(chord)
        moved = min(chord - low, high - chord)
        if found > 0.0:
            low, above = chord, found
            below *= 0.5 if stayed > 0 else 1.0
            stayed = 1
        else:
            high, below = chord, found
            above *= 0.5 if stayed < 0 else 1.0
            stayed = -1
        if moved < FINE:
            break
    return chord


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
