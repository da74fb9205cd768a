"""The water of a collecting point as it stands: fresh, at the end of the drain, behind an aerated pit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from costing.effluent.acidity import Weak
from costing.effluent.arriving import DAY, Arriving, together
from costing.effluent.composition import mixed, water_of
from costing.effluent.factors import typical_factors
from costing.effluent.oxidation import met, oxidised, oxygen_saturation, oxygen_taken_up
from costing.effluent.salinity import conductivity
from costing.effluent.speciation import AIR, Speciation, speciation
from costing.settings.discharge_point import DischargePoint

ROUNDING = 1e-14  # of all that a water holds

FRESH, ARRIVED, EQUALISED = "fresh", "at the end of the drain", "behind the pit"


class Standing(NamedTuple):
    """A water of a running day at one place.

    Attributes
    ----------
    place : str
        fresh, at the end of the drain, behind the pit.
    stream : Arriving
        Its volume, temperature, substances, loads and ions.
    closed, in_air : Speciation or None
        As it reads there, and at rest with air; None where nothing flows.
    oxygen : float
        Taken up from the air since it was fresh [kg].
    """

    place: str
    stream: Arriving
    closed: Speciation | None
    in_air: Speciation | None
    oxygen: float

    def concentration(self, parameter: str) -> float:
        """Mass per volume; 0 where nothing flows [kg/L]."""
        volume = self.stream.volume
        return self.stream.loads.get(parameter, 0.0) / volume if volume > 0.0 else 0.0

    @property
    def conductivity(self) -> float:
        """At 25 degC, as it reads there; 0 where nothing flows [S/m]."""
        return conductivity(self.closed) if self.closed else 0.0


def residence_time(point: DischargePoint, volume: float) -> float:
    """Mean time in the pit, with a day's volume spread over its 24 hours [h]."""
    return point.pit_volume * DAY / volume if volume > 0.0 else 0.0


def standings(point: DischargePoint, streams: Sequence[Arriving]) -> list[Standing]:
    """The water of all streams: fresh, at the end of the drain, and behind the pit where there is one.

    Peroxide of one stream oxidises the sulfur salts of another at once, oxygen as far as it gets in; all else
    passes. Of its warmth above the air a water loses the share of the point on its way to the last place.

    Parameters
    ----------
    point : DischargePoint
        The point.
    streams : sequence of Arriving
        All that runs to it.
    """
    apart = together(streams)
    fresh = _changed(apart, met(apart.amounts), apart.temperature, point)
    found = [_standing(FRESH, fresh, 0.0)]
    warm = fresh.temperature
    cool = warm - point.cooled * (warm - point.air_temperature)
    oxygen = _oxygen(point.drain_transfer, warm, point.drain_time) * fresh.volume
    found.append(_behind(fresh, ARRIVED, oxygen, warm if point.pit_volume else cool, point))
    if point.pit_volume:
        oxygen += _oxygen(point.pit_transfer, cool, residence_time(point, fresh.volume)) * fresh.volume
        found.append(_behind(fresh, EQUALISED, oxygen, cool, point))
    return found


def _oxygen(transfer: float, temperature: float, time: float) -> float:
    return float(oxygen_taken_up(transfer, oxygen_saturation(temperature), time))


def _standing(place: str, stream: Arriving, oxygen: float) -> Standing:
    water = stream.water._replace(temperature=stream.temperature)
    if stream.volume <= 0.0:
        return Standing(place, stream, None, None, oxygen)
    return Standing(place, stream, speciation(water), speciation(water, AIR), oxygen)


def _behind(fresh: Arriving, place: str, oxygen: float, cooler: float, point: DischargePoint) -> Standing:
    """A water that has taken up so much oxygen, as far as its sulfur salts use it."""
    after = oxidised(fresh.amounts, oxygen)
    return _standing(place, _changed(fresh, after.amounts, cooler, point), after.oxygen)


def _changed(fresh: Arriving, after: Mapping[str, float], cooler: float, point: DischargePoint) -> Arriving:
    """A water in which some substances have become others: its loads and its ions."""
    changed = {
        name: amount - fresh.amounts.get(name, 0.0)
        for name, amount in after.items()
        if amount != fresh.amounts.get(name, 0.0)
    }
    loads = dict(fresh.loads)
    for substance, amount in changed.items():
        for parameter, share in typical_factors(substance, point).items():
            loads[parameter] = loads.get(parameter, 0.0) + amount * share
    water = mixed(fresh.water, water_of(changed, 0.0, cooler))
    water = water._replace(strong=_rounded(water.strong), weak=Weak(**_rounded(water.weak._asdict())))
    loads, amounts = _rounded(loads), _rounded(after)
    return fresh._replace(amounts=amounts, loads=loads, water=water, temperature=cooler)


def _rounded(amounts: Mapping[str, float]) -> dict[str, float]:
    """Amounts without what rounding leaves of one that is used up."""
    least = ROUNDING * sum(map(abs, amounts.values()))
    return {name: amount if abs(amount) > least else 0.0 for name, amount in amounts.items()}
