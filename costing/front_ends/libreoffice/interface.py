"""The registry in LibreOffice's own words: the interface of the functions, and what the wizard shows."""

from __future__ import annotations

from collections.abc import Iterable
from xml.sax.saxutils import escape

from costing.formulas.cell_function import ANY, ARRAY, BLOCK, VARARGS, CellFunction, Parameter

# Stored in every .ods file in front of the name of a formula: never change it.
IMPLEMENTATION = "WARP"
MODULE = ("org", "warpcosting")
INTERFACE = "XFunctions"
ROWS = "sequence< sequence< any > >"
XML = '<?xml version="1.0" encoding="UTF-8"?>\n'
CONFIGURATION = (
    XML + '<oor:component-data xmlns:oor="http://openoffice.org/2001/registry"'
    ' xmlns:xs="http://www.w3.org/2001/XMLSchema" oor:name="{name}" oor:package="org.openoffice.Office">\n'
)


def interface_text(functions: Iterable[CellFunction]) -> str:
    """The interface as UNOIDL source, which LibreOffice reads as it stands."""
    methods = "".join(
        f"    {ROWS if function.result == ARRAY else 'any'} {function.name}(\n"
        + ",\n".join(
            f"        [in] {_type(parameter)} {parameter_name(parameter)}"
            for parameter in function.parameters
        )
        + " );\n"
        for function in functions
    )
    outside = " ".join(f"module {name} {{" for name in MODULE)
    return (
        f"{outside}\ninterface {INTERFACE} : com::sun::star::uno::XInterface\n{{\n{methods}}};\n"
        + "}; " * len(MODULE)
        + "\n"
    )


def wizard_text(functions: Iterable[CellFunction]) -> str:
    """Names, descriptions and arguments, as configuration for the function wizard."""
    nodes = "".join(_function_node(function) for function in functions)
    return (
        CONFIGURATION.format(name="CalcAddIns")
        + f'<node oor:name="AddInInfo"><node oor:name="{IMPLEMENTATION}" oor:op="replace">'
        + f'<node oor:name="AddInFunctions">\n{nodes}</node></node></node></oor:component-data>\n'
    )


def parameter_name(parameter: Parameter) -> str:
    """The name of an argument as UNOIDL takes it.

    Examples
    --------
    >>> parameter_name(Parameter("bath_indigo", ""))
    'bathIndigo'
    """
    first, *others = parameter.name.split("_")
    return first + "".join(other.capitalize() for other in others)


def _type(parameter: Parameter) -> str:
    return {ANY: "any", BLOCK: ROWS, VARARGS: "sequence< any >"}[parameter.kind]


def _function_node(function: CellFunction) -> str:
    names = "".join(_property(kind, function.name) for kind in ("DisplayName", "CompatibilityName"))
    said = f"{function.group}: {function.help.rstrip('.')}. Gives: {function.gives}."
    arguments = "".join(
        f'<node oor:name="{parameter_name(parameter)}" oor:op="replace">'
        + _property("DisplayName", parameter.name.replace("_", " "))
        + _property("Description", parameter.help)
        + "</node>\n"
        for parameter in function.parameters
    )
    return (
        f'<node oor:name="{function.name}" oor:op="replace">{names}'
        + _property("Description", said)
        + '<prop oor:name="Category"><value>Add-In</value></prop>\n'
        + f'<node oor:name="Parameters">{arguments}</node></node>\n'
    )


def _property(name: str, text: str) -> str:
    return f'<prop oor:name="{name}"><value xml:lang="en">{escape(text)}</value></prop>\n'
