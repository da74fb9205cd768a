"""What makes no sense is refused in one line: file, sheet and cell, the value, and what is accepted."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest
from openpyxl.workbook import Workbook

from costing.book.places import placed
from costing.cost.quote import Quote, quote
from costing.front_ends.workbook.read import read_book
from costing.ledger.whole import open_ledger
from costing.quantities import InputError
from costing.settings.mill import Enquiry, Mill
from tests.workbook.editing import (
    Edit,
    cell_with,
    changed,
    column_cell,
    in_column,
    in_row,
    row_of,
    sheet_of,
    table_cell,
    text_replaced,
    unit_of,
)

DYEING = "indigo dyeing"
RINSE = "rinse after dyeing"
DARK = ("Recipes", "DARK-POWDER")


def without_sheet(book: Workbook) -> None:
    del book["Materials"]


def row_deleted(title: str, quantity: str, step: str = "") -> Edit:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        sheet.delete_rows(row_of(sheet, quantity, step))

    return edit


def row_copied_below(title: str, quantity: str, step: str) -> Edit:
    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, title)
        sheet.cell(sheet.max_row + 1, 1).value = step
        sheet.cell(sheet.max_row, 2).value = quantity

    return edit


def step_row(name: str, column: str, value: object) -> Edit:
    """Changes the row of a step in the lower table of Routes, of its first route."""

    def edit(book: Workbook) -> None:
        sheet = sheet_of(book, "Routes")
        row = cell_with(sheet, name, column=2).row
        sheet.cell(row, cell_with(sheet, column).column).value = value  # type: ignore[assignment]

    return edit


def percent_format_beside_grams(book: Workbook) -> None:
    cell = column_cell(book, *DARK, "bath indigo", DYEING)
    cell.value, cell.number_format = 0.02, "0%"


def both_rinse_waters(book: Workbook) -> None:
    column_cell(book, *DARK, "rinse water flow", RINSE).value = 9


def no_rinse_water(book: Workbook) -> None:
    column_cell(book, *DARK, "rinse water", RINSE).value = None


def style_without_code(book: Workbook) -> None:
    sheet = sheet_of(book, "Styles")
    sheet.cell(row_of(sheet, "warp count"), cell_with(sheet, "D-1300-P").column + 1).value = 7


def enquiry_without_code(book: Workbook) -> None:
    table_cell(book, "Enquiries", "Q-10", "Code").value = None


def head_twice(book: Workbook) -> None:
    sheet = sheet_of(book, "Materials")
    head = cell_with(sheet, "Strength")
    sheet.cell(head.row, sheet.max_column + 1).value = "Strength"


def cost_cell(book: Workbook, quantity: str, column: int) -> object:
    sheet = sheet_of(book, "Mill costs")
    return sheet.cell(cell_with(sheet, quantity, column=1).row, column)


def in_costs(quantity: str, value: object, column: int = 2) -> Edit:
    def edit(book: Workbook) -> None:
        cost_cell(book, quantity, column).value = value  # type: ignore[attr-defined]

    return edit


def cost_row_deleted(book: Workbook) -> None:
    sheet = sheet_of(book, "Mill costs")
    sheet.delete_rows(cell_with(sheet, "overhead").row)


def ratio_of_masses(book: Workbook) -> None:
    unit_of("Ranges", "hydrosulfite per oxygen", "kg/kg", DYEING)(book)
    column_cell(book, "Ranges", "ROPE-A", "hydrosulfite per oxygen", DYEING).value = 1.2


def thin_stock_vat(book: Workbook) -> None:
    column_cell(book, *DARK, "stock indigo", DYEING).value = 5
    column_cell(book, *DARK, "bath indigo", DYEING).value = 4


def no_price(book: Workbook) -> None:
    for head in ("Price", "Freight"):
        table_cell(book, "Materials", "LYE-50", head).value = None


def materials_row_with_text_price(book: Workbook) -> None:
    cell = table_cell(book, "Materials", "HYDRO-90", "Price")
    cell.value = "1.49"
    cell.data_type = "s"


def number_for_a_date(book: Workbook) -> None:
    cell = table_cell(book, "Materials", "LYE-50", "Price date")
    cell.value, cell.number_format = 45663, "0"


AT_READING: list[tuple[str, Edit, list[str]]] = [
    # the frame of the book
    ("sheet missing", without_sheet, ["the sheet 'Materials' is missing", "Mill costs"]),
    (
        "column missing",
        text_replaced("Materials", "Strength", "Assay"),
        ["Materials, row", "'Strength' is missing"],
    ),
    (
        "unit column missing",
        text_replaced("Recipes", "Unit", "Einheit"),
        ["Recipes, row", "'Unit' is missing"],
    ),
    ("step column missing", text_replaced("Ranges", "Step", "Section"), ["Ranges, row", "'Step' is missing"]),
    ("head twice", head_twice, ["Materials!", "'Strength' stands twice", "accepted is once"]),
    ("code row missing", row_deleted("Styles", "code"), ["Styles", "'code' is missing"]),
    ("row twice", row_copied_below("Recipes", "dips", DYEING), ["Recipes!B", "'dips'", "stands twice"]),
    (
        "row misspelt",
        text_replaced("Recipes", "bath indigo", "bath indgo"),
        ["Recipes!B", "'bath indgo'", "bath indigo"],
    ),
    (
        "step misspelt",
        text_replaced("Ranges", "scour", "scouring"),
        ["Ranges!A", "'scouring'", "rinse after scour"],
    ),
    ("style without code", style_without_code, ["Styles!", "code of a style is empty", "holds 7"]),
    ("enquiry without code", enquiry_without_code, ["Enquiries!A", "code is empty"]),
    # codes
    (
        "style twice",
        text_replaced("Styles", "D-1350", "d-1200"),
        ["Styles!J", "'d-1200' stands twice", "Styles!I"],
    ),
    (
        "material twice",
        text_replaced("Materials", "HYDRO-90", "HYDRO-88"),
        ["Materials!A", "'HYDRO-88' stands twice"],
    ),
    ("enquiry twice", text_replaced("Enquiries", "Q-02", "Q-01"), ["Enquiries!A", "'Q-01' stands twice"]),
    ("unknown style", in_row("Enquiries", "Q-01", "Style", "D-9999"), ["Enquiries!C", "'D-9999'", "D-1200"]),
    (
        "unknown recipe",
        in_row("Enquiries", "Q-01", "Recipe", "PINK"),
        ["Enquiries!D", "'PINK'", "DARK-POWDER"],
    ),
    ("unknown range", in_row("Enquiries", "Q-01", "Range", "ROPE-X"), ["Enquiries!E", "'ROPE-X'", "ROPE-A"]),
    ("unknown route", in_column(*DARK, "route", "sheet"), ["Recipes!I", "'sheet'", "rope indigo"]),
    ("no route", in_column(*DARK, "route", None), ["Recipes!I", "route is empty", "rope indigo"]),
    ("unknown yarn", in_column("Styles", "D-1200", "warp yarn", "WOOL"), ["Styles!I", "'WOOL'", "WARP-7"]),
    # routes
    (
        "unknown kind",
        step_row("scour", "Kind", "boil"),
        ["Routes!D", "'boil'", "scour, rinse, recovering rinse, indigo, dye box, treatment, size, bath"],
    ),
    (
        "step of no route",
        step_row("scour", "Route of the step", "loop"),
        ["Routes!A", "'loop'", "rope indigo"],
    ),
    ("step number twice", step_row("scour", "No.", 2), ["Routes!C", "no. 2", "stands twice"]),
    ("step number 1.5", step_row("scour", "No.", 1.5), ["Routes!C", "1.5", "a whole number from 1 to 99"]),
    ("step twice", step_row("scour", "Step", "drying"), ["Routes!", "'drying'"]),
    (
        "route without steps",
        text_replaced("Routes", "rope indigo, wetted only", "bare"),
        ["Routes!A", "'rope indigo, wetted only'", "bare"],
    ),
    # units
    ("unknown unit", unit_of("Recipes", "bath indigo", "g/lit", DYEING), ["Recipes!I", "'g/lit'", "g/L"]),
    (
        "unit missing",
        unit_of("Recipes", "bath indigo", None, DYEING),
        ["Recipes!I", "unit of bath indigo is missing", "g/L"],
    ),
    (
        "unit of something else",
        unit_of("Recipes", "bath indigo", "bar", DYEING),
        ["Recipes!I", "'bar'", "g/L"],
    ),
    ("mass ratio for an amount ratio", ratio_of_masses, ["Ranges!I", "'kg/kg'", "mol/mol"]),
    ("unit of a pure number", unit_of("Recipes", "dips", "m", DYEING), ["Recipes!I", "'m'", "pure number"]),
    (
        "88 without its unit",
        in_row("Materials", "HYDRO-88", "Strength unit", None),
        ["Materials!F", "unit of strength is missing", "% beside 88"],
    ),
    (
        "0.88 %",
        in_row("Materials", "HYDRO-88", "Strength", 0.88),
        ["Materials!F", "0.88 %", "1 to 100 %", "type 88"],
    ),
    (
        "degrees beyond the table of lye",
        in_column("Recipes", "DARK-MERCERISED", "first dose", "55 °Bé", "mercerising"),
        ["Recipes!", "first dose is 55 °Bé", "0 to 49.8"],
    ),
    (
        "degrees for indigo",
        unit_of("Recipes", "bath indigo", "°Bé", DYEING),
        ["Recipes!I", "unit '°Bé'", "strength of caustic lye alone", "g/L"],
    ),
    ("percent format beside g/L", percent_format_beside_grams, ["Recipes!I", "shown as 2 %", "g/L"]),
    # numbers
    (
        "decimal comma as text",
        in_column(*DARK, "bath indigo", "2,4", DYEING),
        ["Recipes!I", "the text '2,4'", "0.05 to 30 g/L"],
    ),
    ("number as text", materials_row_with_text_price, ["Materials!T", "the text '1.49'"]),
    ("words", in_column(*DARK, "dips", "seven", DYEING), ["Recipes!I", "'seven'", "1 to 24"]),
    (
        "error value",
        in_column(*DARK, "bath indigo", "#REF!", DYEING),
        ["Recipes!I", "#REF!", "0.05 to 30 g/L"],
    ),
    ("truth value", in_column(*DARK, "bath indigo", True, DYEING), ["Recipes!I", "TRUE"]),
    (
        "date",
        in_column(*DARK, "bath indigo", datetime.date(2025, 4, 2), DYEING),
        ["Recipes!I", "date", "2025-04-02"],
    ),
    (
        "formula without a result",
        in_column(*DARK, "bath indigo", "=1+1", DYEING),
        ["Recipes!I", "formula", "save it once"],
    ),
    ("formula in a code", in_row("Enquiries", "Q-01", "Style", "=C8"), ["Enquiries!C", "formula"]),
    ("negative", in_row("Materials", "HYDRO-90", "Price", -1.4), ["Materials!T", "-1.4", "0 to"]),
    ("zero ends", in_column("Styles", "D-1200", "ends density", 0), ["Styles!I", "0 1/cm", "1 to 200 1/cm"]),
    ("count of zero", in_column("Styles", "D-1200", "warp count", 0), ["Styles!I", "0 Ne", "590.5"]),
    (
        "half a dip",
        in_column(*DARK, "dips", 7.5, DYEING),
        ["Recipes!I", "7.5", "a whole number from 1 to 24"],
    ),
    ("too hot", in_column(*DARK, "scour temperature", 140), ["Recipes!I", "140 °C", "5 to 99 °C"]),
    (
        "order of nothing",
        in_row("Enquiries", "Q-01", "Order length", 0),
        ["Enquiries!F", "0 m", "1 to 10,000,000 m"],
    ),
    (
        "order length missing",
        in_row("Enquiries", "Q-01", "Order length", None),
        ["Enquiries!F", "empty", "m"],
    ),
    ("margin of 95 %", in_row("Enquiries", "Q-09", "Margin", 95), ["Enquiries!P", "95 %", "0 to 90 %"]),
    (
        "style without count",
        in_column("Styles", "D-1200", "warp count", None),
        ["Styles!I", "warp count is empty"],
    ),
    (
        "row of a needed quantity gone",
        row_deleted("Styles", "width"),
        ["Styles", "the row 'width' is missing"],
    ),
    (
        "row of the shade gone",
        row_deleted("Recipes", "indigo on yarn", DYEING),
        ["Recipes", "the row 'indigo dyeing' 'indigo on yarn' is missing"],
    ),
    (
        "row with a typical value gone",
        row_deleted("Styles", "shrinkage length"),
        ["Styles", "the row 'shrinkage length' is missing", "an empty cell where the typical value will do"],
    ),
    # words
    (
        "unknown basis",
        in_row("Enquiries", "Q-01", "Length basis", "fabric"),
        ["Enquiries!H", "'fabric'", "finished cloth"],
    ),
    (
        "unknown feed",
        in_column("Ranges", "ROPE-A", "rinse feed", "both", RINSE),
        ["Ranges!I", "'both'", "counter-current"],
    ),
    (
        "text for a date",
        in_row("Materials", "LYE-50", "Price date", "6.1.2025"),
        ["Materials!X", "'6.1.2025'", "real date"],
    ),
    ("number for a date", number_for_a_date, ["Materials!X", "45663", "real date"]),
    # materials
    (
        "unknown caution",
        in_row("Materials", "LYE-50", "Caution", "burns"),
        ["Materials!Y", "'burns'", "caustic"],
    ),
    (
        "unknown substance",
        in_row("Materials", "LYE-50", "Substance", "lye"),
        ["Materials!E", "'lye'", "caustic soda"],
    ),
    (
        "dye without its class",
        in_row("Materials", "REACTIVE-BLUE", "Dye class", None),
        ["Materials!D", "dye class of 'REACTIVE-BLUE' is empty", "indigo, sulfur, vat, reactive"],
    ),
    (
        "class of what is no dye",
        in_row("Materials", "LYE-50", "Dye class", "vat"),
        ["Materials!D", "'vat' beside the role 'alkali'", "an empty cell"],
    ),
    (
        "indigo of another class",
        in_row("Materials", "INDIGO-94", "Dye class", "vat"),
        ["Materials!D", "dye class of 'INDIGO-94' is 'vat'", "accepted is indigo"],
    ),
    (
        "sulfide beside a formula",
        in_row("Materials", "LYE-50", "Sulfide, as S", 1.0),
        ["Materials!M", "sulfide, as S, is filled", "accepted is an empty cell"],
    ),
    (
        "unknown remainder",
        in_row("Materials", "LYE-50", "Remainder", "air"),
        ["Materials!H", "'air'", "water, inert"],
    ),
    ("unknown currency", in_row("Materials", "LYE-50", "Currency", "XYZ"), ["Materials!U", "'XYZ'", "EUR"]),
    (
        "no content given",
        in_row("Materials", "SEQ-40", "Own sodium", None),
        ["Materials!P", "own sodium", "'SEQ-40'"],
    ),
    (
        "content beside a formula",
        in_row("Materials", "LYE-50", "Own sodium", 0.5),
        ["Materials!P", "own sodium", "caustic soda"],
    ),
    (
        "litre without density",
        in_row("Materials", "LYE-50", "Density", None),
        ["Materials!I", "density is empty", "per L"],
    ),
    (
        "price per nothing",
        in_row("Materials", "LYE-50", "Per", None),
        ["Materials!V", "no unit", "kg, t, lb or L"],
    ),
    ("price per metre", in_row("Materials", "LYE-50", "Per", "m"), ["Materials!V", "'m'", "kg, t"]),
    (
        "freight without price",
        in_row("Materials", "LYE-50", "Price", None),
        ["Materials!T", "price is empty"],
    ),
    # costs
    (
        "cost row misspelt",
        text_replaced("Mill costs", "water price", "rain price"),
        ["Mill costs!A", "'rain price'", "water price"],
    ),
    ("cost row gone", cost_row_deleted, ["Mill costs", "'overhead' is missing"]),
    ("cost empty", in_costs("steam price", None), ["Mill costs!B", "steam price is empty"]),
    ("cost unit", in_costs("steam price", "money/m3", 3), ["Mill costs!B", "'money/m3'", "money/t"]),
    ("own currency not 1", in_costs("EUR", 1.5), ["Mill costs!B", "'EUR'", "1.5", "accepted is 1"]),
    ("rate of zero", in_costs("USD", 0), ["Mill costs!B", "rate is 0"]),
]

AT_QUOTING: list[tuple[str, Edit, list[str]]] = [
    (
        "shade missing",
        in_column(*DARK, "indigo on yarn", None, DYEING),
        ["Recipes!I", "indigo on yarn is empty", "0.05 to 12 %"],
    ),
    (
        "unknown product",
        in_column(*DARK, "indigo product", "WOAD", DYEING),
        ["Recipes!I", "'WOAD'", "INDIGO-94"],
    ),
    (
        "product of another kind",
        in_column(*DARK, "hydrosulfite product", "LYE-50", DYEING),
        ["Recipes!I", "'LYE-50'", "sodium hydroxide", "sodium hydrosulfite"],
    ),
    (
        "two rinse waters",
        both_rinse_waters,
        ["Recipes!I", "rinse water flow", "both are filled", "fill one"],
    ),
    ("no rinse water", no_rinse_water, ["Recipes!I", "rinse water flow", "both are empty", "fill one"]),
    ("more dips than boxes", in_column(*DARK, "dips", 9, DYEING), ["Recipes!I", "dips is 9", "1 to 8"]),
    ("stock vat as thin as the bath", thin_stock_vat, ["Recipes!I", "stock indigo is 5 g/L", "4 g/L"]),
    ("price missing", no_price, ["Materials!A13", "'LYE-50'", "no price"]),
    (
        "more ropes than places",
        in_row("Enquiries", "Q-01", "Sets side by side", 9),
        ["Enquiries!A", "rope places", "36"],
    ),
    (
        "neutralised more than dissolved",
        in_column(*DARK, "caustic neutralised", 20, "scour"),
        ["Recipes!I", "caustic neutralised is 20 g/kg"],
    ),
]


@pytest.mark.parametrize(
    ("edit", "said"), [(edit, said) for _, edit, said in AT_READING], ids=[name for name, _, _ in AT_READING]
)
def test_refused_at_reading(tmp_path: Path, edit: Edit, said: list[str]) -> None:
    path = changed(tmp_path, edit)
    before = path.read_bytes()
    with pytest.raises(InputError) as caught:
        read_book(path)
    told = str(caught.value)
    assert told.startswith("my_mill.xlsx")
    assert "\n" not in told
    assert "accepted" in told or "there are" in told
    for text in said:
        assert text in told
    assert path.read_bytes() == before
    assert [item.name for item in tmp_path.iterdir()] == [path.name]


def priced(mill: Mill, enquiry: Enquiry, path: Path) -> Quote:
    assert mill.costs is not None
    with placed(mill, enquiry, path):
        return quote(open_ledger(mill, enquiry), mill.materials, mill.costs)


@pytest.mark.parametrize(
    ("edit", "said"), [(edit, said) for _, edit, said in AT_QUOTING], ids=[name for name, _, _ in AT_QUOTING]
)
def test_refused_at_quoting(tmp_path: Path, edit: Edit, said: list[str]) -> None:
    path = changed(tmp_path, edit)
    before = path.read_bytes()
    mill = read_book(path)
    enquiry = mill.enquiry("Q-01")
    with pytest.raises(InputError) as caught:
        priced(mill, enquiry, path)
    told = str(caught.value)
    assert told.startswith("my_mill.xlsx, ")
    assert "\n" not in told
    for text in said:
        assert text in told
    assert path.read_bytes() == before


@pytest.mark.parametrize("title", ["Discharge points", "Discharge plan", "Treatment", "Permit"])
def test_a_missing_sheet_of_the_drain_takes_away_the_drain_and_no_quote(tmp_path: Path, title: str) -> None:
    def without(book: Workbook) -> None:
        del book[title]

    mill = read_book(changed(tmp_path, without))
    assert mill.enquiries
    with pytest.raises(InputError, match=f"the sheet '{title}' is missing or was renamed"):
        assert mill.drain is not None
