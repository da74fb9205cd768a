"""Vat chemistry of indigo: what reduces, what oxygen destroys, what caustic that takes.

Reactions (substances in full, so that every element balances)::

    vatting        indigo + Na2S2O4 + 2 NaOH -> leuco indigo + 2 Na2SO3
    airing         leuco indigo + 1/2 O2     -> indigo + H2O
    oxygen, A      Na2S2O4 + O2 + 2 NaOH     -> Na2SO3 + Na2SO4 + H2O
    oxygen, B      2 Na2S2O4 + O2 + 4 NaOH   -> 4 Na2SO3 + 2 H2O
    without oxygen 2 Na2S2O4 + 2 NaOH        -> Na2S2O3 + 2 Na2SO3 + H2O
    carbonation    2 NaOH + CO2              -> Na2CO3 + H2O

Alkali bound by the leuco dye is not an extra loss: airing gives it back to the liquor on the yarn.
"""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import molar_mass

INDIGO = molar_mass("indigo")
HYDROSULFITE = molar_mass("sodium_hydrosulfite")
CAUSTIC = molar_mass("sodium_hydroxide")
SULFITE = molar_mass("sodium_sulfite")
SULFATE = molar_mass("sodium_sulfate")
OXYGEN = molar_mass("oxygen")
CARBON_DIOXIDE = molar_mass("carbon_dioxide")

HYDROSULFITE_PER_INDIGO = HYDROSULFITE / INDIGO
CAUSTIC_PER_HYDROSULFITE = 2 * CAUSTIC / HYDROSULFITE
CAUSTIC_PER_CARBON_DIOXIDE = 2 * CAUSTIC / CARBON_DIOXIDE
HYDROSULFITE_PER_OXYGEN = HYDROSULFITE / OXYGEN  # kg per kg at one mol for one mol
OXYGEN_PER_INDIGO = 0.5 * OXYGEN / INDIGO


def indigo_feed_of_bath(indigo_on_yarn: Any, rinse_loss: Any, overflow: Any, bath_indigo: Any) -> Any:
    """Indigo that the bath must be fed.

    Parameters
    ----------
    indigo_on_yarn : float
        Shade: indigo on the finished yarn [fraction].
    rinse_loss : float
        Share of the applied indigo that is lost in rinsing [fraction].
    overflow : float
        Liquor that leaves over the weir [L/kg].
    bath_indigo : float
        Indigo in the bath [kg/L].

    Returns
    -------
    float
        Indigo per mass of yarn [kg/kg].

    Notes
    -----
    ``F_I = S / (1 - r) + V_of c_I``. The first term is all that leaves on the yarn behind the last box.

    Examples
    --------
    >>> round(indigo_feed_of_bath(0.02, 0.08, 0.2, 0.002), 6)
    0.022139
    """
    return indigo_on_yarn / (1.0 - rinse_loss) + overflow * bath_indigo


def indigo_feed_from_volumes(
    indigo_on_yarn: Any,
    rinse_loss: Any,
    bath_indigo: Any,
    stock_indigo: Any,
    pick_up_in: Any,
    pick_up_last: Any,
    sky_evaporation: Any,
    other_feeds: Any = 0.0,
) -> Any:
    """Indigo that the bath must be fed while it overflows, straight from the volume balance.

    Holds only while the overflow is above zero; the quote itself solves the balance in full.

    Parameters
    ----------
    indigo_on_yarn : float
        Shade: indigo on the finished yarn [fraction].
    rinse_loss : float
        Share of the applied indigo that is lost in rinsing [fraction].
    bath_indigo : float
        Indigo in the bath [kg/L].
    stock_indigo : float
        Indigo in the stock vat [kg/L].
    pick_up_in : float
        Liquor on the entering yarn [L/kg].
    pick_up_last : float
        Liquor on the yarn behind the last box [L/kg].
    sky_evaporation : float
        Water evaporated in all skies [L/kg].
    other_feeds : float, optional
        Liquor fed beside the stock vat [L/kg].

    Returns
    -------
    float
        Indigo per mass of yarn [kg/kg].

    Notes
    -----
    ``F_I = (S/(1-r) + c_I (w_0 + V_other - w_N - e)) / (1 - c_I/c_st)``

    Examples
    --------
    >>> round(indigo_feed_from_volumes(0.02, 0.08, 0.002, 0.09, 0.75, 0.75, 0.05), 6)
    0.022131
    """
    surplus = pick_up_in + other_feeds - pick_up_last - sky_evaporation
    applied = indigo_on_yarn / (1.0 - rinse_loss)
    return (applied + bath_indigo * surplus) / (1.0 - bath_indigo / stock_indigo)


# Acid constants of leuco indigo: from memory, to be verified (etters-1996 was not read in full).
FIRST_ACID_CONSTANT = 7.97
SECOND_ACID_CONSTANT = 12.68


def leuco_acid_share(
    acidity: Any,
    first_acid_constant: Any = FIRST_ACID_CONSTANT,
    second_acid_constant: Any = SECOND_ACID_CONSTANT,
) -> Any:
    """Share of the reduced indigo that is the undissolved acid.

    Parameters
    ----------
    acidity : float
        pH of the bath [fraction].
    first_acid_constant, second_acid_constant : float, optional
        pH at which half has given its first, its second proton; from memory, to be verified [fraction].

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> round(leuco_acid_share(11.5) * 100, 2)
    0.03
    """
    once, twice = _ionised(acidity, first_acid_constant, second_acid_constant)
    return 1.0 / (1.0 + once + twice)


def leuco_single_salt_share(
    acidity: Any,
    first_acid_constant: Any = FIRST_ACID_CONSTANT,
    second_acid_constant: Any = SECOND_ACID_CONSTANT,
) -> Any:
    """Share of the reduced indigo that is the mono-sodium salt, the form with most affinity.

    Parameters
    ----------
    acidity : float
        pH of the bath [fraction].
    first_acid_constant, second_acid_constant : float, optional
        pH at which half has given its first, its second proton; from memory, to be verified [fraction].

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> round(leuco_single_salt_share(11.5) * 100, 2)
    93.78
    """
    once, twice = _ionised(acidity, first_acid_constant, second_acid_constant)
    return once / (1.0 + once + twice)


def _ionised(acidity: Any, first: Any, second: Any) -> tuple[Any, Any]:
    """Single and double salt, against the acid as one."""
    once = 10.0 ** (acidity - first)
    return once, once * 10.0 ** (acidity - second)
