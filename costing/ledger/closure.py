"""Proof that a ledger closes: nothing appears and nothing is lost."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from costing.process.chemistry import element_share
from costing.process.postings import PROCESS, REACTION, Line
from costing.quantities import InputError
from costing.reference_data import substances
from costing.settings.mill import Material

ELEMENTS = ("Na", "S", "N", "C", "H", "O")
SMALLEST = 1e-15  # kg per kg: what is smaller is left over by rounding and by nothing else
OUTSIDE = "outside"
MOST_GAP = 1e-9
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
    # Lines between the same accounts are put together first: a ledger has hundreds of them.
    between: dict[tuple[str, str, str], list[float]] = {}
    for _, _, substance, _, amount, source, destination in lines:
        key = (source, destination, substance)
        sums = between.get(key)
        if sums is None:
            sums = between[key] = [0.0, 0.0]
        sums[0] += amount
        sums[1] += abs(amount)
    net: dict[str, dict[str, float]] = {PROCESS: {}, REACTION: {}, OUTSIDE: {}}
    moved: dict[str, dict[str, float]] = {PROCESS: {}, REACTION: {}, OUTSIDE: {}}
    for (source, destination, substance), (amount, size) in between.items():
        for account, signed in ((destination, amount), (source, -amount)):
            kind = account if account in net else OUTSIDE
            net[kind][substance] = net[kind].get(substance, 0.0) + signed
            moved[kind][substance] = moved[kind].get(substance, 0.0) + size
    found = {f"process {key}": _relative(gap, moved[PROCESS][key]) for key, gap in net[PROCESS].items()}
    for kind, elements in ((REACTION, ELEMENTS), (OUTSIDE, tuple(OWN))):
        for element in elements:
            gap = size = 0.0
            for substance, amount in net[kind].items():
                share = content(substance, element, materials)
                gap += amount * share
                size += moved[kind][substance] * share
            found[f"{kind} {element}"] = _relative(gap, size)
    return found


def check_closed(lines: Iterable[Line], materials: Mapping[str, Material], where: str) -> None:
    """Refuse a ledger that does not close: no number of it may be shown.

    Raises
    ------
    InputError
        A gap beyond what rounding leaves. It is a fault of this program, not of the input.
    """
    what, gap = max(gaps(lines, materials).items(), key=lambda item: item[1], default=("", 0.0))
    if gap > MOST_GAP:
        raise InputError(
            where,
            f"its ledger does not close: {what} by {gap:.1e} of what moves, accepted is {MOST_GAP:.0e}; this "
            "is a fault of the program, please report it with the book",
        )


def content(substance: str, element: str, materials: Mapping[str, Material]) -> float:
    """Mass of an element in a mass of a substance or of a product without formula [fraction]."""
    if substance in substances():
        return element_share(substance, element)
    if substance in materials and element in OWN:
        return float(getattr(materials[substance], OWN[element]))
    return 0.0


def _relative(gap: float, size: float) -> float:
    return abs(gap) / size if size > SMALLEST else 0.0
