"""Loads of an effluent that follow from the ions of its water."""

from __future__ import annotations

from costing.effluent.composition import Water
from costing.process.chemistry import molar_mass, molar_mass_of_formula

SULFUR_DEMAND = "COD, inorganic sulfur"
SALTS = "dissolved salts"
# What a product without a formula may bring beside the ions that are followed.
CONSERVATIVE = ("sodium", "sulfur, all forms")

# Strong ion -> parameter, its formula, atoms of sulfur, mol of oxygen to sulfate.
STRONG = {
    "Na+": ("sodium", "Na", 0, 0.0),
    "Cl-": ("chloride", "Cl", 0, 0.0),
    "SO4--": ("sulfate", "SO4", 1, 0.0),
    "S2O3--": ("thiosulfate", "S2O3", 2, 2.0),
    "S2O4--": ("hydrosulfite", "S2O4", 2, 1.5),
}
WEAK = {"sulfite": ("sulfite", "SO3", 1, 0.5), "sulfide": ("sulfide, as S", "S", 1, 2.0)}


def ion_loads(water: Water) -> dict[str, float]:
    """Parameters of a water that its ions give.

    Parameters
    ----------
    water : Water
        The water.

    Returns
    -------
    dict
        Parameter -> mass; dissolved salts are strong ions, sulfite and sulfide, without carbonate and
        hydroxide [kg].

    Examples
    --------
    >>> from costing.effluent.composition import water_of
    >>> found = ion_loads(water_of({"sodium_hydrosulfite": 1.0}, 100.0, 25.0))
    >>> [round(found[name], 4) for name in ("sodium", "hydrosulfite", "COD, inorganic sulfur")]
    [0.2641, 0.7359, 0.2757]
    """
    found: dict[str, float] = {}
    sulfur = oxygen = 0.0
    parts = [(water.strong.get(ion, 0.0), row) for ion, row in STRONG.items()]
    parts += [(getattr(water.weak, name), row) for name, row in WEAK.items()]
    for amount, (parameter, formula, atoms, taken) in parts:
        found[parameter] = amount * molar_mass_of_formula(formula)
        sulfur += amount * atoms
        oxygen += amount * taken
    salts = sum(found.values())
    found["sulfur, all forms"] = sulfur * molar_mass_of_formula("S")
    found["sulfate, once all is oxidised"] = sulfur * molar_mass_of_formula("SO4")
    found[SULFUR_DEMAND] = oxygen * molar_mass("oxygen")
    found[SALTS] = salts
    return found
