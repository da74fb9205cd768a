"""What a sewer costs: by volume and strength, in bands of volume, with a minimum."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from costing.quantities import InputError


def charge_by_strength(
    reception_charge: Any,
    volume_charge: Any,
    biology_charge: Any,
    sludge_charge: Any,
    settled_demand: Any,
    settleable_solids: Any,
    reference_demand: Any,
    reference_solids: Any,
) -> Any:
    """Charge for each volume of effluent by its strength, against the strength of ordinary sewage.

    The rates, the reference strengths, and what is measured how, are those of the works that takes the
    effluent: ask for its scheme. Leaves out standing charges and surcharges.

    Parameters
    ----------
    reception_charge : float
        Sewer: taking the water in and conveying it [money/L].
    volume_charge : float
        Treatment by volume alone [money/L].
    biology_charge : float
        Biology, for sewage of the reference strength [money/L].
    sludge_charge : float
        Sludge, for sewage of the reference strength [money/L].
    settled_demand : float
        Oxygen demand of the effluent once settled: COD as most schemes have it [kg/L].
    settleable_solids : float
        Suspended solids of the effluent [kg/L].
    reference_demand, reference_solids : float
        The same of ordinary sewage [kg/L].

    Returns
    -------
    float
        Charge for each volume [money/L].

    Notes
    -----
    ``R + V + (Ot / Os) B + (St / Ss) S``

    Examples
    --------
    Rates of 0.31, 0.35, 0.23 and 0.27 a cubic metre; COD of 1,300 mg/L against 260, solids as in sewage:

    >>> rates = (0.31e-3, 0.35e-3, 0.23e-3, 0.27e-3)
    >>> round(charge_by_strength(*rates, 1300e-6, 240e-6, 260e-6, 240e-6) * 1000, 2)
    2.08

    References
    ----------
    sewer-charges-2024
    """
    return (
        reception_charge
        + volume_charge
        + settled_demand / reference_demand * biology_charge
        + settleable_solids / reference_solids * sludge_charge
    )


class Tier(NamedTuple):
    """A band of volume with its rate.

    Attributes
    ----------
    up_to : float
        Volume at which the band ends; infinite in the last one [L].
    rate : float
        Charge for each volume within the band [money/L].
    """

    up_to: float
    rate: float


def charge_in_tiers(volume: float, tiers: Sequence[Tier], minimum: float = 0.0) -> float:
    """Charge for a volume in bands, each with its own rate, and not below a minimum.

    Parameters
    ----------
    volume : float
        Volume of the period [L].
    tiers : sequence of Tier
        Bands from the first litre on.
    minimum : float, optional
        What is due in any case [money].

    Returns
    -------
    float
        Charge [money].

    Raises
    ------
    InputError
        A volume, rate or minimum below zero, bands that do not rise, or that end below the volume.

    Examples
    --------
    1,000 m3 at 0.50 a cubic metre, what is above it at 0.80:

    >>> tiers = (Tier(1_000_000.0, 0.0005), Tier(float("inf"), 0.0008))
    >>> round(charge_in_tiers(1_500_000.0, tiers), 2), charge_in_tiers(1000.0, tiers, minimum=20.0)
    (900.0, 20.0)
    """
    for what, value in (("volume", volume), ("minimum", minimum), *(("rate", tier.rate) for tier in tiers)):
        if not value >= 0.0:
            raise InputError("charge", f"{what} is {value:g}; accepted is zero or more")
    start = total = 0.0
    for tier in tiers:
        if not tier.up_to > start:
            raise InputError("charge", f"a band ends at {tier.up_to:g} L, not above {start:g} L")
        total += max(0.0, min(volume, tier.up_to) - start) * tier.rate
        start = tier.up_to
    if volume > start:
        raise InputError("charge", f"volume is {volume:g} L; the bands end at {start:g} L")
    return max(total, minimum)
