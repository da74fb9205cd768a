"""The sheet Treatment: what it gives, and what is refused by its cell, without taking away a quote."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.report import work_out
from costing.settings.mill import Mill
from tests.workbook.editing import Edit, cell_with, changed, sheet_of

SLUDGE = "activated sludge, denim"
TERMS = {
    "Reception, per m3": 0.3,
    "Volume, per m3": 0.4,
    "Biology, per m3": 0.2,
    "Sludge, per m3": 0.25,
    "Reference COD, mg/L": 500,
    "Reference solids, mg/L": 250,
}


def at_stage(step: str, head: str, value: Any) -> Edit:
    """Sets a cell in the row of a stage."""

    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Treatment")
        sheet.cell(cell_with(sheet, step).row, cell_with(sheet, head).column).value = value

    return edit


def below(first: str, row: dict[str, Any], rows_down: int = 2) -> Edit:
    """Fills a row under the head of a table, and below its line of meanings."""

    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Treatment")
        head = cell_with(sheet, first)
        for name, value in row.items():
            column = cell_with(sheet, name, row=head.row).column
            sheet.cell(head.row + rows_down, column).value = value

    return edit


def charged(**more: Any) -> Edit:
    row = {"Charges water of": "PIT", **TERMS}
    return below("Charges water of", {**row, **{HEADS[name]: value for name, value in more.items()}})


HEADS = {"plain": "Plain, per m3", "biology": "Biology, per m3", "point": "Charges water of"}


def read(folder: Path, edit: Edit) -> Mill:
    return read_book(changed(folder, edit))


def test_what_the_sheet_gives(tmp_path: Path) -> None:
    drain = read(tmp_path, charged()).drain
    assert [(stage.number, stage.stands) for stage in drain.stages] == [
        (1, "built"),
        (2, "built"),
        (3, "planned"),
    ]
    assert drain.stages[0].settings == {"target_acidity": 8.5}
    assert drain.stages[1].own_removal == {"suspended solids": 0.85}
    assert drain.stages[2].settings == {"water_recovery": 0.75}
    charge = drain.charges["PIT"]
    assert charge.by_strength
    assert charge.biology_charge == pytest.approx(0.0002)
    assert charge.reference_demand == pytest.approx(500e-6)
    prices = drain.prices["PIT"]
    assert prices.cake_price == pytest.approx(0.06)
    assert prices.returned_share == pytest.approx(0.4)
    assert prices.salt_ceiling == pytest.approx(1.5e-3)


def test_stages_run_in_the_order_of_their_numbers(tmp_path: Path) -> None:
    drain = read(tmp_path, at_stage(SLUDGE, "No.", 9)).drain
    assert [stage.number for stage in drain.stages] == [1, 3, 9]


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (at_stage(SLUDGE, "Stage", "bio"), r"Treatment!C10: stage is 'bio'; accepted is one of"),
        (
            at_stage(SLUDGE, "Treats water of", "POND"),
            r"Treatment!A10: point is 'POND'; accepted is one of: PIT",
        ),
        (at_stage(SLUDGE, "No.", 1), r"Treatment!B10: no. 1 of PIT stands twice, also in Treatment!B9"),
        (at_stage(SLUDGE, "Stands", "soon"), r"Treatment!D10: stands is 'soon'; accepted is one of: built"),
        (
            at_stage("neutralisation with carbon dioxide", "Target pH", None),
            r"Treatment!E9: target ph is empty; accepted is 6 to 12",
        ),
        (
            at_stage("neutralisation with carbon dioxide", "Target pH", 4),
            r"Treatment!E9: target ph is 4.* 6 to 12",
        ),
        (at_stage(SLUDGE, "Target pH", 8), r"Treatment!E10: target ph is 8 beside activated sludge, denim"),
        (at_stage(SLUDGE, "Dose, mg/L", 300), r"Treatment!F10: dose, mg/l is 300 beside activated sludge"),
        (at_stage(SLUDGE, "COD removal, %", 120), r"Treatment!I10: cod removal, % is 120 %"),
        (
            at_stage(SLUDGE, "Salt removal, %", 10),
            r"Treatment!N10: salt removal, % is 10 beside activated sludge, denim; .*only a membrane",
        ),
        (
            charged(biology=None),
            r"Treatment!E\d+: biology, per m3 is empty; accepted is a plain price, or all",
        ),
        (
            charged(plain=2),
            r"Treatment!C\d+: reception, per m3 is filled beside the plain price in Treatment!B",
        ),
        (charged(biology=-1), r"Treatment!E\d+: biology, per m3 is -1 money/m3"),
        (charged(point="POND"), r"Treatment!A\d+: point is 'POND'"),
    ],
)
def test_a_wrong_cell_is_named_and_takes_away_no_quote(tmp_path: Path, edit: Edit, said: str) -> None:
    mill = read(tmp_path, edit)
    with pytest.raises(InputError, match=said):
        _ = mill.drain
    offer = work_out(mill, mill.enquiries["Q-02"])
    assert offer.effluent is None
    assert offer.remarks[0].kind == "warning"


def test_an_enquiry_of_the_plan_pays_the_charge_of_the_sheet(tmp_path: Path) -> None:
    mill = read(tmp_path, charged())
    assert work_out(mill, mill.enquiries["Q-02"]).effluent is not None
    assert work_out(mill, mill.enquiries["Q-01"]).effluent is None
