"""Sulfur dye, its reductants and its oxidation."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

SULFUR_DYE = (
    Q("dye_on_yarn", "", "%", 0.05, 25.0, "depth: dye on the finished yarn, of the grey yarn"),
    Q("dye_fixation", "", "%", 5.0, 100.0, "share of the dye fed that stays on the finished yarn"),
    Q("dye_feed", "kg/kg", "g/kg", 0.0, 1000.0, "dye fed, counted as the depth is"),
    Q("box_dye", "kg/L", "g/L", 0.0, 600.0, "dye in the box, counted as the depth is"),
    Q(
        "extra_uptake",
        "",
        "%",
        0.0,
        300.0,
        "dye that the fibre draws from the bath beyond the liquor it carries, of what that liquor carries",
    ),
    Q("sulfide_ratio", "kg/kg", "kg/kg", 0.0, 5.0, "sodium sulfide (Na2S 100 %) for each mass of dye"),
    Q("sulfide_use", "kg/kg", "g/kg", 0.0, 3000.0, "sodium sulfide (Na2S 100 %)"),
    Q("sulfide_flakes", "kg/kg", "g/kg", 0.0, 6000.0, "sodium sulfide flakes as delivered"),
    Q("hydrosulfide_use", "kg/kg", "g/kg", 0.0, 3000.0, "sodium hydrosulfide (NaHS 100 %)"),
    Q("bath_glucose", "kg/L", "g/L", 0.0, 300.0, "glucose (100 %, without water) in the bath"),
    Q("glucose_taken", "kg/kg", "g/kg", 0.0, 500.0, "glucose (100 %) that the reduction uses up"),
    Q("glucose_use", "kg/kg", "g/kg", 0.0, 3000.0, "glucose (100 %) fed"),
    Q(
        "acids_per_glucose",
        "mol/mol",
        "mol/mol",
        0.0,
        6.0,
        "acid groups that one glucose used up turns into",
    ),
    Q("sulfide_left", "", "%", 0.0, 100.0, "share of the sulfide that reaches the drain as sulfide"),
    Q("sulfide_drained", "kg/kg", "g/kg", 0.0, 3000.0, "sodium sulfide (Na2S 100 %) that reaches the drain"),
    Q("sulfide_sulfur", "kg/kg", "g/kg", 0.0, 3000.0, "sulfide, counted as its sulfur"),
    Q("peroxide_use", "kg/kg", "g/kg", 0.0, 6000.0, "hydrogen peroxide (H2O2 100 %)"),
)
