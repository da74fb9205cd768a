"""Packs, stock, times of ordering, and what an order and its use cost against the standard."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

ORDERS = (
    Q(
        "gather_time",
        "h",
        "day",
        0.0,
        9000.0,
        "orders of one shade due within it of the first are dyed together",
    ),
    Q(
        "time_before_due",
        "h",
        "day",
        0.0,
        9000.0,
        "from the beginning of a dye lot to the day its order is due",
    ),
    Q("bath_keeping_time", "h", "day", 0.0, 9000.0, "between two lots of one recipe that share a dye bath"),
    Q("needed_mass", "kg", "kg", 0.0, 1e8, "product as delivered that the orders need"),
    Q("stock_mass", "kg", "kg", 0.0, 1e8, "product as delivered in stock"),
    Q("pack_mass", "kg", "kg", 0.01, 50000.0, "product in one pack: bag, drum, container, tanker"),
    Q("packs", "", "", 0.0, 1e6, "whole packs", whole=True),
    Q("use_rate", "kg/h", "kg/day", 0.001, 1e7, "product as delivered used, over all days of the calendar"),
    Q("stock_reach", "h", "day", 0.0, 1e6, "time that a stock lasts"),
    Q("time_to_need", "h", "day", -3650.0, 3650.0, "time from today to the day of need"),
    Q("lead_time", "h", "day", 0.0, 1000.0, "time from the order to the product in store"),
    Q("spare_time", "h", "day", 0.0, 365.0, "time in hand, for what comes late"),
    Q("order_margin", "h", "day", -5000.0, 5000.0, "time left to order; below zero it is late"),
    Q("keeping_time", "h", "day", 0.0, 3650.0, "time that an opened pack keeps, by its supplier"),
    Q("time_open", "h", "day", 0.0, 3650.0, "time since the pack was opened"),
    Q("time_left", "h", "day", -3650.0, 3650.0, "time that a pack still keeps; below zero it is past"),
    Q("break_packs", "", "", 1.0, 1e6, "packs from which the break price holds, for all of them", whole=True),
    Q("break_price", "money/kg", "money/kg", 0.0, 1e6, "price at the price break, as delivered"),
    Q("from_quantity", "kg", "kg", 0.0, 1e8, "purchase from which an offer holds, as delivered"),
    Q("usual_purchase", "kg", "kg", 0.01, 1e8, "what is bought at a time, as delivered"),
    Q("order_charge", "money", "money", 0.0, 1e9, "charge for an order of any size"),
    Q("order_cost", "money", "money", 0.0, 1e15, "cost of an order"),
    Q("actual_mass", "kg", "kg", 0.0, 1e9, "product used in fact"),
    Q("standard_mass", "kg", "kg", 0.0, 1e9, "product that the standard allows for what was made"),
    Q("actual_price", "money/kg", "money/kg", 0.0, 1e6, "price paid in fact"),
    Q("standard_price", "money/kg", "money/kg", 0.0, 1e6, "price in the standard"),
    Q("variance", "money", "money", -1e15, 1e15, "cost in fact less standard cost: above zero it cost more"),
)
