"""A headless LibreOffice with our extension, from the side of the tests."""

from __future__ import annotations

import contextlib
import json
import os
import secrets
import selectors
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from costing.front_ends.libreoffice.build import build_extension, extension_parts
from costing.front_ends.programs import clean_environment, usual_python

DRIVER = Path(__file__).with_name("driver.py")
ORDINARY_USER = "nobody"
SECONDS = 90


class OfficeError(Exception):
    """LibreOffice refused a request, or ended."""


def bridge_python() -> str | None:
    """A Python that has LibreOffice's bridge, or None."""
    python = usual_python()
    if python is None:
        return None
    command = [str(python), "-c", "import uno"]
    done = subprocess.run(command, capture_output=True, check=False, timeout=30, env=clean_environment())
    return str(python) if done.returncode == 0 else None


def call_text(name: str, cells: Sequence[Any]) -> str:
    """A formula as it is typed, with what is None left out."""
    typed = ["" if cell is None else f'"{cell}"' if isinstance(cell, str) else repr(cell) for cell in cells]
    while typed and not typed[-1]:
        typed.pop()
    return f"={name}({';'.join(typed)})"


def is_there() -> bool:
    """Whether LibreOffice can be driven on this machine."""
    office = shutil.which("soffice", path=clean_environment()["PATH"])
    return office is not None and bridge_python() is not None


class Office:
    """One LibreOffice with a profile of its own, from `start` to `end`.

    Parameters
    ----------
    install : str
        "bundled": the extension lies unpacked in a folder that LibreOffice takes extensions from, which
        needs no step of installing; "unopkg": an ordinary user installs it with LibreOffice's own tool;
        "none": without the extension.
    """

    def __init__(self, install: str) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="warp-office-"))
        self.log = ""
        self._user: list[str] = []
        try:
            options = self._installed(install)
            self._start(["soffice", "--headless", "--norestore", "--nologo", *options])
        except BaseException:
            self.end()
            raise

    def _installed(self, install: str) -> list[str]:
        profile = f"-env:UserInstallation={(self.folder / 'profile').as_uri()}"
        if install == "bundled":
            for name, content in extension_parts().items():
                path = self.folder / "bundled" / "warp" / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(content)
            return [profile, f"-env:BUNDLED_EXTENSIONS={(self.folder / 'bundled').as_uri()}"]
        if install == "unopkg":
            package = self.folder / "formulas.oxt"
            build_extension(package)
            self._become_ordinary()
            done = self.run(["unopkg", "add", "-f", "-s", profile, str(package)])
            if done.returncode:
                raise OfficeError(f"unopkg: {done.stdout}{done.stderr}")
        return [profile]

    def _become_ordinary(self) -> None:
        """As root, do all as another user in a home of its own; else as whoever runs the tests."""
        home = self.folder / "home"
        home.mkdir()
        if os.geteuid() == 0:
            for path in (self.folder, *self.folder.iterdir()):
                shutil.chown(path, ORDINARY_USER)
            self._user = ["runuser", "-u", ORDINARY_USER, "--", "env", f"HOME={home}"]

    def run(self, command: Sequence[str]) -> subprocess.CompletedProcess[str]:
        """Run a tool of LibreOffice as the user of this profile."""
        return subprocess.run(
            [*self._user, *command],
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            check=False,
            timeout=SECONDS,
            cwd=self.folder,
            env=clean_environment(),
        )

    def _start(self, command: Sequence[str]) -> None:
        python = bridge_python()
        assert python is not None
        driver = self.folder / DRIVER.name  # a copy that any user may read
        shutil.copyfile(DRIVER, driver)
        with (self.folder / "driver.log").open("wb") as log:
            self._driver = subprocess.Popen(
                [*self._user, python, "-B", str(driver)],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=log,
                cwd=self.folder,
                env=clean_environment(),
                start_new_session=True,  # so that it can be ended with all that it started
            )
        self._ready = selectors.DefaultSelector()
        assert self._driver.stdout is not None
        self._ready.register(self._driver.stdout, selectors.EVENT_READ)
        settings = {
            "command": command,
            "pipe": f"warp{secrets.token_hex(6)}",
            "log": str(self.folder / "office.log"),
        }
        self._send(settings)

    def ask(self, what: str, *arguments: Any) -> Any:
        """Have the driver do something (its methods say what there is)."""
        return self._send({"do": what, "arguments": arguments})

    def _send(self, message: dict[str, Any]) -> Any:
        assert self._driver.stdin is not None
        assert self._driver.stdout is not None
        try:
            self._driver.stdin.write((json.dumps(message) + "\n").encode())
            self._driver.stdin.flush()
        except BrokenPipeError:
            raise OfficeError(f"LibreOffice has ended\n{self._logs()}") from None
        line = self._driver.stdout.readline() if self._ready.select(SECONDS) else b""
        if not line:
            raise OfficeError(f"LibreOffice has ended or does not answer\n{self._logs()}")
        answer = json.loads(line)
        if "error" in answer:
            raise OfficeError(answer["error"])
        return answer["answer"]

    def end(self) -> int | None:
        """End LibreOffice and remove all it wrote; 0 when it ended well."""
        code = None
        driver = getattr(self, "_driver", None)
        if driver is not None:
            driver.stdin.close()  # the driver ends LibreOffice, then itself
            with contextlib.suppress(subprocess.TimeoutExpired):
                code = driver.wait(SECONDS)
            if code != 0:
                with contextlib.suppress(ProcessLookupError):
                    os.killpg(driver.pid, signal.SIGKILL)
                driver.wait()
            driver.stdout.close()
            self._ready.close()
            self.log = self._logs()
        shutil.rmtree(self.folder, ignore_errors=True)
        return code

    def _logs(self) -> str:
        names = ("driver.log", "office.log")
        return "\n".join(
            (self.folder / name).read_text(errors="replace")
            for name in names
            if (self.folder / name).exists()
        )
