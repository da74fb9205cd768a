"""The commands of the register: save quotes, find them again, write them to a file."""

from __future__ import annotations

import datetime
import sys
from collections.abc import Callable
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    SOME_REFUSED,
    one_line_errors,
    quoted,
    read,
    tell,
)
from costing.front_ends.explain_command import explain
from costing.front_ends.register_frame import (
    ENDING,
    FILE,
    OUT,
    OVERWRITE,
    asked_revision,
    register_of,
    show_tables,
)
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.front_ends.quote_register.record import Kept
    from costing.front_ends.quote_register.store import Wanted


@click.group(name="register")
def register() -> None:
    """Keep quotes: save, list, search, show, explain and export them.

    The register is one file beside the book. To it is only added: each save is the next revision of its
    quote. It keeps all that a quote rests on, so that it can be worked out anew years later, and may be used
    by several people at once. It holds recipes and prices: keep it as you keep the book.

    \b
    costing register save my_mill.xlsx -e Q-01 --customer "customer 12" --note "first offer"
    costing register list
    costing register explain Q-01            why its last revision is not the one before
    """  # noqa: D301  (the mark keeps the lines apart in the help)


register.add_command(explain)


@register.command()
@BOOK
@click.option(
    "--enquiry", "-e", "codes", multiple=True, metavar="CODE", help="Save this enquiry; repeat for others."
)
@click.option("--customer", default="", metavar="TEXT", help="For whom; as in the revision before.")
@click.option("--by", "saved_by", default="", metavar="TEXT", help="Who saves it.")
@click.option("--note", default="", metavar="TEXT", help="What is to be remembered of it.")
@click.option(
    "--register",
    "named",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help=f"The register; default: beside the book, its name with {ENDING}.",
)
@ON
@one_line_errors
def save(
    book: Path | None,
    codes: tuple[str, ...],
    customer: str,
    saved_by: str,
    note: str,
    named: Path | None,
    on: str | None,
) -> None:
    """Save quotes of a BOOK, each as the next revision of its code; all enquiries when none is named.

    All that are named are saved, or none. The invented demo mill's go into the current folder.

    \b
    costing register save my_mill.xlsx -e Q-01 -e Q-02 --customer "customer 12" --by "desk 2"
    costing register save my_mill.xlsx --note "price list of March"
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store
    from costing.front_ends.quote_register.record import kept

    if named is not None and book is not None and named.resolve() == book.resolve():
        raise InputError(str(named), "is the book itself; accepted is another name for the register")
    mill, source = read(book, on)
    results, refused = quoted(mill, source, codes)
    if refused and (codes or not results):
        raise refused[0].error
    if named is None:
        named = (Path.cwd() if book is None else source.resolve().parent) / f"{source.stem}{ENDING}"
    saved = store.save(named, [kept(mill, item, saved_by, customer, note) for item in results])
    for item in saved:
        click.echo(f"saved {item.name}: {_price(item)}{_as_before(named, item)}")
    for left in refused:
        tell(left.error, f", {left.code}, not saved")
    click.echo(f"{len(saved)} quote(s) in {named}")
    if refused:
        sys.exit(SOME_REFUSED)


def _price(item: Kept) -> str:
    from costing.cost.money import rounded

    head = item.head
    return f"{rounded(head.price, head.rounding)} {head.currency} per {head.basis}"


def _as_before(path: Path, item: Kept) -> str:
    """Whether the revision before has the same inputs and the same result."""
    from costing.front_ends.quote_register import store

    head = item.head
    if head.revision == 1:
        return ""
    before = store.opened(path, head.code, head.revision - 1)
    if (before.snapshot, before.result) == (item.snapshot, item.result):
        return f"; all numbers as in revision {head.revision - 1}"
    return f"; revision {head.revision - 1}: {_price(before)}"


@register.command("list")
@click.option("--all", "every", is_flag=True, help="Every revision, not only the last of each quote.")
@FILE
@JSON
@one_line_errors
def list_quotes(every: bool, named: Path | None, as_json: bool) -> None:
    """List the quotes, each with its last revision.

    \b
    costing register list
    costing register list --all --register old/my_mill_quotes.sqlite
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store
    from costing.front_ends.quote_register.tables import heads_table

    heads = store.found(register_of(named), last_only=not every)
    show_tables([heads_table(heads, brief=not as_json)], as_json)


