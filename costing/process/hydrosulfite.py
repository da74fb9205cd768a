"""Where hydrosulfite goes: one equation for each cause, so that the causes stay apart."""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import where
from costing.process.reduction import HYDROSULFITE_PER_INDIGO, HYDROSULFITE_PER_OXYGEN


def hydrosulfite_for_reduction(indigo_feed: Any, prereduced: Any = 0.0) -> Any:
    """Hydrosulfite (100 %) that reduces the indigo fed.

    Parameters
    ----------
    indigo_feed : float
        Indigo fed [kg/kg].
    prereduced : float, optional
        Share of the indigo that is delivered already reduced [fraction].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Notes
    -----
    One mol for one mol: 0.6638 kg per kg of indigo.

    Examples
    --------
    >>> round(hydrosulfite_for_reduction(0.022), 6)
    0.014604
    """
    return HYDROSULFITE_PER_INDIGO * indigo_feed * (1.0 - prereduced)


def hydrosulfite_for_second_reduction(indigo_feed: Any, redissolved: Any) -> Any:
    """Hydrosulfite (100 %) that reduces once more the indigo that dissolves back.

    Parameters
    ----------
    indigo_feed : float
        Indigo fed [kg/kg].
    redissolved : float
        Share of it that airs on the yarn and dissolves back in a later dip [fraction].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(hydrosulfite_for_second_reduction(0.022, 0.10), 6)
    0.00146
    """
    return HYDROSULFITE_PER_INDIGO * redissolved * indigo_feed


def hydrosulfite_behind_dips(
    dips: Any, exchange: Any, sky_destruction: Any, bath_hydrosulfite: Any
) -> list[Any]:
    """Hydrosulfite in the liquor on the yarn behind each dip, wet on wet.

    Parameters
    ----------
    dips : float
        Dip boxes in the common liquor [whole number].
    exchange : float
        Share of the liquor on the yarn that a box replaces [fraction].
    sky_destruction : float
        Share of the carried hydrosulfite that one sky destroys [fraction].
    bath_hydrosulfite : float
        Hydrosulfite in the bath [kg/L].

    Returns
    -------
    list of float
        One concentration for each dip [kg/L].

    Notes
    -----
    ``c_out,j = c_in,j + eps (c_bath - c_in,j)`` and ``c_in,j+1 = (1 - phi) c_out,j``; the yarn enters
    the first box without hydrosulfite.

    Examples
    --------
    >>> [round(c, 6) for c in hydrosulfite_behind_dips(3, 0.8, 0.9, 0.002)]
    [0.0016, 0.001632, 0.001633]
    """
    behind = []
    entering: Any = 0.0 * bath_hydrosulfite
    for _ in range(int(dips)):
        leaving = entering + exchange * (bath_hydrosulfite - entering)
        behind.append(leaving)
        entering = (1.0 - sky_destruction) * leaving
    return behind


def hydrosulfite_lost_behind_dips(
    dips: Any,
    pick_up: Any,
    pick_up_last: Any,
    exchange: Any,
    sky_destruction: Any,
    bath_hydrosulfite: Any,
) -> list[Any]:
    """Hydrosulfite (100 %) lost on the yarn behind each dip, the last one for good.

    Takes what `hydrosulfite_carried_out` takes, which is the sum of it.

    Returns
    -------
    list of float
        One amount per mass of yarn for each dip [kg/kg].

    Examples
    --------
    >>> [round(lost, 6) for lost in hydrosulfite_lost_behind_dips(3, 0.7, 0.7, 1.0, 0.9, 0.002)]
    [0.00126, 0.00126, 0.0014]
    """
    *behind, last = hydrosulfite_behind_dips(dips, exchange, sky_destruction, bath_hydrosulfite)
    return [*(sky_destruction * pick_up * carried for carried in behind), pick_up_last * last]


def hydrosulfite_carried_out(
    dips: Any,
    pick_up: Any,
    pick_up_last: Any,
    exchange: Any,
    sky_destruction: Any,
    bath_hydrosulfite: Any,
) -> Any:
    """Hydrosulfite (100 %) lost on the yarn: in every sky, and behind the last box for good.

    Parameters
    ----------
    dips : float
        Dip boxes in the common liquor [whole number].
    pick_up : float
        Liquor on the yarn behind every box but the last [L/kg].
    pick_up_last : float
        Liquor on the yarn behind the last box [L/kg].
    exchange : float
        Share of the liquor on the yarn that a box replaces [fraction].
    sky_destruction : float
        Share of the carried hydrosulfite that one sky destroys [fraction].
    bath_hydrosulfite : float
        Hydrosulfite in the bath [kg/L].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Notes
    -----
    ``sum over skies 1..N-1 of phi w c_out,j  +  w_N c_out,N``: what leaves the last box never comes back.

    Examples
    --------
    >>> round(hydrosulfite_carried_out(6, 0.7, 0.7, 1.0, 1.0, 0.002), 6)
    0.0084
    """
    *skies, last = hydrosulfite_lost_behind_dips(
        dips, pick_up, pick_up_last, exchange, sky_destruction, bath_hydrosulfite
    )
    for lost in skies:
        last = last + lost
    return last


