"""Which function runs which kind of step."""

from __future__ import annotations

from typing import Any, Callable

from costing.process.drying import dry
from costing.process.indigo_dyeing import dye_indigo
from costing.process.washing import rinse, scour
from costing.settings.steps import Drying, IndigoDyeing, Rinse, Scour

RUNNERS: dict[str, Callable[..., Any]] = {
    Scour.KIND: scour,
    Rinse.KIND: rinse,
    IndigoDyeing.KIND: dye_indigo,
    Drying.KIND: dry,
}
