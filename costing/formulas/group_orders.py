"""Spreadsheet formulas of orders: packs, stock, times, price breaks, variances."""

from __future__ import annotations

from costing.cost import ordering
from costing.formulas.formula import Formula
from costing.purchasing import reordering

TITLE = "Orders and stock"

PACK = {"pack_mass": 50.0}
YEARLY = {"order_charge": 60.0, "holding_rate": 30.0}  # of the exercise that the check rows take

FORMULAS: tuple[Formula, ...] = (
    Formula(ordering.packs_to_order, "packs", {"needed_mass": 1240.0, "stock_mass": 300.0, **PACK}),
    Formula(ordering.mass_of_packs, "delivered_mass", {"packs": 19, **PACK}),
    Formula(ordering.stock_reach, "stock_reach", {"stock_mass": 300.0, "use_rate": 120.0}),
    Formula(
        ordering.time_left_to_order,
        "order_margin",
        {"time_to_need": 30.0, "lead_time": 21.0, "spare_time": 3.0},
    ),
    Formula(ordering.time_left_of_opened_pack, "time_left", {"keeping_time": 14.0, "time_open": 10.0}),
    Formula(
        ordering.cost_of_order,
        "order_cost",
        {
            "packs": 20,
            **PACK,
            "price": 1.2,
            "break_packs": 20,
            "break_price": 1.1,
            "order_charge": 60.0,
        },
    ),
    Formula(
        reordering.safety_stock,
        "safety_mass",
        {
            "service_level": 90.0,
            "use_rate": 30.0,
            "use_spread": 3.0,
            "use_period": 1.0,
            "lead_time": 7.0,
            "lead_time_spread": 4.0,
        },
    ),
    Formula(
        reordering.reorder_point,
        "reorder_mass",
        {"use_rate": 30.0, "lead_time": 7.0, "safety_mass": 154.0},
    ),
    Formula(reordering.economic_order, "order_mass", {"use_rate": 2.19, "price": 51.5, **YEARLY}),
    Formula(
        reordering.cost_of_buying,
        "buying_cost",
        {"use_rate": 2.19, "order_mass": 200.0, "price": 48.0, **YEARLY},
    ),
    Formula(
        reordering.best_order,
        "order_mass",
        {"use_rate": 2.19, "price": 49.5, "break_mass": 200.0, "break_price": 48.0, **YEARLY},
    ),
    Formula(
        ordering.price_variance,
        "variance",
        {"actual_price": 1.3, "standard_price": 1.2, "actual_mass": 950.0},
    ),
    Formula(
        ordering.usage_variance,
        "variance",
        {"actual_mass": 950.0, "standard_mass": 900.0, "standard_price": 1.2},
    ),
    Formula(
        ordering.strength_variance,
        "variance",
        {"actual_mass": 880.0, "actual_strength": 85.0, "standard_strength": 88.0, "standard_price": 1.5},
    ),
    Formula(
        ordering.mix_variance,
        "variance",
        {"part_mass": 2275.0, "total_mass": 6500.0, "standard_share": 30.0, "standard_price": 80.0},
    ),
    Formula(
        ordering.volume_variance,
        "variance",
        {
            "total_mass": 6500.0,
            "standard_total_mass": 6400.0,
            "standard_share": 30.0,
            "standard_price": 80.0,
        },
    ),
)
