"""Caustic of the dye bath, and the salt that builds up in it."""

from __future__ import annotations

from typing import Any

from costing.process.reduction import (
    CAUSTIC_PER_CARBON_DIOXIDE,
    CAUSTIC_PER_HYDROSULFITE,
    HYDROSULFITE,
    SULFATE,
    SULFITE,
)


def caustic_feed_of_bath(
    hydrosulfite_use: Any,
    hydrosulfite_overflow: Any,
    hydrosulfite_decayed: Any,
    pick_up_last: Any,
    overflow: Any,
    bath_caustic: Any,
    carbon_dioxide: Any,
    caustic_carried_in: Any,
) -> Any:
    """Caustic (NaOH 100 %) that the bath must be fed: a sodium balance, free of any pH.

    Parameters
    ----------
    hydrosulfite_use : float
        Hydrosulfite fed in all [kg/kg].
    hydrosulfite_overflow : float
        Part of it that leaves the bath unchanged: over the weir, or with the yarn into its last sky [kg/kg].
    hydrosulfite_decayed : float
        Part of it that decomposes without oxygen [kg/kg].
    pick_up_last : float
        Liquor on the yarn behind the last box [L/kg].
    overflow : float
        Liquor that leaves over the weir [L/kg].
    bath_caustic : float
        Free caustic in the bath [kg/L].
    carbon_dioxide : float
        Carbon dioxide taken up in the skies between the dips [kg/kg].
    caustic_carried_in : float
        Caustic that the yarn brings from the boxes before [kg/kg].

    Returns
    -------
    float
        Caustic per mass of yarn; below zero where more comes in than is used [kg/kg].

    Notes
    -----
    Hydrosulfite takes 2 NaOH whichever way it is oxidised, and 1 NaOH where it decomposes without
    oxygen: ``F_A = a (F_H - H_of - H_dec) + a/2 H_dec + (w_N + V_of) c_A + b CO2 - A_in``.

    Examples
    --------
    >>> round(caustic_feed_of_bath(0.0246, 0.0004, 0.0, 0.75, 0.2, 0.0015, 0.0003, 0.0), 6)
    0.01309
    """
    oxidised = hydrosulfite_use - hydrosulfite_overflow - hydrosulfite_decayed
    return (
        CAUSTIC_PER_HYDROSULFITE * oxidised
        + 0.5 * CAUSTIC_PER_HYDROSULFITE * hydrosulfite_decayed
        + (pick_up_last + overflow) * bath_caustic
        + CAUSTIC_PER_CARBON_DIOXIDE * carbon_dioxide
        - caustic_carried_in
    )


def share_ending_half_as_sulfate(hydrosulfite_per_oxygen: Any) -> Any:
    """Share of the destroyed hydrosulfite that goes by route A.

    Parameters
    ----------
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].

    Returns
    -------
    float
        Share [fraction].

    Notes
    -----
    Route A takes one oxygen for one hydrosulfite, route B for two: ``x = 2/nu - 1``.

    Examples
    --------
    >>> round(share_ending_half_as_sulfate(1.2), 6)
    0.666667
    """
    return 2.0 / hydrosulfite_per_oxygen - 1.0


def sulfite_from_hydrosulfite(
    hydrosulfite_reduced: Any, hydrosulfite_oxidised: Any, hydrosulfite_per_oxygen: Any
) -> Any:
    """Sodium sulfite formed by vatting and by oxygen.

    Leaves out the slow oxidation of sulfite to sulfate and the decomposition without oxygen.

    Parameters
    ----------
    hydrosulfite_reduced : float
        Hydrosulfite that reduces dye [kg/kg].
    hydrosulfite_oxidised : float
        Hydrosulfite that oxygen destroys [kg/kg].
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].

    Returns
    -------
    float
        Sodium sulfite per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfite_from_hydrosulfite(0.0146, 0.0090, 1.2), 6)
    0.029827
    """
    share = share_ending_half_as_sulfate(hydrosulfite_per_oxygen)
    return SULFITE / HYDROSULFITE * (2.0 * hydrosulfite_reduced + (2.0 - share) * hydrosulfite_oxidised)


def sulfate_from_hydrosulfite(hydrosulfite_oxidised: Any, hydrosulfite_per_oxygen: Any) -> Any:
    """Sodium sulfate formed by oxygen.

    Parameters
    ----------
    hydrosulfite_oxidised : float
        Hydrosulfite that oxygen destroys [kg/kg].
    hydrosulfite_per_oxygen : float
        Hydrosulfite that one oxygen destroys [mol/mol].

    Returns
    -------
    float
        Sodium sulfate per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfate_from_hydrosulfite(0.0090, 1.2), 6)
    0.004895
    """
    share = share_ending_half_as_sulfate(hydrosulfite_per_oxygen)
    return SULFATE / HYDROSULFITE * share * hydrosulfite_oxidised


def salt_in_bath(sulfite_formed: Any, sulfate_formed: Any, pick_up_last: Any, overflow: Any) -> Any:
    """Sodium sulfite and sulfate that stand in the bath once it is steady.

    Parameters
    ----------
    sulfite_formed : float
        Sodium sulfite formed [kg/kg].
    sulfate_formed : float
        Sodium sulfate formed [kg/kg].
    pick_up_last : float
        Liquor on the yarn behind the last box [L/kg].
    overflow : float
        Liquor that leaves over the weir [L/kg].

    Returns
    -------
    float
        Concentration [kg/L].

    Examples
    --------
    >>> round(salt_in_bath(0.030, 0.005, 0.75, 0.20), 6)
    0.036842
    """
    return (sulfite_formed + sulfate_formed) / (pick_up_last + overflow)
