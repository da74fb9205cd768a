"""Write a workbook whole or not at all, and the same bytes for the same content."""

from __future__ import annotations

import contextlib
import datetime
import io
import os
import re
import secrets
import shutil
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path

from openpyxl.workbook import Workbook

from costing.quantities import InputError

# A fixed date, so that the same content gives the same file. A zip cannot hold an earlier year than 1980.
DATE = datetime.datetime(2025, 1, 6)
_STAMP = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:)")


Amend = Callable[[str, bytes], bytes]


def workbook_bytes(
    book: Workbook, *, date: datetime.datetime = DATE, amend: Amend = lambda name, content: content
) -> bytes:
    """The file of a workbook, without the time at which it was made.

    Parameters
    ----------
    book : Workbook
        What to write.
    date : datetime.datetime, optional
        That the file says it was made on; the same for all files that must not differ by it.
    amend : callable, optional
        Takes name and content of each part of the file, and gives the content to write.
    """
    book.properties.created = date
    raw = io.BytesIO()
    book.save(raw)
    packed = io.BytesIO()
    with zipfile.ZipFile(raw) as source, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        for entry in source.infolist():
            content = amend(entry.filename, source.read(entry))
            if entry.filename == "docProps/core.xml":
                content = _STAMP.sub(rb"\g<1>" + date.isoformat().encode() + rb"Z\g<3>", content)
            fixed = zipfile.ZipInfo(entry.filename, (date.year, date.month, date.day, 0, 0, 0))
            fixed.compress_type = zipfile.ZIP_DEFLATED
            fixed.external_attr = 0o644 << 16
            target.writestr(fixed, content)
    return packed.getvalue()


def save_whole(
    book: Workbook,
    path: Path,
    *,
    overwrite: bool = False,
    date: datetime.datetime = DATE,
    amend: Amend = lambda name, content: content,
) -> None:
    """Write a workbook to a new file: under another name first, then renamed in one step.

    Parameters
    ----------
    book : Workbook
        What to write.
    path : Path
        Where to; the folder must be there.
    overwrite : bool, optional
        True to replace a file of that name.
    date, amend : optional
        As in `workbook_bytes`.

    Raises
    ------
    InputError
        The file is there already, the folder is not, it may not be written, or the disk is full. Then
        nothing of it stays behind, and a file that was there is as it was.
    """
    write_whole(lambda: workbook_bytes(book, date=date, amend=amend), path, overwrite=overwrite)


def write_whole(
    content: Callable[[], bytes],
    path: Path,
    *,
    suffixes: Sequence[str] = (".xlsx",),
    overwrite: bool = False,
) -> None:
    """Write the bytes of a workbook to a new file: under another name first, then renamed in one step.

    Parameters
    ----------
    content : callable
        Gives the bytes; called once it is known that the name will do.
    path : Path
        Where to; the folder must be there.
    suffixes : sequence of str, optional
        What the name may end in.
    overwrite : bool, optional
        True to replace a file of that name; who may read it stays as it was.

    Raises
    ------
    InputError
        As for `save_whole`.
    """
    if path.suffix.lower() not in suffixes:
        raise InputError(str(path), f"the name of a workbook must end in {' or '.join(suffixes)}")
    if path.is_dir():
        raise InputError(str(path), f"is a folder; accepted is the name of a new {suffixes[0]} file")
    if path.exists() and not overwrite:
        raise InputError(
            str(path), "is there already and was left as it is; accepted is the name of a new file"
        )
    part = path.with_name(f".{path.stem}.{secrets.token_hex(4)}.part")
    try:
        whole = content()
        with part.open("xb") as stream:
            stream.write(whole)
            stream.flush()
            os.fsync(stream.fileno())
        if path.exists():
            shutil.copymode(path, part)
        part.replace(path)
    except OSError as error:
        reason = error.strerror or str(error)
        raise InputError(str(path), f"could not be written: {reason}; nothing was changed") from error
    finally:
        with contextlib.suppress(OSError):
            part.unlink(missing_ok=True)
