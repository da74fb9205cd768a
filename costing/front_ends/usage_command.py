"""The command that holds what left the store against what the ledger takes for what was made."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    PICTURE,
    check_picture,
    one_line_errors,
    read,
    say_drawn,
)
from costing.front_ends.record_frame import Asked, read_records, record_options
from costing.quantities import InputError, listed

if TYPE_CHECKING:
    from costing.report import Table
    from costing.report.usage import Report
    from costing.settings.mill import Mill

Decorator = Callable[[Callable[..., Any]], Callable[..., Any]]

ON_SCREEN = 10  # rows of a long table
_MONTH = re.compile(r"(\d{4})-(0[1-9]|1[0-2])")
_WEEK = re.compile(r"(\d{4})-W(\d{2})")


@click.command()
@BOOK
@click.option(
    "--period",
    metavar="PERIOD",
    help="A month such as 2025-01, or a week such as 2025-W03; else all records.",
)
@click.option(
    "--by",
    "field",
    type=click.Choice(["range", "shade", "shift", "week", "month", "material"]),
    default="range",
    show_default=True,
    help="By what the difference is told.",
)
@click.option("--material", "-m", "materials", multiple=True, metavar="CODE", help="Only this one; repeat.")
@record_options
@click.option(
    "--without-refused",
    is_flag=True,
    help="Leave out production without a standard and materials without a price, and say so.",
)
@ON
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write it too: a new .xlsx with waterfall chart, or a .csv of the table by --by.",
)
@PICTURE
@click.option("--overwrite", is_flag=True, help="Replace earlier files of those names.")
@JSON
@one_line_errors
def usage(
    book: Path | None,
    period: str | None,
    field: str,
    materials: tuple[str, ...],
    on: str | None,
    out: Path | None,
    picture: Path | None,
    overwrite: bool,
    as_json: bool,
    without_refused: bool,
    **records: Any,
) -> None:
    """Say why the store gave out more or less than the standard: usage, strength, price.

    The standard is what the ledger takes for what was made, at the strengths and prices of the book. The
    effects add up exactly to actual cost less standard cost; with a plan, volume and mix come before them.
    Production and issues stand on the sheets Production record and Store issues, or in files of the mill's.

    \b
    costing usage                                 the invented demo, by range
    costing usage -m LYE-50 --by shift            one material: which effect, which shift
    costing usage my_mill.xlsx --period 2025-01 --issues issues.csv --out january.xlsx
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.report import usage as tables

    _check(out, picture, overwrite)
    mill, _ = read(book, on)
    report, left_out = _report(mill, Asked(**records), without_refused, period, field, materials, overwrite)
    most = 0 if as_json else ON_SCREEN
    shown = [tables.bridge_table(report), tables.materials_table(report, most)]
    if field != "material":
        shown.append(tables.lines_table(report, most))
    if as_json:
        click.echo(screen.to_json([*shown, tables.waterfall_table(report), tables.remarks_table(report)]))
    else:
        screen.show(shown[0])
        for table in shown[1:]:
            screen.show(tables.in_short(table))
        for text in report.remarks:
            click.echo(text)
    for text in left_out:
        click.echo(f"left out: {text}", err=True)
    if out is not None:
        _write(out, report, overwrite)
        click.echo(f"written to {out}", err=True)
    if picture is not None:
        from costing.front_ends.pictures.waterfall import waterfall_picture

        waterfall_picture(
            picture, tables.bridge_table(report).title, tables.waterfall_table(report), overwrite
        )
        if not as_json:
            say_drawn(picture)


