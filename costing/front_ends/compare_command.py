"""The command that puts enquiries, or recipes for one order, side by side."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    PICTURE,
    asked_quantity,
    check_picture,
    named_once,
    one_line_errors,
    read,
    results_of,
    say_drawn,
    worked_out,
)
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.settings.mill import Enquiry, Mill

SIDE_BY_SIDE = 4  # enquiries whose figures a screen shows beside each other
DRAWS = 2000  # of each, to tell whether a difference is more than what is not sure


@click.command()
@BOOK
@click.option(
    "--enquiry", "-e", "codes", multiple=True, metavar="CODE", help="Compare this enquiry; repeat for others."
)
@click.option("--like", metavar="CODE", help="Make the enquiries from this one: lot, length, margin.")
@click.option("--style", "styles", multiple=True, metavar="CODE", help="Style; may be repeated.")
@click.option("--recipe", "recipes", multiple=True, metavar="CODE", help="Recipe; may be repeated.")
@click.option("--range", "ranges", multiple=True, metavar="CODE", help="Range; may be repeated.")
@click.option(
    "--length",
    "lengths",
    multiple=True,
    metavar="LENGTH",
    help="Length ordered, as 40000, 40000m or 30000yd; may be repeated.",
)
@click.option(
    "--out", "-o", type=click.Path(path_type=Path), help="Write a workbook with a sheet and a chart."
)
@PICTURE
@click.option("--overwrite", is_flag=True, help="Replace an earlier comparison, or picture, of that name.")
@ON
@JSON
@one_line_errors
def compare(
    book: Path | None,
    codes: tuple[str, ...],
    like: str | None,
    styles: tuple[str, ...],
    recipes: tuple[str, ...],
    ranges: tuple[str, ...],
    lengths: tuple[str, ...],
    out: Path | None,
    picture: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Put enquiries of a BOOK side by side: cost by group, price, water, steam, dye, salt, COD.

    The first is what the others are compared with. Enquiries of the book are named with -e (all, when none
    is), or made on the fly: the same order with other recipes, ranges, styles or lengths.

    \b
    costing compare -e Q-02 -e B-01 -e T-01
    costing compare --like Q-02 --recipe DARK-BOTTOM       what a sulfur bottom does to the price of Q-02
    costing compare --like Q-02 --length 8000 --length 40000   one cloth, two lengths
    costing compare --style D-1200 --length 40000 --recipe DARK-POWDER --recipe DARK-BOTTOM --range ROPE-A
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing import report
    from costing.front_ends import screen
    from costing.report.compare import against_the_first, in_short

    if as_json and out is not None:
        raise InputError("--out", "goes with the workbook; accepted is --json without it")
    check_picture(picture, overwrite)
    made = any((like, styles, recipes, ranges, lengths))
    if codes and made:
        raise InputError(
            "--enquiry", "names an enquiry of the book; to make others from it, accepted is --like instead"
        )
    mill, source = read(book, on)
    if made:
        model, enquiries = _made(mill, like, styles, recipes, ranges, lengths)
        results = worked_out(mill, source, enquiries)
    else:
        results = results_of(mill, source, named_once(mill, codes))
    table = report.TABLES["compare"](mill, results)
    if out is not None:
        from costing.front_ends.workbook.results import write_comparison

        if out.resolve() == source.resolve():
            raise InputError(str(out), "is the book itself; accepted is another name for the comparison")
        write_comparison(out, mill, results, overwrite=overwrite)
    if picture is not None:
        from costing.cost.quote import FINISHED_METRE
        from costing.front_ends.pictures.cost_bars import compare_picture

        prices = [item.quote.price_on(FINISHED_METRE) for item in results]
        compare_picture(picture, report.TABLES["cost_by_group"](mill, results), prices, overwrite)
    if as_json:
        click.echo(screen.to_json([table]))
        return
    if len(results) <= SIDE_BY_SIDE:
        screen.show(in_short(table))
    screen.show(against_the_first(table))
    if 1 < len(results) <= SIDE_BY_SIDE:
        _show_difference(mill, [item.enquiry for item in results])
    for item in results:
        for note in item.remarks:
            if note.kind == "warning":
                click.echo(f"warning, {item.enquiry.code}, {note.where}: {note.text}")
    if made:
        click.echo(f"lot, margin and what is not named are those of {model.code}")
    if out is not None:
        click.echo(f"all figures and a chart are in {out}")
    say_drawn(picture)


def _show_difference(mill: Mill, enquiries: list[Enquiry]) -> None:
    """Whether the differences are more than what is not sure, where that can be told."""
    from costing.front_ends import screen
    from costing.many import tables

    try:
        found = tables.difference_table(mill, [tables.ranged(mill, item, DRAWS) for item in enquiries])
    except InputError as error:  # a range that no draw can run takes away no comparison
        click.echo(f"no range of the difference: {error}")
    else:
        screen.show(found)


def _made(
    mill: Mill,
    like: str | None,
    styles: tuple[str, ...],
    recipes: tuple[str, ...],
    ranges: tuple[str, ...],
    lengths: tuple[str, ...],
) -> tuple[Enquiry, list[Enquiry]]:
    """The enquiry that is named, or else the one that is most like what is asked, and those made from it."""
    from costing.settings.variants import most_like, variants

    metres = [asked_quantity(length, "order_length", "--length") for length in lengths]
    model = mill.enquiry(like, "--like") if like else most_like(mill, styles, recipes, ranges, metres)
    return model, variants(mill, model, styles, recipes, ranges, metres)
