"""Acid and carbon dioxide that bring an alkaline water to a pH, and the sulfate that acid leaves.

At 25 degC and without activities if nothing else is said, as in `costing.effluent.acidity`: an estimate for a
budget, not for setting a dosing pump.

Acid on a water with sulfide sets hydrogen sulfide free, and acid on one with sulfite or hydrosulfite sulfur
dioxide. So the pH to be reached is accepted from 6 up, and none of these is for a water with sulfide: oxidise
or precipitate it first. Flue gas fills pits with carbon dioxide. See the cautions for acid, for what must
never meet and for pits, and leave the dosing to a competent or licensed person.
"""

from __future__ import annotations

from typing import Any

from costing.effluent.acidity import Weak, charge_at_ph
from costing.effluent.loads import SULFURIC_ACID_PER_CHARGE
from costing.effluent.weak_acids import HOUSE, Scale, charge_of_one, charge_of_two, constants_at
from costing.process.arithmetic import not_negative
from costing.process.chemistry import molar_mass, molar_mass_of_formula

ACETIC_ACID = molar_mass("acetic_acid")
CARBON_DIOXIDE = molar_mass("carbon_dioxide")
SULFATE_PER_SULFURIC_ACID = molar_mass_of_formula("SO4") / molar_mass("sulfuric_acid")

# 8.314462618 J/mol/K x 298.15 K over 101.325 kPa: the gas constant of the SI, derived.
MOLAR_VOLUME = 24.4654  # L/mol, of a gas at 25 degC and 1 atm


def acid_to_reach_ph(
    alkalinity: Any,
    target_acidity: Any,
    total_carbonate: Any = 0.0,
    total_sulfite: Any = 0.0,
    total_acetate: Any = 0.0,
    acid_per_charge: Any = SULFURIC_ACID_PER_CHARGE,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
) -> Any:
    """Strong acid (100 %) that brings a water to a pH, sulfuric if no other is named; never on sulfide.

    On sulfide it sets hydrogen sulfide free, so this holds for water without it; on sulfite too much acid
    gives sulfur dioxide. Leaves out soaps, pectic acids and size, and the carbon dioxide that bubbles off.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    target_acidity : float
        pH to be reached [fraction].
    total_carbonate, total_sulfite, total_acetate : float, optional
        Each weak acid with its ions, of whatever charge [mol/L].
    acid_per_charge : float, optional
        Pure acid that takes up one mol of charge [kg/mol].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        Acid (100 %), 0 where the water is below that pH already [kg/L].

    Notes
    -----
    ``(SID - SID at the pH) M``. Sulfuric acid gives both protons at any pH accepted here.

    Examples
    --------
    >>> round(acid_to_reach_ph(alkalinity=0.025, target_acidity=7.0) * 1000, 4)
    1.2259

    References
    ----------
    phreeqc-dat; phreeqc-llnl-dat; minteq-v4-dat
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    weak = Weak(total_carbonate, total_sulfite, acetate=total_acetate)
    return not_negative(alkalinity - charge_at_ph(target_acidity, weak, constants, scale)) * acid_per_charge


def acetic_acid_to_reach_ph(
    alkalinity: Any,
    target_acidity: Any,
    total_carbonate: Any = 0.0,
    total_sulfite: Any = 0.0,
    total_acetate: Any = 0.0,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
    acetic_acid: Any = ACETIC_ACID,
) -> Any:
    """Acetic acid (100 %) that brings a water to a pH; it adds oxygen demand; never on sulfide.

    On sulfide it sets hydrogen sulfide free, so this holds for water without it. Each kilogram adds 1.07 kg
    of oxygen demand.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    target_acidity : float
        pH to be reached [fraction].
    total_carbonate, total_sulfite, total_acetate : float, optional
        Each weak acid that is there before, with its ions [mol/L].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.
    acetic_acid : float
        Mass of one mol of acetic acid [kg/mol].

    Returns
    -------
    float
        Acetic acid (100 %), 0 where the water is below that pH already [kg/L].

    Notes
    -----
    ``(SID - SID at the pH) M / e1``, e1 the share of acetic acid that gives its proton at that pH.

    Examples
    --------
    >>> round(acetic_acid_to_reach_ph(alkalinity=0.025, target_acidity=7.0) * 1000, 4)
    1.5099

    References
    ----------
    minteq-v4-dat; phreeqc-dat; phreeqc-llnl-dat
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    weak = Weak(total_carbonate, total_sulfite, acetate=total_acetate)
    surplus = not_negative(alkalinity - charge_at_ph(target_acidity, weak, constants, scale))
    return surplus / charge_of_one(target_acidity, constants.acetic) * acetic_acid


