"""What is behind an estimate of the permit, what would narrow it, and what would mend a limit at risk."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from costing.effluent.arriving import Arriving
from costing.effluent.ion_loads import OXYGEN_TO_SULFATE
from costing.effluent.limit_comparison import Comparison
from costing.process.chemistry import molar_mass_of_formula
from costing.quantities import label
from costing.reference_data import treatment_removals
from costing.reference_data.discharge_limits import (
    COMPOSITE,
    CONCENTRATION,
    GRAB,
    LONG_TERM,
    MEAN_OF_DAYS,
)
from costing.reference_data.permit_parameters import (
    ACIDITY,
    COLOUR,
    CONDUCTIVITY,
    FLOW,
    LOAD,
    TEMPERATURE,
    VOLUME,
)
from costing.report.drain_point import SMALLEST, SPREADS, PointResult
from costing.report.permit_estimates import Held, indigo_of
from costing.settings.drain import Drain
from costing.settings.permit import SupplierFigure

AT_RISK = 0.05  # chance of a value on the wrong side from which a limit is at risk
SULFIDE = "sulfide, as S"
SHOWN_STAGES, SHOWN_STREAMS = 3, 4

# Parameter of the drain -> as which a treatment takes it out, in the table of treatment.
REMOVED_AS = {
    "COD, both": "COD, organic",
    "COD, organic": "COD, organic",
    "BOD5": "COD, organic",
    "surfactants": "COD, organic",
    "suspended solids": "suspended solids",
    "unfixed dye": "unfixed dye",
    "total nitrogen": "nitrogen",
}
SALTS = ("sulfate", "sodium", "chloride", "dissolved solids", "sulfur, all forms")
MEASURE = {
    "flow_spread": "a flow meter",
    "day_variation": "day samples of a month",
    "grab_variation": "samples through a day, or a pit that evens it out",
}


def is_at_risk(comparison: Comparison) -> bool:
    """True where the estimate, its high end or one value in twenty lies on the wrong side."""
    over = comparison.share_high is not None and comparison.share_high >= 1.0
    return comparison.is_outside or over or comparison.chance >= AT_RISK


def behind(found: PointResult, held: Held, figures: Sequence[SupplierFigure]) -> str:
    """Where the largest part comes from: stream with its step, or product; of sulfide, where and when."""
    if held.is_from_suppliers:
        return _product_behind(found, held, figures)
    known = held.known
    assert known is not None  # what has none is from suppliers
    if known.kind == LOAD and known.estimate == SULFIDE:
        return where_and_when(found, SULFIDE)
    measured = _part(known.kind, known.estimate, found)
    if measured is None:
        return ""
    amount, what = measured
    amounts = {place: amount(stream) for place, stream in enumerate(found.streams)}
    total = sum(value for value in amounts.values() if value > 0.0)
    if total <= SMALLEST:
        return ""
    top = max(amounts, key=lambda place: amounts[place])
    return f"{100.0 * amounts[top] / total:.0f} % of {what}: {_named(found.streams[top])}"


def _part(kind: str, estimate: str, found: PointResult) -> tuple[Callable[[Arriving], float], str] | None:
    """What of a stream counts for a value, and what that is called."""
    if kind == LOAD:
        return (lambda stream: stream.loads.get(estimate, 0.0)), "the load"
    if kind == ACIDITY:
        return (lambda stream: stream.water.strong_difference), "the alkali"
    if kind == TEMPERATURE:
        cold = min((stream.temperature for stream in found.streams if stream.volume), default=0.0)
        return (lambda stream: stream.volume * (stream.temperature - cold)), "the warmth"
    if kind == CONDUCTIVITY:
        return (lambda stream: stream.loads.get("dissolved solids", 0.0)), "the dissolved solids"
    if kind in (FLOW, VOLUME):
        return (lambda stream: stream.volume), "the water"
    if kind == COLOUR:
        return (lambda stream: indigo_of(stream.amounts)), "the indigo"
    return None


def _named(stream: Arriving) -> str:
    """A stream by its name, the enquiry and the sort of its step."""
    own = ", ".join(filter(None, (stream.enquiry, stream.sort)))
    return f"{stream.name} ({own})"


def where_and_when(found: PointResult, parameter: str) -> str:
    """Every stream that brings a parameter, largest first: from which enquiry, and how it comes."""
    streams = [stream for stream in found.streams if stream.loads.get(parameter, 0.0) > SMALLEST]
    streams.sort(key=lambda stream: -stream.loads[parameter])
    told = []
    for stream in streams[:SHOWN_STREAMS]:
        load = stream.loads[parameter]
        when = f"at once, {stream.dumps:.2g} times a day" if stream.dumps else "all the time it runs"
        told.append(f"{_named(stream)} {load:.2g} kg/day, {when}")
    more = len(streams) - len(told)
    return "; ".join(told) + (f"; and {more} more" if more > 0 else "")


def _product_behind(found: PointResult, held: Held, figures: Sequence[SupplierFigure]) -> str:
    used = {
        item.material: item.content * found.bought.get(item.material, 0.0)
        for item in figures
        if item.parameter == held.row.limit.parameter
    }
    total = sum(used.values())
    if total <= 0.0:
        return ""
    top = max(used, key=lambda code: used[code])
    return f"{100.0 * used[top] / total:.0f} % of the load: {top}"


def narrowing(found: PointResult, held: Held, drain: Drain) -> str:
    """The setting of the point that makes most of the band, where it stands, and what would narrow it."""
    known, limit = held.known, held.row.limit
    if held.is_from_suppliers:
        return f"figures of the suppliers that are silent, and an analysis of {limit.parameter} in this water"
    assert known is not None
    if known.kind == ACIDITY:
        return "a titration of the water, with its pH and temperature"
    if known.kind == TEMPERATURE:
        return "a thermometer in the drain through a day"
    if known.kind == COLOUR:
        return "a filtered sample in a photometer"
    if known.kind == CONDUCTIVITY:
        return "a conductivity meter in the drain"
    names = ["flow_spread"] if known.kind in (FLOW, VOLUME) else _settings(known.estimate, limit.basis)
    if known.kind == LOAD:
        if limit.statistic == GRAB or (limit.statistic == COMPOSITE and limit.number < 24):
            names.append("grab_variation")
        elif limit.statistic not in (LONG_TERM, MEAN_OF_DAYS):
            names.append("day_variation")
    largest = max(names, key=lambda name: getattr(found.point, name))
    share = 100.0 * getattr(found.point, largest)
    entry = drain.given.get(found.point.code, {}).get(largest)
    cell = f", {entry.where}" if entry is not None and entry.where else ""
    advice = MEASURE.get(largest, "analyses of this water, typed there as how sure it is")
    return f"{label(largest)} ({share:.3g} %{cell}): {advice}"


def _settings(estimate: str, basis: str) -> list[str]:
    own = SPREADS.get(estimate, "other_spread")
    return [own, "flow_spread"] if basis == CONCENTRATION else [own]


def mending(found: PointResult, held: Held) -> str:
    """One line: which stage or change touches a limit at risk; "" where none is at risk."""
    comparison = held.comparison
    if comparison is None or not is_at_risk(comparison):
        return ""
    if held.is_from_suppliers:
        return "products with less of it; no stage of the table of treatment has a figure for it"
    known = held.known
    assert known is not None
    source = "less at its source"
    if known.kind == LOAD:
        return "; ".join([*_needed(comparison), _of_load(found, known.estimate), source, _water(comparison)])
    if known.kind == ACIDITY:
        return _of_acidity(found, comparison)
    if known.kind == TEMPERATURE:
        return "warmth won back from the hottest stream, or more time in the open before this point"
    if known.kind == CONDUCTIVITY:
        return f"{_of_salt('')}; {source}; less rinse water raises it"
    if known.kind in (FLOW, VOLUME):
        return "less rinse water, or water used again; the loads stay as they are"
    if known.kind == COLOUR:
        return f"{_stages('unfixed dye')}; indigo won back from the rinse; measure before you plan"
    return ""


def _needed(comparison: Comparison) -> list[str]:
    """How much would have to go, for the estimate or else for its high end."""
    for share, whose in ((comparison.share, "the estimate"), (comparison.share_high, "the high end")):
        if share is not None and share > 1.0:
            return [f"{100.0 * (1.0 - 1.0 / share):.0f} % less would bring {whose} to the limit"]
    return []


def _of_load(found: PointResult, estimate: str) -> str:
    if estimate in OXYGEN_TO_SULFATE:
        formula, oxygen = OXYGEN_TO_SULFATE[estimate]
        needed = found.places[0].stream.loads.get(estimate, 0.0) * oxygen * molar_mass_of_formula("O2")
        needed /= molar_mass_of_formula(formula)
        told = f"air with {needed:.2g} kg oxygen a day for what comes fresh, or peroxide: it ends as sulfate"
        if estimate == SULFIDE:
            told += "; no acid before it is gone: it sets hydrogen sulfide free"
        return told
    if estimate in SALTS:
        return _of_salt(estimate)
    if estimate == "peroxide":
        return "a smaller dose, or a longer time in the bath"
    stages = _stages(REMOVED_AS.get(estimate, ""))
    return f"{stages}, BOD5 at least as the organic COD" if estimate == "BOD5" else stages


def _of_salt(estimate: str) -> str:
    told = f"passes settling, biology and filters; {_stages('dissolved salts')}, whose concentrate keeps it"
    if estimate in ("sulfate", "sulfur, all forms"):
        told += "; carbon dioxide in place of sulfuric acid adds none"
    return told


def _of_acidity(found: PointResult, comparison: Comparison) -> str:
    if comparison.value < (comparison.limit.value or 0.0):
        return "less acid; caustic or soda with care"
    told = "carbon dioxide, or sulfuric acid, which adds its sulfate"
    if found.leaving.stream.loads.get(SULFIDE, 0.0) > SMALLEST:
        return f"{told}; only when the sulfide is oxidised: acid sets hydrogen sulfide free"
    if found.places[0].stream.loads.get(SULFIDE, 0.0) > SMALLEST:
        return f"{told}; behind the aerated pit only, never where fresh streams with sulfide come in"
    return told


def _stages(what: str) -> str:
    """The stages that take most of it out, as a mill may expect it of published figures."""
    figures = [
        figure
        for step in treatment_removals().values()
        for figure in step
        if figure.what == what and not figure.remembered and figure.in_a_mill[1] > 0.0
    ]
    figures.sort(key=lambda figure: -figure.in_a_mill[1])
    if not figures:
        return "no stage of the table of treatment has a figure for it"
    told = []
    for figure in figures[:SHOWN_STAGES]:
        told.append(f"{figure.step} {100.0 * figure.in_a_mill[1]:.0f} %")
    return f"stages that take it out: {', '.join(told)}"


def _water(comparison: Comparison) -> str:
    if comparison.limit.basis == CONCENTRATION:
        return "less rinse water raises the concentration, and dilution mends no load"
    return "less rinse water does not change the load"
