"""What a reader sees and prints: heads with units, panes, filters, cautions, and charts of the numbers."""

from __future__ import annotations

import re
import zipfile
from typing import Any
from xml.etree import ElementTree

import pytest
from openpyxl import Workbook
from openpyxl.utils import get_column_letter

from costing.front_ends.fills import FILLS
from costing.reference_data import cautions, defaults
from costing.reference_data.source_list import sources
from costing.report import Table, all_tables
from tests.workbook_results.conftest import Written
from tests.workbook_results.test_values import SHEETS
from tests.workbook_results.written import sheet, write

CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"
DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/main}"


@pytest.fixture(scope="module")
def tables(written: Written) -> dict[str, Table]:
    return {table.key: table for table in all_tables(written.mill, written.results)}


@pytest.mark.parametrize(("key", "name"), SHEETS.items())
def test_units_stand_under_the_heads(book: Workbook, tables: dict[str, Table], key: str, name: str) -> None:
    heads, units = book[name].iter_rows(min_row=5, max_row=6, values_only=True)
    assert list(heads) == [column.title for column in tables[key].columns]
    assert [unit or "" for unit in units] == [column.unit for column in tables[key].columns]


@pytest.mark.parametrize(("key", "name"), SHEETS.items())
def test_the_whole_note_stands_above_the_table(
    book: Workbook, tables: dict[str, Table], key: str, name: str
) -> None:
    """Two lines at most: the third would be lost under the alert."""
    lines = [book[name]["A2"].value, book[name]["A3"].value]
    assert " ".join(filter(None, lines)) == tables[key].note


@pytest.mark.parametrize("name", SHEETS.values())
def test_tables_are_frozen_filtered_and_printed_with_their_heads(book: Workbook, name: str) -> None:
    page: Any = book[name]
    assert re.fullmatch("[A-D]7", page.freeze_panes)
    assert page.print_title_rows == "$5:$6"
    upright = name in ("Discharge by parameter", "Cost lines", "Ledger")  # of many rows
    assert page.page_setup.orientation == ("portrait" if upright else "landscape")
    assert page.page_setup.fitToWidth == 1
    assert page.page_setup.fitToHeight == 0
    assert page.sheet_properties.pageSetUpPr.fitToPage
    assert page.oddFooter.right.text == "page &P of &N"
    assert not page.merged_cells.ranges
    if name != "Safety":
        last = get_column_letter(page.max_column)
        assert page.auto_filter.ref == f"A6:{last}{page.max_row}"


@pytest.mark.parametrize("name", SHEETS.values())
def test_columns_are_wide_enough_for_their_numbers(book: Workbook, name: str) -> None:
    """A number that does not fit shows as ###; a digit is about one unit of column width."""
    page: Any = book[name]
    for cells in page.iter_cols(min_row=7):
        width = page.column_dimensions[cells[0].column_letter].width
        for cell in cells:
            if isinstance(cell.value, float):
                decimals = re.match(r"#,##0\.?(0*)", cell.number_format)
                text = f"{cell.value:,.{len(decimals[1])}f}" if decimals else f"{cell.value:g}"
                assert len(text) <= width, (cell.coordinate, text, width)


def test_numbers_carry_the_digits_of_their_column(book: Workbook, tables: dict[str, Table]) -> None:
    for key, name in SHEETS.items():
        for column, cell in zip(tables[key].columns, book[name][7]):
            if column.digits is not None and cell.value is not None:
                wanted = "#,##0" + ("." + "0" * column.digits if column.digits else "")
                assert cell.number_format.split(";")[0] == wanted, (name, cell.coordinate)


def test_the_discharge_says_that_it_is_an_estimate(book: Workbook) -> None:
    names = ("Discharge loads", "Discharge concentrations", "Discharge by parameter", "Discharge charts")
    for name in names:
        assert "not a measurement of compliance" in book[name]["A4"].value


def test_cautions_are_those_of_the_materials_used(written: Written, book: Workbook) -> None:
    safety = sheet(written.path, "Safety").set_index("Concerns")
    known = cautions()
    for key in ("general", "caustic", "hydrosulfite", "indigo_dust", "steam", "mixing", "discharge"):
        row = safety.loc[known[key].name]
        assert row["Caution"] == known[key].caution
        assert row["Comes first"] == known[key].defer
    assert safety.loc[known["caustic"].name, "Materials"] == "LYE"
    assert safety.loc["no caution in the book", "Materials"] == "WET, SEQ"
    assert known["peroxide"].name not in safety.index
    assert known["sulfide"].name not in safety.index
    assert "safety data sheet" in book["Safety"]["A4"].value


def test_defaults_stand_with_band_and_source(written: Written) -> None:
    rows = sheet(written.path, "Defaults taken")
    table = defaults()
    bath = rows[(rows["Setting"] == "bath hydrosulfite") & rows["Where"].str.endswith("indigo dyeing")]
    assert bath[["Taken", "Low", "High"]].to_numpy().tolist() == [[2.0, 1.0, 4.0]]
    assert bath["Unit"].item() == "g/L"
    assert bath["Enquiries"].item() == "all"
    assert bath["Source"].item() == table["indigo.bath_hydrosulfite"].source
    assert len(rows) == len(set(written.mill.assumptions))


