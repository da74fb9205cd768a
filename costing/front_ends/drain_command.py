"""The command for the officer: a collecting point, a month of it, and where a figure comes from."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import BOOK, JSON, ON, asked_quantity, one_line_errors, read, results_of
from costing.quantities import InputError, listed

if TYPE_CHECKING:
    from collections.abc import Callable

    from costing.front_ends.row_files.reading import LeftOut
    from costing.report import Result, Table
    from costing.report.drain_against import Side
    from costing.report.drain_point import PointResult
    from costing.settings.mill import Mill

PLAN = "plan"  # word for the plan of the book
FIRST = "Estimate from recipe and range, no measurement: your permit and the tests that it names come first."


@click.command()
@BOOK
@click.option(
    "--point", "-p", "code", default="", metavar="CODE", help="Collecting point; the first when left out."
)
@click.option(
    "--log",
    type=click.Path(path_type=Path, readable=False),
    help="The mill's own record of production, .csv or .xlsx: a month in place of the plan of the book.",
)
@click.option("--month", default="", metavar="YYYY-MM", help="Month of the log, where it holds several.")
@click.option(
    "--columns",
    metavar="NAME=HEADING,...",
    help="Headings of the log: date, enquiry (or style, recipe, range), amount, unit, point; also "
    "decimal=comma, dates=day first, sheet=NAME.",
)
@click.option("--keep-columns", is_flag=True, help="Write these columns to a small file beside the log.")
@click.option("--skip-unknown", is_flag=True, help="Leave out rows of enquiries that the book does not know.")
@click.option(
    "--why", "parameter", metavar="PARAMETER", help="Open one figure into step, substance and cause."
)
@click.option(
    "--against",
    metavar="BOOK",
    help="Side by side with what was before: another book, another point of this book, or PLAN for a log "
    "beside the plan of the book.",
)
@click.option(
    "--to-ph", "target", metavar="PH", help="Acid or gas to this pH, in place of the one of the point."
)
@click.option("--out", "-o", type=click.Path(path_type=Path), help="Write the report: a workbook to print.")
@click.option("--overwrite", is_flag=True, help="Replace an earlier report of that name.")
@ON
@JSON
@one_line_errors
def drain(
    book: Path | None,
    code: str,
    log: Path | None,
    month: str,
    columns: str | None,
    keep_columns: bool,
    skip_unknown: bool,
    parameter: str | None,
    against: str | None,
    target: str | None,
    out: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Show what leaves by a collecting point on a running day, or in a month of a production log.

    Streams, loads and concentrations with their band, condition of the water, dumps; with --out a report to
    print, with charts, what was assumed, sources and cautions. The numbers are an estimate; your permit and
    the tests that it names come first. The day of the prices counts here too: it chooses the offers, and with
    them the strength of what is bought.

    \b
    costing drain                                  the plan of the book
    costing drain --to-ph 9                        acid, the sulfate it adds, or flue gas to pH 9
    costing drain --why sulfide                    where a figure comes from
    costing drain half_rinse.xlsx --against mill_book.xlsx    load, concentration, limits before and after
    costing drain --log october.csv --columns "date=Datum, enquiry=Auftrag, amount=kg"
    costing drain --log october.csv --month 2026-10 --out october_drain.xlsx
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.report.drain_point import work_out_point
    from costing.report.drain_tables import in_short, measured_first, point_grounds, point_tables
    from costing.report.drain_why import why

    _check_options(log, month, columns, keep_columns, skip_unknown, parameter, out, as_json)
    if against is not None and parameter is not None:
        raise InputError("--against", "compares all parameters; accepted is --why without it")
    mill, source = read(book, on)
    if out is not None and out.resolve() in (source.resolve(), log.resolve() if log else None):
        raise InputError(str(out), "is read here; accepted is another name for the report")

    result = _results_of_book(mill, source)
    tables: list[Table] = []
    left_out: list[LeftOut] = []
    title = "a running day of the plan"
    before = None if against is None else _before(against, mill, source, code, log, on)
    if log is not None:
        held = _month_of(mill, code, log, month, columns, skip_unknown, result)
        mill, found, tables, left_out, title = held
        if keep_columns:
            _keep(columns, log, overwrite)
    else:
        found = work_out_point(mill, code, result)
    if target is not None:
        aim = asked_quantity(target, "pit_acidity", "--to-ph")
        found = replace(found, point=replace(found.point, pit_acidity=aim))
    if parameter is not None:
        tables = why(mill, found, parameter, result, brief=not as_json)
    else:
        tables += point_tables(mill, found)
    if before is not None:
        from costing.report.drain_against import Side, against_tables

        name = title if log is not None else f"{found.point.code} of {source.name}"
        compared = against_tables(before, Side(name, mill, found))
        tables = [*compared, *tables] if out is not None else compared
        title = f"{title}, against {before.name}"
    if as_json:
        grounds = [] if parameter is not None or before is not None else point_grounds(mill, found)
        click.echo(screen.to_json([*tables, *grounds]))
    elif out is not None:
        from costing.front_ends.workbook.drain_report import Report, write_report

        told = [item.text() for item in left_out]
        report = Report(mill, found, tables, title, log.name if log else source.name, told)
        write_report(out, report, overwrite=overwrite)
    else:
        for table in tables:
            screen.show(in_short(table))
    for item in left_out:
        click.echo(f"left out, {item.text()}", err=True)
    if as_json:
        return
    if parameter is None and before is None and out is None:
        for line in measured_first(tables):
            click.echo(line)
    others = [other for other in mill.drain.points if other != found.point.code]
    if others:
        click.echo(f"other points: {', '.join(others)}")
    click.echo(f"the report, {title}, is in {out}. {FIRST}" if out is not None else FIRST)


def _check_options(
    log: Path | None,
    month: str,
    columns: str | None,
    keep_columns: bool,
    skip_unknown: bool,
    parameter: str | None,
    out: Path | None,
    as_json: bool,
) -> None:
    """Refuse options that mean nothing together."""
    of_log = {"--month": month, "--columns": columns, "--keep-columns": keep_columns}
    of_log["--skip-unknown"] = skip_unknown
    for option, given in of_log.items():
        if given and log is None:
            raise InputError(option, "goes with a log; accepted is --log FILE with it")
    if keep_columns and columns is None:
        raise InputError("--keep-columns", "keeps what --columns says; accepted are both")
    if out is not None and (as_json or parameter is not None):
        raise InputError("--out", "goes with the report; accepted is --json or --why without it")


def _results_of_book(mill: Mill, source: Path) -> Callable[[str], Result]:
    """The result of an enquiry of a book by its code, each worked out once."""

    @cache
    def result(enquiry: str) -> Result:
        return results_of(mill, source, (enquiry,))[0]

    return result


def _before(asked: str, mill: Mill, source: Path, code: str, log: Path | None, on: str | None) -> Side:
    """The drain that another is compared with: of another book, of another point, or of the plan."""
    from costing.report.drain_against import Side
    from costing.report.drain_point import work_out_point

    name = ""
    if asked.casefold() == PLAN:
        if log is None:
            raise InputError("--against", "plan goes with a log; accepted is --log FILE with it")
        name = f"the plan of {source.name}"
    elif asked in mill.drain.points:
        code = asked
    elif Path(asked).is_file():
        mill, source = read(Path(asked), on)
    else:
        raise InputError(
            "--against",
            f"{asked!r} is no file and no point of the book; accepted is another book, a point of this one "
            f"({listed(mill.drain.points)}), or {PLAN} with a log",
        )
    found = work_out_point(mill, code, _results_of_book(mill, source))
    return Side(name or f"{found.point.code} of {source.name}", mill, found)


def _month_of(
    mill: Mill,
    code: str,
    log: Path,
    month: str,
    columns: str | None,
    skip_unknown: bool,
    result: Callable[[str], Result],
) -> tuple[Mill, PointResult, list[Table], list[LeftOut], str]:
    """The book with the mean day of a month as its plan, that day, its tables, what was left out."""
    from costing.front_ends.production_log.reading import FORM, read_log
    from costing.front_ends.row_files.column_map import asked_columns
    from costing.report.drain_month import month_tables, work_out_month
    from costing.report.drain_point import work_out_point

    held = read_log(log, mill, asked_columns(columns, log, FORM), skip_unknown)
    found = work_out_month(mill, code, held.ran, month, result)
    mean = work_out_point(found.mean, code, result)
    return found.mean, mean, month_tables(found, mean), held.left_out, f"the month {found.name}"


def _keep(columns: str | None, log: Path, overwrite: bool) -> None:
    from costing.front_ends.production_log.reading import FORM
    from costing.front_ends.row_files.column_map import asked_columns, keep

    kept = keep(asked_columns(columns, log, FORM), log, FORM, overwrite)
    click.echo(f"columns kept in {kept}", err=True)
