"""What reacts in a box or on the yarn behind it: acid and alkali, oxidant and sulfide, reductant and air.

Each reaction runs until one of its partners is gone. Which of several comes first is the order of this table:
alkali meets acid before anything else, an oxidant takes the sulfide before acid can set it free, and acid
that is still left then makes gas of carbonate and sulfide. Rates are left out, and that peroxide may leave
thiosulfate alone is taken for granted.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import reduce
from typing import NamedTuple

from costing.process import fibre
from costing.process.arithmetic import anywhere, larger, not_negative, smaller, where
from costing.process.chemistry import molar_mass
from costing.process.postings import Book
from costing.settings.material import Material

SMALLEST = 1e-15  # kg per kg of yarn: less is rounding


class Reaction(NamedTuple):
    """One reaction.

    Attributes
    ----------
    cause : str
        Why, in the trade's words.
    stoichiometry : dict
        Substance -> mol made (above zero) or taken (below zero).
    """

    cause: str
    stoichiometry: dict[str, float]

    @property
    def taken(self) -> dict[str, float]:
        """Substance -> mol taken; water is always there."""
        return {name: -mol for name, mol in self.stoichiometry.items() if mol < 0 and name != "water"}


NEUTRALISED = "acid meets alkali"
OXIDISED = "oxidised in the box"
GAS = "acid sets gas free"

# Substance -> what one mol of it does to caustic.
MET_BY_CAUSTIC: dict[str, dict[str, float]] = {
    "sulfuric_acid": {
        "sulfuric_acid": -1.0,
        "sodium_hydroxide": -2.0,
        "sodium_sulfate": 1.0,
        "water": 2.0,
    },
    "acetic_acid": {
        "acetic_acid": -1.0,
        "sodium_hydroxide": -1.0,
        "sodium_acetate": 1.0,
        "water": 1.0,
    },
    "sodium_bicarbonate": {
        "sodium_bicarbonate": -1.0,
        "sodium_hydroxide": -1.0,
        "sodium_carbonate": 1.0,
        "water": 1.0,
    },
    "sodium_bisulfite": {
        "sodium_bisulfite": -1.0,
        "sodium_hydroxide": -1.0,
        "sodium_sulfite": 1.0,
        "water": 1.0,
    },
    "sodium_hydrosulfide": {
        "sodium_hydrosulfide": -1.0,
        "sodium_hydroxide": -1.0,
        "sodium_sulfide": 1.0,
        "water": 1.0,
    },
}

MEETING: tuple[Reaction, ...] = (
    Reaction("hydrosulfide made sulfide", MET_BY_CAUSTIC["sodium_hydrosulfide"]),
    Reaction(NEUTRALISED, MET_BY_CAUSTIC["sulfuric_acid"]),
    Reaction(NEUTRALISED, MET_BY_CAUSTIC["acetic_acid"]),
    Reaction(
        NEUTRALISED,
        {"sulfuric_acid": -1.0, "sodium_carbonate": -2.0, "sodium_sulfate": 1.0, "sodium_bicarbonate": 2.0},
    ),
    Reaction(
        NEUTRALISED,
        {"acetic_acid": -1.0, "sodium_carbonate": -1.0, "sodium_acetate": 1.0, "sodium_bicarbonate": 1.0},
    ),
    Reaction(fibre.NEUTRALISED, fibre.NEUTRALISATION),
    Reaction(NEUTRALISED, MET_BY_CAUSTIC["sodium_bicarbonate"]),
    Reaction(NEUTRALISED, MET_BY_CAUSTIC["sodium_bisulfite"]),
    Reaction(
        OXIDISED,
        {
            "sodium_hydrosulfite": -1.0,
            "hydrogen_peroxide": -3.0,
            "sodium_sulfate": 1.0,
            "sulfuric_acid": 1.0,
            "water": 2.0,
        },
    ),
    Reaction(
        OXIDISED,
        {"sodium_sulfide": -1.0, "hydrogen_peroxide": -4.0, "sodium_sulfate": 1.0, "water": 4.0},
    ),
    Reaction(
        OXIDISED,
        {
            "sodium_hydrosulfide": -2.0,
            "hydrogen_peroxide": -8.0,
            "sodium_sulfate": 1.0,
            "sulfuric_acid": 1.0,
            "water": 8.0,
        },
    ),
    Reaction(
        OXIDISED,
        {"sodium_sulfite": -1.0, "hydrogen_peroxide": -1.0, "sodium_sulfate": 1.0, "water": 1.0},
    ),
    Reaction(
        OXIDISED,
        {
            "sodium_bisulfite": -2.0,
            "hydrogen_peroxide": -2.0,
            "sodium_sulfate": 1.0,
            "sulfuric_acid": 1.0,
            "water": 2.0,
        },
    ),
    Reaction(
        OXIDISED,
        {
            "sodium_hydrosulfite": -1.0,
            "sodium_bromate": -1.0,
            "water": -1.0,
            "sodium_sulfate": 1.0,
            "sulfuric_acid": 1.0,
            "sodium_bromide": 1.0,
        },
    ),
    Reaction(
        OXIDISED,
        {"sodium_sulfide": -3.0, "sodium_bromate": -4.0, "sodium_sulfate": 3.0, "sodium_bromide": 4.0},
    ),
    Reaction(
        OXIDISED,
        {"sodium_sulfite": -3.0, "sodium_bromate": -1.0, "sodium_sulfate": 3.0, "sodium_bromide": 1.0},
    ),
    Reaction(
        "acid takes sulfite back to bisulfite",
        {"sodium_sulfite": -2.0, "sulfuric_acid": -1.0, "sodium_bisulfite": 2.0, "sodium_sulfate": 1.0},
    ),
    Reaction(
        "acid takes sulfite back to bisulfite",
        {"sodium_sulfite": -1.0, "acetic_acid": -1.0, "sodium_bisulfite": 1.0, "sodium_acetate": 1.0},
    ),
    Reaction(
        GAS,
        {
            "sulfuric_acid": -1.0,
            "sodium_bicarbonate": -2.0,
            "sodium_sulfate": 1.0,
            "carbon_dioxide": 2.0,
            "water": 2.0,
        },
    ),
    Reaction(
        GAS,
        {
            "acetic_acid": -1.0,
            "sodium_bicarbonate": -1.0,
            "sodium_acetate": 1.0,
            "carbon_dioxide": 1.0,
            "water": 1.0,
        },
    ),
    Reaction(
        "acid takes sulfide back to hydrosulfide",
        {"sulfuric_acid": -1.0, "sodium_sulfide": -2.0, "sodium_sulfate": 1.0, "sodium_hydrosulfide": 2.0},
    ),
    Reaction(
        "acid takes sulfide back to hydrosulfide",
        {"acetic_acid": -1.0, "sodium_sulfide": -1.0, "sodium_acetate": 1.0, "sodium_hydrosulfide": 1.0},
    ),
    Reaction(
        GAS,
        {
            "sulfuric_acid": -1.0,
            "sodium_hydrosulfide": -2.0,
            "sodium_sulfate": 1.0,
            "hydrogen_sulfide": 2.0,
        },
    ),
    Reaction(
        GAS,
        {
            "acetic_acid": -1.0,
            "sodium_hydrosulfide": -1.0,
            "sodium_acetate": 1.0,
            "hydrogen_sulfide": 1.0,
        },
    ),
)
# What must stand in a box for each of them, oxygen and water apart; most boxes hold little of it.
NEEDED: tuple[frozenset[str], ...] = tuple(frozenset(reaction.taken) - {"oxygen"} for reaction in MEETING)
"""In the order in which they run."""

# What a reductant becomes that has reduced a dye, once air has taken the dye back: the dye is out of the sum.
USED_UP: dict[str, Reaction] = {
    "sodium_sulfide": Reaction(
        "reduces the dye, then air",
        {
            "sodium_sulfide": -2.0,
            "oxygen": -2.0,
            "water": -1.0,
            "sodium_thiosulfate": 1.0,
            "sodium_hydroxide": 2.0,
        },
    ),
    "sodium_hydrosulfide": Reaction(
        "reduces the dye, then air",
        {"sodium_hydrosulfide": -2.0, "oxygen": -2.0, "sodium_thiosulfate": 1.0, "water": 1.0},
    ),
    "sodium_hydrosulfite": Reaction(
        "reduces the dye, then air",
        {
            "sodium_hydrosulfite": -1.0,
            "oxygen": -1.0,
            "sodium_hydroxide": -2.0,
            "sodium_sulfite": 1.0,
            "sodium_sulfate": 1.0,
            "water": 1.0,
        },
    ),
    "glucose": Reaction(
        "reduces the dye, then air",
        {
            "glucose": -2.0,
            "oxygen": -1.0,
            "sodium_hydroxide": -2.0,
            "sodium_gluconate": 2.0,
            "water": 2.0,
        },
    ),
}

# Caustic makes sulfide of a part of this reductant before it reduces the dye.
HYDROSULFIDE, SULFIDE = "sodium_hydrosulfide", "sodium_sulfide"

PEROXIDE_DECAY = Reaction("peroxide breaks down", {"hydrogen_peroxide": -2.0, "water": 2.0, "oxygen": 1.0})
# The dye box has booked the oxygen for its dye from the air: what peroxide brings instead goes back there.
DYE_OXIDISED = Reaction("oxidises the dye in place of air", PEROXIDE_DECAY.stoichiometry)


def reductants_in(products: Iterable[Material]) -> list[str]:
    """Reductants that products bring, by themselves or beside a dye that is sold reduced.

    Parameters
    ----------
    products : iterable of Material
        What is dosed into one bath.

    Returns
    -------
    list of str
        Keys of `USED_UP`, in its order.
    """
    listed = list(products)
    held = {name for name in USED_UP if any(product.holds(name) for product in listed)}
    if HYDROSULFIDE in held:
        held.add(SULFIDE)
    return [name for name in USED_UP if name in held]


def react_all(book: Book, held: Mapping[str, float]) -> None:
    """Post every reaction of what meets in a box, to the end.

    Parameters
    ----------
    book : Book
        Takes the lines.
    held : mapping
        Substance -> amount in the box, water apart [kg/kg].
    """
    there = {
        name: where(amount > SMALLEST, amount, 0.0)
        for name, amount in held.items()
        if anywhere(amount > SMALLEST)
    }
    going = True
    while going:  # acid made late in the table meets what stands early in it
        going = False
        for reaction, needed in zip(MEETING, NEEDED):
            if needed <= there.keys():
                going = react_share(book, there, reaction, 1.0) or going


def react_taken(book: Book, held: dict[str, float], reaction: Reaction, substance: str, taken: float) -> None:
    """Post one reaction that takes so much of a substance, or all of it where less is there.

    Parameters
    ----------
    book, held, reaction
        As of `react_share`.
    substance : str
        The one that is taken.
    taken : float
        How much [kg/kg].
    """
    there = held.get(substance, 0.0)
    if anywhere(there > SMALLEST):
        share = where(there > SMALLEST, smaller(1.0, taken / larger(there, SMALLEST)), 0.0)
        react_share(book, held, reaction, share)


def partners(held: Mapping[str, float], reaction: Reaction) -> dict[str, float]:
    """How far each partner of a reaction reaches [mol]; of oxygen the air has enough."""
    return {
        name: held.get(name, 0.0) / (mol * molar_mass(name))
        for name, mol in reaction.taken.items()
        if name != "oxygen"
    }


def reach(allowed: Mapping[str, float]) -> float:
    """How far a reaction goes: as far as its scarcest partner reaches [mol]."""
    return reduce(smaller, allowed.values())


def react_share(book: Book, held: dict[str, float], reaction: Reaction, share: float) -> bool:
    """Post one reaction of a share of what its scarcest partner allows.

    Parameters
    ----------
    book : Book
        Takes the lines.
    held : dict
        Substance -> amount in the box, water apart; left as the reaction leaves it [kg/kg].
    reaction : Reaction
        What reacts; gases come from the air.
    share : float
        Of what the scarcest partner allows [fraction].

    Returns
    -------
    bool
        True where anything reacted.
    """
    allowed, least = partners(held, reaction), 0.0
    extent = reach(allowed)
    for name, mol in allowed.items():
        least = where(mol == extent, held.get(name, 0.0), least)
    going = (least > SMALLEST) & (share > 0.0)
    if not anywhere(going):
        return False
    extent = where(going, extent * share, 0.0)
    book.react(reaction.cause, extent, reaction.stoichiometry)
    for name, mol in reaction.stoichiometry.items():
        left = not_negative(held.get(name, 0.0) + extent * mol * molar_mass(name))
        used_up = going & (share == 1.0) & (allowed.get(name) == extent)
        held[name] = where(used_up, 0.0, left)
    return True
