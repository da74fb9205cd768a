"""The picture of what drives a cost or a use: a ranked bar for each driver, from its low to its high end."""

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
from costing.many.band import Band
from costing.many.quotes import COST
from costing.many.tables import Ranged, driver_table
from costing.many.use_band import RangedUse, use_tables
from costing.report import Table, costs_of
from costing.settings.mill import Mill

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SHOWN = 12  # drivers of an enquiry
WIDTH, BAR, AROUND = 26.0, 1.0, 3.0  # [cm]
SEEN = 0.01  # smallest bar that is told by its letter, of the longest
LOW, HIGH = "low end", "high end"


class DriverBar(NamedTuple):
    """One driver: its name with its ends, and the result at each of them; not a number where refused."""

    name: str
    at_low: float
    at_high: float
    share: float


class DriverPanel(NamedTuple):
    """What drives one result.

    Attributes
    ----------
    title, axis : str
        Heading, and the result with its unit.
    what : str
        Cost or use.
    typical : float
        As in the book.
    digits : int
        Decimals of it.
    bars : list of DriverBar
        The strongest first.
    """

    title: str
    axis: str
    what: str
    typical: float
    digits: int
    bars: list[DriverBar]


def cost_panel(mill: Mill, item: Ranged) -> DriverPanel:
    """What drives the cost of an enquiry."""
    title = f"{item.enquiry.code}: what drives the cost; {_nine_of_ten(item.bands[COST], 3)}"
    axis = f"{costs_of(mill).currency} per {item.basis}"
    bars = driver_bars(driver_table(mill, item, SHOWN))
    return DriverPanel(title, axis, "cost", item.first_order.typical, 3, bars)


def use_panel(item: RangedUse) -> DriverPanel:
    """What drives the use of a product, water, steam or power."""
    title = f"{item.enquiry.code}: what drives the use; {_nine_of_ten(item.band, item.digits)}"
    axis = f"{item.what}, {item.unit} of saleable grey yarn"
    _, drivers = use_tables(item)
    bars = driver_bars(drivers)[:SHOWN]
    return DriverPanel(title, axis, "use", item.first_order.typical, item.digits, bars)


def _nine_of_ten(band: Band, digits: int) -> str:
    return f"9 of 10 draws lie between {band.low:.{digits}f} and {band.high:.{digits}f}"


def driver_bars(drivers: Table) -> list[DriverBar]:
    """The drivers of a table that move the result at all."""
    found = []
    for name, low, _, high, at_low, at_high, _, share, _ in drivers.rows:
        if not share:
            continue
        label = f"{name}\n{low} to {high}" if low else str(name)
        at_low, at_high = (math.nan if end is None else float(end) for end in (at_low, at_high))
        found.append(DriverBar(label, at_low, at_high, float(share)))
    return found


def driver_picture(path: Path, found: Sequence[DriverPanel], overwrite: bool = False) -> None:
    """What drives a result of a few enquiries, a panel each.

    Parameters
    ----------
    path : Path
        Of the picture.
    found : sequence of DriverPanel
        What each shows.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        Too many enquiries for one picture, or the file is refused.
    """
    refuse_many(len(found), "--picture")
    heights = [AROUND + BAR * max(len(panel.bars), 1) for panel in found]

    def draw(figure: Figure) -> None:
        for axes, panel in zip(panels(figure, heights), found):
            tornado(axes, panel)
            axes.set_title(panel.title)
            axes.set_xlabel(f"{panel.axis}; the line is the book, {panel.typical:.{panel.digits}f}")

    write_picture(path, (WIDTH, sum(heights)), draw, overwrite)


def tornado(axes: Axes, panel: DriverPanel) -> None:
    """Bars about the result of the book, each end told apart by its fill and by a letter."""
    bars, typical = panel.bars, panel.typical
    ends = [end for bar in bars for end in (bar.at_low, bar.at_high) if not math.isnan(end)]
    reach = max((abs(end - typical) for end in ends), default=0.0) or 0.01 * abs(typical) or 1.0
    for at, bar in enumerate(bars):
        for end, value, letter in ((LOW, bar.at_low, "L"), (HIGH, bar.at_high, "H")):
            if math.isnan(value):
                continue
            axes.barh(at, value - typical, left=typical, height=0.66, **fill(end))
            if abs(value - typical) < SEEN * reach:
                continue  # its letter would stand on that of the other end
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
    axes.set_xlim(typical - 1.12 * reach, typical + 1.3 * reach)
    name_bars(axes, [bar.name for bar in bars])
    for at, bar in enumerate(bars):
        said = f"{bar.share:.1f} %"
        if math.isnan(bar.at_low) or math.isnan(bar.at_high):
            said += ", an end is refused"
        axes.text(0.995, at, said, transform=axes.get_yaxis_transform(), ha="right", va="center", fontsize=8)
    if bars:
        _legend(axes, panel.what)


def _legend(axes: Axes, what: str) -> None:
    """Both fills, whatever ends the first driver has, and what stands at the right."""
    from matplotlib.patches import Patch

    handles = [Patch(label=end, **fill(end)) for end in (LOW, HIGH)]
    axes.legend(
        handles=handles, loc="upper left", bbox_to_anchor=(1.0, 1.0), title=f"{what} at the", alignment="left"
    )
    axes.text(1.01, 0.0, "right: share of\nthe spread", transform=axes.transAxes, fontsize=8, va="bottom")
