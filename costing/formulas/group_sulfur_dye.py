"""Spreadsheet formulas of dye boxes and sulfur dye: dye, reductants and caustic, peroxide, sulfide left."""

from __future__ import annotations

from costing.formulas.formula import Formula
from costing.process import sulfide_oxidation, sulfur_dye

TITLE = "Dye boxes and sulfur dye"

SULFIDE = {"sulfide_use": 54.0}
RATIO = {"dye_feed": 90.0, "sulfide_ratio": 0.6}

FORMULAS: tuple[Formula, ...] = (
    Formula(sulfur_dye.dye_feed_for_depth, "dye_feed", {"dye_on_yarn": 7.0, "dye_fixation": 65.0}),
    Formula(
        sulfur_dye.dye_feed_of_box,
        "dye_feed",
        {
            "pick_up_in": 0.6,
            "concentration_in": 0.0,
            "pick_up_out": 0.75,
            "box_dye": 120.0,
            "extra_uptake": 20.0,
            "overflow": 0.05,
        },
    ),
    Formula(
        sulfur_dye.dye_bath_strength,
        "box_dye",
        {"dye_feed": 108.0, "pick_up_out": 0.75, "extra_uptake": 20.0},
    ),
    Formula(sulfur_dye.sulfide_for_dye, "sulfide_use", RATIO),
    Formula(sulfur_dye.sulfide_flakes_for_dye, "sulfide_flakes", {**RATIO, "strength": 60.0}),
    Formula(sulfur_dye.hydrosulfide_for_sulfide, "hydrosulfide_use", SULFIDE),
    Formula(sulfur_dye.sulfide_from_hydrosulfide, "sulfide_use", {"hydrosulfide_use": 40.0}),
    Formula(sulfur_dye.caustic_for_hydrosulfide, "caustic_use", {"hydrosulfide_use": 40.0}),
    Formula(
        sulfur_dye.glucose_feed_of_bath,
        "glucose_use",
        {"pick_up_out": 0.75, "bath_glucose": 30.0, "glucose_taken": 10.0, "overflow": 0.05},
    ),
    Formula(
        sulfur_dye.caustic_feed_with_glucose,
        "caustic_use",
        {
            "pick_up_out": 0.75,
            "bath_caustic": 25.0,
            "glucose_taken": 10.0,
            "acids_per_glucose": 1.0,
            "overflow": 0.05,
            "caustic_carried_in": 1.0,
        },
    ),
    Formula(sulfide_oxidation.sulfide_to_drain, "sulfide_drained", {**SULFIDE, "sulfide_left": 40.0}),
    Formula(sulfide_oxidation.sulfide_as_sulfur, "sulfide_sulfur", {"sulfide_use": 21.6}),
    Formula(sulfide_oxidation.peroxide_for_sulfide_to_sulfate, "peroxide_use", {"sulfide_use": 21.6}),
    Formula(sulfide_oxidation.peroxide_for_sulfide_to_sulfur, "peroxide_use", {"sulfide_use": 21.6}),
)
