"""The strength of lye in degrees and in % by mass: in cells of the book, in formulas, on the command line."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.book.cells import value_of
from costing.book.lye_scale import BY_MASS, CONCENTRATIONS, SCALES, concentration, on_scale
from costing.book.quantity_cell import accepted_range, accepted_scales, accepted_units, measured
from costing.book.sheet import Given
from costing.formulas.cell_calls import call, reason
from costing.formulas.registry import find
from costing.front_ends.formula_help import calculated
from costing.quantities import QUANTITIES, InputError, quantity
from costing.quantities.unit_table import PARTS, UNITS
from costing.settings.building import Entry
from costing.settings.lye_dose import LyeStrength, resolve_doses
from tests.example_mill import MATERIALS, example_mill

PRODUCTS = {item.code: item for item in MATERIALS}
STRENGTH = "WARP_LYE_CONCENTRATION_FROM_STRENGTH"
CONTENT = "WARP_LYE_STRENGTH_FROM_CONCENTRATION"


def read(name: str, value: Any, unit: Any, percent: bool = False) -> float:
    return measured(quantity(name), value, unit, "Recipes!I9", shown_as_percent=percent).house


def test_26_degrees_by_hand() -> None:
    """145 / 119 = 1.218487, x 0.99902 = 1.217293 kg/L: 20 % + (1.217293 - 1.2164) / 0.0108875 = 20.082 %."""
    assert 1000.0 * read("lye_concentration", 26.0, "°Bé") == pytest.approx(0.20082 * 1217.293, rel=1e-4)
    assert read("lye_strength", 26.0, "°Bé") == pytest.approx(0.20082, rel=1e-4)


def test_twaddell_and_by_mass_by_hand() -> None:
    """50 degrees: 1.25 x 0.99902 = 1.248775 kg/L, 20 % + 0.032375 / 0.0108875 = 22.9736 %."""
    assert 1000.0 * read("caustic_dosing", 50.0, "°Tw") == pytest.approx(0.229736 * 1248.775, rel=1e-4)
    assert 1000.0 * read("caustic_dosing", 24.0, "% w/w") == pytest.approx(0.24 * 1259.95, rel=1e-9)


def test_a_handbook_at_60_degf_is_half_a_degree_off() -> None:
    """Lye of 24 % has 1.2672 at 60 degF (caustic-density-60f): 145 - 145/1.2672 = 30.574 degrees there."""
    assert on_scale(concentration(24.0, BY_MASS), "°Bé") == pytest.approx(30.574 - 0.5, abs=0.15)


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("name", [*CONCENTRATIONS, "lye_strength"])
@given(share=st.floats(0.0, 1.0))
def test_there_and_back(name: str, scale: str, share: float) -> None:
    low, high = accepted_range(name, scale)
    number = low + share * (high - low)
    house = read(name, number, scale)
    if name == "lye_strength":
        formula, argument = find("lye_strength_from_concentration"), "lye_concentration"
        house = concentration(100.0 * house, BY_MASS)
    else:
        formula, argument = find("lye_concentration_from_strength"), "lye_strength"
    assert on_scale(house, scale) == pytest.approx(number, abs=1e-7)
    assert formula.calculate({argument: (number, scale)}, scale) == pytest.approx(number, abs=1e-7)


def test_no_scale_is_a_plain_factor() -> None:
    """So none is in the table of units, which pint has made, nor among the units that it is asked about."""
    assert not set(SCALES) & {*UNITS, *PARTS}
    assert not any(set(SCALES) & set(accepted_units(name)) for name in QUANTITIES)
    once, twice = (concentration(number, "°Bé") for number in (20.0, 40.0))
    assert twice > 2.2 * once


@pytest.mark.parametrize(
    ("text", "scale"),
    [
        *(
            (text, "°Bé")
            for text in ("°Bé", "°Be", "° Bé", "degBe", "deg Bé", "Bé", "Be", "Baumé", "degrees Baume")
        ),
        *((text, "°Tw") for text in ("°Tw", "degTw", "Tw", "° Twaddell", "twaddle", "°TW")),
        *((text, "% w/w") for text in ("% w/w", "%w/w", "% by mass", "% by weight", "wt %", "wt%")),
    ],
)
def test_spellings_of_the_trade(text: str, scale: str) -> None:
    assert read("lye_concentration", 20.0, text) == concentration(20.0, scale)


def test_every_concentration_of_caustic_takes_them_and_nothing_else() -> None:
    of_caustic = {
        name
        for name, item in QUANTITIES.items()
        if item.unit == "kg/L" and "caustic (NaOH" in item.help and not name.startswith("stock")
    }
    assert of_caustic == set(CONCENTRATIONS)
    assert {name for name in QUANTITIES if accepted_scales(name)} == {*CONCENTRATIONS, "lye_strength"}


@pytest.mark.parametrize("name", ["bath_indigo", "strength", "pick_up", "lye_density", "bath_hydrosulfite"])
@pytest.mark.parametrize("scale", SCALES)
def test_what_is_no_caustic_takes_none(name: str, scale: str) -> None:
    with pytest.raises(
        InputError, match=f"{name.replace('_', ' ')} has the unit '{scale}', which is for the"
    ):
        read(name, 20.0, scale)


@pytest.mark.parametrize(
    ("name", "number", "scale", "said"),
    [
        ("lye_concentration", 52.0, "°Bé", r"lye concentration is 52 °Bé; accepted is 0 to 49\.8052 °Bé"),
        ("lye_concentration", -1.0, "°Tw", r"lye concentration is -1 °Tw; accepted is 0 to 104"),
        ("lye_strength", 51.0, "% w/w", "lye strength is 51 % w/w; accepted is 0 to 50 % w/w"),
        ("scour_caustic", 26.0, "°Bé", r"scour caustic is 26 °Bé; accepted is 0 to 1\d\.\d+ °Bé"),
        ("caustic_dosing", 0.5, "% w/w", r"caustic dosing is 0\.5 % w/w; accepted is 0\.9\d+ to 50 % w/w"),
    ],
)
def test_outside_the_table_or_the_range(name: str, number: float, scale: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        read(name, number, scale)


def test_a_cell_shown_as_a_percentage() -> None:
    assert read("lye_concentration", 0.2, "% w/w", percent=True) == concentration(20.0, "% w/w")
    with pytest.raises(InputError, match="clear the cell's percent format"):
        read("lye_concentration", 0.2, "°Bé", percent=True)


def test_a_formula_in_a_cell_takes_and_gives_them() -> None:
    for _ in range(2):  # the second time by the short way
        assert call(STRENGTH, ["26 °Bé"]) == pytest.approx(244.457, rel=1e-5)
        assert call(STRENGTH, [((26.0, "degBe"),)]) == pytest.approx(244.457, rel=1e-5)
        assert call(STRENGTH, [((26.0,), ("degBe",))]) == pytest.approx(244.457, rel=1e-5)
        assert call(CONTENT, ["244.457 g/L", "°Bé"]) == pytest.approx(26.0, abs=1e-4)
        assert call(CONTENT, ["60 °Tw"]) == pytest.approx(
            100.0 * concentration(60.0, "°Tw") / 1.2987, rel=1e-4
        )
    assert call("WARP_DEFAULT_TYPICAL", ["indigo.caustic_dosing", "°Bé"]) == pytest.approx(
        on_scale(call("WARP_DEFAULT_TYPICAL", ["indigo.caustic_dosing", "kg/L"]), "°Bé")
    )
    assert "which is for the strength of caustic lye alone" in reason(
        "WARP_CARRIED_BY_LIQUOR", [1.0, "26 °Bé"]
    )
    assert "accepted is 0 to 49.8052 °Bé" in reason(STRENGTH, ["52 °Bé"])


def test_the_command_line_takes_and_gives_them() -> None:
    assert (
        calculated("lye_concentration_from_strength", ["lye_strength=26 degBe"], None, False)
        == "244.4573976 g/L"
    )
    assert calculated("lye_concentration_from_strength", ["lye_strength=26 °Bé"], "°Bé", False) == "26 °Bé"
    with pytest.raises(InputError, match="lye strength is 52 °Bé; accepted is 0 to"):
        calculated("lye_concentration_from_strength", ["lye_strength=52 °Bé"], None, False)


def cell(name: str, value: Any, unit: str = "g/L") -> Any:
    return value_of(name, Given(value, "Recipes!I9"), unit)


def test_a_cell_of_a_recipe_takes_them_beside_the_unit_of_its_row() -> None:
    assert cell("scour_caustic", "4 °Bé") == cell("scour_caustic", 4.0, "°Bé") == concentration(4.0, "°Bé")
    assert cell("scour_caustic", "4 % w/w", "°Bé") == concentration(4.0, "% w/w")
    assert cell("scour_caustic", 30.0) == pytest.approx(0.030)
    with pytest.raises(InputError, match="Recipes!I9: scour caustic is the text '30 g/L', not a number"):
        cell("scour_caustic", "30 g/L")
    with pytest.raises(InputError, match="bath indigo is the text '4 °Bé', not a number"):
        cell("bath_indigo", "4 °Bé")


def dosed(basis: str | None, code: str, typed: Any = "26 °Bé") -> Any:
    entries = {
        "first_product": Entry(code, "Recipes!I8"),
        "first_dose": Entry(cell("first_dose", typed), "Recipes!I9"),
        **({"dose_basis": Entry(basis)} if basis else {}),
    }
    resolve_doses(entries, PRODUCTS)
    return entries["first_dose"].value


def test_a_dose_of_caustic_is_the_strength_of_the_bath() -> None:
    caustic = concentration(26.0, "°Bé")
    assert cell("first_dose", 26.0, "°Bé") == LyeStrength(caustic, "26 °Bé")
    assert dosed("100 %", "LYE") == caustic
    assert dosed("as delivered", "LYE") == dosed(None, "LYE") == pytest.approx(caustic / 0.5)
    assert dosed(None, "FLAKE") == pytest.approx(caustic / 0.98)
    assert dosed("as delivered", "WET", 3.0) == pytest.approx(0.003)


@pytest.mark.parametrize(("code", "said"), [("WET", "is 'WET', which holds none"), ("", "is empty")])
def test_a_dose_of_what_is_no_caustic_takes_none(code: str, said: str) -> None:
    with pytest.raises(
        InputError, match=f"Recipes!I9: first dose is 26 °Bé, a strength of .* first product {said}"
    ):
        dosed("100 %", code)


def test_a_recipe_in_degrees_is_the_recipe_in_grams() -> None:
    route = [("causticising", "treatment"), ("drying", "drying")]
    recipe = {"dose_basis": "100 %", "first_product": "LYE", "box_temperature": 20.0, "feed_ratio": 3.0}
    steps = []
    for dose in (LyeStrength(concentration(26.0, "°Bé"), "26 °Bé"), concentration(26.0, "°Bé")):
        mill = example_mill(recipe={"causticising": {**recipe, "first_dose": 1.0}}, route=route)
        entries = mill.recipe_steps["R", "causticising"]
        entries["first_dose"] = entries["first_dose"]._replace(value=dose)
        steps.append(mill.steps_of(mill.recipes["R"], next(iter(mill.ranges.values()))))
    assert steps[0] == steps[1]
