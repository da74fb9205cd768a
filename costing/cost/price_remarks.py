"""What a clerk would say of the prices before believing the quote."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

from costing.cost.quote import Quote
from costing.ledger.remarks import Remark
from costing.settings.mill import Material

OLD = datetime.timedelta(days=365)


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
