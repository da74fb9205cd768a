"""Lengths and widths from warp to finished cloth, and the yarn that a metre takes."""

from __future__ import annotations

from typing import Any


def warp_length_from_cloth_length(cloth_length: Any, crimp: Any, warp_waste: Any = 0.0) -> Any:
    """Warp that a length of loom-state cloth takes.

    Parameters
    ----------
    cloth_length : float
        Length of loom-state cloth [m].
    crimp : float
        Warp crimp, on the cloth length [fraction].
    warp_waste : float, optional
        Warp lost before it is cloth, of the warp fed [fraction].

    Returns
    -------
    float
        Length of warp [m].

    Notes
    -----
    ``L_warp = L_cloth (1 + c_1) / (1 - w_1)``

    Examples
    --------
    >>> round(warp_length_from_cloth_length(cloth_length=10000.0, crimp=0.08))
    10800

    References
    ----------
    crimp-page, problem 2
    """
    return cloth_length * (1.0 + crimp) / (1.0 - warp_waste)


def cloth_length_from_warp_length(warp_length: Any, crimp: Any, warp_waste: Any = 0.0) -> Any:
    """Loom-state cloth that a length of warp makes.

    Parameters
    ----------
    warp_length : float
        Length of warp [m].
    crimp : float
        Warp crimp, on the cloth length [fraction].
    warp_waste : float, optional
        Warp lost before it is cloth, of the warp fed [fraction].

    Returns
    -------
    float
        Length of loom-state cloth [m].

    Notes
    -----
    ``L_cloth = L_warp (1 - w_1) / (1 + c_1)``. For 800 m of warp and 8 % crimp the source prints
    740.8 m; its own line gives 740.74, which is used here.

    Examples
    --------
    >>> round(cloth_length_from_warp_length(warp_length=800.0, crimp=0.08), 2)
    740.74

    References
    ----------
    crimp-page, problem 3
    """
    return warp_length * (1.0 - warp_waste) / (1.0 + crimp)


def finished_length_from_loom_state(cloth_length: Any, shrinkage_length: Any) -> Any:
    """Finished cloth that a length of loom-state cloth gives.

    Leaves out ends and seconds cut off in inspection.

    Parameters
    ----------
    cloth_length : float
        Length of loom-state cloth [m].
    shrinkage_length : float
        Loss of length in finishing, of the loom-state length [fraction].

    Returns
    -------
    float
        Length of finished cloth [m].

    Notes
    -----
    ``L_finished = L_loom (1 - s_1)``

    Examples
    --------
    >>> round(finished_length_from_loom_state(cloth_length=10000.0, shrinkage_length=0.10))
    9000

    References
    ----------
    shrinkage-page
    """
    return cloth_length * (1.0 - shrinkage_length)


def loom_state_length_from_finished(finished_length: Any, shrinkage_length: Any) -> Any:
    """Loom-state cloth that a length of finished cloth takes.

    Leaves out ends and seconds cut off in inspection.

    Parameters
    ----------
    finished_length : float
        Length of finished cloth [m].
    shrinkage_length : float
        Loss of length in finishing, of the loom-state length [fraction].

    Returns
    -------
    float
        Length of loom-state cloth [m].

    Notes
    -----
    ``L_loom = L_finished / (1 - s_1)``: a loss of 20 % asks for 25 % more, not 20 %.

    Examples
    --------
    >>> round(loom_state_length_from_finished(finished_length=9000.0, shrinkage_length=0.10))
    10000

    References
    ----------
    shrinkage-page
    """
    return finished_length / (1.0 - shrinkage_length)


def finished_width_from_loom_state(cloth_width: Any, shrinkage_width: Any) -> Any:
    """Width of the finished cloth from the width of the loom-state cloth.

    Parameters
    ----------
    cloth_width : float
        Width of the loom-state cloth [m].
    shrinkage_width : float
        Loss of width in finishing, of the loom-state width [fraction].

    Returns
    -------
    float
        Width of the finished cloth [m].

    Notes
    -----
    ``W_finished = W_loom (1 - s_2)``

    Examples
    --------
    >>> round(finished_width_from_loom_state(cloth_width=1.66, shrinkage_width=0.04), 4)
    1.5936
    """
    return cloth_width * (1.0 - shrinkage_width)


