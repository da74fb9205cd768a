"""How fast it is: run ``python -m tests.benchmark``.

Prints each measured time beside the aim. It is a statement, not a test: a busy machine may miss an aim.
"""

from __future__ import annotations

import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    import pandas

    from costing.settings.mill import Mill

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


BULK_ROWS = 100_000
BULK_CORES = 2
BULK_NUMBERS = {
    "order length [m]": (8e3, 6e4),
    "INDIGO-94: price [money/kg]": (5.0, 9.0),
    "LYE-50: price [money/kg]": (0.2, 0.5),
    "power price [money/kWh]": (0.05, 0.2),
    "steam price [money/t]": (15.0, 40.0),
    "water price [money/m3]": (0.3, 2.0),
}


def bulk_table(mill: Mill, rows: int) -> pandas.DataFrame:
    """The enquiries of the demo, which have all its recipes, each in all its styles, with random numbers."""
    import numpy
    import pandas

    random = numpy.random.default_rng(1)
    columns: dict[str, Any] = {
        "enquiry": random.choice(list(mill.enquiries), rows),
        "style": random.choice(list(mill.styles), rows),
    }
    for heading, (low, high) in BULK_NUMBERS.items():
        columns[heading] = random.uniform(low, high, rows)
    return pandas.DataFrame(columns)


class BulkTimes(NamedTuple):
    """Seconds of many quotes, processes at hand or started for it, and of draws; times; memory [MB]."""

    warm: float
    cold: float
    times: float
    draws: float
    memory: float


