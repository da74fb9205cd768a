"""Which inputs differ between two snapshots of quotes, and the one with some inputs of the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from costing.quantities import QUANTITIES, InputError, label
from costing.settings.quality import SHARES
from costing.settings.snapshot import Document, completed
from costing.settings.steps import STEP_KINDS

CLOTH, LOT, RECIPE, USAGE, PRICE, PROGRAM = "cloth", "lot", "recipe", "usage", "price", "program"

# The order in which the inputs of the one quote take the place of those of the other. Prices come last: they
# count on what is used in the end, and all else is told at the prices before. So a variance of price is
# usually parted from one of usage.
ORDER = (CLOTH, LOT, RECIPE, USAGE, PRICE)

TELLS_NOTHING = (
    *("code", "description", "where", "caution", "order_unit", "money_rounding"),
    *("price_date", "price_until", "prices_as_of", "no_price"),  # the prices themselves are told
)
REFERS = ("style", "recipe", "range")  # an enquiry names them; what they hold is told instead
OF_PRICE = ("price", "freight", "currency", "price_by", "supplier")  # of a product: one offer
HOUR = "range_hour_rate"
WASTES = ("warp_waste", "weft_waste")  # of a style, and yet usage
ROUTE = "route"
Path = tuple[str, ...]


class Change(NamedTuple):
    """One input that differs.

    Attributes
    ----------
    group : str
        Cloth, lot, recipe, usage, price or program.
    where, name : str
        Whose input it is, and its name as people read it.
    quantity : str
        The quantity that it is; "" for a word or a code.
    before, after : object
        Number in the house unit, word, or None where it is empty.
    """

    group: str
    where: str
    name: str
    quantity: str
    before: Any
    after: Any


class Swap(NamedTuple):
    """Inputs that change together: their places, and how each changes."""

    group: str
    paths: tuple[Path, ...]
    changes: tuple[Change, ...]


def opened(document: Document) -> Document:
    """A snapshot with steps and products by name, to find an input by its path; `closed` undoes it."""
    document = completed(document)
    costs = dict(document["costs"])
    return {
        **document,
        "exchange": costs.pop("exchange_rates"),
        "costs": costs,
        "steps": {step["name"]: step for step in document["steps"]},
        "materials": {item["code"]: item for item in document["materials"]},
        "depths": {item["code"]: item for item in document["depths"]},
    }


def closed(state: Document) -> Document:
    """The snapshot of what `opened` gives."""
    document = {
        **state,
        "costs": {**state["costs"], "exchange_rates": state["exchange"]},
        "steps": list(state["steps"].values()),
        "materials": list(state["materials"].values()),
        "depths": list(state["depths"].values()),
    }
    del document["exchange"]
    return document


def joined(before: Document, after: Document) -> Document:
    """The state before, with products and currencies beside it that only the state after has.

    Nothing uses them until a recipe names them; they then come at their own strength and price.
    """
    return {
        **before,
        "materials": {**after["materials"], **before["materials"]},
        "exchange": {**after["exchange"], **before["exchange"]},
    }


def under_codes_of(document: Document, first: Document) -> Document:
    """A snapshot under the codes of another enquiry, style, recipe and range, which tell no number."""
    code, route = first["enquiry"]["code"], first["recipe"]["route"]
    named = {part: {**document[part], "code": first[part]["code"]} for part in ("enquiry", *REFERS)}
    named["enquiry"].update({part: first["enquiry"][part] for part in REFERS})
    named["recipe"]["route"] = route
    drain = document["drain"]
    if "production" in drain:
        drain = {**drain, "production": [{**row, "enquiry": code} for row in drain["production"]]}
    return {**document, **named, "drain": drain}


def swaps(before: Document, after: Document, other_range: bool = False) -> list[Swap]:
    """What differs, in the order in which it is exchanged.

    Parameters
    ----------
    before, after : dict
        Opened snapshots, under the same codes.
    other_range : bool, optional
        True where the ranges are two machines: what an hour costs then goes with the machine.

    Raises
    ------
    InputError
        They are in different money.
    """
    money = [state["costs"]["currency"] for state in (before, after)]
    if money[0] != money[1]:
        raise InputError(
            "difference",
            f"one quote is in {money[0]}, the other in {money[1]}; accepted are two in one",
        )
    found = list(_all_swaps(before, after, other_range))
    return [swap for group in ORDER for swap in found if swap.group == group]


def _all_swaps(before: Document, after: Document, other_range: bool) -> Iterator[Swap]:
    routes = [[(step["name"], step["kind"]) for step in state["steps"].values()] for state in (before, after)]
    if routes[0] != routes[1]:
        told = [", ".join(name for name, _ in route) for route in routes]
        yield Swap(RECIPE, ((ROUTE,),), (Change(RECIPE, "route", "steps", "", *told),))
    for part in ("style", "enquiry", "range", "costs"):
        where = {"costs": "mill costs"}.get(part, part)
        group = {name: _group(part, name, other_range) for name in (*before[part], *after[part])}
        yield from _of_fields((part,), before[part], after[part], where, group)
    for name, step in after["steps"].items():
        if (name, step["kind"]) in routes[0]:
            group = dict.fromkeys(STEP_KINDS[step["kind"]].RECIPE, RECIPE)
            yield from _of_fields(("steps", name), before["steps"][name], step, name, group)
    for code, item in after["materials"].items():
        if code in before["materials"]:
            mine = before["materials"][code]
            priced = [name for name in OF_PRICE if mine.get(name) != item.get(name)]
            if priced:
                changes = [_change(PRICE, code, name, mine.get(name), item.get(name)) for name in priced]
                yield Swap(PRICE, tuple(("materials", code, name) for name in OF_PRICE), tuple(changes))
            yield from _of_fields(("materials", code), _unpriced(mine), _unpriced(item), code, {})
    for money, rate in after["exchange"].items():
        if before["exchange"].get(money, rate) != rate:
            change = _change(PRICE, money, "exchange_rate", before["exchange"][money], rate)
            yield Swap(PRICE, (("exchange", money),), (change,))
    for part, kind, named in (("depths", USAGE, "depth of shade"), ("drain", PRICE, "discharge")):
        if before[part] != after[part]:
            yield Swap(kind, ((part,),), tuple(_of_whole(before[part], after[part], kind, named)))


def _unpriced(item: Document) -> Document:
    return {name: value for name, value in item.items() if name not in OF_PRICE}


def _group(part: str, name: str, other_range: bool) -> str:
    if part == "costs" or name == "margin" or (name == HOUR and not other_range):
        return PRICE
    if part == "style":
        return USAGE if name in WASTES else CLOTH
    return LOT if part == "enquiry" and name not in SHARES else USAGE


def _of_fields(
    path: Path, before: Document, after: Document, where: str, groups: Mapping[str, str]
) -> Iterator[Swap]:
    """A swap for each field that differs and tells a number; usage, where no other kind is given."""
    for name in dict.fromkeys((*before, *after)):
        if name in TELLS_NOTHING or before.get(name) == after.get(name):
            continue
        change = _change(groups.get(name, USAGE), where, name, before.get(name), after.get(name))
        yield Swap(change.group, ((*path, name),), (change,))


def _change(group: str, where: str, name: str, before: Any, after: Any) -> Change:
    return Change(group, where, label(name), name if name in QUANTITIES else "", before, after)


def _of_whole(before: Document, after: Document, group: str, named: str) -> Iterator[Change]:
    """Each value that differs of what is exchanged as a whole: depths of shade, or collecting points."""
    found = [dict(_leaves(state)) for state in (before, after)]
    for path in dict.fromkeys((*found[0], *found[1])):
        one, other = (state.get(path) for state in found)
        if one != other and path[-1] not in TELLS_NOTHING:
            yield _change(group, " ".join((named, *path[:-1])), path[-1], one, other)


def _leaves(value: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    if isinstance(value, Mapping):
        for key, part in value.items():
            yield from _leaves(part, (*path, str(key)))
    elif isinstance(value, Sequence) and not isinstance(value, str):
        for number, part in enumerate(value, 1):
            yield from _leaves(part, (*path, str(number)))
    else:
        yield path, value


def exchanged(state: Document, after: Document, chosen: Iterable[Swap]) -> Document:
    """The state with some inputs of the state after; the state itself stays as it was."""
    made = dict(state)
    for path in (path for swap in chosen for path in swap.paths):
        if path == (ROUTE,):
            mine = made["steps"]
            made["steps"] = {
                name: mine[name] if mine.get(name, {}).get("kind") == step["kind"] else step
                for name, step in after["steps"].items()
            }
        else:
            _put(made, after, path)
    return made


def _put(made: Document, after: Document, path: Path) -> None:
    """Put the value at a path as the state after has it, or leave it out where that has none."""
    first, *rest = path
    if not rest:
        made[first] = after[first]
        return
    if len(rest) > 1 or rest[0] in after[first]:
        made[first] = dict(made[first])
        if len(rest) == 1:
            made[first][rest[0]] = after[first][rest[0]]
        elif rest[0] in made[first]:  # not a step that a new route has left out
            _put(made[first], after[first], tuple(rest))
    else:
        made[first] = {name: value for name, value in made[first].items() if name != rest[0]}
