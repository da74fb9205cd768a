"""What reacts in a dye bath and on the yarn behind it: mol made (above zero) or taken (below zero)."""

from __future__ import annotations

from collections.abc import Mapping

from costing.process.bath_salt import share_ending_half_as_sulfate

DECAY = "decomposes without oxygen"
VATTING = {
    "indigo": -1.0,
    "sodium_hydrosulfite": -1.0,
    "sodium_hydroxide": -2.0,
    "leuco_indigo": 1.0,
    "sodium_sulfite": 2.0,
}
# Air oxidises dye on the yarn, hydrosulfite reduces it again: the dye itself stays as it was.
REVATTING = {
    "sodium_hydrosulfite": -1.0,
    "oxygen": -0.5,
    "sodium_hydroxide": -2.0,
    "sodium_sulfite": 2.0,
    "water": 1.0,
}
WITHOUT_OXYGEN = {
    "sodium_hydrosulfite": -1.0,
    "sodium_hydroxide": -1.0,
    "sodium_thiosulfate": 0.5,
    "sodium_sulfite": 1.0,
    "water": 0.5,
}
AIRING = {"leuco_indigo": -1.0, "oxygen": -0.5, "indigo": 1.0, "water": 1.0}
CARBONATION = {"sodium_hydroxide": -2.0, "carbon_dioxide": -1.0, "sodium_carbonate": 1.0, "water": 1.0}
# Sulfite goes on to sulfate without hydrosulfite: in the skies, in the rinse, in the drain.
SULFITE_BY_AIR = "sulfite oxidised by air"
SULFITE_OXIDATION = {"sodium_sulfite": -1.0, "oxygen": -0.5, "sodium_sulfate": 1.0}


def oxidation_by_air(hydrosulfite_per_oxygen: float) -> Mapping[str, float]:
    """Stoichiometry of one mol of hydrosulfite destroyed by air.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].

    Returns
    -------
    mapping
        Substance -> mol made (above zero) or taken (below zero).
    """
    sulfate = share_ending_half_as_sulfate(hydrosulfite_per_oxygen)
    return {
        "sodium_hydrosulfite": -1.0,
        "oxygen": -1.0 / hydrosulfite_per_oxygen,
        "sodium_hydroxide": -2.0,
        "sodium_sulfite": 2.0 - sulfate,
        "sodium_sulfate": sulfate,
        "water": 1.0,
    }
