"""The command that prints the card for the shift."""

from __future__ import annotations

from pathlib import Path

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    asked_quantity,
    named_once,
    one_line_errors,
    read,
    results_of,
)
from costing.quantities import InputError


@click.command()
@BOOK
@click.option(
    "--enquiry",
    "-e",
    "codes",
    multiple=True,
    metavar="CODE",
    help="Enquiry; the first of the book when left out. With --out it may be repeated.",
)
@click.option(
    "--stop", default="2h", show_default=True, metavar="TIME", help="Length of a stop, as 2h or 40min."
)
@click.option("--vat", default="1000L", show_default=True, metavar="VOLUME", help="Liquor made up at a time.")
@click.option("--kettle", default="1000L", show_default=True, metavar="VOLUME", help="Size cooked at a time.")
@click.option(
    "--out", "-o", type=click.Path(path_type=Path), help="Write a workbook: one A4 page for each card."
)
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of the same cards.")
@ON
@JSON
@one_line_errors
def card(
    book: Path | None,
    codes: tuple[str, ...],
    stop: str,
    vat: str,
    kettle: str,
    out: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Print the card for the shift: what to weigh, set, fill and add for one recipe on one range.

    Stock vat and dosing liquors, pumps and valves at the running speed, first fill of each box, what a stop
    takes, the size kettle, temperatures, use in an hour, and the cautions of what is handled. The numbers
    are those of the quote. They are an estimate: test the liquors. The supplier's safety data sheet comes
    first.

    \b
    costing card -e Q-02 --stop 2h --vat 1500L
    costing card -e Q-02 -e B-01 --out cards.xlsx
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import screen
    from costing.report.range_card import Ask, range_card

    if as_json and out is not None:
        raise InputError("--out", "goes with the workbook; accepted is --json without it")
    ask = Ask(
        asked_quantity(stop, "stoppage_time", "--stop", "the stop"),
        asked_quantity(vat, "tank_volume", "--vat", "the vat"),
        asked_quantity(kettle, "tank_volume", "--kettle", "the kettle"),
    )
    mill, source = read(book, on)
    chosen = named_once(mill, codes) or list(mill.enquiries)[:1]
    cards = {item.enquiry.code: range_card(mill, item, ask) for item in results_of(mill, source, chosen)}
    if as_json:
        click.echo(screen.documents_to_json(cards))
        return
    if out is None:
        for tables in cards.values():
            for table in tables:
                screen.show(table)
        return
    from costing.front_ends.workbook.card_sheet import write_cards

    if out.resolve() == source.resolve():
        raise InputError(str(out), "is the book itself; accepted is another name for the cards")
    write_cards(out, cards, overwrite=overwrite)
    click.echo(f"{len(cards)} card(s), one page each, in {out}; the supplier's safety data sheet comes first")
