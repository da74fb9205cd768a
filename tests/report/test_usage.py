"""Rounded effects: they add up as shown, and none is far from what it is."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from costing.purchasing.usage import Amounts, added
from costing.report.usage import EFFECTS, PLAN, SIZE, shown_among, shown_total

money = st.none() | st.floats(-1e6, 1e6, allow_nan=False)


def part(effects: list[float | None]) -> Amounts:
    """Some of the effects, on a standard cost of 1000.005."""
    volume, mix, usage, strength, price = (Fraction(effect or 0.0) for effect in effects)
    standard = Fraction("1000.005")
    return Amounts(
        volume=volume,
        mix=mix,
        usage=usage,
        strength=strength,
        price=price,
        planned_cost=standard - volume - mix,
        standard_cost=standard,
        actual_cost=standard + usage + strength + price,
    )


@settings(max_examples=200, deadline=None)
@given(st.lists(st.lists(money, min_size=5, max_size=5).map(part), min_size=1, max_size=9))
def test_rows_and_columns_add_up_as_shown(parts: list[Amounts]) -> None:
    """Of any parts: columns to the total, each row to its difference; nothing stays nothing."""
    total = added(parts)
    whole = shown_total(total)
    shown = shown_among(parts, whole)
    for name in (*EFFECTS, *PLAN, "planned", "standard", "over"):
        assert sum(getattr(one, name) for one in shown) == getattr(whole, name)
    for one, exact in zip([*shown, whole], [*parts, total], strict=True):
        assert one.bridge[-1] - one.planned == one.volume + one.mix + one.over
        for name in (*EFFECTS, *PLAN):
            of, held = getattr(one, name), getattr(exact, name)
            assert bool(held) or not of
            assert abs(Fraction(of) - held) <= 3 * Fraction(SIZE)
