"""What an enquiry pays for its water, by the point that its row of the discharge plan runs to."""

from __future__ import annotations

from costing.cost.quote import EFFLUENT, FINISHED_METRE, EffluentPrice, bases
from costing.effluent.factors import Factors
from costing.effluent.point_charge import (
    NOTHING_TAKEN,
    Strength,
    mean_price,
    price_at_point,
    strength_of_enquiry,
)
from costing.effluent.point_train import Passed, built, passed
from costing.ledger.remarks import Remark
from costing.ledger.whole import Ledger
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.settings.drain import Drain
from costing.settings.mill import Enquiry, Mill
from costing.settings.mill_costs import MillCosts


def effluent_price(
    mill: Mill, enquiry: Enquiry, ledger: Ledger, costs: MillCosts
) -> tuple[EffluentPrice | None, list[Remark]]:
    """Price of the effluent of an enquiry, with what is to be said of it; None where that of the mill counts.

    An enquiry that runs to more than one point pays their mean, by the yarn that runs to each.

    Parameters
    ----------
    mill, enquiry
        The book and one of its enquiries.
    ledger : Ledger
        Of the enquiry.
    costs : MillCosts
        Whose effluent charge holds at a point without a charge of its own.
    """
    try:
        drain = mill.drain
    except InputError as error:
        why = str(error).partition(";")[0]  # the rest is for the officer: costing drain tells it
        text = f"the drain sheets are refused, so effluent is priced as Mill costs has it: {why}"
        return None, [Remark("warning", EFFLUENT, text)]
    rows = [row for row in drain.production if row.enquiry == enquiry.code]
    if not any(row.point in drain.charges for row in rows):
        return None, []
    prices = []
    grounds: dict[str, str] = {}
    for row in rows:
        price, told = _at(row.point, drain, ledger, mill, costs)
        prices.append((row.yarn(bases(ledger)[FINISHED_METRE]), price))
        grounds[row.point] = told
    name = f"{EFFLUENT} to {' and '.join(grounds)}"
    price = mean_price(prices)
    shown = convert(price, "money/L", "money/m3")
    told = f"{shown:.4g} {costs.currency}/m3: {'; '.join(grounds.values())}"
    return EffluentPrice(name, price, told), [Remark("note", name, told)]


def _at(point: str, drain: Drain, ledger: Ledger, mill: Mill, costs: MillCosts) -> tuple[float, str]:
    """Price at a point, and where it comes from [money/L]."""
    charge = drain.charges.get(point)
    if charge is None:
        return costs.effluent_charge, f"{point} as Mill costs has it"
    settings = drain.points[point]
    strength = strength_of_enquiry(ledger, Factors(ledger, mill.materials, settings), settings)
    through = through_of(drain, point)
    price = price_at_point(charge, strength, through, returned_of(drain, point))
    if not charge.by_strength:
        return price, f"{point}, plain price of the sheet Treatment"
    return price, f"{point}, by strength of its own water ({strength_words(strength, through)})"


def through_of(drain: Drain, point: str) -> Passed:
    """What passes the stages that are built at a point; the pit is the equalisation already."""
    return passed(built(drain.stages_of(point)))


def returned_of(drain: Drain, point: str) -> float:
    """Share of the treated water that goes back; 0 without treatment, or while some is planned [fraction]."""
    prices = drain.prices.get(point)
    stages = drain.stages_of(point)
    if prices is None or not stages or built(stages) != stages:
        return 0.0
    return prices.returned_share


def strength_words(strength: Strength, through: Passed) -> str:
    """Settled COD and solids of a water, as collected and behind the treatment."""
    if strength.volume <= 0.0:
        return "no water"
    said = _pair(strength)
    if through == NOTHING_TAKEN:
        return said
    return f"{said} as collected, {_pair(strength.behind(through))} behind the treatment"


def _pair(strength: Strength) -> str:
    demand, solids = (convert(part, "kg/L", "mg/L") for part in strength.concentrations)
    return f"settled COD {demand:.0f} mg/L, solids {solids:.0f} mg/L"
