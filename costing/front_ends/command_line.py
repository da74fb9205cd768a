"""The command line: quote, open a figure, calculate a formula, write a fresh book."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import click

import costing
from costing.front_ends.bulk_command import bulk
from costing.front_ends.calibrate_command import calibrate
from costing.front_ends.card_command import card
from costing.front_ends.command_frame import (
    BOOK,
    JSON,
    ON,
    PICTURE,
    SOME_REFUSED,
    check_picture,
    one_line_errors,
    quoted,
    read,
    results_of,
    say_drawn,
    tell,
)
from costing.front_ends.compare_command import compare
from costing.front_ends.document_command import document, requote
from costing.front_ends.drain_command import drain
from costing.front_ends.limits_command import limits
from costing.front_ends.need_command import need
from costing.front_ends.prices_command import prices
from costing.front_ends.purchase_command import purchase
from costing.front_ends.range_commands import band, lots, target
from costing.front_ends.register_command import register
from costing.front_ends.store_command import store
from costing.front_ends.usage_command import usage
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.report.refused import Refused


@click.group(
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="""
    \b
    Start here:
      costing quote                     quote the invented demo mill
      costing book my_mill.xlsx         write a book to fill in for your own mill
      costing quote my_mill.xlsx        quote it into my_mill_results.xlsx
      costing ledger --enquiry Q-01 --of hydrosulfite
                                        see what a figure is made of
      costing compare --like Q-02 --recipe DARK-BOTTOM
                                        the same order with another recipe
      costing document -e Q-02          a page for the customer, and the working for the mill
      costing band -e Q-02              how sure the cost is, and what drives it
      costing lots -e Q-02              the cost of a metre against the length of the order
      costing target -e Q-02 --cost 2.1 --change "order length" --to 40000
                                        what would meet a target
      costing calibrate --period week   fit contested factors to the mill's own records
      costing bulk prices.csv --out quotes.csv
                                        a quote for every row of a table
      costing card -e Q-02              what the shift weighs, sets and fills
      costing prices                    each material with its offers, and which one counts
      costing purchase                  what to order this week, what runs out, what expires
      costing drain                     what leaves by a collecting point of the drain
      costing limits us_410_g_bpt       discharge limits of a regulation that was read
      costing need                      what the order book takes, week by week
      costing store                     what must not stand together, and what is over its ceiling
      costing usage                     what was used against the standard, and why
      costing register save             keep quotes, find them again, say why two differ
    """,
)
@click.version_option(costing.__version__, prog_name="costing")
def main() -> None:
    """Work out what dyeing a denim warp takes, costs and sends to the drain.

    The mill's book is one .xlsx file: styles, recipes, ranges, materials with prices, enquiries. The
    commands read it, never change it, and write their results to a new file.
    """


main.add_command(compare)
main.add_command(card)
main.add_command(drain)
main.add_command(limits)
main.add_command(document)
main.add_command(requote)
main.add_command(band)
main.add_command(lots)
main.add_command(target)
main.add_command(register)
main.add_command(prices)
main.add_command(bulk)
main.add_command(calibrate)
main.add_command(purchase)
main.add_command(need)
main.add_command(store)
main.add_command(usage)


@main.command()
@BOOK
@click.option(
    "--enquiry",
    "-e",
    "codes",
    multiple=True,
    metavar="CODE",
    help="Quote this enquiry only; may be repeated.",
)
@click.option(
    "--out",
    "-o",
    type=click.Path(path_type=Path),
    help="File for the results; default: the book's name with _results, in the current folder.",
)
@click.option(
    "--range",
    "ranged",
    is_flag=True,
    help="Add range, drivers and lot curve of each enquiry, with charts; a third of a second each.",
)
@PICTURE
@click.option("--overwrite", is_flag=True, help="Replace the results file, or the picture, if it is there.")
@ON
@JSON
@one_line_errors
def quote(
    book: Path | None,
    codes: tuple[str, ...],
    out: Path | None,
    ranged: bool,
    picture: Path | None,
    overwrite: bool,
    on: str | None,
    as_json: bool,
) -> None:
    """Quote one enquiry or all of a BOOK (the invented demo mill when left out).

    Prints cost and price per kg, metre and yard, and writes a new workbook with the working: cost by
    step, material and cause, use, discharge, ledger and checks. The values in it are plain numbers,
    visible in any viewer. A picture shows the cost by step of one enquiry or a few.

    An enquiry that is refused does not hold up the others: it is listed with its reason, and stands in the
    workbook without a number. The exit code is 0 when all are quoted, 3 when some are refused, 2 when
    nothing is quoted.
    """
    from costing import report
    from costing.front_ends import screen
    from costing.front_ends.workbook.results import OWN_SHEETS, check_replaced, write_results
    from costing.report.refused import with_refused

    if as_json and out is not None:
        raise InputError("--out", "goes with the workbook; accepted is --json without it")
    check_picture(picture, overwrite)
    with _progress() as now:
        now("reading the book")
        mill, source = read(book, on)
        target = out or Path.cwd() / f"{source.stem}_results.xlsx"
        if target.resolve() == source.resolve():
            raise InputError(str(target), "is the book itself; accepted is another name for the results")
        if not as_json:  # before the picture is written: what is refused writes nothing
            check_replaced(target, overwrite, OWN_SHEETS)
        now("working out the enquiries")
        results, refused = quoted(mill, source, codes)
        if picture is not None and results:
            from costing.front_ends.pictures.cost_bars import step_picture

            step_picture(picture, report.TABLES["cost_by_step"](mill, results), overwrite)
        if as_json and results:
            click.echo(screen.to_json(with_refused(report.all_tables(mill, results), refused)))
        if not results:
            _refuse_all(refused)
        if as_json:
            _end(refused)
            return
        now("writing the results")
        write_results(target, mill, results, overwrite=overwrite, refused=refused, ranged=ranged)
    screen.show(with_refused([report.headline(mill, results)], refused)[0])
    for line in report.seconds_told(mill, results):
        click.echo(line)
    for item in results:
        for note in item.remarks:
            if note.kind == "warning":
                click.echo(f"warning, {item.enquiry.code}, {note.where}: {note.text}")
    click.echo(f"{len(results)} quote(s); the working, with all checks, is in {target}")
    say_drawn(picture)
    _end(refused)


def _end(refused: Sequence[Refused]) -> None:
    """Say what is refused, and end with the exit code of it."""
    for item in refused:
        tell(item.error, f", {item.code}")
    if refused:
        click.echo(f"{len(refused)} refused: {', '.join(item.code for item in refused)}", err=True)
        sys.exit(SOME_REFUSED)


def _refuse_all(refused: Sequence[Refused]) -> None:
    """Refuse for all reasons, each told once; nothing is written."""
    *others, last = {str(item.error): item.error for item in refused}.values()
    for error in others:
        tell(error)
    raise last


@main.command()
@BOOK
@click.option("--enquiry", "-e", "code", metavar="CODE", help="Enquiry; the first of the book when left out.")
@click.option(
    "--of",
    "figure",
    metavar="FIGURE",
    help="cost, the default; what is used, by code, group, role or substance (HYDRO-88, caustic, steam, "
    "power); drain, or one parameter of it (COD, sulfite, sodium, flow, alkalinity). A word that is both is "
    "what is used: put drain in front for the other.",
)
@click.option("--step", metavar="STEP", help="Only the lines of this step.")
@click.option(
    "--stream",
    metavar="STREAM",
    help="Only this stream of the drain; its sum is that of the discharge. Without --of: all of it.",
)
@ON
@JSON
@one_line_errors
def ledger(
    book: Path | None,
    code: str | None,
    figure: str | None,
    step: str | None,
    stream: str | None,
    on: str | None,
    as_json: bool,
) -> None:
    """Open a FIGURE of one enquiry into step, material and cause.

    \b
    costing ledger -e Q-01 --of hydrosulfite      where the hydrosulfite goes
    costing ledger -e Q-01 --of drain             all that drains, on every basis
    costing ledger -e Q-01 --of sulfite           which stream and substance, what makes it
    costing ledger -e Q-01 --of COD --stream "rinse after dyeing"
    costing ledger -e Q-01 --of cost --step drying
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import opening, screen

    mill, source = read(book, on)
    if code is None:
        code = next(iter(mill.enquiries), "")
    (result,) = results_of(mill, source, (code,))
    wanted = figure or (opening.COST_WORD if stream is None else opening.DRAIN_WORD)
    tables = opening.open_figure(mill, result, wanted, step, stream, brief=not as_json)
    if as_json:
        click.echo(screen.to_json(tables))
    else:
        for table in tables:
            screen.show(table)


