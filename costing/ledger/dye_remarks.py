"""What a dyer would say of a dye and of what its class asks for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from costing.ledger.whole import Ledger
from costing.quantities import label
from costing.reference_data import substances
from costing.settings.dye_class import (
    REACTIVE,
    REDUCED,
    SULFUR,
    class_of,
    dye_of,
    fed,
    reductants_of,
    up_to_the_rinse,
)
from costing.settings.mill import Material

ALKALI, CAUSTIC = "alkali", "sodium_hydroxide"
NEEDS_CAUSTIC = ("sodium_hydrosulfite", "glucose")


def dye_warnings(ledger: Ledger, materials: Mapping[str, Material]) -> Iterator[tuple[str, str]]:
    """Warnings of the dyes of a route, of any class but indigo.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.

    Yields
    ------
    tuple of str
        Step, and one sentence in the trade's words.
    """
    for place, step in enumerate(ledger.steps):
        dye, dye_class = dye_of(step), class_of(step, materials)
        if not dye:
            continue
        together = list(up_to_the_rinse(ledger.steps[place:]))
        reducing = [item for item in together if reductants_of(item, materials)]
        if dye_class == SULFUR and not reducing and not materials[dye].sodium_sulfide:
            yield (
                step.name,
                f"no reductant meets the sulfur dye {dye}: only one sold solubilised or reduced needs none; "
                "that it comes reduced is told by its sulfide on the sheet Materials",
            )
        if dye_class == REACTIVE and not any(_alkaline(item, materials) for item in together):
            yield (
                step.name,
                f"no alkali meets the reactive dye {dye} here or behind it before a rinse: without it the "
                "dye does not bond",
            )
        if dye_class in REDUCED and reducing:
            weak = [
                materials[code].substance
                for _, code in reductants_of(reducing[0], materials)
                if materials[code].substance in NEEDS_CAUSTIC
            ]
            if weak and not any(materials[code].substance == CAUSTIC for _, code in fed(reducing[0])):
                yield (
                    getattr(reducing[0], "name", step.name),
                    f"{label(weak[0])} is fed without caustic: it reduces {dye} only in caustic",
                )


def _alkaline(step: object, materials: Mapping[str, Material]) -> bool:
    return any(
        materials[code].role == ALKALI
        or (materials[code].substance and substances()[materials[code].substance].role == ALKALI)
        for _, code in fed(step)
    )
