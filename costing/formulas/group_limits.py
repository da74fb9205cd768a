"""Spreadsheet formulas of limits: a limit in other terms, and the chance that a day is above it."""

from __future__ import annotations

from costing.effluent import day_values, limit_values
from costing.formulas.formula import Formula

TITLE = "Limits and day values"

DAYS = {"day_variation": 60.0}

FORMULAS: tuple[Formula, ...] = (
    Formula(limit_values.load_limit_per_day, "daily_load", {"load_limit": 42.3, "daily_production": 12000.0}),
    Formula(limit_values.load_share_of_limit, "limit_share", {"load": 25.0, "load_limit": 42.3}),
    Formula(
        limit_values.concentration_share_of_limit,
        "limit_share",
        {"effluent_concentration": 120.0, "concentration_limit": 160.0},
    ),
    Formula(
        limit_values.concentration_at_reference_flow,
        "effluent_concentration",
        {"effluent_concentration": 80.0, "effluent_volume": 175.0, "reference_volume": 140.0},
    ),
    Formula(
        limit_values.absorption_coefficient,
        "absorption_coefficient",
        {"absorbance": 0.03, "cell_length": 10.0},
    ),
    Formula(day_values.log_spread_of_variation, "log_spread", DAYS),
    Formula(day_values.percentile_over_mean, "peak_factor", {"percentile": 95.0, **DAYS}),
    Formula(day_values.variation_from_peak, "day_variation", {"peak_factor": 2.0, "percentile": 99.0}),
    Formula(day_values.chance_above_limit, "exceedance_chance", {"limit_share": 60.0, **DAYS}),
    Formula(
        day_values.chance_any_above_limit,
        "exceedance_chance",
        {"exceedance_chance": 1.0, "values_taken": 30.0},
    ),
    Formula(day_values.variation_of_mean, "day_variation", {**DAYS, "days_averaged": 30.0}),
    Formula(
        day_values.day_peak_over_mean_peak,
        "peak_factor",
        {**DAYS, "days_averaged": 30.0, "percentile": 99.0},
    ),
    Formula(day_values.mean_for_chance, "limit_share", {"accepted_chance": 5.0, **DAYS}),
    Formula(day_values.variation_with_estimate, "day_variation", {**DAYS, "estimate_spread": 20.0}),
)
