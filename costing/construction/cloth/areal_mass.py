"""Mass per area of the loom-state and of the finished cloth."""

from __future__ import annotations

from typing import Any


def warp_areal_mass(ends_density: Any, linear_density: Any, crimp: Any) -> Any:
    """Unsized warp in the loom-state cloth, per area.

    Leaves out size and selvedges.

    Parameters
    ----------
    ends_density : float
        Ends per length of cloth width; ends counted in the reed must first be taken per cloth width [1/m].
    linear_density : float
        Mass per length of the warp yarn [kg/m].
    crimp : float
        Warp crimp, on the cloth length [fraction].

    Returns
    -------
    float
        Mass per area [kg/m2].

    Notes
    -----
    ``g_1 = E T_1 (1 + c_1)``

    Examples
    --------
    >>> round(warp_areal_mass(ends_density=2480.0, linear_density=84.4e-6, crimp=0.08), 4)
    0.2261

    References
    ----------
    gate-tf-2009, question 37
    """
    return ends_density * linear_density * (1.0 + crimp)


def weft_areal_mass(picks_density: Any, linear_density: Any, weft_crimp: Any) -> Any:
    """Weft in the loom-state cloth, per area.

    Parameters
    ----------
    picks_density : float
        Picks per length of cloth [1/m].
    linear_density : float
        Mass per length of the weft yarn [kg/m].
    weft_crimp : float
        Weft crimp, of the cloth width [fraction].

    Returns
    -------
    float
        Mass per area [kg/m2].

    Notes
    -----
    ``g_2 = P T_2 (1 + c_2)``

    Examples
    --------
    >>> round(weft_areal_mass(picks_density=1650.0, linear_density=84.4e-6, weft_crimp=0.03), 4)
    0.1434

    References
    ----------
    gate-tf-2009, question 37
    """
    return picks_density * linear_density * (1.0 + weft_crimp)


def loom_state_areal_mass(warp_areal_mass: Any, weft_areal_mass: Any, size_add_on: Any) -> Any:
    """Loom-state cloth with its size, per area.

    Leaves out size that dusts off in the loom.

    Parameters
    ----------
    warp_areal_mass : float
        Unsized warp per area [kg/m2].
    weft_areal_mass : float
        Weft per area [kg/m2].
    size_add_on : float
        Size solids on the warp, of the unsized mass [fraction].

    Returns
    -------
    float
        Mass per area [kg/m2].

    Notes
    -----
    ``G = g_1 (1 + a) + g_2``

    Examples
    --------
    >>> round(loom_state_areal_mass(0.226, 0.143, size_add_on=0.09), 4)
    0.3893

    References
    ----------
    brooks-cotton-manufacturing, "Weight of a Piece"
    """
    return warp_areal_mass * (1.0 + size_add_on) + weft_areal_mass


def finished_areal_mass(
    loom_state_areal_mass: Any,
    desize_loss: Any,
    finishing_loss: Any,
    finishing_add_on: Any,
    shrinkage_length: Any,
    shrinkage_width: Any,
) -> Any:
    """Finished cloth, per area.

    Parameters
    ----------
    loom_state_areal_mass : float
        Loom-state cloth with its size [kg/m2].
    desize_loss : float
        Mass lost in desizing, of the loom-state mass [fraction].
    finishing_loss : float
        Other mass lost in finishing, of the loom-state mass [fraction].
    finishing_add_on : float
        Mass added in finishing, of the loom-state mass [fraction].
    shrinkage_length : float
        Loss of length, of the loom-state length [fraction].
    shrinkage_width : float
        Loss of width, of the loom-state width [fraction].

    Returns
    -------
    float
        Mass per area [kg/m2].

    Notes
    -----
    ``G_f = G (1 - d - l + f) / ((1 - s_1)(1 - s_2))``

    Examples
    --------
    >>> round(finished_areal_mass(0.389, 0.05, 0.0, 0.02, 0.10, 0.04), 4)
    0.4367
    """
    kept = 1.0 - desize_loss - finishing_loss + finishing_add_on
    return loom_state_areal_mass * kept / ((1.0 - shrinkage_length) * (1.0 - shrinkage_width))


def areal_mass_in_ounces(areal_mass: Any) -> Any:
    """Mass per area in ounces per square yard.

    Parameters
    ----------
    areal_mass : float
        Mass per area, usually typed in g/m2 [kg/m2].

    Returns
    -------
    float
        Mass per area, usually shown in oz/yd2 [kg/m2].

    Notes
    -----
    Only the unit changes: 1 oz/yd2 = 33.90575 g/m2.

    Examples
    --------
    >>> areal_mass_in_ounces(0.4)
    0.4

    References
    ----------
    yard-pound-1959
    """
    return areal_mass


def areal_mass_from_ounces(areal_mass_ounces: Any) -> Any:
    """Mass per area from ounces per square yard.

    Parameters
    ----------
    areal_mass_ounces : float
        Mass per area, usually typed in oz/yd2 [kg/m2].

    Returns
    -------
    float
        Mass per area, usually shown in g/m2 [kg/m2].

    Notes
    -----
    Only the unit changes: 1 oz/yd2 = 33.90575 g/m2.

    Examples
    --------
    >>> areal_mass_from_ounces(0.4)
    0.4

    References
    ----------
    yard-pound-1959
    """
    return areal_mass_ounces
