"""The programs beside this one: where LibreOffice is, and how a program is run without waiting for ever."""

from __future__ import annotations

import contextlib
import os
import shutil
import signal
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

# Where LibreOffice's own installers put it; on Linux it is on the path.
USUAL_PLACES = {
    "win32": (r"%ProgramFiles%\LibreOffice\program\soffice.com",),
    "darwin": ("/Applications/LibreOffice.app/Contents/MacOS/soffice",),
}
NAMES = ("soffice", "libreoffice")
END_SECONDS = 5


class Answer(NamedTuple):
    """What a program printed, and how it ended; the code is None when it did not answer in time."""

    code: int | None
    text: str


def libreoffice() -> Path | None:
    """The LibreOffice that a command would start, or None."""
    found = [shutil.which(name) for name in NAMES]
    usual = [os.path.expandvars(place) for place in USUAL_PLACES.get(sys.platform, ())]
    return next((Path(place) for place in [*found, *usual] if place and os.path.isfile(place)), None)


def program_folder(office: Path) -> Path:
    """The folder of LibreOffice's own program files, behind any links."""
    real = office.resolve()
    inside = real.parent.parent / "Frameworks"  # macOS keeps them apart from what is started
    return inside if inside.is_dir() else real.parent


def brings_python(program: Path) -> bool:
    """Whether LibreOffice has a Python of its own, which no other one can disturb."""
    return bool(list(program.glob("python-core-*"))) or (program / "LibreOfficePython.framework").is_dir()


def disturbing_python(environment: Mapping[str, str] | None = None) -> Path | None:
    """The first Python of the path, where it has another library than the system's Python.

    A LibreOffice without a Python of its own looks for the library of Python beside the first ``python3``
    of the path. In a virtual environment, or beside another installation, it does not find its bridge; then
    a workbook with formulas of the extension is not even opened.
    """
    path = (os.environ if environment is None else environment).get("PATH", os.defpath)
    first = shutil.which("python3", path=path)
    return Path(first) if first and _has_own_library(Path(first)) else None


def _has_own_library(python: Path) -> bool:
    if any((folder / "pyvenv.cfg").is_file() for folder in python.parents[:2]):
        return True
    prefix = python.resolve().parent.parent
    return prefix not in (Path("/usr"), Path("/")) and any(prefix.glob("lib/python3*/os.py"))


def clean_environment() -> dict[str, str]:
    """The environment for LibreOffice, without what would lead its Python astray."""
    kept = {
        name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "VIRTUAL_ENV"))
    }
    folders = kept.get("PATH", os.defpath).split(os.pathsep)
    first = shutil.which("python3", path="/usr/local/bin:/usr/bin:/bin")
    return {
        **kept,
        "PATH": os.pathsep.join(
            folder
            for folder in folders
            if not (python := Path(folder) / "python3").exists()
            or not _has_own_library(python)
            or str(python) == first
        ),
    }


def answer(
    command: Sequence[str | Path], seconds: float, environment: Mapping[str, str] | None = None
) -> Answer:
    """Run a program that needs no input; it and all that it started end after these seconds at the latest.

    Raises
    ------
    OSError
        It cannot be started.
    """
    with tempfile.TemporaryFile() as printed:  # a pipe would stay open as long as any child lives
        started = subprocess.Popen(
            [str(word) for word in command],
            stdin=subprocess.DEVNULL,
            stdout=printed,
            stderr=subprocess.STDOUT,
            env=None if environment is None else dict(environment),
            start_new_session=True,
        )
        code: int | None = None
        try:
            code = started.wait(seconds)
        except subprocess.TimeoutExpired:
            pass
        finally:
            _end(started)
        printed.seek(0)
        return Answer(code, printed.read().decode(errors="replace").strip())


def _end(started: subprocess.Popen[bytes]) -> None:
    """End a program and all that it started."""
    with contextlib.suppress(ProcessLookupError, PermissionError):
        if hasattr(os, "killpg"):
            os.killpg(started.pid, signal.SIGKILL)
        else:
            started.kill()
    with contextlib.suppress(subprocess.TimeoutExpired):
        started.wait(END_SECONDS)
