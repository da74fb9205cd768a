"""Results behind formulas are seen by whoever only reads the file, and nothing else in it changes."""

from __future__ import annotations

import datetime
import io
import zipfile
from pathlib import Path
from typing import Any

import pandas
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook
from openpyxl.comments import Comment
from openpyxl.styles import Font, PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.formula import ArrayFormula

from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.cached_values import LONGEST_TEXT, Value, formula_cells, with_values
from costing.quantities import InputError
from tests.workbook.formula_books import parts_of

VALUES: dict[str, Value] = {
    "B1": 0.1 + 0.2,
    "C1": 12345678901234567,
    "B2": -1e-300,
    "C2": 3.0,
    "B3": True,
    "C3": False,
    "B4": 'two < three & "four"\nμ ',
    "C4": None,
    "B5": "#DIV/0!",
    "C5": datetime.datetime(2025, 1, 6, 12),
    "E2": "A",
    "F2": "top",
    "G2": 10000.0,
    "E3": "B",
    "F3": None,
    "G3": 5000.0,
    "E4": "#N/A",
    "F4": "#N/A",
    "G4": True,
    "E9": 1.0,
    "E10": 2.0,
    "E11": 3.0,
}


def made() -> bytes:
    book = Workbook()
    page = book.worksheets[0]
    page.title = "Quote & more"
    page["A1"], page["A2"], page["A3"] = 0.75, "style", True
    for address in VALUES:
        if address[0] in "BC":
            page[address] = f"=WARP_MOLAR_MASS({address[0]}1)"
    page["C5"].number_format = "yyyy-mm-dd hh:mm"
    page["E2"] = ArrayFormula("E2:G4", '=WARP_SUBLOTS_OF_SET(A1,"10000 m")')
    page["E9"] = ArrayFormula("E9:E11", "=A1:A3*2")
    for address in ("E2", "F2", "G4", "E10"):
        page[address].font = Font(name="Carlito", bold=True)
        page[address].fill = PatternFill("solid", "FFEEDD")
    page["H3"], page["D10"] = "behind", "in front"
    page["B1"].comment = Comment("see there", "mill")
    check = DataValidation("decimal", formula1="0", formula2="1")
    check.add("A1")
    page.add_data_validation(check)
    page.row_dimensions[3].height = 30
    other = book.create_sheet("Other")
    other["A1"] = "=1+1"
    raw = io.BytesIO()
    book.save(raw)
    return raw.getvalue()


MADE = made()
FILLED = with_values(MADE, {"Quote & more": VALUES, "Other": {"A1": 2.0}})


def opened(content: bytes, *, values: bool) -> Workbook:
    return load_workbook(io.BytesIO(content), data_only=values)


def shown(value: Value) -> Any:
    """What a reader gives: an empty text is nothing."""
    return value or None if isinstance(value, str) else value


def test_the_cells_that_show_a_result() -> None:
    assert formula_cells(MADE) == {
        "Quote & more": sorted(VALUES, key=lambda name: (int(name[1:]), name[0])),
        "Other": ["A1"],
    }
    assert formula_cells(demo_book().read_bytes())["About"] == []


def test_a_library_reads_every_result() -> None:
    page = opened(FILLED, values=True)["Quote & more"]
    for address, value in VALUES.items():
        assert page[address].value == shown(value), address
        assert type(page[address].value) in (type(value), int, type(None)), address
    kinds = {"B1": "n", "B3": "b", "B4": "s", "B5": "e", "C5": "d", "F2": "s", "E4": "e", "G4": "b"}
    assert {address: page[address].data_type for address in kinds} == kinds


def test_pandas_reads_every_result() -> None:
    frame = pandas.read_excel(io.BytesIO(FILLED), sheet_name="Quote & more", header=None)
    for address, value in VALUES.items():
        cell: Any = frame.iloc[int(address[1:]) - 1, ord(address[0]) - ord("A")]
        if value is None or (isinstance(value, str) and value.startswith("#")):
            assert pandas.isna(cell), address
        else:
            assert cell == value, address


