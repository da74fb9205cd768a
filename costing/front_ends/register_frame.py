"""What the commands of the register share: which file it is, which revision, and how tables are shown."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from costing.quantities import InputError, listed

if TYPE_CHECKING:
    from costing.report import Table

ENDING = "_quotes.sqlite"  # behind the name of the book
FILE = click.option(
    "--register",
    "named",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help=f"The register; default: the one *{ENDING} of the current folder.",
)
OUT = click.option("--out", "-o", type=click.Path(path_type=Path), help="Write it to a file, too.")
OVERWRITE = click.option("--overwrite", is_flag=True, help="Replace an earlier file of that sort and name.")


def register_of(named: Path | None) -> Path:
    """The register that is named, or the only one of this folder.

    Raises
    ------
    InputError
        There is none, or more than one.
    """
    if named is not None:
        return named
    there = sorted(Path.cwd().glob(f"*{ENDING}"))
    if len(there) != 1:
        said = f"there are {len(there)}: {listed(path.name for path in there)}" if there else "there is none"
        raise InputError(
            "--register",
            f"is empty, and of registers *{ENDING} in this folder {said}; accepted is the name of one",
        )
    return there[0]


def asked_revision(revision: int | None, option: str) -> int | None:
    """The number of a revision out of an option, or None; refused where it is below 1."""
    if revision is not None and revision < 1:
        raise InputError(option, f"is {revision}; accepted is 1 or more")
    return revision


def show_tables(tables: Sequence[Table], as_json: bool) -> None:
    """Print tables, on a screen without those that are empty."""
    from costing.front_ends import screen

    if as_json:
        click.echo(screen.to_json(tables))
    else:
        for table in tables:
            if table.rows:
                screen.show(table)
