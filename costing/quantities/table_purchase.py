"""Re-ordering: safety stock, re-order point, order quantity, and the terms of a purchase."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

PURCHASE = (
    Q("service_level", "", "%", 50.0, 99.999, "share of deliveries before which the stock does not run out"),
    Q("use_spread", "kg", "kg", 0.0, 1e8, "standard deviation of the use of one period, as delivered"),
    Q("use_period", "h", "day", 0.04, 366.0, "period that the spread of use is of, such as a day or a week"),
    Q("lead_time_spread", "h", "day", 0.0, 365.0, "standard deviation of the lead time"),
    Q("safety_mass", "kg", "kg", 0.0, 1e9, "safety stock, as delivered"),
    Q("reorder_mass", "kg", "kg", 0.0, 1e10, "stock with what is on order at which an order is placed"),
    Q("holding_rate", "1/h", "%/year", 1.0, 200.0, "what holding stock costs in a year, of its price"),
    Q("order_mass", "kg", "kg", 1e-6, 1e9, "product in one order, as delivered"),
    Q("break_mass", "kg", "kg", 0.0, 1e9, "order from which the break price holds, for all of it"),
    Q("buying_cost", "money/h", "money/year", 0.0, 1e15, "cost of buying: price, orders and holding"),
    Q("need_spread", "", "%", 0.0, 300.0, "standard deviation of the use of a week, of its planned mean"),
    Q("minimum_order", "kg", "kg", 0.0, 1e8, "least that the supplier delivers, as delivered"),
    Q("shelf_life", "h", "day", 1.0, 36500.0, "time that a closed pack keeps from its arrival"),
    Q("storage_ceiling", "kg", "kg", 0.0, 1e9, "most that may be in store at a time, as delivered"),
    Q("cover_time", "h", "day", 1.0, 1000.0, "time whose need one order covers"),
    Q("payment_time", "h", "day", 0.0, 365.0, "time from the arrival to the payment"),
)
