"""Which offer counts on a day: cases worked by hand, and the direction in which a price must move."""

from __future__ import annotations

import dataclasses
import datetime
from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.cost.offers import mill_on, standings
from costing.cost.price_breaks import next_break
from costing.cost.quote import ORDERED, material_price, quote
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.quantities.checking import number_text
from costing.report.price_breaks import price_breaks
from costing.report.prices import margins, price_changes, prices
from costing.report.table import work_out
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import ExchangeRate, MaterialOffers, Offer, rates_on
from tests.example_mill import example_mill

DAY = datetime.date(2026, 3, 10)
CODE = "HYDRO"


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def offer(supplier: str, price: float, strength: float = 0.88, **more: Any) -> Offer:
    given_ = {
        "freight": 0.0,
        "price_by": "kg",
        "currency": "",
        "price_terms": "delivered",
        "from_quantity": 0.0,
    }
    return Offer(CODE, supplier, price, strength=strength, **{**given_, **more})


def mill_with(*offers: Offer, usual: float | None = None, rates: Sequence[ExchangeRate] = ()) -> Mill:
    mill = example_mill()
    assert mill.costs is not None
    mill.costs = dataclasses.replace(mill.costs, prices_as_of=DAY)
    mill.rates = tuple(rates)
    listed = dataclasses.replace(mill.materials[CODE], price=None, freight=0.0, currency="", price_date=None)
    mill.offers[CODE] = MaterialOffers(listed, offers, usual)
    return mill_on(mill)


def costs_of(mill: Mill) -> MillCosts:
    assert mill.costs is not None
    return mill.costs


def chosen(mill: Mill) -> str:
    return mill.materials[CODE].supplier


def reasons(mill: Mill) -> dict[str, str]:
    return {one.offer.supplier: one.hindered for one in standings(mill.offers[CODE], costs_of(mill))}


def test_the_active_part_decides_not_the_kilogram() -> None:
    """1.40 / 0.85 = 1.6471 is dearer than (1.38 + 0.06) / 0.88 = 1.6364."""
    cheap = offer("cheap", 1.40, strength=0.85)
    strong = offer("strong", 1.38, freight=0.06, price_terms="ex works")
    mill = mill_with(cheap, strong)
    found = {one.offer.supplier: one for one in standings(mill.offers[CODE], costs_of(mill))}
    assert found["cheap"].active == pytest.approx(1.6471, abs=5e-5)
    assert found["strong"].active == pytest.approx(1.6364, abs=5e-5)
    assert (chosen(mill), mill.materials[CODE].strength) == ("strong", 0.88)
    assert material_price(CODE, mill.materials, costs_of(mill)) == pytest.approx(1.44)


def test_the_ledger_takes_the_strength_of_the_offer() -> None:
    """The same hydrosulfite in a product of 80 % is 88 / 80 = 1.1 times as much of it."""
    used = []
    for strength in (0.88, 0.80):
        mill = mill_with(offer("one", 1.0, strength=strength))
        used.append(open_ledger(mill, mill.enquiries["E"]).used(CODE))
    assert used[1] / used[0] == pytest.approx(1.1)


def test_both_ends_of_the_validity_are_in() -> None:
    run: dict[str, Any] = {"valid_from": day("2026-03-10"), "valid_to": day("2026-03-20")}
    mill = mill_with(offer("one", 1.0, **run))
    for text, said in (
        ("2026-03-09", "will be valid from 2026-03-10"),
        ("2026-03-10", ""),
        ("2026-03-20", ""),
        ("2026-03-21", "was valid to 2026-03-20"),
    ):
        assert reasons(mill_on(mill, day(text))) == {"one": said}


