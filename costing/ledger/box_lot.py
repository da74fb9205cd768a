"""What a lot adds for a box of one liquor: its fill, and what is dumped or handed on at the end."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Callable

from costing.ledger.lot_lines import (
    HANDED_ON,
    TAKEN_OVER,
    post_built_up,
    post_heat_up,
    post_salt,
    send_bath_to_drain,
)
from costing.ledger.plan import Plan
from costing.process.bath_content import BathContent
from costing.process.box import Box, post_fill
from costing.process.dye_box import box_of_dye
from costing.process.mixing import post_water
from costing.process.postings import EARLIER_LOT, NEXT_LOT, Book, Posting
from costing.process.size_box import post_size, size_liquor
from costing.process.treatment import box_of_treatment
from costing.process.yarn import YarnState
from costing.settings.box_steps import Treatment
from costing.settings.dye_box_step import DyeBox
from costing.settings.material import Material
from costing.settings.sizing_step import Sizing

FIRST_FILL = "first fill"

# Kind of step -> the box behind it.
BOXES: dict[str, Callable[[Any, YarnState, Mapping[str, Material]], Box]] = {
    DyeBox.KIND: box_of_dye,
    Treatment.KIND: lambda step, yarn, materials: box_of_treatment(step, materials),
}


def size_fill(step: Sizing, yarn: YarnState, materials: Mapping[str, Material], plan: Plan) -> list[Posting]:
    """Lines of a size box for the whole lot: it is filled once, and the rest is thrown away.

    Parameters
    ----------
    step : Sizing
        Settings.
    yarn : YarnState
        The warp that enters the box.
    materials : mapping
        Code -> product of the mill's list.
    plan : Plan
        Of the order.

    Returns
    -------
    list of Posting
        Amounts for the lot [kg].
    """
    book, volume = Book(step.name), step.size_box_volume
    dry_size = volume * size_liquor(step, yarn).box_strength
    post_size(book, step, materials, FIRST_FILL, dry_size)
    post_water(book, FIRST_FILL, volume * step.size_density - dry_size - book.product_water)
    post_heat_up(book, FIRST_FILL, volume, step.box_temperature, plan)
    send_bath_to_drain(book, f"{step.name} dump", "size box dumped")
    return book.postings


def box_fill(box: Box, plan: Plan, content: BathContent) -> list[Posting]:
    """Lines of one box for the whole lot.

    Parameters
    ----------
    box : Box
        The box.
    plan : Plan
        Of the order.
    content : BathContent
        What stands in it.

    Returns
    -------
    list of Posting
        Amounts for the lot [kg].
    """
    book, lot = Book(box.name), plan.around.lot
    taken_over = box.volume * (box.kept if lot.standing_bath else 0.0)
    handed_on = box.volume * (box.kept if lot.kept_bath else 0.0)
    new = box.volume - taken_over
    post_fill(book, box, TAKEN_OVER, taken_over, EARLIER_LOT)
    post_salt(book, TAKEN_OVER, taken_over, content.earlier, content.fill, EARLIER_LOT)
    post_fill(book, box, FIRST_FILL, new)
    post_heat_up(book, FIRST_FILL, new, box.temperature, plan)
    post_built_up(book, content, plan)
    post_fill(book, box, HANDED_ON, -handed_on, NEXT_LOT)
    post_salt(book, HANDED_ON, -handed_on, content.handed_on, content.fill, NEXT_LOT)
    send_bath_to_drain(book, f"{box.name} dump", "box dumped")
    return book.postings
