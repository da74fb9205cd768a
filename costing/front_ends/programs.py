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
OWN_PYTHON = "python-core-*"
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


def program_folder(office: Path) -> Path | None:
    """The folder of LibreOffice's own program files, behind any links; None where a sandbox hides them."""
    folder = office.resolve().parent
    places = (folder, folder.parent / "Resources")  # macOS keeps them apart
    return folder if any(any(place.glob("bootstrap*")) for place in places) else None


def python_loader(program: Path) -> Path | None:
    """The file by which LibreOffice loads what is written in Python, or None."""
    places = (program / "pythonloader.py", program.parent / "Resources" / "pythonloader.py")
    return next((place for place in places if place.is_file()), None)


def brings_python(program: Path) -> bool:
    """Whether LibreOffice has a Python of its own, which no other one can disturb."""
    own = (program.parent / "Frameworks" / "LibreOfficePython.framework").is_dir()  # macOS
    return own or any(program.glob(OWN_PYTHON))


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
    """Whether this Python, if it is there, has a library that is not the system's."""
    if not python.exists():
        return False
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
    return {
        **kept,
        "PATH": os.pathsep.join(
            folder for folder in folders if not _has_own_library(Path(folder) / "python3")
        ),
    }


def usual_python() -> Path | None:
    """The Python that a LibreOffice without one of its own runs: the system's, or None."""
    found = shutil.which("python3", path=os.pathsep.join(("/usr/bin", clean_environment()["PATH"])))
    return Path(found) if found else None


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
