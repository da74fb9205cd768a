"""The picture of a lot curve: cost of a metre against the length of the order."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import numpy

from costing.cost.quote import basis_of
from costing.front_ends.pictures.frame import INK, PAPER, RULE, write_picture
from costing.many.lot_curve import LotCurve
from costing.settings.mill import Enquiry, Mill

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SIZE = 26.0, 15.0  # [cm]
HIGHEST = 2.5  # of the cost of a full set: what lies above is told, not drawn


def lot_picture(path: Path, mill: Mill, enquiry: Enquiry, curve: LotCurve, overwrite: bool = False) -> None:
    """Cost against length, with the full set, the minimum economic lot, the order and its surcharge.

    Parameters
    ----------
    path : Path
        Of the picture.
    mill, enquiry : Mill, Enquiry
        The mill's book, and the enquiry of it.
    curve : LotCurve
        Of that enquiry.
    overwrite : bool, optional
        True to replace an earlier picture.

    Raises
    ------
    InputError
        The file is refused.
    """
    unit = f"{mill.costs.currency if mill.costs is not None else 'money'} per {basis_of(enquiry)}"
    write_picture(path, SIZE, lambda figure: _draw(figure, enquiry, curve, unit), overwrite)


def _draw(figure: Figure, enquiry: Enquiry, curve: LotCurve, unit: str) -> None:
    from matplotlib.ticker import FuncFormatter, LogLocator, NullFormatter

    axes = figure.add_subplot()
    lengths, costs, full = curve.lengths, curve.costs, curve.reference_cost
    limit = full * (1.0 + curve.tolerance)
    axes.set_xscale("log")
    axes.fill_between(
        lengths,
        full,
        numpy.maximum(costs, full),
        facecolor=PAPER,
        edgecolor=RULE,
        hatch="///",
        linewidth=0.0,
        label="surcharge for the lot",
    )
    axes.plot(lengths, costs, color=INK, linewidth=1.8, label="cost of a metre")
    axes.axhline(full, color=INK, linewidth=1.0, linestyle="--", label=f"full set or charge: {full:.3f}")
    axes.axhline(
        limit,
        color=INK,
        linewidth=1.0,
        linestyle=":",
        label=f"{100 * curve.tolerance:g} % above: {limit:.3f}",
    )
    if curve.least is not None:
        axes.axvline(
            curve.least,
            color=INK,
            linewidth=1.0,
            linestyle="-.",
            label=f"minimum economic lot: {curve.least:,.0f} m",
        )
    own = curve.cost_at(enquiry.order_length)
    if not math.isnan(own) and lengths[0] <= enquiry.order_length <= lengths[-1]:
        over = max(own - full, 0.0)
        axes.plot(
            [enquiry.order_length],
            [own],
            "D",
            color=INK,
            markerfacecolor=PAPER,
            markersize=9,
            label=f"{enquiry.code}: {enquiry.order_length:,.0f} m at {own:.3f}, surcharge {over:.3f}",
        )
    there = costs[~numpy.isnan(costs)]
    low = min(float(there.min()), full)
    top = min(float(there.max()), HIGHEST * full)
    room = 0.06 * (top - low) or 0.01 * full
    axes.set_ylim(low - room, max(top, limit) + room)
    axes.set_xlim(float(lengths[0]), float(lengths[-1]))
    axes.xaxis.set_major_locator(LogLocator(subs=(1.0, 2.0, 5.0)))
    axes.xaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{value:,.0f}"))
    axes.xaxis.set_minor_formatter(NullFormatter())
    axes.set_xlabel(f"length of the order, m of {enquiry.length_basis} (each step to the right is a ratio)")
    axes.set_ylabel(unit)
    title = f"{enquiry.code}: cost against length of the order"
    if (there > top).any():
        title += f"; shorter orders go up to {float(there.max()):.2f}, beyond the picture"
    if curve.refused:
        title += f"; {len(curve.refused)} lengths are refused"
    axes.set_title(title)
    axes.grid()
    axes.legend(loc="upper right", frameon=True, facecolor=PAPER, edgecolor=RULE, framealpha=1.0)
