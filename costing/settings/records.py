"""What a mill has written down: what it made, and what left its store."""

from __future__ import annotations

import datetime
from typing import NamedTuple, Optional


class MadeRecord(NamedTuple):
    """What was made on a day.

    Attributes
    ----------
    day : date
        When.
    enquiry : str
        Code of the enquiry whose style, recipe and range it was.
    mass : float
        Saleable grey yarn [kg].
    shift, range : str
        Where they are known; a range that is given counts before that of the enquiry.
    """

    day: datetime.date
    enquiry: str
    mass: float
    shift: str = ""
    range: str = ""


class IssueRecord(NamedTuple):
    """What left the store on a day.

    Attributes
    ----------
    day : date
        When.
    material : str
        Code of the price list.
    mass : float
        As delivered [kg].
    strength, price : float or None
        Of this batch, where they are known: assay [kg/kg], and money of the mill for a kilogram.
    range, shade, shift : str
        What it was issued for, where that is known.
    """

    day: datetime.date
    material: str
    mass: float
    strength: Optional[float] = None  # noqa: UP045 read by an older Python
    price: Optional[float] = None  # noqa: UP045
    range: str = ""
    shade: str = ""
    shift: str = ""
