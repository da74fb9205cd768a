"""Read the rows of a file twice: once to learn how it writes dates and numbers, then what they say."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from costing.book.lye_scale import SCALES
from costing.book.quantity_cell import read_quantity
from costing.front_ends.row_files.column_map import Placed, RowForm, measures
from costing.front_ends.row_files.number_forms import DateForm, NumberForm, shown
from costing.front_ends.row_files.rows import FileRow, RowFile, Unread
from costing.quantities import CHOICES, QUANTITIES, InputError, listed, meant
from costing.quantities.checking import LIMITS, check_choice
from costing.quantities.units import canonical, convert
from costing.settings.mill import Mill

MOST_KEPT = 10_000  # dates of unlike text that are not read twice
MOST_TOLD = 10  # unknown names in one refusal
ENQUIRY = "enquiry"
PARTS = ("style", "recipe", "range")


class LeftOut(NamedTuple):
    """A name that the book does not know: what the file calls it, its first row, and how many rows."""

    called: str
    row: int
    rows: int
    why: str

    def text(self) -> str:
        """In words."""
        more = f" and {self.rows - 1} more" if self.rows > 1 else ""
        return f"{self.called} (row {self.row}{more}): {self.why}"


def cell_of(row: FileRow, placed: Placed, name: str) -> Any:
    """The cell of a column; None where the file has no such column.

    Raises
    ------
    InputError
        What it holds cannot be said.
    """
    at = placed.at.get(name)
    cell = row.cells[at] if at is not None and at < len(row.cells) else None
    if isinstance(cell, Unread):
        raise InputError(f"row {row.number}", f"{name} is {cell.why}; accepted is a cell with its own value")
    return cell


def text_of(value: Any) -> str:
    """A cell as text; a code of digits may come as a number."""
    if value is None:
        return ""
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return " ".join(str(value).split())


class Rows:
    """The rows of a file, once all of them were looked at.

    Parameters
    ----------
    path : Path
        A .csv or .xlsx file.
    columns : mapping
        Column -> heading, as `asked_columns` gives it.
    form : RowForm
        What the rows hold.
    dates : tuple of str, optional
        Its columns of dates.

    Raises
    ------
    InputError
        A file that cannot be read, or whose dates and numbers can be read in two ways.
    """

    def __init__(
        self, path: Path, columns: Mapping[str, str], form: RowForm, dates: tuple[str, ...] = ("date",)
    ) -> None:
        self._file = RowFile(path, columns, form)
        self.placed = self._file.placed
        self._dates, self._numbers = (
            DateForm(columns.get("dates", ""), form.option),
            NumberForm(columns.get("decimal", ""), form.option),
        )
        self._days: dict[Any, datetime.date] = {}
        self._scaled: dict[tuple[str, str], tuple[str, str] | None] = {}
        seen: set[Any] = set()
        numbers = tuple(name for name in form.measured if name in self.placed.at)
        for row in self._file.rows():
            for name in dates:
                date = cell_of(row, self.placed, name)
                if date not in seen and not (date is None or text_of(date) == ""):
                    self._dates.look(date, row.number, name)
                    if len(seen) < MOST_KEPT:
                        seen.add(date)
            for name in numbers:
                self._numbers.look(cell_of(row, self.placed, name), row.number, name)

    def __iter__(self) -> Iterator[FileRow]:
        return self._file.rows()

    def text(self, row: FileRow, name: str) -> str:
        """A text; "" where it is empty."""
        return text_of(cell_of(row, self.placed, name))

    def choice(self, row: FileRow, name: str, of: str, usual: str) -> str:
        """A word of a list, or the usual one where the cell is empty."""
        text = self.text(row, name)
        assert of in CHOICES, of
        return check_choice(of, text, f"row {row.number}") if text else usual

    def date(self, row: FileRow, name: str = "date") -> datetime.date:
        """A date.

        Raises
        ------
        InputError
            Empty, or no day.
        """
        cell = cell_of(row, self.placed, name)
        if cell not in self._days:
            if len(self._days) > MOST_KEPT:
                self._days.clear()
            if text_of(cell) == "":
                raise InputError(f"row {row.number}", f"{name} is empty; accepted is a date")
            self._days[cell] = self._dates.read(cell, row.number, name)
        return self._days[cell]

    def date_if_any(self, row: FileRow, name: str) -> datetime.date | None:
        """A date; None where it is empty."""
        return self.date(row, name) if self.text(row, name) else None

    def number(self, row: FileRow, name: str, unit_column: str = "unit") -> tuple[float, str]:
        """A number as it stands, and its unit: of the cell, its column, or the heading; "" without one.

        Raises
        ------
        InputError
            No number, or two units.
        """
        amount, own = self._numbers.read(cell_of(row, self.placed, name), row.number, name)
        given = self.text(row, unit_column)
        if own and given and own != given:
            raise InputError(f"row {row.number}", f"unit is {shown(own)} and {shown(given)}; accepted is one")
        return amount, given or own or self.placed.units.get(name, "")

    def quantity(self, row: FileRow, name: str, quantity: str, unit_column: str = "unit") -> float:
        """A number in the house unit of a quantity, checked.

        Raises
        ------
        InputError
            No number, no unit or a wrong one, or out of range.
        """
        amount, unit = self.number(row, name, unit_column)
        if not unit and QUANTITIES[quantity].usual not in ("", "%"):
            usual = QUANTITIES[quantity].usual
            raise InputError(
                f"row {row.number}",
                f"{name} has no unit; accepted is one behind the heading, as '{name} [{usual}]', behind the "
                f"number, or in a column of its own: {unit_column}=HEADING",
            )
        if (quantity, unit) not in self._scaled:
            self._scaled[quantity, unit] = _scaled(quantity, unit)
        if plain := self._scaled[quantity, unit]:
            house = convert(amount, *plain)
            low, high = LIMITS[quantity]
            if low <= house <= high:
                return house
        return read_quantity(amount, unit, quantity, f"row {row.number}", called=name)

    def quantity_if_any(
        self, row: FileRow, name: str, quantity: str, unit_column: str = "unit"
    ) -> float | None:
        """As `quantity`; None where the cell is empty."""
        return self.quantity(row, name, quantity, unit_column) if self.text(row, name) else None


def _scaled(name: str, unit: str) -> tuple[str, str] | None:
    """Unit and house unit where the one is a factor of the other; None where more must be looked at."""
    item = QUANTITIES[name]
    if item.usual in ("", "%") or item.whole:
        return None
    try:
        known = canonical(unit)
    except KeyError:
        return None
    return (known, item.unit) if known not in SCALES and measures(known, (item.unit,)) else None


class EnquiryFinder:
    """The enquiries that rows name, each looked up once.

    Parameters
    ----------
    mill : Mill
        The book.
    """

    def __init__(self, mill: Mill) -> None:
        self._mill = mill
        self._codes: dict[tuple[str, ...], str] = {}
        self.unknown: dict[tuple[str, ...], LeftOut] = {}

    def code(self, rows: Rows, row: FileRow) -> str:
        """Code of the enquiry of a row; "" where the book does not know it, and then it is in `unknown`.

        Raises
        ------
        InputError
            Nothing is named, or several enquiries are meant.
        """
        asked: tuple[str, ...] = (rows.text(row, ENQUIRY),)
        if not asked[0]:
            asked = tuple(rows.text(row, part) for part in PARTS)
        if asked not in self._codes:
            self._codes[asked] = self._looked_up(asked, row)
        code = self._codes[asked]
        if not code:
            item = self.unknown[asked]
            self.unknown[asked] = item._replace(rows=item.rows + 1)
        return code

    def _looked_up(self, asked: tuple[str, ...], row: FileRow) -> str:
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
                if all(
                    not text or meant(text, [getattr(item, part)]) is not None
                    for text, part in zip(asked, PARTS)
                )
            ]
            if len(found) == 1:
                return found[0]
            told = " + ".join(filter(None, asked))
            if found:
                raise InputError(
                    where, f"{told} is of {listed(found)}; accepted is a column with the enquiry"
                )
            why = f"no enquiry of the book with this {', '.join(PARTS[:-1])} and {PARTS[-1]}"
        self.unknown[asked] = LeftOut(shown(" + ".join(filter(None, asked))), row.number, 0, why)
        return ""

    def refuse_unknown(self, path: Path) -> None:
        """Refuse a file that names what the book does not know.

        Raises
        ------
        InputError
            Names all of it, as far as there is room.
        """
        refuse_unknown(path, self.unknown.values(), self._mill.enquiries)


def refuse_unknown(path: Path, unknown: Iterable[LeftOut], known: Iterable[str]) -> None:
    """Refuse a file that names what the book does not know.

    Raises
    ------
    InputError
        Names all of it, as far as there is room.
    """
    left_out = list(unknown)
    if left_out:
        told = "; ".join(item.text() for item in left_out[:MOST_TOLD])
        more = f"; and {len(left_out) - MOST_TOLD} more" if len(left_out) > MOST_TOLD else ""
        raise InputError(
            path.name,
            f"{len(left_out)} not known: {told}{more}; there are: {listed(known)}; "
            "accepted with --skip-unknown, which leaves those rows out",
        )


class YarnOrCloth:
    """Amounts that are a mass of yarn or a length of cloth, as their unit says.

    Parameters
    ----------
    rows : Rows
        That hold them.
    """

    def __init__(self, rows: Rows) -> None:
        self._rows = rows
        self._units: dict[str, tuple[bool, float]] = {}  # unit -> cloth or yarn, and its factor

    def read(self, row: FileRow, name: str) -> tuple[float, bool]:
        """An amount [kg or m], and whether it is cloth.

        Raises
        ------
        InputError
            No number, one below 0, or no unit of mass or length.
        """
        amount, unit = self._rows.number(row, name)
        where = f"row {row.number}"
        if not unit:
            raise InputError(
                where,
                f"the {name} has no unit; accepted is kg, t, m or yd in a column, a cell or the heading",
            )
        if unit not in self._units:
            if not measures(unit, ("kg", "m")):
                raise InputError(where, f"unit is {shown(unit)}; accepted is one such as kg, t, m or yd")
            cloth = not measures(unit, ("kg",))
            self._units[unit] = (cloth, convert(1.0, unit, "m" if cloth else "kg"))
        if not 0.0 <= amount < float("inf"):
            raise InputError(where, f"{name} is {amount:g} {unit}; accepted is 0 and above")
        cloth, factor = self._units[unit]
        return amount * factor, cloth


def of_file(path: Path, error: InputError) -> InputError:
    """The same refusal with the name of the file before its row."""
    return (
        InputError(f"{path.name}, {error.where}", error.message) if error.where.startswith("row ") else error
    )
