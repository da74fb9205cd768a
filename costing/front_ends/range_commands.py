"""The commands that ask how sure a cost is, what a lot costs, and what would meet a target."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    PICTURE,
    REPLACE_PICTURE,
    asked_quantity,
    check_picture,
    named_once,
    one_line_errors,
    read,
    say_drawn,
)
from costing.quantities import QUANTITIES, InputError

if TYPE_CHECKING:
    from costing.many.use_band import RangedUse
    from costing.report import Table

ENQUIRIES = click.option(
    "--enquiry", "-e", "codes", multiple=True, required=True, metavar="CODE", help="Enquiry; may be repeated."
)
ENQUIRY = click.option("--enquiry", "-e", "code", required=True, metavar="CODE", help="Enquiry of the book.")


@click.command()
@BOOK
@ENQUIRIES
@click.option("--draws", type=click.IntRange(100, 1_000_000), default=10_000, show_default=True)
@click.option(
    "--seed", type=click.IntRange(0), default=1, show_default=True, help="The same seed gives the same draws."
)
@click.option("--of", "used", metavar="NAME", help="The use of a product, water or steam, not the cost.")
@PICTURE
@REPLACE_PICTURE
@ON
@JSON
@one_line_errors
def band(
    book: Path | None,
    codes: tuple[str, ...],
    used: str | None,
    draws: int,
    seed: int,
    picture: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Tell how sure the cost of enquiries is, what drives it, and whether their difference is real.

    Draws everything that has a range many times: defaults that the book leaves empty, and the rows of the
    sheet How sure. The first enquiry is what the others are compared with.

    \b
    costing band -e Q-01
    costing band -e Q-02 -e B-01           is the sulfur bottom dearer, or is that not sure?
    costing band -e Q-02 --picture drivers.svg
    costing band -e Q-02 --of HYDRO-88     how sure is what a kilogram of yarn takes of it?
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.cost.spread_remarks import spread_remarks
    from costing.front_ends import screen
    from costing.many import tables

    check_picture(picture, overwrite)
    mill, _ = read(book, on)
    asked = [mill.enquiries[code] for code in named_once(mill, codes)]
    found: dict[str, list[Table]] = {}
    results: list[tables.Ranged] = []
    uses: list[RangedUse] = []
    if used is not None:
        from costing.many.use_band import ranged_use, use_tables

        uses = [ranged_use(mill, enquiry, used, draws, seed) for enquiry in asked]
        found = {use.enquiry.code: use_tables(use) for use in uses}
    else:
        results = [tables.ranged(mill, enquiry, draws, seed) for enquiry in asked]
        found["enquiries"] = [tables.band_table(mill, results)]
        if len(results) > 1:
            found["enquiries"].append(tables.difference_table(mill, results))
        for item in results:
            found[item.enquiry.code] = [tables.driver_table(mill, item), tables.group_band_table(mill, item)]
    if picture is not None:
        from costing.front_ends.pictures.driver_bars import cost_panel, driver_picture, use_panel

        panels = [cost_panel(mill, item) for item in results] + [use_panel(use) for use in uses]
        driver_picture(picture, panels, overwrite)
    for enquiry in asked:
        for note in spread_remarks(mill, enquiry):
            click.echo(f"{note.kind}, {enquiry.code}, {note.where}: {note.text}", err=True)
    if as_json:
        click.echo(screen.documents_to_json(found))
        return
    for table in (table for group in found.values() for table in group):
        screen.show(table)
    say_drawn(picture)


@click.command()
@BOOK
@ENQUIRY
@click.option("--from", "shortest", metavar="LENGTH", help="Shortest order, as 500 or 500m.")
@click.option("--to", "longest", metavar="LENGTH", help="Longest order.")
@click.option(
    "--within",
    default="5 %",
    show_default=True,
    metavar="SHARE",
    help="By how much an economic lot may be dearer than a full set.",
)
@click.option("--with", "others", metavar="LENGTH", help="Other orders of the same shade in the same lot.")
@PICTURE
@REPLACE_PICTURE
@ON
@JSON
@one_line_errors
def lots(
    book: Path | None,
    code: str,
    shortest: str | None,
    longest: str | None,
    within: str,
    others: str | None,
    picture: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Tell what a metre costs against the length of the order, and the shortest lot that is worth it.

    \b
    costing lots -e Q-01
    costing lots -e Q-01 --from 1000 --to 60000 --within "3 %"
    costing lots -e Q-01 --with 12000       what sharing its sets with 12,000 m of the same shade saves
    costing lots -e Q-01 --picture lots.png
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.many import tables
    from costing.many.lot_curve import lot_curve, sharing

    check_picture(picture, overwrite)
    mill, _ = read(book, on)
    enquiry = mill.enquiry(code, "--enquiry")
    low, high = (
        None if text is None else asked_quantity(text, "order_length", option)
        for text, option in ((shortest, "--from"), (longest, "--to"))
    )
    tolerance = asked_quantity(within, "lot_tolerance", "--within")
    curve = lot_curve(mill, enquiry, low, high, tolerance)
    found = [tables.lot_table(mill, enquiry, curve)]
    if others is not None:
        length = asked_quantity(others, "order_length", "--with")
        found.append(tables.sharing_table(mill, enquiry, sharing(mill, enquiry, length)))
    if picture is not None:
        from costing.front_ends.pictures.lot_lines import lot_picture

        lot_picture(picture, mill, enquiry, curve, overwrite)
    if as_json:
        click.echo(screen.to_json(found))
        return
    for table in found:
        screen.show(table)
    say_drawn(picture)


@click.command()
@BOOK
@ENQUIRY
@click.option("--change", required=True, metavar="NUMBER", help="What may change, as 'indigo dyeing: dips'.")
@click.option("--cost", metavar="MONEY", help="Cost of a metre to be met.")
@click.option("--price", metavar="MONEY", help="Price of a metre to be met, in place of the cost.")
@click.option("--from", "low", metavar="VALUE", help="Lower bound, with its unit; half of what the book has.")
@click.option("--to", "high", metavar="VALUE", help="Upper bound; twice of what the book has.")
@ON
@JSON
@one_line_errors
def target(
    book: Path | None,
    code: str,
    change: str,
    cost: str | None,
    price: str | None,
    low: str | None,
    high: str | None,
    on: str | None,
    as_json: bool,
) -> None:
    """Find the value of one number that brings the cost or the price of a metre to a target.

    \b
    costing target -e Q-01 --cost 2.25 --change "order length" --to 30000
    costing target -e Q-01 --price 2.75 --change "indigo dyeing: indigo on yarn" --from 1% --to 3%
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.cost.quote import basis_of
    from costing.front_ends import screen
    from costing.many import tables
    from costing.many.quotes import COST, PRICE, ordered
    from costing.many.target import place_named, search

    if (cost is None) == (price is None):
        raise InputError("--cost", "and --price: accepted is one of the two")
    mill, _ = read(book, on)
    enquiry = mill.enquiry(code, "--enquiry")
    place = place_named(mill, enquiry, change)
    name, text = (COST, cost) if cost is not None else (PRICE, price)
    assert text is not None
    money = asked_quantity(text, "cost_per_metre", f"--{name}")
    bounds = (
        None if end is None else asked_quantity(end, place.name, option)
        for end, option in ((low, "--from"), (high, "--to"))
    )
    basis = basis_of(enquiry)
    answer = search(mill, enquiry, place, money, ordered(basis), name, *bounds)
    table = tables.target_table(mill, enquiry, answer, money, f"{name} of a {basis}")
    if as_json:
        click.echo(screen.to_json([table]))
        return
    screen.show(table)
    if QUANTITIES[place.name].whole and answer.values:
        click.echo("a whole number meets a target seldom: the two nearest are told")
