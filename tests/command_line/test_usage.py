"""Actual use against standard, on the command line and in files."""

from __future__ import annotations

import csv
import json
import zipfile
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from costing.front_ends.record_files import ISSUES, read_issues, read_production
from costing.front_ends.row_files.column_map import asked_columns
from costing.front_ends.waterfall_axis import axis_of
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.report import Column, Table
from tests.command_line.test_command_line import refused, run

MILL = read_book(demo_book())
EFFECTS = ("Usage [EUR]", "Strength [EUR]", "Price [EUR]")
PLAN = ("Volume [EUR]", "Mix [EUR]")
OVER = "Over standard [EUR]"
MADE = "Date,Enquiry,Amount,Unit\n2025-01-06,Q-02,10,t\n"
ISSUED = "Datum;Artikel;Menge;Gehalt;Preis;Schicht\n"
COLUMNS = "date=Datum, material=Artikel, mass=Menge, shift=Schicht, price=Preis"


def told(*arguments: str) -> Any:
    done = run("usage", *arguments, "--json")
    assert done.exit_code == 0, done.output
    return json.loads(done.stdout)


def cents(*amounts: Any) -> int:
    return sum(round(100 * amount) for amount in amounts)


def written(path: Path, text: str) -> str:
    path.write_text(text, "utf-8")
    return str(path)


@pytest.mark.parametrize("field", ["range", "shift", "month"])
def test_every_row_and_every_column_adds_up_as_shown(field: str) -> None:
    """Planned cost over the effects to actual cost; lines to materials, materials to all, values to all."""
    found = told("--by", field)
    bridge = {row["Cost and effects"]: row for row in found["usage"]}
    for name in [name for name in bridge["mix"] if name.endswith("[EUR]")]:
        cost = {of: cents(row[name]) for of, row in bridge.items()}
        assert cost["planned cost"] + cost["volume"] + cost["mix"] == cost["standard cost"]
        effects = cost["usage"] + cost["strength"] + cost["price"]
        assert cost["standard cost"] + effects == cost["actual cost"]
    values = [name for name in bridge["mix"] if name.endswith("[EUR]") and not name.startswith("All")]
    for row in bridge.values():
        assert not values or cents(*(row[name] for name in values)) == cents(row["All [EUR]"])
    *materials, total = found["usage_materials"]
    *lines, of_lines = found[f"usage_by_{field}"]
    for name in (*EFFECTS, OVER, *PLAN):
        assert cents(*(row[name] for row in materials)) == cents(total[name]) == cents(of_lines[name])
        for row in materials:
            own = [line[name] for line in lines if line["Material"] == row["Material"]]
            assert cents(*own) == cents(row[name])
    for row in (*materials, *lines):
        assert cents(*(row[name] for name in EFFECTS)) == cents(row[OVER])
    assert [abs(row[OVER]) for row in lines] == sorted((abs(row[OVER]) for row in lines), reverse=True)


def test_the_buyer_sees_which_effect_and_which_range_and_shift() -> None:
    """The demo's caustic: above the standard on one range, by usage alone, most of it on the night shift."""
    ((rope_a, rope_b, _), by_shift) = (
        told("-m", "LYE-50", "--by", field)[f"usage_by_{field}"] for field in ("range", "shift")
    )
    assert (rope_a["Range"], rope_b["Range"]) == ("ROPE-A", "ROPE-B")
    assert rope_a["More [%]"] == pytest.approx(11.5, abs=0.1)
    assert rope_a["Usage [EUR]"] == rope_a[OVER]
    assert abs(rope_b[OVER]) < 1.0
    assert by_shift[0]["Shift"] == "night"
    hydro = told("-m", "HYDRO-88")["usage_materials"][0]
    assert hydro["Strength [EUR]"] > hydro["Usage [EUR]"] > 0.0 > hydro["Price [EUR]"]
    remarks = [row["Remark"] for row in told("--by", "shift")["usage_remarks"]]
    assert any(text.startswith("WET-A-40: standard") for text in remarks)
    assert any(text.startswith("not booked by shift: INDIGO-94") for text in remarks)


