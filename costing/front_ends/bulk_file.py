"""Tables of many rows as files, .csv, .xlsx or .parquet: read as they stand, written whole or not at all."""

from __future__ import annotations

import contextlib
import csv
import io
import secrets
import shutil
import warnings
from pathlib import Path
from typing import TYPE_CHECKING, Any

from costing.front_ends.formula_text import harmless
from costing.front_ends.whole_file import write_whole
from costing.front_ends.workbook.open_file import refuse_open_elsewhere, workbook_content
from costing.front_ends.workbook.results import sheet_names
from costing.front_ends.workbook.results_cells import NOT_AVAILABLE, is_quoted
from costing.quantities import InputError

if TYPE_CHECKING:
    import pandas

SUFFIXES = (".csv", ".xlsx", ".parquet")
PARQUET = ".parquet"
SIGNS = (",", ";", "\t")
MOST_SHEET_ROWS = 1_048_575  # below the heading
MOST_LETTERS = 32_767  # of a cell
EMPTY = "is empty; accepted is a row of headings and a row for each quote"
EXTRA = 'pip install "denim-warp-costing[bulk]"'


def needs(error: ImportError) -> InputError:
    """What to say where a library of the extra is not installed."""
    return InputError("bulk", f"needs the library {error.name}; accepted is after: {EXTRA}")


def read_table(path: Path, decimal: str = ".") -> pandas.DataFrame:
    """Read a table; its headings are in the first row.

    Parameters
    ----------
    path : Path
        A .csv file in UTF-8, an .xlsx workbook of one sheet, or a .parquet file.
    decimal : str, optional
        Decimal sign of a .csv file.

    Raises
    ------
    InputError
        Another kind of file, one that cannot be read, a heading that is empty or stands there twice.
    """
    refuse_open_elsewhere(path)
    kind = path.suffix.lower()
    if kind not in SUFFIXES:
        raise InputError(str(path), f"is no table; accepted is a file that ends in {', '.join(SUFFIXES)}")
    try:
        import pandas
    except ImportError as error:
        raise needs(error) from error
    try:
        if kind == PARQUET:
            return pandas.read_parquet(path)
        return _without_end(_of_text(path, decimal) if kind == ".csv" else _of_sheet(path))
    except ImportError as error:
        raise needs(error) from error
    except InputError:
        raise
    except OSError as error:
        raise InputError(str(path), f"cannot be read: {error.strerror or error}") from error
    except (ValueError, pandas.errors.ParserWarning) as error:  # of a parser, or of a decoder
        raise InputError(str(path), f"cannot be read: {str(error).splitlines()[0]}") from error


def _without_end(table: pandas.DataFrame) -> pandas.DataFrame:
    """The table without the empty rows that stand below it."""
    filled = table.notna().any(axis=1).to_numpy().nonzero()[0]
    return table.iloc[: filled[-1] + 1 if len(filled) else 0]


def _of_text(path: Path, decimal: str) -> pandas.DataFrame:
    import pandas

    with path.open(encoding="utf-8-sig", newline="") as stream:
        line = stream.readline(100_000)
        sign = max(SIGNS, key=line.count)
        if sign == decimal:
            raise InputError(path.name, f"has {sign!r} between its cells; accepted is another decimal sign")
        headings = next(csv.reader([line], delimiter=sign), [])
    if not headings:
        raise InputError(path.name, EMPTY)
    _check_headings(path, headings)
    with warnings.catch_warnings():
        warnings.simplefilter("error", pandas.errors.ParserWarning)  # cells behind the last heading are lost
        return pandas.read_csv(
            path,
            sep=sign,
            decimal=decimal,
            encoding="utf-8-sig",
            header=None,
            skiprows=1,
            names=list(range(len(headings))),
            index_col=False,
            keep_default_na=False,
            na_values=[""],
            skip_blank_lines=False,
            low_memory=False,
        ).set_axis(headings, axis=1)


def _of_sheet(path: Path) -> pandas.DataFrame:
    import pandas

    cells: Any

    workbook_content(path)  # refuses what is no workbook, or would fill the memory
    names = sheet_names(path)
    if len(names) != 1:
        raise InputError(path.name, f"has {len(names)} sheets; accepted is a workbook of one")
    cells = pandas.read_excel(
        path, engine="openpyxl", header=None, dtype=object, keep_default_na=False, na_values=[""]
    )
    if not len(cells):
        raise InputError(path.name, EMPTY)
    headings = ["" if cell != cell or cell is None else str(cell) for cell in cells.iloc[0]]
    _check_headings(path, headings)
    table: pandas.DataFrame = cells.iloc[1:].reset_index(drop=True).infer_objects().set_axis(headings, axis=1)
    return table


