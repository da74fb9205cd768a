"""A table as CSV, in which no text is a formula."""

from __future__ import annotations

import csv
import io
from pathlib import Path

from costing.front_ends.formula_text import harmless
from costing.front_ends.screen import headings
from costing.front_ends.whole_file import write_whole
from costing.quantities import InputError
from costing.report import Table

LONGEST_HEADING = 100_000  # letters


def write_csv(path: Path, table: Table, what: str, overwrite: bool = False) -> None:
    """Write a table as CSV: UTF-8 with a mark that spreadsheet programs look for.

    A text that such a program would take for a formula has an apostrophe before it.
    """
    if overwrite and path.exists() and not _is_ours(path, table):
        raise InputError(
            str(path), f"holds no earlier {what} and was left as it is; accepted is the name of a new file"
        )

    def content() -> bytes:
        text = io.StringIO()
        lines = csv.writer(text)
        lines.writerow([harmless(title) for title in headings(table)])
        lines.writerows([[harmless(cell) for cell in row] for row in table.rows])
        return text.getvalue().encode("utf-8-sig")

    write_whole(content, path, what=f"the {what}", suffixes=(".csv",), overwrite=overwrite)


def _is_ours(path: Path, table: Table) -> bool:
    """Whether a file begins with the headings of the table."""
    try:
        if not path.is_file():  # a pipe never answers
            return False
        with path.open(encoding="utf-8-sig", newline="") as stream:
            first = stream.readline(LONGEST_HEADING)
        return next(csv.reader([first]), None) == [harmless(title) for title in headings(table)]
    except (OSError, UnicodeDecodeError, csv.Error):
        return False
