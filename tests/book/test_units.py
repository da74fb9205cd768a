"""Numbers with units as people type them, against pint and by hand."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from costing.book.quantity_cell import accepted_range, accepted_units, is_error, read_quantity
from costing.quantities import QUANTITIES, InputError
from costing.quantities.unit_table import PARTS as PARTS_OF_UNITS
from costing.quantities.units import LONGEST_UNIT, WORDS, canonical, convert, measure
from tests.tools.make_unit_table import PARTS, WANTED, registry

PINT = registry()
BY_PINT = {**WANTED, **PARTS}


def by_pint(value: float, unit: str, target: str) -> float:
    return float(PINT.Quantity(value, unit).to(target, "textile").magnitude)


@pytest.mark.parametrize("name", QUANTITIES)
def test_every_accepted_unit_is_read_as_pint_reads_it(name: str) -> None:
    item = QUANTITIES[name]
    for unit in accepted_units(name):
        expected = by_pint(3.0, WANTED[unit], WANTED[item.unit])
        assert convert(3.0, unit, item.unit) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("unit", PARTS_OF_UNITS)
def test_every_part_is_what_pint_says(unit: str) -> None:
    dimension, factor, offset = measure(unit)
    assert by_pint(1.0, PARTS[unit], si(dimension)) == pytest.approx(factor, rel=1e-12)
    assert offset == 0.0


SI = {
    "length": "m",
    "mass": "kg",
    "time": "s",
    "substance": "mol",
    "temperature": "kelvin",
    "current": "ampere",
    "money": "money",
}


def si(dimension: str) -> str:
    """A dimension in SI base units, as pint reads it."""
    parts = re.findall(r"([a-z]+)([+-][0-9]+)", dimension)
    return " * ".join(f"{SI[base]} ** ({power})" for base, power in parts) or "dimensionless"


@pytest.mark.parametrize("word", WORDS)
def test_every_word_means_what_it_means_to_pint(word: str) -> None:
    sign = WORDS[word]
    if word in ("°C", "°F"):
        assert PINT.Unit(word) == PINT.Unit(sign)
    else:
        assert by_pint(1.0, word, BY_PINT[sign]) == pytest.approx(1.0, rel=1e-15)


def atoms() -> list[str]:
    left_out = ("ppm", "degC", "degF")  # a pure number, and two scales with a zero of their own
    return [unit for unit in BY_PINT if re.fullmatch(r"[^\W\d_]+", unit) and unit not in left_out]


@settings(max_examples=300)
@given(
    parts=st.lists(
        st.tuples(
            st.sampled_from(["/", "*", " "]), st.sampled_from(atoms()), st.sampled_from(["", "2", "³"])
        ),
        min_size=1,
        max_size=4,
    ),
    inverse=st.booleans(),
)
def test_what_is_put_together_is_what_pint_puts_together(
    parts: list[tuple[str, str, str]], inverse: bool
) -> None:
    ours = "".join(f"{sign}{unit}{power}" for sign, unit, power in parts)[1:]
    theirs = "".join(
        f"{'/' if sign == '/' else '*'}({BY_PINT[unit]})**{power.replace('³', '3') or '1'}"
        for sign, unit, power in parts
    )[1:]
    if inverse:
        ours, theirs = f"1/{ours}", f"1/{theirs}"
    assume(len(ours) <= LONGEST_UNIT)
    try:
        dimension, factor, _ = measure(ours)
    except KeyError:  # a ratio of amounts
        assert "mol" in ours
        assert "[substance]" not in PINT.Unit(theirs).dimensionality
        return
    assert by_pint(1.0, theirs, si(dimension)) == pytest.approx(factor, rel=1e-12)


ONE_WORD = """
g/l mg/l ml/kg l L l/h L/hr l/min m3/hr m3/hour m³/h m^3/h m**3/h gal/min oz/gal lb/gal lb/ft3 g/cc g/mL
kg/dm3 mg/dm3 µg/L ug/L t/m3 cm3 dm3 hl cc money/m³ money/tonne money/pound money/lbs money/litre
money/gal money/hr money/hour money/day money/yard money/metre kcal kcal/kg BTU/lb J/g MWh GJ hp kW*h
kcal/h/m2 W/m2 kJ/(kg*K) kJ/kg/degC g/(m2*h) kg/(m2*h) kgf/cm2 N/m2 mbar atm hPa inch inches yard yards
yds feet foot metre metres hours hrs mins minutes sec seconds d days tonne tonnes pound pounds lbs ounces
grams kilogram litre litres percent ppm denier dtex g.L^-1 g*L**-1 cm^-1 1/inch grains/yd mmol/g mol/l
kg/hr yd² ft2
"""
WITH_BLANKS = (
    *("g / L", "g per L", "g per litre", "l per min", "1 / cm", "kg/(m2 h)", "kW h", "m3 / h"),
    "money per kg",
)


@pytest.mark.parametrize("text", [*ONE_WORD.split(), *WITH_BLANKS])
def test_a_spelling_that_pint_knows_means_the_same(text: str) -> None:
    dimension, factor, offset = measure(text)
    theirs = re.sub(r"(?<=[A-Za-z])(?=[23])", "**", text).replace("degC", "kelvin")
    assert by_pint(1.0, theirs, si(dimension)) == pytest.approx(factor, rel=1e-12)
    assert offset == 0.0


@pytest.mark.parametrize(
    ("text", "spelling"),
    [
        ("epi", "1/in"),
        ("ppi", "1/in"),
        ("ends per cm", "1/cm"),
        ("ends / inch", "1/in"),
        ("picks per in", "1/in"),
        ("per cm", "1/cm"),
        ("gsm", "g/m2"),
        (" oz / yd² ", "oz/yd2"),
        ("°C", "degC"),
        ("fraction", ""),
        ("litres per kg", "L/kg"),
        ("money / kilogram", "money/kg"),
    ],
)
def test_spellings_of_the_trade(text: str, spelling: str) -> None:
    assert canonical(text) == spelling


@pytest.mark.parametrize(
    "text",
    [
        "ton",
        "G/L",
        "KG",
        "g/",
        "/",
        "*g",
        "g//L",
        "g(L",
        "g)",
        "(g",
        "g/((L))",
        "m2h",
        "kg2g",
        "mmol/mol",
        "%*%",
    ],
)
def test_what_could_mean_something_else_is_no_unit(text: str) -> None:
    with pytest.raises(KeyError):
        canonical(text)


@pytest.mark.parametrize(
    "text", ["#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#WERT!", "#ZAHL!", "Err:502", "#REF!"]
)
def test_errors_of_the_programs_are_seen(text: str) -> None:
    assert is_error(text)
    with pytest.raises(InputError, match=f"bath indigo is the error value {re.escape(text)}; accepted is"):
        read_quantity(text, "g/L", "bath_indigo", "here")


@pytest.mark.parametrize("name", QUANTITIES)
@settings(max_examples=20)
@given(share=st.floats(0.0, 1.0))
def test_what_is_in_range_is_taken_and_comes_back(name: str, share: float) -> None:
    item = QUANTITIES[name]
    value = item.low + share * (item.high - item.low)
    if item.whole:
        value = float(round(value))
    house = read_quantity(value, item.usual, name, "here")
    assert convert(house, item.unit, item.usual) == pytest.approx(value, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("name", QUANTITIES)
@pytest.mark.parametrize("side", [-1, 1])
def test_what_is_out_of_range_is_refused_in_its_own_unit(name: str, side: int) -> None:
    item = QUANTITIES[name]
    end = item.low if side < 0 else item.high
    value = end + side * max(1e-3 * abs(end), 1e-3 * (item.high - item.low))
    with pytest.raises(InputError, match="accepted is"):
        read_quantity(value, item.usual, name, "here")


@pytest.mark.parametrize(
    ("value", "unit", "name", "house"),
    [
        (7, "Ne", "warp_count", 7.0**-1 * 0.45359237 / (840 * 0.9144)),
        (12, "Nm", "warp_count", 1 / 12000),
        (760, "den", "warp_count", 760 / 9e6),
        (64, "1/in", "ends_density", 64 / 0.0254),
        (64, "ends/in", "ends_density", 64 / 0.0254),
        (65, "in", "width", 65 * 0.0254),
        (65, "inch", "width", 65 * 0.0254),
        (77, "°F", "bath_temperature", 25.0),
        (25, "°C", "bath_temperature", 25.0),
        (2, "g/l", "bath_indigo", 0.002),
        (2, "kg/m³", "bath_indigo", 0.002),
        (9, "m^3/h", "rinse_water_flow", 9000.0),
        (0.5, "yd", "order_length", None),
        (30, "money/t", "steam_price", 0.03),
        (30, "min", "stoppage_time", 0.5),
        (88, "%", "strength", 0.88),
        (880, "g/kg", "strength", 0.88),
    ],
)
def test_units_of_the_trade(value: float, unit: str, name: str, house: float | None) -> None:
    if house is None:
        with pytest.raises(InputError, match=r"accepted is 1\.09361 to"):
            read_quantity(value, unit, name, "here")
    else:
        assert read_quantity(value, unit, name, "here") == pytest.approx(house, rel=1e-12)


@pytest.mark.parametrize(
    "text", ["g per lot", "5 g/L", "g/L; rm", "=1", "x" * 40, "ton?", "10**9*g", "__import__"]
)
def test_what_is_no_unit_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="unknown unit"):
        read_quantity(2.0, text, "bath_indigo", "here")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_no_number_at_all(value: float) -> None:
    with pytest.raises(InputError, match=r"bath indigo is (nan|inf|-inf) g/L; accepted is 0\.05 to 30 g/L"):
        read_quantity(value, "g/L", "bath_indigo", "here")


def test_a_rate_of_nothing_is_refused_though_the_range_is_wide() -> None:
    assert accepted_range("exchange_rate", "")[0] > 0
    with pytest.raises(InputError, match="exchange rate is 0; accepted is 1e-06 to"):
        read_quantity(0, "", "exchange_rate", "here")
