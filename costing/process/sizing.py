"""Size: what the warp takes from the box, and what must be cooked for it.

Add-on is dry size over the mass of the unsized warp, both bone dry or both at the same moisture. Size that
dusts off in the loom is not covered.
"""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import holds
from costing.quantities import InputError


def size_add_on_from_pick_up(size_pick_up: Any, size_solids: Any) -> Any:
    """Size add-on from wet pick-up and solids of the liquor, for warp that enters dry.

    Parameters
    ----------
    size_pick_up : float
        Size liquor on the warp behind the squeeze, of the mass of the unsized warp [kg/kg].
    size_solids : float
        Dry size in the liquor, of the mass of the liquor [kg/kg].

    Returns
    -------
    float
        Size add-on [fraction].

    Examples
    --------
    >>> round(size_add_on_from_pick_up(size_pick_up=1.10, size_solids=0.085), 4)
    0.0935

    References
    ----------
    pick-up-exam-item
    """
    return size_pick_up * size_solids


def size_pick_up_from_add_on(size_add_on: Any, size_solids: Any) -> Any:
    """Wet pick-up that gives a size add-on, for warp that enters dry.

    Parameters
    ----------
    size_add_on : float
        Wanted size add-on, of the unsized mass [fraction].
    size_solids : float
        Dry size in the liquor, of the mass of the liquor [kg/kg].

    Returns
    -------
    float
        Size liquor on the warp behind the squeeze, of the mass of the unsized warp [kg/kg].

    Examples
    --------
    >>> round(size_pick_up_from_add_on(size_add_on=0.09, size_solids=0.085), 4)
    1.0588
    """
    return size_add_on / size_solids


def size_solids_for_add_on(size_add_on: Any, size_pick_up: Any) -> Any:
    """Solids of the size liquor that give an add-on, for warp that enters dry.

    Parameters
    ----------
    size_add_on : float
        Wanted size add-on, of the unsized mass [fraction].
    size_pick_up : float
        Size liquor on the warp behind the squeeze, of the mass of the unsized warp [kg/kg].

    Returns
    -------
    float
        Dry size in the liquor, of the mass of the liquor [kg/kg].

    Examples
    --------
    >>> round(size_solids_for_add_on(size_add_on=0.09, size_pick_up=1.10), 4)
    0.0818

    References
    ----------
    gate-tf-2021
    """
    return size_add_on / size_pick_up


def size_liquor_taken(size_pick_up: Any, density: Any) -> Any:
    """Volume of size liquor that each kilogram of warp takes, for warp that enters dry.

    Parameters
    ----------
    size_pick_up : float
        Size liquor on the warp behind the squeeze, of the mass of the unsized warp [kg/kg].
    density : float
        Density of the hot size liquor [kg/L].

    Returns
    -------
    float
        Size liquor [L/kg].

    Examples
    --------
    >>> round(size_liquor_taken(size_pick_up=1.10, density=1.03), 4)
    1.068
    """
    return size_pick_up / density


def size_add_on_wet_in(pick_up_out: Any, exchange: Any, size_box_strength: Any) -> Any:
    """Size add-on of warp that enters the box wet with water.

    Leaves out any size that binds to the fibre beyond the liquor carried.

    Parameters
    ----------
    pick_up_out : float
        Liquor on the warp behind the squeeze [L/kg].
    exchange : float
        Share of the liquor on the warp that the box replaces [fraction].
    size_box_strength : float
        Dry size in each litre of the box [kg/L].

    Returns
    -------
    float
        Size add-on, of the unsized mass [fraction].

    Notes
    -----
    ``a = w_out eps C_box``. The box stands below the strength of the feed, because the warp brings water:
    see `size_feed_strength_wet_in`.

    Examples
    --------
    >>> round(size_add_on_wet_in(pick_up_out=1.2, exchange=1.0, size_box_strength=0.075), 4)
    0.09
    """
    return pick_up_out * exchange * size_box_strength


def size_box_strength_wet_in(size_add_on: Any, pick_up_out: Any, exchange: Any) -> Any:
    """Strength at which the size box must stand, for warp that enters wet with water.

    Parameters
    ----------
    size_add_on : float
        Wanted size add-on, of the unsized mass [fraction].
    pick_up_out : float
        Liquor on the warp behind the squeeze [L/kg].
    exchange : float
        Share of the liquor on the warp that the box replaces [fraction].

    Returns
    -------
    float
        Dry size in each litre of the box [kg/L].

    Examples
    --------
    >>> round(size_box_strength_wet_in(size_add_on=0.09, pick_up_out=1.2, exchange=1.0), 4)
    0.075
    """
    return size_add_on / (pick_up_out * exchange)


