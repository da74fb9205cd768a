"""What the class of a dye asks for: its typical values, a reductant or none, an alkali."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from costing.quantities import label
from costing.settings.box_steps import PLACES
from costing.settings.building import EMPTY, Entry
from costing.settings.product_fields import DYE_FIELDS, REDUCTANTS
from costing.settings.rinse_step import Rinse
from costing.settings.vessel_steps import VesselBath

if TYPE_CHECKING:
    from costing.settings.material import Material

SULFUR, VAT, REACTIVE, DIRECT = "sulfur", "vat", "reactive", "direct"
GLUCOSE, REDUCTANT = "glucose", "reductant_product"
REDUCED, NEVER_REDUCED = (VAT, SULFUR), (REACTIVE, DIRECT)


def default_groups(kind: str, *special: str) -> tuple[str, ...]:
    """First parts of the keys of the defaults of a step: those of reductant and dye class come first.

    Examples
    --------
    >>> default_groups("dye box", "vat"), default_groups("bath", "")
    (('vat dye box', 'dye box'), ('bath',))
    >>> default_groups("dye box", "glucose", "sulfur")
    ('glucose dye box', 'sulfur dye box', 'dye box')
    """
    return (*(f"{word} {kind}" for word in special if word), kind)


def groups_of(kind: Any, entries: Mapping[str, Entry], materials: Mapping[str, Material]) -> tuple[str, ...]:
    """First parts of the keys of the defaults of a step that is still to be built.

    Parameters
    ----------
    kind : type
        Its dataclass.
    entries : mapping
        Row -> what was given.
    materials : mapping
        Code -> product of the mill's list.
    """
    given = (entries.get(row, EMPTY).value for row in DYE_FIELDS if row in kind.RECIPE)
    dye = next((str(value) for value in given if value), "")
    dye_class = materials[dye].dye_class if dye in materials else ""
    reductant = entries.get(REDUCTANT, EMPTY).value if REDUCTANT in kind.RECIPE else ""
    return default_groups(kind.KIND, _with_glucose(str(reductant or ""), materials), dye_class)


def _with_glucose(reductant: str, materials: Mapping[str, Material]) -> str:
    """The word of a reductant that has typical values of its own; "" for the others."""
    return GLUCOSE if reductant in materials and materials[reductant].substance == GLUCOSE else ""


def groups_of_step(step: Any, materials: Mapping[str, Material]) -> tuple[str, ...]:
    """First parts of the keys of the defaults of a step that is built."""
    reductant = _with_glucose(getattr(step, REDUCTANT, ""), materials)
    return default_groups(step.KIND, reductant, class_of(step, materials))


def dye_of(step: object) -> str:
    """Code of the dye of a dye box or a bath; "" for any other step."""
    return next((code for name in DYE_FIELDS if (code := getattr(step, name, ""))), "")


def class_of(step: object, materials: Mapping[str, Material]) -> str:
    """Class of the dye of a step; "" where it has none."""
    dye = materials.get(dye_of(step))
    return dye.dye_class if dye is not None else ""


def fed(step: Any) -> list[tuple[str, str]]:
    """Row and code of each product beside the dye that a dye box, a treatment or a bath is fed."""
    found = []
    for product, strengths in (
        ("reductant_product", ("bath_reductant", "reductant_ratio")),
        ("caustic_product", ("bath_caustic",)),
        *((f"{place}_product", (f"{place}_dose", f"{place}_on_yarn")) for place in PLACES),
    ):
        if getattr(step, product, "") and any(getattr(step, name, None) for name in strengths):
            found.append((product, getattr(step, product)))
    return found


def reductants_of(step: object, materials: Mapping[str, Material]) -> list[tuple[str, str]]:
    """Row and code of each reductant that a step is fed."""
    return [(row, code) for row, code in fed(step) if materials[code].substance in REDUCTANTS]


def up_to_the_rinse(steps: Sequence[object]) -> Iterator[object]:
    """The first step, and those behind it before a rinse takes off what it has put on.

    A bath of a vessel that is fed no product rinses.
    """
    for place, step in enumerate(steps):
        if place and (isinstance(step, Rinse) or (isinstance(step, VesselBath) and not fed(step))):
            return
        yield step


def refused_for_class(
    steps: Sequence[object], materials: Mapping[str, Material]
) -> Iterator[tuple[str, str, str]]:
    """What the class of a dye forbids.

    Parameters
    ----------
    steps : sequence
        Of a route, in order.
    materials : mapping
        Code -> product of the mill's list.

    Yields
    ------
    tuple of str
        Step, row of the recipe, and one sentence in the trade's words.
    """
    for place, step in enumerate(steps):
        dye, dye_class, name = dye_of(step), class_of(step, materials), getattr(step, "name", "")
        here = reductants_of(step, materials)
        if dye_class in NEVER_REDUCED and here:
            row, code = here[0]
            yield (
                name,
                row,
                f"{label(row)} is {code!r}, a reductant, in one bath with the {dye_class} dye {dye!r}, which "
                "it would destroy; accepted is a bath without a reductant, or a vat or sulfur dye",
            )
        if dye_class == VAT and not any(
            reductants_of(item, materials) for item in up_to_the_rinse(steps[place:])
        ):
            row = next(row for row in DYE_FIELDS if getattr(step, row, ""))
            yield (
                name,
                row,
                f"{label(row)} is {dye!r}, a vat dye, and no reductant meets it here or behind it before a "
                "rinse, so it stays a loose pigment; accepted is a reductant in this bath or in a pad behind "
                "it",
            )
