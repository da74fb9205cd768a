"""Equations of money, and rounding, which comes once and last."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import floor, gcd
from typing import Any


def delivered_price(price: Any, freight: Any = 0.0, exchange_rate: Any = 1.0) -> Any:
    """Price of a product at the mill's gate, in the mill's money.

    Parameters
    ----------
    price : float
        Price of the product as delivered [money/kg].
    freight : float, optional
        Freight and duty, in the same money [money/kg].
    exchange_rate : float, optional
        Money of the mill for one of the other currency [fraction].

    Returns
    -------
    float
        Price [money/kg].

    Examples
    --------
    >>> round(delivered_price(price=1.20, freight=0.10, exchange_rate=0.9), 4)
    1.17
    """
    return (price + freight) * exchange_rate


def price_of_pure_substance(price: Any, strength: Any, freight: Any = 0.0) -> Any:
    """Price of the active part of a product, which is what offers of unlike strength compare by.

    Parameters
    ----------
    price : float
        Price of the product as delivered [money/kg].
    strength : float
        Active part of the product [fraction].
    freight : float, optional
        Freight and duty on the product as delivered [money/kg].

    Returns
    -------
    float
        Price of the active part [money/kg].

    Examples
    --------
    >>> round(price_of_pure_substance(price=1.10, strength=0.88), 4)
    1.25
    """
    return (price + freight) / strength


def price_from_volume(price_per_litre: Any, density: Any) -> Any:
    """Price by mass of a product that is sold by volume.

    Parameters
    ----------
    price_per_litre : float
        Price of the product [money/L].
    density : float
        Density of the product [kg/L].

    Returns
    -------
    float
        Price [money/kg].

    Examples
    --------
    >>> round(price_from_volume(price_per_litre=0.606, density=1.515), 4)
    0.4
    """
    return price_per_litre / density


def price_with_margin(cost: Any, margin: Any) -> Any:
    """Selling price that leaves a margin, as a share of that price.

    Parameters
    ----------
    cost : float
        Full cost [money/kg].
    margin : float
        Margin, of the selling price [fraction].

    Returns
    -------
    float
        Selling price [money/kg].

    Examples
    --------
    >>> round(price_with_margin(cost=0.80, margin=0.20), 4)
    1.0
    """
    return cost / (1.0 - margin)


def cost_per_metre_of_cloth(cost: Any, warp_mass_per_metre: Any) -> Any:
    """Cost per metre of cloth from the cost per mass of warp.

    Parameters
    ----------
    cost : float
        Cost per mass of grey warp yarn [money/kg].
    warp_mass_per_metre : float
        Grey warp yarn per metre of cloth [kg/m].

    Returns
    -------
    float
        Cost per metre [money/m].

    Examples
    --------
    >>> round(cost_per_metre_of_cloth(cost=0.60, warp_mass_per_metre=0.36), 4)
    0.216
    """
    return cost * warp_mass_per_metre


def rounded(amount: float | Decimal, step: float) -> Decimal:
    """Round an amount of money to a step, half away from zero.

    Parameters
    ----------
    amount : float or Decimal
        Money; a product of decimals is rounded as it is written, without what a float makes of it.
    step : float
        Step of the rounding, as 0.01.

    Returns
    -------
    Decimal
        A whole number of steps.

    Examples
    --------
    >>> rounded(1.005, 0.01)
    Decimal('1.01')
    >>> rounded(2.675 * 3.0, 0.01), rounded(Decimal("2.675") * 3, 0.01)
    (Decimal('8.02'), Decimal('8.03'))
    >>> rounded(2.3449999, 0.001)
    Decimal('2.345')
    """
    size = Decimal(repr(step))
    return (Decimal(str(amount)) / size).quantize(Decimal(1), rounding=ROUND_HALF_UP) * size


def common_step(steps: Sequence[float]) -> Decimal:
    """The largest step that all rounding steps are whole numbers of.

    Examples
    --------
    >>> common_step([0.005, 0.002])
    Decimal('0.001')
    """
    sizes = [Fraction(Decimal(repr(step))) for step in steps]
    whole = 1
    for size in sizes:
        whole = whole * size.denominator // gcd(whole, size.denominator)
    return Decimal(gcd(*[int(size * whole) for size in sizes])) / Decimal(whole)


def shown_parts(parts: Sequence[Fraction], total: Decimal, step: Decimal) -> list[Decimal]:
    """Parts of a rounded total, each rounded to the step down or up, so that they add up to it.

    Each is first rounded down; the steps that are then missing go to the parts that lost most.

    Parameters
    ----------
    parts : sequence of Fraction
        Exact money.
    total : Decimal
        Their sum, rounded: a whole number of steps.
    step : Decimal
        Step of the rounding.

    Returns
    -------
    list of Decimal
        Whole numbers of steps, in the order of the parts.

    Examples
    --------
    >>> thirds = [Fraction(1, 3)] * 3
    >>> [str(part) for part in shown_parts(thirds, Decimal("1.00"), Decimal("0.01"))]
    ['0.34', '0.33', '0.33']
    """
    if not parts:
        return []
    size = Fraction(step)
    steps = [floor(part / size) for part in parts]
    missing = int(Fraction(total) / size) - sum(steps)
    each, over = divmod(missing, len(parts))
    lost = sorted(range(len(parts)), key=lambda place: steps[place] - parts[place] / size)
    up = set(lost[:over])
    return [(count + each + (place in up)) * step for place, count in enumerate(steps)]
