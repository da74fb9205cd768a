"""Units as people write them, converted by a small table of floats.

The table is generated from pint (``tests/tools/make_unit_table.py``) and tested against it, because pint
needs a newer Python than some spreadsheet programs bring, and a third of a second at its first use. Cells of
the book, cells of a formula and the command line all read a unit here, so all accept the same.
"""

from __future__ import annotations

import re
from functools import lru_cache

from costing.quantities.unit_table import PARTS, UNITS

LONGEST_UNIT = 30

# A whole unit as it may be written -> as the table has it.
ALIASES = {
    "1": "",
    "fraction": "",
    "dimensionless": "",
    "°C": "degC",
    "C": "degC",
    "celsius": "degC",
    "°F": "degF",
    "F": "degF",
    "fahrenheit": "degF",
    "epi": "1/in",
    "ppi": "1/in",
    "gsm": "g/m2",
    "M": "mol/L",
}

# A word in a unit -> the sign for it. No "ton": it may be the metric, the long or the short one.
WORDS = {
    "gram": "g",
    "grams": "g",
    "kilogram": "kg",
    "kilograms": "kg",
    "milligram": "mg",
    "milligrams": "mg",
    "ug": "µg",
    "tonne": "t",
    "tonnes": "t",
    "pound": "lb",
    "pounds": "lb",
    "lbs": "lb",
    "ounce": "oz",
    "ounces": "oz",
    "grains": "grain",
    "mole": "mol",
    "moles": "mol",
    "l": "L",
    "liter": "L",
    "liters": "L",
    "litre": "L",
    "litres": "L",
    "ml": "mL",
    "milliliter": "mL",
    "milliliters": "mL",
    "millilitre": "mL",
    "millilitres": "mL",
    "cl": "cL",
    "dl": "dL",
    "hl": "hL",
    "gallon": "gal",
    "gallons": "gal",
    "meter": "m",
    "meters": "m",
    "metre": "m",
    "metres": "m",
    "centimeter": "cm",
    "centimeters": "cm",
    "centimetre": "cm",
    "centimetres": "cm",
    "millimeter": "mm",
    "millimeters": "mm",
    "millimetre": "mm",
    "millimetres": "mm",
    "kilometer": "km",
    "kilometers": "km",
    "kilometre": "km",
    "kilometres": "km",
    "um": "µm",
    "uS": "µS",
    "yard": "yd",
    "yards": "yd",
    "yds": "yd",
    "inch": "in",
    "inches": "in",
    "foot": "ft",
    "feet": "ft",
    "hr": "h",
    "hrs": "h",
    "hour": "h",
    "hours": "h",
    "mins": "min",
    "minute": "min",
    "minutes": "min",
    "sec": "s",
    "secs": "s",
    "second": "s",
    "seconds": "s",
    "d": "day",
    "days": "day",
    "percent": "%",
    "denier": "den",
    "kelvin": "K",
    "Btu": "BTU",
    "°C": "degC",
    "°F": "degF",
}

COUNTS = {UNITS["tex"][0], UNITS["Ne"][0]}
AMOUNT = "substance"

_SIGNS = str.maketrans({"²": "2", "³": "3", "μ": "µ", "·": "*", ".": "*", "^": None})
_PER = re.compile(r"(?:^| )per ")
_AROUND = re.compile(r"\s*([/*()])\s*")
_COUNTED = re.compile(r"^(?:ends?|picks?|threads?)?/")  # a number of things has no unit of its own
_WORD = re.compile(r"[^\W\d_]+|[%°][^\W\d_]*")
_PIECE = re.compile(r"([/* ])(\(?)([^\W\d_]+|[%°][^\W\d_]*)(-?\d)?(\)?)")
_POWER = re.compile(r"([a-z]+)([+-]\d+)")

Measure = tuple[str, float, float]


