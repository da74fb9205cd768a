"""The sheet Permit: what is read of it, and what is refused, by its cell and in the trade's words."""

from __future__ import annotations

import csv
import functools
import io
from dataclasses import replace
from typing import Any

import pytest

from costing.book.permit import read_permit
from costing.book.sheet import Sheet, column_letters
from costing.front_ends.limits_command import csv_rows
from costing.quantities import InputError
from costing.reference_data.discharge_limits import presets
from costing.report.presets import limits_of_presets
from costing.settings.drain import Drain
from tests.book.blocks import Block, demo_blocks
from tests.report.demo import demo_mill

COD = {
    "Point": "PIT",
    "Parameter": "COD",
    "Value": 250.0,
    "Limit unit": "mg/L",
    "Kind": "concentration",
    "Statistic": "any one day",
    "Holds": "after treatment",
}
PH = {
    **COD,
    "Parameter": "pH",
    "Value": 6.0,
    "Value to": 9.0,
    "Limit unit": "",
    "Kind": "value",
    "Statistic": "at all times",
}
COPPER = {"Material": "LYE-50", "What it holds": "copper", "Content, mg/kg": 0.5, "Told by": "sheet of 2025"}


@functools.cache
def demo_block() -> Block:
    return demo_blocks()["Permit"]


def head_row(head: str) -> int:
    return next(place for place, row in enumerate(demo_block()) if head in row)


def with_rows(limits: list[dict[str, Any]], figures: list[dict[str, Any]]) -> Block:
    """The sheet with these rows in place of those of the demo."""
    rows = [list(row) for row in demo_block()]
    below = head_row("What it holds")
    for head, given, last in (("Parameter", limits, below - 2), ("What it holds", figures, len(rows))):
        top = head_row(head)
        places = {text: place for place, text in enumerate(rows[top]) if text}
        rows[top + 1 : last] = [[""] * len(rows[top])] * (last - top - 1)
        rows = [list(row) for row in rows]
        for number, cells in enumerate(given, start=top + 1):
            for name, value in cells.items():
                rows[number][places[name]] = value
    return tuple(tuple(row) for row in rows)


def cell_of(head: str, above: str = "Parameter") -> str:
    top = head_row(above)
    return f"Permit!{column_letters(demo_block()[top].index(head) + 1)}{top + 2}"


def read(*limits: dict[str, Any], figures: list[dict[str, Any]] | None = None) -> Drain:
    drain = Drain(points=dict(demo_mill().drain.points))
    read_permit(Sheet.from_rows("Permit", with_rows(list(limits), figures or [])), drain, demo_mill())
    return drain


def test_a_row_is_read_as_the_permit_prints_it() -> None:
    drain = read(COD, {**COD, **PH}, figures=[COPPER])
    cod, acidity = drain.limits
    assert (cod.point, cod.limit.text()) == ("PIT", "COD: at most 250 mg/L, any one day, after treatment")
    assert cod.where == cell_of("Point")
    assert acidity.limit.text() == "pH: between 6 and 9, at all times, after treatment"
    (figure,) = drain.supplier_figures
    assert (figure.material, figure.parameter) == ("LYE-50", "copper")
    assert figure.content == pytest.approx(0.5e-6, rel=1e-12)


def test_other_names_and_case_are_read_as_the_same() -> None:
    (row,) = read({**COD, "Parameter": "suspended Solids"}).limits
    assert row.limit.parameter == "TSS"
    (row,) = read(
        {**COD, "Parameter": "temperature", "Kind": "value", "Limit unit": "°C", "Value": 40.0}
    ).limits
    assert row.limit.unit == "degC"


def test_an_open_form_is_read_and_waits_for_its_value() -> None:
    (row,) = read({**COD, "Value": "", "Statistic": ""}).limits
    assert row.limit.value is None


def test_a_name_of_a_supplier_is_accepted_once_the_table_has_it() -> None:
    vanadium = {**COD, "Parameter": "vanadium"}
    with pytest.raises(InputError, match="parameter is 'vanadium'; accepted is one of"):
        read(vanadium)
    drain = read(vanadium, figures=[{**COPPER, "What it holds": "vanadium"}])
    assert drain.limits[0].limit.parameter == "vanadium"


