"""The commands of the register of quotes."""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

import costing
from costing.cost.money import rounded
from costing.front_ends.quote_register.record import kept
from costing.front_ends.quote_register.store import save
from costing.front_ends.workbook.build import demo_book
from costing.report import work_out
from costing.settings.inputs import Place, with_inputs
from tests.command_line.test_command_line import refused, run
from tests.quote_register.example import fast_folder
from tests.report.demo import demo_mill

EVIL = "=2+5+cmd|' /C calc'!A0"
REGISTER = "mill_book_quotes.sqlite"


@pytest.fixture
def folder(monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    with fast_folder() as place:
        monkeypatch.chdir(place)
        yield place


def ran(*arguments: str) -> str:
    done = run("register", *arguments)
    assert done.exit_code == 0, done.output
    return done.output


def rows(*arguments: str) -> Any:
    return json.loads(ran(*arguments, "--json"))


def keep(folder: Path, code: str, *changes: tuple[str, str, str, float], **texts: str) -> None:
    """Save an enquiry of the demo with other numbers, as a changed book would give it."""
    mill, enquiry = with_inputs(
        demo_mill(), demo_mill().enquiries[code], {Place(*c[:3]): c[3] for c in changes}
    )
    save(folder / REGISTER, [kept(mill, work_out(mill, enquiry), **texts)])


def test_quotes_are_saved_beside_the_book_listed_and_found(folder: Path) -> None:
    said = ran(
        "save", "-e", "Q-01", "-e", "q-02", "--customer", "overseas 7", "--by", "desk 2", "--note", "a"
    )
    assert "saved Q-01 revision 1" in said
    again = ran("save", "-e", "Q-01", "--note", "once more")
    assert "revision 2" in again
    assert "all numbers as in revision 1" in again
    assert [path.name for path in folder.iterdir()] == [REGISTER]
    assert [(row["Quote"], row["Revision"]) for row in rows("list")["register"]] == [("Q-02", 1), ("Q-01", 2)]
    assert len(rows("list", "--all")["register"]) == 3
    assert "desk 2" in {row["By"] for row in rows("list", "--all")["register"]}
    (found,) = rows("search", "once", "--customer", "OVERSEAS", "--since", "2020-01-01")["register"]
    assert (found["Quote"], found["Revision"], found["Customer"]) == ("Q-01", 2, "overseas 7")
    assert "0 revision(s) found" in ran("search", "--recipe", "none such")
    price = work_out(demo_mill(), demo_mill().enquiries["Q-01"]).quote.price_on("m of finished cloth")
    assert found["Price [on the basis]"] == float(rounded(price, 0.001))


def test_a_shown_quote_is_worked_out_anew(folder: Path) -> None:
    keep(folder, "Q-02", note=EVIL)
    said = " ".join(ran("show", "q-02", "--out", "working.xlsx").split())
    assert "worked out anew: the same to the last digit" in said
    assert "warning: it is worked out" not in said
    assert {"Summary", "Cost lines", "Record"} <= set(load_workbook(folder / "working.xlsx").sheetnames)
    shown = rows("show", "Q-02", "-r", "1")
    assert {"kept", "prices", "cost_lines"} == set(shown)
    lines = work_out(demo_mill(), demo_mill().enquiries["Q-02"]).quote.lines
    assert [row["Cost [EUR per kg]"] for row in shown["cost_lines"]] == [line.cost for line in lines]


def test_a_quote_of_another_version_is_said_and_its_part_is_told_apart(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep(folder, "Q-02")
    version = costing.__version__
    # A later program that works water out dearer.
    import costing.cost.quote as module

    monkeypatch.setattr(costing, "__version__", "9.9")
    plain = module._utilities

    def dearer(ledger: Any, costs: Any) -> Any:
        group, unit, price = plain(ledger, costs)["water"]
        return {**plain(ledger, costs), "water": (group, unit, 2.0 * price)}

    monkeypatch.setattr(module, "_utilities", dearer)
    assert "(today 9.9)" in (said := ran("show", "Q-02"))
    assert "for the program or its tables have changed since" in " ".join(said.split())
    assert "warning: it is worked out by the program of today" in ran("show", "Q-02", "-o", "now.xlsx")
    keep(folder, "Q-02", ("material", "HYDRO-88", "price", 1.6))
    tables = rows("explain", "Q-02")
    effects = {row["What"]: row["Price [EUR/m]"] for row in tables["effects"]}
    assert effects["Program effect"] > 0.0
    assert effects["Price effect"] > 0.0
    told = [row for row in tables["inputs_changed"] if row["Effect"] == "Program"]
    assert (told[0]["Input"], told[0]["Before"], told[0]["After"]) == (
        "version",
        version,
        "9.9",
    )


def test_the_reasons_of_two_revisions_add_up_on_every_level(folder: Path) -> None:
    keep(folder, "Q-02")
    keep(
        *(folder, "Q-02"),
        ("material", "HYDRO-88", "price", 1.6),
        ("mill costs", "", "margin", 0.12),
        ("enquiry", "", "order_length", 21000.0),
        ("step", "indigo dyeing", "indigo_on_yarn", 0.0201),
        ("step", "indigo dyeing", "pick_up", 0.81),
        ("style", "", "warp_waste", 0.031),
        ("style", "", "ends_density", 2500.0),
    )
    for step in ("0.001", "0.00001"):
        tables = rows("explain", "Q-02", "--step", step)
        for unit in ("EUR/m", "EUR/kg"):
            first, *effects, last, difference = (
                (row["What"], Decimal(str(row[f"Price [{unit}]"])).quantize(Decimal(step)))
                for row in tables["effects"]
            )
            names = [name for name, _ in effects]
            assert names == [f"{kind} effect" for kind in ("Cloth", "Lot", "Recipe", "Usage", "Price")]
            assert last[1] - first[1] == difference[1] == sum(amount for _, amount in effects)
            for name, amount in effects:
                for key in ("inputs_changed", "lines_moved"):
                    parts = [
                        Decimal(str(row[f"Difference [{unit}]"])).quantize(Decimal(step))
                        for row in tables[key]
                        if f"{row['Effect']} effect" == name
                    ]
                    assert sum(parts) == amount
    told = {row["Input"]: (row["Before"], row["After"], row["Unit"]) for row in tables["inputs_changed"]}
    assert told["price"] == (1.42, 1.6, "EUR/kg")
    assert told["margin"] == (10.0, 12.0, "%")
    assert "Lot effect" in ran("explain", "Q-02", "--from", "1", "--to", "2", "--out", "why.xlsx")
    assert load_workbook(folder / "why.xlsx").sheetnames == [
        "Effects",
        "Inputs that changed",
        "Lines that move",
    ]


def test_a_quote_is_held_against_another_and_against_the_book_of_today(folder: Path) -> None:
    keep(folder, "P-03")
    keep(folder, "Q-02")
    keep(folder, "Q-02", ("material", "HYDRO-88", "price", 1.2))
    assert "From Q-02 revision 2 to P-03 revision 1" in ran("explain", "Q-02", "P-03")
    effects = rows("explain", "Q-02", "--now", str(demo_book()))["effects"]
    assert [row["What"] for row in effects] == ["Q-02 revision 2", "Price effect", "Q-02 now", "difference"]
    assert effects[1]["Price [EUR/m]"] > 0.0


def test_exported_texts_are_no_formulas(folder: Path) -> None:
    keep(folder, "Q-02", note=EVIL, customer="-1+1", saved_by="@desk")
    keep(folder, "Q-02", ("mill costs", "", "margin", 0.12))
    assert "2 revision(s)" in ran("export", "--out", "all.xlsx")
    book = load_workbook(folder / "all.xlsx")
    assert book.sheetnames == ["Register", "Details", "Cost lines"]
    cells = [cell for name in ("Register", "Details") for row in book[name].iter_rows() for cell in row]
    assert [cell.value for cell in cells].count(EVIL) == 2
    assert all(cell.data_type != "f" for cell in cells)
    numbers = [row[1] for row in book["Cost lines"].iter_rows(min_row=7, values_only=True)]
    assert set(numbers) == {1, 2}
    ran("export", "--quote", "q-02", "--out", "all.csv")
    with (folder / "all.csv").open(encoding="utf-8-sig", newline="") as stream:
        first, second = csv.DictReader(stream)
    assert (first["Note"], first["Customer"], first["By"]) == (f"'{EVIL}", "'-1+1", "'@desk")
    assert float(second["Price [on the basis]"]) > float(first["Price [on the basis]"])
    assert "is there already" in refused("register", "export", "--out", "all.csv")
    assert "2 revision(s)" in ran("export", "--out", "all.csv", "--overwrite")
    (folder / "mine.csv").write_text("mine")
    assert "was left as it is" in refused("register", "export", "--out", "mine.csv", "--overwrite")
    assert (folder / "mine.csv").read_text() == "mine"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("list",), "in this folder there is none; accepted is the name of one"),
        (("list", "--register", "none.sqlite"), "none.sqlite: is not there"),
        (("save", "-e", "Q-01", "--register", "no/where.sqlite"), "its folder is not there"),
    ],
)
def test_a_register_that_is_not_there_is_refused(folder: Path, arguments: tuple[str, ...], said: str) -> None:
    assert said in refused("register", *arguments)
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("search", "--since", "yesterday"), "--since: is 'yesterday'; accepted is a day such as 2026-01-31"),
        (("show", "Q-77"), "holds no quote 'Q-77'; there are: Q-01"),
        (("show", "Q-01", "-r", "3"), "holds no revision 3 of Q-01; there is 1"),
        (("show", "Q-01", "-r", "0"), "--revision: is 0; accepted is 1 or more"),
        (("explain", "Q-01"), "holds no one before the last of Q-01"),
        (("explain", "Q-01", "--from", "1", "--step", "none"), "--step: is 'none'"),
        (("explain", "Q-01", "--now", "b.xlsx", "--to", "1"), "--to: names a revision"),
        (("export", "--out", "all.pdf"), "accepted is a name that ends in .xlsx or .csv"),
        (("export", "no such", "--out", "all.csv"), "holds no quote of that kind"),
    ],
)
def test_what_is_asked_wrongly_is_refused(folder: Path, arguments: tuple[str, ...], said: str) -> None:
    keep(folder, "Q-01")
    assert said in refused("register", *arguments)


def test_two_registers_in_a_folder_are_asked_for_by_name(folder: Path) -> None:
    keep(folder, "Q-02")
    (folder / REGISTER).rename(folder / "other_quotes.sqlite")
    keep(folder, "Q-01")
    assert "there are 2: mill_book_quotes.sqlite, other_quotes.sqlite" in refused("register", "list")
    assert rows("list", "--register", "other_quotes.sqlite")["register"][0]["Quote"] == "Q-02"


def test_a_book_is_never_taken_for_the_register(folder: Path) -> None:
    shutil.copy(demo_book(), folder / "mine.xlsx")
    before = (folder / "mine.xlsx").read_bytes()
    assert "is the book itself" in refused("register", "save", "mine.xlsx", "--register", "mine.xlsx")
    assert "is no register of quotes" in refused("register", "list", "--register", "mine.xlsx")
    assert (folder / "mine.xlsx").read_bytes() == before
