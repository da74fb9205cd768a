"""Liquor on the yarn and in the box: pick-up, carry-over, exchange, overflow, rinsing.

One litre of dilute liquor counts as one litre of volume whatever it holds: the balances here are of
volumes, and a stock vat stronger than about 300 g/L makes that assumption poor.
"""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import not_negative


def carried_by_liquor(pick_up: Any, concentration: Any) -> Any:
    """Amount that the liquor on the yarn carries.

    Parameters
    ----------
    pick_up : float
        Liquor on the yarn behind the squeeze [L/kg].
    concentration : float
        Concentration of that liquor [kg/L].

    Returns
    -------
    float
        Amount per mass of yarn [kg/kg].

    Examples
    --------
    >>> carried_by_liquor(pick_up=0.75, concentration=0.002)
    0.0015
    """
    return pick_up * concentration


def bath_strength_for_add_on(carried: Any, pick_up: Any) -> Any:
    """Bath concentration that leaves a wanted amount on dry yarn or cloth.

    Leaves out substantive uptake and the liquor that wet yarn brings.

    Parameters
    ----------
    carried : float
        Wanted amount per mass of yarn [kg/kg].
    pick_up : float
        Liquor on the yarn behind the squeeze [L/kg].

    Returns
    -------
    float
        Concentration of the bath [kg/L].

    Examples
    --------
    >>> round(bath_strength_for_add_on(carried=0.02, pick_up=0.8), 6)
    0.025

    References
    ----------
    gate-tf-2021
    """
    return carried / pick_up


def impregnation_use(pick_up_in: Any, concentration_in: Any, pick_up_out: Any, concentration_out: Any) -> Any:
    """Amount that a box gives to the yarn that runs through it.

    Leaves out overflow and what the fibre binds.

    Parameters
    ----------
    pick_up_in : float
        Liquor on the entering yarn; 0 for dry yarn [L/kg].
    concentration_in : float
        Its concentration [kg/L].
    pick_up_out : float
        Liquor on the leaving yarn [L/kg].
    concentration_out : float
        Its concentration [kg/L].

    Returns
    -------
    float
        Amount per mass of yarn [kg/kg].

    Examples
    --------
    Caustic of 30 g/L onto wet yarn that brings clean water:

    >>> round(impregnation_use(0.6, 0.0, 0.8, 0.030), 6)
    0.024
    """
    return pick_up_out * concentration_out - pick_up_in * concentration_in


def overflow_volume(pick_up_in: Any, feed_volume: Any, pick_up_last: Any, sky_evaporation: Any) -> Any:
    """Liquor that leaves over the weir because more comes in than the yarn takes away.

    Parameters
    ----------
    pick_up_in : float
        Liquor on the entering yarn [L/kg].
    feed_volume : float
        Volume of all feeds [L/kg].
    pick_up_last : float
        Liquor on the leaving yarn [L/kg].
    sky_evaporation : float
        Water evaporated in all skies [L/kg].

    Returns
    -------
    float
        Overflow, never below zero [L/kg].

    Notes
    -----
    ``V_of = max(0, w_0 + V_feed - w_N - e)``

    Examples
    --------
    >>> round(overflow_volume(0.70, 0.30, 0.75, 0.05), 6)
    0.2
    """
    return not_negative(pick_up_in + feed_volume - pick_up_last - sky_evaporation)


def make_up_volume(pick_up_in: Any, feed_volume: Any, pick_up_last: Any, sky_evaporation: Any) -> Any:
    """Water that holds the level where the yarn takes away more than comes in.

    Parameters
    ----------
    pick_up_in : float
        Liquor on the entering yarn [L/kg].
    feed_volume : float
        Volume of all feeds [L/kg].
    pick_up_last : float
        Liquor on the leaving yarn [L/kg].
    sky_evaporation : float
        Water evaporated in all skies [L/kg].

    Returns
    -------
    float
        Make-up water, never below zero [L/kg].

    Examples
    --------
    >>> round(make_up_volume(0.55, 0.20, 0.80, 0.05), 6)
    0.1
    """
    return not_negative(pick_up_last + sky_evaporation - pick_up_in - feed_volume)


