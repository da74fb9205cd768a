"""What a mill has written down: what it made, and what left its store."""

from __future__ import annotations

import datetime
from typing import NamedTuple, Optional


class MadeRow(NamedTuple):
    """What was made on a day, as it was booked: yarn or cloth.

    Attributes
    ----------
    day : date
        When.
    enquiry : str
        Code of the enquiry whose style, recipe and range it was.
    yarn, cloth : float or None
        One of the two: saleable grey yarn [kg], or finished cloth [m].
    planned : float or None
        What was to be made, counted like what was made; None where that is not known [kg or m].
    shift, range : str
        Where they are known; a range that is given counts before that of the enquiry.
    where : str
        Sheet and row, or file and row.
    """

    day: datetime.date
    enquiry: str
    yarn: Optional[float] = None  # noqa: UP045 read by an older Python
    cloth: Optional[float] = None  # noqa: UP045
    planned: Optional[float] = None  # noqa: UP045
    shift: str = ""
    range: str = ""
    where: str = ""


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
    planned : float or None
        Saleable grey yarn that was to be made, where that is known [kg].
    where : str
        Sheet and row, or file and row.
    """

    day: datetime.date
    enquiry: str
    mass: float
    shift: str = ""
    range: str = ""
    planned: Optional[float] = None  # noqa: UP045
    where: str = ""


class IssueRecord(NamedTuple):
    """What left the store on a day; what came back to it is below zero.

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
    where : str
        Sheet and row, or file and row.
    """

    day: datetime.date
    material: str
    mass: float
    strength: Optional[float] = None  # noqa: UP045
    price: Optional[float] = None  # noqa: UP045
    range: str = ""
    shade: str = ""
    shift: str = ""
    where: str = ""
