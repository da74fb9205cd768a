"""Ropes and section beams of one warp: how many, how many ends, how heavy."""

from __future__ import annotations

from typing import Any, NamedTuple

from costing.construction.whole_numbers import whole_down, whole_up
from costing.quantities import InputError, check


def ropes_for_ends(ends: Any, ends_per_rope: Any) -> Any:
    """Ropes that a number of ends makes.

    Parameters
    ----------
    ends : float
        Ends of the warp [whole number].
    ends_per_rope : float
        Most ends in one rope [number].

    Returns
    -------
    float
        Ropes [whole number].

    Notes
    -----
    ``n_r = ceil(N / e_r)``

    Examples
    --------
    >>> ropes_for_ends(ends=4200, ends_per_rope=350), ropes_for_ends(ends=4201, ends_per_rope=350)
    (12.0, 13.0)
    """
    return whole_up(ends / ends_per_rope)


def ends_per_rope(ends: Any, ropes: Any) -> Any:
    """Ends in each rope, on average.

    Leaves out that ropes of one set may differ by an end or two.

    Parameters
    ----------
    ends : float
        Ends of the warp [whole number].
    ropes : float
        Ropes of the warp [whole number].

    Returns
    -------
    float
        Ends in one rope [number].

    Notes
    -----
    ``e_r = N / n_r``

    Examples
    --------
    >>> ends_per_rope(ends=4157, ropes=12)
    346.4166666666667
    """
    return ends / ropes


def ends_from_ropes(ropes: Any, ends_per_rope: Any) -> Any:
    """Ends in a number of equal ropes, or on the section beams made from them.

    Parameters
    ----------
    ropes : float
        Ropes or section beams [whole number].
    ends_per_rope : float
        Ends in each [number].

    Returns
    -------
    float
        Ends [whole number].

    Notes
    -----
    ``N = n_r e_r``

    Examples
    --------
    >>> ends_from_ropes(ropes=12, ends_per_rope=350)
    4200
    """
    return ropes * ends_per_rope


def rope_mass_per_metre(ends_per_rope: Any, linear_density: Any) -> Any:
    """Mass of one metre of one rope.

    Parameters
    ----------
    ends_per_rope : float
        Ends in the rope [number].
    linear_density : float
        Mass per length of the yarn [kg/m].

    Returns
    -------
    float
        Mass per length [kg/m].

    Notes
    -----
    ``m_r = e_r T``

    Examples
    --------
    >>> round(rope_mass_per_metre(ends_per_rope=350, linear_density=84e-6), 6)
    0.0294
    """
    return ends_per_rope * linear_density


def warp_sheet_mass_per_metre(ends: Any, linear_density: Any) -> Any:
    """Mass of one metre of the whole warp, as ropes or as a sheet.

    Parameters
    ----------
    ends : float
        Ends of the warp [whole number].
    linear_density : float
        Mass per length of the yarn [kg/m].

    Returns
    -------
    float
        Mass per length [kg/m].

    Notes
    -----
    ``m = N T``

    Examples
    --------
    >>> round(warp_sheet_mass_per_metre(ends=4200, linear_density=84e-6), 6)
    0.3528
    """
    return ends * linear_density


def set_mass(ends: Any, linear_density: Any, set_length: Any) -> Any:
    """Grey yarn in one set.

    Parameters
    ----------
    ends : float
        Ends of the set [whole number].
    linear_density : float
        Mass per length of the grey yarn [kg/m].
    set_length : float
        Length of the set, before it is stretched [m].

    Returns
    -------
    float
        Mass [kg].

    Notes
    -----
    ``M = N T L``

    Examples
    --------
    >>> round(set_mass(ends=4200, linear_density=84e-6, set_length=15000.0))
    5292

    References
    ----------
    brooks-cotton-manufacturing, "Weight of a Piece"
    """
    return ends * linear_density * set_length


def sets_side_by_side(rope_places: Any, ropes: Any) -> Any:
    """Sets that the range can run at once; 0 where one set has more ropes than the range has places.

    Parameters
    ----------
    rope_places : float
        Ropes that the range can run side by side [whole number].
    ropes : float
        Ropes of one set [whole number].

    Returns
    -------
    float
        Sets [whole number].

    Notes
    -----
    ``floor(R / n_r)``

    Examples
    --------
    >>> sets_side_by_side(rope_places=36, ropes=12), sets_side_by_side(rope_places=24, ropes=13)
    (3.0, 1.0)
    """
    return whole_down(rope_places / ropes)


def section_beams(ends: Any, creel_capacity: Any) -> Any:
    """Section beams that a warp needs.

    Parameters
    ----------
    ends : float
        Ends of the warp [whole number].
    creel_capacity : float
        Most ends on one section beam [whole number].

    Returns
    -------
    float
        Section beams [whole number].

    Notes
    -----
    ``n_b = ceil(N / K)``

    Examples
    --------
    >>> section_beams(ends=4320, creel_capacity=618)
    7.0

    References
    ----------
    warping-plan-page, example 1
    """
    return whole_up(ends / creel_capacity)


def subsets_of_beams(section_beams: Any, beams_per_subset: Any) -> Any:
    """Subsets that the section beams make; a last one with fewer beams counts as one.

    Parameters
    ----------
    section_beams : float
        Section beams of the set [whole number].
    beams_per_subset : float
        Section beams brought together into one warp [whole number].

    Returns
    -------
    float
        Subsets [whole number].

    Notes
    -----
    ``ceil(n_b / b)``

    Examples
    --------
    >>> subsets_of_beams(section_beams=30, beams_per_subset=15)
    2.0
    """
    return whole_up(section_beams / beams_per_subset)


class BeamPlan(NamedTuple):
    """How a dyed set of ropes is opened onto section beams and brought together again.

    Attributes
    ----------
    ends : float
        Ends of the whole set.
    section_beams, subsets, beams_per_subset : int
        Beams in all, groups of beams, and beams in each group.
    ends_per_subset : float
        Ends of each warp that a subset makes.
    """

    ends: float
    section_beams: int
    subsets: int
    beams_per_subset: int
    ends_per_subset: float


def beam_plan(ropes: float, ends_per_rope: float, subsets: float = 1) -> BeamPlan:
    """Open each rope onto one section beam and share the beams out in equal subsets.

    Parameters
    ----------
    ropes : float
        Ropes of the set [whole number].
    ends_per_rope : float
        Ends in each rope [number].
    subsets : float, optional
        Warps that the set is to make [whole number].

    Returns
    -------
    BeamPlan
        Beams and ends, in all and in each subset.

    Raises
    ------
    InputError
        A value that is refused, or beams that cannot be shared out equally.

    Notes
    -----
    One section beam for each rope and equal subsets are common practice, no source.

    Examples
    --------
    >>> beam_plan(ropes=30, ends_per_rope=350, subsets=2)
    BeamPlan(ends=10500, section_beams=30, subsets=2, beams_per_subset=15, ends_per_subset=5250)
    """
    beams = int(check("ropes", ropes))
    check("ends_per_rope", ends_per_rope)
    groups = int(check("subsets", subsets))
    if beams % groups:
        accepted = ", ".join(str(number) for number in range(1, beams + 1) if beams % number == 0)
        raise InputError(
            "",
            f"subsets is {groups}; {beams} section beams, one for each rope, share out equally in {accepted}",
        )
    beams_each = beams // groups
    return BeamPlan(beams * ends_per_rope, beams, groups, beams_each, beams_each * ends_per_rope)