def test_the_tables_stand_in_eighty_columns(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    lines = run("usage").stdout.split("\n")
    end = next(at for at, line in enumerate(lines) if line.startswith("WET-A-40: "))
    assert max(map(len, lines[:end])) <= 80


def test_files_of_other_systems_are_read_with_kept_maps(tmp_path: Path) -> None:
    """Semicolons, decimal comma, assay in the heading, price by the tonne, a return; then by the map kept."""
    made = written(tmp_path / "made.csv", MADE)
    rows = "06.01.2025;lye-50;600,5;48;460;N\n07.01.2025;LYE-50;-0,5;48;460;N\n"
    heading = (
        ISSUED.replace("Gehalt", "Gehalt %").replace("Preis", "Preis EUR/t").replace("Menge", "Menge kg")
    )
    issues = written(tmp_path / "issues.csv", heading + rows)
    columns = (
        "date=Datum, material=Artikel, mass=Menge kg, strength=Gehalt %, price=Preis EUR/t, shift=Schicht"
    )
    asked = ("--production", made, "--issues", issues, "-m", "LYE-50", "--by", "shift")
    first = told(*asked, "--issues-columns", columns, "--keep-columns")
    (row, _) = first["usage_materials"]
    assert row["Issued [kg]"] == 600.0
    standard, price = row["Standard [kg]"], 0.64 / 1.515 + 0.04 / 1.515
    assert row["Usage [EUR]"] == pytest.approx((600.0 * 0.48 / 0.5 - standard) * price, abs=0.02)
    assert row["Strength [EUR]"] == pytest.approx(600.0 * 0.04 * price, abs=0.02)
    assert row["Price [EUR]"] == pytest.approx(600.0 * (0.46 - price), abs=0.02)
    assert told(*asked) == first
    assert first["usage_by_shift"][0]["Shift"] == "N"


@pytest.mark.parametrize(
    ("row", "columns", "said"),
    [
        ("2025-01-06;=HYPERLINK(1);5 kg;;;", "", """1 not known: '=HYPERLINK(1)' (row 2)"""),
        ("2025-01-06;LYE-50;5;;;", "", "mass"),
        ("2025-01-06;LYE-50;5 m;;;", "", "mass"),
        (
            "2025-01-06;LYE-50;1,234 kg;;;",
            "",
            "no row tells whether its sign is decimal; accepted is --issues",
        ),
        ("2025-01-06;LYE-50;5 kg;;1 USD;", "", "price is in 'USD'; accepted is the mill's money, EUR"),
        ("2025-01-06;LYE-50;5 kg;;;Z", "range=Schicht, ", "row 2: range 'Z' is not in the book"),
        ("2025-01-06;LYE-50;5 kg;12;;", "strength=Gehalt, ", "row 2: the unit of strength is missing"),
        ("2025-01-06;;5 kg;;;", "", "row 2: material is empty"),
        ("", "", "holds no row of a material"),
    ],
)
def test_rows_that_cannot_be_right_are_refused(tmp_path: Path, row: str, columns: str, said: str) -> None:
    """Each with its file and row; nothing is worked out, no formula is run."""
    path = tmp_path / "issues.csv"
    written(path, ISSUED + row + "\n")
    asked = columns + (COLUMNS.replace(", shift=Schicht", "") if "Schicht" in columns else COLUMNS)
    with pytest.raises(InputError) as caught:
        read_issues(path, MILL, asked_columns(asked, path, ISSUES))
    assert said in str(caught.value)
    assert "issues.csv" in str(caught.value)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2025-01-06,Q-02,10 kg,5 m,\n", "row 2: planned is counted unlike the amount"),
        ("2025-01-06,Q-02,-1 kg,,\n", "row 2: amount is -1 kg; accepted is 0 and above"),
        ("2025-01-06,Q-02,10,,\n", "row 2: the amount has no unit"),
        ("2025-01-06,=1+1,10 kg,,\n", "1 not known: '=1+1' (row 2)"),
        ("2025-01-06,Q-02,10 kg,,ROPE-Z\n", "row 2: range 'ROPE-Z' is not in the book"),
    ],
)
def test_production_that_cannot_be_right_is_refused(tmp_path: Path, text: str, said: str) -> None:
    """Likewise."""
    path = tmp_path / "made.csv"
    written(path, "Date,Enquiry,Amount,Planned,Range\n" + text)
    with pytest.raises(InputError) as caught:
        read_production(path, MILL, {})
    assert said in str(caught.value)
    assert "made.csv" in str(caught.value)


@pytest.mark.parametrize("heading", ["Preis USD/kg", "Preis /L", "USD"])
def test_a_price_in_other_money_or_by_volume_is_refused(tmp_path: Path, heading: str) -> None:
    """As the heading says it; the mill counts in EUR."""
    path = tmp_path / "issues.csv"
    written(path, ISSUED.replace("Preis", heading) + "2025-01-06;LYE-50;5 kg;;1;\n")
    with pytest.raises(InputError, match=r"issues\.csv, row 1: "):
        read_issues(path, MILL, asked_columns(COLUMNS.replace("Preis", heading), path, ISSUES))


def test_two_counts_and_what_came_between_them_stand_for_the_issues(tmp_path: Path) -> None:
    """1000 kg there, 2000 came, 2400 left: 600 used; more left than there was is a missing delivery."""
    made = written(tmp_path / "made.csv", MADE)
    heading = "Date,Material,Opening,Received,Closing,Unit\n"
    counts = written(tmp_path / "counts.csv", heading + "2025-01-31,LYE-50,1000,2000,2400,kg\n")
    asked = ("--production", made, "--stock-take", counts)
    (row, _) = told(*asked, "-m", "LYE-50")["usage_materials"]
    assert row["Issued [kg]"] == 600.0
    assert "accepted is one of the two" in refused("usage", *asked, "--issues", made)
    written(tmp_path / "counts.csv", heading + "2025-01-31,LYE-50,1000,2000,3001,kg\n")
    assert "counts.csv, row 2: closing is 3,001 kg, more than opening and received, 3,000 kg" in refused(
        "usage", *asked
    )