def size_feed_strength_wet_in(size_add_on: Any, pick_up_in: Any, pick_up_out: Any) -> Any:
    """Strength of the size liquor fed that makes up for the water on warp that enters wet.

    Holds while the box neither overflows nor takes water from elsewhere, such as live steam.

    Parameters
    ----------
    size_add_on : float
        Size add-on, of the unsized mass [fraction].
    pick_up_in : float
        Water on the entering warp [L/kg].
    pick_up_out : float
        Liquor on the warp behind the squeeze [L/kg].

    Returns
    -------
    float
        Dry size in each litre of feed [kg/L].

    Raises
    ------
    InputError
        Warp that leaves with no more liquor than it brings: nothing can be fed.

    Notes
    -----
    ``C_feed = a / (w_out - w_in)``: what is fed is only what the warp takes beyond the water it brings.

    Examples
    --------
    Half of the liquor that leaves came in as water, so the feed is twice as strong as the box:

    >>> round(size_feed_strength_wet_in(size_add_on=0.09, pick_up_in=0.6, pick_up_out=1.2), 4)
    0.15
    """
    if not holds(pick_up_out > pick_up_in):
        raise InputError(
            "",
            f"pick up out is {pick_up_out:.4g} L/kg and pick up in {pick_up_in:.4g} L/kg, so no size can be "
            "fed; accepted is more out than in",
        )
    return size_add_on / (pick_up_out - pick_up_in)


def size_liquor_to_cook(
    yarn_mass: Any, size_liquor: Any, size_loss: Any = 0.0, size_box_volume: Any = 0.0
) -> Any:
    """Size liquor to cook for an order, with the losses and what is left in the box at the end.

    Parameters
    ----------
    yarn_mass : float
        Unsized warp of the order [kg].
    size_liquor : float
        Size liquor that the warp takes [L/kg].
    size_loss : float, optional
        Size that never reaches the warp, of the size cooked [fraction].
    size_box_volume : float, optional
        Liquor left in box and pipes and thrown away [L].

    Returns
    -------
    float
        Size liquor [L].

    Notes
    -----
    ``V = m v / (1 - loss) + V_box``. A loss of 2 to 6 % is common practice, no source.

    Examples
    --------
    >>> round(size_liquor_to_cook(4500.0, 1.07, size_loss=0.04, size_box_volume=600.0), 1)
    5615.6
    """
    return yarn_mass * size_liquor / (1.0 - size_loss) + size_box_volume


def size_for_order(yarn_mass: Any, size_add_on: Any, size_loss: Any = 0.0) -> Any:
    """Dry size for an order, with the losses.

    Leaves out what is left in the box at the end.

    Parameters
    ----------
    yarn_mass : float
        Unsized warp of the order [kg].
    size_add_on : float
        Size add-on, of the unsized mass [fraction].
    size_loss : float, optional
        Size that never reaches the warp, of the size cooked [fraction].

    Returns
    -------
    float
        Dry size [kg].

    Examples
    --------
    >>> round(size_for_order(yarn_mass=4500.0, size_add_on=0.09, size_loss=0.04), 1)
    421.9

    References
    ----------
    sizing-problems, problem 1
    """
    return yarn_mass * size_add_on / (1.0 - size_loss)


def size_per_metre_of_warp(ends: Any, linear_density: Any, size_add_on: Any) -> Any:
    """Dry size on each metre of warp; with one end, on each metre of yarn.

    Parameters
    ----------
    ends : float
        Ends of the warp [whole number].
    linear_density : float
        Mass per length of the unsized yarn, as it enters the size box [kg/m].
    size_add_on : float
        Size add-on, of the unsized mass [fraction].

    Returns
    -------
    float
        Dry size [kg/m].

    Examples
    --------
    >>> round(size_per_metre_of_warp(4200, 84.4e-6, size_add_on=0.09) * 1000, 2)
    31.9

    References
    ----------
    brooks-cotton-manufacturing, Weight of a Piece
    """
    return ends * linear_density * size_add_on


def size_add_on_from_weighing(sized_mass: Any, desized_mass: Any, blank_loss: Any = 0.0) -> Any:
    """Size add-on from a sample weighed before and after desizing, both times bone dry.

    Leaves out size that the desizing does not reach.

    Parameters
    ----------
    sized_mass : float
        Mass before desizing [kg].
    desized_mass : float
        Mass after desizing [kg].
    blank_loss : float, optional
        What unsized yarn loses in the same desizing [fraction].

    Returns
    -------
    float
        Size add-on, of the unsized mass [fraction].

    Raises
    ------
    InputError
        A sample without its size that weighs more than with it.

    Notes
    -----
    ``a = m_sized (1 - blank) / m_desized - 1``

    Examples
    --------
    >>> round(size_add_on_from_weighing(sized_mass=0.0109, desized_mass=0.0097, blank_loss=0.03), 4)
    0.09

    References
    ----------
    gate-tf-2010, question 11
    """
    ratio = sized_mass * (1.0 - blank_loss) / desized_mass
    if not holds(ratio >= 1.0):
        raise InputError(
            "",
            f"the sample weighs {ratio:.4g} of its unsized mass with size on it; accepted is a sized mass, "
            "less the blank loss, of at least the desized mass",
        )
    return ratio - 1.0
