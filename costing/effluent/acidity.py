"""pH of a water: from free caustic, from a strong-ion difference, under a gas with carbon dioxide.

The strong-ion difference is the charge of sodium and its like less that of sulfate and its like: what the
weak acids, and the ions of water itself, must balance. The charge balance falls steadily with the pH, so it
is solved by halving a bracket, which cannot miss.

At 25 degC and without activities if nothing else is said: then the pH of a salty water reads up to 0.2 too
high, and that of hot caustic too (at 60 degC about one). An estimate, not a measurement: show one decimal.
"""

from __future__ import annotations

from typing import Any, Callable, NamedTuple

from costing.effluent.weak_acids import (
    HOUSE,
    IDEAL,
    WATER,
    Constants,
    Scale,
    charge_of_one,
    charge_of_two,
    constants_at,
    ions_per_acid,
)
from costing.process.arithmetic import not_negative, where
from costing.process.chemistry import molar_mass

CAUSTIC = molar_mass("sodium_hydroxide")
ATMOSPHERE = 1.01325  # bar, by definition

LOWEST, HIGHEST = -3.0, 17.0  # at both ends the ions of water outweigh any charge that is accepted
HALVINGS = 55  # narrow the bracket to the rounding of a float


def amount_concentration(effluent_concentration: Any, molar_mass: Any) -> Any:
    """Amount of substance in each litre, from mass and molar mass.

    Parameters
    ----------
    effluent_concentration : float
        Mass of the substance in the water [kg/L].
    molar_mass : float
        Mass of one mol of it [kg/mol].

    Returns
    -------
    float
        Amount [mol/L].

    Examples
    --------
    Caustic of 1 g/L, of which each mol is one of strong-ion difference:

    >>> round(amount_concentration(0.001, 0.039997) * 1000, 4)
    25.0019
    """
    return effluent_concentration / molar_mass


def hydroxide_less_protons(acidity: Any, water_constant: Any = WATER, *, scale: Scale = HOUSE) -> Any:
    """Charge of the ions of water itself at a pH.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    water_constant : float, optional
        Ion product of water, as the minus of its power of ten [fraction].
    scale : Scale
        House units.

    Returns
    -------
    float
        Hydroxide less protons [mol/L].

    Examples
    --------
    >>> round(hydroxide_less_protons(12.0, 14.0), 6)
    0.01
    """
    return (10.0 ** (acidity - water_constant) - 10.0 ** (0.0 - acidity)) * scale.standard


def free_caustic_from_ph(
    acidity: Any,
    water_constant: Any = WATER,
    *,
    scale: Scale = HOUSE,
    caustic: Any = CAUSTIC,
) -> Any:
    """Free caustic (100 %) in a water of a pH: ideal, 25 degC; what a titration finds is more.

    A titration also finds the alkali bound to leuco dye, sulfite and carbonate, so a recipe is not read from
    the pH.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    water_constant : float, optional
        Ion product of water, as the minus of its power of ten: 13.0 at 60 degC, 14.2 at 20 degC [fraction].
    scale : Scale
        House units.
    caustic : float
        Mass of one mol of caustic [kg/mol].

    Returns
    -------
    float
        Free caustic (NaOH 100 %), 0 in neutral and acid water [kg/L].

    Notes
    -----
    ``c = M (10**(pH - pKw) - 10**-pH)``

    Examples
    --------
    >>> round(free_caustic_from_ph(12.0) * 1000, 3)
    0.405

    References
    ----------
    phreeqc-dat, ion product of water; caustic-ph-exercise
    """
    return not_negative(hydroxide_less_protons(acidity, water_constant, scale=scale)) * caustic


def ph_from_free_caustic(
    free_caustic: Any,
    water_constant: Any = WATER,
    *,
    scale: Scale = HOUSE,
    caustic: Any = CAUSTIC,
) -> Any:
    """The pH of a water that holds free caustic (100 %) and no weak acid: ideal, 25 degC.

    Parameters
    ----------
    free_caustic : float
        Free caustic (NaOH 100 %) in the water [kg/L].
    water_constant : float, optional
        Ion product of water, as the minus of its power of ten: 13.0 at 60 degC, 14.2 at 20 degC [fraction].
    scale : Scale
        House units.
    caustic : float
        Mass of one mol of caustic [kg/mol].

    Returns
    -------
    float
        pH [fraction].

    Examples
    --------
    >>> round(ph_from_free_caustic(0.001), 2)
    12.39

    References
    ----------
    phreeqc-dat, ion product of water
    """
    amount = free_caustic / caustic
    return _balanced(lambda acidity: amount - hydroxide_less_protons(acidity, water_constant, scale=scale))


def alkalinity_at_ph(
    acidity: Any,
    total_carbonate: Any = 0.0,
    total_sulfite: Any = 0.0,
    total_sulfide: Any = 0.0,
    total_acetate: Any = 0.0,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
) -> Any:
    """Strong-ion difference of a water of a pH that holds known weak acids.

    Leaves out soaps, pectic acids, size and every other weak acid.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    total_carbonate, total_sulfite, total_sulfide, total_acetate : float, optional
        Each weak acid with its ions, of whatever charge [mol/L].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        Strong-ion difference [mol/L].

    Notes
    -----
    ``SID = OH - H + CT (a1 + 2 a2) + S4 (b1 + 2 b2) + Sh d1 + Ac e1``, each letter the share of its ion.

    Examples
    --------
    >>> round(alkalinity_at_ph(7.0, total_carbonate=0.025) * 1000, 3)
    20.421

    References
    ----------
    phreeqc-dat; phreeqc-llnl-dat; minteq-v4-dat
    """
    weak = Weak(total_carbonate, total_sulfite, total_sulfide, total_acetate)
    return charge_at_ph(acidity, weak, constants_at(effluent_temperature, ionic_strength, scale=scale), scale)


