"""Atomic weights, formulas and molar masses.

Notes
-----
Standard atomic weights, abridged to five figures (IUPAC 2021): source `atomic-weights`.
"""

from __future__ import annotations

import re
from functools import cache

from costing.reference_data import substances

ATOMIC_WEIGHTS = {  # g/mol
    "H": 1.008,
    "C": 12.011,
    "N": 14.007,
    "O": 15.999,
    "Na": 22.990,
    "Al": 26.982,
    "S": 32.06,
    "Cl": 35.45,
    "K": 39.098,
    "Ca": 40.078,
    "Fe": 55.845,
    "Br": 79.904,
}

_PART = re.compile(r"([A-Z][a-z]?)(\d*\.?\d*)")
_HYDRATE = re.compile(r"^(\d*)(.+)$")


@cache
def atoms(formula: str) -> dict[str, float]:
    """Count the atoms of a formula.

    Parameters
    ----------
    formula : str
        Element symbols and numbers; a hydrate after a dot, as in ``Na2S.9H2O``.

    Returns
    -------
    dict
        Element -> number of atoms.

    Raises
    ------
    ValueError
        When the formula holds anything else.

    Examples
    --------
    >>> atoms("Na2S2O4")
    {'Na': 2.0, 'S': 2.0, 'O': 4.0}
    """
    found: dict[str, float] = {}
    for part in formula.split("."):
        times, body = _HYDRATE.match(part).groups() if part[:1].isdigit() else ("1", part)  # type: ignore[union-attr]
        if not body or _PART.sub("", body):
            raise ValueError(f"{formula!r} is not a formula")
        for element, number in _PART.findall(body):
            if element not in ATOMIC_WEIGHTS:
                raise ValueError(f"{formula!r} holds {element}, whose atomic weight is not known here")
            found[element] = found.get(element, 0.0) + float(number or 1) * float(times)
    return found


@cache
def molar_mass_of_formula(formula: str) -> float:
    """Mass of one mol.

    Parameters
    ----------
    formula : str
        Element symbols and numbers.

    Returns
    -------
    float
        Molar mass [kg/mol].

    Examples
    --------
    >>> round(molar_mass_of_formula("C16H10N2O2") * 1000, 3)
    262.268
    """
    return sum(ATOMIC_WEIGHTS[element] * number for element, number in atoms(formula).items()) / 1000.0


@cache
def molar_mass(substance: str) -> float:
    """Mass of one mol of a substance of the table.

    Parameters
    ----------
    substance : str
        Key in ``substances.csv``.

    Returns
    -------
    float
        Molar mass [kg/mol].
    """
    return molar_mass_of_formula(substances()[substance].formula)


@cache
def element_share(substance: str, element: str) -> float:
    """Mass of an element in a mass of a substance of the table.

    Parameters
    ----------
    substance : str
        Key in ``substances.csv``.
    element : str
        Symbol of the element.

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> round(element_share("sodium_hydroxide", "Na"), 4)
    0.5748
    """
    formula = substances()[substance].formula
    number = atoms(formula).get(element, 0.0)
    return number * ATOMIC_WEIGHTS.get(element, 0.0) / 1000.0 / molar_mass_of_formula(formula)
