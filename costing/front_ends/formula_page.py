"""Write the reference page of all functions, ``workbook_template/formulas.md``, from the registry.

``python -m costing.front_ends.formula_page`` writes it anew.
"""

from __future__ import annotations

from pathlib import Path

from costing.formulas.cell_function import BLOCK, VARARGS, CellFunction, Parameter
from costing.formulas.registry import cell_functions

PAGE = Path(__file__).resolve().parents[2] / "workbook_template" / "formulas.md"
INTRO = """# Functions of a cell

Written by `python -m costing.front_ends.formula_page` from the registry; do not edit.

The names are the same in LibreOffice Calc, in Excel and on the command line (`costing calculate`). An
argument is a number in the unit shown, a text with its unit such as `"1.5 g/L"`, or two neighbouring cells
with number and unit. What may be left out stands in brackets. A refused call is an error in the cell;
`WARP_REASON_FOR` gives the words.
"""


def page_text() -> str:
    """The page: one section for each group, one part for each function."""
    parts, group = [INTRO], ""
    for function in cell_functions().values():
        if function.group != group:
            group = function.group
            parts.append(f"## {group}\n")
        parts.append(_part(function))
    return "\n".join(parts)


def _part(function: CellFunction) -> str:
    takes = "; ".join(_taken(parameter) for parameter in function.parameters)
    lines = [f"### {function.name}", "", function.help, "", f"`={function.name}({takes})`", ""]
    lines += [f"* `{parameter.name}`: {parameter.help}" for parameter in function.parameters]
    lines.append(f"* gives {function.gives}")
    if function.example:
        cells = "; ".join(_cell(cell) for cell in function.example)
        lines.append(f"* example: `={function.name}({cells})`")
    return "\n".join([*lines, ""])


def _taken(parameter: Parameter) -> str:
    name = parameter.name + {VARARGS: "...", BLOCK: " (range)"}.get(parameter.kind, "")
    return f"[{name}]" if parameter.optional else name


def _cell(cell: object) -> str:
    if cell is None:
        return ""
    return f'"{cell}"' if isinstance(cell, str) else f"{cell:g}"


if __name__ == "__main__":
    PAGE.write_text(page_text(), encoding="utf-8")
