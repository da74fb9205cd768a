"""What a point charges for a litre of an enquiry's water, by hand, and what of it passes a train."""

from __future__ import annotations

import pytest

from costing.effluent.composition import water_of
from costing.effluent.discharge import streams
from costing.effluent.factors import Factors, typical_point
from costing.effluent.point_charge import (
    Strength,
    mean_price,
    price_at_point,
    price_by_strength,
    strength_of_enquiry,
)
from costing.effluent.point_train import passed
from costing.effluent.stages import Stage
from costing.effluent.treatment import treated
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.settings.treatment_train import SewerCharge, TrainStage
from tests.example_mill import example_mill

# 0.30 + 0.40 a cubic metre, and 0.20 and 0.25 for sewage of 500 mg/L of COD and 250 mg/L of solids.
TERMS = SewerCharge("P", None, 0.30e-3, 0.40e-3, 0.20e-3, 0.25e-3, 500e-6, 250e-6)
# 50 L with 40 g of settled COD, 10 g of sulfur COD, 10 g of solids: 1000 and 200 mg/L.
WATER = Strength(50.0, 0.040, 0.010, 0.010, 0.005)


def test_charge_by_hand() -> None:
    assert price_by_strength(TERMS, WATER) * 1000 == pytest.approx(0.30 + 0.40 + 0.20 * 2.0 + 0.25 * 0.8)


def test_charge_behind_biology_by_hand() -> None:
    # Textile sludge: COD down 83 - 10 %, solids 66 - 10 %; sulfur salts oxidised: 216 and 88 mg/L are left.
    through = passed([TrainStage("P", 1, "activated sludge, textile")])
    due = 0.70 + 0.20 * (800 * 0.27 / 500) + 0.25 * (200 * 0.44 / 250)
    assert price_by_strength(TERMS, WATER, through) * 1000 == pytest.approx(due)


def test_water_sent_back_is_not_charged_and_own_treatment_is_paid_on_all() -> None:
    charge = SewerCharge("P", effluent_charge=0.002, treatment_charge=0.0005)
    assert price_at_point(charge, WATER, returned=0.25) == pytest.approx(0.002 * 0.75 + 0.0005)


def test_mean_by_what_runs_to_each() -> None:
    assert mean_price([(3.0, 0.001), (1.0, 0.002)]) == pytest.approx(0.00125)


def test_dirtier_water_costs_more() -> None:
    for name in ("demand", "sulfur_demand", "solids"):
        dirtier = WATER._replace(**{name: 2.0 * getattr(WATER, name)})
        assert price_by_strength(TERMS, dirtier) > price_by_strength(TERMS, WATER)


def test_strength_is_that_of_the_streams() -> None:
    mill = example_mill()
    ledger = open_ledger(mill, mill.enquiries["E"])
    whole = streams(ledger, mill.materials)[-1]
    point = typical_point()
    found = strength_of_enquiry(ledger, Factors(ledger, mill.materials, point), point)
    assert found.volume == pytest.approx(whole.flow, rel=1e-12)
    assert found.demand + found.settling == pytest.approx(whole.loads["COD, organic"], rel=1e-12)
    assert found.sulfur_demand == pytest.approx(whole.loads["COD, inorganic sulfur"], rel=1e-12)
    assert found.solids == pytest.approx(whole.loads["suspended solids"] + point.lint, rel=1e-12)
    assert 0.0 < found.settling < found.demand


@pytest.mark.parametrize(
    "steps",
    [
        ("activated sludge, denim",),
        ("microfiltration 5 µm", "activated sludge, textile"),
        ("membrane bioreactor", "nanofiltration behind biology"),
    ],
)
def test_what_passes_is_what_the_train_lets_through(steps: tuple[str, ...]) -> None:
    water = water_of({"sodium_hydroxide": 0.2, "sodium_sulfite": 0.6, "sodium_thiosulfate": 0.1}, 1e3, 30.0)
    loads = {"COD, organic": 2.0, "suspended solids": 0.5}
    train = treated(loads, water, [Stage(step) for step in steps])
    through = passed([TrainStage("P", number, step) for number, step in enumerate(steps)])
    last = train.typical[-1]
    assert through.volume == pytest.approx(last.flow.water.volume / 1e3)
    assert through.demand == pytest.approx(train.passing("COD, organic").typical)
    assert through.solids == pytest.approx(train.passing("suspended solids").typical)
    assert through.sulfur_demand == pytest.approx(train.passing("COD, inorganic sulfur").typical, abs=1e-9)


def test_half_a_charge_and_two_charges_are_refused() -> None:
    with pytest.raises(InputError, match=r"T!B4: volume charge, biology.* empty; accepted is effluent"):
        SewerCharge("P", reception_charge=0.001, where="T!B4")
    with pytest.raises(InputError, match="both effluent charge and sludge charge are filled"):
        SewerCharge("P", effluent_charge=0.001, sludge_charge=0.001)
