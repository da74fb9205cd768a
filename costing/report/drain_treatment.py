"""Tables of the treatment of a point: stage by stage, what is dosed and made, and the acid its pH takes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

from costing.effluent.dosing import carbon_dioxide_to_reach, sulfuric_acid_to_reach
from costing.effluent.neutralising import flue_gas_for_carbon_dioxide, sulfate_from_acid
from costing.effluent.pit import Standing
from costing.effluent.stages import CASES, Band
from costing.effluent.treated_flow import Behind, Train
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.drain_point import PointResult
from costing.report.table import Column, Table, capital, costs_of
from costing.settings.mill import Mill
from costing.settings.treatment_train import TrainStage, TreatmentPrices

# Parameters of the table of stages, with their heading.
SHOWN = {
    "COD, both": "COD",
    "BOD5": "BOD5",
    "suspended solids": "Suspended solids",
    "unfixed dye": "Dye",
    "sulfide, as S": "Sulfide, as S",
    "sodium": "Sodium",
    "sulfate": "Sulfate",
    "chloride": "Chloride",
    "dissolved solids": "Dissolved solids",
}
BUILT, WITH_PLANNED = "built", "planned"
GAS_SHARE, GAS_UPTAKE = 0.10, 0.50  # carbon dioxide in flue gas by volume; share of it the water takes
ESTIMATE = "Estimate for choosing and sizing; no measurement, and none of compliance."
DOSING = (
    "Never acid on a water with sulfide: hydrogen sulfide kills. Dosing and pits are for a competent or "
    "licensed person; the supplier's safety data sheet, local rules and the permit come first."
)


class Ran(NamedTuple):
    """A train that ran: which it is, its rows of the sheet, and what came out."""

    name: str
    stages: list[TrainStage]
    train: Train


def trains(found: PointResult) -> list[Ran]:
    """The trains of a point that ran: what is built, and that with what is planned."""
    both = ((BUILT, found.treatment), (WITH_PLANNED, found.planned))
    return [Ran(name, run.stages, run.train) for name, run in both if run is not None and run.train]


def treatment_table(mill: Mill, found: PointResult) -> Table | None:
    """Flow, pH, loads and concentrations behind each stage; None without a train that ran."""
    columns = [
        Column("Train"),
        Column("Behind"),
        Column("Removal"),
        Column("Flow", "m3/day", 1),
        Column("pH", "", 1),
        *(Column(title, "kg/day", 2) for title in SHOWN.values()),
        *(Column(title, "mg/L", 1) for title in SHOWN.values()),
    ]
    rows = [row for ran in trains(found) for row in _train_rows(ran, found.leaving)]
    note = (
        "Each stage with its typical removal; at the end with the low and the high one too. Planned: what is "
        "built, and what is planned with it. Sodium, sulfate and chloride pass everything but a membrane, "
        "which only moves them. Of the dissolved solids biology takes what is organic, as COD falls. "
        f"{ESTIMATE}"
    )
    title = f"Treatment of {found.point.code}"
    return Table("point_treatment", title, note, columns, rows) if rows else None


def _train_rows(ran: Ran, leaving: Standing) -> Iterator[list[Any]]:
    water = leaving.stream.volume
    acidity = leaving.closed.acidity if leaving.closed else None
    yield [ran.name, leaving.place, None, *_figures(water, acidity, ran.train.before)]
    for stage, behind in zip(ran.stages, ran.train.typical):
        yield [ran.name, f"{stage.number} {stage.step}", "typical", *_of(behind)]
    for case in ("low", "high"):
        yield [ran.name, "the end", case, *_of(getattr(ran.train, case)[-1])]


def _of(behind: Behind) -> list[Any]:
    return _figures(behind.flow.water.volume, behind.acidity, behind.loads)


def _figures(volume: float, acidity: float | None, loads: dict[str, float]) -> list[Any]:
    held = [loads.get(name, 0.0) for name in SHOWN]
    dense = [convert(load / volume, "kg/L", "mg/L") for load in held]
    return [convert(volume, "L", "m3"), acidity, *held, *dense]


def treatment_sums_table(mill: Mill, found: PointResult) -> Table | None:
    """What a train takes and makes in a day, each with its price where there is one; None without a train."""
    currency = costs_of(mill).currency
    columns = [
        Column("Train"),
        Column("What"),
        Column("Unit"),
        *(Column(capital(case), "per day", 2) for case in CASES),
        Column("Price", f"{currency} per unit", 4),
        Column("Cost", f"{currency} per day", 2),
        Column("Cost", f"{currency} per m3", 4),
    ]
    prices = mill.drain.prices.get(found.point.code)
    rows: list[list[Any]] = []
    for ran in trains(found):
        lines = _sums(ran, prices, costs_of(mill).power_price)
        cubic = convert(found.leaving.stream.volume, "L", "m3")
        costs = []
        for line in lines:
            cost = None if line.price is None else line.amount.typical * line.price
            per_volume = None if cost is None else cost / cubic
            costs.append(cost)
            rows.append([ran.name, line.what, line.unit, *line.amount, line.price, cost, per_volume])
        total = sum(cost for cost in costs if cost is not None)
        if any(cost is not None for cost in costs):
            rows.append([ran.name, "all that is priced", "", None, None, None, None, total, total / cubic])
    note = (
        "Sulfate that acid adds stays in the water, and no biology takes it out. Priced by the sheet "
        "Treatment, power by Mill costs; money for each cubic metre that leaves the point. What a quote "
        f"takes for own treatment is typed there, not worked out here. {ESTIMATE}"
    )
    title = f"Chemicals, sludge and oxygen at {found.point.code}"
    return Table("point_treatment_sums", title, note, columns, rows) if rows else None


class Line(NamedTuple):
    """What a train takes or makes in a day; the price is for its unit, None where nobody typed one."""

    what: str
    unit: str
    amount: Band
    price: float | None = None


def _sums(ran: Ran, prices: TreatmentPrices | None, power_price: float) -> list[Line]:
    runs = (ran.train.low, ran.train.typical, ran.train.high)
    price_of = prices or TreatmentPrices("")
    unit_prices = {
        "sulfuric acid (100 %)": price_of.acid_price,
        "carbon dioxide": price_of.carbon_dioxide_price,
        "alum": price_of.coagulant_price,
        "ferric chloride": price_of.coagulant_price,
    }
    names = dict.fromkeys(name for behind in ran.train.typical for name in behind.added)
    lines = [Line(name, "kg", _added(runs, name), unit_prices.get(name)) for name in names]
    dry, cake = ran.train.sludge(price_of.cake_dryness)
    cake_price = None if price_of.cake_price is None else convert(price_of.cake_price, "money/kg", "money/t")
    tonnes = Band(*(convert(mass, "kg", "t") for mass in cake))
    lines += [Line("sludge, dry solids", "kg", dry), Line("sludge, as cake", "t", tonnes, cake_price)]
    oxygen = _band([sum(b.oxygen for b in run if b.stage.kind == "biology") for run in runs])
    power = price_of.aeration_power
    lines.append(Line("oxygen for biology", "kg", oxygen, None if power is None else power * power_price))
    away = _band([convert(sum(b.concentrate for b in run), "L", "m3") for run in runs])
    if away.typical > 0.0:
        lines.append(Line("concentrate sent away", "m3", away))
    if price_of.treatment_power is not None:
        flow = convert(ran.train.typical[0].flow.water.volume + ran.train.typical[0].concentrate, "L", "m3")
        whole = convert(price_of.treatment_power, "kWh/L", "kWh/m3") * flow
        lines.append(Line("other power", "kWh", Band(whole, whole, whole), power_price))
    return lines


def _added(runs: Iterable[tuple[Behind, ...]], name: str) -> Band:
    return _band([sum(behind.added.get(name, 0.0) for behind in run) for run in runs])


def _band(values: list[float]) -> Band:
    return Band(min(values), values[1], max(values))


def treatment_remarks_table(mill: Mill, found: PointResult) -> Table | None:
    """Gas that may arise, why a train is refused, what is not counted; None where there is nothing."""
    columns = [Column("Train"), Column("Kind"), Column("What")]
    rows: list[list[Any]] = []
    for name, run in ((BUILT, found.treatment), (WITH_PLANNED, found.planned)):
        if run is None:
            continue
        if run.refused:
            rows.append([name, "refused", run.refused])
        for case in CASES if run.train else ():
            for behind in getattr(run.train, case):
                rows += [[name, "warning", f"behind {behind.stage.step}: {text}"] for text in behind.warnings]
        rows += [[name, "not counted", text] for text in run.remarks]
    rows = [row for number, row in enumerate(rows) if row not in rows[:number]]
    title = f"To know of the treatment of {found.point.code}"
    return Table("point_treatment_remarks", title, DOSING, columns, rows) if rows else None


def acid_demand_table(mill: Mill, found: PointResult) -> Table | None:
    """What brings the water that leaves a point to its pH: acid with the sulfate it adds, or carbon dioxide.

    Answered without any train, on the water as it leaves the point. None where nothing flows.
    """
    leaving = found.leaving
    if leaving.closed is None:
        return None
    target = found.point.pit_acidity
    columns = [
        Column("With"),
        Column("What"),
        Column("Amount", "per day", 1),
        Column("Unit"),
        Column("Why not"),
    ]
    water = leaving.stream.water._replace(temperature=leaving.stream.temperature)
    cubic = convert(leaving.stream.volume, "L", "m3")
    rows: list[list[Any]] = []
    try:
        acid = sulfuric_acid_to_reach(water, target)
        added = sulfate_from_acid(acid)
        rows.append(["sulfuric acid", "acid (100 %)", acid, "kg", None])
        rows.append(["sulfuric acid", "sulfate that it adds", added, "kg", None])
        rows.append(["sulfuric acid", "sulfate that it adds", 1000.0 * added / cubic, "mg/L", None])
    except InputError as error:
        rows.append(["sulfuric acid", "acid (100 %)", None, "kg", error.message])
    try:
        gas = carbon_dioxide_to_reach(water, target)
        flue = cubic * flue_gas_for_carbon_dioxide(gas / leaving.stream.volume, GAS_SHARE, GAS_UPTAKE)
        rows.append(["carbon dioxide", "gas that the water takes", gas, "kg", None])
        rows.append(["carbon dioxide", "flue gas", flue, "m3", None])
    except InputError as error:
        rows.append(["carbon dioxide", "gas that the water takes", None, "kg", error.message])
    note = (
        f"From pH {leaving.closed.acidity:.1f} {leaving.place} to pH {target:g}. Flue gas at 25 °C and 1 atm "
        f"with {100 * GAS_SHARE:g} % of carbon dioxide by volume, of which the water takes "
        f"{100 * GAS_UPTAKE:g} %. {DOSING} {ESTIMATE}"
    )
    return Table("point_acid_demand", f"Acid demand of {found.point.code}", note, columns, rows)
