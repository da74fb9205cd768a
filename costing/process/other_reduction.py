"""Indigo that is reduced without hydrosulfite: by glucose, by thiourea dioxide, or at an electrode.

Net reactions, for each indigo::

    glucose           indigo + C6H12O6 + NaOH      -> leuco indigo + C6H11O7Na
    thiourea dioxide  indigo + CH4N2O2S + 2 NaOH   -> leuco indigo + CH4N2O + Na2SO3
    electrolysis      indigo + H2O                 -> leuco indigo + 1/2 O2

Each gives two electrons to an indigo. Left out are how fast they run (glucose needs a hot, strongly
alkaline vat), the excess that a mill adds for that, the mediator of a cell and what it loses.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from costing.process.arithmetic import is_nothing
from costing.process.bath_reactions import AIRING
from costing.process.chemistry import molar_mass
from costing.process.postings import MOTORS, POWER, STORE, Book
from costing.process.reduction import CAUSTIC, INDIGO
from costing.quantities import InputError, label
from costing.settings.material import Material
from costing.settings.steps import ELECTROLYSIS, IndigoDyeing

ELECTRONS = 2.0  # that reduce one indigo
CELL = "reduces the dye in the cell"


class OtherReduction(NamedTuple):
    """What reduces instead of hydrosulfite.

    Attributes
    ----------
    substance : str
        What is bought for it; "" at an electrode.
    vatting : dict
        Substance -> mol made (above zero) or taken, for each mol of indigo.
    """

    substance: str
    vatting: dict[str, float]

    @property
    def again(self) -> dict[str, float]:
        """The same for dye that air has taken and that is reduced once more: the dye is out of the sum."""
        both = {name: self.vatting.get(name, 0.0) + AIRING.get(name, 0.0) for name in self.vatting | AIRING}
        return {name: mol for name, mol in both.items() if mol}

    @property
    def caustic_per_indigo(self) -> float:
        """Caustic (NaOH 100 %) taken by each mass of indigo [kg/kg]."""
        return -self.vatting.get("sodium_hydroxide", 0.0) * CAUSTIC / INDIGO

    @property
    def product_per_indigo(self) -> float:
        """What is bought, as 100 %, for each mass of indigo [kg/kg]."""
        return molar_mass(self.substance) / INDIGO if self.substance else 0.0


NONE = OtherReduction("", {})
BY_KIND: dict[str, OtherReduction] = {
    "glucose": OtherReduction(
        "glucose",
        {
            "indigo": -1.0,
            "glucose": -1.0,
            "sodium_hydroxide": -1.0,
            "leuco_indigo": 1.0,
            "sodium_gluconate": 1.0,
        },
    ),
    "thiourea dioxide": OtherReduction(
        "thiourea_dioxide",
        {
            "indigo": -1.0,
            "thiourea_dioxide": -1.0,
            "sodium_hydroxide": -2.0,
            "leuco_indigo": 1.0,
            "urea": 1.0,
            "sodium_sulfite": 1.0,
        },
    ),
    ELECTROLYSIS: OtherReduction("", {"indigo": -1.0, "water": -1.0, "leuco_indigo": 1.0, "oxygen": 0.5}),
}


def reduced_otherwise(step: IndigoDyeing, indigo: Material) -> tuple[OtherReduction, float]:
    """What reduces beside hydrosulfite, and its share; none where the dye comes reduced.

    Parameters
    ----------
    step : IndigoDyeing
        Settings of the boxes.
    indigo : Material
        The dye as bought.
    """
    if step.other_reduction not in BY_KIND or indigo.is_reduced_dye:
        return NONE, 0.0
    return BY_KIND[step.other_reduction], step.other_reduction_share or 0.0


def other_reductant(step: IndigoDyeing, materials: Mapping[str, Material]) -> Material | None:
    """The product of the other reduction; None where nothing is bought for it.

    Raises
    ------
    InputError
        The product holds another substance than the reduction that is chosen.
    """
    wanted = BY_KIND.get(step.other_reduction, NONE).substance
    if not wanted:
        return None
    product = materials[step.other_reductant_product]
    if product.substance != wanted:
        raise InputError(
            step.name,
            f"other reductant product is {product.code!r}, which holds {label(product.substance)}, but other "
            f"reduction is {step.other_reduction!r}; accepted is a material that holds {label(wanted)}",
        )
    return product


def post_other_reduction(
    book: Book,
    step: IndigoDyeing,
    cause: str,
    indigo: float,
    product: Material | None,
    once_more: bool = False,
    account: str = STORE,
) -> float:
    """Post what reduces an amount of dye beside hydrosulfite, its reaction, and the power of a cell.

    Parameters
    ----------
    book : Book
        Takes the lines.
    step : IndigoDyeing
        Settings of the boxes.
    cause : str
        Why the dye is reduced.
    indigo : float
        Dye reduced so [kg/kg].
    product : Material or None
        As bought.
    once_more : bool, optional
        True for dye that air has taken and that dissolves again.
    account : str, optional
        Where it comes from.

    Returns
    -------
    float
        Sulfite that it makes [mol/kg].
    """
    if is_nothing(indigo):
        return 0.0
    other = BY_KIND[step.other_reduction]
    if product is not None:
        book.feed(product, cause, other.product_per_indigo * indigo, account)
    else:
        book.move(POWER, CELL, (step.electrolysis_energy or 0.0) * indigo, account, MOTORS, POWER)
    mol = indigo / INDIGO
    book.react(cause, mol, other.again if once_more else other.vatting)
    return mol * other.vatting.get("sodium_sulfite", 0.0)


def electrolysis_energy_of_indigo(
    cell_voltage: Any,
    current_efficiency: Any,
    *,
    charge: float = 96485.33212 / 3.6e6,
    indigo: float = INDIGO,
) -> Any:
    """Electric energy that reduces indigo at an electrode.

    Leaves out the pumps of the cell and the rectifier.

    Parameters
    ----------
    cell_voltage : float
        Voltage over the whole cell [V].
    current_efficiency : float
        Share of the current that ends in reduced dye [fraction].
    charge : float
        Of one mol of electrons, 96 485 C [kA h/mol].
    indigo : float
        Mass of one mol [kg/mol].

    Returns
    -------
    float
        Energy per mass of indigo [kWh/kg].

    Notes
    -----
    ``W = 2 F U / (M eta)``: 0.2044 kWh per kg and volt where every electron counts.

    Examples
    --------
    >>> round(electrolysis_energy_of_indigo(cell_voltage=4.0, current_efficiency=0.7), 3)
    1.168
    """
    return ELECTRONS * charge * cell_voltage / (indigo * current_efficiency)
