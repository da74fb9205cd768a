"""One process for all tests that call the functions as Excel does."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest

from costing.front_ends.excel.vba import PYTHON_MODULE

ROOT = Path(__file__).resolve().parents[2]


class RefusedError(Exception):
    """A call that raised, so that the cell shows an error."""


class Excel:
    """The server of functions that xlwings runs for Excel."""

    def __init__(self) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.excel.windows"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            encoding="utf-8",
            cwd=ROOT,
        )

    def described(self) -> dict[str, Any]:
        """What xlwings knows of the functions."""
        found: dict[str, Any] = self._answer({"describe": PYTHON_MODULE})
        return found

    def call(self, name: str, arguments: Sequence[Any]) -> Any:
        """Call a function as the generated VBA does."""
        return self._answer({"call": [PYTHON_MODULE, name, list(arguments)]})

    def _answer(self, request: dict[str, Any]) -> Any:
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self.process.stdin.write(json.dumps(request) + "\n")
        self.process.stdin.flush()
        found = json.loads(self.process.stdout.readline())
        if "error" in found:
            assert found["kind"] == "InputError", found
            raise RefusedError(found["error"])
        return found["answer"]

    def end(self) -> int:
        """End the process; 0 when it ended well."""
        self.process.communicate(timeout=60)
        return self.process.returncode


@pytest.fixture(scope="session")
def excel() -> Iterator[Excel]:
    server = Excel()
    yield server
    assert server.end() == 0
