"""The VBA module through which Excel calls the formulas.

xlwings can write such a module itself, but in its functions a refused call gives the words of the error as
a text, and a text counts as nothing in a total. Here a refused call is a real error. It differs in two more
ways. A reference is handed over as the plain values of its cells, by ``Value2``: ``Value`` rounds a cell with
a currency format to four decimals. And neither workbook nor calling cell are handed over, which no formula
needs.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from costing.formulas.cell_function import VARARGS, CellFunction
from costing.front_ends.excel.wording import CATEGORY, argument_help, check_names, function_help
from costing.quantities import InputError

MODULE_NAME = "WarpFunctions"
PYTHON_MODULE = "costing.front_ends.excel.functions"
LINE_END = "\r\n"  # what the editor of VBA writes, and expects in a file to import
# Microsoft, "Line too long" and "Too many line continuations", Office VBA reference.
LONGEST_LINE = 1023
MOST_LINES = 25
USUAL_LINE = 110
INDENT = "    "

# In small letters, for an argument of the same name would hide it.
USED = frozenset(["cellsof", "xlpy", "python_module", "handed", "place", "xlerrvalue", "refused"])

HEAD = f"""Attribute VB_Name = "{MODULE_NAME}"
' Written by: python -m costing.front_ends.excel.build
' Do not change it by hand: import the file again when the formulas have changed.
'
' It goes into an add-in that has the VBA module of xlwings, whose XLPy starts Python. A refused call is the
' error #VALUE! in the cell, never a text; WARP_REASON_FOR says why.
Option Explicit

Private Const PYTHON_MODULE As String = "{PYTHON_MODULE}"
Private Const CATEGORY As String = "{CATEGORY}"

' Run this by hand: it shows the Python that calculates, or why there is none.
Public Sub WarpStatus()
    On Error GoTo Refused
    MsgBox "Version " & XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_VERSION", Array()) & ", " & _
        XLPy.CallUDF(PYTHON_MODULE, "WARP_PROGRAM_INTERPRETER", Array()), vbInformation, CATEGORY
    Exit Sub
Refused:
    MsgBox "Python does not answer: " & Err.Description, vbExclamation, CATEGORY
End Sub

' Run this once, before the add-in is saved: it fills in the texts of the function dialog.
Public Sub WarpDescribe()
{{describe}}
End Sub

' A reference as the values of its cells, everything else as it is.
Private Function CellsOf(ByVal argument As Variant) As Variant
    If IsObject(argument) Then
        CellsOf = ValuesOf(argument)
    Else
        CellsOf = argument
    End If
End Function

' Value2 and not Value, which rounds a cell with a currency format to four decimals. A reference of several
' areas is handed over as an error, for Value2 gives the first of them only.
Private Function ValuesOf(ByVal reference As Object) As Variant
    If reference.Areas.Count = 1 Then
        ValuesOf = reference.Value2
    Else
        ValuesOf = CVErr(xlErrRef)
    End If
End Function

Private Sub Describe(ByVal functionName As String, ByVal help As String, ByVal arguments As Variant)
    Dim fullName As String
    fullName = "'" & ThisWorkbook.Name & "'!" & functionName
    If UBound(arguments) < 0 Then
        Application.MacroOptions Macro:=fullName, Description:=help, Category:=CATEGORY
    Else
        Application.MacroOptions Macro:=fullName, Description:=help, Category:=CATEGORY, _
            ArgumentDescriptions:=arguments
    End If
