"""A picture of the way from one cost to another: each effect from where the one before it ends."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from costing.front_ends.pictures.frame import INK, fill, name_bars, panels, write_picture
from costing.front_ends.waterfall_axis import BELOW, axis_of
from costing.quantities import InputError
from costing.report import Table
from costing.report.table import capital

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WIDTH, BAR, AROUND = 24.0, 0.95, 3.6  # of the picture; height of a bar, and of what is around [cm]


def waterfall_picture(path: Path, title: str, table: Table, overwrite: bool = False) -> None:
    """Draw a waterfall.

    Parameters
    ----------
    path : Path
        Of the picture.
    title : str
        Above it.
    table : Table
        Name, amount, what is below the bar, and the bar by its kind.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        A cost below 0, on which no bar stands; or the file is refused.
    """
    axis = axis_of(table)
    if axis is None:
        raise InputError("--picture", "a cost is 0 or below; accepted are costs above 0")
    kinds = [column.title.lower() for column in table.columns[BELOW + 1 :]]

    def draw(figure: Figure) -> None:
        from matplotlib.patches import Patch

        (axes,) = panels(figure, [1.0])
        ends = []
        for at, row in enumerate(table.rows):
            below = row[BELOW]
            for kind, bar in zip(kinds, row[BELOW + 1 :], strict=True):
                if bar:
                    start = max(below, axis.begin)
                    axes.barh(at, below + bar - start, left=start, height=0.62, **fill(kind))
            ends.append(sum(row[BELOW:]) if row[BELOW + 3] == 0.0 else below)
        for at, end in enumerate(ends[:-1]):  # from each bar to the next
            axes.plot([end, end], [at + 0.31, at + 0.69], color=INK, linewidth=0.8)
        name_bars(axes, [str(row[0]) for row in table.rows])
        axes.set_xlim(left=axis.begin)
        axes.set_title(title)
        axes.set_xlabel(axis.title)
        shown = [kind for at, kind in enumerate(kinds, BELOW + 1) if any(row[at] for row in table.rows)]
        handles = [Patch(label=capital(kind), **fill(kind)) for kind in shown]
        figure.legend(handles=handles, loc="outside lower center", ncols=len(handles), handlelength=2.4)

    write_picture(path, (WIDTH, AROUND + BAR * len(table.rows)), draw, overwrite)
