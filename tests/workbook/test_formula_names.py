"""Plain names come back, and nothing else in the file changes."""

from __future__ import annotations

import io
import itertools
import zipfile

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costing.formulas.registry import cell_functions
from costing.front_ends.libreoffice import interface
from costing.front_ends.workbook import formula_names
from costing.front_ends.workbook.build import demo_book
from costing.front_ends.workbook.formula_names import plain_formula, with_plain_names
from costing.front_ends.workbook.xml_parts import sheet_parts, tokens
from tests.workbook.formula_books import CALL, NAME, PLAIN, everywhere, loaded, opened, parts_of, sheet_with

# How programs write a call of ours. Those of LibreOffice 7.4 were seen in files it saved; those of Excel are
# read from public threads and have not been run.
MANGLED = [
    "warp_molar_mass",
    "Warp_Molar_Mass",
    "WARP.WARP_MOLAR_MASS",
    "warp.warp_molar_mass",
    "ORG.WARPCOSTING.WARP.WARP_MOLAR_MASS",
    "_xll.WARP_MOLAR_MASS",
    "_xludf.WARP_MOLAR_MASS",
    "_xlfn._xludf.WARP_MOLAR_MASS",
    "_xlfn.warp_molar_mass",
    "_xldudf_WARP_MOLAR_MASS",
    "_xldudf_MILL_WARP_MOLAR_MASS",
    "_xldudf_north.mill_1_warp_molar_mass",
    "[1]!WARP_MOLAR_MASS",
    "[12]!_xll.WARP_MOLAR_MASS",
    "[warp.xlam]!WARP_MOLAR_MASS",
    "warp.xlam!WARP_MOLAR_MASS",
    r"C:\mill\warp.xlam!WARP_MOLAR_MASS",
    r"'C:\the mill''s (new) books\warp.xlam'!WARP_MOLAR_MASS",
    r"'\\server\add ins\[warp.xlam]'!warp_molar_mass",
    "'/Library/add-ins/warp.xlam'!_xldudf_MILL_WARP_MOLAR_MASS",
    "[1] WARP.WARP_MOLAR_MASS",
    r"'c:\x y\warp.xlam' WARP.WARP_MOLAR_MASS",
    "warp.xlam WARP.WARP_MOLAR_MASS",
]

NOT_OURS = [
    "SUM",
    "WARP_NOT_THERE",
    "WARP.WARP_NOT_THERE",
    "MYWARP_MOLAR_MASS",
    "WARP_MOLAR_MASS_2",
    "OTHER.WARP_MOLAR_MASS",
    "SWARP.WARP_MOLAR_MASS",
    "_xldudf_MYWARP_MOLAR_MASS",
    "'My Sheet'!SUM",
    "[1]!SUM",
]

NO_CALLS = [
    '"WARP.WARP_MOLAR_MASS(A1)"',
    '"say ""warp_molar_mass(A1)"" here"',
    "'warp_molar_mass(A1)'!B2",
    "'it''s warp_molar_mass(A1)'!B2",
    "Loads[warp_molar_mass(kg)]",
    "Loads[[#This Row],[a'[b'] warp_molar_mass(kg)]]",
    "Loads[it''s \"warp_molar_mass(kg)]",
    "warp_molar_mass",
    "$A$1:B2",
    "#N/A",
    "{1,2;3,4}",
]


def test_the_name_that_libreoffice_writes_in_front() -> None:
    assert formula_names.IMPLEMENTATION == interface.IMPLEMENTATION


def test_no_name_can_be_taken_for_another_behind_a_name_space() -> None:
    for name, other in itertools.permutations(cell_functions(), 2):
        assert plain_formula(f"_xldudf_{name}(1)") == f"{name}(1)"
        assert not name.endswith("_" + other)


@pytest.mark.parametrize("written", MANGLED)
def test_every_form_becomes_the_plain_name(written: str) -> None:
    for before, after in (
        ("", ""),
        ("-", "*2"),
        ("SUM(A1,", ")"),
        ("'My Sheet'!A1+", '&"it\'s"'),
        ("A1:A3 ", ""),
    ):
        formula = f'{before}{written}("NaOH"){after}'
        assert plain_formula(formula) == f'{before}{NAME}("NaOH"){after}'
    nested = f"{written}({written}(A1),{written}(A2))"
    assert plain_formula(nested) == f"{NAME}({NAME}(A1),{NAME}(A2))"


