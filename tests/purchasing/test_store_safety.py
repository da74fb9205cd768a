"""The store: what each product is, each reason to keep two apart, and the mill's own ceilings."""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest

from costing.purchasing.store_safety import (
    CHEMISTRY,
    NOT_KNOWN,
    SORTS_OF_CAUTION,
    SORTS_OF_ROLE,
    SORTS_OF_SUBSTANCE,
    TRANSPORT_RULE,
    Apart,
    against_ceilings,
    kept_apart,
    sorts_of,
    store_rows,
)
from costing.quantities import InputError
from costing.reference_data import cautions, substances
from costing.reference_data.store_safety import STORE_DEFERS, apart_rules
from costing.settings.material import Material
from tests.example_mill import material


def stored(code: str, substance: str, strength: float, remainder: str, **more: Any) -> Material:
    return material(code, substance, strength, remainder, 1.0, **more)


STORE = {
    item.code: item
    for item in (
        stored("ACETIC-80", "acetic_acid", 0.80, "water", role="acid"),
        stored("GLACIAL", "acetic_acid", 0.99, "water", role="acid"),
        stored("SULFURIC", "sulfuric_acid", 0.96, "water", role="acid"),
        stored("LYE", "sodium_hydroxide", 0.50, "water"),
        stored("FLAKE", "sodium_hydroxide", 0.985, "inert"),
        stored("SODA", "sodium_carbonate", 0.99, "inert"),
        stored("BISULFITE", "sodium_bisulfite", 0.38, "water"),
        stored("HYDRO", "sodium_hydrosulfite", 0.88, "inert"),
        stored("THIOUREA", "thiourea_dioxide", 0.99, "inert"),
        stored("SULFIDE", "sodium_sulfide", 0.60, "water"),
        stored("SULFIDE-DRY", "sodium_sulfide", 0.71, "water"),
        stored("HYDROSULFIDE", "sodium_hydrosulfide", 0.71, "water"),
        stored("PEROXIDE", "hydrogen_peroxide", 0.50, "water"),
        stored("PEROXIDE-10", "hydrogen_peroxide", 0.10, "water"),
        stored("BROMATE", "sodium_bromate", 0.99, "inert"),
        stored("GLUCOSE", "glucose", 0.909, "water"),
        stored("SALT", "sodium_chloride", 0.99, "inert"),
        stored("BLACK-LIQUID", "", 0.30, "water", role="dye", dye_class="sulfur", sodium_sulfide=0.02),
        stored("REDUCED-INDIGO", "leuco_indigo", 0.40, "water", role="dye", dye_class="indigo", alkali=0.06),
        stored("SOFTENER", "", 0.25, "water", own_oxygen_demand=3.1, caution="wetting_agent"),
        stored("SILICATE", "", 0.35, "water", own_sodium=0.24, caution="caustic"),
        stored("NITROGEN", "", 1.0, "inert", caution="confined_space"),
        stored("YARN", "", 1.0, "inert", role="warp yarn"),
        stored("DELIMER", "", 0.60, "water", role="acid", caution="general"),
    )
}


def pair(first: str, second: str, kind: str = "") -> list[Apart]:
    found = kept_apart([STORE[first], STORE[second]])
    return [item for item in found if kind in ("", item.kind)]


def test_a_row_says_what_the_product_is_and_who_comes_first() -> None:
    (row,) = store_rows([STORE["PEROXIDE"]])
    assert (row.code, row.un_number, row.hazard_class) == ("PEROXIDE", "UN2014", "5.1")
    assert (row.subsidiary, row.packing_group) == ("8", "II")
    assert row.source == "us-hazmat-table-2015"
    assert "40 percent" in row.locator
    assert row.defer == STORE_DEFERS


@pytest.mark.parametrize("code", ["BLACK-LIQUID", "SOFTENER", "REDUCED-INDIGO", "NITROGEN"])
def test_what_the_table_does_not_have_is_not_known(code: str) -> None:
    (row,) = store_rows([STORE[code]])
    assert row.name == NOT_KNOWN
    assert not any((row.un_number, row.hazard_class, row.packing_group, row.source))


