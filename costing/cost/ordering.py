"""Packs to order, how long stock lasts, when to order, and what an order and its use cost.

Plain equations for one product. A day is 24 hours of the calendar.
"""

from __future__ import annotations

from typing import Any

from costing.construction.whole_numbers import whole_up
from costing.process.arithmetic import not_negative, where


def packs_to_order(needed_mass: Any, stock_mass: Any, pack_mass: Any) -> Any:
    """Whole packs to order for a need less the stock.

    Stock that has lost strength, or is past its time, is no stock.

    Parameters
    ----------
    needed_mass : float
        Product as delivered that the orders need [kg].
    stock_mass : float
        Product as delivered in stock [kg].
    pack_mass : float
        Product in one pack [kg].

    Returns
    -------
    float
        Packs [whole number].

    Examples
    --------
    >>> packs_to_order(needed_mass=1240.0, stock_mass=300.0, pack_mass=50.0)
    19.0
    """
    return whole_up(not_negative(needed_mass - stock_mass) / pack_mass)


def mass_of_packs(packs: Any, pack_mass: Any) -> Any:
    """Mass in a number of packs.

    Parameters
    ----------
    packs : float
        Packs [whole number].
    pack_mass : float
        Product in one pack [kg].

    Returns
    -------
    float
        Product as delivered [kg].

    Examples
    --------
    >>> mass_of_packs(packs=19.0, pack_mass=50.0)
    950.0
    """
    return packs * pack_mass


def stock_reach(stock_mass: Any, use_rate: Any) -> Any:
    """Time that a stock lasts at a steady rate of use.

    Parameters
    ----------
    stock_mass : float
        Product as delivered in stock [kg].
    use_rate : float
        Product as delivered used [kg/h].

    Returns
    -------
    float
        Time [h].

    Examples
    --------
    >>> stock_reach(stock_mass=300.0, use_rate=5.0) / 24.0
    2.5
    """
    return stock_mass / use_rate


def time_left_to_order(time_to_need: Any, lead_time: Any, spare_time: Any = 0.0) -> Any:
    """Time from today to the last day to order; below zero it is late.

    Today's date plus this is the latest order date.

    Parameters
    ----------
    time_to_need : float
        Time from today to the day of need, such as the reach of the stock [h].
    lead_time : float
        Time from the order to the product in store [h].
    spare_time : float, optional
        Time in hand, for what comes late [h].

    Returns
    -------
    float
        Time [h].

    Examples
    --------
    >>> time_left_to_order(time_to_need=30 * 24.0, lead_time=21 * 24.0, spare_time=3 * 24.0) / 24.0
    6.0
    """
    return time_to_need - lead_time - spare_time


def time_left_of_opened_pack(keeping_time: Any, time_open: Any) -> Any:
    """Time that an opened pack still keeps; below zero it is past, so titrate or do not use it.

    What an opened drum of hydrosulfite loses is not told by the date: titrate. A drum that is warm, smells or
    smokes is no stock but a danger: see the cautions for hydrosulfite.

    Parameters
    ----------
    keeping_time : float
        Time that an opened pack keeps, by its supplier [h].
    time_open : float
        Time since it was opened [h].

    Returns
    -------
    float
        Time [h].

    Examples
    --------
    >>> time_left_of_opened_pack(keeping_time=14 * 24.0, time_open=10 * 24.0) / 24.0
    4.0
    """
    return keeping_time - time_open


def cost_of_order(
    packs: Any, pack_mass: Any, price: Any, break_packs: Any, break_price: Any, order_charge: Any = 0.0
) -> Any:
    """Cost of ordering a number of packs, with a lower price for all of them from a price break on.

    Leaves out what it costs to keep more stock than is used soon.

    Parameters
    ----------
    packs : float
        Packs ordered [whole number].
    pack_mass : float
        Product in one pack [kg].
    price : float
        Price below the break [money/kg].
    break_packs : float
        Packs from which the break price holds [whole number].
    break_price : float
        Price from the break on, for all packs of the order [money/kg].
    order_charge : float, optional
        Charge for an order of any size [money].

    Returns
    -------
    float
        Cost [money].

    Examples
    --------
    Twenty drums cost less than nineteen when the break is at twenty:

    >>> [round(cost_of_order(packs, 50.0, 1.20, 20.0, 1.10, 60.0), 2) for packs in (19.0, 20.0)]
    [1200.0, 1160.0]
    """
    return packs * pack_mass * where(packs >= break_packs, break_price, price) + order_charge


