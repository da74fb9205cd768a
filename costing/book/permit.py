"""Read the sheet Permit: limits as the permit prints them, and what suppliers say of their products."""

from __future__ import annotations

from costing.book.cells import text_of
from costing.book.layout import tables_of
from costing.book.quantity_cell import read_number
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table
from costing.quantities import InputError, folded, listed, meant
from costing.quantities.checking import number_text
from costing.quantities.units import canonical, measure
from costing.reference_data.discharge_limits import (
    AT_LEAST,
    AT_MOST,
    BETWEEN,
    COMPOSITE,
    CONCENTRATION,
    MEAN_OF_DAYS,
    NUMBERED,
    PER_DAY,
    PER_PRODUCT,
    VALUE,
)
from costing.reference_data.permit_parameters import (
    ACIDITY,
    COLOUR,
    CONDUCTIVITY,
    FLOW,
    LOAD,
    NONE,
    SUPPLIER,
    TEMPERATURE,
    VOLUME,
    PermitParameter,
    permit_parameter,
    permit_parameters,
)
from costing.settings.drain import Drain
from costing.settings.mill import Mill
from costing.settings.permit import HOUSE, Limit, PermitLimit, SupplierFigure

# What a permit writes beside a value of each kind, first what it mostly is; the first tells what it measures.
KIND_UNITS = {
    PER_PRODUCT: ("kg/t", "g/kg"),
    PER_DAY: ("kg/day", "t/day"),
    CONCENTRATION: ("mg/L", "g/m3"),
}
VALUE_UNITS: dict[str, tuple[str, ...]] = {
    ACIDITY: ("",),
    TEMPERATURE: ("degC", "degF"),
    CONDUCTIVITY: ("mS/cm", "uS/cm"),
    COLOUR: ("1/m",),
    VOLUME: ("L/kg", "m3/t"),
    FLOW: ("m3/day", "L/h"),
}
MOST = {MEAN_OF_DAYS: 366, COMPOSITE: 720}
LARGEST = 1e12
HIGHEST_PH = 14
LONGEST_REFERENCE = 600  # several regulations, with section and edition