def test_without_an_offer_that_counts_the_refusal_names_each() -> None:
    old = offer("old", 1.0, valid_to=day("2026-02-28"), where="Offers!A7")
    new = offer("new", 1.0, valid_from=day("2026-04-01"), where="Offers!A8")
    kept = offer("kept", 1.0, offer_counts="no", where="Offers!A9")
    mill = mill_with(old, new, kept)
    with pytest.raises(InputError) as error:
        material_price(CODE, mill.materials, costs_of(mill))
    assert error.value.message == (
        "material 'HYDRO' has no price on 2026-03-10: old (Offers!A7) was valid to 2026-02-28; "
        "new (Offers!A8) will be valid from 2026-04-01; kept (Offers!A9) marked no; "
        "accepted is an offer that is valid on that day"
    )
    assert chosen(mill_on(mill, day("2026-04-01"))) == "new"
    assert not mill_on(mill, day("2026-04-01")).materials[CODE].no_price


@pytest.mark.parametrize(("usual", "said"), [(None, "small"), (4999.0, "small"), (5000.0, "large")])
def test_a_break_counts_from_its_quantity_on(usual: float | None, said: str) -> None:
    mill = mill_with(offer("small", 1.0), offer("large", 0.9, from_quantity=5000.0), usual=usual)
    assert chosen(mill) == said


def test_where_no_break_is_reached_nothing_is_bought_and_none_given_takes_the_smallest() -> None:
    breaks = [offer("large", 0.8, from_quantity=9000.0), offer("half", 0.9, from_quantity=5000.0)]
    assert chosen(mill_with(*breaks)) == "half"
    refused = mill_with(*breaks, usual=2000.0)
    assert "half from 5000 kg on; usual purchase is 2000 kg" in refused.materials[CODE].no_price


def test_always_goes_before_the_cheapest_while_it_is_valid() -> None:
    contract = offer("contract", 1.2, offer_counts="always", valid_to=day("2026-06-30"))
    mill = mill_with(offer("spot", 1.0), contract, offer("record", 0.1, offer_counts="no"))
    assert chosen(mill) == "contract"
    assert chosen(mill_on(mill, day("2026-07-01"))) == "spot"


RATES = (
    ExchangeRate("USD", 0.95),
    ExchangeRate("USD", 0.90, day("2026-01-01")),
    ExchangeRate("USD", 0.88, day("2026-03-11")),
    ExchangeRate("GBP", 1.20, day("2026-03-11")),
)


@pytest.mark.parametrize(
    ("on", "rates"),
    [
        ("2025-12-31", {"USD": 0.95}),
        ("2026-01-01", {"USD": 0.90}),
        ("2026-03-10", {"USD": 0.90}),
        ("2026-03-11", {"USD": 0.88, "GBP": 1.20}),
    ],
)
def test_the_latest_rate_on_or_before_the_day_counts(on: str, rates: dict[str, float]) -> None:
    assert rates_on(RATES, day(on)) == rates
    assert rates_on(RATES[::-1], day(on)) == rates  # whatever the order of the rows


def test_an_offer_whose_money_has_no_rate_yet_might_be_the_cheapest() -> None:
    """10 GBP are dearer than 1 whatever the rate, but that is for the clerk to say."""
    mill = mill_with(offer("home", 1.0), offer("abroad", 10.0, currency="GBP"), rates=RATES)
    assert "abroad is in GBP, which has no rate on that day" in mill.materials[CODE].no_price
    assert "accepted is a rate of that day or before" in mill.materials[CODE].no_price
    assert chosen(mill_on(mill, day("2026-03-11"))) == "home"


def test_a_rate_that_begins_later_is_refused_by_name_for_a_listed_price_too() -> None:
    mill = mill_with(offer("home", 1.0), rates=RATES)
    mill.materials["LYE"] = dataclasses.replace(mill.materials["LYE"], currency="GBP")
    mill = mill_on(mill)
    with pytest.raises(
        InputError, match="rates of 'GBP', the currency of material 'LYE', begin on 2026-03-11"
    ):
        material_price("LYE", mill.materials, costs_of(mill))
    later = mill_on(mill, day("2026-03-11"))
    price = later.materials["LYE"].price
    assert price is not None
    assert material_price("LYE", later.materials, costs_of(later)) == pytest.approx(
        1.2 * (price + later.materials["LYE"].freight)
    )


