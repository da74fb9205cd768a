"""A quote of the invented demo mill to be saved, and where a register is tried."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from costing.front_ends.quote_register.record import Kept, kept
from costing.report import work_out
from tests.report.demo import demo_mill

MEMORY = Path("/dev/shm")  # what a process has written stays there when it is killed, as on a disk


@cache
def quoted(code: str = "Q-01") -> Kept:
    return kept(demo_mill(), work_out(demo_mill(), demo_mill().enquiries[code]))


@contextmanager
def fast_folder() -> Iterator[Path]:
    """A folder on which a save does not wait for a disk."""
    place = tempfile.mkdtemp(dir=MEMORY if MEMORY.is_dir() else None)
    try:
        yield Path(place)
    finally:
        shutil.rmtree(place)
