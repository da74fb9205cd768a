"""A dose of lye told as the strength of the bath: what it means depends on the product and its basis."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from costing.quantities import InputError, label
from costing.settings.box_steps import PLACES
from costing.settings.building import EMPTY, Entry

if TYPE_CHECKING:
    from costing.settings.material import Material

CAUSTIC = "sodium_hydroxide"
DOSES = {f"{place}_dose": f"{place}_product" for place in PLACES}


class LyeStrength(NamedTuple):
    """A strength of lye that was typed as a dose.

    Attributes
    ----------
    caustic : float
        NaOH 100 % in a litre of the bath [kg/L].
    said : str
        As it was typed.
    """

    caustic: float
    said: str


def resolve_doses(entries: dict[str, Entry], materials: Mapping[str, Material]) -> None:
    """Put each strength of lye as the dose that its product and the basis of the doses make of it.

    Raises
    ------
    InputError
        The product holds no caustic.
    """
    for dose, of in DOSES.items():
        entry = entries.get(dose, EMPTY)
        strength = entry.value
        if not isinstance(strength, LyeStrength):
            continue
        code = entries.get(of, EMPTY).value
        product = materials[code] if code else None
        if product is None or product.substance != CAUSTIC:
            held = f"is {code!r}, which holds none" if code else "is empty"
            raise InputError(
                entry.where,
                f"{label(dose)} is {strength.said}, a strength of caustic lye, but {label(of)} {held}; "
                "accepted is a dose in g/L, or a product that holds sodium hydroxide",
            )
        pure = entries.get("dose_basis", EMPTY).value == "100 %"
        value = strength.caustic if pure else strength.caustic / product.strength
        entries[dose] = entry._replace(value=value)
