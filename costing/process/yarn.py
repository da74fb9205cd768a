"""The yarn between two steps, per kilogram of grey yarn at commercial regain."""

from __future__ import annotations

from dataclasses import dataclass, field, replace


@dataclass
class YarnState:
    """What runs from one step to the next.

    Attributes
    ----------
    fibre : float
        Bone-dry cotton [kg/kg].
    regain_water : float
        Water that the air-dry fibre holds, apart from liquor [kg/kg].
    liquor : float
        Liquor on the yarn [L/kg].
    dissolved : dict
        Substance -> amount in that liquor, water apart [kg/kg].
    loose : dict
        Substance -> amount on the fibre that the next rinse takes off [kg/kg].
    dried_on : dict
        Substance -> amount that drying has left on the fibre [kg/kg].
    fixed : float
        Dye and auxiliaries bound to the fibre [kg/kg].
    temperature : float
        Temperature [degC].
    air_dry : bool
        True while no liquor has driven the air out.
    """

    fibre: float
    regain_water: float
    temperature: float
    liquor: float = 0.0
    dissolved: dict[str, float] = field(default_factory=dict)
    loose: dict[str, float] = field(default_factory=dict)
    dried_on: dict[str, float] = field(default_factory=dict)
    fixed: float = 0.0
    air_dry: bool = True


def added(first: dict[str, float], second: dict[str, float]) -> dict[str, float]:
    """Both amounts together, substance by substance."""
    return {key: first.get(key, 0.0) + second.get(key, 0.0) for key in {**first, **second}}


def wetted_again(yarn: YarnState) -> YarnState:
    """The yarn as a wet box meets it: what an earlier drying left on the fibre dissolves again."""
    if not yarn.dried_on:
        return yarn
    return replace(yarn, dissolved=added(yarn.dissolved, yarn.dried_on), dried_on={})
