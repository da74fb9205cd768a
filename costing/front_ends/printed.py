"""Workbooks as PDF files, printed by LibreOffice."""

from __future__ import annotations

import tempfile
from pathlib import Path

from costing.front_ends.programs import answer, clean_environment, libreoffice
from costing.quantities import InputError

SECONDS = 180.0


def check_printer() -> None:
    """Refuse to print where LibreOffice is not installed.

    Raises
    ------
    InputError
        It is not there.
    """
    if libreoffice() is None:
        raise InputError(
            "--pdf",
            "LibreOffice is not installed; accepted is the page without --pdf, printed by your program",
        )


def printed_by_libreoffice(workbook: bytes, name: str, seconds: float = SECONDS) -> bytes:
    """A workbook as a PDF file, as its print setup says.

    LibreOffice runs without a window, with a profile of its own.

    Parameters
    ----------
    workbook : bytes
        Of an .xlsx file that holds plain values.
    name : str
        Of the file, which its footer may show, without the ending.
    seconds : float, optional
        How long it may take.

    Raises
    ------
    InputError
        LibreOffice is not there, or gives no PDF in this time.
    """
    check_printer()
    office = libreoffice()
    assert office is not None
    with tempfile.TemporaryDirectory(prefix="warp-printed-") as place:
        folder = Path(place)
        given = folder / f"{name}.xlsx"
        given.write_bytes(workbook)
        done = answer(
            [
                office,
                "--headless",
                "--norestore",
                f"-env:UserInstallation={(folder / 'profile').as_uri()}",
                *("--convert-to", "pdf", "--outdir", folder, given),
            ],
            seconds,
            {**clean_environment(), "HOME": place},
        )
        made = folder / f"{name}.pdf"
        if done.code != 0 or not made.is_file():
            how = "has not answered" if done.code is None else f"gave no PDF: {done.text or done.code}"
            raise InputError("--pdf", f"LibreOffice {how}".replace("\n", " "))
        return made.read_bytes()
