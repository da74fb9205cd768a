"""What a customer is offered: the price that is shown, the value of the order, and facts of the cloth."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import NamedTuple

from costing.cost.money import rounded
from costing.cost.quote import ORDERED
from costing.ledger.whole import Ledger
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.report.table import Result, bought, costs_of
from costing.settings.mill import Mill

CENT = 0.01
OF_CLOTH = {"finished cloth": "finished", "loom-state cloth": "loom-state"}


class Offer(NamedTuple):
    """The money of an enquiry as it is offered.

    Attributes
    ----------
    length : float
        Ordered, in its unit.
    unit : str
        Of the length: m, yd, km or ft.
    counted_on : str
        What the length counts: finished cloth, loom-state cloth or dyed warp.
    price : Decimal
        Of one unit of length, rounded to the mill's step.
    exact : float
        The same, not rounded.
    value : Decimal
        Of the order: the rounded price times the length, in hundredths of the money or the mill's step, where
        that is coarser.
    currency : str
        The mill's money.
    """

    length: float
    unit: str
    counted_on: str
    price: Decimal
    exact: float
    value: Decimal
    currency: str


def offer_of(mill: Mill, result: Result) -> Offer:
    """The price that a customer is shown, and the value of the order by that price."""
    enquiry, costs = result.enquiry, costs_of(mill)
    length = float(convert(enquiry.order_length, "m", enquiry.order_unit))
    exact = result.quote.price_on(ORDERED[enquiry.length_basis]) * convert(1.0, enquiry.order_unit, "m")
    price = rounded(exact, costs.money_rounding)
    value = rounded(price * Decimal(repr(length)), max(CENT, costs.money_rounding))
    return Offer(length, enquiry.order_unit, enquiry.length_basis, price, exact, value, costs.currency)


def cloth_facts(ledger: Ledger, with_shrinkage: bool = False) -> list[tuple[str, str]]:
    """What a customer is told of the cloth: counts, threads, width, mass; as it is sold.

    Parameters
    ----------
    ledger : Ledger
        Of the enquiry.
    with_shrinkage : bool, optional
        True to tell what finishing takes off the loom-state cloth, too.

    Returns
    -------
    list of (str, str)
        Fact, and its value with its units.
    """
    style, cloth = ledger.style, ledger.fabric
    state = OF_CLOTH.get(ledger.enquiry.length_basis)
    facts = [("Warp", _yarn(style.warp_count, style.warp_ply))]
    if state is None:
        return [*facts, ("Ends", f"{cloth.ends:,.0f}")]
    finished = state == "finished"
    facts.append(("Weft", _yarn(style.weft_count, style.weft_ply)))
    width = cloth.finished_width if finished else cloth.cloth_width
    body_ends = style.ends_density * style.width / width
    picks = style.picks_density / (1.0 - style.shrinkage_length) if finished else style.picks_density
    threads = [convert(1.0, unit, "1/m") for unit in ("1/cm", "1/in")]
    per_cm, per_inch = (f"{body_ends / one:.1f} x {picks / one:.1f}" for one in threads)
    facts.append((f"Ends x picks, {state}", f"{per_cm} per cm ({per_inch} per inch)"))
    inches = convert(width, "m", "in")
    facts.append((f"Width, {state}", f"{100.0 * width:.0f} cm ({inches:.1f} in)"))
    mass = cloth.finished_areal_mass if finished else cloth.loom_state_areal_mass
    ounces = convert(mass, "kg/m2", "oz/yd2")
    facts.append((f"Mass, {state}", f"{1000.0 * mass:.0f} g/m2 ({ounces:.1f} oz/yd2)"))
    if with_shrinkage:
        along, across = 100.0 * style.shrinkage_length, 100.0 * style.shrinkage_width
        facts.append(("Shrinkage in finishing", f"length {along:.1f} %, width {across:.1f} %"))
    return facts


def _yarn(count: float, ply: float) -> str:
    """A yarn as it is sold: single count, ply, and the same in tex."""
    english = convert(count, "kg/m", "Ne")
    times = f" x {ply:.0f}" if ply > 1.0 else ""
    return f"Ne {english:.1f}/{ply:.0f} ({convert(count, 'kg/m', 'tex'):.1f} tex{times})"


def refuse_recipe_words(mill: Mill, result: Result, texts: Mapping[str, str]) -> None:
    """Refuse a text for a customer that names a product, the recipe, the route or the range by its code.

    Parameters
    ----------
    mill, result
        The book, and the enquiry of it.
    texts : mapping
        Where a text stands -> the text.

    Raises
    ------
    InputError
        A code of the mill stands in a text, as a word of its own and spelt as in the book.
    """
    enquiry = result.enquiry
    codes = {code: "a product" for code in bought(result) if code in mill.materials}
    codes[mill.recipe(enquiry.recipe).route] = "the route"
    codes[enquiry.range] = "the range"
    codes[enquiry.recipe] = "the recipe"
    for where, text in texts.items():
        for code, what in codes.items():
            if code and _stands_in(code, text):
                raise InputError(
                    where,
                    f"{text!r} holds {code!r}, the code of {what}, and is for the customer; accepted is a "
                    "text without it",
                )


def _stands_in(code: str, text: str) -> bool:
    at = text.find(code)
    while at >= 0:
        before, behind = text[at - 1 : at], text[at + len(code) : at + len(code) + 1]
        if not (before.isalnum() or behind.isalnum()):
            return True
        at = text.find(code, at + 1)
    return False
