"""A mill's book opened by cells: the same figures as the tables, and refusals that name the cell."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from costing.book.layout import sheet_names
from costing.cost.quote import WEFT, YARN_BASES, basis_of
from costing.formulas import opened_book
from costing.formulas.book_functions import OPENED
from costing.formulas.book_tables import cells_of_table
from costing.formulas.cell_calls import called, reason
from costing.formulas.registry import OF_BOOK
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.read import read_book
from costing.quantities import InputError
from costing.report import BOOK_TABLES, DRIVER_TABLES, PART_TABLES, table, work_out
from costing.report.money import ALL_PARTS, MOST_PARTS
from tests.book.blocks import demo_blocks, with_cell

BLOCKS = demo_blocks()
MILL = read_book(demo_book())


def cells(**other: Any) -> list[Any]:
    return [other.get(name.lower(), BLOCKS[name]) for name in sheet_names()]


@pytest.fixture(scope="module")
def book() -> str:
    return str(called("WARP_OPENED_BOOK", cells()))


@pytest.mark.parametrize("name", [name for name in OF_BOOK if name != "WARP_OPENED_BOOK"])
def test_every_example_works(name: str, book: str) -> None:
    example = [book if cell == OPENED else cell for cell in OF_BOOK[name].example]
    kind = {"number": float, "text": str, "array": list}[OF_BOOK[name].result]
    assert isinstance(called(name, example), kind)
    assert reason(name, example) == ""


@pytest.mark.parametrize(
    ("key", "code"),
    # some hundred quotes of each enquiry are not asked of all of them
    [(key, code) for key in BOOK_TABLES for code in ("Q-01", "") if code or key not in DRIVER_TABLES],
)
def test_a_table_in_cells_is_the_table_of_the_command_line(key: str, code: str, book: str) -> None:
    enquiries = [MILL.enquiries[code]] if code else MILL.enquiries.values()
    table = BOOK_TABLES[key](MILL, [work_out(MILL, enquiry) for enquiry in enquiries])
    found = called("WARP_RESULT_TABLE", [book, key, code])
    assert found == cells_of_table(table)
    assert len(found) == 2 + len(table.rows) > 2
    assert {len(row) for row in found} == {len(table.columns)}
    assert not [cell for row in found for cell in row if not isinstance(cell, (str, float))]


def test_what_moves_the_cost_is_worked_out_once_for_a_book_and_an_enquiry(
    book: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another keystroke, the other table of the sheet and a way back to an earlier choice cost no quote."""
    called("WARP_RESULT_TABLE", [book, "cost_drivers", "Q-03"])
    called("WARP_RESULT_TABLE", [book, "quotes", "Q-04"])

    def none_is_left(*_: Any) -> None:
        raise AssertionError("a quote was worked out anew")

    monkeypatch.setattr(table, "priced", none_is_left)
    for key in DRIVER_TABLES:
        called("WARP_RESULT_TABLE", [book, key, "Q-03"])
    with pytest.raises(AssertionError, match="anew"):
        called("WARP_RESULT_TABLE", [book, "cost_drivers", "Q-04"])


def test_a_range_longer_than_the_table_is_filled_up_and_a_shorter_one_refused(book: str) -> None:
    plain = called("WARP_RESULT_TABLE", [book, "quotes"])
    rows = len(plain) + 7
    longer = called("WARP_RESULT_TABLE", [book, "quotes", "", float(rows)])
    assert longer[: len(plain)] == plain
    assert {cell for row in longer[len(plain) :] for cell in row} == {""}
    assert len(longer) == rows
    with pytest.raises(
        InputError, match=r"the book holds at most 9 enquiries; [0-9]+ are given: take some out"
    ):
        called("WARP_RESULT_TABLE", [book, "quotes", None, 11.0])
    with pytest.raises(InputError, match=r"at most 4 rows of cost by step; \d+ are given"):
        called("WARP_RESULT_TABLE", [book, "cost_by_step", None, 6.0])


