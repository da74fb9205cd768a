"""Every number that an enquiry rests on, each with its place, and the same enquiry with other numbers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields, replace
from functools import cache
from typing import Any, NamedTuple

from costing.quantities import QUANTITIES, InputError
from costing.settings.mill import Enquiry, Mill
from costing.settings.product_fields import PRODUCT_FIELDS
from costing.settings.quality import SHARES, VALUES, sorting_of

STYLE, ENQUIRY, RANGE, STEP, MATERIAL, COSTS, EXCHANGE, DEPTH = (
    "style",
    "enquiry",
    "range",
    "step",
    "material",
    "mill costs",
    "exchange rate",
    "depth of shade",
)


class Place(NamedTuple):
    """Where a number of an enquiry stands.

    Attributes
    ----------
    kind : str
        Style, enquiry, range, step, material, mill costs, exchange rate or depth of shade.
    code : str
        Name of the step or of the depth, code of the material, or the currency; "" where there is
        only one of the kind.
    name : str
        A name of the table of quantities.
    """

    kind: str
    code: str
    name: str


def inputs_of(mill: Mill, enquiry: Enquiry) -> dict[Place, float]:
    """All numbers that an enquiry rests on, in house units; what is empty is left out.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    enquiry : Enquiry
        Of that book.

    Returns
    -------
    dict
        Place -> number.

    Raises
    ------
    InputError
        An unknown code, or a setting that is refused.
    """
    style, recipe, range_ = mill.style(enquiry.style), mill.recipe(enquiry.recipe), mill.range(enquiry.range)
    steps = mill.steps_of(recipe, range_)
    found: dict[Place, float] = {}
    for kind, item in ((ENQUIRY, enquiry), (STYLE, style), (RANGE, range_), (COSTS, mill.costs)):
        if item is not None:
            found.update({Place(kind, "", name): value for name, value in _numbers(item).items()})
    for step in steps:
        found.update({Place(STEP, step.name, name): value for name, value in _numbers(step).items()})
    used = materials_of(mill, enquiry)
    for code in used:
        found.update(
            {Place(MATERIAL, code, name): value for name, value in _numbers(mill.materials[code]).items()}
        )
    if mill.costs is not None:
        currencies = {mill.materials[code].currency for code in used}
        for currency, rate in mill.costs.exchange_rates.items():
            if currency in currencies:
                found[Place(EXCHANGE, currency, "exchange_rate")] = rate
    found.update(_of_depth(mill, enquiry, steps))
    return found


def _of_depth(mill: Mill, enquiry: Enquiry, steps: Sequence[Any]) -> dict[Place, float]:
    """Shares and values of its depth of shade that the enquiry rests on."""
    sorting = sorting_of(enquiry, steps, mill.depths)
    found = {}
    for share, value in zip(SHARES, VALUES):
        if getattr(sorting, share) == 0.0:
            continue
        if getattr(enquiry, share) is None:
            found[Place(DEPTH, sorting.depth, share)] = getattr(sorting, share)
        found[Place(DEPTH, sorting.depth, value)] = getattr(sorting, value)
    return found


def materials_of(mill: Mill, enquiry: Enquiry) -> list[str]:
    """Codes of the products that an enquiry uses, in the order of the price list."""
    style, recipe, range_ = mill.style(enquiry.style), mill.recipe(enquiry.recipe), mill.range(enquiry.range)
    used = {style.warp_yarn, style.weft_yarn}
    for step in mill.steps_of(recipe, range_):
        used.update(getattr(step, name) for name in PRODUCT_FIELDS if hasattr(step, name))
    return [code for code in mill.materials if code in used]


def with_inputs(mill: Mill, enquiry: Enquiry, values: Mapping[Place, Any]) -> tuple[Mill, Enquiry]:
    """The same enquiry of the same mill, with other numbers in some places; checked like any other.

    Parameters
    ----------
    mill, enquiry : Mill, Enquiry
        The mill's book, and an enquiry of it.
    values : mapping
        Place -> number or array of numbers, in the house unit.

    Returns
    -------
    (Mill, Enquiry)
        For this enquiry alone: other enquiries of that mill are not to be run.

    Raises
    ------
    InputError
        A number is refused, or its place is not one of this enquiry.
    """
    of: dict[tuple[str, str], dict[str, Any]] = {}
    for place, value in values.items():
        of.setdefault((place.kind, place.code), {})[place.name] = value
    style, recipe, range_ = mill.style(enquiry.style), mill.recipe(enquiry.recipe), mill.range(enquiry.range)
    steps = [_with(step, of.pop((STEP, step.name), None)) for step in mill.steps_of(recipe, range_)]
    other = replace(mill)
    other.styles = {**mill.styles, style.code: _with(style, of.pop((STYLE, ""), None))}
    other.ranges = {**mill.ranges, range_.code: _with(range_, of.pop((RANGE, ""), None))}
    other.costs = _with(mill.costs, of.pop((COSTS, ""), None))
    other._built = {(recipe.code, range_.code): steps}
    products = {
        code: of.pop((MATERIAL, code))
        for kind, code in list(of)
        if kind == MATERIAL and code in mill.materials
    }
    if products:
        other.materials = dict(mill.materials)
        for code, changes in products.items():
            other.materials[code] = _with(mill.materials[code], changes)
    asked = _with(enquiry, of.pop((ENQUIRY, ""), None))
    other.enquiries = {**mill.enquiries, asked.code: asked}
    rates = {code: of.pop((EXCHANGE, code))["exchange_rate"] for kind, code in list(of) if kind == EXCHANGE}
    if rates and other.costs is not None:
        other.costs = replace(other.costs, exchange_rates={**other.costs.exchange_rates, **rates})
    for code in [code for kind, code in of if kind == DEPTH and code in mill.depths]:
        other.depths = {**other.depths, code: _with(other.depths[code], of.pop((DEPTH, code)))}
    if of:
        kind, code = next(iter(of))
        raise InputError("", f"{kind} {code!r} is no part of enquiry {enquiry.code}")
    return other, asked


def _numbers(item: Any) -> dict[str, float]:
    """The numbers of a setting; an empty one is left out."""
    given = {name: getattr(item, name) for name in _names(type(item))}  # type: ignore[arg-type]
    return {name: value for name, value in given.items() if value is not None}


@cache
def _names(kind: type) -> tuple[str, ...]:
    """Fields of a kind of setting that hold a number."""
    return tuple(field.name for field in fields(kind) if field.name in QUANTITIES)


def _with(item: Any, changes: Mapping[str, Any] | None) -> Any:
    return item if not changes else replace(item, **changes)
