"""Prices that a clerk would ask about."""

from __future__ import annotations

import dataclasses
import datetime
from typing import Any

import pytest

from costing.cost.price_remarks import cost_remarks, price_remarks
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
    return [(remark.kind, remark.text) for remark in price_remarks(offer, mill, TODAY)]


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


def test_a_price_far_from_those_of_the_same_substance_warns() -> None:
    """Twice is a price, twenty times a slip, a thousand times a price per tonne."""
    mill = example_mill()
    hydro = mill.materials["HYDRO"]
    assert hydro.price is not None
    assert mill.costs is not None
    for times, words in (
        (2.0, []),
        (20.0, ["the price and its unit"]),
        (1000.0, ["per tonne stands as one"]),
    ):
        mill.materials["HYDRO-2"] = dataclasses.replace(hydro, code="HYDRO-2", price=hydro.price / times)
        offer = quote(open_ledger(mill, mill.enquiries["E"]), mill.materials, mill.costs)
        texts = [item.text for item in price_remarks(offer, mill, TODAY) if "of its kind" in item.text]
        assert len(texts) == len(words)
        for text, word in zip(texts, words):
            assert word in text
            assert f"of HYDRO costs {times:g} times that of HYDRO-2" in text


def test_what_is_not_used_is_not_asked_about() -> None:
    assert said("PASTE", price=0.0) == []


@pytest.mark.parametrize(
    ("changed", "margin", "words"),
    [
        ({}, 0.001, ["the margin is 0.1 %: did you mean 10 %? ten per cent beside % is typed as 10"]),
        ({"overhead": 0.0012}, 0.1, ["the overhead is 0.12 %: did you mean 12 %?"]),
        ({"steam_price": 32.0}, 0.1, ["a tonne of steam costs 2.67e+05 kilowatt-hours; usual is 30 to 3000"]),
        ({"steam_price": 0.000032}, 0.1, ["a tonne of steam costs 0.267 kilowatt-hours"]),
        (
            {"water_price": 1.2},
            0.1,
            ["of water costs 1e+04 kilowatt-hours; usual is 0.5 to 200"],
        ),
        ({"power_price": 0.00012}, 0.1, ["of water costs", "of steam costs", "of effluent costs"]),
        ({}, 0.1, []),
        ({}, 0.0, []),
        ({"power_price": 0.0}, 0.1, []),
    ],
)
def test_a_price_or_share_with_the_wrong_unit(
    changed: dict[str, Any], margin: float, words: list[str]
) -> None:
    """Steam of 32 a tonne, water of 1.20 a cubic metre and power of 0.12 are in proportion."""
    mill = example_mill()
    assert mill.costs is not None
    costs = dataclasses.replace(mill.costs, **changed)
    enquiry = dataclasses.replace(mill.enquiries["E"], margin=margin)
    found = [remark.text for remark in cost_remarks(mill, enquiry, costs)]
    assert len(found) == len(words)
    for text, word in zip(found, words):
        assert word in text
