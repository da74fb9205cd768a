"""What the figures of a collecting point rest on: typical values taken, cautions, sources."""

from __future__ import annotations

from typing import Any

from costing.effluent.point_train import stage_of
from costing.quantities import QUANTITIES, label
from costing.reference_data import Default, cautions, default, materials
from costing.report.drain_point import PointResult
from costing.report.grounds import OF_DEFAULT, default_row
from costing.report.table import Column, Table
from costing.settings.mill import Mill

# Of every collecting point: what to beware of before a lid is opened or acid is dosed.
ALWAYS = ("discharge", "mixing", "confined_space", "acid")
OF_WATER = ("caustic", "sulfide", "peroxide")  # cautions that go with a substance down the drain


def point_assumptions(mill: Mill, found: PointResult) -> Table:
    """Typical values taken because a cell of the point is empty, with their band and their source."""
    columns = [
        Column("Setting"),
        Column("Meaning"),
        *OF_DEFAULT,
    ]
    rows: list[list[Any]] = []
    for row in _defaults(mill, found):
        setting, *others = default_row(row)
        rows.append([setting, QUANTITIES[row.quantity].help, *others])
    note = (
        "The typical value, taken where a cell of the sheet Discharge points or Treatment is empty. "
        "Contested: mills differ, so measure your own and type it there."
    )
    return Table("point_assumptions", f"Taken for {found.point.code}", note, columns, rows)


def _defaults(mill: Mill, found: PointResult) -> list[Default]:
    owner = f"discharge point {found.point.code}"
    return [default(key) for named, key in mill.drain.assumptions if named == owner]


def point_cautions(mill: Mill, found: PointResult) -> Table:
    """Usual cautions for this water, and what comes first."""
    columns = [Column("Concerns"), Column("Caution"), Column("Comes first"), Column("Source")]
    rows: list[list[Any]] = []
    for key in _cautions(found):
        row = cautions()[key]
        source = f"{row.source}: {row.locator}" if row.locator else row.source
        rows.append([row.name, row.caution, row.defer, source])
    note = "Usual cautions only, for what drains to this point. This is not a safety data sheet."
    return Table("point_cautions", f"Cautions at {found.point.code}", note, columns, rows)


def _cautions(found: PointResult) -> list[str]:
    """Cautions that hold at every point, then those of what is in this water."""
    of_substance = {form.substance: form.caution for form in materials().values() if form.substance}
    amounts = found.places[0].stream.amounts
    present = [of_substance.get(name, "") for name, amount in amounts.items() if amount > 0.0]
    return list(dict.fromkeys([*ALWAYS, *(key for key in OF_WATER if key in present)]))


def point_sources(mill: Mill, found: PointResult) -> Table:
    """Every source behind what was taken, the removals of the treatment and the cautions."""
    from costing.reference_data.source_list import (
        sources,  # its reader wants a younger Python than a cell has
    )

    uses: dict[str, dict[str, None]] = {}
    for row in _defaults(mill, found):
        uses.setdefault(row.source, {})[label(row.quantity)] = None
    for stage in found.stages:
        for figure in stage_of(stage).figures:
            if figure.what not in stage.own_removal and not figure.remembered:
                uses.setdefault(figure.source, {})[f"{stage.step}: {figure.what}"] = None
    for key in _cautions(found):
        caution = cautions()[key]
        uses.setdefault(caution.source, {})[f"caution: {caution.name}"] = None
    columns = [Column("Source"), Column("Title"), Column("Authors"), Column("Year"), Column("Opened")]
    columns += [Column("Where"), Column("Used for")]
    rows: list[list[Any]] = []
    for key, used in sorted(uses.items()):
        entry = sources()[key]
        opened = "yes" if entry.opened else "no" if entry.is_publication else ""
        rows.append([key, entry.title, entry.authors, entry.year, opened, entry.where, ", ".join(used)])
    note = "Opened: no means that the text was not read; its values are from memory and to be verified."
    return Table("point_sources", f"Sources of {found.point.code}", note, columns, rows)
