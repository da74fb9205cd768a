"""How the readers treat a table that was changed: a new mark, or one line that says what is wrong."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from costing.quantities import InputError
from costing.reference_data import fingerprint, folder
from costing.reference_data.caustic_density import read_caustic_density
from costing.reference_data.default_values import read_defaults
from costing.reference_data.materials_and_cautions import (
    read_cautions,
    read_materials,
    read_published_ranges,
    read_substances,
)
from costing.reference_data.source_list import read_sources
from costing.reference_data.trade_words import read_trade_words
from costing.reference_data.treatment_removals import read_treatment_removals

Reader = Callable[[Path], object]


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(folder(), tmp_path / "reference_tables"))


def change(place: Path, name: str, old: str, new: str) -> int:
    """Replace once, and say in which row of the file."""
    path = place / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8", newline="\n")
    return text[: text.index(old)].count("\n") + 1


def test_the_mark_changes_with_one_byte_of_any_table(copy: Path) -> None:
    before = fingerprint(copy)
    assert before == fingerprint()
    marks = {before}
    for path in sorted(copy.iterdir()):
        content = path.read_bytes()
        path.write_bytes(content[:-2] + bytes([content[-2] ^ 1]) + content[-1:])
        marks.add(fingerprint(copy))
        path.write_bytes(content)
    assert len(marks) == 1 + len(list(copy.iterdir()))
    assert fingerprint(copy) == before


def test_the_mark_changes_with_the_name_of_a_table(copy: Path) -> None:
    (copy / "cautions.csv").rename(copy / "cautionz.csv")
    assert fingerprint(copy) != fingerprint()


def test_the_mark_does_not_depend_on_line_ends(copy: Path) -> None:
    for path in copy.iterdir():
        path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert fingerprint(copy) == fingerprint()
    assert read_defaults(copy) == read_defaults(folder())


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("bath_indigo,2,g/L,0.8,5", "bath_indigo,6,g/L,0.8,5", "low, value and high are 0.8, 6, 5 g/L"),
        ("bath_indigo,2,g/L", "bath_indigo,two,g/L", "value is 'two'; accepted is a number"),
        ("bath_indigo,2,g/L", "bath_indigo,,g/L", "value is ''; accepted is a number"),
        ("bath_indigo,2,g/L", "bath_indigo,nan,g/L", "value is 'nan'; accepted is a finite number"),
        ("bath_indigo,2,g/L", "bath_indigo,2,gpl", "unit is 'gpl'; accepted is a unit of the unit table"),
        ("bath_indigo,2,g/L", "bath_indigo,2,degC", "unit of bath_indigo is 'degC'"),
        ("bath_indigo,2,g/L,0.8,5", "bath_indigo,2,g/L,0.8,500", "bath indigo is 500 g/L, accepted is"),
        ("bath_indigo,2,g/L,0.8,5,no", "bath_indigo,2,g/L,0.8,5,maybe", "accepted is one of: yes, no"),
        ("indigo.bath_indigo,bath_indigo", "indigo.bath_indigo,bath_dye", "quantity is 'bath_dye'"),
        ("indigo.bath_indigo,", "indigo.pick_up_last,", "key is 'indigo.pick_up_last'"),
        ("indigo.pick_up_last,pick_up_last", "indigo.pick_up,pick_up", "stands in row"),
        ("indigo.bath_indigo,", ",", "key is empty"),
        ("mercer-loop", "mercer-lop", "source is 'mercer-lop'; accepted is a key of sources.toml"),
        ("indigo.dips,dips,7", "indigo.dips,dips,6.5", "dips is 6.5; accepted is a whole number"),
        ("bath_indigo,2,g/L", "bath_indigo,2,g/L,g/L", "has 11 cells; accepted is 10"),
        ("key,quantity", "name,quantity", "columns are name,quantity"),
    ],
)
def test_a_broken_default_is_refused_in_one_line(copy: Path, old: str, new: str, said: str) -> None:
    row = change(copy, "defaults.csv", old, new)
    with pytest.raises(InputError) as caught:
        read_defaults(copy)
    message = str(caught.value)
    assert message.startswith(f"defaults.csv row {row}")
    assert said in message
    assert "\n" not in message


@pytest.mark.parametrize(
    ("reader", "name", "old", "new", "said"),
    [
        (read_materials, "materials.csv", "sodium_hydroxide,alkali", "soda,alkali", "substance is 'soda'"),
        (
            read_materials,
            "materials.csv",
            ",caustic,common-practice",
            ",lye,common-practice",
            "caution is 'lye'",
        ),
        (read_materials, "materials.csv", ",95,93,97,", ",9500,93,97,", "accepted is 1 to 100 %"),
        (read_materials, "materials.csv", ",95,93,97,", ",92,93,97,", "strength is 92 %, outside 93 to 97 %"),
        (read_materials, "materials.csv", ",water,1.515,0,", ",air,1.515,0,", "remainder is 'air'"),
        (read_materials, "materials.csv", ",water,1.515,0,", ",water,15.15,0,", "density is 15.15 kg/L"),
        (read_materials, "materials.csv", ",water,1.515,0,", ",water,1.515,6,", "alkali is 6 kg/kg"),
        (read_materials, "materials.csv", ",2.327,0,0,0,", ",,0,0,0,", "own_oxygen_demand is ''"),
        (read_materials, "materials.csv", ",2.327,0,0,0,", ",23.27,0,0,0,", "own oxygen demand is 23.27"),
        (
            read_materials,
            "materials.csv",
            ",1.515,0,,,,,,",
            ",1.515,0,,1.2,,,,",
            "own_oxygen_demand is filled",
        ),
        (read_trade_words, "trade_words.csv", "hydros,sodium_h", "Hydros,sodium_h", "accepted is 'hydros'"),
        (read_trade_words, "trade_words.csv", "lye,sodium_hydroxide", "lye,potash", "means is 'potash'"),
        (read_cautions, "cautions.csv", "icsc-1717", "icsc-17", "source is 'icsc-17'"),
        (read_substances, "substances.csv", "C16H10N2O2", "", "formula is empty"),
        (
            read_caustic_density,
            "caustic_density.csv",
            "3.846,1.03911",
            "3.846,1.01",
            "accepted are both above",
        ),
        (
            read_caustic_density,
            "caustic_density.csv",
            "3.846,1.03911",
            "1.846,1.03911",
            "mass_share is 1.846",
        ),
        (read_treatment_removals, "treatment.csv", ",89,91,93,", ",89,91,193,", "high is 193 %; accepted is"),
        (
            read_treatment_removals,
            "treatment.csv",
            ",89,91,93,",
            ",92,91,93,",
            "low, typical and high are 92",
        ),
        (
            read_treatment_removals,
            "treatment.csv",
            ",89,91,93,",
            ",,91,93,",
            "low is ''; accepted is a number",
        ),
        (read_treatment_removals, "treatment.csv", "93,laboratory", "93,bench", "scale is 'bench'"),
        (
            read_treatment_removals,
            "treatment.csv",
            "93,laboratory,sahin",
            "93,laboratory,shin",
            "source is 'shin",
        ),
        (
            read_treatment_removals,
            "treatment.csv",
            "bioreactor,biology",
            "bioreactor,algae",
            "kind is 'algae'",
        ),
        (
            read_treatment_removals,
            "treatment.csv",
            "bioreactor,biology,suspended",
            "bioreactor,filter,suspended",
            "kind is 'filter'; accepted is 'biology' as above",
        ),
        (
            read_treatment_removals,
            "treatment.csv",
            "filter,unfixed dye,87",
            "filter,colour,87",
            "what is 'colour'",
        ),
        (
            read_treatment_removals,
            "treatment.csv",
            'denim",biology,unfixed dye',
            'denim",biology,"COD, organic"',
            "COD, organic of activated sludge, denim stands above already",
        ),
        (read_published_ranges, "published_ranges.csv", "15,20,L/kg", "25,20,L/kg", "low is 25, above high"),
        (read_published_ranges, "published_ranges.csv", "15,20,L/kg", "15,20,l/kilo", "unit is 'l/kilo'"),
    ],
)
def test_a_broken_row_is_refused_in_one_line(
    copy: Path, reader: Reader, name: str, old: str, new: str, said: str
) -> None:
    row = change(copy, name, old, new)
    with pytest.raises(InputError) as caught:
        reader(copy)
    message = str(caught.value)
    assert message.startswith(f"{name} row {row}")
    assert said in message
    assert "\n" not in message


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('kind = "no source"', 'kind = "rumour"', "kind is 'rumour'; accepted is one of"),
        ("opened = false", 'opened = "no"', "true or false for opened"),
        ('year = ""\n', "", "fields differ; accepted are"),
        ('title = "', "title = ", "cannot be read"),
    ],
)
def test_a_broken_source_is_refused_in_one_line(copy: Path, old: str, new: str, said: str) -> None:
    change(copy, "sources.toml", old, new)
    with pytest.raises(InputError) as caught:
        read_sources(copy)
    assert str(caught.value).startswith("sources.toml")
    assert said in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_missing_table_is_named(copy: Path) -> None:
    (copy / "defaults.csv").unlink()
    with pytest.raises(InputError, match=r"^defaults\.csv: the table is missing"):
        read_defaults(copy)


def test_a_table_that_is_not_text_is_refused(copy: Path) -> None:
    (copy / "defaults.csv").write_bytes(b"key,quantity\xff\xfe")
    with pytest.raises(InputError, match=r"^defaults\.csv: is not UTF-8 text"):
        read_defaults(copy)


def test_a_mark_that_a_spreadsheet_puts_before_the_text_does_no_harm(copy: Path) -> None:
    path = copy / "defaults.csv"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes())
    assert read_defaults(copy) == read_defaults(folder())


def test_nothing_can_be_written_into_the_tables_by_accident() -> None:
    with pytest.raises(TypeError):
        read_defaults(folder())["indigo.dips"] = None  # type: ignore[index]


def test_reading_a_default_loads_nothing_heavy() -> None:
    heavy = {
        "tomllib",
        "hashlib",
        "numpy",
        "pandas",
        "pint",
        "openpyxl",
        "costing.reference_data.source_list",
    }
    code = (
        "import sys; from costing.reference_data import defaults, materials; defaults(); materials(); "
        f"print(sorted({heavy!r} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