def test_single_figures_are_those_of_the_quote(book: str) -> None:
    result = work_out(MILL, MILL.enquiries["Q-02"])
    ledger, offer = result.ledger, result.quote
    pure = 0.94 * ledger.used("INDIGO-94")
    sold = ledger.plan.saleable_mass
    metre = offer.per["m of finished cloth"]
    for name, arguments, expected in (
        ("USE_PER_KG", ["indigo", "Q-02"], 1000 * pure),
        ("USE_PER_KG", ["INDIGO-94", "Q-02", "kg/kg"], ledger.used("INDIGO-94")),
        ("USE_PER_KG", ["power", "Q-02", "MJ/kg"], 3.6 * ledger.used("electric energy")),
        ("USE_PER_METRE", ["water", "Q-02"], ledger.used("water") * metre),
        ("USE_PER_METRE", ["dye", "Q-02", "", "g/m"], 1000 * pure * metre),
        ("USE_OF_ORDER", ["HYDRO-88", "Q-02", "t"], ledger.used("HYDRO-88") * sold / 1000),
        ("USE_OF_ORDER", ["water", "Q-02", "m3"], ledger.used("water") * sold / 1000),
        ("COST_ON", ["Q-02", "m of finished cloth"], offer.cost_on("m of finished cloth")),
        ("COST_ON", ["Q-02", "", "dye"], offer.by("group")["dye",]),
        ("COST_ON", ["Q-02", "", "drying"], offer.by("step")["drying",]),
        ("PRICE_ON", ["Q-02"], offer.price_per_kg),
        ("DISCHARGE_LOAD", ["COD", "Q-02", "", "kg/t"], 1000 * result.streams[-1].loads["COD, both"]),
        ("DISCHARGE_LOAD", ["flow", "Q-02"], result.streams[-1].flow),
        (
            "DISCHARGE_CONCENTRATION",
            ["sulfite", "Q-02", result.streams[0].name, "g/L"],
            1000 * result.streams[0].concentration("sulfite"),
        ),
    ):
        if name == "PRICE_ON":
            expected = offer.price_on("kg of grey yarn")
        if name == "COST_ON" and len(arguments) == 2:
            expected = offer.cost_on(arguments[1])
        assert called(name, [book, *arguments]) == pytest.approx(expected, rel=1e-12), name


def test_parts_of_the_cost_add_up(book: str) -> None:
    groups: tuple[str, ...] = (
        "warp yarn",
        "dye",
        "reductant",
        "caustic",
        "auxiliaries",
        "water",
        "steam",
        "power",
    )
    groups += ("effluent", "range time", "overhead")
    parts = [called("COST_ON", [book, "Q-02", "kg of dyed yarn", group]) for group in groups]
    assert sum(parts) == pytest.approx(called("COST_ON", [book, "Q-02", "kg of dyed yarn"]), rel=1e-12)


@pytest.mark.parametrize("code", ["Q-01", "W-01", "P-02", "V-03"])
def test_the_dearest_parts_and_the_others_add_up_to_the_cost_without_its_yarns(code: str) -> None:
    result = work_out(MILL, MILL.enquiries[code])
    quoted, basis = result.quote, basis_of(result.enquiry)
    yarns = quoted.by("group").get(("warp yarn",), 0.0) * quoted.per[basis]
    for key in PART_TABLES:
        (_, name, whole, share), *parts = BOOK_TABLES[key](MILL, [result]).rows
        assert (name, share) == (ALL_PARTS, 100.0)
        woven = (
            0.0
            if basis in YARN_BASES
            else sum(line.cost for line in quoted.lines if WEFT in (line.step, line.group))
        )
        assert whole == pytest.approx(quoted.cost_on(basis) - yarns - woven * quoted.per[basis], rel=1e-9)
        assert sum(part[2] for part in parts) == pytest.approx(whole, rel=1e-9)
        ranked = [abs(part[2]) for part in parts[:MOST_PARTS]]
        assert ranked == sorted(ranked, reverse=True)
        assert 3 < len(parts) <= MOST_PARTS + 1


def test_running_use_is_that_of_an_endless_order(book: str) -> None:
    """Per kilogram run: the lot, its leaders and its fills are left out."""
    running = called("RUNNING_USE_PER_KG", [book, "indigo", "DARK-POWDER", "ROPE-A", "D-1200", 2.0])
    lines = work_out(MILL, MILL.enquiries["Q-02"]).ledger.run.lines
    fed = sum(line.amount for line in lines if line.material == "INDIGO-94" and line.source == "store")
    assert running == pytest.approx(fed * 0.94 * 1000, rel=1e-12)
    whole = called("USE_PER_KG", [book, "indigo", "Q-02"])
    assert whole > running * (1 + 1e-6)


