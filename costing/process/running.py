"""Which function runs which kind of step."""

from __future__ import annotations

from typing import Any, Callable

from costing.process.drying import dry
from costing.process.dye_box import dye_in_box
from costing.process.indigo_dyeing import dye_indigo
from costing.process.recovering_rinse import rinse_and_recover
from costing.process.size_box import size
from costing.process.steaming import steam_goods
from costing.process.treatment import treat
from costing.process.vessel import extract, run_bath
from costing.process.washing import rinse, scour
from costing.settings.box_steps import Treatment
from costing.settings.dye_box_step import DyeBox
from costing.settings.recovering_rinse_step import RecoveringRinse
from costing.settings.rinse_step import Rinse
from costing.settings.sizing_step import Sizing
from costing.settings.steamer_step import Steaming
from costing.settings.steps import Drying, IndigoDyeing, Scour
from costing.settings.vessel_steps import Extraction, VesselBath

RUNNERS: dict[str, Callable[..., Any]] = {
    Scour.KIND: scour,
    Rinse.KIND: rinse,
    RecoveringRinse.KIND: rinse_and_recover,
    IndigoDyeing.KIND: dye_indigo,
    DyeBox.KIND: dye_in_box,
    Treatment.KIND: treat,
    Sizing.KIND: size,
    VesselBath.KIND: run_bath,
    Extraction.KIND: extract,
    Steaming.KIND: steam_goods,
    Drying.KIND: dry,
}
