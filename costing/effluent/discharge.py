"""What goes down the drain, stream by stream.

An estimate from the recipe and the range. It is not a measurement, and no measurement of compliance.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from typing import NamedTuple

from costing.effluent.composition import strong_charge
from costing.effluent.factors import PARAMETERS, Factors
from costing.ledger.whole import Ledger
from costing.process.postings import DRAIN, Line, Posting, named
from costing.settings.discharge_point import DischargePoint
from costing.settings.material import Material
from costing.settings.sizing_step import Sizing

OF_SIZE = ("losses", "dump")  # what drains from a size box, behind its name


class Stream(NamedTuple):
    """One stream, per kilogram of saleable grey yarn.

    Attributes
    ----------
    name : str
        Step and what leaves it.
    flow : float
        Water [L/kg].
    volume : float
        Liquor, by which concentrations are told [L/kg]. The liquor of a dye, wash or rinse box counts a
        kilogram of water in each litre, whatever it holds, so there it is the flow. Size liquor is thick:
        there it is the mass of water and size over the density of the size liquor.
    loads : dict
        Parameter -> mass [kg/kg].
    alkalinity : float
        Strong-ion difference: sodium less the anions of strong acids [mol/kg].
    postings : list of Posting
        What is behind it; `lines` are the same, to be read by name.
    factors : Factors
        What one kilogram of each substance adds to each parameter, and why.
    """

    name: str
    flow: float
    volume: float
    loads: dict[str, float]
    alkalinity: float
    postings: list[Posting]
    factors: Factors

    @property
    def lines(self) -> list[Line]:
        """The postings, to be read by name."""
        return named(self.postings)

    def concentration(self, parameter: str) -> float:
        """Mass per volume of the stream [kg/L]; 0 where nothing flows."""
        return self.loads[parameter] / self.volume if self.flow > 0 else 0.0

    @property
    def alkalinity_concentration(self) -> float:
        """Strong-ion difference per volume of the stream [mol/L]; 0 where nothing flows."""
        return self.alkalinity / self.volume if self.flow > 0 else 0.0


def streams(
    ledger: Ledger, materials: Mapping[str, Material], point: DischargePoint | None = None
) -> list[Stream]:
    """Every stream of a ledger, and their sum as the last one.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list.
    point : DischargePoint, optional
        As which loads are counted; as a typical one where none is given.

    Returns
    -------
    list of Stream
        In the order of the route; the last is named ``all streams``.
    """
    by_account: dict[str, list[Posting]] = defaultdict(list)
    for posting in ledger.postings:
        by_account[posting[-1]].append(posting)
    factors = Factors(ledger, materials, point)
    densities = {
        f"{step.name} {what}": step.size_density
        for step in ledger.steps
        if isinstance(step, Sizing)
        for what in OF_SIZE
    }
    found = [
        _stream(account[len(DRAIN) :], postings, factors, densities)
        for account, postings in by_account.items()
        if account.startswith(DRAIN)
    ]
    return [*found, _sum(found, factors)]


def _sum(found: list[Stream], factors: Factors) -> Stream:
    """All streams in one pit."""
    loads = dict.fromkeys(PARAMETERS, 0.0)
    for stream in found:
        for name, load in stream.loads.items():
            loads[name] += load
    return Stream(
        "all streams",
        sum(stream.flow for stream in found),
        sum(stream.volume for stream in found),
        loads,
        sum(stream.alkalinity for stream in found),
        [posting for stream in found for posting in stream.postings],
        factors,
    )


def _stream(name: str, postings: list[Posting], factors: Factors, densities: Mapping[str, float]) -> Stream:
    amounts: dict[str, float] = {}
    for _, _, substance, _, amount, _, _ in postings:
        amounts[substance] = amounts.get(substance, 0.0) + amount
    loads = dict.fromkeys(PARAMETERS, 0.0)
    charge = 0.0
    for substance, amount in amounts.items():
        for parameter, share in factors.of(substance).items():
            loads[parameter] += amount * share
        charge += amount * strong_charge(substance)
    flow = amounts.get("water", 0.0)
    volume = sum(amounts.values()) / densities[name] if name in densities else flow
    return Stream(name, flow, volume, loads, charge, postings, factors)
