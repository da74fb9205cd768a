"""Read production and store issues that other systems of the mill write: every row is one record."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from costing.front_ends.row_files.column_map import RowForm, measures
from costing.front_ends.row_files.number_forms import shown
from costing.front_ends.row_files.reading import (
    EnquiryFinder,
    LeftOut,
    Rows,
    YarnOrCloth,
    of_file,
    refuse_unknown,
)
from costing.front_ends.row_files.rows import FileRow
from costing.quantities import InputError, check, meant
from costing.quantities.units import convert
from costing.settings.mill import Mill
from costing.settings.records import IssueRecord, MadeRow

PRODUCTION = RowForm(
    "production record",
    ("date", "enquiry", "style", "recipe", "range", "amount", "planned", "unit", "shift"),
    ((("date",),), (("amount",),), (("enquiry",), ("style", "recipe", "range"))),
    {"amount": ("kg", "m"), "planned": ("kg", "m")},
    "date=Datum, enquiry=Auftrag, amount=kg, shift=Schicht",
    "--production-columns",
)
ISSUES = RowForm(
    "store issues",
    ("date", "material", "mass", "unit", "strength", "price", "range", "shade", "shift"),
    ((("date",),), (("material",),), (("mass",),)),
    {"mass": ("kg",), "strength": ("%",), "price": ()},
    "date=Datum, material=Artikel, mass=Menge, price=Preis",
    "--issues-columns",
)
STOCK_TAKE = RowForm(
    "stock take",
    ("date", "material", "opening", "received", "closing", "unit", "strength", "price"),
    ((("date",),), (("material",),), (("opening",),), (("received",),), (("closing",),)),
    {"opening": ("kg",), "received": ("kg",), "closing": ("kg",), "strength": ("%",), "price": ()},
    "date=Datum, material=Artikel, opening=Anfang, received=Zugang, closing=Ende",
    "--stock-take-columns",
)
MOST_RECORDS = 1_000_000
_MONEY = re.compile(r"\b([A-Z]{3})\b(\s*/)?")
_PER = re.compile(r"/\s*([^\W\d_]+)")


class MadeFile(NamedTuple):
    """Production of a file, and what it names that the book does not know."""

    rows: list[MadeRow]
    left_out: list[LeftOut]


class IssueFile(NamedTuple):
    """Issues of a file, what it names that the book does not know, and columns that it lacks."""

    issues: list[IssueRecord]
    left_out: list[LeftOut]
    lacks: list[str]


def read_production(
    path: Path, mill: Mill, columns: Mapping[str, str], skip_unknown: bool = False
) -> MadeFile:
    """Read a production record.

    Parameters
    ----------
    path : Path
        A .csv or .xlsx file.
    mill : Mill
        The book, whose enquiries the rows name.
    columns : mapping
        Column -> heading, as `asked_columns` gives it.
    skip_unknown : bool, optional
        True to leave out rows of enquiries that the book does not know, and tell them.

    Raises
    ------
    InputError
        The first row that is refused, or all enquiries that the book does not know.
    """
    found: list[MadeRow] = []
    try:
        rows = Rows(path, columns, PRODUCTION)
        amounts, enquiries = YarnOrCloth(rows), EnquiryFinder(mill)
        for row in rows:
            where = f"row {row.number}"
            day, (amount, cloth) = rows.date(row), amounts.read(row, "amount")
            planned = None
            if rows.text(row, "planned"):
                planned, as_cloth = amounts.read(row, "planned")
                if as_cloth != cloth:
                    raise InputError(
                        where,
                        "planned is counted unlike the amount; accepted are both as yarn, or both as cloth",
                    )
            range_ = _known(rows, row, "range", mill.range)
            code = enquiries.code(rows, row)
            if code:
                yarn, metres = (None, amount) if cloth else (amount, None)
                shift, told = rows.text(row, "shift"), f"{path.name}, {where}"
                found.append(MadeRow(day, code, yarn, metres, planned, shift, range_, told))
            _refuse_many(path, len(found))
    except InputError as error:
        raise of_file(path, error) from error
    if not skip_unknown:
        enquiries.refuse_unknown(path)
    if not found:
        raise InputError(path.name, "holds no production; accepted is one row or more")
    return MadeFile(found, list(enquiries.unknown.values()))


def read_issues(
    path: Path, mill: Mill, columns: Mapping[str, str], skip_unknown: bool = False, form: RowForm = ISSUES
) -> IssueFile:
    """Read store issues, or a stock take: then what was there and came, less what is left, was issued.

    Parameters
    ----------
    path : Path
        A .csv or .xlsx file.
    mill : Mill
        The book, whose materials the rows name.
    columns : mapping
        Column -> heading, as `asked_columns` gives it.
    skip_unknown : bool, optional
        True to leave out rows of materials that the book does not know, and tell them.
    form : RowForm, optional
        `ISSUES` or `STOCK_TAKE`.

    Raises
    ------
    InputError
        The first row that is refused, or all materials that the book does not know.
    """
    found: list[IssueRecord] = []
    unknown: dict[str, LeftOut] = {}
    codes: dict[str, str | None] = {}
    try:
        rows = Rows(path, columns, form)
        price = _Price(rows, columns.get("price", ""), mill)
        for row in rows:
            where = f"row {row.number}"
            day, mass = rows.date(row), (_counted if form is STOCK_TAKE else _issued)(rows, row)
            name = rows.text(row, "material")
            if not name:
                raise InputError(where, "material is empty; accepted is a code of the book")
            if name not in codes:
                codes[name] = meant(name, mill.materials)
            code = codes[name]
            if code is None:
                item = unknown.setdefault(name, LeftOut(shown(name), row.number, 0, "not in the book"))
                unknown[name] = item._replace(rows=item.rows + 1)
                continue
            found.append(
                IssueRecord(
                    day,
                    code,
                    mass,
                    rows.quantity_if_any(row, "strength", "strength", unit_column=""),
                    price.read(row),
                    _known(rows, row, "range", mill.range),
                    _known(rows, row, "shade", mill.recipe),
                    rows.text(row, "shift"),
                    f"{path.name}, {where}",
                )
            )
            _refuse_many(path, len(found))
    except InputError as error:
        raise of_file(path, error) from error
    if not skip_unknown:
        refuse_unknown(path, unknown.values(), mill.materials)
    if not found:
        raise InputError(path.name, "holds no row of a material; accepted is one or more")
    lacks = [name for name in ("strength", "price", "range", "shade", "shift") if name not in rows.placed.at]
    return IssueFile(found, list(unknown.values()), lacks)


class _Price:
    """The price paid: in the mill's money, by the mass that the heading says, else by the kilogram."""

    def __init__(self, rows: Rows, heading: str, mill: Mill) -> None:
        assert mill.costs is not None
        self._rows, self._money = rows, mill.costs.currency
        per = _PER.search(heading)
        if per and not measures(per[1], ("kg",)):
            raise InputError(
                "row 1", f"{shown(heading)} is no price by mass; accepted is one such as per kg or t"
            )
        self._mass = convert(1.0, per[1], "kg") if per else 1.0
        others = {rate.currency for rate in mill.rates}
        for word, is_per in _MONEY.findall(heading):
            if is_per or word in others:
                self._refuse_other(word, "row 1")

    def _refuse_other(self, money: str, where: str) -> None:
        if money != self._money:
            raise InputError(
                where, f"price is in {shown(money)}; accepted is the mill's money, {self._money}"
            )

    def read(self, row: FileRow) -> float | None:
        """Money of the mill for a kilogram; None where the cell is empty."""
        if not self._rows.text(row, "price"):
            return None
        amount, unit = self._rows.number(row, "price", "")
        where = f"row {row.number}"
        if unit:
            self._refuse_other(unit, where)
        return float(check("price_paid", amount / self._mass, where))


def _issued(rows: Rows, row: FileRow) -> float:
    return rows.quantity(row, "mass", "issued_mass")


def _counted(rows: Rows, row: FileRow) -> float:
    """What was used between two counts [kg]."""
    opening, received, closing = (
        rows.quantity(row, name, "stock_mass") for name in ("opening", "received", "closing")
    )
    if closing > opening + received:
        raise InputError(
            f"row {row.number}",
            f"closing is {closing:,.6g} kg, more than opening and received, "
            f"{opening + received:,.6g} kg; accepted is as much or less: a delivery may be missing",
        )
    return opening + received - closing


def _known(rows: Rows, row: FileRow, name: str, find: Callable[[str, str], Any]) -> str:
    """A code of the book; "" where the cell is empty."""
    text = rows.text(row, name)
    return str(find(text, f"row {row.number}").code) if text else ""


def _refuse_many(path: Path, count: int) -> None:
    if count > MOST_RECORDS:
        raise InputError(path.name, f"holds more than {MOST_RECORDS:,} records; accepted is a part of it")
