"""The card of the shift: numbers by hand, and the ledger behind every one of them."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from costing.ledger.whole import Ledger, open_ledger
from costing.process.mixing import WATER
from costing.process.postings import STORE
from costing.quantities import InputError
from costing.reference_data import cautions
from costing.report import Table, work_out
from costing.report.range_card import USUAL, Ask, range_card
from costing.report.range_feeds import STOCK, Feed, running_feeds, taken
from costing.report.range_fills import fills
from costing.settings.mill import Mill
from costing.settings.steps import IndigoDyeing
from costing.settings.vessel_steps import VesselBath
from tests.example_mill import ROUTE, example_mill
from tests.ledger.strategies import mills
from tests.ledger.test_closure import opened
from tests.report.demo import demo_mill, demo_result

SOME = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
DYEING: dict[str, Any] = {
    "indigo_on_yarn": 2.0,
    "rinse_loss": 10.0,
    "stock_indigo": 100.0,
    "stock_hydrosulfite_ratio": 0.7,
    "stock_caustic_ratio": 0.45,
    "hydrosulfite_dosing": 120.0,
    "caustic_dosing": 150.0,
}
BATH: dict[str, Any] = {
    "pick_up_last": 0.9,  # takes along more than the feeds bring: nothing overflows
    "surface_oxygen": 2.0,
    "bath_surface": 10.0,
    "hydrosulfite_per_oxygen": 1.2,
    "circulation_oxygen": 1.0,
    "circulation_flow": 30.0,
    "decay_rate": 0.0,
}
BOXES = [*ROUTE[:4], ("oxidation", "treatment"), ("softener", "treatment"), ROUTE[4]]
ACETIC_PEROXIDE: dict[str, Any] = {
    "first_product": "PEROXIDE",
    "first_dose": 5.0,
    "second_product": "ACETIC",
    "second_dose": 3.0,
    "box_temperature": 40.0,
}
SOFTENER: dict[str, Any] = {
    "first_product": "SOFT",
    "first_dose": 20.0,
    "auxiliary_uptake": 0.0,
    "feed_ratio": 12.0,
    "box_temperature": 40.0,
}


def made(**asked: Any) -> tuple[dict[str, Table], Mill, Ledger]:
    """Tables of the card of the example mill, by their keys."""
    ask = asked.pop("ask", USUAL)
    mill = example_mill(**asked)
    result = work_out(mill, mill.enquiries["E"])
    return {table.key: table for table in range_card(mill, result, ask)}, mill, result.ledger


def dyed(ask: Ask = USUAL, **recipe: Any) -> tuple[dict[str, Table], Mill, Ledger]:
    return made(
        ask=ask,
        recipe={"indigo dyeing": {**DYEING, **recipe}},
        machine={"indigo dyeing": BATH, "rinse after scour": {"pick_up": 0.6}},
        route=ROUTE,
    )


def feed_row(table: Table, box: str, feed: str, product: str = "") -> list[Any]:
    (found,) = [row for row in table.rows if row[:3] == [box, feed, product]]
    return [found[3], *found[5:]]  # without mL/min: test_a_small_pump_is_set_in_millilitres


def test_the_stock_vat_is_weighed_by_strength_times_volume() -> None:
    """100 g/L in 1,000 L: 100 kg of indigo, 70 of hydrosulfite, 45 of caustic, all as 100 %."""
    tables, _, _ = dyed()
    feeds = tables["card_feeds"]
    for product, by_hand in (("INDIGO", 100.0 / 0.94), ("HYDRO", 70.0 / 0.88), ("LYE", 45.0 / 0.5)):
        assert feed_row(feeds, "indigo dyeing", "stock vat", product)[3] == pytest.approx(by_hand)
    half = dyed(Ask(vat=500.0))[0]["card_feeds"]
    assert feed_row(half, "indigo dyeing", "stock vat", "INDIGO")[3] == pytest.approx(50.0 / 0.94)
    assert half.columns[7].title == "For 500 L"
    (mark,) = [row for row in half.rows if row[1] == "stock vat" and row[2].startswith("water")]
    assert mark[7] == 500.0


def test_the_dosing_liquors_are_weighed_by_strength_times_volume() -> None:
    feeds = dyed()[0]["card_feeds"]
    assert feed_row(feeds, "indigo dyeing", "hydrosulfite dosing", "HYDRO")[3] == pytest.approx(120.0 / 0.88)
    assert feed_row(feeds, "indigo dyeing", "caustic dosing", "LYE")[3] == pytest.approx(150.0 / 0.5)


def test_lye_fed_as_it_is_delivered_gets_no_water() -> None:
    """757.5 g/L is lye of 50 % at 1.515 kg/L: a litre of it is 1.515 kg of product and nothing else."""
    feeds = dyed(caustic_dosing=757.5)[0]["card_feeds"]
    assert feed_row(feeds, "indigo dyeing", "caustic dosing", "LYE")[3] == pytest.approx(1515.0)
    assert [row for row in feeds.rows if row[1] == "caustic dosing" and row[2].startswith("water")] == []


def test_the_pump_of_the_stock_vat_by_hand() -> None:
    """Two per cent on the yarn, a tenth of what is applied lost in rinsing, 100 g/L in the vat."""
    tables, _, ledger = dyed()
    assert ledger.run.feeds["indigo dyeing"].overflow == 0.0
    per_minute = ledger.plan.around.throughput / 60.0
    litres = 0.02 / 0.9 / 0.1 * per_minute
    assert feed_row(tables["card_feeds"], "indigo dyeing", "stock vat")[0] == pytest.approx(litres)
    grams = feed_row(tables["card_feeds"], "indigo dyeing", "stock vat", "INDIGO")[2]
    assert grams == pytest.approx(1000.0 * 0.02 / 0.9 / 0.94 * per_minute)
    assert grams == pytest.approx(litres * 100.0 / 0.94)


def test_the_rinse_valve_by_hand() -> None:
    """Six litres for each kilogram."""
    tables, _, ledger = dyed()
    boxes = next(step.boxes for step in ledger.steps if step.name == "rinse after dyeing")  # type: ignore[union-attr]
    name = f"rinse water, last of {boxes:.0f} boxes"
    litres, cubic_metres, grams, weighed = feed_row(tables["card_feeds"], "rinse after dyeing", name)
    assert litres == pytest.approx(6.0 * ledger.plan.around.throughput / 60.0)
    assert cubic_metres == pytest.approx(6.0 * ledger.plan.around.throughput / 1000.0)
    assert grams is weighed is None


def test_a_small_pump_is_set_in_millilitres() -> None:
    """0.3 g/L of wetting agent in the bath that the yarn carries away: a few mL and g in a minute."""
    small = large = 0
    for code in demo_mill().enquiries:
        tables = {table.key: table for table in range_card(demo_mill(), demo_result(code))}
        for row in tables["card_feeds"].rows if "card_feeds" in tables else ():
            litres, millilitres, _, grams, _ = row[3:]
            assert litres is None or millilitres is None
            assert litres is None or litres >= 0.1
            assert millilitres is None or 0.0 < millilitres < 100.0
            large += litres is not None
            if millilitres is not None and row[2]:
                small += 1
                assert grams == pytest.approx(millilitres * demo_mill().materials[row[2]].density)
    assert small > 5
    assert large > 5


def test_what_is_tested_is_what_the_recipe_says() -> None:
    """26 degrees of the mercerising recipe come back from its 244.5 g/L."""
    tables = {table.key: table for table in range_card(demo_mill(), demo_result("M-01"))}
    rows = {(row[0], row[1]): row[2:] for row in tables["card_tests"].rows}
    assert rows["mercerising", "sodium hydroxide"] == pytest.approx([244.457, 26.0], rel=1e-5)
    assert rows["indigo dyeing", "indigo"] == pytest.approx([1.8, None])
    assert rows["indigo dyeing", "sodium hydrosulfite"] == pytest.approx([2.0, None])
    assert rows["indigo dyeing", "sodium hydroxide"] == pytest.approx([2.0, None])


def test_a_stop_of_two_hours_by_hand() -> None:
    """20 g of oxygen an hour: 40 g, 5.441 kg/kg for a mol on a mol, 1.2 mol on each; 2 NaOH with them."""
    tables, _, _ = dyed(Ask(stop=2.0))
    hydrosulfite = 0.040 * 1.2 * 5.441
    caustic = hydrosulfite * 2 * 39.997 / 174.10
    rows = {row[1]: row[2:] for row in tables["card_stop"].rows}
    assert rows["HYDRO"][0] == pytest.approx(hydrosulfite / 0.88, rel=1e-3)
    assert rows["LYE"][0] == pytest.approx(caustic / 0.5, rel=1e-3)
    # The pumps bring 30 g of oxygen an hour more: 1 g in each of 30 m3.
    assert rows["HYDRO"][1] == pytest.approx(2.5 * rows["HYDRO"][0], rel=1e-9)
    assert tables["card_stop"].title == "After a stop of 2 h"


def boxes_card(**asked: Any) -> tuple[dict[str, Table], Mill, Ledger]:
    tank = {"tank_volume": 1200.0}
    return made(
        recipe={"oxidation": ACETIC_PEROXIDE, "softener": SOFTENER},
        machine={"oxidation": tank, "softener": tank},
        route=BOXES,
        **asked,
    )


def test_the_softener_is_fed_at_twelve_times_its_bath() -> None:
    tables, _, _ = boxes_card()
    assert feed_row(tables["card_feeds"], "softener", "feed liquor", "SOFT")[3] == pytest.approx(12 * 20.0)
    softener = {row[2]: row[3:] for row in tables["card_fill"].rows if row[0] == "softener"}
    assert softener["SOFT"] == pytest.approx([20.0, 24.0, 24.0])
    assert softener["water"][1:] == pytest.approx([1200.0 - 24.0 * 0.75] * 2)


def test_oxidant_and_acid_are_never_put_into_one_tank() -> None:
    tables, mill, _ = boxes_card()
    rows = [row for row in tables["card_feeds"].rows if row[0] == "oxidation"]
    assert [row[1] for row in rows] == ["as delivered", "as delivered", "fresh water"]
    peroxide = feed_row(tables["card_feeds"], "oxidation", "as delivered", "PEROXIDE")
    (small,) = [row[4] for row in rows if row[2] == "PEROXIDE"]
    assert small == pytest.approx(peroxide[2] / mill.materials["PEROXIDE"].density)
    assert all(row[7] is None for row in rows)


def test_the_size_kettle_by_hand() -> None:
    """Grey yarn of 1/1.085 dry, 10 % add-on at 1.2 L/kg: 76.8 g/L of dry size, 95 % starch and 5 % wax."""
    tables, _, ledger = made(
        recipe={
            "size box": {
                "size_add_on": 10.0,
                "first_product": "STARCH",
                "first_share": 95.0,
                "second_product": "WAX",
                "second_share": 5.0,
            }
        },
        machine={"size box": {"pick_up": 1.2}},
        route=[("size box", "size"), ("drying", "drying")],
        ask=Ask(kettle=800.0),
    )
    dry = 0.10 / 1.085 / 1.2 * 800.0
    rows = {row[1]: row[2] for row in tables["card_size"].rows}
    assert rows["STARCH"] == pytest.approx(0.95 * dry / 0.88)
    assert rows["WAX"] == pytest.approx(0.05 * dry / 0.95)
    steam = taken(posting for posting in ledger.run.postings if posting[0] == "size box")
    assert 0.0 < rows[WATER] < 800.0 * 1.05 - dry
    assert steam[WATER] > 0.0
    assert "card_stop" not in tables
    assert [row[1] for row in tables["card_feeds"].rows] == ["size liquor"] * 3


def of_step(ledger: Ledger, step: str) -> dict[str, float]:
    return taken(posting for posting in ledger.run.postings if posting[0] == step)


def check_against_ledger(mill: Mill, ledger: Ledger) -> None:
    """What is fed is what the running lines take, product by product; water too, where a valve gives it."""
    feeds = running_feeds(ledger, mill.materials)
    for step in ledger.steps:
        here = [feed for feed in feeds if feed.step == step.name]
        wanted = of_step(ledger, step.name)
        for code in mill.materials:
            fed = sum(feed.products.get(code, 0.0) for feed in here)
            stock = sum(feed.products.get(code, 0.0) for feed in here if feed.name == STOCK)
            # A stock vat that brings more than the bath takes cannot be fed less of.
            assert fed == pytest.approx(max(wanted.get(code, 0.0), stock), rel=1e-9, abs=1e-12)
        water = sum(feed.water for feed in here)
        if any(not feed.products for feed in here) or not isinstance(step, IndigoDyeing):
            assert water == pytest.approx(max(0.0, wanted.get(WATER, 0.0)), rel=1e-9, abs=1e-9)
        else:  # liquors alone hold the level: what reactions make of water overflows
            assert water >= wanted.get(WATER, 0.0) - 1e-12
        check_strengths(step, here, mill)


def check_strengths(step: object, feeds: list[Feed], mill: Mill) -> None:
    if not isinstance(step, IndigoDyeing):
        return
    named = {feed.name: feed for feed in feeds}
    for name, code, strength in (
        ("stock vat", step.indigo_product, step.stock_indigo),
        ("hydrosulfite dosing", step.hydrosulfite_product, step.hydrosulfite_dosing),
        ("caustic dosing", step.caustic_product, step.caustic_dosing),
    ):
        feed = named.get(name)
        if feed is not None and feed.water and feed.volume:
            held = feed.products[code] * mill.materials[code].strength / feed.volume
            assert held == pytest.approx(strength, rel=1e-9)


@SOME
@given(mills())
def test_feeds_over_an_hour_are_what_the_ledger_takes_in_it(drawn: dict[str, Any]) -> None:
    mill, ledger = opened(drawn)
    check_against_ledger(mill, ledger)


@pytest.mark.parametrize("code", list(demo_mill().enquiries))
def test_grams_a_minute_are_the_kilograms_of_the_ledger(code: str) -> None:
    mill, result = demo_mill(), demo_result(code)
    check_against_ledger(mill, result.ledger)
    tables = {table.key: table for table in range_card(mill, result)}
    throughput = result.ledger.plan.around.throughput
    charged = tables["card_charge"].rows if "card_charge" in tables else []
    feeds = tables["card_feeds"].rows if "card_feeds" in tables else []
    for step in result.ledger.steps:
        wanted = of_step(result.ledger, step.name)
        shown: dict[str, float] = {}
        for row in feeds:
            if row[0] == step.name and row[6] is not None:
                shown[row[2]] = shown.get(row[2], 0.0) + row[6] * 60.0 / throughput / 1000.0
        for name, product, _, weighed in charged:
            if name == step.name and product != WATER:
                shown[product] = weighed / result.ledger.plan.around.charge_mass
        assert shown == pytest.approx({key: wanted[key] for key in shown})
        assert set(shown) == {key for key in wanted if key in mill.materials and wanted[key] > 1e-12}
    hourly = {row[0]: row[1] for row in tables["card_use"].rows}
    assert hourly == pytest.approx(
        {key: amount * throughput for key, amount in taken(result.ledger.run.postings).items()}
    )


@pytest.mark.parametrize("code", list(demo_mill().enquiries))
def test_the_first_fill_is_that_of_the_ledger(code: str) -> None:
    mill, result = demo_mill(), demo_result(code)
    mass = result.ledger.plan.saleable_mass
    found = fills(result.ledger, mill.materials)
    for fill in found:
        lines = [
            posting
            for posting in result.ledger.postings
            if (posting[0], posting[3], posting[5]) == (fill.step, "first fill", STORE)
        ]
        filled = {key: amount * mass for key, amount in taken(lines).items()}
        assert filled == pytest.approx({key: litre * fill.new for key, litre in fill.litre.items()})
    assert {fill.step for fill in found} >= {
        step.name for step in result.ledger.steps if step.KIND in ("scour", "indigo", "dye box", "treatment")
    }


def test_a_vessel_is_filled_by_charges() -> None:
    """5 % on the weight of a charge is a twentieth of it; what is dosed by the litre goes with the bath."""
    result = demo_result("V-01")
    tables = {table.key: table for table in range_card(demo_mill(), result)}
    assert "card_feeds" not in tables
    charge = result.ledger.plan.around.charge_mass
    baths = {step.name: step for step in result.ledger.steps if isinstance(step, VesselBath)}
    dye = baths["vessel dyeing"]
    weighed = {(row[0], row[1]): row[3] for row in tables["card_charge"].rows}
    assert dye.dye_offered is not None
    assert weighed["vessel dyeing", dye.batch_dye_product] == pytest.approx(dye.dye_offered * charge)
    for code, dose in baths["soaping"].products:
        assert weighed["soaping", code] == pytest.approx(dose * baths["soaping"].liquor_ratio * charge)
    first = baths["vessel scour"]
    assert 0.9 * first.liquor_ratio * charge < weighed["vessel scour", WATER] < first.liquor_ratio * charge


def test_the_card_prints_the_cautions_of_what_is_handled() -> None:
    tables = {table.key: table for table in range_card(demo_mill(), demo_result("T-01"))}
    concerns = {row[0] for row in tables["card_cautions"].rows}
    for key in ("general", "caustic", "hydrosulfite", "sulfide", "peroxide", "steam", "mixing"):
        assert cautions()[key].name in concerns
    assert cautions()["discharge"].name not in concerns
    assert "safety data sheet" in tables["card"].note
    assert tables["card"].note.startswith("Estimate")
    assert "not a safety data sheet" in tables["card_cautions"].note


def test_a_route_without_a_step_is_refused_in_words() -> None:
    mill = example_mill()
    mill.routes["rope indigo"] = []
    with pytest.raises(InputError, match="its route 'rope indigo' has no step"):
        range_card(mill, work_out(mill, mill.enquiries["E"]))
    assert open_ledger(mill, mill.enquiries["E"]).steps == []


def test_the_hours_of_the_lot_are_told_at_speed_and_as_they_pass() -> None:
    """Use in an hour is of running at speed: its hours are the dyed mass over the throughput."""
    result = demo_result("Q-01")
    about = {row[0]: row[1] for row in range_card(demo_mill(), result, Ask())[0].rows}
    plan = result.ledger.plan
    at_speed = plan.grey_mass_dyed / plan.around.throughput
    assert f"{at_speed:.1f} h at speed, {at_speed / 0.82:.1f} h at an efficiency of 82 %" in about["lot"]
