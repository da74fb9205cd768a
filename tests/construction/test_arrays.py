"""The same equations on ten thousand styles at once: an array gives what each of its numbers gives."""

from __future__ import annotations

import numpy as np
import pytest

from costing.formulas import (
    group_acidity,
    group_cloth,
    group_orders,
    group_sets,
    group_size,
    group_sulfur_dye,
    group_yarn,
)
from costing.formulas.formula import Formula
from costing.quantities import to_house
from costing.quantities.checking import LIMITS

GROUPS = (group_yarn, group_cloth, group_sets, group_size, group_sulfur_dye, group_acidity, group_orders)
FORMULAS: list[Formula] = [formula for group in GROUPS for formula in group.FORMULAS]


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_array_gives_what_each_number_gives(formula: Formula) -> None:
    scale = np.array([0.7, 0.9, 1.0, 1.1, 1.25])
    house = {
        item.name: np.clip(
            to_house(float(formula.example[item.name]), item.usual, item.unit) * scale, *LIMITS[item.name]
        )
        for item in formula.arguments
    }
    together = formula.function(**house)
    for place in range(len(scale)):
        alone = formula.function(**{name: float(array[place]) for name, array in house.items()})
        assert together[place] == pytest.approx(alone, rel=1e-12)
