"""How fast the formulas are in LibreOffice Calc: run ``python -m tests.benchmark_cells``.

Prints what 10,000 cells of a kind take, beside 10,000 native cells of the same run: the shortest of several
full recalculations in two passes, in LibreOffice's main thread, where a user's own recalculation runs. It is
a statement, not a test: on a busy machine all of it takes longer, a call into Python more than a native cell.

One native formula filled down a column Calc calculates as a group, several cells at a time, as it does with
no add-in. So native cells are measured twice: as a group, and where no two neighbours are alike.
"""

from __future__ import annotations

import statistics
import tempfile
from pathlib import Path

from openpyxl import Workbook, load_workbook
from openpyxl.utils import get_column_letter

from costing.front_ends.workbook.cached_values import formula_cells
from tests.libreoffice.office import Office, is_there

ROWS = 10_000
ROUNDS = 8
OPENINGS = 5
AIM = 10.0
BOOK = Path(__file__).parents[1] / "workbook_template" / "mill_book.xlsx"

CELLS = (
    ("native A1*2, no two neighbours alike", ["=A#*2", "=2*A#"]),
    ("native A1*2, filled down", ["=A#*2"]),
    ("native count to tex, filled down", ["=590.5412/A#"]),
    (
        "native count to tex, refusing what WARP refuses",
        ["=IF(AND(ISNUMBER(A#);A#>=0.5;A#<=500);590.5412/A#;NA())"],
    ),
    ("WARP, 1 argument: count to tex", ["=WARP_LINEAR_DENSITY_FROM_ENGLISH_COUNT(A#)"]),
    ("WARP, 2 arguments", ["=WARP_CARRIED_BY_LIQUOR(B#;C#)"]),
    ("WARP, 2 arguments, result unit", ['=WARP_CARRIED_BY_LIQUOR(B#;C#;"%")']),
    ("WARP, 2 arguments, one with its unit cell", ["=WARP_CARRIED_BY_LIQUOR(B#;C#:D#)"]),
    ("WARP, 2 arguments, one typed with its unit", ['=WARP_CARRIED_BY_LIQUOR(B#;"2 g/L")']),
    ("WARP, 4 arguments", ["=WARP_IMPREGNATION_USE(B#;C#;B#;30)"]),
)
ALONE, GROUP, REFUSING, PLAIN = 0, 1, 3, 4


def measured(office: Office) -> list[float]:
    """Microseconds of one cell of each kind."""
    document = office.ask("new")
    office.ask("numbers", document, ROWS)
    found = []
    for _, formulas in CELLS:
        answer = office.ask("seconds", document, formulas, ROWS, ROUNDS)
        if not isinstance(answer["last"], float):
            raise SystemExit(f"{formulas[0]} gives {answer['last']!r}")
        found.append(1e6 * answer["seconds"] / ROWS)
    office.ask("close", document)
    return found


def formulas_file(path: Path) -> None:
    """An .xlsx file with a thousand formulas by their plain names, without results."""
    book = Workbook()
    page = book.worksheets[0]
    for row in range(1, 1001):
        page.cell(row, 1, 0.75)
        page.cell(row, 2, f"=WARP_CARRIED_BY_LIQUOR(A{row},2)")
    book.save(path)


def opening(office: Office, path: Path) -> tuple[float, float]:
    """Seconds to open a file: the first time, and the median of more."""
    first = office.ask("opening_seconds", str(path))
    return first, statistics.median(office.ask("opening_seconds", str(path)) for _ in range(OPENINGS))


def book_seconds(office: Office) -> dict[str, float]:
    """Seconds of full recalculations of the mill's book, and of a native book as large.

    The native one has as many cells, each of which adds two others up.
    """
    found = {}
    document = office.ask("open", str(BOOK))
    found["the same cells again"] = shortest(office, document)
    found["another input each time"] = min(
        office.ask("input_seconds", document, "Materials", price_cell(), 7.0 + step / 64)
        for step in range(ROUNDS)
    )
    cells = sum(len(places) for places in formula_cells(BOOK.read_bytes()).values())
    office.ask("close", document)
    document = office.ask("new")
    office.ask("numbers", document, ROWS)
    answer = office.ask("seconds", document, ["=A#+B#", "=B#+A#"], min(cells, ROWS), ROUNDS)
    found["as many native cells"] = answer["seconds"] * cells / min(cells, ROWS)
    office.ask("close", document)
    return found


def shortest(office: Office, document: int) -> float:
    """Shortest of some full recalculations [s]."""
    return min(float(office.ask("calculate", document)) for _ in range(ROUNDS))


def price_cell() -> str:
    """The price of the first material of the book."""
    page = load_workbook(BOOK)["Materials"]
    row, heads = next(
        (row, cells) for row, cells in enumerate(page.iter_rows(), start=1) if cells[0].value == "Code"
    )
    (column,) = [place for place, cell in enumerate(heads, start=1) if cell.value == "Price"]
    return f"{get_column_letter(column)}{row + 1}"


def main() -> None:
    """Measure and print."""
    if not is_there():
        raise SystemExit("LibreOffice with its Python bridge is not installed")
    with tempfile.TemporaryDirectory() as folder:
        many = Path(folder) / "formulas.xlsx"
        formulas_file(many)
        opened = {}
        for install in ("none", "bundled"):
            office = Office(install)
            try:
                opened[install] = [*opening(office, BOOK), *opening(office, many)]
            finally:
                office.end()
    office = Office("bundled")
    try:
        document = office.ask("new")
        first = [
            office.ask("first_seconds", document, formula) for formula in ("=1+1", "=WARP_BONE_DRY_MASS()")
        ]
        second = office.ask("first_seconds", document, "=WARP_PROGRAM_VERSION()")
        office.ask("close", document)
        times = [min(both) for both in zip(measured(office), measured(office), strict=True)]
        book = book_seconds(office)
    finally:
        office.end()

    print(f"{ROWS} cells of a kind: microseconds for one cell, and times the plainest native cell")
    print(f"{'':50} {'us':>8} {'x alone':>8} {'x group':>8}")
    for (what, _), one in zip(CELLS, times, strict=True):
        print(f"{what:50} {one:8.2f} {one / times[ALONE]:8.1f} {one / times[GROUP]:8.1f}")
    plain = times[PLAIN]
    print(f"plain scalar formula, aim at most {AIM:g} times a native cell: {plain / times[ALONE]:.1f} alone,")
    print(f"{plain / times[GROUP]:.1f} in a group, {plain / times[REFUSING]:.1f} with the same refusals")
    print(
        f"first formula of any kind {first[0]:.3f} s, first of WARP {first[1]:.3f} s, another {second:.4f} s"
    )
    native = book["as many native cells"]
    for what, seconds in book.items():
        print(
            f"recalculate the mill book, {what:24} {seconds:.3f} s, {seconds / native:.1f} times native cells"
        )
    print("aim: at most 0.3 s")
    for place, what in enumerate(
        ("mill book, first", "mill book, then", "1000 formulas, first", "1000, then")
    ):
        without, more = opened["none"][place], opened["bundled"][place] - opened["none"][place]
        print(f"open {what:22} without the extension {without:.3f} s, with it {more:+.3f} s")


if __name__ == "__main__":
    main()
