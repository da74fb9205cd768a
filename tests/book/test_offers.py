"""The sheet Offers and the dates of the currencies, as the book and a cell read them."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from costing.book.drain import DRAIN_SHEETS
from costing.book.layout import sheet_names
from costing.book.whole import mill_from_sheets
from costing.cost.offers import mill_on
from costing.cost.quote import material_price
from costing.formulas.cell_calls import called
from costing.report import work_out
from costing.settings.mill import Mill
from tests.book.blocks import Block, day_of, demo_blocks, sheets, with_cell
from tests.book.test_codes import place, refused

BLOCKS = {title: block for title, block in demo_blocks().items() if title in sheet_names()}
FIRST = int(place("Offers", "HYDRO-88", "Price")[1:])  # the row of the first offer of the demo
COSTS = next(number for number, cells in enumerate(BLOCKS["Mill costs"], 1) if cells[0] == "prices as of")
USD = next(number for number, cells in enumerate(BLOCKS["Mill costs"], 1) if cells[0] == "USD")


def at(head: str, row: int = FIRST) -> str:
    return f"{place('Offers', 'HYDRO-88', head)[0]}{row}"


def changed(title: str, cell: str, value: Any) -> dict[str, Block]:
    return {**BLOCKS, title: with_cell(BLOCKS[title], cell, value)}


def read(blocks: dict[str, Block]) -> Mill:
    return mill_from_sheets(sheets(blocks))


def without_column(block: Block, head: str) -> Block:
    column = next(cells.index(head) for cells in block if head in cells)
    return tuple((*cells[:column], *cells[column + 1 :]) for cells in block)


def test_the_demo_buys_hydrosulfite_at_its_cheapest_active_part() -> None:
    """(1.42 + 0.06) / 0.88 = 1.6818 against 1.46 / 0.85 = 1.7176; from January (1.633 + 0.06) / 0.88."""
    mill = read(BLOCKS)
    assert mill.costs is not None
    assert mill.materials["HYDRO-88"].supplier == "supplier N"
    assert material_price("HYDRO-88", mill.materials, mill.costs) == pytest.approx(1.48)
    later = mill_on(mill, datetime.date(2026, 1, 15))
    assert later.costs is not None
    assert material_price("HYDRO-88", later.materials, later.costs) == pytest.approx(1.693)
    assert material_price("SALT-99", mill.materials, mill.costs) == pytest.approx((110 + 50) / 1000)


def test_a_book_from_before_there_were_offers_keeps_working() -> None:
    """No sheet Offers, no usual purchase, no day of the prices; prices on Materials."""
    old = dict(BLOCKS)
    del old["Offers"], old["Calibrations"]
    old["Materials"] = without_column(old["Materials"], "Usual purchase, kg")
    old["Mill costs"] = tuple(cells for cells in old["Mill costs"] if cells[0] != "prices as of")
    for code, price, freight in (("HYDRO-88", 1.42, 0.06), ("ACETIC-80", 0.98, 0.05)):
        for head, value in (("Price", price), ("Per", "kg"), ("Freight", freight), ("Currency", "EUR")):
            old["Materials"] = with_cell(old["Materials"], place("Materials", code, head), value)
    mill, new = read(old), read(BLOCKS)
    assert not mill.offers
    for code in ("Q-01", "V-01"):
        costs = [work_out(each, each.enquiries[code]).quote.cost_per_kg for each in (mill, new)]
        assert costs[0] == costs[1]
    cells = [old[name] for name in sheet_names() if name in old]
    assert str(called("WARP_OPENED_BOOK", cells)).startswith("book ")


def test_a_book_of_prices_alone_has_its_offers_too() -> None:
    mill = read({title: block for title, block in BLOCKS.items() if title not in DRAIN_SHEETS})
    assert mill.materials["HYDRO-88"].price == pytest.approx(1.42)


REFUSED: list[tuple[str, str, Any, str]] = [
    (at("Material"), "Offers", "HYDRO-89", "material 'HYDRO-89' is not in the book"),
    (at("Supplier"), "Offers", "", "supplier is empty"),
    (at("Price"), "Offers", "", "the price of 'HYDRO-88' is empty; accepted is more than 0"),
    (at("Price"), "Offers", 0.0, "the price of 'HYDRO-88' is 0, and would be the cheapest of all"),
    (at("Price"), "Offers", -1.0, "price is -1 money/kg"),
    (at("Per"), "Offers", "L", "density is empty, but the price is per L"),
    (at("Currency"), "Offers", "XYZ", "currency 'XYZ' of 'HYDRO-88' has no exchange rate"),
    (at("Terms"), "Offers", "", "terms is empty; accepted is one of: delivered, ex works"),
    (at("Terms"), "Offers", "delivered", "freight is filled beside a delivered price"),
    (at("Freight"), "Offers", "", "freight is empty beside the terms ex works"),
    (at("Strength, %"), "Offers", 0.88, "type 88, not 0.88"),
    (at("From, kg"), "Offers", -5.0, "from, kg is -5 kg"),
    (
        at("Valid to"),
        "Offers",
        day_of(datetime.date(2024, 1, 1)),
        "valid to is 2024-01-01, before valid from",
    ),
    (at("Valid from"), "Offers", "1.2.2026", "valid from is '1.2.2026', not a date"),
    (
        at("Counts"),
        "Offers",
        "perhaps",
        "offer counts is 'perhaps'; accepted is one of: cheapest, always, no",
    ),
    (f"B{COSTS}", "Mill costs", "today", "prices as of is 'today', not a date"),
]


@pytest.mark.parametrize(("cell", "title", "value", "words"), REFUSED, ids=[item[3] for item in REFUSED])
def test_a_wrong_cell_is_refused_by_name(cell: str, title: str, value: Any, words: str) -> None:
    said = refused(changed(title, cell, value))
    assert words in said
    assert f"{title}!" in said or "Materials!" in said


def test_a_price_in_both_places_is_refused_with_both_cells() -> None:
    price, per = (place("Materials", "HYDRO-88", head) for head in ("Price", "Per"))
    blocks = changed("Materials", price, 1.42)
    blocks["Materials"] = with_cell(blocks["Materials"], per, "kg")
    said = refused(blocks)
    assert said.startswith(
        f"Offers!{at('Price')}: 'HYDRO-88' has an offer here and a price in Materials!{price}"
    )


def test_a_strength_of_its_own_beside_a_price_by_volume_is_refused() -> None:
    row = int(place("Offers", "INDIGO-PASTE-30", "Price")[1:])
    blocks = changed("Offers", at("Per", row), "L")
    assert read(blocks).materials["INDIGO-PASTE-30"].price == pytest.approx(2.75 / 1.12)
    blocks["Offers"] = with_cell(blocks["Offers"], at("Strength, %", row), 28.0)
    assert "strength is filled beside a price per L" in refused(blocks)


def test_rows_of_one_currency_have_days_of_their_own() -> None:
    def rates(second: float | str) -> dict[str, Block]:
        block = BLOCKS["Mill costs"]
        for cell, value in ((f"A{USD + 2}", "usd"), (f"B{USD + 2}", 0.8), (f"C{USD + 2}", second)):
            block = with_cell(block, cell, value)
        return {**BLOCKS, "Mill costs": block}

    mill = read(rates(day_of(datetime.date(2026, 2, 1))))
    assert mill.costs is not None
    assert mill.costs.exchange_rates["USD"] == 0.9
    later = mill_on(mill, datetime.date(2026, 2, 1)).costs
    assert later is not None
    assert later.exchange_rates["USD"] == 0.8
    assert "the currency 'usd' stands twice of 2025-01-06" in refused(
        rates(day_of(datetime.date(2025, 1, 6)))
    )


def test_the_day_of_the_sheet_counts_in_a_cell_too() -> None:
    blocks = changed("Mill costs", f"B{COSTS}", day_of(datetime.date(2026, 1, 15)))
    mill = read(blocks)
    assert mill.costs is not None
    assert mill.costs.day == datetime.date(2026, 1, 15)
    assert mill.materials["HYDRO-88"].price == pytest.approx(1.633)
    mark = called("WARP_OPENED_BOOK", [blocks[name] for name in sheet_names()])
    table: Any = called("WARP_RESULT_TABLE", [mark, "prices", "Q-01"])
    assert [row[-1] for row in table if row[0] == "HYDRO-88"] == [
        "was valid to 2025-12-31",
        "was valid to 2025-12-31",
        "was valid to 2025-12-31",
        "chosen",
        "counts; active part +2.7 %",
    ]


def test_the_strength_of_an_offer_must_go_with_the_caustic_in_the_product(tmp_path: Any) -> None:
    row = int(place("Offers", "HYDRO-88", "Price")[1:])
    alkali, unit = (place("Materials", "HYDRO-88", head) for head in ("Alkali", "Alkali unit"))
    blocks = changed("Materials", alkali, 0.1)
    blocks["Materials"] = with_cell(blocks["Materials"], unit, "kg/kg")
    blocks["Offers"] = with_cell(blocks["Offers"], at("Strength, %", row), 95.0)
    assert "together 105 %" in refused(blocks)
