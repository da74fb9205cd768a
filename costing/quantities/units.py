"""Unit conversion from a small table of floats, for the road into a spreadsheet cell.

The table is generated from pint (``tests/tools/make_unit_table.py``) and tested against it unit by
unit, because pint's first use costs a third of a second and needs a newer Python than some
spreadsheet programs bring.
"""

from __future__ import annotations

from costing.quantities.unit_table import UNITS

ALIASES = {
    "fraction": "",
    "1": "",
    "l/kg": "L/kg",
    "g/l": "g/L",
    "kg/l": "kg/L",
    "mg/l": "mg/L",
    "l": "L",
    "°C": "degC",
    "C": "degC",
    "m³": "m3",
    "m²": "m2",
    "g/m²": "g/m2",
    "oz/yd²": "oz/yd2",
    "per cm": "1/cm",
    "per in": "1/in",
    "ends/cm": "1/cm",
    "ends/in": "1/in",
    "picks/cm": "1/cm",
    "picks/in": "1/in",
    "yards": "yd",
    "metres": "m",
}

COUNTS = {UNITS["tex"][0], UNITS["Ne"][0]}


def canonical(unit: str) -> str:
    """The table's spelling of a unit.

    Raises
    ------
    KeyError
        When the unit is not in the table.
    """
    text = unit.strip()
    text = ALIASES.get(text, text)
    if text not in UNITS:
        raise KeyError(text)
    return text


def convert(value: float, unit: str, target: str) -> float:
    """Convert a value between two units of the same dimension.

    Parameters
    ----------
    value : float
        The number, in `unit`.
    unit, target : str
        Units of the table.

    Raises
    ------
    KeyError
        When a unit is not in the table.
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
    source_dimension, source_factor, source_offset = UNITS[canonical(unit)]
    target_dimension, target_factor, target_offset = UNITS[canonical(target)]
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
