"""What a workbook shows once LibreOffice has worked out its formulas."""

from __future__ import annotations

import io
import tempfile
import warnings
from pathlib import Path

from openpyxl import load_workbook

from costing.front_ends.libreoffice.build import extension_parts
from costing.front_ends.programs import answer, clean_environment, libreoffice
from costing.front_ends.workbook.cached_values import Value, formula_cells
from costing.quantities import InputError

SECONDS = 180.0
FILTER = "xlsx:Calc MS Excel 2007 XML"

# LibreOffice takes the results that a file holds for true, unless it is told not to.
WORK_OUT_ALL = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse">
<value>0</value></prop></item>
</oor:items>
"""


def calculated_by_libreoffice(path: Path, seconds: float = SECONDS) -> dict[str, dict[str, Value]]:
    """Sheet -> cell -> result of every formula of a workbook, as a LibreOffice with the extension shows it.

    LibreOffice runs without a window, with a profile of its own and on a copy; the workbook stays as it is.
    It gives numbers with fifteen digits.

    Parameters
    ----------
    path : Path
        The workbook, .xlsx.
    seconds : float, optional
        How long it may take.

    Raises
    ------
    InputError
        LibreOffice is not there, or gives no workbook in this time.
    """
    office = libreoffice()
    if office is None:
        raise InputError("LibreOffice", "is not installed; accepted is version 7.4 or later")
    content = path.read_bytes()
    with tempfile.TemporaryDirectory(prefix="warp-calculated-") as name:
        folder = Path(name)
        _write(folder / "profile" / "user" / "registrymodifications.xcu", WORK_OUT_ALL.encode())
        for part, inside in extension_parts().items():
            _write(folder / "extensions" / "warp" / part, inside)
        _write(folder / "given" / "book.xlsx", content)
        done = answer(
            [
                office,
                "--headless",
                "--norestore",
                f"-env:UserInstallation={(folder / 'profile').as_uri()}",
                f"-env:BUNDLED_EXTENSIONS={(folder / 'extensions').as_uri()}",
                *("--convert-to", FILTER, "--outdir", folder / "saved", folder / "given" / "book.xlsx"),
            ],
            seconds,
            {**clean_environment(), "HOME": name},  # some of it writes there at its mere start
        )
        saved = folder / "saved" / "book.xlsx"
        if done.code != 0 or not saved.is_file():
            how = "has not answered" if done.code is None else f"gave no workbook: {done.text or done.code}"
            raise InputError(path.name, f"LibreOffice {how}".replace("\n", " "))
        return _results(saved.read_bytes(), formula_cells(content))


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)


def _results(saved: bytes, wanted: dict[str, list[str]]) -> dict[str, dict[str, Value]]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what the reader does not need, it may leave out
        book = load_workbook(io.BytesIO(saved), data_only=True)
    return {title: {cell: book[title][cell].value for cell in cells} for title, cells in wanted.items()}
