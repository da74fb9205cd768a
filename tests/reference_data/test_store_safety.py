"""Entries of transport and segregation: figures as printed there, borders, and rows that are refused."""

from __future__ import annotations

import shutil
from itertools import combinations
from pathlib import Path
from typing import Callable

import molmass
import pytest

from costing.quantities import InputError
from costing.reference_data import folder, materials
from costing.reference_data.source_list import sources
from costing.reference_data.store_safety import (
    CORROSIVE,
    CORROSIVE_LIQUID,
    LIQUID,
    STORE_DEFERS,
    apart_rules,
    read_apart_rules,
    read_segregation,
    read_transport_entries,
    segregation,
    transport_entries,
    transport_entry,
)

# 49 CFR 172.101, columns 3 to 6 of the table, typed once more: class, number, packing group, labels.
PRINTED = {
    "acetic_acid_80_100": "8 UN2789 II 8,3",
    "acetic_acid_50_80": "8 UN2790 II 8",
    "acetic_acid_10_50": "8 UN2790 III 8",
    "peroxide_40_60": "5.1 UN2014 II 5.1,8",
    "peroxide_20_40": "5.1 UN2014 II 5.1,8",
    "peroxide_8_20": "5.1 UN2984 III 5.1",
    "peroxide_60_100": "5.1 UN2015 I 5.1,8",
    "bromate_solid": "5.1 UN1494 II 5.1",
    "bromate_solution": "5.1 UN3213 II/III 5.1",
    "bisulfite_solution": "8 UN2693 III 8",
    "hydrosulfite": "4.2 UN1384 II 4.2",
    "hydrosulfide_dry": "4.2 UN2318 II 4.2",
    "hydrosulfide_hydrated": "8 UN2949 II 8",
    "caustic_solid": "8 UN1823 II 8",
    "caustic_solution": "8 UN1824 II/III 8",
    "sulfide_anhydrous": "4.2 UN1385 II 4.2",
    "sulfide_hydrated": "8 UN1849 II 8",
    "sulfuric_acid_100": "8 UN1830 II 8",
    "sulfuric_acid_51": "8 UN2796 II 8",
    "thiourea_dioxide": "4.2 UN3341 II/III 4.2",
}

# 49 CFR 177.848(d): rows of the segregation table, the columns 3, 4.2, 5.1 and 8 (liquids only).
CLASSES = ("3", "4.2", "5.1", "8 liquid")
SEGREGATED = {
    "3": (".", ".", "O", "."),
    "4.2": (".", ".", ".", "X"),
    "5.1": ("O", ".", ".", "O"),
    "8 liquid": (".", "X", "O", "."),
}

BORDERS = [
    ("acetic_acid", 9.9, "water", ""),
    ("acetic_acid", 10.0, "water", ""),
    ("acetic_acid", 10.1, "water", "UN2790 III"),
    ("acetic_acid", 49.9, "water", "UN2790 III"),
    ("acetic_acid", 50.0, "water", "UN2790 II"),
    ("acetic_acid", 80.0, "water", "UN2790 II"),
    ("acetic_acid", 80.1, "water", "UN2789 II"),
    ("acetic_acid", 100.0, "inert", "UN2789 II"),
    ("sulfuric_acid", 51.0, "water", "UN2796 II"),
    ("sulfuric_acid", 51.1, "water", "UN1830 II"),
    ("hydrogen_peroxide", 7.9, "water", ""),
    ("hydrogen_peroxide", 8.0, "water", "UN2984 III"),
    ("hydrogen_peroxide", 19.9, "water", "UN2984 III"),
    ("hydrogen_peroxide", 20.0, "water", "UN2014 II"),
    ("hydrogen_peroxide", 60.0, "water", "UN2014 II"),
    ("hydrogen_peroxide", 60.1, "water", "UN2015 I"),
    ("sodium_sulfide", 70.0, "water", "UN1849 II"),  # 30 % of water, which 1 - 0.7 is not quite
    ("sodium_sulfide", 70.1, "water", "UN1385 II"),
    ("sodium_sulfide", 60.0, "inert", "UN1385 II"),  # no water at all
    ("sodium_sulfide", 32.5, "water", "UN1849 II"),
    ("sodium_sulfide", 15.0, "water", None),  # a solution
    ("sodium_hydrosulfide", 75.0, "water", "UN2949 II"),
    ("sodium_hydrosulfide", 75.1, "water", "UN2318 II"),
    ("sodium_hydrosulfide", 45.0, "water", None),
    ("sodium_hydroxide", 50.0, "water", "UN1824 II or III"),
    ("sodium_hydroxide", 98.5, "inert", "UN1823 II"),
    ("sodium_hydroxide", 98.5, "water", "UN1823 II"),  # flake whose rest was called water
    ("sodium_hydroxide", 30.0, "inert", None),  # a blend
    ("sodium_bromate", 99.0, "inert", "UN1494 II"),
    ("sodium_bromate", 20.0, "water", "UN3213 II or III"),
    ("sodium_bisulfite", 38.0, "water", "UN2693 III"),
    ("sodium_bisulfite", 98.0, "inert", ""),
    ("sodium_hydrosulfite", 88.0, "inert", "UN1384 II"),
    ("sodium_hydrosulfite", 20.0, "water", None),
    ("urea", 99.0, "inert", None),
    ("", 60.0, "water", None),
]


