"""A treatment train: nothing is lost on the way, salt passes, and acid never meets sulfide."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costing.effluent import stages as kinds
from costing.effluent.composition import Water, water_of
from costing.effluent.dosing import (
    FLUE_GAS,
    SULFIDE_BOUND,
    aired,
    carbon_dioxide_to_reach,
    gas_warnings,
    sulfuric_acid_to_reach,
    with_anion,
    with_carbon_dioxide,
)
from costing.effluent.ion_loads import ion_loads
from costing.effluent.neutralising import acid_to_reach_ph
from costing.effluent.speciation import speciation
from costing.effluent.stages import CARBON_DIOXIDE, SULFURIC_ACID, Band, Stage
from costing.effluent.treated_flow import Behind
from costing.effluent.treatment import treated
from costing.process.chemistry import molar_mass
from costing.quantities import InputError
from costing.reference_data import treatment_removals

SALTS = ("sodium", "chloride", "sulfur, all forms")
LOADS = {
    "COD, organic": 120.0,
    "BOD5": 40.0,
    "suspended solids": 20.0,
    "unfixed dye": 8.0,
    "nitrogen of dye and chemicals": 2.0,
    "size": 10.0,
}


def rope_effluent(sulfide: float = 0.0) -> Water:
    """Effluent of a rope range in a day: 100 m3 of caustic, sulfite and what hydrosulfite leaves."""
    salts = {
        "sodium_hydroxide": 40.0,
        "sodium_sulfite": 60.0,
        "sodium_hydrosulfite": 5.0,
        "sodium_thiosulfate": 10.0,
        "sodium_sulfate": 70.0,
        "sodium_chloride": 10.0,
        "sodium_bicarbonate": 15.0,
        "sodium_sulfide": sulfide,
    }
    return water_of(salts, 1e5, 35.0)


amounts = st.floats(0.0, 200.0)
waters = st.builds(
    lambda *masses: water_of(
        dict(
            zip(
                (
                    *("sodium_hydroxide", "sodium_sulfite", "sodium_hydrosulfite", "sodium_thiosulfate"),
                    *("sodium_sulfate", "sodium_chloride", "sodium_bicarbonate", "acetic_acid"),
                ),
                masses,
            )
        ),
        1e5,
        30.0,
    ),
    *[amounts] * 8,
)
plain = st.sampled_from(
    [
        Stage("equalisation"),
        Stage("equalisation", settings={"pit_transfer": 0.0}),
        Stage("coagulation with alum", settings={"coagulant_dose": 300e-6}),
        Stage("coagulation with ferric chloride", settings={"coagulant_dose": 200e-6}),
        Stage("electrocoagulation"),
        Stage("activated sludge, denim"),
        Stage("membrane bioreactor"),
        Stage(SULFURIC_ACID, settings={"target_acidity": 8.5}),
    ]
)
sieves = st.sampled_from(
    [
        Stage("microfiltration 5 µm"),
        Stage("microfiltration 0.45 µm", returned=True),
        Stage("nanofiltration, loose"),
        Stage("reverse osmosis", settings={"water_recovery": 0.6}),
    ]
)


def gone(behind: Behind, parameter: str) -> float:
    return sum(item.amount for item in behind.moved if item.parameter == parameter)


@given(waters, st.lists(st.one_of(plain, sieves), min_size=1, max_size=3))
@settings(max_examples=40, deadline=None)
def test_what_leaves_the_water_is_named_and_nothing_falls_below_zero(
    water: Water, train: list[Stage]
) -> None:
    done = treated(LOADS, water, train)
    for run in (done.low, done.typical, done.high):
        before = done.before
        for behind in run:
            assert min(behind.loads.values()) >= 0.0
            assert min(behind.flow.water.strong.values()) >= 0.0
            assert behind.oxygen >= 0.0
            assert behind.concentrate >= 0.0
            assert min(behind.sludge) >= 0.0
            assert 0.0 < behind.acidity < 14.5
            for name in ("COD, organic", "suspended solids", "unfixed dye", "COD, inorganic sulfur"):
                whole = behind.loads[name] + gone(behind, name)
                assert whole == pytest.approx(before[name], rel=1e-9, abs=1e-9), (behind.stage.step, name)
            before = behind.loads
    for name in ("COD, organic", "unfixed dye", "suspended solids"):
        assert done.load(name).low <= done.load(name).typical <= done.load(name).high <= done.before[name]


@given(waters, st.lists(plain, min_size=1, max_size=3))
@settings(max_examples=40, deadline=None)
def test_salt_in_is_salt_out_but_for_what_is_dosed(water: Water, train: list[Stage]) -> None:
    done = treated(LOADS, water, train)
    for run in (done.low, done.typical, done.high):
        acid = sum(item.added.get("sulfate from acid", 0.0) for item in run)
        alum = sum(item.added.get("sulfate from coagulant", 0.0) for item in run)
        ferric = sum(item.added.get("chloride from coagulant", 0.0) for item in run)
        last = run[-1].loads
        assert last["sodium"] == pytest.approx(done.before["sodium"], rel=1e-12)
        assert last["chloride"] == pytest.approx(done.before["chloride"] + ferric, rel=1e-9)
        sulfur = done.before["sulfate, once all is oxidised"] + acid + alum
        assert last["sulfate, once all is oxidised"] == pytest.approx(sulfur, rel=1e-9)


def test_sulfur_demand_falls_by_the_oxygen_used_and_biology_takes_the_rest() -> None:
    water = rope_effluent()
    quiet = Stage("equalisation", settings={"pit_transfer": 0.5, "residence_time": 12.0})
    train = treated(LOADS, water, [quiet, Stage("activated sludge, denim")])
    tank, biology = train.typical
    before = train.before["COD, inorganic sulfur"]
    # 6.95 mg/L in water of 35 degC, half of it an hour, for 12 h, in 100 m3
    assert tank.oxygen == pytest.approx(0.5 * 12.0 * 6.95e-6 * 1e5, rel=0.01)
    assert before - tank.loads["COD, inorganic sulfur"] == pytest.approx(tank.oxygen, rel=1e-9)
    (low, typical, high) = (run[0].oxygen for run in (train.low, train.typical, train.high))
    assert low == pytest.approx(0.5 * typical)
    assert high > 1.5 * typical  # twice as much is more than hydrosulfite and sulfite ask for
    assert biology.loads["COD, inorganic sulfur"] == pytest.approx(0.0, abs=1e-9)
    assert biology.loads["thiosulfate"] == pytest.approx(0.0, abs=1e-9)
    organic = gone(biology, "COD, organic")
    grown = organic * 0.25
    # cells of C5H7NO2 hold 5 mol of oxygen, 159.99 g, in 113.116 g
    expected = organic - grown * 159.99 / 113.116 + tank.loads["COD, inorganic sulfur"]
    assert biology.oxygen == pytest.approx(expected, rel=1e-6)
    assert biology.sludge.biological == pytest.approx(grown / 0.75, rel=1e-12)


def test_oxygen_of_biology_lies_in_the_range_that_is_usual_for_each_kilogram_of_bod() -> None:
    """1.1 to 1.4 kg for each kg of BOD5, from memory, at BOD5 half of the COD."""
    train = treated({"COD, organic": 100.0}, water_of({}, 1e5, 25.0), [Stage("activated sludge, textile")])
    (biology,) = train.typical
    assert 1.1 < biology.oxygen / (0.5 * gone(biology, "COD, organic")) < 1.4


@given(waters, st.floats(6.0, 10.0))
@settings(max_examples=25, deadline=None)
def test_acid_and_gas_bring_the_water_to_the_ph(water: Water, target: float) -> None:
    acid = sulfuric_acid_to_reach(water, target)
    reached = speciation(with_anion(water, "SO4--", acid / molar_mass("sulfuric_acid"))).acidity
    if acid > 0.0:
        assert reached == pytest.approx(target, abs=1e-4)
    else:
        assert reached <= target
    if target < speciation(water).acidity and target < speciation(water, FLUE_GAS).acidity:
        with pytest.raises(InputError, match="no lower"):
            carbon_dioxide_to_reach(water, target)
        return
    gas = carbon_dioxide_to_reach(water, target)
    reached = speciation(with_carbon_dioxide(water, gas / molar_mass("carbon_dioxide"))).acidity
    assert reached == pytest.approx(target, abs=1e-4) if gas > 0.0 else reached <= target


def test_acid_is_that_of_the_equation_at_the_same_ionic_strength() -> None:
    water = rope_effluent()
    acid = sulfuric_acid_to_reach(water, 8.0)
    after = speciation(with_anion(water, "SO4--", acid / molar_mass("sulfuric_acid")))
    weak = water.weak
    expected = acid_to_reach_ph(
        water.strong_difference / water.volume,
        8.0,
        weak.carbonate / water.volume,
        weak.sulfite / water.volume,
        weak.acetate / water.volume,
        effluent_temperature=water.temperature,
        ionic_strength=after.ionic_strength,
    )
    assert acid / water.volume == pytest.approx(expected, rel=1e-6)


def test_acid_reports_its_sulfate_and_gas_adds_none() -> None:
    water = rope_effluent()
    aim = {"target_acidity": 8.5}
    (acid,) = treated(LOADS, water, [Stage(SULFURIC_ACID, settings=aim)]).typical
    (gas,) = treated(LOADS, water, [Stage(CARBON_DIOXIDE, settings=aim)]).typical
    assert acid.acidity == pytest.approx(8.5, abs=1e-4)
    assert gas.acidity == pytest.approx(8.5, abs=1e-4)
    ratio = acid.added["sulfate from acid"] / acid.added["sulfuric acid (100 %)"]
    assert ratio == pytest.approx(96.056 / 98.072, rel=1e-6)
    came = ion_loads(water)["sulfate"]
    assert acid.loads["sulfate"] == pytest.approx(came + acid.added["sulfate from acid"], rel=1e-9)
    assert gas.loads["sulfate"] == pytest.approx(came, rel=1e-12)


def test_sulfide_known_from_an_analysis_alone_meets_no_acid() -> None:
    dosed = Stage(SULFURIC_ACID, settings={"target_acidity": 8.5})
    with pytest.raises(InputError, match=r"1 mg/L of sulfide; accepted is 0\.05 mg/L"):
        treated({"sulfide, as S": 0.1}, rope_effluent(), [dosed])


def test_what_loads_say_more_of_an_ion_is_put_into_the_water() -> None:
    water = rope_effluent()
    more = {"sulfite": ion_loads(water)["sulfite"] + 8.0057, "chloride": ion_loads(water)["chloride"]}
    quiet = Stage("equalisation", settings={"pit_transfer": 0.0})
    done = treated(more, water, [quiet])
    assert done.load("sulfite").typical == pytest.approx(more["sulfite"], rel=1e-9)
    assert done.load("chloride").typical == pytest.approx(more["chloride"], rel=1e-12)
    # 0.1 kmol of sulfite with 0.2 kmol of sodium
    assert done.load("sodium").typical == pytest.approx(ion_loads(water)["sodium"] + 4.598, abs=1e-3)


def test_dissolved_solids_rise_by_what_acid_leaves() -> None:
    """NaOH of 1 g/L to pH 7: 1.2008 g of sulfate for hydroxide of 0.4252 g; organic matter goes along."""
    water = water_of({"sodium_hydroxide": 100.0}, 1e5, 25.0)
    acid = Stage(SULFURIC_ACID, settings={"target_acidity": 7.0})
    done = treated({"dissolved solids": 130.0}, water, [acid])
    assert done.before["dissolved solids"] == pytest.approx(130.0)
    assert done.load("dissolved solids").typical == pytest.approx(130.0 + 120.08 - 42.52, abs=0.05)


@pytest.mark.parametrize("step", [SULFURIC_ACID, CARBON_DIOXIDE])
def test_no_acid_on_sulfide_until_it_is_oxidised(step: str) -> None:
    water = rope_effluent(sulfide=5.0)
    dosed = Stage(step, settings={"target_acidity": 8.5})
    with pytest.raises(InputError, match=r"20\.5 mg/L of sulfide; accepted is 0\.05 mg/L or less: acid sets"):
        treated(LOADS, water, [dosed])
    with pytest.raises(InputError, match="hydrogen sulfide"):
        treated(LOADS, water, [Stage("equalisation", settings={"pit_transfer": 0.1}), dosed])
    aired_first = Stage("equalisation", settings={"pit_transfer": 5.0, "residence_time": 24.0})
    assert treated(LOADS, water, [aired_first, dosed]).typical[-1].acidity == pytest.approx(8.5, abs=1e-4)


def test_a_coagulant_that_makes_sulfide_water_acid_is_refused() -> None:
    water = rope_effluent(sulfide=5.0)
    much = {"coagulant_dose": 4000e-6}
    with pytest.raises(InputError, match="hydrogen sulfide"):
        treated(LOADS, water, [Stage("coagulation with alum", settings=much)])
    little = Stage("coagulation with alum", settings={"coagulant_dose": 50e-6})
    assert treated(LOADS, water, [little]).typical[0].acidity > 9.0


def test_low_ph_is_warned_of() -> None:
    sulfite = water_of({"sodium_sulfite": 1.0}, 1000.0, 25.0)
    assert gas_warnings(sulfite, 5.5) == []
    assert "sulfur dioxide" in gas_warnings(sulfite, 4.9)[0]
    sulfide = water_of({"sodium_sulfide": 1.0}, 1000.0, 25.0)
    assert gas_warnings(sulfide, 11.0) == []
    assert "hydrogen sulfide" in gas_warnings(sulfide, 8.0)[0]
    much = Stage("coagulation with ferric chloride", settings={"coagulant_dose": 4000e-6})
    (behind,) = treated({}, rope_effluent(), [much]).typical
    assert behind.acidity < 5.0
    assert "sulfur dioxide" in behind.warnings[0]


def test_air_follows_its_reactions_and_keeps_sodium_and_sulfur() -> None:
    water = rope_effluent(sulfide=5.0)
    for oxygen in (0.0, 1.0, 5.0, 20.0, 1e9):
        after, used = aired(water, oxygen, with_thiosulfate=True)
        first, second = ion_loads(water), ion_loads(after)
        for name in SALTS:
            assert second[name] == pytest.approx(first[name], rel=1e-12)
        fallen = first["COD, inorganic sulfur"] - second["COD, inorganic sulfur"]
        assert fallen == pytest.approx(used, abs=1e-9)
        assert used <= oxygen
    assert ion_loads(after)["sulfate"] == pytest.approx(first["sulfate, once all is oxidised"], rel=1e-12)


def test_a_membrane_moves_salt_into_its_concentrate() -> None:
    water = rope_effluent()
    settings_ = {"water_recovery": 0.75}
    full = {"dissolved salts": Band(0.9, 0.9, 0.9), "COD, organic": Band(1.0, 1.0, 1.0)}
    (behind,) = treated(LOADS, water, [Stage("reverse osmosis", full, settings_)]).typical
    sodium = ion_loads(water)["sodium"]
    assert behind.loads["sodium"] == pytest.approx(0.75 * 0.1 * sodium, rel=1e-9)
    assert behind.concentration("sodium") == pytest.approx(0.1 * sodium / 1e5, rel=1e-9)
    assert gone(behind, "sodium") == pytest.approx(0.925 * sodium, rel=1e-9)
    assert behind.concentrate == pytest.approx(25_000.0)
    assert {item.to for item in behind.moved} == {"concentrate"}
    assert behind.loads["COD, organic"] == 0.0
    assert behind.loads["suspended solids"] == pytest.approx(0.75 * 20.0)  # no figure that is not from memory


def test_sodium_of_products_without_a_formula_goes_along() -> None:
    water = rope_effluent()
    more = {**LOADS, "sodium": ion_loads(water)["sodium"] + 3.0}
    done = treated(more, water, [Stage("equalisation"), Stage("activated sludge, denim")])
    assert done.load("sodium").typical == pytest.approx(more["sodium"], rel=1e-12)
    half = Stage("reverse osmosis", {"dissolved salts": Band(0.5, 0.5, 0.5)}, {"water_recovery": 0.5})
    assert treated(more, water, [half]).load("sodium").typical == pytest.approx(0.25 * more["sodium"])


def test_removals_in_a_row_do_not_depend_on_their_order() -> None:
    first, second = Stage("electrocoagulation"), Stage("microfiltration 5 µm")
    one = treated(LOADS, rope_effluent(), [first, second])
    other = treated(LOADS, rope_effluent(), [second, first])
    for name in LOADS:
        assert one.load(name).typical == pytest.approx(other.load(name).typical, rel=1e-12)
    assert one.load("unfixed dye").typical == pytest.approx(8.0 * 0.12 * 0.205 * 0.95, rel=1e-9)


def test_a_figure_from_memory_is_told_and_not_counted() -> None:
    coagulation = Stage("coagulation with alum", settings={"coagulant_dose": 300e-6})
    done = treated(LOADS, rope_effluent(), [coagulation])
    assert done.load("COD, organic") == Band(120.0, 120.0, 120.0)
    assert any("removal of COD, organic, 30 to 60 %, is from memory" in remark for remark in done.remarks)
    assert "reverse osmosis: removal of unfixed dye, 99 %, is from memory" in " ".join(
        Stage("reverse osmosis").remarks()
    )
    own = coagulation._replace(own_removal={"COD, organic": Band(0.3, 0.4, 0.5)})
    done = treated(LOADS, rope_effluent(), [own])
    assert done.load("COD, organic") == pytest.approx(Band(60.0, 72.0, 84.0))
    assert not any("COD" in remark for remark in done.remarks)


def test_sludge_of_a_train() -> None:
    alum = Stage(
        "coagulation with alum",
        {"suspended solids": Band(0.8, 0.8, 0.8)},
        {"coagulant_dose": 300e-6},
    )
    done = treated(LOADS, rope_effluent(), [alum])
    dry, cake = done.sludge(0.2)
    # 30 kg of alum give 0.26 kg a kilogram; 16 kg of solids are caught, and dye is one of them
    assert dry.typical == pytest.approx(30.0 * 0.2601 + 16.0, rel=1e-4)
    assert cake.typical == pytest.approx(5.0 * dry.typical)


def test_the_tank_damps_a_dump_and_leaves_the_load() -> None:
    tank = Stage("equalisation", settings={"dump_time": 1.0, "residence_time": 12.0, "pit_transfer": 0.0})
    (behind,) = treated({"unfixed dye": 8.0}, rope_effluent(), [tank]).typical
    assert behind.peak_left == pytest.approx(0.07996, abs=1e-5)
    assert behind.loads["unfixed dye"] == 8.0
    assert behind.oxygen == 0.0


@pytest.mark.parametrize(
    ("stage", "said"),
    [
        (Stage("activated slugde, denim"), "is no step; accepted is one of"),
        (Stage(SULFURIC_ACID), "target acidity is empty; accepted is 6 to 12"),
        (Stage(SULFURIC_ACID, settings={"target_acidity": 4.0}), "target acidity is 4, accepted is 6 to 12"),
        (Stage("coagulation with alum"), "coagulant dose is empty"),
        (Stage("equalisation", settings={"water_recovery": 0.5}), "water_recovery is no setting of it"),
        (Stage("reverse osmosis", settings={"water_recovery": 1.5}), "water recovery is 150 %, accepted is"),
        (Stage("equalisation", {"colour": Band(0.1, 0.2, 0.3)}), "'colour' has no removal"),
        (Stage("equalisation", {"BOD5": Band(0.1, 0.2, 1.3)}), "removal is 130 %, accepted is 0 to 100 %"),
        (Stage("equalisation", {"BOD5": Band(0.3, 0.2, 0.1)}), "must rise from low over typical to high"),
        (Stage("moving-bed biofilm", {"dissolved salts": Band(0.1, 0.2, 0.3)}), "dissolved salts pass it"),
        (Stage("moving-bed biofilm", returned=True), "returns nothing"),
    ],
)
def test_a_stage_that_makes_no_sense_is_refused(stage: Stage, said: str) -> None:
    with pytest.raises(InputError) as caught:
        treated(LOADS, rope_effluent(), [stage])
    assert said in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_train_without_water_stage_or_sense_is_refused() -> None:
    with pytest.raises(InputError, match="the flow is 0 L"):
        treated(LOADS, water_of({}, 0.0, 25.0), [Stage("equalisation")])
    with pytest.raises(InputError, match="the load of BOD5 is -1 kg"):
        treated({"BOD5": -1.0}, rope_effluent(), [Stage("equalisation")])
    with pytest.raises(InputError, match="has no stage"):
        treated(LOADS, rope_effluent(), [])


def test_every_step_of_the_table_runs_and_has_its_settings() -> None:
    for step, figures in treatment_removals().items():
        needs = {"coagulant_dose": 100e-6} if figures[0].kind == "coagulation" else {}
        done = treated(LOADS, rope_effluent(), [Stage(step, settings=needs)])
        assert set(kinds.SETTINGS) >= {figures[0].kind}
        for name in LOADS:
            assert 0.0 <= done.passing(name).low <= done.passing(name).high <= 1.0


def test_the_bound_on_sulfide_is_the_one_that_is_told() -> None:
    just = water_of({"sodium_sulfide": 0.9 * SULFIDE_BOUND * 1e5 * 78.040 / 32.06}, 1e5, 25.0)
    assert sulfuric_acid_to_reach(just, 7.0) >= 0.0


def test_biology_takes_the_organic_part_of_the_dissolved_solids_and_leaves_the_salt() -> None:
    """8 kg of size and 4 kg of dye, 2 kg of them held back by a filter, beside 5 kg of salt not followed."""
    water = water_of({"sodium_chloride": 50.0}, 1e5, 30.0)
    salt = ion_loads(water)["dissolved solids"]
    loads = {"COD, organic": 20.0, "size": 8.0, "unfixed dye": 4.0, "suspended solids": 2.0}
    loads["dissolved solids"] = salt + 10.0 + 5.0
    train = treated(loads, water, [Stage("activated sludge, denim")])
    left = train.passing("COD, organic").typical
    assert left < 0.5
    assert train.load("dissolved solids").typical == pytest.approx(salt + 5.0 + 10.0 * left)
    alone = treated({"dissolved solids": salt + 5.0}, water, [Stage("activated sludge, denim")])
    assert alone.load("dissolved solids").typical == pytest.approx(salt + 5.0)
