"""What every command shares: the book it reads, the enquiries it works out, and how it refuses."""

from __future__ import annotations

import datetime
import os
import re
import sys
from collections.abc import Callable, Sequence
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from costing.quantities import InputError, meant

if TYPE_CHECKING:
    from costing.report import Result
    from costing.report.refused import Refused
    from costing.settings.mill import Enquiry, Mill

Command = TypeVar("Command", bound=Callable[..., Any])

BOOK = click.argument("book", required=False, type=click.Path(path_type=Path, readable=False))
JSON = click.option("--json", "as_json", is_flag=True, help="Print JSON for a machine, and nothing else.")
PICTURE = click.option(
    "--picture",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Draw it as a picture too: a new file, .png or .svg.",
)
REPLACE_PICTURE = click.option("--overwrite", is_flag=True, help="Replace an earlier picture of that name.")
ON = click.option(
    "--on",
    metavar="YYYY-MM-DD",
    help="Prices and exchange rates of this day; that of the book when left out.",
)
_NUMBER_AND_UNIT = re.compile(r"([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*([^\s\d.,]\S*)?")
NO_ENQUIRY = "the book holds no enquiry; accepted is one row or more"
SOME_REFUSED = 3  # exit code where some enquiries are quoted and others refused
MANY = 200  # quotes that take about half a second


def one_line_errors(command: Command) -> Command:
    """Turn a refused input into a line on the error stream for each reason, and exit code 2."""

    @wraps(command)
    def guarded(*arguments: Any, **options: Any) -> Any:
        try:
            return command(*arguments, **options)
        except InputError as error:
            tell(error)
            sys.exit(2)
        except OSError as error:
            click.echo(f"stopped: {error.strerror or error}", err=True)
            os._exit(1)  # the ordinary exit would try to write to the same full place once more

    return guarded  # type: ignore[return-value]


def tell(error: InputError, whose: str = "") -> None:
    """Say why something is refused, a line for each reason."""
    from costing.front_ends.screen import printable

    for where, message in error.told():
        said = ": ".join(part for part in (where, message) if part)
        click.echo(printable(f"refused{whose}: {said}".replace("\n", " ")), err=True)


def read(path: Path | None, on: str | None = None) -> tuple[Mill, Path]:
    """The mill of a book, the invented demo's when no book is named, and where the book is.

    Parameters
    ----------
    path : Path or None
        The book.
    on : str, optional
        The day whose prices count, as the option --on has it; that of the book where it is left out.
    """
    from costing.cost.offers import mill_on
    from costing.front_ends.workbook.build import demo_book
    from costing.front_ends.workbook.read import read_book

    chosen = path or demo_book()
    day = None if on is None else asked_day(on, "--on")
    mill = read_book(chosen, apart=True)
    return mill if day is None else mill_on(mill, day), chosen


def only_one(context: click.Context, option: click.Parameter, given: tuple[Any, ...]) -> Any:
    """The value of an option that may stand once; without this the last one counts, and no word is said."""
    if len(given) > 1:
        raise click.BadParameter(f"is given {len(given)} times; accepted is once", context, option)
    return given[0] if given else None


def asked_day(text: str, option: str) -> datetime.date:
    """The day of an option.

    Raises
    ------
    InputError
        No such day.

    Examples
    --------
    >>> asked_day("2027-01-31", "--on")
    datetime.date(2027, 1, 31)
    """
    try:
        return datetime.datetime.strptime(text.strip(), "%Y-%m-%d").date()
    except ValueError:
        raise InputError(option, f"is {text!r}; accepted is a day such as 2027-01-31") from None


def named_once(mill: Mill, codes: Sequence[str]) -> list[str]:
    """Codes of enquiries as the book spells them, each once."""
    return list(dict.fromkeys(mill.enquiry(code, "--enquiry").code for code in codes))


def quoted(mill: Mill, source: Path, codes: Sequence[str]) -> tuple[list[Result], list[Refused]]:
    """Work out those enquiries of these codes, or of the book, that can be, and say of the others why not."""
    from costing.report.refused import Refused

    apart = {code: error for (kind, code), error in mill.refused.items() if kind == "enquiry"}
    known = [*mill.enquiries, *apart]
    wanted = [meant(code, known) or mill.enquiry(code, "--enquiry").code for code in codes] or known
    if not wanted:
        raise InputError("Enquiries", NO_ENQUIRY)
    refused = [
        Refused(code, apart[code].at(lambda one: f"{source.name}, {one.where}"))
        for code in wanted
        if code in apart
    ]
    asked = [mill.enquiries[code] for code in wanted if code in mill.enquiries]
    return worked_out(mill, source, asked, refused), refused


def results_of(mill: Mill, source: Path, codes: Sequence[str]) -> list[Result]:
    """Work out the enquiries of these codes, all of the book when none is named."""
    found, refused = quoted(mill, source, codes)
    if refused:
        raise refused[0].error
    return found


def worked_out(
    mill: Mill, source: Path, enquiries: Sequence[Enquiry], refused: list[Refused] | None = None
) -> list[Result]:
    """Work enquiries out, with a bar of their own where there are many.

    Where a list for the refused is given, each that is refused goes there; else the first ends it.
    """
    from costing.book.places import placed
    from costing.report import work_out
    from costing.report.refused import Refused

    many = len(enquiries) >= MANY and sys.stderr.isatty()
    with click.progressbar(enquiries, label="enquiries", file=sys.stderr, hidden=not many) as waiting:
        results = []
        for enquiry in waiting:
            try:
                with placed(mill, enquiry, source):
                    results.append(work_out(mill, enquiry))
            except InputError as error:
                if refused is None:
                    raise
                refused.append(Refused(enquiry.code, error))
        return results


def asked_quantity(text: str, name: str, option: str, called: str = "") -> float:
    """A number with its unit out of an option, in the house unit; without a unit it is in the usual one.

    Parameters
    ----------
    text : str
        Such as ``2h`` or ``1000 L``.
    name : str
        Of the quantity.
    option : str
        Of the command, for the error text.
    called : str, optional
        What it is, for the error text, where that is not the name of the quantity.

    Raises
    ------
    InputError
        No number, another unit, or out of range.

    Examples
    --------
    >>> asked_quantity("90 min", "stoppage_time", "--stop")
    1.5
    """
    from costing.book.quantity_cell import measured
    from costing.quantities import label, quantity

    item = quantity(name)
    what = called or label(name)
    found = _NUMBER_AND_UNIT.fullmatch(text.strip())
    if found is None:
        raise InputError(
            option, f"{what} is {text!r}; accepted is a number with its unit, such as 2{item.usual}"
        )
    return measured(item, float(found[1]), found[2] or item.usual, option, called=what).house


def check_picture(picture: Path | None, overwrite: bool) -> None:
    """Refuse the name of a picture before anything is worked out, where one is asked for."""
    if picture is not None:
        from costing.front_ends.pictures.frame import checked

        checked(picture, overwrite)


def say_drawn(picture: Path | None) -> None:
    """Say where a picture is, where one was asked for."""
    if picture is not None:
        click.echo(f"the picture is in {picture}")
