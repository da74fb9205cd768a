"""The results workbook: a sheet for each view, with plain values that any viewer shows."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from openpyxl.workbook import Workbook

from costing.front_ends.whole_file import check_name
from costing.front_ends.workbook import open_file
from costing.front_ends.workbook.chart_parts import amend_chart
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.results_compare import compare_sheet
from costing.front_ends.workbook.results_long import LongSheets
from costing.front_ends.workbook.results_pages import (
    cost_charts,
    discharge_charts,
    record_sheet,
    summary_sheet,
)
from costing.front_ends.workbook.results_sheets import Form, table_sheet
from costing.front_ends.workbook.saving import save_whole
from costing.quantities import InputError
from costing.report import TABLES, Result, Table, all_tables
from costing.report.refused import Refused, quoted_rows, with_refused
from costing.settings.mill import Mill

ESTIMATE = "Estimate, not a measurement of compliance: your permit and the tests that it names come first."
DEFER = (
    "This is not a safety data sheet. The supplier's safety data sheet, your own risk assessment, local "
    "rules and licensed practice come first."
)
SAFETY = Form(
    alert=DEFER,
    widths={"Concerns": 24, "Materials": 20, "Caution": 60, "Comes first": 46, "Source": 20},
    filtered=False,
    text="row text",
)
DEFAULTS = Form(
    fixed_columns=3,
    widths={"Enquiries": 18, "Where": 30, "Setting": 22, "Contested": 12, "Place in the source": 28},
)
SOURCES = Form(widths={"Title": 36, "Authors": 24, "Where": 36}, text="row text")
OWN_SHEETS = {"Summary", "Cost lines", "Ledger", "Record"}
OF_COMPARISON = {"Compare", "Checks", "Record"}


def write_results(
    path: Path,
    mill: Mill,
    results: Sequence[Result],
    overwrite: bool = False,
    refused: Sequence[Refused] = (),
    ranged: bool = False,
) -> None:
    """Write results to a new workbook, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to.
    mill : Mill
        The mill's book.
    results : sequence of Result
        One for each enquiry.
    overwrite : bool, optional
        True to replace an earlier results file; no other file is ever replaced.
    refused : sequence of Refused, optional
        Enquiries that are not among the results: each stands in every table, and is an error in a sum.
    ranged : bool, optional
        True to work out the range, the drivers and the lot curve of each enquiry, too.

    Raises
    ------
    InputError
        Nothing to write; a file of that name is there; the folder or the disk refuses it. What was
        there stays as it was.
    """
    if not results:
        raise InputError("results", "there is no enquiry to write; accepted is one or more")
    check_replaced(path, overwrite, OWN_SHEETS)
    tables = with_refused(all_tables(mill, results), refused)
    book, long_sheets = results_book(tables, (mill, results) if ranged else None)

    def amend(name: str, content: bytes) -> bytes:
        return amend_chart(name, long_sheets.amend(name, content))

    save_whole(book, path, overwrite=overwrite, date=midnight(), amend=amend)


def write_comparison(path: Path, mill: Mill, results: Sequence[Result], overwrite: bool = False) -> None:
    """Write enquiries side by side to a new workbook, with their warnings and what it was made with.

    Parameters
    ----------
    path, mill, results, overwrite
        As of `write_results`.

    Raises
    ------
    InputError
        As of `write_results`.
    """
    check_replaced(path, overwrite, OF_COMPARISON)
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    tables = {key: TABLES[key](mill, results) for key in ("compare", "cost_by_group", "checks", "run_record")}
    groups = table_sheet(pen, "Cost by group", tables["cost_by_group"])
    compare_sheet(pen, tables["compare"], groups)
    book.move_sheet("Compare", -1)
    book.active = 0
    table_sheet(pen, "Checks", tables["checks"], Form(widest=110))
    record_sheet(pen, tables["run_record"])
    book.properties.title = "Denim warp costing: comparison"
    book.properties.creator = "costing"
    save_whole(book, path, overwrite=overwrite, date=midnight(), amend=amend_chart)


def midnight() -> datetime.datetime:
    """The date that a file of results says it was made on."""
    return datetime.datetime.combine(datetime.date.today(), datetime.time())


def check_replaced(path: Path, overwrite: bool, sheets: set[str]) -> None:
    """Refuse a name for a workbook, and to replace a file that is no earlier one of its sort, by its sheets.

    Raises
    ------
    InputError
        No name of a workbook; or the file is there and may not be replaced, or is another.
    """
    check_name(path, "a workbook", (".xlsx",), overwrite)
    if overwrite and path.exists() and not sheets <= sheet_names(path):
        raise not_replaced(path)


def not_replaced(path: Path) -> InputError:
    """The refusal to replace a file that is not an earlier one of the same sort."""
    return InputError(
        str(path), "holds no earlier results and was left as it is; accepted is the name of a new file"
    )


def sheet_names(path: Path) -> set[str]:
    """Names of the sheets of a workbook; none of what is no workbook."""
    try:
        return set(open_file.sheet_names(path))
    except InputError:
        return set()


def results_book(
    tables: Sequence[Table], ranged: tuple[Mill, Sequence[Result]] | None = None
) -> tuple[Workbook, LongSheets]:
    """A workbook with a sheet for each view, and the rows of its long sheets.

    Parameters
    ----------
    tables : sequence of Table
        Of the results.
    ranged : (Mill, sequence of Result), optional
        Book and enquiries whose range and lot curve are worked out.
    """
    found = {table.key: table for table in tables}
    book = Workbook()
    book.remove(book.worksheets[0])
    pen = Pen(book)
    by_name = Form(fixed_columns=2)
    summary_sheet(pen, found["quotes"], found["cost_by_group"])
    table_sheet(pen, "Key figures", found["key_figures"])
    groups = table_sheet(pen, "Cost by group", found["cost_by_group"])
    if len(quoted_rows(groups.table)) > 1:
        compare_sheet(pen, found["compare"], groups)
    table_sheet(pen, "Seconds", found["seconds"], by_name)
    table_sheet(pen, "Shade lots", found["shade_lots"])
    steps = table_sheet(pen, "Cost by step", found["cost_by_step"], replace(by_name, total="all steps"))
    cost_charts(pen, steps)
    more: dict[str, str] = {}
    if ranged is not None:
        from costing.front_ends.workbook.results_range import RANGE_SHEETS, range_sheets, ranges_of

        mill, results = ranged
        range_sheets(pen, mill, ranges_of(mill, results))
        more = RANGE_SHEETS
    table_sheet(pen, "Use", found["use"], by_name)
    table_sheet(pen, "Dye bath", found["dye_bath"], by_name)
    by_stream = replace(by_name, total="all streams", alert=ESTIMATE)
    loads = table_sheet(pen, "Discharge loads", found["discharge_loads"], by_stream)
    table_sheet(pen, "Discharge concentrations", found["discharge_concentrations"], by_stream)
    long_sheets = LongSheets(pen)
    long_sheets.add(
        "Discharge by parameter",
        found["discharge_by_parameter"],
        replace(by_stream, fixed_columns=3, upright=True),
    )
    discharge_charts(pen, loads, ESTIMATE)
    table_sheet(pen, "Cloth", found["cloth_plan"])
    table_sheet(pen, "Order", found["order_plan"])
    table_sheet(pen, "Checks", found["checks"], Form(widest=110))
    table_sheet(pen, "Defaults taken", found["defaults_taken"], DEFAULTS)
    long_sheets.add("Cost lines", found["cost_lines"])
    table_sheet(pen, "Prices", found["prices"])
    long_sheets.add("Ledger", found["ledger"])
    table_sheet(pen, "Safety", found["safety"], SAFETY)
    table_sheet(pen, "Sources", found["sources"], SOURCES)
    record_sheet(pen, found["run_record"], more)
    book.properties.title = "Denim warp costing: results"
    book.properties.creator = "costing"
    return book, long_sheets
