"""Draw the sheets that are only read: About, Lists, Safety and Sources."""

from __future__ import annotations

from openpyxl.utils import quote_sheetname
from openpyxl.workbook import Workbook
from openpyxl.worksheet.hyperlink import Hyperlink
from openpyxl.worksheet.worksheet import Worksheet

import costing
from costing.front_ends.workbook import input_rules, sheet_drawing
from costing.front_ends.workbook.layout import ROWS, column_sheet, word_lists
from costing.front_ends.workbook.results_sheets import set_widths
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import page, pages_across, widths
from costing.front_ends.workbook.template_files import sheet_file
from costing.reference_data import cautions, fingerprint
from costing.reference_data.source_list import sources

ABOUT_WIDTHS = {"A": 18, "B": 112}
MARKS = {
    "needed": input_rules.mark_needed,
    "unusual": input_rules.mark_unusual,
    "unread": input_rules.mark_unread,
}
NARROWEST_LIST = 12.0
LIST_ROW = 12.5  # the longest list is no longer than a page
SAFETY_WIDTHS = {"A": 22, "B": 62, "C": 42, "D": 21}
SOURCE_WIDTHS = {"A": 28, "B": 46, "C": 24, "D": 7, "E": 16, "F": 44, "G": 7}


def draw_about(book: Workbook, demo: bool) -> None:
    """What the book is, how it is filled, what the marks mean; of a demo, that it is one."""
    text = sheet_file("about")
    sheet: Worksheet = book.create_sheet(text["sheet"])
    put(sheet, 1, 1, text["title"], "sheet title")
    sheet.row_dimensions[1].height = 28
    put(sheet, 2, 1, text["subtitle"], "subtitle")
    sheet.row_dimensions[2].height = 20
    number = 4
    for section in text["section"]:
        if section.get("demo_only") and not demo:
            continue
        for column in (1, 2):
            put(sheet, number, column, section["heading"] if column == 1 else None, "section")
        number += 1
        for line in section["lines"]:
            put(sheet, number, 2, line, "text")
            sheet.row_dimensions[number].height = sheet_drawing.height_for((line, ABOUT_WIDTHS["B"]))
            number += 1
        if section["heading"] == text["marks_under"]:
            number = _draw_marks(sheet, number)
        number += 1
    for column in (1, 2):
        put(sheet, number, column, "Sheets" if column == 1 else None, "section")
    for item in text["sheet_list"]:
        number += 1
        name = put(sheet, number, 1, item["sheet"], "strong text")
        place = f"{quote_sheetname(item['sheet'])}!A1"
        name.hyperlink = Hyperlink(ref=name.coordinate, location=place, display=item["sheet"])
        name.style = "strong text"
        put(sheet, number, 2, item["text"], "text")
    number += 2
    version = f"Made by costing {costing.__version__}, tables {fingerprint()[:12]}"
    put(sheet, number, 2, version, "remark")
    widths(sheet, ABOUT_WIDTHS)
    page(sheet)


def _draw_marks(sheet: Worksheet, number: int) -> int:
    for mark in sheet_file("about")["mark"]:
        style = mark["style"]
        value = float(mark["sample"]) if mark["sample"] else None
        cell = put(sheet, number, 1, value, "given number" if style in MARKS else style)
        if style in MARKS:
            MARKS[style](sheet, cell.coordinate, "TRUE")
        put(sheet, number, 2, mark["text"], "text")
        sheet.row_dimensions[number].height = 17
        number += 1
    return number


def draw_lists(book: Workbook) -> None:
    """The words of the drop-down lists, each list under its defined name."""
    text = sheet_file("lists")
    sheet: Worksheet = book.create_sheet(text["sheet"])
    top = sheet_drawing.head_of_sheet(sheet, text["title"], text["intro"])
    wide = []
    for column, (name, items) in enumerate(word_lists().items(), start=1):
        put(sheet, top, column, name.replace("_", " "), "column head")
        for number, item in enumerate(items, start=top + 1):
            put(sheet, number, column, item, "row label")
        sheet_drawing.define_name(book, name, sheet, column, top + 1, top + len(items))
        longest = max(map(len, items), default=0)
        wide.append(max(NARROWEST_LIST, longest + 3.0))
    for number in range(top + 1, top + 1 + max(map(len, word_lists().values()))):
        sheet.row_dimensions[number].height = LIST_ROW
    set_widths(sheet, wide)
    sheet.row_dimensions[top].height = 30
    page(sheet, title_rows=f"{top}:{top}", freeze=f"A{top + 1}", pages_wide=pages_across(wide))


def draw_safety(book: Workbook) -> None:
    """The cautions, with to whom each defers and where it comes from."""
    text = sheet_file("safety")
    sheet: Worksheet = book.create_sheet(text["sheet"])
    top = sheet_drawing.head_of_sheet(sheet, text["title"], text["intro"])
    for column, head in enumerate(("What", "The usual caution", "Before anything else", "Source"), start=1):
        put(sheet, top, column, head, "column head")
    for number, item in enumerate(cautions().values(), start=top + 1):
        put(sheet, number, 1, f"{item.name}\n({item.key})", "strong row")
        put(sheet, number, 2, item.caution, "row text")
        put(sheet, number, 3, item.defer, "row text")
        put(sheet, number, 4, item.source, "row text")
        sheet.row_dimensions[number].height = sheet_drawing.height_for(
            (item.caution, SAFETY_WIDTHS["B"]), (item.defer, SAFETY_WIDTHS["C"])
        )
    widths(sheet, SAFETY_WIDTHS)
    page(sheet, title_rows=f"{top}:{top}", freeze=f"B{top + 1}")


def sources_used() -> list[str]:
    """Keys of the sources that stand beside a typical value, a caution or a product of this book."""
    rows = [row for name in ROWS for row in column_sheet(name).rows if row.defaults]
    keys = {item.source for row in rows for item in row.defaults} | {
        item.source for item in cautions().values()
    }
    return sorted(keys, key=lambda key: (sources()[key].is_publication, key))


def draw_sources(book: Workbook) -> None:
    """The sources of the typical values and cautions, those that are no publication first."""
    text = sheet_file("sources")
    sheet: Worksheet = book.create_sheet(text["sheet"])
    top = sheet_drawing.head_of_sheet(sheet, text["title"], text["intro"])
    for column, head in enumerate(("Key", "Title", "Authors", "Year", "Kind", "Where", "Read"), start=1):
        put(sheet, top, column, head, "column head")
    for number, key in enumerate(sources_used(), start=top + 1):
        item = sources()[key]
        read = ("yes" if item.opened else "no") if item.is_publication else "-"
        values = (key, item.title, item.authors, item.year, item.kind, item.where, read)
        for column, value in enumerate(values, start=1):
            put(sheet, number, column, value or None, "strong row" if column == 1 else "row text")
        sheet.row_dimensions[number].height = sheet_drawing.height_for(
            *zip(values, SOURCE_WIDTHS.values(), strict=True)
        )
    widths(sheet, SOURCE_WIDTHS)
    page(sheet, title_rows=f"{top}:{top}", freeze=f"B{top + 1}")
