"""What each name means: house unit, usual unit, accepted range and one line of help.

The house units are coherent (kg, m, L, h, kJ, bar, degC, fraction), so an equation holds no unit
factor. The *usual* unit is the one a mill types and reads; every surface converts at its edge.
"""

from costing.quantities.checking import InputError, check, describe, label, shown
from costing.quantities.quantity import Quantity
from costing.quantities.table import CHOICES, QUANTITIES, quantity
from costing.quantities.unit_table import UNITS
from costing.quantities.units import from_house, to_house
from costing.quantities.wording import folded, listed, meant

__all__ = [
    "CHOICES",
    "QUANTITIES",
    "UNITS",
    "InputError",
    "Quantity",
    "check",
    "describe",
    "folded",
    "from_house",
    "label",
    "listed",
    "meant",
    "quantity",
    "shown",
    "to_house",
]
