"""Charge that weak acids carry in water at a pH: carbonate, sulfite, sulfide, acetate, other organic acids.

Their constants hold for one temperature and one ionic strength. A pH counts the activity of the protons, as
an electrode does; everything else counts in mol/L.
"""

from __future__ import annotations

from functools import cache
from typing import Any, NamedTuple

from costing.process.arithmetic import log10, where

# pH at which half of the acid has given a proton, at 25 degC in water without other ions.
WATER = 13.995  # ion product: phreeqc-dat
CARBONIC = (6.352, 10.329)  # phreeqc-dat
SULFUROUS = (1.860, 7.205)  # phreeqc-llnl-dat
HYDROGEN_SULFIDE = (
    6.994  # the first proton alone: phreeqc-dat; the second leaves only in the strongest caustic
)
ACETIC = 4.757  # minteq-v4-dat
# Gluconic and galacturonic acid, from memory, to be verified: at any pH above 6 both are ions in full.
CARBOXYLIC = 3.7

# Carbon dioxide in water over the pressure above it, as a power of ten [mol/L/atm]: phreeqc-dat.
CARBON_DIOXIDE_SOLUBILITY = -1.468

# log10 K = a + b T + c/T + d log10 T + e/T2 + f T2, T in kelvin: phreeqc-dat; of sulfite phreeqc-llnl-dat.
FIT = {
    "water": (293.29227, 0.1360833, -10576.913, -123.73158, 0.0, -6.996455e-5),
    "carbonate takes one proton": (107.8871, 0.03252849, -5151.79, -38.92561, 563713.9, 0.0),
    "carbonate takes two protons": (464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9, 0.0),
    "hydrosulfide takes a proton": (-11.17, 0.02386, 3279.0, 0.0, 0.0, 0.0),
    "sulfite takes one proton": (55.899, 0.033623, -501.20, -23.040, -7.8373, 0.0),
    "sulfite takes two protons": (94.048, 0.062127, -1107.2, -40.310, -17.305, 0.0),
    "carbon dioxide dissolves": (10.5624, -2.3547e-2, -3972.8, 0.0, 5.8746e5, 1.9194e-5),
}
AT_25 = 298.15  # K
ICE_POINT = 273.15  # K

DAVIES = 0.509  # at 25 degC in water
HIGHEST_STRENGTH = 0.5  # mol/L: the activity of an ion is held at what it is there


class Scale(NamedTuple):
    """Against what a concentration and a temperature count, so that the equations also run on quantities.

    Attributes
    ----------
    standard : float
        Concentration against which a pH counts [mol/L].
    ice_point : float
        0 degC [degC].
    degree : float
        One degree [K].
    """

    standard: Any = 1.0
    ice_point: Any = 0.0
    degree: Any = 1.0


HOUSE = Scale()


class Constants(NamedTuple):
    """Constants of mass action as minus their powers of ten, for one temperature and ionic strength.

    Attributes
    ----------
    protons : float
        Power of ten by which protons in mol/L count less than their activity, 0 in water without ions.
    water : float
        Activity of protons times hydroxide in mol/L.
    carbonic, sulfurous : tuple of float
        pH at which half has given its first, its second proton.
    sulfide, acetic, carboxylic : float
        pH at which half has given its proton.
    solubility : float
        Carbon dioxide in water over the pressure above it, as a power of ten [mol/L/atm].
    """

    protons: Any
    water: Any
    carbonic: tuple[Any, Any]
    sulfurous: tuple[Any, Any]
    sulfide: Any
    acetic: Any
    carboxylic: Any
    solubility: Any


IDEAL = Constants(
    0.0,
    WATER,
    CARBONIC,
    SULFUROUS,
    HYDROGEN_SULFIDE,
    ACETIC,
    CARBOXYLIC,
    CARBON_DIOXIDE_SOLUBILITY,
)
"""At 25 degC in water without other ions."""


def activity_exponent(ionic_strength: Any, ion_charge: float = 1.0, *, scale: Scale = HOUSE) -> Any:
    """Power of ten of the activity coefficient of an ion; never above zero.

    Parameters
    ----------
    ionic_strength : float
        Half the sum of concentration times charge squared [mol/L].
    ion_charge : float, optional
        Charges on the ion [fraction].
    scale : Scale
        House units.

    Returns
    -------
    float
        log10 of the coefficient [fraction].

    Notes
    -----
    Davies: ``-0.509 z2 (sqrt(I) / (1 + sqrt(I)) - 0.3 I)``, good to about 0.5 mol/L and held there beyond.

    Examples
    --------
    >>> round(activity_exponent(0.025), 4)
    -0.0657
    """
    pure = ionic_strength / scale.standard
    held = where(pure > HIGHEST_STRENGTH, HIGHEST_STRENGTH, pure)
    root = held**0.5
    return -DAVIES * ion_charge**2 * (root / (1.0 + root) - 0.3 * held)


def constants_at(
    effluent_temperature: Any = 25.0, ionic_strength: Any = 0.0, *, scale: Scale = HOUSE
) -> Constants:
    """Constants for one temperature and one ionic strength.

    Of acetic and the other organic acids the temperature changes little, and is left out.

    Parameters
    ----------
    effluent_temperature : float, optional
        [degC]
    ionic_strength : float, optional
        Half the sum of concentration times charge squared [mol/L].
    scale : Scale
        House units.

    Examples
    --------
    The ion product of water at 60 degC, and where caustic of 1 g/L makes the water salty:

    >>> round(constants_at(60.0).water, 3), round(constants_at(25.0, 0.025).water, 3)
    (13.016, 13.929)

    References
    ----------
    phreeqc-dat; phreeqc-llnl-dat; minteq-v4-dat
    """
    kelvins = (effluent_temperature - scale.ice_point) / scale.degree + ICE_POINT
    once = activity_exponent(ionic_strength, scale=scale)
    twice = activity_exponent(ionic_strength, 2.0, scale=scale)

    def two(ideal: tuple[float, float], one_proton: str, two_protons: str) -> tuple[Any, Any]:
        second = ideal[1] + _shift(one_proton, kelvins)
        both = ideal[0] + ideal[1] + _shift(two_protons, kelvins)
        return both - second + once, second + twice - once

    return Constants(
        once,
        WATER - _shift("water", kelvins) + once,
        two(CARBONIC, "carbonate takes one proton", "carbonate takes two protons"),
        two(SULFUROUS, "sulfite takes one proton", "sulfite takes two protons"),
        HYDROGEN_SULFIDE + _shift("hydrosulfide takes a proton", kelvins) + once,
        ACETIC + once,
        CARBOXYLIC + once,
        CARBON_DIOXIDE_SOLUBILITY + _shift("carbon dioxide dissolves", kelvins),
    )


def _fit(name: str, kelvins: Any) -> Any:
    a, b, c, d, e, f = FIT[name]
    return a + b * kelvins + c / kelvins + d * log10(kelvins) + e / kelvins**2 + f * kelvins**2


@cache
def _fit_at_25(name: str) -> float:
    return float(_fit(name, AT_25))


def _shift(name: str, kelvins: Any) -> Any:
    """What log10 K has more than at 25 degC, so that the constants at 25 degC are the printed ones."""
    return _fit(name, kelvins) - _fit_at_25(name)


def ions_per_acid(acidity: Any, constants: tuple[Any, Any]) -> tuple[Any, Any]:
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


def charge_of_two(acidity: Any, constants: tuple[Any, Any]) -> Any:
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


def charge_of_one(acidity: Any, constant: Any) -> Any:
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
