"""A limit in other terms, as a load, a concentration or per day; the share of it that an estimate takes."""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import where


def load_limit_per_day(load_limit: Any, daily_production: Any) -> Any:
    """Load that a limit for each mass of product allows in a day: one block of a sum over products.

    Parameters
    ----------
    load_limit : float
        Limit for each mass of product [kg/kg].
    daily_production : float
        Product that the limit counts [kg/h].

    Returns
    -------
    float
        Load [kg/h].

    Examples
    --------
    42.3 kg/t on 12 t of yarn a day:

    >>> round(load_limit_per_day(0.0423, 500.0) * 24.0, 1)
    507.6
    """
    return load_limit * daily_production


def load_share_of_limit(load: Any, load_limit: Any) -> Any:
    """Share of a load limit that an estimate takes.

    Parameters
    ----------
    load : float
        Estimate, for each mass of product [kg/kg].
    load_limit : float
        Limit, above zero [kg/kg].

    Returns
    -------
    float
        Estimate over limit [fraction].

    Examples
    --------
    >>> round(load_share_of_limit(0.025, 0.0423), 3)
    0.591
    """
    return load / load_limit


def concentration_share_of_limit(effluent_concentration: Any, concentration_limit: Any) -> Any:
    """Share of a concentration limit that an estimate takes.

    Parameters
    ----------
    effluent_concentration : float
        Estimate [kg/L].
    concentration_limit : float
        Limit, above zero [kg/L].

    Returns
    -------
    float
        Estimate over limit [fraction].

    Examples
    --------
    The same load in less water is a larger share:

    >>> [round(concentration_share_of_limit(load / 15.0, 160e-6), 2) for load in (0.0012, 0.0024)]
    [0.5, 1.0]
    """
    return effluent_concentration / concentration_limit


def concentration_at_reference_flow(
    effluent_concentration: Any, effluent_volume: Any, reference_volume: Any
) -> Any:
    """Concentration as it would be in a reference flow, where more water than that is used.

    Parameters
    ----------
    effluent_concentration : float
        Concentration in the effluent as it runs [kg/L].
    effluent_volume : float
        Effluent for each mass of product [L/kg].
    reference_volume : float
        Effluent up to which the limit allows no dilution [L/kg].

    Returns
    -------
    float
        Concentration that is held against the limit [kg/L].

    Notes
    -----
    ``C Q / Q_ref`` where Q is above Q_ref, else C: a correction of some discharge standards, from memory, to
    be verified; the reference flow is that of your permit.

    Examples
    --------
    >>> [round(concentration_at_reference_flow(80e-6, flow, 140.0) * 1e6, 1) for flow in (100.0, 175.0)]
    [80.0, 100.0]
    """
    ratio = effluent_volume / reference_volume
    return effluent_concentration * where(ratio > 1.0, ratio, 1.0)


def absorption_coefficient(absorbance: Any, cell_length: Any) -> Any:
    """Colour of a filtered sample as light taken up for each metre, at one wavelength.

    Leaves out colour on particles, which the filter holds back: of indigo nearly all.

    Parameters
    ----------
    absorbance : float
        Power of ten by which the light is weakened in the cell [fraction].
    cell_length : float
        Path of the light through the sample [m].

    Returns
    -------
    float
        Spectral absorption coefficient [1/m].

    Examples
    --------
    >>> round(absorption_coefficient(0.030, 0.010), 6)
    3.0
    """
    return absorbance / cell_length
