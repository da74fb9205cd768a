"""Sets on the range: how much yarn an hour, how long, how many metres."""

from __future__ import annotations

from typing import Any

from costing.construction.whole_numbers import whole_up


def throughput(ends: Any, linear_density: Any, speed: Any, stretch: Any = 0.0) -> Any:
    """Grey yarn through the range while it runs.

    Parameters
    ----------
    ends : float
        Ends on the range, of all sets that run side by side [whole number].
    linear_density : float
        Mass per length of the grey yarn as fed [kg/m].
    speed : float
        Speed at the delivery of the range [m/h].
    stretch : float, optional
        Gain of length on the range, of the length fed [fraction].

    Returns
    -------
    float
        Grey yarn per hour [kg/h].

    Notes
    -----
    ``M = N T v / (1 + s)``: a delivered metre holds the yarn of less than a metre fed.

    Examples
    --------
    >>> round(throughput(ends=4200, linear_density=84e-6, speed=25.0 * 60.0, stretch=0.02), 1)
    518.8

    References
    ----------
    sizing-worked-problems, problem A
    """
    return ends * linear_density * speed / (1.0 + stretch)


def manned_throughput(throughput: Any, efficiency: Any) -> Any:
    """Grey yarn through the range, per hour that it is manned.

    Parameters
    ----------
    throughput : float
        Grey yarn through the range while it runs [kg/h].
    efficiency : float
        Running time, of the time manned [fraction].

    Returns
    -------
    float
        Grey yarn per hour manned [kg/h].

    Notes
    -----
    ``M_m = M eta``

    Examples
    --------
    >>> round(manned_throughput(throughput=518.8, efficiency=0.85), 1)
    441.0

    References
    ----------
    sizing-worked-problems, problem A
    """
    return throughput * efficiency


def run_time(run_length: Any, speed: Any, efficiency: Any) -> Any:
    """Time that the range is manned for a run.

    Leaves out tying in, filling and cleaning.

    Parameters
    ----------
    run_length : float
        Metres that the range delivers [m].
    speed : float
        Speed at the delivery of the range [m/h].
    efficiency : float
        Running time, of the time manned [fraction].

    Returns
    -------
    float
        Time [h].

    Notes
    -----
    ``t = L / (v eta)``

    Examples
    --------
    >>> round(run_time(run_length=15300.0, speed=25.0 * 60.0, efficiency=0.85), 6)
    12.0

    References
    ----------
    sizing-worked-problems, problem A
    """
    return run_length / (speed * efficiency)


def length_after_stretch(warp_length: Any, stretch: Any) -> Any:
    """Length of a warp behind one zone that stretches it; several zones follow one another.

    Parameters
    ----------
    warp_length : float
        Length fed [m].
    stretch : float
        Gain of length, of the length fed [fraction].

    Returns
    -------
    float
        Length delivered [m].

    Notes
    -----
    ``L_out = L_in (1 + s)``; zones multiply: 3, 2 and 1 % make 6.11 %, not 6 %.

    Examples
    --------
    >>> round(length_after_stretch(warp_length=15000.0, stretch=0.02))
    15300

    References
    ----------
    gate-tf-2010, question 34
    """
    return warp_length * (1.0 + stretch)


def length_before_stretch(warp_length: Any, stretch: Any) -> Any:
    """Length that must be fed for a length delivered.

    Parameters
    ----------
    warp_length : float
        Length delivered [m].
    stretch : float
        Gain of length, of the length fed [fraction].

    Returns
    -------
    float
        Length fed [m].

    Notes
    -----
    ``L_in = L_out / (1 + s)``

    Examples
    --------
    >>> round(length_before_stretch(warp_length=15300.0, stretch=0.02))
    15000

    References
    ----------
    gate-tf-2010, question 34
    """
    return warp_length / (1.0 + stretch)


def linear_density_after_stretch(linear_density: Any, stretch: Any) -> Any:
    """Linear density of a yarn that was stretched.

    Leaves out what dyeing adds and scouring takes away.

    Parameters
    ----------
    linear_density : float
        Mass per length as fed [kg/m].
    stretch : float
        Gain of length, of the length fed [fraction].

    Returns
    -------
    float
        Mass per length as delivered [kg/m].

    Notes
    -----
    ``T_out = T_in / (1 + s)``

    Examples
    --------
    >>> round(linear_density_after_stretch(linear_density=84e-6, stretch=0.02) * 1e6, 2)
    82.35
    """
    return linear_density / (1.0 + stretch)


def number_of_sets(warp_length: Any, set_length_max: Any) -> Any:
    """Sets that a length of warp needs.

    Parameters
    ----------
    warp_length : float
        Saleable warp [m].
    set_length_max : float
        Longest set that is warped, saleable metres [m].

    Returns
    -------
    float
        Sets [whole number].

    Notes
    -----
    ``n = ceil(L / L_max)``

    Examples
    --------
    >>> number_of_sets(warp_length=45000.0, set_length_max=20000.0)
    3.0
    """
    return whole_up(warp_length / set_length_max)


def range_run_length(warp_length: Any, number_of_sets: Any, leader_length: Any, off_shade_length: Any) -> Any:
    """Metres that the range runs for an order, one set after the other.

    Leaves out sets that run side by side: divide by them.

    Parameters
    ----------
    warp_length : float
        Saleable warp of the order [m].
    number_of_sets : float
        Sets that it is run in [whole number].
    leader_length : float
        Leader and tail of each set [m].
    off_shade_length : float
        Off-shade metres of each set [m].

    Returns
    -------
    float
        Metres run [m].

    Notes
    -----
    ``L_run = L + n (l_leader + l_off)``

    Examples
    --------
    >>> range_run_length(45000.0, number_of_sets=3, leader_length=60.0, off_shade_length=120.0)
    45540.0
    """
    return warp_length + number_of_sets * (leader_length + off_shade_length)
