"""The estimate that answers each limit of the permit, or what is missing for one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from costing.effluent.limit_comparison import Comparison, compare
from costing.effluent.limits import Estimate, ValueEstimate
from costing.effluent.oxygen_demand import is_inorganic_sulfur
from costing.effluent.permit_values import COLOUR_FACTOR, colour_of_dissolved_indigo, form_factor
from costing.effluent.pit import standings
from costing.effluent.salinity import conductivity
from costing.effluent.speciation import speciation
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.reference_data.discharge_limits import (
    AFTER_TREATMENT,
    BEFORE_MIXING,
    BEFORE_TREATMENT,
    CONCENTRATION,
    INTO_A_SEWER,
    PER_PRODUCT,
    WHERE_IT_ARISES,
)
from costing.reference_data.permit_parameters import (
    ACIDITY,
    COLOUR,
    CONDUCTIVITY,
    FLOW,
    LOAD,
    NONE,
    SUPPLIER,
    TEMPERATURE,
    VOLUME,
    PermitParameter,
    permit_parameter,
)
from costing.report.drain_point import SMALLEST, PointResult, acidity_spread, band, spread_of
from costing.settings.permit import Limit, PermitLimit, SupplierFigure

OXYGEN_FACTOR = 2.0  # by which the oxygen that gets in may be more or less
TEMPERATURE_SPREAD = 5.0  # K
CONDUCTIVITY_SPREAD = 0.15  # one standard deviation over the estimate
BOTH, ORGANIC = "COD, both", "COD, organic"
TAKEN_BY_AIR = ("sulfide, as S", "sulfite", "hydrosulfite")
PLAIN = ("sulfate", "sodium", "chloride")  # nobody counts them as anything else without saying so
GONE = 0.05  # of the fresh load: less is left only where the air does its work


class Place(NamedTuple):
    """The water at which a limit holds, on a running day.

    Attributes
    ----------
    point : str
        One of `POINTS` of the limits.
    volume : float
        [L]
    loads : tuple of dict
        Parameter -> mass, in each case that is as likely as the others; the first is the estimate [kg].
    acidity, temperature, salinity : float or None
        pH, temperature [degC] and conductivity [S/m]; None where nothing flows.
    remark : str
        What a reader must know of it.
    """

    point: str
    volume: float
    loads: tuple[dict[str, float], ...]
    acidity: float | None
    temperature: float
    salinity: float | None
    remark: str


class Held(NamedTuple):
    """A limit, and what is held against it.

    Attributes
    ----------
    row : PermitLimit
        The limit.
    known : PermitParameter or None
        Which estimate answers it; None of a parameter that only suppliers tell.
    comparison : Comparison or None
        None where there is no estimate.
    missing : str
        Why there is none.
    remarks : tuple of str
        What else a reader must know.
    without_air : Comparison or None
        Of a sulfur salt of which air leaves next to nothing: the same if no air got in.
    """

    row: PermitLimit
    known: PermitParameter | None
    comparison: Comparison | None
    missing: str = ""
    remarks: tuple[str, ...] = ()
    without_air: Comparison | None = None

    @property
    def is_from_suppliers(self) -> bool:
        """True where only figures of suppliers tell."""
        return self.known is None or self.known.kind == SUPPLIER


class Places:
    """The waters of a point, by where a limit holds; each is worked out when it is first asked for.

    Parameters
    ----------
    found : PointResult
        The point.
    """

    def __init__(self, found: PointResult) -> None:
        self._found = found
        self._known: dict[str, Place] = {}

    def of(self, limit: Limit) -> Place:
        """The water at which a limit holds."""
        treats = limit.point in (AFTER_TREATMENT, INTO_A_SEWER) and self._found.train is not None
        name = limit.point if limit.point in (BEFORE_MIXING, WHERE_IT_ARISES, INTO_A_SEWER) else ""
        key = f"{treats} {name}"
        if key not in self._known:
            self._known[key] = self._treated(name) if treats else self._raw(name)
        return self._known[key]

    def _raw(self, name: str) -> Place:
        found = self._found
        cases: tuple[dict[str, float], ...]
        if name in (BEFORE_MIXING, WHERE_IT_ARISES):
            place, cases = found.places[0], (found.places[0].stream.loads,)
            remark = "the water of all streams together, fresh: single streams may hold more"
        else:
            place, cases = found.leaving, self._by_oxygen()
            refused = found.treatment.refused
            remark = f"the treatment is refused, so none is counted: {refused}" if refused else ""
        acidity = place.closed.acidity if place.closed else None
        salinity = place.conductivity if place.closed else None
        point = INTO_A_SEWER if name == INTO_A_SEWER else BEFORE_TREATMENT
        return Place(point, place.stream.volume, cases, acidity, place.stream.temperature, salinity, remark)

    def _by_oxygen(self) -> tuple[dict[str, float], ...]:
        """Loads as they leave, then with twice and with half the oxygen from the air."""
        found = self._found
        cases = [found.leaving.stream.loads]
        fresh = found.places[0].stream
        if any(is_inorganic_sulfur(name) and amount > SMALLEST for name, amount in fresh.amounts.items()):
            for factor in (OXYGEN_FACTOR, 1.0 / OXYGEN_FACTOR):
                point = replace(
                    found.point,
                    drain_transfer=found.point.drain_transfer * factor,
                    pit_transfer=found.point.pit_transfer * factor,
                )
                cases.append(standings(point, found.streams)[-1].stream.loads)
        return tuple(cases)

    def _treated(self, name: str) -> Place:
        train = self._found.train
        assert train is not None
        runs = (train.typical, train.low, train.high)
        last = train.typical[-1]
        return Place(
            name or AFTER_TREATMENT,
            last.flow.water.volume,
            tuple(run[-1].loads for run in runs),
            last.acidity,
            last.flow.water.temperature,
            conductivity(speciation(last.flow.water)),
            "behind the treatment of the sheet Treatment, with its low, typical and high removal",
        )


def held_against(
    found: PointResult, limits: Sequence[PermitLimit], figures: Sequence[SupplierFigure]
) -> list[Held]:
    """Each limit of a point with what is held against it; none is left out.

    Parameters
    ----------
    found : PointResult
        The point.
    limits : sequence of PermitLimit
        Of the book; those of other points are passed over.
    figures : sequence of SupplierFigure
        What suppliers say of their products.
    """
    places = Places(found)
    return [_held(found, row, figures, places) for row in limits if row.point == found.point.code]


def _held(found: PointResult, row: PermitLimit, figures: Sequence[SupplierFigure], places: Places) -> Held:
    known = permit_parameter(row.limit.parameter)
    if row.limit.value is None:
        return Held(row, known, None, "no value typed, not compared")
    place = places.of(row.limit)
    if place.volume <= 0.0:
        return Held(row, known, None, "no water runs to this point")
    try:
        if known is None or known.kind == SUPPLIER:
            return _from_suppliers(found, row, known, figures, place)
        if known.kind == NONE:
            return Held(row, known, None, known.missing)
        if known.kind == LOAD:
            return _of_load(found, row, known, place)
        return _of_value(found, row, known, place)
    except InputError as error:
        return Held(row, known, None, error.message)


def _of_load(found: PointResult, row: PermitLimit, known: PermitParameter, place: Place) -> Held:
    limit, name = row.limit, known.estimate
    loads = [case.get(name, 0.0) for case in place.loads]
    remarks = [place.remark]
    if name == BOTH:
        loads += [case.get(ORGANIC, 0.0) for case in place.loads]
        remarks.append("a COD test reads between the organic part, the low end, and both parts")
    spread = spread_of(found.point, name)
    comparison = _compared(found, limit, known.form, loads, spread, place)
    fresh = _fresh(found, name, loads)
    without_air = None
    if fresh is not None:
        dense = convert(found.places[0].concentration(name), "kg/L", "mg/L")
        told = f"fresh it stands at {dense:.3g} mg/L, and air takes it away on its way"
        untreated = place._replace(volume=found.leaving.stream.volume)  # a membrane would sieve it too
        without_air = _compared(found, limit, known.form, [fresh], spread, untreated)
        if found.train is None or place.point == BEFORE_TREATMENT:
            comparison = comparison._replace(high=without_air.high, share_high=without_air.share_high)
            told += ": the high end counts none"
        remarks.append(told)
    return Held(row, known, comparison, "", _told(remarks), without_air)


def _fresh(found: PointResult, name: str, loads: Sequence[float]) -> float | None:
    """What comes in of a sulfur salt that air takes away, next to all of it; else None [kg]."""
    came = found.places[0].stream.loads.get(name, 0.0)
    is_taken = name in TAKEN_BY_AIR and came > SMALLEST and max(loads) <= GONE * came
    return came if is_taken else None


def _compared(
    found: PointResult, limit: Limit, form: str, loads: Sequence[float], spread: float, place: Place
) -> Comparison:
    """Cases as likely as each other: the first is the estimate, the least and the most widen its band."""
    factor, counted = form_factor(limit.form, form)
    if not limit.form and limit.parameter in PLAIN:
        counted = ""
    masses = [load * factor if load > SMALLEST else 0.0 for load in loads]
    production = found.yarn
    if limit.basis != PER_PRODUCT and limit.reference_flow is None:
        production = max(found.yarn, *masses, 1.0)  # these do not ask for what it is counted
    elif production <= 0.0:
        raise InputError(limit.where, "no yarn runs to this point, so there is no load for each mass of it")
    if limit.basis == CONCENTRATION:
        spread = float((spread**2 + found.point.flow_spread**2) ** 0.5)

    def against(mass: float) -> Comparison:
        return compare(
            limit,
            Estimate(
                limit.parameter,
                mass / production,
                production,
                place.volume,
                spread,
                found.point.day_variation,
                found.point.grab_variation,
                place.point,
                counted,
            ),
        )

    typical, least, most = against(masses[0]), against(min(masses)), against(max(masses))
    chances = [against(mass).chance for mass in masses]
    return typical._replace(
        low=least.low,
        high=most.high,
        share_low=least.share_low,
        share_high=most.share_high,
        chance=sum(chances) / len(chances),
    )


def _from_suppliers(
    found: PointResult,
    row: PermitLimit,
    known: PermitParameter | None,
    figures: Sequence[SupplierFigure],
    place: Place,
) -> Held:
    """All that is bought goes to the drain: an upper estimate of the products that have a figure."""
    limit = row.limit
    told = {item.material: item.content for item in figures if item.parameter == limit.parameter}
    used = {code: told[code] * mass for code, mass in found.bought.items() if code in told}
    silent = [code for code in found.bought if code not in told]
    if not used:
        why = f"{known.missing}; " if known is not None and known.missing else ""
        what = f"no supplier's figure of {limit.parameter}" if not told else "none of its products is used"
        return Held(
            row,
            known,
            None,
            f"{why}{what}; ask the suppliers of {_few(silent)} and fill the table What suppliers say",
        )
    spread = found.point.other_spread
    form = known.form if known is not None else ""
    comparison = _compared(found, limit, form, [sum(used.values())], spread, place)
    remarks = [
        f"upper estimate: all {limit.parameter} of {_few(list(used))} counts as drained",
        f"no figure of {_few(silent)}" if silent else "",
        "no removal by treatment is counted" if place.point == AFTER_TREATMENT else "",
        "water and cotton bring their own",
    ]
    return Held(row, known, comparison._replace(low=0.0, share_low=0.0), "", _told([place.remark, *remarks]))


def _of_value(found: PointResult, row: PermitLimit, known: PermitParameter, place: Place) -> Held:
    limit, kind, remarks = row.limit, known.kind, [place.remark]
    if kind == ACIDITY and place.acidity is not None:
        sure = acidity_spread(place.acidity)
        value, low, high, unit = place.acidity, place.acidity - sure, place.acidity + sure, ""
        remarks.append("as it reads there, shut off from air")
    elif kind == TEMPERATURE:
        value, unit = place.temperature, "degC"
        low, high = value - TEMPERATURE_SPREAD, value + TEMPERATURE_SPREAD
    elif kind == CONDUCTIVITY and place.salinity is not None:
        value, unit = place.salinity, "S/m"
        low, high = band(value, CONDUCTIVITY_SPREAD)
    elif kind in (FLOW, VOLUME):
        value, unit = place.volume, "L/day"
        if kind == VOLUME:
            if found.yarn <= 0.0:
                raise InputError(limit.where, "no yarn runs to this point")
            value, unit = place.volume / found.yarn, "L/kg"
        low, high = band(value, found.point.flow_spread)
    elif kind == COLOUR:
        value, unit = colour_of(found, place), "1/m"
        low, high = value / COLOUR_FACTOR, value * COLOUR_FACTOR
        remarks += [
            f"screening figure, sure to a factor of {COLOUR_FACTOR:g}: dissolved indigo as in an organic "
            "solvent, from memory, to be verified",
            "other dyes are not counted",
        ]
    else:
        return Held(row, known, None, "no water flows there")
    estimate = ValueEstimate(limit.parameter, value, low, high, unit, place.point, limit.form)
    return Held(row, known, compare(limit, estimate), "", _told(remarks))


def colour_of(found: PointResult, place: Place) -> float:
    """Colour at 620 nm of the dissolved part of the indigo, as far as the dye passes to this place [1/m]."""
    fresh = found.places[0].stream
    dissolved = indigo_of(fresh.amounts) * (1.0 - found.point.suspended_indigo)
    dye = fresh.loads.get("unfixed dye", 0.0)
    passing = place.loads[0].get("unfixed dye", 0.0) / dye if dye > SMALLEST else 0.0
    return float(colour_of_dissolved_indigo(dissolved * passing / place.volume))


def indigo_of(amounts: dict[str, float]) -> float:
    """Indigo in a water, reduced or not [kg]."""
    return sum(amounts.get(name, 0.0) for name in ("indigo", "leuco_indigo"))


def _few(codes: Sequence[str], most: int = 4) -> str:
    more = f" and {len(codes) - most} more" if len(codes) > most else ""
    return ", ".join(codes[:most]) + more


def _told(remarks: Sequence[str]) -> tuple[str, ...]:
    return tuple(remark for remark in remarks if remark)
