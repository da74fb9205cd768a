"""Read a production log: every row is one amount of one enquiry on one day."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

from costing.front_ends.production_log.column_map import Placed, is_amount, is_mass
from costing.front_ends.production_log.number_forms import DateForm, NumberForm, shown
from costing.front_ends.production_log.rows import LogFile, LogRow
from costing.quantities import InputError, listed, meant
from costing.quantities.units import convert
from costing.report.drain_month import Ran
from costing.settings.mill import Mill

MOST_TOLD = 10  # unknown enquiries in one refusal
MOST_KEPT = 10_000  # dates of unlike text that are not read twice
ENQUIRY = "enquiry"
PARTS = ("style", "recipe", "range")


class LeftOut(NamedTuple):
    """An enquiry that the book does not know: what the log calls it, its first row, and how many rows."""

    called: str
    row: int
    rows: int
    why: str

    def text(self) -> str:
        """In words."""
        more = f" and {self.rows - 1} more" if self.rows > 1 else ""
        return f"{self.called} (row {self.row}{more}): {self.why}"


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
    file = LogFile(path, columns)
    dates, numbers = DateForm(columns.get("dates", "")), NumberForm(columns.get("decimal", ""))
    try:
        seen: set[Any] = set()
        for row in file.rows():
            date = _cell(row, file.placed, "date")
            if date not in seen:
                dates.look(date, row.number)
                if len(seen) < MOST_KEPT:
                    seen.add(date)
            numbers.look(_cell(row, file.placed, "amount"), row.number)
        reader = _Reader(mill, file.placed, dates, numbers)
        for row in file.rows():
            reader.take(row)
    except InputError as error:
        if error.where.startswith("row "):
            raise InputError(f"{path.name}, {error.where}", error.message) from error
        raise
    left_out = list(reader.unknown.values())
    if left_out and not skip_unknown:
        told = "; ".join(item.text() for item in left_out[:MOST_TOLD])
        more = f"; and {len(left_out) - MOST_TOLD} more" if len(left_out) > MOST_TOLD else ""
        raise InputError(
            path.name,
            f"{len(left_out)} not known: {told}{more}; there are: {listed(mill.enquiries)}; accepted with "
            "--skip-unknown, which leaves those rows out",
        )
    if not reader.sums:
        raise InputError(path.name, "holds no amount above 0; accepted is one row or more")
    return Log([Ran(*about, *amounts) for about, amounts in reader.sums.items()], left_out)


def _cell(row: LogRow, placed: Placed, name: str) -> Any:
    at = placed.at.get(name)
    return row.cells[at] if at is not None and at < len(row.cells) else None


class _Reader:
    """Adds up rows by day, enquiry and point; every name is looked up once."""

    def __init__(self, mill: Mill, placed: Placed, dates: DateForm, numbers: NumberForm) -> None:
        self._mill, self._placed = mill, placed
        self._dates, self._numbers = dates, numbers
        self._codes: dict[tuple[str, ...], str] = {}
        self._points: dict[tuple[str, str], str] = {}
        self._days: dict[Any, datetime.date] = {}
        self._units: dict[str, tuple[int, float]] = {}  # unit -> yarn or cloth, and its factor
        self.sums: dict[tuple[datetime.date, str, str], list[float]] = {}
        self.unknown: dict[tuple[str, ...], LeftOut] = {}

    def take(self, row: LogRow) -> None:
        """Add one row."""
        date = self._date(row)
        amount, unit = self._amount(row)
        code = self._enquiry(row)
        if not code or not amount:
            return
        held = self.sums.setdefault((date, code, self._point(row, code)), [0.0, 0.0])
        place, factor = self._units[unit]
        held[place] += amount * factor

    def _date(self, row: LogRow) -> datetime.date:
        cell = _cell(row, self._placed, "date")
        if cell not in self._days:
            if len(self._days) > MOST_KEPT:
                self._days.clear()
            self._days[cell] = self._dates.read(cell, row.number)
        return self._days[cell]

    def _amount(self, row: LogRow) -> tuple[float, str]:
        amount, own = self._numbers.read(_cell(row, self._placed, "amount"), row.number)
        given = _text(_cell(row, self._placed, "unit"))
        where = f"row {row.number}"
        if own and given and own != given:
            raise InputError(where, f"unit is {shown(own)} and {shown(given)}; accepted is one")
        unit = given or own or self._placed.unit
        if not unit:
            raise InputError(
                where, "the amount has no unit; accepted is kg, t, m or yd in a column, a cell or the heading"
            )
        if unit not in self._units:
            if not is_amount(unit):
                raise InputError(where, f"unit is {shown(unit)}; accepted is one such as kg, t, m or yd")
            house = "kg" if is_mass(unit) else "m"
            self._units[unit] = (int(house == "m"), convert(1.0, unit, house))
        if not 0.0 <= amount < float("inf"):
            raise InputError(where, f"amount is {amount:g} {unit}; accepted is 0 and above")
        return amount, unit

    def _enquiry(self, row: LogRow) -> str:
        """Code of the enquiry; "" where the book does not know it."""
        asked: tuple[str, ...] = (_text(_cell(row, self._placed, ENQUIRY)),)
        if not asked[0]:
            asked = tuple(_text(_cell(row, self._placed, part)) for part in PARTS)
        if asked not in self._codes:
            self._codes[asked] = self._looked_up(asked, row)
        code = self._codes[asked]
        if not code:
            item = self.unknown[asked]
            self.unknown[asked] = item._replace(rows=item.rows + 1)
        return code

    def _looked_up(self, asked: tuple[str, ...], row: LogRow) -> str:
        where = f"row {row.number}"
        if not any(asked):
            raise InputError(where, "enquiry is empty; accepted is a code of the book")
        enquiries = self._mill.enquiries
        if len(asked) == 1:
            refused = {code: error for (kind, code), error in self._mill.refused.items() if kind == ENQUIRY}
            if code := meant(asked[0], enquiries):
                return code
            held = meant(asked[0], refused)
            why = f"is refused: {refused[held].message}" if held else "not in the book"
        else:
            found = [
                code
                for code, item in enquiries.items()
                if all(meant(text, [getattr(item, part)]) is not None for text, part in zip(asked, PARTS))
            ]
            if len(found) == 1:
                return found[0]
            if found:
                raise InputError(
                    where, f"{' + '.join(asked)} is of {listed(found)}; accepted is a column with the enquiry"
                )
            why = "no enquiry of the book with this style, recipe and range"
        self.unknown[asked] = LeftOut(shown(" + ".join(asked)), row.number, 0, why)
        return ""

    def _point(self, row: LogRow, code: str) -> str:
        text = _text(_cell(row, self._placed, "point"))
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


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, float) and value == int(value):
        value = int(value)
    return " ".join(str(value).split())