def test_the_book_is_the_same_after_a_look_at_another_day() -> None:
    mill = mill_with(offer("now", 1.0, valid_to=DAY), offer("then", 2.0, strength=0.8), rates=RATES)
    before = work_out(mill, mill.enquiries["E"], DAY).quote.cost_per_kg
    later = mill_on(mill, day("2026-05-01"))
    assert (chosen(mill), chosen(later)) == ("now", "then")
    assert work_out(later, later.enquiries["E"], DAY).quote.cost_per_kg > before
    assert work_out(mill, mill.enquiries["E"], DAY).quote.cost_per_kg == before
    again = mill_on(later, DAY)
    assert work_out(again, again.enquiries["E"], DAY).quote.cost_per_kg == before


def test_a_rise_in_january_takes_its_share_of_the_margin() -> None:
    """15 % more for what is a share s of the cost: cost times (1 + 0.15 s), the price as it was."""
    now = offer("one", 1.0, valid_to=day("2026-12-31"))
    mill = mill_with(now, offer("one", 1.15, valid_from=day("2027-01-01")))
    later = mill_on(mill, day("2027-01-15"))
    results = [work_out(side, side.enquiries["E"], DAY) for side in (mill, later)]
    table = margins(mill, later, results[:1], results[1:], [], 0.05)
    (row,) = [dict(zip([column.title for column in table.columns], row)) for row in table.rows]
    offered = results[0].quote
    share = sum(line.cost for line in offered.lines if line.material == CODE) / offered.cost_per_kg
    overhead = 1.0 + costs_of(mill).overhead
    assert row["Cost then"] / row["Cost"] == pytest.approx(1.0 + 0.15 * share * overhead, rel=1e-9)
    assert row["Margin then"] == pytest.approx(100.0 * (1.0 - row["Cost then"] / row["Price"]), rel=1e-12)
    assert row["Lost"] == pytest.approx(row["Margin"] - row["Margin then"])
    assert row["Mark"] is None
    marked = margins(mill, later, results[:1], results[1:], [], row["Margin"] / 100.0)
    assert marked.rows[0][-1] == "below"
    (change,) = price_changes(mill, later, {CODE, "LYE"}).rows
    assert change == [CODE, "one", "one", 1.0 / 0.88, 1.15 / 0.88, pytest.approx(15.0)]


def test_what_an_end_means_is_said_before_it_comes() -> None:
    ends = offer("one", 1.1, valid_to=day("2026-03-22"))
    followed = prices(mill_with(ends, offer("two", 1.21)), {CODE}).rows
    assert [row[-1] for row in followed] == [
        "chosen; expires in 12 days, then two, active part +10.0 %",
        "counts; active part +10.0 %",
    ]
    alone = mill_with(ends)
    (row,) = prices(alone, {CODE}).rows
    assert row[-1] == "chosen; expires in 12 days, then no offer counts: what needs it is refused"
    assert prices(alone, {CODE}, within=11).rows[0][-1] == "chosen"


def remarked(mill: Mill) -> list[str]:
    found = work_out(mill, mill.enquiries["E"], DAY).remarks
    return [note.text for note in found if "usual purchase" in note.text]


def test_the_break_is_told_where_it_is_not_typed_or_the_order_alone_reaches_the_next() -> None:
    """1.00 and 0.90 for the same strength: 10 % less; what the order takes is the ledger's own sum."""
    offers = offer("small", 1.0), offer("large", 0.9, from_quantity=5000.0)
    mill = mill_with(*offers)
    ledger = open_ledger(mill, mill.enquiries["E"])
    taken = ledger.used(CODE) * ledger.plan.saleable_mass
    (text,) = remarked(mill)
    assert text == (
        "usual purchase is empty: the smallest break counts, any purchase; from 5000 kg on the active part "
        f"costs 10 % less; this order takes {number_text(float(f'{taken:.3g}'))} kg"
    )
    assert not remarked(mill_with(*offers, usual=2000.0))  # typed, and the order is smaller
    assert not remarked(mill_with(*offers, usual=5000.0))  # there is no next
    assert not remarked(mill_with(offers[0], offer("dear", 1.1, from_quantity=5000.0)))
    near = mill_with(offers[0], offer("large", 0.9, from_quantity=0.99 * taken), usual=0.5 * taken)
    assert "this order takes" in remarked(near)[0]


