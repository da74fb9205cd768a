"""Two enquiries of the invented demo mill: dye as powder, and dye that comes reduced."""

from __future__ import annotations

from functools import cache

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.report import Result, work_out
from costing.settings.mill import Mill

CODES = ("Q-01", "Q-06", "B-01")


@cache
def demo_mill() -> Mill:
    return read_book(demo_book())


@cache
def demo_result(code: str) -> Result:
    return work_out(demo_mill(), demo_mill().enquiries[code])
