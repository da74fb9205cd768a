"""Read a production log: every row is one amount of one enquiry on one day."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from costing.front_ends.row_files.column_map import RowForm
from costing.front_ends.row_files.number_forms import shown
from costing.front_ends.row_files.reading import EnquiryFinder, LeftOut, Rows, YarnOrCloth, of_file
from costing.front_ends.row_files.rows import FileRow
from costing.quantities import InputError, listed, meant
from costing.report.drain_month import Ran
from costing.settings.mill import Mill

FORM = RowForm(
    "production log",
    ("date", "enquiry", "style", "recipe", "range", "amount", "unit", "point"),
    ((("date",),), (("amount",),), (("enquiry",), ("style", "recipe", "range"))),
    {"amount": ("kg", "m")},
    "date=Datum, enquiry=Auftrag, amount=kg",
)


class Log(NamedTuple):
    """What a log holds: what ran, and what was left out."""

    ran: list[Ran]
    left_out: list[LeftOut]


def read_log(path: Path, mill: Mill, columns: Mapping[str, str], skip_unknown: bool = False) -> Log:
    """Read a log.

    Parameters
    ----------
    path : Path
        A .csv or .xlsx file.
    mill : Mill
        The book, whose enquiries and points the log names.
    columns : mapping
        Column -> heading, as `asked_columns` gives it.
    skip_unknown : bool, optional
        True to leave out rows of enquiries that the book does not know, and tell them.

    Raises
    ------
    InputError
        The first row that is refused, or all enquiries that the book does not know.
    """
    try:
        rows = Rows(path, columns, FORM)
        reader = _Reader(mill, rows)
        for row in rows:
            reader.take(row)
    except InputError as error:
        raise of_file(path, error) from error
    if not skip_unknown:
        reader.enquiries.refuse_unknown(path)
    if not reader.sums:
        raise InputError(path.name, "holds no amount above 0; accepted is one row or more")
    left_out = list(reader.enquiries.unknown.values())
    return Log([Ran(*about, *amounts) for about, amounts in reader.sums.items()], left_out)


class _Reader:
    """Adds up rows by day, enquiry and point; every name is looked up once."""

    def __init__(self, mill: Mill, rows: Rows) -> None:
        self._mill, self._rows = mill, rows
        self.enquiries = EnquiryFinder(mill)
        self._points: dict[tuple[str, str], str] = {}
        self._amounts = YarnOrCloth(rows)
        self.sums: dict[tuple[datetime.date, str, str], list[float]] = {}

    def take(self, row: FileRow) -> None:
        """Add one row."""
        date = self._rows.date(row)
        amount, cloth = self._amounts.read(row, "amount")
        code = self.enquiries.code(self._rows, row)
        if not code or not amount:
            return
        held = self.sums.setdefault((date, code, self._point(row, code)), [0.0, 0.0])
        held[cloth] += amount

    def _point(self, row: FileRow, code: str) -> str:
        text = self._rows.text(row, "point")
        key = (text, code)
        if key not in self._points:
            self._points[key] = self._point_of(text, code, f"row {row.number}")
        return self._points[key]

    def _point_of(self, text: str, code: str, where: str) -> str:
        drain = self._mill.drain
        if text:
            known = meant(text, drain.points)
            if known is None:
                raise InputError(where, f"point is {shown(text)}; there are: {listed(drain.points, text)}")
            return known
        planned = list(dict.fromkeys(item.point for item in drain.production if item.enquiry == code))
        points = planned or list(drain.points)
        if len(points) != 1:
            raise InputError(
                where, f"{code} may run to {listed(points)}; accepted is a column with the point"
            )
        return points[0]
