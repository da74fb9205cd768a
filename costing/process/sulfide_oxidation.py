"""Sulfide that is left: what reaches the drain, how it is counted, and the peroxide that oxidises it.

Reactions (substances in full, so that every element balances)::

    to sulfate   Na2S + 4 H2O2  -> Na2SO4 + 4 H2O
    to sulfur    Na2S + H2O2    -> S + 2 NaOH

Acid on sulfide sets hydrogen sulfide free, which kills and paralyses the sense of smell; peroxide and sulfide
in one vessel heat up and foam over. See the cautions for sulfide, peroxide and what must never meet.
"""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import element_share, molar_mass

PEROXIDE_PER_SULFIDE = molar_mass("hydrogen_peroxide") / molar_mass(
    "sodium_sulfide"
)  # at one mol for one mol
PEROXIDE_TO_SULFATE = 4.0  # mol for one mol of sulfide
SULFUR_IN_SULFIDE = element_share("sodium_sulfide", "S")


def sulfide_to_drain(sulfide_use: Any, sulfide_left: Any) -> Any:
    """Sodium sulfide (100 %) that reaches the drain as sulfide; no acid may follow it (hydrogen sulfide).

    The share is a contested setting: 10 to 80 % with 40 % as the middle is common practice, no source.

    Parameters
    ----------
    sulfide_use : float
        Sodium sulfide (100 %) used [kg/kg].
    sulfide_left : float
        Share of it that is not oxidised before the drain [fraction].

    Returns
    -------
    float
        Sodium sulfide (100 %) per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfide_to_drain(sulfide_use=0.054, sulfide_left=0.4), 4)
    0.0216
    """
    return sulfide_use * sulfide_left


def sulfide_as_sulfur(sulfide_use: Any) -> Any:
    """Sulfide counted as its sulfur, as limits and analyses name it, from sodium sulfide (100 %).

    Parameters
    ----------
    sulfide_use : float
        Sodium sulfide (100 %) [kg/kg].

    Returns
    -------
    float
        Sulfide as S per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(sulfide_as_sulfur(0.0216), 5)
    0.00887
    """
    return SULFUR_IN_SULFIDE * sulfide_use


def peroxide_for_sulfide_to_sulfate(sulfide_use: Any) -> Any:
    """Peroxide (100 %) that oxidises sulfide to sulfate; dose into much water, never neat onto sulfide.

    The least, by the reaction; peroxide that decays or oxidises dye and size comes on top.

    Parameters
    ----------
    sulfide_use : float
        Sodium sulfide (100 %) to oxidise [kg/kg].

    Returns
    -------
    float
        Hydrogen peroxide (100 %) per mass of yarn [kg/kg].

    Notes
    -----
    Four mol for one mol: 1.7434 kg per kg. So far it goes in alkali; near neutral much of it stops at sulfur.

    Examples
    --------
    >>> round(peroxide_for_sulfide_to_sulfate(0.0216), 5)
    0.03766
    """
    return PEROXIDE_TO_SULFATE * PEROXIDE_PER_SULFIDE * sulfide_use


def peroxide_for_sulfide_to_sulfur(sulfide_use: Any) -> Any:
    """Peroxide (100 %) that oxidises sulfide to sulfur; dose into much water, never neat onto sulfide.

    The least, by the reaction; the sulfur left in the water still has an oxygen demand. Do not acidify to
    stop there: acid on sulfide sets hydrogen sulfide free.

    Parameters
    ----------
    sulfide_use : float
        Sodium sulfide (100 %) to oxidise [kg/kg].

    Returns
    -------
    float
        Hydrogen peroxide (100 %) per mass of yarn [kg/kg].

    Notes
    -----
    One mol for one mol: 0.4359 kg per kg.

    Examples
    --------
    >>> round(peroxide_for_sulfide_to_sulfur(0.0216), 5)
    0.00941

    References
    ----------
    sulfide-removal-page, oxidant doses
    """
    return PEROXIDE_PER_SULFIDE * sulfide_use
