"""The one record that says what a name means."""

from __future__ import annotations

from typing import NamedTuple


class Quantity(NamedTuple):
    """One name, one meaning, one unit.

    Attributes
    ----------
    name : str
        The name used in equations, settings, workbook rows and formulas.
    unit : str
        House unit; "" for a pure number or a fraction.
    usual : str
        The unit that people type and read.
    low, high : float
        What is accepted, both ends included, in the *usual* unit.
    help : str
        One line in the trade's words.
    whole : bool
        True where only whole numbers make sense.
    """

    name: str
    unit: str
    usual: str
    low: float
    high: float
    help: str
    whole: bool = False
