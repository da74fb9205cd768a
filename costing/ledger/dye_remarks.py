"""What a dyer would say of a dye and of what its class asks for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any

from costing.ledger.whole import Ledger
from costing.process.postings import STORE
from costing.quantities import label
from costing.reference_data import substances
from costing.settings.dye_class import (
    GLUCOSE,
    NEVER_REDUCED,
    REACTIVE,
    REDUCED,
    SULFUR,
    VAT,
    class_of,
    dye_of,
    fed,
    reductants_of,
    up_to_the_rinse,
)
from costing.settings.material import Material

ALKALI, CAUSTIC = "alkali", "sodium_hydroxide"
HYDROSULFITE = "sodium_hydrosulfite"
NEEDS_CAUSTIC = (HYDROSULFITE, "glucose")
# kg of hydrosulfite for each kg of vat dye, two electrons of each: 174.1 g/mol for 442.4 of indanthrone
LEAST_HYDROSULFITE = 174.1 / 442.4


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
        if dye_class in NEVER_REDUCED:
            yield from _stripped(dye, dye_class, ledger.steps[place:], materials)
        if dye_class == VAT:
            yield from _little_hydrosulfite(dye, step.name, reducing, ledger, materials)
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


def _stripped(
    dye: str, dye_class: str, steps: Sequence[object], materials: Mapping[str, Material]
) -> Iterator[tuple[str, str]]:
    """Reductants behind a dye that they destroy; one in its own bath is refused."""
    for later in steps[1:]:
        for _, code in reductants_of(later, materials):
            if materials[code].substance != GLUCOSE:
                yield (
                    getattr(later, "name", ""),
                    f"{code}, a reductant, meets the {dye_class} dye {dye} on the yarn: it strips or "
                    "destroys most such dyes; dye them behind it",
                )


def _little_hydrosulfite(
    dye: str, name: str, reducing: Sequence[Any], ledger: Ledger, materials: Mapping[str, Material]
) -> Iterator[tuple[str, str]]:
    """Less hydrosulfite than dissolves a vat dye, where nothing else reduces it."""
    held = {materials[code].substance for step in reducing for _, code in reductants_of(step, materials)}
    if held != {HYDROSULFITE}:
        return
    steps = {step.name for step in reducing}
    met = _fed_in(ledger, HYDROSULFITE, steps)
    offered = _fed_in(ledger, dye, {name})
    if met < LEAST_HYDROSULFITE * offered:
        yield (
            reducing[0].name,
            f"{1000.0 * met:.2g} g/kg of hydrosulfite is fed for {1000.0 * offered:.2g} g/kg of the vat dye "
            f"{dye}: less than the {LEAST_HYDROSULFITE:.2g} g for each g that dissolving alone takes; "
            "feed more",
        )


def _fed_in(ledger: Ledger, substance: str, steps: Collection[str]) -> float:
    return sum(
        amount
        for step, _, what, _, amount, source, _ in ledger.run.postings
        if what == substance and source == STORE and step in steps
    )


def _alkaline(step: object, materials: Mapping[str, Material]) -> bool:
    return any(
        materials[code].role == ALKALI
        or (materials[code].substance and substances()[materials[code].substance].role == ALKALI)
        for _, code in fed(step)
    )
