"""What a water holds, ion by ion. Waters are mixed by their ions, never by their pH."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from costing.effluent.acidity import Weak
from costing.process.chemistry import atoms, molar_mass
from costing.reference_data import substances


class Ion(NamedTuple):
    """An ion, or an uncharged part of a weak acid.

    Attributes
    ----------
    formula : str
        Its atoms.
    charge : float
        Charges, below zero for an anion.
    conductivity : float
        Molar conductivity at 25 degC without other ions, per mol of the ion [S cm2/mol].
    """

    formula: str
    charge: float
    conductivity: float


# Molar conductivities: ion-conductivity; 0 for what carries no current, or too little to count.
# Gluconate and galacturonate: as acetate, judgement.
IONS: dict[str, Ion] = {
    "Na+": Ion("Na", 1.0, 50.1),
    "H+": Ion("H", 1.0, 349.8),
    "OH-": Ion("OH", -1.0, 198.3),
    "Cl-": Ion("Cl", -1.0, 76.4),
    "Br-": Ion("Br", -1.0, 78.1),
    "BrO3-": Ion("BrO3", -1.0, 55.7),
    "SO4--": Ion("SO4", -2.0, 160.0),
    "S2O3--": Ion("S2O3", -2.0, 169.8),
    "S2O4--": Ion("S2O4", -2.0, 133.0),
    "CO2": Ion("CO2", 0.0, 0.0),
    "HCO3-": Ion("HCO3", -1.0, 44.5),
    "CO3--": Ion("CO3", -2.0, 138.6),
    "SO2": Ion("SO2", 0.0, 0.0),
    "HSO3-": Ion("HSO3", -1.0, 50.0),
    "SO3--": Ion("SO3", -2.0, 159.8),
    "H2S": Ion("H2S", 0.0, 0.0),
    "HS-": Ion("HS", -1.0, 65.0),
    "acetic acid": Ion("C2H4O2", 0.0, 0.0),
    "acetate-": Ion("C2H3O2", -1.0, 40.9),
    "sugar acid": Ion("C6H10O7", 0.0, 0.0),
    "sugar acid-": Ion("C6H9O7", -1.0, 40.9),
}

# Substance -> anion of a strong acid in it, and how many of them.
STRONG_ANIONS: dict[str, tuple[str, float]] = {
    "sodium_sulfate": ("SO4--", 1.0),
    "sulfuric_acid": ("SO4--", 1.0),
    "sodium_thiosulfate": ("S2O3--", 1.0),
    "sodium_hydrosulfite": ("S2O4--", 1.0),
    "sodium_chloride": ("Cl-", 1.0),
    "sodium_bromide": ("Br-", 1.0),
    "sodium_bromate": ("BrO3-", 1.0),
}

# Substance -> weak acid of which it brings one mol, with or without its sodium.
WEAK_ACIDS: dict[str, str] = {
    "sodium_carbonate": "carbonate",
    "sodium_bicarbonate": "carbonate",
    "carbon_dioxide": "carbonate",
    "sodium_sulfite": "sulfite",
    "sodium_bisulfite": "sulfite",
    "sodium_sulfide": "sulfide",
    "sodium_hydrosulfide": "sulfide",
    "hydrogen_sulfide": "sulfide",
    "acetic_acid": "acetate",
    "sodium_acetate": "acetate",
    "galacturonic_acid": "carboxylate",
    "sodium_galacturonate": "carboxylate",
    "sodium_gluconate": "carboxylate",
}


class Brought(NamedTuple):
    """What one kilogram of a substance brings to a water.

    Attributes
    ----------
    strong : tuple of (str, float)
        Strong ions, each with its amount [mol/kg].
    weak : str
        Weak acid, "" for none.
    weak_amount : float
        Of the weak acid, with its ions [mol/kg].
    """

    strong: tuple[tuple[str, float], ...]
    weak: str
    weak_amount: float


NONE = Brought((), "", 0.0)


@cache
def brought_by(substance: str) -> Brought:
    """Ions that one kilogram of a substance brings.

    Products without a formula count as neutral salts whose ions are not followed; what they bring of caustic
    and of sulfide is posted as such. Peroxide and leuco indigo count as neutral: at a pH above 11 both bind
    some caustic.

    Parameters
    ----------
    substance : str
        Key in ``substances.csv``; what is not there brings nothing.

    Returns
    -------
    Brought
        Amounts [mol/kg].

    Examples
    --------
    >>> [(ion, round(amount, 2)) for ion, amount in brought_by("sodium_sulfate").strong]
    [('Na+', 14.08), ('SO4--', 7.04)]
    """
    if substance not in substances():
        return NONE
    mol = 1.0 / molar_mass(substance)
    strong = []
    sodium = atoms(substances()[substance].formula).get("Na", 0.0)
    if sodium:
        strong.append(("Na+", sodium * mol))
    if substance in STRONG_ANIONS:
        anion, number = STRONG_ANIONS[substance]
        strong.append((anion, number * mol))
    weak = WEAK_ACIDS.get(substance, "")
    return Brought(tuple(strong), weak, mol if weak else 0.0)


@cache
def strong_charge(substance: str) -> float:
    """Charge of the strong cations less that of the strong anions which a substance brings [mol/kg].

    Products without a formula count as neutral salts.
    """
    return sum(amount * IONS[ion].charge for ion, amount in brought_by(substance).strong)


class Water(NamedTuple):
    """A volume of water with its ions; per kilogram of yarn, per day or per litre, as its amounts are.

    Attributes
    ----------
    volume : float
        [L]
    temperature : float
        [degC]
    strong : dict
        Strong ion -> amount [mol].
    weak : Weak
        Weak acids, each with its ions [mol].
    """

    volume: float
    temperature: float
    strong: dict[str, float]
    weak: Weak

    @property
    def strong_difference(self) -> float:
        """Charge of the strong cations less that of the strong anions [mol]."""
        return sum(amount * IONS[ion].charge for ion, amount in self.strong.items())


def water_of(amounts: Mapping[str, float], volume: float, temperature: float) -> Water:
    """A water from the substances in it.

    Parameters
    ----------
    amounts : mapping
        Substance -> mass [kg].
    volume : float
        [L]
    temperature : float
        [degC]

    Examples
    --------
    Caustic of 1 g/L:

    >>> round(water_of({"sodium_hydroxide": 0.001}, 1.0, 25.0).strong_difference, 4)
    0.025
    """
    strong: dict[str, float] = {}
    weak = dict.fromkeys(Weak._fields, 0.0)
    for substance, amount in amounts.items():
        brought = brought_by(substance)
        for ion, mol in brought.strong:
            strong[ion] = strong.get(ion, 0.0) + amount * mol
        if brought.weak:
            weak[brought.weak] += amount * brought.weak_amount
    return Water(volume, temperature, strong, Weak(**weak))


def mixed(*waters: Water) -> Water:
    """Waters run together: volumes, ions and heat add up.

    Examples
    --------
    >>> hot, cold = water_of({}, 1.0, 80.0), water_of({}, 3.0, 20.0)
    >>> mixed(hot, cold).temperature
    35.0
    """
    volume = sum(water.volume for water in waters)
    strong: dict[str, float] = {}
    for water in waters:
        for ion, amount in water.strong.items():
            strong[ion] = strong.get(ion, 0.0) + amount
    weak = Weak(*(sum(parts) for parts in zip(*(water.weak for water in waters))))
    warmth = sum(water.volume * water.temperature for water in waters)
    return Water(volume, warmth / volume if volume else 0.0, strong, weak)
