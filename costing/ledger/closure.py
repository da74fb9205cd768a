"""Proof that a ledger closes: nothing appears and nothing is lost."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache

from costing.process.arithmetic import holds, larger, where
from costing.process.chemistry import atoms, element_share
from costing.process.postings import PROCESS, REACTION, Posting
from costing.quantities import InputError
from costing.reference_data import substances
from costing.settings.material import Material

ELEMENTS = ("Na", "S", "N", "C", "H", "O")
SMALLEST = 1e-15  # kg per kg: what is smaller is left over by rounding and by nothing else
OUTSIDE = "outside"
MOST_GAP = 1e-9
OWN = {"Na": "own_sodium", "S": "own_sulfur", "N": "own_nitrogen"}

Sums = defaultdict[str, list[float]]
Shares = tuple[tuple[str, float], ...]


def gaps(postings: Iterable[Posting], materials: Mapping[str, Material]) -> dict[str, float]:
    """What does not close, relative to what moves.

    Parameters
    ----------
    postings : iterable of Posting
        A ledger's, or its lines.
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
    # Sums by substance and its two accounts first: there are far fewer of these than postings.
    moves: dict[tuple[str, str, str], list[float]] = {}
    for _, _, substance, _, amount, source, destination in postings:
        key = substance, source, destination
        sums = moves.get(key)
        if sums is None:
            moves[key] = [amount, abs(amount)]
        else:
            sums[0] += amount
            sums[1] += abs(amount)
    held: dict[str, Sums] = {kind: defaultdict(_nothing) for kind in (PROCESS, REACTION, OUTSIDE)}
    outside = held[OUTSIDE]
    for (substance, source, destination), (amount, size) in moves.items():
        gained = held.get(destination, outside)[substance]
        gained[0] += amount
        gained[1] += size
        lost = held.get(source, outside)[substance]
        lost[0] -= amount
        lost[1] += size
    found = {f"process {substance}": _relative(*sums) for substance, sums in held[PROCESS].items()}
    for kind, elements in ((REACTION, ELEMENTS), (OUTSIDE, tuple(OWN))):
        of_element = {element: _nothing() for element in elements}
        for substance, (left, moved) in held[kind].items():
            for element, share in _shares(substance, materials):
                if element in of_element:
                    sums = of_element[element]
                    sums[0] += left * share
                    sums[1] += moved * share
        found.update({f"{kind} {element}": _relative(*sums) for element, sums in of_element.items()})
    return found


def check_closed(postings: Iterable[Posting], materials: Mapping[str, Material], place: str) -> None:
    """Refuse a ledger that does not close: no number of it may be shown.

    Raises
    ------
    InputError
        A gap beyond what rounding leaves. It is a fault of this program, not of the input.
    """
    for what, gap in gaps(postings, materials).items():
        if not holds(gap <= MOST_GAP):
            raise InputError(
                place,
                f"its ledger does not close: {what} by {gap:.1e} of what moves, accepted is {MOST_GAP:.0e}; "
                "this is a fault of the program, please report it with the book",
            )


def content(substance: str, element: str, materials: Mapping[str, Material]) -> float:
    """Mass of an element in a mass of a substance or of a product without formula [fraction]."""
    return dict(_shares(substance, materials)).get(element, 0.0)


def _shares(substance: str, materials: Mapping[str, Material]) -> Shares:
    """Elements of a substance, or of a product without formula, each with its share of the mass."""
    if substance in substances():
        return _shares_by_formula(substance)
    if substance in materials:
        material = materials[substance]
        return tuple((element, getattr(material, name)) for element, name in OWN.items())
    return ()


@cache
def _shares_by_formula(substance: str) -> Shares:
    formula = substances()[substance].formula
    return tuple((element, element_share(substance, element)) for element in atoms(formula))


def _nothing() -> list[float]:
    """What is left in an account, and what has moved in and out of it."""
    return [0.0, 0.0]


def _relative(left: float, moved: float) -> float:
    """What is left of what has moved; of less than rounding nothing."""
    gap: float = where(moved > SMALLEST, abs(left), 0.0) / larger(moved, SMALLEST)
    return gap
