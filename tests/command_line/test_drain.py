"""The command for the officer, and the report that it writes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from costing.front_ends.workbook.build import write_fresh_book
from costing.front_ends.workbook.drain_report import BY_UNIT, SHARED
from costing.report.drain import ESTIMATE
from costing.report.drain_point import work_out_point
from costing.report.drain_tables import point_tables
from tests.command_line.test_command_line import refused, run
from tests.report.demo import demo_mill, demo_result

LOG = "Datum;Auftrag;kg\n01.10.2026;Q-02;5.200,5\n02.10.2026;B-01;1600,0\n05.10.2026;=cmd|x;700,0\n"
COLUMNS = ("--columns", "date=Datum, enquiry=Auftrag, amount=kg")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "160")
    (tmp_path / "october.csv").write_text(LOG)
    return tmp_path


def cells(path: Path) -> dict[str, list[Any]]:
    book = load_workbook(path)
    return {sheet.title: [cell.value for row in sheet.iter_rows() for cell in row] for sheet in book}


def test_the_screen_shows_the_point_and_says_what_it_is_not(folder: Path) -> None:
    done = run("drain")
    assert done.exit_code == 0, done.output
    for words in (
        "Streams to PIT",
        "Parameters of PIT",
        "Condition of the water",
        "Dumps to PIT",
        "no measurement",
    ):
        assert words in done.output


def test_one_command_says_where_a_figure_comes_from(folder: Path) -> None:
    done = run("drain", "--why", "sulfide")
    assert done.exit_code == 0, done.output
    for words in ("sodium sulfide", "rinse after sulfur", "rinsed off", "formula Na2S", "air on the way"):
        assert words in done.output
    done = run("drain", "--why", "pH")
    assert done.exit_code == 0, done.output
    for words in ("Ions of PIT behind the pit", "SO4--", "Activity", "sodium hydroxide", "90 others"):
        assert words in done.output
    assert "'gold' is no parameter of the drain" in refused("drain", "--why", "gold")


def test_a_change_is_shown_side_by_side_and_goes_into_the_report(folder: Path) -> None:
    options = ("drain", "--log", "october.csv", *COLUMNS, "--skip-unknown", "--against", "plan")
    done = run(*options)
    assert done.exit_code == 0, done.output
    for words in (
        "the month 2026-10 against the plan of",
        "behind the treatment",
        "% of mg/L",
        "550 kg/day",
        "What air changes",
    ):
        assert words in done.output
    assert run(*options, "--out", "report.xlsx").exit_code == 0
    found = cells(folder / "report.xlsx")
    assert {"Against", "Against treated", "Against permit", "Permit", "Month"} <= set(found)
    assert "is no file and no point of the book" in refused("drain", "--against", "nowhere.xlsx")
    assert "plan goes with a log" in refused("drain", "--against", "plan")
    assert "accepted is --why without it" in refused("drain", "--why", "pH", "--against", "PIT")


def test_the_officers_first_questions_are_answered_on_one_screen(folder: Path) -> None:
    """Per tonne and fresh beside the pit; acid and sulfate to a pH that is asked; what to measure first."""
    done = run("drain", "--to-ph", "9")
    assert done.exit_code == 0, done.output
    assert "to pH 9." in done.output
    heads = done.output.partition("Parameters of PIT")[2].partition("Flow")[0]
    assert all(word in heads for word in ("kg/t of yarn", "Fresh", "Behind the pit", "From", "To"))
    assert "measure first, for total nitrogen as N, TDS, COD: day variation" in done.output
    assert "accepted is 6 to 12" in refused("drain", "--to-ph", "13")


def test_json_holds_every_table_and_its_grounds(folder: Path) -> None:
    done = run("drain", "--json")
    found = json.loads(done.output)
    assert {"point_streams", "point_parameters", "point_peaks", "point_assumptions", "point_cautions"} <= set(
        found
    )


def test_the_report_is_written_whole_and_opens_again(folder: Path) -> None:
    done = run("drain", "--log", "october.csv", *COLUMNS, "--skip-unknown", "--out", "report.xlsx")
    assert done.exit_code == 0, done.output
    assert "left out, '=cmd|x' (row 4): not in the book" in done.output
    found = cells(folder / "report.xlsx")
    names = list(found)
    assert names[:4] == ["Summary", "Month", "Days", "What ran"]
    assert names[-3:] == ["Assumptions", "Sources", "Cautions"]
    assert {"Streams", "Loads by stream", "Load charts", "Parameters", "Condition", "Dumps"} <= set(names)
    assert any("=cmd|x" in str(value) for value in found["Summary"])
    assert any("Acid and sulfide" in str(value) for value in found["Cautions"])
    assert any("licensed practice come first" in str(value) for value in found["Cautions"])
    assert any(value == "measure your own" for value in found["Assumptions"])
    assert not any(str(value).startswith("=") for values in found.values() for value in values)
    sheet: Any = load_workbook(folder / "report.xlsx")["Load charts"]
    assert len(sheet._charts) == 4


def test_every_sheet_prints_on_pages_and_says_that_it_is_an_estimate(folder: Path) -> None:
    assert run("drain", "--out", "report.xlsx").exit_code == 0
    book: Any = load_workbook(folder / "report.xlsx")
    for sheet in book:
        assert sheet.page_setup.paperSize == 9, sheet.title
        assert sheet.oddFooter.right.text == "page &P of &N"
        text = " ".join(str(cell.value) for row in sheet.iter_rows(max_row=5) for cell in row if cell.value)
        if sheet.title not in ("Assumptions", "Sources", "Cautions"):
            assert "not a measurement of compliance" in text, sheet.title
            assert ESTIMATE not in text


def test_the_whole_note_stands_above_each_table(folder: Path) -> None:
    """A third line would be lost under the alert."""
    found = point_tables(demo_mill(), work_out_point(demo_mill(), "PIT", demo_result))
    assert run("drain", "--out", "report.xlsx").exit_code == 0
    book: Any = load_workbook(folder / "report.xlsx")
    heads = {str(sheet.cell(1, 1).value): sheet for sheet in book}
    for table in found:
        if table.key in (*SHARED, *BY_UNIT):  # they have sheets of their own
            continue
        sheet = heads[table.title]
        lines = [sheet.cell(row, 1).value for row in (2, 3)]
        assert " ".join(filter(None, lines)) == table.note.replace(ESTIMATE, "").strip()


def test_a_report_replaces_only_a_report(folder: Path) -> None:
    (folder / "other.xlsx").write_bytes(b"mine")
    assert "is there already" in refused("drain", "--out", "other.xlsx")
    assert "holds no earlier results" in refused("drain", "--out", "other.xlsx", "--overwrite")
    assert (folder / "other.xlsx").read_bytes() == b"mine"
    assert run("drain", "--out", "report.xlsx").exit_code == 0
    assert run("drain", "--out", "report.xlsx", "--overwrite").exit_code == 0
    assert "is read here" in refused("drain", "--log", "october.csv", "--out", "october.csv")


def test_options_that_mean_nothing_together_are_refused(folder: Path) -> None:
    assert "accepted is --log FILE" in refused("drain", "--month", "2026-10")
    assert "keeps what --columns says" in refused("drain", "--log", "october.csv", "--keep-columns")
    assert "goes with the report" in refused("drain", "--out", "a.xlsx", "--json")
    assert "point 'RIVER' is not in the book" in refused("drain", "--point", "RIVER")
    assert "1 not known: '=cmd|x' (row 4)" in refused("drain", "--log", "october.csv", *COLUMNS)


def test_columns_are_kept_when_asked(folder: Path) -> None:
    done = run("drain", "--log", "october.csv", *COLUMNS, "--keep-columns", "--skip-unknown")
    assert done.exit_code == 0, done.output
    assert run("drain", "--log", "october.csv", "--skip-unknown").exit_code == 0


def test_the_offers_of_another_day_bring_another_strength_to_the_drain(folder: Path) -> None:
    """The same hydrosulfite from a product of 44 % in place of 88 %: more of what drains is inert matter."""
    write_fresh_book(folder / "mill.xlsx")
    book = load_workbook(folder / "mill.xlsx")
    sheet = book["Offers"]
    heads = {cell.value: cell.column for row in sheet.iter_rows() for cell in row if cell.column is not None}
    for row in range(1, sheet.max_row + 1):
        if str(sheet.cell(row, heads["Valid from"]).value).startswith("2026-01-01"):
            sheet.cell(row, heads["Strength, %"]).value = 44
    book.save(folder / "mill.xlsx")

    def solids(*day: str) -> float:
        done = run("drain", "mill.xlsx", "--json", *day)
        assert done.exit_code == 0, done.output
        rows = json.loads(done.stdout)["point_parameters"]
        return float(next(row for row in rows if row["Parameter"] == "Dissolved solids")["Load [kg/day]"])

    assert solids("--on", "2026-01-15") > 1.01 * solids()
    assert "has no price on 2027-01-15" in refused("drain", "--on", "2027-01-15")
