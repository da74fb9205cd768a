"""What stands in a box beside water: when the lot starts, and when it ends."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from costing.process.arithmetic import expm1, is_nothing, larger, where

BUILD_UP = "builds up in the bath"  # cause of what a lot leaves in a box
NOTHING: Mapping[str, float] = {}
SLIGHT = 1e-12  # of the steady concentration: a difference below it is rounding


class BathContent(NamedTuple):
    """Content of one box, substance by substance.

    Attributes
    ----------
    fill : dict
        In a fresh fill [kg/L].
    earlier, start, end, handed_on : dict
        In the bath of the lot before as it was handed on, at the start and at the end of this lot, and as
        this lot hands it on [kg/L].
    built_up : dict
        What a kilogram of yarn leaves in the box, over the whole lot; below zero where the yarn takes
        along what stops have made [kg/kg].
    """

    fill: dict[str, float]
    earlier: dict[str, float]
    start: dict[str, float]
    end: dict[str, float]
    handed_on: dict[str, float]
    built_up: dict[str, float]


def bath_content(
    mixed: Mapping[str, float],
    fill: Mapping[str, float],
    outflow: float,
    volume: float,
    lot_mass: float,
    kept: float,
    at_start: Mapping[str, float] = NOTHING,
    in_stops: Mapping[str, float] = NOTHING,
    ageing: Mapping[str, float] = NOTHING,
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
    at_start, in_stops : mapping, optional
        Substance -> what the start and the stops of the lot make in the box [kg].
    ageing : mapping, optional
        Substance -> what a bath makes while it waits for the next lot [kg/L].

    Returns
    -------
    BathContent
        In kg/L, and kg/kg for what stays in the box.

    Notes
    -----
    ``c_end = c_steady - (c_steady - c_start) exp(-m w / V)`` with ``c_start = kept (c_end + c_ageing) +
    (1 - kept) c_fill + m_start / V`` where lot follows lot; what stops make counts as fed over the lot.

    Examples
    --------
    A fresh box of 12,000 L runs 8,000 kg that take 0.75 L/kg of it along: four tenths of the salt is there.

    >>> content = bath_content({"sodium_sulfite": 0.03}, {}, 0.75, 12000.0, 8000.0, 0.0)
    >>> round(content.end["sodium_sulfite"] / (0.03 / 0.75), 3)
    0.393
    """
    changed = -expm1(-lot_mass * outflow / volume)
    earlier, start, end, handed_on, built_up = {}, {}, {}, {}, {}
    for name in dict.fromkeys([*mixed, *fill, *at_start, *in_stops]):
        stops, waiting = in_stops.get(name, 0.0) / lot_mass, ageing.get(name, 0.0)
        new, old = fill.get(name, 0.0), (mixed.get(name, 0.0) + stops) / outflow
        apart = old - new
        gap = where(abs(apart) > SLIGHT * larger(abs(old), abs(new)), apart, 0.0)
        added = at_start.get(name, 0.0) / volume + kept * waiting
        missing = 0.0  # of the steady strength, at the start
        if not (is_nothing(gap) and is_nothing(added)):
            missing = (gap * (1.0 - kept) - added) / (1.0 - kept + kept * changed)
        start[name] = old - missing
        end[name] = old - missing * (1.0 - changed)
        handed_on[name] = end[name] + waiting
        earlier[name] = handed_on[name] if kept > 0.0 else new
        built_up[name] = volume * missing * changed / lot_mass - stops
    return BathContent(dict(fill), earlier, start, end, handed_on, built_up)
