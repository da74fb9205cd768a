"""Effects that explain a difference add up to it, exactly and as they are shown."""

from __future__ import annotations

import copy
import random
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.cost.changes import (
    CLOTH,
    LOT,
    ORDER,
    PRICE,
    PROGRAM,
    RECIPE,
    USAGE,
    Change,
    closed,
    exchanged,
    joined,
    opened,
    swaps,
    under_codes_of,
)
from costing.cost.difference import (
    Effect,
    effects_of,
    lines_on,
    moves_between,
    together,
    with_program,
)
from costing.cost.money import common_step, rounded, shown_parts
from costing.cost.ordering import price_variance, usage_variance
from costing.cost.quote import FINISHED_METRE, CostLine, Quote, quote
from costing.ledger.whole import open_ledger
from costing.quantities import QUANTITIES, InputError
from costing.quantities.checking import LIMITS
from costing.settings.inputs import Place, inputs_of, with_inputs
from costing.settings.mill import Enquiry, Mill
from costing.settings.snapshot import Document, restored, snapshot_of
from tests.report.demo import demo_mill

MILL = demo_mill()
BASES = (FINISHED_METRE, "kg of grey yarn")
STEP = Decimal("0.001")


def priced(mill: Mill, enquiry: Enquiry) -> Quote:
    assert mill.costs is not None
    return quote(open_ledger(mill, enquiry), mill.materials, mill.costs)


def moved(code: str, seed: int) -> Document:
    """A demo enquiry with some of its numbers moved at random, as the mill accepts them."""
    source = random.Random(seed)
    enquiry = MILL.enquiries[code]
    places = {
        place: value
        for place, value in inputs_of(MILL, enquiry).items()
        if not QUANTITIES[place.name].whole and "share" not in place.name
    }
    while True:
        chosen = source.sample(list(places), source.randint(1, 12))
        values: dict[Place, Any] = {}
        for place in chosen:
            low, high = LIMITS[place.name]
            values[place] = min(high, max(low, places[place] * source.uniform(0.85, 1.2)))
        try:
            changed, asked = with_inputs(MILL, enquiry, values)
            priced(changed, asked)
        except InputError:
            continue
        return snapshot_of(changed, asked)


def checked(before: Document, after: Document) -> list[Effect]:
    """The effects between two snapshots, with every sum that must hold."""
    first, moves = moves_between(before, after, priced)
    last = priced(*restored(after))
    effects: list[Effect] = []
    for basis in BASES:
        effects = effects_of(first, moves, basis)
        # Exact: no tolerance.
        exact = sum(lines_on(last, basis).values()) - sum(lines_on(first, basis).values())
        assert sum(effect.amount for effect in effects) == exact
        assert sum(effect.amount for effect in together(effects)) == exact
        prices = first.price_on(basis), last.price_on(basis)
        assert float(exact) == pytest.approx(prices[1] - prices[0], abs=1e-12)
        # Shown: to the last rounding unit.
        told = rounded(prices[1], 0.001) - rounded(prices[0], 0.001)
        groups = together(effects)
        shown = shown_parts([effect.amount for effect in groups], told, STEP)
        assert sum(shown) == (told if groups else 0)
        for effect, amount in zip(groups, shown):
            assert abs(Fraction(amount) - effect.amount) < Fraction(STEP)
            lines = shown_parts(list(effect.lines.values()), amount, STEP)
            assert sum(lines) == amount
            assert all(abs(Fraction(x) - y) < Fraction(STEP) for x, y in zip(lines, effect.lines.values()))
    # The inputs themselves lead to the last quote, before it is put in place of what they come to.
    mine, other = opened(before), opened(under_codes_of(after, before))
    whole = exchanged(joined(mine, other), other, swaps(mine, other))
    assert priced(*restored(closed(whole))).price_per_kg == pytest.approx(last.price_per_kg, rel=1e-12)
    return effects


@pytest.mark.parametrize("seed", range(5))
def test_random_changes_of_one_enquiry_add_up(seed: int) -> None:
    code = random.Random(seed).choice(list(MILL.enquiries))
    before, after = moved(code, seed), moved(code, 1000 + seed)
    effects = checked(before, after)
    assert effects
    differing = {place for place in _numbers(before) if _numbers(before)[place] != _numbers(after)[place]}
    assert {(c.where, c.name) for effect in effects for c in effect.changes} == differing


def _numbers(document: Document) -> dict[tuple[str, str], Any]:
    """Whose input it is and its name, as a change tells it, of every number of a snapshot."""
    mill, enquiry = restored(document)
    return {
        (place.code or place.kind, place.name.replace("_", " ")): value
        for place, value in inputs_of(mill, enquiry).items()
    }


@pytest.mark.parametrize("seed", range(6))
def test_two_demo_enquiries_add_up_whatever_their_routes(seed: int) -> None:
    codes = random.Random(seed).sample(list(MILL.enquiries), 2)
    checked(*[moved(code, seed + place) for place, code in enumerate(codes)])


