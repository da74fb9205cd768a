"""The command that prints the card for the shift, and the page that it writes."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from costing.front_ends.workbook.build import write_fresh_book
from costing.reference_data import cautions
from tests.command_line.test_command_line import refused, run


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def document(*arguments: str) -> dict[str, Any]:
    done = run("card", *arguments, "--json")
    assert done.exit_code == 0, done.output
    return json.loads(done.output)  # type: ignore[no-any-return]


def test_the_card_says_what_to_weigh_set_and_add(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "160")
    done = run("card", "-e", "Q-02", "--stop", "90min", "--vat", "1500 L")
    assert done.exit_code == 0, done.output
    for words in (
        "stock vat",
        "hydrosulfite dosing",
        "After a stop of 1.5 h",
        "Estimate",
        "safety data sheet",
    ):
        assert words in done.output


def test_weights_go_with_the_vat_and_what_is_added_with_the_stop() -> None:
    (small,), (large,) = (
        document("-e", "Q-02", "--vat", vat, "--stop", stop).values()
        for vat, stop in (("1000L", "1h"), ("2m3", "2h"))
    )

    def weighed(card: dict[str, Any], volume: str) -> list[float]:
        name = f"For {volume} [kg as delivered]"
        return [row[name] for row in card["card_feeds"] if row[name] is not None]

    assert weighed(large, "2,000 L") == pytest.approx([2.0 * kg for kg in weighed(small, "1,000 L")])
    for row, double in zip(small["card_stop"], large["card_stop"]):
        name = "Pumps stopped [kg as delivered]"
        assert double[name] == pytest.approx(2.0 * row[name])


def test_json_has_a_card_for_each_enquiry() -> None:
    found = document("-e", "Q-02", "-e", "S-02", "-e", "q-02")
    assert list(found) == ["Q-02", "S-02"]
    assert "card_size" in found["S-02"]
    assert "card_size" not in found["Q-02"]


def test_each_card_is_one_printed_page_with_its_cautions(folder: Path) -> None:
    codes = ("Q-02", "T-01", "S-02", "N-01", "V-01")
    asked = [part for code in codes for part in ("-e", code)]
    assert run("card", *asked, "--out", "cards.xlsx").exit_code == 0
    book = load_workbook(folder / "cards.xlsx")
    assert book.sheetnames == [f"card {code}" for code in codes]
    for code, card in document(*asked).items():
        page: Any = book[f"card {code}"]
        assert (page.page_setup.fitToWidth, page.page_setup.fitToHeight) == (1, 1)
        assert page.page_setup.orientation == "portrait"
        assert page.page_setup.paperSize == 9
        texts = [cell.value for row in page.iter_rows() for cell in row if isinstance(cell.value, str)]
        cells = [cell.value for row in page.iter_rows() for cell in row]
        numbers = {f"{value:.9g}" for value in cells if isinstance(value, (int, float))}
        for row in card["card_cautions"]:
            assert any(row["Caution"] in text for text in texts)
        assert any(cautions()["general"].caution in text for text in texts)
        assert any(text.startswith("Estimate") for text in texts)
        for key in (
            "card_feeds",
            "card_charge",
            "card_fill",
            "card_stop",
            "card_size",
            "card_boxes",
            "card_use",
        ):
            for row in card.get(key, []):
                for value in row.values():
                    assert not isinstance(value, float) or f"{value:.9g}" in numbers, (code, key, row)
    assert "is there already" in refused("card", *asked, "--out", "cards.xlsx")
    assert run("card", "-e", "K-01", "--out", "cards.xlsx", "--overwrite").exit_code == 0
    assert load_workbook(folder / "cards.xlsx").sheetnames == ["card K-01"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("-e", "Q-99"), "enquiry 'Q-99' is not in the book"),
        (("--stop", "2kg"), "--stop: the stop has the unit 'kg', which measures something else"),
        (("--stop", "soon"), "--stop: the stop is 'soon'; accepted is a number with its unit"),
        (("--stop", "500 h"), "--stop: the stop is 500 h; accepted is 0 to 100 h"),
        (("--vat", "2h"), "--vat: the vat has the unit 'h'"),
        (("--vat", "0"), "--vat: the vat is 0 L"),
        (("--vat", "1,000L"), "--vat: the vat is '1,000L'; accepted is a number with its unit"),
        (("--kettle", "-3L"), "--kettle: the kettle is -3 L"),
        (("--json", "--out", "x.xlsx"), "accepted is --json without it"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(arguments: tuple[str, ...], said: str) -> None:
    assert said in refused("card", *arguments)


def test_the_book_itself_is_never_overwritten(folder: Path) -> None:
    write_fresh_book(folder / "mine.xlsx", demo=True, overwrite=False)
    before = (folder / "mine.xlsx").read_bytes()
    assert "is the book itself" in refused("card", "mine.xlsx", "--out", "mine.xlsx", "--overwrite")
    (folder / "other.xlsx").write_bytes(before)
    assert "was left as it is" in refused("card", "mine.xlsx", "--out", "other.xlsx", "--overwrite")
    assert (folder / "mine.xlsx").read_bytes() == before == (folder / "other.xlsx").read_bytes()


@pytest.mark.parametrize("code", ["P-03", "M-01", "Q-02"])
def test_words_stay_whole_on_a_screen_of_80_columns(code: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    done = run("card", "-e", code)
    assert done.exit_code == 0, done.output
    pumps = done.output.split("Pumps, valves and vats")[1].split("To be tested")[0]
    words = {"Product", "valve", *document("-e", code)[code]["card_feeds"][1]["Product"].split()}
    assert words <= set(pumps.split())
    assert max(len(line) for line in done.output.splitlines()) <= 80
