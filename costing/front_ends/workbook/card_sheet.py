"""Range cards as sheets: one A4 page for each, two panels of settings and the cautions below them."""

from __future__ import annotations

import datetime
import re
import textwrap
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

import costing
from costing.front_ends.workbook import styles
from costing.front_ends.workbook.results import midnight, not_replaced, sheet_names
from costing.front_ends.workbook.results_cells import ALERT_GOES_ON, Look, Pen
from costing.front_ends.workbook.results_sheets import FLUSH_LEFT, number_format, set_widths
from costing.front_ends.workbook.saving import save_whole
from costing.front_ends.workbook.sheet_drawing import height_for
from costing.report import Table
from costing.report.range_card import ESTIMATE, FILLED_UP

CARD = "card "  # begins the name of every sheet
TITLE = "Denim warp costing: range cards"
PANELS: tuple[tuple[float, ...], ...] = (
    (25.0, 8.5, 8.0, 8.0, 8.5, 13.0),
    (25.0, 9.0, 11.5, 11.5),
    (22.0, 9.0, 8.5, 11.0),
)  # widths of columns
BETWEEN = 2.0
MOST_LINES = 54  # of a panel: more, and a third panel keeps the print large enough to read
NOTE_LETTERS = 68  # of a note, on one line of a panel
LONGEST_NAME = 31  # of a sheet
CAUTION_WIDTH = 0.96  # of the page: a caution that is cut off is none
INDENT = "   "
ALERT = "No safety data sheet: the supplier's own, local rules and licensed practice come first."

TEXT, HEAD, NUMBER_HEAD = Look("result line"), Look("column head"), Look("number head")
SECTION, BOX, NOTE = Look("section"), Look("strong row", layout=FLUSH_LEFT), Look("intro line")
NUMBER = "result"


class PanelLine(NamedTuple):
    """One row of a panel: a text and the numbers beside it, each with its number format.

    Attributes
    ----------
    style : str
        Section, head, box, line or note.
    text : str
        In the first column of the panel.
    numbers : tuple
        Number, or heading, of each further column with its number format.
    """

    style: str
    text: str
    numbers: tuple[tuple[Any, str], ...] = ()


def write_cards(path: Path, cards: Mapping[str, Sequence[Table]], overwrite: bool = False) -> None:
    """Write range cards to a new workbook, a sheet for each.

    Parameters
    ----------
    path : Path
        Where to.
    cards : mapping
        Enquiry -> the tables of its card.
    overwrite : bool, optional
        True to replace an earlier file of the same cards.

    Raises
    ------
    InputError
        The file is there and is another, or cannot be written.
    """
    there = sheet_names(path) if path.exists() else {CARD}
    if overwrite and not (there and all(name.startswith(CARD) for name in there)):
        raise not_replaced(path)
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    for code, tables in cards.items():
        card_sheet(pen, sheet_name(code, book.sheetnames), tables)
    book.properties.title = TITLE
    book.properties.creator = "costing"
    save_whole(book, path, overwrite=overwrite, date=midnight())


def sheet_name(code: str, taken: Sequence[str]) -> str:
    """A name that a sheet may have, and no other has.

    Examples
    --------
    >>> sheet_name("Q/02", [])
    'card Q-02'
    """
    plain = re.sub(r"[\[\]:*?/\\']", "-", f"{CARD}{code}")[:LONGEST_NAME]
    number, name = 1, plain
    while name.lower() in {other.lower() for other in taken}:
        number += 1
        name = f"{plain[: LONGEST_NAME - 4]} {number}"
    return name