def test_no_entry_by_a_name_is_no_safety() -> None:
    (row,) = store_rows([STORE["SODA"]])
    assert (row.un_number, row.hazard_class) == ("", "")
    assert row.name == "no entry by this name; another may hold: ask the supplier's safety data sheet"
    assert row.source == "us-hazmat-table-2015"


def test_a_row_for_each_product_in_their_order() -> None:
    assert [row.code for row in store_rows(STORE.values())] == list(STORE)


@pytest.mark.parametrize(
    ("first", "second", "rule"),
    [
        ("ACETIC-80", "SULFIDE", "acid and sulfide"),
        ("SULFURIC", "HYDROSULFIDE", "acid and sulfide"),
        ("ACETIC-80", "BLACK-LIQUID", "acid and sulfide"),
        ("DELIMER", "SULFIDE", "acid and sulfide"),
        ("ACETIC-80", "HYDRO", "acid and hydrosulfite"),
        ("SULFURIC", "BISULFITE", "acid and sulfite"),
        ("ACETIC-80", "LYE", "acid and alkali"),
        ("SULFURIC", "REDUCED-INDIGO", "acid and alkali"),
        ("SULFURIC", "SILICATE", "acid and alkali"),
        ("ACETIC-80", "SODA", "acid and carbonate"),
        ("SULFURIC", "BROMATE", "acid and bromate"),
        ("PEROXIDE", "HYDRO", "hydrosulfite and oxidant"),
        ("BROMATE", "SULFIDE", "sulfide and oxidant"),
        ("PEROXIDE", "THIOUREA", "reductant and oxidant"),
        ("BROMATE", "GLUCOSE", "reductant and oxidant"),
        ("PEROXIDE", "SOFTENER", "organic matter and oxidant"),
        ("PEROXIDE", "ACETIC-80", "organic matter and oxidant"),
        ("BROMATE", "YARN", "organic matter and oxidant"),
        ("PEROXIDE", "LYE", "peroxide and alkali"),
        ("HYDRO", "SOFTENER", "hydrosulfite and water"),
        ("HYDRO", "LYE", "hydrosulfite and water"),
        ("THIOUREA", "SOFTENER", "thiourea dioxide and water"),
        ("ACETIC-80", "THIOUREA", "thiourea dioxide and water"),  # 20 % of water: 1 - 0.8 is a little less
    ],
)
def test_each_reason_of_chemistry(first: str, second: str, rule: str) -> None:
    (wanted,) = [item for item in apart_rules() if item.key == rule]
    found = [item for item in pair(first, second, CHEMISTRY) if item.reason == wanted.why]
    assert [(item.first, item.second, item.source) for item in found] == [(first, second, wanted.source)]
    assert found[0].defer == STORE_DEFERS


def test_every_reason_has_a_pair_of_products_above() -> None:
    reasons = {item.reason for item in kept_apart(STORE.values()) if item.kind == CHEMISTRY}
    assert reasons == {rule.why for rule in apart_rules()}


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("SALT", "LYE"),
        ("SALT", "PEROXIDE"),
        ("NITROGEN", "PEROXIDE"),
        ("SILICATE", "BROMATE"),
        ("HYDRO", "FLAKE"),
        ("HYDRO", "SULFIDE"),  # the water of its crystals does not leak
        ("HYDRO", "GLUCOSE"),
        ("SODA", "LYE"),
    ],
)
def test_nothing_is_invented(first: str, second: str) -> None:
    assert pair(first, second) == []


