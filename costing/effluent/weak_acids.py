"""Charge that weak acids carry in water at a pH: carbonate, sulfite, sulfide, acetate.

Ideal, at 25 degC: activities are left out, so that the pH of a salty water reads up to 0.2 too high. The
constants are those of zero ionic strength.
"""

from __future__ import annotations

from typing import Any

# pH at which half of the acid has given a proton.
WATER = 13.995  # ion product: phreeqc-dat
CARBONIC = (6.352, 10.329)  # phreeqc-dat
SULFUROUS = (1.860, 7.205)  # phreeqc-llnl-dat
HYDROGEN_SULFIDE = (
    6.994  # the first proton alone: phreeqc-dat; the second leaves only in the strongest caustic
)
ACETIC = 4.757  # minteq-v4-dat

# Carbon dioxide in water over the pressure above it, as a power of ten [mol/L/atm]: phreeqc-dat.
CARBON_DIOXIDE_SOLUBILITY = -1.468


def ions_per_acid(acidity: Any, constants: tuple[float, float]) -> tuple[Any, Any]:
    """Singly and doubly charged ion of an acid of two protons, against its uncharged form as one.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    constants : tuple of float
        pH at which half has given its first, its second proton [fraction].

    Returns
    -------
    tuple of float
        Two ratios [fraction].

    Examples
    --------
    >>> [round(ratio, 4) for ratio in ions_per_acid(6.352, CARBONIC)]
    [1.0, 0.0001]
    """
    first, second = constants
    once = 10.0 ** (acidity - first)
    return once, once * 10.0 ** (acidity - second)


def charge_of_two(acidity: Any, constants: tuple[float, float]) -> Any:
    """Negative charges on each mol of an acid of two protons.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    constants : tuple of float
        pH at which half has given its first, its second proton [fraction].

    Returns
    -------
    float
        Charges, 0 to 2 [fraction].

    Examples
    --------
    >>> round(charge_of_two(8.3, CARBONIC), 4)
    0.9981
    """
    once, twice = ions_per_acid(acidity, constants)
    return (once + 2.0 * twice) / (1.0 + once + twice)


def charge_of_one(acidity: Any, constant: float) -> Any:
    """Negative charge on each mol of an acid of one proton.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    constant : float
        pH at which half has given its proton [fraction].

    Returns
    -------
    float
        Charge, 0 to 1 [fraction].

    Examples
    --------
    >>> round(charge_of_one(7.0, HYDROGEN_SULFIDE), 4)
    0.5035
    """
    once = 10.0 ** (acidity - constant)
    return once / (1.0 + once)
