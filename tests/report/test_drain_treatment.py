"""Tables of the treatment of a point, the salt of its loop, and what an enquiry pays for its water."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest

from costing.effluent.arriving import loads_taken_in
from costing.quantities import InputError
from costing.report import Result, Table, work_out
from costing.report.drain_charge import charge_table, loop_of, reuse_table, whole_recovery
from costing.report.drain_point import PointResult, work_out_point
from costing.report.drain_treatment import (
    acid_demand_table,
    treatment_remarks_table,
    treatment_sums_table,
    treatment_table,
)
from costing.settings.mill import Mill
from costing.settings.treatment_train import BUILT, PLANNED, SewerCharge, TrainStage, TreatmentPrices
from tests.report.demo import demo_mill

CODES = ("Q-02", "B-01", "K-01")  # of the plan of the demo
ACID = TrainStage("PIT", 1, "neutralisation with sulfuric acid", BUILT, {"target_acidity": 8.0}, where="T!C9")
SLUDGE = TrainStage("PIT", 2, "activated sludge, denim", own_removal={"suspended solids": 0.85})
MEMBRANE = TrainStage("PIT", 3, "nanofiltration behind biology", PLANNED, {"water_recovery": 0.75})
TERMS = SewerCharge("PIT", None, 0.30e-3, 0.40e-3, 0.20e-3, 0.25e-3, 500e-6, 250e-6, 9000.0, 0.1e-3)
RESULTS: dict[str, Result] = {}


@pytest.fixture
def mill() -> Mill:
    found = replace(demo_mill())
    found.keep_drain(deepcopy(demo_mill().drain))
    found.drain.stages = [ACID, SLUDGE, MEMBRANE]
    found.drain.charges.clear()
    found.drain.prices = {"PIT": TreatmentPrices("PIT", returned_share=0.4, salt_ceiling=0.0015)}
    return found


def result(code: str) -> Result:
    if code not in RESULTS:
        RESULTS[code] = work_out(demo_mill(), demo_mill().enquiries[code])
    return RESULTS[code]


def point(mill: Mill) -> PointResult:
    return work_out_point(mill, "PIT", result)


def without_air(mill: Mill) -> None:
    mill.drain.points["PIT"] = replace(mill.drain.points["PIT"], pit_transfer=0.0, drain_transfer=0.0)


def cells(table: Table | None, row: int) -> dict[str, Any]:
    assert table is not None
    return {f"{item.title} {item.unit}".strip(): value for item, value in zip(table.columns, table.rows[row])}


def test_every_stage_and_the_ends_of_both_trains(mill: Mill) -> None:
    table = treatment_table(mill, point(mill))
    assert table is not None
    assert [row[:2] for row in table.rows if row[0] == "built"] == [
        ["built", "behind the pit"],
        ["built", "1 neutralisation with sulfuric acid"],
        ["built", "2 activated sludge, denim"],
        ["built", "the end"],
        ["built", "the end"],
    ]
    assert len(table.rows) == 5 + 6
    came, acid, end = (cells(table, row) for row in (0, 1, 2))
    assert end["COD kg/day"] < 0.25 * came["COD kg/day"]
    assert end["Sodium kg/day"] == pytest.approx(came["Sodium kg/day"])
    low, high = (cells(table, row)["COD kg/day"] for row in (3, 4))
    assert high < end["COD kg/day"] < low
    assert acid["pH"] == pytest.approx(8.0, abs=1e-6)


def test_acid_and_its_sulfate_have_lines_of_their_own(mill: Mill) -> None:
    found = point(mill)
    table = treatment_table(mill, found)
    sums = treatment_sums_table(mill, found)
    assert sums is not None
    typical = {row[1]: row[4] for row in sums.rows if row[0] == "built"}
    rise = cells(table, 1)["Sulfate kg/day"] - cells(table, 0)["Sulfate kg/day"]
    assert typical["sulfate from acid"] == pytest.approx(rise)
    assert rise > 0.0
    assert typical["sulfate from acid"] == pytest.approx(
        typical["sulfuric acid (100 %)"] * 96.06 / 98.08, rel=1e-4
    )
    assert typical["sludge, as cake"] * 1000 == pytest.approx(typical["sludge, dry solids"] / 0.20)


def test_what_is_priced_adds_up(mill: Mill) -> None:
    mill.drain.prices["PIT"] = TreatmentPrices("PIT", 0.12, None, None, 0.06, 0.6, 0.0003)
    table = treatment_sums_table(mill, point(mill))
    assert table is not None
    built = [row for row in table.rows if row[0] == "built"]
    *lines, total = built
    assert total[1] == "all that is priced"
    priced = [row for row in lines if row[6] is not None]
    assert [row[1] for row in priced] == [
        "sulfuric acid (100 %)",
        "sludge, as cake",
        "oxygen for biology",
        "other power",
    ]
    assert total[7] == pytest.approx(sum(row[4] * row[6] for row in priced))


def test_a_pit_is_not_equalised_twice(mill: Mill) -> None:
    before = treatment_table(mill, point(mill))
    mill.drain.stages.insert(0, TrainStage("PIT", 1, "equalisation", where="Treatment!A9"))
    found = point(mill)
    assert treatment_table(mill, found) == before
    remarks = treatment_remarks_table(mill, found)
    assert remarks is not None
    assert any("Treatment!A9: the pit of PIT is the equalisation" in row[2] for row in remarks.rows)
    mill.drain.points["PIT"] = replace(mill.drain.points["PIT"], pit_volume=0.0)
    assert next(stage.step for stage in point(mill).treatment.stages) == "equalisation"


def test_acid_on_sulfide_is_refused_with_its_cell_and_the_rest_still_shown(mill: Mill) -> None:
    without_air(mill)
    found = point(mill)
    assert found.train is None
    assert treatment_table(mill, found) is None
    remarks = treatment_remarks_table(mill, found)
    assert remarks is not None
    refused = [row[2] for row in remarks.rows if row[1] == "refused"]
    assert refused[0].startswith("T!C9: the water holds")
    assert "hydrogen sulfide" in refused[0]
    demand = acid_demand_table(mill, found)
    assert demand is not None
    assert [row[2] for row in demand.rows] == [None, None]
    assert all("hydrogen sulfide free, which kills" in row[4] for row in demand.rows)


def test_acid_demand_is_answered_without_a_train(mill: Mill) -> None:
    mill.drain.stages.clear()
    found = point(mill)
    assert treatment_table(mill, found) is None
    assert found.planned is None
    table = acid_demand_table(mill, found)
    assert table is not None
    amounts = {(row[0], row[1], row[3]): row[2] for row in table.rows}
    acid, gas = (
        amounts["sulfuric acid", "acid (100 %)", "kg"],
        amounts["carbon dioxide", "gas that the water takes", "kg"],
    )
    sulfate = amounts["sulfuric acid", "sulfate that it adds", "kg"]
    assert sulfate == pytest.approx(acid * 96.06 / 98.08, rel=1e-4)
    assert gas > 0.0
    # A mol of gas at 25 degC and 1 atm is 24.465 L; a tenth of the flue gas, half of it taken.
    flue = amounts["carbon dioxide", "flue gas", "m3"]
    assert flue == pytest.approx(gas / 44.01 * 24.465 / 0.10 / 0.50, rel=1e-3)


@pytest.mark.parametrize("salt", ["sodium", "sulfate", "dissolved solids"])
def test_salt_of_the_loop_balances(mill: Mill, salt: str) -> None:
    """What the range adds leaves with the concentrate and with the treated water that does not come back."""
    found = point(mill)
    assert found.planned is not None
    assert found.planned.train is not None
    train = found.planned.train
    fresh = loads_taken_in(found.point, 1.0)[salt]
    recovery = whole_recovery(train)
    share = 0.4 * recovery
    loop = loop_of(train, salt, fresh, share)
    passing = loop.feed * (1.0 - loop.rejection)
    leaves = (recovery - share) * passing + (1.0 - recovery) * loop.concentrate
    assert leaves == pytest.approx(loop.added + (1.0 - share) * fresh, rel=1e-9)
    assert loop.feed == pytest.approx(loop.taken + loop.added, rel=1e-9)


def test_the_largest_reuse_meets_the_ceiling(mill: Mill) -> None:
    table = reuse_table(mill, point(mill))
    most = {row[0]: row[-1] for row in table.rows if row[1] == "Dissolved solids"} if table else {}
    assert 0.0 < most["built"] < most["planned"] < 100.0
    for name, row in (("built", 3), ("planned", 7)):
        mill.drain.prices["PIT"] = TreatmentPrices(
            "PIT", returned_share=most[name] / 100, salt_ceiling=0.0015
        )
        assert cells(reuse_table(mill, point(mill)), row)["In water taken mg/L"] == pytest.approx(1500.0)


def test_an_enquiry_pays_for_its_own_water_and_the_costs_add_up(mill: Mill) -> None:
    mill.drain.charges["PIT"] = TERMS
    plain = {code: result(code).quote for code in CODES}
    for code in CODES:
        offer = work_out(mill, mill.enquiries[code])
        assert offer.effluent is not None
        assert sum(line.cost for line in offer.quote.lines) == pytest.approx(offer.quote.cost_per_kg)
        lines = [line for line in offer.quote.lines if line.group == "effluent"]
        was = [line for line in plain[code].lines if line.group == "effluent"]
        assert [(line.step, line.cause, line.amount) for line in lines] == [
            (line.step, line.cause, line.amount) for line in was
        ]
        assert {line.material for line in lines} == {"effluent to PIT"}
        assert {line.unit_price for line in lines} == {offer.effluent.price}
        more = sum(line.cost for line in lines) - sum(line.cost for line in was)
        overhead = 1.0 + mill.costs.overhead if mill.costs else 1.0
        assert offer.quote.cost_per_kg - plain[code].cost_per_kg == pytest.approx(more * overhead, abs=1e-12)
        assert "by strength of its own water" in offer.remarks[0].text


def test_the_charge_of_a_quote_is_that_of_the_table_and_by_hand(mill: Mill) -> None:
    mill.drain.charges["PIT"] = TERMS
    mill.drain.stages.clear()
    table = charge_table(mill, point(mill))
    assert table is not None
    for number, code in enumerate(CODES):
        row = cells(table, number)
        by_hand = 0.70 + 0.20 * row["COD collected mg/L"] / 500
        by_hand += 0.25 * row["Solids collected mg/L"] / 250
        assert row["Sewer EUR/m3"] == pytest.approx(by_hand)
        offer = work_out(mill, mill.enquiries[code])
        assert offer.effluent is not None
        assert 1000 * offer.effluent.price == pytest.approx(by_hand + 0.1)
    prices = [row[6] for row in table.rows[:3]]
    dirt = [row[2] / 500 * 0.20 + row[3] / 250 * 0.25 for row in table.rows[:3]]
    assert sorted(prices) == [price for _, price in sorted(zip(dirt, prices))]
    assert table.rows[-1][0] == "bill"
    assert table.rows[-1][-1] >= 9000.0


def test_other_enquiries_do_not_change_by_a_bit(mill: Mill) -> None:
    mill.drain.charges["PIT"] = TERMS
    for code in ("Q-01", "Q-06"):
        assert code not in {row.enquiry for row in mill.drain.production}
        assert work_out(mill, mill.enquiries[code]).quote == result(code).quote
    mill.drain.charges.clear()
    for code in CODES:
        assert work_out(mill, mill.enquiries[code]).quote == result(code).quote


def test_a_refused_drain_is_said_beside_the_price_of_the_mill(mill: Mill) -> None:
    mill.keep_drain(InputError("Treatment!C9", "no step"))
    offer = work_out(mill, mill.enquiries["Q-02"])
    assert offer.quote == result("Q-02").quote
    assert offer.remarks[0].kind == "warning"
    assert "Treatment!C9" in offer.remarks[0].text