def carbon_dioxide_to_reach_ph(
    alkalinity: Any,
    target_acidity: Any,
    total_carbonate: Any = 0.0,
    total_sulfite: Any = 0.0,
    total_acetate: Any = 0.0,
    effluent_temperature: Any = 25.0,
    ionic_strength: Any = 0.0,
    *,
    scale: Scale = HOUSE,
    carbon_dioxide: Any = CARBON_DIOXIDE,
) -> Any:
    """Carbon dioxide that a water must dissolve to come to a pH; never on sulfide (hydrogen sulfide).

    What is blown through and not dissolved comes on top. Below about pH 7 more and more of it leaves again as
    gas, so flue gas goes no lower.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    target_acidity : float
        pH to be reached [fraction].
    total_carbonate, total_sulfite, total_acetate : float, optional
        Each weak acid that is there before, with its ions [mol/L].
    effluent_temperature : float, optional
        Temperature at which the pH is read: hot caustic shows a lower one [degC].
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.
    carbon_dioxide : float
        Mass of one mol of carbon dioxide [kg/mol].

    Returns
    -------
    float
        Carbon dioxide, 0 where the water is below that pH already [kg/L].

    Notes
    -----
    ``((SID - SID of the rest at the pH) / (a1 + 2 a2) - CT) M``

    Examples
    --------
    Caustic of 1 g/L to bicarbonate:

    >>> round(carbon_dioxide_to_reach_ph(alkalinity=0.025, target_acidity=8.3) * 1000, 3)
    1.102

    References
    ----------
    phreeqc-dat; phreeqc-llnl-dat; minteq-v4-dat
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    # Not a plain 0 for the carbonate, so that a quantity keeps its unit.
    rest = Weak(0.0 * total_carbonate, total_sulfite, acetate=total_acetate)
    surplus = alkalinity - charge_at_ph(target_acidity, rest, constants, scale)
    needed = surplus / charge_of_two(target_acidity, constants.carbonic)
    return not_negative(needed - total_carbonate) * carbon_dioxide


def flue_gas_for_carbon_dioxide(
    carbon_dioxide_demand: Any,
    gas_carbon_dioxide: Any,
    gas_uptake: Any,
    *,
    carbon_dioxide: Any = CARBON_DIOXIDE,
    molar_volume: Any = MOLAR_VOLUME,
) -> Any:
    """Volume of flue gas, at 25 degC and 1 atm, for each volume of water; it fills pits and chokes.

    Parameters
    ----------
    carbon_dioxide_demand : float
        Carbon dioxide that the water must dissolve [kg/L].
    gas_carbon_dioxide : float
        Carbon dioxide in the gas, by volume: 8 to 14 % is usual [fraction].
    gas_uptake : float
        Share of it that the water takes: 30 to 80 % is judgement, so measure your own [fraction].
    carbon_dioxide : float
        Mass of one mol of carbon dioxide [kg/mol].
    molar_volume : float
        Volume of one mol of gas [L/mol].

    Returns
    -------
    float
        Gas for each volume of water [fraction].

    Examples
    --------
    >>> round(flue_gas_for_carbon_dioxide(0.0011, gas_carbon_dioxide=0.10, gas_uptake=0.50), 1)
    12.2
    """
    return carbon_dioxide_demand / carbon_dioxide * molar_volume / (gas_carbon_dioxide * gas_uptake)


def sulfate_from_acid(acid_demand: Any) -> Any:
    """Sulfate that sulfuric acid (100 %) leaves in the water it neutralises.

    Parameters
    ----------
    acid_demand : float
        Sulfuric acid (100 %) added [kg/L].

    Returns
    -------
    float
        Sulfate (SO4) [kg/L].

    Examples
    --------
    The acid that neutralises caustic of 1 g/L:

    >>> round(sulfate_from_acid(0.001226) * 1000, 4)
    1.2008
    """
    return SULFATE_PER_SULFURIC_ACID * acid_demand
