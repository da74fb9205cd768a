"""What the register keeps, finds and refuses."""

from __future__ import annotations

import datetime
import json
import os
import shutil
import sqlite3
import stat
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from costing.front_ends.quote_register.database import APPLICATION, FORMAT, KEPT_COLUMNS
from costing.front_ends.quote_register.record import Head, Kept, kept, quote_of
from costing.front_ends.quote_register.store import Wanted, found, opened, save
from costing.front_ends.quote_register.tables import reopen
from costing.quantities import InputError
from costing.report import work_out
from costing.settings.snapshot import restored
from tests.quote_register.example import fast_folder, quoted
from tests.report.demo import demo_mill


@pytest.fixture
def register() -> Iterator[Path]:
    with fast_folder() as folder:
        yield folder / "quotes.sqlite"


def test_a_saved_quote_is_as_it_was_and_counts_on(register: Path) -> None:
    first = quoted()._replace(head=quoted().head._replace(customer="Übersee & Söhne", note="=2+2"))
    assert save(register, [first])[0].head.revision == 1
    assert [item.head.revision for item in save(register, [quoted(), quoted("Q-02"), quoted()])] == [2, 1, 3]
    again = opened(register, "q-01", 1)
    assert (again.head.customer, again.head.note) == ("Übersee & Söhne", "=2+2")
    result = work_out(demo_mill(), demo_mill().enquiries["Q-01"])
    assert quote_of(again) == (result.quote, result.remarks)
    assert work_out(*restored(again.document)).quote == result.quote
    assert opened(register, "Q-01").head.revision == 3
    assert opened(register, "Q-01", -1).head.revision == 2
    assert register.parent.joinpath("quotes.sqlite-journal").exists() is False


def test_the_columns_are_those_of_this_format() -> None:
    """Another column is another format: raise it, and say what becomes of registers of the old one."""
    names = (
        "code revision saved_at saved_by customer note description style recipe range ordered ordered_unit "
        "length_basis currency basis cost price price_per_kg rounding price_date version tables snapshot "
        "result seal"
    )
    assert FORMAT == 1
    assert " ".join(KEPT_COLUMNS) == names


def test_quotes_are_found_by_text_day_style_recipe_and_customer(register: Path) -> None:
    mill = demo_mill()
    for code, customer, note in (
        ("Q-01", "ÜBERSEE Kunde", "100 % sure_"),
        ("Q-02", "other", "second"),
        ("Q-05", "übersee kunde", ""),
        ("Q-01", "ÜBERSEE Kunde", "later"),
    ):
        save(register, [kept(mill, work_out(mill, mill.enquiries[code]), "me", customer, note)])

    def codes(last_only: bool = False, **wanted: Any) -> list[tuple[str, int]]:
        return [(head.code, head.revision) for head in found(register, Wanted(**wanted), last_only)]

    every = [("Q-01", 1), ("Q-02", 1), ("Q-05", 1), ("Q-01", 2)]
    assert codes() == every
    assert codes(last_only=True) == every[1:]
    assert codes(words=("übersee",)) == [("Q-01", 1), ("Q-05", 1), ("Q-01", 2)]
    assert codes(words=("KUNDE", "later")) == [("Q-01", 2)]
    assert codes(words=("%",)) == [("Q-01", 1)]
    assert codes(customer="Übersee") == [("Q-01", 1), ("Q-05", 1), ("Q-01", 2)]
    assert codes(recipe=mill.enquiries["Q-05"].recipe.lower())[0] in every
    assert codes(style="no such") == []
    today = datetime.date.today()
    day = datetime.timedelta(days=1)
    assert codes(since=today - day, until=today + day) == every
    assert codes(since=today + 2 * day) == []
    assert codes(until=today - 2 * day) == []


def test_nothing_that_is_saved_is_changed_or_deleted(register: Path) -> None:
    save(register, [quoted()])
    with closing(sqlite3.connect(register)) as connection:
        for line in ("UPDATE quote SET price = 1", "DELETE FROM quote"):
            with pytest.raises(sqlite3.IntegrityError, match="never changed"):
                connection.execute(line)


def test_a_quote_that_was_changed_by_other_means_is_refused(register: Path) -> None:
    save(register, [quoted(), quoted("Q-02")])
    with closing(sqlite3.connect(register)) as connection:
        connection.execute("DROP TRIGGER never_changed")
        connection.execute("UPDATE quote SET price = 1.0 WHERE code = 'Q-01'")
        connection.commit()
    with pytest.raises(InputError, match="Q-01 revision 1 is not as it was saved"):
        opened(register, "Q-01")
    assert opened(register, "Q-02").head.revision == 1


def test_all_of_a_save_or_none_of_it(register: Path) -> None:
    save(register, [quoted()])
    nothing: Any = None
    wrong = quoted()._replace(snapshot=nothing)
    with pytest.raises(InputError, match="nothing was saved"):
        save(register, [quoted("Q-02"), wrong])
    assert [head.code for head in found(register)] == ["Q-01"]


@pytest.mark.parametrize(
    ("code", "revision", "said"),
    [
        ("Q-03", None, "holds no quote 'Q-03'; there are: Q-01"),
        ("Q-01", 2, "holds no revision 2 of Q-01; there is 1"),
        ("Q-01", -1, "holds no one before the last of Q-01"),
    ],
)
def test_what_is_not_there_is_said(register: Path, code: str, revision: int | None, said: str) -> None:
    save(register, [quoted()])
    with pytest.raises(InputError, match=said):
        opened(register, code, revision)


