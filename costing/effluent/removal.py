"""What a treatment step takes out, several in a row, and what a tank leaves of a peak."""

from __future__ import annotations

from typing import Any

from costing.process.arithmetic import exp


def removal_from_concentrations(concentration_before: Any, concentration_after: Any) -> Any:
    """Share of a parameter that a treatment step takes out, from what is measured before and behind it.

    Holds where as much water leaves as comes in; a membrane also sends water away. Below zero where the step
    adds some.

    Parameters
    ----------
    concentration_before, concentration_after : float
        Concentration before and behind the step; colour in mg/L of platinum-cobalt counts too [kg/L].

    Returns
    -------
    float
        Removal [fraction].

    Examples
    --------
    Ultrafiltration of filtered indigo rinse water, COD of 892 mg/L before and 856 mg/L behind:

    >>> round(removal_from_concentrations(892e-6, 856e-6), 4)
    0.0404

    References
    ----------
    unlu-2008
    """
    return 1.0 - concentration_after / concentration_before


def removal_in_series(
    first_removal: Any, second_removal: Any = 0.0, third_removal: Any = 0.0, fourth_removal: Any = 0.0
) -> Any:
    """Removal of treatment steps in a row, each of what the one before leaves.

    A step behind another often finds what is hard to remove, so the product tends to be too good.

    Parameters
    ----------
    first_removal : float
        Removal of one step [fraction].
    second_removal, third_removal, fourth_removal : float, optional
        Removal of the others [fraction].

    Returns
    -------
    float
        Removal of all together [fraction].

    Notes
    -----
    ``1 - (1 - R1)(1 - R2)(1 - R3)(1 - R4)``

    Examples
    --------
    Two filters that take 64 % and 62 % of the colour:

    >>> round(removal_in_series(0.64, 0.62), 4)
    0.8632
    """
    left = (1.0 - first_removal) * (1.0 - second_removal) * (1.0 - third_removal) * (1.0 - fourth_removal)
    return 1.0 - left


def peak_behind_tank(dump_time: Any, residence_time: Any) -> Any:
    """Peak that is left of a dump behind a mixed tank.

    Takes the concentration as even during the dump, the flow as even throughout and the tank as well mixed; a
    tank that fills and empties damps more. Nothing is removed: the load leaves later.

    Parameters
    ----------
    dump_time : float
        Time in which the dump enters [h].
    residence_time : float
        Volume of the tank over the flow [h].

    Returns
    -------
    float
        Rise of concentration behind the tank over that before it [fraction].

    Notes
    -----
    ``1 - exp(-td / tr)``: the answer of one mixed tank to a square pulse, at its end.

    Examples
    --------
    A dump of one hour in a tank of twelve hours:

    >>> round(peak_behind_tank(1.0, 12.0), 4)
    0.08
    """
    return 1.0 - exp(0.0 - dump_time / residence_time)
