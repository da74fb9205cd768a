"""What an order book takes, on the command line and in files."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.process.postings import STORE
from tests.command_line.test_command_line import refused, run

HEADING = "Order,Enquiry,Length,Unit,Due,Status\n"


def told(*arguments: str) -> Any:
    return json.loads(run("need", *arguments, "--json").stdout)


def orders(folder: Path, rows: str, heading: str = HEADING, name: str = "orders.csv") -> str:
    path = folder / name
    path.write_text(heading + rows, "utf-8")
    return str(path)


def test_one_order_takes_what_the_ledger_of_its_enquiry_takes(tmp_path: Path) -> None:
    """By the lines of the ledger of Q-01 at the same length, times its yarn."""
    mill = read_book(demo_book())
    enquiry = mill.enquiries["Q-01"]
    ledger = open_ledger(mill, enquiry)
    path = orders(tmp_path, f"1,Q-01,{enquiry.order_length},m,2025-03-03,\n")
    rows = told("--orders", path, "--by", "day")["need"]
    assert {row["Day"] for row in rows} == {"2025-02-03"}
    bought = ledger.select(lambda line: line.source == STORE)
    for row in rows:
        lines = [line for line in bought if line.material == row["Material"]]
        assert row["Needed [kg]"] == pytest.approx(
            sum(line.amount for line in lines) * ledger.plan.saleable_mass, rel=1e-9
        )


def test_the_periods_add_up_and_the_lots_are_told() -> None:
    """Days, weeks and months of the demo come to the same kilograms of each product."""
    found = {period: told("--by", period, "--lots") for period in ("day", "week", "month")}
    sums: dict[str, dict[str, float]] = {}
    for period, tables in found.items():
        for row in tables["need"]:
            held = sums.setdefault(row["Material"], {})
            held[period] = held.get(period, 0.0) + row["Needed [kg]"]
    whole = {row["Material"]: row["Needed [kg]"] for row in found["week"]["need_materials"]}
    for code, held in sums.items():
        assert list(held.values()) == pytest.approx([whole[code]] * 3)
    lots = found["week"]["dye_lots"]
    assert [row["Late [days]"] for row in lots if row["Orders"] == "1003"] == [4]
    assert any(row["Orders"] == "1001, 1002" and row["Length [m]"] == 20000 for row in lots)
    assert not any("1015" in row["Orders"] or "1016" in row["Orders"] for row in lots)
    assert any(row["Orders"].endswith("1014") for row in told("--lots", "--forecast")["dye_lots"])


def test_a_map_of_columns_is_kept_beside_the_file(tmp_path: Path) -> None:
    """Semicolons, decimal comma, days first, other headings: the second time without the map."""
    rows = "A1;Q-01;1.250,5;03.03.2025\n"
    path = orders(tmp_path, rows, "Auftrag;Anfrage;Meter [m];Termin\n")
    columns = "order=Auftrag, enquiry=Anfrage, length=Meter [m], due=Termin"
    first = told("--orders", path, "--columns", columns, "--keep-columns", "--lots")
    assert first["dye_lots"][0]["Length [m]"] == 1250.5
    assert told("--orders", path, "--lots") == first


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("1,Q-01,5000,m,2025-03-03,\n2,Q-99,100,m,2025-03-03,\n", "1 not known: 'Q-99' (row 3)"),
        ("1,Q-01,5000,kg,2025-03-03,\n", "row 2: length has the unit 'kg'"),
        (
            "1,Q-01,5000,,2025-03-03,\n",
            "row 2: length has no unit; accepted is one behind the heading, as 'length [m]'",
        ),
        ("1,Q-01,-5,m,2025-03-03,\n", "row 2: length is -5 m; accepted is 1 to"),
        ("1,Q-01,,m,2025-03-03,\n", "row 2: length is empty"),
        ("1,Q-01,5000,m,,\n", "row 2: due is empty; accepted is a date"),
        ("1,Q-01,5000,m,03/04/2025,\n", "no row tells day from month"),
        ("1,Q-01,5000,m,2025-03-03,\n2,Q-01,50,m,03.04.2025,\n", "one form of date in a file"),
        ("1,Q-01,5000,m,2025-03-03,done soon\n", "row 2: order status is 'done soon'"),
        ('1,Q-01,"1,500",m,2025-03-03,\n', "no row tells whether its sign is decimal"),
        ("", "holds no order"),
    ],
)
def test_a_row_that_makes_no_sense_is_refused_by_its_row(tmp_path: Path, rows: str, said: str) -> None:
    assert said in refused("need", "--orders", orders(tmp_path, rows))


def test_what_is_left_out_is_told_in_every_output(tmp_path: Path) -> None:
    """An unknown enquiry, skipped on request: the tables and the file say that they are not complete."""
    path = orders(tmp_path, "1,Q-01,5000,m,2025-03-03,\n2,Q-99,100,m,2025-03-03,\n")
    out = tmp_path / "need.xlsx"
    done = run("need", "--orders", path, "--skip-unknown", "--out", str(out))
    assert done.output.count("INCOMPLETE") >= 2
    assert "left out: 'Q-99' (row 3)" in done.stderr
    book = openpyxl.load_workbook(out)
    assert all("INCOMPLETE" in str(sheet["A2"].value) for sheet in book)
    assert len(book["By group"]._charts) == 1  # type: ignore[attr-defined]


def test_a_name_that_looks_like_a_formula_stays_text(tmp_path: Path) -> None:
    """In the workbook and in the CSV."""
    bad = '=HYPERLINK("http://x","y")'
    rows = f'"{bad.replace(chr(34), chr(34) * 2)}",Q-01,5000,m,2025-03-03,\n'
    path, out = orders(tmp_path, rows), tmp_path / "need.xlsx"
    run("need", "--orders", path, "--out", str(out))
    cells = [cell for row in openpyxl.load_workbook(out)["Dye lots"].iter_rows() for cell in row]
    (found,) = [cell for cell in cells if cell.value == bad]
    assert found.data_type == "s"
    assert found.quotePrefix


def test_csv_is_written_once_and_other_files_are_left_alone(tmp_path: Path) -> None:
    out = tmp_path / "need.csv"
    run("need", "--out", str(out))
    rows = list(csv.DictReader(out.read_text("utf-8-sig").splitlines()))
    assert {row["Material"] for row in rows} >= {"INDIGO-94", "HYDRO-88"}
    assert "is there already" in refused("need", "--out", str(out))
    out.write_text("mine", "utf-8")
    assert "holds no earlier requirement" in refused("need", "--out", str(out), "--overwrite")
    assert out.read_text("utf-8") == "mine"
    assert "must end in .xlsx or .csv" in refused("need", "--out", str(tmp_path / "need.ods"))


def test_a_wrong_cell_of_the_order_book_takes_no_quote_away(tmp_path: Path) -> None:
    """88 for a status: need is refused at its cell, a quote is not."""
    book = openpyxl.load_workbook(demo_book())
    sheet = book["Order book"]
    (cell,) = [cell for row in sheet.iter_rows() for cell in row if cell.value == "running"]
    cell.value = 88
    path = tmp_path / "mill.xlsx"
    book.save(path)
    assert f"Order book!{cell.coordinate}: order status is '88'" in refused("need", str(path))
    assert run("quote", str(path), "-e", "Q-01", "--json").exit_code == 0
    del book["Order book"]
    book.save(path)
    assert "Order book: holds no order" in refused("need", str(path))


def test_a_range_that_cannot_run_a_lot_is_told_by_its_orders(tmp_path: Path) -> None:
    """Side by side more sets than the range has places for: the orders are named, or left out on request."""
    path = orders(tmp_path, "1,Q-01,5000,m,2025-03-03,\n2,Q-02,5000,m,2025-03-03,\n")
    book = openpyxl.load_workbook(demo_book())
    sheet = book["Enquiries"]
    heads = {
        str(cell.value): cell.column for row in sheet.iter_rows(max_row=12) for cell in row if cell.value
    }
    row = next(row for row in range(1, 40) if sheet.cell(row, 1).value == "Q-02")
    sheet.cell(row, heads["Sets side by side"]).value = 4
    mill = tmp_path / "mill.xlsx"
    book.save(mill)
    said = refused("need", str(mill), "--orders", path)
    assert "1 of its lines cannot be planned: orders.csv, row 3" in said
    done = run("need", str(mill), "--orders", path, "--without-refused")
    assert "INCOMPLETE: 1 refused orders of 5,000 m" in done.output


def test_a_lot_that_runs_longer_than_its_time_is_asked_about(tmp_path: Path) -> None:
    """A thousand times too long: by hand 8,000,000 m of cloth at the speed of the range are months."""
    path = orders(tmp_path, "77,Q-01,8000,km,2025-03-03,\n78,Q-02,8000,m,2025-03-03,\n")
    said = " ".join(run("need", "--orders", path).output.split())
    assert "(77) runs" in said
    assert "8,000,000 m, is that right?" in said
    assert "(78)" not in said
