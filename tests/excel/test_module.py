"""The generated VBA module: its file, its form, and that it says what the registry says."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

from costing.formulas.cell_function import NUMBER, VARARGS, CellFunction, Parameter
from costing.formulas.registry import cell_functions
from costing.front_ends.excel.build import build_module, main, module_bytes
from costing.front_ends.excel.vba import LONGEST_LINE, MODULE_NAME, PYTHON_MODULE, joined, module_text
from costing.front_ends.excel.wording import KEYWORDS, LONGEST_TEXT, argument_help, function_help
from costing.front_ends.workbook.template_files import template_folder
from costing.quantities import InputError
from tests.excel.conftest import ROOT
from tests.excel.vba_reader import NotVbaError, Procedure, Token, logical_lines, procedures, tokens

COMMITTED = template_folder() / "excel_functions.bas"
# What VBA, Excel and the VBA module of xlwings have of their own.
GIVEN = {
    *("Application", "Areas", "ArgumentDescriptions", "Array", "CVErr", "CallUDF", "Category", "Count"),
    *(
        "Description",
        "Err",
        "IsMissing",
        "IsObject",
        "Macro",
        "MacroOptions",
        "MsgBox",
        "Name",
        "ThisWorkbook",
    ),
    *("UBound", "Value2", "XLPy", "vbExclamation", "vbInformation", "xlErrRef", "xlErrValue"),
}
SAFE_SIZE = 32_000  # of the text of a procedure, whose compiled code may have 64 KB


@pytest.fixture(scope="module")
def text() -> str:
    return module_bytes().decode("ascii").replace("\r\n", "\n")


@pytest.fixture(scope="module")
def found(text: str) -> dict[str, Procedure]:
    listed = procedures(text)
    named = {procedure.name: procedure for procedure in listed}
    assert len(named) == len({name.lower() for name in named}) == len(listed)
    return named


def words(line: list[Token]) -> list[str]:
    return [token.text for token in line]


def split(line: list[Token]) -> list[list[str]]:
    """Items between the outermost brackets of a line."""
    items: list[list[str]] = [[]]
    depth = 0
    for word in words(line):
        depth -= word == ")"
        if depth == 1 and word == ",":
            items.append([])
        elif depth:
            items[-1].append(word)
        depth += word == "("
    return [item for item in items if item]


def test_the_committed_file_is_what_the_generator_writes() -> None:
    assert COMMITTED.read_bytes() == module_bytes() == module_bytes()


def test_the_file_is_plain_and_has_the_line_ends_of_windows() -> None:
    content = module_bytes()
    assert content.isascii()
    assert content.count(b"\n") == content.count(b"\r") == content.count(b"\r\n") > len(cell_functions())
    assert content.endswith(b"End Function\r\n")
    assert b"\t" not in content


def test_lines_are_no_longer_than_vba_takes(text: str) -> None:
    assert max(len(line) for line in text.split("\n")) <= LONGEST_LINE == 1023
    logical_lines(text)  # which counts how often a line goes on in the next one


def test_the_module_has_its_name_and_declares_everything(text: str) -> None:
    lines = text.split("\n")
    assert lines[0] == f'Attribute VB_Name = "{MODULE_NAME}"'
    assert "Option Explicit" in lines
    assert len(MODULE_NAME) <= 31
    assert f'Private Const PYTHON_MODULE As String = "{PYTHON_MODULE}"' in lines


def test_every_formula_is_one_public_function(found: dict[str, Procedure]) -> None:
    public = [name for name, procedure in found.items() if not procedure.private]
    assert [name for name in public if found[name].kind == "Function"] == list(cell_functions())
    assert {name for name in public if found[name].kind == "Sub"} == {"WarpStatus", "WarpDescribe"}


def test_arguments_read_back_are_those_of_the_registry(found: dict[str, Procedure]) -> None:
    for name, function in cell_functions().items():
        assert [tuple(argument) for argument in found[name].arguments] == [
            (item.name, item.optional and item.kind != VARARGS, item.kind == VARARGS)
            for item in function.parameters
        ]


def test_a_refused_call_is_an_error_and_never_a_text(found: dict[str, Procedure]) -> None:
    for name in cell_functions():
        body = [words(line) for line in found[name].body]
        assert body[0] == ["On", "Error", "GoTo", "Refused"]
        assert body[-3:] == [
            ["Exit", "Function"],
            ["Refused", ":"],
            [name, "=", "CVErr", "(", "xlErrValue", ")"],
        ]
        assert [line[0] for line in body].count(name) == 2
        assert "Description" not in {word for line in body for word in line}


def test_all_arguments_are_handed_over_in_their_order(found: dict[str, Procedure]) -> None:
    for name, function in cell_functions().items():
        body = found[name].body
        (call,) = [line for line in body if "CallUDF" in words(line)]
        module, quoted, *handed = split(call)
        assert (module, quoted) == (["PYTHON_MODULE"], [f'"{name}"'])
        plain = [parameter.name for parameter in function.parameters if parameter.kind != VARARGS]
        cells = [word for item in plain for word in ("CellsOf", "(", item, ")", ",")][:-1]
        if len(plain) == len(function.parameters):
            assert handed == [["Array", "(", *cells, ")"]]
        else:
            assert handed == [["handed"]]
            assert ["handed", "=", "Array", "(", *cells, ")"] in [words(line) for line in body]
        for parameter in function.parameters:
            left_out = ["If", "IsMissing", "(", parameter.name, ")", "Then", parameter.name, "=", "Empty"]
            expected = parameter.optional and parameter.kind != VARARGS
            assert (left_out in [words(line) for line in body]) is expected


def test_every_name_is_declared(found: dict[str, Procedure]) -> None:
    """As the editor of VBA checks it, for the module says Option Explicit."""
    for procedure in found.values():
        own = {argument.name for argument in procedure.arguments} | {"Refused"}
        own |= {words(line)[1] for line in procedure.body if words(line)[0] == "Dim"}
        for line in procedure.body:
            for token in line:
                if token.kind == "name" and token.text.lower() not in KEYWORDS | {"error", "preserve"}:
                    assert token.text in own | GIVEN | set(found) | {"PYTHON_MODULE", "CATEGORY"}, line


def test_no_procedure_is_too_large(text: str) -> None:
    sizes = [len(part) for part in re.split(r"\nEnd (?:Sub|Function)\n", text)]
    assert max(sizes) < SAFE_SIZE


def test_the_dialog_says_what_the_registry_says(found: dict[str, Procedure]) -> None:
    groups = list(found["WarpDescribe"].body)
    assert [words(line) for line in groups] == [[name] for name in found if name.startswith("DescribeGroup")]
    described = {}
    for (group,) in map(words, groups):
        for line in found[group].body:
            first, name, _, *rest = words(line)
            assert first == "Describe"
            help_text, items = rest[: rest.index("Array") - 1], split(line)
            described[name.strip('"')] = (unquoted(help_text), [unquoted(item) for item in items])
    assert described == {
        name: (function_help(function), [argument_help(parameter) for parameter in function.parameters])
        for name, function in cell_functions().items()
    }


def unquoted(parts: list[str]) -> str:
    """The text behind an expression of texts and numbers of letters."""
    joined_up = "".join(parts)
    joined_up = re.sub(r"ChrW\((\d+)\)", lambda match: f'"{chr(int(match[1]))}"', joined_up)
    return re.sub(r'"(?:&")?', "", joined_up.replace('""', "\0")).replace("\0", '"').replace('"&', "")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("End Function\n", ""),
        ("End If\n", ""),
        ("    Next place\n", ""),
        ("Array(CellsOf(english_count)", "Array(CellsOf(english_count"),
        ('"Yarn: Linear', "Yarn: Linear"),
        ("ParamArray arguments()", "ParamArray arguments"),
        ("Option Explicit\n", "Option Explicit\nXLPy\n"),
        ("Private Sub Describe(", "End Sub\nPrivate Sub Describe("),
        ("As Variant, _\n", "As Variant, _\n" + "_\n" * 25),
    ],
)
def test_the_reader_sees_what_is_not_well_formed(text: str, old: str, new: str) -> None:
    assert old in text
    with pytest.raises(NotVbaError):
        procedures(text.replace(old, new, 1))


def made(name: str = "WARP_X", *parameters: Parameter, help_text: str = "Does it.") -> CellFunction:
    return CellFunction(name, print, parameters, NUMBER, "a number", "Group", help_text, ())


def test_texts_outside_ascii_and_long_ones_come_through() -> None:
    said = 'from 20 °C, "cold", to 60 °C ' + "and so on " * 30
    (procedure,) = [
        found
        for found in procedures(module_text([made("WARP_X", Parameter("bath", said))]).replace("\r\n", "\n"))
        if found.name == "DescribeGroup1"
    ]
    (item,) = split(procedure.body[0])
    assert unquoted(item) == argument_help(Parameter("bath", said))
    assert unquoted(item).startswith('from 20 °C, "cold", to 60 °C and')
    assert LONGEST_TEXT - 10 < len(unquoted(item)) <= LONGEST_TEXT


@pytest.mark.parametrize(
    "function",
    [
        made("WARP X"),
        made("1WARP"),
        made("WARP_" + "X" * 251),
        made("WARP_X", Parameter("caller", "")),
        made("WARP_X", Parameter("Loop", "")),
        made("WARP_X", Parameter("_bath", "")),
        made("WARP_X", Parameter("cellsof", "")),
        made("WARP_X", Parameter("bath", ""), Parameter("Bath", "")),
        made("WARP_X", *(Parameter(f"bath_{number}", "") for number in range(61))),
        made("WARP_X", Parameter("one", "", optional=True), Parameter("two", "")),
        made("WARP_X", Parameter("one", "", optional=True), Parameter("two", "", VARARGS)),
        made("WARP_X", Parameter("one", "", VARARGS), Parameter("two", "")),
        made("WARP_X", help_text="° " * 100),
    ],
)
def test_what_vba_could_not_take_is_refused(function: CellFunction) -> None:
    with pytest.raises(InputError):
        module_text([function])


def test_as_many_arguments_as_excel_takes_fit_into_a_statement() -> None:
    parameters = [Parameter(f"{'long_' * 7}name_{number}", "a help text " * 20) for number in range(60)]
    (procedure,) = [
        found
        for found in procedures(module_text([made("WARP_X", *parameters)]).replace("\r\n", "\n"))
        if found.name == "WARP_X"
    ]
    assert [argument.name for argument in procedure.arguments] == [item.name for item in parameters]
    with pytest.raises(InputError, match="statement"):
        joined("Array(", ["x" * 1000] * 26, ")")


def test_the_file_is_written_whole(tmp_path: Path) -> None:
    path = tmp_path / "functions.bas"
    assert main([str(path)]) == 0
    assert path.read_bytes() == module_bytes()
    assert [entry.name for entry in tmp_path.iterdir()] == ["functions.bas"]


@pytest.mark.parametrize("name", ["functions.txt", "missing/functions.bas", "there.bas", "folder.bas"])
def test_or_not_at_all(tmp_path: Path, name: str, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "there.bas").write_bytes(b"kept")
    (tmp_path / "folder.bas").mkdir()
    with pytest.raises(InputError, match=re.escape(name)):
        build_module(tmp_path / name)
    assert main([str(tmp_path / name)]) == 1
    assert name in capsys.readouterr().err
    assert {entry.name for entry in tmp_path.iterdir()} == {"there.bas", "folder.bas"}
    assert (tmp_path / "there.bas").read_bytes() == b"kept"


def test_a_file_is_replaced_when_asked(tmp_path: Path) -> None:
    path = tmp_path / "there.bas"
    path.write_bytes(b"old")
    build_module(path, overwrite=True)
    assert path.read_bytes() == module_bytes()


def test_the_command_writes_a_file_and_takes_one_name(tmp_path: Path) -> None:
    path = tmp_path / "functions.bas"
    command = [sys.executable, "-m", "costing.front_ends.excel.build", str(path)]
    assert subprocess.run(command, cwd=ROOT, check=False).returncode == 0
    assert path.read_bytes() == module_bytes()
    done = subprocess.run([*command, "b.bas"], cwd=ROOT, check=False, capture_output=True, text=True)
    assert done.returncode == 2
    assert "one new file" in done.stderr


def test_the_tokens_of_a_line() -> None:
    found = tokens('a = "x ""y"" (" & b(1) \' rest (')
    assert [token.text for token in found] == ["a", "=", '"x ""y"" ("', "&", "b", "(", "1", ")"]
