"""What leaves by a collecting point on a running day, from the discharge plan of the book."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from costing.effluent.arriving import DAY, Arriving, of_enquiry, of_other_flow
from costing.effluent.day_values import log_spread_of_variation
from costing.effluent.discharge import Stream
from costing.effluent.discharge import streams as streams_of
from costing.effluent.factors import PARAMETERS
from costing.effluent.pit import Standing, residence_time, standings
from costing.effluent.point_charge import Strength, strength_of_enquiry
from costing.effluent.point_train import PointTrain, built, run_train
from costing.effluent.speciation import speciation
from costing.effluent.treated_flow import Train
from costing.process.arithmetic import exp
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.drain import ESTIMATE
from costing.report.table import FINISHED_METRE, Column, Result, Table, bought, capital
from costing.settings.discharge_point import DischargePoint, Production
from costing.settings.mill import Mill
from costing.settings.treatment_train import BUILT, PLANNED, TrainStage

# Parameter -> setting of the point that says how far its estimate may be off.
SPREADS = {
    "unfixed dye": "dye_spread",
    "sodium": "salt_spread",
    "chloride": "salt_spread",
    "dissolved solids": "salt_spread",
    "sulfur, all forms": "salt_spread",
    "sulfate, once all is oxidised": "salt_spread",
    "sulfate": "sulfur_spread",
    "sulfite": "sulfur_spread",
    "thiosulfate": "sulfur_spread",
    "hydrosulfite": "sulfur_spread",
    "sulfide, as S": "sulfur_spread",
    "COD, inorganic sulfur": "sulfur_spread",
    "COD, organic": "demand_spread",
    "COD, both": "demand_spread",
    "BOD5": "bod_spread",
    "suspended solids": "solids_spread",
}
# Parameters of the table of streams, with their decimals.
OF_A_STREAM = {
    "COD, organic": 1,
    "COD, inorganic sulfur": 1,
    "BOD5": 1,
    "suspended solids": 1,
    "unfixed dye": 2,
    "sodium": 1,
    "sulfur, all forms": 2,
    "sulfide, as S": 3,
}
# Parameters told of a day or of a dump, with their words in a heading.
IN_SHORT = {"COD, both": "COD", "sulfide, as S": "Sulfide as S"}
BAND = 1.6448536269514722  # standard deviations on each side of nine in ten of a normal distribution
SMALLEST = 1e-12  # kg a day: less is rounding


@dataclass(frozen=True)
class PointResult:
    """All that is known of one collecting point on a running day.

    Attributes
    ----------
    point : DischargePoint
        The point.
    streams : list of Arriving
        What runs to it.
    places : list of Standing
        Its water: fresh, at the end of the drain, behind the pit where there is one.
    yarn, cloth : float
        Saleable grey yarn and finished cloth of that day [kg, m].
    stages : list of TrainStage
        What treats its water, built and planned.
    strengths : dict
        Enquiry -> strength of its own water of that day.
    bought : dict
        Product of the list -> mass as delivered that its enquiries take on that day [kg].
    """

    point: DischargePoint
    streams: list[Arriving]
    places: list[Standing]
    yarn: float
    cloth: float
    stages: list[TrainStage] = field(default_factory=list)
    strengths: dict[str, Strength] = field(default_factory=dict)
    bought: dict[str, float] = field(default_factory=dict)

    @property
    def leaving(self) -> Standing:
        """The water as it leaves the point."""
        return self.places[-1]

    @cached_property
    def treatment(self) -> PointTrain:
        """What the stages that are built make of the water; worked out when it is first asked for."""
        return run_train(self.leaving, built(self.stages))

    @cached_property
    def planned(self) -> PointTrain | None:
        """What all stages make of it, the planned ones too; None where none is planned."""
        whole = self.with_planned()
        return whole.treatment if whole is not None else None

    def with_planned(self) -> PointResult | None:
        """The same point with its planned stages as built ones; None where none is planned."""
        if not any(stage.stands == PLANNED for stage in self.stages):
            return None
        return replace(self, stages=[replace(stage, stands=BUILT) for stage in self.stages])

    @property
    def train(self) -> Train | None:
        """The treatment that is built, as it ran; None without one, or where it is refused."""
        return self.treatment.train


def work_out_point(mill: Mill, code: str, result: Callable[[str], Result]) -> PointResult:
    """Run everything that the plan leads to a point.

    Parameters
    ----------
    mill : Mill
        The book.
    code : str
        Of the point; "" for the first.
    result : callable
        Gives the result of an enquiry by its code.

    Raises
    ------
    InputError
        No such point, nothing runs to it, or an enquiry of the plan that is refused.
    """
    drain = mill.drain
    point = drain.point(code)
    rows = [row for row in drain.production if row.point == point.code]
    flows = [flow for flow in drain.other_flows if flow.point == point.code]
    if not rows and not flows:
        raise InputError(
            drain.places.get(point.code, point.code),
            f"nothing runs to the point {point.code}; accepted is a row of the sheet Discharge plan",
        )
    streams: list[Arriving] = []
    strengths: dict[str, Strength] = {}
    products: dict[str, float] = {}
    yarn = cloth = 0.0
    cold = 0.0
    for row in rows:
        found = result(row.enquiry)
        mass, metres = production_of_day(row, found)
        yarn, cloth = yarn + mass, cloth + metres
        cold = found.ledger.range.water_temperature
        *own, whole = streams_of(found.ledger, found.mill.materials, point)
        streams += of_enquiry(found.ledger, own, mass / DAY, point)
        strength = strength_of_enquiry(found.ledger, whole.factors, point).times(mass)
        strengths[row.enquiry] = strength.plus(strengths.get(row.enquiry))
        for material, amount in bought(found).items():
            if material in mill.materials:
                products[material] = products.get(material, 0.0) + amount * mass
    streams += [of_other_flow(flow, point, cold or point.air_temperature) for flow in flows]
    places = standings(point, streams)
    stages = drain.stages_of(point.code)
    return PointResult(point, streams, places, yarn, cloth, stages, strengths, products)


def production_of_day(row: Production, found: Result) -> tuple[float, float]:
    """Yarn and cloth of a running day [kg, m]."""
    per_metre = found.quote.per[FINISHED_METRE]
    yarn = row.yarn(per_metre) * DAY
    return yarn, yarn / per_metre


def streams_at(found: Result, point: DischargePoint) -> list[Stream]:
    """The streams of an enquiry, counted as the point counts."""
    return streams_of(found.ledger, found.mill.materials, point)[:-1]


def spread_of(point: DischargePoint, parameter: str) -> float:
    """How far the estimate of a load may be off: one standard deviation over the estimate [fraction]."""
    return float(getattr(point, SPREADS.get(parameter, "other_spread")))


def band(value: float, spread: float) -> tuple[float, float]:
    """Between what nine in ten estimates of this kind are right, of a lognormal error.

    Examples
    --------
    >>> [round(end, 1) for end in band(100.0, 0.2)]
    [72.2, 138.5]
    """
    factor = float(exp(BAND * log_spread_of_variation(spread)))
    return value / factor, value * factor


def streams_table(found: PointResult) -> Table:
    """Each stream on a running day."""
    columns = [
        Column("Enquiry"),
        Column("Stream"),
        Column("Sort"),
        Column("Comes"),
        Column("Volume", "m3/day", 1),
        Column("Temperature", "°C", 0),
        Column("pH", "", 1),
        *(Column(capital(name), "kg/day", digits) for name, digits in OF_A_STREAM.items()),
    ]
    rows: list[list[Any]] = []
    for stream in found.streams:
        own = [stream.enquiry or None, stream.name, stream.sort]
        warm = stream.temperature if stream.volume else None
        acidity = speciation(stream.water).acidity if stream.volume else None
        loads = [_shown(stream.loads.get(name, 0.0)) for name in OF_A_STREAM]
        comes = "at once" if stream.dumps else "all day"
        rows.append([*own, comes, convert(stream.volume, "L", "m3"), warm, acidity, *loads])
    note = f"Each stream as it leaves the machine. {ESTIMATE}"
    return Table("point_streams", f"Streams to {found.point.code}", note, columns, rows)


def _shown(load: float) -> float:
    return load if abs(load) > SMALLEST else 0.0


def parameters_table(found: PointResult) -> Table:
    """Every parameter of the point: loads on each basis, concentrations at each place, how sure."""
    places = found.places
    columns = [
        Column("Parameter"),
        Column("Load", "kg/day", 2),
        Column("Load", "kg/month", 0),
        Column("Load", "kg/t of yarn", 3),
        Column("Load", "g/m of cloth", 4),
        *(Column(capital(place.place), "mg/L", 1) for place in places),
        Column("From", "mg/L", 1),
        Column("To", "mg/L", 1),
    ]
    rows: list[list[Any]] = [_flow_row(found, len(places))]
    for name in PARAMETERS:
        load = _shown(found.leaving.stream.loads.get(name, 0.0))
        per_yarn = 1000.0 * load / found.yarn if found.yarn else None
        per_metre = 1000.0 * load / found.cloth if found.cloth else None
        dense = [convert(place.concentration(name), "kg/L", "mg/L") for place in places]
        dense = [value if abs(value) > 1e-9 else 0.0 for value in dense]
        loads = [load, load * found.point.days_per_month, per_yarn, per_metre]
        spread = (spread_of(found.point, name) ** 2 + found.point.flow_spread**2) ** 0.5
        rows.append([capital(name), *loads, *dense, *band(dense[-1], spread)])
    note = (
        "Loads as they leave the point, the salts of the water taken in with them. From and to: nine in ten "
        f"estimates of this kind are right within them, by the sheet Discharge points. {ESTIMATE}"
    )
    return Table("point_parameters", f"Parameters of {found.point.code}", note, columns, rows)


def _flow_row(found: PointResult, places: int) -> list[Any]:
    volume = convert(found.leaving.stream.volume, "L", "m3")
    per_yarn = 1000.0 * volume / found.yarn if found.yarn else None
    per_metre = 1000.0 * volume / found.cloth if found.cloth else None
    loads = [volume, volume * found.point.days_per_month, per_yarn, per_metre]
    return ["Flow: m3, m3, m3/t, L/m", *loads, *[None] * (places + 2)]


def condition_table(found: PointResult) -> Table:
    """Temperature, pH, conductivity and oxygen at each place."""
    columns = [
        Column("At"),
        *(Column(capital(place.place), "", 1) for place in found.places),
        Column("How sure"),
    ]
    places = found.places
    acidity = [place.closed.acidity if place.closed else None for place in places]
    in_air = [place.in_air.acidity if place.in_air else None for place in places]
    rows: list[list[Any]] = [
        ["Temperature, °C", *(place.stream.temperature for place in places), "5 °C"],
        ["pH as it reads there", *acidity, _sure_of(acidity[-1])],
        ["pH after days in air", *in_air, _sure_of(in_air[-1])],
        ["Conductivity at 25 °C, mS/cm", *(10.0 * place.conductivity for place in places), "15 %"],
        ["Oxygen taken up, kg/day", *(place.oxygen for place in places), "a factor of two"],
    ]
    hours = residence_time(found.point, found.leaving.stream.volume)
    note = (
        "pH from the ions of all streams together, with activities, at the temperature there; never a mean "
        f"of their pH. Time in the pit {hours:.1f} h. {ESTIMATE}"
    )
    return Table("point_condition", f"Condition of the water at {found.point.code}", note, columns, rows)


def acidity_spread(acidity: float) -> float:
    """How far an estimated pH may be off: little holds it between 8 and 10.5.

    Examples
    --------
    >>> acidity_spread(9.2), acidity_spread(11.8)
    (1.0, 0.3)
    """
    return 1.0 if 8.0 <= acidity <= 10.5 else 0.3


def _sure_of(acidity: float | None) -> str:
    if acidity is None:
        return ""
    sure = acidity_spread(acidity)
    return f"{sure:g}, poorly buffered" if sure == 1.0 else f"{sure:g}"