def test_formulas_styles_and_other_cells_stay() -> None:
    before, after = (opened(content, values=False) for content in (MADE, FILLED))
    for sheet in before:
        page: Any = after[sheet.title]
        for row in sheet.iter_rows():
            for old in row:
                new = page[old.coordinate]
                assert new.style_id == old.style_id, old.coordinate
                if isinstance(old.value, ArrayFormula):
                    assert (new.value.ref, new.value.text) == (old.value.ref, old.value.text)
                elif old.coordinate not in VALUES or old.value is not None:
                    assert new.value == old.value, old.coordinate
    page = after["Quote & more"]
    assert page["B1"].comment is not None
    assert page.row_dimensions[3].height == 30
    assert page["F2"].font.b
    assert page["G4"].fill.fgColor.rgb == "00FFEEDD"


def test_other_parts_stay_to_the_byte() -> None:
    before, after = parts_of(MADE), parts_of(FILLED)
    assert list(before) == list(after)
    sheets = {f"xl/worksheets/sheet{number}.xml" for number in (1, 2)}
    assert {name for name in before if before[name] != after[name]} == sheets
    one = parts_of(with_values(MADE, {"Other": {"A1": 2.0}}))
    assert one["xl/worksheets/sheet1.xml"] == before["xl/worksheets/sheet1.xml"]
    assert one["xl/worksheets/sheet2.xml"] == before["xl/worksheets/sheet2.xml"].replace(
        b"<v />", b"<v>2</v>"
    ).replace(b"<v></v>", b"<v>2</v>")


def test_outside_of_the_rows_only_the_size_of_the_sheet_changes() -> None:
    before, after = (parts_of(content)["xl/worksheets/sheet1.xml"] for content in (MADE, FILLED))
    assert b'<dimension ref="A1:H10"' in before
    assert b'<dimension ref="A1:H11"' in after
    for start, end in ((0, b"<sheetData>"), (b"</sheetData>", None)):
        old, new = (
            part[part.index(start) if start else 0 : part.index(end) if end else None]
            for part in (before, after)
        )
        assert old.replace(b"A1:H10", b"A1:H11") == new


def test_cells_and_rows_stand_in_order() -> None:
    with zipfile.ZipFile(io.BytesIO(FILLED)) as book:
        part = book.read("xl/worksheets/sheet1.xml").decode()
    rows = [piece.split('"')[1] for piece in part.split("<row ")[1:]]
    cells = [piece.split('"')[1] for piece in part.split("<c ")[1:]]
    assert [int(row) for row in rows] == [1, 2, 3, 4, 5, 9, 10, 11]
    assert cells == sorted(cells, key=lambda name: (int(name[1:]), name[0]))
    assert len(cells) == len(set(cells))


def test_results_replace_earlier_ones() -> None:
    assert with_values(FILLED, {"Quote & more": VALUES, "Other": {"A1": 2.0}}) == FILLED
    others: dict[str, Value] = dict.fromkeys(VALUES, "other")
    replaced = with_values(FILLED, {"Quote & more": others})
    page = opened(replaced, values=True)["Quote & more"]
    assert {page[address].value for address in VALUES} == {"other"}
    assert with_values(replaced, {"Quote & more": VALUES}) == FILLED


