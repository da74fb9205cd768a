"""What xlwings, with its own decorators and its own generator, makes of the functions."""

from __future__ import annotations

import subprocess
import sys
from typing import Any

import pytest

from costing.formulas.cell_function import VARARGS
from costing.formulas.registry import cell_functions
from costing.front_ends.excel import functions
from costing.front_ends.excel.build import module_bytes
from costing.front_ends.excel.vba import PYTHON_MODULE
from costing.front_ends.excel.wording import CATEGORY, LONGEST_TEXT, argument_help, function_help
from tests.excel.conftest import ROOT, Excel
from tests.excel.vba_reader import Procedure, procedures


@pytest.fixture(scope="module")
def known(excel: Excel) -> dict[str, Any]:
    return excel.described()


def test_every_formula_is_registered_under_its_own_name(known: dict[str, Any]) -> None:
    assert list(known["functions"]) == list(cell_functions())


def test_arguments_are_those_of_the_registry(known: dict[str, Any]) -> None:
    for name, function in cell_functions().items():
        found = known["functions"][name]["arguments"]
        assert [argument["name"] for argument in found] == [item.name for item in function.parameters], name
        for argument, parameter in zip(found, function.parameters, strict=True):
            rest = parameter.kind == VARARGS
            assert argument["vararg"] is rest
            assert argument["optional"] == (None if parameter.optional and not rest else "required")
            assert argument["options"] == {"ndim": 2, "err_to_str": True}
            assert argument["vba"] is None
            assert argument["doc"] == argument_help(parameter)


def test_the_dialog_can_hold_every_text(known: dict[str, Any]) -> None:
    for name, found in known["functions"].items():
        assert found["category"] == CATEGORY
        assert found["volatile"] is False
        assert found["help"] == function_help(cell_functions()[name])
        texts = [found["help"], *(argument["doc"] for argument in found["arguments"])]
        assert all(1 <= len(text) <= LONGEST_TEXT and text.isprintable() for text in texts), name


def test_our_module_has_the_functions_and_arguments_that_xlwings_would_write(known: dict[str, Any]) -> None:
    theirs = {procedure.name: procedure for procedure in procedures(known["vba"])}
    text = module_bytes().decode("ascii").replace("\r\n", "\n")
    ours = {found.name: found for found in procedures(text) if found.name in theirs}
    assert set(ours) == set(theirs) == set(cell_functions())
    for name, procedure in ours.items():
        assert procedure.kind == theirs[name].kind == "Function"
        assert procedure.arguments == theirs[name].arguments, name
        assert (
            called(procedure, PYTHON_MODULE) == called(theirs[name], PYTHON_MODULE) == (PYTHON_MODULE, name)
        )


def called(procedure: Procedure, module: str) -> tuple[str, str]:
    """Python module and function that a function of VBA calls."""
    line = next(line for line in procedure.body if "CallUDF" in [token.text for token in line])
    words = [token.text for token in line]
    place = words.index("CallUDF")
    assert words[place - 2 : place] == ["XLPy", "."]
    assert words[place + 1] == "("
    assert words[place + 3] == ","
    given, name = words[place + 2], words[place + 4]
    return (module if given == "PYTHON_MODULE" else given.strip('"')), name.strip('"')


def test_only_the_open_part_of_xlwings_is_used(known: dict[str, Any]) -> None:
    assert not [name for name in known["loaded"] if name.startswith(("xlwings.server", "xlwings.reports."))]
    loaded = {name for name in known["loaded"] if name.startswith("costing.front_ends.")}
    assert loaded == {"costing.front_ends.excel"} | {
        f"costing.front_ends.excel.{name}" for name in ("adapter", "functions", "wording")
    }
    assert not {"openpyxl", "click", "rich", "pint"} & set(known["loaded"])


def test_nothing_else_loads_xlwings() -> None:
    program = (
        "import sys, costing.front_ends.command_line, costing.front_ends.excel.build\n"
        "print([name for name in sys.modules if name.partition('.')[0] == 'xlwings'])"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout.strip() == "[]"


def test_the_module_is_plain_python_where_there_is_no_excel() -> None:
    assert functions.__name__ == PYTHON_MODULE
    made = {name for name in vars(functions) if name.startswith("WARP_")}
    assert made == set(cell_functions())
    assert vars(functions)["WARP_CARRIED_BY_LIQUOR"]([[0.75]], [["2 g/L"]]) == 1.5
