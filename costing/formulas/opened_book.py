"""Mill's books that cells have opened: read once for the same cells, then asked by many formulas.

A book is known by a mark that is made of all its cells: other cells, another mark, so a result can never be
that of an earlier state. The last few books are kept; a mark whose book is no longer kept is refused, and
the program calculates its cell anew.
"""

from __future__ import annotations

import gc
from collections import OrderedDict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from hashlib import blake2b
from typing import Any

from costing.book.layout import sheet_names
from costing.book.places import placed
from costing.book.sheet import Sheet
from costing.book.whole import mill_from_sheets
from costing.quantities import InputError
from costing.report import Result, work_out
from costing.settings.mill import Mill

MARK = "book "
KEPT = 24  # several documents, and some states of each to go back to


@contextmanager
def not_collecting() -> Iterator[None]:
    """Look for no cycles: a ledger is hundreds of small tuples without one, and looking costs half of it."""
    collecting = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collecting:
            gc.enable()


class OpenedBook:
    """A book, and what was worked out of it so far.

    Parameters
    ----------
    mill : Mill
        As it was read.
    """

    def __init__(self, mill: Mill) -> None:
        self.mill = mill
        self._results: dict[str, Result] = {}

    def result(self, code: str, where: str) -> Result:
        """All that is known of one enquiry, worked out once.

        Raises
        ------
        InputError
            No such enquiry, or one that is refused, with sheet and cell.
        """
        found = self._results.get(code)
        if found is None:
            enquiry = self.mill.enquiry(code, where)  # which may be typed another way
            found = self._results.get(enquiry.code)
        if found is None:
            with placed(self.mill, enquiry):
                found = self._results[enquiry.code] = work_out(self.mill, enquiry)
        return found

    def results(self, code: str, where: str) -> list[Result]:
        """The results of one enquiry, or of all where no code is given."""
        wanted = [code] if code else list(self.mill.enquiries)
        with not_collecting():
            return [self.result(item, where) for item in wanted]


_kept: OrderedDict[str, OpenedBook] = OrderedDict()


def open_book(blocks: Sequence[Any]) -> str:
    """Read a book from the blocks of its sheets, and keep it.

    Parameters
    ----------
    blocks : sequence
        The cells of each sheet from A1 on, rows of cells, in the order of `sheet_names`.

    Returns
    -------
    str
        The mark under which it is kept.

    Raises
    ------
    InputError
        The first thing that is refused: sheet and cell, the value, and what is accepted.
    """
    mark = mark_of(blocks)
    if mark not in _kept:
        sheets = {
            title: Sheet.from_rows(title, block)
            for title, block in zip(sheet_names(), blocks)
            if block is not None
        }
        _kept[mark] = OpenedBook(mill_from_sheets(sheets))
    _kept.move_to_end(mark)
    while len(_kept) > KEPT:
        _kept.popitem(last=False)
    return mark


def mark_of(blocks: Sequence[Any]) -> str:
    """The mark of a book, made of all its cells."""
    digest = blake2b(digest_size=8)
    for block in blocks:
        digest.update(repr(block).encode())
    return MARK + digest.hexdigest()


def kept_book(mark: str, where: str) -> OpenedBook:
    """The book of a mark.

    Raises
    ------
    InputError
        No mark, or one whose book is not kept.
    """
    if mark not in _kept:
        said = f"book is {mark[:40]!r}" if mark else "book is empty"
        raise InputError(
            where,
            f"{said}, which is not at hand: no cell has opened it since the program was started, or {KEPT} "
            "other states of books came after it; accepted is the cell of WARP_OPENED_BOOK: calculate the "
            "whole document anew",
        )
    _kept.move_to_end(mark)
    return _kept[mark]
