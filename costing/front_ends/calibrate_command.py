"""The command that fits contested factors to production and store issues."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    PICTURE,
    asked_day,
    asked_quantity,
    check_picture,
    one_line_errors,
    read,
    say_drawn,
)
from costing.front_ends.record_frame import Asked, record_options
from costing.quantities import InputError
from costing.quantities.checking import refuse_all

if TYPE_CHECKING:
    from costing.many.calibration import Calibration
    from costing.many.factors import Factor
    from costing.many.store_use import Observed
    from costing.report import Table
    from costing.settings.mill import Mill
    from costing.settings.records import IssueRecord, MadeRecord


@click.command()
@BOOK
@click.option(
    "--factor", "-f", "names", multiple=True, metavar="NAME", help="What to fit; repeat. Else the usual ones."
)
@click.option(
    "--bounds",
    multiple=True,
    nargs=3,
    metavar="NAME LOW HIGH",
    help="Between what a factor may lie; else as the typical value.",
)
@click.option(
    "--pick", multiple=True, metavar="NAME", help="Fit this one of those that cannot be told apart."
)
@click.option("--range", "range_", default="", metavar="CODE", help="Factors of this range alone.")
@click.option(
    "--period",
    type=click.Choice(["week", "month"]),
    default="month",
    show_default=True,
    help="Length of a period.",
)
@click.option("--hold-back", type=click.IntRange(1), help="Periods at the end that judge it; else a quarter.")
@click.option(
    "--noise",
    multiple=True,
    nargs=2,
    metavar="CODE SHARE",
    help="How far figures of a material scatter; all or none.",
)
@record_options
@click.option("--name", default="", metavar="NAME", help="Of the calibration; else that of its day.")
@click.option("--day", metavar="YYYY-MM-DD", help="Of the calibration; today when left out.")
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write it too: a new .xlsx with charts, or a .csv of the rows to paste.",
)
@PICTURE
@click.option("--overwrite", is_flag=True, help="Replace earlier files of those names.")
@JSON
@one_line_errors
def calibrate(
    book: Path | None,
    names: tuple[str, ...],
    bounds: tuple[tuple[str, str, str], ...],
    pick: tuple[str, ...],
    range_: str,
    period: str,
    hold_back: int | None,
    noise: tuple[tuple[str, str], ...],
    name: str,
    day: str | None,
    out: Path | None,
    picture: Path | None,
    overwrite: bool,
    as_json: bool,
    **records: Any,
) -> None:
    """Fit what mills disagree on to the mill's own records, so that predicted use meets the store.

    Rinse loss, hydrosulfite destroyed on the sky, oxygen at the surface of the dye boxes and exchange, where
    the book leaves them to the typical value; or what --factor names. The last periods take no part in the
    fit and show whether it predicts better. What the periods do not tell, or cannot tell apart, is said and
    stays as it is. The book is never changed: paste the rows on its sheet Calibrations, and name the
    calibration on the sheet Mill costs.

    \b
    costing calibrate --period week                    the invented demo: too few weeks to tell much
    costing calibrate my_mill.xlsx --issues issues.csv --out autumn.xlsx --name AUTUMN
    costing calibrate my_mill.xlsx -f "surface oxygen" --bounds "surface oxygen" 1 10 --range ROPE-A
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.many import calibration_tables as tables
    from costing.many.calibration import calibrate as fit
    from costing.many.store_use import observed

    _check(out, overwrite)
    check_picture(picture, overwrite)
    of_day = asked_day(day, "--day") if day else datetime.date.today()
    given, _ = read(book)
    mill = given.without_calibration()
    made, issues, left_out = _records(mill, Asked(**records), overwrite)
    data = observed(mill, made, issues, period)
    factors, said = _factors(mill, data, names, bounds, mill.range(range_, "--range").code if range_ else "")
    found = fit(mill, data, factors, hold_back, _picked(mill, data, factors, pick), _noise(mill, noise))
    if given.calibration:
        said = [f"calibration {given.calibration} is set aside: before is without it", *said]
    said = [*tables.sentences(found), *said, *left_out]
    rows = tables.sheet_rows(mill, found, name or f"CAL {of_day}", of_day)
    shown = [tables.factors_table(found), tables.error_table(found), rows]
    if as_json:
        click.echo(screen.to_json([*shown, tables.predicted_table(found)]))
    else:
        for table in (*shown[:2], tables.without_note(rows)):
            if table.rows:
                screen.show(table)
    for text in said:
        click.echo(text, err=as_json)
    if out is not None:
        _write(out, found, rows, said, overwrite)
        click.echo(f"written to {out}", err=True)
    if picture is not None:
        from costing.front_ends.pictures.predicted_marks import predicted_picture

        predicted_picture(picture, found, overwrite)
        if not as_json:
            say_drawn(picture)


