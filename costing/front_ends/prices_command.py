"""The command that shows the price list of a day, and which quotes another day takes the margin of."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

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

if TYPE_CHECKING:
    from costing.report import Table
    from costing.report.refused import Refused
    from costing.settings.mill import Mill


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
    "--floor",
    metavar="MARGIN",
    help="With --against: mark quotes below this margin, as 8%. When left out, each quote below its own.",
)
@click.option("--enquiry", "-e", "codes", multiple=True, metavar="CODE", help="Only this; repeat for others.")
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
    Where a larger purchase would be cheaper, it says what the next price break saves per kg and per metre,
    and how many orders it lasts for; the break that counts is that of the usual purchase (sheet Materials).

    \b
    costing prices
    costing prices -e Q-01                 only what this takes; what the next break saves on it
    costing prices --on 2025-12-20
    costing prices --against 2026-01-15                which quotes lose their margin in January
    costing prices --against 2026-01-15 --floor 9%     which of them are left with less than 9 %
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.report import prices as lists

    if within < 0:
        raise InputError("--within", f"is {within} days; accepted is 0 or more")
    if against is None and floor is not None:
        raise InputError("--floor", "goes with --against")
    mill, source = read(book, on)
    if against is None:
        tables, refused = _list_of_day(mill, source, codes, within, as_json)
        _show(tables, refused if codes else [], as_json)
        return
    from costing.cost.offers import mill_on

    lowest = None if floor is None else asked_quantity(floor, "margin", "--floor")
    later = mill_on(mill, asked_day(against, "--against"))
    here, refused = quoted(mill, source, codes)
    then, refused_then = quoted(later, source, codes)
    known = {item.code for item in refused}
    refused += [item for item in refused_then if item.code not in known]
    tables = [
        lists.price_changes(mill, later, lists.priced([*here, *then])),
        lists.margins(mill, later, here, then, refused, lowest),
    ]
    _show(tables, refused, as_json)


def _list_of_day(
    mill: Mill, source: Path, codes: Sequence[str], within: int, as_json: bool
) -> tuple[list[Table], list[Refused]]:
    """The price list, and where a price break lies ahead what it saves on the enquiries."""
    from costing.report import prices as lists
    from costing.report.price_breaks import breaks_ahead, price_breaks

    ahead = breaks_ahead(mill) if mill.offers else {}
    if not (codes or (ahead and (mill.enquiries or mill.refused))):
        return [lists.prices(mill, within=within)], []
    results, refused = quoted(mill, source, codes)
    wanted = lists.priced(results) if codes else None
    tables = [lists.prices(mill, wanted, within)]
    breaks = price_breaks(mill, results, wanted, most_only=not (codes or as_json))
    return ([*tables, breaks] if breaks.rows or as_json else tables), refused


def _show(tables: Sequence[Table], refused: Sequence[Refused], as_json: bool) -> None:
    from costing.front_ends import screen
    from costing.report import prices as lists

    if as_json:
        click.echo(screen.to_json(tables))
    else:
        for table in tables:
            screen.show(lists.in_short(table))
    for item in refused:
        tell(item.error, f", {item.code}")
    if refused:
        sys.exit(SOME_REFUSED)
