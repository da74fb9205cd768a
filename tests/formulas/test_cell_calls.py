"""How a cell calls a formula: what an argument may be, what is refused in words, and that all ways agree."""

from __future__ import annotations

import datetime
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.book.quantity_cell import accepted_units, fits
from costing.formulas.cell_calls import call, called, caller, full_name, reason
from costing.formulas.cell_formula import compiled
from costing.formulas.formula import Formula
from costing.formulas.registry import FORMULAS, LOOK_UPS, OTHERS, cell_functions
from costing.quantities import QUANTITIES, UNITS, InputError, quantity
from costing.quantities.units import convert

CARRIED = "WARP_CARRIED_BY_LIQUOR"


def usual_example(formula: Formula) -> list[float]:
    return [float(formula.example[item.name]) for item in formula.arguments]


@pytest.mark.parametrize("formula", FORMULAS.values(), ids=lambda formula: formula.name)
def test_every_way_of_typing_the_example_gives_the_same(formula: Formula) -> None:
    numbers = usual_example(formula)
    expected = formula.calculate(formula.example)
    units = [item.usual for item in formula.arguments]
    assert call(formula.name, numbers) == expected
    for _ in range(2):  # the second time the units are known
        beside = [((number, unit),) for number, unit in zip(numbers, units, strict=True)]
        below = [((number,), (unit,)) for number, unit in zip(numbers, units, strict=True)]
        alone = [((number,),) for number in numbers]
        lists = [[[number, unit]] for number, unit in zip(numbers, units, strict=True)]
        texts: list[Any] = [
            f"{number!r} {unit}" if unit else number for number, unit in zip(numbers, units, strict=True)
        ]
        for cells in (beside, below, alone, lists, texts):
            assert caller(formula.name)(*cells) == expected


@pytest.mark.parametrize("formula", FORMULAS.values(), ids=lambda formula: formula.name)
def test_every_unit_of_the_result_can_be_asked_for(formula: Formula) -> None:
    answer = quantity(formula.result)
    usual = call(formula.name, usual_example(formula))
    for unit in accepted_units(answer.name):
        got = call(formula.name, [*usual_example(formula), unit])
        assert got == pytest.approx(convert(usual, answer.usual, unit), rel=1e-12)


@pytest.mark.parametrize("name", sorted(QUANTITIES))
def test_every_unit_that_fits_is_read(name: str) -> None:
    item = quantity(name)
    for unit in accepted_units(name):
        assert fits(item, unit)
        convert(1.0, unit, item.unit)
    assert not any(fits(item, unit) for unit in UNITS if unit not in ("", *accepted_units(name)))


@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_the_short_way_and_the_long_way_agree(data: st.DataObject) -> None:
    formula = data.draw(st.sampled_from(list(FORMULAS.values())))
    numbers = []
    for item in formula.arguments:
        number = data.draw(st.floats(item.low, item.high))
        numbers.append(float(round(number)) if item.whole else number)
    words = reason(formula.name, numbers)
    given_values = {item.name: number for item, number in zip(formula.arguments, numbers, strict=True)}
    if words:
        with pytest.raises(InputError):
            formula.calculate(given_values)
    else:
        assert call(formula.name, numbers) == formula.calculate(given_values)