def test_a_text_too_long_is_refused() -> None:
    result = work_out(demo_mill(), demo_mill().enquiries["Q-01"])
    with pytest.raises(InputError, match="--note: has 3000 letters; accepted are up to 2000"):
        kept(demo_mill(), result, note="x" * 3000)


@pytest.mark.parametrize(
    ("result", "said"),
    [
        ('{"result": "result of a quote", "format": 2}', "format 2; accepted is 1: a newer one needs"),
        ('{"result": "result of a quote", "format": 1, "quote": {}}', "not whole: 'lines'"),
        ("none", "is no JSON"),
    ],
)
def test_a_result_that_this_version_does_not_know_is_refused(result: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        quote_of(quoted()._replace(result=result))


def refused(register: Path, said: str, patience: float = 0.05) -> None:
    """Both ways of using it are refused, and the file stays as it was."""
    before = register.read_bytes() if register.is_file() else None
    for use in (lambda: save(register, [quoted()], patience), lambda: found(register)):
        with pytest.raises(InputError, match=said):
            use()
    assert (register.read_bytes() if register.is_file() else None) == before


def test_a_file_that_is_no_register_is_refused(register: Path) -> None:
    register.write_bytes(b"PK\x03\x04 a workbook" * 100)
    refused(register, "is no register of quotes; accepted is one that `costing register save` has made")


def test_a_database_of_another_program_is_refused(register: Path) -> None:
    with closing(sqlite3.connect(register)) as connection:
        connection.execute("CREATE TABLE quote (code TEXT)")
    refused(register, "is a database of another program and was left as it is")


def test_a_newer_format_is_refused(register: Path) -> None:
    save(register, [quoted()])
    with closing(sqlite3.connect(register)) as connection:
        connection.execute(f"PRAGMA user_version = {FORMAT + 1}")
    refused(register, f"is a register of the format {FORMAT + 1}.*needs a newer version of this program")


def test_a_damaged_register_is_refused(register: Path) -> None:
    save(register, [quoted()] * 20)
    content = bytearray(register.read_bytes())
    content[4096 : len(content) // 2] = b"\xff" * (len(content) // 2 - 4096)
    register.write_bytes(content)
    refused(register, "is damaged; take a copy of it")


def test_a_register_that_is_held_is_refused_after_a_while(register: Path) -> None:
    save(register, [quoted()])
    with closing(sqlite3.connect(register, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(InputError, match="another program has kept it to itself for too long"):
            save(register, [quoted()], patience=0.05)
        other.execute("ROLLBACK")
    assert save(register, [quoted()])[0].head.revision == 2


def test_a_folder_or_a_missing_place_is_refused(register: Path) -> None:
    register.mkdir()
    refused(register, "is a folder; accepted is")
    missing = register / "no" / "quotes.sqlite"
    with pytest.raises(InputError, match="its folder is not there"):
        save(missing, [quoted()])
    with pytest.raises(InputError, match="is not there; accepted is a register"):
        found(missing)


def test_an_empty_file_is_a_register_without_quotes(register: Path) -> None:
    register.touch()
    with pytest.raises(InputError, match="holds no quote yet"):
        found(register)
    assert save(register, [quoted()])[0].head.revision == 1
    with closing(sqlite3.connect(register)) as connection:
        assert connection.execute("PRAGMA application_id").fetchone() == (APPLICATION,)


NOTHING = "nothing was saved or changed"
ONLY_READS = """
import os, sys
from pathlib import Path
from costing.front_ends.quote_register.store import found, opened, save
from costing.quantities import InputError
if os.geteuid() == 0:
    os.setuid(65534)  # to whom a folder that is write-protected is so
register = Path(sys.argv[1])
item = opened(register, "Q-01")
print(item.name, len(found(register)))
for path in (register, register.with_name("new.sqlite")):
    try:
        save(path, [item])
    except InputError as error:
        print(error.message)
"""


def test_a_write_protected_folder_is_read_and_not_written() -> None:
    folder = Path(tempfile.mkdtemp())  # which others may enter, other than the folders of a test
    register = folder / "quotes.sqlite"
    try:
        save(register, [quoted()])
        register.chmod(stat.S_IRUSR | stat.S_IRGRP | stat.S_IROTH)
        folder.chmod(0o555)
        done = subprocess.run(
            [sys.executable, "-c", ONLY_READS, str(register)],
            capture_output=True,
            text=True,
            env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1"},
        )
        assert done.returncode == 0, done.stderr
        assert done.stdout.splitlines() == [
            "Q-01 revision 1 1",
            f"may be read and not written: the file or its folder is write-protected; {NOTHING}",
            f"could not be opened: the folder does not allow it, or the file; {NOTHING}",
        ]
    finally:
        folder.chmod(0o755)
        shutil.rmtree(folder)


def test_a_quote_that_the_first_version_kept_is_still_worked_out() -> None:
    """Years later a register must open: this quote is of before later parts and fields of the mill."""
    path = Path(__file__).with_name("kept_by_first_version.json")
    document = json.loads(path.read_text(encoding="utf-8"))
    item = Kept(Head(**document["head"]), document["snapshot"], document["result"])
    assert item.seal() == document["seal"]
    again = reopen(item)
    assert again.refused is None
    assert again.quote.price_on(item.head.basis) == item.head.price
    assert again.verdict.startswith("worked out anew")
