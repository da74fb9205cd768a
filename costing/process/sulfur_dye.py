"""Sulfur dye: dye and reductant by their balances, per kilogram of grey yarn.

Reactions (substances in full, so that every element balances)::

    from hydrosulfide   NaHS + NaOH      -> Na2S + H2O
    glucose, at least   C6H12O6 + [O]    -> C6H12O7, one acid that one NaOH neutralises

What a dye takes of a reductant is not known from a formula: ask its supplier. Acid on sulfide, or on a sulfur
dye liquor, sets hydrogen sulfide free, which kills and paralyses the sense of smell: see the cautions for
sulfide and for what must never meet.
"""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import molar_mass

SULFIDE = molar_mass("sodium_sulfide")
HYDROSULFIDE = molar_mass("sodium_hydrosulfide")
CAUSTIC = molar_mass("sodium_hydroxide")
GLUCOSE = molar_mass("glucose")

HYDROSULFIDE_PER_SULFIDE = HYDROSULFIDE / SULFIDE
CAUSTIC_PER_HYDROSULFIDE = CAUSTIC / HYDROSULFIDE
CAUSTIC_PER_GLUCOSE = CAUSTIC / GLUCOSE  # kg per kg at one acid for one glucose


def dye_feed_for_depth(dye_on_yarn: Any, dye_fixation: Any) -> Any:
    """Dye to feed for a depth of shade, from the share that stays on the yarn.

    Leaves out the overflow and the bath that is dumped.

    Parameters
    ----------
    dye_on_yarn : float
        Dye on the finished yarn, of the grey yarn [fraction].
    dye_fixation : float
        Share of the dye fed that stays on the finished yarn [fraction].

    Returns
    -------
    float
        Dye per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(dye_feed_for_depth(dye_on_yarn=0.07, dye_fixation=0.65), 4)
    0.1077
    """
    return dye_on_yarn / dye_fixation


def dye_feed_of_box(
    pick_up_in: Any,
    concentration_in: Any,
    pick_up_out: Any,
    box_dye: Any,
    extra_uptake: Any = 0.0,
    overflow: Any = 0.0,
) -> Any:
    """Dye that one box must be fed, from pick-up, bath strength, extra uptake and overflow.

    For a box of its own, whose liquor replaces all that the yarn brings; not for boxes with a common liquor.

    Parameters
    ----------
    pick_up_in : float
        Liquor on the entering yarn [L/kg].
    concentration_in : float
        Dye in that liquor [kg/L].
    pick_up_out : float
        Liquor on the leaving yarn [L/kg].
    box_dye : float
        Dye in the bath [kg/L].
    extra_uptake : float, optional
        Dye that the fibre draws beyond the liquor it carries, of what that liquor carries [fraction].
    overflow : float, optional
        Liquor that leaves over the weir [L/kg].

    Returns
    -------
    float
        Dye per mass of yarn; below zero where the yarn brings more than it takes [kg/kg].

    Notes
    -----
    ``F = w_out c (1 + k) + V_of c - w_in c_in``

    Examples
    --------
    >>> round(dye_feed_of_box(0.60, 0.0, 0.75, box_dye=0.120, extra_uptake=0.2), 4)
    0.108
    """
    return pick_up_out * box_dye * (1.0 + extra_uptake) + overflow * box_dye - pick_up_in * concentration_in


def dye_bath_strength(dye_feed: Any, pick_up_out: Any, extra_uptake: Any = 0.0) -> Any:
    """Dye in the bath that puts a wanted amount on yarn that brings no dye.

    Leaves out the overflow.

    Parameters
    ----------
    dye_feed : float
        Wanted dye per mass of yarn [kg/kg].
    pick_up_out : float
        Liquor on the leaving yarn [L/kg].
    extra_uptake : float, optional
        Dye that the fibre draws beyond the liquor it carries, of what that liquor carries [fraction].

    Returns
    -------
    float
        Dye in the bath [kg/L].

    Examples
    --------
    >>> round(dye_bath_strength(dye_feed=0.108, pick_up_out=0.75, extra_uptake=0.2), 4)
    0.12
    """
    return dye_feed / (pick_up_out * (1.0 + extra_uptake))


def sulfide_for_dye(dye_feed: Any, sulfide_ratio: Any) -> Any:
    """Sodium sulfide (100 %) that reduces the dye; never near acid (hydrogen sulfide).

    Parameters
    ----------
    dye_feed : float
        Dye fed [kg/kg].
    sulfide_ratio : float
        Sodium sulfide (100 %) for each mass of dye, from the supplier of the dye [kg/kg].

    Returns
    -------
    float
        Sodium sulfide (100 %) per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfide_for_dye(dye_feed=0.09, sulfide_ratio=0.6), 4)
    0.054
    """
    return dye_feed * sulfide_ratio


