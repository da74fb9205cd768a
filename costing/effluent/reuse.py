"""Treated water sent back to the range: how salt builds up, how far one may go, what the membrane sends away.

The range takes water of which a share is treated water that comes back; it adds salt to every litre; what
leaves it is the effluent. A membrane lets a part of the salt through into the water that comes back. Salt is
neither destroyed nor settles, so it climbs until as much leaves as comes in.
"""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import not_negative, where


def salt_in_loop(salt_added: Any, reuse_share: Any, membrane_rejection: Any, fresh_salt: Any = 0.0) -> Any:
    """Salt in the effluent of a range that takes back a share of its water, once it has settled.

    Leaves out water that evaporates or leaves with the yarn. Acid adds salt too: count its sulfate in what is
    added.

    Parameters
    ----------
    salt_added : float
        Salt that the range, and its treatment, add to each volume of water [kg/L].
    reuse_share : float
        Share of the water taken by the range that is treated water [fraction].
    membrane_rejection : float
        Share of the concentration that the membrane holds back; 0 without a membrane [fraction].
    fresh_salt : float, optional
        Salt in the fresh water [kg/L].

    Returns
    -------
    float
        Concentration in the effluent before the membrane [kg/L].

    Notes
    -----
    The range takes ``r (1 - R) C + (1 - r) C0`` and adds ``Ca``; what leaves it is C again, so
    ``C = (Ca + (1 - r) C0) / (1 - r (1 - R))``.

    Examples
    --------
    Half of the water comes back, without a membrane and with one that holds back 90 %:

    >>> [round(salt_in_loop(0.003, 0.5, rejection) * 1000, 2) for rejection in (0.0, 0.9)]
    [6.0, 3.16]
    """
    added = salt_added + (1.0 - reuse_share) * fresh_salt
    return added / (1.0 - reuse_share * (1.0 - membrane_rejection))


def largest_reuse(
    salt_ceiling: Any,
    salt_added: Any,
    membrane_rejection: Any,
    water_recovery: Any,
    fresh_salt: Any = 0.0,
) -> Any:
    """Largest share of treated water that keeps the salt in the water taken by the range below a ceiling.

    Never more than the membrane gives back. 0 where fresh water alone is at the ceiling.

    Parameters
    ----------
    salt_ceiling : float
        Salt that the water taken by the range may hold [kg/L].
    salt_added : float
        Salt that the range, and its treatment, add to each volume of water [kg/L].
    membrane_rejection : float
        Share of the concentration that the membrane holds back [fraction].
    water_recovery : float
        Share of its feed that the membrane gives as treated water [fraction].
    fresh_salt : float, optional
        Salt in the fresh water [kg/L].

    Returns
    -------
    float
        Share of the water taken by the range [fraction].

    Notes
    -----
    `salt_in_loop` less what is added, set to the ceiling F: ``r = (F - C0) / ((1 - R)(Ca + F) - C0)``, and no
    bound where that is above one or below zero.

    Examples
    --------
    >>> round(largest_reuse(0.001, 0.003, membrane_rejection=0.6, water_recovery=0.75), 3)
    0.625
    """
    room = not_negative(salt_ceiling - fresh_salt)
    brought = (1.0 - membrane_rejection) * (salt_added + salt_ceiling) - fresh_salt
    bound = where(brought > room, brought, room)
    share = room / where(bound > 0, bound, salt_ceiling)
    return where(share < water_recovery, share, water_recovery)


def concentrate_flow(flow_per_day: Any, water_recovery: Any) -> Any:
    """Concentrate that a membrane sends away.

    Parameters
    ----------
    flow_per_day : float
        Feed of the membrane [L/h].
    water_recovery : float
        Share of its feed that the membrane gives as treated water [fraction].

    Returns
    -------
    float
        Flow [L/h].

    Examples
    --------
    >>> concentrate_flow(1000.0, 0.75)
    250.0
    """
    return flow_per_day * (1.0 - water_recovery)


def concentrate_strength(effluent_concentration: Any, membrane_rejection: Any, water_recovery: Any) -> Any:
    """Concentration in what a membrane sends away.

    Leaves out what falls out as scale.

    Parameters
    ----------
    effluent_concentration : float
        Concentration in the feed of the membrane [kg/L].
    membrane_rejection : float
        Share of the concentration that the membrane holds back [fraction].
    water_recovery : float
        Share of its feed that the membrane gives as treated water [fraction].

    Returns
    -------
    float
        Concentration [kg/L].

    Notes
    -----
    ``C (1 - y (1 - R)) / (1 - y)``: what comes in less what passes, over the volume left.

    Examples
    --------
    >>> round(concentrate_strength(0.004, 1.0, 0.75) * 1000, 3)
    16.0
    """
    passed = water_recovery * (1.0 - membrane_rejection)
    return effluent_concentration * (1.0 - passed) / (1.0 - water_recovery)
