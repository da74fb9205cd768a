"""Write a workbook whole or not at all, and the same bytes for the same content."""

from __future__ import annotations

import datetime
import io
import re
import zipfile
from collections.abc import Callable
from pathlib import Path

from openpyxl.workbook import Workbook

from costing.front_ends.whole_file import write_whole

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
    write_whole(
        lambda: workbook_bytes(book, date=date, amend=amend),
        path,
        what="a workbook",
        suffixes=(".xlsx",),
        overwrite=overwrite,
    )
