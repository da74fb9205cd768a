"""The command that gives formulas their plain names back."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from costing.front_ends.command_line import main
from tests.workbook.formula_books import CALL, PLAIN, everywhere, loaded


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "mill.xlsx"
    path.write_bytes(everywhere(CALL))
    return path


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, ["names", *map(str, arguments)])


def first_formula(path: Path) -> object:
    return loaded(path)["Quote & more"]["A1"].value


def test_a_copy_beside_the_file(path: Path) -> None:
    before = path.read_bytes()
    done = run(path)
    assert done.exit_code == 0, done.output
    *counts, last = done.output.splitlines()
    assert set(counts) == {
        "defined names: 1 formula(s)",
        "Quote & more: 5 formula(s)",
        "Rows: 1 formula(s)",
        "xl/tables/table1.xml: 1 formula(s)",
    }
    assert last == f"wrote {path.with_name('mill_plain.xlsx')}"
    assert first_formula(path.with_name("mill_plain.xlsx")) == f"={PLAIN}"
    assert path.read_bytes() == before


def test_another_name(path: Path) -> None:
    target = path.with_name("new.xlsx")
    assert run(path, "--to", target).exit_code == 0
    assert first_formula(target) == f"={PLAIN}"


def test_in_place_and_then_there_is_nothing_to_do(path: Path) -> None:
    done = run(path, "--in-place")
    assert done.exit_code == 0, done.output
    assert done.output.splitlines()[-1] == f"wrote {path}; as it was: {path.with_name('mill_before.xlsx')}"
    assert first_formula(path) == f"={PLAIN}"
    assert run(path).output == "every formula of ours has its plain name already\n"
    assert {entry.name for entry in path.parent.iterdir()} == {"mill.xlsx", "mill_before.xlsx"}


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["mill.xlsx", "--to", "mill.xlsx"], "is there already"),
        (["mill.xlsx", "--to", "new.xlsx", "--in-place"], "accepted is a new file or the place of the old"),
        (["nowhere.xlsx"], "cannot be read"),
        (["mill.ods"], "is an OpenDocument file"),
    ],
)
def test_refusals(path: Path, arguments: list[str], said: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(path.parent)
    before = path.read_bytes()
    done = run(*arguments)
    assert done.exit_code == 2, done.output
    assert said in done.stderr
    assert done.stderr.count("\n") == 1
    assert path.read_bytes() == before
    assert [entry.name for entry in path.parent.iterdir()] == ["mill.xlsx"]
