"""The command that says why two kept quotes differ."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import JSON, one_line_errors, read, results_of
from costing.front_ends.register_frame import FILE, OUT, OVERWRITE, asked_revision, register_of, show_tables
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.cost.changes import Change
    from costing.front_ends.quote_register.record import Kept
    from costing.report import Table
    from costing.report.difference import Side


@click.command()
@click.argument("code", metavar="QUOTE")
@click.argument("other", required=False, metavar="[OTHER]")
@click.option("--from", "first", type=int, metavar="N", help="Revision before; the one before the last.")
@click.option("--to", "second", type=int, metavar="N", help="Revision after; the last.")
@click.option(
    "--now",
    type=click.Path(path_type=Path, readable=False),
    metavar="BOOK",
    help="In place of a revision after: the enquiry as this book has it now.",
)
@click.option(
    "--step", metavar="STEP", help="Round to this step of money, as 0.0001; default: the mill's own."
)
@FILE
@OUT
@OVERWRITE
@JSON
@one_line_errors
def explain(
    code: str,
    other: str | None,
    first: int | None,
    second: int | None,
    now: Path | None,
    step: str | None,
    named: Path | None,
    out: Path | None,
    overwrite: bool,
    as_json: bool,
) -> None:
    """Say why a QUOTE is not what it was, or not what OTHER is: effects that add up to the difference.

    Cloth, lot, recipe, usage and price effect, and that of another version of the program; each with the
    inputs that changed and the lines of cost that move.

    \b
    costing register explain Q-01                      the last revision and the one before
    costing register explain Q-01 --from 1 --to 3
    costing register explain Q-01 Q-05                 the last of two quotes
    costing register explain Q-01 --now my_mill.xlsx   what it would be today, and why
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store

    if as_json and out is not None:
        raise InputError("--out", "goes with the workbook; accepted is --json without it")
    if now is not None and second is not None:
        raise InputError("--to", "names a revision of the register; accepted with --now is none")
    path = register_of(named)
    first, second = asked_revision(first, "--from"), asked_revision(second, "--to")
    alone = other is None and now is None
    before = store.opened(path, code, first if first is not None or not alone else -1)
    after = _now(now, other or before.head.code) if now else store.opened(path, other or code, second)
    tables = _reasons(before, after, step, brief=not as_json and out is None)
    if out is not None:
        from costing.front_ends.quote_register.export import write_reasons

        write_reasons(out, tables, overwrite)
        tables = _reasons(before, after, step, brief=True)
    show_tables(tables, as_json)
    if out is not None:
        click.echo(f"all inputs and lines are in {out}")


def _now(book: Path, code: str) -> Kept:
    """The enquiry of a book as it would be saved now."""
    from costing.front_ends.quote_register.record import kept

    mill, source = read(book)
    (result,) = results_of(mill, source, (code,))
    return kept(mill, result)


def _reasons(before: Kept, after: Kept, step: str | None, brief: bool) -> list[Table]:
    """The tables of why two quotes differ."""
    from decimal import Decimal

    from costing.cost.difference import moves_between, with_program
    from costing.cost.money import common_step
    from costing.quantities import check
    from costing.report.difference import difference_tables, quote_alone
    from costing.settings.snapshot import restored

    if step is None:
        size = common_step([before.head.rounding, after.head.rounding])
    else:
        try:
            size = Decimal(step)
            check("money_rounding", float(size), "--step")
        except (ArithmeticError, InputError):
            raise InputError("--step", f"is {step!r}; accepted is a step of money such as 0.001") from None
    sides = _side(before), _side(after)
    for side in sides:
        try:
            quote_alone(*restored(side.document))
        except InputError as error:
            said = f"the program of today does not work it out, so nothing can be told apart: {error}"
            raise InputError(side.name, said) from error
    first, moves = moves_between(before.document, after.document, quote_alone)
    saved = sides[0].quote, sides[1].quote
    path = with_program(first, moves, saved, _program(before, after))
    return difference_tables(*sides, path, size, brief)


def _side(item: Kept) -> Side:
    from costing.front_ends.quote_register.record import quote_of
    from costing.report.difference import Side

    name = item.name if item.head.revision else f"{item.head.code} now"
    return Side(name, item.document, quote_of(item)[0])


def _program(before: Kept, after: Kept) -> list[Change]:
    """What is other about the program than when a quote was saved."""
    import costing
    from costing.cost.changes import PROGRAM, Change
    from costing.reference_data import fingerprint

    found = []
    for item in (before, after):
        for name, saved, today in (
            ("version", item.head.version, costing.__version__),
            ("reference tables", item.head.tables, fingerprint()),
        ):
            if saved != today:
                found.append(Change(PROGRAM, _side(item).name, name, "", saved, today))
    return found