def _wanted(command: Callable[..., Any]) -> Callable[..., Any]:
    """The words and options by which quotes are looked for, handed on as one `Wanted`."""

    @click.argument("words", nargs=-1, metavar="[WORD]...")
    @click.option("--since", metavar="YYYY-MM-DD", help="Saved on this day or later.")
    @click.option("--until", metavar="YYYY-MM-DD", help="Saved on this day or before.")
    @click.option("--quote", "code", default="", metavar="CODE", help="Revisions of this quote.")
    @click.option("--customer", default="", metavar="TEXT", help="Part of the customer's name.")
    @click.option("--style", default="", metavar="CODE", help="Of this style.")
    @click.option("--recipe", default="", metavar="CODE", help="With this recipe.")
    @wraps(command)
    def taken(words: tuple[str, ...], since: str | None, until: str | None, **options: Any) -> Any:
        from costing.front_ends.quote_register.store import Wanted

        days = (_day(since, "--since"), _day(until, "--until"))
        names = [options.pop(name) for name in ("code", "customer", "style", "recipe")]
        return command(wanted=Wanted(words, *days, *names), **options)

    return taken


def _day(text: str | None, option: str) -> datetime.date | None:
    if text is None:
        return None
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise InputError(option, f"is {text!r}; accepted is a day such as 2026-01-31") from None


@register.command()
@FILE
@JSON
@one_line_errors
@_wanted
def search(wanted: Wanted, named: Path | None, as_json: bool) -> None:
    """Find revisions that hold every WORD in a text, of days, of a customer, a style or a recipe.

    Looked through are quote, customer, note, description, style, recipe, range and who saved it.

    \b
    costing register search stretch --customer overseas --since 2026-03-01
    costing register search --recipe DARK-BOTTOM
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store
    from costing.front_ends.quote_register.tables import heads_table

    path = register_of(named)
    heads = store.found(path, wanted)
    show_tables([heads_table(heads, brief=not as_json)], as_json)
    if not as_json:
        click.echo(f"{len(heads)} revision(s) found in {path.name}")


@register.command()
@click.argument("code", metavar="QUOTE")
@click.option("--revision", "-r", type=int, metavar="N", help="Which one; the last when left out.")
@FILE
@OUT
@OVERWRITE
@JSON
@one_line_errors
def show(
    code: str, revision: int | None, named: Path | None, out: Path | None, overwrite: bool, as_json: bool
) -> None:
    """Show a saved QUOTE, and whether today's program still works out the same.

    With --out its whole working, worked out anew from what was saved, goes into a workbook as `costing quote`
    writes it.

    \b
    costing register show Q-01
    costing register show Q-01 --revision 2 --out q01_as_offered.xlsx
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store
    from costing.front_ends.quote_register.tables import kept_tables, reopen

    if as_json and out is not None:
        raise InputError("--out", "goes with the workbook; accepted is --json without it")
    opened = reopen(store.opened(register_of(named), code, asked_revision(revision, "--revision")))
    tables = kept_tables(opened)
    if out is not None:
        from costing.front_ends.workbook.results import write_results

        if opened.mill is None or opened.result is None:
            raise InputError(str(out), f"was not written: {opened.kept.name} {opened.verdict}")
        write_results(out, opened.mill, [opened.result], overwrite=overwrite)
    show_tables(tables if as_json else tables[:2], as_json)
    if out is not None:
        click.echo(f"the working is in {out}")
        if not opened.is_same:
            click.echo("warning: it is worked out by the program of today and not as it was saved, see above")


@register.command()
@FILE
@click.option(
    "--out",
    "-o",
    required=True,
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="A new .xlsx, with the lines of cost, or .csv, without.",
)
@OVERWRITE
@one_line_errors
@_wanted
def export(wanted: Wanted, named: Path | None, out: Path, overwrite: bool) -> None:
    """Write the register, or what `search` finds with the same words, to a new .xlsx or .csv.

    \b
    costing register export --out quotes.xlsx
    costing register export --since 2026-01-01 --customer overseas --out overseas.csv
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.quote_register import store
    from costing.front_ends.quote_register.export import write_register

    if out.suffix.lower() not in (".xlsx", ".csv"):
        raise InputError("--out", f"is {str(out)!r}; accepted is a name that ends in .xlsx or .csv")
    path = register_of(named)
    heads = store.found(path, wanted)
    if not heads:
        raise InputError(str(path), "holds no quote of that kind; accepted is one or more to write")
    whole = [] if out.suffix.lower() == ".csv" else [store.opened(path, *head[:2]) for head in heads]
    write_register(out, heads, whole, overwrite)
    click.echo(f"{len(heads)} revision(s) in {out}")
