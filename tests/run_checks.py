"""Every check of this repository, called from this one place.

``python tests/run_checks.py`` runs all of them; ``python tests/run_checks.py lint types`` only those named.
A developer, the hooks of a commit and continuous integration all call this file.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]

# What a cell of LibreOffice runs, runs on that program's own, older Python. Only the list of sources needs a
# younger one, for its TOML reader, and no formula reads that list.
OLDEST_PYTHON = "3.9"
NEWER_PYTHON = "costing/reference_data/source_list.py"


def reached_from_a_cell() -> list[Path]:
    """Modules below the front ends but for those of arrays, and the front end that LibreOffice loads."""
    package = ROOT / "costing"
    left_out = (package / "front_ends", package / "many")
    return [
        path
        for path in sorted(package.rglob("*.py"))
        if not any(path.is_relative_to(folder) for folder in left_out)
        or path.is_relative_to(package / "front_ends" / "libreoffice")
    ]


# Modules that write a committed file when they are run.
GENERATORS = (
    "tests.tools.make_unit_table",
    "costing.front_ends.workbook.build",
    "costing.front_ends.formula_page",
    "costing.front_ends.excel.build",
)

# What the wheel carries beside the modules: folder here -> folder in the package.
CARRIED = {"reference_tables": "costing/reference_tables", "workbook_template": "costing/workbook_template"}


def run(tool: str, *arguments: str, folder: Path = ROOT) -> bool:
    """Run a tool of this virtual environment; say whether it ended well."""
    found = shutil.which(tool, path=str(Path(sys.executable).parent))
    if found is None:
        print(f"  {tool} is not installed beside {sys.executable}")
        return False
    return subprocess.run([found, *arguments], cwd=folder, check=False).returncode == 0


def lint() -> bool:
    """Names, imports, docstrings and likely mistakes."""
    return run("ruff", "check", ".")


def layout() -> bool:
    """How the code is laid out on the page."""
    return run("ruff", "format", "--check", ".")


def types() -> bool:
    """Types, strictly."""
    return run("mypy")


def imports() -> bool:
    """The import contract between the rooms."""
    return run("lint-imports", "--no-logo")


def python39() -> bool:
    """Nothing newer than the oldest Python of a spreadsheet program, where a cell reaches."""
    files = [str(path) for path in reached_from_a_cell() if path != ROOT / NEWER_PYTHON]
    return run("vermin", f"--target={OLDEST_PYTHON}-", "--violations", "--no-tips", *files)


def generated() -> bool:
    """Generated files are what their generators write today."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy"
        shutil.copytree(ROOT, copy, ignore=shutil.ignore_patterns(".*", "__pycache__", "*.egg-info"))
        before = contents(copy)
        for generator in GENERATORS:
            print(f"  {generator}", flush=True)
            if not run("python", "-m", generator, folder=copy):
                return False
        after = contents(copy)
    changed = sorted(name for name in before.keys() | after.keys() if before.get(name) != after.get(name))
    for name in changed:
        print(f"  {name} is not what its generator writes: run the generator and commit the file")
    return not changed


def contents(folder: Path) -> dict[str, object]:
    """Name -> content of each file; of a workbook its parts, so that how they were packed does not count."""

    def content(path: Path) -> object:
        if path.suffix != ".xlsx":
            return path.read_bytes()
        with zipfile.ZipFile(path) as book:
            return {name: book.read(name) for name in book.namelist()}

    return {path.relative_to(folder).as_posix(): content(path) for path in files_of(folder)}


def files_of(folder: Path) -> Iterator[Path]:
    """Files in a folder that could be committed."""
    return (path for path in folder.rglob("*") if path.is_file() and "__pycache__" not in path.parts)


def wheel() -> bool:
    """The wheel carries the tables and the workbook inside the package."""
    with tempfile.TemporaryDirectory() as folder:
        if not run("hatchling", "build", "-t", "wheel", "-d", folder):
            return False
        (built,) = Path(folder).glob("*.whl")
        with zipfile.ZipFile(built) as archive:
            packed = set(archive.namelist())
    wanted = {
        outside: {
            f"{inside}/{path.relative_to(ROOT / outside).as_posix()}" for path in files_of(ROOT / outside)
        }
        for outside, inside in CARRIED.items()
    }
    for name in sorted(set().union(*wanted.values()) - packed):
        print(f"  the wheel lacks {name}")
    return all(names and names <= packed for names in wanted.values())


def tests() -> bool:
    """All tests and the examples in the docstrings; the files of tests are shared out to the processors."""
    # As they come: by the number of their tests the slow files of the spreadsheet program would come last.
    return run("pytest", "-n", "auto", "--dist", "loadfile", "--no-loadscope-reorder")


CHECKS: tuple[Callable[[], bool], ...] = (lint, layout, types, imports, python39, generated, wheel, tests)


def main(names: list[str]) -> int:
    """Run the named checks, or all; 0 when all of them passed."""
    checks = {check.__name__: check for check in CHECKS}
    unknown = [name for name in names if name not in checks]
    if unknown:
        print(f"no check is called {unknown[0]}; there are: {', '.join(checks)}", file=sys.stderr)
        return 2
    failed = []
    for name in names or checks:
        print(f"== {name}: {checks[name].__doc__}", flush=True)
        start = time.monotonic()
        if not checks[name]():
            failed.append(name)
        print(f"== {name}: {time.monotonic() - start:.1f} s", flush=True)
    print(f"failed: {', '.join(failed)}" if failed else "every check passed", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
