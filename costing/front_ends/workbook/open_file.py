"""Open a workbook file that somebody else made: only read, never locked, and refused in one line."""

from __future__ import annotations

import contextlib
import io
import warnings
import zipfile
from collections.abc import Collection
from pathlib import Path

from openpyxl import load_workbook
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.sheet_reading import Held, cells_alone, has_formula
from costing.front_ends.workbook.xml_parts import SHEET_ML, read_part, sheet_parts
from costing.quantities import InputError, folded

LARGEST_FILE = 50_000_000
LARGEST_CONTENT = 200_000_000
MOST_PARTS = 10_000

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
ENCRYPTED = "EncryptedPackage".encode("utf-16-le")
EMPTY_SHEET = f'<worksheet xmlns="{SHEET_ML[0]}"><sheetData/></worksheet>'.encode()
ACCEPTED = "accepted is an .xlsx workbook"


def open_workbook(path: Path, wanted: Collection[str]) -> tuple[Workbook, Workbook | None]:
    """Read some sheets of a workbook into memory; the others are there, and empty.

    Parameters
    ----------
    path : Path
        The file.
    wanted : collection of str
        The sheets to read; case and blanks do not count.

    Returns
    -------
    tuple of Workbook
        With the values of the cells; and with their formulas, or None where no cell of these sheets has one.

    Raises
    ------
    InputError
        No such file, a folder, another kind of file, a password, a damaged file, one that would fill the
        memory, or one that a spreadsheet program has open: what is on the screen may not be saved yet.
    """
    content, has_formulas = _only(wanted, workbook_content(path), path.name)
    values = _load(content, path.name, formulas=False)
    return values, _load(content, path.name, formulas=True) if has_formulas else None


def _only(wanted: Collection[str], content: bytes, where: str) -> tuple[bytes, bool]:
    """The workbook with every sheet empty that is not wanted, and whether another one holds a formula.

    The live sheets of a book hold many cells: to read them takes longer than to read all that is asked for.
    """
    keys = {folded(title) for title in wanted}
    packed, held = io.BytesIO(), Held(where)
    has_formulas = False
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as book, zipfile.ZipFile(packed, "w") as target:
            parts = {part: folded(title) in keys for title, part in sheet_parts(book).items()}
            beside = {part.replace("worksheets/", "worksheets/_rels/") + ".rels" for part in parts}
            for name in dict.fromkeys(entry.filename for entry in book.infolist()):
                if name in beside or not name.endswith((".xml", ".rels")):
                    continue
                part = read_part(book, name) if parts.get(name, True) else EMPTY_SHEET
                if name in parts:
                    if b"\0" in part[:100]:
                        raise ValueError(
                            "a sheet is not in UTF-8"
                        )  # what is looked for in it would not be found
                    part = cells_alone(part)
                    has_formulas |= has_formula(part)
                held.add(part, name in parts)
                target.writestr(name, part)
    except InputError:
        raise
    except Exception as error:  # a damaged zip fails in many ways
        raise InputError(where, f"is damaged and cannot be opened; {ACCEPTED}") from error
    return packed.getvalue(), has_formulas


def sheet_names(path: Path) -> list[str]:
    """Names of the sheets of cells of a workbook, hidden ones too, in their order.

    Raises
    ------
    InputError
        As for `open_workbook`; but the file may be open elsewhere.
    """
    content = _content(path)
    _refuse_other(content, path.name)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as book:
            return list(sheet_parts(book))
    except Exception as error:  # a damaged part fails in many ways
        raise InputError(path.name, f"is damaged and cannot be opened; {ACCEPTED}") from error


def workbook_content(path: Path) -> bytes:
    """The bytes of a workbook file; nothing is unpacked.

    Raises
    ------
    InputError
        As for `open_workbook`.
    """
    refuse_open_elsewhere(path)
    content = _content(path)
    _refuse_other(content, path.name)
    return content


def _refuse_other(content: bytes, where: str) -> None:
    if content.startswith(OLE):
        if ENCRYPTED in content:
            raise InputError(where, f"is protected by a password; {ACCEPTED} saved without one")
        raise InputError(where, f"is an old .xls workbook; {ACCEPTED}: save it as .xlsx")
    if not content.startswith(b"PK"):
        raise InputError(where, f"is not a workbook; {ACCEPTED}")
    _look_inside(content, where)


def refuse_open_elsewhere(path: Path) -> None:
    """Refuse a file beside which a spreadsheet program keeps its lock.

    Raises
    ------
    InputError
        The file is open, or a program that had it open has left its lock behind.
    """
    for lock in (path.with_name(f".~lock.{path.name}#"), path.with_name(f"~${path.name}")):
        there = False
        with contextlib.suppress(OSError):  # a name for which a lock's would be too long
            there = lock.exists()
        if there:
            raise InputError(
                path.name,
                f"is open in a spreadsheet program; accepted is a saved and closed file (if none has it "
                f"open, delete {lock.name})",
            )


def refuse_no_file(path: Path, accepted: str = ACCEPTED) -> None:
    """Refuse what is there and is no file: a pipe or a device may never answer, or never end.

    Raises
    ------
    InputError
        A folder, a pipe, a device.
    """
    if path.is_dir():
        raise InputError(str(path), f"is a folder; {accepted}")
    if path.exists() and not path.is_file():
        raise InputError(str(path), f"is a pipe or a device, no file; {accepted}")


def _content(path: Path) -> bytes:
    try:
        refuse_no_file(path)
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise InputError(
                path.name, f"is {size / 1e6:.0f} MB; {ACCEPTED} of up to {LARGEST_FILE / 1e6:.0f} MB"
            )
        return path.read_bytes()
    except OSError as error:
        raise InputError(str(path), f"cannot be read: {error.strerror or error}; {ACCEPTED}") from error


def _look_inside(content: bytes, where: str) -> None:
    """Check the parts before anything is unpacked."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as parts:
            entries = parts.infolist()
            names = {entry.filename for entry in entries}
            unpacked = sum(entry.file_size for entry in entries)
            if unpacked > LARGEST_CONTENT or len(entries) > MOST_PARTS:
                raise InputError(
                    where,
                    f"holds {unpacked / 1e6:.0f} MB in {len(entries)} parts once unpacked; {ACCEPTED} of up "
                    f"to {LARGEST_CONTENT / 1e6:.0f} MB in {MOST_PARTS} parts",
                )
            if "xl/workbook.bin" in names:
                raise InputError(where, f"is an .xlsb workbook; {ACCEPTED}: save it as .xlsx")
            if "mimetype" in names:
                raise InputError(where, f"is an OpenDocument file; {ACCEPTED}: save it as .xlsx")
            if "xl/workbook.xml" not in names:
                raise InputError(where, f"is not a workbook; {ACCEPTED}")
    except InputError:
        raise
    except Exception as error:  # a damaged zip fails in many ways
        raise InputError(where, f"is damaged and cannot be opened; {ACCEPTED}") from error


def _load(content: bytes, where: str, *, formulas: bool) -> Workbook:
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what the reader does not need, it may leave out
            return load_workbook(io.BytesIO(content), data_only=not formulas, keep_links=False)
    except Exception as error:  # a damaged part fails in many ways
        raise InputError(where, f"is damaged and cannot be opened; {ACCEPTED}") from error
