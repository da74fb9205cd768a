"""Read the mill's book: every value keeps its sheet and cell, and what makes no sense is refused.

The file is read into memory and closed again before anything is looked at; it is never written to.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from costing.cost.money import price_from_volume
from costing.front_ends.workbook.cells import Sheet, find_sheets, key_of
from costing.front_ends.workbook.layout import (
    GENERAL,
    column_sheet,
    substance_names,
    table_sheet,
)
from costing.front_ends.workbook.open_file import open_workbook
from costing.front_ends.workbook.read_columns import ColumnReader, Filled
from costing.front_ends.workbook.read_costs import read_costs
from costing.front_ends.workbook.read_tables import TableRow, read_table, refuse_twice
from costing.quantities import UNITS, InputError, check, label
from costing.quantities.units import canonical, measure
from costing.settings.building import Entry, build
from costing.settings.mill import Enquiry, Material, Mill, Range, Recipe
from costing.settings.steps import STEP_KINDS
from costing.settings.style import Style

SHEETS = ("Enquiries", "Styles", "Recipes", "Ranges", "Routes", "Materials", "Mill costs")
YARN_ROLES = ("warp yarn", "weft yarn")
OWN = ("own_oxygen_demand", "own_sodium", "own_sulfur", "own_nitrogen")


def read_book(path: Path) -> Mill:
    """Read a book.

    Parameters
    ----------
    path : Path
        The .xlsx file.

    Returns
    -------
    Mill
        With ``places``: (kind, code) -> sheet and cell.

    Raises
    ------
    InputError
        The first thing that is refused: file, sheet and cell, the value, and what is accepted.
    """
    values, formulas = open_workbook(path)
    try:
        return _mill(find_sheets(values, formulas, SHEETS))
    except InputError as error:
        raise InputError(
            f"{path.name}, {error.where}" if error.where else path.name, error.message
        ) from error


def _mill(sheets: Mapping[str, Sheet]) -> Mill:
    mill = Mill()
    mill.costs = read_costs(sheets["Mill costs"])
    _read_routes(sheets["Routes"], mill)
    _read_materials(sheets["Materials"], mill)
    _read_styles(sheets["Styles"], mill)
    _read_recipes(sheets["Recipes"], mill)
    _read_ranges(sheets["Ranges"], mill)
    _read_enquiries(sheets["Enquiries"], mill)
    return mill


def _read_routes(sheet: Sheet, mill: Mill) -> None:
    routes, steps = table_sheet("routes").tables
    for row in refuse_twice(read_table(sheet, routes, [steps]), "route"):
        mill.routes[row.code] = []
        mill.places["route", row.code] = row.where
    numbered: dict[str, dict[int, tuple[str, str]]] = {code: {} for code in mill.routes}
    kinds: dict[str, tuple[str, str]] = {}
    for row in read_table(sheet, steps, [routes]):
        mill.route(row.code, row.where)
        name, kind = row.text("step"), row.text("kind")
        number = row.whole("number")
        known_kind, place = kinds.setdefault(key_of(name), (kind, row.at("kind")))
        if known_kind != kind:
            raise InputError(
                row.at("kind"),
                f"the step {name!r} is of the kind {kind!r} here and {known_kind!r} in {place}; accepted is "
                "one kind for a name",
            )
        if number in numbered[row.code]:
            raise InputError(
                row.at("number"),
                f"no. {number} of the route {row.code!r} stands twice; accepted is one step for a number",
            )
        if any(key_of(name) == key_of(other) for other, _ in numbered[row.code].values()):
            raise InputError(
                row.at("step"),
                f"the step {name!r} of the route {row.code!r} stands twice; accepted is a name of its own "
                "for each",
            )
        numbered[row.code][number] = (name, kind)
    for code, places in numbered.items():
        if not places:
            raise InputError(
                mill.places["route", code], f"the route {code!r} has no steps; accepted is one step or more"
            )
        mill.routes[code] = [places[number] for number in sorted(places)]


def _read_materials(sheet: Sheet, mill: Mill) -> None:
    (table,) = table_sheet("materials").tables
    for row in refuse_twice(read_table(sheet, table), "material"):
        mill.materials[row.code] = _material(row, mill)
        mill.places["material", row.code] = row.where


def _material(row: TableRow, mill: Mill) -> Material:
    substance_name, role = row.text("substance"), row.text("role")
    own = {}
    for name in OWN:
        what, empty = row.columns[name].head.lower(), row.cells[name].is_empty
        if substance_name and not empty:
            raise InputError(
                row.at(name),
                f"{what} is filled, but the formula of {substance_name} gives it; accepted is an empty cell",
            )
        if empty and not substance_name and role not in YARN_ROLES:
            raise InputError(
                row.at(name),
                f"{what} of {row.code!r} is empty; accepted is a number, 0 where there is none, or a "
                "substance with a formula",
            )
        own[name] = row.number(name, "own_unit")
    density = row.number("density", "density_unit")
    price, freight, per = _price(row, density)
    assert mill.costs is not None
    currency = row.text("currency")
    known = {mill.costs.currency, *mill.costs.exchange_rates}
    if currency and currency not in known:
        raise InputError(
            row.at("currency"),
            f"currency {currency!r} of {row.code!r} has no exchange rate; accepted is one of: "
            f"{', '.join(sorted(known))}",
        )
    strength = row.number("strength", "strength_unit")
    return Material(
        code=row.code,
        description=row.text("description"),
        role=role,
        substance=substance_names()[substance_name] if substance_name else "",
        strength=check("strength", strength, row.at("strength")),
        remainder=row.text("remainder"),
        density=1.0 if density is None else density,  # only a price by volume needs it, and asks for it
        alkali=row.number("alkali", "alkali_unit") or 0.0,
        own_oxygen_demand=own["own_oxygen_demand"] or 0.0,
        own_sodium=own["own_sodium"] or 0.0,
        own_sulfur=own["own_sulfur"] or 0.0,
        own_nitrogen=own["own_nitrogen"] or 0.0,
        caution=row.text("caution"),
        price=price,
        price_by=per,
        freight=freight,
        currency=currency,
        price_date=row.date("price_date"),
        where=row.where,
    )


def _price(row: TableRow, density: float | None) -> tuple[float | None, float, str]:
    """Price and freight by mass, and the unit they were given for."""
    per = row.text("per")
    if row.cells["price"].is_empty:
        if not row.cells["freight"].is_empty:
            raise InputError(
                row.at("price"), "price is empty beside a freight; accepted is a price of 0 or more"
            )
        return None, 0.0, "kg"
    if not per:
        raise InputError(row.at("per"), "the price has no unit to go with it; accepted is kg, t, lb or L")
    by_volume = measure(per)[0] == measure("L")[0]
    if by_volume and density is None:
        raise InputError(
            row.at("density"), f"density is empty, but the price is per {per}; accepted is 0.5 to 3 kg/L"
        )
    unit = f"money/{per}"
    found = {}
    for name in ("price", "freight"):
        if by_volume:
            by_litre = row.number(name, unit=unit, quantity="price_per_litre") or 0.0
            found[name] = float(price_from_volume(by_litre, density))
        else:
            found[name] = row.number(name, unit=unit) or 0.0
    return found["price"], found["freight"], per


def _read_styles(sheet: Sheet, mill: Mill) -> None:
    layout = column_sheet("styles")
    wanted: dict[str, list[str]] = {}
    for row in layout.rows:
        wanted.setdefault(row.part, []).append(row.name)
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    for item in reader.columns:
        entries = {name: reader.entry(item, part, name) for part, names in wanted.items() for name in names}
        for name in ("warp_yarn", "weft_yarn"):
            if entries[name].value:
                _check_yarn(mill, name, entries[name])
        _refuse_crimp_of_other_basis(entries)
        owner = f"style {item.code}"
        mill.styles[item.code] = build(Style, owner, Style.GROUPS, entries, mill.assumptions, _named(item))
        mill.places["style", item.code] = item.where


def _order_unit(text: str) -> str:
    """Unit in which the order is priced: as given, or metres where the unit table lacks that name."""
    unit = canonical(text)
    return unit if unit in UNITS else "m"


def _check_yarn(mill: Mill, name: str, entry: Entry) -> None:
    wanted, material = label(name), mill.material(entry.value, entry.where)
    if material.role != wanted:
        raise InputError(
            entry.where,
            f"{wanted} is {material.code!r}, whose role is {material.role!r}; accepted is a material of the "
            f"role {wanted}",
        )


def _refuse_crimp_of_other_basis(entries: Mapping[str, Entry]) -> None:
    """The typical crimp of the table is a share of the cloth length: it must not stand in for take-up."""
    if entries["warp_crimp"].value is None and entries["crimp_basis"].value == "warp length":
        raise InputError(
            entries["warp_crimp"].where,
            "warp crimp is empty beside the basis warp length; accepted is your own figure, because the "
            "typical one counts on the cloth length",
        )


def _named(item: Filled) -> dict[str, str]:
    return {"code": item.code, "description": item.description}


def _steps(mill: Mill) -> dict[str, str]:
    """Step -> kind over all routes."""
    return {name: kind for route in mill.routes.values() for name, kind in route}


def _read_recipes(sheet: Sheet, mill: Mill) -> None:
    layout = column_sheet("recipes")
    steps = _steps(mill)
    wanted = {GENERAL: ("route",), **{name: STEP_KINDS[kind].RECIPE for name, kind in steps.items()}}
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    for item in reader.columns:
        route = reader.entry(item, GENERAL, "route")
        if not route.value:
            raise InputError(route.where, f"route is empty; accepted is one of: {', '.join(mill.routes)}")
        mill.route(route.value, route.where)
        mill.recipes[item.code] = Recipe(item.code, item.description, route.value)
        mill.places["recipe", item.code] = item.where
        for name, kind in steps.items():
            mill.recipe_steps[item.code, name] = reader.entries(item, name, STEP_KINDS[kind].RECIPE)


def _read_ranges(sheet: Sheet, mill: Mill) -> None:
    layout = column_sheet("ranges")
    steps = _steps(mill)
    general = tuple(row.name for row in layout.rows if row.part == GENERAL)
    wanted = {GENERAL: general, **{name: STEP_KINDS[kind].RANGE for name, kind in steps.items()}}
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    for item in reader.columns:
        owner = f"range {item.code}"
        entries = reader.entries(item, GENERAL, general)
        mill.ranges[item.code] = build(Range, owner, Range.GROUPS, entries, mill.assumptions, _named(item))
        mill.places["range", item.code] = item.where
        for name, kind in steps.items():
            mill.range_steps[item.code, name] = reader.entries(item, name, STEP_KINDS[kind].RANGE)


def _read_enquiries(sheet: Sheet, mill: Mill) -> None:
    (table,) = table_sheet("enquiries").tables
    units = {column.of: column.name for column in table.columns if column.kind == "unit"}
    for row in refuse_twice(read_table(sheet, table), "enquiry"):
        entries = {}
        for column in table.columns[2:]:
            if column.kind == "choice":
                entries[column.name] = Entry(row.text(column.name), row.at(column.name))
            elif column.kind == "number":
                value = row.number(column.name, units.get(column.name, ""))
                entries[column.name] = Entry(value, row.at(column.name))
        mill.style(entries["style"].value, entries["style"].where)
        mill.recipe(entries["recipe"].value, entries["recipe"].where)
        mill.range(entries["range"].value, entries["range"].where)
        owner = f"enquiry {row.code}"
        fixed = {
            "code": row.code,
            "description": row.text("description"),
            "order_unit": _order_unit(row.text(units["order_length"])),
        }
        mill.enquiries[row.code] = build(Enquiry, owner, Enquiry.GROUPS, entries, mill.assumptions, fixed)
        mill.places["enquiry", row.code] = row.where
