"""Workbooks with a formula in every place that takes one, or with a sheet written by hand."""

from __future__ import annotations

import io
import warnings
import zipfile
from collections.abc import Callable
from pathlib import Path

from openpyxl import Workbook, load_workbook
from openpyxl.comments import Comment
from openpyxl.formatting.rule import Rule
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.formula import ArrayFormula
from openpyxl.worksheet.table import Table, TableColumn, TableFormula

NAME = "WARP_MOLAR_MASS"


def bytes_of(book: Workbook, amend: Callable[[str, bytes], bytes] = lambda name, content: content) -> bytes:
    raw, packed = io.BytesIO(), io.BytesIO()
    book.save(raw)
    with zipfile.ZipFile(raw) as source, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        target.comment = b"kept"
        for entry in source.infolist():
            target.writestr(entry, amend(entry.filename, source.read(entry)))
    return packed.getvalue()


def parts_of(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as book:
        assert book.testzip() is None
        return {entry.filename: book.read(entry) for entry in book.infolist()}


CALL = 'WARP.WARP_MOLAR_MASS("a<b & c")'
PLAIN = f'{NAME}("a<b & c")'


def everywhere(call: str) -> bytes:
    """A workbook with a call in every place that takes a formula, and as text in places that do not."""
    book = Workbook()
    page = book.worksheets[0]
    page.title = "Quote & more"
    page["A1"] = f"={call}"
    page["A2"] = f"=SUM({call},{call})"
    page["A3"] = ArrayFormula("A3:A4", f"={call}")
    page["B1"] = f"see {CALL}"
    page["B1"].comment = Comment(f"as {CALL}", "mill")
    page["B2"].hyperlink = "https://example.org/?WARP.WARP_MOLAR_MASS(1)"
    mark = Rule("expression", formula=[f"{call}>1"])
    page.conditional_formatting.add("A1", mark)
    check = DataValidation("custom", formula1=f"{call}>1", prompt=f"as {CALL}")
    check.add("C1")
    page.add_data_validation(check)
    assert page.oddFooter is not None
    page.oddFooter.center.text = "WARP.WARP_MOLAR_MASS(1)"
    rows = book.create_sheet("Rows")
    for row in (["Load", "warp_molar_mass(kg)"], [1, 2]):
        rows.append(row)
    table = Table(displayName="Loads", ref="A1:B2")
    table.tableColumns = [TableColumn(id=1, name="Load"), TableColumn(id=2, name="warp_molar_mass(kg)")]
    table.tableColumns[1].calculatedColumnFormula = TableFormula(attr_text=call)
    rows.add_table(table)
    book.create_sheet("Plain")["A1"] = "=SUM(1,2)"
    book.defined_names["mass"] = DefinedName("mass", attr_text=call)

    def with_extension(name: str, content: bytes) -> bytes:
        if name != "xl/worksheets/sheet2.xml":
            return content
        extension = (
            '<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"'
            ' xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main">'
            "<x14:conditionalFormattings><x14:conditionalFormatting"
            ' xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:cfRule type="expression">'
            "<xm:f><![CDATA[" + call + "]]></xm:f></x14:cfRule><xm:sqref>A1</xm:sqref>"
            "</x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst></worksheet>"
        )
        return content.replace(b"</worksheet>", extension.encode())

    return bytes_of(book, with_extension)


def sheet_with(inside: str, encoding: str = "utf-8") -> bytes:
    """A workbook whose one sheet is written by hand."""
    start = f'<?xml version="1.0" encoding="{encoding}"?>'
    space = 'xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
    text = (
        f'{start}<x:worksheet {space}><x:sheetData><x:row r="1">{inside}</x:row></x:sheetData></x:worksheet>'
    )

    def amend(name: str, content: bytes) -> bytes:
        return text.encode(encoding) if name == "xl/worksheets/sheet1.xml" else content

    return bytes_of(Workbook(), amend)


def opened(content: bytes) -> Workbook:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the library leaves newer kinds of formats out
        return load_workbook(io.BytesIO(content))


def loaded(path: Path) -> Workbook:
    return opened(path.read_bytes())