def concentration_after_box(concentration_in: Any, concentration: Any, exchange: Any) -> Any:
    """Concentration of the liquor on the yarn behind one box.

    Parameters
    ----------
    concentration_in : float
        Concentration of the liquor on the entering yarn [kg/L].
    concentration : float
        Concentration of the box [kg/L].
    exchange : float
        Share of the liquor on the yarn that the box replaces [fraction].

    Returns
    -------
    float
        Concentration of the liquor on the leaving yarn [kg/L].

    Notes
    -----
    ``c_out = c_in + eps (c_box - c_in)``

    Examples
    --------
    >>> round(concentration_after_box(0.0, 0.002, 0.8), 6)
    0.0016
    """
    return concentration_in + exchange * (concentration - concentration_in)


def residue_after_boxes(boxes: Any, exchange: Any) -> Any:
    """Share of the first liquor still on the yarn behind a row of boxes of clean water.

    This is the floor that no amount of water beats.

    Parameters
    ----------
    boxes : float
        Boxes in series [whole number].
    exchange : float
        Share of the liquor on the yarn that each box replaces [fraction].

    Returns
    -------
    float
        Residue [fraction].

    Notes
    -----
    ``(1 - eps)**n``: the limit of the rinse equations for endless water.

    Examples
    --------
    >>> round(residue_after_boxes(3, 0.55), 6)
    0.091125
    """
    return (1.0 - exchange) ** boxes


def rinse_residue_counter_current(rinse_water: Any, pick_up: Any, boxes: Any, exchange: Any) -> Any:
    """Share left on the yarn behind boxes whose water runs against the yarn.

    Clean feed to the last box; the same pick-up between all boxes. Dye that leaves the fibre slowly
    is not covered.

    Parameters
    ----------
    rinse_water : float
        Fresh water to the last box [L/kg].
    pick_up : float
        Liquor on the yarn between boxes [L/kg].
    boxes : float
        Boxes in series [whole number].
    exchange : float
        Share of the liquor on the yarn that each box replaces [fraction].

    Returns
    -------
    float
        Residue [fraction].

    Notes
    -----
    With ``lam = rinse_water / pick_up`` and ``g = 1 - eps (1 - 1/lam)`` the balance over all boxes gives
    ``R = g**n (lam - 1) / (lam - g**n)``. It is written here with ``G = lam g``, which has no singular
    point at ``lam = 1`` or ``lam = 0``. With full exchange it is the Kremser form
    ``(lam - 1) / (lam**(n+1) - 1)``.

    Examples
    --------
    >>> round(rinse_residue_counter_current(rinse_water=3.0, pick_up=0.75, boxes=3, exchange=1.0), 6)
    0.011765

    References
    ----------
    kremser-lecture, general equation
    """
    ratio = rinse_water / pick_up
    moved = ratio * (1.0 - exchange) + exchange
    stages = int(boxes)
    below = ratio**stages
    for box in range(stages):
        below = below + exchange * moved**box * ratio ** (stages - 1 - box)
    return moved**stages / below


def rinse_residue_separate_feeds(rinse_water: Any, pick_up: Any, boxes: Any, exchange: Any) -> Any:
    """Share left on the yarn behind boxes that each take an equal part of the water.

    Parameters
    ----------
    rinse_water : float
        Fresh water to all boxes together [L/kg].
    pick_up : float
        Liquor on the yarn between boxes [L/kg].
    boxes : float
        Boxes in series [whole number].
    exchange : float
        Share of the liquor on the yarn that each box replaces [fraction].

    Returns
    -------
    float
        Residue [fraction].

    Notes
    -----
    With ``l = rinse_water / (n pick_up)``: ``R = (1 - eps l / (l + eps))**n``.

    Examples
    --------
    >>> round(rinse_residue_separate_feeds(rinse_water=3.0, pick_up=0.75, boxes=3, exchange=1.0), 6)
    0.078717
    """
    ratio = rinse_water / (pick_up * boxes)
    return (1.0 - exchange * ratio / (ratio + exchange)) ** boxes


def tank_turnover_time(tank_volume: Any, flow: Any) -> Any:
    """Time in which the circulation moves the whole volume once.

    Parameters
    ----------
    tank_volume : float
        Liquor in the tank or box [L].
    flow : float
        Circulation [L/h].

    Returns
    -------
    float
        Time [h].

    Examples
    --------
    >>> tank_turnover_time(tank_volume=360.0, flow=4800.0)
    0.075
    """
    return tank_volume / flow
