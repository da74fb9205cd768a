"""Limits, estimates held against them, and the words for what comes out."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.effluent.limit_comparison import CAUTION, Comparison, compare
from costing.effluent.limits import Estimate, ValueEstimate
from costing.quantities import InputError
from costing.reference_data.discharge_limits import BASES, POINTS, STATISTICS, limit_rows, limits_of
from costing.settings import permit as permit_module
from costing.settings.permit import Limit, allowance, limit_of

COD = Limit("COD", 84.6, "kg/t", "load per product", "any one day", "after treatment")
SULFITE = Limit("sulfite", 1.0, "mg/L", "concentration", "composite of hours", "after treatment", number=2)
PH = Limit("pH", 6.0, "", "value", "at all times", "after treatment", direction="between", value_to=9.0)
ESTIMATE = Estimate("COD", 0.025, 12000.0, 180000.0, 0.2, 0.5, 0.8, "after treatment")

loads = st.floats(1e-6, 1.0)
spreads = st.floats(0.0, 2.0)


@st.composite
def estimates(draw: st.DrawFn, parameter: str = "COD") -> Estimate:
    return Estimate(
        parameter,
        draw(loads),
        draw(st.floats(10.0, 1e6)),
        draw(st.floats(100.0, 1e8)),
        draw(spreads),
        draw(spreads),
        draw(spreads),
        draw(st.sampled_from(POINTS)),
    )


@st.composite
def limits(draw: st.DrawFn) -> Limit:
    basis, units = draw(
        st.sampled_from(
            [
                ("load per product", ("kg/t", "g/kg", "kg/kg", "g/t")),
                ("load per day", ("kg/day", "t/day", "kg/h")),
                ("concentration", ("mg/L", "g/L", "g/m3", "kg/m3")),
            ]
        )
    )
    statistic = draw(st.sampled_from(STATISTICS))
    return Limit(
        "COD",
        draw(st.floats(0.001, 1e5)),
        draw(st.sampled_from(units)),
        basis,
        statistic,
        "after treatment",
        number=draw(st.integers(1, 48)) if " of " in statistic else 0,
        reference_flow=draw(st.none() | st.floats(1.0, 200.0)) if basis == "concentration" else None,
    )


def share(comparison: Comparison) -> float:
    assert comparison.share is not None
    return comparison.share


@given(limits(), estimates())
def test_figures_are_sound_and_words_are_guarded(limit: Limit, estimate: Estimate) -> None:
    found = compare(limit, estimate)
    assert 0.0 <= found.chance <= 1.0
    assert found.share_low is not None
    assert found.share_high is not None
    assert 0.0 <= found.share_low <= share(found) * (1 + 1e-12)
    assert found.share_low <= found.share_high
    assert found.headroom == pytest.approx(1.0 - share(found))
    assert found.words().startswith("estimate, ")
    assert "of the limit (from " in found.words() or "above the limit: " in found.words()
    assert ("above the limit" in found.words()) == (share(found) > 1.0) or share(found) == pytest.approx(1.0)


@given(limits(), estimates(), st.floats(1.0, 10.0))
def test_more_load_takes_more_of_the_limit(limit: Limit, estimate: Estimate, times: float) -> None:
    more = compare(limit, replace(estimate, load=min(estimate.load * times, 5.0)))
    less = compare(limit, estimate)
    assert share(more) >= share(less)
    assert more.chance >= less.chance - 1e-12


@given(
    estimates(),
    st.floats(0.01, 1000.0),
    st.sampled_from([("kg/t", "kg/kg", 1e-3, 0), ("mg/L", "kg/L", 1e-6, 2), ("kg/day", "t/day", 1e-3, 1)]),
)
def test_the_share_does_not_depend_on_the_unit(
    estimate: Estimate, value: float, units: tuple[str, str, float, int]
) -> None:
    one, other, factor, basis = units
    limit = Limit("COD", value, one, BASES[basis], "any one day", "after treatment")
    same = replace(limit, value=value * factor, unit=other)
    first, second = compare(limit, estimate), compare(same, estimate)
    assert share(first) == pytest.approx(share(second), rel=1e-9)
    assert first.chance == pytest.approx(second.chance, rel=1e-6, abs=1e-12)


@given(estimates(), st.floats(0.01, 1000.0))
def test_one_load_limit_in_three_terms_gives_one_share(estimate: Estimate, value: float) -> None:
    per_product = Limit("COD", value, "kg/t", "load per product", "any one day", "after treatment")
    found = compare(per_product, estimate)
    assert found.limit_concentration is not None
    assert found.limit_daily_load is not None
    others = (
        replace(per_product, value=found.limit_concentration, unit="kg/L", basis="concentration"),
        replace(per_product, value=found.limit_daily_load, unit="kg/day", basis="load per day"),
    )
    for other in others:
        assert share(compare(other, estimate)) == pytest.approx(share(found), rel=1e-9)


def test_less_water_keeps_the_load_and_raises_the_concentration() -> None:
    dry = replace(ESTIMATE, flow=ESTIMATE.flow / 2.0)
    concentration = Limit("COD", 160.0, "mg/L", "concentration", "long-term mean", "after treatment")
    assert share(compare(COD, dry)) == share(compare(COD, ESTIMATE))
    assert share(compare(concentration, dry)) == pytest.approx(2.0 * share(compare(concentration, ESTIMATE)))


def test_by_hand() -> None:
    month = replace(COD, value=42.3, statistic="mean of days", number=30)
    found = compare(month, ESTIMATE)
    assert share(found) == pytest.approx(25.0 / 42.3)
    assert (found.load, found.daily_load) == (0.025, 300.0)
    assert found.concentration == pytest.approx(25.0 / 15.0 / 1000.0)
    assert found.limit_concentration == pytest.approx(2820e-6)
    assert found.limit_daily_load == pytest.approx(507.6)
    assert found.meaning == "the long-term mean"
    day = compare(COD, ESTIMATE)
    assert share(day) == pytest.approx(25.0 / 84.6 * 1.9453, rel=1e-4)
    assert day.mean == pytest.approx(25.0)
    assert day.value == pytest.approx(25.0 * 1.9453, rel=1e-4)


def test_a_limit_at_the_mean_is_above_on_many_days() -> None:
    sure = replace(ESTIMATE, spread=0.0)
    at_mean = replace(COD, value=25.0)
    assert 0.3 < compare(at_mean, sure).chance < 0.5
    assert compare(replace(at_mean, statistic="mean of days", number=30), sure).chance > 0.45


def test_chance_and_band_are_those_of_drawn_means_and_days() -> None:
    wide = replace(ESTIMATE, load=0.060, spread=0.4)
    chance = np.random.default_rng(20250106)

    def drawn(variation: float) -> Any:
        spread = np.log1p(variation**2) ** 0.5
        return np.exp(chance.normal(-(spread**2) / 2.0, spread, 400_000))

    means = 0.060 * drawn(0.4)
    found = compare(COD, wide)
    assert found.chance == pytest.approx((means * drawn(0.5) > 0.0846).mean(), abs=0.003)
    assert found.low / found.value == pytest.approx(np.quantile(means, 0.05) / 0.060, rel=0.01)
    assert found.high / found.value == pytest.approx(np.quantile(means, 0.95) / 0.060, rel=0.01)


def test_short_samples_spread_more_than_days_and_means_less() -> None:
    statistics = (
        ("mean of days", 30),
        ("any one day", 0),
        ("composite of hours", 24),
        ("composite of hours", 2),
        ("grab sample", 0),
    )
    chances = [
        compare(replace(COD, statistic=statistic, number=number), ESTIMATE).chance
        for statistic, number in statistics
    ]
    assert chances[0] < chances[1] == chances[2] < chances[3] == chances[4]
    equalised = replace(ESTIMATE, grab_variation=0.0)
    assert compare(replace(COD, statistic="grab sample"), equalised).chance == chances[1]


def test_the_reference_flow_counts_only_above_it() -> None:
    limit = Limit(
        "COD", 80.0, "mg/L", "concentration", "long-term mean", "after treatment", reference_flow=10.0
    )
    plain = replace(limit, reference_flow=None)
    assert share(compare(limit, ESTIMATE)) == pytest.approx(1.5 * share(compare(plain, ESTIMATE)))
    assert "reference flow of 10 L/kg" in compare(limit, ESTIMATE).remarks[-1]
    assert share(compare(limit, ESTIMATE)) == pytest.approx(
        0.025 / (compare(limit, ESTIMATE).limit_load or 0.0)
    )
    found = compare(replace(limit, reference_flow=20.0), ESTIMATE)
    assert share(found) == share(compare(plain, ESTIMATE))
    assert found.remarks == ()


@pytest.mark.parametrize(
    ("load", "spread", "said"),
    [
        (0.025, 0.2, "estimate, 30 % of the limit (from 21 % to 40 %)"),
        (0.0846, 0.0, "estimate, 100.0 % of the limit (from 100.0 % to 100.0 %)"),
        (0.1, 0.2, "estimate, above the limit: 118 % of it (from 84 % to 161 %)"),
        (2.0, 0.0, "estimate, above the limit: 2,400 % of it (from 2,400 % to 2,400 %)"),
        (0.0, 0.2, "estimate, 0 % of the limit (from 0 % to 0 %)"),
        (0.0001, 0.0, "estimate, 0.1 % of the limit (from 0.1 % to 0.1 %)"),
    ],
)
def test_words(load: float, spread: float, said: str) -> None:
    limit = replace(COD, statistic="long-term mean")
    assert compare(limit, replace(ESTIMATE, load=load, spread=spread)).words() == said


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (11.8, "estimate, outside the range 6 to 9: 11.8 (from 11.5 to 12.1)"),
        (8.0, "estimate, within the range 6 to 9: 8 (from 7.7 to 8.3)"),
        (5.0, "estimate, outside the range 6 to 9: 5 (from 4.7 to 5.3)"),
    ],
)
def test_words_of_a_range(value: float, said: str) -> None:
    found = compare(PH, ValueEstimate("pH", value, value - 0.3, value + 0.3, "", "after treatment"))
    assert found.words() == said
    assert found.headroom is None
    assert found.chance > 0.99 if "outside" in said else found.chance < 0.01


def test_words_of_a_floor_a_temperature_and_a_colour() -> None:
    floor, heat = (limit_of(row) for row in limits_of("us_403_sewer"))
    acid = compare(floor, ValueEstimate("pH", 4.5, 4.2, 4.8, "", "into a sewer"))
    assert acid.words() == "estimate, below the lower limit 5: 4.5 (from 4.2 to 4.8)"
    assert acid.chance > 0.99
    warm = compare(heat, ValueEstimate("temperature", 95.0, 86.0, 104.0, "degF", "into a sewer"))
    assert warm.words() == "estimate, below the limit 40 degC: 35 degC (from 30 to 40 degC)"
    assert warm.share is None
    assert warm.chance == pytest.approx(0.05, abs=1e-6)
    blue = limit_of(limit_rows()["de_annex_38.colour_at_620_nm.2_hours"])
    seen = compare(blue, ValueEstimate("colour at 620 nm", 0.015, 0.003, 0.06, "1/mm", "after treatment"))
    assert seen.words() == "estimate, above the limit: 500 % of it (from 100.0 % to 2,000 %)"
    assert seen.chance == pytest.approx(0.96, abs=0.02)


def test_no_word_says_that_a_limit_is_kept() -> None:
    told = [CAUTION, *(text for text in vars(permit_module).values() if isinstance(text, str))]
    told += [row.text() for row in limit_rows().values()]
    for row in limit_rows().values():
        if row.value is None or row.adds_to:
            continue
        limit = limit_of(row)
        for size in (0.01, 0.5, 0.999, 1.0, 1.001, 3.0, 500.0):
            value = row.value * size
            estimate: Any
            if row.basis == "value":
                estimate = ValueEstimate(row.parameter, value, value, value, row.unit, row.point)
            elif row.basis == "concentration":
                estimate = Estimate(row.parameter, min(value * 1e-6, 5.0), 1.0, 1.0, 0.2, 0.5, 0.5, row.point)
            else:
                estimate = Estimate(row.parameter, min(value * 1e-3, 5.0), 1.0, 1.0, 0.2, 0.5, 0.5, row.point)
            found = compare(limit, estimate)
            assert found.words().startswith("estimate, ")
            told += [found.words(), found.meaning, *found.remarks]
    for text in told:
        for word in ("complian", "comply", "complies", "passes"):
            assert word not in text.lower()


def test_what_does_not_match_is_said() -> None:
    raw = replace(ESTIMATE, point="before treatment")
    assert compare(COD, raw).remarks == (
        "the limit holds after treatment, the estimate is before treatment: "
        "it counts no removal by treatment",
    )
    sulfide = replace(COD, parameter="sulfide", form="readily released")
    found = compare(sulfide, replace(ESTIMATE, parameter="sulfide", form="as S"))
    assert found.remarks == ("form of the limit: readily released; of the estimate: as S",)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"parameter": " "}, "limit: parameter is empty"),
        ({"basis": "load"}, "limit of COD: basis is 'load'; accepted is one of: load per product"),
        ({"statistic": "monthly"}, "limit of COD: statistic is 'monthly'"),
        ({"point": "river"}, "limit of COD: point is 'river'"),
        ({"value": -1.0}, "limit of COD: value is -1.0; accepted is a number above 0"),
        ({"value": float("nan")}, "limit of COD: value is nan"),
        ({"value": True}, "limit of COD: value is True"),
        (
            {"unit": "mg/L"},
            "limit of COD: unit is 'mg/L'; accepted for a load per product is one such as kg/kg",
        ),
        ({"unit": "%"}, "limit of COD: unit is '%'; accepted is a unit such as kg/kg"),
        ({"unit": "kg/stone"}, "limit of COD: unit is"),
        (
            {"value_to": 90.0},
            "limit of COD: value to is 90.0; accepted is a number for between, else nothing",
        ),
        ({"direction": "at least"}, "limit of COD: direction is 'at least'; accepted is at most"),
        ({"number": 30}, "limit of COD: number is 30 for 'any one day'"),
        ({"statistic": "mean of days"}, "limit of COD: number is 0 for 'mean of days'"),
        ({"statistic": "mean of days", "number": 1.5}, "limit of COD: number is 1.5"),
        ({"reference_flow": 140.0}, "limit of COD: reference flow stands beside a load per product"),
    ],
)
def test_nonsense_is_refused_by_name(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(InputError) as caught:
        replace(COD, **changes)
    assert str(caught.value).startswith(said)
    assert "\n" not in str(caught.value)


def test_a_range_runs_upwards() -> None:
    with pytest.raises(InputError, match="range is 6 to 5; accepted is low to high"):
        replace(PH, value_to=5.0)


@pytest.mark.parametrize(
    ("limit", "estimate", "said"),
    [
        (replace(COD, value=None), ESTIMATE, "limit of COD: has no value; type the value of your permit"),
        (SULFITE, ESTIMATE, "limit of sulfite: the estimate is of COD"),
        (PH, replace(ESTIMATE, parameter="pH"), "limit of pH: is the limit of a value"),
        (
            COD,
            ValueEstimate("COD", 1.0, 1.0, 1.0, "", "after treatment"),
            "limit of COD: is a load per product; accepted is an estimate of a load",
        ),
        (
            PH,
            ValueEstimate("pH", 1.0, 1.0, 1.0, "degC", "after treatment"),
            "limit of pH: the estimate is in 'degC'",
        ),
        (
            replace(SULFITE, form="as SO3"),
            replace(ESTIMATE, parameter="sulfite", form="as S"),
            "limit of sulfite: is counted as SO3, the estimate as S",
        ),
    ],
)
def test_pairs_that_do_not_belong_together_are_refused(limit: Limit, estimate: Any, said: str) -> None:
    with pytest.raises(InputError) as caught:
        compare(limit, estimate)
    assert str(caught.value).startswith(said)


@pytest.mark.parametrize("percentile", [0.2, 1.0, float("nan")])
def test_a_percentile_that_is_none_is_refused(percentile: float) -> None:
    with pytest.raises(InputError, match="percentile is"):
        compare(COD, ESTIMATE, percentile)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("load", -1e-9),
        ("load", float("inf")),
        ("production", 0.0),
        ("flow", 0.0),
        ("spread", -0.1),
        ("day_variation", 50.0),
        ("point", "river"),
    ],
)
def test_an_estimate_of_nonsense_is_refused(name: str, value: Any) -> None:
    with pytest.raises(InputError, match=r"^estimate of COD: "):
        replace(ESTIMATE, **{name: value})


def test_an_allowance_is_the_sum_of_its_blocks() -> None:
    yarn, cloth, weaving = (
        next(
            limit_of(row)
            for row in limits_of(preset)
            if (row.parameter, row.statistic) == ("COD", "any one day")
        )
        for preset in ("us_410_g_bpt", "us_410_d_bpt_b", "us_410_c_bpt")
    )
    found = allowance([(yarn, 12000.0), (cloth, 10000.0), (weaving, 15000.0)])
    assert found.value == pytest.approx(84.6 * 12.0 + 80.0 * 10.0 + 2.8 * 15.0)
    assert (found.unit, found.basis, found.statistic) == ("kg/day", "load per day", "any one day")
    assert "410.72(a)" in found.reference
    assert "410.42(a) and 410.42(b)" in found.reference
    assert share(compare(found, ESTIMATE)) == pytest.approx(300.0 / 1857.2 * 1.9453, rel=1e-4)


def test_blocks_that_do_not_belong_together_are_refused() -> None:
    for blocks, said in (
        ([], "allowance: has no block"),
        (
            [(COD, 1.0), (replace(COD, statistic="grab sample"), 1.0)],
            "statistic is 'any one day' in one block",
        ),
        ([(replace(COD, value=None), 1.0)], "accepted as a block is a load per product with a value"),
        ([(SULFITE, 1.0)], "accepted as a block is a load per product with a value"),
        ([(COD, -1.0)], "production is -1.0"),
        ([(COD, 0.0)], "no block has a production"),
    ):
        with pytest.raises(InputError, match=said.replace("(", r"\(")):
            allowance(blocks)


def test_an_addition_is_no_limit_by_itself() -> None:
    with pytest.raises(InputError, match="adds to us_410_d_bpt"):
        limit_of(limit_rows()["us_410_d_bpt_b.cod.one_day"])
