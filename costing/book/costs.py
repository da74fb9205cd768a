"""Read the sheet Mill costs: prices that are not of a material, and the currencies."""

from __future__ import annotations

import datetime
from typing import Any

from costing.book.cells import date_of, text_of, value_of
from costing.book.layout import row_text, tables_of
from costing.book.sheet import Given, Sheet
from costing.book.tables import read_table, refuse_twice
from costing.quantities import InputError, check, folded, listed
from costing.settings.building import Entry
from costing.settings.mill import Mill, MillCosts

NAMES = (
    "currency",
    "price_date",
    "water_price",
    "steam_price",
    "power_price",
    "effluent_charge",
    "overhead",
    "margin",
    "money_rounding",
)


def read_costs(sheet: Sheet, mill: Mill) -> None:
    """Read prices, overhead, margin and exchange rates into the mill.

    Raises
    ------
    InputError
        A missing or refused cell, an unknown or repeated row, a currency without a rate.
    """
    costs, currencies = tables_of("mill_costs")
    rates: dict[str, float] = {}
    for row in refuse_twice(read_table(sheet, currencies, [costs]), "currency"):
        rate = row.number("rate")
        rates[row.code] = check("exchange_rate", rate, row.at("rate"))
        row.date("rate_date")
    rows = _cost_rows(sheet)
    values: dict[str, Any] = {}
    for name in NAMES:
        if name not in rows:
            raise InputError(sheet.title, f"the row {row_text(name)!r} is missing; accepted is one")
        values[name] = _value(name, *rows[name])
    currency = values["currency"]
    if rates.setdefault(currency, 1.0) != 1.0:
        raise InputError(
            rows["currency"][0].where,
            f"the rate of {currency!r}, the mill's own currency, is {rates[currency]:g}; accepted is 1",
        )
    mill.costs = MillCosts(exchange_rates=rates, **values)
    mill.given["costs", ""] = {name: Entry(values[name], rows[name][0].where) for name in NAMES}


def _cost_rows(sheet: Sheet) -> dict[str, tuple[Given, Given]]:
    """Name -> value and unit, of the rows that are known; any other row must be empty."""
    costs, currencies = tables_of("mill_costs")
    names = {folded(row_text(name)): name for name in NAMES}
    found: dict[str, tuple[Given, Given]] = {}
    for row in refuse_twice(read_table(sheet, costs, [currencies]), "row"):
        name = names.get(folded(row.code))
        if name is None and not row.cells["value"].is_empty:
            accepted = listed(map(row_text, NAMES), row.code, most=len(NAMES))
            raise InputError(
                row.where, f"the quantity {row.code!r} is unknown; accepted is one of: {accepted}"
            )
        if name is not None:
            found[name] = (row.cells["value"], row.cells["unit"])
    return found


def _value(name: str, cell: Given, unit: Given) -> str | float | datetime.date:
    what = row_text(name)
    if name == "price_date":
        found = date_of(cell, what)
        if found is None:
            raise InputError(cell.where, f"{what} is empty; accepted is a date")
        return found
    if name == "currency":
        text = text_of(cell, what)
        if not text:
            raise InputError(
                cell.where, f"{what} is empty; accepted is the letters of the mill's money, such as EUR"
            )
        return text
    return check(name, value_of(name, cell, unit.value), cell.where)
