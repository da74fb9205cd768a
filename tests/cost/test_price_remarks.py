"""Prices that a clerk would ask about."""

from __future__ import annotations

import dataclasses
import datetime

from costing.cost.price_remarks import price_remarks
from costing.cost.quote import quote
from costing.ledger.whole import open_ledger
from tests.example_mill import example_mill

TODAY = datetime.date(2026, 6, 1)


def said(code: str, **changes: object) -> list[tuple[str, str]]:
    mill = example_mill()
    for name, item in mill.materials.items():
        mill.materials[name] = dataclasses.replace(item, price_date=datetime.date(2026, 1, 15))
    mill.materials[code] = dataclasses.replace(mill.materials[code], **changes)  # type: ignore[arg-type]
    assert mill.costs is not None
    offer = quote(open_ledger(mill, mill.enquiries["E"]), mill.materials, mill.costs)
    return [(remark.kind, remark.text) for remark in price_remarks(offer, mill.materials, TODAY)]


def test_ordinary_prices_say_nothing() -> None:
    assert said("HYDRO") == []


def test_a_price_of_nothing_warns() -> None:
    assert said("HYDRO", price=0.0) == [("warning", "the price is 0: nothing is charged for it")]


def test_a_date_to_come_warns() -> None:
    ((kind, text),) = said("HYDRO", price_date=datetime.date(2035, 1, 1))
    assert (kind, text) == ("warning", "the price is dated 2035-01-01, which is still to come")


def test_undated_and_old_prices_are_named() -> None:
    assert said("LYE", price_date=None) == [("unusual", "no date beside the price of LYE")]
    ((kind, text),) = said("LYE", price_date=datetime.date(2025, 5, 1))
    assert (kind, text) == ("unusual", "1 price(s) older than a year; the oldest is that of LYE, 2025-05-01")


def test_what_is_not_used_is_not_asked_about() -> None:
    assert said("PASTE", price=0.0) == []