End Sub
"""


def module_text(functions: Iterable[CellFunction]) -> str:
    """The whole module, plain ASCII with the line ends of Windows.

    Raises
    ------
    InputError
        A formula that VBA could not take.
    """
    # A procedure may not grow over 64 KB when compiled, so each group has one of its own (Microsoft,
    # "Procedure too large", Office VBA reference).
    groups = [list(group) for _, group in groupby(functions, key=lambda function: function.group)]
    subs = [f"DescribeGroup{number}" for number in range(1, len(groups) + 1)]
    parts = [HEAD.format(describe="\n".join(INDENT + name for name in subs))]
    for name, group in zip(subs, groups, strict=True):
        calls = "\n".join(described(function) for function in group)
        parts.append(f"' {group[0].group}\nPrivate Sub {name}()\n{calls}\nEnd Sub\n")
        parts += [function_text(function) for function in group]
    lines = "\n".join(parts).split("\n")
    for line in lines:
        if len(line) > LONGEST_LINE or not line.isascii():
            raise InputError("VBA", f"cannot take the line {line[:60]!r}")
    return LINE_END.join(lines)


def function_text(function: CellFunction) -> str:
    """One formula as a function of VBA."""
    check_names(function, USED)
    name = function.name
    parameters = function.parameters
    plain = [parameter.name for parameter in parameters if parameter.kind != VARARGS]
    heads = [
        f"ParamArray {parameter.name}() As Variant"
        if parameter.kind == VARARGS
        else f"{'Optional ' if parameter.optional else ''}ByVal {parameter.name} As Variant"
        for parameter in parameters
    ]
    cells = joined("Array(", [f"CellsOf({item})" for item in plain], ")", lines=MOST_LINES - 1)
    before = "".join(
        f"{INDENT}If IsMissing({parameter.name}) Then {parameter.name} = Empty\n"
        for parameter in parameters
        if parameter.optional and parameter.kind != VARARGS
    )
    handed = f"_\n{INDENT * 2}{cells}"
    if len(plain) < len(parameters):
        rest = parameters[-1].name
        before = (
            f"{INDENT}Dim handed() As Variant\n"
            f"{INDENT}Dim place As Long\n"
            f"{INDENT}handed = {cells}\n"
            f"{INDENT}ReDim Preserve handed(0 To {len(plain)} + UBound({rest}))\n"
            f"{INDENT}For place = 0 To UBound({rest})\n"
            f"{INDENT * 2}If Not IsMissing({rest}(place)) Then _\n"
            f"{INDENT * 3}handed({len(plain)} + place) = CellsOf({rest}(place))\n"
            f"{INDENT}Next place\n"
        )
        handed = "handed"
    return (
        f"{joined(f'Public Function {name}(', heads, ') As Variant')}\n"
        f"{INDENT}On Error GoTo Refused\n"
        f"{before}"
        f'{INDENT}{name} = XLPy.CallUDF(PYTHON_MODULE, "{name}", {handed})\n'
        f"{INDENT}Exit Function\n"
        f"Refused:\n"
        f"{INDENT}{name} = CVErr(xlErrValue)\n"
        f"End Function\n"
    )


def described(function: CellFunction) -> str:
    """The statement that gives a formula its texts in the function dialog."""
    texts = [literal(argument_help(parameter)) for parameter in function.parameters]
    head = f'{INDENT}Describe "{function.name}", {literal(function_help(function))}, _\n{INDENT * 2}'
    return head + joined("Array(", texts, ")", lines=MOST_LINES - 1)


def literal(text: str) -> str:
    """A text as VBA writes it; a letter outside ASCII by its number, for a file has no code page of its own.

    Examples
    --------
    >>> print(literal('at 20 °C'), "|", literal('a "cold" dip'))
    "at 20 " & ChrW(176) & "C" | "a ""cold"" dip"
    """
    pieces: list[str] = []
    for plain, letters in groupby(text, key=str.isascii):
        run = "".join(letters)
        pieces += (
            ['"' + run.replace('"', '""') + '"'] if plain else [f"ChrW({ord(letter)})" for letter in run]
        )
    return " & ".join(pieces) or '""'


def joined(head: str, items: Sequence[str], tail: str, lines: int = MOST_LINES) -> str:
    """Items with commas between them, over as many lines as VBA lets a statement have.

    Raises
    ------
    InputError
        There are more.

    Examples
    --------
    >>> joined("Array(", ["a", "b"], ")")
    'Array(a, b)'
    >>> print(joined("Array(", ["a" * 60, "b" * 60], ")").replace("a" * 58, "..").replace("b" * 58, ".."))
    Array(..aa, _
            ..bb)
    """
    for width in (USUAL_LINE, LONGEST_LINE):
        filled = [head]
        for place, item in enumerate(items):
            piece = item + (", " if place < len(items) - 1 else tail)
            if len(filled[-1]) + len(piece) + len(INDENT * 2) > width - 2 and filled[-1] != head:
                filled.append(INDENT * 2)
            filled[-1] += piece
        if not items:
            filled[-1] += tail
        if len(filled) <= lines:
            return "_\n".join(filled)
    raise InputError("VBA", f"cannot take the statement {head[:60]!r}...")
