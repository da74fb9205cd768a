"""The command that calibrates: from files of records to rows of the book that a quote counts with."""

from __future__ import annotations

import csv
import datetime
import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy
import pytest
from click.testing import CliRunner
from openpyxl import load_workbook
from openpyxl.chart import ScatterChart
from openpyxl.workbook import Workbook

from costing.book.calibrations import SHEET
from costing.front_ends.command_line import main
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.settings.inputs import STEP, Place, inputs_of, with_inputs
from tests.workbook.editing import cell_with, changed, sheet_of

CODES = ("Q-01", "S-01", "B-01")
KNOWN = {"ROPE-A": 0.012, "SHEET-C": 0.012}  # oxygen at the surface [kg/m2/h]
STORE = ("HYDRO-88", "LYE-50")
OXYGEN = Place(STEP, "indigo dyeing", "surface_oxygen")


@pytest.fixture
def records(tmp_path: Path) -> tuple[str, ...]:
    return written(tmp_path, CODES)


def written(folder: Path, codes: Sequence[str]) -> tuple[str, ...]:
    """Ten months in which the surface takes four times the typical oxygen; the options with the files."""
    mill = read_book(demo_book())
    random = numpy.random.default_rng(2)
    made: list[list[Any]] = [["date", "enquiry", "amount [kg]"]]
    issued: list[list[Any]] = [["date", "material", "mass [kg]"]]
    uses = {}
    for code in codes:
        enquiry = mill.enquiry(code)
        ledger = open_ledger(*with_inputs(mill, enquiry, {OXYGEN: KNOWN[enquiry.range]}))
        uses[code] = [ledger.used(material) for material in STORE]
    for month in range(1, 11):
        day = datetime.date(2026, month, 20)
        masses = random.uniform(1_000.0, 40_000.0, len(codes)).round(1)
        made += [[day, code, mass] for code, mass in zip(codes, masses, strict=True)]
        for place, material in enumerate(STORE):
            exact = sum(mass * uses[code][place] for code, mass in zip(codes, masses, strict=True))
            issued.append([day, material, round(exact * (1.0 + 0.003 * random.standard_normal()), 3)])
    for name, rows in (("made.csv", made), ("issues.csv", issued)):
        with (folder / name).open("w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows(rows)
    return ("--production", str(folder / "made.csv"), "--issues", str(folder / "issues.csv"))


def asked(*words: str) -> Any:
    return CliRunner().invoke(main, ["calibrate", *words])


def test_known_oxygen_is_found_and_the_months_held_back_are_nearer(records: tuple[str, ...]) -> None:
    done = asked(*records, "-f", "surface oxygen", "--json")
    assert done.exit_code == 0, done.output
    found = json.loads(done.stdout)
    (row,) = found["calibrated_factors"]
    assert row["Low"] <= 12.0 <= row["High"]
    assert row["Calibrated"] == pytest.approx(12.0, rel=0.1)
    assert row["What the periods say"] == "told"
    for held in found["calibration_error"]:
        assert held["Off after [%]"] < 1.0 < held["Off before [%]"] or held["Material"] == "LYE-50"
    assert {one["Part"] for one in found["predicted_use"][-3:]} == {"held back"}
    assert len(found["predicted_use"]) == 20


def test_the_rows_that_are_written_count_when_they_are_pasted(
    records: tuple[str, ...], tmp_path: Path
) -> None:
    rows = tmp_path / "rows.csv"
    words = ("-f", "surface oxygen", "--name", "AUTUMN", "--day", "2026-11-29", "--out", str(rows))
    done = asked(*records, *words)
    assert done.exit_code == 0, done.output
    with rows.open(encoding="utf-8-sig", newline="") as file:
        heads, *lines = csv.reader(file)
    assert [line[:5] for line in lines] == [
        ["AUTUMN", "2026-11-29", range_, "indigo dyeing", "surface oxygen"] for range_ in KNOWN
    ]

    def paste(book: Workbook) -> None:
        sheet = sheet_of(book, SHEET)
        head = cell_with(sheet, "Calibration", column=1)
        assert [sheet.cell(head.row, place).value for place in range(1, len(heads) + 1)] == heads
        for number, line in enumerate(lines, start=head.row + 1):
            for place, text in enumerate(line, start=1):
                value: Any = float(text) if place in (6, 7, 8) else text
                sheet.cell(number, place).value = datetime.date.fromisoformat(text) if place == 2 else value
        costs = sheet_of(book, "Mill costs")
        costs.cell(cell_with(costs, "calibration", column=1).row, 2).value = "autumn"

    mill = read_book(changed(tmp_path, paste))
    for code in CODES:
        assert inputs_of(mill, mill.enquiry(code))[OXYGEN] == pytest.approx(float(lines[0][5]) / 1000.0)
    # and is set aside when the next calibration is made
    again = asked(str(tmp_path / "my_mill.xlsx"), *records, "-f", "surface oxygen")
    assert again.exit_code == 0, again.output
    assert "calibration AUTUMN is set aside" in again.output


def test_a_workbook_with_charts_and_a_picture_are_written(records: tuple[str, ...], tmp_path: Path) -> None:
    book, picture = tmp_path / "autumn.xlsx", tmp_path / "autumn.svg"
    done = asked(*records, "-f", "surface oxygen", "--out", str(book), "--picture", str(picture))
    assert done.exit_code == 0, done.output
    sheets = load_workbook(book)
    assert sheets.sheetnames == [
        *("Calibration", "Rows to paste", "Periods held back", "Use HYDRO-88", "Use LYE-50", "Remarks")
    ]
    (chart,) = sheets["Use HYDRO-88"]._charts  # type: ignore[attr-defined]
    assert isinstance(chart, ScatterChart)
    assert len(chart.series) == 3
    assert picture.read_bytes().startswith(b"<?xml")
    twice = asked(*records, "-f", "surface oxygen", "--out", str(book))
    assert twice.exit_code == 2  # nothing is overwritten unasked


def test_what_cannot_be_told_apart_is_told_in_words(tmp_path: Path) -> None:
    """One recipe alone: sky and surface take hydrosulfite in the same proportion month after month."""
    done = asked(*written(tmp_path, CODES[:1]))
    assert done.exit_code == 0, done.output
    said = " ".join(done.output.split())
    assert "indigo: sky destruction and indigo: surface oxygen move together in these periods" in said
    assert "what is told is indigo: sky destruction + " in said
    assert "there is no calibration to apply" in said


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("-f", "surface oxigen of"), "there are: "),
        (("--hold-back", "10"), "10 with 10 held back"),
        (("--pick", "sulfite oxidised"), "names a factor that is not fitted"),
        (("--bounds", "surface oxygen", "1 kg", "10"), "surface oxygen"),
        (("--noise", "HYDRO-88", "2 %"), "is not given for LYE-50"),
        (("--range", "ROPE-Z"), "'ROPE-Z' is not in the book"),
        (("--day", "29.11.2026"), "accepted is a day such as"),
        (("--out", "rows.txt"), ".xlsx"),
    ],
)
def test_what_makes_no_sense_is_refused_in_one_line(
    records: tuple[str, ...], words: tuple[str, ...], message: str
) -> None:
    done = asked(*records, *words)
    assert done.exit_code == 2, done.output
    assert message in done.output
    assert "Traceback" not in done.output


def test_the_line_of_the_first_help_runs_and_one_month_alone_is_told_to_go_by_weeks() -> None:
    text = CliRunner().invoke(main, ["--help"]).output
    (line,) = (one for one in text.split("\n") if one.strip().startswith("costing calibrate"))
    words = line.split("  fit ")[0].split()
    assert CliRunner().invoke(main, words[1:]).exit_code == 0
    refused = CliRunner().invoke(main, ["calibrate"])
    assert refused.exit_code == 2
    assert "weeks in place of months" in refused.output