def test_every_source_of_a_default_is_listed(written: Written) -> None:
    listed = sheet(written.path, "Sources").set_index("Source")
    used = set(sheet(written.path, "Defaults taken")["Source"])
    assert used <= set(listed.index)
    for key in used:
        entry = sources()[key]
        assert listed.loc[key, "Title"] == entry.title
        said = listed.loc[key, "Opened"]
        assert said == ("yes" if entry.opened else "no") or not entry.is_publication


def test_the_record_links_to_every_sheet(book: Workbook) -> None:
    links = {cell.value: cell.hyperlink.location for cell in book["Record"]["A"] if cell.hyperlink}
    assert links == {name: f"'{name}'!A1" for name in book.sheetnames}


def test_the_file_states_the_size_of_its_sheets(written: Written) -> None:
    """Readers that stream a sheet trust the size that it states."""
    with zipfile.ZipFile(written.path) as parts:
        for name in parts.namelist():
            if name.startswith("xl/worksheets/sheet"):
                text = parts.read(name)
                stated = re.search(rb'<dimension ref="A1(?::[A-Z]+([0-9]+))?"', text)
                assert stated, name
                assert int(stated[1] or 1) == max(int(row) for row in re.findall(rb'<row r="([0-9]+)"', text))


def charts(written: Written) -> dict[str, Any]:
    with zipfile.ZipFile(written.path) as parts:
        names = [name for name in parts.namelist() if name.startswith("xl/charts/chart")]
        return {name: ElementTree.fromstring(parts.read(name)) for name in names}


def test_charts_show_the_cells_they_name(written: Written, book: Workbook) -> None:
    found = charts(written)
    assert len(found) == 1 + 2 + 3 * len(written.results)  # summary; side by side; each enquiry
    for root in found.values():
        series = root.findall(f".//{CHART}ser")
        assert series
        for one in series:
            for kind, cache in (("cat", "strCache"), ("val", "numCache")):
                place = one.findtext(f"{CHART}{kind}//{CHART}f") or ""
                name, cells = place.rsplit("!", 1)
                values = [cell.value for (cell,) in book[name.strip("'")][cells.replace("$", "")]]
                kept = [item.text or "" for item in one.findall(f"{CHART}{kind}//{CHART}{cache}//{CHART}v")]
                if kind == "cat":
                    assert kept == values
                else:
                    assert [float(text) for text in kept] == pytest.approx(values, rel=1e-14)
            assert any(float(value) for value in values)


def test_charts_leave_out_yarns_and_sums_only(written: Written, book: Workbook) -> None:
    drawn = 0.0
    for root in charts(written).values():
        for one in root.findall(f".//{CHART}ser"):
            place = one.findtext(f"{CHART}val//{CHART}f") or ""
            if place.startswith("'Cost by step'"):
                drawn += sum(float(item.text or 0) for item in one.findall(f".//{CHART}numCache//{CHART}v"))
    groups = sheet(written.path, "Cost by group")
    yarns = groups["Warp yarn [EUR per m]"] + groups["Weft yarn [EUR per m]"]
    assert drawn == pytest.approx((groups["All [EUR per m]"] - yarns).sum(), rel=1e-9)


def test_charts_can_be_read(written: Written) -> None:
    """Axes are there and named with a unit, titles do not lie on the bars, labels keep their own format."""
    for root in charts(written).values():
        texts = ["".join(node.itertext()) for node in root.findall(f".//{CHART}title")]
        assert len(texts) == 2
        assert any(unit in texts[-1] for unit in ("per m of finished cloth", "per kg of grey yarn"))
        for axis in (f"{CHART}catAx", f"{CHART}valAx"):
            assert root.find(f".//{axis}/{CHART}delete").get("val") == "0"
        for overlay in root.findall(f".//{CHART}overlay"):
            assert overlay.get("val") == "0"
        for number in root.findall(f".//{CHART}numFmt"):
            assert number.get("sourceLinked") == "0"
        assert root.find(f".//{CHART}plotVisOnly").get("val") == "0"


def test_series_differ_without_colour(written: Written) -> None:
    """Neighbours in a stack differ in pattern, or in brightness by a fifth of the way from black to white."""
    for root in charts(written).values():
        looks = []
        for one in root.findall(f".//{CHART}ser"):
            pattern = one.find(f"{CHART}spPr/{DRAWING}pattFill")
            if pattern is not None:
                looks.append((pattern.get("prst"), 0.0))
            else:
                colour = one.find(f"{CHART}spPr/{DRAWING}solidFill/{DRAWING}srgbClr").get("val")
                red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (0, 2, 4))
                looks.append((None, 0.299 * red + 0.587 * green + 0.114 * blue))
        for (pattern_, light), (next_pattern, next_light) in zip(looks, looks[1:]):
            assert pattern_ != next_pattern or abs(light - next_light) > 0.2


def test_every_group_has_a_fill_of_its_own() -> None:
    groups = [FILLS[name] for name in list(FILLS)[:12]]
    assert len(set(groups)) == 12


@pytest.mark.parametrize("count", [1, 10, 20])
def test_any_number_of_enquiries_gives_a_summary(tmp_path: Any, count: int) -> None:
    path, _, results = write(tmp_path, count)
    summary = sheet(path, "Summary")
    quoted = summary[summary["Money"] == "price"]
    assert list(quoted["Enquiry"]) == [item.enquiry.code for item in results]