def test_each_entry_is_as_printed() -> None:
    read = {}
    for entries in transport_entries().values():
        for entry in entries:
            labels = ",".join(filter(None, (entry.hazard_class, entry.subsidiary)))
            group = entry.packing_group.replace(" or ", "/")
            if entry.un_number:
                read[entry.key] = f"{entry.hazard_class} {entry.un_number} {group} {labels}"
            else:
                assert (entry.hazard_class, entry.packing_group) == ("", ""), entry.key
    assert read == PRINTED


@pytest.mark.parametrize(("substance", "percent", "remainder", "wanted"), BORDERS)
def test_at_the_border_of_two_entries(
    substance: str, percent: float, remainder: str, wanted: str | None
) -> None:
    entry = transport_entry(substance, percent / 100.0, remainder)
    found = None if entry is None else f"{entry.un_number} {entry.packing_group}".strip()
    assert found == wanted


@pytest.mark.parametrize("substance", ["acetic_acid", "sulfuric_acid", "hydrogen_peroxide"])
def test_entries_meet_without_a_gap_and_without_overlap(substance: str) -> None:
    for tenth in range(1, 1001):
        holding = [entry.key for entry in transport_entries()[substance] if entry.holds(tenth / 1000.0)]
        assert len(holding) == 1, (tenth, holding)


# Bounds that the regulation does not print; their notes say where they come from.
NOT_PRINTED = {
    "caustic_solution": 0.75,
    "caustic_solid": 0.75,
    "sulfide_hydrated": 0.675,
    "hydrosulfide_hydrated": 0.491,
}


def test_the_locator_quotes_the_bounds_or_the_note_says_where_they_come_from() -> None:
    for entries in transport_entries().values():
        for entry in entries:
            for bound in (entry.low, entry.high):
                if bound is None:
                    continue
                if bound == NOT_PRINTED.get(entry.key):
                    assert "derived" in entry.note or "from memory" in entry.note or "blend" in entry.note
                else:
                    assert f"{100 * bound:g}" in entry.locator, entry.key


def test_derived_ends_are_the_water_of_the_richest_hydrate() -> None:
    water = molmass.Formula("H2O").mass
    for formula, waters, key in (("Na2S", 9, "sulfide_hydrated"), ("NaHS", 3, "hydrosulfide_hydrated")):
        share = waters * water / (molmass.Formula(formula).mass + waters * water)
        assert NOT_PRINTED[key] == pytest.approx(share, abs=0.0005)


def test_what_beside_the_substance_comes_is_no_water() -> None:
    found = transport_entry("sodium_sulfide", 0.66, "water", beside=0.05)
    assert found is not None
    assert found.un_number == "UN1385"  # 29 % of water
    assert 1.0 - 0.68 - 0.02 < 0.3  # as a computer subtracts
    found = transport_entry("sodium_sulfide", 0.68, "water", beside=0.02)
    assert found is not None
    assert found.un_number == "UN1849"  # 30 % of water