def test_a_file_will_do_as_well(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(MADE)
    assert with_values(path, {"Quote & more": VALUES, "Other": {"A1": 2.0}}) == FILLED
    assert path.read_bytes() == MADE


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"Nowhere": {}}, "Nowhere: is no sheet of the workbook; there are: Quote & more, Other"),
        ({"Other": {"A1": 1.0, "B1": 1.0}}, "Other!B1: holds no formula"),
        ({"Other": {}}, "Other!A1: holds a formula and was given no result"),
        (
            {"Quote & more": {name: value for name, value in VALUES.items() if name != "F3"}},
            "Quote & more!F3: holds a formula and was given no result",
        ),
        ({"Quote & more": {**VALUES, "A1": 0.5}}, "Quote & more!A1: holds no formula"),
        ({"Other": {"A1": float("nan")}}, "Other!A1: the result is nan"),
        ({"Other": {"A1": float("inf")}}, "Other!A1: the result is inf"),
        ({"Other": {"A1": "bell \a"}}, "Other!A1: the result is a text that no cell can hold: 'bell"),
        ({"Other": {"A1": "x" * (LONGEST_TEXT + 1)}}, "Other!A1: the result is a text that no cell"),
    ],
)
def test_what_cannot_be_is_refused(values: dict[str, dict[str, Value]], said: str) -> None:
    with pytest.raises(InputError) as caught:
        with_values(MADE, values)
    assert str(caught.value).startswith(said)


def test_a_damaged_file_is_refused() -> None:
    for content in (b"no zip", MADE[: len(MADE) // 2]):
        with pytest.raises(InputError, match="is damaged"):
            with_values(content, {"Other": {"A1": 1.0}})
        with pytest.raises(InputError, match="is damaged"):
            formula_cells(content)


TEXTS = st.text(
    st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\ufffe\uffff_"), min_size=1, max_size=8
)
RESULTS = st.one_of(st.floats(allow_nan=False, allow_infinity=False), st.booleans(), TEXTS)
PLACES = st.tuples(st.integers(1, 9), st.integers(1, 9))


@st.composite
def sheets(draw: st.DrawFn) -> tuple[dict[tuple[int, int], str], dict[tuple[int, int], Any], tuple[int, ...]]:
    """Formulas, other cells, and the area of one array formula, none upon another."""
    top, left = draw(PLACES)
    area = (top, left, top + draw(st.integers(0, 3)), left + draw(st.integers(0, 3)))

    def is_free(place: tuple[int, int]) -> bool:
        return not (area[0] <= place[0] <= area[2] and area[1] <= place[1] <= area[3])

    formulas = draw(st.dictionaries(PLACES.filter(is_free), st.just("=1+1"), max_size=6))
    others = draw(
        st.dictionaries(PLACES.filter(lambda place: is_free(place) and place not in formulas), RESULTS)
    )
    return formulas, others, area


@settings(max_examples=60)
@given(sheets(), st.data())
def test_any_sheet_keeps_its_cells_and_shows_its_results(
    sheet: tuple[dict[tuple[int, int], str], dict[tuple[int, int], Any], tuple[int, ...]], data: st.DataObject
) -> None:
    formulas, others, (top, left, bottom, right) = sheet
    book = Workbook()
    page = book.worksheets[0]
    reference = f"{get_column_letter(left)}{top}:{get_column_letter(right)}{bottom}"
    page.cell(top, left, ArrayFormula(reference, "=A1:B2"))
    for place, value in {**formulas, **others}.items():
        cell = page.cell(*place)
        cell.value = value
        if isinstance(value, str) and place in others:
            cell.data_type = "s"  # also of a text that looks like a formula
    raw = io.BytesIO()
    book.save(raw)
    content = raw.getvalue()
    (cells,) = formula_cells(content).values()
    results: dict[str, Value] = {cell: data.draw(RESULTS) for cell in cells}
    filled = with_values(content, {"Sheet": results})

    seen, kept = opened(filled, values=True)["Sheet"], opened(filled, values=False)["Sheet"]
    assert {cell: seen[cell].value for cell in cells} == results
    before = opened(content, values=False)["Sheet"]  # the library keeps sixteen digits of a number
    for place in {**formulas, **others}:
        assert kept.cell(*place).value == before.cell(*place).value, place
    array = kept.cell(top, left).value
    assert isinstance(array, ArrayFormula)
    assert array.ref == reference
    assert len(cells) == len(formulas) + (bottom - top + 1) * (right - left + 1)