@pytest.mark.parametrize("name", cell_functions())
def test_every_function_is_known(name: str) -> None:
    for written in (name.lower(), f"WARP.{name}", f"[1]!{name}", f"_xludf.{name}", f"_xldudf_MILL_{name}"):
        assert plain_formula(f"1+{written}(A1)") == f"1+{name}(A1)"


@pytest.mark.parametrize("written", NOT_OURS)
def test_other_functions_stay(written: str) -> None:
    assert plain_formula(f"2*{written}(A1)") == f"2*{written}(A1)"


@pytest.mark.parametrize("piece", NO_CALLS)
def test_what_is_no_call_stays(piece: str) -> None:
    assert plain_formula(piece) == piece
    assert plain_formula(f"{piece}&warp.{NAME}(A1)&{piece}") == f"{piece}&{NAME}(A1)&{piece}"


QUOTABLE = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=20)
PIECES = st.one_of(
    st.sampled_from([*MANGLED, *NOT_OURS]).map(lambda name: f"{name}("),
    st.sampled_from([*NO_CALLS, "A1", "3.5e-2", "Rate_1"]),
    QUOTABLE.map(lambda text: '"' + text.replace('"', '""') + '"'),
    QUOTABLE.map(lambda text: "'" + text.replace("'", "''") + "x'!A1"),
)
OPERATORS = st.sampled_from(["+", "-", ",", "&", "=", "<>", ")*(", "^"])


@given(st.lists(st.tuples(PIECES, OPERATORS), max_size=8))
def test_a_formula_changes_in_its_names_only(pieces: list[tuple[str, str]]) -> None:
    written = "".join(piece + operator for piece, operator in pieces)
    plain = "".join(
        (f"{NAME}(" if piece[:-1] in MANGLED and piece.endswith("(") else piece) + operator
        for piece, operator in pieces
    )
    assert plain_formula(written) == plain
    assert plain_formula(plain) == plain


@given(st.text(max_size=60))
def test_a_text_without_a_name_of_ours_stays(text: str) -> None:
    assert plain_formula(text) == text


def test_every_place_of_a_formula_and_no_other() -> None:
    content = everywhere(CALL)
    repaired, counts = with_plain_names(content, "mill.xlsx")
    assert counts == {
        "defined names": 1,
        "Quote & more": 5,
        "Rows": 1,
        "xl/tables/table1.xml": 1,
    }
    book = opened(repaired)
    page = book["Quote & more"]
    assert page["A1"].value == f"={PLAIN}"
    assert page["A2"].value == f"=SUM({PLAIN},{PLAIN})"
    assert (page["A3"].value.ref, page["A3"].value.text) == ("A3:A4", f"={PLAIN}")
    assert page["B1"].value == f"see {CALL}"
    assert page["B1"].comment is not None
    assert page["B1"].comment.text == f"as {CALL}"
    assert next(iter(page.conditional_formatting)).rules[0].formula == [f"{PLAIN}>1"]
    (check,) = page.data_validations.dataValidation
    assert (check.formula1, check.prompt) == (f"{PLAIN}>1", f"as {CALL}")
    assert book["Rows"].tables["Loads"].tableColumns[1].calculatedColumnFormula.attr_text == PLAIN
    assert book["Rows"]["B1"].value == "warp_molar_mass(kg)"
    assert book.defined_names["mass"].attr_text == PLAIN

    before, after = parts_of(content), parts_of(repaired)
    changed = {
        "xl/workbook.xml",
        "xl/worksheets/sheet1.xml",
        "xl/worksheets/sheet2.xml",
        "xl/tables/table1.xml",
    }
    assert {name for name in before if before[name] != after[name]} == changed
    for name in changed - {"xl/worksheets/sheet2.xml"}:
        # A quotation mark may stand as itself or by its name; else the plain file is the same to the byte.
        plain = parts_of(everywhere(PLAIN))[name]
        assert after[name].replace(b"&quot;", b'"') == plain.replace(b"&quot;", b'"')
    assert (
        b"<xm:f>" + PLAIN.replace("<", "&lt;").replace("&", "&amp;", 1).replace("&amp;lt;", "&lt;").encode()
    )
    assert list(before) == list(after)


