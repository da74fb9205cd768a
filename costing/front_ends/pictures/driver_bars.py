"""The picture of what drives a cost: a ranked bar for each driver, from its low end to its high end."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from costing.front_ends.pictures.frame import (
    INK,
    fill,
    name_bars,
    panels,
    refuse_many,
    write_picture,
)
from costing.many.quotes import COST
from costing.many.tables import Ranged, driver_table
from costing.settings.mill import Mill

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SHOWN = 12  # drivers of an enquiry
WIDTH, BAR, AROUND = 26.0, 1.0, 3.0  # [cm]
LOW, HIGH = "low end", "high end"


class DriverBar(NamedTuple):
    """One driver: its name with its ends, and the cost at each of them; not a number where refused."""

    name: str
    at_low: float
    at_high: float
    share: float


def driver_bars(mill: Mill, item: Ranged, most: int = SHOWN) -> list[DriverBar]:
    """The strongest drivers of an enquiry, as the table of drivers tells them."""
    found = []
    for name, low, _, high, at_low, at_high, _, share, _ in driver_table(mill, item, most).rows:
        if not share:
            continue
        label = f"{name}\n{low} to {high}" if low else str(name)
        at_low, at_high = (math.nan if end is None else float(end) for end in (at_low, at_high))
        found.append(DriverBar(label, at_low, at_high, float(share)))
    return found


def driver_picture(path: Path, mill: Mill, results: Sequence[Ranged], overwrite: bool = False) -> None:
    """What drives the cost of a few enquiries, a panel each.

    Parameters
    ----------
    path : Path
        Of the picture.
    mill : Mill
        The mill's book.
    results : sequence of Ranged
        The enquiries with their ranges.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        Too many enquiries for one picture, or the file is refused.
    """
    refuse_many(len(results), "--picture")
    found = [(item, driver_bars(mill, item)) for item in results]
    heights = [AROUND + BAR * max(len(bars), 1) for _, bars in found]

    def draw(figure: Figure) -> None:
        for axes, (item, bars) in zip(panels(figure, heights), found):
            band = item.bands[COST]
            currency = mill.costs.currency if mill.costs is not None else "money"
            tornado(axes, bars, item.first_order.typical)
            axes.set_title(
                f"{item.enquiry.code}: what drives the cost; 9 of 10 draws lie between {band.low:.3f} and "
                f"{band.high:.3f}"
            )
            axes.set_xlabel(
                f"{currency} per {item.basis}; the line is the book, {item.first_order.typical:.3f}"
            )

    write_picture(path, (WIDTH, sum(heights)), draw, overwrite)


def tornado(axes: Axes, bars: Sequence[DriverBar], typical: float) -> None:
    """Bars about the cost of the book, each end told apart by its fill and by a letter."""
    for at, bar in enumerate(bars):
        for end, value, letter in ((LOW, bar.at_low, "L"), (HIGH, bar.at_high, "H")):
            if math.isnan(value):
                continue
            axes.barh(
                at, value - typical, left=typical, height=0.66, **fill(end), label=end if not at else ""
            )
            to_right = value >= typical
            axes.annotate(
                letter,
                (value, at),
                (3 if to_right else -3, 0),
                textcoords="offset points",
                ha="left" if to_right else "right",
                va="center",
                fontsize=7.5,
            )
    axes.axvline(typical, color=INK, linewidth=1.2)
    ends = [end for bar in bars for end in (bar.at_low, bar.at_high) if not math.isnan(end)]
    reach = max((abs(end - typical) for end in ends), default=0.0) or 0.01 * abs(typical) or 1.0
    axes.set_xlim(typical - 1.12 * reach, typical + 1.3 * reach)
    name_bars(axes, [bar.name for bar in bars])
    for at, bar in enumerate(bars):
        said = f"{bar.share:.1f} %"
        if math.isnan(bar.at_low) or math.isnan(bar.at_high):
            said += ", an end is refused"
        axes.text(0.995, at, said, transform=axes.get_yaxis_transform(), ha="right", va="center", fontsize=8)
    if bars:
        axes.legend(loc="upper left", bbox_to_anchor=(1.0, 1.0), title="cost at the", alignment="left")
        axes.text(1.01, 0.0, "right: share of\nthe spread", transform=axes.transAxes, fontsize=8, va="bottom")
