"""The command that says what to order, what runs out, what expires unused, and the money by week."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.buyer_frame import Asked, plan_options, stock_options, stock_planned
from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    PICTURE,
    check_picture,
    one_line_errors,
    read,
    say_drawn,
)
from costing.quantities import InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from costing.purchasing.material_plan import MaterialPlan
    from costing.purchasing.plan import PurchasePlan
    from costing.report import Table
    from costing.settings.mill import Mill

SHEETS = {
    "order_now": "To order now",
    "order_later": "To order later",
    "open_orders": "Open orders",
    "runs_out": "Runs out",
    "expires": "Expires unused",
    "conflicts": "Conflicts",
    "breaks": "Price breaks",
    "cash": "Money by week",
    "stock": "Stock and need",
    "terms_taken": "Typical values",
}
ALWAYS_SHOWN = ("order_now", "order_later", "open_orders", "runs_out", "expires", "cash", "stock")


@click.command()
@BOOK
@plan_options
@stock_options
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Write it too: a new .xlsx with stock by day and charts, or a .csv of the orders.",
)
@PICTURE
@click.option("--of", "codes", multiple=True, metavar="CODE", help="With --picture: these materials.")
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of that name.")
@JSON
@one_line_errors
def purchase(
    book: Path | None,
    weeks: int,
    delay: int,
    out: Path | None,
    picture: Path | None,
    codes: tuple[str, ...],
    overwrite: bool,
    as_json: bool,
    **plan: Any,
) -> None:
    """Say what to order this week, from whom and for when, what runs out and what expires unused.

    Needs come from the order book, as costing need shows them; stock, orders under way and terms from the
    sheets Stock, Open orders and Purchase terms; prices, price breaks and rates from Offers, Materials and
    Mill costs, as they hold on the day of each order. Orders are whole packs and break no storage ceiling.

    \b
    costing purchase                              the invented demo
    costing purchase my_mill.xlsx --out orders.xlsx
    costing purchase my_mill.xlsx --late 7        the strike lasts another week: what runs out first
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.purchasing.store import held_in_store
    from costing.report import purchase as tables
    from costing.report.requirement import left_out_note, lots_note
    from costing.report.store import store_line

    check_picture(picture, overwrite)
    if codes and picture is None:
        raise InputError("--of", "goes with --picture")
    if out is not None:
        _check(out, overwrite)
    mill, _ = read(book)
    store, asked, found = stock_planned(mill, Asked(**plan), weeks, delay, overwrite)
    note = left_out_note(asked.found, asked.rows_skipped) + tables.empty_store_note(store)
    made = tables.all_tables(mill, found, store.assumptions, note)
    chosen = _chosen(found, codes) if picture is not None else []
    if as_json:
        click.echo(screen.to_json([*made, tables.projection_table(found, note)]))
    else:
        _show(made)
        _say(found, lots_note(asked.found, asked.planning, asked.day), bool(store.assumptions))
        if line := store_line(held_in_store(mill, store, found)):
            click.echo(line)
    if out is not None:
        _write(out, mill, found, made, note, overwrite)
        click.echo(f"written to {out}", err=True)
    if picture is not None:
        from costing.front_ends.pictures.stock_lines import stock_picture

        stock_picture(picture, chosen, overwrite)
        say_drawn(None if as_json else picture)


def _show(made: Sequence[Table]) -> None:
    """What fits a screen: the orders by their main columns, tables that hold nothing left out."""
    from costing.front_ends import screen
    from costing.report.purchase import in_short, remarks_of

    for table in made:
        if table.key == "terms_taken" or not (table.rows or table.key in ALWAYS_SHOWN):
            continue
        if table.rows:
            screen.show(in_short(table))
            for line in remarks_of(table):
                click.echo(line)
        else:
            click.echo(f"{table.title}: {table.note}\n")


def _say(found: PurchasePlan, late: str, taken: bool) -> None:
    if late:
        click.echo(late)
    for item in found.without_terms:
        click.echo(f"no purchase terms, so nothing is ordered: {item.material}")
    if taken:
        click.echo("typical values were taken for empty terms: costing source purchase")


def _chosen(found: PurchasePlan, codes: Sequence[str]) -> list[MaterialPlan]:
    """Materials of a picture: those asked for, or the first ones that want looking at."""
    from costing.front_ends.pictures.frame import MOST_PANELS
    from costing.quantities import listed, meant
    from costing.report.purchase import drawn

    known = {item.material: item for item in drawn(found)}
    chosen = []
    for code in codes:
        name = meant(code, known)
        if name is None:
            raise InputError("--of", f"{code!r} is in no plan; accepted is one of: {listed(known, code)}")
        chosen.append(known[name])
    if len(chosen) > MOST_PANELS:
        raise InputError("--of", f"names {len(chosen)}; accepted are {MOST_PANELS} at most on a picture")
    return chosen or list(known.values())[:MOST_PANELS]


def _check(out: Path, overwrite: bool) -> None:
    from costing.front_ends.whole_file import check_name

    check_name(out, "orders", (".xlsx", ".csv"), overwrite)


def _write(
    out: Path, mill: Mill, found: PurchasePlan, made: Sequence[Table], note: str, overwrite: bool
) -> None:
    from costing.report import purchase as tables

    if out.suffix.lower() == ".csv":
        from costing.front_ends.plain_table import write_csv

        orders = tables.orders_table(mill, found, found.proposals, "orders", "Orders", note)
        write_csv(out, orders, "orders", overwrite)
        return
    from costing.front_ends.workbook.plan_book import PlanSheet, write_plan
    from costing.front_ends.workbook.results_sheets import Form
    from costing.front_ends.workbook.stock_chart import PROJECTION, cash_chart, stock_charts

    form = Form(widths={"Remark": 54, "What": 60, "Worth it": 44})
    upright = Form(upright=True)
    sheets = [
        PlanSheet(SHEETS[table.key], table, upright, cash_chart)
        if table.key == "cash"
        else PlanSheet(SHEETS[table.key], table, form)
        for table in made
    ]
    sheets.append(PlanSheet(PROJECTION, tables.projection_table(found, note), upright))
    write_plan(out, "purchase plan", sheets, overwrite, charts=stock_charts)
