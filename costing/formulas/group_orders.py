"""Spreadsheet formulas of orders: packs, stock, times, price breaks, variances."""

from __future__ import annotations

from costing.cost import ordering
from costing.formulas.formula import Formula

TITLE = "Orders and stock"

PACK = {"pack_mass": 50.0}

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
        ordering.price_variance,
        "variance",
        {"actual_price": 1.3, "standard_price": 1.2, "actual_mass": 950.0},
    ),
    Formula(
        ordering.usage_variance,
        "variance",
        {"actual_mass": 950.0, "standard_mass": 900.0, "standard_price": 1.2},
    ),
)
