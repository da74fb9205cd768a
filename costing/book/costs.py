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
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import ExchangeRate

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
PRICES_AS_OF, CALIBRATION = "prices_as_of", "calibration"  # rows that a book may lack


def read_costs(sheet: Sheet, mill: Mill) -> None:
    """Read prices, overhead, margin and exchange rates into the mill.

    Raises
    ------
    InputError
        A missing or refused cell, an unknown or repeated row, a currency without a rate.
    """
    rates = _rates(sheet)
    rows = _cost_rows(sheet)
    values: dict[str, Any] = {}
    for name in NAMES:
        if name not in rows:
            raise InputError(sheet.title, f"the row {row_text(name)!r} is missing; accepted is one")
        values[name] = _value(name, *rows[name])
    currency = values["currency"]
    own = [rate for rate in rates if rate.currency == currency and rate.rate != 1.0]
    if own:
        raise InputError(
            rows["currency"][0].where,
            f"the rate of {currency!r}, the mill's own currency, is {own[0].rate:g}; accepted is 1",
        )
    as_of, _ = rows.get(PRICES_AS_OF, (None, None))
    mill.rates = tuple(rates)
    counting, _ = rows.get(CALIBRATION, (None, None))
    mill.calibration = "" if counting is None else text_of(counting, row_text(CALIBRATION))
    mill.costs = MillCosts(
        prices_as_of=None if as_of is None else date_of(as_of, row_text(PRICES_AS_OF)),
        **values,
    )
    given = {name: Entry(values[name], rows[name][0].where) for name in NAMES}
    if counting is not None:
        given[CALIBRATION] = Entry(mill.calibration, counting.where)
    mill.given["costs", ""] = given


def _rates(sheet: Sheet) -> list[ExchangeRate]:
    """The rows of the currencies; one may have several, with days of their own."""
    costs, currencies = tables_of("mill_costs")
    found: list[ExchangeRate] = []
    seen: dict[tuple[str, datetime.date | None], str] = {}
    codes: dict[str, str] = {}
    for row in read_table(sheet, currencies, [costs]):
        code = codes.setdefault(folded(row.code), row.code)
        since = row.date("rate_date")
        if (code, since) in seen:
            day = f"of {since}" if since else "without a date"
            raise InputError(
                row.where,
                f"the currency {row.code!r} stands twice {day}, also in {seen[code, since]}; accepted is one "
                "rate for a day",
            )
        seen[code, since] = row.where
        found.append(ExchangeRate(code, check("exchange_rate", row.number("rate"), row.at("rate")), since))
    return found


def _cost_rows(sheet: Sheet) -> dict[str, tuple[Given, Given]]:
    """Name -> value and unit, of the rows that are known; any other row must be empty."""
    costs, currencies = tables_of("mill_costs")
    names = {folded(row_text(name)): name for name in (*NAMES, PRICES_AS_OF, CALIBRATION)}
    found: dict[str, tuple[Given, Given]] = {}
    for row in refuse_twice(read_table(sheet, costs, [currencies]), "row"):
        name = names.get(folded(row.code))
        if name is None and not row.cells["value"].is_empty:
            accepted = listed(map(row_text, names.values()), row.code, most=len(names))
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
