"""The command that says what the order book takes from the store, and when."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.buyer_frame import Asked, Planned, plan_options, planned
from costing.front_ends.command_frame import BOOK, JSON, one_line_errors, read

if TYPE_CHECKING:
    from costing.settings.mill import Mill


@click.command()
@BOOK
@plan_options
@click.option(
    "--by",
    "period",
    type=click.Choice(["day", "week", "month"]),
    default="week",
    show_default=True,
    help="Length of a period.",
)
@click.option("--lots", "with_lots", is_flag=True, help="Show the dye lots too.")
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write it too: a new .xlsx with dye lots and chart, or a .csv of the requirement.",
)
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of that name.")
@JSON
@one_line_errors
def need(
    book: Path | None,
    period: str,
    with_lots: bool,
    out: Path | None,
    overwrite: bool,
    as_json: bool,
    **plan: Any,
) -> None:
    """Say what the order book takes of each product, by day, week or month.

    Orders of one shade that are due close together are one dye lot: they share the first fill and the dump.
    Each lot is run through the same ledger as a quote. The orders stand on the sheet Order book, or in a file
    of the mill's own with --orders.

    \b
    costing need                                       the invented demo, week by week
    costing need my_mill.xlsx --by month --lots
    costing need my_mill.xlsx --orders orders.csv --columns "style=Artikel, length=Meter [m], due=Termin"
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.report import requirement as tables

    if out is not None:
        _check(out, overwrite)
    mill, _ = read(book)
    found = planned(mill, Asked(**plan), overwrite)
    note = tables.left_out_note(found.found, found.rows_skipped)
    shown = [tables.requirement_table(mill, found.found, period, note)]
    if with_lots:
        shown.append(tables.lots_table(found.found, found.planning, note))
    shown.append(tables.materials_table(mill, found.found, note))
    if as_json:
        click.echo(screen.to_json(shown))
    else:
        for table in shown:
            screen.show(table)
        _say(found)
    if out is not None:
        _write(out, mill, found, period, note, overwrite)
        click.echo(f"written to {out}", err=True)


def _say(found: Planned) -> None:
    from costing.front_ends import screen
    from costing.report.requirement import lots_note

    if late := lots_note(found.found, found.planning, found.day):
        click.echo(late)
    for item in found.skipped:
        click.echo(f"left out: {item.text()}", err=True)
    for refused in found.found.left_out:
        told = f"left out: {refused.line.where or refused.line.code}: {refused.error}"
        click.echo(screen.printable(told), err=True)


def _check(out: Path, overwrite: bool) -> None:
    from costing.front_ends.whole_file import check_name

    check_name(out, "a requirement", (".xlsx", ".csv"), overwrite)


def _write(out: Path, mill: Mill, found: Planned, period: str, note: str, overwrite: bool) -> None:
    from costing.report import requirement as tables

    table = tables.requirement_table(mill, found.found, period, note)
    if out.suffix.lower() == ".csv":
        from costing.front_ends.plain_table import write_csv

        write_csv(out, table, "requirement", overwrite)
        return
    from costing.front_ends.workbook.plan_book import PlanSheet, write_plan
    from costing.front_ends.workbook.plan_charts import groups_chart

    sheets = [
        PlanSheet("Requirement", table),
        PlanSheet("By group", tables.groups_table(mill, found.found, period, note), draw=groups_chart),
        PlanSheet("All orders", tables.materials_table(mill, found.found, note)),
        PlanSheet("Dye lots", tables.lots_table(found.found, found.planning, note)),
    ]
    write_plan(out, "requirement of the order book", sheets, overwrite)
