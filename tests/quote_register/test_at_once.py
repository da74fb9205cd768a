"""Saves of several programs at once, and saves that are cut off."""

from __future__ import annotations

import multiprocessing
import os
import random
import sqlite3
import time
from contextlib import closing
from pathlib import Path

from costing.front_ends.quote_register.store import found, opened, save
from tests.quote_register.example import fast_folder, quoted

FORK = multiprocessing.get_context("fork")  # no time is lost in starting Python anew
PROCESSES, SAVES = 4, 250
ROUNDS = 25
ENDLESS = 1_000_000


def save_often(register: Path, times: int, name: str, told: int) -> None:
    """Save the same quote again and again, and say each number once it is confirmed."""
    item = quoted()
    for number in range(1, times + 1):
        save(register, [item._replace(head=item.head._replace(note=f"{name} {number}"))], patience=60.0)
        os.write(told, b"saved %d\n" % number)


def test_a_thousand_saves_of_four_programs_are_all_there() -> None:
    quoted()  # worked out once, before the others begin
    with fast_folder() as folder:
        register = folder / "quotes.sqlite"
        reads, tells = os.pipe()
        running = [
            FORK.Process(target=save_often, args=(register, SAVES, str(number), tells))
            for number in range(PROCESSES)
        ]
        for process in running:
            process.start()
        os.close(tells)
        with open(reads, "rb") as told:
            assert len(told.readlines()) == PROCESSES * SAVES
        for process in running:
            process.join()
        assert [process.exitcode for process in running] == [0] * PROCESSES
        heads = found(register)
        assert [head.revision for head in heads] == list(range(1, PROCESSES * SAVES + 1))
        assert {head.note for head in heads} == {
            f"{name} {number}" for name in range(PROCESSES) for number in range(1, SAVES + 1)
        }
        last = opened(register, quoted().head.code)
        assert (last.snapshot, last.result) == (quoted().snapshot, quoted().result)


def test_a_program_killed_at_any_moment_leaves_all_that_it_confirmed() -> None:
    source = random.Random(5)
    quoted()
    with fast_folder() as folder:
        register, before, kept = folder / "quotes.sqlite", 0, 0
        for turn in range(ROUNDS):
            reads, tells = os.pipe()
            process = FORK.Process(target=save_often, args=(register, ENDLESS, str(turn), tells))
            process.start()
            os.close(tells)
            # A short life catches it while it makes the file.
            time.sleep(source.uniform(0.0, 0.02 if turn < 5 else 0.15))
            process.kill()
            process.join()
            with open(reads, "rb") as told:
                confirmed = len(told.readlines())
            saved = _saved(register)
            assert saved == ([head.revision for head in found(register)] if saved else [])
            assert saved == list(range(1, len(saved) + 1))
            # What was written and not confirmed yet may be there too: that one save, and no other.
            assert before + confirmed <= len(saved) <= before + confirmed + 1
            kept, before = kept + confirmed, len(saved)
        assert kept > 3 * ROUNDS
        for revision in range(1, before + 1):
            assert opened(register, quoted().head.code, revision).snapshot == quoted().snapshot


def _saved(register: Path) -> list[int]:
    """The revisions in the file, once it is seen to be whole; none where it was not made yet."""
    if not register.exists():
        return []
    with closing(sqlite3.connect(register)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        if connection.execute("SELECT count(*) FROM sqlite_master").fetchone() == (0,):
            return []
        return [number for (number,) in connection.execute("SELECT revision FROM quote ORDER BY number")]