def test_a_quote_differs_from_itself_in_nothing() -> None:
    document = snapshot_of(MILL, MILL.enquiries["Q-01"])
    assert moves_between(document, copy.deepcopy(document), priced)[1] == []
    renamed = copy.deepcopy(document)
    renamed["enquiry"]["code"], renamed["enquiry"]["description"] = "X-99", "another name"
    assert moves_between(document, renamed, priced)[1] == []


def changed(code: str, *changes: tuple[str, str, str, float]) -> Document:
    mill, enquiry = with_inputs(MILL, MILL.enquiries[code], {Place(*c[:3]): c[3] for c in changes})
    return snapshot_of(mill, enquiry)


def test_each_input_is_told_under_its_kind() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = changed(
        "Q-02",
        ("style", "", "ends_density", before["style"]["ends_density"] * 1.01),
        ("style", "", "warp_waste", 0.031),
        ("enquiry", "", "order_length", 12345.0),
        ("enquiry", "", "margin", 0.123),
        ("range", "", "range_hour_rate", 321.0),
        ("range", "", "leader_length", 77.0),
        ("step", "indigo dyeing", "bath_temperature", 27.5),
        ("step", "indigo dyeing", "sky_evaporation", 0.0123),
        ("material", "HYDRO-88", "strength", 0.85),
        ("material", "HYDRO-88", "price", 1.99),
        ("mill costs", "", "water_price", 0.0019),
    )
    effects = checked(before, after)
    told = {(effect.groups, change.where, change.name) for effect in effects for change in effect.changes}
    assert told == {
        ((CLOTH,), "style", "ends density"),
        ((USAGE,), "style", "warp waste"),
        ((LOT,), "enquiry", "order length"),
        ((PRICE,), "enquiry", "margin"),
        ((PRICE,), "range", "range hour rate"),
        ((USAGE,), "range", "leader length"),
        ((RECIPE,), "indigo dyeing", "bath temperature"),
        ((USAGE,), "indigo dyeing", "sky evaporation"),
        ((USAGE,), "HYDRO-88", "strength"),
        ((PRICE,), "HYDRO-88", "price"),
        ((PRICE,), "mill costs", "water price"),
    }
    assert [effect.groups for effect in effects] == sorted(
        (effect.groups for effect in effects), key=lambda groups: ORDER.index(groups[0])
    )


def test_an_offer_of_another_supplier_is_told_once_with_its_price() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    (item,) = [item for item in after["materials"] if item["code"] == "HYDRO-88"]
    item.update(price=1.3, supplier="depot 2", price_until={"date": "2030-01-31"}, price_date=None)
    after["costs"]["prices_as_of"] = {"date": "2029-01-31"}
    (effect,) = checked(before, after)
    assert effect.groups == (PRICE,)
    assert [change.name for change in effect.changes] == ["price", "supplier"]


def test_price_and_usage_of_one_product_are_its_two_variances() -> None:
    """As the formulas for the variances of a material have them, which are held against a published one."""
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    price = MILL.materials["HYDRO-88"].price
    assert price is not None
    after = changed(
        *("Q-02", ("material", "HYDRO-88", "price", 1.2 * price)),
        ("step", "indigo dyeing", "circulation_oxygen", 1.3e-6),
    )
    first, moves = moves_between(before, after, priced)
    last = priced(*restored(after))
    masses = [sum(x.amount for x in one.lines if x.material == "HYDRO-88") for one in (first, last)]
    prices = [next(x.unit_price for x in one.lines if x.material == "HYDRO-88") for one in (first, last)]
    assert masses[0] != masses[1]
    found = {}
    for effect in effects_of(first, moves, "kg of grey yarn"):
        found[effect.groups] = float(sum(v for key, v in effect.lines.items() if key[1] == "HYDRO-88"))
    assert found[(USAGE,)] == pytest.approx(usage_variance(masses[1], masses[0], prices[0]), rel=1e-9)
    assert found[(PRICE,)] == pytest.approx(price_variance(prices[1], prices[0], masses[1]), rel=1e-9)


def test_the_published_exercise_of_variances() -> None:
    """430 units at 6.90 in the standard, 450 at 6.50: -180 of price, 138 of usage (variance-exercise)."""
    document = snapshot_of(MILL, MILL.enquiries["Q-01"])
    after = copy.deepcopy(document)
    goods = [one["materials"][0] for one in (document, after)]
    step = [one["steps"][0] for one in (document, after)]
    for place, (units, price) in enumerate(((430.0, 6.90), (450.0, 6.50))):
        goods[place]["price"], step[place]["power"] = price, units

    def units_at_price(mill: Mill, enquiry: Enquiry) -> Quote:
        amount = mill.steps_of(mill.recipe(enquiry.recipe), mill.range(enquiry.range))[0].power
        price = mill.materials[goods[0]["code"]].price or 0.0
        line = CostLine("work", "material", "use", "dye", amount, "unit", price, amount * price)
        return Quote([line], "EUR", line.cost, line.cost, 0.0, {"kg of grey yarn": 1.0}, 0.0, ())

    first, moves = moves_between(document, after, units_at_price)
    found = {e.groups[0]: float(e.amount) for e in effects_of(first, moves, "kg of grey yarn")}
    assert found == pytest.approx({USAGE: 138.0, PRICE: -180.0})