def price_variance(actual_price: Any, standard_price: Any, actual_mass: Any) -> Any:
    """Part of the variance that the price makes: above zero, the product cost more than the standard.

    Parameters
    ----------
    actual_price : float
        Price paid in fact [money/kg].
    standard_price : float
        Price in the standard [money/kg].
    actual_mass : float
        Product used in fact [kg].

    Returns
    -------
    float
        Money, above zero where it cost more [money].

    Notes
    -----
    ``(p_actual - p_standard) m_actual``. With `usage_variance` it makes up the whole variance.

    Examples
    --------
    >>> round(price_variance(actual_price=1.30, standard_price=1.20, actual_mass=950.0), 2)
    95.0

    References
    ----------
    variance-exercise
    """
    return (actual_price - standard_price) * actual_mass


def usage_variance(actual_mass: Any, standard_mass: Any, standard_price: Any) -> Any:
    """Part of the variance that the use makes: above zero, more was used than the standard allows.

    Parameters
    ----------
    actual_mass : float
        Product used in fact [kg].
    standard_mass : float
        Product that the standard allows for what was made [kg].
    standard_price : float
        Price in the standard [money/kg].

    Returns
    -------
    float
        Money, above zero where more was used [money].

    Notes
    -----
    ``(m_actual - m_standard) p_standard``

    Examples
    --------
    >>> round(usage_variance(actual_mass=950.0, standard_mass=900.0, standard_price=1.20), 2)
    60.0

    References
    ----------
    variance-exercise
    """
    return (actual_mass - standard_mass) * standard_price


def strength_variance(
    actual_mass: Any, actual_strength: Any, standard_strength: Any, standard_price: Any
) -> Any:
    """Part of the variance that the strength makes: above zero, a weak batch took more product.

    What a weak batch does to the dyeing is not in it. A lower price for it is in `price_variance`.

    Parameters
    ----------
    actual_mass : float
        Product used in fact, as delivered [kg].
    actual_strength : float
        Active part of what was used [fraction].
    standard_strength : float
        Active part in the standard [fraction].
    standard_price : float
        Price in the standard, of the product as delivered [money/kg].

    Returns
    -------
    float
        Money, above zero where more was used [money].

    Notes
    -----
    ``m_actual (1 - s_actual / s_standard) p_standard``. With `usage_variance` of the mass that would hold as
    much at the strength of the standard, it makes up that of the mass as delivered.

    Examples
    --------
    >>> batch = {"actual_mass": 880.0, "actual_strength": 0.85}
    >>> round(strength_variance(**batch, standard_strength=0.88, standard_price=1.5), 2)
    45.0
    """
    return usage_variance(actual_mass, actual_mass * (actual_strength / standard_strength), standard_price)


def mix_variance(part_mass: Any, total_mass: Any, standard_share: Any, standard_price: Any) -> Any:
    """Part of the variance that the mix makes: above zero, there was more of this than its share.

    Of products in a mixture, or of what was made: then the price is the standard cost of a kilogram of it.

    Parameters
    ----------
    part_mass : float
        Of this, in fact [kg].
    total_mass : float
        Of all together, in fact [kg].
    standard_share : float
        Of this in all, in the standard or the plan [fraction].
    standard_price : float
        Price or cost in the standard [money/kg].

    Returns
    -------
    float
        Money, above zero where it cost more [money].

    Notes
    -----
    ``(m - x_standard m_total) p_standard``

    Examples
    --------
    >>> round(mix_variance(part_mass=2275.0, total_mass=6500.0, standard_share=0.3, standard_price=80.0), 2)
    26000.0

    References
    ----------
    mix-yield-chapter
    """
    return usage_variance(part_mass, standard_share * total_mass, standard_price)


def volume_variance(
    total_mass: Any, standard_total_mass: Any, standard_share: Any, standard_price: Any
) -> Any:
    """Part of the variance that the total makes, at the mix of the standard: above zero, there was more.

    Of products in a mixture, where it is also called the yield; or of what was made against the plan.

    Parameters
    ----------
    total_mass : float
        Of all together, in fact [kg].
    standard_total_mass : float
        Of all together, in the standard or the plan [kg].
    standard_share : float
        Of this in all, in the standard or the plan [fraction].
    standard_price : float
        Price or cost in the standard [money/kg].

    Returns
    -------
    float
        Money, above zero where it cost more [money].

    Notes
    -----
    ``(m_total - m_total,standard) x_standard p_standard``. With `mix_variance` it makes up `usage_variance`.

    Examples
    --------
    >>> totals = {"total_mass": 6500.0, "standard_total_mass": 6400.0}
    >>> round(volume_variance(**totals, standard_share=0.30, standard_price=80.0), 2)
    2400.0

    References
    ----------
    mix-yield-chapter
    """
    return usage_variance(standard_share * total_mass, standard_share * standard_total_mass, standard_price)
