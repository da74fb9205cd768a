"""What of the parts of a workbook is read: no more than its cells, and no more of them than memory holds."""

from __future__ import annotations

import re
from collections.abc import Iterator

from openpyxl.utils import range_boundaries

from costing.quantities import InputError

MOST_CELLS = 2_000_000  # 0.4 kB each
MOST_TAGS = 12_000_000  # of all parts together
MOST_MERGED = 100_000  # cells below merged ones; each is made, though it holds nothing
ACCEPTED = "accepted is a smaller .xlsx workbook, or for rows of a list a .csv file"

_CELL = re.compile(rb"<(?:\w+:)?c[\s/>]")
_FORMULA = re.compile(rb"<(?:\w+:)?f[\s/>]")
_MERGED = re.compile(rb"<(?:\w+:)?mergeCell\s[^>]*?ref\s*=\s*[\"']([^\"']*)[\"']")
# Rules of input and of colour take a third of the time that a book needs to open; a link over an area makes
# every cell of it; what is drawn on a sheet may be as large as it likes. None of it is read.
_UNREAD = (b"dataValidations", b"conditionalFormatting", b"hyperlinks")


def cells_alone(part: bytes) -> bytes:
    """The part of a sheet without its rules and links.

    Examples
    --------
    >>> cells_alone(b"<sheetData/><hyperlinks><hyperlink/></hyperlinks><dataValidations/>")
    b'<sheetData/><dataValidations/>'
    """
    for name in _UNREAD:
        part = b"".join(_without(part, b"<" + name, b"</" + name + b">"))
    return part


def _without(part: bytes, begin: bytes, end: bytes) -> Iterator[bytes]:
    """The stretches between the elements of a name; every byte is looked at once, whatever is missing."""
    last = 0
    while (here := part.find(begin, last)) >= 0 and (there := part.find(end, here)) >= 0:
        if part[here + len(begin) : here + len(begin) + 1] not in (b">", b" "):
            break  # another name that begins alike
        yield part[last:here]
        last = there + len(end)
    yield part[last:]


def has_formula(part: bytes) -> bool:
    """Whether a cell of a sheet is a formula."""
    return _FORMULA.search(part) is not None


class Held:
    """Counts what the parts of a workbook hold, before anything is made of it.

    Parameters
    ----------
    where : str
        Name of the file.
    """

    def __init__(self, where: str) -> None:
        self._where = where
        self._tags = self._cells = self._merged = 0

    def add(self, part: bytes, is_sheet: bool) -> None:
        """Count one part.

        Raises
        ------
        InputError
            Together they hold more than is read.
        """
        self._tags += part.count(b"<")
        if is_sheet:
            self._cells += sum(1 for _ in _CELL.finditer(part))
            for found in _MERGED.finditer(part):
                left, top, right, bottom = range_boundaries(found[1].decode())
                if left is None or top is None or right is None or bottom is None:
                    raise ValueError("cells are merged without end")
                self._merged += (right - left + 1) * (bottom - top + 1)
        for count, most, what in (
            (self._cells, MOST_CELLS, "cells"),
            (self._merged, MOST_MERGED, "merged cells"),
            (self._tags, MOST_TAGS, "tags"),
        ):
            if count > most:
                raise InputError(
                    self._where, f"holds {count:,} {what}; {ACCEPTED}: up to {most:,} {what} are read"
                )
