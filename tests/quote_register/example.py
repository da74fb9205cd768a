"""A quote of the invented demo mill to be saved, and where a register is tried."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from costing.front_ends.quote_register.record import Kept, kept
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.report import work_out
from costing.settings.mill import Mill

MEMORY = Path("/dev/shm")  # what a process has written stays there when it is killed, as on a disk


@cache
def demo() -> Mill:
    return read_book(demo_book())


@cache
def quoted(code: str = "Q-01") -> Kept:
    return kept(demo(), work_out(demo(), demo().enquiries[code]))


@contextmanager
def fast_folder() -> Iterator[Path]:
    """A folder on which a save does not wait for a disk."""
    place = tempfile.mkdtemp(dir=MEMORY if MEMORY.is_dir() else None)
    try:
        yield Path(place)
    finally:
        shutil.rmtree(place)
