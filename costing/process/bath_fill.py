"""A volume of ready dye liquor, made from its products."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from costing.process.bath_reactions import SULFITE_BY_AIR, SULFITE_OXIDATION, VATTING
from costing.process.mixing import WATER, post_water
from costing.process.other_reduction import other_reductant, post_other_reduction, reduced_otherwise
from costing.process.postings import STORE, Book
from costing.process.reduction import CAUSTIC_PER_HYDROSULFITE, HYDROSULFITE_PER_INDIGO, INDIGO
from costing.settings.material import Material
from costing.settings.steps import IndigoDyeing


class DyeLiquor(NamedTuple):
    """The common dye liquor and its products."""

    step: IndigoDyeing
    indigo: Material
    hydrosulfite: Material
    caustic: Material
    wetting_agent: Material
    other_reductant: Material | None

    @classmethod
    def of(cls, step: IndigoDyeing, materials: Mapping[str, Material]) -> DyeLiquor:
        """Look up the products of a step."""
        return cls(
            step,
            materials[step.indigo_product],
            materials[step.hydrosulfite_product],
            materials[step.caustic_product],
            materials[step.wetting_agent_product],
            other_reductant(step, materials),
        )

    @property
    def powder_share(self) -> float:
        """1 where the dye must still be reduced, 0 where it comes reduced."""
        return 0.0 if self.indigo.is_reduced_dye else 1.0


def post_liquor(
    book: Book, liquor: DyeLiquor, cause: str, volume: float, hydrosulfite: float, account: str = STORE
) -> None:
    """Bring a volume of ready liquor into the process, from the store or with another lot.

    A volume below zero hands the same liquor over: every line of its making is turned back.

    Parameters
    ----------
    book : Book
        Takes the lines.
    liquor : DyeLiquor
        The liquor.
    cause : str
        Why.
    volume : float
        Volume [L].
    hydrosulfite : float
        Free hydrosulfite (100 %) in it [kg/L].
    account : str, optional
        Where it comes from.
    """
    step = liquor.step
    water_before = book.product_water + book.reaction_water
    dyed = (volume * step.bath_indigo, volume * hydrosulfite, volume * step.bath_caustic)
    post_dye(book, liquor, cause, *dyed, account)
    agent = liquor.wetting_agent
    book.feed(agent, cause, volume * step.bath_wetting_agent * agent.strength, account)
    brought = book.product_water + book.reaction_water - water_before
    post_water(book, cause, volume - brought, account)


def post_dye(
    book: Book,
    liquor: DyeLiquor,
    cause: str,
    indigo: float,
    hydrosulfite: float,
    caustic: float,
    account: str = STORE,
) -> None:
    """Bring in dye with what reduces it, free hydrosulfite and free caustic, all as 100 % [kg]."""
    other, share = reduced_otherwise(liquor.step, liquor.indigo)
    by_hydrosulfite = (1.0 - share) * indigo * liquor.powder_share
    reducing = HYDROSULFITE_PER_INDIGO * by_hydrosulfite
    with_dye = liquor.indigo.alkali * indigo / liquor.indigo.strength
    book.feed(liquor.indigo, cause, indigo, account)
    book.feed(liquor.hydrosulfite, cause, reducing + hydrosulfite, account)
    takes = CAUSTIC_PER_HYDROSULFITE * reducing + other.caustic_per_indigo * share * indigo
    book.feed(liquor.caustic, cause, takes + caustic - with_dye, account)
    reduced = by_hydrosulfite / INDIGO
    book.react(cause, reduced, VATTING)
    sulfite = VATTING["sodium_sulfite"] * reduced
    sulfite += post_other_reduction(
        book, liquor.step, cause, share * indigo, liquor.other_reductant, account=account
    )
    book.react(SULFITE_BY_AIR, liquor.step.sulfite_oxidised * sulfite, SULFITE_OXIDATION)


def content_of_liquor(liquor: DyeLiquor) -> dict[str, float]:
    """What a litre of fresh liquor holds beside water, dye and hydrosulfite [kg/L]."""
    book = Book("")
    post_liquor(book, liquor, "", 1.0, liquor.step.bath_hydrosulfite)
    held = book.held()
    for name in (WATER, "indigo", "leuco_indigo", "sodium_hydrosulfite"):
        held.pop(name, None)
    return held