def _report(
    mill: Mill,
    asked: Asked,
    without_refused: bool,
    period: str | None,
    field: str,
    codes: Sequence[str],
    overwrite: bool,
) -> tuple[Report, list[str]]:
    """Compare the records, and say what is left out."""
    from costing.purchasing.standard_use import Standards, made_records
    from costing.purchasing.usage import Remark, compare
    from costing.report.usage import report_of

    records = read_records(mill, asked, overwrite)
    wanted = [mill.material(code, "--material").code for code in codes]
    rows = _of_period("production record", records.made, period)
    issues = _of_period("list of store issues", records.issues, period)
    standards = Standards(mill)
    booked = made_records(standards, rows)
    errors = [error for _, error in booked.left_out]
    if errors and not without_refused:
        raise errors[0]
    found = compare(mill, standards, booked.made, issues)
    found = found._replace(remarks=[*found.remarks, *map(Remark, records.remarks)])
    if wanted:
        missing = [code for code in wanted if code not in found.materials]
        if missing:
            raise InputError(
                "--material",
                f"{missing[0]} was neither taken nor issued; there are: "
                f"{listed(found.materials, missing[0])}",
            )
        found = found.of(wanted)
    without = [error for code, error in found.without_price.items() if code in found.materials]
    if without and not without_refused:
        raise without[0]
    left_out = [*records.skipped, *map(str, [*errors, *without])]
    return report_of(mill, found, field, _note(len(records.skipped), len(errors), len(without))), left_out


def _note(skipped: int, refused: int, without_price: int) -> str:
    """What is in no total, in words; "" where all is."""
    told = []
    if skipped:
        told.append(f"rows of {skipped} names that the book does not know are in no total")
    if refused:
        told.append(
            f"{refused} rows of production without a standard are in no total, though what they took is "
            "among the issues"
        )
    if without_price:
        told.append(f"{without_price} materials without a price are in no money")
    return f"INCOMPLETE: {'; '.join(told)}. " if told else ""


def _of_period(what: str, rows: Sequence[Any], period: str | None) -> list[Any]:
    """Records of the period that is asked for."""
    if period is None:
        return list(rows)
    wanted = period.strip().upper()
    if not _MONTH.fullmatch(wanted) and not _is_week(wanted):
        raise InputError(
            "--period", f"is {period!r}; accepted is a month such as 2025-01 or a week, 2025-W03"
        )
    form = "%G-W%V" if "W" in wanted else "%Y-%m"
    found = [row for row in rows if f"{row.day:{form}}" == wanted]
    if not found:
        there = sorted({f"{row.day:{form}}" for row in rows})
        raise InputError(
            "--period", f"the {what} has nothing in {wanted}; there are: {listed(there, wanted)}"
        )
    return found


def _is_week(text: str) -> bool:
    found = _WEEK.fullmatch(text)
    try:
        return bool(found) and bool(datetime.date.fromisocalendar(int(text[:4]), int(text[6:]), 1))
    except ValueError:
        return False


def _check(out: Path | None, picture: Path | None, overwrite: bool) -> None:
    if out is not None:
        from costing.front_ends.whole_file import check_name

        check_name(out, "a comparison", (".xlsx", ".csv"), overwrite)
    check_picture(picture, overwrite)


def _write(out: Path, report: Report, overwrite: bool) -> None:
    from costing.report import usage as tables

    table: Table = (
        tables.materials_table(report) if report.field == "material" else tables.lines_table(report)
    )
    if out.suffix.lower() == ".csv":
        from costing.front_ends.plain_table import write_csv

        if report.note:  # a file of rows alone has no other place to say it
            table.rows.append([report.note.strip(), *[None] * (len(table.columns) - 1)])
        write_csv(out, table, "comparison", overwrite)
        return
    from costing.front_ends.workbook.plan_book import PlanSheet, write_plan
    from costing.front_ends.workbook.plan_charts import waterfall_chart
    from costing.front_ends.workbook.results_sheets import Form
    from costing.purchasing.usage_parts import FIELDS, MATERIAL

    form = Form(alert=tables.STANDARD_TOLD)
    sheets = [
        PlanSheet("Effects", tables.bridge_table(report), form),
        PlanSheet("Waterfall", tables.waterfall_table(report), form, waterfall_chart),
        PlanSheet("By material", tables.materials_table(report), form),
    ]
    for field in FIELDS:
        if field != MATERIAL:
            of_field = tables.report_of(report.mill, report.found, field, report.note)
            sheets.append(PlanSheet(f"By {field}", tables.lines_table(of_field), form))
    sheets.append(PlanSheet("Remarks", tables.remarks_table(report), form))
    write_plan(out, "actual use against standard", sheets, overwrite)
