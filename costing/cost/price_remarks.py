"""What a clerk would say of the prices before believing the quote."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Mapping
from functools import cache

from costing.cost.quote import Quote, material_price
from costing.ledger.remarks import Remark, located, meant_share
from costing.quantities import InputError, label
from costing.quantities.checking import number_text
from costing.reference_data import materials
from costing.settings.material import ROUNDING, YARN_ROLES, Material
from costing.settings.mill import Enquiry, Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import LISTED_STRENGTH

OLD = datetime.timedelta(days=365)

# Price of a unit of the first over that of a kilowatt-hour, whatever the money is: judgement, wide.
USUAL_OVER_POWER = {
    "water_price": ("a cubic metre of water", 1000.0, 0.5, 200.0),
    "steam_price": ("a tonne of steam", 1000.0, 30.0, 3000.0),
    "effluent_charge": ("a cubic metre of effluent", 1000.0, 0.0, 300.0),
}
SMALL_SHARE = 0.01
# What a yarn holds of yarn, and how far the caustic in a product may be from its usual form's: judgement.
YARN_STRENGTH = (0.9, 1.0)
ALKALI_OF_FORM = (0.3, 2.0)
TENFOLD = 10.0
PER_TONNE = (300.0, 3000.0)  # how far a price per tonne that stands as one per kilogram is from the others


def cost_remarks(mill: Mill, enquiry: Enquiry, costs: MillCosts) -> list[Remark]:
    """Remarks on the prices of the mill, its overhead and the margin of a quote.

    Parameters
    ----------
    mill, enquiry
        The book, which knows the cells, and what is quoted.
    costs : MillCosts
        Water, steam, power, effluent, overhead, margin of an enquiry without its own.

    Returns
    -------
    list of Remark
        A share that looks typed as a fraction is a warning, and so is a price out of all proportion.
    """
    found = []
    margin, cell = costs.margin, mill.cell_of("costs", "", "margin")
    if enquiry.margin is not None:
        margin, cell = enquiry.margin, mill.cell_of("enquiry", enquiry.code, "margin")
    overhead = costs.overhead, mill.cell_of("costs", "", "overhead")
    for name, (share, place) in (("margin", (margin, cell)), ("overhead", overhead)):
        if 0.0 < share < SMALL_SHARE:
            text = (
                f"the {name} is {100 * share:g} %: did you mean {1e4 * share:g} %? ten per cent beside % is "
                "typed as 10, not as 0.1"
            )
            found.append(Remark("warning", located(name, place), text))
    if costs.power_price > 0.0:
        for name, (what, times, low, high) in USUAL_OVER_POWER.items():
            ratio = times * getattr(costs, name) / costs.power_price
            if not low <= ratio <= high:
                text = (
                    f"{what} costs {ratio:.3g} kilowatt-hours; usual is {low:g} to {high:g}: look at the "
                    "number and its unit"
                )
                found.append(Remark("warning", located(label(name), mill.cell_of("costs", "", name)), text))
    return found


def strength_remarks(item: Material, mill: Mill) -> list[Remark]:
    """Remarks on the strength of a product, and on the caustic in it, against its usual commercial forms.

    Parameters
    ----------
    item : Material
        A product of the list.
    mill : Mill
        Its book, which knows the cells.

    Returns
    -------
    list of Remark
        A strength or a share of caustic that is usual after a slip of ten or a hundred times is a warning;
        any other strength that no usual form has is unusual.
    """
    found = []
    owner = f"material {item.code}"
    usual, alkalis = _usual(item.substance, item.role, item.dye_class)
    strengths = {"strength": item.strength}
    offers = mill.offers.get(item.code)
    if offers is not None and offers.listed.strength != item.strength:
        strengths[LISTED_STRENGTH] = offers.listed.strength  # a slip there may be why another offer counts
    for name, strength in strengths.items():
        if not usual or any(_within(strength, ends) for ends in usual):
            continue
        told = " or ".join(f"{100 * low:g} to {100 * high:g} %" for low, high in usual)
        text = f"strength is {number_text(100 * strength)} %; usual is {told}"
        slips = [strength * times for times in (TENFOLD, TENFOLD**2, 1.0 / TENFOLD)]
        meant = [slip for slip in slips if any(_within(slip, ends) for ends in usual)]
        where = located(owner, mill.cell_of("material", item.code, name))
        if meant:
            text += f": did you mean {number_text(100 * meant[0])} %?"
        found.append(Remark("warning" if meant else "unusual", where, text))
    for alkali in alkalis:
        low, high = (times * alkali for times in ALKALI_OF_FORM)
        share = meant_share(item.alkali, low, high)
        if share is not None:
            text = (
                f"the caustic in it is {number_text(100 * item.alkali)} %; usual is about "
                f"{number_text(100 * alkali)} %: did you mean {number_text(100 * share)} %?"
            )
            where = located(owner, mill.cell_of("material", item.code, "alkali"))
            found.append(Remark("warning", where, text))
    return found


@cache
def _usual(substance: str, role: str, dye_class: str) -> tuple[list[tuple[float, float]], list[float]]:
    """Strengths of the usual forms of a substance, role or dye class, and the caustic in them."""
    if role in YARN_ROLES:
        return [YARN_STRENGTH], []
    if not substance and role == "other auxiliary":  # anything: no strength of it is usual
        return [], []
    forms = [
        form
        for form in materials().values()
        if form.substance == substance and (substance or (form.role, form.dye_class) == (role, dye_class))
    ]
    strengths = sorted({(form.strength_low, form.strength_high) for form in forms})
    return strengths, [form.alkali for form in forms if form.alkali > 0.0]


def _within(share: float, ends: tuple[float, float]) -> bool:
    low, high = ends
    return low - ROUNDING <= share <= high + ROUNDING


Kind = tuple[str, str]  # what a strength counts, and the role


def _kind(item: Material) -> Kind:
    return item.counted_as, item.role


def _prices_by_kind(mill: Mill, used: Collection[Material]) -> dict[Kind, dict[str, float]]:
    """Price of a kilogram of the active part, in the mill's money, of each product of the kinds used."""
    found: dict[Kind, dict[str, float]] = {_kind(item): {} for item in used}
    if mill.costs is None:
        return found
    for code, item in mill.materials.items():
        if item.price and _kind(item) in found:
            try:
                price = material_price(code, mill.materials, mill.costs) / item.strength
            except InputError:
                continue  # a currency without a rate: whoever uses the product is refused
            found[_kind(item)][code] = price
    return found


