"""Read the sheets Stock, Open orders and Purchase terms: what is in store, what comes, how it is bought."""

from __future__ import annotations

from costing.book.layout import tables_of
from costing.book.sheet import Sheet
from costing.book.tables import TableRow, read_table, refuse_twice
from costing.quantities import InputError, label
from costing.settings.building import Entry, build
from costing.settings.material import YARN_ROLES, Material
from costing.settings.mill import Mill
from costing.settings.offers import LISTED_STRENGTH
from costing.settings.stock import OpenOrder, PurchaseTerms, StockBatch, Store

STOCK, OPEN_ORDERS, PURCHASE_TERMS = "Stock", "Open orders", "Purchase terms"
LEAST = 0.01  # share of a spread; less is a share typed where its per cent is asked
# Columns of the terms, each with the unit of its head.
UNITS = {
    "pack_mass": "kg",
    "lead_time": "day",
    "lead_time_spread": "day",
    "service_level": "%",
    "need_spread": "%",
    "minimum_order": "kg",
    "order_charge": "money",
    "holding_rate": "%/year",
    "shelf_life": "day",
    "keeping_time": "day",
    "storage_ceiling": "kg",
    "cover_time": "day",
    "payment_time": "day",
}
WORDS = ("supplier", "pack_kind", "order_rule")


def read_stock(sheet: Sheet, mill: Mill) -> list[StockBatch]:
    """The batches in store.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("stock")
    return [_batch(row, mill) for row in read_table(sheet, table)]


def _batch(row: TableRow, mill: Mill) -> StockBatch:
    product = _product(row, row.code, row.where, mill)
    mass, strength = row.number("stock_mass", unit="kg"), row.number("strength", unit="%")
    if mass is None:
        raise InputError(row.at("stock_mass"), "in store is empty; accepted is 0 to 1e+08 kg")
    expiry, opened = row.date("expiry"), row.date("opened")
    if expiry is not None and opened is not None and opened > expiry:
        raise InputError(
            row.at("opened"),
            f"opened is {opened}, behind the last day, {expiry}; accepted is that day or before",
        )
    if strength is None:
        strength = mill.given["material", product.code][LISTED_STRENGTH].value
    name = row.text("batch") or f"row {row.where.rpartition('!')[2]}"
    return StockBatch(product.code, name, mass, strength, expiry, opened, row.where)


def read_open_orders(sheet: Sheet, mill: Mill) -> list[OpenOrder]:
    """What was ordered and has not come yet.

    Raises
    ------
    InputError
        The first cell that is refused.
    """
    (table,) = tables_of("open_orders")
    return [_open_order(row, mill) for row in read_table(sheet, table)]


def _open_order(row: TableRow, mill: Mill) -> OpenOrder:
    product = _product(row, row.text("material"), row.at("material"), mill)
    mass, arrival = row.number("order_mass", unit="kg"), row.date("arrival")
    if mass is None:
        raise InputError(row.at("order_mass"), "ordered is empty; accepted is more than 0 kg")
    if arrival is None:
        raise InputError(row.at("arrival"), "arrival is empty; accepted is the day that the supplier named")
    return OpenOrder(row.code, product.code, row.text("supplier"), mass, arrival, row.where)


def read_terms(sheet: Sheet, mill: Mill) -> Store:
    """How each material is bought and kept, and what of that the tables say.

    Raises
    ------
    InputError
        The first cell that is refused, or a material that stands twice.
    """
    (table,) = tables_of("purchase_terms")
    rows = refuse_twice(read_table(sheet, table), "material")
    store = Store()
    for row in rows:
        terms = _terms(row, mill, store)
        store.terms[terms.material] = terms
    return store


def _terms(row: TableRow, mill: Mill, store: Store) -> PurchaseTerms:
    product = _product(row, row.code, row.where, mill)
    entries = {name: Entry(row.number(name, unit=unit), row.at(name)) for name, unit in UNITS.items()}
    entries.update({name: Entry(row.text(name), row.at(name)) for name in WORDS})
    spread = entries["need_spread"].value
    if spread is not None and 0.0 < spread < LEAST:
        typed = 100.0 * spread
        raise InputError(
            row.at("need_spread"),
            f"spread of the use is {typed:.3g} %; accepted is 0, or 1 to 300 %; the unit is already %, so "
            f"type {100.0 * typed:.3g}, not {typed:.3g}",
        )
    fixed = {"material": product.code, "where": row.where}
    owner = f"{PURCHASE_TERMS}, {product.code}"
    return build(PurchaseTerms, owner, PurchaseTerms.GROUPS, entries, store.assumptions, fixed)


def _product(row: TableRow, code: str, where: str, mill: Mill) -> Material:
    """The material of a row; yarns are planned by those who spin or buy them."""
    found = mill.material(code, where)
    if found.role in YARN_ROLES:
        raise InputError(
            where, f"{found.code!r} has the role {label(found.role)}; accepted is a material that is no yarn"
        )
    return found


def store_of(mill: Mill) -> Store:
    """What the three sheets say; empty where the book has none of them.

    Raises
    ------
    InputError
        A cell of them is refused.
    """
    of_terms = mill.kept(PURCHASE_TERMS) or Store()
    batches, orders = mill.kept(STOCK) or [], mill.kept(OPEN_ORDERS) or []
    return Store(batches, orders, of_terms.terms, of_terms.assumptions)
