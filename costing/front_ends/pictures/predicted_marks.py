"""The picture of a calibration: what is predicted against what was issued, before and after."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from costing.front_ends.pictures.frame import INK, PAPER, RULE, write_picture
from costing.many.calibration import Calibration
from costing.many.calibration_tables import HELD, predicted_table

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SIDE = 11.0  # of a panel [cm]
MOST = 4  # panels beside each other
MARKS: tuple[tuple[str, int, dict[str, Any]], ...] = (
    ("before", 4, {"marker": "x", "color": RULE}),
    ("after", 5, {"marker": "o", "edgecolor": INK, "facecolor": PAPER}),
)
HELD_MARKS: tuple[dict[str, Any], ...] = (
    {"marker": "x", "color": INK, "linewidth": 1.8},
    {"marker": "o", "edgecolor": INK, "facecolor": INK},
)


def predicted_picture(path: Path, found: Calibration, overwrite: bool = False) -> None:
    """A panel for each material that the factors move, the first four, with the line on which all would lie.

    Parameters
    ----------
    path : Path
        Of the picture.
    found : Calibration
        What is shown.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        The file is refused.
    """
    codes = [code for code, moved in zip(found.data.materials, found.counted, strict=True) if moved][:MOST]
    rows = predicted_table(found).rows

    def draw(figure: Figure) -> None:
        for number, code in enumerate(codes, start=1):
            _panel(figure.add_subplot(1, len(codes), number), code, [row for row in rows if row[2] == code])
        handles, labels = figure.axes[0].get_legend_handles_labels()
        figure.legend(handles, labels, loc="outside lower center", ncols=len(labels))

    write_picture(path, (max(SIDE * len(codes), 2 * SIDE), SIDE + 3.0), draw, overwrite)


def _panel(axes: Axes, code: str, rows: list[list[Any]]) -> None:
    for (name, column, look), held_look in zip(MARKS, HELD_MARKS, strict=True):
        for part, style in ((False, look), (True, held_look)):
            chosen = [row for row in rows if (row[1] == HELD) == part]
            label = f"{name}, {'held back' if part else 'fit'}"
            axes.scatter(
                [row[3] for row in chosen], [row[column] for row in chosen], s=34, label=label, **style
            )
    numbers = [number for row in rows for number in row[3:]]
    low, high = min(numbers), max(numbers)
    room = 0.06 * (high - low) or 0.06 * high or 1.0
    ends = (low - room, high + room)
    axes.plot(ends, ends, color=RULE, linewidth=1.0, zorder=0.5)
    axes.set_xlim(*ends)
    axes.set_ylim(*ends)
    axes.set_xlabel("issued by the store, kg")
    axes.set_ylabel("predicted, kg")
    axes.set_title(code)
    axes.grid()
