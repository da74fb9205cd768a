"""Dye reduced beside hydrosulfite: every amount worked by hand from the formulas."""

from __future__ import annotations

from typing import Any

import pytest

from costing.ledger.remarks import remarks
from costing.ledger.whole import Ledger, open_ledger
from costing.process.bath_fill import DyeLiquor, post_liquor
from costing.process.postings import AIR, POWER, Book
from costing.quantities import InputError
from costing.settings.building import Assumption
from costing.settings.mill import Mill
from costing.settings.steps import IndigoDyeing
from tests.example_mill import ROUTE, example_mill

DYE = "indigo dyeing"
# Dry yarn takes every feed along, so nothing overflows, and without rinse loss 20 g/kg of dye are fed.
PLAIN = {"rinse_loss": 0.0, "stock_hydrosulfite_ratio": 0.0, "stock_caustic_ratio": 0.0}
ELECTROLYSIS = {"other_reduction": "electrolysis", "other_reduction_share": 100.0, "electrolysis_energy": 2.0}
GLUCOSE = {
    "other_reduction": "glucose",
    "other_reduction_share": 100.0,
    "other_reductant_product": "GLUCOSE",
}
THIOUREA = {
    "other_reduction": "thiourea dioxide",
    "other_reduction_share": 100.0,
    "other_reductant_product": "TUD",
}


def opened(**recipe: Any) -> Ledger:
    mill = example_mill(recipe={DYE: {**PLAIN, **recipe}}, route=ROUTE[2:])
    return open_ledger(mill, mill.enquiries["E"])


def grams(ledger: Ledger, substance: str, source: str = "store") -> float:
    """Of a substance that the run takes from an account [g/kg]."""
    return 1000 * sum(
        line.amount
        for line in ledger.run.lines
        if line.step == DYE and line.substance == substance and line.source == source
    )


def test_electrolysis_takes_power_and_gives_oxygen_to_the_air() -> None:
    """20 g/kg of indigo are 20 / 262.268 = 0.076258 mol.

    Hydrosulfite saved 0.076258 x 174.096 = 13.2762 g, caustic 2 x 0.076258 x 39.997 = 6.1002 g; power
    20 g x 2 kWh/kg = 0.04 kWh; oxygen 0.5 x 0.076258 x 31.998 = 1.2200 g, and sulfite 0 instead of
    2 x 0.076258 x 126.037 = 19.2226 g from the dye.
    """
    without, cell = opened(), opened(**ELECTROLYSIS)
    saved = {
        name: grams(without, name) - grams(cell, name) for name in ("sodium_hydrosulfite", "sodium_hydroxide")
    }
    assert saved["sodium_hydrosulfite"] == pytest.approx(13.2762, abs=1e-4)
    assert saved["sodium_hydroxide"] == pytest.approx(6.1002, abs=1e-4)
    power = sum(line.amount for line in cell.run.lines if line.cause == "reduces the dye in the cell")
    assert power == pytest.approx(0.04, rel=1e-9)
    oxygen = sum(
        line.amount
        for line in cell.run.lines
        if line.destination == AIR and line.substance == "oxygen" and line.cause == "reduces the dye"
    )
    assert 1000 * oxygen == pytest.approx(1.2200, abs=1e-4)
    made = grams(without, "sodium_sulfite", "reaction") - grams(cell, "sodium_sulfite", "reaction")
    assert made == pytest.approx(19.2226, abs=2e-4)


def test_glucose_takes_half_the_caustic_that_hydrosulfite_takes() -> None:
    """One mol of caustic for each indigo instead of two.

    0.076258 mol x 180.156 = 13.7383 g of glucose and 0.076258 x 39.997 = 3.0501 g of caustic, which is
    3.0501 g less than with hydrosulfite; 0.076258 x 218.137 = 16.6347 g of gluconate.
    """
    without, sugar = opened(), opened(**GLUCOSE)
    assert grams(sugar, "glucose") == pytest.approx(13.7383, abs=1e-4)
    caustic = grams(without, "sodium_hydroxide") - grams(sugar, "sodium_hydroxide")
    assert caustic == pytest.approx(3.0501, abs=1e-4)
    assert grams(sugar, "sodium_gluconate", "reaction") == pytest.approx(16.6347, abs=2e-4)


def test_thiourea_dioxide_leaves_urea_and_half_the_sulfite() -> None:
    """It takes the caustic that hydrosulfite takes.

    0.076258 mol: 8.2446 g of thiourea dioxide (108.115), the caustic that hydrosulfite takes, 4.5797 g of
    urea (60.056), and 9.6113 g of sulfite (126.037) where hydrosulfite makes twice that.
    """
    without, other = opened(), opened(**THIOUREA)
    assert grams(other, "thiourea_dioxide") == pytest.approx(8.2446, abs=1e-4)
    assert grams(other, "urea", "reaction") == pytest.approx(4.5797, abs=1e-4)
    assert grams(without, "sodium_hydroxide") == pytest.approx(grams(other, "sodium_hydroxide"), abs=1e-9)
    less = grams(without, "sodium_sulfite", "reaction") - grams(other, "sodium_sulfite", "reaction")
    assert less == pytest.approx(9.6113, abs=2e-4)


