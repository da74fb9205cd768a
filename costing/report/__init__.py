"""The results as plain tables: one source for the screen, for JSON and for the results workbook."""

from __future__ import annotations

from collections.abc import Sequence

from costing.report.cloth_and_order import cloth_plan, order_plan
from costing.report.drain import (
    discharge_by_parameter,
    discharge_concentrations,
    discharge_loads,
)
from costing.report.dye_bath import dye_bath
from costing.report.grounds import (
    cautions_of_use,
    checks,
    defaults_taken,
    run_record,
    sources_cited,
)
from costing.report.money import cost_by_group, cost_by_step, cost_lines, headline, quotes
from costing.report.range_work import key_figures, ledger_lines, use
from costing.report.table import Column, Result, Table, costs_of, decimals_of, work_out
from costing.settings.mill import Mill

__all__ = [
    "Column",
    "Result",
    "Table",
    "all_tables",
    "costs_of",
    "decimals_of",
    "headline",
    "work_out",
]


def all_tables(mill: Mill, results: Sequence[Result]) -> list[Table]:
    """Every table of a run, in reading order."""
    return [
        quotes(mill, results),
        key_figures(mill, results),
        cost_by_group(mill, results),
        cost_by_step(mill, results),
        use(mill, results),
        dye_bath(results),
        discharge_loads(results),
        discharge_concentrations(results),
        discharge_by_parameter(results),
        cloth_plan(results),
        order_plan(results),
        checks(mill, results),
        defaults_taken(mill, results),
        cost_lines(mill, results),
        ledger_lines(results),
        cautions_of_use(mill, results),
        sources_cited(mill, results),
        run_record(mill, results),
    ]
