"""The file of the register: how it is opened, what marks it as ours, and why it is refused, in words.

One file with a rollback journal and no write-ahead log: a log needs memory that all its users share, which
the folder of a workbook on a file server does not give, and it keeps saved quotes in a second file that a
copy of the register would leave behind. `synchronous=EXTRA` puts each saved quote and the end of its journal
on the disk before it is confirmed; it is `FULL` and the folder besides.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path, PurePath
from typing import get_type_hints
from urllib.parse import quote

from costing.front_ends.quote_register.record import Head
from costing.quantities import InputError, folded

APPLICATION = 0x57_51_52_31  # marks the file as a register of quotes
FORMAT = 1
PATIENCE = 20.0  # seconds that a save waits for another one
KINDS = {str: "TEXT", int: "INTEGER", float: "REAL"}
KEPT_COLUMNS = (*Head._fields, "snapshot", "result", "seal")


def _schema() -> list[str]:
    kinds = [f"{name} {KINDS[kind]} NOT NULL" for name, kind in get_type_hints(Head).items()]
    columns = [*kinds, "snapshot TEXT NOT NULL", "result TEXT NOT NULL", "seal TEXT NOT NULL"]
    refuse = "BEGIN SELECT RAISE(ABORT, 'a saved quote is never changed'); END"
    return [
        f"CREATE TABLE quote (number INTEGER PRIMARY KEY, {', '.join(columns)}, UNIQUE (code, revision))",
        f"CREATE TRIGGER never_changed BEFORE UPDATE ON quote {refuse}",
        f"CREATE TRIGGER never_deleted BEFORE DELETE ON quote {refuse}",
        f"PRAGMA application_id = {APPLICATION}",
        f"PRAGMA user_version = {FORMAT}",
    ]


@contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a register to read from it.

    Raises
    ------
    InputError
        There is none, or it is refused.
    """
    if not path.is_file():
        said = "is a folder" if path.is_dir() else "is not there"
        raise InputError(
            str(path), f"{said}; accepted is a register of quotes: `costing register save` makes one"
        )
    # For writing where it may be: the journal of a save that was cut off is then cleared away.
    with _in_words(path), closing(_connected(path, "rw", PATIENCE)) as connection:
        if not _is_empty(connection):
            _check_ours(connection, path)
        else:
            raise InputError(str(path), "holds no quote yet; `costing register save` puts the first in")
        yield connection


@contextmanager
def saving(path: Path, patience: float = PATIENCE) -> Iterator[sqlite3.Connection]:
    """Open a register, made where there is none, and save in one piece what is done to it.

    Parameters
    ----------
    path : Path
        The register; its folder must be there.
    patience : float, optional
        Seconds to wait for another program that saves.

    Raises
    ------
    InputError
        It is refused; then nothing is saved.
    """
    if path.is_dir():
        raise InputError(str(path), "is a folder; accepted is the name of a register of quotes")
    if not path.parent.is_dir():
        raise InputError(str(path), "its folder is not there; accepted is a folder that is")
    with _in_words(path), closing(_connected(path, "rwc", patience)) as connection:
        connection.execute("BEGIN IMMEDIATE")  # waits for who saves just now; then nobody else does
        try:
            if _is_empty(connection):
                for line in _schema():
                    connection.execute(line)
            _check_ours(connection, path)
            yield connection
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise
        connection.execute("COMMIT")


def _connected(path: Path, mode: str, patience: float) -> sqlite3.Connection:
    connection = sqlite3.connect(
        f"{address(path.resolve())}?mode={mode}", uri=True, timeout=patience, isolation_level=None
    )
    connection.execute("PRAGMA synchronous = EXTRA")
    connection.create_function("folded", 1, folded, deterministic=True)
    return connection


def address(path: PurePath) -> str:
    """A file as the database wants it named; that of a file server with no server in front of its path.

    Examples
    --------
    >>> from pathlib import PureWindowsPath
    >>> address(PureWindowsPath("C:/mill/a b?.sqlite")), address(PureWindowsPath("//server/mill/a.sqlite"))
    ('file:///C:/mill/a%20b%3F.sqlite', 'file:////server/mill/a.sqlite')
    """
    named = quote(path.as_posix(), safe="/:")
    return f"file://{named}" if named.startswith("/") else f"file:///{named}"


def _is_empty(connection: sqlite3.Connection) -> bool:
    """True of a file that nothing was ever put into: one that was just made."""
    marks = [
        connection.execute(f"PRAGMA {name}").fetchone()[0] for name in ("application_id", "user_version")
    ]
    return not any(marks) and connection.execute("SELECT count(*) FROM sqlite_master").fetchone() == (0,)


def _check_ours(connection: sqlite3.Connection, path: Path) -> None:
    """Refuse a database of another program, and a register that this version does not know."""
    (mark,) = connection.execute("PRAGMA application_id").fetchone()
    if mark != APPLICATION:
        raise InputError(
            str(path),
            "is a database of another program and was left as it is; accepted is a register of quotes",
        )
    (form,) = connection.execute("PRAGMA user_version").fetchone()
    if form != FORMAT:
        raise InputError(
            str(path),
            f"is a register of the format {form}, and was left as it is; accepted is {FORMAT}: a newer one "
            "needs a newer version of this program",
        )


REASONS = (
    ("SQLITE_BUSY", "another program has kept it to itself for too long; try again, or close that program"),
    ("SQLITE_LOCKED", "another program has kept it to itself for too long; try again, or close that program"),
    ("SQLITE_NOTADB", "is no register of quotes; accepted is one that `costing register save` has made"),
    ("SQLITE_READONLY", "may be read and not written: the file or its folder is write-protected"),
    ("SQLITE_PERM", "may not be opened: ask for the right to it"),
    ("SQLITE_AUTH", "may not be opened: ask for the right to it"),
    ("SQLITE_CANTOPEN", "could not be opened: the folder does not allow it, or the file"),
    ("SQLITE_FULL", "the disk is full"),
    ("SQLITE_CORRUPT", "is damaged; take a copy of it, then the last one of your backup"),
    ("SQLITE_IOERR", "the disk or the network does not answer as it should"),
)


@contextmanager
def _in_words(path: Path) -> Iterator[None]:
    """Say in words why the file is refused; what was saved before stays as it is."""
    try:
        yield
    except sqlite3.Error as error:
        name = getattr(error, "sqlite_errorname", "") or ""
        reason = next((text for code, text in REASONS if name.startswith(code)), str(error))
        raise InputError(str(path), f"{reason}; nothing was saved or changed") from error
