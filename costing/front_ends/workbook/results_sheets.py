"""How a table of results stands on a sheet: heads, units, values, widths, filter, panes and print setup."""

from __future__ import annotations

import datetime
import textwrap
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from openpyxl.styles import Alignment
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results_cells import ALERT_GOES_ON, Look, Pen
from costing.front_ends.workbook.sheet_drawing import CHARACTERS_PER_WIDTH, LINE_HEIGHT, height_for
from costing.report import Column, Table
from costing.report.refused import REFUSED, NoNumber

TITLE, NOTE, ALERT, HEAD, UNITS, FIRST = 1, 2, 4, 5, 6, 7
NARROW, WIDE = 8.0, 44.0  # width of a column, in characters
TEXT_EDGES, NUMBER_EDGES = 2.6, 2.2  # what a cell takes beside its text; text is indented
ONE_LINE = 10  # letters of a head or a unit that are not broken into two lines

FLUSH_LEFT = Alignment(horizontal="left", vertical="center", indent=1)
FLUSH_RIGHT = Alignment(horizontal="right", vertical="center")
UNIT_OF_TEXT = Alignment(horizontal="left", vertical="top", wrap_text=True, indent=1)
UNIT_OF_NUMBER = Alignment(horizontal="right", vertical="top", wrap_text=True)


class Placed(NamedTuple):
    """Where a table stands: its sheet, its rows from the first to the last, and the table."""

    sheet: Worksheet
    first: int
    last: int
    table: Table


@dataclass(frozen=True)
class Form:
    """How one table is set out.

    Attributes
    ----------
    fixed_columns : int
        Columns that stay in sight when the others scroll.
    total : str
        Word in the second column that marks a row of totals.
    alert : str
        A line above the table that must not be overlooked.
    widest : float
        Widest column; longer texts are wrapped.
    widths : mapping
        Title of a column -> its widest, where that is another.
    filtered : bool
        With a filter on every column.
    text : str
        Named style of texts.
    upright : bool
        Printed upright: smaller, and two and a half times as many rows on a page.
    """

    fixed_columns: int = 1
    total: str = ""
    alert: str = ""
    widest: float = WIDE
    widths: Mapping[str, float] = field(default_factory=dict)
    filtered: bool = True
    text: str = "result text"
    upright: bool = False


def table_sheet(pen: Pen, name: str, table: Table, form: Form = Form()) -> Placed:
    """A sheet of its own for a table."""
    sheet: Worksheet = pen.book.create_sheet(name)
    wide = widths_of(table, form)
    frame(pen, sheet, table, form, wide)
    return body(pen, sheet, HEAD, table, form, wide)


def frame(pen: Pen, sheet: Worksheet, table: Table, form: Form, wide: Sequence[float]) -> None:
    """Everything of a sheet but its table: widths, title and note, filter, panes and print setup."""
    set_widths(sheet, wide)
    title(pen, sheet, table.title, table.note, form.alert, wide)
    if form.filtered and table.rows:
        # From the row of units down: the arrows stand under the heads, and units are not sorted away.
        last = f"{get_column_letter(len(table.columns))}{UNITS + len(table.rows)}"
        sheet.auto_filter.ref = f"A{UNITS}:{last}"
    fixed = form.fixed_columns
    styles.page(
        sheet,
        title_rows=f"{HEAD}:{UNITS}",
        title_columns=f"A:{get_column_letter(fixed)}",
        freeze=f"{get_column_letter(fixed + 1)}{FIRST}",
        landscape=not form.upright,
    )


def set_widths(sheet: Worksheet, wide: Sequence[float]) -> None:
    """Set the width of the columns from the first on."""
    for number, width in enumerate(wide, start=1):
        sheet.column_dimensions[get_column_letter(number)].width = width


def title(pen: Pen, sheet: Worksheet, text: str, note: str, alert: str, wide: Sequence[float]) -> None:
    """Title, one or two lines of note, and a line that must not be overlooked.

    The lines are no longer than the columns below, so that they do not run past the page.
    """
    pen.write(sheet, TITLE, 1, text, Look("sheet title"))
    sheet.row_dimensions[TITLE].height = 28
    room = max(80, int(sum(wide) * CHARACTERS_PER_WIDTH))
    for number, line in enumerate(textwrap.wrap(note, room)):
        pen.write(sheet, NOTE + number, 1, line, Look("intro line"))
    if alert:
        pen.write(sheet, ALERT, 1, alert, Look("alert", layout=FLUSH_LEFT))
        taken = 0.0
        for number, width in enumerate(wide, start=1):
            if number > 1 and taken < len(alert):
                pen.write(sheet, ALERT, number, None, Look(ALERT_GOES_ON))
            taken += width
        sheet.row_dimensions[ALERT].height = 20


