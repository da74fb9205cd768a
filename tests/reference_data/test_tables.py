"""What the shipped tables must hold: known sources, sound bands, figures that can be worked out again."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator

import molmass
import pint
import pytest

from costing.quantities import QUANTITIES
from costing.reference_data import (
    cautions,
    defaults,
    folder,
    materials,
    published_ranges,
    substances,
    treatment_removals,
)
from costing.reference_data.source_list import sources
from costing.reference_data.table_files import source_keys
from tests.tools.make_unit_table import WANTED, registry

TABLES = (
    *("cautions.csv", "defaults.csv", "materials.csv", "published_ranges.csv", "trade_words.csv"),
    "treatment.csv",
)
WITH_FORMS = ("limits.csv",)  # an empty form may name a regulation that was not read
OXYGEN = molmass.Formula("O").mass

# What mills, books or sellers disagree on.
CONTESTED = {
    "purchase": {"holding_rate", "lead_time_spread", "need_spread"},
    "planning": set(),
    "bath": {"loose_removed", "peroxide_broken_down", "peroxide_taken", "reductant_left", "weight_loss"},
    **{
        f"{name} bath": {"dye_exhaustion", "dye_fixation"} for name in ("sulfur", "vat", "reactive", "direct")
    },
    **{f"{name} dye box": {"dye_fixation", "extra_uptake"} for name in ("reactive", "direct")},
    "sulfur dye box": {"bath_reductant", "dye_fixation", "extra_uptake"},
    "glucose dye box": {"bath_caustic", "bath_reductant", "reductant_ratio"},
    "vat dye box": {"bath_caustic", "bath_reductant", "dye_fixation", "extra_uptake"},
    "cloth": set(),
    "drying": {"dryer_efficiency"},
    "extraction": set(),
    "general": set(),
    "indigo": {
        *("bath_caustic", "bath_kept", "carbon_dioxide", "circulation_oxygen", "exchange"),
        *("hydrosulfite_per_oxygen", "pick_up", "pick_up_last", "prereduced", "rinse_loss"),
        *("electrolysis_energy", "sky_destruction", "sulfite_oxidised", "surface_oxygen"),
    },
    "lot": set(),
    "point": {
        *("bod_of_other", "bod_of_size", "bod_of_surfactant", "cooled", "day_variation", "drain_transfer"),
        *("grab_variation", "immediate_demand", "pit_transfer", "suspended_dye"),
    },
    "recovering rinse": {"dye_returned", "exchange", "pick_up"},
    "rinse": {"exchange", "pick_up"},
    "scour": {"pick_up", "scour_caustic", "scour_overflow", "weight_loss"},
    "seconds": {"off_shade_share", "off_shade_value", "seconds_share", "seconds_value"},
    "sets": set(),
    "size": {"exchange", "pick_up"},
    "steaming": set(),
    "dye box": {
        *(
            "bath_caustic",
            "bath_kept",
            "bath_reductant",
            "box_overflow",
            "exchange",
            "pick_up",
            "reductant_left",
        ),
        "reductant_ratio",
    },
    "treatment": {
        *("box_overflow", "exchange", "peroxide_broken_down", "peroxide_taken", "pick_up"),
        *("reductant_left", "weight_loss"),
    },
    "train": {"sludge_yield", "water_recovery"},
    "yarn": set(),
}


def lines(name: str) -> Iterator[dict[str, str]]:
    with (folder() / name).open(encoding="utf-8", newline="") as file:
        yield from csv.DictReader(file)


@pytest.fixture(scope="module")
def units() -> pint.UnitRegistry[float]:
    return registry()


def converted(units: pint.UnitRegistry[float], number: str, unit: str, house: str) -> float:
    given = units.Quantity(float(number), WANTED[unit])
    return float(given.to(WANTED[house]).magnitude)


def oxygen_demand(formula: str) -> float:
    """To carbon dioxide, water, ammonia, sulfate: what a mass of the compound takes, by its atoms."""
    whole = molmass.Formula(formula)
    atoms = {item.symbol: item.count for item in whole.composition().values()}
    carbon, hydrogen, nitrogen, sodium, sulfur, oxygen = (
        atoms.get(symbol, 0) for symbol in ("C", "H", "N", "Na", "S", "O")
    )
    taken = 2 * carbon + 0.5 * (hydrogen - 3 * nitrogen) + 3 * sulfur + 0.5 * sodium - oxygen
    return float(taken * OXYGEN / whole.mass)


def element_share(formula: str, symbol: str) -> float:
    return float(molmass.Formula(formula).composition()[symbol].fraction)


@pytest.mark.parametrize("name", [*TABLES, *WITH_FORMS])
def test_every_row_cites_a_source_that_is_listed(name: str) -> None:
    assert {row["source"] for row in lines(name)} <= set(sources())


@pytest.mark.parametrize("name", [*TABLES, *WITH_FORMS])
def test_a_publication_is_cited_with_a_locator(name: str) -> None:
    bare = [
        next(iter(row.values()))
        for row in lines(name)
        if sources()[row["source"]].is_publication and not row["locator"]
    ]
    assert bare == []


@pytest.mark.parametrize("name", TABLES)
def test_a_source_that_was_not_opened_backs_no_figure(name: str) -> None:
    unread = {key for key, source in sources().items() if source.is_publication and not source.opened}
    assert [row["key"] for row in lines(name) if row["source"] in unread] == []


def test_figures_of_treatment_say_on_what_scale_they_were_measured() -> None:
    """Published ones come from a laboratory or a pilot and are cut for a mill; no salt is held by biology."""
    for figures in treatment_removals().values():
        for item in figures:
            assert sources()[item.source].is_publication == bool(item.scale), item
            assert item.what != "dissolved salts" or item.kind == "membrane"
            assert item.in_a_mill <= (item.low, item.typical, item.high)
            assert list(item.in_a_mill) == sorted(item.in_a_mill)


def test_the_quick_look_at_the_sources_finds_the_same_keys() -> None:
    assert source_keys(folder()) == set(sources())


def test_every_source_says_what_and_where_it_is() -> None:
    assert [key for key, source in sources().items() if not source.title or not source.where] == []
    assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", key) for key in sources())
    assert all(re.fullmatch(r"(\d{4})?", source.year) for source in sources().values())


def test_defaults_are_converted_as_pint_converts_them(units: pint.UnitRegistry[float]) -> None:
    table = defaults()
    rows = list(lines("defaults.csv"))
    assert len(rows) == len(table) > 80
    for row in rows:
        found = table[row["key"]]
        house = QUANTITIES[found.quantity].unit
        expected = [converted(units, row[column], row["unit"], house) for column in ("low", "value", "high")]
        assert [found.low, found.value, found.high] == pytest.approx(expected, rel=1e-12), row["key"]


def test_every_default_lies_in_its_band_and_in_what_is_accepted() -> None:
    for key, found in defaults().items():
        item = QUANTITIES[found.quantity]
        assert found.low <= found.value <= found.high, key
        if item.whole:
            assert {found.low % 1, found.value % 1, found.high % 1} == {0.0}, key


def test_every_group_is_judged() -> None:
    """A new kind of step must say which of its defaults are contested, if only that none is."""
    assert {key.split(".")[0] for key in defaults()} == set(CONTESTED)


@pytest.mark.parametrize("group", CONTESTED)
def test_what_is_contested_says_so(group: str) -> None:
    marked = {
        item.quantity for key, item in defaults().items() if item.contested and key.startswith(f"{group}.")
    }
    assert marked == CONTESTED[group]


@pytest.mark.parametrize(
    "name",
    ["indigo_on_yarn", "rinse_water", "rinse_water_flow", "steam_pressure", "order_length", "linear_density"],
)
def test_nothing_is_assumed_for_what_only_the_user_can_know(name: str) -> None:
    assert name in QUANTITIES
    assert [key for key, item in defaults().items() if item.quantity == name] == []


def test_a_guess_tells_why_it_was_made() -> None:
    guessed = [item for item in defaults().values() if item.source in ("derived", "judgement")]
    assert [item.key for item in guessed if not item.note] == []


@pytest.mark.parametrize(
    ("key", "expected"),
    [
        # 20.95 % oxygen in the molar volume of an ideal gas at 25 degC and 1 atm
        ("indigo.oxygen_in_air", 0.2095 * 2 * OXYGEN / (0.0820574 * 298.15) / 1000),
        # pectic matter of cotton, 9 g/kg, one acid group in each C6H8O6
        ("scour.caustic_neutralised", 0.009 * molmass.Formula("NaOH").mass / molmass.Formula("C6H8O6").mass),
        # ash over protein, ash, acids, pectic matter, wax and sugars
        ("scour.ash_share", 1.2 / (1.3 + 1.2 + 0.8 + 0.9 + 0.6 + 0.3)),
        # one mol of hydrosulfite for one mol of indigo
        (
            "indigo.stock_hydrosulfite_ratio",
            molmass.Formula("Na2S2O4").mass / molmass.Formula("C16H10N2O2").mass,
        ),
        ("general.atmospheric_pressure", 101325 / 1e5),
    ],
)
def test_derived_defaults_can_be_worked_out_again(key: str, expected: float) -> None:
    assert defaults()[key].source == "derived"
    assert defaults()[key].value == pytest.approx(expected, rel=0.025)


@pytest.mark.parametrize(
    ("key", "british", "digits"),
    [  # Btu/(ft2 h), between the two lines of the printed table
        ("general.surface_heat_loss.at_60_degC", 820, 0.05),
        ("general.surface_heat_loss.at_80_degC", 1615 + 0.6 * (2000 - 1615), 0.05),
        ("general.surface_heat_loss.at_90_degC", 2450 + 0.4 * (3000 - 2450), 0.05),
        ("scour.surface_heat_loss", 2450 + 0.4 * (3000 - 2450), 0.05),
        ("rinse.surface_heat_loss", 230 + 0.4 * (330 - 230), 0.005),
    ],
)
def test_heat_loss_is_that_of_the_printed_table(
    units: pint.UnitRegistry[float], key: str, british: float, digits: float
) -> None:
    printed = units.Quantity(british, "Btu/foot**2/hour").to("kW/m**2").magnitude
    row = next(row for row in lines("defaults.csv") if row["key"] == key)
    assert float(row["value"]) == pytest.approx(printed, abs=digits)


def test_every_formula_is_a_formula() -> None:
    for item in substances().values():
        assert molmass.Formula(item.formula).mass > 2, item.key


def test_registry_numbers_of_substances_pass_their_check_digit() -> None:
    numbers = re.findall(r"CAS (\d+)-(\d\d)-(\d)", " ".join(item.note for item in substances().values()))
    assert len(numbers) > 15
    for first, second, check in numbers:
        digits = [int(digit) for digit in reversed(first + second)]
        assert sum(place * digit for place, digit in enumerate(digits, 1)) % 10 == int(check), (first, second)


@pytest.mark.parametrize(
    ("key", "formula"),
    [
        ("wetting_agent_nonionic", "C27H56O8"),
        ("wetting_agent_anionic", "C8H17SO4Na"),
        ("sequestrant_acrylate", "C3H3O2Na"),
    ],
)
def test_own_figures_of_a_material_follow_from_the_formula_in_its_note(key: str, formula: str) -> None:
    item = materials()[key]
    assert formula in item.note
    assert item.own_oxygen_demand == pytest.approx(oxygen_demand(formula), abs=0.0005)
    for symbol, own in (("Na", item.own_sodium), ("S", item.own_sulfur), ("N", item.own_nitrogen)):
        held = symbol in re.findall(r"[A-Z][a-z]?", formula)
        assert own == pytest.approx(element_share(formula, symbol) if held else 0.0, abs=0.00005)


def test_the_oxygen_demand_of_glycine_is_the_published_one() -> None:
    # thod-encyclopedia: 1.5 mol of oxygen (O2) for one mol while nitrogen stays ammonia
    assert oxygen_demand("C2H5NO2") * molmass.Formula("C2H5NO2").mass / (2 * OXYGEN) == pytest.approx(1.5)


def test_what_can_hurt_has_a_caution_of_its_own() -> None:
    wanted = {
        "sodium_hydroxide": "caustic",
        "sodium_hydrosulfite": "hydrosulfite",
        "sodium_sulfide": "sulfide",
        "sodium_hydrosulfide": "sulfide",
        "hydrogen_peroxide": "peroxide",
        "acetic_acid": "acid",
        "sulfuric_acid": "acid",
    }
    for substance, caution in wanted.items():
        sold = [item for item in materials().values() if item.substance == substance]
        assert sold, substance
        assert {item.caution for item in sold} == {caution}


def test_every_caution_defers() -> None:
    for item in cautions().values():
        assert item.defer.startswith("General information only."), item.key
        assert "licensed" in item.defer, item.key


def test_the_water_benchmarks_are_those_reported() -> None:
    found = {
        key: (item.low, item.high) for key, item in published_ranges().items() if key.startswith("water_")
    }
    assert found["water_rope_usual"] == (15.0, 20.0)
    assert found["water_sheet_usual"] == (10.0, 15.0)
    assert found["water_rope_best"] == (3.85, 3.85)
    assert found["water_sheet_best"] == (3.40, 3.40)