def test_entries_of_the_file_stay_as_they_are() -> None:
    content = everywhere(CALL)
    repaired, _ = with_plain_names(content, "mill.xlsx")
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(io.BytesIO(repaired)) as new:
        assert (new.comment, len(new.infolist())) == (b"kept", len(old.infolist()))
        for before, after in zip(old.infolist(), new.infolist(), strict=True):
            for what in ("filename", "date_time", "compress_type", "external_attr", "create_system", "extra"):
                assert getattr(before, what) == getattr(after, what), what


def test_twice_is_once() -> None:
    once, counts = with_plain_names(everywhere(CALL), "mill.xlsx")
    twice, again = with_plain_names(once, "mill.xlsx")
    assert (bool(counts), again) == (True, {})
    assert twice == once


def texts_of(part: bytes) -> list[tuple[str, str]]:
    """(tag, text) of all texts of a part, and of its comments by their bytes."""
    found, open_tags = [], [""]
    for token in tokens(part):
        if token.kind == "start":
            open_tags.append(token.name)
            found.append((token.name, str(token.attributes)))
        elif token.kind == "end":
            open_tags.pop()
        else:
            found.append((open_tags[-1], part[token.begin : token.end].decode()))
    return found


XML_TEXT = st.text(
    st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\ufffe\uffff"), max_size=15
)


@given(XML_TEXT, XML_TEXT, st.sampled_from(MANGLED))
def test_text_outside_of_formulas_never_changes(first: str, second: str, call: str) -> None:
    text = first + f"{call}(1)" + second
    escaped = text.replace("&", "&amp;").replace("<", "&lt;").replace('"', "&quot;").replace(">", "&#62;")
    doubled = escaped.replace("&quot;", "&quot;&quot;")
    remark = text.replace("-", "_")
    written = call.replace("&", "&amp;")
    content = sheet_with(
        f'<x:c r="A1" t="inlineStr"><x:is><x:t>{escaped}</x:t></x:is></x:c><!-- {remark} -->'
        f'<x:c r="B1" s="{escaped}" t="str"><x:f xml:space="preserve">1+{written}(1)&amp;"{doubled}"</x:f>'
        f"<x:v>{escaped}</x:v></x:c><other>{escaped}<f>{escaped}</f></other>"
    )
    repaired, counts = with_plain_names(content, "mill.xlsx")
    before, after = (texts_of(parts_of(file)["xl/worksheets/sheet1.xml"]) for file in (content, repaired))
    assert [item for item in before if item[0] != "f"] == [item for item in after if item[0] != "f"]
    assert counts == {"Sheet": 1}
    texts = [
        token.name for token in tokens(parts_of(repaired)["xl/worksheets/sheet1.xml"]) if token.kind == "text"
    ]
    assert '1+{}(1)&"{}"'.format(NAME, text.replace('"', '""')) in "".join(texts)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16", "us-ascii"])
def test_a_part_in_another_encoding(encoding: str) -> None:
    cells = '<x:c r="A1"><x:f>WARP.WARP_MOLAR_MASS("NaOH &#xD; &#956;")</x:f></x:c>'
    repaired, counts = with_plain_names(sheet_with(cells, encoding), "mill.xlsx")
    assert counts == {"Sheet": 1}
    texts = [
        token.name for token in tokens(parts_of(repaired)["xl/worksheets/sheet1.xml"]) if token.kind == "text"
    ]
    assert "".join(texts) == f'{NAME}("NaOH \r μ")'


def test_a_long_part_is_read_in_pieces() -> None:
    cell = '<x:c r="A{row}"><x:f>WARP.WARP_MOLAR_MASS("μ {row}")</x:f><x:v>{row}</x:v></x:c>'
    content = sheet_with("".join(cell.format(row=row) for row in range(1, 5001)))
    repaired, counts = with_plain_names(content, "mill.xlsx")
    assert counts == {"Sheet": 5000}
    before, after = (parts_of(file)["xl/worksheets/sheet1.xml"] for file in (content, repaired))
    assert after == before.replace(b"WARP.WARP_", b"WARP_")


def test_sheets_are_found_by_their_relations() -> None:
    with zipfile.ZipFile(demo_book()) as book:
        found = sheet_parts(book)
        titles = loaded(demo_book()).sheetnames
        assert list(found) == titles
        assert set(found.values()) <= set(book.namelist())
