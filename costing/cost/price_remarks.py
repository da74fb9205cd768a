"""What a clerk would say of the prices before believing the quote."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

from costing.cost.quote import Quote
from costing.ledger.remarks import Remark
from costing.quantities import label
from costing.settings.mill import Material, MillCosts

OLD = datetime.timedelta(days=365)


# Price of a unit of the first over that of a kilowatt-hour, whatever the money is: judgement, wide.
USUAL_OVER_POWER = {
    "water_price": ("a cubic metre of water", 1000.0, 0.5, 200.0),
    "steam_price": ("a tonne of steam", 1000.0, 30.0, 3000.0),
    "effluent_charge": ("a cubic metre of effluent", 1000.0, 0.0, 300.0),
}
SMALL_SHARE = 0.01


def cost_remarks(costs: MillCosts, margin: float) -> list[Remark]:
    """Remarks on the prices of the mill, its overhead and the margin of a quote.

    Parameters
    ----------
    costs : MillCosts
        Water, steam, power, effluent, overhead.
    margin : float
        Of the quote [fraction].

    Returns
    -------
    list of Remark
        A share that looks typed as a fraction is a warning, and so is a price out of all proportion.
    """
    found = []
    for name, share in (("margin", margin), ("overhead", costs.overhead)):
        if 0.0 < share < SMALL_SHARE:
            text = f"the {name} is {100 * share:g} %: ten per cent beside % is typed as 10, not as 0.1"
            found.append(Remark("warning", name, text))
    if costs.power_price > 0.0:
        for name, (what, times, low, high) in USUAL_OVER_POWER.items():
            ratio = times * getattr(costs, name) / costs.power_price
            if not low <= ratio <= high:
                text = (
                    f"{what} costs {ratio:.3g} kilowatt-hours; usual is {low:g} to {high:g}: look at the "
                    "number and its unit"
                )
                found.append(Remark("warning", label(name), text))
    return found


def price_remarks(offer: Quote, materials: Mapping[str, Material], today: datetime.date) -> list[Remark]:
    """Remarks on the prices of the materials of a quote.

    Parameters
    ----------
    offer : Quote
        The quote.
    materials : mapping
        Code -> product of the mill's list.
    today : datetime.date
        The day that "old" and "in the future" count from.

    Returns
    -------
    list of Remark
        Prices of nothing and of the future are warnings; undated and old ones are unusual.
    """
    used = [
        materials[code] for code in dict.fromkeys(line.material for line in offer.lines) if code in materials
    ]
    found = [
        Remark("warning", f"material {item.code}", "the price is 0: nothing is charged for it")
        for item in used
        if item.price == 0
    ]
    dated = {item.code: item.price_date for item in used if item.price_date is not None}
    found += [
        Remark("warning", f"material {code}", f"the price is dated {date}, which is still to come")
        for code, date in dated.items()
        if date > today
    ]
    undated = [item.code for item in used if item.price_date is None]
    if undated:
        found.append(Remark("unusual", "prices", f"no date beside the price of {', '.join(undated)}"))
    old = sorted((date, code) for code, date in dated.items() if today - date > OLD)
    if old:
        date, code = old[0]
        text = f"{len(old)} price(s) older than a year; the oldest is that of {code}, {date}"
        found.append(Remark("unusual", "prices", text))
    return found
