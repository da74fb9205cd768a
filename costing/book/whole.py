"""Read the mill's book: every value keeps its sheet and cell, and what makes no sense is refused."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Any, Callable

from costing.book.calibrations import SHEET as CALIBRATIONS
from costing.book.calibrations import choose_calibration, read_calibrations
from costing.book.columns import ColumnReader, Filled
from costing.book.costs import read_costs
from costing.book.drain import DRAIN_SHEETS, read_drain
from costing.book.how_sure import SHEET as HOW_SURE
from costing.book.how_sure import read_how_sure
from costing.book.layout import GENERAL, RANGE_ROWS, Table, column_sheet, sheet_names, tables_of
from costing.book.materials import read_materials
from costing.book.offers import OFFERS_SHEET, read_offers
from costing.book.order_book import ORDER_BOOK, PLANNING, read_order_book, read_planning
from costing.book.quality import PERCENT, QUALITY_SHEET, read_quality
from costing.book.quote_texts import SHEET as QUOTE_TEXTS
from costing.book.quote_texts import read_quote_texts
from costing.book.records import (
    PRODUCTION_RECORD,
    STORE_ISSUES,
    read_production_record,
    read_store_issues,
)
from costing.book.sheet import Sheet, find_sheets
from costing.book.stock import (
    OPEN_ORDERS,
    PURCHASE_TERMS,
    STOCK,
    read_open_orders,
    read_stock,
    read_terms,
)
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.cost.offers import mill_on
from costing.quantities import InputError, folded, label, listed
from costing.quantities.checking import refuse_all
from costing.quantities.units import canonical
from costing.settings.building import Entry, build
from costing.settings.mill import Enquiry, Mill, Range, Recipe
from costing.settings.quality import SHARES
from costing.settings.steps import STEP_KINDS
from costing.settings.style import Style

# Sheets that a book may do without.
LEFT_OUT = (*DRAIN_SHEETS, CALIBRATIONS, HOW_SURE, OFFERS_SHEET, QUALITY_SHEET, QUOTE_TEXTS)
# Sheets on which no quote rests, each with its reader.
BESIDE: dict[str, Callable[[Sheet, Mill], Any]] = {
    PLANNING: read_planning,
    ORDER_BOOK: read_order_book,
    STOCK: read_stock,
    OPEN_ORDERS: read_open_orders,
    PURCHASE_TERMS: read_terms,
    PRODUCTION_RECORD: read_production_record,
    STORE_ISSUES: read_store_issues,
}
SOLD_BY = ("m", "yd", "km", "ft")


def mill_from_sheets(sheets: Mapping[str, Sheet], apart: bool = False) -> Mill:
    """Read a book from its sheets.

    Parameters
    ----------
    sheets : mapping
        Name -> sheet; sheets that the book does not need are left alone.
    apart : bool, optional
        True to keep a style, recipe, range or enquiry that is refused apart, in ``refused`` of the mill, so
        that what does not need it can be worked out.

    Returns
    -------
    Mill
        With ``places``: (kind, code) -> sheet and cell; with the prices of the day that the book names.

    Raises
    ------
    InputError
        The first thing that is refused: sheet and cell, the value, and what is accepted.
    """
    found = find_sheets(sheets, [name for name in sheet_names() if name not in LEFT_OUT])
    mill = Mill()
    read_costs(found["Mill costs"], mill)
    there = {folded(name) for name in sheets}
    if folded(QUALITY_SHEET) in there:
        read_quality(find_sheets(sheets, [QUALITY_SHEET])[QUALITY_SHEET], mill)
    _read_routes(found["Routes"], mill)
    read_materials(found["Materials"], mill)
    offers = next((sheet for name, sheet in sheets.items() if folded(name) == folded(OFFERS_SHEET)), None)
    if offers is not None and offers.rows:
        read_offers(offers, mill)
    mill = mill_on(mill)
    _read_styles(found["Styles"], mill, apart)
    _read_recipes(found["Recipes"], mill, apart)
    _read_ranges(found["Ranges"], mill, apart)
    _read_enquiries(found["Enquiries"], mill, apart)
    if folded(CALIBRATIONS) in there:
        read_calibrations(find_sheets(sheets, [CALIBRATIONS])[CALIBRATIONS], mill)
    choose_calibration(mill)
    if folded(HOW_SURE) in there:
        read_how_sure(find_sheets(sheets, [HOW_SURE])[HOW_SURE], mill)
    if folded(QUOTE_TEXTS) in there:
        read_quote_texts(find_sheets(sheets, [QUOTE_TEXTS])[QUOTE_TEXTS], mill)
    if any(folded(name) in there for name in DRAIN_SHEETS):
        try:
            mill.keep_drain(read_drain(find_sheets(sheets, DRAIN_SHEETS), mill))
        except InputError as error:  # a wrong cell or a missing sheet of the drain takes away no quote
            mill.keep_drain(error)
    for name, read in BESIDE.items():
        if folded(name) in there:
            try:
                mill.keep(name, read(find_sheets(sheets, [name])[name], mill))
            except InputError as error:  # likewise
                mill.keep(name, error)
    return mill


@contextmanager
def _one(mill: Mill, kind: str, code: str, apart: bool) -> Iterator[None]:
    """Keep what refuses one thing of the book apart, where that is asked for."""
    try:
        yield
    except InputError as error:
        if not apart:
            raise
        mill.refused[kind, code] = error


def _read_routes(sheet: Sheet, mill: Mill) -> None:
    routes, steps = tables_of("routes")
    for row in refuse_twice(read_table(sheet, routes, [steps]), "route"):
        mill.routes[row.code] = []
        mill.places["route", row.code] = row.where
    numbered: dict[str, dict[int, tuple[str, str]]] = {code: {} for code in mill.routes}
    kinds: dict[str, tuple[str, str]] = {}
    for row in read_table(sheet, steps, [routes]):
        code = mill.route_code(row.code, row.where)
        name, kind = row.text("step"), row.text("kind")
        number = row.whole("number")
        known_kind, place = kinds.setdefault(folded(name), (kind, row.at("kind")))
        if known_kind != kind:
            raise InputError(
                row.at("kind"),
                f"the step {name!r} is of the kind {kind!r} here and {known_kind!r} in {place}; accepted is "
                "one kind for a name",
            )
        if number in numbered[code]:
            raise InputError(
                row.at("number"),
                f"no. {number} of the route {code!r} stands twice; accepted is one step for a number",
            )
        if any(folded(name) == folded(other) for other, _ in numbered[code].values()):
            raise InputError(
                row.at("step"),
                f"the step {name!r} of the route {code!r} stands twice; accepted is a name of its own "
                "for each",
            )
        numbered[code][number] = (name, kind)
        mill.places.setdefault(("step", name), row.at("step"))
    for code, places in numbered.items():
        if not places:
            raise InputError(
                mill.places["route", code], f"the route {code!r} has no steps; accepted is one step or more"
            )
        mill.routes[code] = [places[number] for number in sorted(places)]


def _read_styles(sheet: Sheet, mill: Mill, apart: bool) -> None:
    layout = column_sheet("styles")
    wanted = layout.parts
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    for item in reader.columns:
        with _one(mill, "style", item.code, apart):
            _read_style(reader, item, mill)


def _read_style(reader: ColumnReader, item: Filled, mill: Mill) -> None:
    entries = {
        name: reader.entry(item, part, name) for part, names in reader.wanted.items() for name in names
    }
    for name in ("warp_yarn", "weft_yarn"):
        if entries[name].value:
            entries[name] = _yarn(mill, name, entries[name])
    _refuse_crimp_of_other_basis(entries)
    owner = f"style {item.code}"
    mill.styles[item.code] = build(Style, owner, Style.GROUPS, entries, mill.assumptions, _named(item))
    mill.places["style", item.code] = item.where
    mill.given["style", item.code] = entries


def _order_unit(text: str) -> str:
    """Unit in which the order is priced: as given, or metres for one that nobody sells cloth by."""
    unit = canonical(text)
    return unit if unit in SOLD_BY else "m"


def _yarn(mill: Mill, name: str, entry: Entry) -> Entry:
    """The entry with the code as the sheet Materials has it."""
    wanted = label(name)
    fit = [code for code, item in mill.materials.items() if item.role == wanted]
    material = mill.material(entry.value, entry.where, fit)
    if material.role != wanted:
        raise InputError(
            entry.where,
            f"{wanted} is {material.code!r}, whose role is {material.role!r}; accepted is a material of the "
            f"role {wanted}",
        )
    return entry._replace(value=material.code)


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


def _read_recipes(sheet: Sheet, mill: Mill, apart: bool) -> None:
    layout = column_sheet("recipes")
    steps = _steps(mill)
    wanted = {GENERAL: ("route",), **{name: STEP_KINDS[kind].RECIPE for name, kind in steps.items()}}
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    _note_missing_rows(reader, steps, wanted, mill)
    for item in reader.columns:
        with _one(mill, "recipe", item.code, apart):
            route = reader.entry(item, GENERAL, "route")
            if not route.value:
                raise InputError(route.where, f"route is empty; accepted is one of: {listed(mill.routes)}")
            code = mill.route_code(route.value, route.where)
            for name, kind in steps.items():
                mill.recipe_steps[item.code, name] = reader.entries(item, name, STEP_KINDS[kind].RECIPE)
            mill.recipes[item.code] = Recipe(item.code, item.description, code)
            mill.places["recipe", item.code] = item.where


def _note_missing_rows(
    reader: ColumnReader, steps: Mapping[str, str], wanted: Mapping[str, tuple[str, ...]], mill: Mill
) -> None:
    """Note the steps of a route that a sheet has no row of: a route may have been given a new one."""
    for step in steps:
        if wanted[step] and not reader.has(step):
            mill.without_rows.setdefault(step, {})[reader.sheet.title] = wanted[step]


def _read_ranges(sheet: Sheet, mill: Mill, apart: bool) -> None:
    layout = column_sheet("ranges")
    steps = _steps(mill)
    wanted = {GENERAL: RANGE_ROWS, **{name: STEP_KINDS[kind].RANGE for name, kind in steps.items()}}
    reader = ColumnReader(sheet, layout.kind, layout.part_head, wanted)
    _note_missing_rows(reader, steps, wanted, mill)
    for item in reader.columns:
        owner = f"range {item.code}"
        with _one(mill, "range", item.code, apart):
            entries = reader.entries(item, GENERAL, RANGE_ROWS)
            for name, kind in steps.items():
                mill.range_steps[item.code, name] = reader.entries(item, name, STEP_KINDS[kind].RANGE)
            made = build(Range, owner, Range.GROUPS, entries, mill.assumptions, _named(item))
            mill.ranges[item.code] = made
            mill.places["range", item.code] = item.where
            mill.given["range", item.code] = entries


def _read_enquiries(sheet: Sheet, mill: Mill, apart: bool) -> None:
    (table,) = tables_of("enquiries")
    for row in refuse_twice(read_table(sheet, table), "enquiry"):
        with _one(mill, "enquiry", row.code, apart):
            _read_enquiry(row, table, mill)


def _read_enquiry(row: TableRow, table: Table, mill: Mill) -> None:
    units = {column.of: column.name for column in table.columns if column.kind == "unit"}
    codes: dict[str, Callable[[str, str], Any]] = {
        "style": mill.style,
        "recipe": mill.recipe,
        "range": mill.range,
    }
    entries: dict[str, Entry] = {}
    wrong: list[InputError] = []
    for column in (column for column in table.columns[2:] if column.kind in ("choice", "number")):
        name, where = column.name, row.at(column.name)
        try:
            if column.kind == "number":
                value: Any = row.number(name, units.get(name, ""), PERCENT if name in SHARES else "")
            elif name in codes:
                value = codes[name](row.text(name), where).code
            else:
                value = row.text(name)
            entries[name] = Entry(value, where)
        except InputError as error:
            wrong.append(error)
    refuse_all(wrong)
    owner = f"enquiry {row.code}"
    fixed = {
        "code": row.code,
        "description": row.text("description"),
        "order_unit": _order_unit(row.text(units["order_length"])),
    }
    mill.enquiries[row.code] = build(Enquiry, owner, Enquiry.GROUPS, entries, mill.assumptions, fixed)
    mill.places["enquiry", row.code] = row.where
    mill.given["enquiry", row.code] = entries
