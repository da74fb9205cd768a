"""Sulfur salts that oxygen of the air oxidises on their way: in drains, in an aerated pit.

It is the oxygen that is short, not the will to react: a litre of water saturated with air oxidises some 40 mg
of sulfite. So what is oxidised follows from the oxygen that the surface lets in. What goes first is the order
of `REACTIONS`: hydrosulfite, then sulfide, then sulfite; thiosulfate waits for a biological step.

No acid may meet such a water before its sulfide is gone: see the cautions.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from costing.effluent.weak_acids import HOUSE, ICE_POINT, Scale
from costing.process.arithmetic import exp, not_negative
from costing.process.box_reactions import MEETING, OXIDISED, Reaction, partners, reach
from costing.process.chemistry import molar_mass

# mol for each mol of oxygen; the acid sulfate that forms counts as half sulfate and half sulfuric acid.
AIR = "air on the way"
REACTIONS = (
    Reaction(
        AIR,
        {
            "sodium_hydrosulfite": -1.0,
            "oxygen": -1.0,
            "water": -1.0,
            "sodium_bisulfite": 1.0,
            "sodium_sulfate": 0.5,
            "sulfuric_acid": 0.5,
        },
    ),
    Reaction(
        AIR,
        {
            "sodium_sulfide": -1.0,
            "oxygen": -1.0,
            "water": -0.5,
            "sodium_thiosulfate": 0.5,
            "sodium_hydroxide": 1.0,
        },
    ),
    Reaction(AIR, {"sodium_hydrosulfide": -1.0, "oxygen": -1.0, "sodium_thiosulfate": 0.5, "water": 0.5}),
    Reaction(AIR, {"sodium_sulfite": -2.0, "oxygen": -1.0, "sodium_sulfate": 2.0}),
    Reaction(AIR, {"sodium_bisulfite": -2.0, "oxygen": -1.0, "sodium_sulfate": 1.0, "sulfuric_acid": 1.0}),
)
THIOSULFATE = Reaction(
    "a biological step",
    {
        "sodium_thiosulfate": -1.0,
        "oxygen": -2.0,
        "water": -1.0,
        "sodium_sulfate": 1.0,
        "sulfuric_acid": 1.0,
    },
)

# Oxygen in water under air of 1 atm, ln of mg/L = a + b/T + c/T2 + d/T3 + e/T4, T in kelvin.
SATURATION = (-139.34410, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11)
MILLIGRAM = 1e-6  # kg


def oxygen_saturation(effluent_temperature: Any, *, scale: Scale = HOUSE, unit_density: Any = 1.0) -> Any:
    """Oxygen that fresh water holds under air of 1 atm.

    Leaves out salt, which lowers it (10 g/L by about 6 %), and height above the sea.

    Parameters
    ----------
    effluent_temperature : float
        0 to 40 degC by the measurements behind it, above that an extrapolation [degC].
    scale : Scale
        House units.
    unit_density : float
        House unit [kg/L].

    Returns
    -------
    float
        Concentration [kg/L].

    Examples
    --------
    >>> round(oxygen_saturation(25.0) * 1e6, 2)
    8.26

    References
    ----------
    oxygen-saturation-equation
    """
    kelvins = (effluent_temperature - scale.ice_point) / scale.degree + ICE_POINT
    exponent = sum(factor / kelvins**power for power, factor in enumerate(SATURATION))
    return exp(exponent) * MILLIGRAM * unit_density


def oxygen_taken_up(
    oxygen_transfer: Any, oxygen_saturation: Any, residence_time: Any, dissolved_oxygen: Any = 0.0
) -> Any:
    """Oxygen that a water takes from the air in a time: the most that can be oxidised by it.

    Parameters
    ----------
    oxygen_transfer : float
        Rate constant of the surface, kLa: 0.1 to 1 1/h in an open drain, 1 to 5 1/h aerated, judgement [1/h].
    oxygen_saturation : float
        What the water holds at most [kg/L].
    residence_time : float
        [h]
    dissolved_oxygen : float, optional
        Of the water meanwhile: about 0 as long as sulfite is left [kg/L].

    Returns
    -------
    float
        Oxygen [kg/L].

    Notes
    -----
    ``kLa (Cs - C) t``; measured uptake falls below it where much sulfite is left: a factor of two either way.

    Examples
    --------
    Eight hours in an aerated pit:

    >>> round(oxygen_taken_up(2.0, 8.26e-6, 8.0) * 1e6, 1)
    132.2
    """
    return oxygen_transfer * not_negative(oxygen_saturation - dissolved_oxygen) * residence_time


# Peroxide and bromate of one stream meet the sulfur salts of another.
OXIDANT_MEETS = tuple(reaction for reaction in MEETING if reaction.cause == OXIDISED)


class Oxidised(NamedTuple):
    """A water behind its oxidation.

    Attributes
    ----------
    amounts : dict
        Substance -> mass, water that reacts in it [kg].
    oxygen : float
        Oxygen used [kg].
    """

    amounts: dict[str, float]
    oxygen: float


def oxidised(amounts: Mapping[str, float], oxygen: float, with_thiosulfate: bool = False) -> Oxidised:
    """Oxidise sulfur salts with the oxygen there is, one kind after the other.

    Parameters
    ----------
    amounts : mapping
        Substance -> mass [kg].
    oxygen : float
        Oxygen there is [kg].
    with_thiosulfate : bool, optional
        Go on to thiosulfate, as a biological step does.

    Returns
    -------
    Oxidised
        What is left, what is made, what it took.

    Notes
    -----
    The oxygen demand of the sulfur falls by the oxygen used, gram by gram.

    Examples
    --------
    A gram of oxygen on 10 g of sulfite:

    >>> made = oxidised({"sodium_sulfite": 0.010}, 0.001)
    >>> round(made.amounts["sodium_sulfite"] * 1000, 2), made.oxygen
    (2.12, 0.001)
    """
    held = dict(amounts)
    left = oxygen / molar_mass("oxygen")
    used = 0.0
    for reaction in (*REACTIONS, THIOSULFATE) if with_thiosulfate else REACTIONS:
        taken = -reaction.stoichiometry["oxygen"]
        extent = _react(held, reaction, left / taken)
        left -= extent * taken
        used += extent * taken
    return Oxidised(held, used * molar_mass("oxygen"))


def met(amounts: Mapping[str, float]) -> dict[str, float]:
    """Let peroxide and bromate oxidise the sulfur salts that they meet, as far as they reach.

    Parameters
    ----------
    amounts : mapping
        Substance -> mass, of streams that run together [kg].

    Returns
    -------
    dict
        What is left and made [kg].

    Examples
    --------
    Peroxide of an oxidising box on the sulfite of a rinse, mol for mol:

    >>> left = met({"hydrogen_peroxide": 0.034, "sodium_sulfite": 0.200})
    >>> round(left["sodium_sulfite"], 3), round(left["hydrogen_peroxide"], 3)
    (0.074, 0.0)
    """
    held = dict(amounts)
    for reaction in OXIDANT_MEETS:
        _react(held, reaction, float("inf"))
    return held


def _react(held: dict[str, float], reaction: Reaction, most: float) -> float:
    """Run a reaction until a partner is gone, and no further than so far; gives how far [mol]."""
    extent = min(most, reach(partners(held, reaction)))
    if extent <= 0.0:
        return 0.0
    for substance, number in reaction.stoichiometry.items():
        if substance != "oxygen":
            held[substance] = held.get(substance, 0.0) + extent * number * molar_mass(substance)
    return extent