@lru_cache(maxsize=1024)
def canonical(unit: str) -> str:
    """The table's spelling of a unit, or of one that is put together from units of the table.

    Raises
    ------
    KeyError
        When it is no unit.

    Examples
    --------
    >>> canonical(" kg / m² "), canonical("ends per cm"), canonical("g/l"), canonical("lbs per gallon")
    ('kg/m2', '1/cm', 'g/L', 'lb/gal')
    """
    written = " ".join(unit.split())
    if written in UNITS:
        return written
    if len(written) > LONGEST_UNIT:
        raise KeyError(unit)
    text = _PER.sub("/", written.replace("**", "").translate(_SIGNS))
    text = _COUNTED.sub("1/", _AROUND.sub(r"\1", text))
    text = ALIASES.get(text, text)
    text = _WORD.sub(lambda found: WORDS.get(found[0], found[0]), text)
    if text not in UNITS:
        _composed(text)
    return text


@lru_cache(maxsize=1024)
def measure(unit: str) -> Measure:
    """Dimension of a unit, with factor and offset to SI base units.

    Raises
    ------
    KeyError
        When it is no unit.

    Examples
    --------
    >>> measure("kg/L"), measure("t / m3")
    (('length-3 mass+1', 1000.0, 0.0), ('length-3 mass+1', 1000.0, 0.0))
    """
    text = canonical(unit)
    return UNITS[text] if text in UNITS else _composed(text)


def _composed(text: str) -> Measure:
    """A product or quotient of units of the table, such as ``kcal/h/m2`` or ``g/(m2*h)``."""
    rest = text[1:] if text.startswith("1/") else f"*{text}"
    place, below, factor = 0, False, 1.0
    powers: dict[str, int] = {}
    while place < len(rest):
        found = _PIECE.match(rest, place)
        if found is None:
            raise KeyError(text)
        sign, opened, name, power, closed = found.groups()
        row = PARTS.get(name) or UNITS.get(name)
        below_here = below or opened != ""
        if row is None or (opened and (below or sign != "/")) or (closed and not below_here):
            raise KeyError(text)
        times = int(power or 1) * (-1 if (sign == "/") != below else 1)
        factor *= row[1] ** times
        for base, exponent in _POWER.findall(row[0]):
            powers[base] = powers.get(base, 0) + int(exponent) * times
        below = below_here and not closed
        place = found.end()
    if not powers or below or powers.get(AMOUNT) == 0:  # a ratio of amounts is not a ratio of masses
        raise KeyError(text)
    dimension = " ".join(f"{base}{power:+d}" for base, power in sorted(powers.items()) if power)
    return dimension, factor, 0.0


def convert(value: float, unit: str, target: str) -> float:
    """Convert a value between two units of the same dimension.

    Parameters
    ----------
    value : float
        The number, in `unit`.
    unit, target : str
        Units as `canonical` reads them.

    Raises
    ------
    KeyError
        When one is no unit.
    ValueError
        When the two units measure different things.

    Notes
    -----
    A count in Ne or Nm is length per mass, the reciprocal of tex: the one pair of unlike
    dimensions that may be converted.

    Examples
    --------
    >>> round(convert(14.5, "oz/yd2", "g/m2"), 2)
    491.63
    >>> round(convert(7.0, "Ne", "Nm"), 4)
    11.8535
    >>> round(convert(7.0, "Ne", "tex"), 4)
    84.363
    """
    source_dimension, source_factor, source_offset = measure(unit)
    target_dimension, target_factor, target_offset = measure(target)
    if {source_dimension, target_dimension} == COUNTS and value != 0:
        return 1.0 / (value * source_factor) / target_factor
    if source_dimension != target_dimension:
        raise ValueError(f"{unit or 'a pure number'} cannot be read as {target or 'a pure number'}")
    if source_factor == target_factor and source_offset == target_offset:
        return value
    return (value * source_factor + source_offset - target_offset) / target_factor


def to_house(value: float, usual: str, house: str) -> float:
    """From the usual unit to the house unit."""
    return convert(value, usual, house)


def from_house(value: float, usual: str, house: str) -> float:
    """From the house unit to the usual unit."""
    return convert(value, house, usual)
