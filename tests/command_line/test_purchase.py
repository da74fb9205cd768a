"""What to order, what runs out, what expires and the money by week, on the command line and in files."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl.utils import get_column_letter

from costing.front_ends.workbook.build import demo_book
from tests.command_line.test_command_line import refused, run


def told(*arguments: str) -> Any:
    return json.loads(run("purchase", *arguments, "--json").stdout)


def changed(folder: Path, sheet: str, **cells: Any) -> str:
    """The demo book with other cells on one sheet."""
    book = openpyxl.load_workbook(demo_book())
    for place, value in cells.items():
        book[sheet][place] = value
        if isinstance(value, str):
            book[sheet][place].data_type = "s"  # a text, whatever it begins with
    path = folder / "book.xlsx"
    book.save(path)
    return str(path)


def row_of(sheet: str, code: str) -> int:
    book = openpyxl.load_workbook(demo_book())
    return next(row for row in range(1, 90) if book[sheet].cell(row, 1).value == code)


def test_the_demo_shows_a_late_order_a_batch_that_expires_and_a_break_worth_it() -> None:
    found = told()
    assert [(row["Material"], row["Packs"], row["Arrives"]) for row in found["order_now"]] == [
        ("INDIGO-94", 71, "2025-02-10"),
        ("HYDRO-88", 30, "2025-01-24"),
    ]
    assert found["order_now"][0]["Remark"].startswith("LATE: the safety stock wants it on 2025-01-06")
    assert found["runs_out"] == []
    # Of 400 kg of W-0807 the lots up to 8 February take 48.5, 41.7, 23.0, 33.7, 41.7, 38.3 and 8.5 kg.
    (lost,) = (row for row in found["expires"] if row["Batch"] == "W-0807")
    assert lost["Unused [kg]"] == pytest.approx(400.0 - 235.4, abs=0.4)
    assert found["breaks"][0]["Worth it"].startswith("yes: saves")
    assert {row["Setting"] for row in found["terms_taken"]} >= {"need spread", "holding rate"}


def test_the_money_of_all_weeks_is_that_of_all_orders() -> None:
    found = told()
    orders = sum(row["Money [EUR]"] for key in ("order_now", "order_later") for row in found[key])
    weeks = sum(row["Proposed orders [EUR]"] for row in found["cash"])
    assert weeks == pytest.approx(orders, abs=0.05)
    # P-2041: 750 kg of INDIGO-94 at its price of the sheet Materials, 60 days from 24 January.
    (week,) = (row for row in found["cash"] if row["From"] == "2025-03-24")
    assert week["Open orders [EUR]"] == pytest.approx(750 * 7.155)


def test_an_open_order_that_is_overdue_or_has_no_price_says_so(tmp_path: Path) -> None:
    row = row_of("Open orders", "P-2052")
    book = changed(tmp_path, "Open orders", **{f"C{row}": "supplier Q"})
    rows = {one["Order"]: one for one in told(book, "--from", "2025-01-15")["open_orders"]}
    late = rows["P-2052"]
    assert (late["Named for"], late["Counted on"]) == ("2025-01-13", "2025-01-15")
    assert late["Money [EUR]"] is None
    overdue, no_price = late["Remark"].split("; ")
    assert overdue == "OVERDUE since 2025-01-13: ask the supplier"
    assert no_price == "NO PRICE: supplier 'supplier Q' has no offer of 'HYDRO-88'"
    assert (rows["P-2041"]["Money [EUR]"], rows["P-2041"]["Remark"]) == (5366.25, "")


def test_a_longer_plan_of_the_same_orders_has_the_same_safety_stock() -> None:
    """The mean need is that up to the last lot: INDIGO-94 takes 2,491 kg in 61 days, 286 kg a week."""
    short, long = (
        {row["Material"]: row for row in told("--weeks", weeks)["stock"]} for weeks in ("13", "60")
    )
    for code, row in short.items():
        for name in ("Mean of a week [kg]", "Safety stock [kg]", "Re-order point [kg]"):
            assert long[code][name] == pytest.approx(row[name]), (code, name)
    assert short["INDIGO-94"]["Mean of a week [kg]"] == pytest.approx(2491.1 * 7 / 61, rel=1e-3)


def test_a_strike_of_a_week_runs_out_of_what_was_at_sea() -> None:
    rows = told("--late", "7")["runs_out"]
    assert [(row["Material"], row["Runs out on"]) for row in rows][:2] == [
        ("HYDRO-88", "2025-01-17"),
        ("INDIGO-94", "2025-01-24"),
    ]


def test_a_late_order_hides_no_shortage_before_it_and_a_delay_tells_first_what_runs_out() -> None:
    """HYDRO-88 runs out until the open order comes: the new order is late too, yet mends nothing of that."""
    found = told("--late", "7")
    (hydro,) = (row for row in found["order_now"] if row["Material"] == "HYDRO-88")
    assert "; 132 kg are owed from 2025-01-17 to 2025-01-19; " in hydro["Remark"]
    assert run("purchase", "--late", "7").stdout.startswith("Runs out ")
    assert "no need is short before it comes on 2025-02-10" in told()["order_now"][0]["Remark"]


def test_the_demo_says_from_whom_each_order_is() -> None:
    found = told()
    assert all(row["Supplier"] for key in ("order_now", "order_later") for row in found[key])


def test_lots_that_are_late_already_and_sheets_without_a_row_are_told(tmp_path: Path) -> None:
    assert "1 lot should have begun before 2025-01-06" in run("purchase").stdout
    book = openpyxl.load_workbook(demo_book())
    del book["Stock"], book["Open orders"]
    path = tmp_path / "book.xlsx"
    book.save(path)
    shown = " ".join(run("purchase", str(path)).stdout.split())
    assert "The sheet Stock holds no row: the store counts as empty. Together" in shown
    assert "Nothing is on order." in shown


def test_orders_go_to_csv_and_no_text_of_the_book_is_a_formula(tmp_path: Path) -> None:
    evil = '=HYPERLINK("http://x.example","pay")'
    book = changed(tmp_path, "Purchase terms", **{f"B{row_of('Purchase terms', 'INDIGO-94')}": evil})
    out = tmp_path / "orders.csv"
    run("purchase", book, "--out", str(out))
    with out.open(encoding="utf-8-sig", newline="") as stream:
        rows = list(csv.DictReader(stream))
    (first, *_) = (row for row in rows if row["Material"] == "INDIGO-94")
    assert first["Supplier"] == f"'{evil}"
    assert first["Packs"] == "71"
    assert float(first["Money [EUR]"]) == pytest.approx(71 * 25 * 7.155 + 150, abs=0.01)


def test_the_workbook_has_a_sheet_for_each_table_and_native_charts(tmp_path: Path) -> None:
    out = tmp_path / "plan.xlsx"
    run("purchase", "--out", str(out), "--picture", str(tmp_path / "plan.png"))
    book = openpyxl.load_workbook(out)
    assert book.sheetnames[:3] == ["To order now", "To order later", "Open orders"]
    charts = book["Stock charts"]._charts  # type: ignore[attr-defined]
    assert len(charts) == 11
    days = [row[1].value for row in book["Stock by day"].iter_rows(min_row=7) if row[0].value == "HYDRO-88"]
    assert len(days) == 91
    assert len(book["Money by week"]._charts) == 1  # type: ignore[attr-defined]
    assert (tmp_path / "plan.png").read_bytes()[1:4] == b"PNG"


def test_an_order_without_a_price_takes_every_sum_with_it(tmp_path: Path) -> None:
    row = row_of("Materials", "INDIGO-94")
    book = openpyxl.load_workbook(demo_book())
    heads = {
        cell.value: get_column_letter(place)
        for line in book["Materials"].iter_rows()
        for place, cell in enumerate(line, 1)
    }
    found = told(
        changed(tmp_path, "Materials", **{f"{heads[head]}{row}": None for head in ("Price", "Freight")})
    )
    order = found["order_now"][0]
    assert order["Money [EUR]"] is None
    assert "NO PRICE: material 'INDIGO-94' has no price in the book" in order["Remark"]
    (week,) = (one for one in found["cash"] if one["From"] == "2025-04-07")
    assert week["Proposed orders [EUR]"] is None
    assert week["Together [EUR]"] is None


@pytest.mark.parametrize(
    ("arguments", "text"),
    [
        (("--weeks", "0"), "weeks: is 0; accepted is a whole number from 1"),
        (("--late", "-1"), "delay: is -1 days; accepted is 0"),
        (("--of", "HYDRO-88"), "--of: goes with --picture"),
        (("--from", "31.1.2025"), "--from: is '31.1.2025'; accepted is a day"),
        (("--out", "plan.txt"), "the name of orders must end in .xlsx or .csv"),
    ],
)
def test_what_makes_no_sense_is_refused(arguments: tuple[str, ...], text: str) -> None:
    assert text in refused("purchase", *arguments)


def test_a_supplier_who_offers_nothing_of_it_is_refused(tmp_path: Path) -> None:
    row = row_of("Purchase terms", "HYDRO-88")
    said = refused("purchase", changed(tmp_path, "Purchase terms", **{f"B{row}": "supplier Q"}))
    assert (
        "supplier 'supplier Q' has no offer of 'HYDRO-88'; accepted is one of: supplier N, supplier S" in said
    )


def test_a_refused_cell_of_the_stock_takes_no_quote_away(tmp_path: Path) -> None:
    row = row_of("Stock", "HYDRO-88")
    book = changed(tmp_path, "Stock", **{f"E{row}": "soon"})
    assert "last day is 'soon', not a date" in refused("purchase", book)
    assert run("quote", book, "--json").exit_code == 0


def test_a_book_from_before_these_sheets_is_told_what_it_lacks(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(demo_book())
    for title in ("Stock", "Open orders", "Purchase terms"):
        del book[title]
    path = tmp_path / "old.xlsx"
    book.save(path)
    assert "Purchase terms: holds no row, nor do Stock and Open orders" in refused("purchase", str(path))


def test_what_is_needed_without_terms_is_told_and_never_ordered(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(demo_book())
    book["Purchase terms"].delete_rows(row_of("Purchase terms", "SEQ-40"))
    path = tmp_path / "book.xlsx"
    book.save(path)
    found = told(str(path))
    assert "SEQ-40" not in {row["Material"] for key in ("order_now", "order_later") for row in found[key]}
    (short,) = (row for row in found["runs_out"] if row["Material"] == "SEQ-40")
    # 146.2 kg are needed and 120 are there: the last two lots of it are short.
    assert short["Runs out on"] == "2025-02-28"
    assert "no purchase terms, so nothing is ordered" in short["Then"]
    assert "no purchase terms, so nothing is ordered: SEQ-40" in run("purchase", str(path)).output
