"""Ten thousand waters at random: none crashes, none holds less than nothing, each has a pH."""

from __future__ import annotations

import random
from dataclasses import replace

from costing.effluent.arriving import Arriving, taken_in
from costing.effluent.composition import brought_by, mixed, water_of
from costing.effluent.factors import typical_factors, typical_point
from costing.effluent.pit import standings
from costing.effluent.speciation import speciation
from costing.reference_data import substances

COUNT = 10_000
SOLUTES = [name for name in substances() if brought_by(name) != brought_by("water")]


def drawn(rng: random.Random) -> Arriving:
    """A stream of up to six substances, from traces to a stock vat, in cold or boiling water."""
    volume = 10.0 ** rng.uniform(0.0, 6.0)
    amounts = {
        name: volume * 10.0 ** rng.uniform(-9.0, -1.5) for name in rng.sample(SOLUTES, rng.randint(0, 6))
    }
    point = typical_point()
    loads: dict[str, float] = {}
    for substance, amount in amounts.items():
        for parameter, share in typical_factors(substance, point).items():
            loads[parameter] = loads.get(parameter, 0.0) + amount * share
    temperature = rng.uniform(0.0, 98.0)
    water = mixed(taken_in(point, volume, temperature), water_of(amounts, 0.0, temperature))
    return Arriving("drawn", "", "", 0.0, volume, temperature, amounts, loads, water)


def test_ten_thousand_waters_stand_as_a_water_can() -> None:
    rng = random.Random(20261125)
    for _ in range(COUNT):
        stream = drawn(rng)
        point = replace(
            typical_point(),
            pit_volume=rng.choice([0.0, stream.volume * rng.uniform(0.01, 5.0)]),
            pit_transfer=rng.uniform(0.0, 50.0),
            drain_time=rng.uniform(0.0, 48.0),
            cooled=rng.random(),
        )
        places = standings(point, [stream])
        for place in places:
            assert place.closed is not None
            assert place.in_air is not None
            assert -1.0 < place.closed.acidity < 15.0, stream
            assert -1.0 < place.in_air.acidity < 15.0, stream
            assert all(load >= 0.0 for load in place.stream.loads.values()), (place, stream)
            assert all(amount >= 0.0 for amount in place.closed.ions.values())
            assert place.conductivity >= 0.0
        first, last = places[0], places[-1]
        fell = first.stream.loads.get("COD, inorganic sulfur", 0.0) - last.stream.loads.get(
            "COD, inorganic sulfur", 0.0
        )
        assert abs(fell - last.oxygen) <= 1e-9 * (1.0 + last.oxygen)


def test_more_caustic_never_lowers_the_ph_of_ten_thousand() -> None:
    rng = random.Random(7)
    for _ in range(COUNT):
        stream = drawn(rng)
        more = water_of({"sodium_hydroxide": stream.volume * 10.0 ** rng.uniform(-8.0, -1.5)}, 0.0, 25.0)
        before = stream.water._replace(temperature=25.0)
        after = mixed(before, more)._replace(temperature=25.0)
        # Salt that comes with it lowers the activity of its ions, by less than what can be read.
        assert speciation(after).acidity >= speciation(before).acidity - 0.02, stream
