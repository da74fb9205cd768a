"""What is dosed into a water or blown through it: acid, carbon dioxide, coagulant, the oxygen of the air.

No acid meets sulfide here: such a water is refused, since it would give off hydrogen sulfide, which kills.
Oxidise or precipitate the sulfide first. See the cautions for acid, for sulfide, for what must never meet and
for pits, and leave the dosing to a competent or licensed person.
"""

from __future__ import annotations

from typing import Callable

from costing.effluent.composition import Water, water_of
from costing.effluent.oxidation import oxidised
from costing.effluent.sludge import ALUM, ALUM_WATER, FERRIC_CHLORIDE, WATER
from costing.effluent.speciation import speciation
from costing.process.chemistry import molar_mass, molar_mass_of_formula
from costing.quantities import InputError

# Sulfide, as S, above which no acid is worked out: at rest under a lid at pH 6 it gives some 12 ppm of gas.
SULFIDE_BOUND = 0.05e-6  # kg/L
# Sulfite and hydrosulfite, as SO3 and S2O4, above which a low pH is warned of: judgement.
SULFITE_BOUND = 1e-6  # kg/L
SULFIDE_PH = 9.0  # below it more than 1 % of the sulfide is gas in water
SULFITE_PH = 5.0
FLUE_GAS = 0.1  # bar of carbon dioxide, usual in flue gas at 1 bar
HALVINGS = 45

SULFUR = molar_mass_of_formula("S")
COAGULANTS = {  # anion, mol of it for each mol, mass of one mol [kg/mol]
    "alum": ("SO4--", 3.0, ALUM + ALUM_WATER * WATER),
    "ferric chloride": ("Cl-", 3.0, FERRIC_CHLORIDE),
}


def sulfide_of(water: Water) -> float:
    """Sulfide of a water, as S [kg/L]."""
    return float(water.weak.sulfide * SULFUR / water.volume)


def refuse_sulfide(water: Water, step: str) -> None:
    """Refuse a water that would give off hydrogen sulfide when it is made more acid.

    Raises
    ------
    InputError
        When it holds sulfide above `SULFIDE_BOUND`.
    """
    found = sulfide_of(water)
    if found > SULFIDE_BOUND:
        raise InputError(
            step,
            f"the water holds {found * 1e6:.3g} mg/L of sulfide; accepted is {SULFIDE_BOUND * 1e6:g} mg/L "
            "or less: acid sets hydrogen sulfide free, which kills; oxidise or precipitate it first",
        )


def gas_warnings(water: Water, acidity: float) -> list[str]:
    """Warnings of gas that a water of a pH may give off.

    Examples
    --------
    >>> water = water_of({"sodium_sulfite": 0.001}, 1.0, 25.0)
    >>> gas_warnings(water, 4.5)
    ['pH 4.5 with sulfite or hydrosulfite in the water: sulfur dioxide; keep it above pH 5']
    """
    said = []
    if sulfide_of(water) > SULFIDE_BOUND and acidity < SULFIDE_PH:
        said.append(f"pH {acidity:.1f} with sulfide in the water: hydrogen sulfide, which kills")
    sulfite = water.weak.sulfite * molar_mass_of_formula("SO3")
    hydrosulfite = water.strong.get("S2O4--", 0.0) * molar_mass_of_formula("S2O4")
    if (sulfite + hydrosulfite) / water.volume > SULFITE_BOUND and acidity < SULFITE_PH:
        said.append(
            f"pH {acidity:.1f} with sulfite or hydrosulfite in the water: sulfur dioxide; keep it above pH 5"
        )
    return said


def with_anion(water: Water, anion: str, amount: float) -> Water:
    """A water with more of a strong anion, which came with protons or with a metal that falls out [mol]."""
    return water._replace(strong={**water.strong, anion: water.strong.get(anion, 0.0) + amount})


def with_carbon_dioxide(water: Water, amount: float) -> Water:
    """A water with more carbon dioxide dissolved in it [mol]."""
    return water._replace(weak=water.weak._replace(carbonate=water.weak.carbonate + amount))


def _least(makes: Callable[[float], Water], target: float, most: float) -> float:
    """The least amount that brings the pH down to a target; `most` brings it below."""
    low, high = 0.0, most
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        if speciation(makes(middle)).acidity > target:
            low = middle
        else:
            high = middle
    return high