def test_production_without_a_standard_and_materials_without_a_price_poison_the_sums(tmp_path: Path) -> None:
    """Refused by name; with --without-refused they are in no total, and every table says so."""
    made = written(tmp_path / "made.csv", MADE + "2025-01-07,Q-99,5,t\n")
    assert "1 not known: 'Q-99' (row 3)" in refused("usage", "--production", made, "--issues", made)
    on = ("usage", "--on", "2019-01-01")
    assert "the currency of material 'INDIGO-94', begin on 2025-01-06" in refused(*on)
    done = run(*on, "--without-refused")
    assert done.exit_code == 0, done.output
    assert done.stdout.count("INCOMPLETE: ") == 4
    assert "materials without a price are in no money" in done.stdout
    table = tmp_path / "use.csv"
    found = json.loads(run(*on, "--without-refused", "--json", "--out", str(table)).stdout)
    assert found["usage_remarks"][0]["Remark"].startswith("INCOMPLETE: ")
    assert table.read_text("utf-8-sig").splitlines()[-1].startswith("INCOMPLETE: ")
    rows = found["usage_materials"]
    (hydro,) = (row for row in rows if row["Material"] == "HYDRO-88")
    assert hydro[OVER] is None
    assert hydro["Issued [kg]"] == 2380.0


def test_a_period_is_a_month_or_a_week() -> None:
    """The week from 2024-12-09 by its name; others are refused with those that are there."""
    week = told("--period", "2024-W50", "--by", "week")
    assert {row["Week from"] for row in week["usage_by_week"]} == {"2024-12-09", "sum"}
    assert "there are: 2024-12" in refused("usage", "--period", "2025-01")
    for wrong in ("January", "2024-W54", "2024-13"):
        assert "accepted is a month such as" in refused("usage", "--period", wrong)


def test_results_are_written_whole_and_text_stays_text(tmp_path: Path) -> None:
    """A waterfall is in the workbook; a shift that looks like a formula is a text; nothing is replaced."""
    made = written(tmp_path / "made.csv", MADE)
    issues = written(tmp_path / "issues.csv", ISSUED + "2025-01-06;LYE-50;600 kg;;;=1+1\n")
    asked = ("--production", made, "--issues", issues, "--issues-columns", COLUMNS, "--by", "shift")
    out, table = tmp_path / "use.xlsx", tmp_path / "use.csv"
    for path in (out, table):
        assert run("usage", *asked, "--out", str(path)).exit_code == 0
    with zipfile.ZipFile(out) as parts:
        (chart,) = (name for name in parts.namelist() if name.startswith("xl/charts/chart"))
        assert "noFill" in parts.read(chart).decode()
    book = openpyxl.load_workbook(out)
    assert book.sheetnames[:3] == ["Effects", "Waterfall", "By material"]
    (cell,) = (cell for row in book["By shift"].iter_rows() for cell in row if cell.value == "=1+1")
    assert cell.data_type == "s"
    with table.open(encoding="utf-8-sig") as stream:
        assert "'=1+1" in {row["Shift"] for row in csv.DictReader(stream)}
    assert "is there already" in refused("usage", "--out", str(out))
    assert run("usage", *asked, "--out", str(out), "--overwrite").exit_code == 0


def test_a_wrong_cell_of_the_records_takes_no_quote_away(tmp_path: Path) -> None:
    """A range that the book does not know: usage is refused at its cell, a quote is not."""
    book = openpyxl.load_workbook(demo_book())
    sheet = book["Store issues"]
    cell = next(cell for row in sheet.iter_rows() for cell in row if cell.value == "ROPE-A")
    cell.value = "ROPE-Z"
    path = tmp_path / "mill.xlsx"
    book.save(path)
    assert f"Store issues!{cell.coordinate}: range 'ROPE-Z' is not in the book" in refused("usage", str(path))
    assert run("quote", str(path), "-e", "Q-01", "--json").exit_code == 0
    del book["Store issues"]
    book.save(path)
    assert "Store issues: holds nothing" in refused("usage", str(path))


def test_the_axis_of_a_waterfall_begins_below_the_lowest_bar_and_says_so() -> None:
    """Effects of 100 on 1000 to 1100: from 970 on; of 900 on 1000: from 0; none below 0."""
    columns = [Column("", "EUR") for _ in range(6)]

    def axis(*rows: list[Any]) -> Any:
        return axis_of(Table("", "", "", columns, [["", 0.0, *row] for row in rows]))

    whole = axis([0.0, 1000.0, 0.0, 0.0], [1000.0, 0.0, 100.0, 0.0], [0.0, 1100.0, 0.0, 0.0])
    assert (whole.begin, whole.title) == (900.0, "EUR; the axis begins at 900")
    assert axis([0.0, 1000.0, 0.0, 0.0], [100.0, 0.0, 0.0, 900.0], [0.0, 100.0, 0.0, 0.0]).begin == 0.0
    assert axis([0.0, 10.0, 0.0, 0.0], [-5.0, 0.0, 0.0, 15.0], [0.0, -5.0, 0.0, 0.0]) is None