@pytest.mark.parametrize(
    ("cells", "expected"),
    [
        ([0.75, 2.0], 1.5),
        ([0.75, 2], 1.5),
        (["0.75 L/kg", "2 g/L"], 1.5),
        (["0.75L/kg", " +2.0e0  g / L "], 1.5),
        ([0.75, "2e-3 kg/L"], 1.5),
        ([0.75, "2\u00a0g/L"], 1.5),
        ([0.75, ((2.0, " g / L "),)], 1.5),
        ([0.75, ((0.002, "kg / L"),)], 1.5),
        ([0.75, ((2000.0,), ("mg/L",))], 1.5),
        ([0.75, [2.0, "g/L"]], 1.5),
        ([0.75, [[2.0], ["g/L"]]], 1.5),
        ([0.75, 2.0, None], 1.5),
        ([0.75, 2.0, " "], 1.5),
        ([0.75, 2.0, "%"], 0.15),
        ([0.75, 2.0, (("kg / kg",),)], 0.0015),
    ],
)
def test_what_is_read(cells: list[Any], expected: float) -> None:
    for _ in range(2):  # the second time the units are known
        assert call(CARRIED, cells) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "text", "expected"),
    [
        ("delivered_from_pure", [66.4, "88%"], 66.4 / 0.88),
        ("linear_density_from_english_count", ["7 Ne"], 0.45359237e6 / (7 * 840 * 0.9144)),
        ("linear_density_from_english_count", ["84.4 tex"], 84.4),
        ("linear_density_from_english_count", ["12 Nm"], 1000 / 12),
        ("areal_mass_in_ounces", ["400 g/m²"], 400 / 33.9057474748823),
        ("absolute_pressure", ["400 kPa"], 5.01325),
        ("saturation_pressure", ["290.48 degF"], call("saturation_pressure", [143.6])),
        ("ends_from_density", ["24.8 1/cm", "166 cm"], 24.8 * 166),
        ("ends_from_density", ["24.8 ends/cm", "1.66 m"], 24.8 * 166),
        ("ends_from_density", ["62.992 epi", "1.66 metres"], 24.8 * 166),
        ("tank_turnover_time", ["360 litres", "80 l / min"], 4.5),
        ("tank_turnover_time", ["360 L", "4.8 m3/h"], 4.5),
        ("bone_dry_mass", [], 1 / 1.085),
        ("bone_dry_mass", [None, "g/kg"], 1000 / 1.085),
        ("bone_dry_mass", [""], 1 / 1.085),
        ("bone_dry_mass", [((None, "%"),)], 1 / 1.085),
        ("bone_dry_mass", [0.0], 1.0),
    ],
)
def test_units_and_defaults(name: str, text: list[Any], expected: float) -> None:
    assert call(name, text) == pytest.approx(expected, rel=1e-9)
    assert call(name, text) == pytest.approx(expected, rel=1e-9)  # the units are known now
    assert reason(name, text) == ""


