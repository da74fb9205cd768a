"""Safety stock, re-order point, and how much to order at a time, price breaks among it.

Plain equations for one product, with a use that is steady on the whole. A day is 24 hours of the calendar.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from costing.process.arithmetic import larger, normal_deviation, where


def safety_stock(
    service_level: Any,
    use_rate: Any,
    use_spread: Any,
    use_period: Any,
    lead_time: Any,
    lead_time_spread: Any = 0.0,
) -> Any:
    """Stock that is held against more use, or a later delivery, than is usual.

    Takes use and lead time as normal and each period as independent of the one before. Where all use comes
    from planned orders, its spread is that of the plan against the truth.

    Parameters
    ----------
    service_level : float
        Share of deliveries before which the stock does not run out [fraction].
    use_rate : float
        Mean use of the product as delivered [kg/h].
    use_spread : float
        Standard deviation of the use of one period [kg].
    use_period : float
        That period, such as a day or a week [h].
    lead_time : float
        Mean time from the order to the product in store [h].
    lead_time_spread : float, optional
        Standard deviation of it [h].

    Returns
    -------
    float
        Product as delivered [kg].

    Notes
    -----
    ``z sqrt(L / T s_T^2 + d^2 s_L^2)`` with z the deviation of a normal distribution that the service level
    ends at.

    Examples
    --------
    30 kg a day, give or take 3 kg; a week of lead time, give or take 4 days:

    >>> round(safety_stock(0.90, 30 / 24, 3.0, 24.0, 7 * 24.0, 4 * 24.0), 1)
    154.1

    References
    ----------
    safety-stock-exercise
    """
    variance = use_spread**2 * (lead_time / use_period) + (use_rate * lead_time_spread) ** 2
    return normal_deviation(service_level) * variance**0.5


def reorder_point(use_rate: Any, lead_time: Any, safety_mass: Any) -> Any:
    """Stock, with what is on order, at which an order is placed.

    Parameters
    ----------
    use_rate : float
        Mean use of the product as delivered [kg/h].
    lead_time : float
        Time from the order to the product in store [h].
    safety_mass : float
        Safety stock [kg].

    Returns
    -------
    float
        Product as delivered [kg].

    Examples
    --------
    >>> round(reorder_point(use_rate=30 / 24, lead_time=7 * 24.0, safety_mass=154.1), 1)
    364.1
    """
    return use_rate * lead_time + safety_mass


def economic_order(use_rate: Any, price: Any, order_charge: Any, holding_rate: Any) -> Any:
    """Order that makes the charges of ordering and of holding stock together least, at one price.

    Parameters
    ----------
    use_rate : float
        Mean use of the product as delivered [kg/h].
    price : float
        Price at the gate [money/kg].
    order_charge : float
        What an order costs whatever its size [money].
    holding_rate : float
        What it costs to hold stock for a time, of its price: interest, room, insurance, loss [1/h].

    Returns
    -------
    float
        Product as delivered in one order [kg].

    Notes
    -----
    ``sqrt(2 d S / (p i))``

    Examples
    --------
    800 kg a year at 51.50, 60 for an order, 30 % a year for holding:

    >>> year = 365.25 * 24.0
    >>> round(economic_order(800 / year, 51.5, 60.0, 0.30 / year), 1)
    78.8

    References
    ----------
    price-break-exercise
    """
    return (2.0 * use_rate * order_charge / (price * holding_rate)) ** 0.5


def cost_of_buying(use_rate: Any, order_mass: Any, price: Any, order_charge: Any, holding_rate: Any) -> Any:
    """What buying a product costs in a time: price, orders, and holding half an order on the mean.

    Leaves out the safety stock, which is the same whatever the order.

    Parameters
    ----------
    use_rate : float
        Mean use of the product as delivered [kg/h].
    order_mass : float
        Product in one order [kg].
    price : float
        Price at the gate for an order of that size [money/kg].
    order_charge : float
        What an order costs whatever its size [money].
    holding_rate : float
        What it costs to hold stock for a time, of its price [1/h].

    Returns
    -------
    float
        Cost [money/h].

    Notes
    -----
    ``d p + d S / Q + p i Q / 2``

    Examples
    --------
    >>> year = 365.25 * 24.0
    >>> round(cost_of_buying(800 / year, 200.0, 48.0, 60.0, 0.30 / year) * year, 2)
    40080.0

    References
    ----------
    price-break-exercise
    """
    return use_rate * (price + order_charge / order_mass) + price * holding_rate * order_mass / 2.0


def best_order(
    use_rate: Any, price: Any, break_mass: Any, break_price: Any, order_charge: Any, holding_rate: Any
) -> Any:
    """Order that makes buying cheapest, with a lower price for all of it from a price break on.

    Parameters
    ----------
    use_rate : float
        Mean use of the product as delivered [kg/h].
    price : float
        Price at the gate below the break [money/kg].
    break_mass : float
        Order from which the break price holds [kg].
    break_price : float
        Price from the break on, for all of the order [money/kg].
    order_charge : float
        What an order costs whatever its size [money].
    holding_rate : float
        What it costs to hold stock for a time, of its price [1/h].

    Returns
    -------
    float
        Product as delivered in one order [kg].

    Examples
    --------
    >>> year = 365.25 * 24.0
    >>> round(best_order(800 / year, 49.5, 200.0, 48.0, 60.0, 0.30 / year), 6)
    200.0

    References
    ----------
    price-break-exercise
    """
    below = economic_order(use_rate, price, order_charge, holding_rate)
    above = larger(economic_order(use_rate, break_price, order_charge, holding_rate), break_mass)
    cost_below = cost_of_buying(use_rate, below, price, order_charge, holding_rate)
    cost_above = cost_of_buying(use_rate, above, break_price, order_charge, holding_rate)
    return where(below < break_mass, where(cost_below <= cost_above, below, above), above)


def best_of_breaks(
    use_rate: float, breaks: Iterable[tuple[float, float]], order_charge: float, holding_rate: float
) -> tuple[float, float]:
    """Order that makes buying cheapest among any number of price breaks, each for all of the order.

    Parameters
    ----------
    use_rate : float
        Mean use of the product as delivered [kg/h].
    breaks : iterable of (float, float)
        Order from which a price holds [kg], and that price at the gate [money/kg], which falls from break to
        break.
    order_charge : float
        What an order costs whatever its size [money].
    holding_rate : float
        What it costs to hold stock for a time, of its price [1/h].

    Returns
    -------
    float, float
        Product as delivered in one order [kg], and what buying then costs [money/h].

    Examples
    --------
    >>> year = 365.25 * 24.0
    >>> breaks = [(0.0, 53.0), (50.0, 51.5), (100.0, 49.5), (200.0, 48.0), (500.0, 47.0)]
    >>> mass, cost = best_of_breaks(800 / year, breaks, 60.0, 0.30 / year)
    >>> round(mass, 6), round(cost * year, 2)
    (200.0, 40080.0)

    References
    ----------
    price-break-exercise
    """
    rising = sorted(breaks)
    found = []
    for place, (least, price) in enumerate(rising):
        mass = max(economic_order(use_rate, price, order_charge, holding_rate), least)
        if place + 1 < len(rising) and mass >= rising[place + 1][0]:
            continue  # so much is bought at another price
        found.append((cost_of_buying(use_rate, mass, price, order_charge, holding_rate), mass))
    cost, mass = min(found)
    return mass, cost
