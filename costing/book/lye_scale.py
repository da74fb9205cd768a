"""Scales on which the strength of caustic lye is told: a hydrometer's degrees, and % by mass.

None is a plain factor, so none stands in the table of units: all go through the one density table. Degrees
are those that a hydrometer made for 60 degF shows in lye of 25 degC, its glass left out of account; the same
lye shows about half a degree Baume more at 60 degF. Baume is the scale 145 - 145/d for heavy liquids. Only
what is a concentration or a strength of caustic may be given so.
"""

from __future__ import annotations

import re

from costing.process import lye
from costing.quantities import Quantity

BAUME, TWADDELL, BY_MASS = "°Bé", "°Tw", "% w/w"
SCALES = (BAUME, TWADDELL, BY_MASS)

# NaOH 100 % in a litre, in the house unit, and the share by mass.
CONCENTRATIONS = ("bath_caustic", "scour_caustic", "caustic_dosing", "lye_concentration", "free_caustic")
BY_SHARE = "lye_strength"
MOST = 0.5  # by mass: where the table ends

_SPELLED = (
    (BAUME, re.compile(r"(?:°|deg(?:rees?)?)? ?(?:b[eé]|baum[eé])")),
    (TWADDELL, re.compile(r"(?:°|deg(?:rees?)?)? ?(?:tw|twaddell|twaddle)")),
    (BY_MASS, re.compile(r"% ?(?:w/w|m/m|by mass|by weight)|wt ?%")),
)
_ACCENT = "e\u0301"  # an e with its accent as a letter of its own


def scale_named(text: str) -> str:
    """The scale that a text names, "" for none.

    Examples
    --------
    >>> scale_named("° Be"), scale_named("degTw"), scale_named("% W/W"), scale_named("%")
    ('°Bé', '°Tw', '% w/w', '')
    """
    plain = " ".join(text.split()).casefold().replace(_ACCENT, "é")
    return next((scale for scale, spelled in _SPELLED if spelled.fullmatch(plain)), "")


def scale_of(name: str, text: str) -> str:
    """The scale that a text names, where the quantity may be given in it; else "".

    Examples
    --------
    >>> scale_of("caustic_dosing", "degBe"), scale_of("bath_indigo", "degBe")
    ('°Bé', '')
    """
    return scale_named(text) if name in CONCENTRATIONS or name == BY_SHARE else ""


def concentration(number: float, scale: str) -> float:
    """Caustic (NaOH 100 %) in a litre of lye [kg/L].

    Raises
    ------
    InputError
        Outside the table of lye.

    Examples
    --------
    >>> round(1000.0 * concentration(26.0, "°Bé"), 1)
    244.5
    """
    return float(lye.lye_concentration_from_strength(_share(number, scale)))


def on_scale(caustic: float, scale: str) -> float:
    """What `concentration` reads: degrees, or % by mass, of lye with so much caustic in a litre.

    Raises
    ------
    InputError
        Outside the table of lye.

    Examples
    --------
    >>> round(on_scale(0.250, "°Bé"), 2), round(on_scale(0.250, "°Tw"), 2), round(on_scale(0.250, "% w/w"), 2)
    (26.41, 44.54, 20.47)
    """
    return _shown(float(lye.lye_strength_from_concentration(caustic)), scale)


def house_value(item: Quantity, number: float, scale: str) -> float:
    """A number on a scale in the house unit of a quantity.

    Raises
    ------
    InputError
        Outside the table of lye.
    """
    return _share(number, scale) if item.name == BY_SHARE else concentration(number, scale)


def scale_value(item: Quantity, house: float, scale: str) -> float:
    """The other way round.

    Raises
    ------
    InputError
        Outside the table of lye.
    """
    return _shown(house, scale) if item.name == BY_SHARE else on_scale(house, scale)


def scale_range(low: float, high: float, scale: str) -> tuple[float, float]:
    """A range of caustic in a litre on a scale, as far as the table and the hydrometer go.

    Examples
    --------
    >>> [round(end, 2) for end in scale_range(0.0, 1.0, "°Bé")]
    [0.0, 49.81]
    """
    most = float(lye.lye_concentration_from_strength(MOST))
    return max(0.0, on_scale(low, scale)), on_scale(min(high, most), scale)


def _share(number: float, scale: str) -> float:
    if scale == BY_MASS:
        return number / 100.0
    of = lye.specific_gravity_from_baume if scale == BAUME else lye.specific_gravity_from_twaddell
    return float(lye.lye_strength_from_density(lye.lye_density_from_specific_gravity(of(number))))


def _shown(share: float, scale: str) -> float:
    if scale == BY_MASS:
        return 100.0 * share
    gravity = lye.specific_gravity_from_density(lye.lye_density_from_strength(share))
    of = lye.baume_from_specific_gravity if scale == BAUME else lye.twaddell_from_specific_gravity
    return float(of(gravity))
