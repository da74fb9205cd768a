"""How strong the water of an enquiry is, and what a point charges for a litre of it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from costing.effluent.charge import charge_by_strength
from costing.effluent.factors import Factors
from costing.effluent.point_train import Passed
from costing.ledger.whole import Ledger
from costing.process.mixing import WATER
from costing.process.postings import DRAIN
from costing.settings.discharge_point import DischargePoint
from costing.settings.treatment_train import SewerCharge

NOTHING_TAKEN = Passed(1.0, 1.0, 1.0, 1.0)


class Strength(NamedTuple):
    """What a sewer charges by, of a kilogram of yarn or of a day.

    Attributes
    ----------
    volume : float
        Water collected [L].
    demand : float
        Organic COD that stays when the water settles [kg].
    sulfur_demand : float
        COD of sulfur salts, as fresh as they leave the range [kg].
    solids : float
        Suspended solids, lint among them [kg].
    settling : float
        Organic COD that settles [kg].
    """

    volume: float
    demand: float
    sulfur_demand: float
    solids: float
    settling: float

    def times(self, number: float) -> Strength:
        """So many times as much."""
        return Strength(*(part * number for part in self))

    @property
    def settled_demand(self) -> float:
        """COD of the water once it has settled [kg]."""
        return self.demand + self.sulfur_demand

    def behind(self, through: Passed) -> Strength:
        """What of it passes a treatment; what settles of its COD stays told as it was collected."""
        return Strength(
            self.volume * through.volume,
            self.demand * through.demand,
            self.sulfur_demand * through.sulfur_demand,
            self.solids * through.solids,
            self.settling,
        )

    @property
    def concentrations(self) -> tuple[float, float]:
        """Settled COD and solids in each volume; 0 where nothing flows [kg/L]."""
        if self.volume <= 0.0:
            return 0.0, 0.0
        return self.settled_demand / self.volume, self.solids / self.volume

    def plus(self, other: Strength | None) -> Strength:
        """Both together."""
        return self if other is None else Strength(*map(sum, zip(self, other)))


def strength_of_enquiry(ledger: Ledger, factors: Factors, point: DischargePoint) -> Strength:
    """Strength of all the water of an enquiry together, per kilogram of saleable grey yarn.

    Of a substance, the share that a filter holds back settles, and its COD with it.

    Parameters
    ----------
    ledger : Ledger
        Of the enquiry.
    factors : Factors
        As the point counts.
    point : DischargePoint
        Where the water runs to: its lint.
    """
    amounts: dict[str, float] = {}
    for _, _, substance, _, amount, _, destination in ledger.postings:
        if destination.startswith(DRAIN):
            amounts[substance] = amounts.get(substance, 0.0) + amount
    volume = amounts.pop(WATER, 0.0)
    demand = sulfur = settling = 0.0
    solids = point.lint
    for substance, amount in amounts.items():
        parts = factors.of(substance)
        held_back = parts.get("suspended solids", 0.0)
        organic = amount * parts.get("COD, organic", 0.0)
        demand += organic * (1.0 - held_back)
        settling += organic * held_back
        sulfur += amount * parts.get("COD, inorganic sulfur", 0.0)
        solids += amount * held_back
    return Strength(volume, demand, sulfur, solids, settling)


def price_by_strength(charge: SewerCharge, strength: Strength, through: Passed = NOTHING_TAKEN) -> float:
    """Sewer charge for each volume of water collected, by what of it leaves the treatment.

    Parameters
    ----------
    charge : SewerCharge
        With terms by strength.
    strength : Strength
        Of the water collected.
    through : Passed, optional
        What passes the treatment that is built.

    Returns
    -------
    float
        Charge, without the mill's own treatment; 0 where nothing flows [money/L].
    """
    left = strength.behind(through)
    if left.volume <= 0.0:
        return 0.0
    found = charge_by_strength(
        charge.reception_charge,
        charge.volume_charge,
        charge.biology_charge,
        charge.sludge_charge,
        *left.concentrations,
        charge.reference_demand,
        charge.reference_solids,
    )
    return float(found) * through.volume


def price_at_point(
    charge: SewerCharge, strength: Strength, through: Passed = NOTHING_TAKEN, returned: float = 0.0
) -> float:
    """What an enquiry pays for each volume of its water: the sewer, and the mill's own treatment as typed.

    Parameters
    ----------
    charge : SewerCharge
        Of the point.
    strength : Strength
        Of the enquiry's own water.
    through : Passed, optional
        What passes the treatment that is built.
    returned : float, optional
        Share of the treated water that goes back, and is not charged [fraction].

    Returns
    -------
    float
        [money/L]
    """
    if charge.by_strength:
        due = price_by_strength(charge, strength, through)
    else:
        due = (charge.effluent_charge or 0.0) * through.volume
    return due * (1.0 - returned) + charge.treatment_charge


def mean_price(prices: Sequence[tuple[float, float]]) -> float:
    """Mean of prices by how much runs to each [money/L]."""
    whole = sum(amount for amount, _ in prices)
    return sum(amount * price for amount, price in prices) / whole if whole > 0.0 else prices[0][1]
