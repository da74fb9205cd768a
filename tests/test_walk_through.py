"""The worked example of DEVELOPERS.md, followed word by word in a copy of the repository."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
BLOCK = re.compile(r"^```(python|diff|csv|toml) (\S+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
COMMANDS = "costing.front_ends.command_line"
CAUSE = "drives, pumps and fans"
HEADING = "## A kind, a route and a material, worked through"


def blocks() -> list[tuple[str, str, str]]:
    """Language, file and text of each block of the example."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    example = text.split(HEADING)[1].split("\n## ")[0]
    return BLOCK.findall(example)


def changed(text: str, change: str) -> str:
    """A file with each line that begins with - put for the lines with + below it."""
    for old, new in re.findall(r"^-(.*)\n((?:\+.*\n)+)", change, re.MULTILINE):
        lines = text.split("\n")
        assert lines.count(old) == 1, f"DEVELOPERS.md changes a line that is not there once: {old}"
        place = lines.index(old)
        lines[place : place + 1] = [line[1:] for line in new.rstrip("\n").split("\n")]
        text = "\n".join(lines)
    return text


@pytest.fixture(scope="module")
def repository(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy in which the example is followed."""
    place = tmp_path_factory.mktemp("walk")
    for name in ("costing", "reference_tables", "workbook_template"):
        shutil.copytree(ROOT / name, place / name, ignore=shutil.ignore_patterns("__pycache__"))
    for language, name, text in blocks():
        file = place / name
        if language == "python":
            assert not file.exists(), f"{name} is there already: the example must make a new kind"
            file.write_text(text, encoding="utf-8")
            continue
        before = file.read_text(encoding="utf-8").rstrip("\n") + "\n"
        after = (
            changed(before, text)
            if language == "diff"
            else before + ("" if language == "csv" else "\n") + text
        )
        file.write_text(after, encoding="utf-8")
    run(place, "costing.front_ends.workbook.build")
    return place


def run(place: Path, module: str, *arguments: str) -> str:
    """Run a module of the copy; its own output, or the error that it shows."""
    done = subprocess.run(
        [sys.executable, "-m", module, *arguments],
        cwd=place,
        env={"PYTHONPATH": str(place), "PATH": ""},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_the_example_holds_a_kind_a_route_and_a_material() -> None:
    named = [name for _, name, _ in blocks()]
    assert len(named) == len(set(named)) == 10
    assert {"workbook_template/routes.toml", "workbook_template/materials.toml"} <= set(named)


def test_the_example_is_quoted_from_the_book_it_draws(repository: Path, tmp_path: Path) -> None:
    out = tmp_path / "results.xlsx"
    assert "X-01" in run(repository, COMMANDS, "quote", "-e", "X-01", "--out", str(out))
    assert out.is_file()


def uses(repository: Path, figure: str, step: str, cause: str) -> float:
    """What a step of the example takes as delivered, by kilogram of cloth [g, kWh or L]."""
    rows = json.loads(run(repository, COMMANDS, "ledger", "-e", "X-01", "--of", figure, "--json"))["use"]
    (amount,) = [
        row.get("As delivered [g/kg]", row.get("Used [kWh/kg]"))
        for row in rows
        if row["Step"] == step and row["Cause"] == cause
    ]
    return float(amount)


def test_the_new_material_is_used_as_the_new_route_says(repository: Path) -> None:
    """20 g/L in 0.7 L/kg on dry cloth."""
    carried = uses(repository, "SOFT-40", "softener", "carried out with the yarn")
    assert carried == pytest.approx(20.0 * 0.7)


def test_the_new_kind_takes_its_power(repository: Path) -> None:
    """8 kW for brushes and 30 kW for cans, of the same cloth."""
    brushes, cans = (uses(repository, "power", step, CAUSE) for step in ("brushes", "drying"))
    assert brushes / cans == pytest.approx(8.0 / 30.0)


def test_the_new_default_has_its_source(repository: Path) -> None:
    assert "weigh the lint" in run(repository, COMMANDS, "source", "brushing")
