"""What an officer would say of the settings of the drain before believing its figures."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from costing.effluent.point_train import stage_of
from costing.effluent.stages import SETTINGS
from costing.ledger.remarks import Remark, compared_with_usual, located, meant_share
from costing.quantities import QUANTITIES, InputError, label
from costing.quantities.checking import number_text
from costing.reference_data import default
from costing.report.drain_point import PointResult
from costing.report.table import Column, Table
from costing.settings.mill import Mill
from costing.settings.treatment_train import TrainStage

SMALL_SHARE = 0.01  # a share below it looks typed as a fraction
NO_VALUE = "no value typed, not compared: type the value of your permit"


def drain_remarks(mill: Mill, code: str) -> list[Remark]:
    """Remarks on the settings of a point and on what treats its water, warnings first.

    Parameters
    ----------
    mill : Mill
        The book, which knows the cells.
    code : str
        Of the point.
    """
    drain = mill.drain
    point, given = drain.points[code], drain.given.get(code, {})

    def cell_of(name: str) -> str:
        return given[name].where if name in given else ""

    slips, unusual = compared_with_usual(f"discharge point {code}", point.GROUPS, point, cell_of)
    for stage in drain.stages_of(code):
        slips += _of_stage(stage)
    prices = drain.prices.get(code)
    if prices is not None:
        for name in ("returned_share", "cake_dryness"):
            slips += _small(label(name), getattr(prices, name), located(label(name), prices.where))
    return [*slips, *unusual, *_open_forms(mill, code)]


def _of_stage(stage: TrainStage) -> Iterator[Remark]:
    owner = f"{stage.number} {stage.step}"
    for what, share in stage.own_removal.items():
        yield from _small(f"removal of {what}", share, located(owner, stage.where))
    for name, key in SETTINGS[stage_of(stage).kind].items():
        if name not in stage.settings or not key or not QUANTITIES[name].usual.startswith("%"):
            continue
        value, usual = stage.settings[name], default(key)
        meant = meant_share(value, usual.low, usual.high)
        if meant is not None:
            text = (
                f"{label(name)} is {number_text(100 * value)} %; usual is {number_text(100 * usual.low)} to "
                f"{number_text(100 * usual.high)} %: did you mean {number_text(100 * meant)} %?"
            )
            yield Remark("warning", located(owner, stage.where), text)


def _small(what: str, share: float | None, where: str) -> Iterator[Remark]:
    """A share below one per cent, where none so small is likely."""
    if share is not None and 0.0 < share < SMALL_SHARE:
        meant = number_text(1e4 * share)
        text = (
            f"the {what} is {number_text(100 * share)} %: did you mean {meant} %? beside % it is typed as "
            f"{meant}, not as {number_text(100 * share)}"
        )
        yield Remark("warning", where, text)


def _open_forms(mill: Mill, code: str) -> Iterator[Remark]:
    for row in mill.drain.limits:
        if row.point == code and row.limit.value is None:
            yield Remark("note", located(f"limit of {row.limit.parameter}", row.where), NO_VALUE)


def slips_of_drain(mill: Mill) -> list[Remark]:
    """Warnings of every point of a book; none where its drain is refused."""
    try:
        points = mill.drain.points
    except InputError:
        return []
    found = [item for code in points for item in drain_remarks(mill, code)]
    return [item for item in found if item.kind == "warning"]


def point_remarks(mill: Mill, found: PointResult) -> Table | None:
    """The remarks of a point as a table; None where there are none."""
    columns = [Column("Kind"), Column("Where"), Column("What")]
    rows: list[list[Any]] = [[*remark] for remark in drain_remarks(mill, found.point.code)]
    note = "Warning: the figure may mislead. Unusual: outside the usual range. Look at the cell first."
    return Table("point_remarks", f"Settings of {found.point.code}", note, columns, rows) if rows else None
