"""The generated VBA run by LibreOffice's Basic, with stand-ins for Excel's references and for Python.

It is another program's reading of the language: it shows that the module is understood as a whole, that
arguments arrive in their order, and that a refused call is an error value. It does not show Excel.
"""

from __future__ import annotations

import json
import secrets
import subprocess
from pathlib import Path

import pytest

from costing.formulas.cell_function import VARARGS
from costing.formulas.registry import cell_functions
from costing.front_ends.excel.build import module_bytes
from costing.front_ends.excel.vba import PYTHON_MODULE
from costing.front_ends.programs import clean_environment
from tests.libreoffice.office import SECONDS, bridge_python, is_there

DRIVER = Path(__file__).with_name("basic_driver.py")

SERVER = """Option ClassModule
Option VBASupport 1
Public Function CallUDF(ByVal python As Variant, ByVal name As Variant, ByVal handed As Variant) As Variant
    Dim said As String
    Dim place As Long
    said = python & "|" & name
    For place = LBound(handed) To UBound(handed)
        If IsError(handed(place)) Then
            said = said & "|error"
        ElseIf IsArray(handed(place)) Then
            said = said & "|block"
        ElseIf IsEmpty(handed(place)) Then
            said = said & "|empty"
        Else
            said = said & "|" & handed(place)
            If TypeName(handed(place)) = "String" Then
                If handed(place) = "bad" Then Err.Raise 1000, , "refused in words"
            End If
        End If
    Next place
    CallUDF = said
End Function
"""
REFERENCE = """Option ClassModule
Option VBASupport 1
Public AreasThere As Long
Public Function Areas() As Object
    Set Areas = New Counted
    Areas.Count = AreasThere
End Function
Public Function Value2() As Variant
    Value2 = Array(1, 2)
End Function
"""
COUNTED = """Option ClassModule
Option VBASupport 1
Public Count As Long
"""
TRIALS = """Option VBASupport 1
Public Function XLPy() As Object
    Set XLPy = New Server
End Function
Function OneArea() As Variant
    Dim cells As New Reference
    cells.AreasThere = 1
    OneArea = WARP_CARRIED_BY_LIQUOR(cells, "2 g/L")
End Function
Function TwoAreas() As Variant
    Dim cells As New Reference
    cells.AreasThere = 2
    TwoAreas = WARP_CARRIED_BY_LIQUOR(0.5, cells, "kg/kg")
End Function
Function InTheRest() As Variant
    Dim cells As New Reference
    cells.AreasThere = 1
    InTheRest = WARP_REASON_FOR("a name", 0.5, cells, "x")
End Function
Function NoRest() As Variant
    NoRest = WARP_REASON_FOR("a name")
End Function
Function Refusal() As Variant
    Dim found As Variant
    found = WARP_MOLAR_MASS("bad")
    Refusal = TypeName(found) & "|" & IsError(found) & "|" & CStr(found)
End Function
Function RefusalInTheRest() As Variant
    Dim found As Variant
    found = WARP_REASON_FOR("a name", "bad")
    RefusalInTheRest = TypeName(found) & "|" & IsError(found) & "|" & CStr(found)
End Function
"""


def trials() -> dict[str, tuple[str, str]]:
    """For each formula, its call in Basic with numbered texts, and what must arrive: all, then the least."""
    found = {}
    for name, function in cell_functions().items():
        parameters = function.parameters
        texts = [f"t{place}" for place in range(len(parameters))]
        found[f"All_{name}"] = (", ".join(f'"{text}"' for text in texts), "|".join([name, *texts]))
        needed = len([parameter for parameter in parameters if not parameter.optional])
        left_out = [parameter for parameter in parameters[needed:] if parameter.kind != VARARGS]
        found[f"Least_{name}"] = (
            ", ".join(f'"{text}"' for text in texts[:needed]),
            "|".join([name, *texts[:needed], *["empty"] * len(left_out)]),
        )
    return found


def in_basic(calls: list[str], written: str, folder: Path) -> dict[str, object]:
    """Call functions in LibreOffice's Basic."""
    python = bridge_python()
    assert python is not None
    module = module_bytes().decode("ascii").replace("\r\n", "\n")
    without_name = "\n".join(line for line in module.split("\n") if not line.startswith("Attribute "))
    request = {
        "command": [
            *("soffice", "--headless", "--norestore", "--nologo"),
            f"-env:UserInstallation={(folder / 'profile').as_uri()}",
        ],
        "pipe": f"warp{secrets.token_hex(6)}",
        "modules": {
            "WarpFunctions": f"Option VBASupport 1\n{without_name}",
            "Server": SERVER,
            "Reference": REFERENCE,
            "Counted": COUNTED,
            "Trials": TRIALS + written,
        },
        "calls": [f"Trials.{name}" for name in calls],
    }
    done = subprocess.run(
        [python, "-B", str(DRIVER)],
        input=json.dumps(request),
        capture_output=True,
        text=True,
        timeout=SECONDS,
        check=False,
        cwd=folder,
        env=clean_environment(),
    )
    assert done.returncode == 0, done.stderr
    return dict(zip(calls, json.loads(done.stdout), strict=True))


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> dict[str, object]:
    if not is_there():
        pytest.skip("LibreOffice with its Python bridge is not installed")
    ours = trials()
    written = "".join(
        f"Function {trial}() As Variant\n    {trial} = {trial.partition('_')[2]}({arguments})\nEnd Function\n"
        for trial, (arguments, _) in ours.items()
    )
    names = ["OneArea", "TwoAreas", "InTheRest", "NoRest", "Refusal", "RefusalInTheRest", *ours]
    return in_basic(names, written, tmp_path_factory.mktemp("basic"))


def test_every_argument_arrives_in_its_place(answers: dict[str, object]) -> None:
    for trial, (_, expected) in trials().items():
        assert answers[trial] == f"{PYTHON_MODULE}|{expected}"


def test_a_reference_arrives_as_its_values(answers: dict[str, object]) -> None:
    assert answers["OneArea"] == f"{PYTHON_MODULE}|WARP_CARRIED_BY_LIQUOR|block|2 g/L|empty"
    assert answers["InTheRest"] == f"{PYTHON_MODULE}|WARP_REASON_FOR|a name|0.5|block|x"
    assert answers["NoRest"] == f"{PYTHON_MODULE}|WARP_REASON_FOR|a name"


def test_a_reference_of_two_areas_arrives_as_an_error(answers: dict[str, object]) -> None:
    assert answers["TwoAreas"] == f"{PYTHON_MODULE}|WARP_CARRIED_BY_LIQUOR|0.5|error|kg/kg"


def test_a_refused_call_is_the_value_error(answers: dict[str, object]) -> None:
    assert answers["Refusal"] == answers["RefusalInTheRest"] == "Error|True|Error 2015"
