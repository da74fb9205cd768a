"""Save quotes in the register, list and find them again."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

from costing.front_ends.quote_register.database import KEPT_COLUMNS, PATIENCE, reading, saving
from costing.front_ends.quote_register.record import Head, Kept
from costing.quantities import InputError, folded, listed, meant

LOOKED_THROUGH = ("code", "customer", "note", "description", "style", "recipe", "range", "saved_by")
HEADS = ", ".join(Head._fields)
LAST = "SELECT revision, customer FROM quote WHERE code = ? ORDER BY revision DESC LIMIT 1"


class Wanted(NamedTuple):
    """What is looked for; all of it must hold.

    Attributes
    ----------
    words : tuple of str
        Each stands in some text of the quote; case does not count.
    since, until : date or None
        Saved on these days or between, on the clock of this computer.
    codes, customer, style, recipe : str
        "" for any; customer is a part of a name, the others whole codes.
    """

    words: tuple[str, ...] = ()
    since: datetime.date | None = None
    until: datetime.date | None = None
    code: str = ""
    customer: str = ""
    style: str = ""
    recipe: str = ""


ANYTHING = Wanted()


def save(path: Path, quotes: Sequence[Kept], patience: float = PATIENCE) -> list[Kept]:
    """Save quotes, all or none: each as the next revision of its code, for the same customer if none is told.

    Parameters
    ----------
    path : Path
        The register; made where there is none.
    quotes : sequence of Kept
        To be saved.
    patience : float, optional
        Seconds to wait for another program that saves.

    Returns
    -------
    list of Kept
        As they are saved, on the disk: with revision and time.

    Raises
    ------
    InputError
        The file is refused; nothing is saved.
    """
    saved = []
    places = ", ".join("?" * len(KEPT_COLUMNS))
    with saving(path, patience) as connection:
        now = datetime.datetime.now(datetime.timezone.utc).isoformat(timespec="seconds")
        for item in quotes:
            last, customer = connection.execute(LAST, [item.head.code]).fetchone() or (0, "")
            customer = item.head.customer or customer
            done = item._replace(head=item.head._replace(revision=last + 1, saved_at=now, customer=customer))
            row = [*done.head, done.snapshot, done.result, done.seal()]
            connection.execute(f"INSERT INTO quote ({', '.join(KEPT_COLUMNS)}) VALUES ({places})", row)
            saved.append(done)
    return saved


def found(path: Path, wanted: Wanted = ANYTHING, last_only: bool = False) -> list[Head]:
    """The heads of saved quotes, in the order in which they were saved.

    Parameters
    ----------
    path : Path
        The register.
    wanted : Wanted, optional
        What is looked for; everything when left out.
    last_only : bool, optional
        True for the last revision of each code only.

    Raises
    ------
    InputError
        The file is refused.
    """
    texts = " || char(10) || ".join(LOOKED_THROUGH)
    tests: list[str] = []
    values: list[Any] = []
    for word in wanted.words:
        tests.append(f"instr(folded({texts}), ?) > 0")
        values.append(folded(word))
    for name, text in (("code", wanted.code), ("style", wanted.style), ("recipe", wanted.recipe)):
        if text:
            tests.append(f"folded({name}) = ?")
            values.append(folded(text))
    if wanted.customer:
        tests.append("instr(folded(customer), ?) > 0")
        values.append(folded(wanted.customer))
    if wanted.since is not None:
        tests.append("saved_at >= ?")
        values.append(_utc(wanted.since))
    if wanted.until is not None:
        tests.append("saved_at < ?")
        values.append(_utc(wanted.until + datetime.timedelta(days=1)))
    if last_only:
        tests.append("revision = (SELECT max(revision) FROM quote AS other WHERE other.code = quote.code)")
    where = f" WHERE {' AND '.join(tests)}" if tests else ""
    with reading(path) as connection:
        rows = connection.execute(f"SELECT {HEADS} FROM quote{where} ORDER BY number", values).fetchall()
    return [Head(*row) for row in rows]


def _utc(day: datetime.date) -> str:
    """The start of a day on the clock of this computer, as the register writes times."""
    start = datetime.datetime.combine(day, datetime.time()).astimezone()
    return start.astimezone(datetime.timezone.utc).isoformat(timespec="seconds")


def opened(path: Path, code: str, revision: int | None = None) -> Kept:
    """A saved quote; its last revision where none is named.

    Parameters
    ----------
    path : Path
        The register.
    code : str
        Of the quote; case and blanks do not count where that leaves one.
    revision : int, optional
        Below 0 it counts from the last: -1 is the one before it.

    Raises
    ------
    InputError
        The file is refused, there is no such quote or revision, or it is not as it was saved.
    """
    with reading(path) as connection:
        codes = [name for (name,) in connection.execute("SELECT DISTINCT code FROM quote ORDER BY number")]
        known = meant(code, codes)
        if known is None:
            raise InputError(str(path), f"holds no quote {code!r}; there are: {listed(codes, code)}")
        (last,) = connection.execute("SELECT max(revision) FROM quote WHERE code = ?", [known]).fetchone()
        wanted = last if revision is None else revision if revision > 0 else last + revision
        columns = ", ".join(KEPT_COLUMNS)
        row = connection.execute(
            f"SELECT {columns} FROM quote WHERE code = ? AND revision = ?", [known, wanted]
        ).fetchone()
    if row is None:
        asked = "one before the last" if revision is not None and revision < 0 else f"revision {wanted}"
        raise InputError(str(path), f"holds no {asked} of {known}; there is 1{f' to {last}' * (last > 1)}")
    *head, snapshot, result, seal = row
    item = Kept(Head(*head), snapshot, result)
    if item.seal() != seal:
        raise InputError(
            str(path),
            f"{item.name} is not as it was saved: the file was damaged, or changed by another program; take "
            "the last copy of your backup",
        )
    return item
