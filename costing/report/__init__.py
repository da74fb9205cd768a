"""The results as plain tables: one source for the screen, for JSON and for the results workbook."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Callable

from costing.report.cloth_and_order import cloth_plan, order_plan
from costing.report.compare import compare
from costing.report.drain import (
    discharge_by_parameter,
    discharge_concentrations,
    discharge_loads,
)
from costing.report.drain_live import DRAIN_TABLES
from costing.report.drivers import cost_drivers, cost_spread
from costing.report.dye_bath import dye_bath
from costing.report.grounds import (
    cautions_of_use,
    checks,
    defaults_taken,
    run_record,
    sources_cited,
)
from costing.report.money import cost_by_group, cost_by_step, cost_lines, headline, parts_of, quotes
from costing.report.prices import prices_of_use
from costing.report.range_work import key_figures, ledger_lines, use
from costing.report.seconds import seconds, shade_lots
from costing.report.seconds import told as seconds_told
from costing.report.table import Builder, Column, Result, Table, costs_of, decimals_of, work_out
from costing.settings.mill import Mill

__all__ = [
    "BOOK_TABLES",
    "TABLES",
    "Column",
    "Result",
    "Table",
    "all_tables",
    "costs_of",
    "decimals_of",
    "headline",
    "seconds_told",
    "work_out",
]


def _of_results(build: Callable[[Sequence[Result]], Table]) -> Builder:
    """A table that needs the results alone."""
    return lambda mill, results: build(results)


# Every table by its key, in reading order.
TABLES: dict[str, Builder] = {
    "quotes": quotes,
    "key_figures": key_figures,
    "cost_by_group": cost_by_group,
    "cost_by_step": cost_by_step,
    "seconds": seconds,
    "shade_lots": shade_lots,
    "compare": compare,
    "use": use,
    "dye_bath": _of_results(dye_bath),
    "discharge_loads": _of_results(discharge_loads),
    "discharge_concentrations": _of_results(discharge_concentrations),
    "discharge_by_parameter": _of_results(discharge_by_parameter),
    "cloth_plan": _of_results(cloth_plan),
    "order_plan": _of_results(order_plan),
    "checks": checks,
    "defaults_taken": defaults_taken,
    "cost_lines": cost_lines,
    "prices": prices_of_use,
    "ledger": _of_results(ledger_lines),
    "safety": cautions_of_use,
    "sources": sources_cited,
    "run_record": run_record,
}


# What takes many quotes: a cell may ask for it, and no run of all tables does.
DRIVER_TABLES: dict[str, Builder] = {"cost_spread": cost_spread, "cost_drivers": cost_drivers}

# The dearest parts of a quote, for a chart beside each.
PART_TABLES: dict[str, Builder] = {
    f"cost_of_{what}s": parts_of(what) for what in ("step", "material", "cause")
}

# What a cell can ask of a book: tables of enquiries, and those of the collecting points.
BOOK_TABLES: dict[str, Builder] = {**TABLES, **PART_TABLES, **DRIVER_TABLES, **DRAIN_TABLES}


def all_tables(mill: Mill, results: Sequence[Result]) -> list[Table]:
    """Every table of a run, in reading order."""
    return [build(mill, results) for build in TABLES.values()]
