"""Enquiries made from another: the same order with other recipes, ranges, styles or lengths."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

from costing.quantities import InputError
from costing.settings.mill import Enquiry, Mill

ROPES = "ropes"


def variants(
    mill: Mill,
    like: Enquiry,
    styles: Sequence[str] = (),
    recipes: Sequence[str] = (),
    ranges: Sequence[str] = (),
    lengths: Sequence[float] = (),
) -> list[Enquiry]:
    """The order of an enquiry with every recipe on every range in every style and length that is named.

    How the lot is run stays as it is: stops, bath at start and end, margin, basis of the length. One set
    runs on a range that is not for ropes. What is not named stays as it is, too. Where one recipe
    alone is named, and one length at most, the recipe of the enquiry itself comes first, to be compared with.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    like : Enquiry
        The enquiry that gives everything that is not named.
    styles, recipes, ranges : sequence of str, optional
        Codes of the book.
    lengths : sequence of float, optional
        Lengths ordered [m].

    Returns
    -------
    list of Enquiry
        Each with a code of its own, made of what tells it from the others.

    Raises
    ------
    InputError
        A code that is not in the book, or nothing that differs.
    """
    styles, recipes, ranges = _codes(mill, styles, recipes, ranges)
    only_recipe = len(set(recipes)) == 1 and all(len(set(named)) < 2 for named in (styles, ranges, lengths))
    asked = [
        list(dict.fromkeys(styles or [like.style])),
        list(dict.fromkeys([like.recipe, *recipes] if only_recipe or not recipes else recipes)),
        list(dict.fromkeys(ranges or [like.range])),
    ]
    orders: list[float | None] = list(dict.fromkeys(lengths)) or [None]
    found = []
    for (style, recipe, range_), length in product(product(*asked), orders):
        parts = (recipe, style, range_, "" if length is None else f"{length:,.10g} m")
        several = (len(asked[1]) > 1, len(asked[0]) > 1, len(asked[2]) > 1, len(orders) > 1)
        code = ", ".join(part for part, told in zip(parts, several) if told)
        about = f"as {like.code}: {style}, {recipe}, {range_}"
        found.append(variant(mill, like, code, about, style, recipe, range_, length))
    if len(found) < 2:
        raise InputError(
            "compare",
            f"only {found[0].style} with {found[0].recipe} on {found[0].range} is named, and nothing to "
            "compare it with; accepted are two recipes, ranges, styles or lengths, or more",
        )
    return found


def variant(
    mill: Mill,
    like: Enquiry,
    code: str,
    description: str,
    style: str,
    recipe: str,
    range_: str,
    length: float | None = None,
) -> Enquiry:
    """The order of an enquiry in another style, with another recipe or on another range.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    like : Enquiry
        Gives everything that is not named; one set runs on a range that is not for ropes.
    code, description : str
        Of the new enquiry.
    style, recipe, range_ : str
        Codes of the book, as it spells them.
    length : float, optional
        Length ordered [m].
    """
    on_ropes = mill.ranges[range_].yarn_form == ROPES
    return replace(
        like,
        code=code,
        description=description,
        style=style,
        recipe=recipe,
        range=range_,
        order_length=like.order_length if length is None else length,
        order_unit=like.order_unit if length is None else "m",
        sets_side_by_side=like.sets_side_by_side if on_ropes else 1.0,
    )


def most_like(
    mill: Mill,
    styles: Sequence[str] = (),
    recipes: Sequence[str] = (),
    ranges: Sequence[str] = (),
    lengths: Sequence[float] = (),
) -> Enquiry:
    """The enquiry of the book that has most of what is asked; of equals the first.

    Raises
    ------
    InputError
        The book holds no enquiry.
    """
    styles, recipes, ranges = _codes(mill, styles, recipes, ranges)

    def alike(enquiry: Enquiry) -> int:
        return sum(
            (
                enquiry.style in styles,
                enquiry.recipe in recipes,
                enquiry.range in ranges,
                enquiry.order_length in lengths,
            )
        )

    if not mill.enquiries:
        raise InputError(
            "Enquiries", "the book holds no enquiry to take the lot from; accepted is one or more"
        )
    return max(mill.enquiries.values(), key=alike)


def _codes(
    mill: Mill, styles: Sequence[str], recipes: Sequence[str], ranges: Sequence[str]
) -> tuple[list[str], list[str], list[str]]:
    """The codes as the book spells them."""
    return (
        [mill.style(code, "--style").code for code in styles],
        [mill.recipe(code, "--recipe").code for code in recipes],
        [mill.range(code, "--range").code for code in ranges],
    )
