"""Draw the sheets with a column for each style, recipe or range."""

from __future__ import annotations

from copy import copy
from typing import Any

from openpyxl.styles import Border, Font
from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.properties import Outline
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.layout import (
    GENERAL,
    HIGH,
    LOW,
    MEANING,
    QUANTITY,
    SOURCE,
    TYPICAL,
    UNIT,
    row_text,
)
from costing.front_ends.workbook import input_rules, sheet_drawing
from costing.front_ends.workbook.build_tables import STEP_LISTS
from costing.front_ends.workbook.layout import ColumnSheet, Row, meaning_of
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import DARK, line, page, pages_across, widths
from costing.quantities import QUANTITIES
from costing.quantities.units import convert

HEADS = (QUANTITY, UNIT, MEANING, LOW, TYPICAL, HIGH, SOURCE)
FRAME = {"A": 19, "B": 25, "C": 9, "D": 43, "E": 8, "F": 8, "G": 8, "H": 24}
FIRST_COLUMN = len(FRAME) + 1
UNIT_COLUMN, LOW_COLUMN, TYPICAL_COLUMN, HIGH_COLUMN = 3, 5, 6, 7
REPEATED = 3  # columns on every page: step, quantity, unit
DIGITS = 4
STEP = "Step"  # head of the first column where the rows of a step belong together


def draw_column_sheet(book: Workbook, layout: ColumnSheet, demo: bool) -> None:
    """Draw one of the sheets Styles, Recipes and Ranges.

    Parameters
    ----------
    book : Workbook
        Takes the new sheet and the defined name of its codes.
    layout : ColumnSheet
        What stands on it.
    demo : bool
        True to fill in the invented columns.
    """
    sheet: Worksheet = book.create_sheet(layout.sheet)
    top = sheet_drawing.head_of_sheet(sheet, layout.title, layout.intro, demo)
    columns = len(layout.demos) + layout.spare
    last_column = FIRST_COLUMN + columns - 1
    _draw_heads(sheet, layout, top, columns, demo)
    first = top + 3
    if layout.kind == "recipe":
        _grey_out(sheet, first, first + len(layout.rows) - 1, last_column)
    for number, row in enumerate(layout.rows, start=first):
        new_part = number == first or row.part != layout.rows[number - first - 1].part
        _draw_row(sheet, number, row, new_part)
        _draw_values(sheet, number, row, layout, columns, demo)
        _add_rules(sheet, number, row, last_column, code_row=top + 1)
        if new_part:
            _draw_line_above(sheet, number, last_column)
        elif layout.part_head == STEP and row.part != GENERAL:
            sheet.row_dimensions[number].outlineLevel = 1  # a step folds away under its first row
    sheet.sheet_properties.outlinePr = Outline(summaryBelow=False, summaryRight=False)
    widths(sheet, FRAME)
    for column in range(FIRST_COLUMN, last_column + 1):
        sheet.column_dimensions[get_column_letter(column)].width = layout.width
    for letter in "DEFGH":
        sheet.column_dimensions[letter].outlineLevel = 1
    sheet_drawing.define_name(
        book, f"{layout.kind}_codes", sheet, FIRST_COLUMN, top + 1, top + 1, last_column
    )
    page(
        sheet,
        title_rows=f"{top}:{top + 2}",
        title_columns=f"A:{get_column_letter(REPEATED)}",
        freeze=f"D{first}",
        pages_wide=pages_across([*FRAME.values(), *[layout.width] * columns], REPEATED),
        print_area=sheet_drawing.cells(1, top, first + len(layout.rows) - 1, last_column),
        heading=layout.title,
    )


def _draw_heads(sheet: Worksheet, layout: ColumnSheet, top: int, columns: int, demo: bool) -> None:
    for column, head in enumerate((layout.part_head, *HEADS), start=1):
        style = "number head" if head in (LOW, TYPICAL, HIGH) else "column head"
        put(sheet, top, column, head, style)
    for number, name in enumerate(("code", "description"), start=top + 1):
        put(sheet, number, 1, GENERAL, "row step")
        put(sheet, number, 2, row_text(name), "row label")
        put(sheet, number, 3, None, "unit")
        put(sheet, number, 4, meaning_of(name), "remark")
        for column in range(LOW_COLUMN, FIRST_COLUMN):
            put(sheet, number, column, None, "table text")
    shown = layout.demos if demo else ()
    for place in range(columns):
        column = FIRST_COLUMN + place
        given = shown[place] if place < len(shown) else None
        put(sheet, top, column, layout.kind, "column head")
        put(sheet, top + 1, column, given.code if given else None, "given code")
        put(sheet, top + 2, column, given.description if given else None, "given text")
    longest = max((item.description for item in layout.demos), key=len)
    sheet.row_dimensions[top].height = 18
    sheet.row_dimensions[top + 1].height = 18
    sheet.row_dimensions[top + 2].height = sheet_drawing.height_for((longest, layout.width))


