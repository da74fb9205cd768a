"""A quote: every bought line of a ledger at its price, opened into step, material and cause."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from costing.cost.money import cost_per_metre_of_cloth, delivered_price, price_with_margin
from costing.cost.seconds import cost_of_first_quality
from costing.ledger.lot import RANGE_TIME
from costing.ledger.plan_running import CLOTH
from costing.ledger.whole import INTERNAL, Ledger
from costing.process.arithmetic import is_nothing
from costing.process.postings import DRAIN, GREY, POWER
from costing.quantities import InputError
from costing.quantities.units import convert
from costing.settings.material import Material
from costing.settings.mill import Enquiry
from costing.settings.mill_costs import MillCosts
from costing.settings.quality import Sorting

WATER_LINE = "water"
STEAM_LINE = "steam"
EFFLUENT = "effluent"
SECONDS = "seconds and off-shade"
SORTING = "sorting"
WEFT = "weft yarn"  # step and group of what is woven across a dyed warp

FINISHED_METRE = "m of finished cloth"

# Bases that are dyed warp: they hold no weft.
YARN_BASES = ("kg of grey yarn", "kg of dyed yarn", "m of dyed warp")

# What the enquiry's length counts -> the basis on which it is priced.
ORDERED = {
    "finished cloth": FINISHED_METRE,
    "loom-state cloth": "m of loom-state cloth",
    "dyed warp": "m of dyed warp",
}

METRES_PER_YARD = convert(1.0, "yd", "m")

GROUPS = (
    "warp yarn",
    "weft yarn",
    "dye",
    "reductant",
    "caustic",
    "auxiliaries",
    "size",
    "water",
    "steam",
    "power",
    "effluent",
    "range time",
    "overhead",
    SECONDS,
)


class CostLine(NamedTuple):
    """One priced line, per kilogram of saleable grey yarn of all qualities.

    Attributes
    ----------
    step, material, cause, group : str
        What, where and why; the group is what reports add up by.
    amount : float
        As delivered [kg, L, kWh or h, per kg].
    unit : str
        Unit of the amount.
    unit_price : float
        In the mill's money, per that unit.
    cost : float
        Money per kilogram.
    """

    step: str
    material: str
    cause: str
    group: str
    amount: float
    unit: str
    unit_price: float
    cost: float


class Quote(NamedTuple):
    """A priced enquiry. Money is not rounded here.

    Attributes
    ----------
    lines : list of CostLine
        All priced lines, then the overhead, then what metres not of first quality cost and bring back.
    currency : str
        The mill's money.
    cost_per_kg, price_per_kg : float
        Full cost with its weft, and selling price with margin, per kilogram of grey warp of first quality.
    weft_per_kg : float
        Part of the cost that is weft yarn beside the warp that is dyed, per kilogram of grey warp of first
        quality; 0 where the cloth is dyed and its weft with it.
    per : dict
        Basis -> kilograms of saleable grey yarn in it; multiply a cost per kilogram by it.
    margin : float
        Of the selling price [fraction].
    not_priced : tuple of str
        What the style leaves out: warp or weft yarn without a code.
    """

    lines: list[CostLine]
    currency: str
    cost_per_kg: float
    price_per_kg: float
    weft_per_kg: float
    per: dict[str, float]
    margin: float
    not_priced: tuple[str, ...]

    def cost_on(self, basis: str) -> float:
        """Cost on a basis: of the dyed warp alone where it is yarn, with the weft where it is cloth."""
        weft = self.weft_per_kg if basis in YARN_BASES else 0.0
        return (self.cost_per_kg - weft) * self.per[basis]

    def price_on(self, basis: str) -> float:
        """Price on a basis, with margin."""
        price: float = price_with_margin(self.cost_on(basis), self.margin)
        return price

    def by(self, *columns: str) -> dict[tuple[str, ...], float]:
        """Cost per kilogram, summed by any of step, material, cause and group.

        Examples
        --------
        ``quote.by("step", "group")``
        """
        sums: dict[tuple[str, ...], float] = {}
        for line in self.lines:
            key = tuple(getattr(line, column) for column in columns)
            sums[key] = sums.get(key, 0.0) + line.cost
        return sums


class EffluentPrice(NamedTuple):
    """What an enquiry pays for its water, where that is not the price of the mill's costs.

    Attributes
    ----------
    name : str
        What stands as the material of its lines.
    price : float
        For each volume, in the mill's money [money/L].
    grounds : str
        Where it comes from.
    """

    name: str
    price: float
    grounds: str


def quote(
    ledger: Ledger,
    materials: Mapping[str, Material],
    costs: MillCosts,
    effluent: EffluentPrice | None = None,
) -> Quote:
    """Price a ledger.

    Parameters
    ----------
    ledger : Ledger
        Of an enquiry.
    materials : mapping
        Code -> product of the mill's list, with prices.
    costs : MillCosts
        Water, steam, power, effluent, overhead, margin and currencies.
    effluent : EffluentPrice, optional
        Counts in place of the effluent charge of the costs.

    Returns
    -------
    Quote
        Money per kilogram of grey yarn of first quality, not rounded.

    Raises
    ------
    InputError
        A product that is used has no price, or its currency has no exchange rate.
    """
    tariff = _utilities(ledger, costs)
    drained = EFFLUENT if effluent is None else effluent.name
    if effluent is not None:
        tariff[drained] = (EFFLUENT, "L", effluent.price)
    dyes_cloth = ledger.range.yarn_form == CLOTH
    weft_only = {ledger.style.weft_yarn} - {ledger.style.warp_yarn}
    amounts: dict[tuple[str, str, str], float] = {}
    for step, material, substance, cause, amount, source, destination in ledger.postings:
        if material and source not in INTERNAL:
            key = (step, material, cause)
        elif material and source == GREY:
            if material not in tariff:
                kind = "weft yarn" if material in weft_only else "warp yarn"
                tariff[material] = (kind, "kg", material_price(material, materials, costs))
            key = (step, material, cause)
        elif substance == "water" and destination.startswith(DRAIN):
            key = (step, drained, destination[len(DRAIN) :])
        else:
            continue
        amounts[key] = amounts.get(key, 0.0) + amount
    lines: list[CostLine] = []
    for (step, material, cause), amount in amounts.items():
        if material not in tariff:
            price = material_price(material, materials, costs)
            tariff[material] = (group_of(materials[material]), "kg", price)
        group, unit, price = tariff[material]
        lines.append(CostLine(step, material, cause, group, amount, unit, price, amount * price))
    if ledger.style.weft_yarn and not dyes_cloth:
        price = material_price(ledger.style.weft_yarn, materials, costs)
        amount = ledger.fabric.weft_per_metre / ledger.saleable_warp_per_metre
        lines.append(
            CostLine(
                "weft yarn",
                ledger.style.weft_yarn,
                "weft yarn",
                "weft yarn",
                amount,
                "kg",
                price,
                amount * price,
            )
        )
    yarns = ("warp yarn", "weft yarn")
    conversion = sum(line.cost for line in lines if line.group not in yarns)
    lines.append(
        CostLine(
            "mill",
            "overhead",
            "share of conversion cost",
            "overhead",
            conversion,
            "money",
            costs.overhead,
            conversion * costs.overhead,
        )
    )
    weft = 0.0 if dyes_cloth else sum(line.cost for line in lines if line.group == "weft yarn")
    made = sum(line.cost for line in lines)
    lines += _seconds(made - weft, ledger.sorting, SORTING)
    lines += _seconds(weft, ledger.sorting, WEFT)
    total = _first_quality(made, ledger.sorting)
    margin = costs.margin if ledger.enquiry.margin is None else ledger.enquiry.margin
    missing = [
        name
        for name, code in (("warp yarn", ledger.style.warp_yarn), ("weft yarn", ledger.style.weft_yarn))
        if not code
    ]
    return Quote(
        lines,
        costs.currency,
        total,
        price_with_margin(total, margin),
        _first_quality(weft, ledger.sorting),
        bases(ledger),
        margin,
        tuple(missing),
    )


def _seconds(made: float, sorting: Sorting, step: str) -> list[CostLine]:
    """What metres off shade and of second quality add to the cost of first quality, less what they bring.

    Parameters
    ----------
    made : float
        Cost of all that is made [money/kg].
    sorting : Sorting
        Shares and values.
    step : str
        Where the lines stand: those of the weft apart, since yarn bases leave it out.
    """
    found = []
    for what, share, value in (
        ("off-shade metres", sorting.off_shade_share, sorting.off_shade_value),
        ("second-quality metres", sorting.seconds_share, sorting.seconds_value),
    ):
        if is_nothing(share) or is_nothing(made):
            continue
        beside = share / sorting.first_quality  # for each metre of first quality
        for cause, rate in (("made beside first quality", beside), ("value recovered", -beside * value)):
            found.append(CostLine(step, what, cause, SECONDS, made, "money", rate, made * rate))
    return found


def _first_quality(cost: float, sorting: Sorting) -> float:
    """Cost per kilogram of first quality from that of all that is made [money/kg]."""
    found: float = cost_of_first_quality(
        cost,
        sorting.off_shade_share,
        sorting.seconds_share,
        sorting.off_shade_value,
        sorting.seconds_value,
    )
    return found


def basis_of(enquiry: Enquiry) -> str:
    """The basis on which an enquiry is priced: a metre of what it counts."""
    return ORDERED.get(enquiry.length_basis, FINISHED_METRE)


def bases(ledger: Ledger) -> dict[str, float]:
    """Kilograms of saleable grey yarn in each basis that money is given on."""
    loom_state = ledger.saleable_warp_per_metre
    finished = ledger.plan.saleable_mass / ledger.plan.finished_length
    return {
        "kg of grey yarn": 1.0,
        "kg of dyed yarn": 1.0 / ledger.dyed_yarn_per_grey,
        "m of dyed warp": ledger.plan.saleable_mass / ledger.plan.warp_length,
        "m of loom-state cloth": cost_per_metre_of_cloth(1.0, loom_state),
        "yd of loom-state cloth": cost_per_metre_of_cloth(1.0, loom_state) * METRES_PER_YARD,
        FINISHED_METRE: cost_per_metre_of_cloth(1.0, finished),
        "yd of finished cloth": cost_per_metre_of_cloth(1.0, finished) * METRES_PER_YARD,
    }


def material_price(code: str, materials: Mapping[str, Material], costs: MillCosts) -> float:
    """Price of a product at the mill's gate, in the mill's money per kilogram delivered.

    Raises
    ------
    InputError
        No such product, no price, or no exchange rate for its currency.
    """
    if code not in materials:
        raise InputError("price list", f"material {code!r} is not in the list")
    material = materials[code]
    where = material.where or f"material {code}"
    if material.price is None and material.no_price:
        raise InputError(where, material.no_price)
    if material.price is None:
        raise InputError(
            where,
            f"material {code!r} is used but has no price; accepted is a price of 0 or more, or an offer",
        )
    currency = material.currency or costs.currency
    rate: float | None = 1.0 if currency == costs.currency else costs.exchange_rates.get(currency)
    if rate is None and material.no_price:
        raise InputError(where, material.no_price)
    if rate is None:
        known = ", ".join([costs.currency, *costs.exchange_rates])
        raise InputError(
            where, f"currency {currency!r} of material {code!r} has no exchange rate; there are: {known}"
        )
    price: float = delivered_price(material.price, material.freight, rate)
    return price


def _utilities(ledger: Ledger, costs: MillCosts) -> dict[str, tuple[str, str, float]]:
    """Group, unit and price of what is bought without being a material of the list."""
    return {
        WATER_LINE: ("water", "L", costs.water_price),
        STEAM_LINE: ("steam", "kg", costs.steam_price),
        POWER: ("power", "kWh", costs.power_price),
        EFFLUENT: (EFFLUENT, "L", costs.effluent_charge),
        RANGE_TIME: ("range time", "h", ledger.range.range_hour_rate),
    }


def group_of(material: Material) -> str:
    """The cost group of a product, by what it holds and what it is for."""
    if material.counted_as == "sodium_hydroxide":
        return "caustic"
    if material.counted_as == "indigo" or material.role == "dye":
        return "dye"
    if material.counted_as == "sodium_hydrosulfite" or material.role == "reductant":
        return "reductant"
    return "size" if material.role == "size" else "auxiliaries"
