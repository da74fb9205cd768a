"""Steam against the release of IAPWS-IF97, a reference library and the first law."""

from __future__ import annotations

import timeit
from typing import Any

import iapws._iapws97Constants as reference
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import IAPWS97

from costing.formulas.formula import Formula
from costing.formulas.group_steam import FORMULAS
from costing.process import steam, steam_properties, steam_tables
from costing.quantities import InputError, quantity, to_house
from tests.process.steam_constants import constants_with_units
from tests.tools.make_unit_table import WANTED, registry

ICE_POINT = 273.15
PRESSURES = [0.0061166, 0.02, 0.3, 1.0, 1.01325, 2.0, 4.0, 6.5, 9.0, 16.0, 40.0, 100.0, 165.29]
TEMPERATURES = [0.0, 0.01, 4.0, 15.0, 25.0, 60.0, 95.0, 99.97, 100.0, 143.6, 200.0, 300.0, 350.0]

UNITS = registry()

pressures = st.floats(min_value=0.01, max_value=160.0)
boiler_pressures = st.floats(min_value=1.5, max_value=20.0)
cold = st.floats(min_value=1.0, max_value=50.0)
warm = st.floats(min_value=50.5, max_value=99.0)
wet = st.floats(min_value=0.4, max_value=1.5)
dry = st.floats(min_value=0.0, max_value=0.3)


def reference_enthalpy(**state: float) -> float:
    """Of the reference library, which wants MPa and K [kJ/kg]."""
    return float(IAPWS97(**state).h)


# The release: tables 5 and 15 give MPa, K and kJ/kg to nine digits (if97-verification-values).


@pytest.mark.parametrize(
    ("kelvin", "megapascal", "enthalpy"),
    [(300.0, 3.0, 115.331273), (300.0, 80.0, 184.142828), (500.0, 3.0, 975.542239)],
)
def test_water_gives_table_5(kelvin: float, megapascal: float, enthalpy: float) -> None:
    got = steam.water_enthalpy(kelvin - ICE_POINT, megapascal * 10.0)
    assert got == pytest.approx(enthalpy, abs=0.5e-6)


@pytest.mark.parametrize(
    ("kelvin", "megapascal", "enthalpy"),
    [(300.0, 0.0035, 2549.91145), (700.0, 0.0035, 3335.68375), (700.0, 30.0, 2631.49474)],
)
def test_steam_gives_table_15(kelvin: float, megapascal: float, enthalpy: float) -> None:
    got = steam.HOUSE.gas_constant * 540.0 * steam_tables.steam_slope(megapascal, 540.0 / kelvin)
    assert got == pytest.approx(enthalpy, abs=0.5e-5)


@pytest.mark.parametrize(
    ("kelvin", "megapascal"), [(300.0, 0.353658941e-2), (500.0, 0.263889776e1), (600.0, 0.123443146e2)]
)
def test_saturation_pressure_gives_table_35(kelvin: float, megapascal: float) -> None:
    assert steam.saturation_pressure(kelvin - ICE_POINT) == pytest.approx(megapascal * 10.0, rel=5e-9)


@pytest.mark.parametrize(("megapascal", "kelvin"), [(0.1, 372.755919), (1.0, 453.035632), (10.0, 584.149488)])
def test_saturation_temperature_gives_table_36(megapascal: float, kelvin: float) -> None:
    got = steam.saturation_temperature(megapascal * 10.0) + ICE_POINT
    assert got == pytest.approx(kelvin, abs=0.5e-6)


# The reference library: the same equations, so all that may differ is the rounding of sums.


def test_coefficients_are_those_of_the_reference_library() -> None:
    water = zip(reference.Region1_Li, reference.Region1_Lj, reference.Region1_n, strict=True)
    ideal = zip(reference.Region2_cp0_Jo, reference.Region2_cp0_no, strict=True)
    residual = zip(reference.Region2_Li, reference.Region2_Lj, reference.Region2_n, strict=True)
    assert tuple(water) == steam_tables.WATER
    assert tuple(ideal) == steam_tables.STEAM_IDEAL
    assert tuple(residual) == steam_tables.STEAM_RESIDUAL


@pytest.mark.parametrize("pressure", PRESSURES)
def test_saturated_states_are_those_of_the_reference_library(pressure: float) -> None:
    boiling = IAPWS97(P=pressure / 10.0, x=0)
    steaming = IAPWS97(P=pressure / 10.0, x=1)
    assert steam.saturation_temperature(pressure) + ICE_POINT == pytest.approx(boiling.T, rel=1e-12)
    # just above the ice point the enthalpy of water is the small difference of large numbers
    assert steam.saturated_water_enthalpy(pressure) == pytest.approx(boiling.h, rel=1e-11, abs=1e-9)
    assert steam.saturated_steam_enthalpy(pressure) == pytest.approx(steaming.h, rel=1e-11)
    assert steam.evaporation_enthalpy(pressure) == pytest.approx(steaming.h - boiling.h, rel=1e-11)


