"""The command that says what stands in the store, what must stand apart, and what is over its ceiling."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from click.core import ParameterSource

from costing.front_ends.buyer_frame import Asked, plan_options, planned, stock_options, stock_planned
from costing.front_ends.command_frame import BOOK, JSON, one_line_errors, read
from costing.quantities import InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from costing.report import Table

SHEETS = {
    "store_products": "Products",
    "store_apart": "Keep apart",
    "store_ceilings": "Ceilings",
    "store_cautions": "Cautions",
    "store_sources": "Sources",
}
# So narrow that a page of them is read without a glass.
WIDTHS = {
    "Description": 24,
    "Proper shipping name": 24,
    "Place in the source": 26,
    "Note": 34,
    "Batches": 16,
    "Keep": 24,
    "Apart from": 30,
    "Why": 34,
    "Materials": 24,
    "Caution": 60,
    "Title": 30,
    "Authors": 24,
    "Used for": 30,
}
WIDE = 80  # letters of a line
OF_A_STOCK_PLAN = ("weeks", "delay")


@click.command()
@BOOK
@click.option(
    "--planned", "ahead", is_flag=True, help="And the most that costing purchase plans to have in store."
)
@click.option(
    "--all", "every", is_flag=True, help="And every product that the recipes of the order book use."
)
@plan_options
@stock_options
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write it too: a new .xlsx with all tables, or a .csv of the products.",
)
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of that name.")
@JSON
@one_line_errors
def store(
    book: Path | None,
    ahead: bool,
    every: bool,
    weeks: int,
    delay: int,
    out: Path | None,
    overwrite: bool,
    as_json: bool,
    **plan: Any,
) -> None:
    """Say what stands in the store, what must not stand together, and what is over its ceiling.

    Masses come from the sheet Stock, ceilings from Purchase terms: those of the mill's own licence. Number
    and class of transport are known for common products; for others ask the supplier's safety data sheet.
    The other options say how --planned and --all plan the order book.

    \b
    costing store                                 the invented demo
    costing store my_mill.xlsx --planned          and the largest stock that is planned
    costing store my_mill.xlsx --all --out store.xlsx
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.book.stock import STOCK, store_of
    from costing.front_ends import screen
    from costing.purchasing.store import held_in_store
    from costing.reference_data.store_safety import STORE_DEFERS
    from costing.report import store as tables
    from costing.report.requirement import left_out_note

    _check_plan(ahead, every)
    if out is not None:
        from costing.front_ends.whole_file import check_name

        check_name(out, "a store", (".xlsx", ".csv"), overwrite)
    mill, _ = read(book)
    kept, asked, found = store_of(mill), None, None
    if ahead:
        kept, asked, found = stock_planned(mill, Asked(**plan), weeks, delay, overwrite)
    elif every:
        asked = planned(mill, Asked(**plan), overwrite)
    used = {need.material for need in asked.found.needs} if asked and every else set()
    held = held_in_store(mill, kept, found, used)
    if not held:
        raise InputError(STOCK, "holds no product; accepted is a row or more, or --planned or --all")
    made = tables.store_tables(mill, held, left_out_note(asked.found, asked.rows_skipped) if asked else "")
    if as_json:
        click.echo(screen.to_json(made))
    else:
        _show(made, STORE_DEFERS)
    if out is not None:
        _write(out, made, STORE_DEFERS, overwrite)
        click.echo(f"written to {out}", err=True)


def _show(made: Sequence[Table], defers: str) -> None:
    """What fits a screen: cautions as text, their table being as wide as a file."""
    from costing.front_ends import screen
    from costing.report import store as tables

    for table in made:
        if table.key in tables.ON_SCREEN:
            screen.show(tables.in_short(table))
        elif table.key == "store_cautions":
            click.echo(f"{table.title}\n\n{textwrap.fill(table.note, WIDE)}")
            for line in tables.caution_lines(table):
                click.echo(textwrap.fill(line, WIDE))
            click.echo("")
    click.echo(textwrap.fill(defers, WIDE))


def _check_plan(ahead: bool, every: bool) -> None:
    """Refuse an option of a plan that is not made."""
    context = click.get_current_context()
    for option in context.command.params:
        name = option.name or ""
        if context.get_parameter_source(name) is not ParameterSource.COMMANDLINE:
            continue
        if name in OF_A_STOCK_PLAN and not ahead:
            raise InputError(option.opts[0], "goes with --planned")
        if name in Asked._fields and not (ahead or every):
            raise InputError(option.opts[0], "goes with --planned or --all")


def _write(out: Path, made: Sequence[Table], defers: str, overwrite: bool) -> None:
    if out.suffix.lower() == ".csv":
        from costing.front_ends.plain_table import write_csv

        write_csv(out, made[0], "list of the store", overwrite)
        return
    from costing.front_ends.workbook.plan_book import PlanSheet, write_plan
    from costing.front_ends.workbook.results_sheets import Form

    sheets = [PlanSheet(SHEETS[table.key], table, Form(alert=defers, widths=WIDTHS)) for table in made]
    write_plan(out, "store", sheets, overwrite)