def loom_state_width_from_finished(finished_width: Any, shrinkage_width: Any) -> Any:
    """Width of the loom-state cloth from the width of the finished cloth.

    Parameters
    ----------
    finished_width : float
        Width of the finished cloth [m].
    shrinkage_width : float
        Loss of width in finishing, of the loom-state width [fraction].

    Returns
    -------
    float
        Width of the loom-state cloth [m].

    Notes
    -----
    ``W_loom = W_finished / (1 - s_2)``

    Examples
    --------
    >>> round(loom_state_width_from_finished(finished_width=1.5936, shrinkage_width=0.04), 4)
    1.66
    """
    return finished_width / (1.0 - shrinkage_width)


def warp_mass_per_metre(ends: Any, linear_density: Any, crimp: Any, warp_waste: Any) -> Any:
    """Grey warp yarn bought for one metre of loom-state cloth.

    Parameters
    ----------
    ends : float
        Ends over the full width, selvedges in [whole number].
    linear_density : float
        Mass per length of the grey warp yarn [kg/m].
    crimp : float
        Warp crimp, on the cloth length [fraction].
    warp_waste : float
        Warp lost from warping to weaving, of the warp fed [fraction].

    Returns
    -------
    float
        Mass per length of cloth [kg/m].

    Notes
    -----
    ``m_1 = N T_1 (1 + c_1) / (1 - w_1)``

    Examples
    --------
    >>> round(warp_mass_per_metre(ends=4200, linear_density=84.4e-6, crimp=0.08, warp_waste=0.02), 4)
    0.3907

    References
    ----------
    denier-page, worked problem
    """
    return ends * linear_density * (1.0 + crimp) / (1.0 - warp_waste)


def weft_mass_per_metre(picks_density: Any, reed_width: Any, linear_density: Any, weft_waste: Any) -> Any:
    """Weft yarn bought for one metre of loom-state cloth.

    Leaves out weft crimp, which the reed width already holds.

    Parameters
    ----------
    picks_density : float
        Picks per length of loom-state cloth [1/m].
    reed_width : float
        Width of the warp in the reed, which is the length of one pick [m].
    linear_density : float
        Mass per length of the weft yarn [kg/m].
    weft_waste : float
        Weft lost in weaving, of the weft fed [fraction].

    Returns
    -------
    float
        Mass per length of cloth [kg/m].

    Notes
    -----
    ``m_2 = P W_reed T_2 / (1 - w_2)``

    Examples
    --------
    >>> round(weft_mass_per_metre(1650.0, reed_width=1.71, linear_density=84.4e-6, weft_waste=0.03), 4)
    0.2455

    References
    ----------
    brooks-cotton-manufacturing, "Weight of a Piece"
    """
    return picks_density * reed_width * linear_density / (1.0 - weft_waste)


def warp_mass_per_finished_metre(warp_mass_per_metre: Any, shrinkage_length: Any) -> Any:
    """Grey warp yarn bought for one metre of finished cloth.

    Parameters
    ----------
    warp_mass_per_metre : float
        The same per metre of loom-state cloth [kg/m].
    shrinkage_length : float
        Loss of length in finishing, of the loom-state length [fraction].

    Returns
    -------
    float
        Mass per length of finished cloth [kg/m].

    Notes
    -----
    ``m_f = m / (1 - s_1)``

    Examples
    --------
    >>> round(warp_mass_per_finished_metre(0.3907, shrinkage_length=0.10), 4)
    0.4341
    """
    return warp_mass_per_metre / (1.0 - shrinkage_length)


def weft_mass_per_finished_metre(weft_mass_per_metre: Any, shrinkage_length: Any) -> Any:
    """Weft yarn bought for one metre of finished cloth.

    Parameters
    ----------
    weft_mass_per_metre : float
        The same per metre of loom-state cloth [kg/m].
    shrinkage_length : float
        Loss of length in finishing, of the loom-state length [fraction].

    Returns
    -------
    float
        Mass per length of finished cloth [kg/m].

    Notes
    -----
    ``m_f = m / (1 - s_1)``

    Examples
    --------
    >>> round(weft_mass_per_finished_metre(0.2455, shrinkage_length=0.10), 4)
    0.2728
    """
    return weft_mass_per_metre / (1.0 - shrinkage_length)