@pytest.mark.parametrize("temperature", TEMPERATURES)
def test_states_at_a_temperature_are_those_of_the_reference_library(temperature: float) -> None:
    kelvin = temperature + ICE_POINT
    steaming = IAPWS97(T=kelvin, x=1)
    assert steam.saturation_pressure(temperature) == pytest.approx(steaming.P * 10.0, rel=1e-11)
    assert steam.vapour_enthalpy(temperature) == pytest.approx(steaming.h, rel=1e-11)
    for pressure in (200.0, 900.0):
        pressed = reference_enthalpy(T=kelvin, P=pressure / 10.0)
        assert steam.water_enthalpy(temperature, pressure) == pytest.approx(pressed, rel=1e-11, abs=1e-9)


@pytest.mark.parametrize("temperature", [4.0, 15.0, 60.0, 99.0])
def test_water_is_taken_under_the_air_by_default(temperature: float) -> None:
    expected = reference_enthalpy(T=temperature + ICE_POINT, P=0.101325)
    assert steam.water_enthalpy(temperature) == pytest.approx(expected, rel=1e-11)


@pytest.mark.parametrize("temperature", [99.98, 120.0, 180.0, 350.0])
def test_water_too_hot_for_its_pressure_is_taken_as_boiling(temperature: float) -> None:
    expected = reference_enthalpy(T=temperature + ICE_POINT, x=0)
    assert steam.water_enthalpy(temperature) == pytest.approx(expected, rel=1e-11)


# What must hold whatever the numbers.


@given(pressures)
def test_the_boiling_line_reads_the_same_both_ways(pressure: float) -> None:
    assert steam.saturation_pressure(steam.saturation_temperature(pressure)) == pytest.approx(
        pressure, rel=1e-9
    )


@given(pressures, st.floats(min_value=1.001, max_value=1.03))
def test_more_pressure_boils_hotter_and_leaves_less_to_condense(pressure: float, factor: float) -> None:
    assert steam.saturation_temperature(pressure * factor) > steam.saturation_temperature(pressure)
    assert steam.evaporation_enthalpy(pressure * factor) < steam.evaporation_enthalpy(pressure)


@given(st.floats(min_value=0.5, max_value=50.0), cold, warm, boiler_pressures)
def test_live_steam_keeps_the_heat_and_the_water(
    water: float, start: float, end: float, pressure: float
) -> None:
    used = steam.heating_steam_direct(water, start, end, pressure)
    brought = water * steam.water_enthalpy(start) + used * steam.saturated_steam_enthalpy(pressure)
    assert brought == pytest.approx((water + used) * steam.water_enthalpy(end), rel=1e-12)


@given(st.floats(min_value=0.5, max_value=50.0), cold, warm, boiler_pressures)
def test_a_coil_takes_more_steam_than_live_steam_and_both_take_some(
    water: float, start: float, end: float, pressure: float
) -> None:
    live = steam.heating_steam_direct(water, start, end, pressure)
    assert 0.0 < live < steam.heating_steam_closed(water, start, end, pressure)


@given(wet, dry, cold, boiler_pressures, st.floats(min_value=0.5, max_value=1.0))
def test_no_dryer_goes_below_the_floor(
    moisture_in: float, moisture_out: float, start: float, pressure: float, efficiency: float
) -> None:
    heat = steam.drying_heat(moisture_in, moisture_out, start, 100.0)
    used = steam.drying_steam(heat, pressure, efficiency)
    reached = steam.steam_per_water_evaporated(used, moisture_in - moisture_out)
    assert reached > steam.ideal_steam_per_water_evaporated(pressure, start) > 1.0


@given(wet, dry, st.floats(min_value=0.001, max_value=0.09), cold)
def test_drier_yarn_takes_more_steam(moisture_in: float, drier: float, more: float, start: float) -> None:
    used = [
        steam.drying_steam(steam.drying_heat(moisture_in, left, start, 100.0), 4.0, 0.8)
        for left in (drier, drier + more)
    ]
    assert used[0] > used[1] > 0.0


def test_yarn_gives_heat_to_a_colder_bath() -> None:
    assert steam.yarn_heat(0.7, 60.0, 25.0) == -steam.yarn_heat(0.7, 25.0, 60.0)


# Right or refused.


