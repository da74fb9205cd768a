"""The quote document: a customer's page with nothing of the recipe in its file, and the mill's working."""

from __future__ import annotations

import datetime
import re
import shutil
import subprocess
import zipfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from openpyxl import load_workbook

from costing.front_ends.command_line import main
from costing.front_ends.programs import libreoffice
from costing.reference_data import defaults
from costing.report import costs_of, work_out
from costing.report.offer import offer_of
from costing.settings.mill import Mill
from costing.settings.quote_texts import QuoteText
from tests.report.demo import demo_mill

MARGIN = 0.12345
CODE = "B-01"


@pytest.fixture
def mill(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Mill:
    """The demo mill with a margin that no other figure looks like; the working folder is empty."""
    monkeypatch.chdir(tmp_path)
    made = replace(demo_mill())
    made.costs = replace(costs_of(made), margin=MARGIN)
    made.quote_texts = [*made.quote_texts, QuoteText("closing", "thank you", CODE, "Quote texts!B20")]
    monkeypatch.setattr(
        "costing.front_ends.document_command.read", lambda path, on: (made, Path("demo.xlsx"))
    )
    return made


def asked(*words: str, code: str = CODE) -> Any:
    return CliRunner().invoke(main, ["document", "-e", code, "--draws", "100", *words])


def parts(path: Path) -> str:
    """Every part of a file as one text, with its properties, styles and relations."""
    with zipfile.ZipFile(path) as book:
        return "\n".join(book.read(name).decode() for name in book.namelist())


def secrets(mill: Mill, code: str) -> dict[str, str]:
    """What must not stand in the page, and what it is."""
    enquiry = mill.enquiries[code]
    result = work_out(mill, enquiry)
    found = dict.fromkeys(mill.materials, "product")
    found |= dict.fromkeys(mill.recipes, "recipe") | dict.fromkeys(mill.ranges, "range")
    found |= {item.description: "recipe" for item in mill.recipes.values()}
    found |= {name: "step" for route in mill.routes.values() for name, _ in route}
    found |= dict.fromkeys(mill.routes, "route")
    found |= {item.description: "product" for item in mill.materials.values()}
    for basis in result.quote.per:
        for money in (result.quote.cost_on(basis), result.quote.price_on(basis)):
            found[f"{money:.5f}"[:-1]] = f"money of {basis}"
    for (group,), cost in result.quote.by("group").items():
        found[f"{cost:.4f}"] = f"cost of {group}"
    return found | {"12.345": "margin", "0.12345": "margin", "0.1234": "margin", "margin": "margin"}


def stands_in(word: str, text: str) -> bool:
    """Whether a word stands in a text; of a number its first digits are enough."""
    ending = "" if word[-1].isdigit() and "." in word else r"(?!\w)"
    return re.search(rf"(?<![\w.]){re.escape(word)}{ending}", text, re.IGNORECASE) is not None


def test_nothing_of_recipe_cost_or_margin_is_in_the_customers_file(mill: Mill) -> None:
    assert asked("--customer", "customer 12", "--shrinkage").exit_code == 0
    page, working = parts(Path(f"{CODE}_customer.xlsx")), parts(Path(f"{CODE}_working.xlsx"))
    told = secrets(mill, CODE)
    assert [word for word in told if stands_in(word, page)] == []
    used = ("LYE-50", "sulfur dyeing", mill.enquiries[CODE].range, mill.enquiries[CODE].recipe, "12.345")
    assert all(word in working for word in used)
    book = load_workbook(f"{CODE}_customer.xlsx")
    assert [sheet.sheet_state for sheet in book] == ["visible"]
    assert not book.defined_names
    assert not any(cell.comment for row in book["Quote"] for cell in row)
    with zipfile.ZipFile(f"{CODE}_customer.xlsx") as packed:
        assert len([name for name in packed.namelist() if "worksheets/sheet" in name]) == 1
        assert not [name for name in packed.namelist() if re.search("custom|comment|external|media", name)]


def test_the_page_is_one_a4_page_with_the_rounded_price_and_its_value(mill: Mill) -> None:
    done = asked("--number", "2026/117", "--valid-until", "2099-12-31", code="Q-03")
    assert done.exit_code == 0, done.output
    sheet: Any = load_workbook("2026-117_customer.xlsx")["Quote"]
    setup = sheet.page_setup
    assert (setup.paperSize, setup.orientation, setup.fitToWidth, setup.fitToHeight) == (9, "portrait", 1, 1)
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    rows = {row[0]: row[1:] for row in sheet.iter_rows(values_only=True) if row[0]}
    assert rows["Number"][0] == "2026/117"
    assert rows["Valid until"][0] == "2099-12-31"
    assert "Ends x picks, finished" in rows
    assert "Shrinkage in finishing" not in rows
    assert "thank you" not in rows  # of another enquiry
    offer = offer_of(mill, work_out(mill, mill.enquiries["Q-03"]))
    style = mill.enquiries["Q-03"].style
    priced = [row for row in sheet.iter_rows(values_only=True) if row[0] == style][-1]
    assert priced[1:3] == (offer.length, offer.unit)
    assert priced[3] == round(offer.exact, 3) != offer.exact
    assert priced[4] == pytest.approx(priced[3] * priced[1], abs=0.005)


def test_the_working_has_inputs_with_their_range_and_makes_the_same_quote_again(mill: Mill) -> None:
    assert asked("--number", "7").exit_code == 0
    book: Any = load_workbook("7_working.xlsx")
    rows = list(book["Inputs"].iter_rows(min_row=7, values_only=True))
    (kept,) = [row for row in rows if row[:2] == ("step indigo dyeing", "bath kept")]
    row = defaults()["indigo.bath_kept"]
    assert list(kept[4:7]) == pytest.approx([100.0 * end for end in (row.low, row.value, row.high)])
    assert "default" in kept[7]
    (price,) = [row for row in rows if row[:2] == ("material LYE-50", "price")]
    assert price[4] == pytest.approx(0.94 * price[2])
    assert price[6] == pytest.approx(1.06 * price[2])
    for page in book:  # in letters of 7 pt and more, and nothing cut off at the side
        across = sum(page.column_dimensions[cell.column_letter].width for cell in page[5])
        assert across / page.page_setup.fitToWidth < 195.0, page.title
        assert page.page_setup.fitToWidth == 1 or page.print_area, page.title
    assert book["Snapshot"].print_area == "'Snapshot'!$A$1:$B$4"  # its text is for a program
    shown = {row[0].value: row[1].number_format for row in book["Quote and working"].iter_rows(min_row=7)}
    assert shown["cost, EUR per m of finished cloth"] == "#,##0.0#####"
    facts = dict(list(book["Quote and working"].iter_rows(min_row=7, max_col=2, values_only=True)))
    assert facts["margin, % of the price"] == pytest.approx(12.345)
    assert facts["date of the mill's prices"].date() == datetime.date(2025, 1, 6)
    for name in (
        "Cost by step",
        "Cost by material",
        "Cost by cause",
        "Range",
        "Drivers",
        "Lot curve",
        "Prices",
    ):
        assert book[name].max_row > 7
    (whole,) = [row for row in book["Cost by cause"].iter_rows(values_only=True) if row[0] == "sum"]
    assert whole[1] == pytest.approx(facts["cost, EUR per m of finished cloth"])
    again = CliRunner().invoke(main, ["requote", "7_working.xlsx"])
    assert "the same quote" in again.output
    assert "not the same" not in again.output
    sheet: Any = book["Snapshot"]
    sheet["B7"] = sheet["B7"].value.replace('"margin":0.12345', '"margin":0.2')
    book.save("7_changed.xlsx")
    assert "was changed" in CliRunner().invoke(main, ["requote", "7_changed.xlsx"]).output


def test_a_text_that_names_a_product_is_refused_with_its_cell(mill: Mill) -> None:
    mill.quote_texts.append(QuoteText("closing", "dyed with LYE-50.", "", "Quote texts!B21"))
    done = asked()
    assert done.exit_code == 2
    assert "Quote texts!B21: 'dyed with LYE-50.' holds 'LYE-50', the code of a product" in done.output
    assert not list(Path().iterdir())


def test_both_files_are_written_or_none_and_no_other_is_replaced(
    mill: Mill, monkeypatch: pytest.MonkeyPatch
) -> None:
    Path(f"{CODE}_working.xlsx").write_bytes(b"mine")
    assert "is there already" in asked().output
    assert "holds no earlier" in asked("--overwrite").output
    assert [path.name for path in Path().iterdir()] == [f"{CODE}_working.xlsx"]
    Path(f"{CODE}_working.xlsx").unlink()
    assert asked().exit_code == 0
    before = {path.name: path.read_bytes() for path in Path().iterdir()}
    replace_file = Path.replace

    def full(path: Path, target: Path) -> Path:
        if target.name.endswith("_working.xlsx") and path.suffix == ".part":
            raise OSError(28, "no space left")
        return replace_file(path, target)

    monkeypatch.setattr(Path, "replace", full)
    done = asked("--overwrite", "--customer", "another")
    assert done.exit_code == 2
    assert "no space left; nothing was changed" in done.output
    assert {path.name: path.read_bytes() for path in Path().iterdir()} == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--valid-until", "2020-01-31"), "is past; accepted is today or later"),
        (("--number", " "), "accepted is a line of 1 to 200 letters"),
    ],
)
def test_what_makes_no_sense_is_refused(mill: Mill, words: tuple[str, ...], said: str) -> None:
    done = asked(*words)
    assert done.exit_code == 2
    assert said in done.output.replace("which ", "")


def test_without_libreoffice_a_pdf_is_refused_in_words(mill: Mill, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("costing.front_ends.printed.libreoffice", lambda: None)
    assert "LibreOffice is not installed" in asked("--pdf").output
    assert not list(Path().iterdir())


@pytest.mark.skipif(
    not (libreoffice() and shutil.which("pdftotext")), reason="LibreOffice or poppler is not here"
)
def test_the_pdf_of_the_page_is_one_page_without_a_secret(mill: Mill) -> None:
    assert asked("--pdf").exit_code == 0
    text = subprocess.run(
        ["pdftotext", "-layout", f"{CODE}_customer.pdf", "-"], capture_output=True, check=True, text=True
    ).stdout
    assert text.count("\f") == 1
    assert "page 1 of 1" in text
    assert f"{offer_of(mill, work_out(mill, mill.enquiries[CODE])).price}" in text
    assert [word for word in secrets(mill, CODE) if stands_in(word, text)] == []
    assert Path(f"{CODE}_working.pdf").stat().st_size > 10_000