def hydrosulfite_at_bath_surface(
    hydrosulfite_per_oxygen: Any, surface_oxygen: Any, bath_surface: Any, throughput: Any
) -> Any:
    """Hydrosulfite (100 %) destroyed by the air above the open baths.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].
    surface_oxygen : float
        Oxygen that each area of bath takes up [kg/m2/h].
    bath_surface : float
        Open surface of all boxes and tanks [m2].
    throughput : float
        Yarn through the range [kg/h].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Notes
    -----
    No published measurement of the uptake was found; it is a contested default.

    Examples
    --------
    >>> round(hydrosulfite_at_bath_surface(1.2, 0.003, 12.0, 1000.0), 6)
    0.000235
    """
    return hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * surface_oxygen * bath_surface / throughput


def hydrosulfite_in_circulation(
    hydrosulfite_per_oxygen: Any, circulation_oxygen: Any, circulation_flow: Any, throughput: Any
) -> Any:
    """Hydrosulfite (100 %) destroyed by the oxygen that weirs and returns beat into the liquor.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].
    circulation_oxygen : float
        Oxygen picked up by each volume circulated [kg/L].
    circulation_flow : float
        Liquor circulated through all boxes [L/h].
    throughput : float
        Yarn through the range [kg/h].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(hydrosulfite_in_circulation(1.2, 2e-6, 40000.0, 1000.0), 6)
    0.000522
    """
    return (
        hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * circulation_oxygen * circulation_flow / throughput
    )


def hydrosulfite_by_entrained_air(
    hydrosulfite_per_oxygen: Any, entrained_air: Any, oxygen_in_air: Any, wetted_out: Any
) -> Any:
    """Hydrosulfite (100 %) destroyed by the air that dry yarn brings into the first dip.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].
    entrained_air : float
        Air held by the dry yarn [L/kg].
    oxygen_in_air : float
        Oxygen in that air [kg/L].
    wetted_out : float
        Share of the air driven out before the first dip [fraction].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(hydrosulfite_by_entrained_air(1.2, 2.0, 0.000274, 0.0), 6)
    0.003578
    """
    return (
        hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * entrained_air * oxygen_in_air * (1.0 - wetted_out)
    )


def hydrosulfite_by_decay(decay_rate: Any, bath_volume: Any, bath_hydrosulfite: Any, throughput: Any) -> Any:
    """Hydrosulfite (100 %) that decomposes in the bath without oxygen.

    Parameters
    ----------
    decay_rate : float
        Share of what the bath holds, lost in each hour [1/h].
    bath_volume : float
        Liquor in all boxes, pipes and tanks [L].
    bath_hydrosulfite : float
        Hydrosulfite in the bath [kg/L].
    throughput : float
        Yarn through the range [kg/h].

    Returns
    -------
    float
        Hydrosulfite per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(hydrosulfite_by_decay(0.01, 10000.0, 0.002, 1000.0), 6)
    0.0002
    """
    return decay_rate * bath_volume * bath_hydrosulfite / throughput


def hydrosulfite_of_stoppage(
    stoppage_time: Any,
    hydrosulfite_per_oxygen: Any,
    surface_oxygen: Any,
    bath_surface: Any,
    circulation_oxygen: Any,
    circulation_flow: Any,
    decay_rate: Any,
    bath_volume: Any,
    bath_hydrosulfite: Any,
) -> Any:
    """Hydrosulfite (100 %) that the standing bath loses in one stoppage.

    Capped at what the bath holds; the dye that oxidises after that is not in it.

    Parameters
    ----------
    stoppage_time : float
        Length of the stoppage [h].
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].
    surface_oxygen : float
        Oxygen that each area of bath takes up [kg/m2/h].
    bath_surface : float
        Open surface of all boxes and tanks [m2].
    circulation_oxygen : float
        Oxygen picked up by each volume circulated [kg/L].
    circulation_flow : float
        Liquor still circulated; 0 with the pumps off [L/h].
    decay_rate : float
        Share of what the bath holds, lost in each hour [1/h].
    bath_volume : float
        Liquor in all boxes, pipes and tanks [L].
    bath_hydrosulfite : float
        Hydrosulfite in the bath [kg/L].

    Returns
    -------
    float
        Hydrosulfite for the lot [kg].

    Examples
    --------
    >>> round(hydrosulfite_of_stoppage(2.0, 1.2, 0.003, 12.0, 2e-6, 0.0, 0.01, 10000.0, 0.002), 4)
    0.8701
    """
    held = bath_volume * bath_hydrosulfite
    oxygen = surface_oxygen * bath_surface + circulation_oxygen * circulation_flow
    rate = hydrosulfite_per_oxygen * HYDROSULFITE_PER_OXYGEN * oxygen + decay_rate * held
    lost = stoppage_time * rate
    return where(lost < held, lost, held)
