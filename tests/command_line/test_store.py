"""What stands in the store, what must stand apart and the ceilings, on the command line and in files."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from costing.book.stock import store_of
from costing.front_ends.command_frame import read
from costing.front_ends.workbook.build import demo_book
from costing.purchasing.store import held_in_store
from costing.purchasing.store_safety import NO_CEILING, NOT_KNOWN
from costing.reference_data.store_safety import STORE_DEFERS
from costing.report.store import ceilings_table
from costing.settings.mill import Mill
from tests.command_line.test_command_line import refused, run
from tests.command_line.test_purchase import changed, row_of

EVIL = '=HYPERLINK("http://x.invalid","W-1")'


@pytest.fixture(scope="module")
def demo() -> Mill:
    return read(None)[0]


def told(*arguments: str) -> Any:
    return json.loads(run("store", *arguments, "--json").stdout)


def rows_of(table: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    return {row["Product"]: row for row in table}


def with_stock(folder: Path, *codes: str) -> str:
    """The demo book with a batch of 10 kg of other products too."""
    book = openpyxl.load_workbook(demo_book())
    first = next(
        row for row in range(row_of("Stock", "PVA-95") + 1, 200) if not book["Stock"].cell(row, 1).value
    )
    for at, code in enumerate(codes):
        book["Stock"].cell(first + at, 1).value = code
        book["Stock"].cell(first + at, 3).value = 10
    path = folder / "book.xlsx"
    book.save(path)
    return str(path)


def test_each_product_of_the_stock_with_its_mass_and_what_is_known_of_it() -> None:
    found = rows_of(told()["store_products"])
    assert "WARP-7" not in found
    hydro = found["HYDRO-88"]
    # H-5117 and the opened drum H-5090, whatever its strength.
    assert (hydro["In store [kg]"], hydro["Batches"]) == (730.0, "H-5117, H-5090")
    assert (hydro["UN number"], hydro["Class"], hydro["Packing group"]) == ("UN1384", "4.2", "II")
    assert hydro["Source"] == "us-hazmat-table-2015"
    assert (found["INDIGO-94"]["Proper shipping name"], found["INDIGO-94"]["UN number"]) == (NOT_KNOWN, "")


def test_one_row_for_a_reason_with_the_products_of_both_sides(tmp_path: Path) -> None:
    book = with_stock(tmp_path, "ACETIC-80", "SULFIDE-60", "SULFUR-BLACK-LIQ")
    rows = {row["Why"]: row for row in told(book)["store_apart"]}
    sulfide = next(row for why, row in rows.items() if why.startswith("Acid on sulfide"))
    assert (sulfide["Keep"], sulfide["Apart from"]) == ("ACETIC-80", "SULFUR-BLACK-LIQ, SULFIDE-60")
    assert (sulfide["Pairs"], sulfide["Source"]) == (2, "icsc-1047")
    wet = next(row for why, row in rows.items() if why.startswith("A leak of a watery"))
    assert wet["Keep"] == "HYDRO-88, HYDRO-90"
    assert wet["Apart from"] == "LYE-50, WET-N-60, WET-A-40, SEQ-40, ACETIC-80, SULFUR-BLACK-LIQ"
    assert wet["Pairs"] == 12
    assert len(told(book)["store_apart"]) == len(rows)


@pytest.mark.parametrize(
    ("ceiling", "over", "result"),
    [
        (2600.0, 0.0, "not over"),
        (2600.0 - 1e-9, 0.0, "not over"),  # a last digit is no mass
        (2599.5, 0.5, "OVER by 0.5 kg now"),
        (None, None, NO_CEILING),
    ],
)
def test_the_mass_now_against_the_ceiling_at_its_border(
    demo: Mill, ceiling: float | None, over: float | None, result: str
) -> None:
    kept = store_of(demo)
    terms = {**kept.terms, "LYE-50": replace(kept.terms["LYE-50"], storage_ceiling=ceiling)}
    table = ceilings_table(held_in_store(demo, replace(kept, terms=terms)))
    (lye,) = (row for row in table.rows if row[0] == "LYE-50")
    assert lye == ["LYE-50", 2600.0, over, ceiling, result]


def ceiling_column() -> str:
    book = openpyxl.load_workbook(demo_book())
    cells = (cell for line in book["Purchase terms"].iter_rows() for cell in line)
    return next(cell.column_letter for cell in cells if cell.value == "Ceiling, kg")


def test_the_largest_planned_stock_against_the_ceiling(tmp_path: Path) -> None:
    # 20,000 kg are on order and come to what stands there: over, and purchase says where to look.
    row = row_of("Open orders", "P-2041")
    book = changed(tmp_path, "Open orders", **{f"D{row}": 20000})
    terms = openpyxl.load_workbook(book)
    terms["Purchase terms"][f"{ceiling_column()}{row_of('Purchase terms', 'INDIGO-94')}"] = 5000
    terms.save(book)
    plan = told(book, "--planned")["store_ceilings"]
    indigo = rows_of(plan)["INDIGO-94"]
    assert indigo["On"] == "2025-01-24"
    used = sum(
        one["Needed [kg]"]
        for one in json.loads(run("need", book, "--by", "day", "--json").stdout)["need"]
        if one["Material"] == "INDIGO-94" and one["Day"] < "2025-01-24"
    )
    assert indigo["Most planned [kg]"] == pytest.approx(800.0 + 20000.0 - used)
    assert indigo["Over then by [kg]"] == pytest.approx(15800.0 - used)
    assert indigo["Result"].startswith("OVER by ")
    assert indigo["Result"].endswith(" kg as planned")
    said = run("purchase", book).stdout.strip().splitlines()[-1]
    assert said == (
        "over the storage ceiling: INDIGO-94; 8 pairs of products must not stand together: "
        "costing store --planned"
    )


def test_purchase_is_silent_on_a_store_where_nothing_is_amiss(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(demo_book())
    for sheet, column in (("Stock", 1), ("Purchase terms", 1), ("Open orders", 2)):
        for row in range(90, 0, -1):
            if str(book[sheet].cell(row, column).value).startswith("HYDRO-"):
                book[sheet].delete_rows(row)
    path = tmp_path / "book.xlsx"
    book.save(path)
    assert "costing store" not in run("purchase", str(path)).stdout


def test_every_product_that_the_order_book_takes_and_no_yarn(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(demo_book())
    book["Stock"].delete_rows(row_of("Stock", "SEQ-40"))
    path = tmp_path / "book.xlsx"
    book.save(path)
    assert "SEQ-40" not in rows_of(told(str(path))["store_products"])
    found = rows_of(told(str(path), "--all")["store_products"])
    assert found["SEQ-40"]["In store [kg]"] == 0.0
    needed = {row["Material"] for row in json.loads(run("need", str(path), "--json").stdout)["need"]}
    assert needed <= set(found)
    assert not any(code.startswith(("WARP", "WEFT")) for code in found)


def test_the_cautions_and_who_comes_first_and_all_in_80_letters() -> None:
    done = run("store", "--planned", "--all").stdout
    assert max(len(line) for line in done.splitlines()) <= 80
    assert "SODIUM HYDROSULFITE (HYDRO-88, HYDRO-90): Self-heating when damp" in done
    assert done.endswith("come first, and the advice of a competent person.\n")
    assert " ".join(done.split()).endswith(STORE_DEFERS)
    assert "complian" not in done


def test_formula_text_in_a_batch_stays_text(tmp_path: Path) -> None:
    book = changed(tmp_path, "Stock", **{f"B{row_of('Stock', 'SEQ-40')}": EVIL})
    sheet, table = tmp_path / "store.xlsx", tmp_path / "store.csv"
    assert run("store", book, "--out", str(sheet)).exit_code == 0
    assert run("store", book, "--out", str(table)).exit_code == 0
    written = openpyxl.load_workbook(sheet)
    assert written.sheetnames == ["Products", "Keep apart", "Ceilings", "Cautions", "Sources"]
    cells = [cell for line in written["Products"].iter_rows() for cell in line if cell.value == EVIL]
    assert [cell.data_type for cell in cells] == ["s"]
    assert written["Keep apart"]["A4"].value == STORE_DEFERS
    with table.open(encoding="utf-8-sig", newline="") as stream:
        rows = rows_of(list(csv.DictReader(stream)))
    assert rows["SEQ-40"]["Batches"] == f"'{EVIL}"


@pytest.mark.parametrize(
    ("arguments", "text"),
    [
        (("--weeks", "4"), "--weeks: goes with --planned"),
        (("--all", "--late", "4"), "--late: goes with --planned"),
        (("--forecast",), "--forecast: goes with --planned or --all"),
        (("--out", "store.txt"), "must end in .xlsx or .csv"),
    ],
)
def test_what_makes_no_sense_is_refused(arguments: tuple[str, ...], text: str) -> None:
    assert text in refused("store", *arguments)


def test_a_product_that_the_book_does_not_know_and_an_empty_store_are_refused(tmp_path: Path) -> None:
    row = row_of("Stock", "SEQ-40")
    assert "POTASH" in refused("store", changed(tmp_path, "Stock", **{f"A{row}": "POTASH"}))
    book = openpyxl.load_workbook(demo_book())
    del book["Stock"]
    path = tmp_path / "empty.xlsx"
    book.save(path)
    assert "Stock: holds no product; accepted is a row or more" in refused("store", str(path))
