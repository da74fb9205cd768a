"""What all pictures share: letters, fills, axes with units, and a file with the same bytes every time."""

from __future__ import annotations

import io
import textwrap
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from costing.front_ends.fills import FILLS, Pattern
from costing.front_ends.whole_file import write_whole
from costing.quantities import InputError

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

PNG, SVG = ".png", ".svg"
MOST_PANELS = 4  # below each other on one picture
MAKER = "denim warp costing"
INK, RULE, PAPER = "#1D2730", "#8E9AA5", "#FFFFFF"
CENTIMETRES_PER_INCH = 2.54
DOTS_PER_INCH = 150
EDGE = 0.12  # [inches]
NAME_LETTERS = 42  # of a name beside a bar, on one line

HATCHES: dict[Pattern, str] = {
    "dkUpDiag": "////",
    "wdDnDiag": "\\\\\\\\",
    "pct50": "....",
    "dkHorz": "----",
    "smGrid": "++++",
    "ltVert": "||||",
}

# On top of the library's own settings, whatever the user's file of settings says. Letters as outlines need no
# font where the file is opened; a fixed salt gives the parts of an SVG file the same names every time.
LOOK = {
    "font.family": "DejaVu Sans",
    "font.size": 9.0,
    "text.color": INK,
    "text.parse_math": False,  # a code of the book may hold a $
    "axes.edgecolor": RULE,
    "axes.labelcolor": INK,
    "axes.titlesize": 11.0,
    "axes.titleweight": "bold",
    "axes.titlelocation": "left",
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.axisbelow": True,
    "xtick.color": INK,
    "ytick.color": INK,
    "grid.color": "#DCE4EB",
    "hatch.linewidth": 0.9,
    "legend.frameon": False,
    "svg.fonttype": "path",
    "svg.hashsalt": MAKER,
}


def checked(path: Path, overwrite: bool) -> None:
    """Refuse the name of a picture before anything is worked out for it.

    Raises
    ------
    InputError
        Another ending; or a file of that name that may not be replaced, or is no picture of ours.
    """
    if path.suffix.lower() not in (PNG, SVG):
        raise InputError(str(path), f"the name of a picture must end in {PNG} or {SVG}")
    if path.is_file():
        if not overwrite:
            raise InputError(
                str(path), "is there already and was left as it is; accepted is the name of a new file"
            )
        with path.open("rb") as stream:
            if MAKER.encode() not in stream.read(4096):
                raise InputError(
                    str(path), "is no earlier picture and was left as it is; accepted is a new file's name"
                )


def write_picture(
    path: Path, size: tuple[float, float], draw: Callable[[Figure], None], overwrite: bool = False
) -> None:
    """Write a picture to a new file, whole or not at all.

    Parameters
    ----------
    path : Path
        Where to; .png or .svg.
    size : tuple of float
        Width and height [cm].
    draw : callable
        Draws on an empty figure.
    overwrite : bool, optional
        True to replace an earlier picture of that name; no other file is ever replaced.

    Raises
    ------
    InputError
        The name is refused, or the file cannot be written.
    """
    checked(path, overwrite)
    write_whole(
        lambda: picture_bytes(path.suffix.lower(), size, draw),
        path,
        what="a picture",
        suffixes=(PNG, SVG),
        overwrite=overwrite,
    )


def picture_bytes(suffix: str, size: tuple[float, float], draw: Callable[[Figure], None]) -> bytes:
    """A picture as the bytes of a file; the same drawing gives the same bytes.

    Parameters
    ----------
    suffix : str
        .png or .svg.
    size : tuple of float
        Width and height [cm].
    draw : callable
        Draws on an empty figure.
    """
    # Slow to import: only a command that draws pays for it.
    from matplotlib import style
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure
    from matplotlib.layout_engine import ConstrainedLayoutEngine

    with style.context(["default", LOOK]):
        width, height = size
        figure = Figure(
            figsize=(width / CENTIMETRES_PER_INCH, height / CENTIMETRES_PER_INCH),
            layout=ConstrainedLayoutEngine(w_pad=EDGE, h_pad=EDGE),
        )
        FigureCanvasAgg(figure)
        draw(figure)
        packed = io.BytesIO()
        said: dict[str, Any] = {"Creator": MAKER, "Date": None} if suffix == SVG else {"Software": MAKER}
        figure.savefig(packed, format=suffix[1:], dpi=DOTS_PER_INCH, facecolor=PAPER, metadata=said)
        return packed.getvalue()


def fill(name: str) -> dict[str, Any]:
    """How a bar of a name is filled."""
    look = FILLS[name]
    if look.pattern is None:
        return {"facecolor": f"#{look.colour}", "edgecolor": INK, "linewidth": 0.6}
    hatch = HATCHES[look.pattern]
    return {"facecolor": PAPER, "edgecolor": f"#{look.colour}", "hatch": hatch, "linewidth": 0.6}


def name_bars(axes: Axes, names: Sequence[str]) -> None:
    """Name horizontal bars, the first on top; long names are broken into lines."""
    broken = [
        "\n".join(part for line in name.split("\n") for part in textwrap.wrap(line, NAME_LETTERS))
        for name in names
    ]
    axes.set_yticks(range(len(names)), broken)
    axes.set_ylim(len(names) - 0.4, -0.6)
    axes.tick_params(axis="y", length=0)
    axes.grid(axis="x")


def panels(figure: Figure, heights: Sequence[float]) -> list[Axes]:
    """Axes below each other, as high as these shares say."""
    grid = figure.add_gridspec(len(heights), 1, height_ratios=list(heights))
    return [figure.add_subplot(grid[row]) for row in range(len(heights))]


def refuse_many(count: int, option: str) -> None:
    """Refuse more panels than one picture shows in a readable size.

    Raises
    ------
    InputError
        There are more.
    """
    if count > MOST_PANELS:
        raise InputError(
            option, f"shows {MOST_PANELS} enquiries at most, and there are {count}; accepted is fewer with -e"
        )