def test_segregation_is_as_printed() -> None:
    for first, second in combinations(CLASSES, 2):
        mark = SEGREGATED[first][CLASSES.index(second)]
        assert mark == SEGREGATED[second][CLASSES.index(first)]
        assert segregation()[frozenset((first, second))].mark == {".": "none"}.get(mark, mark)
    assert len(segregation()) == 6


def test_every_class_of_an_entry_has_its_pairs() -> None:
    named = set()
    for entries in transport_entries().values():
        for entry in entries:
            for name in filter(None, (entry.hazard_class, entry.subsidiary)):
                if name == CORROSIVE and entry.form == LIQUID:
                    named.add(CORROSIVE_LIQUID)
                elif name != CORROSIVE:
                    named.add(name)
    assert named == set(CLASSES)


def test_what_is_from_memory_is_said_and_nothing_else_is_without_a_source() -> None:
    printed = [entry for entries in transport_entries().values() for entry in entries]
    for key in [entry.source for entry in printed] + [row.source for row in segregation().values()]:
        assert sources()[key].kind == "regulation"
        assert sources()[key].opened
    unsourced = {rule.key for rule in apart_rules() if not sources()[rule.source].is_publication}
    assert unsourced == {
        "acid and sulfite",  # derived
        "acid and carbonate",
        "acid and bromate",
        "thiourea dioxide and water",
    }


def test_the_deferring_words_name_who_comes_first() -> None:
    for who in ("Local regulation", "safety data sheet", "licence"):
        assert who in STORE_DEFERS


def test_the_usual_forms_have_the_number_that_their_trade_knows() -> None:
    numbers = {}
    for key, form in materials().items():
        entry = transport_entry(form.substance, form.strength, form.remainder, form.alkali)
        numbers[key] = entry.un_number if entry else None
    assert numbers["caustic_lye_50"] == "UN1824"
    assert numbers["sulfide_flake_60"] == "UN1849"
    assert numbers["acetic_acid_80"] == "UN2790"
    assert numbers["soda_ash"] == ""
    assert numbers["wetting_agent_nonionic"] is None


@pytest.mark.parametrize(
    ("reader", "name", "old", "new", "said"),
    [
        (read_transport_entries, "transport_entries.csv", "weak,acetic_acid", "weak,vinegar", "substance is"),
        (read_transport_entries, "transport_entries.csv", ",active,10,,50", ",active,60,,50", "low < high"),
        (
            read_transport_entries,
            "transport_entries.csv",
            ",active,10,,50",
            ",active,10,10,50",
            "one of them",
        ),
        (read_transport_entries, "transport_entries.csv", ",active,10,,50", ",active,0,,50", "between 0 and"),
        (read_transport_entries, "transport_entries.csv", ",water,,,30", ",steam,,,30", "counted is 'steam'"),
        (
            read_transport_entries,
            "transport_entries.csv",
            "solution,8,,III",
            "solution,,,III",
            "hazard_class is",
        ),
        (
            read_transport_entries,
            "transport_entries.csv",
            "us-hazmat-table-2015",
            "hearsay",
            "accepted is a key",
        ),
        (read_transport_entries, "transport_entries.csv", ",liquid,UN2790", ",wet,UN2790", "form is 'wet'"),
        (read_segregation, "segregation.csv", ",O,", ",Y,", "mark is 'Y'"),
        (read_segregation, "segregation.csv", "3,5.1,O", "4.2,3,O", "stand twice"),
        (read_apart_rules, "keep_apart.csv", "icsc-1047", "icsc-1", "source is 'icsc-1'"),
    ],
)
def test_a_broken_row_is_refused_in_one_line(
    reader: Callable[[Path], object], name: str, old: str, new: str, said: str, tmp_path: Path
) -> None:
    place = Path(shutil.copytree(folder(), tmp_path / "reference_tables"))
    text = (place / name).read_text(encoding="utf-8")
    assert old in text
    (place / name).write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        reader(place)
    assert str(caught.value).startswith(f"{name} row ")
    assert said in str(caught.value)