@main.command()
@click.argument("path", type=click.Path(path_type=Path))
@click.option("--empty", is_flag=True, help="Without the invented demo mill.")
@click.option("--overwrite", is_flag=True, help="Replace the file if it is there.")
@one_line_errors
def book(path: Path, empty: bool, overwrite: bool) -> None:
    """Write a fresh mill's book to PATH, filled with the invented demo mill or empty."""
    from costing.front_ends.workbook.build import write_fresh_book

    write_fresh_book(path, demo=not empty, overwrite=overwrite)
    click.echo(f"wrote {path}; fill in the bordered cells, then: costing quote {path}")


@main.command()
@click.argument("path", type=click.Path(path_type=Path))
@click.option("--overwrite", is_flag=True, help="Replace the file if it is there.")
@one_line_errors
def extension(path: Path, overwrite: bool) -> None:
    """Write the LibreOffice extension to PATH (an .oxt file), which brings the formulas into Calc.

    Install it with a double click or `unopkg add PATH`, then start LibreOffice again. A cell calls a
    formula by its name: =WARP_CARRIED_BY_LIQUOR(0.75; "1.5 g/L").
    """
    from costing.front_ends.libreoffice.build import build_extension

    build_extension(path, overwrite=overwrite)
    click.echo(f"wrote {path}; install it with a double click, then start LibreOffice again")


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path),
    help="The new file; default: beside FILE, with _plain behind its name.",
)
@click.option("--in-place", is_flag=True, help="Mend FILE itself; as it was it is kept, with _before.")
@one_line_errors
def names(file: Path, target: Path | None, in_place: bool) -> None:
    """Give the formulas in a workbook FILE their plain names back.

    A formula that shows #NAME? in Excel after LibreOffice has saved the file, or the other way round, is
    spelt in the one program's own way. Nothing but the names of our formulas is changed.
    """
    from costing.front_ends.workbook.formula_names import repair_names

    done = repair_names(file, target, in_place=in_place)
    for place, count in done.changed.items():
        click.echo(f"{place}: {count} formula(s)")
    if not done.changed:
        click.echo("every formula of ours has its plain name already")
    if done.written is not None:
        click.echo(f"wrote {done.written}" + (f"; as it was: {done.kept}" if done.kept else ""))


