"""The price list of a day: each material with all its offers, and what another day does to the quotes."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterator, Sequence
from typing import Any

from costing.cost.money import price_of_pure_substance, rounded
from costing.cost.offers import Standing, costs_on, standings
from costing.cost.quote import ORDERED, material_price
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.refused import REFUSED, Refused
from costing.report.table import Column, Result, Table, costs_of, decimals_of
from costing.settings.material import Material
from costing.settings.mill import Mill
from costing.settings.mill_costs import MillCosts
from costing.settings.offers import ALWAYS, MaterialOffers

SOON = 30  # days within which an end of an offer is told
DAY = datetime.timedelta(days=1)
DIGITS = 4
NOT_ON_SCREEN = ("From", "Valid from", "Valid to", "Length of", "Supplier now", "Supplier next", "Share")
CHOSEN = "chosen"


def prices(mill: Mill, codes: Collection[str] | None = None, within: int = SOON) -> Table:
    """Each material with all its offers on the day of the prices.

    Parameters
    ----------
    mill : Mill
        With the prices of that day.
    codes : collection of str, optional
        Materials; all of the list where left out.
    within : int, optional
        Days within which the end of an offer is told, and what comes then.

    Returns
    -------
    Table
        Price at the gate in the mill's money, as delivered and for the active part; chosen, or why not.
    """
    costs = costs_of(mill)
    money = f"{costs.currency}/kg"
    columns = [
        Column("Material"),
        Column("Supplier"),
        Column("Strength", "%", 1),
        Column("From", "kg", 0),
        Column("Valid from"),
        Column("Valid to"),
        Column("Delivered", money, DIGITS),
        Column("Active part", money, DIGITS),
        Column("Standing"),
    ]
    rows: list[list[Any]] = []
    for code, item in mill.materials.items():
        if codes is not None and code not in codes:
            continue
        if code in mill.offers:
            rows += _offer_rows(mill, code, within)
        else:
            rows.append(_listed_row(item, mill, costs))
    note = (
        f"Prices as of {costs.day}, at the gate: freight in, in the mill's money. The active part is what "
        "offers of unlike strength compare by: the chosen one has the lowest, or is marked always."
    )
    return Table("prices", "Prices", note, columns, rows)


def prices_of_use(mill: Mill, results: Sequence[Result]) -> Table:
    """The same for the materials that these enquiries take."""
    return prices(mill, priced(results))


def priced(results: Sequence[Result]) -> set[str]:
    """What these enquiries have a priced line of: materials, yarns among them, and what is none."""
    return {line.material for item in results for line in item.quote.lines}


def in_short(table: Table) -> Table:
    """The columns that fit a screen."""
    kept = [at for at, column in enumerate(table.columns) if column.title not in NOT_ON_SCREEN]
    rows = [[row[at] for at in kept] for row in table.rows]
    return table._replace(columns=[table.columns[at] for at in kept], rows=rows)


def _listed_row(item: Material, mill: Mill, costs: MillCosts) -> list[Any]:
    """A material whose price stands on the sheet Materials, where it has one."""
    row: list[Any] = [item.code, None, 100.0 * item.strength, None, item.price_date, None]
    try:
        price = material_price(item.code, mill.materials, costs)
    except InputError as error:
        return [*row, None, None, "no price" if item.price is None else error.message]
    return [*row, price, price_of_pure_substance(price, item.strength), "sheet Materials"]


def _offer_rows(mill: Mill, code: str, within: int) -> Iterator[list[Any]]:
    found = standings(mill.offers[code], costs_of(mill))
    chosen = next((one for one in found if one.chosen), None)
    for one in found:
        offer = one.offer
        yield [
            offer.material,
            offer.supplier,
            100.0 * offer.strength,
            offer.from_quantity,
            offer.valid_from,
            offer.valid_to,
            one.delivered,
            one.active,
            _standing(one, chosen, mill, within),
        ]


def _standing(one: Standing, chosen: Standing | None, mill: Mill, within: int) -> str:
    """What an offer is on the day, in words; of the one that is chosen also what comes when it soon ends."""
    costs = costs_of(mill)
    if one.hindered:
        return one.hindered
    if one.active is None:
        return f"counts, but {one.offer.currency} has no rate on {costs.day}: nothing is chosen"
    if one.chosen:
        text = f"{CHOSEN}, marked always" if one.offer.offer_counts == ALWAYS else CHOSEN
    elif chosen is None or not chosen.active:
        text = "counts"
    else:
        text = f"counts; active part {_percent(one.active / chosen.active - 1.0)}"
    last = one.offer.valid_to
    if last is None or (last - costs.day).days > within:
        return text
    left = (last - costs.day).days
    text += f"; expires {'today' if not left else 'tomorrow' if left == 1 else f'in {left} days'}"
    if not one.chosen:
        return text
    after = costs_on(costs, mill.rates, last + DAY)
    return f"{text}, then {_next(one, mill.offers[one.offer.material], after)}"


def _next(one: Standing, listed: MaterialOffers, costs: MillCosts) -> str:
    """What a material is bought at once an offer has ended."""
    after = next((other for other in standings(listed, costs) if other.chosen), None)
    if after is None:
        return "no offer counts: what needs it is refused"
    change = (
        f", active part {_percent(after.active / one.active - 1.0)}" if after.active and one.active else ""
    )
    return f"{after.offer.supplier}{change}"


def _percent(share: float) -> str:
    return f"{100.0 * share:+.1f} %"


def price_changes(before: Mill, after: Mill, codes: Collection[str]) -> Table:
    """Materials whose price of the active part is another one on a second day.

    Parameters
    ----------
    before, after : Mill
        The same mill on two days.
    codes : collection of str
        Materials to be looked at.
    """
    first, second = costs_of(before), costs_of(after)
    money = f"{first.currency}/kg active"
    columns = [
        Column("Material"),
        Column("Bought from"),
        Column("Then from"),
        Column(f"{first.day}", money, DIGITS),
        Column(f"{second.day}", money, DIGITS),
        Column("Change", "%", 1),
    ]
    rows: list[list[Any]] = []
    for code in before.materials:
        if code not in codes:
            continue
        here, then = _active(code, before), _active(code, after)
        if here == then:
            continue
        change = 100.0 * (then / here - 1.0) if here and then is not None else None
        sellers = [_seller(code, mill) for mill in (before, after)]
        rows.append([code, *sellers, here, then, change])
    note = "Price of the active part at the gate. Where there is none, what needs the material is refused."
    return Table("price_changes", "Prices that change", note, columns, rows)


def _active(code: str, mill: Mill) -> float | None:
    try:
        price = material_price(code, mill.materials, costs_of(mill))
    except InputError:
        return None
    found: float = price_of_pure_substance(price, mill.materials[code].strength)
    return found


def _seller(code: str, mill: Mill) -> str:
    item = mill.materials[code]
    return "no offer that counts" if item.no_price else item.supplier or "sheet Materials"


def margin_at_price(price: float, cost: float) -> float:
    """What a price that stands leaves over a cost, as a share of that price; below zero it is a loss.

    Parameters
    ----------
    price : float
        Selling price [money/m].
    cost : float
        Full cost [money/m].

    Returns
    -------
    float
        Margin [fraction].

    Examples
    --------
    >>> round(margin_at_price(price=1.0, cost=0.85), 4)
    0.15
    """
    return 1.0 - cost / price


def margins(
    before: Mill,
    after: Mill,
    results: Sequence[Result],
    then: Sequence[Result],
    refused: Sequence[Refused],
    floor: float | None = None,
) -> Table:
    """What is left of each quote's margin when it is sold at the price of the first day on a second day.

    Parameters
    ----------
    before, after : Mill
        The same mill on two days.
    results, then : sequence of Result
        Enquiries worked out on the first day and on the second.
    refused : sequence of Refused
        Those that are refused on one of the days.
    floor : float, optional
        Margin below which a quote is marked [fraction]; where left out, a quote is marked whose price no
        longer leaves the margin that the book asks: the enquiry's own or the mill's.

    Returns
    -------
    Table
        The lowest margin first, the refused last.
    """
    costs, day = costs_of(before), costs_of(after).day
    digits, step = decimals_of(costs.money_rounding), costs.money_rounding
    each = f"{costs.currency}/unit"
    columns = [
        Column("Enquiry"),
        Column("Unit"),
        Column("Length of"),
        Column("Price", each, digits),
        Column("Cost", each, digits + 1),
        Column("Margin", "%", 1),
        Column("Cost then", each, digits + 1),
        Column("Margin then", "%", 1),
        Column("Lost", "points", 2),
        Column("Price to keep it", each, digits),
        Column("Mark"),
    ]
    titles = [column.title for column in columns]
    later = {item.enquiry.code: item for item in then}
    rows: list[list[Any]] = []
    for item in results:
        other = later.get(item.enquiry.code)
        if other is None:
            continue
        basis, per = ORDERED[item.enquiry.length_basis], convert(1.0, item.enquiry.order_unit, "m")
        price = float(rounded(item.quote.price_on(basis) * per, step))
        sides = [side.quote.cost_on(basis) * per for side in (item, other)]
        left = [margin_at_price(price, cost) for cost in sides]
        keep = float(rounded(other.quote.price_on(basis) * per, step))
        # By the rounded price: a price rounded down is no margin lost.
        below = keep > price if floor is None else left[1] < floor
        mark = "loss" if left[1] < 0.0 else "below" if below else None
        unit = [item.enquiry.order_unit, item.enquiry.length_basis]
        lost = 100.0 * (left[0] - left[1])
        row = [item.enquiry.code, *unit, price, sides[0], 100.0 * left[0], sides[1], 100.0 * left[1]]
        rows.append([*row, lost, keep, mark])
    rows.sort(key=lambda row: float(row[titles.index("Margin then")]))
    rows += [[item.code, *[None] * (len(columns) - 2), REFUSED] for item in refused]
    asked = (
        "the price no longer leaves the margin that the book asks, the enquiry's own or the mill's"
        if floor is None
        else f"a margin under the floor of {100.0 * floor:g} % of the price"
    )
    note = (
        f"Each quote at the price it has on {costs.day}, per unit of its length, with what it costs on "
        f"{day}. Below: {asked}; loss: under nothing."
    )
    return Table("margins", f"Margins with the prices of {day}", note, columns, rows)
