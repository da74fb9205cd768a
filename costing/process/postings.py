"""Double-entry lines: every amount leaves one account and enters another.

What a step takes, turns over and lets go is posted as lines per kilogram of grey yarn. Two proofs
follow for any input: every substance that enters the process account leaves it, and every element
that enters the reaction account leaves it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from costing.process.arithmetic import is_nothing
from costing.process.chemistry import molar_mass
from costing.settings.material import Material

STORE = "store"
GREY = "grey yarn"
AIR = "air"
PROCESS = "process"
REACTION = "reaction"
YARN = "dyed yarn"
CONDENSATE = "condensate"
MOTORS = "motors and lights"
EARLIER_LOT = "earlier lot"
NEXT_LOT = "next lot"
BATH = "standing in the boxes"
DRAIN = "drain: "

GASES = ("oxygen", "carbon_dioxide", "hydrogen_sulfide")
POWER = "electric energy"


# A line as it is posted: a plain tuple is made in a quarter of the time, and a quote posts hundreds.
Posting = tuple[str, str, str, str, float, str, str]


class Line(NamedTuple):
    """One posting by its names.

    Attributes
    ----------
    step : str
        Step of the route, or what the lot adds.
    material : str
        Code of the bought product; "" where nothing is bought.
    substance : str
        Key of the substance; the material's code where it has no formula.
    cause : str
        Why.
    amount : float
        kg per kg of grey yarn; kWh per kg for electric energy.
    source, destination : str
        The accounts.
    """

    step: str
    material: str
    substance: str
    cause: str
    amount: float
    source: str
    destination: str


def named(postings: Iterable[Posting]) -> list[Line]:
    """Postings as lines, to be read by name."""
    return [Line._make(posting) for posting in postings]


class Book:
    """Takes the postings of one step.

    Parameters
    ----------
    step : str
        Name of the step.
    """

    def __init__(self, step: str) -> None:
        self.step = step
        self.postings: list[Posting] = []
        # Water that the products bring, and that the reactions make less what they take.
        self.product_water = 0.0
        self.reaction_water = 0.0
        # A box with a content of its own says here what stands in it, and a dye bath what it is fed.
        self.content: Any = None
        self.feeds: Any = None
        self.exchange: Any = None  # heat that the drain gives back

    @property
    def lines(self) -> list[Line]:
        """What is posted, to be read by name."""
        return named(self.postings)

    def move(
        self,
        substance: str,
        cause: str,
        amount: float,
        source: str,
        destination: str,
        material: str = "",
    ) -> None:
        """Post an amount from one account to another; nothing is posted for zero."""
        if amount if amount.__class__ is float else not is_nothing(amount):  # the common case, without a call
            self.postings.append((self.step, material, substance, cause, amount, source, destination))

    def feed(self, material: Material, cause: str, pure: float, source: str = STORE) -> None:
        """Post a product with everything that its drums hold.

        Parameters
        ----------
        material : Material
            The product.
        cause : str
            Why it is used.
        pure : float
            Active substance; dye is counted as indigo [kg/kg].
        source : str, optional
            Account that gives it.
        """
        if is_nothing(pure):
            return
        delivered = pure / material.strength
        active = pure
        if material.is_reduced_dye:
            active = pure * molar_mass(material.substance) / molar_mass(material.counted_as)
        alkali = material.alkali * delivered
        sulfide = material.sodium_sulfide * delivered
        rest = delivered - active - alkali - sulfide
        key = material.substance or material.code
        self.move(key, cause, active, source, PROCESS, material.code)
        self.move("sodium_hydroxide", cause, alkali, source, PROCESS, material.code)
        self.move("sodium_sulfide", cause, sulfide, source, PROCESS, material.code)
        if material.remainder == "water":
            self.move("water", cause, rest, source, PROCESS, material.code)
            self.product_water += rest
        else:
            self.move("inert", cause, rest, source, PROCESS, material.code)

    def react(self, cause: str, mol: float, stoichiometry: Mapping[str, float]) -> None:
        """Post a reaction: what it takes and what it makes; gases come from the air.

        Parameters
        ----------
        cause : str
            Why it happens.
        mol : float
            Extent [mol per kg of yarn].
        stoichiometry : mapping
            Substance -> mol made (above zero) or taken (below zero).
        """
        if is_nothing(mol):
            return
        for substance, number in stoichiometry.items():
            amount = mol * number * molar_mass(substance)
            if substance == "water":
                self.reaction_water += amount
            # Of many cases at once, some may turn a reaction back that others run: they post below zero.
            plain = amount.__class__ is float or not hasattr(amount, "shape")
            taken = amount < 0.0 if plain else number < 0.0
            if taken:
                if substance in GASES:
                    self.move(substance, cause, -amount, AIR, PROCESS)
                self.move(substance, cause, -amount, PROCESS, REACTION)
            else:
                self.move(substance, cause, amount, REACTION, PROCESS)
                if substance in GASES:  # a reaction that is turned back
                    self.move(substance, cause, amount, PROCESS, AIR)

    def held(self) -> dict[str, float]:
        """What the process account holds by this step's own postings, substance by substance."""
        return balance(self.postings, PROCESS)


def balance(postings: Iterable[Posting], account: str) -> dict[str, float]:
    """What an account holds after the postings, substance by substance.

    Examples
    --------
    >>> balance([("scour", "", "water", "feed", 2.0, STORE, PROCESS)], PROCESS)
    {'water': 2.0}
    """
    held: dict[str, float] = {}
    for _, _, substance, _, amount, source, destination in postings:
        if destination == account:
            held[substance] = held.get(substance, 0.0) + amount
        if source == account:
            held[substance] = held.get(substance, 0.0) - amount
    return held
