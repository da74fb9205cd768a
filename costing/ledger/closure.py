"""Proof that a ledger closes: nothing appears and nothing is lost."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from costing.process.chemistry import element_share
from costing.process.postings import PROCESS, REACTION, Line
from costing.reference_data import substances
from costing.settings.mill import Material

ELEMENTS = ("Na", "S", "N", "C", "H", "O")
SMALLEST = 1e-30  # kg per kg: below it floats themselves lose digits
OWN = {"Na": "own_sodium", "S": "own_sulfur", "N": "own_nitrogen"}


def gaps(lines: Iterable[Line], materials: Mapping[str, Material]) -> dict[str, float]:
    """What does not close, relative to what moves.

    Parameters
    ----------
    lines : iterable of Line
        A ledger's lines.
    materials : dict
        Code -> product, for what a product without formula holds.

    Returns
    -------
    dict
        ``process <substance>``: what stays in the process account of each substance;
        ``reaction <element>``: what the reactions make out of nothing;
        ``outside <element>``: what enters from outside and does not leave, sodium, sulfur, nitrogen.
        All relative [fraction].
    """
    process: dict[str, float] = {}
    moved: dict[str, float] = {}
    reaction = dict.fromkeys(ELEMENTS, 0.0)
    reacted = dict.fromkeys(ELEMENTS, 0.0)
    outside = dict.fromkeys(OWN, 0.0)
    through = dict.fromkeys(OWN, 0.0)
    for line in lines:
        for account, sign in ((line.destination, 1.0), (line.source, -1.0)):
            amount = sign * line.amount
            if account == PROCESS:
                process[line.substance] = process.get(line.substance, 0.0) + amount
                moved[line.substance] = moved.get(line.substance, 0.0) + abs(amount)
            elif account == REACTION:
                for element in ELEMENTS:
                    share = element_share(line.substance, element)
                    reaction[element] += amount * share
                    reacted[element] += abs(amount) * share
            else:
                for element in OWN:
                    share = content(line.substance, element, materials)
                    outside[element] += amount * share
                    through[element] += abs(amount) * share
    found = {f"process {key}": _relative(value, moved[key]) for key, value in process.items()}
    found.update({f"reaction {key}": _relative(value, reacted[key]) for key, value in reaction.items()})
    found.update({f"outside {key}": _relative(value, through[key]) for key, value in outside.items()})
    return found


def content(substance: str, element: str, materials: Mapping[str, Material]) -> float:
    """Mass of an element in a mass of a substance or of a product without formula [fraction]."""
    if substance in substances():
        return element_share(substance, element)
    if substance in materials and element in OWN:
        return float(getattr(materials[substance], OWN[element]))
    return 0.0


def _relative(gap: float, size: float) -> float:
    return abs(gap) / size if size > SMALLEST else 0.0
