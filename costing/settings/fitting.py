"""Whether a range can run a recipe: the form of its yarn, and the steps that it has."""

from __future__ import annotations

from collections.abc import Sequence

from costing.quantities import InputError, listed
from costing.settings.mill import Mill, Range, Recipe
from costing.settings.vessel_steps import VesselBath

VESSEL = "beams in a vessel"


def check_fits(mill: Mill, recipe: Recipe, range_: Range) -> None:
    """Refuse a recipe on a range that cannot run it.

    A step counts as one that the range does not have where none of its cells is filled while another range of
    the book fills some: typical values of a machine that is not there would give a price all the same. A step
    that no range fills is left to a warning.

    Parameters
    ----------
    mill : Mill
        The book.
    recipe, range_ : Recipe, Range
        Of it.

    Raises
    ------
    InputError
        With the ranges that would do.
    """
    route = mill.route(recipe.route, mill.places.get(("recipe", recipe.code), ""))
    why = _reason(mill, route, range_)
    if why:
        fit = [code for code, other in mill.ranges.items() if not _reason(mill, route, other)]
        said = (
            f"one that has them all: {listed(fit)}" if fit else "a range that has them all; the book has none"
        )
        raise InputError(
            f"range {range_.code}", f"recipe {recipe.code} does not run here: {why}; accepted is {said}"
        )


def _reason(mill: Mill, route: Sequence[tuple[str, str]], range_: Range) -> str:
    """Why a range cannot run a route; "" where it can."""
    if range_.yarn_form != VESSEL:
        baths = [name for name, kind in route if kind == VesselBath.KIND]
        if baths:
            return (
                f"{_steps(baths)} bath{'s' * (len(baths) > 1)} of a vessel, and {range_.code} runs "
                f"{range_.yarn_form}"
            )
    lacking = [
        name
        for name, _ in route
        if not _filled(mill, range_.code, name) and any(_filled(mill, other, name) for other in mill.ranges)
    ]
    return f"{range_.code} has no cell filled for {_named(lacking)} on the sheet Ranges" if lacking else ""


def _filled(mill: Mill, range_: str, step: str) -> bool:
    return any(entry.value not in (None, "") for entry in mill.range_steps.get((range_, step), {}).values())


def _named(steps: Sequence[str]) -> str:
    return f"the step{'s' * (len(steps) > 1)} {', '.join(repr(name) for name in steps)}"


def _steps(steps: Sequence[str]) -> str:
    return f"{_named(steps)} {'are' if len(steps) > 1 else 'is a'}"
