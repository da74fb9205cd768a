"""Quotes of the invented demo mill against published ranges and common practice.

A quote outside its range must not be mended by moving the range.
"""

from __future__ import annotations

from functools import cache

import pytest

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.closure import gaps
from costing.process.postings import CONDENSATE
from costing.process.steam import ideal_steam_per_water_evaporated
from costing.reference_data import published_ranges
from costing.report import Result, work_out
from costing.settings.mill import Mill
from costing.settings.steps import Drying, IndigoDyeing


@cache
def mill() -> Mill:
    return read_book(demo_book())


@cache
def result(code: str) -> Result:
    return work_out(mill(), mill().enquiries[code])


CODES = list(mill().enquiries)


def substance_of_dye(code: str) -> str:
    recipe = mill().enquiries[code].recipe
    entries = mill().recipe_steps[recipe, "indigo dyeing"]
    return mill().materials[str(entries["indigo_product"].value)].substance


def within(value: float, key: str) -> bool:
    row = published_ranges()[key]
    return row.low <= value <= row.high


def pure_used(code: str, *substances: str) -> float:
    used = result(code).ledger.used
    return sum(
        used(item.code) * item.strength for item in mill().materials.values() if item.substance in substances
    )


def test_the_demo_is_as_large_as_promised() -> None:
    book = mill()
    assert len(book.styles) >= 6
    assert len(book.recipes) >= 4
    assert len(book.ranges) >= 2
    assert len(book.materials) >= 20


@pytest.mark.parametrize("code", CODES)
def test_every_demo_ledger_closes(code: str) -> None:
    assert max(gaps(result(code).ledger.lines, mill().materials).values()) < 1e-9


@pytest.mark.parametrize("code", ["Q-02", "Q-04"])
def test_water_of_the_conventional_recipe(code: str) -> None:
    """indigo-water-2025: rope dyeing usually takes 15 to 20 L/kg; long orders, as an average mill runs."""
    assert within(result(code).ledger.used("water"), "water_rope_usual")


def test_good_practice_reaches_five_litres() -> None:
    """indigo-water-2025: best practice of rope dyeing is 3.85 L/kg."""
    best = min(result(code).ledger.used("water") for code in CODES)
    assert published_ranges()["water_rope_best"].low <= best < 5.0


def is_indigo(code: str) -> bool:
    return any(isinstance(step, IndigoDyeing) for step in result(code).ledger.steps)


@pytest.mark.parametrize("code", [code for code in CODES if is_indigo(code)])
def test_hydrosulfite_per_indigo(code: str) -> None:
    ratio = pure_used(code, "sodium_hydrosulfite") / pure_used(code, "indigo", "leuco_indigo")
    (step,) = [step for step in result(code).ledger.steps if isinstance(step, IndigoDyeing)]
    # What a cell or another reductant spares, 0.6638 kg for each kg of dye, the range counts in.
    ratio += 0.6638 * (step.other_reduction_share or 0.0)
    if substance_of_dye(code) == "indigo":
        assert within(ratio, "hydrosulfite_per_indigo_powder")
    else:
        assert within(ratio / 0.88, "hydrosulfite_per_indigo_prereduced")


@pytest.mark.parametrize("code", CODES)
def test_steam_per_water_evaporated(code: str) -> None:
    ledger = result(code).ledger
    cans = next(step.name for step in ledger.steps if isinstance(step, Drying))
    steam = sum(line.amount for line in ledger.lines if line.step == cans and line.destination == CONDENSATE)
    water = sum(
        line.amount
        for line in ledger.lines
        if line.step == cans and line.destination == "air" and line.source == "process"
    )
    floor = ideal_steam_per_water_evaporated(ledger.plan.around.steam_pressure, 100.0)
    assert floor < steam / water < published_ranges()["steam_per_evaporated"].high


def test_cloth_is_denim() -> None:
    for code in CODES:
        ounces = result(code).ledger.fabric.finished_areal_mass * 1000 / 33.90575
        assert 6.0 <= ounces <= 16.0, code


def test_short_orders_cost_more() -> None:
    """Same style, recipe and range: 3,000 m against 60,000 m, 8,000 m against 40,000 m."""
    for short, long in (("Q-03", "Q-04"), ("Q-01", "Q-02")):
        first, second = mill().enquiries[short], mill().enquiries[long]
        assert (first.style, first.recipe, first.range) == (second.style, second.recipe, second.range)
        assert result(short).quote.cost_per_kg > result(long).quote.cost_per_kg


@pytest.mark.parametrize("code", ["Q-02", "Q-04"])
def test_wash_water_of_the_conventional_recipe(code: str) -> None:
    """Ranges told from memory, to be verified: they judge an order of magnitude, no more."""
    (wash,) = [stream for stream in result(code).streams if stream.name == "rinse after dyeing"]
    for parameter, key in (
        ("COD, both", "indigo_wash_cod"),
        ("sulfate", "indigo_wash_sulfate"),
        ("sulfite", "indigo_wash_sulfite"),
    ):
        assert published_ranges()[key].unit == "mg/L"
        assert within(1e6 * wash.concentration(parameter), key), parameter


@pytest.mark.parametrize("code", ["Q-02", "Q-04"])
def test_oxygen_demand_of_a_kilogram_of_yarn(code: str) -> None:
    """unido-yarn-sheet: 62.7 kg/t is the median of all work on yarn; a dye range alone stays below."""
    load = result(code).streams[-1].loads["COD, both"] * 1000.0
    assert 0.3 * 62.7 < load < published_ranges()["yarn_mill_cod_load"].high
