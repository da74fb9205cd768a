"""What stands in a box beside water: when the lot starts, when it ends, and after an endless run."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

BUILD_UP = "builds up in the bath"  # cause of what a lot leaves in a box
SLIGHT = 1e-12  # of the steady concentration: a difference below it is rounding


class BathContent(NamedTuple):
    """Content of one box, substance by substance.

    Attributes
    ----------
    volume : float
        Liquor in the box [L].
    fill, steady : dict
        In a fresh fill, and after an endless run [kg/L].
    earlier, start, end : dict
        In the bath of the lot before as it was handed on, at the start and at the end of this lot [kg/L].
    built_up : dict
        What a kilogram of yarn leaves in the box, over the whole lot [kg/kg].
    """

    volume: float
    fill: dict[str, float]
    steady: dict[str, float]
    earlier: dict[str, float]
    start: dict[str, float]
    end: dict[str, float]
    built_up: dict[str, float]


def bath_content(
    mixed: Mapping[str, float],
    fill: Mapping[str, float],
    outflow: float,
    volume: float,
    lot_mass: float,
    kept: float,
) -> BathContent:
    """Follow a stirred box through a lot.

    Lots of the same recipe and size are taken to follow each other where a bath is handed on.

    Parameters
    ----------
    mixed : mapping
        Substance -> what is fed, made and brought into the box; all of it leaves in the end [kg/kg].
    fill : mapping
        Substance -> concentration in a fresh fill [kg/L].
    outflow : float
        Liquor of the box that leaves, with the yarn and over the weir [L/kg].
    volume : float
        Liquor in the box [L].
    lot_mass : float
        Grey yarn of the lot; infinity for the steady state [kg].
    kept : float
        Share of the volume that is taken over from the lot before; the rest is a fresh fill [fraction].

    Returns
    -------
    BathContent
        In kg/L, and kg/kg for what stays in the box.

    Notes
    -----
    ``c_end = c_steady - (c_steady - c_start) exp(-m w / V)`` with ``c_start = kept c_end + (1 - kept)
    c_fill`` where lot follows lot, and ``c_start = c_fill`` behind a fresh fill.

    Examples
    --------
    A fresh box of 12,000 L runs 8,000 kg that take 0.75 L/kg of it along: four tenths of the salt is there.

    >>> content = bath_content({"sodium_sulfite": 0.03}, {}, 0.75, 12000.0, 8000.0, 0.0)
    >>> round(content.end["sodium_sulfite"] / content.steady["sodium_sulfite"], 3)
    0.393
    """
    changed = -math.expm1(-lot_mass * outflow / volume)
    steady = {substance: amount / outflow for substance, amount in mixed.items()}
    names = list(dict.fromkeys([*steady, *fill]))
    earlier, start, end, built_up = {}, {}, {}, {}
    for name in names:
        new, old = fill.get(name, 0.0), steady.get(name, 0.0)
        gap = old - new
        if abs(gap) <= SLIGHT * max(abs(old), abs(new)):
            gap = 0.0
        still_missing = gap * (1.0 - kept) / (1.0 - kept + kept * changed) if gap else 0.0
        start[name] = old - still_missing
        end[name] = old - still_missing * (1.0 - changed)
        earlier[name] = end[name] if kept > 0.0 else new
        if name in steady:
            built_up[name] = volume * still_missing * changed / lot_mass
    return BathContent(volume, dict(fill), steady, earlier, start, end, built_up)
