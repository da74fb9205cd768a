"""Loads that follow from the ions of a water, a water that holds what its loads say, and what is no ion."""

from __future__ import annotations

from collections.abc import Mapping

from costing.effluent.composition import Water, mixed, water_of
from costing.effluent.salinity import salts_dried
from costing.effluent.speciation import speciation
from costing.process.chemistry import molar_mass, molar_mass_of_formula

SULFUR_DEMAND = "COD, inorganic sulfur"
DISSOLVED, SOLIDS = "dissolved solids", "suspended solids"
# What is known of the organic matter of an effluent by mass.
OF_ORGANIC_MATTER = ("unfixed dye", "surfactants", "size", "matter off the cotton")

# Strong ion -> parameter, its formula, atoms of sulfur, mol of oxygen to sulfate.
STRONG = {
    "Na+": ("sodium", "Na", 0, 0.0),
    "Cl-": ("chloride", "Cl", 0, 0.0),
    "SO4--": ("sulfate", "SO4", 1, 0.0),
    "S2O3--": ("thiosulfate", "S2O3", 2, 2.0),
    "S2O4--": ("hydrosulfite", "S2O4", 2, 1.5),
}
WEAK = {"sulfite": ("sulfite", "SO3", 1, 0.5), "sulfide": ("sulfide, as S", "S", 1, 2.0)}
# Parameter of a sulfur salt -> its formula, and mol of oxygen for each mol until it is sulfate.
OXYGEN_TO_SULFATE = {
    parameter: (formula, oxygen)
    for parameter, formula, _, oxygen in (*STRONG.values(), *WEAK.values())
    if oxygen
}

# Parameter -> the salt that stands in where a load says more than the water holds.
SALTS = {
    "chloride": "sodium_chloride",
    "sulfate": "sodium_sulfate",
    "thiosulfate": "sodium_thiosulfate",
    "hydrosulfite": "sodium_hydrosulfite",
    "sulfite": "sodium_sulfite",
    "sulfide, as S": "sodium_hydrosulfide",
}


def ion_loads(water: Water) -> dict[str, float]:
    """Parameters of a water that its ions give.

    Parameters
    ----------
    water : Water
        The water, not without volume.

    Returns
    -------
    dict
        Parameter -> mass; dissolved solids are the salt that stays when it is dried [kg].

    Examples
    --------
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
    found["sulfur, all forms"] = sulfur * molar_mass_of_formula("S")
    found["sulfate, once all is oxidised"] = sulfur * molar_mass_of_formula("SO4")
    found[SULFUR_DEMAND] = oxygen * molar_mass("oxygen")
    found[DISSOLVED] = salts_dried(speciation(water)) * water.volume
    return found


def holding(water: Water, loads: Mapping[str, float]) -> Water:
    """A water that holds at least the ions its loads say, each brought with its sodium.

    So a sulfide that is known from an analysis alone is one that no acid may meet.

    Parameters
    ----------
    water : Water
        The water.
    loads : mapping
        Parameter -> load [kg].

    Examples
    --------
    >>> water = holding(water_of({}, 1000.0, 25.0), {"sulfide, as S": 0.032})
    >>> round(water.weak.sulfide, 3)
    0.998
    """
    held = ion_loads(water)
    missing = {}
    for parameter, salt in SALTS.items():
        more = loads.get(parameter, 0.0) - held[parameter]
        if more > 1e-9 * held[parameter]:
            one = ion_loads(water_of({salt: 1.0}, 1.0, water.temperature))[parameter]
            missing[salt] = more / one
    return mixed(water, water_of(missing, 0.0, water.temperature)) if missing else water


def dissolved_organics(loads: Mapping[str, float], water: Water, dissolved: float) -> float:
    """Organic matter among the dissolved solids: dye, size, surfactant, matter off the cotton.

    What a filter holds back of all is no part of it, nor are the organic acids, which are ions of the water.
    Lint is among what a filter holds back, so it is a low figure.

    Parameters
    ----------
    loads : mapping
        Parameter -> load [kg].
    water : Water
        Its organic acids are left out.
    dissolved : float
        Dissolved solids that no ion gives: it is never more [kg].

    Examples
    --------
    >>> loads = {"size": 10.0, "unfixed dye": 4.0, "suspended solids": 3.0}
    >>> dissolved_organics(loads, water_of({}, 1.0, 25.0), 20.0)
    11.0
    """
    whole = sum(loads.get(name, 0.0) for name in OF_ORGANIC_MATTER)
    acids = float(water.weak.carboxylate) * molar_mass("galacturonic_acid")
    return min(dissolved, max(0.0, whole - loads.get(SOLIDS, 0.0) - acids))
