"""Drives one headless LibreOffice: a request a line on standard input, an answer a line on standard output.

Runs on the Python that has LibreOffice's bridge, so it imports nothing of this repository. Every request is
carried out in LibreOffice's main thread, where a user's own recalculation runs. When the input ends, it ends
LibreOffice; when it fails, who started it ends the whole group of processes.
"""

from __future__ import annotations

import contextlib
import json
import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Any, Callable

FILTERS = {".ods": "calc8", ".xlsx": "Calc MS Excel 2007 XML"}
START_SECONDS = 60
REQUEST_SECONDS = 60
END_SECONDS = 15
ERROR_RESULT = 4  # of com.sun.star.sheet.FormulaResult
EVERYTHING = 1023  # all flags of com.sun.star.sheet.CellFlags


class Office:
    """A running LibreOffice and its open documents."""

    def __init__(self, command: list[str], pipe: str, log: str) -> None:
        import uno

        self.uno = uno
        accept = f"--accept=pipe,name={pipe};urp;StarOffice.ComponentContext"
        with open(log, "wb") as stream:
            self.process = subprocess.Popen(
                [*command, accept],
                stdin=subprocess.DEVNULL,
                stdout=stream,
                stderr=subprocess.STDOUT,
            )
        self.context = self._connect(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        self.desktop = self.service("com.sun.star.frame.Desktop")
        self.main_thread = self.service("com.sun.star.awt.AsyncCallback")
        self.documents: dict[int, Any] = {}
        self.opened = 0

    def _connect(self, url: str) -> Any:
        local = self.uno.getComponentContext()
        resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
        last = time.monotonic() + START_SECONDS
        while True:
            try:
                return resolver.resolve(url)
            except Exception:
                if self.process.poll() is not None or time.monotonic() > last:
                    raise
                time.sleep(0.05)

    def service(self, name: str) -> Any:
        return self.context.ServiceManager.createInstanceWithContext(name, self.context)

    def in_main_thread(self, work: Callable[[], Any]) -> Any:
        """Do some work in LibreOffice's main thread: a callback's own calls go back to where it came from."""
        import unohelper
        from com.sun.star.awt import XCallback

        done = threading.Event()
        answer: list[Any] = []
        failure: list[BaseException] = []

        class Callback(unohelper.Base, XCallback):  # type: ignore[misc]
            def notify(self, data: Any) -> None:
                try:
                    answer.append(work())
                except BaseException as error:
                    failure.append(error)
                done.set()

        callback = Callback()
        self.main_thread.addCallback(callback, None)
        if not done.wait(REQUEST_SECONDS):
            raise TimeoutError("LibreOffice does not answer")
        if failure:
            raise failure[0]
        return answer[0]

    def end(self) -> int:
        """End LibreOffice and give its return code."""
        with contextlib.suppress(Exception):  # it drops the line while it ends
            self.desktop.terminate()
        return self.process.wait(END_SECONDS)

    # What can be asked for.

    def new(self) -> int:
        return self._keep("private:factory/scalc")

    def open(self, path: str) -> int:
        return self._keep(Path(path).as_uri())

    def _keep(self, url: str) -> int:
        document = self.desktop.loadComponentFromURL(url, "_blank", 0, (self._value("Hidden", True),))
        if document is None:
            raise ValueError(f"{url} was not opened")
        self.opened += 1
        self.documents[self.opened] = document
        return self.opened

    def save(self, document: int, path: str) -> None:
        name = self._value("FilterName", FILTERS[Path(path).suffix])
        self.documents[document].storeToURL(Path(path).as_uri(), (name,))

    def close(self, document: int) -> None:
        self.documents.pop(document).close(True)

    def fill(self, document: int, cells: dict[str, Any], sheet: int | str = 0) -> None:
        page = self._page(document, sheet)
        for address, content in cells.items():
            cell = page.getCellRangeByName(address)
            if content is None:
                cell.clearContents(EVERYTHING)
            elif isinstance(content, str) and not content.startswith("="):
                cell.setString(content)
            elif isinstance(content, str):
                cell.setFormula(content)
            else:
                cell.setValue(content)

    def is_protected(self, document: int, sheet: str, address: str) -> bool:
        """Whether a user is kept from typing in a cell; a driver is not."""
        page = self._page(document, sheet)
        return bool(page.isProtected() and page.getCellRangeByName(address).CellProtection.IsLocked)

    def _page(self, document: int, sheet: int | str) -> Any:
        sheets = self.documents[document].Sheets
        return sheets.getByName(sheet) if isinstance(sheet, str) else sheets.getByIndex(sheet)

    def array(self, document: int, area: str, formula: str) -> list[list[Any]]:
        """Type an array formula, read its results, and clear it again."""
        cells = self.documents[document].Sheets.getByIndex(0).getCellRangeByName(area)
        cells.setArrayFormula(formula)
        found = [list(row) for row in cells.getDataArray()]
        cells.clearContents(EVERYTHING)
        return found

    def read(self, document: int, addresses: list[str], sheet: int | str = 0) -> list[dict[str, Any]]:
        page = self._page(document, sheet)
        found = []
        for address in addresses:
            cell = page.getCellRangeByName(address)
            found.append(
                {
                    "formula": cell.getFormula(),
                    "value": cell.getValue(),
                    "text": cell.getString(),
                    "error": cell.getError(),
                }
            )
        return found

    def grid(self, document: int, title: str) -> dict[str, Any]:
        """The cells of a sheet from A1 on, and which of them are errors."""
        page = self.documents[document].Sheets.getByName(title)
        cursor = page.createCursor()
        cursor.gotoEndOfUsedArea(False)
        end = cursor.getRangeAddress()
        area = page.getCellRangeByPosition(0, 0, end.EndColumn, end.EndRow)
        errors = [
            [(place.StartRow, place.StartColumn), (place.EndRow, place.EndColumn)]
            for place in area.queryFormulaCells(ERROR_RESULT).getRangeAddresses()
        ]
        return {"cells": [list(row) for row in area.getDataArray()], "errors": errors}

    def calculate(self, document: int) -> float:
        """Calculate everything anew, and how long it took."""
        start = time.perf_counter()
        self.documents[document].calculateAll()
        return time.perf_counter() - start

    def input_seconds(self, document: int, sheet: str, address: str, value: float) -> float:
        """Time until all that follows a number, typed in a cell, is calculated."""
        cell = self._page(document, sheet).getCellRangeByName(address)
        start = time.perf_counter()
        cell.setValue(value)
        self.documents[document].calculate()
        return time.perf_counter() - start

    def undo(self, document: int) -> None:
        self.documents[document].getUndoManager().undo()

    def redo(self, document: int) -> None:
        self.documents[document].getUndoManager().redo()

    def state(self, document: int) -> dict[str, Any]:
        """Whether a document counts as changed, what could be undone, and its defined names."""
        found = self.documents[document]
        return {
            "modified": found.isModified(),
            "undo": list(found.getUndoManager().getAllUndoActionTitles()),
            "names": list(found.NamedRanges.getElementNames()),
        }

    def copy_sheet(self, source: int, target: int, sheet: int | str = 0) -> int:
        """Copy a sheet of a document in front of those of another one."""
        sheets = self.documents[target].Sheets
        name = self._page(source, sheet).getName()
        return int(sheets.importSheet(self.documents[source], name, 0))

    def described(self) -> list[dict[str, Any]]:
        """Our functions as the function wizard shows them."""
        found = []
        for function in self.service("com.sun.star.sheet.FunctionDescriptions"):
            entry = {item.Name: item.Value for item in function}
            if entry["Name"].startswith("WARP_"):
                arguments = [
                    {"name": item.Name, "help": item.Description, "optional": item.IsOptional}
                    for item in entry["Arguments"] or ()
                ]
                found.append({"name": entry["Name"], "help": entry["Description"], "arguments": arguments})
        return found

    def seconds(self, document: int, formulas: list[str], rows: int, rounds: int) -> dict[str, Any]:
        """Shortest time of a full recalculation with formulas filled down, ``#`` standing for the row."""
        book = self.documents[document]
        page = book.Sheets.getByIndex(0)
        for row, formula in enumerate(formulas, start=1):
            page.getCellRangeByName(f"F{row}").setFormula(formula.replace("#", str(row)))
        column = page.getCellRangeByName(f"F1:F{rows}")
        down = self.uno.Enum("com.sun.star.sheet.FillDirection", "TO_BOTTOM")
        column.fillAuto(down, len(formulas))
        times = []
        for _ in range(rounds):
            start = time.perf_counter()
            book.calculateAll()
            times.append(time.perf_counter() - start)
        (last,) = column.getDataArray()[-1]
        column.clearContents(EVERYTHING)
        return {"seconds": min(times), "last": last}

    def numbers(self, document: int, rows: int) -> None:
        """Fill the columns A to D with numbers that every formula of the benchmark accepts."""
        area = self.documents[document].Sheets.getByIndex(0).getCellRangeByName(f"A1:D{rows}")
        area.setDataArray(tuple((7.0 + row % 20, 0.75, 2.0 + row % 5, "g/L") for row in range(rows)))

    def first_seconds(self, document: int, formula: str) -> float:
        """Time until one formula, typed in a cell, shows its result."""
        cell = self.documents[document].Sheets.getByIndex(0).getCellRangeByName("H1")
        start = time.perf_counter()
        cell.setFormula(formula)
        cell.getValue()
        return time.perf_counter() - start

    def opening_seconds(self, path: str) -> float:
        start = time.perf_counter()
        document = self.open(path)
        seconds = time.perf_counter() - start
        self.close(document)
        return seconds

    def _value(self, name: str, value: Any) -> Any:
        from com.sun.star.beans import PropertyValue

        made = PropertyValue()
        made.Name, made.Value = name, value
        return made


def main() -> int:
    """Start LibreOffice, answer until the input ends, end it."""
    settings = json.loads(sys.stdin.readline())
    office = Office(settings["command"], settings["pipe"], settings["log"])
    answer: dict[str, Any] = {"answer": None}
    while True:
        print(json.dumps(answer), flush=True)
        line = sys.stdin.readline()
        if not line:
            return office.end()
        request = json.loads(line)
        work = getattr(office, request["do"])
        arguments = request["arguments"]
        try:
            answer = {"answer": office.in_main_thread(lambda: work(*arguments))}  # noqa: B023  (used at once)
        except TimeoutError:
            raise
        except Exception as error:
            answer = {"error": f"{type(error).__name__}: {error}"}


if __name__ == "__main__":
    sys.exit(main())
