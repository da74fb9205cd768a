"""What runs to a collecting point, held against the ledger, and what oxygen makes of it on its way."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.effluent.arriving import Arriving, of_enquiry, of_other_flow, taken_in, together
from costing.effluent.composition import water_of
from costing.effluent.discharge import streams
from costing.effluent.factors import typical_point
from costing.effluent.pit import residence_time, standings
from costing.effluent.speciation import speciation
from costing.ledger.whole import open_ledger
from costing.settings.discharge_point import DischargePoint, OtherFlow
from tests.example_mill import example_mill

MILL = example_mill()
LEDGER = open_ledger(MILL, MILL.enquiries["E"])
STREAMS = streams(LEDGER, MILL.materials)
POINT = typical_point()
YARN = 100.0  # kg/h: 2.4 t a day


def arriving(point: DischargePoint = POINT) -> list[Arriving]:
    return of_enquiry(LEDGER, STREAMS[:-1], YARN, point)


def test_a_day_is_the_ledger_times_its_yarn_with_the_salts_of_the_water_taken_in() -> None:
    whole, ledger = together(arriving()), STREAMS[-1]
    assert whole.volume == pytest.approx(2400.0 * ledger.flow, rel=1e-12)
    for name in ("COD, both", "unfixed dye", "sulfite", "thiosulfate", "BOD5"):
        assert whole.loads[name] == pytest.approx(2400.0 * ledger.loads[name], rel=1e-12), name
    # 2 mmol/L of bicarbonate, 30 mg/L of chloride and 40 of sulfate, with their sodium.
    sodium = (2.0 + 30.0 / 35.45 + 2.0 * 40.0 / 96.056) * 22.990e-6 * whole.volume
    assert whole.loads["sodium"] == pytest.approx(2400.0 * ledger.loads["sodium"] + sodium, rel=1e-6)
    lint = 0.0015 * 2400.0
    assert whole.loads["suspended solids"] == pytest.approx(2400.0 * ledger.loads["suspended solids"] + lint)


def test_ions_are_those_of_the_loads() -> None:
    whole = together(arriving())
    held = whole.water.strong
    products = sum(
        amount * MILL.materials[code].own_sodium
        for code, amount in whole.amounts.items()
        if code in MILL.materials
    )
    assert held["Na+"] * 0.022990 == pytest.approx(whole.loads["sodium"] - products, rel=1e-9)
    assert held["SO4--"] * 0.096056 == pytest.approx(whole.loads["sulfate"], rel=1e-6)
    assert whole.water.weak.sulfite * 0.080057 == pytest.approx(whole.loads["sulfite"], rel=1e-6)


def test_water_taken_in_has_a_ph_of_drinking_water() -> None:
    assert speciation(taken_in(POINT, 1.0, 15.0)).acidity == pytest.approx(8.3, abs=0.2)


def test_every_stream_has_a_sort_and_the_temperature_of_its_step() -> None:
    found = {stream.name: (stream.sort, stream.temperature) for stream in arriving()}
    assert found["scour dump"][0] == "scour"
    assert found["scour dump"][1] == pytest.approx(90.0)
    assert found["rinse after dyeing"][0] == "rinse"
    assert found["cleaning"] == ("other", LEDGER.range.water_temperature)


def test_a_dump_comes_once_a_lot() -> None:
    dump = next(stream for stream in arriving() if stream.name == "indigo dyeing dump")
    assert dump.dumps == pytest.approx(2400.0 / LEDGER.plan.saleable_mass)
    assert next(stream for stream in arriving() if stream.sort == "rinse").dumps == 0.0


pits = st.builds(
    lambda volume, drain, pit, time: replace(
        POINT, pit_volume=volume, drain_transfer=drain, pit_transfer=pit, drain_time=time
    ),
    st.floats(0.0, 1e6),
    st.floats(0.0, 10.0),
    st.floats(0.0, 50.0),
    st.floats(0.0, 48.0),
)


@settings(max_examples=60, deadline=None)
@given(pits)
def test_sulfur_and_sodium_pass_and_demand_falls_by_the_oxygen(point: DischargePoint) -> None:
    fresh, *later = standings(point, arriving(point))
    for place in later:
        for name in ("sodium", "sulfur, all forms", "COD, organic", "unfixed dye", "chloride"):
            assert place.stream.loads[name] == pytest.approx(fresh.stream.loads[name], rel=1e-9), name
        fell = fresh.stream.loads["COD, inorganic sulfur"] - place.stream.loads["COD, inorganic sulfur"]
        assert fell == pytest.approx(place.oxygen, rel=1e-9, abs=1e-9)
        # Sulfur that goes on to sulfate makes acid, so caustic falls or stays.
        strong = place.stream.water.strong_difference
        assert strong <= fresh.stream.water.strong_difference * (1.0 + 1e-12)
        assert all(load >= 0.0 for load in place.stream.loads.values())
        assert place.closed is not None
        assert 0.0 < place.closed.acidity < 14.0


def test_a_longer_stay_oxidises_no_less() -> None:
    sulfite = [
        standings(replace(POINT, pit_volume=volume), arriving())[-1].concentration("sulfite")
        for volume in (1.0, 1e4, 5e4, 1e5, 1e6)
    ]
    assert sulfite == sorted(sulfite, reverse=True)
    assert sulfite[0] > 0.0
    assert sulfite[-1] == 0.0


def test_a_mean_stay_is_volume_over_flow() -> None:
    """200 m3 a day through 100 m3."""
    assert residence_time(replace(POINT, pit_volume=100e3), 200e3) == pytest.approx(12.0)


def test_another_flow_reads_the_ph_that_it_is_said_to_have() -> None:
    given_ = {"COD, organic": 600e-6, "chloride": 200e-6, "sulfate": 300e-6}
    flow = OtherFlow("softener", "PIT", 500.0, 18.0, 7.2, given_)
    found = of_other_flow(flow, POINT, 20.0)
    assert speciation(found.water).acidity == pytest.approx(7.2, abs=0.01)
    assert found.volume == pytest.approx(12000.0)
    assert found.loads["COD, both"] == pytest.approx(7.2)
    assert found.water.strong["Cl-"] * 0.03545 == pytest.approx(found.loads["chloride"], rel=1e-9)


def test_streams_and_flows_mix_by_ions() -> None:
    """Caustic of a stream is weaker by the flow that thins it; the heat is shared out."""
    strong = Arriving(
        "a", "", "", 0.0, 1000.0, 60.0, {}, {}, water_of({"sodium_hydroxide": 1.0}, 1000.0, 60.0)
    )
    thin = of_other_flow(OtherFlow("b", "PIT", 3000.0 / 24.0), POINT, 20.0)
    both = together([strong, thin])
    assert both.temperature == pytest.approx(30.0)
    assert both.water.strong_difference == pytest.approx(1.0 / 0.039997 + 0.002 * 3000.0, rel=1e-9)