@pytest.mark.parametrize(
    ("name", "arguments", "words"),
    [
        (
            "USE_PER_KG",
            ["plutonium", "Q-02"],
            "what is 'plutonium'; accepted is a code of the sheet",
        ),
        ("USE_PER_KG", ["indigo", "Q-99"], "enquiry 'Q-99' is not in the book; there are: Q-09, Q-01"),
        ("USE_PER_KG", ["indigo", "Q-02", "g/L"], "result unit is 'g/L', which does not measure kg/kg"),
        ("COST_ON", ["Q-02", "dozen"], "basis is 'dozen'; accepted is one of: kg of grey yarn"),
        ("COST_ON", ["Q-02", "", "nothing"], "part is 'nothing'; accepted are materials, and: warp yarn"),
        ("DISCHARGE_LOAD", ["lead", "Q-02"], "parameter is 'lead'; accepted is one of: COD, organic"),
        ("DISCHARGE_LOAD", ["COD", "Q-02", "river"], "stream is 'river'; accepted is one of: scour overflow"),
        ("RESULT_TABLE", ["profit"], "table is 'profit'; accepted is one of: quotes"),
        ("RESULT_TABLE", ["quotes", "", 0.0], "rows is 0.0; accepted is a whole number"),
    ],
)
def test_what_cannot_be_asked_is_refused_in_words(
    name: str, arguments: list[Any], words: str, book: str
) -> None:
    with pytest.raises(InputError) as refused:
        called(name, [book, *arguments])
    assert words in refused.value.message
    assert words in reason(name, [book, *arguments])


def test_a_refused_cell_of_the_book_is_named() -> None:
    codes = BLOCKS["Materials"]
    row = next(number for number, cells in enumerate(codes, 1) if "HYDRO-90" in cells)
    column = (
        next(place for place, head in enumerate(codes[4], 1) if head == "Price") if "Price" in codes[4] else 0
    )
    heads = next(number for number, cells in enumerate(codes) if "Price" in cells)
    column = codes[heads].index("Price") + 1
    place = f"{chr(64 + column)}{row}"
    wrong = with_cell(codes, place, -1.0)
    with pytest.raises(InputError, match=f"Materials!{place}"):
        called("WARP_OPENED_BOOK", cells(materials=wrong))
    assert f"Materials!{place}" in reason("WARP_OPENED_BOOK", cells(materials=wrong))


def test_other_cells_another_mark_and_the_earlier_book_is_still_there(book: str) -> None:
    costs = BLOCKS["Mill costs"]
    number = next(number for number, row in enumerate(costs) if "steam price" in row)
    column = next(place for place, cell in enumerate(costs[number]) if isinstance(cell, float))
    dearer = with_cell(costs, f"{chr(65 + column)}{number + 1}", 99.0)
    other = called("WARP_OPENED_BOOK", cells(**{"mill costs": dearer}))
    assert other != book
    assert called("WARP_OPENED_BOOK", cells()) == book
    assert called("COST_ON", [other, "Q-02", "", "steam"]) > called("COST_ON", [book, "Q-02", "", "steam"])


@pytest.fixture
def nothing_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(opened_book, "_kept", type(opened_book._kept)())


@pytest.mark.usefixtures("nothing_kept")
def test_a_mark_that_no_cell_has_opened_is_refused() -> None:
    with pytest.raises(InputError, match="no cell has opened it since the program was started"):
        called("PRICE_ON", ["book 0123456789abcdef", "Q-02"])
    with pytest.raises(InputError, match="book is empty"):
        called("PRICE_ON", [None, "Q-02"])


@pytest.mark.usefixtures("nothing_kept")
def test_only_the_last_books_are_kept() -> None:
    marks = [
        called("WARP_OPENED_BOOK", cells(routes=(*BLOCKS["Routes"], ("", "", "", "", f"note {number}"))))
        for number in range(opened_book.KEPT + 1)
    ]
    assert len(set(marks)) == len(marks)
    assert list(opened_book._kept) == marks[1:]
    # The one that went is refused with the mend, is no other state's figure, and comes back when it is read.
    with pytest.raises(InputError, match=r"24 other states of books came after it.* calculate the whole doc"):
        called("PRICE_ON", [marks[0], "Q-02"])
    again = called("WARP_OPENED_BOOK", cells(routes=(*BLOCKS["Routes"], ("", "", "", "", "note 0"))))
    assert again == marks[0]
    assert called("PRICE_ON", [again, "Q-02"]) == called("PRICE_ON", [marks[-1], "Q-02"])


def test_a_book_without_a_sheet_is_refused() -> None:
    with pytest.raises(InputError, match=f"the sheet '{sheet_names()[2]}' is missing"):
        called("WARP_OPENED_BOOK", cells()[:2])


@pytest.mark.parametrize("error", ["#REF!", -2146826265, (("#REF!",),), (("", "#REF!"), ("#REF!", ""))])
def test_a_sheet_that_is_lost_is_named(error: Any) -> None:
    """A formula whose range is gone hands over an error in its place, each program in its own form."""
    for name in sheet_names():
        with pytest.raises(InputError, match=f"the sheet '{name}' is missing or was renamed"):
            called("WARP_OPENED_BOOK", cells(**{name.lower(): error}))


def test_a_date_is_the_number_of_its_day(book: str) -> None:
    found = dict(called("WARP_RESULT_TABLE", [book, "run_record"])[2:])
    assert found["worked out on"] == (datetime.date.today() - datetime.date(1899, 12, 30)).days
