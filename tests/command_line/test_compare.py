"""The command that puts enquiries side by side."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from tests.command_line.test_command_line import refused, run

ON_THE_FLY = (
    *("--style", "D-1200", "--length", "40000", "--range", "ROPE-A"),
    *("--recipe", "DARK-POWDER", "--recipe", "DARK-BOTTOM"),
)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def price(*arguments: str) -> dict[str, float]:
    document = json.loads(run("compare", *arguments, "--json").output)
    (found,) = [row for row in document["compare"] if (row["Figure"], row["Unit"]) == ("Price", "EUR/m")]
    return found  # type: ignore[no-any-return]


def test_one_command_says_what_another_recipe_does_to_the_price() -> None:
    done = run("compare", "--like", "Q-02", "--recipe", "DARK-BOTTOM")
    assert done.exit_code == 0, done.output
    assert "DARK-BOTTOM" in done.output
    assert "are those of Q-02" in done.output
    # a bottom in place of powder costs about the same: the clerk must not read a price into it
    assert "cannot be told apart" in " ".join(done.output.split())
    asked, full = price("--like", "Q-02", "--recipe", "DARK-BOTTOM"), price(*ON_THE_FLY)
    assert asked == full
    quoted = price("-e", "Q-02", "-e", "Q-05")
    assert quoted["Q-02"] == asked["DARK-POWDER"]
    assert quoted["Q-05 [difference]"] == pytest.approx(quoted["Q-05"] - quoted["Q-02"])
    assert quoted["Q-05 [%]"] == pytest.approx(100.0 * (quoted["Q-05"] / quoted["Q-02"] - 1.0))


def test_two_lengths_of_one_cloth_are_both_compared() -> None:
    asked = price("--like", "Q-02", "--length", "8000", "--length", "40 km")
    assert asked["40,000 m"] == price("-e", "Q-02")["Q-02"]
    assert asked["8,000 m"] > asked["40,000 m"]


def test_what_is_refused_writes_no_picture(folder: Path) -> None:
    (folder / "there.xlsx").write_bytes(b"mine")
    for command in ("quote", "compare"):
        words = ("-e", "Q-02", "-e", "Q-05", "--out", "there.xlsx", "--picture", "bars.png")
        assert "is there already" in refused(command, *words)
        assert not (folder / "bars.png").exists()


def test_without_a_name_all_enquiries_of_the_book_are_compared() -> None:
    done = run("compare")
    assert done.exit_code == 0
    assert all(code in done.output for code in ("Q-01", "Q-10", "B-01", "W-01"))


def test_an_enquiry_named_twice_stands_once() -> None:
    assert price("-e", "Q-02", "-e", "Q-02", "-e", "Q-05") == price("-e", "Q-02", "-e", "Q-05")


def test_the_comparison_is_written_with_its_charts(folder: Path) -> None:
    assert run("compare", *ON_THE_FLY, "--out", "asked.xlsx").exit_code == 0
    book = load_workbook(folder / "asked.xlsx")
    assert book.sheetnames == ["Compare", "Cost by group", "Checks", "Record"]
    sheet: Any = book["Compare"]
    assert len(sheet._charts) == 2
    rows = {row[1:3]: row[3:7] for row in sheet.iter_rows(min_row=7, values_only=True)}
    asked = price(*ON_THE_FLY)
    assert rows["Price", "EUR/m"][:2] == pytest.approx((asked["DARK-POWDER"], asked["DARK-BOTTOM"]))
    assert "is there already" in refused("compare", *ON_THE_FLY, "--out", "asked.xlsx")
    assert run("compare", *ON_THE_FLY, "--out", "asked.xlsx", "--overwrite").exit_code == 0
    (folder / "mine.xlsx").write_bytes(b"mine")
    assert "holds no earlier" in refused("compare", *ON_THE_FLY, "--out", "mine.xlsx", "--overwrite")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("-e", "Q-99"), "'Q-99' is not in the book"),
        (("-e", "Q-02", "--recipe", "BLACK"), "accepted is --like"),
        (("--like", "Q-99", "--recipe", "BLACK"), "--like: enquiry 'Q-99'"),
        (("--like", "Q-02", "--recipe", "BLUE"), "--recipe: recipe 'BLUE'"),
        (("--like", "Q-02", "--recipe", "BLACK", "--length", "3 kg"), "--length: order length has the unit"),
        (("--like", "Q-02", "--recipe", "BLACK", "--length", "0"), "--length: order length is 0"),
        (("--like", "Q-02"), "nothing to compare it with"),
        (("--like", "Q-02", "--recipe", "DARK-BOTTOM", "--range", "SHEET-C"), "Ranges!"),
        (("--json", "--out", "x.xlsx"), "accepted is --json without it"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(arguments: tuple[str, ...], said: str) -> None:
    assert said in refused("compare", *arguments)
