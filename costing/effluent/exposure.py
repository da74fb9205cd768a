"""Air at a workplace against exposure limits, and the poisonous gas that acid sets free.

The arithmetic of a limit, for talking to whoever measures. It measures nothing and clears nobody: the limits
of your own country, the supplier's safety data sheet and a competent person come first. See the cautions for
sulfide, hydrosulfite, acid and pits.
"""

from __future__ import annotations

from typing import Any

from costing.effluent.weak_acids import (
    HOUSE,
    Scale,
    constants_at,
    ions_per_acid,
)


def exposure_of_mixture(
    first_exposure: Any,
    first_limit: Any,
    second_exposure: Any = 0.0,
    second_limit: Any = 1.0,
    third_exposure: Any = 0.0,
    third_limit: Any = 1.0,
) -> Any:
    """Exposure to gases that act alike, as the sum of their shares of their limits: above 1 is too much.

    Parameters
    ----------
    first_exposure, first_limit : float
        What the air holds as a mean of the shift, and its limit, both in ppm or mg/m3 [fraction].
    second_exposure, second_limit, third_exposure, third_limit : float, optional
        The same of others [fraction].

    Returns
    -------
    float
        Sum of the shares [fraction].

    Examples
    --------
    500 ppm against 1,000, 45 against 200, 40 against 200:

    >>> round(exposure_of_mixture(500.0, 1000.0, 45.0, 200.0, 40.0, 200.0), 3)
    0.925

    References
    ----------
    osha-z-tables-2015, (d)(2)
    """
    return first_exposure / first_limit + second_exposure / second_limit + third_exposure / third_limit


def mean_exposure(
    first_exposure: Any,
    first_time: Any,
    second_exposure: Any = 0.0,
    second_time: Any = 0.0,
    third_exposure: Any = 0.0,
    third_time: Any = 0.0,
    shift: Any = 8.0,
) -> Any:
    """Exposure as a mean of the shift, from what the air holds in its parts.

    Parameters
    ----------
    first_exposure, second_exposure, third_exposure : float
        What the air holds, in ppm or mg/m3 [fraction].
    first_time, second_time, third_time : float
        How long [h].
    shift : float, optional
        What it is a mean of: 8 h in most rules [h].

    Returns
    -------
    float
        Mean, in the unit of the exposures [fraction].

    Examples
    --------
    >>> mean_exposure(150.0, 2.0, 75.0, 2.0, 50.0, 4.0)
    81.25

    References
    ----------
    osha-z-tables-2015, (d)(1)
    """
    return (first_exposure * first_time + second_exposure * second_time + third_exposure * third_time) / shift


def hydrogen_sulfide_share(
    acidity: Any, effluent_temperature: Any = 25.0, ionic_strength: Any = 0.0, *, scale: Scale = HOUSE
) -> Any:
    """Share of the sulfide in a water that is hydrogen sulfide, a deadly gas: it leaves the water.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    effluent_temperature : float, optional
        [degC]
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> [round(hydrogen_sulfide_share(ph), 3) for ph in (6.0, 7.0, 8.0, 9.0)]
    [0.908, 0.497, 0.09, 0.01]

    References
    ----------
    phreeqc-dat
    """
    constant = constants_at(effluent_temperature, ionic_strength, scale=scale).sulfide
    return 1.0 / (1.0 + 10.0 ** (acidity - constant))


def sulfur_dioxide_share(
    acidity: Any, effluent_temperature: Any = 25.0, ionic_strength: Any = 0.0, *, scale: Scale = HOUSE
) -> Any:
    """Share of the sulfite in a water that is sulfur dioxide, a poisonous gas: it leaves the water.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    effluent_temperature : float, optional
        [degC]
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> [round(sulfur_dioxide_share(ph), 4) for ph in (2.0, 3.0, 4.0, 5.0)]
    [0.4201, 0.0675, 0.0072, 0.0007]

    References
    ----------
    phreeqc-llnl-dat
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    once, twice = ions_per_acid(acidity, constants.sulfurous)
    return 1.0 / (1.0 + once + twice)


def sulfite_ion_share(
    acidity: Any, effluent_temperature: Any = 25.0, ionic_strength: Any = 0.0, *, scale: Scale = HOUSE
) -> Any:
    """Share of the sulfite in a water that is its doubly charged ion; the rest is bisulfite.

    Parameters
    ----------
    acidity : float
        pH [fraction].
    effluent_temperature : float, optional
        [degC]
    ionic_strength : float, optional
        Half the sum of concentration times charge squared; 0 leaves the activities out [mol/L].
    scale : Scale
        House units.

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> round(sulfite_ion_share(7.0), 4)
    0.3841

    References
    ----------
    phreeqc-llnl-dat
    """
    constants = constants_at(effluent_temperature, ionic_strength, scale=scale)
    once, twice = ions_per_acid(acidity, constants.sulfurous)
    return twice / (1.0 + once + twice)