@main.command()
@JSON
@one_line_errors
def ready(as_json: bool) -> None:
    """Show what is installed or missing, and how to mend it."""
    from costing.front_ends import screen
    from costing.front_ends.readiness import readiness

    table = readiness(brief=not as_json)
    if as_json:
        click.echo(screen.to_json([table]))
    else:
        screen.show(table)


@main.command("list")
@click.argument("word", required=False)
@JSON
@one_line_errors
def list_formulas(word: str | None, as_json: bool) -> None:
    """List the formulas, or those whose name or help holds WORD."""
    from costing.front_ends import formula_help, screen

    table = formula_help.formula_table(word, brief=not as_json)
    if as_json:
        click.echo(screen.to_json([table]))
    else:
        screen.show(table)


@main.command()
@click.argument("name")
@click.argument("values", nargs=-1, metavar="ARGUMENT=VALUE...")
@click.option("--in", "unit", metavar="UNIT", help="Unit of the answer.")
@JSON
@one_line_errors
def calculate(name: str, values: tuple[str, ...], unit: str | None, as_json: bool) -> None:
    """Calculate one formula; without values, show what it takes.

    \b
    costing calculate carried_by_liquor pick_up=0.75 "concentration=1.5 g/L"
    costing calculate linear_density_from_english_count "english_count=7 Ne"
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends import formula_help

    click.echo(formula_help.calculated(name, values, unit, as_json))


@main.command()
@click.argument("word", required=False)
@JSON
@one_line_errors
def source(word: str | None, as_json: bool) -> None:
    """Show defaults whose name holds WORD: low, typical, high, and where the figure comes from."""
    from costing.front_ends import opening, screen

    table = opening.default_table(word)
    if as_json:
        click.echo(screen.to_json([table]))
    else:
        screen.show(table)


@main.command()
@click.argument("word", required=False)
@one_line_errors
def caution(word: str | None) -> None:
    """Show the cautions for what a range handles: caustic, hydrosulfite, acid, ..."""
    from costing.front_ends import opening

    click.echo(opening.caution_text(word))


@contextmanager
def _progress() -> Iterator[Callable[[str], None]]:
    """A bar over the stages of a quote, on a terminal only: with its workbook it takes seconds."""
    with click.progressbar(
        length=STAGES + 1,
        file=sys.stderr,
        hidden=not sys.stderr.isatty(),
        show_eta=False,
        item_show_func=lambda stage: stage,
    ) as bar:
        yield lambda stage: bar.update(1, stage)
        bar.update(1, "done")


STAGES = 3


if __name__ == "__main__":
    main()