def test_a_share_counts_for_both_reductions() -> None:
    """The second reduction is of what dissolves back.

    40 % of 20 g fed and of 2 g that dissolve back: 8.8 g, so 8.8 x 180.156 / 262.268 = 6.0449 g of
    glucose; hydrosulfite for the rest is 13.2 x 0.66381 = 8.7623 g.
    """
    ledger = opened(**{**GLUCOSE, "other_reduction_share": 40.0, "redissolved": 10.0})
    assert grams(ledger, "glucose") == pytest.approx(6.0449, abs=1e-4)
    reducing = [
        line.amount
        for line in ledger.run.lines
        if line.substance == "sodium_hydrosulfite"
        and line.source == "store"
        and line.cause in ("reduces the dye", "reduces redissolved dye again")
    ]
    assert 1000 * sum(reducing) == pytest.approx(8.7623, abs=1e-4)


def test_a_fill_is_reduced_the_same_way() -> None:
    """What stands free is hydrosulfite all the same.

    A litre of 2 g/L: 2 x 108.115 / 262.268 = 0.82446 g of thiourea dioxide, and of hydrosulfite only the
    2 g that stand free.
    """
    mill = example_mill(recipe={DYE: {**THIOUREA, "bath_indigo": 2.0, "bath_hydrosulfite": 2.0}})
    step = mill.steps_of(mill.recipes["R"], mill.ranges["M"])[2]
    assert isinstance(step, IndigoDyeing)
    book = Book("")
    post_liquor(book, DyeLiquor.of(step, mill.materials), "", 1.0, step.bath_hydrosulfite)
    fed = {line.substance: line.amount for line in book.lines if line.source == "store"}
    assert 1000 * fed["thiourea_dioxide"] == pytest.approx(0.82446, abs=1e-5)
    assert 1000 * fed["sodium_hydrosulfite"] == pytest.approx(2.0, rel=1e-12)
    assert book.held()["leuco_indigo"] == pytest.approx(0.002 * 264.284 / 262.268, rel=1e-5)


def test_a_litre_filled_by_a_cell_is_a_litre() -> None:
    mill = example_mill(recipe={DYE: ELECTROLYSIS})
    step = mill.steps_of(mill.recipes["R"], mill.ranges["M"])[2]
    assert isinstance(step, IndigoDyeing)
    book = Book("")
    post_liquor(book, DyeLiquor.of(step, mill.materials), "", 1.0, step.bath_hydrosulfite)
    assert book.held()["water"] == pytest.approx(1.0, rel=1e-12)
    power = sum(line.amount for line in book.lines if line.material == POWER)
    assert power == pytest.approx(2.0 * step.bath_indigo, rel=1e-12)


def test_dye_that_comes_reduced_has_no_use_for_it() -> None:
    ready, cell = (
        opened(indigo_product="READY", stock_caustic_ratio=0.0, **more) for more in ({}, ELECTROLYSIS)
    )
    assert cell.lines == ready.lines
    said = [remark.text for remark in remarks(cell, Mill())]
    assert any("the dye comes reduced" in text for text in said)
    assert not any("the dye comes reduced" in remark.text for remark in remarks(ready, Mill()))


def test_the_energy_of_a_cell_is_only_assumed_with_a_cell() -> None:
    for recipe, expected in (({}, False), ({**ELECTROLYSIS, "electrolysis_energy": None}, True)):
        mill = example_mill(recipe={DYE: recipe}, route=ROUTE[2:])
        open_ledger(mill, mill.enquiries["E"])
        owner = "recipe R on range M, indigo dyeing"
        assert (Assumption(owner, "indigo.electrolysis_energy") in mill.assumptions) == expected


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (
            {**GLUCOSE, "other_reduction_share": None},
            "test, other_reduction: other reduction is 'glucose' and other reduction share is empty; "
            "accepted is both filled, or the other reduction 'none'",
        ),
        (
            {**GLUCOSE, "other_reductant_product": ""},
            "test, other_reduction: other reduction is 'glucose' and other reductant product is empty; "
            "accepted is both filled, or the other reduction 'none'",
        ),
        (
            {**GLUCOSE, "other_reductant_product": "TUD"},
            "indigo dyeing: other reductant product is 'TUD', which holds thiourea dioxide, but other "
            "reduction is 'glucose'; accepted is a material that holds glucose",
        ),
    ],
)
def test_what_does_not_fit_is_refused(given: dict[str, Any], words: str) -> None:
    with pytest.raises(InputError) as refused:
        opened(**given)
    assert str(refused.value) == words
