"""The store of chemicals: what each product is in transport, what stands apart, and what is over its ceiling.

It knows the products of the list and no building: walls, bunds, drains and the fire code are beyond it.
Where it says nothing of a pair, it does not say that the two may stand together.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import combinations
from typing import NamedTuple

from costing.purchasing.material_plan import LEAST_TOLD
from costing.quantities import InputError, check, listed
from costing.quantities.checking import number_text, refuse_all
from costing.reference_data import substances
from costing.reference_data.store_safety import (
    CORROSIVE,
    CORROSIVE_LIQUID,
    DECIMALS,
    FREE,
    LIQUID,
    NEVER,
    PARTED,
    STORE_DEFERS,
    Segregation,
    TransportEntry,
    apart_rules,
    segregation,
    transport_entry,
)
from costing.settings.material import YARN_ROLES, Material

NOT_KNOWN = "not known: ask the supplier's safety data sheet"
OTHER_NAME = "another may hold: ask the supplier's safety data sheet"
NO_CEILING = "no ceiling typed, not compared: see the licence"
TRANSPORT_RULE = "rule of transport"
CHEMISTRY = "chemistry"

SAID = {
    NEVER: "may not be loaded, carried or stored together on the way",
    PARTED: "only so parted that a leak of one cannot reach the other; no class 8 liquid above or beside it",
}

# Sorts of product that the reasons of chemistry name, by what a product holds ...
SORTS_OF_SUBSTANCE = {
    "acetic_acid": ("acid",),
    "sulfuric_acid": ("acid",),
    "sodium_hydroxide": ("alkali",),
    "sodium_carbonate": ("carbonate",),
    "sodium_bicarbonate": ("carbonate",),
    "sodium_sulfite": ("sulfite",),
    "sodium_bisulfite": ("sulfite",),
    "sodium_hydrosulfite": ("hydrosulfite",),
    "thiourea_dioxide": ("thiourea dioxide", "reductant"),
    "sodium_sulfide": ("sulfide",),
    "sodium_hydrosulfide": ("sulfide",),
    "glucose": ("reductant",),
    "hydrogen_peroxide": ("oxidant", "peroxide"),
    "sodium_bromate": ("oxidant", "bromate"),
}
# ... and, without a formula, by its role and by its caution, whichever says so.
SORTS_OF_ROLE = {"acid": "acid", "alkali": "alkali", "oxidant": "oxidant", "reductant": "reductant"}
SORTS_OF_CAUTION = {
    "acid": ("acid",),
    "caustic": ("alkali",),
    "prereduced_indigo": ("alkali",),
    "soda_ash": ("carbonate",),
    "hydrosulfite": ("hydrosulfite",),
    "sulfide": ("sulfide",),
    "oxidant": ("oxidant",),
    "peroxide": ("oxidant", "peroxide"),
}
ORGANIC, WATERY = "organic matter", "watery product"
CRYSTALS = ("sodium_sulfide", "sodium_hydrosulfide")  # their water is in the crystal and does not leak
LEAST_WATER = 0.2  # share of water from which a product is taken for one that leaks; judgement


class StoreRow(NamedTuple):
    """One product of the store, with the entry of transport that holds for it.

    Attributes
    ----------
    code, description : str
        As in the mill's list.
    un_number, name, hazard_class, subsidiary, packing_group : str
        As printed in the source; empty where there is none. `name` says so where it is not known.
    source, locator, note : str
        Where it stands; `source` is a key of the list of sources.
    defer : str
        Who comes first.
    """

    code: str
    description: str
    un_number: str
    name: str
    hazard_class: str
    subsidiary: str
    packing_group: str
    source: str
    locator: str
    note: str
    defer: str = STORE_DEFERS


class Apart(NamedTuple):
    """Two products that must not stand together, for one reason.

    Attributes
    ----------
    first, second : str
        Their codes, in the order of the list.
    kind : str
        `TRANSPORT_RULE` or `CHEMISTRY`.
    reason, source, locator, note : str
        Why, and who says so.
    defer : str
        Who comes first.
    """

    first: str
    second: str
    kind: str
    reason: str
    source: str
    locator: str
    note: str
    defer: str = STORE_DEFERS


class Ceiling(NamedTuple):
    """What stands of one product against what the mill's licence lets stand.

    Attributes
    ----------
    code : str
        The product.
    amount : float
        As delivered [kg].
    ceiling : float or None
        As the mill gives it [kg]; None where it gives none.
    over : float
        By how much it is over [kg]; 0 where it is not, or where no ceiling is given.
    said : str
        In words.
    defer : str
        Who comes first.
    """

    code: str
    amount: float
    ceiling: float | None
    over: float
    said: str
    defer: str = STORE_DEFERS


def store_rows(products: Iterable[Material]) -> tuple[StoreRow, ...]:
    """What each product is in transport, in the order of the list.

    Parameters
    ----------
    products : iterable of Material
        What stands in the store.

    Examples
    --------
    >>> from costing.purchasing.store_safety import store_rows
    >>> store_rows([])
    ()
    """
    return tuple(_row(item) for item in products)


def kept_apart(products: Iterable[Material]) -> tuple[Apart, ...]:
    """Pairs of products that must not stand together, with each reason.

    A pair that is not here is not thereby allowed: a product whose class is not known is judged by its
    chemistry alone, and what a building asks for is not judged.

    Parameters
    ----------
    products : iterable of Material
        What stands in the store.

    Notes
    -----
    The table of transport counts class and subsidiary class, the stricter one; where both products have one
    class, the subsidiary one counts only for chemistry (49 CFR 177.848(e)(6): us-segregation-2015).
    """
    found: list[Apart] = []
    for first, second in combinations(products, 2):
        found += _by_class(first, second)
        found += _by_chemistry(first, second)
    return tuple(found)


def against_ceilings(
    products: Iterable[Material], amounts: Mapping[str, float], ceilings: Mapping[str, float]
) -> tuple[Ceiling, ...]:
    """What stands of each product against the mill's own ceiling.

    There is no ceiling by default: it is the one of the mill's licence, or none is given.

    Parameters
    ----------
    products : iterable of Material
        What stands in the store.
    amounts : mapping
        Code -> what stands there, as delivered [kg]; a product that is not named has nothing.
    ceilings : mapping
        Code -> the most that the licence lets stand, as delivered [kg].

    Raises
    ------
    InputError
        A code that is none of the products, or an amount that makes no sense; all of them at once.
    """
    codes = [item.code for item in products]
    refused: list[InputError] = []
    for what, given in (("amount in the store", amounts), ("storage ceiling", ceilings)):
        for code, value in given.items():
            where = f"{what} of {code!r}"
            try:
                if code not in codes:
                    raise InputError(
                        where,
                        f"is for a product that does not stand there; accepted is one of: {listed(codes)}",
                    )
                check("stock_mass", value, where)
            except InputError as error:
                refused.append(error)
    refuse_all(refused)
    return tuple(_against(code, float(amounts.get(code, 0.0)), ceilings.get(code)) for code in codes)


def entry_of(item: Material) -> TransportEntry | None:
    """The entry of transport of a product; None where it is not known."""
    return transport_entry(item.substance, item.strength, item.remainder, item.alkali + item.sodium_sulfide)


def sorts_of(item: Material) -> frozenset[str]:
    """The sorts of product that it belongs to, as the reasons of chemistry name them."""
    found: set[str] = set()
    if item.substance:
        found.update(SORTS_OF_SUBSTANCE.get(item.substance, ()))
        substance = substances()[item.substance]
        burns = substance.formula.startswith("C") and substance.role != "gas"
    else:
        found.update(SORTS_OF_CAUTION.get(item.caution, ()))
        if item.role in SORTS_OF_ROLE:
            found.add(SORTS_OF_ROLE[item.role])
        burns = item.own_oxygen_demand > 0.0 or item.role in YARN_ROLES
    if burns:
        found.add(ORGANIC)
    if item.alkali > 0.0:
        found.add("alkali")
    if item.sodium_sulfide > 0.0:
        found.add("sulfide")
    # Rounded, so that 1 - 0.8 is 20 % and not a little less.
    water = round(1.0 - item.strength - item.alkali - item.sodium_sulfide, DECIMALS)
    if item.remainder == "water" and item.substance not in CRYSTALS and water >= LEAST_WATER:
        found.add(WATERY)
    return frozenset(found)


def _row(item: Material) -> StoreRow:
    entry = entry_of(item)
    if entry is None:
        return StoreRow(item.code, item.description, "", NOT_KNOWN, "", "", "", "", "", "")
    name = entry.name if entry.un_number else f"{entry.name}; {OTHER_NAME}"
    return StoreRow(
        item.code,
        item.description,
        entry.un_number,
        name,
        entry.hazard_class,
        entry.subsidiary,
        entry.packing_group,
        entry.source,
        entry.locator,
        entry.note,
    )


def _by_class(first: Material, second: Material) -> list[Apart]:
    """The stricter mark of the table of transport for a pair, if it has one."""
    entries = [entry_of(item) for item in (first, second)]
    if not all(entry is not None and entry.un_number for entry in entries):
        return []
    one, other = (entry for entry in entries if entry is not None)
    if one.hazard_class == other.hazard_class:
        return []
    marks = [_mark(here, there) for here in _classes(one) for there in _classes(other) if here != there]
    found = min(marks, key=lambda item: (NEVER, PARTED, FREE).index(item.mark))
    if found.mark == FREE:
        return []
    reason = f"class {found.first} and class {found.second}: {SAID[found.mark]}"
    return [Apart(first.code, second.code, TRANSPORT_RULE, reason, found.source, found.locator, found.note)]


def _classes(entry: TransportEntry) -> list[str]:
    """Class and subsidiary class as the table of segregation names them; it leaves out solids of class 8."""
    named = [name for name in (entry.hazard_class, entry.subsidiary) if name]
    return [CORROSIVE_LIQUID if name == CORROSIVE and entry.form == LIQUID else name for name in named]


def _mark(first: str, second: str) -> Segregation:
    """What the table says of two classes; nothing of a solid of class 8."""
    nothing = Segregation(first, second, FREE, "", "", "")
    if CORROSIVE in (first, second):
        return nothing
    return segregation()[frozenset((first, second))]


def _by_chemistry(first: Material, second: Material) -> list[Apart]:
    one, other = sorts_of(first), sorts_of(second)
    return [
        Apart(first.code, second.code, CHEMISTRY, rule.why, rule.source, rule.locator, rule.note)
        for rule in apart_rules()
        if (rule.first in one and rule.second in other) or (rule.first in other and rule.second in one)
    ]


def _against(code: str, amount: float, ceiling: float | None) -> Ceiling:
    if ceiling is None:
        return Ceiling(code, amount, None, 0.0, NO_CEILING)
    over = amount - ceiling
    if over <= LEAST_TOLD:
        return Ceiling(code, amount, float(ceiling), 0.0, "not over the ceiling that the mill gave")
    said = (
        f"{number_text(amount)} kg stand there, {number_text(over)} kg over the ceiling of "
        f"{number_text(ceiling)} kg that the mill gave"
    )
    return Ceiling(code, amount, float(ceiling), over, said)
