"""The command that lists regulations, prints their limits and writes rows for the sheet Permit."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import pytest

from costing.reference_data.discharge_limits import presets
from tests.command_line.test_command_line import refused, run


def rows_of(*arguments: str) -> list[dict[str, Any]]:
    done = run("limits", *arguments, "--json")
    assert done.exit_code == 0, done.output
    (rows,) = json.loads(done.output).values()
    found: list[dict[str, Any]] = rows
    return found


def test_the_list_names_every_regulation_and_says_which_were_read() -> None:
    rows = rows_of()
    assert [row["Name"] for row in rows] == list(presets())
    kinds = {row["Name"]: row["What it has"] for row in rows}
    assert kinds["us_410_g_bpt"] == kinds["de_annex_38"] == "values read"
    assert kinds["world_bank_ehs_2007"] == "form to fill in"


@pytest.mark.parametrize("name", list(presets()))
def test_every_row_has_its_edition_and_the_reminder(name: str) -> None:
    done = run("limits", name)
    assert done.exit_code == 0, done.output
    assert "verify with your permit" in " ".join(done.output.split())
    assert all("verify with your permit" in row["Reference"] for row in rows_of(name))
    for word in ("compliant", "complies"):
        assert word not in done.output.casefold()


def test_blocks_give_loads_per_day() -> None:
    """42.3 kg/t on 8 t is 338.4 kg a day; with 30.0 kg/t on 10 t it is 638.4; pH stays as it is."""
    blocks = ("us_410_g_bpt", "us_410_d_bpt", "--production", "8t/day", "--production", "10t/day")
    for arguments, expected in (
        (("us_410_g_bpt", "--production", "8 t/day"), "at most 338.4"),
        (("us_410_g_bpt", "--production", "8000"), "at most 338.4"),
        (blocks, "at most 638.4"),
    ):
        rows = rows_of(*arguments)
        (cod,) = [r for r in rows if r["Parameter"] == "COD" and r["Statistic and point"].startswith("mean")]
        assert (cod["Limit"], cod["Unit"]) == (expected, "kg/day")
        (acidity,) = [row for row in rows if row["Parameter"] == "pH"]
        assert acidity["Limit"] == "between 6 and 9"


def test_rows_are_written_whole_for_the_sheet_permit(tmp_path: Path) -> None:
    target = tmp_path / "rows.csv"
    done = run("limits", "de_annex_38", "--point", "PIT", "--csv", str(target))
    assert done.exit_code == 0, done.output
    with target.open(encoding="utf-8-sig", newline="") as lines:
        rows = list(csv.DictReader(lines))
    assert {row["Point"] for row in rows} == {"PIT"}
    (sulfite,) = [row for row in rows if row["Parameter"] == "sulfite"]
    assert (sulfite["Value"], sulfite["Limit unit"], sulfite["Statistic"]) == (
        "1.0",
        "mg/L",
        "composite of hours",
    )
    assert "is there already" in refused("limits", "de_annex_38", "--csv", str(target))


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("annex_38",), "NAME is 'annex_38'; accepted is one of: de_annex_38"),
        (("us_410_g_bpt", "us_410_d_bpt"), "accepted is a --production for each"),
        (("us_410_g_bpt", "--production", "8 t/day", "--production", "1 t/day"), "accepted is once for each"),
        (
            ("us_410_g_bpt", "--production", "8 t"),
            "the unit 't', which measures something else",
        ),
        (("us_410_g_bpt", "--production", "much"), "production is 'much'"),
        (("us_410_g_bpt", "--production", "0 t/day"), "no block has a production"),
        (("--csv", "rows.csv"), "NAME is empty"),
        (("us_410_g_bpt", "--csv", "rows.xlsx"), "must end in .csv"),
        (("us_410_g_bpt", "--point", "=1+1", "--csv", "rows.csv"), "does not begin like a formula"),
    ],
)
def test_refused_in_one_line(arguments: tuple[str, ...], said: str) -> None:
    assert said in refused("limits", *arguments)
