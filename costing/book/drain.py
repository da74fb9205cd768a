"""Read the sheets of the drain: collecting points, what runs to them, other flows."""

from __future__ import annotations

from collections.abc import Mapping

from costing.book.columns import ColumnReader
from costing.book.drain_treatment import read_treatment
from costing.book.layout import column_sheet, tables_of
from costing.book.permit import read_permit
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.quantities import InputError
from costing.settings.building import build
from costing.settings.discharge_point import DischargePoint, OtherFlow, Production
from costing.settings.drain import Drain
from costing.settings.mill import Mill

DRAIN_SHEETS = ("Discharge points", "Discharge plan", "Treatment", "Permit")

# Column of the other flows -> parameter of the drain.
CONCENTRATIONS = {
    "cod": "COD, organic",
    "bod5": "BOD5",
    "suspended_solids": "suspended solids",
    "total_nitrogen": "total nitrogen",
    "chloride": "chloride",
    "sulfate": "sulfate",
}


def read_drain(sheets: Mapping[str, Sheet], mill: Mill) -> Drain:
    """Read what a mill's book says of its drain.

    Parameters
    ----------
    sheets : mapping
        Name -> sheet, those of the drain among them.
    mill : Mill
        Whose enquiries are read already.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    drain = Drain()
    _read_points(sheets["Discharge points"], drain)
    _read_plan(sheets["Discharge plan"], drain, mill)
    read_treatment(sheets["Treatment"], drain)
    read_permit(sheets["Permit"], drain, mill)
    return drain


def _read_points(sheet: Sheet, drain: Drain) -> None:
    layout = column_sheet("discharge_points")
    reader = ColumnReader(sheet, layout.kind, layout.part_head, layout.parts)
    for item in reader.columns:
        entries = {
            name: reader.entry(item, part, name) for part, names in layout.parts.items() for name in names
        }
        named = {"code": item.code, "description": item.description}
        owner = f"discharge point {item.code}"
        drain.points[item.code] = build(
            DischargePoint, owner, DischargePoint.GROUPS, entries, drain.assumptions, named
        )
        drain.places[item.code] = item.where
        drain.given[item.code] = entries


def _read_plan(sheet: Sheet, drain: Drain, mill: Mill) -> None:
    production, flows = tables_of("discharge_plan")
    for row in read_table(sheet, production, [flows]):
        drain.production.append(_production(row, drain, mill))
    for row in refuse_twice(read_table(sheet, flows, [production]), "flow"):
        drain.other_flows.append(_other_flow(row, drain))


def _production(row: TableRow, drain: Drain, mill: Mill) -> Production:
    yarn, cloth = (row.number(name, f"{name}_unit") for name in ("yarn_per_day", "cloth_per_day"))
    if (yarn is None) == (cloth is None):
        said = "both are filled" if yarn is not None else "both are empty"
        raise InputError(
            row.at("yarn_per_day"), f"yarn per day and cloth per day: {said}; accepted is one of the two"
        )
    enquiry = mill.enquiry(row.code, row.where).code
    return Production(enquiry, drain.point_code(row.text("point"), row.at("point")), yarn, cloth, row.where)


def _other_flow(row: TableRow, drain: Drain) -> OtherFlow:
    concentrations = {}
    for name, parameter in CONCENTRATIONS.items():
        value = row.number(name, unit="mg/L")
        if value is not None:
            concentrations[parameter] = value
    flow = row.number("flow_per_day", "flow_per_day_unit")
    assert flow is not None
    return OtherFlow(
        row.code,
        drain.point_code(row.text("point"), row.at("point")),
        flow,
        row.number("effluent_temperature", unit="degC"),
        row.number("acidity"),
        concentrations,
        row.where,
    )
