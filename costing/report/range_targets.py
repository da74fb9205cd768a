"""What the liquor of each box is to hold, as it is tested at the machine: 100 % of what is titrated."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from costing.ledger.box_lot import BOXES
from costing.ledger.whole import Ledger
from costing.process.lye import (
    baume_from_specific_gravity,
    lye_density_from_strength,
    lye_strength_from_concentration,
    specific_gravity_from_density,
)
from costing.process.yarn import YarnState
from costing.quantities import label
from costing.settings.material import Material
from costing.settings.steps import IndigoDyeing, Scour, Step

CAUSTIC = "sodium_hydroxide"
LEAST_FOR_HYDROMETER = 0.02  # kg/L: below it titrate


class Target(NamedTuple):
    """One thing to test.

    Attributes
    ----------
    step, what : str
        Box, and substance.
    strength : float
        Of it, as 100 % [kg/L].
    baume : float or None
        Of strong lye, by a hydrometer for 60 degF in lye of 25 degC.
    """

    step: str
    what: str
    strength: float
    baume: float | None


def targets(ledger: Ledger, materials: Mapping[str, Material]) -> list[Target]:
    """What is to be tested in each box, in the order of the route; auxiliaries without a formula are not.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    """
    return [
        Target(step.name, label(what), strength, _baume(what, strength))
        for step, yarn in ledger.run.entering
        for what, strength in _of_step(step, yarn, materials)
        if strength > 0.0
    ]


def _of_step(step: Step, yarn: YarnState, materials: Mapping[str, Material]) -> Iterator[tuple[str, float]]:
    if isinstance(step, IndigoDyeing):
        yield "indigo", step.bath_indigo
        yield materials[step.hydrosulfite_product].substance, step.bath_hydrosulfite
        yield CAUSTIC, step.bath_caustic
    elif isinstance(step, Scour):
        yield CAUSTIC, step.scour_caustic
    elif step.KIND in BOXES:
        for dose in BOXES[step.KIND](step, yarn, materials).doses:
            if dose.product.substance:
                yield dose.product.substance, dose.strength


def _baume(what: str, strength: float) -> float | None:
    if what != CAUSTIC or strength < LEAST_FOR_HYDROMETER:
        return None
    density = lye_density_from_strength(lye_strength_from_concentration(strength))
    return float(baume_from_specific_gravity(specific_gravity_from_density(density)))