def _draw_row(sheet: Worksheet, number: int, row: Row, new_part: bool) -> None:
    part = put(sheet, number, 1, row.part, "row step")
    if new_part:
        part.font = Font(name=part.font.name, size=part.font.size, bold=True, color=f"FF{DARK}")
    put(sheet, number, 2, row_text(row.name), "row label")
    put(sheet, number, UNIT_COLUMN, row.unit or None, "given choice" if row.unit else "unit")
    put(sheet, number, 4, row.meaning, "remark")
    shown = _shown(row)
    for column, value in zip((LOW_COLUMN, TYPICAL_COLUMN, HIGH_COLUMN), shown, strict=True):
        put(sheet, number, column, value, "table number")
    put(sheet, number, FIRST_COLUMN - 1, _source(row), "table text")


def _shown(row: Row) -> tuple[float | None, float | None, float | None]:
    """Low, typical and high in the unit of the row; low and high of all dye classes together."""
    if not row.defaults:
        return None, None, None
    house = QUANTITIES[row.name].unit

    def number(value: float) -> float:
        return float(f"{convert(value, house, row.unit) if row.unit else value:.{DIGITS}g}")

    ends = [number(end) for item in row.defaults for end in (item.low, item.high)]
    return min(ends), number(row.typical.value) if row.typical else None, max(ends)


def _source(row: Row) -> str | None:
    if not row.defaults:
        return None
    sources = ", ".join(dict.fromkeys(item.source for item in row.defaults))
    return f"contested: {sources}" if any(item.contested for item in row.defaults) else sources


def _draw_values(
    sheet: Worksheet, number: int, row: Row, layout: ColumnSheet, columns: int, demo: bool
) -> None:
    style = "given number" if row.is_number else "given choice"
    for place in range(columns):
        column = FIRST_COLUMN + place
        value: Any = None
        if demo and place < len(layout.demos):
            value = layout.demos[place].values.get((row.part, row.name))
        put(sheet, number, column, value, style)
    texts = [str(item.values.get((row.part, row.name), "")) for item in layout.demos]
    sheet.row_dimensions[number].height = sheet_drawing.height_for(
        (row.meaning, FRAME["D"] * 1.1), *((text, layout.width) for text in texts)
    )


def _grey_out(sheet: Worksheet, route_row: int, last: int, last_column: int) -> None:
    """Grey the cells of steps that the recipe's route does not have; the first row names the route."""
    cells = sheet_drawing.cells(FIRST_COLUMN, route_row + 1, last, last_column)
    route = f"{get_column_letter(FIRST_COLUMN)}${route_row}"
    has = f"COUNTIFS({STEP_LISTS[0]},{route},{STEP_LISTS[1]},$A{route_row + 1})"
    input_rules.mark_unread(sheet, cells, f'AND({route}<>"",{has}=0)')


def _add_rules(sheet: Worksheet, number: int, row: Row, last_column: int, code_row: int) -> None:
    cells = sheet_drawing.cells(FIRST_COLUMN, number, number, last_column)
    first = get_column_letter(FIRST_COLUMN)
    unit_cell = f"${get_column_letter(UNIT_COLUMN)}{number}"
    if row.list_name:
        input_rules.add_list(sheet, cells, row.list_name, row_text(row.name))
    elif row.is_number:
        input_rules.add_number(sheet, cells, row.name, row.unit, unit_cell if row.unit else "")
        if row.unit:
            input_rules.add_units(sheet, unit_cell.replace("$", ""), row.name, row.unit)
    if row.needed:
        input_rules.mark_needed(sheet, cells, f'AND({first}${code_row}<>"",{first}{number}="")')
    if row.defaults:
        low, high = (f"${get_column_letter(column)}{number}" for column in (LOW_COLUMN, HIGH_COLUMN))
        same_unit = f'{unit_cell}="{row.unit}",' if row.unit else ""
        outside = f"OR({first}{number}<{low},{first}{number}>{high})"
        input_rules.mark_unusual(sheet, cells, f"AND(ISNUMBER({first}{number}),{same_unit}{outside})")


def _draw_line_above(sheet: Worksheet, number: int, last_column: int) -> None:
    for column in range(1, last_column + 1):
        cell = sheet.cell(number, column)
        edges = copy(cell.border)
        cell.border = Border(left=edges.left, right=edges.right, top=line("thin", DARK), bottom=edges.bottom)