def _records(
    mill: Mill, asked: Asked, overwrite: bool
) -> tuple[list[MadeRecord], Sequence[IssueRecord], list[str]]:
    """Production as yarn, issues, and what of a file is left out."""
    from costing.front_ends.record_frame import read_records
    from costing.purchasing.standard_use import Standards, made_records

    records = read_records(mill, asked, overwrite)
    booked = made_records(Standards(mill), records.made)
    refuse_all([error for _, error in booked.left_out])
    return booked.made, records.issues, [f"left out: {text}" for text in records.skipped]


def _factors(
    mill: Mill, data: Observed, names: Sequence[str], bounds: Sequence[tuple[str, str, str]], range_: str
) -> tuple[list[Factor], list[str]]:
    from costing.many.factors import factors_named, quantity_named

    ends = {}
    for name, low, high in bounds:
        quantity = quantity_named(mill, data, name, "--bounds")
        ends[name] = (asked_quantity(low, quantity, "--bounds"), asked_quantity(high, quantity, "--bounds"))
    return factors_named(mill, data, names, ends, range_)


def _picked(mill: Mill, data: Observed, factors: Sequence[Factor], names: Sequence[str]) -> list[Factor]:
    from costing.many.factors import factors_named

    if not names:
        return []
    wanted = [(factor.key, factor.step) for factor in factors_named(mill, data, names)[0]]
    found = [factor for factor in factors if (factor.key, factor.step) in wanted]
    if len(found) < len(wanted):
        raise InputError("--pick", "names a factor that is not fitted; accepted is one that is")
    return found


def _noise(mill: Mill, given: Sequence[tuple[str, str]]) -> dict[str, float]:
    return {
        mill.material(code, "--noise").code: asked_quantity(share, "relative_deviation", "--noise")
        for code, share in given
    }


def _check(out: Path | None, overwrite: bool) -> None:
    if out is not None:
        from costing.front_ends.whole_file import check_name

        check_name(out, "a calibration", (".xlsx", ".csv"), overwrite)


def _write(out: Path, found: Calibration, rows: Table, said: Sequence[str], overwrite: bool) -> None:
    from costing.many import calibration_tables as tables
    from costing.report import Column, Table

    if out.suffix.lower() == ".csv":
        from costing.front_ends.plain_table import write_csv

        write_csv(out, rows, "rows of a calibration", overwrite)
        return
    from costing.front_ends.workbook.plan_book import PlanSheet, write_plan
    from costing.front_ends.workbook.predicted_chart import predicted_chart

    remarks = Table(
        "calibration_remarks", "Remarks", "", [Column("What is to be said")], [[text] for text in said]
    )
    predicted = tables.predicted_table(found)
    sheets = [
        PlanSheet("Calibration", tables.factors_table(found)),
        PlanSheet("Rows to paste", rows),
        PlanSheet("Periods held back", tables.error_table(found)),
    ]
    for code, moved in zip(found.data.materials, found.counted, strict=True):
        if moved:
            of_it = predicted._replace(
                title=f"{code}: predicted against issued",
                rows=[row for row in predicted.rows if row[2] == code],
            )
            sheets.append(PlanSheet(f"Use {code}", of_it, draw=predicted_chart))
    sheets.append(PlanSheet("Remarks", remarks))
    write_plan(out, "calibration", sheets, overwrite)