def bulk_seconds() -> BulkTimes:
    """Many quotes from a table and many draws of one."""
    from costing.cost.quote import basis_of
    from costing.front_ends.workbook.build import demo_book
    from costing.front_ends.workbook.read import read_book
    from costing.many.band import draw_quotes
    from costing.many.bulk import REFUSED, bulk_quotes
    from costing.many.bulk_jobs import Cores, Done, Job, run
    from costing.many.quotes import ordered

    mill = read_book(demo_book())
    table = bulk_table(mill, BULK_ROWS)

    def on_cores(cores: Cores) -> None:
        bulk_quotes(mill, table, runner=lambda mill, jobs: cores.run(mill, jobs, lambda _: None))

    def started() -> None:
        with Cores(BULK_CORES) as cores:
            on_cores(cores)

    cold = median_seconds(started, 3)
    with Cores(BULK_CORES) as cores:
        warm = median_seconds(lambda: on_cores(cores), 3)
    found = bulk_quotes(mill, table)
    used = [resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    sample = table[(found[REFUSED] == "").to_numpy()][:100]
    singles: list[Job] = []

    def one_by_one(mill: Mill, jobs: Iterable[Job]) -> Iterator[Done]:
        for job in jobs:
            for case, number in enumerate(job.which):
                given = {place: numbers[case : case + 1] for place, numbers in job.given.items()}
                own = (job.enquiries[number],)
                singles.append(Job(job.rows[case : case + 1], own, job.which[:1] * 0, given))
                yield run(mill, singles[-1])

    bulk_quotes(mill, sample, runner=one_by_one)
    alone = median_seconds(lambda: [run(mill, job) for job in singles], 3)
    enquiry = mill.enquiries["Q-01"]
    draws = median_seconds(lambda: draw_quotes(mill, enquiry, ordered(basis_of(enquiry))), 3)
    return BulkTimes(warm, cold, alone / len(singles) * BULK_ROWS / warm, draws, sum(used) / 1024.0)


ORDER_LINES, WEEKS, MATERIALS = 100_000, 104, 50


class PlanTimes(NamedTuple):
    """Seconds of a purchase plan; materials planned; orders proposed; memory [MB]."""

    seconds: float
    materials: int
    orders: int
    memory: float


def with_second_makes(mill: Mill) -> list[str]:
    """Give the mill second makes of its products, and copies of enquiries that take those.

    So many copies that all enquiries take as many products as are to be planned; gives their codes.
    """
    from dataclasses import replace

    from costing.settings.product_fields import PRODUCT_FIELDS

    def second(code: str) -> str:
        return f"{code}-2"

    mill.materials.update(
        {second(code): replace(item, code=second(code)) for code, item in mill.materials.items()}
    )
    mill.recipes.update(
        {second(code): replace(item, code=second(code)) for code, item in mill.recipes.items()}
    )
    for (recipe, step), entries in list(mill.recipe_steps.items()):
        mill.recipe_steps[second(recipe), step] = {
            name: entry._replace(value=second(entry.value))
            if name in PRODUCT_FIELDS and entry.value
            else entry
            for name, entry in entries.items()
        }
    products: dict[str, set[str]] = {}
    for (recipe, _), entries in mill.recipe_steps.items():
        taken = {entry.value for name, entry in entries.items() if name in PRODUCT_FIELDS and entry.value}
        products.setdefault(recipe, set()).update(taken)
    found = set().union(*(products[item.recipe] for item in mill.enquiries.values()))
    for code, item in list(mill.enquiries.items()):
        if len(found) < MATERIALS:
            mill.enquiries[second(code)] = replace(item, code=second(code), recipe=second(item.recipe))
            found |= products[second(item.recipe)]
    return sorted(found)


def plan_seconds() -> PlanTimes:
    """From an order book of two years in memory to the purchases of every material, day by day."""
    import datetime
    import random

    from costing.front_ends.workbook.build import demo_book
    from costing.front_ends.workbook.read import read_book
    from costing.many.requirement import together
    from costing.purchasing.dye_lots import plan_lots
    from costing.purchasing.plan import plan_purchases
    from costing.purchasing.requirement import requirement
    from costing.settings.order_book import OrderLine, Planning
    from costing.settings.stock import PurchaseTerms, Store

    mill = read_book(demo_book())
    bought = with_second_makes(mill)
    draw, start, day = random.Random(1), datetime.date(2025, 1, 6), 24.0
    codes = list(mill.enquiries)
    lines = [
        OrderLine(
            f"order {number}",
            draw.choice(codes),
            draw.uniform(500.0, 8000.0),
            start + datetime.timedelta(days=28 + draw.randrange(7 * WEEKS)),
        )
        for number in range(ORDER_LINES)
    ]
    year = 365.25 * day
    terms = {
        code: PurchaseTerms(code, "drum", 500.0, 28 * day, 4 * day, 0.95, 0.15, 0.1 / year, 30 * day)
        for code in bought
    }
    planning = Planning(7 * day, 28 * day, 3 * day)
    found: list[tuple[int, int]] = []

    def work() -> None:
        needs = requirement(mill, plan_lots(mill, lines, planning, start), together).needs
        plan = plan_purchases(mill, Store(terms=terms), needs, start, WEEKS)
        found.append((len(plan.materials), len(plan.proposals)))

    seconds = median_seconds(work, 3)
    used = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return PlanTimes(seconds, *found[0], used / 1024.0)


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
    plan = plan_seconds()
    many = bulk_seconds()
    rows = [
        ("one full quote, warm", 1e3 * median_seconds(one_quote(), 200), "ms", "at most 2"),
        ("quotes of 1,000 styles in one array", median_seconds(thousand_styles(), 3), "s", "at most 2"),
        ("100,000 quotes of a table, two cores", many.warm, "s", "at most 2"),
        ("the same with the start of the processes", many.cold, "s", "at most 2"),
        ("times faster than one at a time", many.times, "", "at least 50"),
        ("memory of it, with the larger process", many.memory, "MB", "at most 600"),
        ("10,000 draws of one quote", many.draws, "s", "at most 0.5"),
        ("100,000 orders, 104 weeks, to purchases", plan.seconds, "s", "at most 3"),
        ("materials of it", float(plan.materials), "", f"at least {MATERIALS}"),
        ("orders proposed", float(plan.orders), "", "any"),
        ("memory of it", plan.memory, "MB", "at most 1024"),
        ("costing --help", median_seconds(help_page, 9), "s", "at most 0.3"),
        ("heavy libraries loaded by the formulas", float(len(heavy_modules_of_formulas())), "", "at most 0"),
    ]
    for what, value, unit, aim in rows:
        print(f"{what:42} {value:8.3f} {unit:3} aim: {aim} {unit}")


if __name__ == "__main__":
    main()
