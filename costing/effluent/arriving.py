"""What runs to a collecting point of the drain on a running day, stream by stream."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from costing.effluent.acidity import Weak, charge_at_ph
from costing.effluent.composition import Water, mixed, water_of
from costing.effluent.discharge import Stream
from costing.effluent.speciation import speciation
from costing.effluent.weak_acids import constants_at
from costing.ledger.whole import Ledger
from costing.process.chemistry import molar_mass_of_formula
from costing.process.mixing import WATER
from costing.settings.box_steps import Treatment
from costing.settings.discharge_point import DischargePoint, OtherFlow
from costing.settings.dye_box_step import DyeBox
from costing.settings.recovering_rinse_step import RecoveringRinse
from costing.settings.rinse_step import Rinse
from costing.settings.sizing_step import Sizing
from costing.settings.steps import IndigoDyeing, Scour
from costing.settings.vessel_steps import Extraction, VesselBath

DAY = 24.0  # h

# Kind of step -> what an officer calls its water.
SORTS: dict[str, str] = {
    Scour.KIND: "scour",
    IndigoDyeing.KIND: "indigo bath",
    DyeBox.KIND: "dye box",
    Treatment.KIND: "treatment box",
    Rinse.KIND: "rinse",
    RecoveringRinse.KIND: "rinse",
    Sizing.KIND: "size",
    VesselBath.KIND: "vessel bath",
    Extraction.KIND: "vessel bath",
}
OTHER = "other"
DUMP = " dump"


class Arriving(NamedTuple):
    """One stream at a point, on a running day.

    Attributes
    ----------
    name : str
        Of the stream.
    enquiry : str
        Code, "" for another flow.
    sort : str
        scour, indigo bath, rinse, size ... or other.
    dumps : float
        How often a day it comes at once, at the end of a lot; 0 where it runs all day.
    volume : float
        [L]
    temperature : float
        As it leaves the machine [degC].
    amounts : dict
        Substance -> mass [kg].
    loads : dict
        Parameter -> mass [kg].
    water : Water
        Its ions, those of the water taken in with them [mol].
    """

    name: str
    enquiry: str
    sort: str
    dumps: float
    volume: float
    temperature: float
    amounts: dict[str, float]
    loads: dict[str, float]
    water: Water


def taken_in(point: DischargePoint, volume: float, temperature: float) -> Water:
    """The water that the mill takes in, with sodium for what its ions need: as behind a softener.

    Parameters
    ----------
    point : DischargePoint
        Its alkalinity, chloride and sulfate.
    volume : float
        [L]
    temperature : float
        [degC]

    Returns
    -------
    Water
        Ions of that volume; all alkalinity is bicarbonate.
    """
    bicarbonate = point.mains_alkalinity * volume
    chloride = point.mains_chloride * volume / molar_mass_of_formula("Cl")
    sulfate = point.mains_sulfate * volume / molar_mass_of_formula("SO4")
    strong = {"Na+": bicarbonate + chloride + 2.0 * sulfate, "Cl-": chloride, "SO4--": sulfate}
    return Water(volume, temperature, strong, Weak(carbonate=bicarbonate))


def loads_taken_in(point: DischargePoint, volume: float) -> dict[str, float]:
    """What the water taken in adds to the parameters of the drain [kg]."""
    water = taken_in(point, volume, 25.0)
    sodium = water.strong["Na+"] * molar_mass_of_formula("Na")
    chloride, sulfate = point.mains_chloride * volume, point.mains_sulfate * volume
    carbonate = 0.5 * water.weak.carbonate * molar_mass_of_formula("CO3")
    return {
        "sodium": sodium,
        "chloride": chloride,
        "sulfate": sulfate,
        "sulfate, once all is oxidised": sulfate,
        "sulfur, all forms": sulfate * molar_mass_of_formula("S") / molar_mass_of_formula("SO4"),
        "dissolved solids": sodium + chloride + sulfate + carbonate,
    }


def of_enquiry(
    ledger: Ledger, streams: Sequence[Stream], yarn_per_day: float, point: DischargePoint
) -> list[Arriving]:
    """The streams of an enquiry, on a day that takes so much of it.

    Parameters
    ----------
    ledger : Ledger
        Of the enquiry.
    streams : sequence of Stream
        Of the ledger, without their sum.
    yarn_per_day : float
        Saleable grey yarn [kg/h of 24 hours].
    point : DischargePoint
        Where they run to.
    """
    mass = yarn_per_day * DAY
    behind = _temperatures(ledger)
    found = []
    for stream in streams:
        amounts: dict[str, float] = {}
        for _, _, substance, _, amount, _, _ in stream.postings:
            if substance != WATER:
                amounts[substance] = amounts.get(substance, 0.0) + amount * mass
        volume = stream.volume * mass
        sort, temperature = _step_of(stream.name, behind, ledger.range.water_temperature)
        own = water_of(amounts, 0.0, temperature)
        mains = taken_in(point, volume, temperature)
        loads = {name: load * mass for name, load in stream.loads.items()}
        for name, load in loads_taken_in(point, volume).items():
            loads[name] = loads.get(name, 0.0) + load
        found.append(
            Arriving(
                stream.name,
                ledger.enquiry.code,
                sort,
                mass / ledger.plan.saleable_mass if stream.name.endswith(DUMP) else 0.0,
                volume,
                temperature,
                amounts,
                loads,
                mixed(mains, own)._replace(temperature=temperature),
            )
        )
    found.append(_lint(ledger.enquiry.code, mass, point))
    return found


def _lint(enquiry: str, mass: float, point: DischargePoint) -> Arriving:
    """Lint comes in every stream: it has a line of its own."""
    loads = {"suspended solids": point.lint * mass}
    return Arriving("lint", enquiry, OTHER, 0.0, 0.0, 25.0, {}, loads, water_of({}, 0.0, 25.0))


def _temperatures(ledger: Ledger) -> dict[str, tuple[str, float]]:
    """Step -> its kind and the temperature behind it."""
    after = [yarn.temperature for _, yarn in ledger.run.entering[1:]]
    steps = [step for step, _ in ledger.run.entering]
    after.append(after[-1] if after else ledger.range.water_temperature)
    return {step.name: (step.KIND, warm) for step, warm in zip(steps, after)}


def _step_of(stream: str, behind: Mapping[str, tuple[str, float]], cold: float) -> tuple[str, float]:
    """Sort and temperature of a stream, by the step whose name it begins with."""
    names = [name for name in behind if stream == name or stream.startswith(f"{name} ")]
    if not names:
        return OTHER, cold
    kind, warm = behind[max(names, key=len)]
    return SORTS.get(kind, OTHER), warm


def of_other_flow(flow: OtherFlow, point: DischargePoint, cold: float) -> Arriving:
    """A flow of the officer's own list, on a day.

    Parameters
    ----------
    flow : OtherFlow
        The flow.
    point : DischargePoint
        Where it runs to.
    cold : float
        Temperature of the water taken in [degC].

    Notes
    -----
    Of its salts only chloride and sulfate are known, and sodium for both; a pH sets the sodium that is left.
    """
    volume = flow.flow_per_day * DAY
    temperature = cold if flow.effluent_temperature is None else flow.effluent_temperature
    loads = loads_taken_in(point, volume)
    for name, concentration in flow.concentrations.items():
        loads[name] = concentration * volume
    water = taken_in(point, volume, temperature)
    strong = dict(water.strong)
    for name, ion, formula in (("chloride", "Cl-", "Cl"), ("sulfate", "SO4--", "SO4")):
        if name in flow.concentrations:
            added = loads[name] / molar_mass_of_formula(formula) - strong[ion]
            strong[ion] += added
            strong["Na+"] += added * (2.0 if ion == "SO4--" else 1.0)
    water = water._replace(strong=strong)
    if flow.acidity is not None and volume:
        strong = dict(water.strong)
        constants = constants_at(temperature, speciation(water).ionic_strength)
        weak = Weak(*(amount / volume for amount in water.weak))
        strong["Na+"] += charge_at_ph(flow.acidity, weak, constants) * volume - water.strong_difference
        water = water._replace(strong=strong)
    if "COD, both" not in loads:
        loads["COD, both"] = loads.get("COD, organic", 0.0) + loads.get("COD, inorganic sulfur", 0.0)
    return Arriving(flow.name, "", OTHER, 0.0, volume, temperature, {}, loads, water)


def together(streams: Sequence[Arriving]) -> Arriving:
    """All streams in one water."""
    amounts: dict[str, float] = {}
    loads: dict[str, float] = {}
    for stream in streams:
        for held, own in ((amounts, stream.amounts), (loads, stream.loads)):
            for name, amount in own.items():
                held[name] = held.get(name, 0.0) + amount
    volume = sum(stream.volume for stream in streams)
    warmth = sum(stream.volume * stream.temperature for stream in streams)
    temperature = warmth / volume if volume else 0.0
    water = mixed(*(stream.water for stream in streams))
    return Arriving("all streams", "", "", 0.0, volume, temperature, amounts, loads, water)
