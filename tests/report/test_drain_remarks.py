"""Settings of the drain that look mistyped are said with their cell; a book without a drain is let alone."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from costing.book.drain import DRAIN_SHEETS
from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.file_sheets import sheets_of
from costing.front_ends.workbook.open_file import open_workbook
from costing.quantities import InputError
from costing.report.drain_permit import permit_table
from costing.report.drain_point import work_out_point
from costing.report.drain_remarks import drain_remarks
from costing.report.grounds import checks
from costing.report.table import work_out
from costing.settings.drain import Drain
from costing.settings.mill import Mill
from tests.report.demo import demo_mill, demo_result


def mill_with(change: Callable[[Drain], Drain]) -> Mill:
    mill = replace(demo_mill())
    mill.keep_drain(change(replace(mill.drain)))
    return mill


def mistyped(drain: Drain) -> Drain:
    """Fractions typed beside % in a spread of the point, and in a removal and a recovery of its treatment."""
    point = replace(drain.points["PIT"], flow_spread=0.002)
    first, second, last = drain.stages_of("PIT")
    second = replace(second, own_removal={"COD, organic": 0.0088})
    last = replace(last, settings={"water_recovery": 0.0075})
    return replace(drain, points={**drain.points, "PIT": point}, stages=[first, second, last])


def test_the_demo_has_nothing_to_warn_of() -> None:
    assert [item for item in drain_remarks(demo_mill(), "PIT") if item.kind == "warning"] == []


def test_a_fraction_beside_per_cent_is_said_and_stands_in_the_checks() -> None:
    mill = mill_with(mistyped)
    told = [item for item in drain_remarks(mill, "PIT") if item.kind == "warning"]
    assert ["did you mean 20 %" in told[0].text, "88 %" in told[1].text, "75 %" in told[2].text] == [True] * 3
    assert told[0].where.endswith("32") or "Discharge points" in told[0].where
    assert "Treatment!" in told[1].where
    assert [["all", *item] for item in told] == [row for row in checks(mill, []).rows if row[1] == "warning"]


def test_an_open_form_is_said_and_not_compared() -> None:
    def opened(drain: Drain) -> Drain:
        first, *others = drain.limits
        empty = replace(first, limit=replace(first.limit, value=None))
        return replace(drain, limits=[empty, *others])

    mill = mill_with(opened)
    assert any("no value typed, not compared" in item.text for item in drain_remarks(mill, "PIT"))
    table = permit_table(mill, work_out_point(mill, "PIT", demo_result))
    assert table is not None
    last = dict(zip([column.title for column in table.columns], table.rows[-1]))
    row = last if "no value typed" in str(last["Limit"]) else dict(zip(last, table.rows[-2]))
    assert row["In words"] == "not estimated: no value typed, not compared"
    assert "no value typed" in str(row["Would narrow it"])  # the live sheet has no room for the words


def test_a_book_without_any_sheet_of_the_drain_says_so_where_it_is_asked_only() -> None:
    sheets = sheets_of(*open_workbook(demo_book(), sheet_names()))
    whole = mill_from_sheets(sheets)
    mill = mill_from_sheets({name: sheet for name, sheet in sheets.items() if name not in DRAIN_SHEETS})
    assert not any("drain" in item.text for item in work_out(mill, mill.enquiry("Q-01")).remarks)
    with pytest.raises(InputError, match="the book has no collecting point; accepted is one column"):
        work_out_point(mill, "", demo_result)
    part = mill_from_sheets({name: sheet for name, sheet in sheets.items() if name != "Treatment"})
    (told,) = [item for item in work_out(part, whole.enquiry("Q-01")).remarks if "drain sheets" in item.text]
    assert told.text.endswith("the sheet 'Treatment' is missing or was renamed")
