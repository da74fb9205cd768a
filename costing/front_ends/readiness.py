"""What is installed, what is missing and how to mend it, in each program that the formulas run in."""

from __future__ import annotations

import os
import re
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any, NamedTuple
from xml.etree import ElementTree

import costing
from costing.front_ends import office_extensions
from costing.front_ends.libreoffice.parts import OLDEST_LIBREOFFICE, OLDEST_PYTHON
from costing.front_ends.programs import (
    OWN_PYTHON,
    Answer,
    answer,
    brings_python,
    clean_environment,
    disturbing_python,
    libreoffice,
    program_folder,
    python_loader,
    usual_python,
)
from costing.reference_data import fingerprint, folder
from costing.report import Column, Table

THERE, MISSING, MEND, NOTE = "there", "missing", "to mend", "note"

NEEDED = ("click", "matplotlib", "numpy", "openpyxl", "rich", "scipy")
OTHERS = {
    "pandas": "to read results in Python of your own",
    "pint": "to call equations with units in Python of your own",
    "xlwings": "for the functions in Excel on Windows",
}
SECONDS = 10.0
INSTALL = "costing extension warp.oxt; then install warp.oxt with a double click and start LibreOffice again"
INSTALL_BRIDGE = (
    "on Debian and its kin: apt install libreoffice-script-provider-python; elsewhere install LibreOffice "
    "again with its Python"
)
ADD_IN = "warp.xlam"
EXCEL_STEPS = "see 'Excel on Windows' in the README"


class Row(NamedTuple):
    """One thing that is there, missing or to be mended."""

    program: str
    what: str
    found: str
    state: str
    mend: str = ""


def readiness(*, brief: bool = False) -> Table:
    """Everything that was looked at, with how to mend what is missing; nothing is changed.

    Parameters
    ----------
    brief : bool, optional
        True to say under the table how to mend what is missing, in place of a column.
    """
    checks: tuple[tuple[str, Callable[[], Iterator[Row]]], ...] = (
        ("costing", python_rows),
        ("costing", package_rows),
        ("LibreOffice", libreoffice_rows),
        ("Excel", excel_rows),
    )
    rows = [row for program, check in checks for row in _looked_at(program, check)]
    columns = ["Program", "What", "State", "Found", "Mend"]
    lines = [[row.program, row.what, row.state, row.found, row.mend] for row in rows]
    if brief:
        columns, lines = columns[:-1], [line[:-1] for line in lines]
    note = mends(rows) if brief else ""
    return Table("readiness", "What is installed", note, [Column(title) for title in columns], lines)


def mends(rows: Sequence[Row]) -> str:
    """How to mend what is missing, a line each; then what is good to know.

    Examples
    --------
    >>> mends([Row("LibreOffice", "program", "none", MISSING, "install it")])
    'LibreOffice, program, missing: install it'
    >>> mends([Row("Excel", "program", "14.0", THERE)])
    'Nothing is missing.'
    """
    lines = [
        f"{row.program}, {row.what}, {row.state}: {row.mend}"
        for states in ((MISSING, MEND), (NOTE,))
        for row in rows
        if row.state in states and row.mend
    ]
    if not any(row.state in (MISSING, MEND) for row in rows):
        lines.insert(0, "Nothing is missing.")
    return "\n".join(lines)


def _looked_at(program: str, check: Callable[[], Iterator[Row]]) -> list[Row]:
    """The rows of a check; what may not be read is a row too."""
    rows = []
    try:
        for row in check():
            rows.append(row)
    except (OSError, ElementTree.ParseError) as error:
        rows.append(Row(program, "a file", f"cannot be read: {error}", NOTE))
    return rows


def python_rows() -> Iterator[Row]:
    """The Python that runs this, and where this package is."""
    yield Row("costing", "Python", f"{_version(sys.version_info[:3])}, {sys.executable}", THERE)
    if sys.prefix == sys.base_prefix:
        yield Row(
            "costing",
            "virtual environment",
            "none",
            NOTE,
            "none is needed; to install without touching the system's Python: python3 -m venv .venv",
        )
    else:
        yield Row("costing", "virtual environment", sys.prefix, THERE)
    yield Row("costing", "version", f"{costing.__version__}, {Path(costing.__file__).parent}", THERE)
    yield Row("costing", "reference tables", f"{fingerprint()}, {folder()}", THERE)


def package_rows() -> Iterator[Row]:
    """The packages beside it: those it needs, and those that a few need."""
    for name in NEEDED:
        found = _package(name)
        mend = "" if found else f"{sys.executable} -m pip install {name}"
        yield Row("costing", f"package {name}", found or "none", THERE if found else MISSING, mend)
    for name, purpose in OTHERS.items():
        found = _package(name)
        mend = "" if found else f"only {purpose}: pip install {name}"
        yield Row("costing", f"package {name}", found or "none", THERE if found else NOTE, mend)


def libreoffice_rows() -> Iterator[Row]:
    """LibreOffice, its Python, our extension in it, and how it would start from here."""
    office = libreoffice()
    if office is None:
        mend = (
            f"install LibreOffice Calc {OLDEST_LIBREOFFICE} or later; on Debian and its kin: apt install "
            "libreoffice-calc"
        )
        yield _of_office("program", "none on the path or in its usual place", MISSING, mend)
        return
    yield _program_row(office)
    program = program_folder(office)
    if program is None:
        mend = "its Python and its extensions were not looked at; in a sandbox it may have neither"
        yield _of_office("its files", f"not beside {office.resolve()}", NOTE, mend)
        return
    loader = python_loader(program)
    if loader is None:
        yield _of_office("bridge to Python", "none", MISSING, INSTALL_BRIDGE)
    else:
        yield _of_office("bridge to Python", str(loader), THERE)
        yield _python_row(program)
    yield from _extension_rows(program)
    first = None if brings_python(program) else disturbing_python()
    if first is None:
        yield _of_office("started from here", "finds its Python", THERE)
    else:
        yield _of_office(
            "started from here",
            f"would use the library of {first}",
            MEND,
            "it would not open a workbook with our formulas; start it from the menu of the desktop, or type "
            "deactivate first",
        )


