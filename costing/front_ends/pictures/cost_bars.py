"""Pictures of cost in stacked bars: by step for each enquiry, and enquiries beside each other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING, Any

from costing.cost.quote import GROUPS
from costing.front_ends.pictures.frame import INK, PAPER, fill, name_bars, panels, refuse_many, write_picture
from costing.report import Table
from costing.report.money import ALL_STEPS, YARNS
from costing.report.table import capital

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH, BAR, AROUND = 26.0, 0.72, 2.4  # of a picture; height of a bar, and of what is around a panel [cm]
LABELLED = 0.07  # smallest part of the longest bar that has room for its number


def step_picture(path: Path, steps: Table, overwrite: bool = False) -> None:
    """Cost by step of a few enquiries without the yarns, a panel each, stacked by group.

    Parameters
    ----------
    path : Path
        Of the picture.
    steps : Table
        Cost by step.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        Too many enquiries for one picture, or the file is refused.
    """
    found = [(str(code), list(rows)) for code, rows in groupby(steps.rows, key=lambda row: row[0])]
    refuse_many(len(found), "--picture")
    places = _places(steps)
    shown = [group for group in GROUPS if group not in YARNS]
    blocks = []
    for code, rows in found:
        dyeing = [row for row in rows if row[1] != ALL_STEPS and any(row[places[group]] for group in shown)]
        (whole,) = [row for row in rows if row[1] == ALL_STEPS]
        rest = sum(whole[places[group]] for group in shown)
        title = f"{code}: cost by step without the yarns, {rest:.3f} of {whole[3]:.3f}"
        blocks.append((title, [str(row[1]) for row in dyeing], dyeing))
    height = sum(AROUND + BAR * len(names) for _, names, _ in blocks)

    def draw(figure: Figure) -> None:
        for axes, (title, names, rows) in zip(panels(figure, [len(rows) + 3 for *_, rows in blocks]), blocks):
            stack(axes, names, rows, shown, places)
            axes.set_title(title)
            axes.set_xlabel(_unit(steps))
        legend(figure, _used(shown, steps.rows, places))

    write_picture(path, (WIDTH, max(height, 11.0)), draw, overwrite)


def compare_picture(path: Path, groups: Table, prices: Sequence[float], overwrite: bool = False) -> None:
    """Enquiries beside each other: cost by group with its price, and once more without the yarns.

    Parameters
    ----------
    path : Path
        Of the picture.
    groups : Table
        Cost by group, a row for each enquiry.
    prices : sequence of float
        Price of each, on the same basis.
    overwrite : bool, optional
        True to replace an earlier picture.
    """
    places = _places(groups)
    names = [str(row[0]) for row in groups.rows]
    without = [group for group in GROUPS if group not in YARNS]

    def draw(figure: Figure) -> None:
        above, below = panels(figure, [1.0, 1.0])
        stack(above, names, groups.rows, GROUPS, places, labels=2)
        above.plot(prices, range(len(names)), "D", markersize=7, color=INK, markerfacecolor=PAPER)
        for at, (row, price) in enumerate(zip(groups.rows, prices)):
            above.annotate(f"price {price:.3f}\ncost {row[-1]:.3f}", (price, at), (8, 0), **BESIDE)
        above.set_xlim(right=1.16 * max(prices))
        above.set_title("Cost by group, and the price")
        stack(below, names, groups.rows, without, places)
        below.set_title("Cost by group, without the yarns")
        for axes in (above, below):
            axes.set_xlabel(_unit(groups))
        legend(figure, _used(GROUPS, groups.rows, places))

    write_picture(path, (WIDTH, max(2 * (AROUND + BAR * len(names)), 12.0)), draw, overwrite)


BESIDE: dict[str, Any] = {"textcoords": "offset points", "va": "center", "ha": "left", "fontsize": 8}


def stack(
    axes: Axes,
    names: Sequence[str],
    rows: Sequence[Sequence[Any]],
    groups: Sequence[str],
    places: dict[str, int],
    labels: int = 3,
) -> None:
    """Horizontal bars, each part filled by its group; a credit goes to the left of nothing.

    Parameters
    ----------
    axes : Axes
        To draw on.
    names : sequence of str
        Of the bars.
    rows : sequence of sequence
        One for each bar.
    groups : sequence of str
        Parts of a bar, in their order.
    places : dict
        Group -> its column.
    labels : int, optional
        Decimals.
    """
    sums = [sum(row[places[group]] for group in groups) for row in rows]
    longest = max(sums, default=0.0)
    right, left = [0.0] * len(rows), [0.0] * len(rows)
    for group in groups:
        parts = [float(row[places[group]]) for row in rows]
        starts = [right[at] if part >= 0.0 else left[at] for at, part in enumerate(parts)]
        drawn = [at for at, part in enumerate(parts) if part]  # nothing has no edge
        axes.barh(
            drawn, [parts[at] for at in drawn], left=[starts[at] for at in drawn], height=0.7, **fill(group)
        )
        for at, part in enumerate(parts):
            (right if part >= 0.0 else left)[at] += part
            if part >= LABELLED * longest:
                axes.text(starts[at] + part / 2.0, at, f"{part:.{labels}f}", **ON_BAR)
    for at, total in enumerate(sums):
        if labels == 3:
            axes.annotate(f"{total:.3f}", (right[at], at), (4, 0), fontweight="bold", **BESIDE)
    if labels == 3:
        axes.set_xlim(right=1.1 * max(right, default=1.0))
    name_bars(axes, names)


ON_BAR: dict[str, Any] = {
    "ha": "center",
    "va": "center",
    "fontsize": 7.5,
    "bbox": {"facecolor": PAPER, "edgecolor": "none", "pad": 1.2},
}


def legend(figure: Figure, groups: Sequence[str]) -> None:
    """The groups with their fills, in the order of the bars."""
    from matplotlib.patches import Patch

    handles = [Patch(label=capital(group), **fill(group)) for group in groups]
    figure.legend(handles=handles, loc="outside right upper", handlelength=2.4, handleheight=1.4)


def _used(groups: Sequence[str], rows: Sequence[Sequence[Any]], places: dict[str, int]) -> list[str]:
    return [group for group in groups if any(row[places[group]] for row in rows)]


def _places(table: Table) -> dict[str, int]:
    titles = [column.title.lower() for column in table.columns]
    return {group: titles.index(group) for group in GROUPS}


def _unit(table: Table) -> str:
    return f"{table.columns[_places(table)[GROUPS[0]]].unit} of finished cloth"
