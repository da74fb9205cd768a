"""One enquiry that is refused does not hold up the others, and is in no sum as if it were nothing."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from openpyxl import load_workbook

from costing.front_ends.command_line import main
from tests.workbook.editing import changed, in_column, in_row

BAD = in_row("Enquiries", "Q-01", "Order length", -5)
NO_ROPES = in_row("Enquiries", "Q-01", "Sets side by side", 9)
CASES = {
    "refused when it is read": (BAD, ["Q-01"], "Enquiries!"),
    "refused when it is worked out": (NO_ROPES, ["Q-01"], "rope places"),
    "a recipe that is refused": (
        in_column("Recipes", "DARK-POWDER", "route", None),
        ["Q-01"],
        "route is empty",
    ),
}


def quote(path: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["quote", str(path), *options])


@pytest.mark.parametrize("name", CASES)
def test_others_are_quoted_and_the_refused_is_listed(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    edit, codes, said = CASES[name]
    monkeypatch.chdir(tmp_path)
    done = quote(changed(tmp_path, edit), "-e", "Q-01", "-e", "S-01", "-e", "N-01")
    assert done.exit_code == 3, done.output
    for code in codes:
        (line,) = [
            text for text in done.stderr.splitlines() if text.startswith(f"refused, {code}: my_mill.xlsx")
        ]
        assert said in line
    assert "2 quote(s)" in done.stdout
    assert "refused" in done.stdout
    book = load_workbook(tmp_path / "my_mill_results.xlsx")
    checks = [[cell.value for cell in row] for row in book["Checks"].iter_rows(min_row=7)]
    assert checks[0][:2] == ["Q-01", "refused"]
    assert said in f"{checks[0][2]} {checks[0][3]}"
    for sheet in ("Summary", "Cost by group", "Use", "Cost lines", "Ledger", "Discharge loads"):
        found = [row for row in book[sheet].iter_rows(min_row=7) if row[0].value == "Q-01"]
        assert found, sheet
        errors = [cell.value for cell in found[0] if cell.data_type == "e"]
        assert errors, sheet
        assert set(errors) == {"#N/A"}
    assert "Q-01" in str(book["Summary"]["A4"].value)


def test_json_says_refused_where_a_number_would_be(tmp_path: Path) -> None:
    done = quote(changed(tmp_path, BAD), "-e", "Q-01", "-e", "S-01", "--json")
    assert done.exit_code == 3
    document = json.loads(done.stdout)
    bad = [row for row in document["cost_by_group"] if row["Enquiry"] == "Q-01"]
    assert [row["All [EUR per m]"] for row in bad] == ["refused"]
    assert document["checks"][0]["Kind"] == "refused"


def test_all_refused_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    done = quote(changed(tmp_path, BAD), "-e", "Q-01")
    assert done.exit_code == 2
    assert "Enquiries!" in done.stderr
    assert [item.name for item in tmp_path.iterdir()] == ["my_mill.xlsx"]


def test_what_needs_all_refuses_by_name(tmp_path: Path) -> None:
    path = str(changed(tmp_path, BAD))
    done = CliRunner().invoke(main, ["compare", path])
    assert done.exit_code == 2
    assert "Enquiries!" in done.stderr
    assert CliRunner().invoke(main, ["ledger", path, "-e", "S-01"]).exit_code == 0
