"""Every formula, run with quantities that carry units, must give the dimension it is registered with.

And the number must be the one that the same formula gives from plain numbers. A factor in an equation that
makes up for house units that do not fit each other (60 between minutes and hours) leaves the plain number
right and the one with units wrong; the check rows hold the plain number to the world.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Callable
from typing import Any

import pytest

import costing.formulas
from costing.effluent.weak_acids import HOUSE, Scale
from costing.formulas.formula import Formula
from costing.quantities import quantity
from tests.process.steam_constants import constants_with_units
from tests.tools.make_unit_table import WANTED, registry

UNITS = registry()

GROUPS = [
    importlib.import_module(f"costing.formulas.{module.name}")
    for module in pkgutil.iter_modules(costing.formulas.__path__)
    if module.name.startswith("group_")
]
FORMULAS: list[Formula] = [formula for group in GROUPS for formula in group.FORMULAS]

# Constants behind the bare star of an equation, beside those of steam.
CONSTANTS = {
    "caustic": "kg/mol",
    "acetic_acid": "kg/mol",
    "carbon_dioxide": "kg/mol",
    "molar_volume": "L/mol",
    "atmosphere": "bar",
    "unit_density": "kg/L",
    "water_density": "kg/L",
    "charge": "kA*h/mol",
    "indigo": "kg/mol",
    "anhydrous_alum": "kg/mol",
    "water_of_crystals": "kg/mol",
    "aluminium_hydroxide": "kg/mol",
    "ferric_chloride": "kg/mol",
    "ferric_hydroxide": "kg/mol",
}


def constants_of(function: Callable[..., Any]) -> dict[str, Any]:
    found: dict[str, Any] = dict(constants_with_units(function, UNITS))
    parameters = inspect.signature(function).parameters
    if "scale" in parameters:
        units = ("mol/L", "degC", "delta_degC")
        found["scale"] = Scale(*(UNITS.Quantity(number, unit) for number, unit in zip(HOUSE, units)))
    for name, parameter in parameters.items():
        if parameter.kind is parameter.KEYWORD_ONLY and name not in found:
            found[name] = UNITS.Quantity(parameter.default, CONSTANTS[name])
    return found


def test_groups_were_found() -> None:
    assert {group.__name__.rpartition("group_")[2] for group in GROUPS} >= {"yarn", "cloth", "sets"}
    assert all(group.FORMULAS for group in GROUPS)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_formula_gives_its_dimension_and_hides_no_unit_factor(formula: Formula) -> None:
    given = {}
    for item in formula.arguments:
        if item.name in formula.example:
            given[item.name] = UNITS.Quantity(float(formula.example[item.name]), WANTED[item.usual])
        else:
            given[item.name] = UNITS.Quantity(formula.defaults[item.name], WANTED[item.unit])
    answer = UNITS.Quantity(formula.function(**given, **constants_of(formula.function)))
    shown = answer.to(WANTED[quantity(formula.result).usual])  # refuses an answer of another dimension
    assert shown.magnitude == pytest.approx(formula.calculate(formula.example), rel=1e-9)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_example_gives_every_argument_and_no_other(formula: Formula) -> None:
    assert set(formula.example) == {item.name for item in formula.arguments}
