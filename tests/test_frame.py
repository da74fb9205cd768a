"""The frame of the repository: what may lie where, what a room may load, what no file may mention."""

from __future__ import annotations

import ast
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.run_checks import GENERATORS, reached_from_a_cell

ROOT = Path(__file__).resolve().parents[1]

TOP_LEVEL = {
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "constraints.txt",
    "costing",
    "pyproject.toml",
    "reference_tables",
    "tests",
    "workbook_template",
}

# Spelt so that this file does not mention them itself.
NOT_MENTIONED = re.compile(
    "|".join(
        [
            "tran[s]cript",
            "seed [d]oc",
            "/wor[k]/",
            "/far[m]/",
            "/ro[o]t/",
            "/ho[m]e/",
            "/Use[r]s/",
            "site-[p]ackages",
            "python[h]osted",
            r"py[p]i\.org",
            "index[-_]u[r]l",
            r"npm[j]s\.org",
            r"deb[i]an\.org",
        ]
    ),
    re.IGNORECASE,
)

NO_SUBJECT = {"util", "utils", "utilities", "helper", "helpers", "common", "misc"}

LONGEST_MODULE = 500


def committed_files() -> Iterator[Path]:
    """Files that belong to the repository, without asking git, which a reader may not have."""
    for name in sorted(TOP_LEVEL | {".ci", ".gitignore", ".pre-commit-config.yaml"}):
        top = ROOT / name
        for path in [top] if top.is_file() else sorted(top.rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                yield path


def modules() -> list[Path]:
    return [path for path in committed_files() if path.suffix == ".py"]


def test_top_level_holds_only_what_is_agreed() -> None:
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    left_by_runs = {"__pycache__", "build", "dist", "venv"} | {path.name for path in ROOT.glob("*.xlsx")}
    assert found - left_by_runs == TOP_LEVEL


def test_no_file_mentions_what_it_must_not() -> None:
    mentions = [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()[:80]}"
        for path in committed_files()
        for number, line in enumerate(path.read_bytes().decode("utf-8", "replace").splitlines(), 1)
        if NOT_MENTIONED.search(line)
    ]
    assert mentions == []


@pytest.mark.parametrize(
    "halves", [("a Tran", "script"), ("see the seed ", "doc"), ("/work", "/main"), ("--index", "-url")]
)
def test_the_words_are_found_where_they_stand(halves: tuple[str, str]) -> None:
    assert NOT_MENTIONED.search("".join(halves))


def test_modules_are_short() -> None:
    long = [
        path.relative_to(ROOT).as_posix()
        for path in modules()
        if len(path.read_text(encoding="utf-8").splitlines()) >= LONGEST_MODULE
    ]
    assert long == []


def test_modules_are_named_by_their_subject() -> None:
    names = {part for path in modules() for part in path.relative_to(ROOT).with_suffix("").parts}
    assert names & NO_SUBJECT == set()


def loaded_by(statement: str) -> set[str]:
    """Top-level names that a fresh Python has loaded after a statement and had not before."""
    program = (
        f"import json, sys; before = set(sys.modules); {statement};"
        " print(json.dumps(sorted(set(sys.modules) - before)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 0, done.stderr
    return {name.partition(".")[0] for name in json.loads(done.stdout)}


def test_loading_the_formulas_loads_no_library() -> None:
    assert loaded_by("import costing.formulas") <= sys.stdlib_module_names | {"costing"}


def test_loading_everything_that_a_cell_reaches_loads_no_library() -> None:
    names = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in reached_from_a_cell()
    ]
    assert "costing.formulas" in names
    assert loaded_by(f"import {', '.join(names)}") <= sys.stdlib_module_names | {"costing"}


def test_a_library_that_is_loaded_is_seen() -> None:
    assert "click" in loaded_by("import click")


def test_every_generator_is_checked() -> None:
    tools = {f"tests.tools.{path.stem}" for path in (ROOT / "tests" / "tools").glob("make_*.py")}
    assert tools
    assert tools <= set(GENERATORS)