def test_the_next_break_is_the_first_that_is_cheaper_and_a_contract_stays() -> None:
    offers = [
        offer("small", 1.0),
        offer("no cheaper", 1.0, from_quantity=1000.0),
        offer("weak", 0.9, strength=0.75, from_quantity=2000.0),  # 1.20 for the active part
        offer("large", 0.9, from_quantity=5000.0),
        offer("larger", 0.8, from_quantity=9000.0),
    ]
    mill = mill_with(*offers)
    ahead = next_break(mill.offers[CODE], costs_of(mill))
    assert ahead is not None
    assert (ahead.from_quantity, ahead.then.offer.supplier) == (5000.0, "large")
    assert ahead.saved == pytest.approx(0.1)
    bound = mill_with(*offers, offer("contract", 1.2, offer_counts="always"))
    assert next_break(bound.offers[CODE], costs_of(bound)) is None


def test_what_the_next_break_saves_is_what_its_offer_costs_less() -> None:
    """The saving on an order is the cost with the one offer less that with the other, no shorter way."""
    small, large = offer("small", 1.0), offer("large", 0.9, strength=0.86, from_quantity=5000.0)
    mill = mill_with(small, large, usual=2000.0)
    results = [work_out(side, side.enquiries["E"], DAY) for side in (mill, mill_with(large))]
    table = price_breaks(mill, results[:1])
    (row,) = [dict(zip([column.title for column in table.columns], row)) for row in table.rows]
    basis = ORDERED[results[0].enquiry.length_basis]
    metre = results[0].quote.cost_on(basis) - results[1].quote.cost_on(basis)
    assert metre > 0.0
    assert row["On the order"] == pytest.approx(metre * results[0].enquiry.order_length, rel=1e-9)


OFFERS = st.lists(
    st.builds(
        lambda price, freight, strength, break_: offer(
            "any", price, strength=strength, freight=freight, price_terms="ex works", from_quantity=break_
        ),
        st.floats(0.1, 10.0),
        st.floats(0.0, 1.0),
        st.floats(0.5, 0.95),
        st.sampled_from([0.0, 500.0, 5000.0]),
    ),
    min_size=1,
    max_size=4,
)
USUAL = st.sampled_from([None, 1000.0, 9000.0])


@settings(max_examples=25)
@given(OFFERS, USUAL, st.data(), st.floats(0.1, 1.0))
def test_a_cheaper_offer_never_raises_a_cost(
    offers: list[Offer], usual: float | None, data: st.DataObject, share: float
) -> None:
    at = data.draw(st.integers(0, len(offers) - 1))
    cheaper = list(offers)
    cheaper[at] = dataclasses.replace(offers[at], price=share * offers[at].price)
    before, after = (mill_with(*some, usual=usual) for some in (offers, cheaper))
    assert bool(before.materials[CODE].no_price) == bool(after.materials[CODE].no_price)
    if not before.materials[CODE].no_price:
        costs = [
            quote(open_ledger(mill, mill.enquiries["E"]), mill.materials, costs_of(mill)).cost_per_kg
            for mill in (before, after)
        ]
        assert costs[1] <= costs[0] * (1.0 + 1e-9)


@given(OFFERS, USUAL, st.data(), st.floats(0.6, 1.0))
def test_a_worse_assay_never_makes_the_active_part_cheaper(
    offers: list[Offer], usual: float | None, data: st.DataObject, share: float
) -> None:
    at = data.draw(st.integers(0, len(offers) - 1))
    worse = list(offers)
    worse[at] = dataclasses.replace(offers[at], strength=share * offers[at].strength)
    best = []
    for some in (offers, worse):
        mill = mill_with(*some, usual=usual)
        found = [one.active for one in standings(mill.offers[CODE], costs_of(mill)) if one.chosen]
        best.append(found)
    assert len(best[0]) == len(best[1])
    for before, after in zip(*best):
        assert after is not None
        assert before is not None
        assert after >= before
