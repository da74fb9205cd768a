"""Read the sheets Production record and Store issues: what was made, and what left the store."""

from __future__ import annotations

from costing.book.layout import tables_of
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table
from costing.quantities import InputError
from costing.settings.mill import Mill
from costing.settings.records import IssueRecord, MadeRow

PRODUCTION_RECORD, STORE_ISSUES = "Production record", "Store issues"
PLANNED = {"yarn_made": "yarn_planned", "cloth_made": "cloth_planned"}


def read_production_record(sheet: Sheet, mill: Mill) -> list[MadeRow]:
    """What was made, a line for each row.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("production_record")
    return [_made(row, mill) for row in read_table(sheet, table)]


def _made(row: TableRow, mill: Mill) -> MadeRow:
    enquiry = mill.enquiry_code(row.code, row.where)
    day = row.date("day")
    if day is None:
        raise InputError(row.at("day"), "day is empty; accepted is the day on which it was made")
    amounts = {name: row.number(name, f"{name}_unit") for name in PLANNED}
    planned = {
        name: row.number(of, f"{name}_unit", quantity=row.columns[name].quantity)
        for name, of in PLANNED.items()
    }
    filled = [name for name, amount in amounts.items() if amount is not None]
    if len(filled) != 1:
        said = "both are filled" if filled else "both are empty"
        raise InputError(row.at("yarn_made"), f"yarn made and cloth made: {said}; accepted is one of the two")
    (other,) = (name for name in PLANNED if name not in filled)
    if planned[other] is not None:
        raise InputError(
            row.at(PLANNED[other]),
            "what was planned is counted unlike what was made; accepted are both as yarn, or both as cloth",
        )
    return MadeRow(
        day,
        enquiry,
        amounts["yarn_made"],
        amounts["cloth_made"],
        planned[filled[0]],
        row.text("shift"),
        _range(row, mill),
        row.where,
    )


def read_store_issues(sheet: Sheet, mill: Mill) -> list[IssueRecord]:
    """What left the store, a record for each row.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("store_issues")
    return [_issue(row, mill) for row in read_table(sheet, table)]


def _issue(row: TableRow, mill: Mill) -> IssueRecord:
    material = mill.material(row.code, row.where).code
    day, mass = row.date("day"), row.number("issued_mass", "issued_mass_unit")
    if day is None:
        raise InputError(row.at("day"), "day is empty; accepted is the day on which it left the store")
    if mass is None:
        raise InputError(row.at("issued_mass"), "mass is empty; accepted is what left the store")
    shade = row.text("shade")
    return IssueRecord(
        day,
        material,
        mass,
        row.number("strength", unit="%"),
        row.number("price_paid", unit="money/kg"),
        _range(row, mill),
        mill.recipe(shade, row.at("shade")).code if shade else "",
        row.text("shift"),
        row.where,
    )


def _range(row: TableRow, mill: Mill) -> str:
    text = row.text("range")
    return mill.range(text, row.at("range")).code if text else ""
