"""Draw the sheets with a row for each thing: routes, materials, costs and enquiries."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from typing import Any

from openpyxl.utils import get_column_letter
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.book.layout import MOST_STEPS, row_text, substance_names
from costing.front_ends.workbook import input_rules, sheet_drawing
from costing.front_ends.workbook.layout import DrawnColumn, DrawnTable, TableSheet
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import UPRIGHT, page
from costing.quantities import QUANTITIES

GIVEN = {
    "code": "given code",
    "text": "given text",
    "choice": "given choice",
    "unit": "given choice",
    "number": "given number",
    "limit": "given number",
    "value": "given number",
    "offered": "given choice",
    "whole": "given number",
    "date": "given date",
    "usual": "table text",
}
WITH_DEFAULTS = ("planning",)  # tables whose values may all be empty
NUMBERS = ("number", "limit", "value", "whole", "date", "row")

# Defined name of the first column of a table, for the drop-down lists of the other sheets.
CODE_LISTS = {
    "routes": "route_codes",
    "materials": "material_codes",
    "currencies": "currency_codes",
    "calibrations": "calibration_codes",
}
ROW_LISTS = {
    "currency": "currency_codes",
    "calibration": "calibration_codes",
}  # of fixed rows that hold a code
STEP_LISTS = ("routes_of_steps", "steps_of_routes")  # first two columns of the steps: which route has which

# Unit of a number that has no unit column of its own beside it, or shares one.
SHARED_UNITS = {"own_oxygen_demand": "own_unit", "own_sodium": "own_unit", "own_sulfur": "own_unit"}
SHARED_UNITS["own_nitrogen"] = "own_unit"
SHIPPED_UNITS = {"substance_share": "kg/kg"}


def draw_table_sheet(
    book: Workbook,
    layout: TableSheet,
    demo: bool,
    wide: int = 1,
    *,
    pages: Sequence[int] = (),
    one_page: bool = False,
) -> None:
    """Draw one of the sheets Routes, Materials, Offers, Mill costs, Enquiries and the like.

    Parameters
    ----------
    book : Workbook
        Takes the new sheet and the defined names of its codes.
    layout : TableSheet
        What stands on it.
    demo : bool
        True to fill in the invented rows.
    wide : int, optional
        Pages side by side in print.
    pages : sequence of int, optional
        How many tables stand on each page, where a page is to end between two tables.
    one_page : bool, optional
        True where all of it is to be on one page.
    """
    sheet: Worksheet = book.create_sheet(layout.sheet)
    top = sheet_drawing.head_of_sheet(sheet, layout.title, layout.intro, demo)
    heads_row, last = 0, 0
    tops, ends = [], []
    for table in layout.tables:
        heads_row = _draw_heads(sheet, table, top)
        first = heads_row + 1
        count = len(table.demos) + table.spare
        last = heads_row + count
        for number in range(count):
            given = table.demos[number] if number < len(table.demos) else {}
            if _of_fixed_rows(table):
                _draw_fixed_row(sheet, first + number, table, given, demo)
            else:
                _draw_given_row(sheet, first + number, table, given if demo else {})
        if not _of_fixed_rows(table):
            _add_rules(sheet, table, first, last)
        if table.name in CODE_LISTS:
            sheet_drawing.define_name(book, CODE_LISTS[table.name], sheet, 1, first, last)
        if table.name == "steps":
            for place, name in enumerate(STEP_LISTS, start=1):
                sheet_drawing.define_name(book, name, sheet, place, first, last)
        tops.append(top)
        ends.append(last)
        top = last + 2
    for table in layout.tables:
        for number, column in enumerate(table.columns, start=1):
            letter = get_column_letter(number)
            sheet.column_dimensions[letter].width = column.width
    single = len(layout.tables) == 1
    widest = max(layout.tables, key=lambda table: len(table.columns))
    printed = ""
    if wide > 1:
        printed = sheet_drawing.cells(1, heads_row - 1, last, len(widest.columns))
    elif pages:
        printed = _pages_of_tables([1, *tops[1:]], ends, pages, len(widest.columns))
    page(
        sheet,
        title_rows=f"{heads_row}:{heads_row}" if single else "",
        title_columns="A:A" if wide > 1 else "",
        freeze=f"B{heads_row + 1}" if single else "",
        landscape=single or sum(column.width for column in widest.columns) > UPRIGHT,
        pages_wide=wide,
        print_area=printed,
        one_page=one_page,
        heading=layout.title if wide > 1 else "",
    )


def _pages_of_tables(tops: Sequence[int], ends: Sequence[int], pages: Sequence[int], columns: int) -> str:
    """The cells of each page, where a page is so many tables."""
    areas, first = [], 0
    for count in pages:
        areas.append(sheet_drawing.cells(1, tops[first], ends[first + count - 1], columns))
        first += count
    return ",".join(areas)


def _draw_heads(sheet: Worksheet, table: DrawnTable, top: int) -> int:
    """Heading, meanings and heads of a table; gives the row of the heads."""
    number = top
    if table.heading:
        for column in range(1, len(table.columns) + 1):
            put(sheet, number, column, table.heading if column == 1 else None, "section")
        sheet.row_dimensions[number].height = 18
        number += 1
    if any(column.meaning for column in table.columns):
        for place, column_ in enumerate(table.columns, start=1):
            put(sheet, number, place, column_.meaning or None, "column note")
        sheet.row_dimensions[number].height = sheet_drawing.height_for(
            *((column_.meaning, column_.width * 0.9) for column_ in table.columns)
        )
        number += 1
    for place, column_ in enumerate(table.columns, start=1):
        put(sheet, number, place, column_.head, "number head" if column_.kind in NUMBERS else "column head")
    sheet.row_dimensions[number].height = sheet_drawing.height_for(
        *((column_.head, column_.width * 0.8) for column_ in table.columns)
    )
    return number


def _draw_given_row(sheet: Worksheet, number: int, table: DrawnTable, given: Mapping[str, Any]) -> None:
    texts = []
    for place, column in enumerate(table.columns, start=1):
        value = given.get(column.name)
        if column.list == "substance_names" and value:
            value = next(name for name, key in substance_names().items() if key == value)
        put(sheet, number, place, value, GIVEN[column.kind])
        if isinstance(value, str):
            texts.append((value, column.width))
    sheet.row_dimensions[number].height = sheet_drawing.height_for(*texts)


def _of_fixed_rows(table: DrawnTable) -> bool:
    return any(column.kind == "fixed" for column in table.columns)


def _draw_fixed_row(
    sheet: Worksheet, number: int, table: DrawnTable, given: Mapping[str, Any], demo: bool
) -> None:
    """A row whose quantity is fixed, and whose value is a number, a date or a code."""
    name = given["quantity"]
    unit = given.get("unit")
    put(sheet, number, 1, row_text(name), "row label")
    style = "given number" if name in QUANTITIES else "given choice"
    may_be_empty = given["value"] == ""
    if name in ROW_LISTS:
        input_rules.add_list(sheet, f"B{number}", ROW_LISTS[name], row_text(name))
    elif may_be_empty or isinstance(given["value"], datetime.date):
        style = "given date"
        input_rules.add_date(sheet, f"B{number}", row_text(name))
    else:
        input_rules.add_number(sheet, f"B{number}", name, unit or "", f"$C{number}" if unit else "")
        if unit:
            input_rules.add_units(sheet, f"C{number}", name, unit)
    if not may_be_empty and table.name not in WITH_DEFAULTS:
        input_rules.mark_needed(sheet, f"B{number}", f'B{number}=""')
    put(sheet, number, 2, (given["value"] or None) if demo else None, style)
    put(sheet, number, 3, unit, "given choice" if unit else "unit")
    put(sheet, number, 4, given["note"] if demo else None, "given text")
    sheet.row_dimensions[number].height = sheet_drawing.height_for((given["note"], table.columns[3].width))


def _unit_place(table: DrawnTable, column: DrawnColumn) -> int:
    """Place of the unit column of a number; 0 where it has none."""
    wanted = SHARED_UNITS.get(column.name, f"{column.name}_unit")
    return next((place for place, other in enumerate(table.columns, start=1) if other.name == wanted), 0)


def _add_rules(sheet: Worksheet, table: DrawnTable, first: int, last: int) -> None:
    for place, column in enumerate(table.columns, start=1):
        cells = sheet_drawing.cells(place, first, last)
        here = f"{get_column_letter(place)}{first}"
        if column.list:
            strict = column.kind != "offered"
            input_rules.add_list(sheet, cells, column.list, column.head, strict=strict)
        elif column.kind == "limit":
            input_rules.add_above_zero(sheet, cells, column.head)
        elif column.kind == "value":
            input_rules.add_any_number(sheet, cells, column.head)
        elif column.kind == "number":
            item = QUANTITIES[column.quantity]
            unit_place = _unit_place(table, column)
            unit_cell = f"${get_column_letter(unit_place)}{first}" if unit_place else ""
            unit = SHIPPED_UNITS.get(item.name, item.usual)
            if "money" in unit:  # the unit of a price is the column "Per"
                input_rules.add_number(sheet, cells, column.quantity, unit, what=column.head)
            else:
                input_rules.add_number(sheet, cells, column.quantity, unit, unit_cell, what=column.head)
        elif column.kind == "whole":
            input_rules.add_count(sheet, cells, MOST_STEPS, column.head)
        elif column.kind == "unit":
            of = next(other for other in table.columns if other.name == column.of)
            input_rules.add_units(sheet, cells, of.quantity, SHIPPED_UNITS.get(of.quantity, ""))
        elif column.kind == "date":
            input_rules.add_date(sheet, cells, column.head)
        if column.needed and place > 1:
            input_rules.mark_needed(sheet, cells, f'AND($A{first}<>"",{here}="")')
