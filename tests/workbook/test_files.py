"""Files that are no book are refused in one line; a file is written whole or not at all."""

from __future__ import annotations

import errno
import io
import os
import resource
import stat
import subprocess
import sys
import zipfile
from collections.abc import Callable
from pathlib import Path

import msoffcrypto
import pytest
from msoffcrypto.format.ooxml import OOXMLFile

from costing.front_ends.workbook import open_file
from costing.front_ends.workbook.build import demo_book, write_fresh_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError

OLE_HEADER = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def zipped(**parts: bytes) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name.replace("__", "/").replace("_DOT_", "."), content)
    return packed.getvalue()


def protected() -> bytes:
    hidden = io.BytesIO()
    with demo_book().open("rb") as stream:
        OOXMLFile(stream).encrypt("secret", hidden)
    return hidden.getvalue()


def without_end() -> bytes:
    whole = demo_book().read_bytes()
    return whole[: len(whole) // 2]


def with_broken_part(name: str) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(demo_book()) as source, zipfile.ZipFile(packed, "w") as target:
        for entry in source.infolist():
            content = source.read(entry)
            target.writestr(
                entry.filename, content[: len(content) // 2] if entry.filename == name else content
            )
    return packed.getvalue()


def with_flipped_byte() -> bytes:
    """A damage inside a packed part, which only its checksum shows."""
    whole = bytearray(demo_book().read_bytes())
    with zipfile.ZipFile(io.BytesIO(bytes(whole))) as archive:
        place = archive.getinfo("xl/worksheets/sheet3.xml").header_offset + 600
    whole[place] ^= 0xFF
    return bytes(whole)


def bomb() -> bytes:
    """Small on the disk, more than 200 MB once unpacked."""
    return zipped(xl__workbook_DOT_xml=b"<workbook/>", xl__worksheets__sheet1_DOT_xml=bytes(201_000_000))


BAD_FILES: dict[str, tuple[Callable[[], bytes], str]] = {
    "old workbook": (lambda: OLE_HEADER + bytes(3000), "is an old .xls workbook"),
    "password": (protected, "is protected by a password"),
    "half a file": (without_end, "is damaged"),
    "broken sheet": (lambda: with_broken_part("xl/worksheets/sheet2.xml"), "is damaged"),
    "broken list of sheets": (lambda: with_broken_part("xl/workbook.xml"), "is damaged"),
    "flipped byte": (with_flipped_byte, "is damaged"),
    "text": (lambda: b"style;ends\nD-1200;4200\n", "is not a workbook"),
    "empty": (lambda: b"", "is not a workbook"),
    "other zip": (lambda: zipped(readme_DOT_txt=b"hello"), "is not a workbook"),
    "document": (
        lambda: zipped(mimetype=b"application/vnd.oasis.opendocument.spreadsheet"),
        "is an OpenDocument",
    ),
    "binary workbook": (lambda: zipped(xl__workbook_DOT_bin=b"x"), "is an .xlsb workbook"),
    "bomb": (bomb, "MB in 2 parts once unpacked"),
}


@pytest.mark.parametrize("name", BAD_FILES)
def test_other_files_are_refused(tmp_path: Path, name: str) -> None:
    make, said = BAD_FILES[name]
    path = tmp_path / "book.xlsx"
    path.write_bytes(make())
    before = path.read_bytes()
    with pytest.raises(InputError) as caught:
        read_book(path)
    told = str(caught.value)
    assert told.startswith("book.xlsx: ")
    assert said in told
    assert "accepted is an .xlsx workbook" in told
    assert "\n" not in told
    assert path.read_bytes() == before


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(
        InputError, match=r"nowhere\.xlsx: cannot be read: No such file or directory; accepted is"
    ):
        read_book(tmp_path / "nowhere.xlsx")


def test_a_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"is a folder; accepted is an \.xlsx workbook"):
        read_book(tmp_path)


def test_a_large_file_is_refused_before_it_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(demo_book().read_bytes())
    monkeypatch.setattr(open_file, "LARGEST_FILE", 1000)
    monkeypatch.setattr(Path, "read_bytes", lambda _: pytest.fail("was read"))
    with pytest.raises(InputError, match=r"accepted is an \.xlsx workbook of up to 0 MB"):
        read_book(path)


def test_a_protected_file_is_one_for_the_library_too() -> None:
    assert msoffcrypto.OfficeFile(io.BytesIO(protected())).is_encrypted()


@pytest.mark.parametrize("lock", [".~lock.book.xlsx#", "~$book.xlsx"])
def test_a_book_that_is_open_elsewhere_is_refused_and_left_alone(tmp_path: Path, lock: str) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(demo_book().read_bytes())
    path.chmod(stat.S_IREAD)
    (tmp_path / lock).write_text("clerk,desk,today;", encoding="utf-8")
    before = (path.read_bytes(), path.stat().st_mtime_ns)
    with pytest.raises(
        InputError, match=r"book\.xlsx: is open in a spreadsheet program; accepted is a saved"
    ):
        read_book(path)
    (tmp_path / lock).unlink()
    assert len(read_book(path).styles) == 7
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before
    assert len(list(tmp_path.iterdir())) == 1


def test_a_fresh_book_replaces_nothing_unasked(tmp_path: Path) -> None:
    path = tmp_path / "mine.xlsx"
    path.write_bytes(b"the only copy")
    with pytest.raises(InputError, match=r"mine\.xlsx: is there already"):
        write_fresh_book(path)
    assert path.read_bytes() == b"the only copy"
    write_fresh_book(path, overwrite=True)
    assert len(read_book(path).styles) == 7


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("mine.xls", "must end in .xlsx"),
        ("mine", "must end in .xlsx"),
        ("nowhere/mine.xlsx", "could not be written: No such file or directory; nothing was changed"),
        ("folder.xlsx", "is a folder"),
    ],
)
def test_a_fresh_book_needs_a_place(tmp_path: Path, name: str, said: str) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    with pytest.raises(InputError) as caught:
        write_fresh_book(tmp_path / name, overwrite=True)
    assert said in str(caught.value)
    assert [item.name for item in tmp_path.iterdir()] == ["folder.xlsx"]


