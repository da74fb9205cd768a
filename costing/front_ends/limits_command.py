"""The command that shows limits of regulations and writes them as rows of the sheet Permit."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.front_ends.command_frame import JSON, asked_quantity, one_line_errors
from costing.quantities import InputError, listed, meant

if TYPE_CHECKING:
    from costing.report.table import Table
    from costing.settings.permit import Limit

HOURS = 24.0


@click.command()
@click.argument("names", nargs=-1, metavar="[NAME]...")
@click.option(
    "--production",
    "productions",
    multiple=True,
    metavar="AMOUNT",
    help="Product that a NAME counts in a day, as '8 t/day': loads are shown per day. Once for each NAME.",
)
@click.option("--point", default="", metavar="CODE", help="Point of your sheet Discharge points, for --csv.")
@click.option(
    "--csv", "target", type=click.Path(path_type=Path), help="Write the rows as the sheet Permit has them."
)
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of that name.")
@JSON
@one_line_errors
def limits(
    names: tuple[str, ...],
    productions: tuple[str, ...],
    point: str,
    target: Path | None,
    overwrite: bool,
    as_json: bool,
) -> None:
    """List regulations whose limits were read, or print the limits of a NAME.

    Values come only from texts that were read; the others are forms to fill in. What holds is your permit:
    verify each limit with it. Several NAMEs with a production each are added up, as blocks of one permit;
    which product counts under which of them is for the permit writer to say.

    \b
    costing limits
    costing limits us_410_g_bpt
    costing limits us_410_g_bpt --production "8 t/day"
    costing limits us_410_g_bpt us_410_d_bpt --production "8 t/day" --production "10 t/day"
    costing limits us_410_g_bpt --point PIT --csv rows.csv
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.report import presets

    if as_json and target is not None:
        raise InputError("--csv", "writes a file; accepted is --json without it")
    if not names:
        if productions or target is not None or point:
            raise InputError("limits", f"NAME is empty; accepted is one of: {listed(presets.names())}")
        _show(presets.presets_table(), as_json)
        return
    chosen = [_name(name, presets.names()) for name in names]
    per_day = [
        asked_quantity(text, "daily_production", "--production", "production") * HOURS for text in productions
    ]
    if per_day and len(per_day) != len(chosen):
        raise InputError(
            "--production",
            f"is given {len(per_day)} time(s) for {len(chosen)} NAME(s); accepted is once for each",
        )
    if not per_day and len(chosen) > 1:
        raise InputError("limits", "several NAMEs are added up; accepted is a --production for each")
    found = presets.limits_of_presets(chosen, per_day)
    if target is None:
        _show(presets.limits_table(chosen, found, brief=not as_json), as_json)
        return
    from costing.front_ends.formula_text import FORMULA_SIGNS
    from costing.front_ends.whole_file import write_whole

    if point.startswith(FORMULA_SIGNS):
        raise InputError("--point", f"is {point!r}; accepted is a code that does not begin like a formula")
    write_whole(
        lambda: csv_rows(point, found), target, what="the rows", suffixes=(".csv",), overwrite=overwrite
    )
    click.echo(f"{len(found)} row(s) of {', '.join(chosen)} in {target}; paste them into the sheet Permit")
    click.echo(presets.VERIFY_ALL)


def _name(text: str, known: Sequence[str]) -> str:
    found = meant(text, known)
    if found is None:
        raise InputError("limits", f"NAME is {text[:40]!r}; accepted is one of: {listed(known, text)}")
    return found


def _show(table: Table, as_json: bool) -> None:
    from costing.front_ends import screen

    if as_json:
        click.echo(screen.to_json([table]))
    else:
        screen.show(table)


def csv_rows(point: str, limits: Sequence[Limit]) -> bytes:
    """Limits as the rows of the sheet Permit, with its heads: UTF-8 with a mark that programs look for."""
    from costing.report.presets import permit_row

    text = io.StringIO()
    lines = csv.writer(text)
    rows = [permit_row(point, limit) for limit in limits]
    lines.writerow(rows[0])
    lines.writerows(row.values() for row in rows)
    return text.getvalue().encode("utf-8-sig")
