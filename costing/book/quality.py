"""Read the sheet Quality: shares that are not of first quality, by depth of shade."""

from __future__ import annotations

from costing.book.layout import tables_of
from costing.book.sheet import Sheet
from costing.book.tables import read_table, refuse_twice
from costing.settings.building import Entry, build
from costing.settings.mill import Mill
from costing.settings.quality import SHARES, VALUES, ShadeDepth, check_order

PERCENT = "%"
QUALITY_SHEET = "Quality"


def read_quality(sheet: Sheet, mill: Mill) -> None:
    """Read the depths of shade into the mill.

    Raises
    ------
    InputError
        A refused cell, a name that stands twice, bounds that do not rise.
    """
    (table,) = tables_of("quality")
    for row in refuse_twice(read_table(sheet, table), "depth"):
        entries = {
            name: Entry(row.number(name, unit=PERCENT), row.at(name))
            for name in ("depth_up_to", *SHARES, *VALUES)
        }
        fixed = {"code": row.code, "where": row.where}
        owner = f"depth {row.code}"
        mill.depths[row.code] = build(ShadeDepth, owner, ShadeDepth.GROUPS, entries, mill.assumptions, fixed)
    check_order(mill.depths)