def read_permit(sheet: Sheet, drain: Drain, mill: Mill) -> None:
    """Read limits and figures of suppliers into a drain whose points are there already.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    limits, figures = tables_of("permit")
    known: dict[tuple[str, str], str] = {}
    for row in read_table(sheet, figures, [limits]):
        figure = _figure(row, mill)
        _refuse_again(known, (figure.material, folded(figure.parameter)), row, "figure of a supplier")
        drain.supplier_figures.append(figure)
    told = list(dict.fromkeys(figure.parameter for figure in drain.supplier_figures))
    seen: dict[tuple[str, str], str] = {}
    for row in read_table(sheet, limits, [figures]):
        limit = _limit(row, told)
        point = drain.point_code(row.text("point"), row.at("point"))
        key = (limit.parameter, limit.direction, limit.basis, limit.form, limit.statistic)
        _refuse_again(seen, (point, f"{key} {limit.number} {limit.point}"), row, "limit")
        drain.limits.append(PermitLimit(point, limit, row.where))


def _refuse_again(seen: dict[tuple[str, str], str], key: tuple[str, str], row: TableRow, what: str) -> None:
    if key in seen:
        raise InputError(
            row.where, f"the same {what} stands in {seen[key]} already; accepted is one row of it"
        )
    seen[key] = row.where


def _figure(row: TableRow, mill: Mill) -> SupplierFigure:
    text = row.text("told")
    known = permit_parameter(text)
    if known is not None and known.kind != SUPPLIER:
        why = "follows from the recipe already" if known.kind == LOAD else "is nothing that a product holds"
        accepted = ", ".join(item.name for item in permit_parameters() if item.kind == SUPPLIER)
        raise InputError(row.at("told"), f"{text!r} {why}; accepted are such as {accepted}")
    material = mill.material(row.code, row.where).code
    content = row.number("content", unit="mg/kg")
    assert content is not None  # the column is needed
    return SupplierFigure(material, known.name if known else text, content, row.text("told_by"), row.where)


def _limit(row: TableRow, told: list[str]) -> Limit:
    parameter, known = _parameter(row, told)
    basis = row.text("basis")
    direction, value, value_to = _values(row, parameter, known)
    if known is not None and known.kind != NONE:
        is_load = known.kind in (LOAD, SUPPLIER)
        if is_load == (basis == VALUE):
            accepted = f"{PER_PRODUCT}, {PER_DAY} or {CONCENTRATION}" if is_load else VALUE
            raise InputError(row.at("basis"), f"kind of {parameter} is {basis!r}; accepted is {accepted}")
    if basis != VALUE and direction != AT_MOST:
        raise InputError(
            row.at("direction"), f"limit is {direction!r} for a {basis}; accepted is {AT_MOST}, or empty"
        )
    unit = _unit(row, parameter, basis, known)
    statistic = row.text("statistic")
    if value is not None and not statistic:
        raise InputError(
            row.at("statistic"),
            f"statistic of {parameter} is empty; accepted is a word of the list, such as any one day or "
            "at all times",
        )
    flow = row.number("reference_flow", unit="L/kg")
    if flow is not None and basis != CONCENTRATION:
        raise InputError(
            row.at("reference_flow"),
            f"reference flow stands beside a {basis}; accepted is a concentration, or an empty cell",
        )
    place, number, form = row.text("place"), _number(row, statistic), row.text("form")
    reference = text_of(row.cells["reference"], "reference", LONGEST_REFERENCE)
    try:
        return Limit(
            parameter=parameter,
            value=value,
            unit=unit,
            basis=basis,
            statistic=statistic,
            point=place,
            direction=direction,
            number=number,
            value_to=value_to,
            form=form,
            reference_flow=flow,
            reference=reference,
        )
    except InputError as error:
        raise InputError(row.where, f"{error.where}: {error.message}") from error


def _parameter(row: TableRow, told: list[str]) -> tuple[str, PermitParameter | None]:
    text = row.text("parameter")
    known = permit_parameter(text)
    if known is not None:
        return known.name, known
    own = meant(text, told)
    if own is None:
        names = [*(item.name for item in permit_parameters()), *told]
        said = f"parameter is {text!r}" if text else "parameter is empty"
        raise InputError(
            row.at("parameter"),
            f"{said}; accepted is one of: {listed(names, text)}, or one of the table What suppliers say",
        )
    return own, None


def _values(
    row: TableRow, parameter: str, known: PermitParameter | None
) -> tuple[str, float | None, float | None]:
    """Direction and one or two values; a range needs both ends."""
    value, value_to = (_above_zero(row, name, parameter) for name in ("value", "value_to"))
    direction = row.text("direction")
    if value is None and value_to is not None:
        raise InputError(
            row.at("value"),
            f"value of {parameter} is empty beside value to {number_text(value_to)}; accepted is the lower "
            "end of the range",
        )
    is_acidity = known is not None and known.kind == ACIDITY
    if value is not None and value_to is None and (direction == BETWEEN or (is_acidity and not direction)):
        accepted = f"the upper end of the range, or {AT_MOST} or {AT_LEAST} in the column Limit is"
        raise InputError(
            row.at("value_to"),
            f"value to of {parameter} is empty beside {number_text(value)}; accepted is {accepted}",
        )
    if value_to is not None and direction not in ("", BETWEEN):
        raise InputError(
            row.at("value_to"),
            f"value to of {parameter} is {number_text(value_to)} beside {direction!r}; accepted is an empty "
            f"cell, or {BETWEEN}",
        )
    if value is not None and value_to is not None and value_to <= value:
        raise InputError(
            row.at("value_to"),
            f"range of {parameter} is {number_text(value)} to {number_text(value_to)}; accepted is low to "
            "high",
        )
    for name, end in (("value", value), ("value_to", value_to)):
        if is_acidity and end is not None and end > HIGHEST_PH:
            raise InputError(
                row.at(name), f"value of {parameter} is {number_text(end)}; accepted is 0 to {HIGHEST_PH}"
            )
    usual = BETWEEN if value_to is not None or (is_acidity and value is None) else AT_MOST
    return direction or usual, value, value_to


def _above_zero(row: TableRow, name: str, parameter: str) -> float | None:
    cell = row.cells[name]
    if cell.is_empty:
        return None
    what, accepted = f"{row.columns[name].head.lower()} of {parameter}", "a number above 0, in its unit"
    number = read_number(cell.value, what, cell.where, accepted)
    if cell.shown_as_percent:
        raise InputError(
            cell.where,
            f"{what} is shown as {number_text(100.0 * number)} %; accepted is {accepted}; clear the cell's "
            "percent format",
        )
    if not 0.0 < number <= LARGEST:
        raise InputError(cell.where, f"{what} is {number_text(number)}; accepted is {accepted}")
    return number


def _unit(row: TableRow, parameter: str, basis: str, known: PermitParameter | None) -> str:
    """The unit in the spelling of the unit table, fit for the kind of limit."""
    cell = row.cells["unit"]
    text = text_of(cell, "unit")
    units: tuple[str, ...] = KIND_UNITS.get(basis, ())
    if basis == VALUE and known is not None:
        units = VALUE_UNITS.get(known.kind, ())
    accepted = " or ".join(units) or "an empty cell"
    said = f"unit of {parameter} is {text!r}" if text else f"unit of {parameter} is empty"
    try:
        unit = canonical(text)
    except KeyError:
        raise InputError(cell.where, f"{said}, which is not known; accepted is {accepted}") from None
    if basis in HOUSE and "/" not in unit:  # 88 % of what, 5 ppm of what: a permit has a mass in it
        raise InputError(cell.where, f"{said}; accepted for a {basis} is {accepted}")
    if units and measure(unit)[0] != measure(units[0])[0]:
        other = next((kind for kind, names in KIND_UNITS.items() if _measures(unit, names[0])), "")
        hint = f", or the kind {other!r}" if other and basis != VALUE else ""
        raise InputError(cell.where, f"{said}; accepted for a {basis} is {accepted}{hint}")
    return unit


def _measures(unit: str, other: str) -> bool:
    return "/" in unit and measure(unit)[0] == measure(other)[0]


def _number(row: TableRow, statistic: str) -> int:
    cell = row.cells["number"]
    if statistic in NUMBERED:
        return row.whole("number", MOST[statistic])
    if not cell.is_empty:
        raise InputError(
            cell.where,
            f"days or hours are {cell.value!r} beside {statistic or 'no statistic'!r}; accepted is an empty "
            f"cell, or the statistic {' or '.join(NUMBERED)}",
        )
    return 0
