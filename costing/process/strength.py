"""Strength of products as delivered: assay, density, concentration."""

from __future__ import annotations

from typing import Any


def delivered_from_pure(pure_mass: Any, strength: Any) -> Any:
    """Mass of product to buy for a mass of pure substance.

    Parameters
    ----------
    pure_mass : float
        Pure substance needed [kg].
    strength : float
        Pure substance in the product, the assay [fraction].

    Returns
    -------
    float
        Product as delivered [kg].

    Examples
    --------
    >>> round(delivered_from_pure(pure_mass=66.4, strength=0.88), 3)
    75.455
    """
    return pure_mass / strength


def volume_from_mass(delivered_mass: Any, density: Any) -> Any:
    """Volume of a mass of product.

    Parameters
    ----------
    delivered_mass : float
        Product as delivered [kg].
    density : float
        Its density [kg/L].

    Returns
    -------
    float
        Volume [L].

    Examples
    --------
    >>> round(volume_from_mass(delivered_mass=100.0, density=1.515), 4)
    66.0066
    """
    return delivered_mass / density


def strength_per_volume(strength: Any, density: Any) -> Any:
    """Pure substance in each litre of a product.

    Parameters
    ----------
    strength : float
        Pure substance in the product, by mass [fraction].
    density : float
        Its density [kg/L].

    Returns
    -------
    float
        Concentration [kg/L].

    Examples
    --------
    >>> round(strength_per_volume(strength=0.5, density=1.515), 4)
    0.7575
    """
    return strength * density


def strength_by_mass(concentration: Any, density: Any) -> Any:
    """Share of pure substance in the mass of a solution, from what each litre of it holds.

    Parameters
    ----------
    concentration : float
        Pure substance in each litre of the solution [kg/L].
    density : float
        Density of that solution, at its own strength [kg/L].

    Returns
    -------
    float
        Pure substance, by mass [fraction].

    Examples
    --------
    >>> round(strength_by_mass(concentration=0.7575, density=1.515), 4)
    0.5

    References
    ----------
    caustic-molarity
    """
    return concentration / density
