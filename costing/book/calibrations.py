"""Read the sheet Calibrations: values that the mill's own records gave, and which of them count."""

from __future__ import annotations

from functools import lru_cache

from costing.book.layout import tables_of
from costing.book.quantity_cell import read_quantity
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table
from costing.quantities import QUANTITIES, InputError, label, listed, meant
from costing.reference_data import defaults
from costing.settings.calibration import CalibratedFactor
from costing.settings.mill import Mill
from costing.settings.steps import STEP_KINDS

SHEET = "Calibrations"
ALL = "all"


@lru_cache(maxsize=32)
def factors_of(kind: str = "") -> dict[str, str]:
    """Label -> name of the numbers of a kind of step, or of all kinds, that have a typical value.

    Examples
    --------
    >>> factors_of("indigo")["rinse loss"]
    'rinse_loss'
    """
    typical = {row.quantity for row in defaults().values()}
    kinds = [STEP_KINDS[kind]] if kind else STEP_KINDS.values()
    names = dict.fromkeys(name for one in kinds for name in (*one.RECIPE, *one.RANGE))
    return {label(name): name for name in names if name in typical and not QUANTITIES[name].whole}


def read_calibrations(sheet: Sheet, mill: Mill) -> None:
    """Read the rows into the mill, whose routes and ranges are read already.

    Raises
    ------
    InputError
        The first cell that is refused, two rows for one number, or two dates of one name.
    """
    (table,) = tables_of("calibrations")
    kept: dict[tuple[str, str, str, str], str] = {}
    days: dict[str, CalibratedFactor] = {}
    for row in read_table(sheet, table):
        name = meant(row.code, days) or row.code
        made = _row(row, name, mill)
        first = days.setdefault(name, made)
        if first.calibration_date != made.calibration_date:
            raise InputError(
                row.at("calibration_date"),
                f"calibration {name!r} is of {made.calibration_date} here and of {first.calibration_date} in "
                f"{first.where}; accepted is one date for a name",
            )
        key = (name, made.range, made.step, made.quantity)
        if key in kept:
            raise InputError(
                row.where,
                f"{label(made.quantity)} of calibration {name!r} stands twice for the same range and step, "
                f"also in {kept[key]}; accepted is one row",
            )
        kept[key] = row.where
        mill.calibrations.append(made)


def choose_calibration(mill: Mill) -> None:
    """Find the calibration that the sheet Mill costs names, as its rows spell it.

    Raises
    ------
    InputError
        There is none of that name.
    """
    if not mill.calibration:
        return
    known = dict.fromkeys(row.calibration for row in mill.calibrations)
    found = meant(mill.calibration, known)
    if found is None:
        there = (
            f"there are: {listed(known, mill.calibration)}" if known else "the sheet Calibrations has none"
        )
        raise InputError(
            mill.cell_of("costs", "", "calibration"),
            f"calibration {mill.calibration!r} is not in the book; {there}; accepted is one of "
            "them, or an empty "
            "cell for the typical values",
        )
    mill.calibration = found


def _row(row: TableRow, name: str, mill: Mill) -> CalibratedFactor:
    day = row.date("calibration_date")
    if day is None:
        raise InputError(row.at("calibration_date"), "date is empty; accepted is the day of the calibration")
    kinds = {step: kind for route in mill.routes.values() for step, kind in route}
    step = _named(row, "step", kinds)
    ranges = [*mill.ranges, *(code for sort, code in mill.refused if sort == "range")]
    range_ = _named(row, "range", ranges)
    known, text = factors_of(kinds[step] if step else ""), row.text("quantity")
    found = meant(text, known)
    if found is None:
        of = f"the step {step!r}" if step else "a step"
        raise InputError(
            row.at("quantity"),
            f"{text!r} is no number of {of} that has a typical value; there are: {listed(known, text)}",
        )
    quantity = known[found]
    value = _number(row, "value", quantity)
    low, high = (_number(row, end, quantity) for end in ("low", "high"))
    if value is None:
        raise InputError(row.at("value"), "value is empty; accepted is the calibrated value, with its unit")
    return CalibratedFactor(
        name,
        day,
        range_,
        step,
        quantity,
        value,
        value if low is None else low,
        value if high is None else high,
        row.text("note"),
        row.where,
    )


def _named(row: TableRow, column: str, known: object) -> str:
    """A step or a range as the book spells it; "" for all."""
    names = list(known)  # type: ignore[call-overload]
    text = row.text(column)
    if not text or text.casefold() == ALL:
        return ""
    found = meant(text, names)
    if found is None:
        raise InputError(
            row.at(column),
            f"{column} {text!r} is not in the book; accepted is {ALL} or one of: {listed(names, text)}",
        )
    return found


def _number(row: TableRow, column: str, quantity: str) -> float | None:
    cell = row.cells[column]
    if cell.is_empty:
        return None
    unit, called = row.cells["unit"].value, f"{column} of {label(quantity)}"
    return read_quantity(
        cell.value, unit, quantity, cell.where, called=called, shown_as_percent=cell.shown_as_percent
    )
