"""Streams of a ledger, worked out by hand and against what went in."""

from __future__ import annotations

import pytest

from costing.effluent.composition import strong_charge
from costing.effluent.discharge import streams
from costing.effluent.factors import Factors
from costing.ledger.whole import open_ledger
from costing.process.postings import DRAIN
from costing.process.size_box import size_liquor
from costing.settings.sizing_step import Sizing
from tests.example_mill import example_mill
from tests.report.demo import demo_result

MILL = example_mill()
LEDGER = open_ledger(MILL, MILL.enquiries["E"])
FACTORS = Factors(LEDGER, MILL.materials)
ALL = streams(LEDGER, MILL.materials)[-1]


def test_ions_of_a_gram_of_hydrosulfite() -> None:
    """All to sulfate gives 1.1035 g, all to sulfite 0.9197 g; half the sulfur of a mol each way here."""
    sulfate = 2 * 142.036 / 174.096 * FACTORS.of("sodium_sulfate")["sulfate"]
    sulfite = 2 * 126.037 / 174.096 * FACTORS.of("sodium_sulfite")["sulfite"]
    assert sulfate == pytest.approx(1.1035, abs=1e-4)
    assert sulfite == pytest.approx(0.9197, abs=1e-4)


def test_alkalinity_of_salts() -> None:
    """Caustic brings one charge a mol, sulfite two until acid takes it, sulfate none."""
    assert strong_charge("sodium_hydroxide") == pytest.approx(1000 / 39.997, rel=1e-9)
    assert strong_charge("sodium_sulfite") == pytest.approx(2000 / 126.037, rel=1e-9)
    assert strong_charge("sodium_sulfate") == 0.0
    for neutral in (
        "sodium_thiosulfate",
        "sodium_hydrosulfite",
        "sodium_chloride",
        "indigo",
        "no such thing",
    ):
        assert strong_charge(neutral) == 0.0, neutral


def test_alkalinity_of_a_stream_is_its_sodium_less_its_strong_anions() -> None:
    """From the loads of the stream alone: ions over their charge, in mol; sodium of the agents is neutral."""
    for stream in streams(LEDGER, MILL.materials):
        held = {name: load * 1000.0 for name, load in stream.loads.items()}
        agents = sum(
            line.amount * 1000.0 * {"WET": 0.099, "SEQ": 0.24}.get(line.substance, 0.0)
            for line in stream.lines
        )
        anions = held["sulfate"] / 96.056 + held["thiosulfate"] / 112.117 + held["hydrosulfite"] / 128.116
        charge = (held["sodium"] - agents) / 22.990 - 2 * anions
        assert stream.alkalinity == pytest.approx(charge, rel=1e-5, abs=1e-9), stream.name
    assert ALL.alkalinity > 0.1  # mol/kg: caustic and sulfite of a kilogram of yarn


def test_unfixed_dye_is_what_was_fed_and_did_not_stay() -> None:
    fed = 0.94 * LEDGER.used("INDIGO")
    on_yarn = LEDGER.to_account("dyed yarn", "indigo") + LEDGER.to_account("unsaleable yarn", "indigo")
    assert ALL.loads["unfixed dye"] == pytest.approx(fed - on_yarn, rel=1e-9)


def test_concentration_of_the_dumped_bath_is_that_of_the_recipe() -> None:
    """2 g/L of indigo and of hydrosulfite stand in the bath, whatever the lot: 2000 mg/L leave with it."""
    (dump,) = [item for item in streams(LEDGER, MILL.materials) if item.name == "indigo dyeing dump"]
    assert dump.concentration("unfixed dye") * 1e6 == pytest.approx(2000.0, rel=1e-6)
    ion = 2000.0 * 128.116 / 174.096  # S2O4 in Na2S2O4
    assert dump.concentration("hydrosulfite") * 1e6 == pytest.approx(ion, rel=1e-6)


def test_halving_the_rinse_water_raises_concentration_and_never_the_load() -> None:
    def pit(water: float) -> object:
        mill = example_mill(recipe={"rinse after dyeing": {"rinse_water": water}})
        ledger = open_ledger(mill, mill.enquiries["E"])
        return streams(ledger, mill.materials)[-1]

    much, little = pit(8.0), pit(4.0)
    for parameter in ("sodium", "COD, organic", "sulfite"):
        assert little.loads[parameter] <= much.loads[parameter] * (1 + 1e-12)  # type: ignore[attr-defined]
        assert little.concentration(parameter) > much.concentration(parameter)  # type: ignore[attr-defined]


def test_sum_is_all_drain_lines() -> None:
    sodium = sum(
        line.amount * FACTORS.of(line.substance).get("sodium", 0.0)
        for line in LEDGER.lines
        if line.destination.startswith(DRAIN)
    )
    assert ALL.loads["sodium"] == pytest.approx(sodium, rel=1e-12)


def test_a_litre_of_size_liquor_reads_what_stands_in_it() -> None:
    """The dump is the liquor of the box: water per litre is what its density leaves beside the size."""
    result = demo_result("S-01")
    (step,) = [step for step in result.ledger.steps if isinstance(step, Sizing)]
    (yarn,) = [yarn for item, yarn in result.ledger.run.entering if item is step]
    strength = size_liquor(step, yarn).box_strength
    dump = next(stream for stream in result.streams if stream.name == f"{step.name} dump")
    dry = sum(line.amount for line in dump.lines if line.substance != "water")
    assert dry / dump.volume == pytest.approx(strength, rel=0.02)  # inert matter of the products is in it too
    assert dump.flow / dump.volume == pytest.approx(step.size_density - strength, rel=0.02)
    assert dump.volume > 1.03 * dump.flow
    assert dump.concentration("COD, organic") == pytest.approx(dump.loads["COD, organic"] / dump.volume)
    whole = result.streams[-1]
    assert whole.volume - whole.flow == pytest.approx(
        sum(
            stream.volume - stream.flow for stream in result.streams[:-1] if stream.name.startswith(step.name)
        )
    )
