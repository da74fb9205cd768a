"""The permit beside the estimates: hand-worked on each basis and for each statistic, in guarded words."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from costing.effluent.arriving import Arriving
from costing.effluent.composition import water_of
from costing.effluent.factors import PARAMETERS, typical_point
from costing.effluent.limit_comparison import Comparison
from costing.effluent.permit_values import colour_of_dissolved_indigo, form_factor
from costing.effluent.pit import Standing
from costing.effluent.stages import Stage
from costing.effluent.treated_flow import Train
from costing.effluent.treatment import treated
from costing.front_ends.screen import to_json
from costing.quantities import InputError
from costing.reference_data.discharge_limits import limit_rows
from costing.reference_data.permit_parameters import LOAD, NONE, SUPPLIER, permit_parameter, permit_parameters
from costing.report.drain_permit import permit_table
from costing.report.drain_point import PointResult, work_out_point
from costing.report.permit_estimates import Held, held_against
from costing.report.permit_mending import behind, is_at_risk, mending, narrowing
from costing.settings.drain import Drain
from costing.settings.permit import Limit, PermitLimit, SupplierFigure
from tests.report.demo import demo_mill, demo_result

# A point worked out by hand: 10 t of yarn and 200 m3 a day; 300 kg COD, 240 kg of it organic.
POINT = replace(
    typical_point(),
    code="BASIN",
    flow_spread=0.2,
    demand_spread=0.25,
    day_variation=0.5,
    grab_variation=0.8,
    other_spread=0.4,
)
LOADS = {"COD, both": 300.0, "COD, organic": 240.0, "COD, inorganic sulfur": 60.0, "sulfite": 16.0}
VOLUME, YARN = 200_000.0, 10_000.0
# Lognormal by hand: s^2 = ln(1 + CV^2); nineteen of twenty below exp(1.64485 s - s^2 / 2) times the mean.
DAY, GRAB = 1.945, 2.483  # at CV 0.5 and 0.8
LOAD_ENDS = 0.64706, 1.45453  # exp(-+1.64485 s - s^2 / 2) at CV 0.25
DENSE_ENDS = 0.56972, 1.59205  # the same of the root of 0.25^2 + 0.2^2 = 0.32016


def point(loads: dict[str, float] | None = None, bought: dict[str, float] | None = None) -> PointResult:
    water = water_of({}, VOLUME, 30.0)
    stream = Arriving("rinse", "Q", "rinse", 0.0, VOLUME, 30.0, {}, loads or LOADS, water)
    standing = Standing("fresh", stream, None, None, 0.0)
    return PointResult(POINT, [stream], [standing], YARN, 20_000.0, bought=bought or {})


def held(limit: Limit, found: PointResult | None = None, figures: list[SupplierFigure] | None = None) -> Held:
    (item,) = held_against(found or point(), [PermitLimit("BASIN", limit, "Permit!A9")], figures or [])
    return item


def compared(limit: Limit, found: PointResult | None = None) -> Comparison:
    comparison = held(limit, found).comparison
    assert comparison is not None
    return comparison


def cod(value: float, unit: str, basis: str, statistic: str, number: int = 0, **more: Any) -> Limit:
    return Limit("COD", value, unit, basis, statistic, "before treatment", number=number, **more)


WORKED: list[tuple[Limit, float, tuple[float, float], str]] = [
    # 30 kg/t over 42.3 kg/t
    (
        cod(42.3, "kg/t", "load per product", "mean of days", 30),
        30.0 / 42.3,
        LOAD_ENDS,
        "estimate, 71 % of the limit (from 37 % to 103 %)",
    ),
    # 300 kg a day, a high day over 500 kg a day
    (
        cod(500.0, "kg/day", "load per day", "any one day"),
        300.0 * DAY / 500.0,
        LOAD_ENDS,
        "estimate, above the limit: 117 % of it (from 60 % to 170 %)",
    ),
    # 1500 mg/L
    (
        cod(2000.0, "mg/L", "concentration", "long-term mean"),
        0.75,
        DENSE_ENDS,
        "estimate, 75 % of the limit (from 34 % to 119 %)",
    ),
    (
        cod(2000.0, "mg/L", "concentration", "composite of hours", 24),
        0.75 * DAY,
        DENSE_ENDS,
        "estimate, above the limit: 146 % of it (from 66 % to 232 %)",
    ),
    (
        cod(2000.0, "mg/L", "concentration", "composite of hours", 2),
        0.75 * GRAB,
        DENSE_ENDS,
        "estimate, above the limit: 186 % of it (from 85 % to 297 %)",
    ),
    (
        cod(4000.0, "mg/L", "concentration", "grab sample"),
        0.375 * GRAB,
        DENSE_ENDS,
        "estimate, 93 % of the limit (from 42 % to 148 %)",
    ),
    (
        cod(4000.0, "mg/L", "concentration", "at all times"),
        0.375 * GRAB,
        DENSE_ENDS,
        "estimate, 93 % of the limit (from 42 % to 148 %)",
    ),
    # 20 L/kg counted in 10 L/kg is twice as strong
    (
        cod(4000.0, "mg/L", "concentration", "long-term mean", reference_flow=10.0),
        0.75,
        DENSE_ENDS,
        "estimate, 75 % of the limit (from 34 % to 119 %)",
    ),
]


@pytest.mark.parametrize(("limit", "share", "ends", "words"), WORKED)
def test_worked_by_hand(limit: Limit, share: float, ends: tuple[float, float], words: str) -> None:
    """The low end counts the organic part alone: 240 of 300 kg."""
    found = compared(limit)
    assert found.share == pytest.approx(share, rel=5e-4)
    assert found.share_low == pytest.approx(share * ends[0] * 240.0 / 300.0, rel=1e-3)
    assert found.share_high == pytest.approx(share * ends[1], rel=1e-3)
    assert found.words() == words
    assert found.daily_load == pytest.approx(300.0)
    assert found.concentration == pytest.approx(1500e-6)


def test_ends_by_hand() -> None:
    for variation, (low, high) in ((0.25, LOAD_ENDS), (math.hypot(0.25, 0.2), DENSE_ENDS)):
        s = math.sqrt(math.log(1.0 + variation**2))
        assert math.exp(-1.644854 * s - s * s / 2.0) == pytest.approx(low, abs=1e-4)
        assert math.exp(1.644854 * s - s * s / 2.0) == pytest.approx(high, abs=1e-4)


def test_the_chance_counts_the_cod_test_with_and_without_sulfur() -> None:
    """Mean of 30 days: the spread of the estimate and of the mean of 30 days, lognormal, by hand."""
    variation = math.sqrt((1.0 + 0.25**2) * (1.0 + 0.5**2 / 30.0) - 1.0)
    s = math.sqrt(math.log(1.0 + variation**2))

    def above(share: float) -> float:
        return 0.5 * math.erfc(-(math.log(share) - s * s / 2.0) / s / math.sqrt(2.0))

    expected = (above(30.0 / 42.3) + above(24.0 / 42.3)) / 2.0
    assert compared(WORKED[0][0]).chance == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize(
    ("basis", "units"),
    [
        ("load per product", [(42.3, "kg/t"), (42.3, "g/kg"), (42300.0, "mg/kg"), (42300.0, "g/t")]),
        ("load per day", [(500.0, "kg/day"), (0.5, "t/day"), (500.0 / 24.0, "kg/h"), (1102.3113, "lb/day")]),
        ("concentration", [(2000.0, "mg/L"), (2.0, "g/L"), (2.0, "kg/m3"), (2000.0, "g/m3")]),
    ],
)
def test_a_share_does_not_change_with_the_unit(basis: str, units: list[tuple[float, str]]) -> None:
    found = [compared(cod(value, unit, basis, "any one day")) for value, unit in units]
    for other in found[1:]:
        for name in ("share", "share_low", "share_high", "chance", "limit_daily_load", "limit_concentration"):
            assert getattr(other, name) == pytest.approx(getattr(found[0], name), rel=1e-6)


def test_a_form_is_worked_over() -> None:
    """16 kg SO3 is 6.407 kg S: 32.06 / 80.057."""
    limit = Limit(
        "sulfite", 100.0, "mg/L", "concentration", "long-term mean", "before treatment", form="as S"
    )
    assert compared(limit).concentration == pytest.approx(16.0 * 32.06 / 80.057 / VOLUME, rel=1e-5)
    assert "not estimated" not in (held(limit).missing or "")
    strange = held(replace(limit, form="as N"))
    assert strange.comparison is None
    assert "the limit counts as N, which is no formula that holds S" in strange.missing
    assert form_factor("as H2S", "as S")[0] == pytest.approx(34.076 / 32.06, rel=1e-5)


def test_colour_is_a_screening_figure() -> None:
    """22 000 L/mol/cm over 262.27 g/mol: 8.39 1/m for each mg/L."""
    assert colour_of_dissolved_indigo(1e-6) == pytest.approx(8.39, rel=1e-3)
    (item,) = [item for item in demo_held() if item.row.limit.parameter == "colour at 620 nm"]
    assert item.comparison is not None
    assert item.comparison.high / item.comparison.low == pytest.approx(25.0)
    assert any("screening figure" in remark for remark in item.remarks)


def test_what_suppliers_say_is_an_upper_estimate() -> None:
    """1000 kg of 50 mg/kg and 200 kg of 20 mg/kg: 54 g in 200 m3."""
    limit = Limit("copper", 0.5, "mg/L", "concentration", "long-term mean", "before treatment")
    figures = [SupplierFigure("A", "copper", 50e-6), SupplierFigure("B", "copper", 20e-6)]
    found = point(bought={"A": 1000.0, "B": 200.0, "C": 5.0})
    item = held(limit, found, figures)
    assert item.comparison is not None
    assert item.comparison.daily_load == pytest.approx(0.054)
    assert item.comparison.share == pytest.approx(0.54)
    assert item.comparison.share_low == 0.0
    told = "; ".join(item.remarks)
    assert "upper estimate: all copper of A, B counts as drained" in told
    assert "no figure of C" in told
    assert behind(found, item, figures) == "93 % of the load: A"


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        (
            Limit("AOX", 1.0, "mg/L", "concentration", "grab sample", "before mixing"),
            "no supplier's figure of AOX",
        ),
        (Limit("colour", 150.0, "", "value", "grab sample", "before mixing"), "Pt-Co, ADMI or dilution"),
        (Limit("temperature rise", 3.0, "K", "value", "at all times", "before mixing"), "receiving water"),
        (Limit("COD", None, "mg/L", "concentration", "", "after treatment"), "no value typed, not compared"),
        (Limit("pH", None, "", "value", "", "after treatment"), "no value typed, not compared"),
    ],
)
def test_a_limit_without_estimate_is_listed_with_what_is_missing(limit: Limit, said: str) -> None:
    item = held(limit)
    assert item.comparison is None
    assert said in item.missing


def test_every_limit_of_the_presets_has_a_way_or_a_reason() -> None:
    for row in limit_rows().values():
        known = permit_parameter(row.parameter)
        assert known is not None, row.parameter
        assert known.kind != NONE or known.missing
    for known in permit_parameters():
        assert known.kind != LOAD or known.estimate in PARAMETERS
        assert known.kind != SUPPLIER or not known.estimate


class Treated(PointResult):
    """A point whose water is treated."""

    TRAIN: Train

    @property
    def train(self) -> Train | None:
        return self.TRAIN


def test_a_limit_after_treatment_holds_what_the_train_leaves() -> None:
    raw = replace(demo_point(), stages=[])
    stream = raw.leaving.stream
    water = stream.water._replace(temperature=stream.temperature)
    loads = {name: max(0.0, load) for name, load in stream.loads.items()}
    train = treated(loads, water, [Stage("activated sludge, denim")])
    Treated.TRAIN = train
    found = Treated(raw.point, raw.streams, raw.places, raw.yarn, raw.cloth, bought=raw.bought)
    limit = Limit("BOD5", 3.4, "kg/t", "load per product", "long-term mean", "after treatment")
    rows = [PermitLimit("PIT", limit), PermitLimit("PIT", replace(limit, point="before treatment"))]
    behind_it, before = (item.comparison for item in held_against(found, rows, []))
    assert behind_it is not None
    assert before is not None
    assert behind_it.daily_load == pytest.approx(train.load("BOD5").typical)
    assert before.daily_load == pytest.approx(stream.loads["BOD5"])
    assert not any("no removal" in remark for remark in behind_it.remarks)
    (raw_item,) = held_against(raw, rows[:1], [])
    assert raw_item.comparison is not None
    assert any("counts no removal by treatment" in remark for remark in raw_item.comparison.remarks)


def demo_point() -> PointResult:
    return work_out_point(demo_mill(), "", demo_result)


def demo_held() -> list[Held]:
    drain = demo_mill().drain
    return held_against(demo_point(), drain.limits, drain.supplier_figures)


def test_sulfide_says_where_and_when_and_counts_a_stopped_blower() -> None:
    found, drain = replace(demo_point(), stages=[]), demo_mill().drain
    limits = [row for row in drain.limits if row.limit.parameter == "sulfide"]
    (item,) = held_against(found, limits, drain.supplier_figures)
    told = behind(found, item, drain.supplier_figures)
    assert told.startswith("rinse after sulfur (K-01, rinse) ")
    assert "times a day" in told
    assert item.comparison is not None
    fresh = found.places[0].concentration("sulfide, as S") * 1e6
    assert item.comparison.high > fresh  # in mg/L; a high sample of it, with no air
    assert is_at_risk(item.comparison)
    assert "no acid before it is gone" in mending(found, item)


def test_nothing_that_air_takes_has_no_band_but_what_it_is_without_air() -> None:
    """Fresh sulfide over the water of the day, a high sample of it, over the limit of 1 mg/L."""
    found = demo_point()
    assert found.train is not None
    table = permit_table(demo_mill(), found)
    assert table is not None
    words = next(row[1] for row in table.rows if row[0].startswith("sulfide as S: at most 1 mg/L"))
    dense = 1e6 * found.places[0].concentration("sulfide, as S")
    spread = math.sqrt(math.log(1.0 + found.point.grab_variation**2))
    share = float(f"{100.0 * dense * math.exp(1.64485 * spread - spread**2 / 2.0):.2g}")
    assert words.startswith("estimate, 0 % of the limit as long as air is blown in; no band is given.")
    assert f"If aeration stops: {share:,.0f} % of it (from" in words
    assert "(from 0 % to 0 %)" not in to_json([table])


def test_planned_stages_stand_beside_what_is_built() -> None:
    """Every stage built is what planned means; limits before mixing do not see it."""
    mill, found = demo_mill(), demo_point()
    table = permit_table(mill, found)
    assert table is not None
    places = {column.title: place for place, column in enumerate(table.columns)}
    planned = found.with_planned()
    assert planned is not None
    alone = permit_table(mill, planned)
    assert alone is not None
    assert "With what is planned" not in [column.title for column in alone.columns]
    built = {row[0]: row for row in alone.rows}
    for row in table.rows:
        if row[places["Of the limit"]] is not None:
            assert row[places["Of the limit, planned"]] == built[row[0]][places["Of the limit"]]
            assert row[places["With what is planned"]] == built[row[0]][places["In words"]]
    salt = next(row for row in table.rows if row[0].startswith("TDS"))
    assert salt[places["Of the limit, planned"]] < 0.6 * salt[places["Of the limit"]]


def test_the_table_holds_every_limit_once_in_order_of_risk() -> None:
    table = permit_table(demo_mill(), demo_point())
    assert table is not None
    assert len(table.rows) == len(demo_mill().drain.limits)
    places = {column.title: place for place, column in enumerate(table.columns)}
    words = [row[places["In words"]] for row in table.rows]
    assert all(text.startswith(("estimate, ", "not estimated: ")) for text in words)
    groups = [2 if text.startswith("not") else 0 if row[places["Would mend it"]] else 1
              for text, row in zip(words, table.rows)]  # fmt: skip
    assert groups == sorted(groups)
    for group in (0, 1):
        shares = [row[places["Of the limit"]] for row, own in zip(table.rows, groups) if own == group]
        given = [share for share in shares if share is not None]
        assert given == sorted(given, reverse=True)
    cells = [row[places["Cell"]] for row in table.rows]
    assert sorted(cells) == sorted(item.where for item in demo_mill().drain.limits)


def test_load_and_concentration_stand_side_by_side() -> None:
    """Each by the other over the flow of the day, estimate and limit."""
    found = demo_point()
    table = permit_table(demo_mill(), found)
    assert table is not None
    places = {column.title: place for place, column in enumerate(table.columns)}
    assert found.train is not None
    raw, treated_water = found.places[0].stream.volume, found.train.typical[-1].flow.water.volume
    for row in table.rows:
        for load, dense in (("Load", "Concentration"), ("Limit as load", "Limit as concentration")):
            if row[places[load]] is not None:
                litres = raw if "before mixing" in row[places["Limit"]] else treated_water
                assert row[places[dense]] == pytest.approx(1e6 * row[places[load]] / litres, rel=1e-9)


def test_no_word_says_that_a_limit_is_kept() -> None:
    mill, found = demo_mill(), demo_point()
    table = permit_table(mill, found)
    assert table is not None
    text = to_json([table]).casefold()
    for word in ("compliant", "complies", "comply", "in order", "within the law", "safe"):
        assert word not in text


def test_what_would_narrow_it_names_the_largest_setting() -> None:
    limit = cod(2000.0, "mg/L", "concentration", "grab sample")
    assert narrowing(point(), held(limit), Drain()).startswith("grab variation (80 %)")
    mean = cod(2000.0, "mg/L", "concentration", "mean of days", 30)
    assert narrowing(point(), held(mean), Drain()).startswith("demand spread (25 %)")


def test_rinse_water_mends_no_load() -> None:
    low = cod(10.0, "kg/t", "load per product", "long-term mean")
    assert "less rinse water does not change the load" in mending(point(), held(low))
    dense = cod(500.0, "mg/L", "concentration", "long-term mean")
    assert "less rinse water raises the concentration" in mending(point(), held(dense))
    assert mending(point(), held(cod(1e6, "mg/L", "concentration", "long-term mean"))) == ""


def test_a_point_without_yarn_has_no_load_of_product() -> None:
    found = replace(point(), yarn=0.0)
    item = held(cod(42.3, "kg/t", "load per product", "long-term mean"), found)
    assert item.comparison is None
    assert "no yarn runs to this point" in item.missing
    dense = held(cod(2000.0, "mg/L", "concentration", "long-term mean"), found).comparison
    assert dense is not None
    assert dense.share == pytest.approx(0.75)


def test_a_book_without_a_permit_has_no_table() -> None:
    mill = replace(demo_mill())
    drain = replace(demo_mill().drain, limits=[])
    mill.keep_drain(drain)
    assert permit_table(mill, demo_point()) is None


def test_a_form_that_no_formula_tells_changes_nothing() -> None:
    assert form_factor("readily released", "as S") == (1.0, "as S")
    with pytest.raises(InputError):
        form_factor("as Xy", "as S")
