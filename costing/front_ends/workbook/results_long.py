"""Sheets of many rows, written as text of the file: a ledger of fifty enquiries has 200,000 cells.

The library makes an object and an element of each cell; as text the same rows take a tenth of the time.
"""

from __future__ import annotations

import re
from xml.sax.saxutils import escape

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook.results_cells import NOT_AVAILABLE, Pen, is_quoted
from costing.front_ends.workbook.results_sheets import (
    FIRST,
    HEAD,
    Form,
    frame,
    heads,
    look_of,
    row_height,
    widths_of,
)
from costing.report import Table
from costing.report.refused import NoNumber

FORM = Form(upright=True)

LONGEST_TEXT = 32767  # of a cell
_DIMENSION = re.compile(rb'<dimension ref="[^"]*"\s*/>')


class LongSheets:
    """Long tables: their sheets are made at once, their rows are put in when the file is written.

    Parameters
    ----------
    pen : Pen
        Of the book.
    """

    def __init__(self, pen: Pen) -> None:
        self._pen = pen
        self._rows: dict[str, tuple[Table, bytes]] = {}

    def add(self, name: str, table: Table, form: Form = FORM) -> None:
        """Make the sheet of a table; its rows hold text and numbers only."""
        sheet: Worksheet = self._pen.book.create_sheet(name)
        wide = widths_of(table, form)
        frame(self._pen, sheet, table, form, wide)
        heads(self._pen, sheet, HEAD, table, form, wide)
        part = f"xl/worksheets/sheet{len(self._pen.book.worksheets)}.xml"
        self._rows[part] = table, self._text(sheet, table, form, wide)

    def amend(self, name: str, content: bytes) -> bytes:
        """Put the rows into the part of the file that holds their sheet."""
        if name not in self._rows:
            return content
        table, rows = self._rows[name]
        last = f"{get_column_letter(len(table.columns))}{FIRST + len(table.rows) - 1}"
        content = _DIMENSION.sub(b'<dimension ref="A1:%s" />' % last.encode(), content, count=1)
        if content.count(b"</sheetData>") != 1:
            raise ValueError(f"{name} has no place for its rows")
        return content.replace(b"</sheetData>", rows + b"</sheetData>")

    def _text(self, sheet: Worksheet, table: Table, form: Form, wide: list[float]) -> bytes:
        letters = [get_column_letter(number + 1) for number in range(len(table.columns))]
        known: dict[tuple[int, type, bool], int] = {}
        texts: dict[str, str] = {}
        lines = []
        for row, values in enumerate(table.rows, start=FIRST):
            cells = []
            for across, value in enumerate(values):
                is_text, quoted = isinstance(value, str), is_quoted(value)
                key = (across, type(value) if is_text else float, quoted)
                if key not in known:
                    look = look_of(value, table.columns[across], not is_text, form)
                    known[key] = self._pen.style_number(sheet, look, quoted)
                place = f'<c r="{letters[across]}{row}" s="{known[key]}"'
                if value is None or value == "":
                    cells.append(f"{place}/>")
                    continue
                if isinstance(value, NoNumber):
                    cells.append(f'{place} t="e"><v>{NOT_AVAILABLE}</v></c>')
                    continue
                if not is_text:
                    cells.append(f"{place}><v>{value!r}</v></c>")
                    continue
                if value not in texts:
                    texts[value] = as_text(value)
                cells.append(f'{place} t="inlineStr">{texts[value]}</c>')
            height = row_height(values, wide)
            size = f' ht="{height:g}" customHeight="1"' if height else ""
            lines.append(f'<row r="{row}"{size}>{"".join(cells)}</row>')
        return "".join(lines).encode()


def as_text(value: str) -> str:
    """A text as the file holds it, without what a file cannot hold.

    Examples
    --------
    >>> as_text("air & water" + chr(7))
    '<is><t xml:space="preserve">air &amp; water</t></is>'
    """
    clean = ILLEGAL_CHARACTERS_RE.sub("", value)[:LONGEST_TEXT]
    return f'<is><t xml:space="preserve">{escape(clean)}</t></is>'
