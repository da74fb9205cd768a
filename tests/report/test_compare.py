"""Enquiries side by side: differences by hand, and sums that the quote already gives."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costing.cost.quote import GROUPS
from costing.report import Result, Table, work_out
from costing.report.compare import against_the_first, compare, in_short
from costing.settings.mill import Mill
from tests.example_mill import example_mill
from tests.report.demo import demo_mill, demo_result

NO_LOSS = {"leader_length": 0.0, "off_shade_length": 0.0}


def rinsed(water: float) -> tuple[Mill, Result]:
    """The example mill with cold water in the last rinse [L/kg], and no metre that is not sold."""
    mill = example_mill(
        recipe={"rinse after dyeing": {"rinse_water": water, "rinse_temperature": 20.0}},
        whole_machine=NO_LOSS,
    )
    return mill, work_out(mill, replace(mill.enquiries["E"], code=f"{water:g} L/kg"))


def row(table: Table, name: str, unit: str) -> list[float]:
    (found,) = [row[3:] for row in table.rows if row[1:3] == [name, unit]]
    return found


def test_two_litres_more_of_rinse_water_by_hand() -> None:
    (mill, first), (_, second) = rinsed(4.0), rinsed(6.0)
    table = compare(mill, [first, second])
    water = row(table, "Water", "L/kg")
    assert water[2] == pytest.approx(2.0, abs=1e-9)
    assert water[3] == pytest.approx(100.0 * 2.0 / water[0], rel=1e-9)
    assert row(table, "Flow to the drain", "L/kg")[2] == pytest.approx(2.0, abs=1e-9)
    assert row(table, "Power", "kWh/kg")[2:] == [0.0, 0.0]
    costs = mill.costs
    assert costs is not None
    # Cleaner yarn has a trace less of solids to dry, which the cans turn into a trace of steam.
    steam = row(table, "Steam", "kg/kg")[2]
    assert abs(steam) < 1e-4
    dearer = 2.0 * (costs.water_price + costs.effluent_charge) + steam * costs.steam_price
    dearer *= 1.0 + costs.overhead
    cost, price = row(table, "All cost", "EUR/kg"), row(table, "Price", "EUR/kg")
    assert cost[2] == pytest.approx(dearer, rel=1e-6)
    assert price[2] == pytest.approx(dearer / (1.0 - costs.margin), rel=1e-6)
    per_metre = first.ledger.plan.saleable_mass / first.ledger.plan.finished_length
    assert row(table, "Price", "EUR/m")[2] == pytest.approx(price[2] * per_metre, rel=1e-6)


@pytest.mark.parametrize("unit", ["EUR/kg", "EUR/m"])
def test_groups_add_up_to_the_cost_of_the_quote(unit: str) -> None:
    mill, results = demo_mill(), [demo_result(code) for code in ("Q-02", "B-01", "W-01")]
    table = compare(mill, results)
    groups = [row(table, group.capitalize(), unit) for group in GROUPS]
    basis = {"EUR/kg": "kg of grey yarn", "EUR/m": "m of finished cloth"}[unit]
    for item, at in zip(results, (0, 1, 4)):
        assert sum(group[at] for group in groups) == pytest.approx(item.quote.cost_on(basis), rel=1e-12)
        assert row(table, "Price", unit)[at] == pytest.approx(item.quote.price_on(basis), rel=1e-12)


def test_dyes_and_loads_are_those_of_their_own_tables() -> None:
    mill, results = demo_mill(), [demo_result("Q-02"), demo_result("B-01")]
    table = compare(mill, results)
    black = results[1].ledger.used("SULFUR-BLACK-LIQ") * mill.materials["SULFUR-BLACK-LIQ"].strength
    assert row(table, "Sulfur dye, active part", "g/kg") == [
        0.0,
        pytest.approx(1000.0 * black),
        pytest.approx(1000.0 * black),
        None,
    ]
    indigo = row(table, "Indigo, as 100 %", "g/kg")
    assert indigo[1] == pytest.approx(1000.0 * 0.94 * results[1].ledger.used("INDIGO-94"))
    assert indigo[2] < 0.0
    for name in ("sodium", "sulfate"):
        load = row(table, f"{name.capitalize()} to the drain", "g/kg")
        for item, at in zip(results, (0, 1)):
            assert load[at] == pytest.approx(1000.0 * item.streams[-1].loads[name])


def test_an_officer_sees_sulfide_dye_salt_and_what_a_litre_reads() -> None:
    results = [demo_result("Q-02"), demo_result("K-01")]
    table = compare(demo_mill(), results)
    for name, load in (
        ("Sulfide to the drain, as S", "sulfide, as S"),
        ("Unfixed dye to the drain", "unfixed dye"),
    ):
        for item, at in zip(results, (0, 1)):
            wanted = 1000.0 * item.streams[-1].loads[load]
            assert row(table, name, "g/kg")[at] == pytest.approx(wanted, abs=1e-12)
    salts = {
        "sodium_sulfate",
        "sodium_sulfite",
        "sodium_thiosulfate",
        "sodium_hydrosulfite",
        "sodium_carbonate",
    }
    salts |= {"sodium_bicarbonate", "sodium_bisulfite", "sodium_sulfide", "sodium_hydrosulfide"}
    for item, at in zip(results, (0, 1)):
        drain = item.streams[-1]
        by_hand = sum(line.amount for line in drain.lines if line.substance in salts)
        assert row(table, "Salt to the drain", "g/kg")[at] == pytest.approx(1000.0 * by_hand)
        for_both = [values[3 + at] for values in table.rows if values[1] == "COD, both, over all streams"]
        reads = 1e6 * drain.concentration("COD, both")
        assert for_both == pytest.approx([reads, reads])
        water = [values[3 + at] for values in table.rows if values[1] == "Water for the order"]
        assert water[0] == pytest.approx(item.ledger.used("water") * item.ledger.plan.saleable_mass / 1000.0)


def test_the_sulfur_dye_counts_as_dye_and_its_sulfide_as_reductant() -> None:
    (bottom,) = [demo_result("B-01")]
    groups = {(line.material, line.group) for line in bottom.quote.lines if line.step == "sulfur dyeing"}
    assert {("SULFUR-BLACK-LIQ", "dye"), ("SULFIDE-60", "reductant"), ("LYE-50", "caustic")} <= groups


def test_a_screen_gets_money_per_metre_the_rest_per_kilogram_and_no_row_of_noughts() -> None:
    table = in_short(compare(demo_mill(), [demo_result("Q-02"), demo_result("Q-05")]))
    units = {name: unit for name, unit, *_ in table.rows}
    assert units["Price"] == "EUR/m"
    assert units["Water"] in ("EUR/m", "L/kg")
    assert units["Range time"] in ("EUR/m", "h per 1000 kg")
    assert "Sulfur dye, active part" not in units
    assert len({(name, unit) for name, unit, *_ in table.rows}) == len(table.rows)


def test_each_enquiry_stands_against_the_first() -> None:
    results = [demo_result(code) for code in ("Q-02", "B-01", "Q-05")]
    table = against_the_first(compare(demo_mill(), results))
    first = results[0].quote.price_on("m of finished cloth")
    assert [row[0] for row in table.rows] == ["Q-02", "B-01", "Q-05"]
    assert table.rows[0][3:5] == [None, None]
    for item, row_ in zip(results[1:], table.rows[1:]):
        price = item.quote.price_on("m of finished cloth")
        assert row_[2:5] == pytest.approx([price, price - first, 100.0 * (price / first - 1.0)])
        assert row_[8] == pytest.approx(1000.0 * item.streams[-1].loads["COD, both"])
