"""What a mill's book may not hold, refused in words that name the thing and what is accepted."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from costing.ledger.closure import gaps
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.reference_data import substances
from costing.settings.building import Entry, build
from costing.settings.mill import Mill
from costing.settings.product_fields import PRODUCT_FIELDS
from costing.settings.rinse_step import Rinse
from costing.settings.steps import STEP_KINDS
from tests.example_mill import ROUTE, example_mill, material

AUXILIARIES = ("wetting_agent_product", "sequestrant_product")
AUXILIARY_ROLES = ("salt",)


def _fields(kind: str) -> tuple[str, ...]:
    return (*STEP_KINDS[kind].RECIPE, *STEP_KINDS[kind].RANGE)


def mill_with(field: str, **product: Any) -> Mill:
    """The example mill with one product more, named by every step that has the field."""
    others = ("dye box", "treatment", "size", "bath", "recovering rinse")
    routes = (ROUTE, *([("step", kind)] for kind in others))
    route = next(steps for steps in routes if any(field in _fields(kind) for _, kind in steps))
    mill = example_mill(route=route)
    mill.materials["X"] = material("X", **{"strength": 0.5, "remainder": "water", "price": 1.0, **product})
    for step, kind in route:
        if field in _fields(kind):
            of_recipe = field in STEP_KINDS[kind].RECIPE
            entries = mill.recipe_steps["R", step] if of_recipe else mill.range_steps["M", step]
            entries[field] = Entry("X", f"test, {field}")
    return mill


def refusal(mill: Mill) -> str:
    with pytest.raises(InputError) as refused:
        mill.steps_of(mill.recipes["R"], mill.ranges["M"])
    return str(refused.value)


@pytest.mark.parametrize("field", AUXILIARIES)
@pytest.mark.parametrize(
    "substance", [key for key, item in substances().items() if item.role not in AUXILIARY_ROLES]
)
def test_what_reacts_is_no_auxiliary(field: str, substance: str) -> None:
    said = refusal(mill_with(field, substance=substance))
    assert said == (
        f"test, {field}: {field.replace('_', ' ')} is 'X', which holds {substance.replace('_', ' ')}; "
        "accepted is a product without a formula that is no dye, or one that holds a salt"
    )


@pytest.mark.parametrize("field", AUXILIARIES)
@pytest.mark.parametrize(
    "substance", ["", *(key for key, item in substances().items() if item.role in AUXILIARY_ROLES)]
)
def test_what_an_auxiliary_may_hold_closes(field: str, substance: str) -> None:
    mill = mill_with(field, substance=substance)
    ledger = open_ledger(mill, mill.enquiries["E"])
    assert ledger.used("X") > 0
    assert max(gaps(ledger.lines, mill.materials).values()) < 1e-9


@pytest.mark.parametrize("role", ["warp yarn", "weft yarn"])
@pytest.mark.parametrize("field", PRODUCT_FIELDS)
def test_a_yarn_is_no_product_of_a_recipe(field: str, role: str) -> None:
    substance = next(iter(PRODUCT_FIELDS[field]), "")
    said = refusal(mill_with(field, substance=substance, role=role))
    assert f"{field.replace('_', ' ')} is 'X', which is a {role}; accepted is a " in said


def test_a_product_that_holds_another_substance_is_named_with_both() -> None:
    assert refusal(mill_with("hydrosulfite_product", substance="sodium_hydroxide")) == (
        "test, hydrosulfite_product: hydrosulfite product is 'X', which holds sodium hydroxide; accepted is "
        "a material that holds sodium hydrosulfite"
    )


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (
            {"substance": "leuco_indigo", "strength": 0.98, "alkali": 0.06},
            "strength is 98 % and alkali is 6 %, together 104 % of 'X' as delivered",
        ),
        (
            {"substance": "", "own_sodium": 0.5, "own_sulfur": 0.4, "own_nitrogen": 0.2},
            "own sodium is 50 %, own sulfur is 40 % and own nitrogen is 20 %, together 110 % of the active "
            "part of 'X'",
        ),
    ],
)
def test_parts_are_no_more_than_the_whole(given: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError) as refused:
        material("X", **{"strength": 0.5, "remainder": "water", "price": 1.0, **given})
    assert str(refused.value) == f"material X: {words}; accepted is up to 100 % together"


@pytest.mark.parametrize(
    "given",
    [
        {"substance": "leuco_indigo", "strength": 0.94, "alkali": 0.06},
        {"substance": "", "own_sodium": 0.7, "own_sulfur": 0.2, "own_nitrogen": 0.1},  # 0.9999999999999999
        {"substance": "", "own_sodium": 0.1, "own_sulfur": 0.2, "own_nitrogen": 0.7},
    ],
)
def test_parts_that_make_the_whole_are_accepted(given: dict[str, Any]) -> None:
    assert material("X", **{"strength": 0.5, "remainder": "water", "price": 1.0, **given}).code == "X"


def test_an_unknown_remainder_names_its_material() -> None:
    with pytest.raises(InputError, match="material X: remainder is 'air'; accepted is one of: water, inert"):
        material("X", "", 0.5, "air", 1.0)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("rinse_water", "rinse water is 0 L/kg, accepted is 0.1 to 200 L/kg"),
        ("rinse_water_flow", "rinse water flow is 0 m3/h, accepted is 0.01 to 200 m3/h"),
    ],
)
def test_a_rinse_without_water_is_refused(name: str, words: str) -> None:
    """It would take the loose dye off with nothing; a route without a rinse has no such step."""
    given = {name: Entry(0.0, "Recipes!I40"), "rinse_feed": Entry("counter-current")}
    with pytest.raises(InputError) as refused:
        build(Rinse, "a rinse", ("rinse",), given, {}, {"name": "rinse"})
    assert str(refused.value) == f"Recipes!I40: {words}"


def test_a_product_of_its_own_may_not_be_called_as_a_substance_is() -> None:
    with pytest.raises(InputError, match=r"the code 'indigo' of a product without a formula is the key"):
        dataclasses.replace(example_mill().materials["WET"], code="indigo")