def card_sheet(pen: Pen, name: str, tables: Sequence[Table]) -> Worksheet:
    """One card on one printed page.

    Parameters
    ----------
    pen : Pen
        Of the book.
    name : str
        Of the sheet.
    tables : sequence of Table
        Of the card, as `costing.report.range_card` gives them.
    """
    found = {table.key: table for table in tables}
    sheet: Worksheet = pen.book.create_sheet(name)
    panels = _panels(found)
    starts: list[int] = []
    wide: list[float] = []
    for widths in PANELS[: len(panels)]:
        wide += [BETWEEN] if wide else []
        starts.append(len(wide) + 1)
        wide += widths
    set_widths(sheet, wide)
    row = _head(pen, sheet, found["card"], len(wide))
    for first, widths, lines in zip(starts, PANELS, panels):
        for down, line in enumerate(lines):
            _panel_line(pen, sheet, row + down, first, len(widths), line)
    row += max(len(lines) for lines in panels) + 1
    row = _cautions(pen, sheet, row, found["card_cautions"], wide)
    styles.page(sheet, landscape=False, print_area=f"A1:{get_column_letter(len(wide))}{row - 1}")
    sheet.page_setup.fitToHeight = 1
    sheet.page_margins.left = sheet.page_margins.right = 0.4
    sheet.page_margins.top = 0.35
    return sheet


def _panels(found: dict[str, Table]) -> list[list[PanelLine]]:
    """Lines of two panels, or of three where two would be too long."""
    panels = [list(_feeds(found)) or list(_charge(found)), list(_fills(found))]
    blocks = [list(block(found)) for block in (_tests, _boxes, _stop, _kettle, _use)]
    if "card_feeds" in found:
        blocks.insert(0, list(_charge(found)))
    rows = sum(len(lines) + 1 for lines in (*panels, *blocks))
    if rows > len(panels) * MOST_LINES or max(len(lines) for lines in panels) > MOST_LINES:
        panels.append([])
    for lines in filter(None, blocks):
        panel = min(panels, key=len)
        panel += [PanelLine("gap", ""), *lines] if panel else lines
    return panels


def _head(pen: Pen, sheet: Worksheet, about: Table, across: int) -> int:
    said = dict(about.rows)
    recipe, range_ = (str(said[what]).split(":")[0] for what in ("recipe", "range"))
    pen.write(sheet, 1, 1, f"Range card: {recipe} on {range_}", Look("sheet title"))
    sheet.row_dimensions[1].height = 26
    for number, text in enumerate((ESTIMATE, ALERT), start=2):
        pen.write(sheet, number, 1, text, Look("alert", layout=FLUSH_LEFT))
        for column in range(2, across + 1):
            pen.write(sheet, number, column, None, Look(ALERT_GOES_ON))
    row = 4
    made = f"{datetime.date.today():%Y-%m-%d}, version {costing.__version__}"
    for what, value in [*about.rows, ["worked out", made]]:
        pen.write(sheet, row, 1, what, TEXT)
        pen.write(sheet, row, 2, value, Look("live line"))
        row += 1
    return row + 1


def _panel_line(pen: Pen, sheet: Worksheet, row: int, first: int, columns: int, line: PanelLine) -> None:
    looks = {
        "section": (SECTION, SECTION),
        "head": (HEAD, NUMBER_HEAD),
        "box": (BOX, BOX),
        "line": (TEXT, None),
    }
    if line.style == "gap":
        return
    if line.style == "note":
        pen.write(sheet, row, first, line.text, NOTE)
        return
    of_text, of_number = looks[line.style]
    pen.write(sheet, row, first, line.text, of_text)
    for at in range(1, columns):
        value, number = line.numbers[at - 1] if at <= len(line.numbers) else (None, "")
        pen.write(sheet, row, first + at, value, of_number or Look(NUMBER, number))


def _block(
    table: Table, heads: Iterable[str], lines: Iterable[PanelLine], title: str = ""
) -> Iterable[PanelLine]:
    """A section with its heads, its lines and its note."""
    yield PanelLine("section", title or table.title)
    yield PanelLine("head", "", tuple((head, "") for head in heads))
    yield from lines
    for part in textwrap.wrap(table.note, NOTE_LETTERS):
        yield PanelLine("note", part)