@pytest.mark.parametrize(
    ("first", "second", "said"),
    [
        ("HYDRO", "LYE", "may not be loaded"),  # 4.2 and a liquid of class 8
        ("HYDRO", "ACETIC-80", "may not be loaded"),
        ("HYDRO", "PEROXIDE", "may not be loaded"),  # by the subsidiary class 8 of the peroxide
        ("HYDRO", "PEROXIDE-10", ""),  # which has none
        ("HYDRO", "FLAKE", ""),  # a solid of class 8
        ("SULFIDE", "ACETIC-80", ""),  # both of class 8
        ("SULFIDE-DRY", "ACETIC-80", "may not be loaded"),  # with less water it is 4.2
        ("BROMATE", "LYE", "only so parted"),  # 5.1 and a liquid of class 8
        ("BROMATE", "GLACIAL", "only so parted"),
        ("PEROXIDE", "LYE", "only so parted"),
        ("PEROXIDE", "BROMATE", ""),  # both of class 5.1
        ("GLACIAL", "LYE", ""),  # both of class 8
        ("BROMATE", "SOFTENER", ""),  # of a class that is not known
        ("BROMATE", "SODA", ""),
    ],
)
def test_the_table_of_segregation(first: str, second: str, said: str) -> None:
    for order in ((first, second), (second, first)):
        found = pair(*order, TRANSPORT_RULE)
        assert len(found) == bool(said)
        for item in found:
            assert said in item.reason
            assert item.source == "us-segregation-2015"


def test_the_order_of_the_list_changes_no_warning() -> None:
    for first, second in permutations(STORE, 2):
        one = {(item.kind, item.source, item.locator) for item in pair(first, second)}
        assert one == {(item.kind, item.source, item.locator) for item in pair(second, first)}


def test_the_names_of_sorts_are_names_that_exist() -> None:
    assert set(SORTS_OF_SUBSTANCE) <= set(substances())
    assert set(SORTS_OF_CAUTION) <= set(cautions())
    named = {sort for item in STORE.values() for sort in sorts_of(item)}
    assert {name for rule in apart_rules() for name in (rule.first, rule.second)} <= named
    assert {substances()[name].role for name in SORTS_OF_SUBSTANCE} >= set(SORTS_OF_ROLE)


def test_the_ceiling_is_the_mills_own_and_never_a_default() -> None:
    amounts = {"LYE": 12000.0, "HYDRO": 5000.0, "PEROXIDE": 4000.5}
    ceilings = {"LYE": 10000.0, "HYDRO": 5000.0, "SALT": 100.0}
    found = {item.code: item for item in against_ceilings(STORE.values(), amounts, ceilings)}
    assert list(found) == list(STORE)
    assert found["LYE"].over == pytest.approx(2000.0)
    assert "12000 kg stand there, 2000 kg over the ceiling of 10000 kg" in found["LYE"].said
    # At the ceiling is not over it.
    assert (found["HYDRO"].over, found["HYDRO"].said) == (0.0, "not over the ceiling that the mill gave")
    assert (found["SALT"].amount, found["SALT"].over) == (0.0, 0.0)
    assert (found["PEROXIDE"].ceiling, found["PEROXIDE"].over) == (None, 0.0)
    assert "no ceiling typed, not compared" in found["PEROXIDE"].said
    assert {item.defer for item in found.values()} == {STORE_DEFERS}
    assert not any("compl" in item.said for item in found.values())


@pytest.mark.parametrize(
    ("amounts", "ceilings", "where"),
    [
        ({"LYE": -1.0}, {}, "amount in the store of 'LYE'"),
        ({"LYE": float("nan")}, {}, "amount in the store of 'LYE'"),
        ({"POTASH": 5.0}, {}, "amount in the store of 'POTASH'"),
        ({}, {"LYE": -5.0}, "storage ceiling of 'LYE'"),
        ({}, {"POTASH": 5.0}, "storage ceiling of 'POTASH'"),
    ],
)
def test_what_makes_no_sense_is_refused(
    amounts: dict[str, float], ceilings: dict[str, float], where: str
) -> None:
    with pytest.raises(InputError) as caught:
        against_ceilings([STORE["LYE"]], amounts, ceilings)
    assert caught.value.where == where


def test_all_that_is_refused_is_told_at_once() -> None:
    with pytest.raises(InputError) as caught:
        against_ceilings([STORE["LYE"]], {"LYE": -1.0, "POTASH": 1.0}, {"LYE": float("inf")})
    assert len(caught.value.told()) == 3
