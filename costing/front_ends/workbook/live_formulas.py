"""Draw the sheet Formulas: every function that a cell can call, from the registry."""

from __future__ import annotations

from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from costing.formulas.cell_function import BLOCK, VARARGS, CellFunction, Parameter
from costing.formulas.registry import cell_functions
from costing.front_ends.workbook import sheet_drawing
from costing.front_ends.workbook.sheet_drawing import put
from costing.front_ends.workbook.styles import page, widths
from costing.front_ends.workbook.template_files import sheet_file

HEADS = ("Name", "What it is", "Takes", "Gives", "Example")
WIDTHS = {"A": 43.0, "B": 30.0, "C": 54.0, "D": 20.0, "E": 46.0}


def draw_formulas(book: Workbook) -> None:
    """One row for each function, group by group."""
    text = sheet_file("live")["formulas"]
    sheet: Worksheet = book.create_sheet(text["sheet"])
    top = sheet_drawing.head_of_sheet(sheet, text["title"], text["intro"])
    for column, head in enumerate(HEADS, start=1):
        put(sheet, top, column, head, "column head")
    row, group = top + 1, ""
    for function in cell_functions().values():
        if function.group != group:
            group = function.group
            for column in range(1, len(HEADS) + 1):
                put(sheet, row, column, group if column == 1 else None, "section")
            sheet.row_dimensions[row].height = 18
            row += 1
        said = (function.name, function.help, taken(function), function.gives, example(function))
        for column, words in enumerate(said, start=1):
            put(sheet, row, column, words, "strong row" if column == 1 else "row text").data_type = "s"
        sheet.row_dimensions[row].height = sheet_drawing.height_for(*zip(said, WIDTHS.values(), strict=True))
        row += 1
    widths(sheet, WIDTHS)
    page(sheet, title_rows=f"{top}:{top}", freeze=f"B{top + 1}")


def taken(function: CellFunction) -> str:
    """The arguments of a function, one to a line, what may be left out in brackets."""
    return "\n".join(_taken(parameter) for parameter in function.parameters) or "nothing"


def _taken(parameter: Parameter) -> str:
    name = parameter.name.replace("_", " ") + {VARARGS: " ...", BLOCK: " (range)"}.get(parameter.kind, "")
    return f"[{name}]: {parameter.help}" if parameter.optional else f"{name}: {parameter.help}"


def example(function: CellFunction) -> str:
    """A call as it is typed, without the sign in front that would make it one."""
    cells = "; ".join(
        "" if cell is None else f'"{cell}"' if isinstance(cell, str) else f"{cell:g}"
        for cell in function.example
    )
    return f"{function.name}({cells})" if cells or not function.parameters else ""