REFUSED = [
    ([0.75], "concentration is empty; accepted is 0 to 1000 g/L"),
    ([0.75, None], "concentration is empty"),
    ([0.75, ""], "concentration is empty"),
    ([0.75, ((None, "g/L"),)], "concentration is empty"),
    ([None, 2.0], "pick up is empty"),
    ([0.75, True], "concentration is TRUE, not a number"),
    ([0.75, ((True, "g/L"),)], "concentration is TRUE, not a number"),
    ([0.75, float("nan")], "concentration is nan g/L; accepted is 0 to 1000 g/L"),
    ([0.75, float("inf")], "concentration is inf g/L; accepted is 0 to 1000 g/L"),
    ([0.75, "1e999 g/L"], "concentration is inf g/L; accepted is 0 to 1000 g/L"),
    ([0.75, 1e4], "concentration is 10000 g/L; accepted is 0 to 1000 g/L"),
    ([0.75, -1.0], "concentration is -1 g/L; accepted is 0 to 1000 g/L"),
    ([0.75, "#DIV/0!"], "concentration is the error value #DIV/0!; accepted is a number, or a text"),
    ([0.75, (("#N/A", "g/L"),)], "concentration is the error value #N/A; accepted is 0 to 1000 g/L"),
    ([0.75, ((2.0, "#NAME?"),)], "concentration has the unknown unit '#NAME?'"),
    ([0.75, 2.0, "#REF!"], "the unit of the result is the error value #REF!; accepted is a text"),
    ([0.75, datetime.date(2026, 5, 1)], "concentration is the date or time 2026-05-01, not a number"),
    ([0.75, ((46143.0, "g/L"),)], "concentration is 46143 g/L; accepted is 0 to 1000 g/L"),
    ([0.75, "2"], "is the text '2'; accepted is a number, or a text with its unit such as '1.5 g/L'"),
    ([0.75, "two g/L"], "is the text 'two g/L'"),
    ([0.75, "1,5 g/L"], "with a point as the decimal sign"),
    ([0.75, "1.500,5 g/L"], "with a point as the decimal sign"),
    ([0.75, "1 500 g/L"], "digits without groups"),
    ([0.75, "1.5.2 g/L"], "is the text '1.5.2 g/L'"),
    ([0.75, "-1 kg/L"], "concentration is -1 kg/L; accepted is 0 to 1 kg/L"),
    ([0.75, "2 G/L"], "unknown unit 'G/L'; accepted is for example g/L, kg/L"),
    ([0.75, "2 g/m2"], "'g/m2', which measures something else; accepted is for example g/L"),
    ([0.75, ((2.0, ""),)], "unit of concentration is missing; accepted is for example g/L"),
    ([0.75, ((2.0, None),)], "unit of concentration is missing; accepted is for example g/L"),
    ([0.75, ((2.0, 3.0),)], "concentration has the unknown unit '3'"),
    ([0.75, (("2 g/L", "g/L"),)], "is the text '2 g/L', not a number; accepted is 0 to 1000 g/L"),
    ([0.75, ((1.0, 2.0, 3.0),)], "a block of 1 x 3 cells"),
    ([0.75, ((1.0, "g/L"), (2.0, "g/L"))], "a block of 2 x 2 cells"),
    ([0.75, []], "a block of 1 x 0 cells"),
    ([0.75, 2.0, "tex"], "carried has the unit 'tex', which measures something else"),
    ([0.75, 2.0, 7.0], "the unit of the result is the number 7"),
    ([0.75, 2.0, (("%", "%"),)], "the unit of the result is a block of 1 x 2 cells"),
    ([0.75, 2.0, None, None], "got 4 arguments; accepted are: pick_up, concentration, result_unit"),
]


@pytest.mark.parametrize(("cells", "words"), REFUSED, ids=lambda value: str(value)[:40])
def test_what_is_refused_in_words(cells: list[Any], words: str) -> None:
    got = reason(CARRIED, cells)
    assert words in got
    assert got.startswith(f"{CARRIED}: ")
    assert "\n" not in got
    with pytest.raises(InputError):
        call(CARRIED, cells)


def test_a_pure_number_takes_no_unit_and_a_whole_one_no_half() -> None:
    assert "a pure number, without a unit" in reason("residue_after_boxes", ["300 %", 55.0])
    assert "accepted is a number" in reason("residue_after_boxes", ["3", 55.0])
    assert "a whole number" in reason("residue_after_boxes", [2.5, 55.0])


def test_a_ratio_of_amounts_is_no_ratio_of_masses() -> None:
    assert "measures something else" in reason("share_ending_half_as_sulfate", ["1.2 kg/kg"])
    assert reason("share_ending_half_as_sulfate", ["1.2 mol/mol"]) == ""


def test_a_yarn_of_no_mass_has_no_count() -> None:
    words = reason("linear_density_from_english_count", ["0 tex"])
    assert words.endswith("english count is 0 tex; accepted is 1.18108 to 1181.08 tex")


def test_a_refused_text_is_refused_again() -> None:
    for _ in range(3):
        assert reason(CARRIED, ["9 L/kg", 2.0]).endswith("pick up is 9 L/kg; accepted is 0.2 to 3 L/kg")


def test_where_an_empty_cell_is_a_zero_only_a_default_of_zero_takes_it() -> None:
    for formula in FORMULAS.values():
        function = compiled(formula, empty_is_zero=True)
        cells: list[Any] = usual_example(formula)
        expected = formula.calculate(formula.example)
        assert function(*cells, 0.0) == expected
        for place, item in enumerate(formula.arguments):
            if item.name not in formula.defaults:
                continue
            with_zero = [*cells[:place], 0.0, *cells[place + 1 :]]
            if formula.defaults[item.name]:
                with pytest.raises(InputError, match="0 or its cell is empty"):
                    function(*with_zero)
            else:
                assert function(*with_zero) == function(*cells[:place], None, *cells[place + 1 :])


