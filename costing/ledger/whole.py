"""The whole ledger of an enquiry: the route at steady state and the lot, per kilogram of saleable yarn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Callable

from costing.ledger.closure import check_closed
from costing.ledger.lot import lot_lines
from costing.ledger.plan import Plan, plan_order
from costing.ledger.plan_cloth import ClothPlan, plan_cloth
from costing.ledger.plan_running import CLOTH
from costing.ledger.route_run import GreyYarn, Run, run_route
from costing.process.postings import AIR, GREY, PROCESS, REACTION, YARN, Line, Posting, named
from costing.settings.fitting import check_fits
from costing.settings.mill import Enquiry, Mill, Range, Recipe
from costing.settings.quality import Sorting, sorting_of
from costing.settings.steps import Step
from costing.settings.style import Style
from costing.settings.vessel_steps import bath_hours

EXTRA = "leader and off-shade metres"
UNSALEABLE = "unsaleable yarn"


@dataclass(frozen=True)
class Ledger:
    """Every posting of one enquiry.

    Attributes
    ----------
    postings : list of Posting
        Per kilogram of saleable grey yarn [kg, kWh, h]; `lines` are the same, to be read by name.
    enquiry, style, recipe, range
        What was asked.
    steps : list of Step
        The route with its settings.
    fabric, plan
        Cloth and order in numbers.
    dyed_yarn_per_grey : float
        Dyed yarn from one kilogram of grey yarn [kg/kg].
    saleable_warp_per_metre : float
        Saleable grey warp in one metre of loom-state cloth [kg/m].
    run : Run
        The route behind it: entering yarns, dye bath feeds, what stands in the boxes.
    sorting : Sorting
        What of the metres made is of first quality. Saleable yarn is that of all of them.
    """

    postings: list[Posting]
    enquiry: Enquiry
    style: Style
    recipe: Recipe
    range: Range
    steps: list[Step]
    fabric: ClothPlan
    plan: Plan
    dyed_yarn_per_grey: float
    saleable_warp_per_metre: float
    run: Run
    sorting: Sorting

    @cached_property
    def lines(self) -> list[Line]:
        """The postings, to be read by name."""
        return named(self.postings)

    def select(self, keep: Callable[[Line], bool]) -> list[Line]:
        """The lines that a test keeps."""
        return [line for line in self.lines if keep(line)]

    def used(self, material: str) -> float:
        """Product as delivered, per kilogram of saleable grey yarn, all causes [kg/kg]."""
        return sum(line.amount for line in self.lines if line.material == material and is_bought(line))

    def to_account(self, account: str, substance: str) -> float:
        """A substance that ends in an account [kg/kg]."""
        return sum(
            line.amount for line in self.lines if line.destination == account and line.substance == substance
        )


INTERNAL = frozenset((GREY, AIR, REACTION, PROCESS))


def is_bought(line: Line) -> bool:
    """True for lines that bring something the mill pays for, or that another lot pays."""
    return bool(line.material) and line.source not in INTERNAL


def open_ledger(mill: Mill, enquiry: Enquiry) -> Ledger:
    """Run an enquiry: plan it, run its route, add its lot.

    Parameters
    ----------
    mill : Mill
        The mill's book.
    enquiry : Enquiry
        Of that book.

    Returns
    -------
    Ledger
        Per kilogram of saleable grey yarn.

    Raises
    ------
    InputError
        An unknown code, a missing or refused setting, a plan or a step that cannot run.
    """
    where = mill.places.get(("enquiry", enquiry.code), f"enquiry {enquiry.code}")
    style = mill.style(enquiry.style, where)
    recipe = mill.recipe(enquiry.recipe, where)
    range_ = mill.range(enquiry.range, where)
    check_fits(mill, recipe, range_)
    steps = mill.steps_of(recipe, range_)
    fabric = plan_cloth(style, range_.stretch)
    sorting = sorting_of(enquiry, steps, mill.depths)
    plan = plan_order(style, fabric, enquiry, range_, bath_hours(steps), sorting)
    run = run_route(steps, mill.materials, plan.around, yarns_of(style, fabric, range_))
    extra = _extra(run.postings, plan.grey_mass_dyed / plan.saleable_mass - 1.0)
    share = 1.0 / plan.saleable_mass
    lot = [
        (step, material, substance, cause, amount * share, source, destination)
        for step, material, substance, cause, amount, source, destination in lot_lines(
            steps, mill.materials, plan, range_, run
        )
    ]
    # The postings for leaders are those of the run once more: what closes there closes here.
    check_closed(run.postings, mill.materials, f"enquiry {enquiry.code}")
    check_closed(lot, mill.materials, f"enquiry {enquiry.code}, lot")
    return Ledger(
        [*run.postings, *extra, *lot],
        enquiry,
        style,
        recipe,
        range_,
        steps,
        fabric,
        plan,
        run.dyed_yarn_per_grey,
        plan.saleable_mass / plan.loom_state_length,
        run,
        sorting,
    )


def yarns_of(style: Style, fabric: ClothPlan, range_: Range) -> list[GreyYarn]:
    """What one kilogram that enters the range is made of: the warp, or warp and weft of a cloth."""
    if range_.yarn_form != CLOTH:
        return [GreyYarn("warp yarn", style.warp_yarn)]
    whole = fabric.warp_on_cloth + fabric.weft_on_cloth
    return [
        GreyYarn("warp yarn", style.warp_yarn, fabric.warp_on_cloth / whole, style.warp_waste),
        GreyYarn("weft yarn", style.weft_yarn, fabric.weft_on_cloth / whole, style.weft_waste),
    ]


def _extra(postings: Sequence[Posting], share: float) -> list[Posting]:
    """The run's postings once more for the yarn that is dyed and not sold, causes put together."""
    if share == 0.0:
        return []
    sums: dict[tuple[str, str, str, str, str], float] = {}
    for step, material, substance, _, amount, source, destination in postings:
        key = (step, material, substance, source, UNSALEABLE if destination == YARN else destination)
        sums[key] = sums.get(key, 0.0) + amount
    return [
        (step, material, substance, EXTRA, amount * share, source, destination)
        for (step, material, substance, source, destination), amount in sums.items()
    ]