def _apart(item: Material, prices: Mapping[str, float], mill: Mill) -> list[Remark]:
    """A warning where no product of the same substance, or else of the same role, costs about as much.

    Only the mill's own list is compared. A role of products that have nothing in common is left out.

    Parameters
    ----------
    item : Material
        A product that is used.
    prices : mapping
        Code -> price of the active part, of the products of its kind.
    mill : Mill
        The book, which knows the cells.
    """
    if item.code not in prices or (not item.substance and item.role == "other auxiliary"):
        return []
    others = [code for code in prices if code != item.code]
    own = prices[item.code]
    near = min(others, key=lambda code: max(own / prices[code], prices[code] / own), default="")
    if not near:
        return []
    times = own / prices[near]
    apart = max(times, 1.0 / times)
    if apart <= TENFOLD:
        return []
    hint = "the price and its unit"
    if PER_TONNE[0] <= apart <= PER_TONNE[1]:
        hint = "whether a price per tonne stands as one per kilogram"
    dearer, cheaper = (item.code, near) if times > 1.0 else (near, item.code)
    text = (
        f"of its kind {near} is nearest in price, and a kilogram of the active part of {dearer} costs "
        f"{number_text(float(f'{apart:.2g}'))} times that of {cheaper}: look at {hint}"
    )
    where = located(f"material {item.code}", mill.cell_of("material", item.code, "price"))
    return [Remark("warning", where, text)]


def price_remarks(offer: Quote, mill: Mill, today: datetime.date) -> list[Remark]:
    """Remarks on the materials of a quote: strengths and prices.

    Parameters
    ----------
    offer : Quote
        The quote.
    mill : Mill
        The book with the price list.
    today : datetime.date
        The day that "old" counts from, and "in the future" unless the prices are of a later day; an offer
        that still runs is not old.

    Returns
    -------
    list of Remark
        Slips of a strength, prices of nothing, of the future and far from those of the same kind are
        warnings; other strengths, undated and old prices are unusual.
    """
    codes = dict.fromkeys(line.material for line in offer.lines)
    used = [mill.materials[code] for code in codes if code in mill.materials]
    found = [remark for item in used for remark in strength_remarks(item, mill)]
    prices = _prices_by_kind(mill, used)
    found += [remark for item in used for remark in _apart(item, prices[_kind(item)], mill)]
    found += [
        Remark("warning", f"material {item.code}", "the price is 0: nothing is charged for it")
        for item in used
        if item.price == 0
    ]
    dated = {item.code: item.price_date for item in used if item.price_date is not None}
    day = mill.costs.day if mill.costs is not None else today
    found += [
        Remark("warning", f"material {code}", f"the price is dated {date}, which is still to come")
        for code, date in dated.items()
        if date > max(today, day)
    ]
    later = [code for code, date in dated.items() if day < date <= today]
    if later:
        text = f"dated after {day}, the day of the prices: {', '.join(later)}"
        found.append(Remark("unusual", "prices", text))
    undated = [item.code for item in used if item.price_date is None and item.price_until is None]
    if undated:
        found.append(Remark("unusual", "prices", f"no date beside the price of {', '.join(undated)}"))
    running = {item.code for item in used if item.price_until is not None and item.price_until >= today}
    old = sorted((date, code) for code, date in dated.items() if today - date > OLD and code not in running)
    if old:
        date, code = old[0]
        text = f"{len(old)} price(s) older than a year; the oldest is that of {code}, {date}"
        found.append(Remark("unusual", "prices", text))
    return found
