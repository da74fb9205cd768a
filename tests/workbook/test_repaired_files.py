"""Where a repaired workbook goes: beside the old one, or in its place with the old one kept."""

from __future__ import annotations

import itertools
import os
import stat
from pathlib import Path

import pytest
from openpyxl import Workbook

from costing.front_ends import whole_file
from costing.front_ends.workbook import formula_names
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.formula_names import repair_names, with_plain_names
from costing.quantities import InputError
from tests.workbook.formula_books import CALL, PLAIN, bytes_of, everywhere, loaded, sheet_with


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "mill.xlsx"
    path.write_bytes(everywhere(CALL))
    return path


def names(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir())


def test_a_new_file_beside_the_old(path: Path) -> None:
    before = path.read_bytes()
    done = repair_names(path)
    assert (done.written, done.kept) == (path.with_name("mill_plain.xlsx"), None)
    assert sum(done.changed.values()) == 8
    assert path.read_bytes() == before
    assert names(path.parent) == ["mill.xlsx", "mill_plain.xlsx"]
    assert loaded(path.with_name("mill_plain.xlsx"))["Quote & more"]["A1"].value == f"={PLAIN}"


def test_nothing_to_change_writes_nothing_unless_a_file_is_asked_for(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(demo_book().read_bytes())
    assert repair_names(path) == ({}, None, None)
    assert repair_names(path, in_place=True) == ({}, None, None)
    assert names(tmp_path) == ["book.xlsx"]
    target = tmp_path / "new.xlsx"
    assert repair_names(path, target) == ({}, target, None)
    assert target.read_bytes() == path.read_bytes()


def test_in_place_the_file_as_it_was_is_kept(path: Path) -> None:
    before = path.read_bytes()
    path.chmod(0o640)
    for kept in ("mill_before.xlsx", "mill_before_2.xlsx"):
        path.write_bytes(before)
        done = repair_names(path, in_place=True)
        assert (done.written, done.kept) == (path, path.with_name(kept))
        assert path.with_name(kept).read_bytes() == before
        assert path.read_bytes() == with_plain_names(before, "")[0]
        assert stat.S_IMODE(path.stat().st_mode) == stat.S_IMODE(path.with_name(kept).stat().st_mode) == 0o640
    assert names(path.parent) == ["mill.xlsx", "mill_before.xlsx", "mill_before_2.xlsx"]


def test_in_place_behind_a_link(path: Path) -> None:
    link = path.with_name("link.xlsx")
    link.symlink_to(path)
    done = repair_names(link, in_place=True)
    assert done.kept == path.with_name("mill_before.xlsx")
    assert link.is_symlink()
    assert loaded(path)["Quote & more"]["A1"].value == f"={PLAIN}"


def refused(path: Path, *arguments: Path, in_place: bool = False) -> str:
    before = {entry.name: entry.read_bytes() for entry in path.parent.iterdir() if entry.is_file()}
    with pytest.raises(InputError) as caught:
        repair_names(path, *arguments, in_place=in_place)
    assert before == {entry.name: entry.read_bytes() for entry in path.parent.iterdir() if entry.is_file()}
    assert "\n" not in str(caught.value)
    return str(caught.value)


def test_no_file_is_replaced(path: Path) -> None:
    there = path.with_name("there.xlsx")
    there.write_bytes(b"the only copy")
    assert "is there already" in refused(path, there)
    assert "is there already" in refused(path, path)
    path.with_name("mill_plain.xlsx").write_bytes(b"the only copy")
    assert "is there already" in refused(path)
    assert "accepted is a new file or the place" in refused(path, path.with_name("new.xlsx"), in_place=True)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("new.xlsm", "must end in .xlsx"),
        ("new.ods", "must end in .xlsx"),
        ("nowhere/new.xlsx", "could not be written: No such file or directory; nothing was changed"),
    ],
)
def test_the_new_file_needs_a_place(path: Path, name: str, said: str) -> None:
    assert said in refused(path, path.parent / name)


@pytest.mark.parametrize("lock", [".~lock.mill.xlsx#", "~$mill.xlsx"])
def test_a_workbook_that_is_open_is_refused(path: Path, lock: str) -> None:
    path.with_name(lock).write_text("clerk", encoding="utf-8")
    assert "is open in a spreadsheet program" in refused(path)
    assert "is open in a spreadsheet program" in refused(path, in_place=True)


def test_a_workbook_saved_meanwhile_is_left_alone(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write = whole_file.write_whole

    def slow(*arguments: object, **options: object) -> None:
        write(*arguments, **options)  # type: ignore[arg-type]
        path.write_bytes(b"saved by somebody else")

    monkeypatch.setattr(formula_names, "write_whole", slow)
    with pytest.raises(InputError, match="was saved by somebody else meanwhile"):
        repair_names(path, in_place=True)
    assert names(path.parent) == ["mill.xlsx"]
    assert path.read_bytes() == b"saved by somebody else"


def test_a_disk_that_fills_up_in_place(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    sync, calls = os.fsync, itertools.count(1)

    def full(stream: int) -> None:
        if next(calls) == 2:
            raise OSError(28, "No space left on device")
        sync(stream)

    monkeypatch.setattr(os, "fsync", full)
    assert "No space left on device" in refused(path, in_place=True)


def test_a_macro_workbook_stays_one(tmp_path: Path) -> None:
    path = tmp_path / "mill.XLSM"
    path.write_bytes(everywhere(CALL))
    assert repair_names(path).written == tmp_path / "mill_plain.XLSM"


def test_other_files_are_refused(tmp_path: Path) -> None:
    for name, content, said in (
        ("mill.ods", b"PK", "is an OpenDocument file, where LibreOffice reads its own names"),
        ("mill.csv", b"a;b", "accepted is a file that ends in .xlsx or .xlsm"),
        ("mill.xlsx", b"a;b", "is not a workbook"),
        ("half.xlsx", everywhere(CALL)[:-500], "is damaged"),
        ("broken.xlsx", sheet_with("<x:f>warp_molar_mass(</x:f></x:c>"), "is damaged"),
        ("entity.xlsx", entity(), "is damaged"),
    ):
        path = tmp_path / name
        path.write_bytes(content)
        assert said in refused(path)
    assert "cannot be read" in refused(tmp_path / "nowhere.xlsx")


def entity() -> bytes:
    """A part that declares a text of its own, which no program that saves workbooks does."""

    def amend(name: str, content: bytes) -> bytes:
        if name != "xl/worksheets/sheet1.xml":
            return content
        return b'<!DOCTYPE worksheet [<!ENTITY e "warp_molar_mass(1)">]>' + content

    return bytes_of(Workbook(), amend)
