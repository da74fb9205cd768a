"""Acid and carbon dioxide against the geochemical code that also holds the pH."""

from __future__ import annotations

from typing import Any

import pytest

from costing.effluent.acidity import Weak
from costing.effluent.composition import Water
from costing.effluent.dosing import carbon_dioxide_to_reach, sulfuric_acid_to_reach
from costing.process.chemistry import molar_mass

CAUSTIC = Water(1000.0, 25.0, {"Na+": 25.0}, Weak())
SODA = Water(1000.0, 25.0, {"Na+": 25.0}, Weak(carbonate=12.5))


@pytest.fixture(scope="module")
def referee() -> Any:
    return pytest.importorskip("phreeqpython").PhreeqPython(database="phreeqc.dat")


def ph(referee: Any, **mmol: float) -> float:
    """Of a litre that holds so much."""
    found = referee.add_solution({"temp": 25.0, "units": "mmol/kgw", "pH": "9 charge", **mmol})
    return float(found.pH)


@pytest.mark.parametrize(
    ("water", "target", "printed"),
    [(CAUSTIC, 9.0, 24.988), (CAUSTIC, 7.0, 25.000), (SODA, 9.0, 11.454), (SODA, 7.0, 14.475)],
)
def test_acid_is_that_of_the_code(water: Water, target: float, printed: float) -> None:
    """Charges in a cubic metre, the code with phreeqc-dat; it pairs sodium with carbonate: up to 2 %."""
    acid = sulfuric_acid_to_reach(water, target) / molar_mass("sulfuric_acid") * 2.0
    assert acid == pytest.approx(printed, rel=0.02)


@pytest.mark.parametrize(("target", "printed"), [(9.0, 23.115), (7.0, 29.762)])
def test_carbon_dioxide_is_that_of_the_code(target: float, printed: float) -> None:
    """Mol in a cubic metre of caustic, up to 2 %; pure gas, as flue gas does not reach pH 7."""
    gas = carbon_dioxide_to_reach(CAUSTIC, target, gas_pressure=1.0) / molar_mass("carbon_dioxide")
    assert gas == pytest.approx(printed, rel=0.02)


@pytest.mark.parametrize("target", [6.5, 7.5, 9.0, 10.5])
@pytest.mark.parametrize("carbonate", [0.0, 2.0, 10.0])
def test_the_code_reads_the_ph_that_was_asked_for(referee: Any, target: float, carbonate: float) -> None:
    """A rinse with sulfate, soda and caustic; a tenth of a pH for ion pairs, more where nothing holds it."""
    strong = {"Na+": 0.040, "SO4--": 0.005}
    water = Water(1.0, 25.0, strong, Weak(carbonate=carbonate / 1000.0))
    acid = sulfuric_acid_to_reach(water, target) / molar_mass("sulfuric_acid") * 1000.0
    mmol = {"Na": 40.0, "S(6)": 5.0 + acid}
    if carbonate:
        mmol["C"] = carbonate
    assert ph(referee, **mmol) == pytest.approx(target, abs=0.1 if carbonate else 0.6)
