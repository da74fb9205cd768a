"""Actual use by range, shade, shift, week, month or material; what is not booked is never shared out."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

from costing.purchasing.requirement import MONTH, WEEK, period_of
from costing.purchasing.usage import NOTHING, Amounts, Comparison, Entry

RANGE, SHADE, SHIFT, MATERIAL = "range", "shade", "shift", "material"
TAGS = (RANGE, SHADE, SHIFT)  # what an issue may be booked by, in the order of the tags of an entry
FIELDS = (*TAGS, WEEK, MONTH, MATERIAL)
NOT_BOOKED = "not booked"
UNBOOKED = Fraction(1, 10)  # share of a material's issues from which its standard is not told by a field


class Parted(NamedTuple):
    """Amounts by a field and material.

    Attributes
    ----------
    parts : dict
        (Value of the field, material) -> amounts.
    remarks : list of str
        What is not booked by it.
    """

    parts: dict[tuple[str, str], Amounts]
    remarks: list[str]

    @property
    def values(self) -> list[str]:
        """Values of the field, in order, what is not booked last."""
        return sorted({value for value, _ in self.parts}, key=lambda value: (value == NOT_BOOKED, value))


def parted(found: Comparison, field: str) -> Parted:
    """The amounts by range, shade, shift, week, month or material.

    Nothing is shared out: an issue that is not booked by the field stands apart, and so does the standard of
    a material of which more than a tenth is not booked by it, for it cannot be held against anything.

    Parameters
    ----------
    found : Comparison
        What to part.
    field : str
        One of `FIELDS`.
    """
    together: set[str] = set()
    remarks: list[str] = []
    value_of: Callable[[Entry], str]
    if field in TAGS:
        place = TAGS.index(field)
        together, remarks = _not_booked(found, place, field)

        def value_of(entry: Entry) -> str:
            return NOT_BOOKED if entry.material in together else entry.tags[place] or NOT_BOOKED
    elif field == MATERIAL:

        def value_of(entry: Entry) -> str:
            return entry.material
    else:

        def value_of(entry: Entry) -> str:
            first = period_of(entry.day, field)
            return f"{first:%Y-%m}" if field == MONTH else first.isoformat()

    parts: dict[tuple[str, str], Amounts] = {}
    for entry in found.entries:
        key = (value_of(entry), entry.material)
        parts[key] = parts.get(key, Amounts()).plus(entry.amounts)
    return Parted(parts, remarks)


def _not_booked(found: Comparison, place: int, field: str) -> tuple[set[str], list[str]]:
    """Materials whose standard stays together, and what to say of those that are not wholly booked."""
    moved: dict[str, list[Fraction]] = {}
    for entry in found.entries:
        if entry.issued:
            sums = moved.setdefault(entry.material, [NOTHING, NOTHING])
            sums[0] += abs(entry.amounts.issued)
            sums[1] += NOTHING if entry.tags[place] else abs(entry.amounts.issued)
    together: set[str] = set()
    none: list[str] = []
    told: list[str] = []
    for code in found.materials:
        whole, unbooked = moved.get(code, (NOTHING, NOTHING))
        if not unbooked:
            continue
        if unbooked > UNBOOKED * whole:
            together.add(code)
        if unbooked == whole:
            none.append(code)
        else:
            behind = (
                "its standard stays together too" if code in together else "its lines show too little use"
            )
            told.append(
                f"{code}: {float(unbooked):,.1f} of {float(whole):,.1f} kg not booked by {field}: {behind}"
            )
    if none:
        told.insert(0, f"not booked by {field}: {', '.join(none)}")
    return together, told
