"""A results workbook of the example mill, and how to read it back as pandas does."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import pandas as pd

from costing.front_ends.workbook.results import write_results
from costing.report import Result, work_out
from costing.settings.mill import Mill
from tests.example_mill import example_mill

HEAD, UNITS = 4, 5  # rows of heads and of units, counted from 0 as pandas does

# Texts that a spreadsheet program would run or misread, were they typed.
HOSTILE = {
    "E-1": "=1+1",
    "=E2": "+SUM(A1:A9)",
    "-E3": "@SUM(A1)",
    "#N/A": '=HYPERLINK("http://example.invalid","x")',
    "E&<5>": 'with a\x07bell, "quotes" & <marks>',
}
LENGTHS = (3000.0, 8000.0, 20000.0, 40000.0, 60000.0)


def example_results(count: int = len(LENGTHS)) -> tuple[Mill, list[Result]]:
    """The example mill with enquiries of unlike length, whose codes and descriptions are hostile."""
    mill = example_mill()
    base = mill.enquiries["E"]
    names = [*HOSTILE.items(), *((f"N-{number}", "invented") for number in range(count))][:count]
    mill.enquiries = {
        code: replace(base, code=code, description=text, order_length=LENGTHS[place % len(LENGTHS)])
        for place, (code, text) in enumerate(names)
    }
    return mill, [work_out(mill, enquiry) for enquiry in mill.enquiries.values()]


def write(folder: Path, count: int = len(LENGTHS)) -> tuple[Path, Mill, list[Result]]:
    mill, results = example_results(count)
    path = folder / "results.xlsx"
    write_results(path, mill, results)
    return path, mill, results


@lru_cache(maxsize=64)
def sheet(path: Path, name: str) -> Any:
    """A sheet as a table of pandas: columns named by head and unit, rows of values."""
    raw = pd.read_excel(path, sheet_name=name, header=None, keep_default_na=False, na_values=[""])
    titles = [_name(head, unit) for head, unit in zip(raw.iloc[HEAD], raw.iloc[UNITS])]
    table = raw.iloc[UNITS + 1 :].reset_index(drop=True)
    table.columns = pd.Index(titles)
    return table.infer_objects()


def _name(head: Any, unit: Any) -> str:
    return str(head) if pd.isna(unit) else f"{head} [{unit}]"
