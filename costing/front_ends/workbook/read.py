"""Read the mill's book from a workbook file.

The file is read into memory and closed again before anything is looked at; it is never written to.
"""

from __future__ import annotations

from pathlib import Path

from costing.book.layout import beside_names, sheet_names
from costing.book.whole import mill_from_sheets
from costing.front_ends.workbook.file_sheets import sheets_of
from costing.front_ends.workbook.open_file import open_workbook
from costing.quantities import InputError
from costing.settings.mill import Mill


def read_book(path: Path, apart: bool = False) -> Mill:
    """Read a book.

    Parameters
    ----------
    path : Path
        The .xlsx file.
    apart : bool, optional
        As of `mill_from_sheets`.

    Returns
    -------
    Mill
        With ``places``: (kind, code) -> sheet and cell.

    Raises
    ------
    InputError
        The first thing that is refused: file, sheet and cell, the value, and what is accepted.
    """
    values, formulas = open_workbook(path, (*sheet_names(), *beside_names()))
    try:
        return mill_from_sheets(sheets_of(values, formulas), apart)
    except InputError as error:
        raise error.at(lambda one: f"{path.name}, {one.where}" if one.where else path.name) from error