class Weak(NamedTuple):
    """Weak acids of a water, each with its ions, of whatever charge [mol/L]."""

    carbonate: Any = 0.0
    sulfite: Any = 0.0
    sulfide: Any = 0.0
    acetate: Any = 0.0
    carboxylate: Any = 0.0


def charge_at_ph(acidity: Any, weak: Weak, constants: Constants, scale: Scale = HOUSE) -> Any:
    """Charge of weak acids and of the ions of water at a pH, which the strong ions must balance [mol/L]."""
    return (
        (10.0 ** (acidity - constants.water) - 10.0 ** (0.0 - acidity - constants.protons)) * scale.standard
        + weak.carbonate * charge_of_two(acidity, constants.carbonic)
        + weak.sulfite * charge_of_two(acidity, constants.sulfurous)
        + weak.sulfide * charge_of_one(acidity, constants.sulfide)
        + weak.acetate * charge_of_one(acidity, constants.acetic)
        + weak.carboxylate * charge_of_one(acidity, constants.carboxylic)
    )


def ph_from_strong_ions(
    alkalinity: Any,
    total_carbonate: Any = 0.0,
    total_sulfite: Any = 0.0,
    total_sulfide: Any = 0.0,
    total_acetate: Any = 0.0,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
) -> Any:
    """The pH of a water from its strong-ion difference and its weak acids, shut off from air.

    Between pH 8 and 10.5 little holds the pH, so there it may be one off. Below about pH 8 sulfide, below
    about pH 5 sulfite leaves as a poisonous gas: see the cautions. Never average the pH of two waters: add
    their strong-ion differences and weak acids, and ask for the pH of the sum.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    total_carbonate, total_sulfite, total_sulfide, total_acetate : float, optional
        Each weak acid with its ions, of whatever charge [mol/L].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        pH [fraction].

    Notes
    -----
    Solves `alkalinity_at_ph` for the pH.

    Examples
    --------
    Caustic of 1 g/L, as such and once it has taken up as much carbon dioxide as it can bind:

    >>> [round(ph_from_strong_ions(0.025, carbonate), 1) for carbonate in (0.0, 0.025)]
    [12.4, 8.3]

    References
    ----------
    phreeqc-dat; phreeqc-llnl-dat; minteq-v4-dat
    """
    weak = Weak(total_carbonate, total_sulfite, total_sulfide, total_acetate)
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    return ph_of_charge(alkalinity, weak, constants, scale)


def ph_of_charge(strong: Any, weak: Weak, constants: Constants = IDEAL, scale: Scale = HOUSE) -> Any:
    """The pH at which weak acids and the ions of water balance the strong ions [fraction]."""
    return _balanced(lambda acidity: strong - charge_at_ph(acidity, weak, constants, scale))


def ph_under_carbon_dioxide(
    alkalinity: Any,
    carbon_dioxide_pressure: Any,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
    atmosphere: Any = ATMOSPHERE,
) -> Any:
    """The pH of a water at rest with a gas that holds carbon dioxide, air or flue gas.

    A real drain takes hours to days to get there. Leaves out every weak acid but carbonate.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    carbon_dioxide_pressure : float
        Pressure of the carbon dioxide alone: 0.00042 bar in air, about 0.1 bar in flue gas [bar].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.
    atmosphere : float
        Pressure for which the solubility is given [bar].

    Returns
    -------
    float
        pH [fraction].

    Examples
    --------
    Caustic of 1 g/L in air, and under flue gas:

    >>> [round(ph_under_carbon_dioxide(0.025, pressure), 1) for pressure in (0.00042, 0.1)]
    [9.5, 7.2]

    References
    ----------
    phreeqc-dat; raindrop-lecture
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    return ph_under_gas(alkalinity, Weak(), carbon_dioxide_pressure / atmosphere, constants, scale)


def ph_under_gas(
    strong: Any, weak: Weak, pressure: Any, constants: Constants = IDEAL, scale: Scale = HOUSE
) -> Any:
    """The pH at rest with carbon dioxide of a pressure in atm, whatever carbonate was there [fraction]."""
    return _balanced(lambda acidity: strong - gas_charge(acidity, weak, pressure, constants, scale))


def gas_charge(
    acidity: Any, weak: Weak, pressure: Any, constants: Constants = IDEAL, scale: Scale = HOUSE
) -> Any:
    """Charge at a pH of a water at rest with carbon dioxide of a pressure in atm [mol/L]."""
    dissolved = 10.0**constants.solubility * pressure * scale.standard
    once, twice = ions_per_acid(acidity, constants.carbonic)
    others = charge_at_ph(acidity, weak._replace(carbonate=0.0), constants, scale)
    return dissolved * (once + 2.0 * twice) + others


def _balanced(surplus: Callable[[Any], Any]) -> Any:
    """The pH at which a surplus of charge, which falls with the pH, comes to zero."""
    low: Any = LOWEST
    high: Any = HIGHEST
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        above = surplus(middle) > 0.0
        low, high = where(above, middle, low), where(above, high, middle)
    return 0.5 * (low + high)
