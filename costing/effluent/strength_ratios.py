"""Ratios by which effluents are judged, and the sulfite that takes up oxygen."""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import molar_mass

SULFITE_PER_OXYGEN = 2.0 * molar_mass("sodium_sulfite") / molar_mass("oxygen")


def sulfite_for_oxygen(dissolved_oxygen: Any) -> Any:
    """Sodium sulfite (100 %) that takes up dissolved oxygen: the least, by the reaction.

    Parameters
    ----------
    dissolved_oxygen : float
        Oxygen in the water [kg/L].

    Returns
    -------
    float
        Sodium sulfite [kg/L].

    Notes
    -----
    ``2 Na2SO3 + O2 -> 2 Na2SO4``: 7.88 kg for each kilogram of oxygen.

    Examples
    --------
    >>> round(sulfite_for_oxygen(0.1e-6) * 1e6, 3)
    0.788

    References
    ----------
    sulfite-scavenging
    """
    return SULFITE_PER_OXYGEN * dissolved_oxygen


def degraded_share(biochemical_demand: Any, chemical_demand: Any) -> Any:
    """BOD5 over COD: how far a biological works can take an effluent.

    Below about 0.3 it is hard to degrade, above 0.5 easy: common practice, no source.

    Parameters
    ----------
    biochemical_demand : float
        BOD5 [kg/L].
    chemical_demand : float
        COD of the same water [kg/L].

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    Starch size, 0.5 g/g against the 1.184 g/g that its full oxidation takes:

    >>> round(degraded_share(0.5, 1.1841), 3)
    0.422
    """
    return biochemical_demand / chemical_demand


def solids_over_conductivity(dissolved_solids: Any, conductivity: Any) -> Any:
    """Dissolved solids for each unit of conductivity: from 0.2 in caustic to 0.9 in neutral salt.

    So no one factor turns a conductivity into solids; find that of your own water.

    Parameters
    ----------
    dissolved_solids : float
        What stays when the water is dried [kg/L].
    conductivity : float
        At 25 degC [S/m].

    Returns
    -------
    float
        Ratio, in mg/L for each uS/cm as it is mostly told [kg*m/L/S].

    Examples
    --------
    A reference water of 1,413 uS/cm that holds 1,000 mg/L:

    >>> round(solids_over_conductivity(1000e-6, 0.1413) * 100, 4)
    0.7077

    References
    ----------
    meter-manual-442
    """
    return dissolved_solids / conductivity
