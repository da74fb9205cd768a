"""What metres off shade and of second quality cost the metres of first quality."""

from __future__ import annotations

from typing import Any

from costing.construction.sets import first_quality_share


def cost_of_first_quality(
    cost: Any, off_shade_share: Any, seconds_share: Any, off_shade_value: Any, seconds_value: Any
) -> Any:
    """Cost of what is of first quality, which carries what the rest does not bring back.

    What a metre brings back is counted on its cost and not on a price: the price here holds no weaving and
    finishing, and a cost must not move with the margin. The same holds for a metre as for a kilogram.

    Parameters
    ----------
    cost : float
        Cost of all that is made [money/kg].
    off_shade_share : float
        Metres off shade, of the metres made [fraction].
    seconds_share : float
        Metres of second quality, of the metres made [fraction].
    off_shade_value : float
        What a metre off shade brings back, of the cost of a metre made [fraction].
    seconds_value : float
        What a metre of second quality brings back, of the cost of a metre made [fraction].

    Returns
    -------
    float
        Cost of first quality [money/kg].

    Notes
    -----
    ``c_first = c (1 - o v_o - s v_s) / (1 - o - s)``: cost of all metres less the value recovered, over the
    metres of first quality.

    Examples
    --------
    Of 100 m at 1.00 each, 2 m bring 0.80 and 3 m bring 0.60; 96.60 are left for 95 m:

    >>> round(cost_of_first_quality(1.0, 0.02, 0.03, off_shade_value=0.8, seconds_value=0.6), 4)
    1.0168
    """
    recovered = off_shade_share * off_shade_value + seconds_share * seconds_value
    return cost * (1.0 - recovered) / first_quality_share(off_shade_share, seconds_share)