def test_hooks_of_a_commit_call_the_one_list_of_checks() -> None:
    hooks = (ROOT / ".pre-commit-config.yaml").read_text(encoding="utf-8")
    calls = re.findall(r"entry: (.*)", hooks)
    assert calls
    assert all(call.startswith("python tests/run_checks.py ") for call in calls)


def unions_made_at_run_time(program: str) -> list[int]:
    """Lines with a union of types, such as `int | None`, where Python works it out: 3.9 cannot."""
    tree = ast.parse(program)
    in_annotations = {
        id(part)
        for node in ast.walk(tree)
        for annotation in (getattr(node, "annotation", None), getattr(node, "returns", None))
        if annotation is not None
        for part in ast.walk(annotation)
    }

    def is_type(node: ast.expr) -> bool:
        if isinstance(node, ast.Subscript):
            return is_type(node.value)
        name = getattr(node, "id", getattr(node, "attr", ""))
        return isinstance(node, ast.Constant) or (name in TYPE_NAMES)

    return [
        node.lineno
        for node in ast.walk(tree)
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitOr) and id(node) not in in_annotations
        if is_type(node.left) or is_type(node.right)
    ]


TYPE_NAMES = {"Any", "bool", "bytes", "dict", "float", "int", "list", "set", "str", "tuple"}


def test_no_union_of_types_is_made_at_run_time_reached_from_a_cell() -> None:
    found = {
        path.relative_to(ROOT).as_posix(): lines
        for path in reached_from_a_cell()
        if (lines := unions_made_at_run_time(path.read_text(encoding="utf-8")))
    }
    assert found == {}


@pytest.mark.parametrize(
    ("program", "lines"),
    [
        ("isinstance(3, int | float)", [1]),
        ("Number = int | float", [1]),
        ("def f(x: int | None) -> dict[str, int] | None:\n    y: str | None = None", []),
        ("both = this.keys() | that.keys()", []),
    ],
)
def test_a_union_of_types_is_seen_where_python_works_it_out(program: str, lines: list[int]) -> None:
    assert unions_made_at_run_time(program) == lines


SKIPPING_TESTS = '''
import pytest

def test_that_passes():
    """
    >>> import pytest; pytest.skip("not in the mood")
    """

@pytest.mark.skip(reason="not today")
def test_marked():
    pass

def test_that_gives_up():
    pytest.skip("not here")

@pytest.mark.xfail(reason="the source is wrong", strict=True)
def test_disagreement():
    assert False
'''


@pytest.mark.parametrize(
    ("ci", "outcome"),
    [("true", "2 failed, 1 passed, 1 xfailed, 3 errors"), ("", "1 passed, 5 skipped, 1 xfailed")],
)
def test_a_skip_fails_in_continuous_integration(tmp_path: Path, ci: str, outcome: str) -> None:
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path)
    (tmp_path / "test_skips.py").write_text(SKIPPING_TESTS, encoding="utf-8")
    (tmp_path / "test_whole_file.py").write_text(
        'import pytest\npytest.importorskip("no_such_module_anywhere")\n', encoding="utf-8"
    )
    done = subprocess.run(
        [
            *(sys.executable, "-m", "pytest", "--doctest-modules", "--continue-on-collection-errors"),
            *("-p", "no:cacheprovider", "-c", os.devnull, "--rootdir", str(tmp_path), str(tmp_path)),
        ],
        env={**os.environ, "CI": ci},
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert outcome in done.stdout


def test_links_and_sheets_that_the_readme_names_exist() -> None:
    from openpyxl import load_workbook

    from costing.front_ends.workbook.build import demo_book

    text = (ROOT / "README.md").read_text(encoding="utf-8")
    for link in re.findall(r"\]\(([^)]+)\)", text):
        assert (ROOT / link).is_file(), link
    sheets = {
        *load_workbook(demo_book(), read_only=True).sheetnames,
        *re.findall(
            r'"([A-Z][a-z ]+)"', (ROOT / "costing/front_ends/workbook/results.py").read_text("utf-8")
        ),
    }
    for name in re.findall(r"(?<!\*)\*([A-Z][a-z ]+)\*(?!\*)", text):
        assert name in sheets, name