def _of_office(what: str, found: str, state: str, mend: str = "") -> Row:
    return Row("LibreOffice", what, found, state, mend)


def _program_row(office: Path) -> Row:
    done = _answer_elsewhere([office, "--version"])
    found = re.search(r"LibreOffice (\d+\.\d+[.\d]*)", done.text)
    if found is None:
        said = "does not answer" if done.code is None else f"says no version: {done.text[:60]}"
        mend = "start it once by hand; if it does not start, install it again"
        return _of_office("program", f"{office} {said}", MEND, mend)
    oldest = _numbers(OLDEST_LIBREOFFICE)
    mend = "" if _numbers(found[1]) >= oldest else f"the extension needs {OLDEST_LIBREOFFICE} or later"
    return _of_office("program", f"{found[1]}, {office}", MEND if mend else THERE, mend)


def _answer_elsewhere(command: Sequence[str | Path]) -> Answer:
    """What a program answers with an empty home, for some write into it at their mere start."""
    with tempfile.TemporaryDirectory(prefix="warp-ready-", ignore_cleanup_errors=True) as home:
        away = {"HOME": home, "XDG_CONFIG_HOME": home, "XDG_CACHE_HOME": home}
        return answer(command, SECONDS, {**clean_environment(), **away})


def _python_row(program: Path) -> Row:
    """The Python that LibreOffice runs, which is its own or the system's."""
    own = sorted(program.glob(OWN_PYTHON))
    if own:
        return _judged(own[-1].name.rpartition("-")[2], "its own")
    if brings_python(program):
        return _of_office("its Python", "its own", THERE)
    python = usual_python()
    if python is None:
        return _of_office("its Python", "none", MISSING, INSTALL_BRIDGE)
    asked = "import sys, uno; print('%d.%d.%d' % sys.version_info[:3])"
    done = _answer_elsewhere([python, "-B", "-c", asked])
    if done.code == 0:
        return _judged(done.text, str(python))
    said = "does not answer" if done.code is None else "does not know the bridge"
    return _of_office("its Python", f"{python} {said}", MEND, INSTALL_BRIDGE)


def _judged(number: str, where: str) -> Row:
    """A Python of LibreOffice by its version."""
    oldest = _version(OLDEST_PYTHON)
    mend = (
        ""
        if _numbers(number) >= OLDEST_PYTHON
        else f"the formulas need {oldest} or later: a newer LibreOffice"
    )
    return _of_office("its Python", f"{number}, {where}", MEND if mend else THERE, mend)


def _extension_rows(program: Path) -> Iterator[Row]:
    """Our extension, wherever it is installed."""
    user = office_extensions.profile()
    found = office_extensions.installed(program, user)
    if not found:
        yield _of_office("extension", f"none, {user}", MISSING, INSTALL)
    for one in found:
        said, state, mend = f"{one.version} {one.where}, {one.folder}", THERE, ""
        if not one.is_on:
            said, state = f"switched off, {said}", MEND
            mend = "switch it on in LibreOffice under Tools > Extension Manager"
        elif not one.is_of_this_build():
            state, mend = MEND, f"it is not the one of this version, {costing.__version__}: {INSTALL}"
        yield _of_office("extension", said, state, mend)


def excel_rows() -> Iterator[Row]:
    """What the functions in Excel need."""
    if sys.platform != "win32":
        mend = "functions in cells need Excel on Windows; the workbooks themselves open in any Excel"
        yield Row("Excel", "functions in cells", "not on this system", NOTE, mend)
        return
    yield from windows_rows()


def windows_rows() -> Iterator[Row]:
    """Excel on Windows, by the places where its files usually are; not run there so far."""
    roots = [os.environ[name] for name in ("ProgramFiles", "ProgramFiles(x86)") if name in os.environ]
    programs = [place for root in roots for place in sorted(Path(root).glob("Microsoft Office/**/EXCEL.EXE"))]
    if programs:
        yield Row("Excel", "program", str(programs[0]), THERE)
    else:
        yield Row("Excel", "program", "not in its usual place", NOTE, "only for functions in Excel cells")
    start = Path(os.environ.get("APPDATA", "")) / "Microsoft" / "Excel" / "XLSTART"
    add_in = start / ADD_IN
    if add_in.is_file():
        yield Row("Excel", "add-in", str(add_in), THERE)
    else:
        yield Row("Excel", "add-in", f"no {ADD_IN} in {start}", MISSING, f"make it once: {EXCEL_STEPS}")
    settings = Path.home() / ".xlwings" / "xlwings.conf"
    if settings.is_file():
        said = ", ".join(line.strip() for line in settings.read_text(encoding="utf-8").splitlines() if line)
        mend = "what stands in the sheet of the add-in goes before it"
        yield Row("Excel", "xlwings.conf", f"{settings}: {said[:200]}", NOTE, mend)
    else:
        mend = "none is needed: the sheet of the add-in names the Python"
        yield Row("Excel", "xlwings.conf", "none", NOTE, mend)


def _package(name: str) -> str | None:
    try:
        return version(name)
    except PackageNotFoundError:
        return None


def _numbers(text: str) -> tuple[int, ...]:
    """The first two numbers of a version."""
    return tuple(int(part) for part in re.findall(r"\d+", text)[:2])


def _version(numbers: Any) -> str:
    return ".".join(str(number) for number in numbers)
