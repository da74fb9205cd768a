"""The invented mill: what its sheet files say is what the reader gives, and every enquiry can be quoted."""

from __future__ import annotations

from typing import Any

import pytest
from openpyxl import load_workbook

from costing.book.layout import GENERAL
from costing.book.lye_scale import concentration
from costing.cost.quote import quote
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.layout import column_sheet, table_sheet
from costing.front_ends.workbook.read import read_book
from costing.ledger.closure import gaps
from costing.ledger.whole import Ledger, open_ledger
from costing.process.postings import STORE
from costing.quantities import QUANTITIES
from costing.reference_data import default, published_ranges
from costing.settings.building import Assumption, Entry
from costing.settings.lye_dose import LyeStrength
from costing.settings.mill import Mill
from tests.tools.make_unit_table import WANTED, registry

UNITS = registry()
OUNCES = 29.493523  # oz/yd2 in one kg/m2


@pytest.fixture(scope="module")
def mill() -> Mill:
    return read_book(demo_book())


def enquiry_codes() -> list[str]:
    return [demo["code"] for demo in table_sheet("enquiries").tables[0].demos]


def ledger_of(mill: Mill, code: str) -> Ledger:
    return open_ledger(mill, mill.enquiry(code))


def test_the_demo_is_as_large_as_a_small_mill(mill: Mill) -> None:
    assert len(mill.styles) >= 6
    assert len(mill.recipes) >= 4
    assert len(mill.ranges) >= 2
    assert len(mill.materials) >= 20
    assert len(mill.enquiries) >= 8
    lengths = {(item.style, item.recipe, item.order_length) for item in mill.enquiries.values()}
    assert {("D-1350", "DARK-POWDER", 3000.0), ("D-1350", "DARK-POWDER", 60000.0)} <= lengths
    assert {("D-1200", "DARK-POWDER", 8000.0), ("D-1200", "DARK-POWDER", 40000.0)} <= lengths


def test_everything_invented_says_so(mill: Mill) -> None:
    for table in (mill.styles, mill.recipes, mill.ranges, mill.materials):
        assert all(item.description.endswith("invented") for item in table.values())


def in_house_unit(name: str, value: Any, unit: str) -> Any:
    if isinstance(value, str) and value.endswith(" °Bé"):  # tests/book/test_lye_scale.py has the figure
        return LyeStrength(concentration(float(value.split()[0]), "°Bé"), value)
    if name in QUANTITIES:
        given = UNITS.Quantity(float(value), WANTED[unit.replace("°", "deg")])
        return pytest.approx(given.to(WANTED[QUANTITIES[name].unit], "textile").magnitude, rel=1e-12)
    return value


@pytest.mark.parametrize("name", ["styles", "recipes", "ranges"])
def test_columns_read_back_as_they_were_given(mill: Mill, name: str) -> None:
    layout = column_sheet(name)
    units = {(row.part, row.name): row.unit for row in layout.rows}
    seen = 0
    for demo in layout.demos:
        for (part, field), value in demo.values.items():
            if name == "styles" or part == GENERAL:
                read = getattr(getattr(mill, name)[demo.code], field)
            else:
                steps = mill.recipe_steps if name == "recipes" else mill.range_steps
                read = steps[demo.code, part][field].value
            assert read == in_house_unit(field, value, units[part, field]), (demo.code, part, field)
            seen += 1
    assert seen > 50


def test_materials_read_back_as_they_were_given(mill: Mill) -> None:
    for given in table_sheet("materials").tables[0].demos:
        read = mill.material(given["code"])
        for field in ("description", "role", "remainder"):
            assert getattr(read, field) == given[field]
        if read.code not in mill.offers:
            assert (read.price_date, read.currency) == (given["price_date"], given["currency"])
        for field in ("substance", "caution", "dye_class"):
            assert getattr(read, field) == given.get(field, "")
        assert read.strength == pytest.approx(given["strength"] / 100.0)
        for field in ("alkali", "own_oxygen_demand", "own_sodium", "own_sulfur", "own_nitrogen"):
            assert getattr(read, field) == pytest.approx(given.get(field, 0.0))


@pytest.mark.parametrize(
    ("code", "kilograms"),
    [("HYDRO-90", 1.0), ("FLAKE-98", 1000.0), ("WEFT-10", 0.45359237), ("LYE-50", 1.515)],
)
def test_prices_come_by_the_kilogram(mill: Mill, code: str, kilograms: float) -> None:
    """Per kg, t, lb, and per litre through the density of 1.515 kg/L."""
    given = next(row for row in table_sheet("materials").tables[0].demos if row["code"] == code)
    assert mill.material(code).price == pytest.approx(given["price"] / kilograms)
    assert mill.material(code).freight == pytest.approx(given["freight"] / kilograms)
    assert mill.material(code).price_by == given["per"]