def sulfuric_acid_to_reach(water: Water, target: float) -> float:
    """Sulfuric acid (100 %) that brings a water to a pH, with activities and at its temperature.

    Parameters
    ----------
    water : Water
        Without sulfide.
    target : float
        pH, from 6 up.

    Returns
    -------
    float
        Acid, 0 where the water is below that pH already [kg].

    Raises
    ------
    InputError
        When the water holds sulfide.

    Examples
    --------
    >>> water = water_of({"sodium_hydroxide": 0.001}, 1.0, 25.0)
    >>> round(sulfuric_acid_to_reach(water, 7.0) * 1000, 4)
    1.226
    """
    refuse_sulfide(water, "neutralisation with sulfuric acid")
    if speciation(water).acidity <= target:
        return 0.0
    # Half the strong charge leaves the water at pH 7 at most, and 0.01 mmol/L more takes it below pH 6.
    most = max(0.0, 0.5 * water.strong_difference) + 1e-5 * water.volume
    found = _least(lambda amount: with_anion(water, "SO4--", amount), target, most)
    return found * molar_mass("sulfuric_acid")


def carbon_dioxide_to_reach(water: Water, target: float, gas_pressure: float = FLUE_GAS) -> float:
    """Carbon dioxide that a water must dissolve to come to a pH, with activities and at its temperature.

    Parameters
    ----------
    water : Water
        Without sulfide.
    target : float
        pH.
    gas_pressure : float, optional
        Pressure of the carbon dioxide in the gas blown in [bar].

    Returns
    -------
    float
        Carbon dioxide, 0 where the water is below that pH already [kg].

    Raises
    ------
    InputError
        When the water holds sulfide, or the gas brings it no lower than a pH above the target.

    Examples
    --------
    >>> water = water_of({"sodium_hydroxide": 0.001}, 1.0, 25.0)
    >>> round(carbon_dioxide_to_reach(water, 8.3) * 1000, 2)
    1.09
    """
    refuse_sulfide(water, "neutralisation with carbon dioxide")
    if speciation(water).acidity <= target:
        return 0.0
    rest = speciation(water, gas_pressure)
    if rest.acidity > target:
        raise InputError(
            "neutralisation with carbon dioxide",
            f"target is pH {target:g}; gas with {gas_pressure:g} bar of carbon dioxide brings this water to "
            f"pH {rest.acidity:.1f}, no lower",
        )
    held = sum(rest.ions.get(ion, 0.0) for ion in ("CO2", "HCO3-", "CO3--")) * water.volume
    most = max(held - water.weak.carbonate, 0.0) * (1.0 + 1e-9)
    return _least(lambda amount: with_carbon_dioxide(water, amount), target, most) * molar_mass(
        "carbon_dioxide"
    )


def coagulated(water: Water, coagulant: str, dose: float) -> Water:
    """A water whose coagulant fell out as hydroxide and left its anion: less alkalinity, more salt.

    Parameters
    ----------
    water : Water
        The water.
    coagulant : str
        Key of `COAGULANTS`.
    dose : float
        Alum with 14.3 mol of water, or ferric chloride without water [kg/L].
    """
    anion, number, mass = COAGULANTS[coagulant]
    return with_anion(water, anion, number * dose * water.volume / mass)


def aired(water: Water, oxygen: float, with_thiosulfate: bool = False) -> tuple[Water, float]:
    """A water whose sulfur salts took up oxygen, and the oxygen they took.

    Parameters
    ----------
    water : Water
        The water.
    oxygen : float
        Oxygen there is [kg].
    with_thiosulfate : bool, optional
        Go on to thiosulfate, as a biological step does.

    Examples
    --------
    >>> water = water_of({"sodium_sulfite": 0.010}, 1.0, 25.0)
    >>> after, oxygen = aired(water, 0.001)
    >>> round(after.weak.sulfite / water.weak.sulfite, 3), oxygen
    (0.212, 0.001)
    """
    salts = {
        "sodium_hydrosulfite": water.strong.get("S2O4--", 0.0),
        "sodium_thiosulfate": water.strong.get("S2O3--", 0.0),
        "sodium_hydrosulfide": water.weak.sulfide,
        "sodium_sulfite": water.weak.sulfite,
    }
    amounts = {salt: amount * molar_mass(salt) for salt, amount in salts.items()}
    done = oxidised(amounts, oxygen, with_thiosulfate)
    before = water_of(amounts, water.volume, water.temperature)
    after = water_of(done.amounts, water.volume, water.temperature)
    strong = dict(water.strong)
    for ion in set(before.strong) | set(after.strong):
        if ion != "Na+":  # no reaction takes sodium or gives it
            change = after.strong.get(ion, 0.0) - before.strong.get(ion, 0.0)
            strong[ion] = max(0.0, strong.get(ion, 0.0) + change)
    weak = water.weak._replace(sulfite=max(0.0, after.weak.sulfite), sulfide=max(0.0, after.weak.sulfide))
    return water._replace(strong=strong, weak=weak), done.oxygen
