"""Strength of caustic lye: by mass, by volume, by density, in degrees Baume and Twaddell.

Density is that of the table ``caustic_density.csv`` at 25 degC, straight between its rows; a lye of another
temperature is about 0.0006 kg/L lighter for each degree more. Between its rows a straight line is right to
0.0001 kg/L. The sources differ by up to 0.0015 kg/L below 40 % of caustic, which is 0.13 % of caustic by
mass, and most about 19 %, where one table ends and another begins. What is titrated besides caustic, and salt
or soda in an old lye, is left out: both make it denser than its caustic alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from costing.process.arithmetic import holds, where
from costing.quantities import InputError, label
from costing.reference_data.caustic_density import caustic_density

ROUNDS = 60  # each takes at least half of what is missing
BAUME = 145.0
TWADDELL = 200.0
WATER_AT_60_DEGF = 0.99902  # kg/L: by IAPWS-IF97


def lye_density_from_strength(lye_strength: Any, *, unit_density: float = 1.0) -> Any:
    """Density of caustic lye at 25 degC.

    Parameters
    ----------
    lye_strength : float
        NaOH in the lye, by mass; 0 to 50 % [fraction].
    unit_density : float
        The unit of the table [kg/L].

    Returns
    -------
    float
        Density [kg/L].

    Raises
    ------
    InputError
        Outside the table.

    Examples
    --------
    >>> round(lye_density_from_strength(0.22), 4)
    1.2382

    References
    ----------
    caustic-density, Table 1; caustic-density-by-mass; caustic-density-strong
    """
    shares, densities = _columns()
    _inside("lye_strength", lye_strength, shares)
    return _between(lye_strength, shares, densities) * unit_density


def lye_strength_from_density(lye_density: Any, *, unit_density: float = 1.0) -> Any:
    """Strength by mass of caustic lye of 25 degC.

    Parameters
    ----------
    lye_density : float
        Density [kg/L].
    unit_density : float
        The unit of the table [kg/L].

    Returns
    -------
    float
        NaOH in the lye, by mass [fraction].

    Raises
    ------
    InputError
        Outside the table.

    Examples
    --------
    >>> round(lye_strength_from_density(1.225) * 100, 2)
    20.79

    References
    ----------
    caustic-density, Table 1; caustic-density-by-mass; caustic-density-strong
    """
    shares, densities = _columns()
    ratio = lye_density / unit_density
    _inside("lye_density", ratio, densities)
    return _between(ratio, densities, shares)


def lye_concentration_from_strength(lye_strength: Any, *, unit_density: float = 1.0) -> Any:
    """Caustic in a litre of lye of 25 degC.

    Parameters
    ----------
    lye_strength : float
        NaOH in the lye, by mass; 0 to 50 % [fraction].
    unit_density : float
        The unit of the table [kg/L].

    Returns
    -------
    float
        NaOH (100 %) [kg/L].

    Raises
    ------
    InputError
        Outside the table.

    Examples
    --------
    >>> round(lye_concentration_from_strength(0.22) * 1000, 1)
    272.4

    References
    ----------
    caustic-density, Table 1; caustic-density-by-mass; caustic-density-strong
    """
    return lye_strength * lye_density_from_strength(lye_strength, unit_density=unit_density)


def lye_strength_from_concentration(lye_concentration: Any, *, unit_density: float = 1.0) -> Any:
    """Strength by mass of lye of so much caustic in a litre of 25 degC.

    Parameters
    ----------
    lye_concentration : float
        NaOH (100 %) [kg/L].
    unit_density : float
        The unit of the table [kg/L].

    Returns
    -------
    float
        NaOH in the lye, by mass [fraction].

    Raises
    ------
    InputError
        Outside the table.

    Notes
    -----
    ``s = c / rho(s)``, followed until it stands still.

    Examples
    --------
    >>> round(lye_strength_from_concentration(0.250) * 100, 2)
    20.47

    References
    ----------
    caustic-density, Table 1; caustic-density-by-mass; caustic-density-strong
    """
    shares, densities = _columns()
    ratio = lye_concentration / unit_density
    _inside("lye_concentration", ratio, [share * density for share, density in zip(shares, densities)])
    strength = ratio / densities[0]
    for _ in range(ROUNDS):
        strength = ratio / _between(strength, shares, densities)
    return strength


def specific_gravity_from_density(lye_density: Any, *, water_density: float = WATER_AT_60_DEGF) -> Any:
    """Specific gravity that a hydrometer for 60 degF shows, its glass left out of account.

    Parameters
    ----------
    lye_density : float
        Density as the lye is [kg/L].
    water_density : float
        Of water of 60 degF [kg/L].

    Returns
    -------
    float
        Specific gravity [fraction].

    Examples
    --------
    >>> round(specific_gravity_from_density(1.225), 4)
    1.2262
    """
    return lye_density / water_density


def lye_density_from_specific_gravity(
    specific_gravity: Any, *, water_density: float = WATER_AT_60_DEGF
) -> Any:
    """Density of the lye in which a hydrometer for 60 degF shows so much, its glass left out of account.

    Parameters
    ----------
    specific_gravity : float
        As read in the lye as it is [fraction].
    water_density : float
        Of water of 60 degF [kg/L].

    Returns
    -------
    float
        Density [kg/L].

    Examples
    --------
    >>> round(lye_density_from_specific_gravity(1.225), 4)
    1.2238
    """
    return specific_gravity * water_density


def specific_gravity_from_baume(baume: Any) -> Any:
    """Specific gravity from degrees Baume, the scale of modulus 145 for liquids heavier than water.

    Older scales have other moduli, 144.3 or 146.78: ask which one the hydrometer has.

    Parameters
    ----------
    baume : float
        Degrees Baume [fraction].

    Returns
    -------
    float
        Specific gravity at 60 degF [fraction].

    Notes
    -----
    ``d = 145 / (145 - B)``

    Examples
    --------
    >>> round(specific_gravity_from_baume(30.0), 4)
    1.2609
    """
    return BAUME / (BAUME - baume)


def baume_from_specific_gravity(specific_gravity: Any) -> Any:
    """Degrees Baume from specific gravity, the scale of modulus 145 for liquids heavier than water.

    Parameters
    ----------
    specific_gravity : float
        At 60 degF [fraction].

    Returns
    -------
    float
        Degrees Baume [fraction].

    Notes
    -----
    ``B = 145 - 145 / d``

    Examples
    --------
    >>> round(baume_from_specific_gravity(1.26), 2)
    29.92
    """
    return BAUME - BAUME / specific_gravity


def specific_gravity_from_twaddell(twaddell: Any) -> Any:
    """Specific gravity from degrees Twaddell.

    Parameters
    ----------
    twaddell : float
        Degrees Twaddell [fraction].

    Returns
    -------
    float
        Specific gravity at 60 degF [fraction].

    Notes
    -----
    ``d = 1 + T / 200``

    Examples
    --------
    >>> specific_gravity_from_twaddell(52.0)
    1.26
    """
    return 1.0 + twaddell / TWADDELL


def twaddell_from_specific_gravity(specific_gravity: Any) -> Any:
    """Degrees Twaddell from specific gravity.

    Parameters
    ----------
    specific_gravity : float
        At 60 degF [fraction].

    Returns
    -------
    float
        Degrees Twaddell [fraction].

    Notes
    -----
    ``T = 200 (d - 1)``

    Examples
    --------
    >>> round(twaddell_from_specific_gravity(1.26), 6)
    52.0
    """
    return TWADDELL * (specific_gravity - 1.0)


def _columns() -> tuple[list[float], list[float]]:
    table = caustic_density()
    return [row.share for row in table], [row.density for row in table]


def _inside(name: str, value: Any, column: Sequence[float]) -> None:
    """Refuse what the table does not reach; there is no guessing beyond it."""
    slack = 1e-9 * column[-1]
    if not (holds(value >= column[0] - slack) and holds(value <= column[-1] + slack)):
        raise InputError(
            "", f"{label(name)} is outside the table of lye; accepted is {column[0]:g} to {column[-1]:g}"
        )


def _between(value: Any, known: Sequence[float], wanted: Sequence[float]) -> Any:
    """Straight between the rows of a table: each stretch adds what of it lies below the value."""
    total: Any = wanted[0]
    for low, high, first, last in zip(known, known[1:], wanted, wanted[1:]):
        below = where(value < low, low, where(value > high, high, value))
        total = total + (below - low) * ((last - first) / (high - low))
    return total
