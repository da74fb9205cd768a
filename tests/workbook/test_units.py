"""Numbers with units as people type them, against the unit table and by hand."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.front_ends.units import accepted_range, accepted_units, convert, parse_unit, read_quantity
from costing.quantities import QUANTITIES, UNITS, InputError
from costing.quantities.units import convert as convert_by_table


@pytest.mark.parametrize("name", QUANTITIES)
def test_every_accepted_unit_is_read_as_the_table_reads_it(name: str) -> None:
    item = QUANTITIES[name]
    for unit in accepted_units(name):
        if unit:
            expected = convert_by_table(3.0, unit, item.unit)
            assert convert(3.0, unit, item.unit) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize("name", QUANTITIES)
@settings(max_examples=20)
@given(share=st.floats(0.0, 1.0))
def test_what_is_in_range_is_taken_and_comes_back(name: str, share: float) -> None:
    item = QUANTITIES[name]
    value = item.low + share * (item.high - item.low)
    if item.whole:
        value = float(round(value))
    house = read_quantity(value, item.usual, name, "here")
    assert convert_by_table(house, item.unit, item.usual) == pytest.approx(value, rel=1e-9, abs=1e-12)


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


def test_the_units_are_loaded_at_the_first_use_only() -> None:
    program = "import sys, costing.front_ends.units; print('pint' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_every_unit_of_the_table_is_known_to_both() -> None:
    for unit in UNITS:
        assert parse_unit(unit) is not None
