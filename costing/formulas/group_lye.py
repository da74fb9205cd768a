"""Caustic lye: strength by mass and by volume, density, degrees Baume and Twaddell."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import lye

TITLE = "Caustic lye by density"

FORMULAS: tuple[Formula, ...] = (
    Formula(lye.lye_density_from_strength, "lye_density", {"lye_strength": 22.0}),
    Formula(lye.lye_strength_from_density, "lye_strength", {"lye_density": 1.225}),
    Formula(lye.lye_concentration_from_strength, "lye_concentration", {"lye_strength": 22.0}),
    Formula(lye.lye_strength_from_concentration, "lye_strength", {"lye_concentration": 250.0}),
    Formula(lye.specific_gravity_from_density, "specific_gravity", {"lye_density": 1.225}),
    Formula(lye.lye_density_from_specific_gravity, "lye_density", {"specific_gravity": 1.225}),
    Formula(lye.specific_gravity_from_baume, "specific_gravity", {"baume": 30.0}),
    Formula(lye.baume_from_specific_gravity, "baume", {"specific_gravity": 1.26}),
    Formula(lye.specific_gravity_from_twaddell, "specific_gravity", {"twaddell": 52.0}),
    Formula(lye.twaddell_from_specific_gravity, "twaddell", {"specific_gravity": 1.26}),
)
