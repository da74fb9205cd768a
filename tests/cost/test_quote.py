"""Prices, rounding, and the direction in which a cost must move."""

from __future__ import annotations

import dataclasses
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.cost.money import rounded
from costing.cost.quote import Quote, material_price, quote
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.settings.mill import Mill
from tests.example_mill import example_mill


def quoted(mill: Mill) -> Quote:
    assert mill.costs is not None
    return quote(open_ledger(mill, mill.enquiries["E"]), mill.materials, mill.costs)


def with_material(code: str, **changes: object) -> Mill:
    mill = example_mill()
    mill.materials[code] = dataclasses.replace(mill.materials[code], **changes)  # type: ignore[arg-type]
    return mill


def test_a_cheaper_price_never_raises_the_cost() -> None:
    whole = quoted(example_mill())
    for code in ("INDIGO", "HYDRO", "LYE", "WET", "SEQ", "WARP", "WEFT"):
        mill = example_mill()
        price = mill.materials[code].price
        assert price is not None
        cheaper = quoted(with_material(code, price=0.9 * price))
        assert cheaper.cost_per_kg < whole.cost_per_kg
        share = sum(line.cost for line in whole.lines if line.material == code)
        overhead = 1.0 if code in ("WARP", "WEFT") else 1.12
        assert whole.cost_per_kg - cheaper.cost_per_kg == pytest.approx(0.1 * share * overhead, rel=1e-9)


@given(st.floats(0.3, 0.98), st.floats(0.3, 0.98))
def test_a_worse_assay_never_lowers_a_purchase(one: float, other: float) -> None:
    weak, strong = sorted((one, other))
    used = []
    for strength in (weak, strong):
        mill = with_material("HYDRO", strength=strength)
        used.append(open_ledger(mill, mill.enquiries["E"]).used("HYDRO"))
    assert used[0] >= used[1] * (1 - 1e-12)
    assert used[0] * weak == pytest.approx(used[1] * strong, rel=1e-9)


def test_bases_of_a_metre() -> None:
    """4,115 ends of 84.36 tex, crimp 8 %, waste 2 %, stretch 1 %, shrinkage 10 %, by hand."""
    offer = quoted(example_mill())
    loom = 4115 * 84.36e-6 * 1.08 / 0.98 / 1.01
    assert offer.per["m of loom-state cloth"] == pytest.approx(loom, rel=1e-9)
    assert offer.per["m of finished cloth"] == pytest.approx(loom / 0.9, rel=1e-9)
    assert offer.per["yd of finished cloth"] == pytest.approx(loom / 0.9 * 0.9144, rel=1e-9)


def test_margin_is_of_the_price() -> None:
    offer = quoted(example_mill())
    assert (offer.price_per_kg - offer.cost_per_kg) / offer.price_per_kg == pytest.approx(0.15)


def test_the_margin_of_the_enquiry_comes_before_that_of_the_mill() -> None:
    offer = quoted(example_mill(enquiry={"margin": 25.0}))
    assert offer.margin == pytest.approx(0.25)
    assert offer.price_per_kg == pytest.approx(offer.cost_per_kg / 0.75)


def test_yarn_bases_hold_no_weft() -> None:
    """3.4 kg of weft at 2.2 for each 4.5 kg of warp, or whatever the style says, is in the cloth alone."""
    offer = quoted(example_mill())
    weft = offer.by("group")["weft yarn",]
    assert weft > 0
    assert offer.cost_on("kg of grey yarn") == pytest.approx(offer.cost_per_kg - weft)
    assert offer.cost_on("m of finished cloth") == pytest.approx(
        offer.cost_per_kg * offer.per["m of finished cloth"]
    )


def test_no_price_is_refused_by_name() -> None:
    with pytest.raises(InputError, match="'HYDRO' is used but has no price"):
        quoted(with_material("HYDRO", price=None))


def test_unknown_currency_is_refused_by_name() -> None:
    with pytest.raises(InputError, match="currency 'XXX' of material 'HYDRO' has no exchange rate"):
        quoted(with_material("HYDRO", currency="XXX"))


def test_other_currency_goes_through_its_rate() -> None:
    mill = with_material("HYDRO", currency="USD", freight=0.1)
    assert mill.costs is not None
    costs = dataclasses.replace(mill.costs, exchange_rates={"USD": 0.9})
    assert material_price("HYDRO", mill.materials, costs) == pytest.approx((1.1 + 0.1) * 0.9)


def test_a_style_without_a_yarn_code_says_what_is_left_out() -> None:
    mill = example_mill()
    mill.styles["S"] = dataclasses.replace(mill.styles["S"], warp_yarn="", weft_yarn="")
    offer = quoted(mill)
    assert offer.not_priced == ("warp yarn", "weft yarn")
    assert ("warp yarn",) not in offer.by("group")


@pytest.mark.parametrize(
    ("amount", "step", "expected"),
    [
        (1.005, 0.01, "1.01"),
        (1.0049999, 0.01, "1.00"),
        (2.5, 1.0, "3"),
        (0.12345, 0.001, "0.123"),
        (7.3, 5.0, "5"),
    ],
)
def test_rounding_is_half_up_on_the_printed_decimal(amount: float, step: float, expected: str) -> None:
    assert rounded(amount, step) == Decimal(expected)
