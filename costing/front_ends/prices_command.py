"""The command that shows the price list of a day, and which quotes another day takes the margin of."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    SOME_REFUSED,
    asked_day,
    asked_quantity,
    one_line_errors,
    quoted,
    read,
    tell,
)
from costing.quantities import InputError


@click.command()
@BOOK
@ON
@click.option(
    "--within",
    default=30,
    show_default=True,
    metavar="DAYS",
    help="Say of an offer that ends within these days what comes then.",
)
@click.option(
    "--against",
    metavar="YYYY-MM-DD",
    help="What is left of the margin of each quote with the prices of this day, at the price it has now.",
)
@click.option(
    "--floor", metavar="MARGIN", help="With --against: mark quotes below this margin, as 8%. 0 when left out."
)
@click.option(
    "--enquiry", "-e", "codes", multiple=True, metavar="CODE", help="With --against: only this; repeat."
)
@JSON
@one_line_errors
def prices(
    book: Path | None,
    on: str | None,
    within: int,
    against: str | None,
    floor: str | None,
    codes: tuple[str, ...],
    as_json: bool,
) -> None:
    """Show the price list of a day: each material with all its offers, and which one is bought from.

    Prices are at the gate, with freight, in the mill's money; offers of unlike strength compare by their
    active part. Offers stand on the sheet Offers; without --on the day is that of the sheet Mill costs.

    \b
    costing prices
    costing prices --on 2025-12-20
    costing prices --against 2026-01-15 --floor 9%     which quotes lose their margin in January
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.report import prices as lists

    if within < 0:
        raise InputError("--within", f"is {within} days; accepted is 0 or more")
    if against is None and (floor is not None or codes):
        raise InputError("--floor" if floor is not None else "--enquiry", "goes with --against")
    mill, source = read(book, on)
    if against is None:
        table = lists.prices(mill, within=within)
        click.echo(screen.to_json([table])) if as_json else screen.show(lists.in_short(table))
        return
    from costing.cost.offers import mill_on

    lowest = asked_quantity(floor, "margin", "--floor") if floor is not None else 0.0
    later = mill_on(mill, asked_day(against, "--against"))
    here, refused = quoted(mill, source, codes)
    then, refused_then = quoted(later, source, codes)
    known = {item.code for item in refused}
    refused += [item for item in refused_then if item.code not in known]
    tables = [
        lists.price_changes(mill, later, lists.priced([*here, *then])),
        lists.margins(mill, later, here, then, refused, lowest),
    ]
    if as_json:
        click.echo(screen.to_json(tables))
    else:
        for table in tables:
            screen.show(lists.in_short(table))
    for item in refused:
        tell(item.error, f", {item.code}")
    if refused:
        sys.exit(SOME_REFUSED)
