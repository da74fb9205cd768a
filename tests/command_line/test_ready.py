"""What is installed, what is missing and how to mend it, with made-up programs and with the real ones."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError
from pathlib import Path
from xml.sax.saxutils import quoteattr

import pytest
import tomllib
from click.testing import CliRunner, Result

import costing
from costing.front_ends import office_extensions, programs, readiness
from costing.front_ends.command_line import main
from costing.front_ends.libreoffice.build import extension_parts
from costing.front_ends.readiness import MEND, MISSING, NOTE, THERE, Row
from costing.reference_data import fingerprint
from tests.libreoffice.office import is_there

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty home, and an empty path of programs."""
    home = tmp_path / "at home"
    home.mkdir()
    for name in ("HOME", "USERPROFILE", "APPDATA"):
        monkeypatch.setenv(name, str(home))
    monkeypatch.delenv("XDG_CONFIG_HOME", raising=False)
    monkeypatch.setenv("PATH", str(tmp_path / "programs"))
    monkeypatch.setattr(programs, "USUAL_PLACES", {})
    monkeypatch.setattr(readiness, "SECONDS", 1.0)
    return home


def script(path: Path, *lines: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n".join(["#!/bin/sh", *lines, ""]), encoding="utf-8")
    path.chmod(0o755)
    return path


@pytest.fixture
def office(home: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A made-up LibreOffice on the path; gives the folder it is installed in."""
    place = home.parent / "office"
    soffice = script(place / "program" / "soffice", "echo 'LibreOffice 24.2.7.2 420(Build:2)'")
    for name in ("bootstraprc", "pythonloader.py"):
        (place / "program" / name).touch()
    (place / "share" / "extensions").mkdir(parents=True)
    (home.parent / "programs").mkdir()
    (home.parent / "programs" / "soffice").symlink_to(soffice)
    python = script(home.parent / "system" / "python3", "echo 3.12.3")
    monkeypatch.setattr(readiness, "usual_python", lambda: python)
    return place


def found() -> dict[tuple[str, str], Row]:
    table = readiness.readiness()
    assert [column.title for column in table.columns] == ["Program", "What", "State", "Found", "Mend"]
    rows = [Row(program, what, said, state, mend) for program, what, state, said, mend in table.rows]
    return {(row.program, row.what): row for row in rows}


def of_office(what: str) -> Row:
    return found()["LibreOffice", what]


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["ready", *arguments])


def test_with_nothing_installed_it_says_what_to_install(home: Path) -> None:
    row = of_office("program")
    assert (row.state, "apt install libreoffice-calc" in row.mend) == (MISSING, True)
    done = run()
    assert done.exit_code == 0, done.output
    assert "LibreOffice, program, missing: install LibreOffice Calc 7.4 or later" in " ".join(
        done.output.split()
    )


def test_everything_there_but_the_extension(office: Path) -> None:
    rows = {what: row for (program, what), row in found().items() if program == "LibreOffice"}
    assert {what: row.state for what, row in rows.items()} == {
        "program": THERE,
        "bridge to Python": THERE,
        "its Python": THERE,
        "extension": MISSING,
        "started from here": THERE,
    }
    assert rows["program"].found == f"24.2.7.2, {office.parent / 'programs' / 'soffice'}"
    assert rows["its Python"].found.startswith("3.12.3, ")
    assert "costing extension warp.oxt" in rows["extension"].mend


def test_its_own_version_and_tables(home: Path) -> None:
    rows = found()
    assert rows["costing", "version"].found.startswith(f"{costing.__version__}, ")
    assert rows["costing", "reference tables"].found.startswith(f"{fingerprint()}, ")
    assert rows["costing", "Python"].found.endswith(sys.executable)
    place = rows["costing", "virtual environment"]
    assert place.found == ("none" if sys.prefix == sys.base_prefix else sys.prefix)


def test_packages(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert [name.partition(">")[0] for name in project["dependencies"]] == list(readiness.NEEDED)

    def version(name: str) -> str:
        if name in ("rich", "pandas"):
            raise PackageNotFoundError(name)
        return "9.8.7"

    monkeypatch.setattr(readiness, "version", version)
    rows = found()
    assert rows["costing", "package click"][2:4] == ("9.8.7", THERE)
    assert rows["costing", "package rich"].state == MISSING
    assert rows["costing", "package rich"].mend.endswith("-m pip install rich")
    assert rows["costing", "package pandas"].state == NOTE


def test_an_old_libreoffice(office: Path) -> None:
    script(office / "program" / "soffice", "echo 'LibreOffice 7.3.7.2 30(Build:2)'")
    row = of_office("program")
    assert (row.state, row.mend) == (MEND, "the extension needs 7.4 or later")
    script(office / "program" / "soffice", "echo 'LibreOffice 7.4.0.1 30(Build:2)'")
    assert of_office("program").state == THERE


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (["/bin/sleep 60 & /bin/sleep 60"], "does not answer"),
        (["echo oops; exit 1"], "says no version: oops"),
        (["exec /no/such/program"], "says no version"),
    ],
)
def test_a_libreoffice_that_does_not_answer_is_not_waited_for(
    office: Path, lines: list[str], said: str
) -> None:
    script(office / "program" / "soffice", *lines)
    start = time.monotonic()
    done = run()
    assert time.monotonic() - start < 10
    assert done.exit_code == 0, done.output
    row = of_office("program")
    assert (row.state, said in row.found) == (MEND, True), row


def test_what_was_started_has_ended(office: Path, tmp_path: Path) -> None:
    script(
        office / "program" / "soffice", f"/bin/sleep 60 & echo $! > '{tmp_path / 'child'}'", "/bin/sleep 60"
    )
    of_office("program")
    child = int((tmp_path / "child").read_text())
    for _ in range(50):
        state = Path(f"/proc/{child}/stat")
        if not state.exists() or state.read_text().split()[2] == "Z":
            return
        time.sleep(0.1)
    pytest.fail("a child is still running")


def test_no_bridge_to_python(office: Path) -> None:
    (office / "program" / "pythonloader.py").unlink()
    row = of_office("bridge to Python")
    assert (row.state, "apt install libreoffice-script-provider-python" in row.mend) == (MISSING, True)
    assert ("LibreOffice", "its Python") not in found()


@pytest.mark.parametrize(
    ("lines", "said", "state"),
    [
        (["echo 3.8.10"], "3.8.10", MEND),
        (["echo 3.9.2"], "3.9.2", THERE),
        (["echo 'No module named uno' >&2; exit 1"], "does not know the bridge", MEND),
        (["/bin/sleep 60"], "does not answer", MEND),
    ],
)
def test_the_python_of_the_system(office: Path, lines: list[str], said: str, state: str) -> None:
    script(office.parent / "system" / "python3", *lines)
    row = of_office("its Python")
    assert (row.state, said in row.found) == (state, True), row
    assert bool(row.mend) == (state == MEND)


@pytest.mark.parametrize(("number", "state"), [("3.8.16", MEND), ("3.10.14", THERE)])
def test_a_python_of_its_own(office: Path, number: str, state: str, monkeypatch: pytest.MonkeyPatch) -> None:
    (office / "program" / f"python-core-{number}").mkdir()
    monkeypatch.setattr(readiness, "disturbing_python", lambda: pytest.fail("cannot disturb it"))
    row = of_office("its Python")
    assert (row.state, row.found) == (state, f"{number}, its own")
    assert of_office("started from here").state == THERE


def test_a_virtual_environment_on_the_path(office: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    python = script(office.parent / "venv" / "bin" / "python3", "echo never run")
    (office.parent / "venv" / "pyvenv.cfg").touch()
    monkeypatch.setenv("PATH", os.pathsep.join([str(python.parent), os.environ["PATH"]]))
    row = of_office("started from here")
    assert (row.state, str(python) in row.found, "deactivate" in row.mend) == (MEND, True, True)
    assert str(python.parent) not in programs.clean_environment()["PATH"].split(os.pathsep)


def test_another_python_on_the_path(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    python = script(home.parent / "other" / "bin" / "python3", "echo never run")
    monkeypatch.setenv("PATH", f"{python.parent}:/usr/bin")
    assert programs.disturbing_python() is None  # a script that only stands in for another
    library = home.parent / "other" / "lib" / "python3.12"
    library.mkdir(parents=True)
    (library / "os.py").touch()
    assert programs.disturbing_python() == python
    monkeypatch.setenv("PATH", f"/usr/bin:{python.parent}")
    assert programs.disturbing_python() is None


def test_a_libreoffice_in_a_sandbox(office: Path) -> None:
    (office / "program" / "bootstraprc").unlink()
    row = of_office("its files")
    assert (row.state, "sandbox" in row.mend) == (NOTE, True)


# Our extension in it.


def unpacked(folder: Path, **changed: bytes) -> Path:
    for name, content in {**extension_parts(), **changed}.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return folder


def registered(home: Path, folder: Path | None, *, revoked: bool = False) -> None:
    """Write the list of extensions of a user, as LibreOffice 7.4 writes it."""
    cache = home / ".config" / "libreoffice" / "4" / "user" / "uno_packages" / "cache"
    register = cache / office_extensions.REGISTERED
    register.parent.mkdir(parents=True, exist_ok=True)
    entry = ""
    if folder is not None:
        inside = folder.relative_to(cache).as_posix().replace(" ", "%20")
        url = quoteattr(f"vnd.sun.star.expand:$UNO_USER_PACKAGES_CACHE/{inside}")
        entry = f"<ext:extension url={url}{' revoked=' + quoteattr('true') if revoked else ''}/>"
    space = 'xmlns:ext="http://openoffice.org/extensionmanager/extension-registry/2010"'
    register.write_text(
        f'<?xml version="1.0"?>\n<ext:extension-backend-db {space}>{entry}</ext:extension-backend-db>',
        encoding="utf-8",
    )


@pytest.fixture
def of_user(home: Path) -> Path:
    cache = home / ".config" / "libreoffice" / "4" / "user" / "uno_packages" / "cache"
    return cache / "uno_packages" / "lu12345.tmp_" / "warp new.oxt"


def test_the_extension_of_this_user(office: Path, home: Path, of_user: Path) -> None:
    registered(home, unpacked(of_user))
    row = of_office("extension")
    assert (row.state, row.mend) == (THERE, "")
    assert row.found == f"{costing.__version__} for this user, {of_user}"


def test_the_extension_of_another_version(office: Path, home: Path, of_user: Path) -> None:
    registered(home, unpacked(of_user))
    (of_user / "pythonpath" / "costing" / "reference_tables" / "defaults.csv").write_text(
        "old", encoding="utf-8"
    )
    row = of_office("extension")
    assert (row.state, "is not the one of this version" in row.mend) == (MEND, True)


def test_the_extension_switched_off(office: Path, home: Path, of_user: Path) -> None:
    registered(home, unpacked(of_user), revoked=True)
    row = of_office("extension")
    assert (row.state, row.found.startswith("switched off")) == (MEND, True)


def test_the_extension_removed_and_its_folder_left_behind(office: Path, home: Path, of_user: Path) -> None:
    unpacked(of_user)
    registered(home, None)
    assert of_office("extension").state == MISSING


@pytest.mark.parametrize(
    ("folder", "where"),
    [
        ("share/extensions/warp", "in its folder"),
        ("share/uno_packages/cache/uno_packages/lu1/warp.oxt", "for all"),
    ],
)
def test_the_extension_for_everybody(office: Path, folder: str, where: str) -> None:
    unpacked(office / folder)
    row = of_office("extension")
    assert (row.state, where in row.found) == (THERE, True)


def test_an_extension_of_somebody_else(office: Path, home: Path, of_user: Path) -> None:
    other = extension_parts()["description.xml"].replace(b"org.warpcosting", b"org.example")
    registered(home, unpacked(of_user, **{"description.xml": other}))
    assert of_office("extension").state == MISSING


def test_a_list_of_extensions_that_is_damaged(office: Path, home: Path, of_user: Path) -> None:
    registered(home, unpacked(of_user))
    register = of_user.parents[2] / office_extensions.REGISTERED
    register.write_text("<half", encoding="utf-8")
    row = of_office("a file")
    assert (row.state, "cannot be read" in row.found) == (NOTE, True)
    assert run().exit_code == 0


# Excel, and the command.


def test_excel_needs_windows(home: Path) -> None:
    row = found()["Excel", "functions in cells"]
    assert (row.state, "Windows" in row.mend) == (NOTE, True)


def windows() -> Iterator[tuple[str, str, str]]:
    return ((row.what, row.state, row.found) for row in readiness.windows_rows())


def test_the_places_of_excel_on_windows(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With its folders made up here; it has not been run on Windows."""
    monkeypatch.setenv("ProgramFiles", str(home / "files"))
    assert [state for _, state, _ in windows()] == [NOTE, MISSING, NOTE]
    program = home / "files" / "Microsoft Office" / "root" / "Office16" / "EXCEL.EXE"
    add_in = home / "Microsoft" / "Excel" / "XLSTART" / "warp.xlam"
    settings = home / ".xlwings" / "xlwings.conf"
    for path in (program, add_in, settings):
        path.parent.mkdir(parents=True)
        path.write_text('"INTERPRETER_WIN","C:\\warp\\pythonw.exe"\n', encoding="utf-8")
    assert list(windows()) == [
        ("program", THERE, str(program)),
        ("add-in", THERE, str(add_in)),
        ("xlwings.conf", NOTE, f'{settings}: "INTERPRETER_WIN","C:\\warp\\pythonw.exe"'),
    ]


def test_json_has_the_mend_of_every_row(office: Path) -> None:
    done = run("--json")
    assert done.exit_code == 0, done.output
    rows = json.loads(done.output)["readiness"]
    assert {row["State"] for row in rows} <= {THERE, MISSING, MEND, NOTE}
    assert all(row["Mend"] for row in rows if row["State"] in (MISSING, MEND))
    assert [row["What"] for row in rows if row["State"] == MISSING] == ["extension"]


def test_nothing_missing_is_said(office: Path, home: Path, of_user: Path) -> None:
    registered(home, unpacked(of_user))
    assert "Nothing is missing." in run().output


def everything(folder: Path) -> dict[str, tuple[int, int]]:
    return {str(path): (path.stat().st_mtime_ns, path.stat().st_size) for path in folder.rglob("*")}


@pytest.mark.skipif(not is_there(), reason="LibreOffice with its Python bridge is not installed")
def test_the_real_one_is_found_and_nothing_is_changed(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "/usr/bin:/bin")
    monkeypatch.setattr(readiness, "SECONDS", 30.0)
    before = everything(home)
    rows = found()
    assert everything(home) == before == {}
    soffice = shutil.which("soffice")
    assert soffice is not None
    said = subprocess.run(
        [soffice, "--version"],
        capture_output=True,
        text=True,
        check=True,
        timeout=30,
        env={"HOME": str(home)},
    ).stdout
    row = rows["LibreOffice", "program"]
    assert (row.state, row.found.partition(",")[0] in said) == (THERE, True)
    assert rows["LibreOffice", "bridge to Python"].state == THERE
    assert rows["LibreOffice", "its Python"].state == THERE
    assert rows["LibreOffice", "started from here"].state == THERE
