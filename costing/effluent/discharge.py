"""What goes down the drain, stream by stream.

An estimate from the recipe and the range. It is not a measurement, and no measurement of compliance.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from costing.effluent.oxygen_demand import found_demand, is_dye, is_inorganic_sulfur
from costing.ledger.closure import content
from costing.ledger.whole import Ledger
from costing.process.chemistry import atoms, molar_mass, molar_mass_of_formula
from costing.process.postings import DRAIN, Line
from costing.reference_data import substances
from costing.settings.mill import REDUCED_DYES, Material

# Sodium salt in the ledger -> ion, as limits and analyses name it.
IONS = {
    "sulfate": ("sodium_sulfate", "SO4"),
    "sulfite": ("sodium_sulfite", "SO3"),
    "thiosulfate": ("sodium_thiosulfate", "S2O3"),
    "hydrosulfite": ("sodium_hydrosulfite", "S2O4"),
}

# Anions of strong acids: charge per mol of the salt. Sulfite and carbonate are weak and stay out.
STRONG_ANIONS = {
    "sodium_sulfate": 2.0,
    "sodium_thiosulfate": 2.0,
    "sodium_hydrosulfite": 2.0,
    "sodium_chloride": 1.0,
}

PARAMETERS = (
    "COD, organic",
    "COD, inorganic sulfur",
    "COD, both",
    "unfixed dye",
    "sodium",
    "sulfate",
    "sulfite",
    "thiosulfate",
    "hydrosulfite",
    "sulfur, all forms",
    "nitrogen of dye and chemicals",
)


class Stream(NamedTuple):
    """One stream, per kilogram of saleable grey yarn.

    Attributes
    ----------
    name : str
        Step and what leaves it.
    flow : float
        Water [L/kg].
    loads : dict
        Parameter -> mass [kg/kg].
    alkalinity : float
        Strong-ion difference: sodium less the anions of strong acids [mol/kg].
    lines : list of Line
        The postings behind it.
    """

    name: str
    flow: float
    loads: dict[str, float]
    alkalinity: float
    lines: list[Line]

    def concentration(self, parameter: str) -> float:
        """Mass per volume of the stream [kg/L]; 0 where nothing flows."""
        return self.loads[parameter] / self.flow if self.flow > 0 else 0.0

    @property
    def alkalinity_concentration(self) -> float:
        """Strong-ion difference per volume [mol/L]; 0 where nothing flows."""
        return self.alkalinity / self.flow if self.flow > 0 else 0.0


def streams(ledger: Ledger, materials: Mapping[str, Material]) -> list[Stream]:
    """Every stream of a ledger, and their sum as the last one.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.

    Returns
    -------
    list of Stream
        In the order of the route; the last is named ``all streams``.
    """
    by_name: dict[str, list[Line]] = {}
    for line in ledger.lines:
        if line.destination.startswith(DRAIN):
            by_name.setdefault(line.destination[len(DRAIN) :], []).append(line)
    known: dict[str, dict[str, float]] = {}
    found = [_stream(name, lines, materials, known) for name, lines in by_name.items()]
    return [*found, _sum(found)]


def _sum(found: list[Stream]) -> Stream:
    """All streams in one pit."""
    return Stream(
        "all streams",
        sum(stream.flow for stream in found),
        {name: sum(stream.loads[name] for stream in found) for name in PARAMETERS},
        sum(stream.alkalinity for stream in found),
        [line for stream in found for line in stream.lines],
    )


def _stream(
    name: str, lines: list[Line], materials: Mapping[str, Material], known: dict[str, dict[str, float]]
) -> Stream:
    """One stream; `known` keeps what a substance adds, for the next stream that holds it."""
    amounts: dict[str, float] = {}
    for line in lines:
        amounts[line.substance] = amounts.get(line.substance, 0.0) + line.amount
    loads = dict.fromkeys(PARAMETERS, 0.0)
    charge = 0.0
    for substance, amount in amounts.items():
        if substance not in known:
            known[substance] = parts_of(substance, materials)
        for parameter, share in known[substance].items():
            loads[parameter] += amount * share
        charge += amount * alkalinity_of(substance)
    return Stream(name, amounts.get("water", 0.0), loads, charge, lines)


def parts_of(substance: str, materials: Mapping[str, Material]) -> dict[str, float]:
    """What one kilogram of a substance, or of a product without formula, adds to each parameter.

    Parameters
    ----------
    substance : str
        Key in ``substances.csv``, or the code of a product.
    materials : mapping
        Code -> product of the mill's list.

    Returns
    -------
    dict
        Parameter -> mass; parameters to which it adds nothing are left out [kg/kg].
    """
    demand = found_demand(substance, materials)
    inorganic = is_inorganic_sulfur(substance)
    parts = {
        "COD, organic": 0.0 if inorganic else demand,
        "COD, inorganic sulfur": demand if inorganic else 0.0,
        "COD, both": demand,
        "sodium": content(substance, "Na", materials),
        "sulfur, all forms": content(substance, "S", materials),
        "nitrogen of dye and chemicals": content(substance, "N", materials),
    }
    if is_dye(substance):
        parts["unfixed dye"] = molar_mass(REDUCED_DYES.get(substance, substance)) / molar_mass(substance)
    for parameter, (salt, ion) in IONS.items():
        if substance == salt:
            parts[parameter] = molar_mass_of_formula(ion) / molar_mass(salt)
    return {parameter: share for parameter, share in parts.items() if share}


@cache
def alkalinity_of(substance: str) -> float:
    """Strong-ion difference that one kilogram of a substance brings: sodium less strong anions [mol/kg].

    Products without a formula count as neutral salts.
    """
    if substance not in substances():
        return 0.0
    sodium = atoms(substances()[substance].formula).get("Na", 0.0)
    return (sodium - STRONG_ANIONS.get(substance, 0.0)) / molar_mass(substance)
