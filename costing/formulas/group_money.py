"""Prices and cost."""

from __future__ import annotations

from costing.cost import money, seconds
from costing.formulas.formula import Formula

TITLE = "Prices and cost"

FORMULAS: tuple[Formula, ...] = (
    Formula(money.delivered_price, "price", {"price": 1.2, "freight": 0.1, "exchange_rate": 0.9}),
    Formula(money.price_of_pure_substance, "pure_price", {"price": 1.1, "strength": 88.0, "freight": 0.0}),
    Formula(money.price_from_volume, "price", {"price_per_litre": 0.606, "density": 1.515}),
    Formula(money.price_with_margin, "selling_price", {"cost": 0.8, "margin": 20.0}),
    Formula(money.cost_per_metre_of_cloth, "cost_per_metre", {"cost": 0.6, "warp_mass_per_metre": 360.0}),
    Formula(
        seconds.cost_of_first_quality,
        "first_quality_cost",
        {
            "cost": 0.8,
            "off_shade_share": 2.0,
            "seconds_share": 3.0,
            "off_shade_value": 80.0,
            "seconds_value": 60.0,
        },
    ),
)
