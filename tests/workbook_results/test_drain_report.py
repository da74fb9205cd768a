"""Limits on the first page and in their chart, from a table of a permit."""

from __future__ import annotations

from typing import Any

import pytest
from openpyxl import Workbook

from costing.front_ends.workbook.drain_charts import CUT, limit_chart, limit_shares
from costing.front_ends.workbook.drain_report import draw_sheets
from costing.front_ends.workbook.drain_summary import _figures, at_risk
from costing.front_ends.workbook.results_cells import Pen
from costing.front_ends.workbook.sheet_drawing import CHARACTERS_PER_WIDTH
from costing.report import Column, Table
from costing.report.drain_point import work_out_point
from tests.report.demo import demo_mill, demo_result

TITLES = ("Limit", "Of the limit", "From", "To", "Headroom", "Chance of exceeding", "Largest part")
ROWS: list[list[Any]] = [
    ["sulfide", 900.0, 400.0, 2000.0, -800.0, 99.0, "rinse after sulfur"],
    ["COD", 80.0, 50.0, 120.0, 20.0, 30.0, "rinse after scour"],
    ["chloride", 2.0, 1.5, 3.0, 98.0, 0.0, "water taken in"],
    ["pH", None, None, None, None, 60.0, None],
    ["sulfide in a sewer", 0.0, 0.0, 400.0, 100.0, 0.0, "rinse after sulfur"],
    ["AOX", None, None, None, None, None, None],
]
PERMIT = Table("permit", "Permit", "", [Column(title) for title in TITLES], ROWS)


def test_what_is_near_its_limit_stands_on_the_first_page() -> None:
    assert [row[0] for row in at_risk(PERMIT).rows] == ["sulfide", "COD", "pH", "sulfide in a sewer"]


def test_the_parts_of_a_bar_end_at_low_estimate_and_high() -> None:
    table = limit_shares(PERMIT)
    assert [row[0] for row in table.rows] == ["sulfide", "COD", "chloride", "sulfide in a sewer"]
    cod = table.rows[1]
    assert cod[1:4] == [50.0, 80.0, 120.0]
    assert [sum(cod[4 : 4 + count]) for count in (1, 2, 3)] == pytest.approx([50.0, 80.0, 120.0])


def test_a_long_bar_is_cut_and_its_numbers_are_not() -> None:
    sulfide = limit_shares(PERMIT).rows[0]
    assert sum(sulfide[4:]) == CUT
    assert sulfide[3] == 2000.0


def sheets(table: Table) -> Any:
    book = Workbook()
    draw_sheets(Pen(book), table)
    return book


def test_figures_in_two_units_stand_on_two_sheets() -> None:
    columns = [Column("Behind"), Column("COD", "kg/day", 1), Column("COD", "mg/L", 1)]
    book = sheets(Table("point_treatment", "Treatment", "", columns, [["the pit", 400.0, 2000.0]]))
    found = {name: [cell.value for cell in book[name][7]][:2] for name in book.sheetnames[1:]}
    assert found == {"Treatment": ["the pit", 400.0], "Treatment, mg per L": ["the pit", 2000.0]}


def test_a_long_note_of_a_narrow_table_is_printed_whole() -> None:
    note = "never acid on a water with sulfide " * 12
    page = sheets(Table("point_acid_demand", "Acid", note.strip(), [Column("What")], [["acid"]]))[
        "Acid demand"
    ]
    assert f"{page['A2'].value} {page['A3'].value}" == note.strip()
    across = [page.column_dimensions[letter].width for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]
    columns = ord(page.print_area.split(":$")[1][0]) - ord("A") + 1
    assert sum(across[:columns]) * CHARACTERS_PER_WIDTH >= max(len(page["A2"].value), len(page["A3"].value))


def test_the_limit_is_a_line_of_the_chart() -> None:
    book = Workbook()
    limit_chart(Pen(book), PERMIT, "estimate")
    sheet: Any = book["Limit chart"]
    (chart,) = sheet._charts
    assert chart.y_axis.majorUnit == 100.0
    assert chart.y_axis.scaling.max == CUT
    assert len(chart.series) == 3
    assert len({series.graphicalProperties.pattFill is None for series in chart.series}) == 2


def test_what_is_used_up_on_the_way_says_so_and_no_share_is_above_all() -> None:
    rows = {row[0]: row for row in _figures(work_out_point(demo_mill(), "PIT", demo_result)).rows}
    assert rows["Sulfide, as S"][-1] == "none left; ran in with K-01 rinse after sulfur"
    assert rows["Sodium"][-1] == "Q-02 rinse after dyeing, 32 %"