@pytest.mark.parametrize(
    ("function", "values", "message"),
    [
        (
            steam.saturation_temperature,
            (170.0,),
            "pressure is 170 bar, accepted is 0.0061122 bar to 165.29 bar",
        ),
        (
            steam.saturated_steam_enthalpy,
            (0.0,),
            "pressure is 0 bar, accepted is 0.0061122 bar to 165.29 bar",
        ),
        (steam.evaporation_enthalpy, (float("nan"),), "pressure is nan bar, accepted is"),
        (steam.steam_for_heat, (1000.0, -1.0), "pressure is -1 bar, accepted is"),
        (steam.saturation_pressure, (-0.1,), "temperature is -0.1 degC, accepted is 0 degC to 350 degC"),
        (steam.vapour_enthalpy, (351.0,), "temperature is 351 degC, accepted is 0 degC to 350 degC"),
        (steam.water_enthalpy, (float("inf"),), "temperature is inf degC, accepted is"),
        (steam.water_enthalpy, (20.0, 1001.0), "pressure is 1001 bar, accepted is more than 0, to 1000 bar"),
        (steam.water_enthalpy, (20.0, 0.0), "pressure is 0 bar, accepted is more than 0, to 1000 bar"),
        (
            steam.absolute_pressure,
            (-0.9, 0.8),
            "gauge pressure is -0.9 bar, accepted is more than -0.8 bar, which is no pressure at all",
        ),
        (
            steam.heating_steam_direct,
            (1.0, 60.0, 50.0, 4.0),
            "temperature out is 50 degC, accepted is 60 degC, where it starts, to 143.613 degC, where the "
            "steam condenses",
        ),
        (steam.heating_steam_closed, (1.0, 60.0, 150.0, 4.0), "temperature out is 150 degC, accepted is"),
        (
            steam.drying_heat,
            (0.05, 0.08, 25.0, 100.0),
            "moisture out is 0.08 kg/kg, accepted is at most 0.05 kg/kg, which is on the yarn that enters",
        ),
        (
            steam.ideal_steam_per_water_evaporated,
            (1.0, 25.0),
            "pressure is 1 bar, accepted is more than 1.01418 bar, to be hotter than the vapour",
        ),
        (
            steam.saturation_temperature,
            (np.array([1.0, 4.0, 400.0]),),
            "pressure is 1 bar to 400 bar, accepted is",
        ),
        (
            steam.saturation_temperature,
            (UNITS.Quantity(20.0, "MPa"),),
            "pressure is 20 megapascal, accepted is",
        ),
    ],
)
def test_what_makes_no_sense_is_refused(function: Any, values: tuple[Any, ...], message: str) -> None:
    constants = constants_with_units(function, UNITS) if hasattr(values[0], "units") else {}
    with pytest.raises(InputError) as refused:
        function(*values, **constants)
    assert str(refused.value).startswith(message)


def test_a_refusal_in_a_cell_names_the_formula() -> None:
    drying = next(formula for formula in FORMULAS if formula.function is steam.drying_heat)
    with pytest.raises(
        InputError, match=r"^WARP_DRYING_HEAT: moisture out is 0\.08 kg/kg, accepted is at most"
    ):
        drying.calculate({**drying.example, "moisture_in": 0.05})


# Quantities with units, arrays, and the answers that are kept.


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_runs_on_quantities_with_units(formula: Formula) -> None:
    given_units = {
        item.name: UNITS.Quantity(formula.example[item.name], WANTED[item.usual])
        for item in formula.arguments
    }
    answer = UNITS.Quantity(
        formula.function(**given_units, **constants_with_units(formula.function, UNITS))
    ).to(WANTED[quantity(formula.result).usual])
    assert answer.magnitude == pytest.approx(formula.calculate(formula.example), rel=1e-9)


def test_a_pressure_with_another_unit_is_understood() -> None:
    constants = constants_with_units(steam.saturated_steam_enthalpy, UNITS)
    answer = steam.saturated_steam_enthalpy(UNITS.Quantity(0.4, "MPa"), **constants)
    assert answer.to("kJ/kg").magnitude == pytest.approx(steam.saturated_steam_enthalpy(4.0), rel=1e-12)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_an_array_gives_what_each_number_gives(formula: Formula) -> None:
    factor = np.array([0.96, 1.0, 1.04])
    arrays = {
        item.name: to_house(formula.example[item.name], item.usual, item.unit) * factor
        for item in formula.arguments
    }
    together = formula.function(**arrays)
    for place in range(len(factor)):
        alone = formula.function(**{name: float(array[place]) for name, array in arrays.items()})
        assert together[place] == pytest.approx(alone, rel=1e-12)


def test_an_array_of_water_may_boil_in_part() -> None:
    got = steam.water_enthalpy(np.array([60.0, 120.0]))
    assert got == pytest.approx([steam.water_enthalpy(60.0), steam.water_enthalpy(120.0)], rel=1e-12)


def test_a_kept_answer_is_the_calculated_one() -> None:
    other = steam.HOUSE._replace(gas_constant=2 * steam.HOUSE.gas_constant)
    for equation in (steam.saturated_water_enthalpy, steam.saturated_steam_enthalpy):
        kept = [equation(4.0), equation(4.0), equation(pressure=4.0), equation(4)]
        assert kept == [kept[0]] * 4
        assert equation(4.0, reducing=other) == pytest.approx(2 * kept[0], rel=1e-15)


def test_steam_of_one_quote_takes_well_under_a_millisecond() -> None:
    def fresh_quote() -> None:
        for temperature in (15.0, 25.0, 40.0, 60.0, 90.0):
            steam_properties._region_1(temperature, 1.01325, steam.HOUSE)
        for pressure in (4.0, 4.0, 5.0, 5.0, 9.0):
            steam_properties._region_2(steam.saturation_temperature(pressure), pressure, steam.HOUSE)

    assert min(timeit.repeat(fresh_quote, number=10, repeat=5)) / 10 < 1e-3
