"""The sheets Stock, Open orders and Purchase terms are read, or refused with their cell."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from costing.book.layout import Table, tables_of
from costing.book.sheet import Sheet
from costing.book.stock import read_open_orders, read_stock, read_terms
from costing.quantities import InputError
from costing.settings.stock import AS_NEEDED
from tests.report.demo import demo_mill

MILL = demo_mill()
DAY = datetime.date(2025, 3, 31)


def one_row(key: str, **cells: Any) -> Sheet:
    """A sheet with its heads and one row; cells are given by the name of their column."""
    (table,) = tables_of(key)
    named = {column.name: column for column in table.columns}
    places = {column.name: number for number, column in enumerate(table.columns, 1)}
    heads = {(4, place): named[name].head for name, place in places.items()}
    return Sheet(title(key), {**heads, **{(5, places[name]): value for name, value in cells.items()}})


def title(key: str) -> str:
    return key.replace("_", " ").capitalize()


def cell(key: str, name: str) -> str:
    (table,) = tables_of(key)
    return f"{title(key)}!{letter(table, name)}5"


def letter(table: Table, name: str) -> str:
    return chr(ord("A") + [column.name for column in table.columns].index(name))


BATCH = {"code": "hydro-88", "batch": "H-1", "stock_mass": 300.0, "expiry": DAY}
ORDER = {"code": "P-1", "material": "LYE-50", "order_mass": 1500.0, "arrival": DAY}
TERMS = {"code": "LYE-50", "pack_kind": "ibc", "pack_mass": 1500.0, "lead_time": 7.0}


def test_a_batch_without_an_assay_has_the_listed_one() -> None:
    (plain,) = read_stock(one_row("stock", **BATCH), MILL)
    assert (plain.material, plain.strength, plain.expiry, plain.opened) == ("HYDRO-88", 0.88, DAY, None)
    (weak,) = read_stock(one_row("stock", **{**BATCH, "strength": 84.0}), MILL)
    assert weak.strength == pytest.approx(0.84)


def test_terms_take_the_typical_value_where_a_cell_is_empty_and_say_so() -> None:
    store = read_terms(one_row("purchase_terms", **TERMS), MILL)
    terms = store.terms["LYE-50"]
    assert (terms.pack_kind, terms.pack_mass, terms.lead_days) == ("IBC", 1500.0, 7)
    assert (terms.order_rule, terms.storage_ceiling) == (AS_NEEDED, None)
    assert terms.service_level == pytest.approx(0.95)
    assert terms.holding_rate * 365.25 * 24.0 == pytest.approx(0.20)
    assert {taken.key for taken in store.assumptions} == {
        f"purchase.{name}"
        for name in ("lead_time_spread", "service_level", "need_spread", "holding_rate", "payment_time")
    }
    assert not any(taken.key.startswith("purchase.") for taken in MILL.assumptions)  # of no quote


REFUSED: list[tuple[str, dict[str, Any], str, str]] = [
    ("stock", {"code": "HYDRO-89"}, "code", "material 'HYDRO-89' is not in the book"),
    ("stock", {"expiry": "31.3.2025"}, "expiry", "last day is '31.3.2025', not a date"),
    ("stock", {"expiry": 45747.5}, "expiry", "last day is 45747.5, not a date"),
    ("stock", {"strength": 0.88}, "strength", "type 88, not 0.88"),
    ("stock", {"strength": 188.0}, "strength", "assay, % is 188 %; accepted is 1 to 100 %"),
    ("stock", {"stock_mass": -1.0}, "stock_mass", "in store, kg is -1 kg"),
    ("stock", {"stock_mass": "300 kg"}, "stock_mass", "in store, kg is the text '300 kg', not a number"),
    ("stock", {"stock_mass": None}, "stock_mass", "in store, kg is empty"),
    ("stock", {"opened": datetime.date(2025, 4, 1)}, "opened", "opened is 2025-04-01, behind the last day"),
    ("stock", {"code": "WARP-6"}, "code", "accepted is a material that is no yarn"),
    ("open_orders", {"arrival": None}, "arrival", "arrival is empty; accepted is the day"),
    ("open_orders", {"order_mass": 0.0}, "order_mass", "ordered, kg is 0 kg"),
    ("open_orders", {"material": "LYE"}, "material", "material 'LYE' is not in the book"),
    ("purchase_terms", {"pack_mass": 0.0}, "pack_mass", "pack, kg is 0 kg; accepted is 0.01 to 50000 kg"),
    ("purchase_terms", {"pack_kind": "barrel"}, "pack_kind", "accepted is one of: bag, drum, IBC, tanker"),
    ("purchase_terms", {"lead_time": None}, "lead_time", "lead time, days is empty"),
    ("purchase_terms", {"lead_time": -3.0}, "lead_time", "lead time, days is -3 day"),
    ("purchase_terms", {"service_level": 0.95}, "service_level", "type 95, not 0.95"),
    ("purchase_terms", {"service_level": 100.0}, "service_level", "service level, % is 100 %"),
    ("purchase_terms", {"need_spread": 0.25}, "need_spread", "so type 25, not 0.25"),
    ("purchase_terms", {"holding_rate": 0.2}, "holding_rate", "holding, %/year is 0.2 %/year"),
    ("purchase_terms", {"order_rule": "weekly"}, "order_rule", "order rule is 'weekly'"),
]


@pytest.mark.parametrize(("key", "changed", "name", "text"), REFUSED)
def test_what_makes_no_sense_is_refused_at_its_cell(
    key: str, changed: dict[str, Any], name: str, text: str
) -> None:
    given, read = {
        "stock": (BATCH, read_stock),
        "open_orders": (ORDER, read_open_orders),
        "purchase_terms": (TERMS, read_terms),
    }[key]
    with pytest.raises(InputError) as refused:
        read(one_row(key, **{**given, **changed}), MILL)
    assert refused.value.where == cell(key, name)
    assert text in refused.value.message


@pytest.mark.parametrize(
    ("rule", "text"),
    [
        ("for a time", "cover time is empty beside the order rule for a time"),
        ("economic quantity", "order charge is empty or 0 beside the order rule economic quantity"),
    ],
)
def test_a_rule_without_what_it_needs_is_refused(rule: str, text: str) -> None:
    with pytest.raises(InputError, match=text):
        read_terms(one_row("purchase_terms", **TERMS, order_rule=rule), MILL)
