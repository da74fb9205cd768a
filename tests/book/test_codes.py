"""Codes and words as people type them: the same in the book, in a cell and on the command line."""

from __future__ import annotations

from typing import Any

import pytest

from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.formulas.cell_calls import called, reason
from costing.quantities import CHOICES, InputError, listed, meant
from costing.report import work_out
from tests.book.blocks import Block, demo_blocks, sheets, with_cell

BLOCKS = demo_blocks()
NO_BREAK = "\u00a0"


def place(title: str, code: str, head: str) -> str:
    """The cell of a code under a head, or of a code beside the quantity of a row."""
    block = BLOCKS[title]
    row = next(number for number, cells in enumerate(block, 1) if code in cells)
    heads = next(cells for cells in block if head in cells)
    return f"{chr(65 + heads.index(head))}{row}"


def column_place(title: str, code: str, quantity: str, step: str = "") -> str:
    block = BLOCKS[title]
    row = next(
        number for number, cells in enumerate(block, 1) if quantity in cells[:2] and step in ("", cells[0])
    )
    codes = next(cells for cells in block if code in cells)
    return f"{chr(65 + codes.index(code))}{row}"


def changed(title: str, cell: str, value: Any) -> dict[str, Block]:
    return {**BLOCKS, title: with_cell(BLOCKS[title], cell, value)}


def opened(blocks: dict[str, Block]) -> str:
    return str(called("WARP_OPENED_BOOK", [blocks[name] for name in sheet_names()]))


def refused(blocks: dict[str, Block]) -> str:
    """What both ways say: they must say the same."""
    with pytest.raises(InputError) as error:
        mill_from_sheets(sheets(blocks))
    said = reason("WARP_OPENED_BOOK", [blocks[name] for name in sheet_names()])
    assert said == str(error.value)
    return said


SPELT = [
    ("Enquiries", place("Enquiries", "Q-01", "Style"), "d-1200 "),
    ("Enquiries", place("Enquiries", "Q-01", "Style"), f"D-1200{NO_BREAK}"),
    ("Enquiries", place("Enquiries", "Q-01", "Style"), "D\u20111200"),
    ("Enquiries", place("Enquiries", "Q-01", "Recipe"), f"{NO_BREAK}dark-powder"),
    ("Enquiries", place("Enquiries", "Q-01", "Range"), "Rope-a"),
    ("Enquiries", place("Enquiries", "Q-01", "Length basis"), f"Finished{NO_BREAK}Cloth"),
    ("Recipes", column_place("Recipes", "DARK-POWDER", "route"), "Rope  Indigo"),
    ("Recipes", column_place("Recipes", "DARK-POWDER", "hydrosulfite product"), "hydro-88\u200b"),
    ("Styles", column_place("Styles", "D-1200", "warp yarn"), " warp-7 "),
    ("Ranges", column_place("Ranges", "ROPE-A", "pressure basis"), "Gauge "),
    ("Materials", place("Materials", "LYE-50", "Currency"), "eur "),
]


@pytest.mark.parametrize(("title", "cell", "typed"), SPELT, ids=[str(item) for item in SPELT])
def test_case_and_blanks_of_a_code_do_not_count(title: str, cell: str, typed: str) -> None:
    plain, spelt = mill_from_sheets(sheets(BLOCKS)), mill_from_sheets(sheets(changed(title, cell, typed)))
    first, second = (work_out(mill, mill.enquiries["Q-01"]) for mill in (plain, spelt))
    assert second.enquiry == first.enquiry
    assert second.quote == first.quote
    assert spelt.styles == plain.styles
    assert called("WARP_PRICE_ON", [opened(changed(title, cell, typed)), "Q-01"]) == called(
        "WARP_PRICE_ON", [opened(BLOCKS), "Q-01"]
    )


@pytest.mark.parametrize("typed", ["q-01", " Q-01 ", f"Q-01{NO_BREAK}", "Q\u201101"])
def test_an_enquiry_is_found_as_it_is_typed(typed: str) -> None:
    book = opened(BLOCKS)
    assert called("WARP_PRICE_ON", [book, typed]) == called("WARP_PRICE_ON", [book, "Q-01"])
    table = called("WARP_RESULT_TABLE", [book, "Quotes ", typed])
    assert table == called("WARP_RESULT_TABLE", [book, "quotes", "Q-01"])


EMPTY_OR_UNKNOWN = [
    ("Enquiries", place("Enquiries", "Q-01", "Style"), "", "style is empty; there are: D-1200, "),
    ("Enquiries", place("Enquiries", "Q-01", "Recipe"), None, "recipe is empty; there are: DARK-POWDER, "),
    ("Enquiries", place("Enquiries", "Q-01", "Range"), "", "range is empty; there are: ROPE-A, ROPE-B"),
    (
        "Enquiries",
        place("Enquiries", "Q-01", "Recipe"),
        "DARK-PODER",
        "recipe 'DARK-PODER' is not in the book; there are: DARK-POWDER, ",
    ),
    (
        "Recipes",
        column_place("Recipes", "DARK-POWDER", "route"),
        "",
        "route is empty; accepted is one of: rope",
    ),
    (
        "Styles",
        column_place("Styles", "D-1200", "warp yarn"),
        "WARP-77",
        "material 'WARP-77' is not in the book; there are: WARP-7, ",
    ),
]


