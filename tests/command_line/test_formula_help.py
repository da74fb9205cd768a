"""Every function is listed, explained and calculated from the same registry; the page is of today."""

from __future__ import annotations

import json

import pytest

from costing.formulas.cell_calls import called
from costing.formulas.registry import FORMULAS, LOOK_UPS, OF_BOOK, cell_functions
from costing.front_ends.formula_help import calculated, formula_table
from costing.front_ends.formula_page import PAGE, page_text
from costing.quantities import InputError


def test_every_function_is_listed_once_under_its_group() -> None:
    rows = formula_table(None).rows
    assert [row[1] for row in rows] == list(cell_functions())
    assert {row[1] for row in rows} == {*FORMULAS, *LOOK_UPS, *OF_BOOK}
    assert all(row[0] and row[4] for row in rows)


@pytest.mark.parametrize("name", [name for name in LOOK_UPS if name != "WARP_REASON_FOR"])
def test_a_look_up_is_calculated_as_a_cell_does(name: str) -> None:
    function = LOOK_UPS[name]
    values = [
        f"{parameter.name}={cell}"
        for parameter, cell in zip(function.parameters, function.example)
        if cell is not None
    ]
    found = json.loads(calculated(name, values, None, as_json=True))
    expected = called(name, function.example)
    assert found["result"] == (json.loads(json.dumps(expected)))
    assert calculated(name, values, None, as_json=False)


def test_a_look_up_in_another_unit() -> None:
    assert calculated("molar_mass", ["formula=NaOH"], "kg/mol", as_json=False) == "0.039997"
    with pytest.raises(InputError, match="which has no other unit"):
        calculated("caution_for", ["key=hydrosulfite"], "kg", as_json=False)


def test_what_a_look_up_takes_is_told() -> None:
    told = calculated("molar_mass", [], None, as_json=False)
    assert told.startswith("WARP_MOLAR_MASS")
    assert 'costing calculate warp_molar_mass "formula=' in told


@pytest.mark.parametrize(
    ("name", "values", "words"),
    [
        ("use_per_kg", ["what=indigo"], "asks a book that cells have opened"),
        ("reason_for", ["name=x"], "is for cells"),
        ("molar_mass", ["formel=NaOH"], "is not an argument; accepted are: formula, result_unit"),
        ("molar_mass", ["NaOH"], "accepted is ARGUMENT=VALUE"),
    ],
)
def test_what_is_refused(name: str, values: list[str], words: str) -> None:
    with pytest.raises(InputError) as refused:
        calculated(name, values, None, as_json=False)
    assert words in refused.value.message


def test_the_reference_page_is_of_today() -> None:
    assert PAGE.read_text(encoding="utf-8") == page_text()
    assert page_text().count("\n### ") == len(cell_functions())
