"""Write a fresh mill's book, filled with the invented demo mill or empty.

``python -m costing.front_ends.workbook.build`` writes ``workbook_template/mill_book.xlsx`` and the module by
which a book is read anew; the same tables and sheet files give the same parts, byte for byte.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from openpyxl.workbook import Workbook

from costing.front_ends.whole_file import write_whole
from costing.front_ends.workbook import build_pages
from costing.front_ends.workbook.build_columns import draw_column_sheet
from costing.front_ends.workbook.build_sheet_table import write_sheet_table
from costing.front_ends.workbook.build_tables import draw_table_sheet
from costing.front_ends.workbook.cached_values import with_values
from costing.front_ends.workbook.chart_parts import amend_chart
from costing.front_ends.workbook.layout import column_sheet, table_sheet
from costing.front_ends.workbook.live_areas import CHOICE
from costing.front_ends.workbook.live_build import draw_live_sheets
from costing.front_ends.workbook.live_formulas import draw_formulas
from costing.front_ends.workbook.live_results import BookResults
from costing.front_ends.workbook.saving import workbook_bytes
from costing.front_ends.workbook.styles import add_styles
from costing.front_ends.workbook.template_files import template_folder
from costing.quantities import InputError

BOOK_NAME = "mill_book.xlsx"


def fresh_book(demo: bool = True) -> Workbook:
    """Build the book.

    Parameters
    ----------
    demo : bool, optional
        True to fill in the invented mill; False leaves only routes and units.
    """
    return _book_and_results(demo)[0]


def fresh_book_bytes(demo: bool = True) -> bytes:
    """The file of a fresh book.

    Of the demo, what each formula shows stands behind it, for viewers without our formulas. An empty book has
    nothing to show: there a formula waits until a program works it out.
    """
    book, results = _book_and_results(demo)
    content = workbook_bytes(book, amend=amend_chart)
    return with_values(content, results) if demo else content


def _book_and_results(demo: bool) -> tuple[Workbook, dict[str, dict[str, Any]]]:
    book = _input_sheets(demo)
    shown = BookResults(book if demo else _input_sheets(True))
    results = draw_live_sheets(book, shown)
    build_pages.draw_safety(book)
    draw_formulas(book)
    build_pages.draw_sources(book)
    build_pages.draw_lists(book)
    if not demo:
        (place,) = book.defined_names[CHOICE].destinations
        book[place[0]][place[1].replace("$", "")].value = None
    book.properties.title = "The mill's book"
    book.properties.creator = "costing"
    book.properties.description = "Styles, recipes, ranges, prices and enquiries for dyed denim"
    return book, results


def _input_sheets(demo: bool) -> Workbook:
    book = Workbook()
    assert book.active is not None
    book.remove(book.active)
    add_styles(book)
    build_pages.draw_about(book, demo)
    draw_table_sheet(book, table_sheet("enquiries"), demo, wide=2)
    for name in ("styles", "recipes", "ranges"):
        draw_column_sheet(book, column_sheet(name), demo)
    draw_table_sheet(book, table_sheet("routes"), True)
    draw_table_sheet(book, table_sheet("materials"), demo, wide=2)
    draw_table_sheet(book, table_sheet("mill_costs"), demo)
    draw_table_sheet(book, table_sheet("how_sure"), demo)
    draw_table_sheet(book, table_sheet("quote_texts"), demo, one_page=True)
    draw_column_sheet(book, column_sheet("discharge_points"), demo)
    draw_table_sheet(book, table_sheet("discharge_plan"), demo)
    draw_table_sheet(book, table_sheet("treatment"), demo, pages=(1, 2))
    draw_table_sheet(book, table_sheet("permit"), demo, pages=(1, 1))
    draw_table_sheet(book, table_sheet("quality"), True)
    draw_table_sheet(book, table_sheet("offers"), demo)
    draw_table_sheet(book, table_sheet("calibrations"), demo)
    draw_table_sheet(book, table_sheet("planning"), demo)
    for name in ("order_book", "stock", "open_orders"):
        draw_table_sheet(book, table_sheet(name), demo)
    draw_table_sheet(book, table_sheet("purchase_terms"), demo, wide=2)
    for name in ("production_record", "store_issues"):
        draw_table_sheet(book, table_sheet(name), demo)
    return book


def write_fresh_book(path: Path, demo: bool = True, overwrite: bool = False) -> None:
    """Write a fresh book to a new file, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to.
    demo : bool, optional
        True to fill in the invented mill.
    overwrite : bool, optional
        True to replace a file of that name.

    Raises
    ------
    InputError
        The file is there already, or cannot be written.
    """
    write_whole(
        lambda: fresh_book_bytes(demo), path, what="a workbook", suffixes=(".xlsx",), overwrite=overwrite
    )


def demo_book() -> Path:
    """The built book of the invented mill, beside the sheet files.

    Raises
    ------
    InputError
        When it is missing.
    """
    path = template_folder() / BOOK_NAME
    if not path.is_file():
        raise InputError(str(path), "the demo book is missing; install the package again")
    return path


if __name__ == "__main__":
    write_sheet_table()
    write_fresh_book(template_folder() / BOOK_NAME, overwrite=True)
