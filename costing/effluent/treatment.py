"""A treatment train: what each stage takes out of an effluent, where that goes, and what passes through.

An estimate for choosing and sizing, three times over: with the low, the typical and the high removal. Sodium,
sulfate and chloride pass everything but a membrane, and a membrane only moves them into its concentrate. The
loads and the water are those of one span, a day as a rule; so are all answers.

No measurement, and none of compliance. Acid and sulfide never meet: see `costing.effluent.dosing`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from costing.effluent.acidity import Weak
from costing.effluent.composition import Water
from costing.effluent.dosing import (
    SULFIDE_PH,
    aired,
    carbon_dioxide_to_reach,
    coagulated,
    gas_warnings,
    refuse_sulfide,
    sulfuric_acid_to_reach,
    with_anion,
    with_carbon_dioxide,
)
from costing.effluent.ion_loads import (
    DISSOLVED,
    SOLIDS,
    SULFUR_DEMAND,
    dissolved_organics,
    holding,
    ion_loads,
)
from costing.effluent.oxidation import oxygen_saturation, oxygen_taken_up
from costing.effluent.removal import peak_behind_tank
from costing.effluent.sludge import (
    OXYGEN_PER_CELLS,
    alum_sludge,
    biological_sludge,
    ferric_sludge,
)
from costing.effluent.speciation import speciation
from costing.effluent.stages import CARBON_DIOXIDE, CASES, DOSED, NEUTRALISATION, Stage, checked
from costing.effluent.treated_flow import BOTH, ORGANIC, Behind, Flow, Moved, Sludge, Train
from costing.process.chemistry import molar_mass, molar_mass_of_formula
from costing.quantities import InputError

DYE = "unfixed dye"
# Parts of the organic matter that have no removal of their own: each falls as the organic COD does.
ORGANIC_MATTER = (ORGANIC, "surfactants", "size", "matter off the cotton")
# Of the colour that activated sludge removes, 50 to 70 % is adsorbed or settled: sahinkaya-2008.
DYE_TO_SLUDGE = 0.6
# Oxygen that is taken up may be half or twice what is worked out: judgement.
UPTAKE = {"low": 0.5, "typical": 1.0, "high": 2.0}


def treated(loads: Mapping[str, float], water: Water, stages: Sequence[Stage]) -> Train:
    """Run an effluent through a train.

    Parameters
    ----------
    loads : mapping
        Parameter -> load of a span, such as a day. Where they say more of an ion than the water holds, it is
        put into the water with its sodium [kg].
    water : Water
        The water of that span with its ions.
    stages : sequence of Stage
        In the order of the flow.

    Returns
    -------
    Train
        What is behind each stage.

    Raises
    ------
    InputError
        No water, a load below zero, a stage that makes no sense, acid on a water with sulfide.

    Examples
    --------
    Sulfite and dye of a day, in 100 m3: aired, then to the sludge; sodium passes.

    >>> from costing.effluent.composition import water_of
    >>> water = water_of({"sodium_hydroxide": 20.0, "sodium_sulfite": 60.0}, 1e5, 35.0)
    >>> loads = {"COD, organic": 120.0, "unfixed dye": 8.0}
    >>> train = treated(loads, water, [Stage("equalisation"), Stage("activated sludge, denim")])
    >>> [round(train.passing(name).typical, 2) for name in ("COD, organic", "unfixed dye", "sodium")]
    [0.18, 0.35, 1.0]
    """
    if not water.volume > 0.0:
        raise InputError("treatment", f"the flow is {water.volume:g} L; accepted is more than zero")
    for name, amount in loads.items():
        if not amount >= 0.0:
            raise InputError("treatment", f"the load of {name} is {amount:g} kg; accepted is zero or more")
    if not stages:
        raise InputError("treatment", "the train has no stage; accepted is one or more")
    train = [checked(stage) for stage in stages]
    water = holding(water, loads)
    ions = ion_loads(water)
    other = {name: max(0.0, amount - ions[name]) for name, amount in loads.items() if name in ions}
    own = {name: amount for name, amount in loads.items() if name not in ions and name != BOTH}
    start = Flow(own, water, other, dissolved_organics(loads, water, other.get(DISSOLVED, 0.0)))
    runs = {case: _run(start, train, case) for case in CASES}
    remarks = tuple(dict.fromkeys(remark for stage in train for remark in stage.remarks()))
    return Train(start.all_loads(), remarks=remarks, **runs)


def _run(flow: Flow, stages: Sequence[Stage], case: str) -> tuple[Behind, ...]:
    found = []
    for stage in stages:
        behind = _behind(flow, stage, case)
        flow = behind.flow
        found.append(behind)
    return tuple(found)


def _behind(flow: Flow, stage: Stage, case: str) -> Behind:
    """Run one stage: first what is dosed or aired, then what is taken out."""
    water, added, oxygen, chemical = _dosed(flow.water, stage, case)
    moved = [Moved(SULFUR_DEMAND, oxygen, "oxidised")] if oxygen > 0.0 else []
    after, taken, concentrate = _taken_out(flow._replace(water=water), stage, case)
    moved += taken
    demand = sum(item.amount for item in taken if item.parameter == ORGANIC and item.to == "oxidised")
    if stage.kind == "biology":
        oxygen += demand
    acidity = speciation(after.water).acidity
    return Behind(
        stage,
        after,
        after.all_loads(),
        acidity,
        tuple(moved),
        added,
        oxygen,
        concentrate,
        _sludge(stage, taken, chemical),
        _peak_left(stage),
        tuple(gas_warnings(after.water, acidity)),
    )


def _dosed(water: Water, stage: Stage, case: str) -> tuple[Water, dict[str, float], float, float]:
    """The water with what the stage puts in; what that was; oxygen used; chemical sludge."""
    if stage.step == CARBON_DIOXIDE:
        gas = carbon_dioxide_to_reach(water, stage.setting("target_acidity"))
        done = with_carbon_dioxide(water, gas / molar_mass("carbon_dioxide"))
        return done, {"carbon dioxide": gas}, 0.0, 0.0
    if stage.kind == NEUTRALISATION:
        acid = sulfuric_acid_to_reach(water, stage.setting("target_acidity"))
        amount = acid / molar_mass("sulfuric_acid")
        sulfate = amount * molar_mass_of_formula("SO4")
        added = {"sulfuric acid (100 %)": acid, "sulfate from acid": sulfate}
        return with_anion(water, "SO4--", amount), added, 0.0, 0.0
    if stage.step in DOSED:
        return _coagulated(water, stage)
    if stage.kind == "biology":
        done, oxygen = aired(water, float("inf"), with_thiosulfate=True)
        return done, {}, oxygen, 0.0
    if stage.kind == "equalisation":
        taken = oxygen_taken_up(
            stage.setting("pit_transfer"),
            oxygen_saturation(water.temperature),
            stage.setting("residence_time"),
        )
        done, oxygen = aired(water, UPTAKE[case] * taken * water.volume)
        return done, {}, oxygen, 0.0
    return water, {}, 0.0, 0.0


def _coagulated(water: Water, stage: Stage) -> tuple[Water, dict[str, float], float, float]:
    coagulant, dose = DOSED[stage.step], stage.setting("coagulant_dose")
    done = coagulated(water, coagulant, dose)
    if dose > 0.0 and speciation(done).acidity < SULFIDE_PH:
        refuse_sulfide(water, stage.step)
    used = dose * water.volume
    anion, name = ("SO4--", "sulfate") if coagulant == "alum" else ("Cl-", "chloride")
    left = (done.strong[anion] - water.strong.get(anion, 0.0)) * molar_mass_of_formula(anion.strip("-"))
    sludge = alum_sludge(used) if coagulant == "alum" else ferric_sludge(used)
    return done, {coagulant: used, f"{name} from coagulant": left}, 0.0, sludge


def _taken_out(flow: Flow, stage: Stage, case: str) -> tuple[Flow, list[Moved], float]:
    """The effluent less what the stage removes; where that goes; water sent away [L]."""
    sieve = stage.kind in ("filter", "membrane")
    passed = stage.setting("water_recovery") if sieve else 1.0
    moved = []
    loads = {}
    for name, amount in flow.loads.items():
        left = amount * passed * (1.0 - _share(stage, name, case))
        loads[name] = left
        moved += _where(stage, name, amount - left)
    if stage.kind == "biology":
        gone = flow.organic * _share(stage, ORGANIC, case)
        moved += _where(stage, DISSOLVED, gone)
        other = {**flow.other, DISSOLVED: flow.other.get(DISSOLVED, 0.0) - gone}
        return Flow(loads, flow.water, other, flow.organic - gone), moved, 0.0
    if not sieve:
        return flow._replace(loads=loads), moved, 0.0
    kept = passed * (1.0 - getattr(stage.removal("dissolved salts"), case))
    before = Flow({}, flow.water, flow.other).all_loads()
    water = flow.water._replace(
        volume=flow.water.volume * passed,
        strong={ion: amount * kept for ion, amount in flow.water.strong.items()},
        weak=Weak(*(amount * kept for amount in flow.water.weak)),
    )
    other = {name: amount * kept for name, amount in flow.other.items()}
    after = Flow(loads, water, other, flow.organic * kept)
    for name, amount in before.items():
        if name != BOTH:
            moved += _where(stage, name, amount * (1.0 - kept))
    return after, moved, flow.water.volume * (1.0 - passed)


def _share(stage: Stage, name: str, case: str) -> float:
    what = ORGANIC if name in ORGANIC_MATTER else "nitrogen" if "nitrogen" in name else name
    return float(getattr(stage.removal(what), case))


def _where(stage: Stage, name: str, amount: float) -> list[Moved]:
    """Where what a stage takes out of a parameter goes."""
    if amount <= 0.0:
        return []
    if stage.kind in ("filter", "membrane"):
        return [Moved(name, amount, "returned" if stage.returned else "concentrate")]
    if stage.kind == "equalisation" or name == "BOD5":
        return [Moved(name, amount, "oxidised")]
    to_sludge = 1.0
    if stage.kind == "biology" and name in (*ORGANIC_MATTER, DISSOLVED):
        to_sludge = min(1.0, OXYGEN_PER_CELLS * stage.setting("sludge_yield"))
    elif stage.kind == "biology" and name == DYE:
        to_sludge = DYE_TO_SLUDGE
    parts = [Moved(name, amount * to_sludge, "sludge"), Moved(name, amount * (1.0 - to_sludge), "oxidised")]
    return [part for part in parts if part.amount > 0.0]


def _sludge(stage: Stage, taken: Sequence[Moved], chemical: float) -> Sludge:
    """Dry solids of a stage. Dye that settles is one of the suspended solids, and counts with them."""
    if stage.kind not in ("coagulation", "electrocoagulation", "biology"):
        return Sludge()
    to_sludge = {item.parameter: item.amount for item in taken if item.to == "sludge"}
    captured = max(to_sludge.get(SOLIDS, 0.0), to_sludge.get(DYE, 0.0))
    grown = 0.0
    if stage.kind == "biology":
        removed = sum(item.amount for item in taken if item.parameter == ORGANIC)
        grown = biological_sludge(removed, stage.setting("sludge_yield"), stage.setting("volatile_share"))
    return Sludge(grown, chemical, captured)


def _peak_left(stage: Stage) -> float:
    if stage.kind != "equalisation":
        return 1.0
    return float(peak_behind_tank(stage.setting("dump_time"), stage.setting("residence_time")))