def body(pen: Pen, sheet: Worksheet, row: int, table: Table, form: Form, wide: Sequence[float]) -> Placed:
    """Heads, units and rows of a table from a row on."""
    heads(pen, sheet, row, table, form, wide)
    first = row + 2
    kinds = [is_numeric(table, across) for across in range(len(table.columns))]
    for down, values in enumerate(table.rows):
        total = bool(form.total) and values[1] == form.total
        for across, value in enumerate(values):
            look = look_of(value, table.columns[across], kinds[across], form, total)
            pen.write(sheet, first + down, across + 1, value, look)
        height = row_height(values, wide)
        if height:
            sheet.row_dimensions[first + down].height = height
    return Placed(sheet, first, first + len(table.rows) - 1, table)


def heads(pen: Pen, sheet: Worksheet, row: int, table: Table, form: Form, wide: Sequence[float]) -> None:
    """A row of headings and a row of units."""
    for across, column in enumerate(table.columns):
        numeric = is_numeric(table, across)
        pen.write(sheet, row, across + 1, column.title, Look("number head" if numeric else "column head"))
        layout = UNIT_OF_NUMBER if numeric else UNIT_OF_TEXT
        pen.write(sheet, row + 1, across + 1, column.unit, Look("unit", layout=layout))
    titles = [(column.title, width / 1.08) for column, width in zip(table.columns, wide)]  # bold is wider
    units = [(column.unit, width) for column, width in zip(table.columns, wide)]
    lines = lines_of(units)
    arrows = 1 if form.filtered and any(unit for unit, _ in units) else 0  # they stand below the units
    sheet.row_dimensions[row].height = LINE_HEIGHT * lines_of(titles) + 4
    sheet.row_dimensions[row + 1].height = LINE_HEIGHT * (lines + arrows) + 2


def lines_of(texts: Sequence[tuple[str, float]]) -> int:
    """Lines of the text that wraps most in its width."""
    rooms = [(text, max(1, int((width - 0.8) * 1.2))) for text, width in texts]
    return max((len(textwrap.wrap(text, room)) for text, room in rooms), default=1) or 1


def is_numeric(table: Table, across: int) -> bool:
    """Whether a column holds numbers, and nothing else."""
    if table.columns[across].digits is not None:
        return True
    values = [row[across] for row in table.rows if not isinstance(row[across], (NoNumber, type(None)))]
    return bool(values) and all(isinstance(value, (int, float)) for value in values)


def look_of(value: Any, column: Column, numeric: bool, form: Form, total: bool = False) -> Look:
    """How a value looks in its column."""
    if isinstance(value, NoNumber):
        return Look("alert", layout=FLUSH_RIGHT)
    if isinstance(value, str):
        if value in ("warning", REFUSED) and column.title == "Kind":
            return Look("alert", layout=FLUSH_LEFT)
        return Look("total text" if total else form.text)
    number = styles.DATE if isinstance(value, datetime.date) else number_format(column)
    return Look("total number" if total else "result", number, None if numeric else FLUSH_LEFT)


def number_format(column: Column) -> str:
    """Number format of a column; a dash stands for nothing at all.

    Examples
    --------
    >>> number_format(Column("Cost", "EUR per m", 2)), number_format(Column("Ends", "", 0))
    ('#,##0.00;-#,##0.00;"–"', '#,##0;-#,##0;"–"')
    """
    if column.digits is None:
        return styles.NUMBER
    number = "#,##0" + ("." + "0" * column.digits if column.digits else "")
    return f'{number};-{number};"–"'


def row_height(values: Sequence[Any], wide: Sequence[float]) -> float:
    """Height of a row whose texts are wrapped; 0 where one line holds each."""
    texts = [(value, width) for value, width in zip(values, wide) if isinstance(value, str)]
    if all(_room(_length(text), TEXT_EDGES) <= width for text, width in texts):
        return 0.0
    return height_for(*texts)


def widths_of(table: Table, form: Form) -> list[float]:
    """Width of every column, so that numbers and the words of heads and units fit."""
    found = []
    for across, column in enumerate(table.columns):
        heading = [*_pieces(column.title, 2), *_pieces(column.unit, 3)]
        longest = max([1.2 * len(piece) for piece in heading], default=0.0)
        for row in table.rows:
            longest = max(longest, _length(row[across], column.digits))
        widest = form.widths.get(column.title, form.widest)
        edges = NUMBER_EDGES if is_numeric(table, across) else TEXT_EDGES
        found.append(min(widest, max(NARROW, _room(longest, edges))))
    return found


def _room(letters: float, edges: float) -> float:
    """Width of a column in which a line of so many letters stands."""
    return 0.93 * letters + edges


def _pieces(text: str, lines: int) -> list[str]:
    """A head or unit as it breaks into lines: short ones not at all, others at their words."""
    if len(text) <= ONE_LINE:
        return [text]
    return textwrap.wrap(text, max(-(-len(text) // lines), *[len(word) for word in text.split()]))


def _length(value: Any, digits: int | None = None) -> float:
    """Letters that a value takes; digits and capitals are wider than the run of letters."""
    if value is None:
        return 0.0
    if isinstance(value, str):
        return len(value) + 0.25 * sum(letter.isupper() for letter in value)
    if isinstance(value, (int, float)):
        return 1.12 * len(f"{value:,.{digits}f}" if digits is not None else f"{value:g}")
    return 12.0
