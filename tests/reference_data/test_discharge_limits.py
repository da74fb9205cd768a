"""The limits of regulations: figures as printed there, forms without figures, and rows that are refused."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from costing.quantities import InputError
from costing.reference_data import folder
from costing.reference_data.discharge_limits import (
    VERIFY,
    LimitRow,
    limit_rows,
    limits_of,
    presets,
    read_limits,
)
from costing.reference_data.source_list import sources
from costing.settings.permit import limit_of

# 40 CFR 410, typed once more from the sections: maximum for one day, average of 30 days [kg/t].
PRINTED = {
    "us_410_g_bpt": {
        "BOD5": (6.8, 3.4),
        "COD": (84.6, 42.3),
        "TSS": (17.4, 8.7),
        "sulfide": (0.24, 0.12),
        "phenols": (0.12, 0.06),
        "total chromium": (0.12, 0.06),
    },
    "us_410_g_bat": {
        "COD": (84.6, 42.3),
        "sulfide": (0.24, 0.12),
        "phenols": (0.12, 0.06),
        "total chromium": (0.12, 0.06),
    },
    "us_410_g_nsps": {
        "BOD5": (3.6, 1.9),
        "COD": (33.9, 21.9),
        "TSS": (9.8, 4.4),
        "sulfide": (0.24, 0.12),
        "phenols": (0.12, 0.06),
        "total chromium": (0.12, 0.06),
    },
    "us_410_d_bpt": {
        "BOD5": (6.6, 3.3),
        "COD": (60.0, 30.0),
        "TSS": (17.8, 8.9),
        "sulfide": (0.20, 0.10),
        "phenols": (0.10, 0.05),
        "total chromium": (0.10, 0.05),
    },
    "us_410_d_bat_d": {
        "COD": (120.0, 60.0),
        "sulfide": (0.20, 0.10),
        "phenols": (0.10, 0.05),
        "total chromium": (0.10, 0.05),
    },
    "us_410_d_nsps_simple": {"BOD5": (3.3, 1.7), "COD": (41.7, 26.9), "TSS": (8.8, 3.9)},
    "us_410_d_nsps_complex": {"BOD5": (3.7, 1.9), "COD": (68.7, 44.2), "TSS": (14.4, 6.4)},
    "us_410_d_nsps_desizing": {"BOD5": (5.5, 2.8), "COD": (59.5, 38.3), "TSS": (15.6, 6.9)},
    "us_410_c_bpt": {"BOD5": (1.4, 0.7), "COD": (2.8, 1.4), "TSS": (1.4, 0.7)},
    "us_410_c_bpt_water_jet": {"BOD5": (8.9, 4.6), "COD": (21.3, 13.7), "TSS": (5.5, 2.5)},
}

# Annex 38, parts C, D and E, with their units as printed there.
ANNEX_38 = {
    "COD": (160, "mg/L"),
    "BOD5": (25, "mg/L"),
    "total phosphorus": (2, "mg/L"),
    "ammonium nitrogen": (10, "mg/L"),
    "total inorganic nitrogen": (20, "mg/L"),
    "sulfite": (1, "mg/L"),
    "toxicity to fish eggs": (2, ""),
    "colour at 436 nm": (7, "1/m"),
    "colour at 525 nm": (5, "1/m"),
    "colour at 620 nm": (3, "1/m"),
    "AOX": (0.5, "mg/L"),
    "sulfide": (1, "mg/L"),
    "total chromium": (0.5, "mg/L"),
    "copper": (0.5, "mg/L"),
    "nickel": (0.5, "mg/L"),
    "zinc": (2, "mg/L"),
    "tin": (2, "mg/L"),
    "chromium VI": (0.1, "mg/L"),
}


def with_values() -> list[LimitRow]:
    return [row for row in limit_rows().values() if row.value is not None]


@pytest.mark.parametrize("preset", PRINTED)
def test_limits_are_as_printed(preset: str) -> None:
    rows = [row for row in limits_of(preset) if row.unit == "kg/t"]
    for parameter, printed in PRINTED[preset].items():
        found = [row for row in rows if row.parameter == parameter]
        assert [(row.statistic, row.number) for row in found] == [("any one day", 0), ("mean of days", 30)]
        assert tuple(row.value for row in found) == printed
    if "nsps_" not in preset:
        assert {row.parameter for row in rows} == set(PRINTED[preset])


def test_annex_38_is_as_printed() -> None:
    rows = limits_of("de_annex_38")
    assert {row.parameter: (row.value, row.unit) for row in rows} == ANNEX_38
    grabs = {row.parameter for row in rows if row.statistic == "grab sample"}
    assert grabs == {"AOX", "chromium VI"}
    assert {row.number for row in rows if row.parameter not in grabs} == {2}
    before_mixing = {row.parameter for row in rows if row.point == "before mixing"}
    assert before_mixing == {"AOX", "sulfide", "total chromium", "copper", "nickel", "zinc", "tin"}


def test_small_discharges_are_told_what_does_not_hold_for_them() -> None:
    for row in limits_of("de_annex_38"):
        assert "under 5 m3 a day" in row.note, row.key


def test_ph_is_a_range_at_all_times_and_a_floor_into_a_sewer() -> None:
    ranges = [row for row in with_values() if row.parameter == "pH"]
    for row in ranges:
        wanted = (5.0, None) if row.preset == "us_403_sewer" else (6.0, 9.0)
        assert (row.value, row.value_to) == wanted
        assert row.statistic == "at all times"
    assert len(ranges) == 9


def test_every_value_was_read_and_says_where() -> None:
    assert len(with_values()) > 120
    for row in with_values():
        assert sources()[row.source].is_publication, row.key
        assert sources()[row.source].opened, row.key
        assert row.locator, row.key
        assert row.edition, row.key
        assert row.statistic, row.key


def test_what_was_not_read_has_no_value() -> None:
    forms = [row for row in limit_rows().values() if row.value is None]
    assert {row.preset for row in forms} >= {
        *("eu_2022_2508", "world_bank_ehs_2007", "turkey_table_10", "china_gb_4287"),
        *("india_2016", "bangladesh_ecr", "pakistan_neqs"),
    }
    for row in forms:
        assert not (sources()[row.source].is_publication and sources()[row.source].opened), row.key
        assert "from memory" in row.note, row.key
        assert row.value_to is None, row.key
    assert {row.preset for row in forms} & {row.preset for row in with_values()} == set()


def test_every_row_says_to_verify_it() -> None:
    assert all(row.text().endswith(VERIFY) for row in limit_rows().values())


@pytest.mark.parametrize("preset", presets())
def test_every_row_becomes_a_row_of_a_permit(preset: str) -> None:
    for row in limits_of(preset):
        limit = limit_of(row)
        assert limit.value == row.value
        assert limit.reference.endswith(VERIFY)


def test_a_preset_that_is_not_there_is_an_error() -> None:
    with pytest.raises(KeyError):
        limits_of("us_410")


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(folder(), tmp_path / "reference_tables"))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("at most,6.8,,kg/t", "at most,6.8 kg,,kg/t", "value is '6.8 kg'; accepted is a number"),
        ("at most,6.8,,kg/t", "at most,-6.8,,kg/t", "accepted is a value above 0"),
        ("at most,6.8,,kg/t", "at most,6.8,7,kg/t", "value_to is filled or empty"),
        ("at most,6.8,,kg/t", "below,6.8,,kg/t", "direction is 'below'; accepted is one of: at most"),
        ("at most,6.8,,kg/t", "at most,6.8,,kg/stone", "unit is 'kg/stone'"),
        ("between,6,9,", "between,9,6,", "value_to above value"),
        ("between,6,9,", "between,6,,", "value_to is filled or empty"),
        ("load per product,any one day,", "load,any one day,", "basis is 'load'"),
        ("any one day,,", "one day,,", "statistic is 'one day'"),
        ("any one day,,", ",,", "statistic is ''"),
        ("any one day,,", "any one day,1,", "number is '1'; accepted is a whole number for mean of days"),
        ("mean of days,30,", "mean of days,,", "number is ''"),
        ("mean of days,30,", "mean of days,29.5,", "number is '29.5'"),
        ("after treatment", "in the river", "point is 'in the river'"),
        ("us_410_d_bpt,cfr-40-410", "us_410_x_bpt,cfr-40-410", "adds_to is 'us_410_x_bpt', which has no COD"),
        ("cfr-40-403", "cfr-40-999", "source is 'cfr-40-999'; accepted is a key of sources.toml"),
    ],
)
def test_a_broken_row_is_refused_in_one_line(copy: Path, old: str, new: str, said: str) -> None:
    path = copy / "limits.csv"
    text = path.read_text(encoding="utf-8")
    assert old in text
    row = text[: text.index(old)].count("\n") + 1
    path.write_text(text.replace(old, new, 1), encoding="utf-8", newline="\n")
    with pytest.raises(InputError) as caught:
        read_limits(copy)
    assert str(caught.value).startswith(f"limits.csv row {row}")
    assert said in str(caught.value)
    assert "\n" not in str(caught.value)
