"""The picture of a purchase plan: stock of a few materials against re-order point and safety stock."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from costing.front_ends.pictures.frame import INK, PAPER, panels, write_picture
from costing.purchasing.material_plan import MaterialPlan

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH, HEIGHT = 26.0, 7.5  # of one panel [cm]


def stock_picture(path: Path, plans: Sequence[MaterialPlan], overwrite: bool = False) -> None:
    """A panel for each material, below each other.

    Parameters
    ----------
    path : Path
        Of the picture.
    plans : sequence of MaterialPlan
        One or a few.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        The file is refused.
    """

    def draw(figure: Figure) -> None:
        for axes, plan in zip(panels(figure, [1.0] * len(plans)), plans):
            _panel(axes, plan)

    write_picture(path, (WIDTH, HEIGHT * len(plans)), draw, overwrite)


def _panel(axes: Axes, plan: MaterialPlan) -> None:
    from matplotlib.dates import date2num

    def place(day: datetime.date) -> float:
        return float(date2num(day))  # type: ignore[no-untyped-call]

    first = place(plan.start)
    days = [first + at for at in range(len(plan.left))]
    axes.xaxis_date()
    axes.step(
        days, plan.left, where="post", color=INK, linewidth=1.8, label="stock behind the need of the day"
    )
    if plan.terms is not None:
        axes.axhline(
            plan.reorder,
            color=INK,
            linewidth=1.0,
            linestyle="--",
            label=f"re-order point: {plan.reorder:,.0f}",
        )
        axes.axhline(
            plan.safety, color=INK, linewidth=1.0, linestyle=":", label=f"safety stock: {plan.safety:,.0f}"
        )
    came = [((one.arrival - plan.start).days, one.late) for one in plan.proposals]
    for late, shape, name in ((False, "^", "a proposed order comes"), (True, "v", "comes late")):
        at = [day for day, is_late in came if is_late is late]
        if at:
            high = [plan.left[day] for day in at]
            axes.plot(
                [days[day] for day in at],
                high,
                shape,
                color=INK,
                markerfacecolor=PAPER,
                markersize=8,
                label=name,
            )
    short = [place(one.first) for one in plan.shortages]
    if short:
        axes.plot(short, [0.0] * len(short), "x", color=INK, markersize=9, clip_on=False, label="runs out")
    axes.set_ylim(bottom=0.0)
    axes.set_xlim(days[0], days[-1])
    axes.set_ylabel("kg")
    axes.set_title(f"{plan.material}: stock to {plan.start + datetime.timedelta(days=len(days) - 1)}")
    axes.grid()
    axes.legend(loc="center left", bbox_to_anchor=(1.01, 0.5))
