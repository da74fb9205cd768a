"""The command that quotes a table of rows, on every core or on partitions of many files."""

from __future__ import annotations

import glob
import os
import sys
from collections.abc import Iterable
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from costing.front_ends.command_frame import ON, SOME_REFUSED, one_line_errors, read
from costing.quantities import InputError

if TYPE_CHECKING:
    from costing.many.bulk_jobs import Done, Job
    from costing.settings.mill import Mill

HERE = "127.0.0.1"  # nobody else on the network is to see it
MOST_TOLD = 5  # reasons on the screen
WORTH_CORES = 500_000  # bytes of a table; fewer rows are done before another process has started


@click.command()
@click.argument("table", metavar="TABLE")
@click.argument("book", required=False, type=click.Path(path_type=Path, readable=False))
@click.option(
    "--out", "-o", type=click.Path(path_type=Path), required=True, help="New .csv, .xlsx or .parquet file."
)
@click.option("--like", default="", metavar="CODE", help="Enquiry that gives the lot of all rows.")
@click.option(
    "--decimal", type=click.Choice([".", ","]), default=".", show_default=True, help="Sign in a .csv file."
)
@click.option("--cores", type=click.IntRange(1), help="How many processes; as many as there are cores.")
@click.option(
    "--dask", "by_dask", is_flag=True, help="TABLE is .parquet files, a partition each; so is --out."
)
@click.option("--overwrite", is_flag=True, help="Replace an earlier file of that name.")
@ON
@one_line_errors
def bulk(
    table: str,
    book: Path | None,
    out: Path,
    like: str,
    decimal: str,
    cores: int | None,
    by_dask: bool,
    overwrite: bool,
    on: str | None,
) -> None:
    """Quote every row of a TABLE: the same rows come back with cost, price and cost by group.

    A row names an enquiry, or a style, recipe and range for the order of --like. Other columns are numbers,
    each with its unit in the heading, as "order length [m]", "LYE-50: price [money/kg]" or "indigo dyeing:
    dips"; an empty cell is as in the BOOK. A row that is refused says why and takes no other with it.

    \b
    costing bulk prices.csv --out quotes.csv
    costing bulk styles.xlsx my_mill.xlsx --like Q-02 --out quotes.xlsx
    costing bulk "parts/*.parquet" --dask --out quotes.parquet
    """  # noqa: D301  (the mark keeps the lines apart in the help)
    from costing.front_ends.bulk_file import check_target  # reads and writes workbooks: slow to import

    check_target(out, overwrite)
    mill, source = read(book, on)
    if out.resolve() in (source.resolve(), Path(table).resolve()):
        raise InputError(str(out), "is read by this command; accepted is another name")
    used = cores or os.cpu_count() or 1
    if by_dask:
        rows, refused = _by_dask(mill, table, out, like, used, overwrite)
    else:
        rows, refused = _of_one_file(mill, Path(table), out, like, decimal, used, overwrite)
    click.echo(f"{rows:,} rows are in {out}, {sum(refused.values()):,} of them refused")
    for why, count in list(refused.items())[:MOST_TOLD]:
        click.echo(f"refused, {count:,} rows: {why}", err=True)
    if len(refused) > MOST_TOLD:
        click.echo(f"and {len(refused) - MOST_TOLD} more reasons, in the column refused", err=True)
    if refused:
        sys.exit(SOME_REFUSED)


def _of_one_file(
    mill: Mill, path: Path, out: Path, like: str, decimal: str, cores: int, overwrite: bool
) -> tuple[int, dict[str, int]]:
    from costing.front_ends.bulk_file import read_table, write_table
    from costing.many.bulk import REFUSED, bulk_quotes
    from costing.many.bulk_jobs import Cores, run_here

    with ExitStack() as ending:
        large = path.is_file() and path.stat().st_size >= WORTH_CORES
        processes = ending.enter_context(Cores(cores)) if large and cores > 1 else None
        asked = read_table(path, decimal)

        def runner(mill: Mill, jobs: Iterable[Job]) -> Iterable[Done]:
            with click.progressbar(
                length=len(asked), label="rows", file=sys.stderr, hidden=not sys.stderr.isatty()
            ) as bar:
                run = processes.run if processes is not None else run_here
                yield from run(mill, jobs, bar.update)
                bar.finish()  # rows that are refused before they run are in no job

        try:
            found = bulk_quotes(mill, asked, like, runner)
        except InputError as error:
            raise error.at(lambda one: f"{path.name}, {one.where}") from error
    write_table(out, found, overwrite)
    why = found[REFUSED][found[REFUSED] != ""].value_counts()
    return len(found), {str(text): int(count) for text, count in why.items()}


def _by_dask(
    mill: Mill, pattern: str, out: Path, like: str, cores: int, overwrite: bool
) -> tuple[int, dict[str, int]]:
    from costing.front_ends.bulk_file import needs, write_partitions

    try:
        from dask import dataframe
        from distributed import Client, LocalCluster

        from costing.many.bulk_dask import bulk_partitions
    except ImportError as error:
        raise needs(error) from error
    from costing.many.bulk import REFUSED

    files = sorted(glob.glob(pattern))
    if not files:
        raise InputError(pattern, "names no file; accepted is a pattern such as 'parts/*.parquet'")
    cluster: Any = LocalCluster(  # type: ignore[no-untyped-call]
        n_workers=cores, threads_per_worker=1, host=HERE, dashboard_address=f"{HERE}:0"
    )
    with cluster, Client(cluster):  # type: ignore[no-untyped-call]
        write_partitions(out, bulk_partitions(mill, dataframe.read_parquet(files), like), overwrite)
        why = dataframe.read_parquet(str(out), columns=[REFUSED])[REFUSED].value_counts().compute()
    counts = {str(text): int(count) for text, count in why.items()}
    return sum(counts.values()), {text: count for text, count in counts.items() if text}