def _numbers(table: Table, row: Sequence[Any], places: Sequence[int]) -> tuple[tuple[Any, str], ...]:
    return tuple((row[place], number_format(table.columns[place])) for place in places)


def _feeds(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_feeds")
    if table is None:
        return []
    heads = ["L/min", "mL/min", "m3/h", "g/min", table.columns[7].title.replace("For ", "kg in ")]
    lines, box = [], None
    for row in table.rows:
        if row[0] != box:
            box = row[0]
            lines.append(PanelLine("box", box))
        of_liquor = row[2] != "" and row[1] != "as delivered"
        text = INDENT + row[2] if of_liquor else row[2] or row[1]
        if row[2] == FILLED_UP:
            text = INDENT + "water, up to the mark"
        lines.append(PanelLine("line", text, _numbers(table, row, (3, 4, 5, 6, 7))))
    return _block(table, heads, lines)


def _charge(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_charge")
    return [] if table is None else _block(table, ["g/L", "kg or L"], _by_box(table, (0,), 1, (2, 3)))


def _by_box(table: Table, of_box: Sequence[int], text: int, numbers: Sequence[int]) -> Iterable[PanelLine]:
    """A line for each row, under a line for each box.

    Parameters
    ----------
    table : Table
        Of the card.
    of_box : sequence of int
        Columns that name the box.
    text, numbers
        Columns of the line.
    """
    box: list[Any] = []
    for row in table.rows:
        named = [row[place] for place in of_box]
        if named != box:
            box = named
            yield PanelLine("box", ": ".join(box))
        yield PanelLine("line", INDENT + row[text], _numbers(table, row, numbers))


def _fills(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_fill")
    heads = ["g/L", "kg, full box", "kg, this lot"]
    return [] if table is None else _block(table, heads, _by_box(table, (0, 1), 2, (3, 4, 5)))


def _tests(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_tests")
    return [] if table is None else _block(table, ["g/L, 100 %", "°Bé"], _by_box(table, (0,), 1, (2, 3)))


def _stop(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_stop")
    if table is None:
        return []
    return _block(table, ["stopped", "running"], _by_box(table, (0,), 1, (2, 3)), f"{table.title}, kg; pumps")


def _kettle(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found.get("card_size")
    if table is None:
        return []
    lines = [PanelLine("line", row[1], _numbers(table, row, (2,))) for row in table.rows]
    return _block(table, ["kg or L"], lines, table.columns[2].title.replace("For", table.title + ","))


def _boxes(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found["card_boxes"]
    lines = []
    for row in table.rows:
        lines.append(PanelLine("line", row[0], _numbers(table, row, (1, 2, 3))))
        if row[4]:
            lines.append(PanelLine("line", INDENT + row[4]))
    return _block(table, ["degC", "L", "steam kg/h"], lines)


def _use(found: dict[str, Table]) -> Iterable[PanelLine]:
    table = found["card_use"]
    lines = [
        PanelLine("line", f"{row[0]}, {str(row[2]).split()[0]}", _numbers(table, row, (1,)))
        for row in table.rows
    ]
    return _block(table, ["in 1 h"], lines)


def _cautions(pen: Pen, sheet: Worksheet, row: int, table: Table, wide: Sequence[float]) -> int:
    for column in range(1, len(wide) + 1):
        pen.write(sheet, row, column, table.title if column == 1 else None, SECTION)
    row += 1
    texts = [f"{name} ({codes}): {text}" if codes else f"{name}: {text}" for name, codes, text in table.rows]
    for text in [*texts, table.note]:
        pen.write(sheet, row, 1, text[:1].upper() + text[1:], Look("row text"))
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=len(wide))
        sheet.row_dimensions[row].height = height_for((text, CAUTION_WIDTH * sum(wide)))
        row += 1
    return row