def test_units_of_an_enquiry_are_converted(mill: Mill) -> None:
    yards = mill.enquiry("Q-09")
    assert yards.order_length == pytest.approx(30000 * 0.9144)
    assert yards.stoppage_time == pytest.approx(20 / 60)
    assert yards.margin == pytest.approx(0.09)
    assert mill.enquiry("Q-01").margin is None


def test_an_empty_cell_takes_the_typical_value_and_is_listed(mill: Mill) -> None:
    assert mill.style("D-1100").warp_waste == default("cloth.warp_waste").value
    assert Assumption("style D-1100", "cloth.warp_waste") in mill.assumptions
    assert Assumption("style D-1200", "cloth.warp_waste") not in mill.assumptions
    assert mill.enquiry("Q-08").stoppages == default("lot.stoppages").value
    assert Assumption("enquiry Q-08", "lot.stoppages") in mill.assumptions
    assert Assumption("range ROPE-A", "general.atmospheric_pressure") in mill.assumptions


def test_every_value_knows_its_cell(mill: Mill) -> None:
    book = load_workbook(demo_book())
    entries: list[Entry] = [
        entry
        for steps in (mill.recipe_steps, mill.range_steps)
        for step in steps.values()
        for entry in step.values()
    ]
    filled = [entry for entry in entries if entry.value is not None]
    assert len(filled) > 100
    for entry in entries:
        title, place = entry.where.split("!")
        assert (book[title][place].value is None) == (entry.value is None)
    for (_, code), where in mill.places.items():
        title, place = where.split("!")
        assert book[title][place].value == code


@pytest.mark.parametrize("code", enquiry_codes())
def test_every_enquiry_is_quoted_and_its_ledger_closes(mill: Mill, code: str) -> None:
    ledger = ledger_of(mill, code)
    assert mill.costs is not None
    offer = quote(ledger, mill.materials, mill.costs)
    assert 0 < offer.cost_per_kg < offer.price_per_kg
    assert offer.not_priced == ()
    assert max(gaps(ledger.lines, mill.materials).values()) < 1e-9


@pytest.mark.parametrize("code", enquiry_codes())
def test_the_cloths_weigh_what_their_names_say(mill: Mill, code: str) -> None:
    ledger = ledger_of(mill, code)
    said = float(ledger.style.description.split(" oz")[0])
    assert ledger.fabric.finished_areal_mass * OUNCES == pytest.approx(said, abs=0.25)
    assert 10.75 <= said <= 14.25


def water(ledger: Ledger) -> float:
    return sum(line.amount for line in ledger.lines if line.material == "water" and line.source == STORE)


def reductant_per_dye(mill: Mill, ledger: Ledger) -> float:
    def pure(*substances: str) -> float:
        return sum(
            ledger.used(code) * item.strength
            for code, item in mill.materials.items()
            if item.substance in substances
        )

    return pure("sodium_hydrosulfite") / pure("indigo", "leuco_indigo")


@pytest.mark.parametrize("code", ["Q-01", "Q-02", "Q-04", "Q-10"])
def test_the_usual_recipe_on_the_older_range_takes_the_usual_water(mill: Mill, code: str) -> None:
    usual = published_ranges()["water_rope_usual"]
    assert usual.low <= water(ledger_of(mill, code)) <= usual.high


def test_good_practice_settings_reach_less_than_five_litres(mill: Mill) -> None:
    assert water(ledger_of(mill, "Q-05")) < 5.0
    assert water(ledger_of(mill, "Q-05")) > published_ranges()["water_rope_best"].low


@pytest.mark.parametrize("code", ["Q-01", "Q-02", "Q-03", "Q-04", "Q-05", "Q-07", "Q-08", "Q-10"])
def test_powder_and_paste_take_the_usual_hydrosulfite(mill: Mill, code: str) -> None:
    usual = published_ranges()["hydrosulfite_per_indigo_powder"]
    assert usual.low <= reductant_per_dye(mill, ledger_of(mill, code)) <= usual.high


def test_a_small_lot_costs_more_than_a_large_one(mill: Mill) -> None:
    assert mill.costs is not None
    small, large = (
        quote(ledger_of(mill, code), mill.materials, mill.costs).cost_per_kg for code in ("Q-03", "Q-04")
    )
    assert small > 1.1 * large


def test_reading_twice_gives_the_same_mill_and_the_same_file() -> None:
    before = demo_book().read_bytes()
    assert read_book(demo_book()) == read_book(demo_book())
    assert demo_book().read_bytes() == before
