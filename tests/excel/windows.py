"""xlwings as on Windows, in a process of its own: its own decorators, converters and server of functions.

Stand-ins take the place of what only Windows has; none of them is under test, and none of them calculates.
What Excel would send arrives as one request a line on standard input: module, function, arguments. A number
is a float, an empty cell null, a block a list of rows, an error or an argument that is left out the whole
number that Excel sends for it. The answer is a line too.
"""

from __future__ import annotations

import ctypes
import importlib
import io
import json
import sys
import types
from typing import Any
from unittest.mock import MagicMock

WINDOWS_ONLY = (
    "pythoncom",
    "pywintypes",
    "win32api",
    "win32con",
    "win32event",
    "win32gui",
    "win32process",
    "win32timezone",
    "win32com",
    "win32com.client",
    "win32com.server",
    "win32com.server.dispatcher",
    "win32com.server.exception",
    "win32com.server.policy",
    "win32com.server.util",
)


class ComError(Exception):
    """Stands in for an error of Windows."""


class TimeType:
    """Stands in for a date of Windows."""


def no_object_of_ours(value: object) -> None:
    raise ComError


def stand_in() -> None:
    """Put stand-ins where xlwings looks for Windows."""
    for name in WINDOWS_ONLY:
        sys.modules[name] = MagicMock(name=name)
    for name in WINDOWS_ONLY:
        parent, _, child = name.rpartition(".")
        if parent:
            setattr(sys.modules[parent], child, sys.modules[name])
    sys.modules["pythoncom"].__file__ = "pythoncom"
    sys.modules["pywintypes"].__dict__.update(com_error=ComError, TimeType=TimeType)
    sys.modules["win32com.server.util"].__dict__.update(unwrap=no_object_of_ours)
    for name in ("PyDLL", "oledll", "windll"):
        setattr(ctypes, name, MagicMock(name=name))


def server() -> Any:
    """What Excel talks to."""
    stand_in()
    xlwings: Any = importlib.import_module("xlwings")
    windows: Any = importlib.import_module("xlwings._xlwindows")
    functions: Any = importlib.import_module("xlwings.udfs")
    xlwings._xlwindows = windows
    xlwings.engines.add(xlwings.Engine(impl=windows.engine))
    xlwings.func, xlwings.arg, xlwings.ret = functions.xlfunc, functions.xlarg, functions.xlret
    return importlib.import_module("xlwings.com_server").XLPython()


def described(module: types.ModuleType) -> dict[str, Any]:
    """What xlwings knows of each function of a module, and the VBA that it would write for them."""
    functions: Any = importlib.import_module("xlwings.udfs")
    text = io.StringIO()
    functions.generate_vba_wrapper(module.__name__, module, text, types.SimpleNamespace(Name="warp.xlam"))
    found = {
        value.__xlfunc__["name"]: {
            "help": value.__xlfunc__["ret"]["doc"],
            "category": value.__xlfunc__["category"],
            "volatile": value.__xlfunc__["volatile"],
            "arguments": [
                {**argument, "optional": argument.get("optional", "required")}
                for argument in value.__xlfunc__["args"]
            ],
        }
        for value in vars(module).values()
        if hasattr(value, "__xlfunc__")
    }
    return {"vba": text.getvalue(), "functions": found, "loaded": sorted(sys.modules)}


def as_sent(argument: Any) -> Any:
    """An argument as Windows hands it over, which knows no lists."""
    return tuple(as_sent(item) for item in argument) if isinstance(argument, list) else argument


def main() -> None:
    """Answer until the input ends."""
    excel = server()
    for line in sys.stdin:
        request = json.loads(line)
        answer: dict[str, Any]
        if "describe" in request:
            answer = {"answer": described(importlib.import_module(request["describe"]))}
        else:
            try:
                answer = {"answer": excel.CallUDF(*as_sent(request["call"]))}
            except Exception as error:
                answer = {"kind": type(error).__name__, "error": str(error)}
        print(json.dumps(answer), flush=True)


if __name__ == "__main__":
    main()
