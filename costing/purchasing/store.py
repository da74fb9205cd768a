"""What stands in the store, now and at most as planned, and which of it must not stand together."""

from __future__ import annotations

import datetime
import math
from collections.abc import Container, Iterable
from typing import NamedTuple

from costing.purchasing.material_plan import LEAST_TOLD
from costing.purchasing.plan import PurchasePlan
from costing.purchasing.store_safety import Apart, Ceiling, against_ceilings
from costing.reference_data.store_safety import apart_rules
from costing.settings.material import YARN_ROLES, Material
from costing.settings.mill import Mill
from costing.settings.stock import Store


class Held(NamedTuple):
    """One product of the store.

    Attributes
    ----------
    product : Material
        What it is.
    batches : tuple of str
        Those of the sheet Stock that hold something.
    now : Ceiling
        What stands there by the sheet, expired batches in, against the ceiling of the terms of purchase.
    most : Ceiling or None
        The largest stock of the plan against it; None where nothing was planned.
    most_on : date or None
        The first day of that.
    """

    product: Material
    batches: tuple[str, ...]
    now: Ceiling
    most: Ceiling | None
    most_on: datetime.date | None


class ApartGroup(NamedTuple):
    """Products of which each of the one side must not stand beside any of the other, for one reason.

    Attributes
    ----------
    first, second : tuple of str
        The two sides, the shorter one first.
    kind, reason, source, locator, note : str
        As of each pair.
    """

    first: tuple[str, ...]
    second: tuple[str, ...]
    kind: str
    reason: str
    source: str
    locator: str
    note: str

    @property
    def pairs(self) -> int:
        """How many pairs of products it stands for."""
        return len(self.first) * len(self.second)


def held_in_store(
    mill: Mill, store: Store, plan: PurchasePlan | None = None, others: Container[str] = ()
) -> list[Held]:
    """What stands in the store, in the order of the price list; yarns are left out.

    Parameters
    ----------
    mill : Mill
        With the price list.
    store : Store
        Batches and ceilings.
    plan : PurchasePlan, optional
        What it has in store at some time counts as well.
    others : container of str, optional
        Codes that are told even where nothing of them stands there.
    """
    batches: dict[str, list[str]] = {}
    masses: dict[str, list[float]] = {}
    for batch in store.batches:
        if batch.stock_mass > 0.0:
            batches.setdefault(batch.material, []).append(batch.batch)
            masses.setdefault(batch.material, []).append(batch.stock_mass)
    now = {code: math.fsum(found) for code, found in masses.items()}
    planned = {item.material: item for item in plan.materials if item.most > LEAST_TOLD} if plan else {}
    products = [
        item
        for code, item in mill.materials.items()
        if (code in now or code in planned or code in others) and item.role not in YARN_ROLES
    ]
    ceilings = {
        item.code: terms.storage_ceiling
        for item in products
        if (terms := store.terms.get(item.code)) is not None and terms.storage_ceiling is not None
    }
    held = against_ceilings(products, now, ceilings)
    most = against_ceilings(products, {code: item.most for code, item in planned.items()}, ceilings)
    return [
        Held(
            item,
            tuple(batches.get(item.code, ())),
            there,
            then if plan else None,
            planned[item.code].most_on if item.code in planned else None,
        )
        for item, there, then in zip(products, held, most)
    ]


def grouped(pairs: Iterable[Apart]) -> list[ApartGroup]:
    """Pairs of products by reason, so that each pair stands in one row and no row holds another pair.

    Most reasons are one row: all products of one sort against all of the other. A product of both sorts asks
    for a row of its own. Reasons of chemistry stand in the order of their table, rules of transport last.

    Parameters
    ----------
    pairs : iterable of Apart
        As `kept_apart` finds them.
    """
    reasons: dict[tuple[str, ...], dict[str, dict[str, None]]] = {}
    for pair in pairs:
        partners = reasons.setdefault((pair.kind, pair.reason, pair.source, pair.locator, pair.note), {})
        partners.setdefault(pair.first, {})[pair.second] = None
        partners.setdefault(pair.second, {})[pair.first] = None
    found = []
    for (kind, reason, source, locator, note), partners in reasons.items():
        for sides in _rows(partners):
            first, second = sorted(sides, key=len)
            found.append(ApartGroup(first, second, kind, reason, source, locator, note))
    turn = {rule.why: at for at, rule in enumerate(apart_rules())}  # what kills stands first there
    return sorted(found, key=lambda item: turn.get(item.reason, len(turn)))


def _rows(partners: dict[str, dict[str, None]]) -> Iterable[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Take the pairs apart into sides, of which all of the one stand against all of the other."""
    for left in partners.values():
        while left:
            second = tuple(left)
            first = tuple(code for code, others in partners.items() if others.keys() >= left.keys())
            for one in first:
                for other in second:
                    partners[one].pop(other)
                    partners[other].pop(one)
            yield first, second