def test_a_change_that_cannot_stand_alone_waits_for_the_other() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    (dyeing,) = [step for step in after["steps"] if step["kind"] == "indigo"]
    dyeing["boxes"] += 2.0
    dyeing["dips"] = dyeing["boxes"]
    told = [(effect.groups, effect.changes[0].name) for effect in checked(before, after)]
    assert told == [((USAGE,), "boxes"), ((RECIPE,), "dips")]


def test_metres_not_of_first_quality_are_usage_and_add_up_without_the_weft_too() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    before["enquiry"]["off_shade_share"], after["enquiry"]["off_shade_share"] = 0.02, 0.04
    (effect,) = checked(before, after)
    assert (effect.groups, effect.changes[0].name) == ((USAGE,), "off shade share")


def test_one_way_to_give_the_water_of_a_rinse_comes_in_place_of_the_other() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    (rinse,) = [step for step in after["steps"] if step["name"] == "rinse after dyeing"]
    rinse["rinse_water"], rinse["rinse_water_flow"] = None, 9000.0
    rinse["power"] += 5.0
    told = [(effect.groups, [c.name for c in effect.changes]) for effect in checked(before, after)]
    assert told == [((RECIPE,), ["rinse water", "rinse water flow"]), ((USAGE,), ["power"])]


def test_changes_that_can_only_come_together_are_told_together() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-02"])
    after = copy.deepcopy(before)
    after["steps"][0]["power"] += 1.0
    after["enquiry"]["stoppages"] += 1.0

    def both_or_none(mill: Mill, enquiry: Enquiry) -> Quote:
        power = mill.steps_of(mill.recipe(enquiry.recipe), mill.range(enquiry.range))[0].power
        if (power == after["steps"][0]["power"]) != (enquiry.stoppages == after["enquiry"]["stoppages"]):
            raise InputError("range", "refused")
        return priced(mill, enquiry)

    first, moves = moves_between(before, after, both_or_none)
    assert [move.groups for move in moves] == [(LOT, USAGE)]
    (effect,) = effects_of(first, moves, FINISHED_METRE)
    last = priced(*restored(after))
    assert effect.amount == sum(lines_on(last, FINISHED_METRE).values()) - sum(
        lines_on(first, FINISHED_METRE).values()
    )


def test_what_another_program_makes_of_it_is_told_apart() -> None:
    before, after = moved("Q-03", 1), moved("Q-03", 2)
    first, moves = moves_between(before, after, priced)
    last = priced(*restored(after))
    assert with_program(first, moves, (first, last), ()) == (first, moves)
    lines = [first.lines[0]._replace(cost=first.lines[0].cost + 0.01), *first.lines[1:]]
    old = first._replace(lines=lines)
    told = [Change(PROGRAM, "program", "version", "", "0.1", "0.2")]
    start, path = with_program(first, moves, (old, last), told)
    effects = together(effects_of(start, path, FINISHED_METRE))
    assert effects[-1].groups == (PROGRAM,)
    assert effects[-1].changes == tuple(told)
    exact = sum(lines_on(last, FINISHED_METRE).values()) - sum(lines_on(old, FINISHED_METRE).values())
    assert sum(effect.amount for effect in effects) == exact


def test_quotes_in_two_moneys_are_not_compared() -> None:
    before = snapshot_of(MILL, MILL.enquiries["Q-01"])
    after = copy.deepcopy(before)
    rates = after["costs"]["exchange_rates"]
    after["costs"]["currency"] = "USD"
    rates.update({"USD": 1.0, "EUR": 1.1})
    with pytest.raises(InputError, match="one quote is in EUR, the other in USD"):
        moves_between(before, after, priced)


@given(st.lists(st.integers(-(10**9), 10**9), min_size=1, max_size=30), st.sampled_from([0.001, 0.01, 0.05]))
def test_shown_parts_add_up_and_none_is_a_step_away(parts: list[int], step: float) -> None:
    exact = [Fraction(part, 10**9) for part in parts]
    total = rounded(float(sum(exact)), step)
    size = Decimal(repr(step))
    shown = shown_parts(exact, total, size)
    assert sum(shown) == total
    assert all(abs(Fraction(x) - y) <= Fraction(size) for x, y in zip(shown, exact))


def test_the_step_of_two_roundings_is_one_that_both_are_made_of() -> None:
    assert common_step([0.001]) == Decimal("0.001")
    assert common_step([0.01, 0.001]) == Decimal("0.001")
    assert common_step([0.05, 0.02]) == Decimal("0.01")
    assert common_step([5.0, 2.0]) == Decimal(1)