REFUSED: list[tuple[dict[str, Any], str, str]] = [
    ({"Point": "POND"}, "Point", "point is 'POND'; accepted is one of: PIT"),
    ({"Parameter": ""}, "Parameter", "parameter is empty; accepted is a name of the list"),
    ({"Parameter": "coper"}, "Parameter", "parameter is 'coper'; accepted is one of: copper"),
    ({"Value": "250 mg/L"}, "Value", "value of COD is the text '250 mg/L', not a number"),
    ({"Value": -3.0}, "Value", "value of COD is -3; accepted is a number above 0"),
    ({"Value": 0.0}, "Value", "value of COD is 0; accepted is a number above 0"),
    ({"Limit unit": ""}, "Limit unit", "unit of COD is empty; accepted for a concentration is mg/L or g/m3"),
    ({"Limit unit": "%"}, "Limit unit", "unit of COD is '%'; accepted for a concentration is mg/L"),
    ({"Limit unit": "ppm"}, "Limit unit", "unit of COD is 'ppm'; accepted for a concentration is mg/L"),
    ({"Limit unit": "mg/l/x"}, "Limit unit", "which is not known; accepted is mg/L or g/m3"),
    (
        {"Limit unit": "kg/t"},
        "Limit unit",
        "unit of COD is 'kg/t'; accepted for a concentration is mg/L or g/m3, or the kind 'load per product'",
    ),
    (
        {"Kind": "load per product"},
        "Limit unit",
        "unit of COD is 'mg/L'; accepted for a load per product is kg/t or g/kg, or the kind 'concentration'",
    ),
    (
        {"Kind": "load per day", "Limit unit": "m3/day"},
        "Limit unit",
        "unit of COD is 'm3/day'; accepted for a load per day is kg/day or t/day",
    ),
    (
        {"Kind": "value"},
        "Kind",
        "kind of COD is 'value'; accepted is load per product, load per day or concentration",
    ),
    ({"Kind": ""}, "Kind", "kind is empty; accepted is one of: load per product"),
    ({"Kind": "mass"}, "Kind", "kind is 'mass'; accepted is one of: load per product"),
    ({**PH, "Value to": ""}, "Value to", "value to of pH is empty beside 6; accepted is the upper end"),
    ({**PH, "Value": ""}, "Value", "value of pH is empty beside value to 9; accepted is the lower end"),
    ({**PH, "Value": 9.0, "Value to": 6.0}, "Value to", "range of pH is 9 to 6; accepted is low to high"),
    ({**PH, "Limit is": "at most"}, "Value to", "value to of pH is 9 beside 'at most'; accepted is an empty"),
    (
        {**PH, "Limit unit": "mg/L"},
        "Limit unit",
        "unit of pH is 'mg/L'; accepted for a value is an empty cell",
    ),
    ({**PH, "Kind": "concentration"}, "Kind", "kind of pH is 'concentration'; accepted is value"),
    ({"Limit is": "between"}, "Value to", "value to of COD is empty beside 250; accepted is the upper end"),
    ({"Limit is": "at least"}, "Limit is", "limit is 'at least' for a concentration; accepted is at most"),
    ({"Statistic": ""}, "Statistic", "statistic of COD is empty; accepted is a word of the list"),
    ({"Statistic": "mean of days"}, "Days or hours", "days or hours is empty; accepted is a whole number"),
    (
        {"Statistic": "mean of days", "Days or hours": 30.5},
        "Days or hours",
        "days or hours is 30.5; accepted is a whole number from 1 to 366",
    ),
    ({"Days or hours": 30.0}, "Days or hours", "days or hours are 30.0 beside 'any one day'; accepted is an"),
    ({**PH, "Value to": 88.0}, "Value to", "value of pH is 88; accepted is 0 to 14"),
    ({"Holds": ""}, "Holds", "holds is empty; accepted is one of: before treatment"),
    (
        {"Kind": "load per day", "Limit unit": "kg/day", "Reference flow, L/kg": 100.0},
        "Reference flow, L/kg",
        "reference flow stands beside a load per day; accepted is a concentration",
    ),
    ({"Reference flow, L/kg": -1.0}, "Reference flow, L/kg", "accepted is 0.1 to 1000 L/kg"),
    ({"Reference": "x" * 601}, "Reference", "reference has 601 letters; accepted are up to 600"),
]


