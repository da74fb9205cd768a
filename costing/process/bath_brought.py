"""What the yarn brings into the dye bath and the bath cannot bear: oxidants, acid, half-neutralised salts.

An oxidant left on the yarn destroys hydrosulfite, acid takes caustic; both are dosed to make up for it. And
hydrosulfite that an earlier box has left on the yarn is dosed less.
"""

from __future__ import annotations

from collections.abc import Mapping

from costing.process.arithmetic import anywhere, not_negative
from costing.process.box_reactions import MET_BY_CAUSTIC
from costing.process.chemistry import molar_mass
from costing.process.postings import Book
from costing.settings.material import Material

DESTROYED = "destroyed by oxidant on the yarn"
NEUTRALISED = "neutralises what the yarn brings"

MET: dict[str, tuple[str, dict[str, float]]] = {
    "hydrogen_peroxide": (
        DESTROYED,
        {
            "hydrogen_peroxide": -1.0,
            "sodium_hydrosulfite": -1.0,
            "sodium_hydroxide": -2.0,
            "sodium_sulfite": 2.0,
            "water": 2.0,
        },
    ),
    "sodium_bromate": (
        DESTROYED,
        {
            "sodium_bromate": -1.0,
            "sodium_hydrosulfite": -3.0,
            "sodium_hydroxide": -6.0,
            "sodium_sulfite": 6.0,
            "sodium_bromide": 1.0,
            "water": 3.0,
        },
    ),
    **{substance: (NEUTRALISED, reaction) for substance, reaction in MET_BY_CAUSTIC.items()},
}
"""Substance -> cause and reaction in the dye bath, for each mol of it."""


def post_brought(book: Book, mixed: Mapping[str, float], hydrosulfite: Material, caustic: Material) -> None:
    """Dose what the yarn's liquor takes of the bath, and react it.

    Parameters
    ----------
    book : Book
        Takes the lines.
    mixed : mapping
        Substance -> what the yarn brings into the bath [kg/kg].
    hydrosulfite, caustic : Material
        Products that make up for it.
    """
    for substance, (cause, reaction) in MET.items():
        mol = mixed.get(substance, 0.0) / molar_mass(substance)
        if not anywhere(mol > 0.0):
            continue
        mol = not_negative(mol)
        for key, product in (("sodium_hydrosulfite", hydrosulfite), ("sodium_hydroxide", caustic)):
            book.feed(product, cause, -reaction.get(key, 0.0) * mol * molar_mass(key))
        book.react(cause, mol, reaction)