def _check_headings(path: Path, headings: list[str]) -> None:
    seen: set[str] = set()
    for number, heading in enumerate(headings, start=1):
        if not heading.strip():
            raise InputError(path.name, f"the heading of column {number} is empty; accepted is a name")
        if heading in seen:
            raise InputError(path.name, f"the heading {heading!r} stands there twice; accepted is once")
        seen.add(heading)


def check_target(path: Path, overwrite: bool) -> None:
    """Refuse a name before the work is done, as `write_whole` would behind it."""
    if path.suffix.lower() not in SUFFIXES:
        raise InputError(str(path), f"the name of a table must end in {' or '.join(SUFFIXES)}")
    if path.exists() and not overwrite:
        raise InputError(
            str(path), "is there already and was left as it is; accepted is the name of a new file"
        )
    if not path.parent.is_dir():
        raise InputError(str(path), "its folder is not there; accepted is a folder that is")


def write_table(path: Path, table: pandas.DataFrame, overwrite: bool = False) -> None:
    """Write a table by the end of its name; what is not a number is an error in a cell, never a zero.

    Raises
    ------
    InputError
        As `write_whole`; more rows than a sheet has.
    """
    kind = path.suffix.lower()
    if kind == ".xlsx" and len(table) > MOST_SHEET_ROWS:
        raise InputError(
            str(path), f"a sheet has no room for {len(table):,} rows; accepted is .csv or .parquet"
        )
    make = {".csv": _text, ".xlsx": _sheet, PARQUET: _parquet}.get(kind, _text)
    try:
        write_whole(lambda: make(table), path, what="a table", suffixes=SUFFIXES, overwrite=overwrite)
    except ImportError as error:
        raise needs(error) from error


def _parquet(table: pandas.DataFrame) -> bytes:
    stream = io.BytesIO()
    table.to_parquet(stream, index=False)
    return stream.getvalue()


def _text(table: pandas.DataFrame) -> bytes:
    """As CSV: a text that a spreadsheet program would take for a formula has an apostrophe in front."""
    shown = table.copy(deep=False)
    for place, heading in enumerate(table.columns):
        if table.dtypes.iloc[place].kind not in "iufb":
            shown[heading] = table.iloc[:, place].map(harmless, na_action="ignore")
        elif heading in _results(table):
            shown[heading] = (
                table.iloc[:, place].astype(object).where(table.iloc[:, place].notna(), NOT_AVAILABLE)
            )
    return shown.rename(columns=harmless).to_csv(index=False, lineterminator="\r\n").encode("utf-8-sig")


def _results(table: pandas.DataFrame) -> set[str]:
    """Headings of the results: those behind the basis."""
    headings = list(table.columns)
    return set(headings[headings.index("basis") :]) if "basis" in headings else set()


def _sheet(table: pandas.DataFrame) -> bytes:
    from openpyxl import Workbook
    from openpyxl.cell import WriteOnlyCell
    from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE

    book = Workbook(write_only=True)
    sheet = book.create_sheet("Quotes")
    sheet.freeze_panes = "A2"
    results = _results(table)

    def cell(value: Any, of_result: bool = False) -> Any:
        if isinstance(value, str):
            clean = ILLEGAL_CHARACTERS_RE.sub("", value)[:MOST_LETTERS]
            if not is_quoted(clean):
                return clean
            made = WriteOnlyCell(sheet, clean)
            made.data_type = "s"
            made.quotePrefix = True
            return made
        if value is None or value != value:
            if not of_result:
                return None
            made = WriteOnlyCell(sheet, NOT_AVAILABLE)
            made.data_type = "e"
            return made
        return value

    sheet.append([cell(str(heading)) for heading in table.columns])
    marks = [heading in results for heading in table.columns]
    for row in table.astype(object).itertuples(index=False, name=None):
        sheet.append([cell(value, mark) for value, mark in zip(row, marks)])
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def write_partitions(path: Path, frame: Any, overwrite: bool = False) -> None:
    """Write the partitions of a Dask table as a folder of .parquet files, under another name first.

    Raises
    ------
    InputError
        A folder of that name is there already, or it cannot be written; then nothing of it stays behind.
    """
    check_target(path, overwrite)
    if path.suffix.lower() != PARQUET:
        raise InputError(str(path), f"holds partitions; accepted is a name that ends in {PARQUET}")
    part = path.with_name(f".{path.stem}.{secrets.token_hex(4)}.part")
    try:
        frame.to_parquet(str(part), write_index=False)
        if path.is_dir() and not path.is_symlink():
            earlier = part.with_suffix(".earlier")
            path.rename(earlier)
            part.rename(path)
            shutil.rmtree(earlier)
        else:
            part.replace(path) if not path.exists() else _replace_file(part, path)
    except OSError as error:
        raise InputError(str(path), f"could not be written: {error.strerror or error}") from error
    finally:
        with contextlib.suppress(OSError):
            shutil.rmtree(part)


def _replace_file(part: Path, path: Path) -> None:
    path.unlink()
    part.rename(path)
