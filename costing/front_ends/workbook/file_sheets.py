"""The sheets of a workbook file as the reader of the book takes them."""

from __future__ import annotations

from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.sheet import Sheet

EMPTY_TEXT = "str"  # what openpyxl says of a formula whose saved result is a text without letters


def sheets_of(values: Workbook, formulas: Workbook | None) -> dict[str, Sheet]:
    """Name -> sheet, of every sheet that holds cells.

    Parameters
    ----------
    values : Workbook
        With the values of the cells.
    formulas : Workbook or None
        The same with their formulas, or None where no cell has one.
    """
    return {
        sheet.title: _sheet(sheet, None if formulas is None else formulas[sheet.title])
        for sheet in values.worksheets
    }


def _sheet(values: Worksheet, formulas: Worksheet | None) -> Sheet:
    # The cells that there are, not the rectangle around them: that may be a million rows.
    filled = {place: cell for place, cell in values._cells.items() if cell.value is not None}
    numbers = (item for item in filled.items() if isinstance(item[1].value, (int, float)))
    return Sheet(
        values.title,
        {place: cell.value for place, cell in filled.items()},
        percents={place for place, cell in numbers if "%" in str(cell.number_format or "")},
        unsaved=unsaved(values, formulas),
    )


def unsaved(values: Worksheet, formulas: Worksheet | None) -> set[tuple[int, int]]:
    """Places of formulas that were saved without their result; an empty text is one."""
    return {
        place
        for place, cell in (formulas._cells.items() if formulas is not None else ())
        if cell.data_type == "f"
        and values._cells[place].value is None
        and values._cells[place].data_type != EMPTY_TEXT
    }