@pytest.mark.parametrize(
    ("title", "cell", "typed", "words"), EMPTY_OR_UNKNOWN, ids=[str(item) for item in EMPTY_OR_UNKNOWN]
)
def test_a_code_that_is_not_there_is_told_the_nearest_first(
    title: str, cell: str, typed: Any, words: str
) -> None:
    said = refused(changed(title, cell, typed))
    assert f"{title}!{cell}: " in said
    assert words in said
    assert "WEFT-" not in said


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("", "hydrosulfite product is empty; accepted is one of: HYDRO-88, HYDRO-90"),
        ("HYDRO-98", "material 'HYDRO-98' is not in the book; there are: HYDRO-88, HYDRO-90"),
    ],
)
def test_a_product_of_a_recipe_is_told_those_that_fit(typed: str, words: str) -> None:
    cell = column_place("Recipes", "DARK-POWDER", "hydrosulfite product")
    book = opened(changed("Recipes", cell, typed))
    said = reason("WARP_PRICE_ON", [book, "Q-01"])
    assert said.startswith(f"Recipes!{cell}")
    assert words in said
    assert "LYE" not in said


def test_many_codes_are_not_all_told() -> None:
    codes = [f"S-{number}" for number in range(100, 140)]
    assert listed(codes, "S-125").startswith("S-125, ")
    assert listed(codes, "S-125").endswith(" and 32 more")
    assert listed(codes[:9]).endswith("S-108")


def test_a_word_that_could_mean_two_is_none() -> None:
    assert meant("A", ["A", "a"]) == "A"
    assert meant("a ", ["A", "a"]) is None


@pytest.mark.parametrize(
    ("what", "same"),
    [
        ("hydrosulfite", "sodium hydrosulfite"),
        ("Hydros", "sodium hydrosulfite"),
        ("sodium hydrosulphite", "sodium hydrosulfite"),
        ("dithionite", "sodium_hydrosulfite"),
        ("lye", "caustic"),
        ("NaOH", "sodium hydroxide"),
        ("caustic soda", "caustic"),
        ("electricity", "power"),
        ("wetter", "wetting agent"),
        (" indigo-94", "INDIGO-94"),
    ],
)
def test_a_word_of_the_trade_means_what_it_means(what: str, same: str) -> None:
    book = opened(BLOCKS)
    assert called("WARP_USE_PER_KG", [book, what, "Q-01"]) > 0.0
    assert called("WARP_USE_PER_KG", [book, what, "Q-01"]) == called("WARP_USE_PER_KG", [book, same, "Q-01"])


def test_a_word_with_two_meanings_and_a_name_of_nothing_are_refused() -> None:
    book = opened(BLOCKS)
    said = reason("WARP_USE_PER_KG", [book, "soda", "Q-01"])
    assert (
        "'soda', which may be more than one thing; accepted is one of: sodium hydroxide, sodium carb" in said
    )
    said = reason("WARP_USE_PER_KG", [book, "HYDRO-89", "Q-01"])
    assert "such as HYDRO-88, HYDRO-90, " in said
    assert "or as 100 %: indigo, sodium hydrosulfite, " in said


@pytest.mark.parametrize("parameter", ["sulphite", "Sulfite "])
def test_a_parameter_of_the_drain_is_found_by_its_other_spelling(parameter: str) -> None:
    book = opened(BLOCKS)
    assert called("WARP_DISCHARGE_LOAD", [book, parameter, "Q-01"]) == called(
        "WARP_DISCHARGE_LOAD", [book, "sulfite", "Q-01"]
    )


@pytest.mark.parametrize("word", ["lye", "caustic soda", "NaOH"])
def test_a_caution_is_found_by_a_word_of_the_trade(word: str) -> None:
    assert called("WARP_CAUTION_FOR", [word]) == called("WARP_CAUTION_FOR", ["caustic"])


ASKED: list[tuple[str, list[Any]]] = [
    ("USE_PER_KG", ["plutonium", "Q-02"]),
    ("USE_PER_METRE", ["water", "Q-02", "dozen"]),
    ("COST_ON", ["Q-02", "dozen"]),
    ("COST_ON", ["Q-02", "", "nothing"]),
    ("DISCHARGE_LOAD", ["lead", "Q-02"]),
    ("DISCHARGE_CONCENTRATION", ["COD", "Q-02", "river"]),
    ("RESULT_TABLE", ["profit"]),
    ("PRICE_ON", ["Q-99"]),
]


@pytest.mark.parametrize(("name", "arguments"), ASKED)
def test_no_choice_is_told_twice(name: str, arguments: list[Any]) -> None:
    said = reason(name, [opened(BLOCKS), *arguments])
    for part in said.replace("one of:", ":").replace("there are:", ":").split(":")[1:]:
        words = part.split("; ") if ";" in part else part.split(", ")
        told = [word.strip() for word in words]
        assert len(told) == len(set(told)), told


@pytest.mark.parametrize("name", CHOICES)
def test_no_choice_of_a_list_stands_twice(name: str) -> None:
    assert len(set(CHOICES[name])) == len(CHOICES[name])
