"""What the commands share that read production and store issues: their options, and what they read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import click

from costing.front_ends.command_frame import only_one
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.front_ends.row_files.column_map import RowForm
    from costing.settings.mill import Mill
    from costing.settings.records import IssueRecord, MadeRow

Command = TypeVar("Command", bound=Callable[..., Any])
Decorator = Callable[[Any], Any]


def _file(option: str, what: str, sheet: str) -> Decorator:
    return click.option(
        option,
        type=click.Path(path_type=Path, readable=False),
        multiple=True,
        callback=only_one,
        metavar="FILE",
        help=f"{what} of this .csv or .xlsx in place of the sheet {sheet}.",
    )


def _columns(option: str, example: str) -> Decorator:
    return click.option(option, metavar="MAP", help=f'Which heading of it is what, as "{example}".')


_OPTIONS = (
    _file("--production", "Production", "Production record"),
    _columns("--production-columns", "date=Datum, enquiry=Auftrag, amount=kg, shift=Schicht"),
    _file("--issues", "Issues", "Store issues"),
    _columns("--issues-columns", "date=Datum, material=Artikel, mass=Menge, price=Preis"),
    _file("--stock-take", "Opening, received and closing", "Store issues"),
    _columns("--stock-take-columns", "material=Artikel, opening=Anfang, received=Zugang, closing=Ende"),
    click.option("--keep-columns", is_flag=True, help="Keep those maps beside their files."),
    click.option(
        "--skip-unknown", is_flag=True, help="Leave out rows that name what the book does not know."
    ),
)


def record_options(command: Command) -> Command:
    """Give a command the options of the records; it takes them as `Asked` does."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


class Asked(NamedTuple):
    """The options of the records, as they were given."""

    production: Path | None
    production_columns: str | None
    issues: Path | None
    issues_columns: str | None
    stock_take: Path | None
    stock_take_columns: str | None
    keep_columns: bool
    skip_unknown: bool


class Records(NamedTuple):
    """What was made and what left the store, and what of it is in no total."""

    made: Sequence[MadeRow]
    issues: Sequence[IssueRecord]
    skipped: list[str]
    remarks: list[str]


def read_records(mill: Mill, asked: Asked, overwrite: bool) -> Records:
    """Read the records of the sheets, or of the files that are named in their place.

    Raises
    ------
    InputError
        A sheet without rows, a cell or a row that is refused, options that do not go together.
    """
    from costing.book.records import PRODUCTION_RECORD, STORE_ISSUES
    from costing.front_ends.record_files import ISSUES, PRODUCTION, STOCK_TAKE, read_issues, read_production

    skipped: list[str] = []
    remarks: list[str] = []
    if asked.production is None:
        _refuse_alone(asked.production_columns, PRODUCTION, "--production")
        made = _of_sheet(mill, PRODUCTION_RECORD, "--production")
    else:
        columns = _map(asked.production_columns, asked.production, PRODUCTION)
        produced = read_production(asked.production, mill, columns, asked.skip_unknown)
        made, skipped = produced.rows, [item.text() for item in produced.left_out]
        _keep(asked, columns, asked.production, PRODUCTION, overwrite)
    _refuse_alone(asked.issues_columns if asked.issues is None else None, ISSUES, "--issues")
    _refuse_alone(asked.stock_take_columns if asked.stock_take is None else None, STOCK_TAKE, "--stock-take")
    if asked.issues is not None and asked.stock_take is not None:
        raise InputError("--stock-take", "takes the place of --issues; accepted is one of the two")
    path, text, form = asked.issues, asked.issues_columns, ISSUES
    if asked.stock_take is not None:
        path, text, form = asked.stock_take, asked.stock_take_columns, STOCK_TAKE
    if path is None:
        issues = _of_sheet(mill, STORE_ISSUES, "--issues")
    else:
        columns = _map(text, path, form)
        issued = read_issues(path, mill, columns, asked.skip_unknown, form)
        issues = issued.issues
        skipped = [*skipped, *(item.text() for item in issued.left_out)]
        if issued.lacks:
            remarks.append(f"{path.name} has no column for {', '.join(issued.lacks)}")
        _keep(asked, columns, path, form, overwrite)
    if asked.production is None and path is None and (asked.keep_columns or asked.skip_unknown):
        option = "--keep-columns" if asked.keep_columns else "--skip-unknown"
        raise InputError(option, "goes with --production, --issues or --stock-take, files of records")
    return Records(made, issues, skipped, remarks)


def _of_sheet(mill: Mill, sheet: str, option: str) -> Any:
    held = mill.kept(sheet)
    if not held:
        raise InputError(sheet, f"holds nothing; accepted is one row or more, or a file with {option}")
    return held


def _refuse_alone(columns: str | None, form: RowForm, option: str) -> None:
    if columns:
        raise InputError(form.option, f"goes with {option}, a file")


def _map(text: str | None, path: Path, form: RowForm) -> dict[str, str]:
    from costing.front_ends.row_files.column_map import asked_columns

    return asked_columns(text, path, form)


def _keep(asked: Asked, columns: dict[str, str], path: Path, form: RowForm, overwrite: bool) -> None:
    from costing.front_ends.row_files.column_map import keep

    if asked.keep_columns:
        click.echo(f"columns kept in {keep(columns, path, form, overwrite)}", err=True)