def test_an_unknown_name_is_refused_with_near_ones() -> None:
    assert "near are: WARP_CARRIED_BY_LIQUOR" in reason("carried_by_liquors", [0.75, 2.0])
    assert full_name(" warp_carried_by_liquor ") == full_name("Carried_by_liquor") == CARRIED


@pytest.mark.parametrize("name", LOOK_UPS)
def test_other_functions_give_what_they_say(name: str) -> None:
    function = OTHERS[name]
    found = called(name, function.example)
    kind = {"number": float, "text": str, "array": tuple}[function.result]
    assert isinstance(found, kind)
    assert reason(name, function.example) == ""
    if function.result != "number":
        with pytest.raises(InputError, match="gives no number"):
            call(name, function.example)


@pytest.mark.parametrize(
    ("name", "cells", "expected"),
    [
        ("MOLAR_MASS", ["NaOH"], 39.997),
        ("MOLAR_MASS", ["Na2S.9H2O", "kg/mol"], 0.240175),
        ("THEORETICAL_OXYGEN_DEMAND", ["C2H5NO2"], 96 / 2 / 75.067 * 0.99994),
        ("THEORETICAL_OXYGEN_DEMAND", ["C2H5NO2", "nitrate"], 112 / 75.067 * 0.99994),
        ("CONVERTED_VALUE", [7.0, "Ne", "tex"], 84.363),
        ("CONVERTED_VALUE", [12.0, "oz / yd²", "g/m2"], 406.87),
        ("CONVERTED_VALUE", [90.0, "degF", "degC"], 32.222),
        ("DEFAULT_LOW", ["indigo.hydrosulfite_per_oxygen"], 1.0),
        ("DEFAULT_TYPICAL", ["INDIGO.hydrosulfite_per_oxygen"], 1.2),
        ("DEFAULT_HIGH", ["indigo.hydrosulfite_per_oxygen"], 2.0),
        ("DEFAULT_TYPICAL", ["indigo.bath_hydrosulfite", "kg/m3"], 2.0),
        ("PUBLISHED_LOW", ["water_rope_usual"], 15.0),
        ("PUBLISHED_HIGH", ["water_rope_usual", "m3/t"], 20.0),
        ("PRESET_LIMIT", ["us_410_g_bpt", "COD", "any one day"], 84.6),
        ("PRESET_LIMIT", ["US_410_G_BPT", "cod", "mean of days", "kg/kg"], 0.0423),
        ("PRESET_LIMIT", ["us_410_d_bat_c", "COD", "Mean of 30 days"], 50.0),
        ("PRESET_LIMIT", ["de_annex_38", "Colour at 620 nm"], 3.0),
    ],
)
def test_numbers_of_other_functions(name: str, cells: list[Any], expected: float) -> None:
    assert call(name, cells) == pytest.approx(expected, rel=2e-5)


