"""How fast it is: run ``python -m tests.benchmark``.

Prints each measured time beside the aim. It is a statement, not a test: a busy machine may miss an aim.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
HEAVY = ("pandas", "numpy", "openpyxl", "pint")


def median_seconds(work: Callable[[], object], rounds: int) -> float:
    """Median time of one call, after one call to warm up."""
    work()
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def one_quote() -> Callable[[], object]:
    """Steps, ledger, cost and discharge of one enquiry; its settings are checked once, before."""
    from costing.cost.quote import quote
    from costing.effluent.discharge import streams
    from costing.ledger.whole import open_ledger
    from tests.example_mill import example_mill

    mill = example_mill()
    costs = mill.costs
    assert costs is not None

    def work() -> None:
        ledger = open_ledger(mill, mill.enquiries["E"])
        quote(ledger, mill.materials, costs)
        streams(ledger, mill.materials)

    return work


def thousand_styles() -> Callable[[], object]:
    """The table of quotes that one array call gives for a thousand enquiries, each of a style of its own."""
    from dataclasses import replace

    from costing.formulas.opened_book import OpenedBook
    from costing.report import TABLES
    from tests.example_mill import example_mill

    mill = example_mill()
    style, enquiry = mill.styles["S"], mill.enquiries["E"]
    for number in range(1000):
        code = f"S{number}"
        mill.styles[code] = replace(style, code=code, ends_density=style.ends_density * (1 + number / 1e5))
        mill.enquiries[code] = replace(enquiry, code=code, style=code)
    del mill.enquiries["E"]

    def work() -> None:
        book = OpenedBook(mill)
        TABLES["quotes"](mill, book.results("", "benchmark"))

    return work


def help_page() -> None:
    """The help page, in a process of its own."""
    subprocess.run(
        [sys.executable, "-m", "costing.front_ends.command_line", "--help"],
        cwd=ROOT,
        check=True,
        stdout=subprocess.DEVNULL,
    )


def heavy_modules_of_formulas() -> list[str]:
    """Heavy libraries that importing the formulas loads."""
    code = f"import sys, costing.formulas.registry; print(*[m for m in {HEAVY!r} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True, capture_output=True, text=True)
    return done.stdout.split()


def main() -> None:
    """Measure and print."""
    rows = [
        ("one full quote, warm", 1e3 * median_seconds(one_quote(), 200), "ms", 2.0),
        ("quotes of 1,000 styles in one array", median_seconds(thousand_styles(), 3), "s", 2.0),
        ("costing --help", median_seconds(help_page, 9), "s", 0.3),
        ("heavy libraries loaded by the formulas", float(len(heavy_modules_of_formulas())), "", 0.0),
    ]
    for what, value, unit, aim in rows:
        print(f"{what:42} {value:8.3f} {unit:3} aim: at most {aim:g} {unit}")


if __name__ == "__main__":
    main()
