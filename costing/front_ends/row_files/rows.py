"""The rows of a file, text or workbook: cells as they stand, nothing worked out, nothing run."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple, TextIO

from openpyxl.worksheet.worksheet import Worksheet

from costing.front_ends.row_files.column_map import SHEET, Placed, RowForm, place_columns
from costing.front_ends.row_files.number_forms import shown
from costing.front_ends.workbook.file_sheets import unsaved
from costing.front_ends.workbook.open_file import (
    OLE,
    open_workbook,
    refuse_no_file,
    refuse_open_elsewhere,
    sheet_names,
)
from costing.quantities import InputError, listed, meant

MOST_ROWS = 10_000_000
LONGEST_LINE = 100_000  # letters
DELIMITERS = {",": "comma", ";": "semicolon", "\t": "tab"}
ACCEPTED = "accepted is a .csv file in UTF-8 or an .xlsx workbook"


class FileRow(NamedTuple):
    """One row: its number in the file, and its cells."""

    number: int
    cells: list[Any]


class Unread(NamedTuple):
    """A cell of which cannot be said what it holds, and why."""

    why: str


class RowFile:
    """A file that may be read more than once, because its forms are told by all rows together.

    Parameters
    ----------
    path : Path
        The file.
    columns : mapping
        As the user names them.
    form : RowForm
        What its rows hold.

    Raises
    ------
    InputError
        A file that cannot be read, or a heading without the columns.
    """

    def __init__(self, path: Path, columns: Mapping[str, str], form: RowForm) -> None:
        self._path = path
        self._held: list[tuple[int, dict[int, Any]]] | None = None
        self._delimiter = ""
        refuse_open_elsewhere(path)
        try:
            refuse_no_file(path, ACCEPTED)
            with path.open("rb") as stream:
                start = stream.read(len(OLE))
        except OSError as error:
            raise InputError(str(path), f"cannot be read: {error.strerror or error}; {ACCEPTED}") from error
        if start.startswith((b"PK", OLE)):
            self._held = _rows_of_workbook(path, columns.get(SHEET, ""), form.option)
            if not self._held:
                raise InputError(path.name, "holds no row; accepted is a heading and a row for each entry")
            heading = self._held[0][1]
            self.placed = place_columns(_cells(heading, max(heading)), columns, form)
        else:
            self._delimiter, self.placed = _delimiter(path, columns, form)

    def rows(self) -> Iterator[FileRow]:
        """Every row below the heading that is not empty.

        Raises
        ------
        InputError
            No text in UTF-8, a quote without end, or more rows than are read.
        """
        if self._held is not None:
            wide = max(self.placed.at.values()) + 1
            for number, held in self._held[1:]:
                yield FileRow(number, _cells(held, wide))
            return
        rows = _rows_of_text(self._path, self._delimiter)
        heading = next(rows, None)
        wide = len(heading.cells) if heading else 0
        for count, row in enumerate(rows, start=1):
            if count > MOST_ROWS:
                raise InputError(
                    self._path.name, f"holds more than {MOST_ROWS:,} rows; accepted is a file for each month"
                )
            if len(row.cells) > wide and any(cell.strip() for cell in row.cells[wide:]):
                raise InputError(
                    f"row {row.number}",
                    f"has {len(row.cells)} cells, the heading {wide}; accepted is as many, with quotes "
                    f"around a {DELIMITERS[self._delimiter]} in a cell",
                )
            yield row


def _rows_of_text(path: Path, delimiter: str) -> Iterator[FileRow]:
    try:
        with path.open(encoding="utf-8-sig", newline="") as stream:
            reader = csv.reader(_lines(stream, path), delimiter=delimiter, strict=True)
            last = 0
            for cells in reader:
                number, last = last + 1, reader.line_num
                if any(cell.strip() for cell in cells):
                    yield FileRow(number, cells)
    except UnicodeDecodeError as error:
        raise InputError(path.name, f"is no text in UTF-8; {ACCEPTED}: save it as CSV UTF-8") from error
    except csv.Error as error:
        raise InputError(path.name, f"cannot be read as CSV behind row {last}: {error}") from error
    except OSError as error:
        raise InputError(str(path), f"cannot be read: {error.strerror or error}; {ACCEPTED}") from error


def _lines(stream: TextIO, path: Path) -> Iterator[str]:
    """Lines of a text, none so long that it fills the memory."""
    while line := stream.readline(LONGEST_LINE + 1):
        if len(line) > LONGEST_LINE:
            raise InputError(path.name, f"has a line of more than {LONGEST_LINE:,} letters; {ACCEPTED}")
        if "\0" in line:
            raise InputError(path.name, f"is no plain text; {ACCEPTED}")
        yield line


def _delimiter(path: Path, columns: Mapping[str, str], form: RowForm) -> tuple[str, Placed]:
    """The sign between cells: the one with which the heading has the columns."""
    found: dict[str, Placed] = {}
    refusals: list[tuple[int, InputError]] = []
    for sign in DELIMITERS:
        try:
            heading = next(_rows_of_text(path, sign), None)
        except InputError as error:
            refusals.append((0, error))
            continue
        if heading is None:
            raise InputError(path.name, "is empty; accepted is a heading and a row for each entry")
        try:
            found[sign] = place_columns(heading.cells, columns, form)
        except InputError as error:
            refusals.append((len(heading.cells), error))
    if not found:
        raise max(refusals, key=lambda item: item[0])[1]
    if len(found) > 1:
        told = " and ".join(DELIMITERS[sign] for sign in found)
        raise InputError(path.name, f"can be read with {told} between its cells; accepted is one of them")
    return next(iter(found.items()))


def _cells(held: Mapping[int, Any], wide: int) -> list[Any]:
    """A row of a sheet as a list: made when it is asked for, because a cell may stand far to the right."""
    return [held.get(column) for column in range(1, wide + 1)]


def _rows_of_workbook(path: Path, wanted: str, option: str) -> list[tuple[int, dict[int, Any]]]:
    names = sorted(sheet_names(path))
    name = meant(wanted, names) if wanted else (names[0] if len(names) == 1 else None)
    if name is None:
        said = f"has no sheet {shown(wanted)}" if wanted else f"has {len(names)} sheets"
        raise InputError(
            path.name, f'{said}; there are: {listed(names, wanted)}; accepted is {option} "... , sheet=NAME"'
        )
    values, formulas = open_workbook(path, [name])
    sheet = values[name]
    without_result = unsaved(sheet, None if formulas is None else formulas[name])
    rows: dict[int, dict[int, Any]] = {}
    for (row, column), cell in sheet._cells.items():
        if (row, column) in without_result:
            rows.setdefault(row, {})[column] = Unread("a formula that was saved without its result")
        elif cell.value is not None and cell.data_type == "e":
            rows.setdefault(row, {})[column] = Unread(f"the error {shown(cell.value)}")
        elif cell.value is not None and str(cell.value).strip():
            rows.setdefault(row, {})[column] = cell.value
    for merged in sheet.merged_cells.ranges:
        first = f"merged with {merged.start_cell.coordinate}"
        for row, column in merged.cells:
            if row in rows and (row, column) != (merged.min_row, merged.min_col):
                rows[row][column] = Unread(first)
    _refuse_hidden(sheet, rows)
    return sorted(rows.items())


def _refuse_hidden(sheet: Worksheet, rows: Iterable[int]) -> None:
    """Refuse rows that do not show: whether they are meant is not in the file."""
    there = sheet.row_dimensions
    hidden = [row for row in sorted(rows) if row in there and there[row].hidden]
    if hidden:
        more = f" (and {len(hidden) - 1} more)" if len(hidden) > 1 else ""
        raise InputError(
            f"row {hidden[0]}",
            f"is hidden{more}; accepted is a sheet that shows every row: take the filter off, or "
            "delete what is not meant",
        )
