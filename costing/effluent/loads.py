"""Loads, concentrations and alkalinity of an effluent."""

from __future__ import annotations

from typing import Any

from costing.process.chemistry import molar_mass

SULFURIC_ACID_PER_CHARGE = molar_mass("sulfuric_acid") / 2.0  # it takes up two charges


def concentration_from_load(load: Any, effluent_volume: Any) -> Any:
    """Concentration of a parameter from its load and the flow; also what a limit of a load comes to.

    Parameters
    ----------
    load : float
        Mass of the parameter per mass of yarn [kg/kg].
    effluent_volume : float
        Effluent per mass of yarn [L/kg].

    Returns
    -------
    float
        Concentration [kg/L].

    Examples
    --------
    Less water, the same load: 42.3 g/kg at 100.1 L/kg and at 15 L/kg.

    >>> [round(concentration_from_load(0.0423, flow) * 1e6) for flow in (100.1, 15.0)]
    [423, 2820]

    References
    ----------
    cfr-40-410, subpart G, 410.72
    """
    return load / effluent_volume


def load_from_concentration(effluent_concentration: Any, effluent_volume: Any) -> Any:
    """Load of a parameter, from its concentration and the flow.

    Parameters
    ----------
    effluent_concentration : float
        Concentration [kg/L].
    effluent_volume : float
        Effluent per mass of yarn [L/kg].

    Returns
    -------
    float
        Mass of the parameter per mass of yarn [kg/kg].

    Notes
    -----
    A median concentration times a median flow is not a median load.

    Examples
    --------
    >>> round(load_from_concentration(800e-6, 100.1) * 1000, 2)
    80.08
    """
    return effluent_concentration * effluent_volume


def load_per_metre_of_cloth(load: Any, warp_mass_per_metre: Any) -> Any:
    """Load per metre of cloth, from the load per mass of warp.

    Parameters
    ----------
    load : float
        Mass of the parameter per mass of yarn [kg/kg].
    warp_mass_per_metre : float
        Grey warp yarn per metre of cloth [kg/m].

    Returns
    -------
    float
        Mass of the parameter per metre [kg/m].

    Examples
    --------
    >>> round(load_per_metre_of_cloth(0.010, 0.36) * 1000, 2)
    3.6
    """
    return load * warp_mass_per_metre


def acid_for_alkalinity(alkalinity: Any, acid_per_charge: Any = SULFURIC_ACID_PER_CHARGE) -> Any:
    """Acid (100 %) that takes up a strong-ion difference in full; sulfuric acid when no other is named.

    Leaves out what weak acids give back; near neutral water it is an upper estimate. Acid on sulfite or
    sulfide sets free sulfur dioxide or hydrogen sulfide: see the cautions.

    Parameters
    ----------
    alkalinity : float
        Strong-ion difference of the water [mol/L].
    acid_per_charge : float, optional
        Pure acid that takes up one mol of charge [kg/mol].

    Returns
    -------
    float
        Acid [kg/L].

    Examples
    --------
    >>> round(acid_for_alkalinity(0.025) * 1000, 4)
    1.2259
    """
    return alkalinity * acid_per_charge


def oxygen_demand_of_load(load: Any, oxygen_demand: Any, recovery: Any = 1.0) -> Any:
    """Chemical oxygen demand of a load.

    Parameters
    ----------
    load : float
        Mass of the substance per mass of yarn [kg/kg].
    oxygen_demand : float
        Oxygen that its full oxidation takes [kg/kg].
    recovery : float, optional
        Share of it that the test finds [fraction].

    Returns
    -------
    float
        Oxygen per mass of yarn [kg/kg].

    Examples
    --------
    >>> round(oxygen_demand_of_load(0.002, 1.952, 0.9) * 1000, 3)
    3.514
    """
    return load * oxygen_demand * recovery