WRITE = """
import sys
from pathlib import Path
from costing.front_ends.workbook.build import write_fresh_book
from costing.quantities import InputError
try:
    write_fresh_book(Path(sys.argv[1]), overwrite=True)
except InputError as error:
    print(error)
    sys.exit(3)
"""


@pytest.mark.parametrize("there", [True, False])
def test_a_full_disk_leaves_everything_as_it_was(tmp_path: Path, there: bool) -> None:
    path = tmp_path / "mine.xlsx"
    if there:
        path.write_bytes(b"the only copy")

    def no_more_than_20_kb() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))

    done = subprocess.run(
        [sys.executable, "-B", "-c", WRITE, str(path)],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
        preexec_fn=no_more_than_20_kb,
    )
    assert done.returncode == 3, done.stderr
    assert "could not be written: File too large; nothing was changed" in done.stdout
    assert done.stdout.count("\n") == 1
    assert [item.name for item in tmp_path.iterdir()] == (["mine.xlsx"] if there else [])
    assert not there or path.read_bytes() == b"the only copy"


@pytest.mark.parametrize("there", [True, False])
def test_a_disk_that_fills_up_at_the_last_byte(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, there: bool
) -> None:
    path = tmp_path / "mine.xlsx"
    if there:
        path.write_bytes(b"the only copy")

    def full(_: int) -> None:
        assert len(list(tmp_path.glob(".mine.*.part"))) == 1
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(
        InputError, match="could not be written: No space left on device; nothing was changed"
    ):
        write_fresh_book(path, overwrite=True)
    assert [item.name for item in tmp_path.iterdir()] == (["mine.xlsx"] if there else [])
    assert not there or path.read_bytes() == b"the only copy"