@pytest.mark.parametrize(("change", "head", "said"), REFUSED)
def test_a_bad_row_is_refused_by_its_cell(change: dict[str, Any], head: str, said: str) -> None:
    with pytest.raises(InputError) as refused:
        read({**COD, **change})
    assert refused.value.where == cell_of(head)
    assert said in refused.value.message


REFUSED_FIGURES: list[tuple[dict[str, Any], str, str]] = [
    ({"Material": "LYE-51"}, "Material", "material 'LYE-51' is not in the book; there are: LYE-50"),
    ({"What it holds": "sulfate"}, "What it holds", "'sulfate' follows from the recipe already"),
    ({"What it holds": "pH"}, "What it holds", "'pH' is nothing that a product holds"),
    ({"Content, mg/kg": ""}, "Content, mg/kg", "content, mg/kg is empty"),
    ({"Content, mg/kg": -1.0}, "Content, mg/kg", "accepted is 0 to"),
]


@pytest.mark.parametrize(("change", "head", "said"), REFUSED_FIGURES)
def test_a_bad_figure_of_a_supplier_is_refused(change: dict[str, Any], head: str, said: str) -> None:
    with pytest.raises(InputError) as refused:
        read(figures=[{**COPPER, **change}])
    assert refused.value.where == cell_of(head, "What it holds")
    assert said in refused.value.message


@pytest.mark.parametrize(("head", "above", "value"), [("Value", "Parameter", 0.88)])
def test_a_cell_shown_as_per_cent_is_refused(head: str, above: str, value: float) -> None:
    """88 % typed into a cell of that format arrives as 0.88: neither is a limit in mg/L."""
    block = with_rows([{**COD, head: value}], [])
    cells = {
        (row, column): cell
        for row, cells in enumerate(block, start=1)
        for column, cell in enumerate(cells, start=1)
        if cell != ""
    }
    top = head_row(above)
    place = (top + 2, block[top].index(head) + 1)
    drain = Drain(points=dict(demo_mill().drain.points))
    with pytest.raises(
        InputError, match=r"value of COD is shown as 88 %; .* clear the cell's percent format"
    ):
        read_permit(Sheet("Permit", cells, percents={place}), drain, demo_mill())


def test_the_same_row_twice_is_refused_and_another_statistic_is_not() -> None:
    with pytest.raises(InputError, match=f"the same limit stands in {cell_of('Point')} already"):
        read(COD, COD)
    assert len(read(COD, {**COD, "Statistic": "grab sample"}).limits) == 2
    with pytest.raises(InputError, match="the same figure of a supplier stands in"):
        read(figures=[COPPER, COPPER])


@pytest.mark.parametrize("name", list(presets()))
def test_rows_of_a_preset_can_be_pasted_into_the_sheet(name: str) -> None:
    """Every preset and form goes out as rows and comes in again as the same limits."""
    found = limits_of_presets([name])
    text = csv_rows("PIT", found).decode("utf-8-sig")
    rows: list[dict[str, Any]] = []
    for row in csv.DictReader(io.StringIO(text)):
        rows.append({head: _as_typed(head, cell) for head, cell in row.items()})
    for first in range(0, len(rows), 10):  # as many as stand above the other table
        drain, part = read(*rows[first : first + 10]), found[first : first + 10]
        assert [item.limit for item in drain.limits] == [replace(limit, per="") for limit in part]


def _as_typed(head: str, cell: str) -> Any:
    is_number = head in ("Value", "Value to", "Days or hours", "Reference flow, L/kg") and cell
    return float(cell) if is_number else cell