@pytest.mark.parametrize(
    ("name", "cells", "words"),
    [
        ("MOLAR_MASS", [""], "formula is empty"),
        ("MOLAR_MASS", ["naoh"], "is not a formula"),
        ("MOLAR_MASS", [1.0], "formula is the number 1"),
        ("THEORETICAL_OXYGEN_DEMAND", ["NaOH", "nitrite"], "accepted is ammonium or nitrate"),
        ("CONVERTED_VALUE", [True, "g/L", "kg/L"], "value is True"),
        ("CONVERTED_VALUE", [1.0, "g/L", "tex"], "g/L cannot be read as tex"),
        ("CONVERTED_VALUE", [1.0, "mol/mol", "%"], "a ratio of amounts"),
        ("CONVERTED_VALUE", [1.0, "stone", "kg"], "unit is 'stone', which is not known"),
        ("DEFAULT_LOW", ["bath_hydrosulfite"], "near are: indigo.bath_hydrosulfite"),
        ("DEFAULT_LOW", ["indigo.bath_hydrosulfite", "tex"], "measures something else"),
        ("CAUTION_FOR", ["lye_50"], "near are: caustic_lye_50"),
        ("CAUTION_FOR", ["soda"], "which may be more than one thing; accepted is one of: sodium hydroxide"),
        ("CAUTION_FOR", [], "key is empty"),
        ("PUBLISHED_LOW", ["water_rope_usual", "tex"], "cannot be read as tex"),
        ("PRESET_LIMIT", [], "preset is empty"),
        ("PRESET_LIMIT", ["us_410"], "preset is 'us_410', which the table does not have; near are: us_410_g"),
        ("PRESET_LIMIT", ["us_410_g_bpt"], "parameter is empty; accepted is one of: BOD5, COD"),
        ("PRESET_LIMIT", ["us_410_g_bpt", "sulfate"], "parameter is 'sulfate'; accepted is one of: sulfide"),
        (
            "PRESET_LIMIT",
            ["us_410_g_bpt", "COD"],
            "statistic is empty; accepted is one of: any one day, mean",
        ),
        ("PRESET_LIMIT", ["us_410_g_bpt", "pH"], "pH of us_410_g_bpt is a range, between 6 and 9"),
        ("PRESET_LIMIT", ["china_gb_4287", "COD"], "has no value here; type the value of your permit"),
        ("PRESET_LIMIT", ["de_annex_38", "COD", "", "kg/t"], "mg/L cannot be read as kg/t"),
        ("SUBLOTS_OF_SET", [25000.0], "sublot length is empty"),
        ("HYDROSULFITE_BY_DIP", [0.0, 80.0, 90.0, 2.0], "dips is 0"),
        ("REASON_FOR", [], "name is empty"),
        ("PROGRAM_VERSION", [1.0], "got 1 arguments; accepted are: none"),
    ],
)
def test_other_functions_refuse_in_words(name: str, cells: list[Any], words: str) -> None:
    assert words in reason(name, cells)


def test_a_caution_defers_to_others() -> None:
    for key in ("caustic_lye_50", "hydrosulfite", "Soda ash"):
        text = called("CAUTION_FOR", [key])
        assert "not a safety data sheet" in text
    assert "UN1824" in called("CAUTION_FOR", ["caustic_lye_50"])


def test_a_preset_tells_its_section_and_edition_and_to_verify_it() -> None:
    text = called("PRESET_LIMIT_TEXT", ["us_410_g_bpt", "COD", "any one day"])
    assert "at most 84.6 kg/t, any one day" in text
    assert "410.72(a), annual edition 2015" in text
    assert text.endswith("verify with your permit")
    assert "no value here" in called("PRESET_LIMIT_TEXT", ["eu_2022_2508", "COD"])


def test_arrays_have_rows_of_one_length() -> None:
    rows = called("SUBLOTS_OF_SET", ["30000 yd", "10000 yd", "yd"])
    assert [(letter, place) for letter, place, _ in rows] == [("A", "top"), ("B", "middle"), ("C", "bottom")]
    assert [length for *_, length in rows] == pytest.approx([10000.0] * 3)
    behind = called("HYDROSULFITE_BY_DIP", [3.0, 80.0, 90.0, 2.0])
    assert [dip for dip, _ in behind] == [1.0, 2.0, 3.0]
    assert [value for _, value in behind] == pytest.approx([1.6, 1.632, 1.63264])


def test_every_record_is_complete() -> None:
    for name, function in cell_functions().items():
        assert function.name == name
        assert function.help, name
        assert function.gives, name
        assert all(parameter.help for parameter in function.parameters), name
        assert len(function.example) <= len(function.parameters) or name == "WARP_REASON_FOR"