def sulfide_flakes_for_dye(dye_feed: Any, sulfide_ratio: Any, strength: Any = 0.60) -> Any:
    """Sodium sulfide flakes that reduce the dye; never near acid (hydrogen sulfide).

    Parameters
    ----------
    dye_feed : float
        Dye fed [kg/kg].
    sulfide_ratio : float
        Sodium sulfide (100 %) for each mass of dye, from the supplier of the dye [kg/kg].
    strength : float, optional
        Sodium sulfide in the flakes [fraction].

    Returns
    -------
    float
        Flakes as delivered per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfide_flakes_for_dye(dye_feed=0.09, sulfide_ratio=0.6), 4)
    0.09

    References
    ----------
    sulfide-sds, 60 % or more
    """
    return dye_feed * sulfide_ratio / strength


def hydrosulfide_for_sulfide(sulfide_use: Any) -> Any:
    """Sodium hydrosulfide (100 %) that, with its caustic, stands for sodium sulfide (100 %).

    Parameters
    ----------
    sulfide_use : float
        Sodium sulfide (100 %) to be replaced [kg/kg].

    Returns
    -------
    float
        Sodium hydrosulfide (100 %) per mass of yarn [kg/kg].

    Notes
    -----
    One mol for one mol: 0.7183 kg per kg. The caustic is `caustic_for_hydrosulfide`.

    Examples
    --------
    >>> round(hydrosulfide_for_sulfide(0.054), 5)
    0.03879
    """
    return HYDROSULFIDE_PER_SULFIDE * sulfide_use


def sulfide_from_hydrosulfide(hydrosulfide_use: Any) -> Any:
    """Sodium sulfide (100 %) that sodium hydrosulfide (100 %) gives with its caustic.

    Parameters
    ----------
    hydrosulfide_use : float
        Sodium hydrosulfide (100 %) [kg/kg].

    Returns
    -------
    float
        Sodium sulfide (100 %) per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfide_from_hydrosulfide(0.04), 5)
    0.05569
    """
    return hydrosulfide_use / HYDROSULFIDE_PER_SULFIDE


def caustic_for_hydrosulfide(hydrosulfide_use: Any) -> Any:
    """Caustic (100 %) that turns sodium hydrosulfide (100 %) into sodium sulfide.

    Parameters
    ----------
    hydrosulfide_use : float
        Sodium hydrosulfide (100 %) [kg/kg].

    Returns
    -------
    float
        Caustic (NaOH 100 %) per mass of yarn [kg/kg].

    Notes
    -----
    One mol for one mol: 0.7135 kg per kg.

    Examples
    --------
    >>> round(caustic_for_hydrosulfide(0.04), 5)
    0.02854
    """
    return CAUSTIC_PER_HYDROSULFIDE * hydrosulfide_use


def glucose_feed_of_bath(pick_up_out: Any, bath_glucose: Any, glucose_taken: Any, overflow: Any = 0.0) -> Any:
    """Glucose (100 %) that a bath must be fed where glucose and caustic reduce the dye.

    Parameters
    ----------
    pick_up_out : float
        Liquor on the leaving yarn [L/kg].
    bath_glucose : float
        Glucose (100 %) in the bath [kg/L].
    glucose_taken : float
        Glucose (100 %) that the reduction uses up, from the supplier of the dye or own trials [kg/kg].
    overflow : float, optional
        Liquor that leaves over the weir [L/kg].

    Returns
    -------
    float
        Glucose (100 %) per mass of yarn [kg/kg].

    Notes
    -----
    ``F = (w_out + V_of) c + taken``. Glucose bought with its water of crystallisation is 90.9 % strong.

    Examples
    --------
    >>> round(glucose_feed_of_bath(pick_up_out=0.75, bath_glucose=0.030, glucose_taken=0.010), 4)
    0.0325
    """
    return (pick_up_out + overflow) * bath_glucose + glucose_taken


def caustic_feed_with_glucose(
    pick_up_out: Any,
    bath_caustic: Any,
    glucose_taken: Any,
    acids_per_glucose: Any = 1.0,
    overflow: Any = 0.0,
    caustic_carried_in: Any = 0.0,
) -> Any:
    """Caustic (100 %) that a bath must be fed where glucose and caustic reduce the dye.

    Leaves out the carbon dioxide that the liquor takes from the air, and the caustic that the fibre binds.

    Parameters
    ----------
    pick_up_out : float
        Liquor on the leaving yarn [L/kg].
    bath_caustic : float
        Free caustic (NaOH 100 %) in the bath [kg/L].
    glucose_taken : float
        Glucose (100 %) that the reduction uses up [kg/kg].
    acids_per_glucose : float, optional
        Acid groups that one glucose turns into; 1 is the least, hot caustic makes more [mol/mol].
    overflow : float, optional
        Liquor that leaves over the weir [L/kg].
    caustic_carried_in : float, optional
        Caustic (NaOH 100 %) that the yarn brings [kg/kg].

    Returns
    -------
    float
        Caustic (NaOH 100 %) per mass of yarn [kg/kg].

    Notes
    -----
    ``F = (w_out + V_of) c + 0.2220 n taken - brought``

    Examples
    --------
    >>> round(caustic_feed_with_glucose(pick_up_out=0.75, bath_caustic=0.025, glucose_taken=0.010), 5)
    0.02097
    """
    neutralised = CAUSTIC_PER_GLUCOSE * acids_per_glucose * glucose_taken
    return (pick_up_out + overflow) * bath_caustic + neutralised - caustic_carried_in
